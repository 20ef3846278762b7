package tell

import (
	"slices"
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	tellprice "ceilingwright/core/tell/price"
	"ceilingwright/core/words"
)

// price is the block Price.
func (b *builder) price() {
	tellprice.Tell(&b.Page, b.Job)
	for i := range b.WhatIfs {
		tellprice.WhatIf(&b.Page, b.Job, &b.WhatIfs[i])
	}
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
