package steps

import (
	"github.com/shopspring/decimal"

	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/price"
	"ceilingwright/core/words"
)

// Pack is so many of one thing as it is sold: Count cans of Size units, books of leaves,
// rolls of so much tape. Priced tells whether Each, the price of one, is known.
type Pack struct {
	Group  price.Group
	As     PackKind
	Count  int64
	Size   measure.Number
	Unit   measure.VolumeUnit
	Length measure.Length // of a roll
	Each   decimal.Decimal
	Priced bool
}

// PackKind is what a thing is sold as.
type PackKind int

// A can of a liquid; the panels of a layer; a roll of tape; a pack and a book of leaves
// or of rolls of leaf, and such a roll alone.
const (
	Can PackKind = iota
	PanelSet
	TapeRoll
	LeafPack
	LeafBook
	RollPack
	RollBook
	LeafRoll
)

// Cost is what packs cost together, rounded as the price rounds a line.
func (p *Pack) Cost(digits int) (decimal.Decimal, bool) {
	if !p.Priced {
		return decimal.Decimal{}, false
	}
	return price.Round(measure.NumberFromDecimal(p.Each).Mul(measure.NumberFromInt(p.Count)), int32(digits))
}

// Called is what one of a pack is sold as.
func (p *Pack) Called() words.Text {
	whole, _ := p.Size.Floor()
	n := words.Count("n", whole)
	switch p.As {
	case PanelSet:
		return words.Say("set")
	case TapeRoll, LeafRoll:
		return words.Say("roll of {length}", words.Put("length", p.Length))
	case LeafPack:
		return words.Say("pack of {n|leaf|leaves}", n)
	case LeafBook:
		return words.Say("book of {n|leaf|leaves}", n)
	case RollPack:
		return words.Say("pack of {n|roll of leaf|rolls of leaf}", n)
	case RollBook:
		return words.Say("book of {n|roll of leaf|rolls of leaf}", n)
	}
	return words.Say("{can}", words.Of("can", mixing.MeasureOf(p.Size, p.Unit)))
}
