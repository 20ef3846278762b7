package tell

import (
	"slices"
	"strings"

	"ceilingwright/core/sheet"

	"ceilingwright/core/days"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
)

// QuoteOf is what the client of a plan is quoted on a day, 2027-03-01: the
// amounts and nothing of what is behind them. A plan that is a client's already
// keeps its quote. ok is false where the document is no plan or the day is none.
func QuoteOf(doc plan.Document, date string) (q plan.Quote, ok bool) {
	day, ok := days.ParseDate(date)
	if !ok || !doc.Usable {
		return q, false
	}
	b := builderFrom(doc, "")
	if b.Plan.Quote.Known {
		return b.Plan.Quote, true
	}
	b.workOut()
	p := &b.Plan.Price
	q = plan.Quote{Known: true, Date: date, Currency: p.Currency, Digits: p.Digits}
	if p.HoldsDays > 0 {
		q.Until = (day + days.Date(p.HoldsDays)).String()
	}
	if c := &b.Days; c.Dated {
		q.Done = c.LastDay().String()
	}
	// A rough price is one until there is a price: two would be one too many.
	if b.priced == nil && b.Sheet.Price.Range != "" {
		q.Low, q.High = known(b.roughly.Low), known(b.roughly.High)
	}
	b.quote(&q)
	return q, true
}

func known(sum decimal.Decimal) plan.Money { return plan.Money{Amount: sum, Known: true} }

// quote puts the price as worked out into q, where there is one.
func (b *builder) quote(q *plan.Quote) {
	if b.priced == nil {
		return
	}
	for _, line := range b.priced.Client {
		q.Lines = append(q.Lines, plan.QuoteLine{Name: groupName(line.Group), Sum: known(line.Sum)})
	}
	if b.Plan.Price.Tax.Known {
		q.Tax = plan.QuoteLine{Share: b.Plan.Price.Tax, Sum: known(b.priced.Tax)}
	}
	q.Total = known(b.priced.Total)
	for i, p := range b.priced.Payments {
		q.Payments = append(q.Payments, plan.QuoteLine{Name: paymentName(p, i), Share: plan.Percent{Share: p.Share, Known: true}, Sum: known(p.Sum)})
	}
}

// quotedPrice is the block Price of a client's copy: what was quoted, word for
// word.
func (b *builder) quotedPrice() {
	q, out := &b.Plan.Quote, &b.Sheet.Price
	b.Plan.Price.Currency, b.Plan.Price.Digits = q.Currency, q.Digits
	b.currency()
	out.Quoted = "Quoted on " + dayInWords(q.Date)
	if q.Until != "" {
		out.Quoted += "; the price holds until " + dayInWords(q.Until)
	}
	out.Quoted += "."
	if q.Low.Known && q.High.Known {
		out.Range = b.sum(q.Low.Amount) + " to " + b.money(q.High.Amount)
		if q.Low.Amount.Equal(q.High.Amount) {
			out.Range = "about " + b.money(q.High.Amount)
		}
	}
	if !q.Total.Known {
		out.Text = "No price has been quoted."
		if out.Range != "" {
			out.Text = "A rough price has been quoted: " + out.Range + "."
		}
		return
	}
	b.quotedSums()
	out.Text = "The price is " + b.money(q.Total.Amount) + taxWords(q.Tax.Share.Known, b.sum(q.Tax.Sum.Amount), q.Tax.Sum.Amount) + "."
}

// quotedSums are the lines of a quote and what they add up to.
func (b *builder) quotedSums() {
	q, out := &b.Plan.Quote, &b.Sheet.Price
	net, parts := decimal.Decimal{}, make([]string, len(q.Lines))
	for i, line := range q.Lines {
		net, parts[i] = net.Add(line.Sum.Amount), b.sum(line.Sum.Amount)
		out.Client = append(out.Client, sheet.Total{What: line.Name, Sum: parts[i]})
	}
	const rule, source = "The amounts as quoted, added up.", "Arithmetic. The amounts are those of the quote."
	b.sumFigure("price.net", "price before tax", net, rule, strings.Join(parts, " + "), source)
	if q.Tax.Share.Known {
		out.Client = append(out.Client, sheet.Total{What: "Tax " + b.Share(q.Tax.Share.Share), Sum: b.sum(q.Tax.Sum.Amount)})
		b.sumFigure("price.tax", "tax", q.Tax.Sum.Amount, "The tax as quoted.", b.Share(q.Tax.Share.Share), source)
	}
	b.sumFigure("price.total", "price", q.Total.Amount, rule, b.sum(net)+" + "+b.sum(q.Tax.Sum.Amount), source)
	b.total("Price", q.Total.Amount, "", b.sum(net)+" + "+b.sum(q.Tax.Sum.Amount))
	for _, p := range q.Payments {
		text := ""
		if p.Share.Known {
			text = b.Share(p.Share.Share) + " of the price."
		}
		out.Stages = append(out.Stages, sheet.Total{What: p.Name, Sum: b.sum(p.Sum.Amount), Text: text})
	}
}

// dayInWords is a day of the plan in words, or as it was written where it is no
// day.
func dayInWords(text string) string {
	if day, ok := days.ParseDate(text); ok {
		return longDate(day)
	}
	return text
}

// forClient takes off a client's sheet what is for the firm alone: what to buy, and
// what the firm's own blanks, which a client's plan does not have, would be asked
// for. Safety is not on it either: it is judged by the days of the work, which stay
// with those who do it.
func (b *builder) forClient() {
	b.Sheet.Shopping, b.Sheet.Bill = nil, sheet.Total{}
	if b.Plan.Quote.Done != "" {
		b.Sheet.Days.Text = "The work is planned to be done on " + dayInWords(b.Plan.Quote.Done) + "."
	}
	b.Problems = slices.DeleteFunc(b.Problems, func(p problem.Problem) bool {
		return p.At != "" && !strings.HasPrefix(p.At, "/quote")
	})
}
