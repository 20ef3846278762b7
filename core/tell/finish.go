package tell

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	telling "ceilingwright/core/tell/finish"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// product is what a step uses up, its thinner included, kept for the air of the
// room. known is false where the amount could not be worked out.
type product struct {
	step  plan.Step
	used  measure.Volume
	known bool
}

// finish is the block Finish: each step's area, product, cans and leaf. What
// all steps take is worked out first, since some are bought together.
func (b *builder) finish() {
	b.CoverSteps()
	b.ReadHours()
	b.Gild()
	steps := make([]*step, len(b.Plan.Steps))
	for i := range steps {
		steps[i] = b.prepare(i)
	}
	b.shareMaterials(steps)
	for _, w := range steps {
		w.show()
		b.Sheet.Steps = append(b.Sheet.Steps, w.out)
	}
	b.ingredientsToHave()
	b.underLeaf()
}

// step is one step on its way onto the sheet: what it covers, where that is
// known, and what it takes, where that is known. owner is the step whose product
// it is, itself where it is bought for itself, and users are all steps of the
// product, where the step owns it.
type step struct {
	*builder
	plan.Step
	out           sheet.Step
	covers, takes bool
	at            int // in the plan
	area          measure.Area
	product       finish.Product
	needs         finish.Needs
	beyond        measure.Area   // sized twice,
	stops         measure.Length // past so much of stop lines
	owner         *step
	users         []*step
	recipe        *recipe // of its mix, once asked for
}

// prepare works out what a step covers and takes, and shows nothing yet.
func (b *builder) prepare(i int) *step {
	s := &b.Plan.Steps[i]
	w := &step{builder: b, at: i, Step: *s, out: sheet.Step{ID: s.ID, Name: s.Name, Kind: string(s.Kind), Material: s.ID}}
	w.area, w.covers = b.Covers[i].Area, b.Covers[i].Known
	if w.Kind.IsLiquid() {
		w.takeOff()
		b.products = append(b.products, product{w.Step, w.product.Used(), w.takes})
	}
	return w
}

// show puts the step onto the sheet.
func (w *step) show() {
	if w.covers {
		rule, sum := telling.Covers(&w.Page, w.Job, w.at)
		w.builder.Area(page.Finish, w.id("area"), "area", w.area, rule, sum, page.OfArithmetic)
		w.sizedFigure()
	}
	switch {
	case w.Kind.IsLiquid():
		w.paint()
		w.mix()
	case w.Kind == finish.LeafLaying:
		w.leaf(w.area, w.covers)
	}
}

// id is a figure id of the step, which is noted as one of its figures.
func (w *step) id(name string) string {
	id := "step." + w.ID + "." + name
	w.out.Figures = append(w.out.Figures, id)
	return id
}

// sized is the area that the product of a step has to do for: what lies past the
// stop lines is sized twice. Other steps cover their area once.
func (w *step) sized(area measure.Area) measure.Area {
	w.beyond, w.stops = w.SizedTwice(w.at)
	return area.Add(w.beyond)
}

// sizedFigure shows the area to size, where that is more than the area.
func (w *step) sizedFigure() {
	if w.beyond.SquareMetres.Sign() <= 0 {
		return
	}
	w.builder.Area(page.Finish, w.id("sized"), w.Say("area to size"), w.area.Add(w.beyond),
		w.Say("The area, and what is sized twice: past the line where each section stops, so that the next section's size blends into it: {stops} of lines in all. Through a mask only its openings count.", words.Length("stops", w.stops)),
		w.Say("{area} + {beyond} past the stop lines", words.Area("area", w.area), words.Area("beyond", w.beyond)), w.Say("A gilder's notes of May 2011: size half a foot past where you will stop."))
}
