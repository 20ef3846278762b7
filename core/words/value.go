package words

import (
	"strconv"
	"strings"

	"ceilingwright/core/measure"
)

// The kinds of values, each made into a hole by the function of its name.
type (
	verbatim string
	count    int64
	put      measure.Length
	length   measure.Length
	fine     measure.Length
	amount   measure.Length
	about    measure.Length
	upTo     measure.Length
	held     struct{ length, limit measure.Length }
	atMost   measure.Length
	atLeast  measure.Length
	area     measure.Area
	volume   measure.Volume
	number   struct {
		value  measure.Number
		places int32
		exact  bool
	}
	share struct {
		value  measure.Number
		places int32
	}
	row struct {
		values []Value
		link   string
	}
)

// Of is any value of a type that knows how it is said, such as another Text.
func Of(name string, value Value) Hole { return &hole{name, value} }

// Name is a text that no language changes: a name that a person gave, the label of
// a panel, a sign of the tape.
func Name(name, text string) Hole { return &hole{name, verbatim(text)} }

// Count is a whole number of things.
func Count[N ~int | ~int64](name string, n N) Hole { return &hole{name, count(n)} }

// Length is a length rounded to the tape mark.
func Length(name string, l measure.Length) Hole { return &hole{name, length(l)} }

// Put is a length put into a sum, or one that was typed: exact where the notation
// can say it in the marks of a tape, else rounded to the mark with “≈” in front.
func Put(name string, l measure.Length) Hole { return &hole{name, put(l)} }

// Fine is a length as finely as it can be measured (measure.Notation.Fine).
func Fine(name string, l measure.Length) Hole { return &hole{name, fine(l)} }

// Amount is a difference that is never said to be nothing (measure.Notation.Amount).
func Amount(name string, l measure.Length) Hole { return &hole{name, amount(l)} }

// About is a length rounded to the tape mark, and where the mark would show none of
// it, that it is under half a mark.
func About(name string, l measure.Length) Hole { return &hole{name, about(l)} }

// Held is a length that is held against a limit: as finely as it takes to see on
// which side of it it is.
func Held(name string, l, limit measure.Length) Hole { return &hole{name, held{l, limit}} }

// UpTo is a length that others are within: on the tape mark, or half a mark.
func UpTo(name string, l measure.Length) Hole { return &hole{name, upTo(l)} }

// AtMost is a limit from above, on the tape mark inside it.
func AtMost(name string, l measure.Length) Hole { return &hole{name, atMost(l)} }

// AtLeast is a limit from below, on the first tape mark not below it.
func AtLeast(name string, l measure.Length) Hole { return &hole{name, atLeast(l)} }

// Area is an area in the unit of the notation.
func Area(name string, a measure.Area) Hole { return &hole{name, area(a)} }

// Volume is a volume in the units of the notation.
func Volume(name string, v measure.Volume) Hole { return &hole{name, volume(v)} }

// Number is a number with so many decimals, half to even.
func Number(name string, n measure.Number, places int32) Hole {
	return &hole{name, number{n, places, true}}
}

// Trimmed is a number with at most so many decimals.
func Trimmed(name string, n measure.Number, places int32) Hole {
	return &hole{name, number{n, places, false}}
}

// Share is a fraction in per cent, with at most two decimals.
func Share(name string, n measure.Number) Hole { return &hole{name, share{n, 2}} }

// PerCent is a fraction in per cent, with at most one decimal.
func PerCent(name string, n measure.Number) Hole { return &hole{name, share{n, 1}} }

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
		values[i] = verbatim(names[i])
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

func (v verbatim) In(Style) string { return string(v) }
func (v count) In(s Style) string {
	if v >= 0 && v < 10_000 {
		return strconv.FormatInt(int64(v), 10) // too short to stand in groups
	}
	return s.Notation.Number(measure.NumberFromInt(int64(v)), 0)
}

func (v length) In(s Style) string  { return s.Notation.Length(measure.Length(v)) }
func (v fine) In(s Style) string    { return s.Notation.Fine(measure.Length(v)) }
func (v amount) In(s Style) string  { return s.Notation.Amount(measure.Length(v)) }
func (v atMost) In(s Style) string  { return s.Notation.AtMost(measure.Length(v)) }
func (v atLeast) In(s Style) string { return s.Notation.AtLeast(measure.Length(v)) }
func (v area) In(s Style) string    { return s.Notation.Area(measure.Area(v)) }
func (v volume) In(s Style) string  { return s.Notation.Volume(measure.Volume(v)) }
func (v put) In(s Style) string     { return s.Put(measure.Length(v)) }

func (v number) In(s Style) string {
	if v.exact {
		return s.Notation.Number(v.value, v.places)
	}
	return s.Notation.NumberTrimmed(v.value, v.places)
}

func (v share) In(s Style) string {
	return s.Notation.NumberTrimmed(v.value.Mul(measure.NumberFromInt(100)), v.places) + " %"
}

func (v row) In(s Style) string {
	said := make([]string, len(v.values))
	for i := range v.values {
		said[i] = v.values[i].In(s)
	}
	return strings.Join(said, v.link)
}

func (v about) In(s Style) string { return s.About(measure.Length(v)) }

// About is a length as the hole About has it.
func (s Style) About(l measure.Length) string {
	n := s.Notation
	if l != 0 && n.Mark() > 0 && l.ToMark(n.Mark()) == 0 {
		return Say("under {half}", Name("half", n.Exact(n.Mark()/2))).In(s)
	}
	return n.Length(l)
}

func (v upTo) In(s Style) string {
	l, n := measure.Length(v), s.Notation
	if mark := n.Mark(); l > 0 && l.ToMark(mark) == 0 {
		return n.Exact(mark / 2)
	}
	return n.Length(l)
}

func (v held) In(s Style) string {
	l, limit, n := v.length, v.limit, s.Notation
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
