package price

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
)

// Group is what a line is for. The client's copy has one line for each group.
type Group string

// The groups, in the order they are printed.
const (
	Masks     Group = "masks"
	Materials Group = "materials"
	Leaf      Group = "leaf"
	Tape      Group = "tape"
	Labour    Group = "labour"
	Hire      Group = "hire"
	Travel    Group = "travel"
)

// Groups lists the groups in the order they are printed.
func Groups() []Group { return []Group{Masks, Materials, Leaf, Tape, Labour, Hire, Travel} }

// Item is something that costs: so many of Unit at Rate each. A count or a rate
// below 0 is a credit.
type Item struct {
	Group Group
	What  string
	Count measure.Number
	Unit  string
	Rate  decimal.Decimal
}

// Line is an item with its sum, rounded once.
type Line struct {
	Item
	Sum decimal.Decimal
}

// LinesOf works out each item. One that comes to more than Most is left out and
// refused. ok is false where one was.
func LinesOf(items []Item, digits int32) (lines []Line, problems []problem.Problem, ok bool) {
	lines = make([]Line, 0, len(items))
	for _, item := range items {
		sum, fits := Round(item.Count.Mul(measure.NumberFromDecimal(item.Rate)), digits)
		if !fits {
			problems = append(problems, tooMuch("“"+item.What+"” comes to", "Check how many there are and what one costs."))
			continue
		}
		lines = append(lines, Line{item, sum})
	}
	return lines, problems, len(problems) == 0
}

func tooMuch(what, do string) problem.Problem {
	return problem.Problem{At: "", Severity: problem.Stop, What: words.Raw(what + " more than " + strconv.Itoa(Most) + "."), Do: words.Raw(do)}
}
