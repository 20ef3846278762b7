package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Profit says what the profit is a share of.
type Profit string

// Markup is a share of the cost, margin a share of the price: 30 per cent on a
// cost of 1000 is 1300 as a markup and 1428.57 as a margin.
const (
	Markup Profit = "markup"
	Margin Profit = "margin"
)

// Profits lists the ways a profit is given.
func Profits() []Profit { return []Profit{Markup, Margin} }

// TaxOn says what tax is worked out on, and so how often it is rounded.
type TaxOn string

// On the total: once. On the lines: for each line of the client's copy, each
// rounded by Round, or each rounded down. Which of them holds, the tax office
// says.
const (
	TaxOnTotal     TaxOn = "total"
	TaxOnLines     TaxOn = "lines"
	TaxOnLinesDown TaxOn = "lines-down"
)

// TaxesOn lists what tax can be worked out on.
func TaxesOn() []TaxOn { return []TaxOn{TaxOnTotal, TaxOnLines, TaxOnLinesDown} }

// Terms is how a price is made from the cost. The zero value adds nothing and
// has no minor unit.
//
// The order is fixed: direct cost, contingency on it, overhead on both, profit
// on all three, the minimum charge, rounding up, tax (common practice,
// no source). Minimum and RoundTo are before tax.
type Terms struct {
	Digits      int32
	Contingency measure.Number
	Overhead    measure.Number
	Profit      Profit
	ProfitShare measure.Number
	Minimum     decimal.Decimal
	RoundTo     decimal.Decimal
	Tax         measure.Number
	TaxOn       TaxOn
	Deposit     measure.Number
	Stages      []Stage
}

// Stage is a payment: a share of the total, asked for when Name says.
type Stage struct {
	Name  string
	Share measure.Number
}

// Bounds of the terms, far outside any job.
const (
	mostShare  = 10 // of a cost: 1000 per cent
	mostStages = 24
)

// Refusals is what is wrong with t: digits of a minor unit outside 0 to 3; a
// share below 0; a contingency, an overhead or a markup above 1000 per cent; a
// margin of 100 per cent or more; a tax above 100 per cent; a minimum charge or
// a step of rounding below 0, above Most or finer than the minor unit.
func (t Terms) Refusals() []problem.Problem {
	var found []problem.Problem
	if t.Digits < 0 || t.Digits > MostDigits {
		return []problem.Problem{{At: "/digits", Severity: problem.Stop,
			What: words.Say("The money has {digits} digits after the point.", words.Count("digits", int(t.Digits))),
			Do:   words.Say("Give 0, 2 or 3, whichever the currency has.")}}
	}
	found = append(found, upTo("/contingency", words.Say("contingency"), t.Contingency, mostShare)...)
	found = append(found, upTo("/overhead", words.Say("overhead"), t.Overhead, mostShare)...)
	if t.Profit == Margin && t.ProfitShare.Cmp(one) >= 0 {
		found = append(found, problem.Problem{At: "/profitPercent", Severity: problem.Stop,
			What: words.Say("A margin of {share} per cent leaves nothing of the price for the cost.", perCent("share", t.ProfitShare)),
			Do:   words.Say("Give a margin below 100 per cent, or give it as a markup on the cost.")})
	} else {
		found = append(found, upTo("/profitPercent", t.profit().called(), t.ProfitShare, mostShare)...)
	}
	found = append(found, upTo("/tax", words.Say("tax"), t.Tax, 1)...)
	found = append(found, t.sumRefusals("/minimum", words.Say("minimum charge"), t.Minimum)...)
	return append(found, t.sumRefusals("/roundTo", words.Say("step to round up to"), t.RoundTo)...)
}

// profit is Profit, where nothing is said a markup.
func (t Terms) profit() Profit {
	if t.Profit == Margin {
		return Margin
	}
	return Markup
}

// called is the profit in a sentence.
func (p Profit) called() words.Text {
	if p == Margin {
		return words.Say("margin")
	}
	return words.Say("markup")
}

func upTo(at string, name words.Text, share measure.Number, most int64) []problem.Problem {
	if share.Sign() >= 0 && share.Cmp(measure.NumberFromInt(most)) <= 0 {
		return nil
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: words.Say("The {name} is {share} per cent.", words.Of("name", name), perCent("share", share)),
		Do:   words.Say("Give it from 0 to {most} per cent.", words.Name("most", words.Digits(100*most)))}}
}

func (t Terms) sumRefusals(at string, name words.Text, sum decimal.Decimal) []problem.Problem {
	what, is := words.Of("name", name), words.Name("sum", sum.String())
	switch {
	case sum.Sign() < 0 || sum.Cmp(decimal.NewFromInt(Most)) > 0:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: words.Say("The {name} is {sum}.", what, is), Do: words.Say("Give an amount from 0 to {most}.", mostMoney("most"))}}
	case !sum.Equal(sum.Truncate(t.Digits)):
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: words.Say("The {name} is {sum}, and the money has {digits} digits after the point.", what, is, words.Count("digits", int(t.Digits))),
			Do:   words.Say("Give an amount that can be paid.")}}
	}
	return nil
}

// perCent is a share in per cent as it is typed, with at most two decimals.
func perCent(name string, share measure.Number) words.Hole {
	return words.Name(name, share.Mul(measure.NumberFromInt(100)).RoundHalfEven(2).String())
}
