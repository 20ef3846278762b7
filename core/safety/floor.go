package safety

import "ceilingwright/core/measure"

// PersonMass is a person with clothes and tools in sums of load, in kilograms:
// 200 lb and 50 lb of gear, 250 lb, which is 113.4 kg (the old 29 CFR
// 1910.29(a)(2)(ii), since superseded).
func PersonMass() measure.Number { return measure.Pound.Mul(measure.NumberFromInt(250)) }

// legs is how many wheels or legs a platform is taken to stand on.
const legs = 4

// People is how many are counted on the deck at once: as many as was said, else
// those whose height is known, one at least. said tells which.
func (j *Job) People() (count int, said bool) {
	if j.Gear.OnDeck > 0 {
		return j.Gear.OnDeck, true
	}
	for _, stature := range j.Crew {
		if stature > 0 {
			count++
		}
	}
	return max(1, count), false
}

// DeckLoad is what the deck carries in kilograms: the people, and the tools and
// materials as far as they are known. whole is false where they are not, or
// nobody has said how many people there are: it is then the least.
func (j *Job) DeckLoad() (kilograms measure.Number, whole bool) {
	people, said := j.People()
	load := PersonMass().Mul(measure.NumberFromInt(int64(people)))
	if j.Gear.Load.Known {
		load = load.Add(j.Gear.Load.Value)
	}
	return load, said && j.Gear.Load.Known
}

// FloorLoad is what the platform and all on it put on the floor.
type FloorLoad struct {
	Whole   measure.Number // kilograms
	Spread  measure.Number // kilograms a square metre, over the area it stands on
	Leg     measure.Number // kilograms under one wheel or leg, a quarter of the whole
	AtLeast bool           // something of it is not known, so all three are the least
}

// FloorLoad works that out. ok is false where it is not known what the platform
// weighs or stands on: nothing is then made up.
//
// It is a screening figure. The load is taken as spread over the whole foot, and
// as shared by four legs alike; a person who leans out puts more on two of them,
// and a single wheel presses on a few square centimetres (derived here).
func (j *Job) FloorLoad() (load FloorLoad, ok bool) {
	foot := measure.AreaOf(j.Gear.FootLength, j.Gear.FootWidth).SquareMetres
	if !j.Gear.Mass.Known || foot.Sign() <= 0 {
		return load, false
	}
	deck, whole := j.DeckLoad()
	load.Whole = j.Gear.Mass.Value.Add(deck)
	load.Spread = load.Whole.Quo(foot)
	load.Leg = load.Whole.Quo(measure.NumberFromInt(legs))
	load.AtLeast = !whole
	return load, true
}

// LeastBase is the shorter side of what the platform stands on, outriggers
// included, 0 where it is not known. Where it was given twice the smaller counts.
func (j *Job) LeastBase() measure.Length {
	least := j.Base
	if foot := min(j.Gear.FootLength, j.Gear.FootWidth); foot > 0 && (least <= 0 || foot < least) {
		least = foot
	}
	return max(0, least)
}

// DeckWidth is the lesser side of the deck, 0 where one of them is not known.
func (j *Job) DeckWidth() measure.Length { return max(0, min(j.Gear.DeckLength, j.Gear.DeckWidth)) }

// TableAllows: the rule leaves the base to the maker's table, as EN 1004-1 does,
// and somebody has found this height on this base in it.
func (j *Job) TableAllows() bool {
	return (j.Country == UK || j.Country == EU) && j.Gear.BaseChecked == Yes
}

// RailsWanted are the heights between which the top rail has to be, most 0 where
// there is none, and the greatest gap between rails, 0 where there is none: 38 to
// 45 in, 29 CFR 1926.451(g)(4)(ii), OSHA letter of 2000-05-18; 950 mm and 470 mm,
// Work at Height Regulations 2005, schedule 2, HSE. Elsewhere all of them.
func RailsWanted(country Country) (least, most, gap measure.Length) {
	switch country {
	case US:
		return leastRailUS, mostRailUS, 0
	case UK, EU:
		return leastRailEU, 0, mostRailGapEU
	}
	return max(leastRailUS, leastRailEU), mostRailUS, mostRailGapEU
}

// DeckWidthWanted is how wide a deck has to be: 18 in, 29 CFR 1926.451(b)(2), seen
// in a secondary copy; 0.60 m, EN 12811-1, from memory; elsewhere the wider.
func DeckWidthWanted(country Country) measure.Length {
	if country == US {
		return leastDeckUS
	}
	return leastDeckEU
}
