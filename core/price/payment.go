package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Payment is a part of the total. Deposit marks the deposit and Rest the
// payment that takes what the others leave; both have no name. Share is what
// was asked for, or what is left of 100 per cent.
type Payment struct {
	Name          string
	Share         measure.Number
	Sum           decimal.Decimal
	Deposit, Rest bool
}

// PaymentsOf splits a total into the deposit, where there is one, and the
// stages. Each is its share of the total, rounded by Round; the last takes what
// is left, so that they add up. Where the shares come to less than 100 per cent
// a last payment takes the rest. Without deposit and stages there is none.
//
// Refused: a share below 0, shares of more than 100 per cent together, more
// than 24 stages.
func PaymentsOf(total decimal.Decimal, terms Terms) (payments []Payment, problems []problem.Problem) {
	problems = upTo("/deposit", words.Say("deposit"), terms.Deposit, 1)
	if len(terms.Stages) > mostStages {
		return nil, append(problems, problem.Problem{At: "/stages", Severity: problem.Stop,
			What: words.Say("{given} stages are given.", words.Count("given", len(terms.Stages))), Do: words.Say("Give {most} at most.", words.Count("most", mostStages))})
	}
	all := terms.Deposit
	if all.Sign() > 0 {
		payments = append(payments, Payment{Share: terms.Deposit, Deposit: true})
	}
	for i, stage := range terms.Stages {
		problems = append(problems, upTo("/stages"+problem.Index(i)+"/percent", words.Say("payment"), stage.Share, 1)...)
		payments = append(payments, Payment{Name: stage.Name, Share: stage.Share})
		all = all.Add(stage.Share)
	}
	if len(problems) == 0 && all.Cmp(one) > 0 {
		problems = []problem.Problem{{At: "/stages", Severity: problem.Stop,
			What: words.Say("The deposit and the stages come to {all} per cent of the price.", perCent("all", all)), Do: words.Say("Lower them to 100 per cent together.")}}
	}
	if len(problems) > 0 || len(payments) == 0 {
		return nil, problems
	}
	if all.Cmp(one) < 0 {
		payments = append(payments, Payment{Share: one.Sub(all), Rest: true})
	}
	settle(payments, total, terms.Digits)
	return payments, nil
}

// settle fills in the sums. None asks for more than is left: of very small
// totals, rounding up every part would.
func settle(payments []Payment, total decimal.Decimal, digits int32) {
	left, exact := total, measure.NumberFromDecimal(total)
	last := len(payments) - 1
	for i := range payments[:last] {
		sum, _ := Round(exact.Mul(payments[i].Share), digits)
		payments[i].Sum = decimal.Min(sum, left)
		left = left.Sub(payments[i].Sum)
	}
	payments[last].Sum = left
}
