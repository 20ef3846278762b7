package price

import (
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/price"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// totals are the sums under the lines of the firm's own copy, each with what it is made
// of.
func (t *told) totals() {
	p, q := &t.Plan.Price, &t.Price.Quote
	lines := make([]string, len(q.Lines))
	for i := range q.Lines {
		lines[i] = t.sum(q.Lines[i].Sum)
	}
	t.total(t.Say("Direct cost"), q.Direct, t.Say("The lines together."), strings.Join(lines, " + "))
	cost := t.sum(q.Direct)
	if p.Contingency.Known {
		t.total(t.Say("Contingency"), q.Contingency, t.Say("{share} of the direct cost.", words.Share("share", q.Terms.Contingency)), t.exactShare(q.Terms.Contingency)+" × "+cost)
		cost = page.Plus(cost, t.sum(q.Contingency))
	}
	if p.Overhead.Known {
		t.total(t.Say("Overhead"), q.Overhead, t.overhead(), t.exactShare(q.Terms.Overhead)+" × "+inBrackets(cost))
		cost = page.Plus(cost, t.sum(q.Overhead))
	}
	t.total(t.Say("Cost"), q.Cost, "", cost)
	net := t.sum(q.Cost)
	if p.ProfitShare.Known {
		t.total(t.profit(), q.Profit, t.bothWays(), t.profitSum())
		net = page.Plus(net, t.sum(q.Profit))
	}
	if !q.ToMinimum.IsZero() {
		t.total(t.Say("Up to the minimum charge"), q.ToMinimum, t.Say("The minimum charge is {least}.", t.holeSum("least", q.Minimum)), t.sum(q.Minimum)+" − "+inBrackets(net))
		net = page.Plus(net, t.sum(q.ToMinimum))
	}
	if !q.ToStep.IsZero() {
		t.total(t.Say("Rounded up"), q.ToStep, t.Say("To a whole number of {step}.", t.holeSum("step", q.RoundTo)), t.sum(q.Net)+" − "+inBrackets(net))
		net = page.Plus(net, t.sum(q.ToStep))
	}
	t.total(t.Say("Price before tax"), q.Net, t.gain(), net)
	if p.Tax.Known {
		t.total(t.taxAt(q.Terms.Tax), q.Tax, t.taxRule(), t.taxSum())
	}
	t.total(t.Say("Price"), q.Total, "", t.withTax())
}

// total puts a sum under the lines; working is what it is made of.
func (t *told) total(what string, sum decimal.Decimal, text, working string) {
	t.out.Totals = append(t.out.Totals, sheet.Total{What: what, Sum: t.sum(sum), Text: text, Working: working + " = " + t.sum(sum)})
}

// inBrackets is a sum as a part of another.
func inBrackets(sum string) string {
	if strings.Contains(sum, " + ") {
		return "(" + sum + ")"
	}
	return sum
}

func (t *told) taxAt(share measure.Number) string {
	return t.Say("Tax {share}", words.Share("share", share))
}

func (t *told) overhead() string {
	q := &t.Price.Quote
	share := words.Share("share", q.Terms.Overhead)
	if part, ok := q.OverheadOfNet(); ok {
		return t.Say("{share} of the cost, which is {part} of the price before tax.", share, words.Share("part", part))
	}
	return t.Say("{share} of the cost.", share)
}

func (t *told) profit() string {
	if t.Price.Quote.Terms.Profit == price.Margin {
		return t.Say("Margin")
	}
	return t.Say("Markup")
}

// profitSum is how the profit comes about: the price it makes is rounded, and the
// cost taken from it.
func (t *told) profitSum() string {
	q := &t.Price.Quote
	cost, share := t.sum(q.Cost), t.exactShare(q.ProfitShare)
	if q.Terms.Profit == price.Margin {
		return cost + " ÷ (1 − " + share + ") − " + cost
	}
	return cost + " × " + share
}

// bothWays is the profit as was typed and the other way: a markup is often
// taken for a margin.
func (t *told) bothWays() string {
	one, share := measure.NumberFromInt(1), t.Price.Quote.ProfitShare
	if t.Price.Quote.Terms.Profit == price.Margin {
		return t.Say("A margin of {margin} of the price is a markup of {markup} on the cost.", words.Share("margin", share), words.Share("markup", share.Quo(one.Sub(share))))
	}
	return t.Say("A markup of {markup} on the cost is a margin of {margin} of the price.", words.Share("markup", share), words.Share("margin", share.Quo(one.Add(share))))
}

// gain is what is left of the price, as a margin and as a markup.
func (t *told) gain() string {
	q := &t.Price.Quote
	gain := t.holeSum("gain", q.Gain())
	margin, isPriced := q.AsMargin()
	markup, isCosted := q.AsMarkup()
	switch {
	case isCosted:
		return t.Say("It leaves {gain} over the cost, a margin of {margin} or a markup of {markup}.", gain, words.Share("margin", margin), words.Share("markup", markup))
	case isPriced:
		return t.Say("It leaves {gain} over the cost, a margin of {margin}.", gain, words.Share("margin", margin))
	}
	return t.Say("It leaves {gain} over the cost.", gain)
}

// clientCopy is the price without rates: one line for each group, and the tax.
func (t *told) clientCopy() {
	q := &t.Price.Quote
	for _, line := range q.Client {
		t.out.Client = append(t.out.Client, sheet.Total{What: t.group(line.Group), Sum: t.sum(line.Sum)})
	}
	if t.Plan.Price.Tax.Known {
		t.out.Client = append(t.out.Client, sheet.Total{What: t.taxAt(q.Terms.Tax), Sum: t.sum(q.Tax)})
	}
}

func (t *told) payments() {
	q := &t.Price.Quote
	left := t.sum(q.Total)
	for i, p := range q.Payments {
		working := t.exactShare(p.Share) + " × " + t.sum(q.Total)
		if i == len(q.Payments)-1 {
			working = left
		}
		t.out.Stages = append(t.out.Stages, sheet.Total{What: t.payment(p, i), Sum: t.sum(p.Sum), Text: t.ofPrice(p.Share), Working: working + " = " + t.sum(p.Sum)})
		left += " − " + t.sum(p.Sum)
	}
}

func (t *told) ofPrice(share measure.Number) string {
	return t.Say("{share} of the price.", words.Share("share", share))
}

// payment says when a payment is due; i is its place among them, from 0.
func (t *told) payment(p price.Payment, i int) string {
	switch {
	case p.Deposit:
		return t.Say("Deposit, before work begins")
	case p.Rest:
		return t.Say("The rest, when the work is done")
	case p.Name == "":
		return t.Say("Payment {n}", words.Count("n", i+1))
	}
	return p.Name
}
