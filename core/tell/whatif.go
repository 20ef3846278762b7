package tell

import (
	"slices"

	"ceilingwright/core/job"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
)

// change is one thing that could be otherwise: what it is called, why the price
// moves, and the change made to a plan that is otherwise the same. goodsStay
// tells that the steps that are left need just what they needed before.
type change struct {
	what, text string
	goodsStay  bool
	make       func(v *builder)
}

// whatIfs prices the job with one thing changed at a time. What is not asked
// again (the room, the setting out) stays as worked out.
func (b *builder) whatIfs(now *price.Quote, missing []string) {
	for _, c := range b.changes() {
		b.guarded("what a change would cost", func() { b.whatIf(&c, now, missing) })
	}
}

func (b *builder) whatIf(c *change, now *price.Quote, missing []string) {
	v := b.variant()
	c.make(v)
	v.goods(b, c.goodsStay)
	v.PlanDays()
	v.BuyTape()
	costs := v.costing()
	quote, _, ok := price.QuoteOf(costs.items, now.Terms)
	if !ok || lacks(costs.missing, missing) {
		return
	}
	difference := quote.Total.Sub(now.Total)
	text := b.money(difference)
	if difference.Sign() > 0 {
		text = "+" + text
	}
	b.Sheet.Price.WhatIf = append(b.Sheet.Price.WhatIf, sheet.WhatIf{What: c.what, Sum: b.money(quote.Total), Change: text, Text: c.text + b.finishChange(v)})
}

// finishChange says when the job is done in v, where that is another day.
func (b *builder) finishChange(v *builder) string {
	now, then := &b.Days, &v.Days
	if !now.Dated || !then.Dated {
		return ""
	}
	before, after := now.LastDay(), then.LastDay()
	switch {
	case after < before:
		return " Done on " + longDate(after) + ", " + page.Plural(int64(before-after), "day", "days") + " sooner."
	case after > before:
		return " Done on " + longDate(after) + ", " + page.Plural(int64(after-before), "day", "days") + " later."
	}
	return ""
}

// lacks tells whether something has no price that has one in the present plan:
// the two prices could then not be compared.
func lacks(missing, before []string) bool {
	return slices.ContainsFunc(missing, func(what string) bool { return !slices.Contains(before, what) })
}

// variant is b with nothing of the finish worked out yet, to be changed without
// changing b.
func (b *builder) variant() *builder {
	v := &builder{
		Page: b.Page, Job: b.Job.Variant(), leafDetails: map[int]string{},
	}
	v.Sheet = &sheet.Sheet{}
	return v
}

// goods are what v has to buy for its steps: worked out anew, or taken from b
// where they are the same.
func (v *builder) goods(b *builder, stay bool) {
	isShared := slices.ContainsFunc(b.Plan.Steps, func(s plan.Step) bool { return s.SameAs != "" })
	if !stay || isShared {
		v.priceFinish()
		return
	}
	v.CoverSteps()
	v.ReadHours()
	v.Gild()
	v.BeginFinish()
	for i := range v.Plan.Steps {
		same := slices.IndexFunc(b.Plan.Steps, func(s plan.Step) bool { return s.ID == v.Plan.Steps[i].ID })
		v.Finish.Steps[i] = b.Finish.Steps[same]
		v.Finish.Steps[i].Owner = i
	}
}

// changes are the things that could be otherwise in this plan.
func (b *builder) changes() []change {
	var list []change
	list = append(list, b.borderChange()...)
	list = append(list, b.layerChange()...)
	list = append(list, b.leafChanges()...)
	return append(list, b.peopleChange()...)
}

// peopleChange is one person more, which moves what is paid by the day.
func (b *builder) peopleChange() []change {
	people := b.People() + 1
	if !b.Days.Dated || people > job.MostPeople {
		return nil
	}
	return []change{{
		what: "One person more", goodsStay: true, text: "With " + page.Plural(int64(people), "person", "people") + " on the job.",
		make: func(v *builder) { v.Plan.Days.People = people },
	}}
}

// widerBorder is a border that the eye tells from the present one: a choice.
const (
	widerInches = 4 * measure.Inch
	widerMetric = 100 * measure.Millimetre
)

// borderChange is the mask with the borders that are wanted, or with a wider
// border all round.
func (b *builder) borderChange() []change {
	wider := widerMetric
	if b.Notation.System == measure.FeetInches {
		wider = widerInches
	}
	outline, what := b.Plan.Mask.Outline, "A border "+b.Notation.Length(wider)+" wider all round"
	length, width := outline.Length-2*wider, outline.Width-2*wider
	wantedLength, wantsLength := job.Sized(b.Setting.Order, setout.LongSide)
	wantedWidth, wantsWidth := job.Sized(b.Setting.Order, setout.WideSide)
	if wantsLength && wantedLength != outline.Length || wantsWidth && wantedWidth != outline.Width {
		what, length, width = "The borders you want", outline.Length, outline.Width
		if wantsLength {
			length = wantedLength
		}
		if wantsWidth {
			width = wantedWidth
		}
	}
	if !outline.IsComplete() || length < mask.LeastPanel || width < mask.LeastPanel {
		return nil
	}
	return []change{{
		what: what,
		text: "A mask of " + b.Notation.Length(length) + " × " + b.Notation.Length(width) + "; its panels are taken to cost in proportion to their area.",
		make: func(v *builder) { v.resize(length, width) },
	}}
}

