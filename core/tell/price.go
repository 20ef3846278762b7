package tell

import (
	"slices"
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	tellprice "ceilingwright/core/tell/price"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// price is the block Price.
func (b *builder) price() {
	b.MakePrice()
	tellprice.Tell(&b.Page, b.Job)
	if b.Price.Known {
		b.whatIfs()
	}
}

// money is a sum with its currency.
func (b *builder) money(sum decimal.Decimal) string { return b.Currency().Money(sum).In(b.Style()) }

// sum is a sum with the digits of its minor unit.
func (b *builder) sum(sum decimal.Decimal) string { return b.Currency().Sum(sum).In(b.Style()) }

// each is the price of one, with more digits where it was typed so.
func (b *builder) each(one decimal.Decimal) string { return b.Currency().Each(one).In(b.Style()) }

// perUnit is a price for a square metre written for the unit of area of a
// notation, "" where it is too large.
func (b *builder) perUnit(each measure.Number, n measure.Notation) string {
	style := b.Style()
	style.Notation = n
	return b.Currency().ForArea(each, n.System == measure.FeetInches).In(style)
}

// QuoteOf is what the client of a plan is quoted on a day, 2027-03-01: the
// amounts and nothing of what is behind them. A plan that is a client's already
// keeps its quote. ok is false where the document is no plan or the day is none.
func QuoteOf(doc plan.Document, date string) (q plan.Quote, ok bool) {
	day, ok := days.ParseDate(date)
	if !ok || !doc.Usable {
		return q, false
	}
	if doc.Plan.Quote.Known {
		return doc.Plan.Quote, true
	}
	b := builderFrom(doc, "")
	b.workOut()
	return tellprice.QuoteOn(&b.Page, b.Job, day), true
}

// forClient takes off a client's sheet what is for the firm alone: what to buy, and
// what the firm's own blanks, which a client's plan does not have, would be asked
// for. Safety is not on it either: it is judged by the days of the work, which stay
// with those who do it.
func (b *builder) forClient() {
	b.Sheet.Shopping, b.Sheet.Bill = nil, sheet.Total{}
	if done := b.Plan.Quote.Done; done != "" {
		b.Sheet.Days.Text = b.Say("The work is planned to be done on {day}.", words.Of("day", tellprice.Day(done)))
	}
	b.Problems = slices.DeleteFunc(b.Problems, func(p problem.Problem) bool {
		return p.At != "" && !strings.HasPrefix(p.At, "/quote")
	})
}
