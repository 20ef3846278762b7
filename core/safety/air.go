package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Air is what the solvents of a job do to the air of the room, all of it
// screening figures for a well mixed room with clean fresh air. A field is not
// known where something it needs is missing. Complete is false where a step had
// to be left out of some figure, and the figures are then too low. A job that
// gives off nothing has 0 in every field.
//
// Steps follow one another, each after the last has dried; Rate, Level, Average
// and Shut are those of the worst of them, Mass and Peak are of all together.
type Air struct {
	Mass     Fact // grams: litres × g/L over all steps
	Peak     Fact // mg/m³ with the room shut and all of Mass in its air
	Rate     Fact // grams an hour while one coat dries: mass ÷ coats ÷ drying hours
	Level    Fact // mg/m³ that Rate settles at with the windows open: mixing × rate ÷ air
	Average  Fact // mg/m³ over eight hours, windows open; above the true average, as nothing is left over at the end
	Changes  Fact // air changes an hour that hold each step's level at its limit: mixing × rate ÷ limit ÷ volume
	Needs    Need // the step that Changes goes by
	Shut     Fact // mg/m³ when one coat has dried, windows shut, rounded up to a whole one
	Purge    Fact // hours with the windows open for Peak to fall to the limit, rounded up to a whole minute
	Complete bool
}

// Need is the rate at which a step gives off, in grams an hour, and its limit, in
// mg/m³: the product's own, or the job's.
type Need struct{ Rate, Limit Fact }

// workday is the length of day that limits for a working day are averaged over:
// 29 CFR 1915.1000(d)(1)(i).
const workday = 8

// mostVOC is more solvent than a litre of any product can hold, in g/L: the
// heaviest common solvents weigh about half of it (from memory).
var mostVOC = measure.NumberFromInt(3000)

// milligrams turns grams in cubic metres into milligrams in cubic metres.
var milligrams = measure.NumberFromInt(1000)

// emission is what one step gives off: grams in all, grams in one coat, and
// grams an hour where the drying time is known.
type emission struct {
	mass, coat measure.Number
	dry, rate  Fact
	limit      Fact // the product's own
}

// AirOf works out the air of a job. Problems name what is missing or cannot be:
// a step's litres, solvent or drying time, a room without volume, a limit or air
// changes that are not above 0, a mixing factor below 1. They are only raised
// where a figure needs the fact.
func AirOf(job Job) (Air, []problem.Problem) {
	emissions, problems := emissionsOf(job.Products)
	complete := len(problems) == 0
	mass := measure.Number{}
	for _, e := range emissions {
		mass = mass.Add(e.mass)
	}
	if mass.IsZero() {
		if complete {
			zero := FactOf(mass)
			return Air{Mass: zero, Peak: zero, Rate: zero, Level: zero, Average: zero, Changes: zero, Shut: zero, Purge: zero, Complete: true}, nil
		}
		return Air{}, problems
	}
	air := Air{Mass: FactOf(mass), Rate: worstRate(emissions), Complete: complete}
	problems = append(problems, roomProblems(job, emissions)...)
	volume := job.RoomVolume.Litres.Quo(measure.CubicMetre)
	if volume.Sign() <= 0 {
		return air, problems
	}
	limit, opened, mixing := above(job.Air.Limit, 0), above(job.Air.Opened, 0), atLeastOne(job.Air.Mixing)
	air.Peak = FactOf(mass.Mul(milligrams).Quo(volume))
	if air.Rate.Known && mixing.Known {
		air.Shut = shutLevel(emissions, job.Air.Shut, mixing.Value, volume)
		air.Needs = worstNeed(emissions, limit)
		load := mixing.Value.Mul(milligrams).Quo(volume)
		if air.Needs.Limit.Known {
			air.Changes = FactOf(load.Mul(air.Needs.Rate.Value).Quo(air.Needs.Limit.Value))
		}
		if opened.Known {
			air.Level = FactOf(load.Mul(air.Rate.Value).Quo(opened.Value))
		}
	}
	if opened.Known && mixing.Known {
		air.Average = worstAverage(emissions, opened.Value, mixing.Value, volume)
	}
	if opened.Known && mixing.Known && limit.Known {
		air.Purge = purge(air.Peak.Value, limit.Value, opened.Value, mixing.Value)
	}
	return air, problems
}

