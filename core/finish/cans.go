package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Can is one size a product is sold in. Size and Unit are kept beside the
// volume so that the can is printed as it was typed. Size is the net contents:
// a tinted "gallon" can hold 116 fl oz. Priced tells whether Price was given.
type Can struct {
	Size   measure.Number
	Unit   measure.VolumeUnit
	Volume measure.Volume
	Price  decimal.Decimal
	Priced bool
}

// CanOf is a can of size units without a price.
func CanOf(size measure.Number, unit measure.VolumeUnit) Can {
	return Can{Size: size, Unit: unit, Volume: measure.VolumeOf(size, unit)}
}

// At is c with a price, in the plan's money.
func (c Can) At(price decimal.Decimal) Can {
	c.Price, c.Priced = price, true
	return c
}

// In is the can as it is named on a shopping list: "1 gal" (words.Value).
func (c Can) In(style words.Style) string { return mixing.MeasureOf(c.Size, c.Unit).In(style) }

// Purchase is what to buy. Counts has one entry for each can given, in that
// order. Left is what is bought and not needed, LeftShare that as a share of
// what is bought. Price is 0 and Priced false where prices were missing; the
// cans then leave the least over. Proved is false only where the sizes share
// no common measure and the search was stopped: the cans cover the need but
// another choice could be better.
type Purchase struct {
	Need      measure.Volume
	Counts    []int64
	Cans      int64
	Bought    measure.Volume
	Left      measure.Volume
	LeftShare measure.Number
	Price     decimal.Decimal
	Priced    bool
	Proved    bool
}

// MostSizes is how many sizes of one product there may be: more than any shop
// has.
const MostSizes = 24

// Bounds of what is bought. They are far outside any job and keep the search
// within whole numbers of 64 bits.
const (
	mostLitres    = 100_000
	mostPrice     = 100_000_000
	priceDecimals = 3 // no currency in use has a smaller minor unit (ISO 4217, from memory)
)

var (
	leastCan    = measure.NumberFromFraction(1, 100)
	greatestCan = measure.NumberFromInt(mostLitres)
	mostUnits   = measure.NumberFromInt(100_000_000_000_000_000)
)

// CheapestCans chooses whole cans that hold the need: the lowest price, then
// the least left over, then the fewest cans; two choices that agree in all
// three give the same answer every time. If any size that can be used has no
// price, no price counts and the least left over comes first. ok is false when
// there is nothing to choose from or the need is outside the bounds.
//
// Refused: a need below 0 or above 100 000 L; no size; more than 24 sizes; a
// size below 10 mL or above 100 000 L; a price below 0, above 100 000 000 or
// with more than 3 decimals. A refused size is left out and the rest is used; a
// refused price counts as missing.
func CheapestCans(need measure.Volume, cans []Can) (purchase Purchase, problems []problem.Problem, ok bool) {
	purchase = Purchase{Need: need, Counts: make([]int64, len(cans)), Proved: true}
	if problems = needRefusals(need, cans); len(problems) > 0 {
		return purchase, problems, false
	}
	usable, problems := usableCans(cans)
	if len(usable) == 0 {
		return purchase, problems, false
	}
	purchase.Priced = true
	for i := range usable {
		purchase.Priced = purchase.Priced && usable[i].can.Priced
	}
	if !purchase.Priced {
		problems = append(problems, missingPrice(usable))
	}
	units, fits := containersOf(need, usable, purchase.Priced)
	if !fits {
		return purchase, append(problems, problem.Problem{At: "", Severity: problem.Stop,
			What: words.Say("The can sizes have too many decimals to be compared."),
			Do:   words.Say("Write the sizes with fewer decimals.")}), false
	}
	counts, proved := cheapestCover(units.need, units.containers)
	purchase.Proved = proved
	for i, n := range counts {
		purchase.Counts[usable[i].at] = n
	}
	purchase.total(cans)
	return purchase, append(problems, purchase.remarks(cans)...), true
}

type usableCan struct {
	can Can
	at  int
}

func needRefusals(need measure.Volume, cans []Can) []problem.Problem {
	switch {
	case need.Litres.Sign() < 0:
		return []problem.Problem{{At: "", Severity: problem.Stop,
			What: words.Say("The amount needed comes out below nothing, {need} L.", words.Trimmed("need", need.Litres, 3)),
			Do:   words.Say("Check what it is made from.")}}
	case need.Litres.Cmp(measure.NumberFromInt(mostLitres)) > 0:
		return []problem.Problem{{At: "", Severity: problem.Stop,
			What: words.Say("The amount needed is {need} L, more than 100000 L.", words.Trimmed("need", need.Litres, 0)),
			Do:   words.Say("Check the area and the spread rate.")}}
	case len(cans) == 0:
		return []problem.Problem{{At: "", Severity: problem.Note,
			What: words.Say("No can sizes are given, so no cans are counted."),
			Do:   words.Say("Give the sizes the product is sold in.")}}
	case len(cans) > MostSizes:
		return []problem.Problem{{At: "", Severity: problem.Stop,
			What: words.Say("{n} can sizes are given.", words.Count("n", len(cans))),
			Do:   words.Say("Give 24 sizes at most.")}}
	}
	return nil
}

func usableCans(cans []Can) (usable []usableCan, problems []problem.Problem) {
	for i, can := range cans {
		litres := can.Volume.Litres
		if litres.Cmp(leastCan) < 0 || litres.Cmp(greatestCan) > 0 {
			problems = append(problems, problem.Problem{At: problem.Index(i) + "/size", Severity: problem.Stop,
				What: words.Say("A can holds {litres} L.", words.Trimmed("litres", litres, 3)),
				Do:   words.Say("Give a size from 10 mL to 100000 L.")})
			continue
		}
		if can.Priced && !isPrice(can.Price) {
			problems = append(problems, problem.Problem{At: problem.Index(i) + "/price", Severity: problem.Stop,
				What: words.Say("The price of a can is {price}.", words.Name("price", can.Price.String())),
				Do:   words.Say("Give a price from 0 to 100000000 with 3 decimals at most.")})
			can.Priced = false
		}
		usable = append(usable, usableCan{can, i})
	}
	return usable, problems
}