// resize is the mask of another size, cut in the same way.
func (v *builder) resize(length, width measure.Length) {
	before := v.Plan.Mask.Area()
	v.Plan.Mask.Outline.Length, v.Plan.Mask.Outline.Width = length, width
	ratio := v.Plan.Mask.Area().SquareMetres.Quo(before.SquareMetres)
	for i := range v.Layers {
		l := &v.Layers[i]
		cost := &l.Plan.Price
		if l.Plan.PriceFor != plan.ForSet {
			// The area moves, its price stays.
		} else if sum, ok := price.Round(measure.NumberFromDecimal(cost.Amount).Mul(ratio), int32(v.Plan.Price.Digits)); ok {
			cost.Amount = sum
		}
		panels, problems := mask.LayerFromCut(v.Plan.Mask.Outline, l.Plan.Cut)
		if isPlain := len(l.Panels.Pieces)+len(l.Panels.Loose) == 0; isPlain && !hasStop(problems) && !panels.IsEmpty() {
			l.Panels, v.Hung(i).Order = panels, nil
		}
		l.Tape = l.Panels.TapeLength(v.Plan.Mask.Outline, v.Plan.Seams.Cover)
	}
}

func hasStop(problems []problem.Problem) bool {
	return slices.ContainsFunc(problems, func(p problem.Problem) bool { return p.Severity == problem.Stop })
}

// layerChange is the mask without its last layer.
func (b *builder) layerChange() []change {
	last := len(b.Layers) - 1
	if last < 1 {
		return nil
	}
	id, name := b.Layers[last].Panels.ID, b.Layers[last].Panels.Name
	return []change{{
		what: "One layer less", goodsStay: true, text: "Without “" + name + "” and the steps that go through it.",
		make: func(v *builder) {
			v.Layers = v.Layers[:last]
			v.Keys[last-1] = job.Key{} // no layer comes after it
			v.Plan.Steps = slices.DeleteFunc(v.Plan.Steps, func(s plan.Step) bool { return s.LayerID == id && goesThrough(&s) })
		},
	}}
}

// goesThrough tells whether a step needs the mask of its layer.
func goesThrough(s *plan.Step) bool {
	return s.Kind == finish.Peel || s.Basis == finish.Openings || s.Basis == finish.Edges || s.Basis == finish.Mask
}

// mostLeafChanges keeps the list to what can be read.
const mostLeafChanges = 3

// leafChanges are each leaf laid in the metal of another that the plan knows, and
// the job without that leaf.
func (b *builder) leafChanges() []change {
	var list []change
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		if s.Leaf == nil || len(list) >= mostLeafChanges {
			continue
		}
		if other := b.otherLeaf(s.Leaf); other != nil {
			list = append(list, change{
				what: "“" + s.Name + "” in " + string(other.Metal), text: "In the leaf of another step: its size, its lap and its price.",
				make: func(v *builder) { v.Plan.Steps[i].Leaf = inMetal(s.Leaf, other) },
			})
		}
		if without, ok := b.withoutLeaf(i); ok {
			list = append(list, without)
		}
	}
	return list
}

// withoutLeaf is the job without the leaf of a step and the size under it. A layer
// that nothing else goes through is then neither bought nor hung.
// ok is false where that is the change of one layer less.
func (b *builder) withoutLeaf(i int) (c change, ok bool) {
	name, first := b.Plan.Steps[i].Name, i
	what := "Neither the leaf nor the size under it"
	if b.sharesSize(i) {
		what = "Not the leaf, but the size, for the other leaf on it"
	} else if i > 0 && b.Plan.Steps[i-1].Kind == finish.SizeCoat {
		first--
	}
	text, idle := what+".", b.idleWithout(first, i)
	if idle >= 1 && idle == len(b.Layers)-1 {
		return c, false
	}
	if idle >= 0 {
		text = what + ", nor “" + b.Layers[idle].Panels.Name + "”, which nothing else goes through."
	}
	return change{
		what: "Without “" + name + "”", goodsStay: true, text: text,
		make: func(v *builder) {
			v.Plan.Steps = slices.Delete(v.Plan.Steps, first, i+1)
			if idle >= 0 {
				v.Layers[idle].Plan.Price.Amount, v.Layers[idle].Tape = decimal.Zero, 0
			}
		},
	}, true
}

// sharesSize tells whether another leaf is laid on the size of a leaf.
func (b *builder) sharesSize(leaf int) bool {
	size := b.SizeUnder(leaf)
	for i := range b.Plan.Steps {
		if i != leaf && size >= 0 && b.Plan.Steps[i].Kind == finish.LeafLaying && b.SizeUnder(i) == size {
			return true
		}
	}
	return false
}

// idleWithout is the layer through which only the steps from first to last go,
// but for peeling it; −1 where there is none.
func (b *builder) idleWithout(first, last int) int {
	idle := b.LayerThrough(last)
	for i := range b.Plan.Steps {
		if (i < first || i > last) && b.Plan.Steps[i].Kind != finish.Peel && b.LayerThrough(i) == idle {
			return -1
		}
	}
	return idle
}

// otherLeaf is a leaf of another metal in the plan, nil where there is none.
func (b *builder) otherLeaf(leaf *plan.Leaf) *plan.Leaf {
	for i := range b.Plan.Steps {
		if other := b.Plan.Steps[i].Leaf; other != nil && other.Metal != leaf.Metal && other.Known {
			return other
		}
	}
	return nil
}

// inMetal is leaf laid in the same way in the metal of other.
func inMetal(leaf, other *plan.Leaf) *plan.Leaf {
	laid := *leaf
	laid.Metal, laid.Leaf, laid.PerBook, laid.BooksPerPack = other.Metal, other.Leaf, other.PerBook, other.BooksPerPack
	laid.PerBookPrice, laid.PerPackPrice, laid.GramsPer1000 = other.PerBookPrice, other.PerPackPrice, other.GramsPer1000
	return &laid
}
