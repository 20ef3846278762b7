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
