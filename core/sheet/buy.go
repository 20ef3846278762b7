package sheet

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/price"

	"github.com/shopspring/decimal"
)

// buy puts a line on the shopping list.
func (b *builder) buy(what, amount, detail string) {
	b.sheet.Shopping = append(b.sheet.Shopping, Purchase{What: what, Amount: amount, Detail: detail})
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
		p.line = len(b.sheet.Shopping) - 1
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

// rolls is the tape to buy for a length of seams. ok is false where no roll is
// given.
func (b *builder) rolls(length measure.Length) (finish.Rolls, bool) {
	rolls, problems, ok := finish.RollsFor(finish.Tape{Length: length, Waste: b.plan.Seams.Waste, Roll: b.plan.Seams.Roll})
	b.report("/seams", problems)
	return rolls, ok
}

// tapePack is so many rolls of tape.
func (b *builder) tapePack(count int64) pack {
	each := b.plan.Price.TapePerRoll
	return pack{group: price.Tape, what: "Tape for the seams", count: count, name: "roll of " + b.put(b.plan.Seams.Roll),
		size: b.plan.Seams.Roll.In(measure.Metre), unit: "m", each: each.Amount, priced: each.Known}
}

// tapeForSeams is the tape of the layers as they are now.
func (b *builder) tapeForSeams() {
	length := measure.Length(0)
	for i := range b.layers {
		length += b.layers[i].tape
	}
	if b.plan.Seams.Roll <= 0 || !b.plan.Mask.Outline.IsComplete() {
		return
	}
	if rolls, ok := b.rolls(length); ok && rolls.Count > 0 {
		b.bought(b.tapePack(rolls.Count))
	}
}
