package job

import (
	"slices"

	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"

	"github.com/shopspring/decimal"
)

// Change is one thing of the job that could be otherwise. Length and Width are the mask
// of another size, Wider how much wider its borders all are. Layer is the layer left
// out, or that of the leaf left out where nothing else goes through it; −1 for none.
// Step is the leaf, SizeStays that its size is left for another leaf on it.
//
// goodsStay tells that the steps that are left need just what they needed before, make
// changes a job that is otherwise the same.
type Change struct {
	Of                   ChangeOf
	Length, Width, Wider measure.Length
	Layer, Step          int
	SizeStays            bool
	Metal                finish.Metal
	People               int

	goodsStay bool
	make      func(v *Job)
}

// ChangeOf is what is otherwise.
type ChangeOf int

// The borders that are wanted, or wider ones; no last layer; a leaf in the metal of
// another, or no such leaf; one person more.
const (
	BordersWanted ChangeOf = iota
	BordersWider
	LayerLess
	LeafInMetal
	LeafLess
	PersonMore
)

// WhatIf is a change and what comes of it: the price, how much more that is, and, where
// the job has its days, the last of them and how many later it is.
type WhatIf struct {
	Change
	Total, More decimal.Decimal
	Done        days.Date
	Later       int
}

// tryOtherwise prices the job with each of the changes made to it.
func (j *Job) tryOtherwise() (list []WhatIf) {
	if !j.Price.Known {
		return nil
	}
	changes := j.Changes()
	for i := range changes {
		if w, ok := j.WhatIf(&changes[i]); ok {
			list = append(list, w)
		}
	}
	return list
}

// given is what the job is priced by.
func (j *Job) given() pricing.Given {
	return pricing.Given{Plan: &j.Plan, Surface: &j.Surface, Found: &j.Found, Days: &j.Days}
}

// WhatIf prices the job with one thing changed. ok is false where there is then no price
// that could be compared.
func (j *Job) WhatIf(c *Change) (w WhatIf, ok bool) {
	v := j.with(c)
	costs := pricing.CostsOf(v.given())
	quote, _, ok := price.QuoteOf(costs.Items, j.Price.Quote.Terms)
	if !ok || costs.MissesMore(j.Price.Missing) {
		return w, false
	}
	w = WhatIf{Change: *c, Total: quote.Total, More: quote.Total.Sub(j.Price.Quote.Total)}
	w.make = nil // it is made
	if j.Days.Dated && v.Days.Dated {
		w.Done = v.Days.LastDay()
		w.Later = int(w.Done - j.Days.LastDay())
	}
	return w, true
}

// with is the job with one thing changed. What is not asked again, the room and the
// setting out, stays as worked out.
func (j *Job) with(c *Change) *Job {
	v := j.variant()
	c.make(v)
	isShared := slices.ContainsFunc(j.Plan.Steps, func(s plan.Step) bool { return s.SameAs != "" })
	if !c.goodsStay || isShared {
		v.Found = steps.Buy(&v.Plan, &v.Surface, j.Hours)
	} else {
		v.keepGoods(j)
	}
	v.Days = schedule.Place(&v.Plan, &v.Surface, &v.Found)
	v.Tape, _ = layers.BuyTape(&v.Plan, v.Layers)
	return v
}

// keepGoods takes over what the steps that are left are bought in.
func (v *Job) keepGoods(j *Job) {
	v.Found = steps.Divide(&v.Plan, &v.Surface, j.Hours)
	for i := range v.Plan.Steps {
		same := slices.IndexFunc(j.Plan.Steps, func(s plan.Step) bool { return s.ID == v.Plan.Steps[i].ID })
		v.Finish.Steps[i] = j.Finish.Steps[same]
		v.Finish.Steps[i].Owner = i
	}
}

// Changes are the things that could be otherwise in this plan.
func (j *Job) Changes() []Change {
	list := append(j.borderChange(), j.layerChange()...)
	list = append(list, j.leafChanges()...)
	return append(list, j.peopleChange()...)
}

// peopleChange is one person more, which moves what is paid by the day.
func (j *Job) peopleChange() []Change {
	people := hours.People(&j.Plan.Days) + 1
	if !j.Days.Dated || people > hours.MostPeople {
		return nil
	}
	return []Change{{Of: PersonMore, People: people, goodsStay: true, make: func(v *Job) { v.Plan.Days.People = people }}}
}

// widerBorder is a border that the eye tells from the present one: a choice.
const (
	widerInches = 4 * measure.Inch
	widerMetric = 100 * measure.Millimetre
)

// borderChange is the mask with the borders that are wanted, or with a wider
// border all round.
func (j *Job) borderChange() []Change {
	c := Change{Of: BordersWider, Wider: widerMetric}
	if j.Plan.Units.Notation().System == measure.FeetInches {
		c.Wider = widerInches
	}
	outline := j.Plan.Mask.Outline
	c.Length, c.Width = outline.Length-2*c.Wider, outline.Width-2*c.Wider
	wantedLength, wantsLength := setting.Sized(j.Setting.Order, setout.LongSide)
	wantedWidth, wantsWidth := setting.Sized(j.Setting.Order, setout.WideSide)
	if wantsLength && wantedLength != outline.Length || wantsWidth && wantedWidth != outline.Width {
		c.Of, c.Length, c.Width = BordersWanted, outline.Length, outline.Width
		if wantsLength {
			c.Length = wantedLength
		}
		if wantsWidth {
			c.Width = wantedWidth
		}
	}
	if !outline.IsComplete() || c.Length < mask.LeastPanel || c.Width < mask.LeastPanel {
		return nil
	}
	c.make = func(v *Job) { v.resize(c.Length, c.Width) }
	return []Change{c}
}

