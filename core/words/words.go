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
}

// Hole is what stands for a name in braces.
type Hole = *hole

type hole struct {
	Name  string
	Value Value
}

// Value is what can be said in a hole.
type Value interface{ In(Style) string }

// Say is a sentence with what goes into its holes.
func Say(sentence string, holes ...Hole) Text { return Text{&said{sentence, holes}} }

// Verbatim is a text as it is, such as what a person typed: no holes are looked
// for in it and no language changes it.
func Verbatim(text string) Text { return Say(asItIs, Name("text", text)) }

const asItIs = "{text}"

// Sentences are texts one after the other, those that say nothing left out.
func Sentences(texts ...Text) Text {
	var saying []Value
	for _, t := range texts {
		if !t.IsEmpty() {
			saying = append(saying, t)
		}
	}
	if len(saying) == 1 {
		return saying[0].(Text)
	}
	if len(saying) == 0 {
		return Text{}
	}
	return Say("{sentences}", Of("sentences", row{saying, " "}))
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
	sentence := style.sentence(t.said.sentence)
	if !strings.Contains(sentence, "{") {
		return sentence
	}
	var out strings.Builder
	out.Grow(len(sentence) + 16*len(t.said.holes))
	for {
		before, rest, found := strings.Cut(sentence, "{")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		hole, after, closed := strings.Cut(rest, "}")
		if !closed {
			out.WriteString("{" + rest)
			return out.String()
		}
		out.WriteString(t.fill(hole, style))
		sentence = after
	}
}

// fill is what stands in a hole.
func (t Text) fill(hole string, style Style) string {
	if term, ok := strings.CutPrefix(hole, "~"); ok {
		return style.sentence(style.Country.Says(term))
	}
	name, capital := strings.CutPrefix(hole, "^")
	end := strings.IndexAny(name, "|?")
	forms := ""
	if end >= 0 {
		name, forms = name[:end], name[end:]
	}
	for _, h := range t.said.holes {
		if h.Name != name {
			continue
		}
		text := h.Value.In(style)
		if forms != "" {
			text = style.counted(h.Value, text, forms)
		}
		if capital {
			text = Capital(text)
		}
		return text
	}
	return "{" + hole + "}"
}

// Capital is a text with its first letter a capital.
func Capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}
