package tell

import (
	"ceilingwright/core/export"
	"ceilingwright/core/finish"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	tellfinish "ceilingwright/core/tell/finish"
	"ceilingwright/core/tell/shopping"
)

// finish is the block Finish: each step's area, product, cans and leaf.
func (b *builder) finish() {
	b.takeOff()
	b.Sheet.Steps = make([]sheet.Step, len(b.Plan.Steps))
	for i := range b.Plan.Steps {
		b.Sheet.Steps[i] = tellfinish.Step(b.Job, i)
	}
	for i := range b.Plan.Steps {
		out, kind := &b.Sheet.Steps[i], b.Plan.Steps[i].Kind
		if kind.IsLiquid() {
			b.BuyCans(i)
			b.Mix(i)
		}
		tellfinish.Area(&b.Page, b.Job, i, out)
		switch {
		case kind.IsLiquid():
			tellfinish.Product(&b.Page, b.Job, i, out)
		case kind == finish.LeafLaying:
			b.leafOf(i, out)
		}
	}
	b.underLeaf()
}

// takeOff works out what all steps take, since some are bought together.
func (b *builder) takeOff() {
	b.CoverSteps()
	b.ReadHours()
	b.Gild()
	b.BeginFinish()
	for i := range b.Plan.Steps {
		if b.IsSpread(i) {
			b.TakeOff(i)
		}
	}
	b.ShareMaterials()
	b.ReadRecipes()
}

// priceFinish works out what is bought for the steps and tells nothing.
func (b *builder) priceFinish() {
	b.takeOff()
	for i := range b.Plan.Steps {
		switch kind := b.Plan.Steps[i].Kind; {
		case kind.IsLiquid():
			b.BuyCans(i)
		case kind == finish.LeafLaying:
			b.leafOf(i, &sheet.Step{})
		}
	}
}

// climate is whether it is fit to paint.
func (b *builder) climate() {
	b.JudgeClimate()
	tellfinish.Climate(&b.Page, b.Job)
}

// costs is the list of what to buy, and what it costs.
func (b *builder) costs() {
	b.shopping().Tell()
}

func (b *builder) shopping() *shopping.List {
	return &shopping.List{Page: &b.Page, Job: b.Job, Bought: b.ToBuy(), Leaf: func(step int) (amount, detail string) {
		return b.Sheet.Steps[step].Buy, b.leafDetails[step]
	}}
}

// Shopping is the list of what to buy of a plan as a table. A document that is no plan
// gives the headings alone.
func Shopping(doc plan.Document) [][]export.Cell {
	b := builderFrom(doc, "")
	if !doc.Usable {
		return (&shopping.List{Page: &b.Page, Job: b.Job}).Table()
	}
	b.workOut()
	return b.shopping().Table()
}
