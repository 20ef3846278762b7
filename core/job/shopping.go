package job

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/steps"
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

// ToBuy is the list of what to buy and to have. It reads the layers, their tape and the
// finish.
func (j *Job) ToBuy() (list []Bought) {
	for i := range j.Layers {
		if l := &j.Layers[i]; !l.Panels.IsEmpty() {
			list = append(list, Bought{What: Panels, Layer: i, Packs: []steps.Pack{j.panelSet(l)}})
		}
	}
	if pack, ok := j.TapePack(); ok {
		list = append(list, Bought{What: SeamTape, Packs: []steps.Pack{pack}})
	}
	for i := range j.Finish.Steps {
		what := Product
		if j.Plan.Steps[i].Kind == finish.LeafLaying {
			what = LeafGoods
		}
		if packs := j.Finish.Steps[i].Packs; len(packs) > 0 {
			list = append(list, Bought{What: what, Step: i, Packs: packs})
		}
	}
	for i := range j.Finish.ToHave {
		list = append(list, Bought{What: ToMixIn, Ingredient: i})
	}
	return append(list, j.sundries()...)
}

// TapePack is the rolls of tape for the seams, where any are bought.
func (j *Job) TapePack() (pack steps.Pack, ok bool) {
	t, each := &j.Tape, j.Plan.Price.TapePerRoll
	return steps.Pack{Group: price.Tape, As: steps.TapeRoll, Count: t.Rolls.Count, Length: j.Plan.Seams.Roll, Each: each.Amount, Priced: each.Known}, t.Known && t.Rolls.Count > 0
}

// panelSet is the panels of a layer: what they cost together, where that is known.
func (j *Job) panelSet(l *layers.Layer) steps.Pack {
	p := steps.Pack{Group: price.Masks, As: steps.PanelSet, Count: 1, Size: measure.NumberFromInt(int64(l.Panels.Count()))}
	if count, ok := j.PanelsPaid(l); ok && l.Plan.Price.Known {
		p.Each, p.Priced = price.Round(count.Mul(measure.NumberFromDecimal(l.Plan.Price.Amount)), int32(j.Plan.Price.Digits))
	}
	return p
}

// PanelsPaid is how many units the panels of a layer are paid for: one set of them, or
// the area of the mask, to the hundredth of a unit as it is printed. ok is false where
// the area is not known.
func (j *Job) PanelsPaid(l *layers.Layer) (count measure.Number, ok bool) {
	area := j.Plan.Mask.Area()
	switch l.Plan.PriceFor {
	case plan.ForSquareFoot:
		count = area.SquareFeet()
	case plan.ForSquareMetre:
		count = area.SquareMetres
	default:
		return measure.NumberFromInt(1), true
	}
	return measure.NumberFromDecimal(count.RoundHalfEven(2)), j.Plan.Mask.Outline.IsComplete()
}

// sundries are what the plan needs and no step buys: the tape of the line round the
// mask, and what protects floor and walls where a step covers them. They have no price
// of their own.
func (j *Job) sundries() (list []Bought) {
	if m := j.Plan.Mask.Outline; m.IsComplete() && len(j.Layers) > 0 && j.Plan.Setting.Taped {
		list = append(list, Bought{What: OutlineTape, Length: m.Perimeter()})
	}
	isProtect := func(s plan.Step) bool { return s.Kind == finish.Protect }
	if !j.Room.Shape.Usable() || !slices.ContainsFunc(j.Plan.Steps, isProtect) {
		return list
	}
	list = append(list, Bought{What: FloorCover, Area: j.Room.Area})
	overWalls := func(s plan.Step) bool { return s.Basis == finish.SurfaceOf && j.Plan.IsWalls(s.Surface) }
	if height := j.Plan.Room.Height; height > 0 && !slices.ContainsFunc(j.Plan.Steps, overWalls) {
		list = append(list, Bought{What: WallCover, Length: j.Room.Perimeter, Area: measure.AreaOf(j.Room.Perimeter, height)})
	}
	return list
}

// SeamTapeCalled is what the tape over the seams is called.
func SeamTapeCalled() words.Text { return words.Say("Tape for the seams") }
