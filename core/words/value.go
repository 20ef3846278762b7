package words

import (
	"strconv"
	"strings"

	"ceilingwright/core/measure"
)

// The kinds of values, each made into a hole by the function of its name. A value is
// of one piece with its hole: there are thousands.
type (
	verbatim struct {
		hole
		text string
	}
	count struct {
		hole
		n int64
	}
	length struct {
		hole
		as           way
		value, limit measure.Length
	}
	area struct {
		hole
		value measure.Area
	}
	volume struct {
		hole
		value measure.Volume
	}
	number struct {
		hole
		value  measure.Number
		places int32
		as     way
	}
	row struct {
		values []Value
		link   string
	}
)

// way is how a length or a number is said.
type way int8

const (
	plain way = iota
	put
	fine
	amount
	about
	upTo
	held
	atMost
	atLeast
	trimmed
	share
)

// with is a hole of that name with its value.
func (h *hole) with(name string, value Value) Hole {
	h.Name, h.Value = name, value
	return h
}

// Of is any value of a type that knows how it is said, such as another Text.
func Of(name string, value Value) Hole { return &hole{name, value} }

// Name is a text that no language changes: a name that a person gave, the label of
// a panel, a sign of the tape.
//
//go:noinline
func Name(name, text string) Hole {
	v := &verbatim{text: text}
	return v.with(name, v)
}

// Count is a whole number of things.
func Count[N ~int | ~int64](name string, n N) Hole {
	v := &count{n: int64(n)}
	return v.with(name, v)
}

func lengthAs(name string, as way, l, limit measure.Length) Hole {
	v := &length{as: as, value: l, limit: limit}
	return v.with(name, v)
}

// Length is a length rounded to the tape mark.
func Length(name string, l measure.Length) Hole { return lengthAs(name, plain, l, 0) }

// Put is a length put into a sum, or one that was typed: exact where the notation
// can say it in the marks of a tape, else rounded to the mark with “≈” in front.
func Put(name string, l measure.Length) Hole { return lengthAs(name, put, l, 0) }

// Fine is a length as finely as it can be measured (measure.Notation.Fine).
func Fine(name string, l measure.Length) Hole { return lengthAs(name, fine, l, 0) }

// Amount is a difference that is never said to be nothing (measure.Notation.Amount).
func Amount(name string, l measure.Length) Hole { return lengthAs(name, amount, l, 0) }

// About is a length rounded to the tape mark, and where the mark would show none of
// it, that it is under half a mark.
func About(name string, l measure.Length) Hole { return lengthAs(name, about, l, 0) }

// Held is a length that is held against a limit: as finely as it takes to see on
// which side of it it is.
func Held(name string, l, limit measure.Length) Hole { return lengthAs(name, held, l, limit) }

// UpTo is a length that others are within: on the tape mark, or half a mark.
func UpTo(name string, l measure.Length) Hole { return lengthAs(name, upTo, l, 0) }

// AtMost is a limit from above, on the tape mark inside it.
func AtMost(name string, l measure.Length) Hole { return lengthAs(name, atMost, l, 0) }

// AtLeast is a limit from below, on the first tape mark not below it.
func AtLeast(name string, l measure.Length) Hole { return lengthAs(name, atLeast, l, 0) }

// Area is an area in the unit of the notation.
func Area(name string, a measure.Area) Hole {
	v := &area{value: a}
	return v.with(name, v)
}

// Volume is a volume in the units of the notation.
func Volume(name string, a measure.Volume) Hole {
	v := &volume{value: a}
	return v.with(name, v)
}

func numberAs(name string, as way, n measure.Number, places int32) Hole {
	v := &number{as: as, value: n, places: places}
	return v.with(name, v)
}

// Number is a number with so many decimals, half to even.
func Number(name string, n measure.Number, places int32) Hole {
	return numberAs(name, plain, n, places)
}

// Trimmed is a number with at most so many decimals.
func Trimmed(name string, n measure.Number, places int32) Hole {
	return numberAs(name, trimmed, n, places)
}

// Share is a fraction in per cent, with at most two decimals.
func Share(name string, n measure.Number) Hole { return numberAs(name, share, n, 2) }

// PerCent is a fraction in per cent, with at most one decimal.
func PerCent(name string, n measure.Number) Hole { return numberAs(name, share, n, 1) }

// And are names one after the other, all of them: "a and b and c".
func And(name string, names []string) Hole {
	if len(names) == 0 {
		return Name(name, "")
	}
	all := Verbatim(names[0])
	for _, next := range names[1:] {
		all = Say("{one} and {other}", Of("one", all), Name("other", next))
	}
	return Of(name, all)
}

// Names are names in a row: of many the first few, and how many more.
func Names(name string, names []string) Hole {
	texts := make([]Text, len(names))
	for i := range names {
		texts[i] = Verbatim(names[i])
	}
	return FewOf(name, texts)
}

