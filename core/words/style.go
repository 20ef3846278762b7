package words

import (
	"strings"

	"ceilingwright/core/measure"
)

// Style is how things are put: the notation of measures, the country whose words
// are used, and the language; none is the one the sentences are written in.
type Style struct {
	Notation measure.Notation
	Country  Country
	Language *Language
}

// Language is another language: its sentence for each of ours, and which of the
// forms of a noun goes with a count, 0 the first. A sentence it lacks stays ours.
type Language struct {
	Sentence func(ours string) (theirs string, ok bool)
	Form     func(count int64) int
}

func (s Style) sentence(ours string) string {
	if s.Language == nil || ours == "" {
		return ours
	}
	if theirs, ok := s.Language.Sentence(ours); ok {
		return theirs
	}
	return ours
}

// counted puts behind a count its noun, "|panel|panels", or the word alone that goes
// with it, "?is|are". A value that is no count takes the last form.
func (s *Style) counted(out []byte, value Value, forms string) []byte {
	if forms[0] == '|' {
		out = append(out, ' ')
	}
	c, isCount := value.(*count)
	word, rest, more := strings.Cut(forms[1:], "|")
	form := 0
	if isCount {
		form = s.form(c.n)
	}
	for ; more && (form > 0 || !isCount); form-- {
		word, rest, more = strings.Cut(rest, "|")
	}
	return append(out, word...)
}

// form is which form of a word goes with a count: in ours the first with one.
func (s Style) form(count int64) int {
	if s.Language != nil && s.Language.Form != nil {
		return s.Language.Form(count)
	}
	if count == 1 {
		return 0
	}
	return 1
}