// MilligramsFromPPM turns a limit in parts per million into milligrams a cubic
// metre at 25 °C and one atmosphere, where a mole of vapour fills 24.45 L:
// ppm × grams a mole ÷ 24.45 (NIOSH Pocket Guide to Chemical Hazards).
func MilligramsFromPPM(ppm, gramsPerMole measure.Number) measure.Number {
	return ppm.Mul(gramsPerMole).Quo(measure.NumberFromFraction(2445, 100))
}

func above(fact Fact, floor int64) Fact {
	if fact.Known && fact.Value.Cmp(measure.NumberFromInt(floor)) > 0 {
		return fact
	}
	return Fact{}
}

func atLeastOne(fact Fact) Fact {
	if fact.Known && fact.Value.Cmp(measure.NumberFromInt(1)) >= 0 {
		return fact
	}
	return Fact{}
}

func worstRate(emissions []emission) Fact {
	var worst Fact
	for _, e := range emissions {
		worst = larger(worst, e.rate)
	}
	return worst
}

func larger(a, b Fact) Fact {
	if !a.Known || b.Known && b.Value.Cmp(a.Value) > 0 {
		return b
	}
	return a
}

// worstNeed is the step with the highest rate for its limit.
func worstNeed(emissions []emission, limit Fact) (worst Need) {
	for _, e := range emissions {
		own := e.limit
		if !own.Known {
			own = limit
		}
		if !e.rate.Known || !own.Known {
			continue
		}
		if !worst.Limit.Known || e.rate.Value.Mul(worst.Limit.Value).Cmp(worst.Rate.Value.Mul(own.Value)) > 0 {
			worst = Need{e.rate, own}
		}
	}
	return worst
}

// worstAverage takes what each step gives off in one working day: all of it, or
// eight hours of its rate where that is less.
func worstAverage(emissions []emission, opened, mixing, volume measure.Number) Fact {
	air := opened.Mul(volume).Mul(measure.NumberFromInt(workday))
	var worst Fact
	for _, e := range emissions {
		if !e.rate.Known {
			continue
		}
		given := e.rate.Value.Mul(measure.NumberFromInt(workday))
		if given.Cmp(e.mass) > 0 {
			given = e.mass
		}
		worst = larger(worst, FactOf(given.Mul(mixing).Mul(milligrams).Quo(air)))
	}
	return worst
}

// shutLevel is the growth of a steady source in a room that is hardly aired:
// (rate ÷ (air ÷ mixing)) × (1 − e^−(changes ÷ mixing × hours)).
func shutLevel(emissions []emission, shut Fact, mixing, volume measure.Number) Fact {
	if !shut.Known || shut.Value.Sign() < 0 {
		return Fact{}
	}
	var worst Fact
	for _, e := range emissions {
		if !e.rate.Known {
			continue
		}
		stays := builtUp(shut.Value.Quo(mixing).Mul(e.dry.Value))
		level := e.coat.Mul(milligrams).Quo(volume).Mul(stays)
		worst = larger(worst, FactOf(roundUp(level, 1)))
	}
	return worst
}

func purge(peak, limit, opened, mixing measure.Number) Fact {
	hours, ok := purgeHours(opened, mixing, peak, limit)
	if !ok {
		return Fact{}
	}
	return FactOf(roundUp(hours, 60))
}

// roundUp is n rounded up to a whole multiple of 1/parts; n itself where the
// multiple does not fit an int64.
func roundUp(n measure.Number, parts int64) measure.Number {
	whole, ok := n.Mul(measure.NumberFromInt(parts)).Ceil()
	if !ok {
		return n
	}
	return measure.NumberFromFraction(whole, parts)
}

// emissionsOf reads the products one by one. A step without solvent gives off
// nothing, however little else is known of it.
func emissionsOf(products []Product) ([]emission, []problem.Problem) {
	var emissions []emission
	var problems []problem.Problem
	for _, product := range products {
		if isZero(product.VOC) || isZero(product.Litres) {
			continue
		}
		if missing := productProblem(product); missing != nil {
			problems = append(problems, *missing)
			continue
		}
		e := emission{mass: product.Litres.Value.Mul(product.VOC.Value)}
		e.coat = e.mass.Quo(measure.NumberFromInt(max(1, product.Coats)))
		e.dry, e.limit = above(product.DryHours, 0), above(product.Limit, 0)
		if e.dry.Known {
			e.rate = FactOf(e.coat.Quo(e.dry.Value))
		} else {
			problems = append(problems, dryProblem(product))
		}
		emissions = append(emissions, e)
	}
	return emissions, problems
}

func isZero(fact Fact) bool { return fact.Known && fact.Value.IsZero() }
