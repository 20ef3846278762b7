package safety

import (
	"strconv"
	"strings"

	"ceilingwright/core/measure"
)

// Amounts the rules compare with, each in the unit its rule is written in.
// Sources stand beside the rules.
var (
	solventPerLitre   = measure.NumberFromInt(150)  // g/L, above: treated as a solvent product
	nearFlammable     = measure.NumberFromInt(4000) // mg/m³, a tenth of the lower limit of burning
	overheadNoteFrom  = measure.NumberFromInt(2)    // hours a day
	overheadCautionAt = measure.NumberFromInt(4)    // hours a day
)

// facts is a job with what was worked out from it once, for all the rules.
type facts struct {
	Job
	deck        Deck
	deckKnown   bool
	air         Air
	course      Course
	solventPeak Fact // mg/m³ in the shut room with all of the solvent products' solvent in its air at once
}

func factsOf(job Job) facts {
	deck, _ := DeckOf(job)
	air, _ := AirOf(job)
	solvents := job
	solvents.Products = productsThat(isSolvent, job.Products)
	solventAir, _ := AirOf(solvents)
	return facts{Job: job, deck: deck, deckKnown: deck.Means != "", air: air, course: courseOf(job), solventPeak: solventAir.Peak}
}

func courseOf(job Job) Course {
	if job.Course != nil {
		return *job.Course
	}
	return CourseOf(job)
}

// needsDeck: the ceiling cannot be worked on from the floor.
func (f facts) needsDeck() bool { return f.deckKnown && f.deck.Means != FromFloor }

// onDeck: a deck is needed, and nobody has said that something else is used.
func (f facts) onDeck() bool {
	return f.needsDeck() && (f.Access == Platform || f.Access == "")
}

// onPlatform: the deck is more than a hop-up, so it is put up, moved and climbed.
func (f facts) onPlatform() bool { return f.onDeck() && f.deck.Means == GuardedDeck }

func (f facts) unguarded() bool { return f.onDeck() && f.Rails != Yes }

// exceeds tells whether both amounts are known and the first is above so many
// times the second.
func exceeds(amount, limit Fact, times measure.Number) bool {
	return amount.Known && limit.Known && amount.Value.Cmp(limit.Value.Mul(times)) > 0
}

var (
	once = measure.NumberFromInt(1)
	half = measure.NumberFromFraction(1, 2)
)

// averageOverLimit: in the worst working day the products together are above
// what is allowed over eight hours, or for a quarter of an hour.
func (f facts) averageOverLimit() bool {
	return exceeds(f.course.Share, FactOf(once), once) || exceeds(f.course.ShortTerm, above(f.Air.ShortTerm, 0), once)
}

// averageNearLimit: they are above half of it, or above it at some time with
// people in the room.
func (f facts) averageNearLimit() bool {
	return exceeds(f.course.Share, FactOf(half), once) || exceeds(f.course.ShortTerm, above(f.Air.Limit, 0), once)
}

func (f facts) shutOverLimit() bool {
	return exceeds(f.air.Shut, above(f.Air.Limit, 0), once)
}

func (f facts) givesOff() bool { return f.air.Mass.Known && f.air.Mass.Value.Sign() > 0 }

func (f facts) purges() bool { return f.air.Purge.Known && f.air.Purge.Value.Sign() > 0 }

func (f facts) steps(test func(Product) bool) []Product { return productsThat(test, f.Products) }

func productsThat(test func(Product) bool, products []Product) []Product {
	var found []Product
	for _, product := range products {
		if test(product) {
			found = append(found, product)
		}
	}
	return found
}

// isSolvent: thinned with solvent, or holding more than 150 g/L of it, or
// nothing is known that speaks against it. The 150 g/L is derived: no
// water-borne interior paint is allowed as much (Directive 2004/42/EC, annex II,
// but for decorative effects).
func isSolvent(product Product) bool {
	if product.Binder == Solvent {
		return true
	}
	if product.VOC.Known {
		return product.VOC.Value.Cmp(solventPerLitre) > 0
	}
	return product.Binder != Water
}

func hasNoBinder(product Product) bool {
	return product.Binder != Water && product.Binder != Solvent && product.Binder != DryingOil
}

func isUncounted(product Product) bool {
	if isZero(product.VOC) || isZero(product.Litres) {
		return false
	}
	return productProblem(product) != nil || !above(product.DryHours, 0).Known
}

// solventLitres is how much of the solvent products is used, as far as known.
func (f facts) solventLitres() measure.Volume {
	var sum measure.Volume
	for _, product := range f.steps(isSolvent) {
		if product.Litres.Known {
			sum = sum.Add(measure.Volume{Litres: product.Litres.Value})
		}
	}
	return sum
}

// atProduct is the place in the plan of the first product of which the test
// holds, and the blank in it.
func atProduct(test func(Product) bool, blank string) func(facts) string {
	return func(f facts) string {
		if found := f.steps(test); len(found) > 0 {
			return found[0].At + blank
		}
		return "/finish/steps"
	}
}

func names(products []Product) string {
	list := make([]string, len(products))
	for i, product := range products {
		list[i] = named(product)
	}
	return strings.Join(list, ", ")
}

// amount is what a word in braces stands for, "" where there is no such word.
func (f facts) amount(name string, style Style) string {
	if text := f.buildingAmount(name, style); text != "" {
		return text
	}
	if text := f.accessAmount(name, style); text != "" {
		return text
	}
	return f.airAmount(name, style)
}

func (f facts) airAmount(name string, style Style) string {
	switch name {
	case "limit":
		return level(f.Air.Limit, style)
	case "average":
		return level(f.course.Average, style)
	case "share":
		return style.number(f.course.Share.Value.Mul(measure.NumberFromInt(100)), 0) + " %"
	case "level":
		return level(f.course.ShortTerm, style)
	case "shut level":
		return level(f.air.Shut, style)
	case "peak":
		return level(f.air.Peak, style)
	case "solvent peak":
		return level(f.solventPeak, style)
	case "near flammable":
		return level(FactOf(nearFlammable), style)
	case "changes":
		return style.number(roundUp(f.air.Changes.Value, 10), 1)
	case "purge":
		return hoursAndMinutes(f.air.Purge.Value)
	case "solvent steps":
		return names(f.steps(isSolvent))
	case "uncounted steps":
		return names(f.steps(isUncounted))
	case "steps without binder":
		return names(f.steps(hasNoBinder))
	}
	return ""
}

func level(fact Fact, style Style) string { return style.number(fact.Value, 0) + " mg/m³" }

// hoursAndMinutes writes a time that is a whole count of minutes.
func hoursAndMinutes(hours measure.Number) string {
	minutes, _ := hours.Mul(measure.NumberFromInt(60)).Ceil()
	switch {
	case minutes < 60:
		return strconv.FormatInt(minutes, 10) + " min"
	case minutes%60 == 0:
		return strconv.FormatInt(minutes/60, 10) + " h"
	}
	return strconv.FormatInt(minutes/60, 10) + " h " + strconv.FormatInt(minutes%60, 10) + " min"
}
