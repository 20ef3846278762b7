package price

import (
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// QuoteOn is what the client of a job is quoted on a day: the amounts and nothing of
// what is behind them.
func QuoteOn(p *page.Page, j *job.Job, day days.Date) plan.Quote {
	t := &told{p, j, &p.Sheet.Price}
	c := j.Price.Currency
	q := plan.Quote{Known: true, Date: day.String(), Currency: c.Code, Digits: int(c.Digits)}
	if holds := j.Plan.Price.HoldsDays; holds > 0 {
		q.Until = (day + days.Date(holds)).String()
	}
	if j.Days.Dated {
		q.Done = j.Days.LastDay().String()
	}
	// A rough price is one until there is a price: two would be one too many.
	if r := &j.Price.Rough; r.Known && !j.Price.Known {
		q.Low, q.High = known(r.Low), known(r.High)
	}
	if j.Price.Known {
		t.quote(&q)
	}
	return q
}

func known(sum decimal.Decimal) plan.Money { return plan.Money{Amount: sum, Known: true} }

// quote puts the price as worked out into q.
func (t *told) quote(q *plan.Quote) {
	priced := &t.Price.Quote
	for _, line := range priced.Client {
		q.Lines = append(q.Lines, plan.QuoteLine{Name: t.group(line.Group), Sum: known(line.Sum)})
	}
	if t.Plan.Price.Tax.Known {
		q.Tax = plan.QuoteLine{Share: t.Plan.Price.Tax, Sum: known(priced.Tax)}
	}
	q.Total = known(priced.Total)
	for i, p := range priced.Payments {
		q.Payments = append(q.Payments, plan.QuoteLine{Name: t.payment(p, i), Share: plan.Percent{Share: p.Share, Known: true}, Sum: known(p.Sum)})
	}
}

// quoted is the page Price of a client's copy: what was quoted, word for word.
func (t *told) quoted() {
	q := &t.Plan.Quote
	date := words.Of("date", Day(q.Date))
	if t.out.Quoted = t.Say("Quoted on {date}.", date); q.Until != "" {
		t.out.Quoted = t.Say("Quoted on {date}; the price holds until {until}.", date, words.Of("until", Day(q.Until)))
	}
	isRough, between := q.Low.Known && q.High.Known, t.between(q.Low.Amount, q.High.Amount)
	if isRough {
		t.out.Range = t.Told(between)
	}
	switch {
	case q.Total.Known:
		t.quotedSums()
		t.out.Text = t.Told(t.priceIs(q.Total.Amount, q.Tax.Share.Known, q.Tax.Sum.Amount))
	case isRough:
		t.out.Text = t.Say("A rough price has been quoted: {range}.", words.Of("range", between))
	default:
		t.out.Text = t.Say("No price has been quoted.")
	}
}

// quotedSums are the lines of a quote and what they add up to.
func (t *told) quotedSums() {
	q, net := &t.Plan.Quote, t.Price.Net
	parts := make([]string, len(q.Lines))
	for i, line := range q.Lines {
		parts[i] = t.sum(line.Sum.Amount)
		t.out.Client = append(t.out.Client, sheet.Total{What: line.Name, Sum: parts[i]})
	}
	rule, source := t.Say("The amounts as quoted, added up."), t.Say("Arithmetic. The amounts are those of the quote.")
	t.figure("price.net", t.Say("price before tax"), net, rule, strings.Join(parts, " + "), source)
	tax := q.Tax.Sum.Amount
	if share := q.Tax.Share; share.Known {
		t.out.Client = append(t.out.Client, sheet.Total{What: t.taxAt(share.Share), Sum: t.sum(tax)})
		t.figure("price.tax", t.Say("tax"), tax, t.Say("The tax as quoted."), t.Share(share.Share), source)
	}
	sum := t.sum(net) + " + " + t.sum(tax)
	t.figure("price.total", t.Say("price"), q.Total.Amount, rule, sum, source)
	t.total(t.Say("Price"), q.Total.Amount, "", sum)
	for _, p := range q.Payments {
		text := ""
		if p.Share.Known {
			text = t.ofPrice(p.Share.Share)
		}
		t.out.Stages = append(t.out.Stages, sheet.Total{What: p.Name, Sum: t.sum(p.Sum.Amount), Text: text})
	}
}

// Day is a day of the plan in words, or as it was written where it is no day.
func Day(text string) words.Value {
	if day, ok := days.ParseDate(text); ok {
		return days.WithYear(day)
	}
	return words.Verbatim(text)
}
