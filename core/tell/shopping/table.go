package shopping

import (
	"ceilingwright/core/export"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/steps"

	"github.com/shopspring/decimal"
)

// Table is the list as a table with a row of headings: one row for each size that is
// bought of a thing, and one for a thing whose sizes are not known. Counts, contents
// and prices are numbers, the rest is text.
func (l *List) Table() [][]export.Cell {
	rows := [][]export.Cell{l.headings()}
	for i := range l.Bought {
		rows = append(rows, l.rows(&l.Bought[i])...)
	}
	return rows
}

func (l *List) headings() (row []export.Cell) {
	for _, heading := range []string{l.Say("What"), l.Say("Pieces"), l.Say("Sold as"), l.Say("Contents of one"), l.Say("Unit"), l.Say("Price of one"),
		l.Say("Price"), l.Say("Currency"), l.Say("Note")} {
		row = append(row, export.Text(heading))
	}
	return row
}

// rows are the rows of one line. Its note stands in the first.
func (l *List) rows(line *pricing.Bought) (rows [][]export.Cell) {
	told := l.line(line)
	if len(line.Packs) == 0 {
		empty := export.Cell{}
		return [][]export.Cell{{export.Text(told.What), empty, export.Text(told.Amount), empty, empty, empty, empty, empty, export.Text(told.Detail)}}
	}
	for i := range line.Packs {
		note := ""
		if i == 0 {
			note = told.Detail
		}
		rows = append(rows, append(l.pack(told.What, &line.Packs[i]), export.Text(note)))
	}
	return rows
}

// mostContentDecimals is finer than any can or roll is sold by.
const mostContentDecimals = 6

func (l *List) pack(what string, p *steps.Pack) []export.Cell {
	size, unit := l.contents(p)
	cells := []export.Cell{export.Text(what), export.Number(decimal.NewFromInt(p.Count)), export.Text(l.Told(p.Called())),
		export.Number(size.RoundHalfEven(mostContentDecimals)), export.Text(unit), {}, {}, {}}
	if sum, ok := p.Cost(l.Plan.Price.Digits); ok {
		cells[5], cells[6], cells[7] = export.Number(p.Each), export.Number(sum), export.Text(pricing.Currency(&l.Plan).Code)
	}
	return cells
}
