package pricing

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/words"
)

// Bought is one line of the list to buy: so many panels of Layer, the product or the
// leaf of Step, an ingredient of mixes by its place, and else so much Length or Area.
type Bought struct {
	What       Goods
	Layer      int
	Step       int
	Ingredient int
	Length     measure.Length
	Area       measure.Area
	Packs      []steps.Pack
}

// Goods is what a line of the list to buy is about.
type Goods int

// What is bought, in the order of the list.
const (
	Panels Goods = iota
	SeamTape
	Product
	LeafGoods
	ToMixIn
	OutlineTape
	FloorCover
	WallCover
)

// ToBuy is the list of what to buy and to have.
func ToBuy(p *plan.Plan, s *surface.Surface, f *steps.Found) (list []Bought) {
	for i := range s.Layers {
		if l := &s.Layers[i]; !l.Panels.IsEmpty() {
			list = append(list, Bought{What: Panels, Layer: i, Packs: []steps.Pack{panelSet(p, l)}})
		}
	}
	if pack, ok := tapePack(p, &s.Tape); ok {
		list = append(list, Bought{What: SeamTape, Packs: []steps.Pack{pack}})
	}
	for i := range f.Finish.Steps {
		what := Product
		if p.Steps[i].Kind == finish.LeafLaying {
			what = LeafGoods
		}
		if packs := f.Finish.Steps[i].Packs; len(packs) > 0 {
			list = append(list, Bought{What: what, Step: i, Packs: packs})
		}
	}
	for i := range f.Finish.ToHave {
		list = append(list, Bought{What: ToMixIn, Ingredient: i})
	}
	return append(list, sundries(p, s)...)
}

// tapePack is the rolls of tape for the seams, where any are bought.
func tapePack(p *plan.Plan, t *layers.Tape) (pack steps.Pack, ok bool) {
	each := p.Price.TapePerRoll
	return steps.Pack{Group: price.Tape, As: steps.TapeRoll, Count: t.Rolls.Count, Length: p.Seams.Roll, Each: each.Amount, Priced: each.Known}, t.Known && t.Rolls.Count > 0
}

// panelSet is the panels of a layer: what they cost together, where that is known.
func panelSet(plan *plan.Plan, l *layers.Layer) steps.Pack {
	p := steps.Pack{Group: price.Masks, As: steps.PanelSet, Count: 1, Size: measure.NumberFromInt(int64(l.Panels.Count()))}
	if count, ok := panelsPaid(plan, l); ok && l.Plan.Price.Known {
		p.Each, p.Priced = price.Round(count.Mul(measure.NumberFromDecimal(l.Plan.Price.Amount)), int32(plan.Price.Digits))
	}
	return p
}

// panelsPaid is how many units the panels of a layer are paid for: one set of them, or
// the area of the mask, to the hundredth of a unit as it is printed. ok is false where
// the area is not known.
func panelsPaid(p *plan.Plan, l *layers.Layer) (count measure.Number, ok bool) {
	area := p.Mask.Area()
	switch l.Plan.PriceFor {
	case plan.ForSquareFoot:
		count = area.SquareFeet()
	case plan.ForSquareMetre:
		count = area.SquareMetres
	default:
		return measure.NumberFromInt(1), true
	}
	return measure.NumberFromDecimal(count.RoundHalfEven(2)), p.Mask.Outline.IsComplete()
}

// sundries are what the plan needs and no step buys: the tape of the line round the
// mask, and what protects floor and walls where a step covers them. They have no price
// of their own.
func sundries(p *plan.Plan, s *surface.Surface) (list []Bought) {
	if m := p.Mask.Outline; m.IsComplete() && len(s.Layers) > 0 && p.Setting.Taped {
		list = append(list, Bought{What: OutlineTape, Length: m.Perimeter()})
	}
	isProtect := func(s plan.Step) bool { return s.Kind == finish.Protect }
	if !s.Room.Shape.Usable() || !slices.ContainsFunc(p.Steps, isProtect) {
		return list
	}
	list = append(list, Bought{What: FloorCover, Area: s.Room.Area})
	overWalls := func(s plan.Step) bool { return s.Basis == finish.SurfaceOf && p.IsWalls(s.Surface) }
	if height := p.Room.Height; height > 0 && !slices.ContainsFunc(p.Steps, overWalls) {
		list = append(list, Bought{What: WallCover, Length: s.Room.Perimeter, Area: measure.AreaOf(s.Room.Perimeter, height)})
	}
	return list
}

// SeamTapeCalled is what the tape over the seams is called.
func SeamTapeCalled() words.Text { return words.Say("Tape for the seams") }
