package core

import (
	"strings"

	"ceilingwright/core/jsondoc"
	"ceilingwright/core/plan"
	"ceilingwright/core/words"
)

// In answers in a language, none for the one the engine is written in.
type In struct{ Language *words.Language }

func (in In) read(planJSON []byte) plan.Document { return plan.ReadIn(planJSON, in.Language) }

// FormKey is the entry of a language that tells which form of a noun goes with a
// count: a digit for each count from 0 to 199, 0 for the first form; from 200 on what
// the last two digits have at a hundred more. Without it one thing has the first form
// and all else the second.
const FormKey = "{form}"

// ReadLanguage is a language as the list of sentences has it, filled in: a JSON object
// of texts by ours. An entry without a text is not translated. A text that is no such
// object is no language.
func ReadLanguage(text []byte) *words.Language {
	root, err := jsondoc.Read(text)
	if err != nil || root.Kind != jsondoc.Object {
		return nil
	}
	theirs := make(map[string]string, len(root.Fields))
	for i := range root.Fields {
		if f := &root.Fields[i]; f.Value.Kind == jsondoc.String && f.Value.Text != "" {
			theirs[f.Name] = f.Value.Text
		}
	}
	language := &words.Language{Sentence: func(ours string) (string, bool) {
		text, ok := theirs[ours]
		return text, ok
	}}
	if forms := theirs[FormKey]; len(forms) == 200 && strings.Trim(forms, "0123456789") == "" {
		language.Form = func(n int64) int {
			if n < 0 || n >= 200 {
				n = 100 + max(n%100, -(n%100))
			}
			return int(forms[n] - '0')
		}
	}
	return language
}
