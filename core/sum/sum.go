// Package sum holds lengths that are added up so that what they come to and how that
// is written come from one expression:
//
//	border := sum.Of(room).Minus(mask).Halved()
//	border.Value()      // 4 in
//	border.In(style)    // "(15′ 8″ − 15′ 0″) ÷ 2"
package sum

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Sum is lengths added up and taken off, whole or halved. The zero Sum is none. It is
// a value: what adds to it leaves it as it is.
type Sum struct {
	terms  []term
	halved bool
	up     bool
	// twice is what the terms come to, doubled, so that a half is exact; hidden is
	// more that is too little to be written.
	twice, hidden measure.Length
}

// term is one length, taken times over, or a sum in brackets. Its kind says what the
// length is of, where that is written.
type term struct {
	minus, half bool
	times       int
	length      measure.Length
	kind        kind
	of          *Sum
}

type kind int

const (
	plain kind = iota
	ofOthers
	ofGaps
	closedUp
)

// Of is a sum of one length so far.
func Of(l measure.Length) Sum { return Sum{}.Plus(l) }

// OfTwice is a sum of one length so far that is given doubled.
func OfTwice(twice measure.Length) Sum {
	return Sum{terms: []term{{times: 1, length: twice.Half()}}, twice: twice}
}

// IsNone tells whether nothing was added up.
func (s Sum) IsNone() bool { return len(s.terms) == 0 }

// Value is what it comes to, half a nanometre rounded down; up for OtherHalf.
func (s Sum) Value() measure.Length {
	switch {
	case s.up:
		return (s.twice+3)>>2 + s.hidden
	case s.halved:
		return s.twice>>2 + s.hidden
	}
	return s.twice>>1 + s.hidden
}

// with is the sum with one more term.
func (s Sum) with(t term) Sum {
	s.terms = slices.Clip(s.terms)
	s.add(t)
	return s
}

// add puts one more term in, where the terms are nobody else's.
func (s *Sum) add(t term) {
	twice := 2 * measure.Length(t.times) * t.length
	switch {
	case t.of != nil:
		twice = 2 * t.of.Value()
	case t.half:
		twice /= 2
	}
	if t.minus {
		twice = -twice
	}
	s.terms, s.twice = append(s.terms, t), s.twice+twice
}

// Plus is the sum and a length more.
func (s Sum) Plus(l measure.Length) Sum { return s.with(term{times: 1, length: l}) }

// Minus is the sum less a length.
func (s Sum) Minus(l measure.Length) Sum { return s.with(term{minus: true, times: 1, length: l}) }

// PlusHalf is the sum and half of a length.
func (s Sum) PlusHalf(l measure.Length) Sum { return s.with(term{half: true, times: 1, length: l}) }

// MinusHalf is the sum less half of a length.
func (s Sum) MinusHalf(l measure.Length) Sum {
	return s.with(term{minus: true, half: true, times: 1, length: l})
}

// MinusTwice is the sum less a length twice over.
func (s Sum) MinusTwice(l measure.Length) Sum { return s.with(term{minus: true, times: 2, length: l}) }

// MinusAll is the sum less another one.
func (s Sum) MinusAll(o Sum) Sum { return s.with(term{minus: true, of: &o}) }

// Halved is half of the sum.
func (s Sum) Halved() Sum {
	s.halved = true
	return s
}

// OtherHalf is what Halved leaves.
func (s Sum) OtherHalf() Sum {
	s.halved, s.up = true, true
	return s
}

// mostInARow is how many different lengths of a row are written out: what comes after
// them is taken together.
const mostInARow = 12

// PlusRow is the sum and a row of panels that takes up so much of a tape line: the
// panels, equal ones side by side counted, and what their gaps add, or take where they
// are closed up. What is too little to be a gap is not written.
func (s Sum) PlusRow(panels []measure.Length, taken measure.Length) Sum {
	rest, written := taken, 0
	s.terms = slices.Clip(s.terms)
	for i := 0; i < len(panels); written++ {
		if written == mostInARow {
			others := measure.Length(0)
			for ; i < len(panels); i++ {
				others += panels[i]
			}
			rest -= others
			s.add(term{times: 1, length: others, kind: ofOthers})
			break
		}
		first := i
		for i < len(panels) && (panels[i]-panels[first]).Abs() <= measure.Nanometre {
			rest -= panels[i]
			i++
		}
		s.add(term{times: i - first, length: panels[first]})
		// Equal panels may be a nanometre apart: what that makes is not lost.
		s.hidden += sumOf(panels[first:i]) - measure.Length(i-first)*panels[first]
	}
	switch least := measure.OnePlace * measure.Length(len(panels)+1); {
	case rest > least:
		return s.with(term{times: 1, length: rest, kind: ofGaps})
	case -rest > least:
		return s.with(term{minus: true, times: 1, length: -rest, kind: closedUp})
	case s.IsNone():
		s = Of(0)
	}
	s.hidden += rest
	return s
}

func sumOf(list []measure.Length) (all measure.Length) {
	for _, l := range list {
		all += l
	}
	return all
}

// In is the sum as it is written (words.Value).
func (s Sum) In(style words.Style) string {
	var out strings.Builder
	for i, t := range s.terms {
		switch {
		case t.minus:
			out.WriteString(" − ")
		case i > 0:
			out.WriteString(" + ")
		}
		out.WriteString(t.in(style))
	}
	if s.halved {
		return "(" + out.String() + ") ÷ 2"
	}
	return out.String()
}

func (t *term) in(style words.Style) string {
	l := words.Put("l", t.length)
	switch {
	case t.of != nil && len(t.of.terms) > 1:
		return "(" + t.of.In(style) + ")"
	case t.of != nil:
		return t.of.In(style)
	case t.kind == ofOthers:
		return style.Say("{l} of other panels", l)
	case t.kind == ofGaps:
		return style.Say("{l} of gaps", l)
	case t.kind == closedUp:
		return style.Say("{l} closed up", l)
	case t.half:
		return style.Put(t.length) + " ÷ 2"
	case t.times != 1:
		return strconv.Itoa(t.times) + " × " + style.Put(t.length)
	}
	return style.Put(t.length)
}

// Backwards is a row from its other end.
func Backwards(panels []measure.Length) []measure.Length {
	row := slices.Clone(panels)
	slices.Reverse(row)
	return row
}
