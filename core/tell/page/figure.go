package page

import (
	"strconv"

	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
)

// Figure puts a figure on the sheet.
func (p *Page) Figure(f sheet.Figure) { p.Sheet.Figures = append(p.Sheet.Figures, f) }

// Length is a figure that is a length. sum is the numbers put in; the result
// is added to it, and what the tape mark hides.
func (p *Page) Length(block, id, label string, l measure.Length, rule, sum, source string) {
	p.Figure(sheet.Figure{
		ID: id, Block: block, Label: label, Value: Nanometres(l), Unit: "nm",
		Text: p.Notation.Length(l), Other: p.Other.Length(l),
		Working: sheet.Working{Rule: rule, Sum: Equals(sum, p.Exactly(l)), Source: source},
	})
}

// Area is a figure that is an area.
func (p *Page) Area(block, id, label string, a measure.Area, rule, sum, source string) {
	p.Figure(sheet.Figure{
		ID: id, Block: block, Label: label, Value: Plain(a.SquareMetres), Unit: "m2",
		Text: p.Notation.Area(a), Other: p.Other.Area(a),
		Working: sheet.Working{Rule: rule, Sum: Equals(sum, p.Notation.Area(a)), Source: source},
	})
}

// Count is a figure that is a whole number; text is how it is put, "" for the
// number alone.
func (p *Page) Count(block, id, label string, n int64, text, rule, sum, source string) {
	if text == "" {
		text = p.Notation.Number(measure.NumberFromInt(n), 0)
	}
	p.Figure(sheet.Figure{
		ID: id, Block: block, Label: label, Value: strconv.FormatInt(n, 10), Text: text,
		Working: sheet.Working{Rule: rule, Sum: Equals(sum, text), Source: source},
	})
}

// ExactArea is an area with so many decimals that a sum of money made of it comes to
// the coin that is printed.
func (p *Page) ExactArea(a measure.Area) string {
	if p.Notation.System == measure.FeetInches {
		return p.Notation.NumberTrimmed(a.SquareFeet(), Finer(a.SquareFeet(), 4)) + " ft²"
	}
	return p.Notation.NumberTrimmed(a.SquareMetres, Finer(a.SquareMetres, 4)) + " m²"
}

// Finer is how many decimals an amount is written with in a sum: places of one of 10
// and more, and one more for each digit that a smaller one has less.
func Finer(n measure.Number, places int32) int32 {
	for least := measure.NumberFromInt(10); n.Cmp(least) < 0 && n.Sign() > 0 && places < 8; places++ {
		least = least.Quo(measure.NumberFromInt(10))
	}
	return places
}

// Plus is a sum and what is added to it, which may be its first.
func Plus(sum, more string) string {
	if sum == "" {
		return more
	}
	return sum + " + " + more
}
