// Package price tells what the job is priced at: the firm's own copy with its rates, the
// client's copy without them, the payments, the price of a first visit, and a quote as
// it was given.
package price

import (
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/price"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/finish"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// told is the price on its way onto the sheet.
type told struct {
	*page.Page
	*job.Job
	out *sheet.Price
}

// Tell puts the page Price on the sheet, all but what it would be otherwise.
func Tell(p *page.Page, j *job.Job) {
	t := &told{p, j, &p.Sheet.Price}
	if j.Plan.Quote.Known {
		t.quoted()
		return
	}
	t.rough()
	t.lines()
	if !j.Price.Known {
		return
	}
	t.figures()
	t.totals()
	t.clientCopy()
	t.payments()
	t.out.Text = t.summary()
}

// sum is a sum without its currency, money one with it, each the price of one.
func (t *told) sum(sum decimal.Decimal) string   { return t.Price.Currency.Sum(sum).In(t.Style()) }
func (t *told) money(sum decimal.Decimal) string { return t.Price.Currency.Money(sum).In(t.Style()) }
func (t *told) each(one decimal.Decimal) string  { return t.Price.Currency.Each(one).In(t.Style()) }

// holeSum and holeMoney are the same for a sentence.
func (t *told) holeSum(name string, sum decimal.Decimal) words.Hole {
	return words.Of(name, t.Price.Currency.Sum(sum))
}

func (t *told) holeMoney(name string, sum decimal.Decimal) words.Hole {
	return words.Of(name, t.Price.Currency.Money(sum))
}

// exactShare is a fraction in per cent for a sum that is worked out again.
func (t *told) exactShare(n measure.Number) string {
	return t.Notation.NumberTrimmed(n.Mul(measure.NumberFromInt(100)), 8) + " %"
}

// lines are the lines of the firm's own copy, each with its sum: a reader who works it
// out again comes to the same coin.
func (t *told) lines() {
	for _, l := range t.Price.Lines {
		rate, times := t.each(l.Rate), t.Notation.NumberTrimmed(l.Count, 2)
		if l.Unit == price.Hour {
			times = t.Notation.Number(measure.NumberFromInt(minutesOf(&l)), 0) + " ÷ 60"
		}
		line := sheet.PriceLine{Group: t.group(l.Group), What: t.Told(l.What), Amount: t.amount(&l), Rate: rate, Sum: t.sum(l.Sum),
			Working: times + " × " + rate + " = " + t.sum(l.Sum)}
		if l.Unit == price.Set { // one of it: its price is the sum
			line.Rate = ""
		}
		t.out.Lines = append(t.out.Lines, line)
	}
}

// minutesOf are the minutes of a line that is paid by the hour.
func minutesOf(l *price.Line) int64 {
	minutes, _ := l.Count.Mul(measure.NumberFromInt(60)).Floor()
	return minutes
}

// amount is how much there is of a line.
func (t *told) amount(l *price.Line) string {
	count := words.Trimmed("count", l.Count, 2)
	switch l.Unit {
	case price.Piece:
		return t.Say("{count} × {piece}", count, words.Of("piece", l.Sold))
	case price.Hour:
		return days.Lasting(minutesOf(l)).In(t.Style())
	case price.Day:
		whole, _ := l.Count.Floor()
		return t.Say("{n|day|days}", words.Count("n", whole))
	case price.SquareFoot:
		return t.Say("{count} ft²", count)
	case price.SquareMetre:
		return t.Say("{count} m²", count)
	}
	return ""
}

// group is a group as both copies of the price call it.
func (t *told) group(group price.Group) string {
	switch group {
	case price.Masks:
		return t.Say("Masks")
	case price.Materials:
		return t.Say("Paint and other products")
	case price.Leaf:
		return t.Say("Metal leaf")
	case price.Tape:
		return t.Say("Tape")
	case price.Hire:
		return t.Say("Platform")
	case price.Travel:
		return t.Say("Travel")
	}
	return t.Say("Work")
}

const ofPrices = "Arithmetic, in the usual order (common practice, no source): direct cost, contingency on it, overhead on both, profit, tax. " +
	"Each printed line is rounded once to the smallest coin, an exact half away from zero, and a total is the sum of the lines above it."

func (t *told) figures() {
	q := &t.Price.Quote
	added := t.sum(q.Direct)
	for _, part := range []decimal.Decimal{q.Contingency, q.Overhead, q.Profit, q.ToMinimum, q.ToStep} {
		if !part.IsZero() {
			added = page.Plus(added, t.sum(part))
		}
	}
	t.figure("price.net", t.Say("price before tax"), q.Net,
		t.Say("What the job costs, and what is added for contingency, overhead and profit, up to the minimum charge and to round up."), added, t.Say(ofPrices))
	if t.Plan.Price.Tax.Known {
		t.figure("price.tax", t.Say("tax"), q.Tax, t.taxRule(), t.taxSum(), t.Say("Arithmetic. Which rate holds, on what, and how it is rounded, the tax office says."))
	}
	t.figure("price.total", t.Say("price"), q.Total, t.Say("The price before tax and the tax."), t.withTax(), t.Say(ofPrices))
	t.perArea()
}

// withTax is what the price is made of.
func (t *told) withTax() string { return page.Plus(t.sum(t.Price.Quote.Net), t.sum(t.Price.Quote.Tax)) }

// figure is a figure that is a sum of money.
func (t *told) figure(id, label string, sum decimal.Decimal, rule, working, source string) {
	c := t.Price.Currency
	t.Figure(sheet.Figure{
		ID: id, Block: page.Price, Label: label, Value: sum.StringFixed(c.Digits), Unit: c.Code, Text: t.money(sum),
		Working: sheet.Working{Rule: rule, Sum: working + " = " + t.money(sum), Source: source},
	})
}

func (t *told) taxRule() string {
	switch t.Price.Quote.TaxOn {
	case price.TaxOnLines:
		return t.Say("The tax on each line of the client's copy, each rounded.")
	case price.TaxOnLinesDown:
		return t.Say("The tax on each line of the client's copy, each rounded down.")
	}
	return t.Say("The tax on the price before tax, rounded once.")
}

func (t *told) taxSum() string {
	q := &t.Price.Quote
	if q.TaxOn != price.TaxOnLines && q.TaxOn != price.TaxOnLinesDown {
		return t.sum(q.Net) + " × " + t.exactShare(q.Terms.Tax)
	}
	parts := make([]string, len(q.Client))
	for i, line := range q.Client {
		parts[i] = t.sum(line.Tax)
	}
	return strings.Join(parts, " + ")
}

// perArea is the price for an area of what is worked on.
func (t *told) perArea() {
	q, c := &t.Price.Quote, t.Price.Currency
	area, parts, areas := finish.Worked(t.Page, t.Job, t.Price.Worked)
	each, ok := q.PerArea(area)
	if !ok {
		return
	}
	text, of := c.ForArea(each, t.Notation.System == measure.FeetInches), words.Of("parts", parts)
	value, ok := price.Round(each, q.Digits)
	if !ok || text.IsEmpty() {
		return
	}
	t.out.PerArea = t.Say("{price} of {parts}", words.Of("price", text), of)
	t.Figure(sheet.Figure{
		ID: "price.perArea", Block: page.Price, Label: t.Say("by the area of {parts}", of), Value: value.StringFixed(q.Digits), Unit: c.Code + "/m2",
		Text: t.Told(text), Other: c.ForArea(each, t.Other.System == measure.FeetInches).In(words.Style{Notation: t.Other, Country: t.Country, Language: t.Language}),
		Working: sheet.Working{Rule: t.Say("The price by the area that is worked on: that of {parts}.", of),
			Sum: t.money(q.Total) + " ÷ " + areas + " = " + t.Told(text), Source: t.Say(ofPrices)},
	})
}

// summary sums the price up.
func (t *told) summary() string {
	q := &t.Price.Quote
	text := []words.Text{t.priceIs(q.Total, t.Plan.Price.Tax.Known, q.Tax)}
	if share := t.Price.LabourShare(); share.Sign() > 0 {
		text = append(text, words.Say("Work is {share} % of the direct cost.", words.Number("share", share.Mul(measure.NumberFromInt(100)), 0)))
	}
	if missing := t.Price.Missing; len(missing) > 0 {
		text = append(text, words.Say("Not in it: {missing}.", words.FewOf("missing", missing)))
	}
	return t.Told(words.Sentences(text...))
}

// priceIs says the price, and what tax is in it.
func (t *told) priceIs(total decimal.Decimal, taxed bool, tax decimal.Decimal) words.Text {
	price := t.holeMoney("price", total)
	switch {
	case !taxed:
		return words.Say("The price is {price}; no tax is given, so none is added.", price)
	case tax.Sign() > 0:
		return words.Say("The price is {price}, tax of {tax} included.", price, t.holeSum("tax", tax))
	}
	return words.Say("The price is {price}.", price)
}
