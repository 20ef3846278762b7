package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Quote is a job priced. The sums add up as printed:
//
//	Direct (the lines) + Contingency + Overhead = Cost
//	Cost + Profit + ToMinimum + ToStep = Net
//	Net + Tax = Total
//
// Client adds up to Net, the tax in it to Tax, and the payments to Total.
type Quote struct {
	Terms
	Lines                         []Line
	Direct, Contingency, Overhead decimal.Decimal
	Cost                          decimal.Decimal
	Profit                        decimal.Decimal
	ToMinimum, ToStep             decimal.Decimal
	Net, Tax, Total               decimal.Decimal
	Client                        []ClientLine
	Payments                      []Payment
}

// ClientLine is a line of the client's copy: everything of one group, with its
// part of what is added to the cost, and the tax on it (0 where tax is on the
// total).
type ClientLine struct {
	Group Group
	Sum   decimal.Decimal
	Tax   decimal.Decimal
}

// QuoteOf prices items. ok is false where the terms or the amounts are refused:
// the lines and Direct are then worked out as far as they go, and nothing else.
// What is wrong with the payments alone leaves only Payments empty.
//
// Refused: what Terms.Refusals and Payments refuse, a line, a cost or a total
// above Most, and credits that come to more than the lines.
func QuoteOf(items []Item, terms Terms) (quote Quote, problems []problem.Problem, ok bool) {
	quote = Quote{Terms: terms}
	if problems = terms.Refusals(); terms.Digits < 0 || terms.Digits > MostDigits {
		return quote, problems, false
	}
	lines, refused, fits := LinesOf(items, terms.Digits)
	problems = append(problems, refused...)
	quote.Lines = lines
	quote.Direct = sumOf(lines, terms.Digits, func(Group) bool { return true })
	if quote.Direct.Sign() < 0 {
		problems = append(problems, problem.Problem{At: "", Severity: problem.Stop,
			What: words.Say("The credits are {over} more than the lines.", words.Name("over", quote.Direct.Neg().String())), Do: words.Say("Check the lines.")})
	}
	if len(problems) > 0 || !fits {
		return quote, problems, false
	}
	costed := quote
	if !quote.build() {
		return costed, []problem.Problem{tooMuch(words.Say("The price comes to more than {most}.", mostMoney("most")), words.Say("Check the lines and the shares added to them."))}, false
	}
	quote.Payments, problems = PaymentsOf(quote.Total, terms)
	return quote, problems, true
}

// build adds up to the total. It is false where a sum is above Most.
func (q *Quote) build() bool {
	fits := true
	round := func(n measure.Number) decimal.Decimal {
		sum, ok := Round(n, q.Digits)
		fits = fits && ok
		return sum
	}
	direct := measure.NumberFromDecimal(q.Direct)
	q.Contingency = round(direct.Mul(q.Terms.Contingency))
	q.Overhead = round(measure.NumberFromDecimal(q.Direct.Add(q.Contingency)).Mul(q.Terms.Overhead))
	q.Cost = q.Direct.Add(q.Contingency).Add(q.Overhead)
	asked := round(q.asked(measure.NumberFromDecimal(q.Cost)))
	q.Profit = asked.Sub(q.Cost)
	least := decimal.Max(asked, q.Minimum)
	q.ToMinimum = least.Sub(asked)
	q.Net = UpTo(least, q.RoundTo)
	q.ToStep = q.Net.Sub(least)
	q.Client = q.client()
	q.Tax = round(measure.NumberFromDecimal(q.Net).Mul(q.Terms.Tax))
	if q.TaxOn == TaxOnLines || q.TaxOn == TaxOnLinesDown {
		q.taxLines()
	}
	q.Total = q.Net.Add(q.Tax)
	return fits && q.Total.Cmp(decimal.NewFromInt(Most)) <= 0
}

// asked is the price that the profit makes of a cost.
func (q *Quote) asked(cost measure.Number) measure.Number {
	if q.profit() == Margin {
		return cost.Quo(one.Sub(q.ProfitShare))
	}
	return cost.Mul(one.Add(q.ProfitShare))
}

// client shares the net price out over the groups by what each costs. A group
// that costs nothing, or less, has no line of its own; a price without any cost
// is one line of labour.
func (q *Quote) client() []ClientLine {
	var lines []ClientLine
	var weights []decimal.Decimal
	for _, group := range Groups() {
		cost := sumOf(q.Lines, q.Digits, func(g Group) bool { return g == group })
		if cost.Sign() > 0 {
			lines, weights = append(lines, ClientLine{Group: group}), append(weights, cost)
		}
	}
	if len(lines) == 0 {
		return []ClientLine{{Group: Labour, Sum: q.Net}}
	}
	for i, sum := range Split(q.Net, weights, q.Digits) {
		lines[i].Sum = sum
	}
	return lines
}

// sumOf adds up the lines of some groups, which are money of that many digits.
// Fractions do it without a piece of memory for every line.
func sumOf(lines []Line, digits int32, takes func(Group) bool) decimal.Decimal {
	var sum measure.Number
	for i := range lines {
		if takes(lines[i].Group) {
			sum = sum.Add(measure.NumberFromDecimal(lines[i].Sum))
		}
	}
	return sum.RoundHalfEven(digits)
}

func (q *Quote) taxLines() {
	q.Tax = decimal.Decimal{}
	for i := range q.Client {
		line := &q.Client[i]
		exact := measure.NumberFromDecimal(line.Sum).Mul(q.Terms.Tax)
		line.Tax, _ = Round(exact, q.Digits)
		if q.TaxOn == TaxOnLinesDown {
			line.Tax, _ = roundDown(exact, q.Digits)
		}
		q.Tax = q.Tax.Add(line.Tax)
	}
}

// Gain is what is left of the net price when the cost is paid.
func (q *Quote) Gain() decimal.Decimal { return q.Net.Sub(q.Cost) }

// AsMarkup is the gain as a share of the cost; ok is false without a cost.
func (q *Quote) AsMarkup() (measure.Number, bool) { return share(q.Gain(), q.Cost) }

// AsMargin is the gain as a share of the net price; ok is false without a
// price.
func (q *Quote) AsMargin() (measure.Number, bool) { return share(q.Gain(), q.Net) }

// OverheadOfNet is the overhead as a share of the net price, which is how
// trade figures often give it; ok is false without a price.
func (q *Quote) OverheadOfNet() (measure.Number, bool) { return share(q.Overhead, q.Net) }

func share(part, whole decimal.Decimal) (measure.Number, bool) {
	if whole.Sign() <= 0 {
		return measure.Number{}, false
	}
	return measure.NumberFromDecimal(part).Quo(measure.NumberFromDecimal(whole)), true
}

// PerArea is the total for each square metre; ok is false without an area.
func (q *Quote) PerArea(a measure.Area) (sum measure.Number, ok bool) {
	if a.SquareMetres.Sign() <= 0 {
		return sum, false
	}
	return measure.NumberFromDecimal(q.Total).Quo(a.SquareMetres), true
}
