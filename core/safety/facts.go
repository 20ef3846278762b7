package safety

import (
	"slices"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Amounts the rules compare with, each in the unit its rule is written in.
// Sources stand beside the rules.
var (
	overheadNoteFrom  = measure.NumberFromInt(2) // hours a day
	overheadCautionAt = measure.NumberFromInt(4) // hours a day
)

// facts is a job with what was worked out from it once, for all the rules.
type facts struct {
	Job
	deck        Deck
	deckKnown   bool
	air         air.Air
	course      air.Course
	burningPeak measure.Fact // mg/m³ in the shut room with all that the products that may burn give off in its air at once
}

func factsOf(job Job) *facts {
	deck, _ := DeckOf(job)
	inAir, _ := air.Of(job.Job)
	burning := job
	burning.Products = air.That(air.MayBurn, job.Products)
	burningAir, _ := air.Of(burning.Job)
	return &facts{Job: job, deck: deck, deckKnown: deck.Means != "", air: inAir, course: courseOf(job), burningPeak: burningAir.Peak}
}

func courseOf(job Job) air.Course {
	if job.Course != nil {
		return *job.Course
	}
	return air.CourseOf(job.Job)
}

// needsDeck: the ceiling cannot be worked on from the floor.
func (f *facts) needsDeck() bool { return f.deckKnown && f.deck.Means != FromFloor }

// onDeck: a deck is needed, and nobody has said that something else is used.
func (f *facts) onDeck() bool {
	return f.needsDeck() && (f.Access == Platform || f.Access == "")
}

// onPlatform: the deck is more than a hop-up, so it is put up, moved and climbed.
func (f *facts) onPlatform() bool { return f.onDeck() && f.deck.Means == GuardedDeck }

// mayBeAlone: nobody has said that there are two or more.
func (f *facts) mayBeAlone() bool { return f.Hands < 2 && f.count() < 2 }

func (f *facts) unguarded() bool { return f.onDeck() && f.Rails != Yes }

// exceeds tells whether both amounts are known and the first is above so many
// times the second.
func exceeds(amount, limit measure.Fact, times measure.Number) bool {
	return amount.Known && limit.Known && amount.Value.Cmp(limit.Value.Mul(times)) > 0
}

func (f *facts) steps(test func(air.Product) bool) []air.Product { return air.That(test, f.Products) }

// uses tells whether the test holds of a product.
func (f *facts) uses(test func(air.Product) bool) bool { return slices.ContainsFunc(f.Products, test) }

func hasNoBinder(product air.Product) bool {
	return product.Binder != air.Water && product.Binder != air.Solvent && product.Binder != air.DryingOil
}

// atProduct is the place in the plan of the first product of which the test
// holds, and the blank in it.
func atProduct(test func(air.Product) bool, blank string) func(*facts) string {
	return func(f *facts) string {
		if found := f.steps(test); len(found) > 0 {
			return found[0].At + blank
		}
		return "/finish/steps"
	}
}

// namedSteps are the words in braces that stand for the names of steps, with what
// holds of those.
var namedSteps = map[string]func(air.Product) bool{
	"solvent steps":          air.IsSolvent,
	"burning steps":          air.MayBurn,
	"oil steps":              isDryingOil,
	"glove steps":            isHardOnSkin,
	"sprayed steps":          isSprayed,
	"two-pack steps":         isTwoPack,
	"sprayed two-pack steps": isSprayedTwoPack,
	"thinned steps":          addsFumes,
	"solvent-cleaned steps":  cleansWithSolvent,
	"unsplit steps":          isUnsplit,
	"uncounted steps":        isUncounted,
	"steps without binder":   hasNoBinder,
}

// amount is what a word in braces stands for, nil where there is no such word.
func (f *facts) amount(name string) words.Value {
	if holds, ok := namedSteps[name]; ok {
		return air.Names(f.steps(holds))
	}
	for _, of := range [...]func(*facts, string) words.Value{(*facts).buildingAmount, (*facts).accessAmount, (*facts).airAmount} {
		if value := of(f, name); value != nil {
			return value
		}
	}
	return nil
}

// length is a length in a rule's words.
func length(l measure.Length) words.Value { return words.Length("", l).Value }

// area is an area in a rule's words.
func area(a measure.Area) words.Value { return words.Area("", a).Value }

var (
	once = measure.NumberFromInt(1)
	half = measure.NumberFromFraction(1, 2)
)