// FewOf are texts in a row: of many the first few, and how many more.
func FewOf(name string, texts []Text) Hole {
	if len(texts) > mostListed {
		more := len(texts) - mostListed + 1
		return &hole{name, Say("{names} and {more} others", Texts("names", texts[:mostListed-1]), Count("more", more))}
	}
	return Texts(name, texts)
}

// mostListed is how many names a sentence holds. A choice: it stays readable.
const mostListed = 6

// Row are names in a row, all of them.
func Row(name string, names []string) Hole {
	values := make([]Value, len(names))
	for i := range names {
		values[i] = &verbatim{text: names[i]}
	}
	return &hole{name, row{values, ", "}}
}

// All are texts in a row with “and” before the last: "WX, XY and diagonal WY".
func All(name string, texts []Text) Hole {
	if len(texts) < 2 {
		return Texts(name, texts)
	}
	last := len(texts) - 1
	return &hole{name, Say("{some} and {last}", Texts("some", texts[:last]), Of("last", texts[last]))}
}

// Either are texts of which one is to be chosen: "a or b or c".
func Either(name string, texts []Text) Hole {
	if len(texts) == 0 {
		return &hole{name, Text{}}
	}
	all := texts[0]
	for _, next := range texts[1:] {
		all = Say("{one} or {other}", Of("one", all), Of("other", next))
	}
	return &hole{name, all}
}

// Texts are texts in a row with commas between.
func Texts(name string, texts []Text) Hole {
	values := make([]Value, len(texts))
	for i := range texts {
		values[i] = texts[i]
	}
	return &hole{name, row{values, ", "}}
}

func (v *verbatim) In(Style) string { return v.text }
func (v *area) In(s Style) string   { return s.Notation.Area(v.value) }
func (v *volume) In(s Style) string { return s.Notation.Volume(v.value) }

func (v *count) In(s Style) string {
	if v.n >= 0 && v.n < 10_000 {
		return strconv.FormatInt(v.n, 10) // too short to stand in groups
	}
	return s.Notation.Number(measure.NumberFromInt(v.n), 0)
}

func (v *number) In(s Style) string {
	switch v.as {
	case trimmed:
		return s.Notation.NumberTrimmed(v.value, v.places)
	case share:
		return s.Notation.NumberTrimmed(v.value.Mul(measure.NumberFromInt(100)), v.places) + " %"
	}
	return s.Notation.Number(v.value, v.places)
}

func (v *length) In(s Style) string {
	switch n := s.Notation; v.as {
	case put:
		return s.Put(v.value)
	case fine:
		return n.Fine(v.value)
	case amount:
		return n.Amount(v.value)
	case about:
		return s.About(v.value)
	case upTo:
		if mark := n.Mark(); v.value > 0 && v.value.ToMark(mark) == 0 {
			return n.Exact(mark / 2)
		}
	case held:
		return s.held(v.value, v.limit)
	case atMost:
		return n.AtMost(v.value)
	case atLeast:
		return n.AtLeast(v.value)
	}
	return s.Notation.Length(v.value)
}

func (v row) In(s Style) string {
	said := make([]string, len(v.values))
	for i := range v.values {
		said[i] = v.values[i].In(s)
	}
	return strings.Join(said, v.link)
}

// About is a length as the hole About has it.
func (s Style) About(l measure.Length) string {
	n := s.Notation
	if l != 0 && n.Mark() > 0 && l.ToMark(n.Mark()) == 0 {
		return Say("under {half}", Name("half", n.Exact(n.Mark()/2))).In(s)
	}
	return n.Length(l)
}

// held is a length as the hole Held has it.
func (s Style) held(l, limit measure.Length) string {
	n := s.Notation
	mark := n.Mark()
	shown, limited := l.ToMark(mark), limit.ToMark(mark)
	switch {
	case l == limit || shown != 0 && shown != limited:
		return n.Length(l)
	case l > 0 && shown == 0 && limited != 0 && mark > 0:
		return n.Exact(mark / 2)
	case n.Fine(l) != n.Fine(limit):
		return n.Fine(l)
	case l < limit:
		return Say("just under {limit}", Fine("limit", limit)).In(s)
	}
	return Say("just over {limit}", Fine("limit", limit)).In(s)
}

// Put is a length as the hole Put has it.
func (s Style) Put(l measure.Length) string {
	n := s.Notation
	if n.System == measure.FeetInches && l%(measure.Inch/64) == 0 {
		return n.Exact(l)
	}
	if n.Hides(l) == 0 {
		return n.Length(l)
	}
	return "≈" + n.Length(l)
}

// Digits is a whole number as it is typed, without the gaps of a large one.
func Digits(n int64) string { return strconv.FormatInt(n, 10) }
