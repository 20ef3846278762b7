package tell

import (
	"slices"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"

	"github.com/shopspring/decimal"
)

// buy puts a line on the shopping list.
func (b *builder) buy(what, amount, detail string) {
	b.Sheet.Shopping = append(b.Sheet.Shopping, sheet.Purchase{What: what, Amount: amount, Detail: detail})
}

// pack is so many of one thing as it is sold, for the price and the shopping
// table: count cans of size unit, books of size leaves, rolls of size metres.
// priced tells whether each, the price of one, is known. line is its line of
// the shopping list, step the id of the step it is bought for, "" for none.
type pack struct {
	group  price.Group
	step   string
	line   int
	what   string
	count  int64
	name   string
	size   measure.Number
	unit   string
	each   decimal.Decimal
	priced bool
}

// bought notes packs that belong to the line put on the shopping list last.
func (b *builder) bought(packs ...pack) {
	for _, p := range packs {
		p.line = len(b.Sheet.Shopping) - 1
		b.packs = append(b.packs, p)
	}
}

// bought notes packs for the step.
func (w *step) bought(packs ...pack) {
	for i := range packs {
		packs[i].step = w.ID
	}
	w.builder.bought(packs...)
}

// cansBought are the cans of a purchase as packs of a material called what.
func cansBought(what string, purchase finish.Purchase, cans []finish.Can) []pack {
	var packs []pack
	for i, n := range purchase.Counts {
		if n > 0 {
			can := cans[i]
			packs = append(packs, pack{group: price.Materials, what: what, count: n, name: can.Label(),
				size: can.Size, unit: can.Unit.Text(), each: can.Price, priced: can.Priced})
		}
	}
	return packs
}

// buyTape puts the tape over the seams on the shopping list.
func (b *builder) buyTape() {
	t := &b.Tape
	if t.Known && t.Rolls.Count > 0 {
		b.buy(b.Say("Tape for the seams"), b.Say("{n|roll|rolls}", words.Count("n", t.Rolls.Count)),
			b.Say("{length} and {waste} waste", words.Length("length", t.Length), words.Share("waste", t.Rolls.Waste)))
		b.bought(b.tapePack(t.Rolls.Count))
	}
}

// tapePack is so many rolls of tape, in the unit of the plan's own notation.
func (b *builder) tapePack(count int64) pack {
	each, unit, name := b.Plan.Price.TapePerRoll, measure.Metre, "m"
	if b.Notation.System == measure.FeetInches {
		unit, name = measure.Foot, "ft"
	}
	return pack{group: price.Tape, what: b.Say("Tape for the seams"), count: count, name: b.Say("roll of {length}", words.Put("length", b.Plan.Seams.Roll)),
		size: b.Plan.Seams.Roll.In(unit), unit: name, each: each.Amount, priced: each.Known}
}

// buyPanels puts the panels of a layer on the shopping list.
func (b *builder) buyPanels(l *job.Layer) {
	if l.Panels.IsEmpty() {
		return
	}
	n := int64(l.Panels.Count())
	what := b.Say("Panels of “{layer}”", words.Name("layer", l.Panels.Name))
	b.buy(what, b.Say("{n|panel|panels}", words.Count("n", n)),
		b.Say("{length} × {width} in all", words.Length("length", b.Plan.Mask.Length), words.Length("width", b.Plan.Mask.Width)))
	p := pack{group: price.Masks, what: what, count: 1, name: b.Say("set"), size: measure.NumberFromInt(n), unit: b.Say("panels")}
	if item, ok := b.panelItem(l); ok && l.Plan.Price.Known {
		p.each, p.priced = price.Round(item.Count.Mul(measure.NumberFromDecimal(l.Plan.Price.Amount)), int32(b.Plan.Price.Digits))
	}
	b.bought(p)
}

// sundries puts on the shopping list what the plan needs and no step buys: the tape
// of the line round the mask, and what protects floor and walls where a step covers
// them. They have no price of their own.
func (b *builder) sundries() {
	if m := b.Plan.Mask.Outline; m.IsComplete() && len(b.Layers) > 0 && b.Plan.Setting.Taped {
		round := 2 * (m.Length + m.Width)
		b.buy(b.Say("Tape for the mask outline"), b.Notation.Length(round), b.Say("laid outside the line, once round"))
	}
	isProtect := func(s plan.Step) bool { return s.Kind == finish.Protect }
	if !b.Room.Shape.Usable() || !slices.ContainsFunc(b.Plan.Steps, isProtect) {
		return
	}
	b.buy(b.Say("Covers for the floor"), b.Notation.Area(b.Room.Shape.Area()), b.Say("without laps"))
	overWalls := func(s plan.Step) bool { return s.Basis == finish.SurfaceOf && !b.IsCornice(s.Surface) }
	if height := b.Plan.Room.Height; height > 0 && !slices.ContainsFunc(b.Plan.Steps, overWalls) {
		round := b.Room.Shape.Perimeter()
		b.buy(b.Say("Film or paper for the walls"), b.Notation.Area(measure.AreaOf(round, height)),
			b.Say("{round} round, {height} high; without laps", words.Length("round", round), words.Length("height", height)))
	}
}
