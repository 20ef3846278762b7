package steps

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/words"
)

// Ingredient is a part of mixes: what it is, and how much of it has to be at hand, all
// of one name together. It is measured as Unit is, or in Grams where it is Weighed.
// Place is its place in the mix of Step; Steps are those it is for. StepName is what Step
// is called, Liquid what is in its can, or in that of the step it is mixed with.
type Ingredient struct {
	As      IngredientKind
	Name    string
	Step    int
	Place   int
	Weighed bool
	Volume  measure.Volume
	Grams   measure.Number
	Unit    measure.VolumeUnit
	Steps   []int

	StepName string
	Liquid   finish.Liquid
}

// IngredientKind is what an ingredient is called by.
type IngredientKind int

// A part by its name, or by its place where it has none; what is in the can of the
// step, and what that is thinned with.
const (
	IsPart IngredientKind = iota
	IsInCan
	IsThinner
)

// ingredient is a part of a mix by its place.
func (w *work) ingredient(step int, mix *mixing.Mix, place int) Ingredient {
	p := &mix.Portions[place]
	g := Ingredient{Name: p.Name, Step: step, Place: place, Weighed: p.Weighed, Volume: p.Volume, Grams: p.Grams, Unit: w.unitOf(&p.Part), Steps: []int{step},
		StepName: w.Plan.Steps[step].Name, Liquid: w.Plan.Steps[w.mixer(step)].Kind.Liquid()}
	if w.recipeFor(step).OfCan && place == len(mix.Portions)-1 {
		g.As = IsInCan
	}
	return g
}

// toHave notes the parts of a mix that have to be at hand: all but water, and but the
// main part where that is bought in cans.
func (w *work) toHave(step int, made *mixing.Mix) {
	main, canned := made.Main(), len(w.Plan.Steps[w.Finish.Steps[step].Owner].Cans) > 0
	for i := range made.Portions {
		if !made.Portions[i].Water && (!canned || i != main) {
			w.have(w.ingredient(step, made, i))
		}
	}
}

// have adds to the ingredient of the same name that is measured the same way, or
// begins one.
func (w *work) have(more Ingredient) {
	list := &w.Finish.ToHave
	at := slices.IndexFunc(*list, func(g Ingredient) bool { return g.isSame(&more) })
	if at < 0 {
		*list = append(*list, more)
		return
	}
	there := &(*list)[at]
	there.Volume, there.Grams = there.Volume.Add(more.Volume), there.Grams.Add(more.Grams)
	if last := there.Steps[len(there.Steps)-1]; w.Plan.Steps[last].Name != w.Plan.Steps[more.Steps[0]].Name {
		there.Steps = append(there.Steps, more.Steps...)
	}
}

// isSame tells whether two ingredients are one by what they are called. Those without a
// name never are.
func (g *Ingredient) isSame(o *Ingredient) bool {
	switch {
	case g.As != o.As || g.Weighed != o.Weighed:
		return false
	case g.As == IsInCan:
		return g.Liquid == o.Liquid
	case g.As == IsThinner:
		return g.StepName == o.StepName
	}
	return g.Name != "" && g.Name == o.Name
}

// Called is what an ingredient of a mix is called where the mix is before one.
func (g *Ingredient) Called() words.Text {
	switch {
	case g.As == IsThinner:
		return words.Say("thinner, for “{step}”", words.Name("step", g.StepName))
	case g.As == IsInCan:
		return fromCan(g.Liquid)
	case g.Name == "":
		return words.Say("part {n}", words.Count("n", g.Place+1))
	}
	return words.Verbatim(g.Name)
}

// CalledAlone is what an ingredient is called elsewhere.
func (g *Ingredient) CalledAlone() words.Text {
	if g.As == IsPart && g.Name == "" {
		return words.Say("Part {n} of “{step}”", words.Count("n", g.Place+1), words.Name("step", g.StepName))
	}
	return g.Called()
}

func fromCan(liquid finish.Liquid) words.Text {
	switch liquid {
	case finish.SizeOf:
		return words.Say("size from the can")
	case finish.GlazeOf:
		return words.Say("glaze from the can")
	case finish.ClearOf:
		return words.Say("clear coat from the can")
	}
	return words.Say("paint from the can")
}

// Amount is how much of an ingredient has to be at hand: what a scale weighs, or a
// volume up to what a bottle is read to, a millilitre, or from a fluid ounce on a tenth
// of one. A choice.
func (g *Ingredient) Amount() mixing.Quantity {
	if g.Weighed {
		return mixing.Grams(g.Grams)
	}
	unit, parts := mixing.ReadTo(g.Unit)
	least := g.Volume.In(unit)
	n, ok := least.Mul(measure.NumberFromInt(parts)).Ceil()
	if !ok || least.Cmp(measure.NumberFromInt(1)) < 0 {
		return mixing.InUnits(g.Volume, g.Unit)
	}
	return mixing.InUnits(measure.VolumeOf(measure.NumberFromFraction(n, parts), unit), g.Unit)
}
