// Package words says things to people. What the engine has to say stands in the
// code as a whole sentence with named holes, and what goes into the holes beside
// it as values:
//
//	words.Say("A panel that may be off by {off} may be off by a whole panel.", words.Put("off", l))
//
// The sentence is the key by which another language finds its own; nothing is
// glued together from pieces of a sentence, since another language has its words
// in another order. What a Text says is settled only when it is written, in the
// notation, with the words of the country and in the language of a Style. So the
// packages that work things out name what is wrong and know nothing of how it is
// put.
//
// In a sentence stand:
//
//	{name}             the value of that name
//	{^name}            the same, beginning with a capital
//	{n|panel|panels}   the count n and its noun: "1 panel", "3 panels"
//	{n?is|are}         the word alone that goes with the count n
//	{~cornice}         a thing of the trade as the country calls it
//
// A hole without its value stays as it is written, for all to see; a test holds
// every call to its holes.
package words

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Text is one or several whole sentences, or the name of a thing, with holes and
// what goes into them. The zero Text says nothing.
type Text struct{ said *said }

// said is a sentence and its holes. A Text is no more than where they are: thousands
// of them are handed on in the code, and a word each keeps that small.
type said struct {
	sentence string
	holes    []Hole
	few      [3]Hole // where the holes are, of most sentences
}

// Hole is what stands for a name in braces.
type Hole = *hole

type hole struct {
	Name  string
	Value Value
}

// Value is what can be said in a hole.
type Value interface{ In(Style) string }

// Say is a sentence with what goes into its holes. Not inlined, like Name: they are called
// from thousands of places, and each copy would make the page larger.
//
//go:noinline
func Say(sentence string, holes ...Hole) Text {
	s := &said{sentence: sentence}
	s.holes = append(s.few[:0], holes...)
	return Text{s}
}

// Verbatim is a text as it is, such as what a person typed: no holes are looked
// for in it and no language changes it.
func Verbatim(text string) Text { return Say(asItIs, Name("text", text)) }

const asItIs = "{text}"

// Sentences are texts one after the other, those that say nothing left out.
func Sentences(texts ...Text) Text {
	saying, only := 0, Text{}
	for _, t := range texts {
		if !t.IsEmpty() {
			saying, only = saying+1, t
		}
	}
	if saying < 2 {
		return only
	}
	values := make([]Value, 0, saying)
	for _, t := range texts {
		if !t.IsEmpty() {
			values = append(values, t)
		}
	}
	return Say("{sentences}", Of("sentences", row{values, " "}))
}

// Filled is a sentence that stands in a table of its own, with what value knows for its
// holes; nil where it knows nothing. What is put in is never searched again.
func Filled(sentence string, value func(name string) Value) Text {
	var holes []Hole
	for rest := sentence; ; {
		_, after, found := strings.Cut(rest, "{")
		if !found {
			return Say(sentence, holes...)
		}
		name, left, _ := strings.Cut(after, "}")
		if v := value(name); v != nil {
			holes = append(holes, Of(name, v))
		}
		rest = left
	}
}

// Sentence is the sentence of a text without what goes into its holes.
func (t Text) Sentence() string {
	if t.said == nil {
		return ""
	}
	return t.said.sentence
}

// IsEmpty tells whether nothing is said.
func (t Text) IsEmpty() bool { return t.Sentence() == "" }

// String is the text as the source language and metric tapes put it, for tests
// and for those who look for faults.
func (t Text) String() string { return t.In(Style{}) }

// In is the text as it is read.
func (t Text) In(style Style) string {
	if t.said == nil {
		return ""
	}
	return filled(t.said.sentence, t.said.holes, &style)
}

// Say is a sentence with what goes into its holes, as it is read at once.
//
//go:noinline
func (s Style) Say(sentence string, holes ...Hole) string {
	return filled(sentence, holes, &s)
}

func filled(sentence string, holes []Hole, style *Style) string {
	if sentence = style.sentence(sentence); strings.IndexByte(sentence, '{') < 0 {
		return sentence
	}
	var room [512]byte
	return string(putIn(room[:0], sentence, holes, nil, style))
}

// putIn puts a sentence, or else a value, behind out as it is said. Texts, names and rows,
// most of all there are, need no string of their own. It calls itself and no other that
// does, or the compiler could not keep what it writes to off the heap.
func putIn(out []byte, sentence string, holes []Hole, value Value, style *Style) []byte {
	switch v := value.(type) {
	case nil:
	case *verbatim:
		return append(out, v.text...)
	case row:
		for i, one := range v.values {
			if i > 0 {
				out = append(out, v.link...)
			}
			out = putIn(out, "", nil, one, style)
		}
		return out
	case Text:
		if v.said == nil {
			return out
		}
		sentence, holes = style.sentence(v.said.sentence), v.said.holes
	default:
		return append(out, value.In(*style)...)
	}
	for {
		before, after, found := strings.Cut(sentence, "{")
		hole, left, closed := strings.Cut(after, "}")
		if !found || !closed {
			return append(out, sentence...)
		}
		out, sentence = append(out, before...), left
		one, capital, forms := find(hole, holes)
		if one == nil {
			out = style.unfilled(out, hole)
			continue
		}
		from := len(out)
		if forms == "" || forms[0] == '|' {
			out = putIn(out, "", nil, one, style)
		}
		if forms != "" {
			out = style.counted(out, one, forms)
		}
		if capital {
			out = append(out[:from], Capital(string(out[from:]))...)
		}
	}
}

// find is what is put in a hole, nil where nothing is, whether it begins with a capital,
// and the forms of the noun that goes with it.
func find(hole string, holes []Hole) (value Value, capital bool, forms string) {
	name, capital := strings.CutPrefix(hole, "^")
	if end := strings.IndexAny(name, "|?"); end >= 0 {
		name, forms = name[:end], name[end:]
	}
	for _, h := range holes {
		if h.Name == name {
			return h.Value, capital, forms
		}
	}
	return nil, false, ""
}

// unfilled is what stands in a hole that nothing is put in: a thing of the trade as the
// country calls it, or the hole, for all to see.
func (s *Style) unfilled(out []byte, hole string) []byte {
	if term, ok := strings.CutPrefix(hole, "~"); ok {
		return append(out, s.sentence(s.Country.Says(term))...)
	}
	return append(append(append(out, '{'), hole...), '}')
}

// Capital is a text with its first letter a capital.
func Capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}
