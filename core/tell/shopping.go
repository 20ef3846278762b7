package tell

import (
	"ceilingwright/core/export"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"

	"github.com/shopspring/decimal"
)

// Shopping is the shopping list of a plan as a table with a row of headings: one
// row for each size that is bought of a thing, and one for a thing whose sizes
// are not known. Counts, contents and prices are numbers, the rest is text. A
// document that is no plan gives the headings alone.
func Shopping(doc plan.Document) [][]export.Cell {
	b := builderFrom(doc, "")
	if doc.Usable {
		b.workOut()
	}
	rows := [][]export.Cell{headings()}
	for i := range b.Sheet.Shopping {
		rows = append(rows, b.shoppingRows(i)...)
	}
	return rows
}

func headings() []export.Cell {
	var row []export.Cell
	for _, heading := range []string{"What", "Pieces", "Sold as", "Contents of one", "Unit", "Price of one", "Price", "Currency", "Note"} {
		row = append(row, export.Text(heading))
	}
	return row
}

// shoppingRows are the rows of one line of the shopping list. Its note stands in
// the first.
func (b *builder) shoppingRows(line int) [][]export.Cell {
	var rows [][]export.Cell
	note := b.Sheet.Shopping[line].Detail
	for i := range b.packs {
		if p := &b.packs[i]; p.line == line {
			rows, note = append(rows, append(b.packCells(p), export.Text(note))), ""
		}
	}
	if len(rows) == 0 {
		empty, buy := export.Cell{}, &b.Sheet.Shopping[line]
		rows = [][]export.Cell{{export.Text(buy.What), empty, export.Text(buy.Amount), empty, empty, empty, empty, empty, export.Text(note)}}
	}
	return rows
}

// costs puts on the shopping list what each line costs, where all that is bought
// of it has a price.
func (b *builder) costs() {
	b.currency()
	b.sundries()
	all, missing, sums := decimal.Decimal{}, []string{}, []string{}
	for i := range b.Sheet.Shopping {
		sum, packs, known := decimal.Decimal{}, 0, true
		for j := range b.packs {
			if p := &b.packs[j]; p.line == i {
				cost, ok := b.packCost(p)
				sum, packs, known = sum.Add(cost), packs+1, known && ok
			}
		}
		if packs > 0 && known {
			b.Sheet.Shopping[i].Cost = b.money(sum)
			all, sums = all.Add(sum), append(sums, b.sum(sum))
		} else {
			missing = append(missing, b.Sheet.Shopping[i].What)
		}
	}
	if len(sums) == 0 {
		return
	}
	b.Sheet.Bill = sheet.Total{What: "Together", Sum: b.money(all), Working: plus(sums...) + " = " + b.sum(all)}
	if len(missing) > 0 {
		b.Sheet.Bill.Text = "Not in it, because what it costs is not given: " + problem.Listed(missing) + "."
	}
}

// packCost is what packs cost together, rounded as the price rounds a line.
func (b *builder) packCost(p *pack) (decimal.Decimal, bool) {
	if !p.priced {
		return decimal.Decimal{}, false
	}
	return price.Round(measure.NumberFromDecimal(p.each).Mul(measure.NumberFromInt(p.count)), int32(b.Plan.Price.Digits))
}

// mostContentDecimals is finer than any can or roll is sold by.
const mostContentDecimals = 6

func (b *builder) packCells(p *pack) []export.Cell {
	cells := []export.Cell{export.Text(p.what), export.Number(decimal.NewFromInt(p.count)), export.Text(p.name),
		export.Number(p.size.RoundHalfEven(mostContentDecimals)), export.Text(p.unit), {}, {}, {}}
	if sum, ok := b.packCost(p); ok {
		cells[5], cells[6], cells[7] = export.Number(p.each), export.Number(sum), export.Text(b.Plan.Price.Currency)
	}
	return cells
}
