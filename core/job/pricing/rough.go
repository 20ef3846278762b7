package pricing

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Rough is the price of a first visit, where it is Known. Unit is the square metres of
// the unit of area that its prices are for.
type Rough struct {
	price.RoughPrice
	Asked price.Rough
	Unit  measure.Number
	Known bool
}

// roughPrice is the price of a first visit.
func (w *pricing) roughPrice() {
	r := &w.Plan.Price.Rough
	unsized := r.Length == 0 && r.Width == 0
	if !r.PerArea.Known && unsized {
		return
	}
	area := measure.AreaOf(r.Length, r.Width)
	if unsized && w.Room.Shape.Usable() {
		area = w.Room.Area
	}
	if !r.Range.Known {
		w.Remark("/price/rough/range", problem.Note, words.Say("It is not said how far off the rough price may be: counted as 0."), words.Say("Give a per cent, such as 20."))
	}
	rough := Rough{Unit: measure.SquareFoot}
	if r.PerSquareMetre {
		rough.Unit = measure.NumberFromInt(1)
	}
	each := func(m plan.Money) measure.Number { return measure.NumberFromDecimal(m.Amount).Quo(rough.Unit) }
	rough.Asked = price.Rough{Area: area, PerSquareMetre: each(r.PerArea), Off: r.Range.Share}
	for _, band := range r.Bands {
		if band.AboveKnown || band.PerArea.Known {
			rough.Asked.Bands = append(rough.Asked.Bands, price.Band{Above: band.Above.Mul(rough.Unit), PerSquareMetre: each(band.PerArea)})
		}
	}
	var problems []problem.Problem
	rough.RoughPrice, problems, rough.Known = price.RoughOf(rough.Asked, w.Price.Currency.Digits, w.Plan.Price.RoundTo.Amount)
	w.Report("/price/rough", problems)
	if rough.Known {
		w.Price.Rough = rough
	}
}
