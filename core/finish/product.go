package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Paint is what a liquid step asks for: paint, size, glaze or clear coat alike.
// Spread is the rate of what is put on, thinner and all. Loss is the share of it
// that never reaches the surface, Thinned the thinner added, as a share of the
// product.
type Paint struct {
	Area    measure.Area
	Coats   int64
	Spread  Spread
	Loss    measure.Number
	Thinned measure.Number
}

// Product is the amount a Paint takes, all exact. Painted is the area times the
// coats; Film the wet film of one coat; Practical the spread after the loss; Need the
// product that has to be there to begin with, as it is in the can; Thinner what is
// stirred into it.
type Product struct {
	Paint
	Painted   measure.Area
	Film      Film
	Practical Spread
	Need      measure.Volume
	Thinner   measure.Volume
}

// Used is all that is used up, the product and its thinner.
func (p Product) Used() measure.Volume { return p.Need.Add(p.Thinner) }

// MostCoats is the greatest number of coats that is read.
const MostCoats = 50

// Wet films outside these are computed and pointed out: a size is laid at
// about 70 µm and a raised plaster stencil at a few millimetres, so what lies
// outside is most often a rate in the other unit. Common practice, no source.
var (
	thinnestFilm = measure.NumberFromInt(15)
	thickestFilm = measure.NumberFromInt(12_000)
)

// A loss above this is computed and pointed out: air spray loses about a half,
// and up to three quarters on woodwork (trade tables of loss by method).
var greatLoss = measure.MustNumber("0.75")

// TakeOff works out what is used, area × coats ÷ spread ÷ (1 − loss), of which
// 1 ÷ (1 + thinner) is the product and the rest thinner: paint is not bought for
// what is thinner. The loss is divided by, never added on: at 10 % loss 1.25 gal
// on the surface take 1.389 gal, not 1.375. ok is false when a stop problem left
// nothing to compute; what is known is then still in the Product.
//
// Refused: an area below 0, coats below 1 or above MostCoats, a spread that is
// not above 0, a loss below 0 or of 100 % and more, thinner below 0. No area
// takes no product.
func TakeOff(p Paint) (product Product, problems []problem.Problem, ok bool) {
	product = Product{Paint: p, Film: p.Spread.Film()}
	problems = p.refusals()
	if len(problems) > 0 {
		return product, problems, false
	}
	product.Painted = p.Area.Times(measure.NumberFromInt(p.Coats))
	product.Practical = p.Spread.Practical(p.Loss)
	used := measure.Volume{Litres: product.Painted.SquareMetres.Quo(product.Practical.SquareMetresPerLitre)}
	product.Need = measure.Volume{Litres: used.Litres.Quo(measure.NumberFromInt(1).Add(p.Thinned))}
	product.Thinner = product.Need.Times(p.Thinned)
	return product, product.cautions(), true
}

func (p Paint) refusals() []problem.Problem {
	var found []problem.Problem
	if p.Area.SquareMetres.Sign() < 0 {
		found = append(found, problem.Problem{At: "/area", Severity: problem.Stop,
			What: words.Say("The area comes out below nothing, {area} m².", words.Trimmed("area", p.Area.SquareMetres, 3)),
			Do:   words.Say("Check the sizes the area is made from.")})
	}
	if p.Coats < 1 || p.Coats > MostCoats {
		found = append(found, problem.Problem{At: "/coats", Severity: problem.Stop,
			What: words.Say("The number of coats is {coats}.", words.Count("coats", p.Coats)),
			Do:   words.Say("Give a whole number of coats from 1 to 50.")})
	}
	if p.Spread.SquareMetresPerLitre.Sign() <= 0 {
		found = append(found, problem.Problem{At: "/spread", Severity: problem.Stop,
			What: words.Say("There is no spread rate above 0."),
			Do:   words.Say("Give the area that one can covers, as its label says, or the wet film.")})
	}
	if p.Thinned.Sign() < 0 {
		found = append(found, lessThanNoThinner(p.Thinned))
	}
	return append(found, shareRefusals("/loss", words.Say("loss"), p.Loss)...)
}

// shareRefusals refuses a share that must leave something over: from 0 to
// below 1.
func shareRefusals(at string, name words.Text, share measure.Number) []problem.Problem {
	if share.Sign() >= 0 && share.Cmp(measure.NumberFromInt(1)) < 0 {
		return nil
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: words.Say("The {name} is {share}.", words.Of("name", name), words.PerCent("share", share)),
		Do:   words.Say("Give a {name} from 0 to below 100 per cent.", words.Of("name", name))}}
}

func (p Product) cautions() []problem.Problem {
	var found []problem.Problem
	um := p.Film.Micrometres
	if um.Cmp(thinnestFilm) < 0 || um.Cmp(thickestFilm) > 0 {
		found = append(found, problem.Problem{At: "/spread", Severity: problem.Caution,
			What: words.Say("One coat would be {film} µm thick while wet.", words.Trimmed("film", um, 3)),
			Do:   words.Say("Check the spread rate and its unit against the label.")})
	}
	if p.Loss.Cmp(greatLoss) > 0 {
		found = append(found, problem.Problem{At: "/loss", Severity: problem.Caution,
			What: words.Say("The loss is {loss}.", words.PerCent("loss", p.Loss)),
			Do:   words.Say("Check it: a brush or roller loses 10 to 15 per cent, an airless gun about 30.")})
	}
	return found
}
