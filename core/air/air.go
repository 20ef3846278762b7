package air

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Air is what the solvents of a job do to the air of the room, all of it
// screening figures for a well mixed room with clean fresh air. A field is not
// known where something it needs is missing. Complete is false where a step had
// to be left out of some figure, and the figures are then too low. A job that
// gives off nothing has 0 in every field. What the air comes to day by day, and
// the fresh air that needs, is the Course.
type Air struct {
	Mass     measure.Fact // grams: litres × g/L over all steps
	Peak     measure.Fact // mg/m³ with the room shut and all of Mass in its air
	Shut     measure.Fact // mg/m³ of the worst step when one coat has given off what it holds, windows shut, rounded up to a whole one
	Purge    measure.Fact // hours with the windows open for Peak to fall to the limit
	Complete bool
}

// workday is the length of day that limits for a working day are averaged over:
// 29 CFR 1915.1000(d)(1)(i).
const workday = 8

// mostVOC is more solvent than a litre of any product can hold, in g/L: the
// heaviest common solvents weigh about half of it (from memory).
var mostVOC = measure.NumberFromInt(3000)

// milligrams turns grams in cubic metres into milligrams in cubic metres.
var milligrams = measure.NumberFromInt(1000)

// longestEvaporating is in how many hours nine tenths of the solvent has left a
// coat that is not thinned with water, however long its film takes to harden:
// an oil that is dry in two days is no less solvent in the air of the first. In
// EPA/600/A-98/024 (seen in a summary) more than nine tenths of the solvent of
// an alkyd paint left it within the first hours; ten are taken.
var longestEvaporating = measure.NumberFromInt(10)

// evaporates is the hours in which nine tenths of a coat's solvent leaves it.
func evaporates(product Product) measure.Fact {
	dry := Positive(product.DryHours)
	if dry.Known && product.Binder != Water && dry.Value.Cmp(longestEvaporating) > 0 {
		return measure.FactOf(longestEvaporating)
	}
	return dry
}

// emission is what one step gives off: grams in all, grams in one coat, and in
// how many hours, where the drying time is known.
type emission struct {
	mass, coat measure.Number
	hours      measure.Fact
	limit      measure.Fact // the product's own
}

// Of works out the air of a job. Problems name what is missing or cannot be:
// a step's litres, solvent or drying time, a room without volume, a limit or air
// changes that are not above 0, a mixing factor below 1. They are only raised
// where a figure needs the fact.
func Of(job Job) (Air, []problem.Problem) {
	emissions, problems := emissionsOf(job.Products)
	complete := len(problems) == 0
	mass := measure.Number{}
	for _, e := range emissions {
		mass = mass.Add(e.mass)
	}
	if mass.IsZero() {
		if complete {
			zero := measure.FactOf(mass)
			return Air{Mass: zero, Peak: zero, Shut: zero, Purge: zero, Complete: true}, nil
		}
		return Air{}, problems
	}
	air := Air{Mass: measure.FactOf(mass), Complete: complete}
	problems = append(problems, roomProblems(job, emissions)...)
	volume := job.RoomVolume.Litres.Quo(measure.CubicMetre)
	if volume.Sign() <= 0 {
		return air, problems
	}
	limit, opened, mixing := Positive(job.Air.Limit), Positive(job.Air.Opened), atLeastOne(job.Air.Mixing)
	air.Peak = measure.FactOf(mass.Mul(milligrams).Quo(volume))
	if mixing.Known {
		air.Shut = shutLevel(emissions, job.Air.Shut, mixing.Value, volume)
	}
	if opened.Known && mixing.Known && limit.Known {
		air.Purge = purge(air.Peak.Value, limit.Value, opened.Value, mixing.Value)
	}
	return air, problems
}

// Wait is how long nobody should be in the room once the last coat is on, by the
// limits for people at work: the longer of what the course says and of Purge.
func Wait(air Air, course Course) measure.Fact { return larger(course.Reentry, air.Purge) }

// Positive is a number that is above 0; others are not known.
func Positive(fact measure.Fact) measure.Fact {
	if fact.Known && fact.Value.Sign() > 0 {
		return fact
	}
	return measure.Fact{}
}

func atLeastOne(fact measure.Fact) measure.Fact {
	if fact.Known && fact.Value.Cmp(measure.NumberFromInt(1)) >= 0 {
		return fact
	}
	return measure.Fact{}
}

func larger(a, b measure.Fact) measure.Fact {
	if !a.Known || b.Known && b.Value.Cmp(a.Value) > 0 {
		return b
	}
	return a
}

// shutLevel is the growth of a steady source in a room that is hardly aired:
// (rate ÷ (air ÷ mixing)) × (1 − e^−(changes ÷ mixing × hours)).
func shutLevel(emissions []emission, shut measure.Fact, mixing, volume measure.Number) measure.Fact {
	if !shut.Known || shut.Value.Sign() < 0 {
		return measure.Fact{}
	}
	var worst measure.Fact
	for _, e := range emissions {
		if !e.hours.Known {
			continue
		}
		stays := builtUp(shut.Value.Quo(mixing).Mul(e.hours.Value))
		level := e.coat.Mul(milligrams).Quo(volume).Mul(stays)
		worst = larger(worst, measure.FactOf(RoundUp(level, 1)))
	}
	return worst
}

func purge(peak, limit, opened, mixing measure.Number) measure.Fact {
	hours, ok := purgeHours(opened, mixing, peak, limit)
	return measure.Fact{Value: hours, Known: ok}
}

// RoundUp is n rounded up to a whole multiple of 1/parts; n itself where the
// multiple does not fit an int64.
func RoundUp(n measure.Number, parts int64) measure.Number {
	whole, ok := n.Mul(measure.NumberFromInt(parts)).Ceil()
	if !ok {
		return n
	}
	return measure.NumberFromFraction(whole, parts)
}

// emissionsOf reads the products one by one. A step without solvent gives off
// nothing, however little else is known of it.
func emissionsOf(products []Product) ([]emission, []problem.Problem) {
	given := That(func(p Product) bool { return !IsZero(p.VOC) && !IsZero(p.Litres) }, products)
	var emissions []emission
	for _, product := range That(IsCounted, given) {
		mass := product.Litres.Value.Mul(product.VOC.Value)
		emissions = append(emissions, emission{
			mass: mass, coat: mass.Quo(measure.NumberFromInt(max(1, product.Coats))),
			hours: evaporates(product), limit: Positive(product.Limit),
		})
	}
	return emissions, productProblems(given)
}

// IsZero tells whether a number is known to be 0.
func IsZero(fact measure.Fact) bool { return fact.Known && fact.Value.IsZero() }
