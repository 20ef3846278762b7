package measure

import "strings"

// Said is a whole sentence with named holes and what goes into them, as package
// words has them, which is built on this one and says it in any language.
type Said struct {
	Sentence string
	Holes    []Hole
}

// Hole is what stands for a name in braces: a text that no language changes, or
// something said.
type Hole struct {
	Name string
	Text string
	Said *Said
}

// Say is a sentence with what goes into its holes.
func Say(sentence string, holes ...Hole) Said { return Said{sentence, holes} }

func put(name, text string) Hole { return Hole{Name: name, Text: text} }

func putSaid(name string, what Said) Hole { return Hole{Name: name, Said: &what} }

// String is the sentence in the language it is written in.
func (s Said) String() string {
	pairs := make([]string, 0, 2*len(s.Holes))
	for _, h := range s.Holes {
		text := h.Text
		if h.Said != nil {
			text = h.Said.String()
		}
		pairs = append(pairs, "{"+h.Name+"}", text)
	}
	return strings.NewReplacer(pairs...).Replace(s.Sentence)
}
