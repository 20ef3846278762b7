package sheet

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
)

// product is what a step uses up, kept for the air of the room. known is false
// where the amount could not be worked out.
type product struct {
	step  plan.Step
	need  measure.Volume
	known bool
}

// finish is the block Finish: each step's area, product, cans and leaf.
func (b *builder) finish() {
	for _, step := range b.plan.Steps {
		b.step(step)
	}
}

// step is one step on its way onto the sheet.
type step struct {
	*builder
	plan.Step
	out Step
}

func (b *builder) step(s plan.Step) {
	w := &step{builder: b, Step: s, out: Step{ID: s.ID, Name: s.Name, Kind: string(s.Kind)}}
	area, ok := w.area()
	switch {
	case s.Kind.IsLiquid():
		need, known := measure.Volume{}, false
		if ok {
			need, known = w.paint(area)
		}
		b.products = append(b.products, product{s, need, known})
		w.mix(need, known)
	case s.Kind == finish.LeafLaying && ok:
		w.leaf(area)
	}
	b.sheet.Steps = append(b.sheet.Steps, w.out)
}

// id is a figure id of the step, which is noted as one of its figures.
func (w *step) id(name string) string {
	id := "step." + w.ID + "." + name
	w.out.Figures = append(w.out.Figures, id)
	return id
}

// mix is what one batch of a mix comes to, and how many the step takes.
func (w *step) mix(need measure.Volume, known bool) {
	if len(w.Mix) == 0 {
		return
	}
	mix, problems, ok := finish.MixOf(w.Mix)
	w.report(w.At+"/mix", problems)
	if !ok {
		return
	}
	sum := ""
	for i, part := range w.Mix {
		if i > 0 {
			sum += " + "
		}
		sum += finish.Amount(part.Amount, part.Unit)
		if part.Name != "" {
			sum += " " + part.Name
		}
	}
	spoons := w.n.NumberTrimmed(mix.Total.In(measure.UnitTeaspoon), 2) + " tsp"
	millilitres := w.n.NumberTrimmed(mix.Total.In(measure.UnitMillilitre), 0) + " mL"
	text, other := spoons, millilitres
	if w.n.System == measure.Metric {
		text, other = millilitres, spoons
	}
	source := "1 US fl oz = 6 tsp (NIST Handbook 44, appendix C)."
	if w.n.Imperial {
		source = "1 US fl oz = 6 tsp, so 1 tsp = 4.929 mL (NIST Handbook 44, appendix C); imperial measures by the gallon of 4.546 09 L."
	}
	w.figure(Figure{
		ID: w.id("mix"), Block: blockFinish, Label: "one batch of the mix", Value: plain(mix.Total.Litres), Unit: "L", Text: text, Other: other,
		Working: Working{Rule: "The parts together.", Sum: sum + " = " + spoons + " = " + millilitres, Source: source},
	})
	w.batches(mix, need, known)
}

func (w *step) batches(mix finish.Mix, need measure.Volume, known bool) {
	if !known {
		return
	}
	n, ok := mix.Batches(need)
	if !ok {
		return
	}
	w.count(blockFinish, w.id("batches"), "batches of the mix", n, "",
		"What the step takes, in whole batches. Stir them together in one pail before you start: two batches seldom match.",
		w.n.Volume(need)+" ÷ "+w.n.Volume(mix.Total)+", rounded up", ofArithmetic)
}
