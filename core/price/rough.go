package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Rough is a price before anything is measured: an area, what a square metre
// of such work has cost all in, and how far off that may be either way, as a
// share. Bands are other prices for what is above a size, the least size first.
type Rough struct {
	Area           measure.Area
	PerSquareMetre measure.Number
	Bands          []Band
	Off            measure.Number
}

// Band is the price of a square metre for the area above a size, in square metres.
type Band struct {
	Above          measure.Number
	PerSquareMetre measure.Number
}

// Part is a part of an area and what a square metre of it costs.
type Part struct {
	Area           measure.Area
	PerSquareMetre measure.Number
}

// Parts shares the area out: each band is charged for the area inside it alone. A
// price list that charges all of a job at the price of its size has cliffs: by one,
// 503 square feet cost 11 569 and 504 cost 10 584.
func (r *Rough) Parts() []Part {
	var parts []Part
	from, each := measure.Number{}, r.PerSquareMetre
	for i := 0; i <= len(r.Bands); i++ {
		to := r.Area.SquareMetres
		if i < len(r.Bands) && r.Bands[i].Above.Cmp(to) < 0 {
			to = r.Bands[i].Above
		}
		if to.Cmp(from) > 0 {
			parts = append(parts, Part{measure.Area{SquareMetres: to.Sub(from)}, each})
		}
		if i < len(r.Bands) {
			from, each = r.Bands[i].Above, r.Bands[i].PerSquareMetre
		}
	}
	return parts
}

// bandRefusals is what is wrong with the bands: one that costs nothing, or that does
// not begin above the one before it.
func (r *Rough) bandRefusals() (problems []problem.Problem) {
	before := measure.Number{}
	for i := range r.Bands {
		at := "/bands" + problem.Index(i)
		if r.Bands[i].PerSquareMetre.Sign() <= 0 {
			problems = append(problems, problem.Problem{At: at + "/perArea", Severity: problem.Stop,
				What: words.Say("The price above this size is nothing."), Do: words.Say("Give what one unit of area costs there, or take it out.")})
		}
		if r.Bands[i].Above.Cmp(before) <= 0 {
			problems = append(problems, problem.Problem{At: at + "/above", Severity: problem.Stop,
				What: words.Say("This size is not above the one before it."), Do: words.Say("Give the sizes in order, the least first.")})
		}
		before = r.Bands[i].Above
	}
	return problems
}

// RoughPrice is a rough price: Middle, and what it may be between.
type RoughPrice struct {
	Low, Middle, High decimal.Decimal
}

// RoughOf is area × price of a square metre, part by part, and that less and more the share it
// may be off. Middle is rounded by Round; Low and High too, and then away from
// each other to a whole number of steps, so that the range never promises more
// than it knows. A step of 0 leaves them.
//
// Refused: an area, or a price of a square metre, that is not above 0; bands that
// are not in order; a share outside 0 to 100 per cent; a price above Most.
func RoughOf(r Rough, digits int32, step decimal.Decimal) (rough RoughPrice, problems []problem.Problem, ok bool) {
	if r.Area.SquareMetres.Sign() <= 0 {
		problems = append(problems, problem.Problem{At: "/length", Severity: problem.Stop,
			What: words.Say("The rough area is nothing."), Do: words.Say("Give a length and a width above 0.")})
	}
	if r.PerSquareMetre.Sign() <= 0 {
		problems = append(problems, problem.Problem{At: "/perArea", Severity: problem.Stop,
			What: words.Say("The price for an area is nothing."), Do: words.Say("Give what such work has cost for one unit of area.")})
	}
	problems = append(problems, r.bandRefusals()...)
	problems = append(problems, upTo("/range", words.Say("range"), r.Off, 1)...)
	if len(problems) > 0 {
		return rough, problems, false
	}
	exact := measure.Number{}
	for _, part := range r.Parts() {
		exact = exact.Add(part.Area.SquareMetres.Mul(part.PerSquareMetre))
	}
	low, fits := Round(exact.Mul(one.Sub(r.Off)), digits)
	middle, fitsToo := Round(exact, digits)
	high, ok := Round(exact.Mul(one.Add(r.Off)), digits)
	if !fits || !fitsToo || !ok {
		return rough, []problem.Problem{tooMuch(words.Say("The rough price comes to more than {most}.", mostMoney("most")), words.Say("Check the area and the price for it."))}, false
	}
	return RoughPrice{Low: downTo(low, step), Middle: middle, High: UpTo(high, step)}, nil, true
}