func isPrice(price decimal.Decimal) bool {
	return price.Sign() >= 0 && price.Cmp(decimal.NewFromInt(mostPrice)) <= 0 &&
		price.Equal(price.Truncate(priceDecimals))
}

// missingPrice says that, and why, prices did not count.
func missingPrice(usable []usableCan) problem.Problem {
	first := 0
	for first < len(usable)-1 && usable[first].can.Priced {
		first++
	}
	return problem.Problem{At: problem.Index(usable[first].at) + "/price", Severity: problem.Note,
		What: words.Say("The {can} can has no price, so the cans are chosen to leave the least over.", words.Of("can", usable[first].can)),
		Do:   words.Say("Give a price for every size to find the cheapest cans.")}
}

// wholeUnits is the purchase in whole numbers: volumes in the greatest measure
// that every size is a multiple of, prices in thousandths. The measure is never so
// fine that the need and one can of each size count more than mostUnits.
type wholeUnits struct {
	need       int64
	containers []container
}

func containersOf(need measure.Volume, usable []usableCan, priced bool) (units wholeUnits, fits bool) {
	most := need.Litres
	for _, u := range usable {
		most = most.Add(u.can.Volume.Litres)
	}
	finest := most.Quo(mostUnits)
	unit := usable[0].can.Volume.Litres
	for _, u := range usable[1:] {
		if unit, fits = measure.Common(unit, u.can.Volume.Litres, finest); !fits {
			return wholeUnits{}, false
		}
	}
	units.need, _ = need.Litres.Quo(unit).Ceil()
	for _, u := range usable {
		volume, _ := u.can.Volume.Litres.Quo(unit).Floor()
		// Without prices each can costs its volume, which makes the least
		// bought the cheapest.
		price := volume
		if priced {
			price = u.can.Price.Shift(priceDecimals).IntPart()
		}
		units.containers = append(units.containers, container{volume, price})
	}
	return units, true
}

func (p *Purchase) total(cans []Can) {
	for i, n := range p.Counts {
		p.Cans += n
		p.Bought = p.Bought.Add(cans[i].Volume.Times(measure.NumberFromInt(n)))
		if p.Priced {
			p.Price = p.Price.Add(cans[i].Price.Mul(decimal.NewFromInt(n)))
		}
	}
	p.Left = measure.Volume{Litres: p.Bought.Litres.Sub(p.Need.Litres)}
	if !p.Bought.Litres.IsZero() {
		p.LeftShare = p.Left.Litres.Quo(p.Bought.Litres)
	}
}

// A need this little above whole cans is worth pointing out, and less left
// over than this is too little to touch up with. Both common practice, no
// source.
var (
	justOver       = measure.NumberFromFraction(1, 20)
	touchUpReserve = measure.NumberFromFraction(1, 20)
)

func (p Purchase) remarks(cans []Can) []problem.Problem {
	var found []problem.Problem
	if p.Need.Litres.IsZero() {
		return nil
	}
	if over, n, can, ok := p.over(cans); ok {
		found = append(found, problem.Problem{At: "", Severity: problem.Note,
			What: words.Say("The need is only {over} above {n} × {can}.", words.Of("over", mixing.MeasureOf(over, can.Unit)), words.Count("n", n), words.Of("can", can)),
			Do:   words.Say("Buy all of it from one batch and mix it together before you start: a tint made later seldom matches.")})
	}
	if p.LeftShare.Cmp(touchUpReserve) < 0 {
		found = append(found, problem.Problem{At: "", Severity: problem.Note,
			What: words.Say("Only {left} of what is bought is left over.", words.PerCent("left", p.LeftShare)),
			Do:   words.Say("Buy a little more if 5 per cent is to be kept for touching up.")})
	}
	if !p.Proved {
		found = append(found, problem.Problem{At: "", Severity: problem.Note,
			What: words.Say("These cans hold enough, but the sizes have no common measure and not every choice could be compared."),
			Do:   words.Say("Write the sizes in one unit to find the best choice.")})
	}
	return found
}

// over finds whether the need lies just above a whole number of the largest
// can that the need fills: above it by at most 5 per cent of those cans and a
// quarter of one. The quarter matters from six cans up: any need is within 5
// per cent of twenty.
func (p Purchase) over(cans []Can) (over measure.Number, n int64, can Can, ok bool) {
	for i := range cans {
		litres := cans[i].Volume.Litres
		if litres.Cmp(leastCan) >= 0 && litres.Cmp(p.Need.Litres) <= 0 && litres.Cmp(can.Volume.Litres) > 0 {
			can = cans[i]
		}
	}
	if can.Volume.Litres.IsZero() {
		return measure.Number{}, 0, Can{}, false
	}
	n, _ = p.Need.Litres.Quo(can.Volume.Litres).Floor()
	full := can.Volume.Litres.Mul(measure.NumberFromInt(n))
	above := p.Need.Litres.Sub(full)
	quarter := can.Volume.Litres.Mul(measure.NumberFromFraction(1, 4))
	if above.IsZero() || above.Cmp(full.Mul(justOver)) > 0 || above.Cmp(quarter) > 0 {
		return measure.Number{}, 0, Can{}, false
	}
	return above.Quo(can.Volume.Litres).Mul(can.Size), n, can, true
}
