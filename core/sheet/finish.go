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
	b.ingredientsToHave()
	b.underLeaf()
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
			need, known = w.paint(w.sized(area))
		}
		b.products = append(b.products, product{s, need, known})
		w.mix(need, known)
	case s.Kind == finish.LeafLaying:
		w.leaf(area, ok)
	}
	b.sheet.Steps = append(b.sheet.Steps, w.out)
}

// id is a figure id of the step, which is noted as one of its figures.
func (w *step) id(name string) string {
	id := "step." + w.ID + "." + name
	w.out.Figures = append(w.out.Figures, id)
	return id
}
