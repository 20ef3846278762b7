package tell

import (
	"ceilingwright/core/export"
	"ceilingwright/core/finish"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	tellfinish "ceilingwright/core/tell/finish"
	tellleaf "ceilingwright/core/tell/leaf"
	"ceilingwright/core/tell/shopping"
)

// finish is the block Finish: each step's area, product, cans and leaf.
func (b *builder) finish() {
	b.Sheet.Steps = make([]sheet.Step, len(b.Plan.Steps))
	for i := range b.Plan.Steps {
		b.Sheet.Steps[i] = tellfinish.Step(b.Job, i)
	}
	for i := range b.Plan.Steps {
		out, kind := &b.Sheet.Steps[i], b.Plan.Steps[i].Kind
		tellfinish.Area(&b.Page, b.Job, i, out)
		switch {
		case kind.IsLiquid():
			tellfinish.Product(&b.Page, b.Job, i, out)
		case kind == finish.LeafLaying:
			tellleaf.Step(&b.Page, b.Job, i, out)
		}
	}
}

// costs is the list of what to buy, and what it costs.
func (b *builder) costs() {
	b.shopping().Tell()
}

func (b *builder) shopping() *shopping.List {
	return &shopping.List{Page: &b.Page, Job: b.Job, Bought: b.ToBuy(), Leaf: func(step int) (amount, detail string) { return tellleaf.Line(&b.Page, b.Job, step) }}
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
