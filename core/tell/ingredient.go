package tell

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// ingredient is a part of mixes that has to be at hand: all of one name
// together, with the steps it is for.
type ingredient struct {
	name   string
	part   finish.Portion
	volume measure.Volume
	grams  measure.Number
	unit   measure.VolumeUnit
	steps  []string
}

// toHave notes the parts of a mix that have to be at hand: all but water, and
// but the main part where that is bought in cans.
func (w *step) toHave(made finish.Mix) {
	main, canned := made.Main(), len(w.owner.Cans) > 0
	for i := range made.Portions {
		p := &made.Portions[i]
		if p.IsWater() || canned && i == main {
			continue
		}
		w.builder.have(ingredient{name: p.Name, part: *p, volume: p.Volume, grams: p.Grams, unit: w.unitOf(p.Part), steps: []string{w.Name}}, i)
	}
}

// have adds to the ingredient of the same name that is measured the same way,
// or begins one.
func (b *builder) have(more ingredient, place int) {
	for i := range b.ingredients {
		if there := &b.ingredients[i]; more.name != "" && there.name == more.name && there.part.Weighed == more.part.Weighed {
			there.volume, there.grams = there.volume.Add(more.volume), there.grams.Add(more.grams)
			if last := there.steps[len(there.steps)-1]; last != more.steps[0] {
				there.steps = append(there.steps, more.steps...)
			}
			return
		}
	}
	if more.name == "" {
		more.name = "Part " + strconv.Itoa(place+1) + " of “" + more.steps[0] + "”"
	}
	b.ingredients = append(b.ingredients, more)
}

// ingredientsToHave puts the parts of mixes on the shopping list, after what is
// bought in cans.
func (b *builder) ingredientsToHave() {
	for i := range b.ingredients {
		g := &b.ingredients[i]
		w := step{builder: b}
		amount := w.exactVolume(upToHave(g.volume, g.unit), g.unit)
		if g.part.Weighed {
			amount = b.Notation.NumberTrimmed(g.grams, 1) + " g"
		}
		quoted := make([]string, len(g.steps))
		for k, name := range g.steps {
			quoted[k] = "“" + name + "”"
		}
		b.buy(g.name, amount, "to mix into "+problem.Listed(quoted))
	}
}

// upToHave is a volume rounded up to what a bottle is read to: a millilitre, or
// from a fluid ounce on a tenth of one. A choice.
func upToHave(v measure.Volume, unit measure.VolumeUnit) measure.Volume {
	step, parts := measure.UnitMillilitre, int64(1)
	switch {
	case finish.IsUSUnit(unit):
		step, parts = measure.UnitFluidOunce, 10
	case unit != measure.UnitLitre && unit != measure.UnitMillilitre:
		step, parts = measure.UnitImperialFluidOunce, 10
	}
	least := v.In(step)
	n, ok := least.Mul(measure.NumberFromInt(parts)).Ceil()
	if !ok || least.Cmp(measure.NumberFromInt(1)) < 0 {
		return v
	}
	return measure.VolumeOf(measure.NumberFromFraction(n, parts), step)
}

// unpricedParts says that what is mixed in has no blank for a price.
func (b *builder) unpricedParts() {
	if len(b.ingredients) == 0 {
		return
	}
	names := make([]string, len(b.ingredients))
	for i := range b.ingredients {
		names[i] = b.ingredients[i].name
	}
	b.Report("/price", []problem.Problem{{Severity: problem.Caution,
		What: words.Raw("What is mixed in has no price of its own and is not in the price: " + problem.Listed(names) + "."),
		Do:   words.Say("Count it in the price of the cans it is mixed into, or in the contingency.")}})
}
