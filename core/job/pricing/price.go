// Package pricing works out what to buy for a job, what it costs, and its price.
package pricing

import (
	"slices"

	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Price is what the job is priced at. Lines are what it costs, as far as it could be
// worked out, and Missing what has no price. Quote is the price where it is Known, for
// the parts that are Worked on. Net is the price before tax of a plan that holds a
// quote, as the lines quoted add up.
type Price struct {
	Currency price.Currency
	Rough    Rough
	Lines    []price.Line
	Missing  []words.Text
	Quote    price.Quote
	Known    bool
	Worked   []WorkedPart
	Net      decimal.Decimal
}

// pricing is a job being priced.
type pricing struct {
	Given
	Price     Price
	isRefused func(at string) bool
	problem.List
}

// Given is what a job is priced by.
type Given struct {
	Plan *plan.Plan
	*surface.Surface
	*steps.Found
	Days *schedule.Days
}

// Of prices a job. A plan that asks for no price gets none, and one that holds a quote
// keeps it. isRefused tells of a blank, by its pointer, whether it could not be read.
func Of(g Given, isRefused func(at string) bool) (Price, []problem.Problem) {
	w := pricing{Given: g, isRefused: isRefused}
	w.buyLeafTogether()
	w.makePrice()
	return w.Price, w.List
}

func (w *pricing) makePrice() {
	w.Price = Price{Currency: Currency(w.Plan)}
	if w.longCurrency() {
		w.Remark("/price/currency", problem.Caution, words.Say("This is longer than the code of a currency, so it is left out."), words.Say("Write its code of three letters."))
	}
	if w.Plan.Quote.Known {
		for _, line := range w.Plan.Quote.Lines {
			w.Price.Net = w.Price.Net.Add(line.Sum.Amount)
		}
		return
	}
	w.roughPrice()
	terms := &w.Plan.Price
	if !terms.IsAsked() {
		w.unasked()
		return
	}
	costs := CostsOf(w.Given)
	switch {
	case len(costs.Items) > 0 || terms.Minimum.Known:
		w.quote(&costs)
	case terms.Rate.Known:
		w.leftOut(costs.Missing)
	default: // the terms would make a price of 0 of nothing, and a client be quoted it
		w.unasked()
	}
}

// quote makes a price of costs.
func (w *pricing) quote(costs *Costs) {
	terms := w.terms()
	quote, problems, ok := price.QuoteOf(costs.Items, terms)
	w.Report("/price", problems)
	w.leftOut(costs.Missing)
	w.unpricedParts()
	w.Price.Lines, w.Price.Missing = quote.Lines, costs.Missing
	if ok && !w.unreadTerms() {
		w.Price.Quote, w.Price.Known, w.Price.Worked = quote, true, w.workedOn()
	}
}

// longestCurrency is above any code or sign of a currency.
const longestCurrency = 12

// Currency is what the money of the plan is counted in; a code too long for one is left
// out.
func Currency(of *plan.Plan) price.Currency {
	p, q := &of.Price, &of.Quote
	c := price.Currency{Code: p.Currency, Digits: int32(p.Digits)}
	if q.Known {
		c = price.Currency{Code: q.Currency, Digits: int32(q.Digits)}
	}
	if len(c.Code) > longestCurrency {
		c.Code = ""
	}
	return c
}

func (w *pricing) longCurrency() bool {
	if w.Plan.Quote.Known {
		return len(w.Plan.Quote.Currency) > longestCurrency
	}
	return len(w.Plan.Price.Currency) > longestCurrency
}

// unasked says what is missing where the plan says how a price is paid, rounded or
// added to, and nothing that a price could be made of. What is added to every price
// need not be spoken of beside a rough one.
func (w *pricing) unasked() {
	p := &w.Plan.Price
	say := func(at string, what words.Text) {
		w.Remark(at, problem.Caution, what, words.Say("Give what an hour of one person costs, or the minimum charge."))
	}
	stage := slices.IndexFunc(p.Stages, func(s plan.Stage) bool { return s.Share.Known || s.Name != "" })
	switch {
	case p.Deposit.Known:
		say("/price/deposit", words.Say("A deposit is given, but nothing to make a price of."))
	case stage >= 0:
		say(p.Stages[stage].At+"/percent", words.Say("Payments are given, but nothing to make a price of."))
	case p.RoundTo.Known:
		say("/price/roundTo", words.Say("It is said what to round up to, but nothing to make a price of."))
	case p.HoldsDays > 0:
		say("/price/holdsDays", words.Say("It is said how long the price holds, but nothing to make a price of."))
	case p.TravelDays > 0:
		say("/price/travelDays", words.Say("Days of travel are given, but nothing to make a price of."))
	case w.Price.Rough.Known:
	case p.HirePerDay.Known:
		say("/price/hirePerDay", words.Say("Hire of the platform is given, but nothing to make a price of."))
	case p.TravelPerDay.Known:
		say("/price/travelPerDay", words.Say("Travel is given, but nothing to make a price of."))
	case p.Contingency.Known:
		say("/price/contingency", words.Say("A contingency is given, but nothing to make a price of."))
	case p.Overhead.Known:
		say("/price/overhead", words.Say("Overhead is given, but nothing to make a price of."))
	case p.ProfitShare.Known:
		say("/price/profitPercent", words.Say("A profit is given, but nothing to make a price of."))
	case p.Tax.Known:
		say("/price/tax", words.Say("A tax is given, but nothing to make a price of."))
	}
}

// leftOut says what has no price.
func (w *pricing) leftOut(missing []words.Text) {
	if len(missing) > 0 {
		w.Remark("/price", problem.Caution, words.Say("Not in the price, because what it costs is not given: {missing}.", words.FewOf("missing", missing)),
			words.Say("Give what it costs, or 0 where it costs nothing."))
	}
}

// unreadTerms tells whether a blank that makes the price could not be read: a
// price without it would be taken for the whole.
func (w *pricing) unreadTerms() bool {
	return slices.ContainsFunc([]string{"digits", "rate", "contingency", "overhead", "profit", "profitPercent", "minimum", "roundTo", "tax", "taxOn", "hirePerDay",
		"travelPerDay", "travelDays", "tapePerRoll"}, func(blank string) bool { return w.isRefused("/price/" + blank) })
}

// terms are the plan's terms of the price.
func (w *pricing) terms() price.Terms {
	p := &w.Plan.Price
	terms := price.Terms{
		Digits: int32(p.Digits), Contingency: p.Contingency.Share, Overhead: p.Overhead.Share, Profit: p.Profit, ProfitShare: p.ProfitShare.Share,
		Minimum: p.Minimum.Amount, RoundTo: p.RoundTo.Amount, Tax: p.Tax.Share, TaxOn: p.TaxOn, Deposit: p.Deposit.Share,
	}
	left := measure.NumberFromInt(1).Sub(terms.Deposit)
	for i, stage := range p.Stages {
		share := stage.Share
		switch last := i == len(p.Stages)-1; {
		case share.Known:
			left = left.Sub(share.Share)
		case last && left.Sign() >= 0:
			share.Share = left
		case !last:
			w.Remark(stage.At+"/percent", problem.Caution, words.Say("This payment has no share of the price, so it asks for nothing."),
				words.Say("Give its per cent. Only the last may stay empty: it takes the rest."))
		}
		terms.Stages = append(terms.Stages, price.Stage{Name: stage.Name, Share: share.Share})
	}
	return terms
}

// LabourShare is what part of the direct cost is work, 0 where none is.
func (p *Price) LabourShare() (share measure.Number) {
	for _, line := range p.Lines {
		if line.Group == price.Labour {
			share = share.Add(measure.NumberFromDecimal(line.Sum))
		}
	}
	if share.Sign() <= 0 {
		return measure.Number{}
	}
	return share.Quo(measure.NumberFromDecimal(p.Quote.Direct))
}

// unpricedParts says that what is mixed in has no blank for a price.
func (w *pricing) unpricedParts() {
	if len(w.Finish.ToHave) == 0 {
		return
	}
	names := make([]words.Text, len(w.Finish.ToHave))
	for i := range w.Finish.ToHave {
		names[i] = w.Finish.ToHave[i].CalledAlone()
	}
	w.Remark("/price", problem.Caution,
		words.Say("What is mixed in has no price of its own and is not in the price: {names}.", words.FewOf("names", names)),
		words.Say("Count it in the price of the cans it is mixed into, or in the contingency."))
}
