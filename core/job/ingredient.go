package job

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Ingredient is a part of mixes: what it is, and how much of it has to be at hand, all
// of one name together. It is measured as Unit is, or in Grams where it is Weighed.
// Place is its place in the mix of Step; Steps are those it is for.
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
func (j *Job) ingredient(step int, mix *mixing.Mix, place int) Ingredient {
	p := &mix.Portions[place]
	g := Ingredient{Name: p.Name, Step: step, Place: place, Weighed: p.Weighed, Volume: p.Volume, Grams: p.Grams, Unit: j.unitOf(&p.Part), Steps: []int{step}}
	if j.recipeFor(step).OfCan && place == len(mix.Portions)-1 {
		g.As = IsInCan
	}
	return g
}

// toHave notes the parts of a mix that have to be at hand: all but water, and but the
// main part where that is bought in cans.
func (j *Job) toHave(step int, made *mixing.Mix) {
	main, canned := made.Main(), len(j.Plan.Steps[j.Finish.Steps[step].Owner].Cans) > 0
	for i := range made.Portions {
		if !made.Portions[i].Water && (!canned || i != main) {
			j.have(j.ingredient(step, made, i))
		}
	}
}

// have adds to the ingredient of the same name that is measured the same way, or
// begins one.
func (j *Job) have(more Ingredient) {
	list := &j.Finish.ToHave
	at := slices.IndexFunc(*list, func(g Ingredient) bool { return j.isSame(&g, &more) })
	if at < 0 {
		*list = append(*list, more)
		return
	}
	there := &(*list)[at]
	there.Volume, there.Grams = there.Volume.Add(more.Volume), there.Grams.Add(more.Grams)
	if last := there.Steps[len(there.Steps)-1]; j.Plan.Steps[last].Name != j.Plan.Steps[more.Steps[0]].Name {
		there.Steps = append(there.Steps, more.Steps...)
	}
}

// isSame tells whether two ingredients are one by what they are called. Those without a
// name never are.
func (j *Job) isSame(a, b *Ingredient) bool {
	if a.As != b.As || a.Weighed != b.Weighed {
		return false
	}
	one, other := a.Step, b.Step
	switch a.As {
	case IsInCan:
		return j.Plan.Steps[j.Mixer(one)].Kind.Liquid() == j.Plan.Steps[j.Mixer(other)].Kind.Liquid()
	case IsThinner:
		return j.Plan.Steps[one].Name == j.Plan.Steps[other].Name
	}
	return a.Name != "" && a.Name == b.Name
}

// Called is what an ingredient of a mix is called where the mix is before one.
func (j *Job) Called(g *Ingredient) words.Text {
	switch {
	case g.As == IsThinner:
		return words.Say("thinner, for “{step}”", words.Name("step", j.Plan.Steps[g.Step].Name))
	case g.As == IsInCan:
		return fromCan(j.Plan.Steps[j.Mixer(g.Step)].Kind.Liquid())
	case g.Name == "":
		return words.Say("part {n}", words.Count("n", g.Place+1))
	}
	return words.Verbatim(g.Name)
}

// PartOf is what a part of the mix of a step is called.
func (j *Job) PartOf(step, place int) words.Text {
	g := j.ingredient(step, &j.recipeFor(step).Mix, place)
	return j.Called(&g)
}

// CalledAlone is what an ingredient is called elsewhere.
func (j *Job) CalledAlone(g *Ingredient) words.Text {
	if g.As == IsPart && g.Name == "" {
		return words.Say("Part {n} of “{step}”", words.Count("n", g.Place+1), words.Name("step", j.Plan.Steps[g.Step].Name))
	}
	return j.Called(g)
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

// UnpricedParts says that what is mixed in has no blank for a price.
func (j *Job) UnpricedParts() {
	if len(j.Finish.ToHave) == 0 {
		return
	}
	names := make([]words.Text, len(j.Finish.ToHave))
	for i := range j.Finish.ToHave {
		names[i] = j.CalledAlone(&j.Finish.ToHave[i])
	}
	j.Report("/price", []problem.Problem{{Severity: problem.Caution,
		What: words.Say("What is mixed in has no price of its own and is not in the price: {names}.", words.FewOf("names", names)),
		Do:   words.Say("Count it in the price of the cans it is mixed into, or in the contingency.")}})
}
