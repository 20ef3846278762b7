package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

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

// Unit is what an item is counted in.
type Unit int

// Counted by the piece, which Item.Sold names; as one set, whose price is the sum; by
// the hour of one person; by the day; by the area of the mask.
const (
	Piece Unit = iota
	Set
	Hour
	Day
	SquareFoot
	SquareMetre
)

// Item is something that costs: Count of Unit at Rate each. What is its name, Sold that
// of a piece. A count or a rate below 0 is a credit.
type Item struct {
	Group Group
	What  words.Text
	Count measure.Number
	Unit  Unit
	Sold  words.Text
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
			problems = append(problems, tooMuch(
				words.Say("“{item}” comes to more than {most}.", words.Of("item", item.What), mostMoney("most")), words.Say("Check how many there are and what one costs.")))
			continue
		}
		lines = append(lines, Line{item, sum})
	}
	return lines, problems, len(problems) == 0
}

func tooMuch(what, do words.Text) problem.Problem {
	return problem.Problem{Severity: problem.Stop, What: what, Do: do}
}

// mostMoney is the greatest amount of money as it is typed.
func mostMoney(name string) words.Hole { return words.Name(name, words.Digits(Most)) }
