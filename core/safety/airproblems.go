package safety

import (
	"slices"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// productProblem is the first reason why a step's solvent cannot be counted, nil
// where it can.
func productProblem(product Product) *problem.Problem {
	name := named(product)
	switch {
	case !product.Litres.Known:
		return &problem.Problem{
			At: product.At, Severity: problem.Caution,
			What: "How much of " + name + " is used is not known, so the air figures leave it out and are too low.",
			Do:   "Fill in what the amount of this step needs.",
		}
	case product.Litres.Value.Sign() < 0:
		return &problem.Problem{
			At: product.At, Severity: problem.Stop,
			What: "The amount of " + name + " is below 0, so the air figures leave it out.",
			Do:   "Correct the amount of this step.",
		}
	case !product.VOC.Known:
		return &problem.Problem{
			At: product.At + "/voc", Severity: problem.Caution,
			What: "How much solvent is in " + name + " is not known, so the air figures leave it out and are too low.",
			Do:   "Copy the VOC figure from the label or the data sheet.",
		}
	case product.VOC.Value.Sign() < 0 || product.VOC.Value.Cmp(mostVOC) > 0:
		return &problem.Problem{
			At: product.At + "/voc", Severity: problem.Stop,
			What: "The VOC of " + name + ", " + product.VOC.Value.RoundHalfEven(0).String() + " g/L, is outside 0 to 3000 g/L, so the air figures leave it out.",
			Do:   "Copy the VOC figure and its unit again from the label or the data sheet.",
		}
	}
	return nil
}

func dryProblem(product Product) problem.Problem {
	what := "How long " + named(product) + " takes to dry is not known, so the fresh air it needs is left out."
	if product.DryHours.Known {
		what = "A drying time of " + plain(product.DryHours.Value) + " h for " + named(product) + " is not above 0, so the fresh air it needs is left out."
	}
	return problem.Problem{
		At: product.At + "/dryHours", Severity: problem.Caution,
		What: what, Do: "Copy the drying time of one coat from the label.",
	}
}

// roomProblems is everything about the room and its air that a figure of a job
// with solvents in it needs and does not have.
func roomProblems(job Job, emissions []emission) []problem.Problem {
	var problems []problem.Problem
	if job.RoomVolume.Litres.Sign() <= 0 {
		problems = append(problems, problem.Problem{
			At: "/room", Severity: problem.Caution,
			What: "The volume of the room is not known, so no air figure can be worked out.",
			Do:   "Fill in the length, width and height of the room.",
		})
	}
	air := job.Air
	own := !slices.ContainsFunc(emissions, func(e emission) bool { return !e.limit.Known })
	problems = appendUnless(problems, above(air.Limit, 0).Known || own && !air.Limit.Known, air.Limit, "/air/limit",
		"limit for the air", "above 0 mg/m³", "Take the eight-hour limit from section 8 of the product's safety data sheet.")
	problems = appendUnless(problems, above(air.Opened, 0).Known, air.Opened, "/air/opened",
		"number of air changes an hour with the windows open", "above 0", "Open a way for air to the outside, or bring a fan, and fill in what it moves.")
	problems = appendUnless(problems, air.Shut.Known && air.Shut.Value.Sign() >= 0, air.Shut, "/air/shut",
		"number of air changes an hour with the windows shut", "0 or more", "Fill in a number. 0.3 to 0.5 is usual (common practice, no source).")
	problems = appendUnless(problems, atLeastOne(air.Mixing).Known, air.Mixing, "/air/mixing",
		"mixing factor", "1 or more", "Fill in 3 for windows across from each other with a fan, 5 for one opening, 10 for dead corners.")
	return problems
}

func appendUnless(problems []problem.Problem, good bool, fact Fact, at, what, allowed, do string) []problem.Problem {
	if good {
		return problems
	}
	sentence := "There is no " + what + ", so the air figures that need it are not worked out."
	if fact.Known {
		sentence = "The " + what + ", " + plain(fact.Value) + ", has to be " + allowed + ", so the air figures that need it are not worked out."
	}
	return append(problems, problem.Problem{At: at, Severity: problem.Caution, What: sentence, Do: do})
}

func named(product Product) string {
	if product.StepName == "" {
		return "a step without a name"
	}
	return product.StepName
}

// plain writes a number to at most three decimal places.
func plain(n measure.Number) string { return n.RoundHalfEven(3).String() }

// metres writes a length in metres to the centimetre.
func metres(l measure.Length) string {
	return l.In(measure.Metre).RoundHalfEven(2).StringFixed(2) + " m"
}
