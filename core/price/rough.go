package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
)

// Rough is a price before anything is measured: an area, what a square metre
// of such work has cost all in, and how far off that may be either way, as a
// share.
type Rough struct {
	Area           measure.Area
	PerSquareMetre measure.Number
	Off            measure.Number
}

// RoughPrice is a rough price: Middle, and what it may be between.
type RoughPrice struct {
	Low, Middle, High decimal.Decimal
}

// RoughOf is area × price of a square metre, and that less and more the share it
// may be off. Middle is rounded by Round; Low and High too, and then away from
// each other to a whole number of steps, so that the range never promises more
// than it knows. A step of 0 leaves them.
//
// Refused: an area, or a price of a square metre, that is not above 0; a share
// outside 0 to 100 per cent; a price above Most.
func RoughOf(r Rough, digits int32, step decimal.Decimal) (rough RoughPrice, problems []problem.Problem, ok bool) {
	if r.Area.SquareMetres.Sign() <= 0 {
		problems = append(problems, problem.Problem{At: "/length", Severity: problem.Stop,
			What: "The rough area is nothing.", Do: "Give a length and a width above 0."})
	}
	if r.PerSquareMetre.Sign() <= 0 {
		problems = append(problems, problem.Problem{At: "/perArea", Severity: problem.Stop,
			What: "The price for an area is nothing.", Do: "Give what such work has cost for one unit of area."})
	}
	problems = append(problems, upTo("/range", "range", r.Off, 1)...)
	if len(problems) > 0 {
		return rough, problems, false
	}
	exact := r.Area.SquareMetres.Mul(r.PerSquareMetre)
	low, fits := Round(exact.Mul(one.Sub(r.Off)), digits)
	middle, fitsToo := Round(exact, digits)
	high, ok := Round(exact.Mul(one.Add(r.Off)), digits)
	if !fits || !fitsToo || !ok {
		return rough, []problem.Problem{tooMuch("The rough price comes to", "Check the area and the price for it.")}, false
	}
	return RoughPrice{Low: downTo(low, step), Middle: middle, High: UpTo(high, step)}, nil, true
}
