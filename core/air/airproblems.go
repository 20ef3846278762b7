package air

import (
	"slices"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// lack is why a product's solvent cannot be counted.
type lack int

const (
	nothing lack = iota
	litresUnknown
	litresBelow
	vocUnknown
	vocOutside
	dryUnknown // counted, but not by the hour
	dryBelow
)

// lackOf is the first reason why a product cannot be counted in full.
func lackOf(product Product) lack {
	switch {
	case !product.Litres.Known:
		return litresUnknown
	case product.Litres.Value.Sign() < 0:
		return litresBelow
	case !product.VOC.Known:
		return vocUnknown
	case product.VOC.Value.Sign() < 0 || product.VOC.Value.Cmp(mostVOC) > 0:
		return vocOutside
	case !product.DryHours.Known:
		return dryUnknown
	case product.DryHours.Value.Sign() <= 0:
		return dryBelow
	}
	return nothing
}

// IsCounted tells whether a product's solvent is in the figures of the air.
func IsCounted(product Product) bool {
	l := lackOf(product)
	return l == nothing || l >= dryUnknown
}

// productProblems says what is missing, one remark for each kind of thing however
// many products lack it, and what cannot be, each with its number.
func productProblems(products []Product) []problem.Problem {
	var problems []problem.Problem
	told := map[lack]bool{}
	for _, product := range products {
		l := lackOf(product)
		missing := l == litresUnknown || l == vocUnknown || l == dryUnknown
		switch {
		case missing && !told[l]:
			told[l] = true
			problems = append(problems, missingProblem(l, That(func(p Product) bool { return lackOf(p) == l }, products)))
		case !missing && l != nothing:
			problems = append(problems, wrongProblem(l, product))
		}
	}
	return problems
}

// missingProblem is about products that all lack the same; it hangs on the first.
func missingProblem(l lack, products []Product) problem.Problem {
	at, steps, n := products[0].At, words.Of("steps", Names(products)), words.Count("n", len(products))
	switch l {
	case litresUnknown:
		return problem.Problem{
			At: at, Severity: problem.Caution,
			What: words.Say("How much is used is not known of {steps}, so the air figures leave {n?it|them} out and are too low.", steps, n),
			Do:   words.Say("Fill in what the amount of each needs."),
		}
	case vocUnknown:
		return problem.Problem{
			At: at + "/voc", Severity: problem.Caution,
			What: words.Say("How much solvent they hold is not known of {steps}, so the air figures leave {n?it|them} out and are too low.", steps, n),
			Do:   words.Say("Copy the VOC figure from each label or data sheet."),
		}
	}
	return problem.Problem{
		At: at + "/dryHours", Severity: problem.Caution,
		What: words.Say("How long a coat takes to dry is not known of {steps}, so the fresh air for {n?it|them} is left out.", steps, n),
		Do:   words.Say("Copy the drying time of one coat from each label."),
	}
}

func wrongProblem(l lack, product Product) problem.Problem {
	step := words.Name("step", Named(product))
	switch l {
	case litresBelow:
		return problem.Problem{
			At: product.At, Severity: problem.Stop,
			What: words.Say("The amount of {step} is below 0, so the air figures leave it out.", step),
			Do:   words.Say("Correct the amount of this step."),
		}
	case vocOutside:
		return problem.Problem{
			At: product.At + "/voc", Severity: problem.Stop,
			What: words.Say("The VOC of {step}, {grams} g/L, is outside 0 to 3000 g/L, so the air figures leave it out.", step, words.Name("grams", product.VOC.Value.RoundHalfEven(0).String())),
			Do:   words.Say("Copy the VOC figure and its unit again from the label or the data sheet."),
		}
	}
	return problem.Problem{
		At: product.At + "/dryHours", Severity: problem.Caution,
		What: words.Say("A drying time of {hours} h for {step} is not above 0, so the fresh air it needs is left out.", words.Name("hours", plain(product.DryHours.Value)), step),
		Do:   words.Say("Copy the drying time of one coat from the label."),
	}
}

// roomProblems is everything about the room and its air that a figure of a job
// with solvents in it needs and does not have.
func roomProblems(job Job, emissions []emission) []problem.Problem {
	var problems []problem.Problem
	if job.RoomVolume.Litres.Sign() <= 0 {
		problems = append(problems, problem.Problem{
			At: "/room", Severity: problem.Caution,
			What: words.Say("The volume of the room is not known, so no air figure can be worked out."),
			Do:   words.Say("Fill in the length, width and height of the room."),
		})
	}
	air := job.Air
	own := !slices.ContainsFunc(emissions, func(e emission) bool { return !e.limit.Known })
	lacks := func(good bool, fact measure.Fact, at string, none, wrong, do words.Text) {
		switch {
		case good:
			return
		case fact.Known:
			none = wrong
		}
		problems = append(problems, problem.Problem{At: at, Severity: problem.Caution, What: none, Do: do})
	}
	lacks(Positive(air.Limit).Known || own && !air.Limit.Known, air.Limit, "/air/limit",
		words.Say("There is no limit for the air, so the air figures that need it are not worked out."),
		words.Say("The limit for the air, {n}, has to be above 0 mg/m³, so the air figures that need it are not worked out.", words.Name("n", plain(air.Limit.Value))),
		words.Say("Take the eight-hour limit from section 8 of the product's safety data sheet."))
	lacks(Positive(air.Opened).Known, air.Opened, "/air/opened",
		words.Say("There is no number of air changes an hour with the windows open, so the air figures that need it are not worked out."),
		words.Say("The number of air changes an hour with the windows open, {n}, has to be above 0, so the air figures that need it are not worked out.", words.Name("n", plain(air.Opened.Value))),
		words.Say("Open a way for air to the outside, or bring a fan, and fill in what it moves."))
	lacks(air.Shut.Known && air.Shut.Value.Sign() >= 0, air.Shut, "/air/shut",
		words.Say("There is no number of air changes an hour with the windows shut, so the air figures that need it are not worked out."),
		words.Say("The number of air changes an hour with the windows shut, {n}, has to be 0 or more, so the air figures that need it are not worked out.", words.Name("n", plain(air.Shut.Value))),
		words.Say("Fill in a number. 0.3 to 0.5 is usual (common practice, no source)."))
	lacks(atLeastOne(air.Mixing).Known, air.Mixing, "/air/mixing",
		words.Say("There is no mixing factor, so the air figures that need it are not worked out."),
		words.Say("The mixing factor, {n}, has to be 1 or more, so the air figures that need it are not worked out.", words.Name("n", plain(air.Mixing.Value))),
		words.Say("Fill in 3 for windows across from each other with a fan, 5 for one opening, 10 for dead corners."))
	return problems
}

// Lacks tells whether something of a product that gives off solvent is not known, or
// cannot be.
func Lacks(product Product) bool { return lackOf(product) != nothing }

// Named is a product by the name of its step.
func Named(product Product) string {
	if product.StepName == "" {
		return "a step without a name"
	}
	return product.StepName
}

// plain writes a number to at most three decimal places.
func plain(n measure.Number) string { return n.RoundHalfEven(3).String() }