// resize is the mask of another size, cut in the same way. A set of panels is taken to
// cost in proportion to its area; the price of an area stays.
func (v *Job) resize(length, width measure.Length) {
	before := v.Plan.Mask.Area()
	v.Plan.Mask.Outline.Length, v.Plan.Mask.Outline.Width = length, width
	ratio := v.Plan.Mask.Area().SquareMetres.Quo(before.SquareMetres)
	for i := range v.Layers {
		l := &v.Layers[i]
		cost := &l.Plan.Price
		if sum, ok := price.Round(measure.NumberFromDecimal(cost.Amount).Mul(ratio), int32(v.Plan.Price.Digits)); ok && l.Plan.PriceFor == plan.ForSet {
			cost.Amount = sum
		}
		panels, problems := mask.LayerFromCut(v.Plan.Mask.Outline, l.Plan.Cut)
		isStopped := slices.ContainsFunc(problems, func(p problem.Problem) bool { return p.Severity == problem.Stop })
		if isPlain := len(l.Panels.Pieces)+len(l.Panels.Loose) == 0; isPlain && !isStopped && !panels.IsEmpty() {
			l.Panels, v.Hung(i).Order = panels, nil
		}
		l.Tape = l.Panels.TapeLength(v.Plan.Mask.Outline, v.Plan.Seams.Cover)
	}
}

// layerChange is the mask without its last layer.
func (j *Job) layerChange() []Change {
	last := len(j.Layers) - 1
	if last < 1 {
		return nil
	}
	id := j.Layers[last].Panels.ID
	return []Change{{Of: LayerLess, Layer: last, goodsStay: true, make: func(v *Job) {
		v.Layers = v.Layers[:last]
		v.Keys[last-1] = hung.Key{} // no layer comes after it
		v.Plan.Steps = slices.DeleteFunc(v.Plan.Steps, func(s plan.Step) bool { return s.LayerID == id && goesThrough(&s) })
	}}}
}

// goesThrough tells whether a step needs the mask of its layer.
func goesThrough(s *plan.Step) bool {
	return s.Kind == finish.Peel || s.Basis == finish.Openings || s.Basis == finish.Edges || s.Basis == finish.Mask
}

// mostLeafChanges keeps the list to what can be read.
const mostLeafChanges = 3

// leafChanges are each leaf laid in the metal of another that the plan knows, and
// the job without that leaf.
func (j *Job) leafChanges() (list []Change) {
	for i := range j.Plan.Steps {
		leaf := j.Plan.Steps[i].Leaf
		if leaf == nil || len(list) >= mostLeafChanges {
			continue
		}
		if other := j.otherLeaf(leaf); other != nil {
			list = append(list, Change{Of: LeafInMetal, Step: i, Metal: other.Metal, make: func(v *Job) { v.Plan.Steps[i].Leaf = inMetal(leaf, other) }})
		}
		if without, ok := j.withoutLeaf(i); ok {
			list = append(list, without)
		}
	}
	return list
}

// withoutLeaf is the job without the leaf of a step and the size under it. A layer
// that nothing else goes through is then neither bought nor hung.
// ok is false where that is the change of one layer less.
func (j *Job) withoutLeaf(i int) (c Change, ok bool) {
	first, sizeStays := i, j.sharesSize(i)
	if !sizeStays && i > 0 && j.Plan.Steps[i-1].Kind == finish.SizeCoat {
		first--
	}
	idle := j.idleWithout(first, i)
	if idle >= 1 && idle == len(j.Layers)-1 {
		return c, false
	}
	return Change{Of: LeafLess, Step: i, SizeStays: sizeStays, Layer: idle, goodsStay: true, make: func(v *Job) {
		v.Plan.Steps = slices.Delete(v.Plan.Steps, first, i+1)
		if idle >= 0 {
			v.Layers[idle].Plan.Price.Amount, v.Layers[idle].Tape = decimal.Zero, 0
		}
	}}, true
}

// sharesSize tells whether another leaf is laid on the size of a leaf.
func (j *Job) sharesSize(leaf int) bool {
	size := steps.SizeUnder(j.Plan.Steps, leaf)
	for i := range j.Plan.Steps {
		if i != leaf && size >= 0 && j.Plan.Steps[i].Kind == finish.LeafLaying && steps.SizeUnder(j.Plan.Steps, i) == size {
			return true
		}
	}
	return false
}

// idleWithout is the layer through which only the steps from first to last go,
// but for peeling it; −1 where there is none.
func (j *Job) idleWithout(first, last int) int {
	idle := schedule.LayerThrough(&j.Plan, j.Layers, last)
	for i := range j.Plan.Steps {
		if (i < first || i > last) && j.Plan.Steps[i].Kind != finish.Peel && schedule.LayerThrough(&j.Plan, j.Layers, i) == idle {
			return -1
		}
	}
	return idle
}

// otherLeaf is a leaf of another metal in the plan, nil where there is none.
func (j *Job) otherLeaf(leaf *plan.Leaf) *plan.Leaf {
	for i := range j.Plan.Steps {
		if other := j.Plan.Steps[i].Leaf; other != nil && other.Metal != leaf.Metal && other.Known {
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
