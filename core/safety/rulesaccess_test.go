package safety

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// gear changes what is known of the ladder or the platform.
func gear(changes func(*Gear)) change { return func(j *Job) { changes(&j.Gear) } }

func kind(k Kind) change       { return gear(func(g *Gear) { g.Kind = k }) }
func wheels(a Answer) change   { return gear(func(g *Gear) { g.Wheels = a }) }
func rides(a Answer) change    { return gear(func(g *Gear) { g.Rides = a }) }
func boards(a Answer) change   { return gear(func(g *Gear) { g.ToeBoards = a }) }
func wayUp(a Answer) change    { return gear(func(g *Gear) { g.WayUp = a }) }
func tied(a Answer) change     { return gear(func(g *Gear) { g.Tied = a }) }
func onDeck(people int) change { return gear(func(g *Gear) { g.OnDeck = people }) }
func rail(height measure.Length) change {
	return gear(func(g *Gear) { g.RailHeight = height })
}
func railGap(gap measure.Length) change { return gear(func(g *Gear) { g.RailGap = gap }) }
func deckSides(length, width measure.Length) change {
	return gear(func(g *Gear) { g.DeckLength, g.DeckWidth = length, width })
}
func foot(length, width measure.Length) change {
	return gear(func(g *Gear) { g.FootLength, g.FootWidth = length, width })
}
func rated(mass measure.Fact) change { return gear(func(g *Gear) { g.Rated = mass }) }
func load(mass measure.Fact) change  { return gear(func(g *Gear) { g.Load = mass }) }
func panel(mass measure.Fact) change { return gear(func(g *Gear) { g.Panel = mass }) }
func minutes(m string) change        { return gear(func(g *Gear) { g.Minutes = fact(m) }) }
func hands(people int) change        { return func(j *Job) { j.Hands = people } }
func drop(a Answer, depth measure.Length) change {
	return func(j *Job) { j.Building.Drop, j.Building.DropDepth = a, depth }
}
func inTheTable(a Answer) change { return gear(func(g *Gear) { g.BaseChecked = a }) }
func below(a Answer) change      { return func(j *Job) { j.Building.Below = a } }

// pounds is a weight as a person types it in the US (NIST Handbook 44, appendix C).
func pounds(text string) measure.Fact { return measure.FactOf(number(text).Mul(number("0.45359237"))) }

// floorJob is a platform of 90 kg on 2 m by 1 m, with one person and 37 kg on it.
func floorJob(j *Job) {
	all(deckAt(measure.Metre), foot(2*measure.Metre, measure.Metre), onDeck(1), load(fact("37")), gear(func(g *Gear) { g.Mass = fact("90") }))(j)
}

func floorMay(carry measure.Fact) change { return func(j *Job) { j.Building.FloorLoad = carry } }

// poundsOnFoot is a load in pounds on a square foot, as kilograms on a square metre.
func poundsOnFoot(text string) measure.Fact {
	return measure.FactOf(pounds(text).Value.Quo(measure.SquareFoot))
}

// ladderOf stands a ladder so high under a ceiling that needs a deck at one metre.
func ladderOf(height measure.Length) change {
	return all(deckAt(measure.Metre), from(Ladder), gear(func(g *Gear) { g.LadderHeight = height }))
}

const mm = measure.Millimetre

// What the work is done from, and what it does to the person who does it. Each
// threshold is tried on both sides, and in both systems where it may be typed in
// either.
var accessCases = []ruleCase{
	{"planning-help-only", all(), nil},
	{"country-not-known", in(""), in(EU)},
	{"country-not-known", in(Other), in(UK)},
	{"not-alone", deckAt(1 * measure.Metre), all()},
	{"not-alone", all(deckAt(1*measure.Metre), kind(Scaffold)), all(deckAt(1*measure.Metre), kind(Podium))},
	{"not-alone", paints(air.Solvent, "0.1", "10"), paints(air.Water, "0.1", "10")},
	{"not-alone", all(paints(air.Solvent, "0.1", "10"), hands(1)), all(paints(air.Solvent, "0.1", "10"), hands(2))},
	{"not-alone", all(deckAt(1*measure.Metre), onDeck(1)), all(deckAt(1*measure.Metre), onDeck(2))},

	{"ladder-both-hands", from(Ladder), from(Platform)},
	// 30 minutes in one spot: HSE INDG402 and INDG455, seen in a secondary copy.
	{"ladder-over-30-minutes", all(from(Ladder), minutes("30.1")), all(from(Ladder), minutes("30"))},
	{"ladder-over-30-minutes", all(from(Ladder), minutes("45")), all(from(Floor), minutes("45"))},
	// The highest step is 24 in below the top: 29 CFR 1926.1053(b)(13). Feet at
	// 1.00 m take a ladder of 1.6096 m, 5 ft 3 3/8 in; 5 ft 3 1/2 in reaches.
	{"ladder-two-steps-down", ladderOf(measure.Metre + 24*measure.Inch - 1), ladderOf(measure.Metre + 24*measure.Inch)},
	{"ladder-two-steps-down", ladderOf(63*measure.Inch + 3*measure.Inch/8 - measure.Inch/64), ladderOf(63*measure.Inch + measure.Inch/2)},
	{"ladder-two-steps-down", ladderOf(1600 * mm), ladderOf(1610 * mm)},
	{"ladder-two-steps-down", ladderOf(1600 * mm), all(ladderOf(1600*mm), in(UK))},
	// Three steps of 0.25 m, derived: EN 131-3, from memory.
	{"ladder-three-steps-down", all(ladderOf(1749*mm), in(UK)), all(ladderOf(1750*mm), in(UK))},
	{"ladder-three-steps-down", all(ladderOf(68*measure.Inch), in(EU)), all(ladderOf(69*measure.Inch), in(EU))},
	{"ladder-three-steps-down", all(ladderOf(measure.Metre), in("")), all(ladderOf(measure.Metre), in(US))},
	{"ladder-three-steps-down", all(ladderOf(measure.Metre), in(UK)), all(ladderOf(measure.Metre), in(UK), from(Platform))},
	{"ladder-height-not-known", ladderOf(0), ladderOf(measure.Metre)},
	{"ladder-height-not-known", ladderOf(0), from(Ladder)},
	// 250 lb and 44 lb of tools and a panel of 6 lb are 300 lb, which type IA carries,
	// ANSI A14, seen in a secondary copy.
	{"ladder-overloaded", all(from(Ladder), load(pounds("44")), panel(pounds("6.1")), rated(pounds("300"))),
		all(from(Ladder), load(pounds("44")), panel(pounds("6")), rated(pounds("300")))},
	{"ladder-overloaded", all(from(Ladder), rated(fact("113.3"))), all(from(Ladder), rated(fact("113.4")))},
	{"ladder-overloaded", all(from(Ladder), rated(pounds("249"))), all(from(Ladder), rated(pounds("250")))},
	{"ladder-overloaded", all(from(Ladder), rated(fact("100"))), all(from(Floor), rated(fact("100")))},
	{"ladder-type", all(from(Ladder), load(fact("1"))), all(from(Ladder), load(fact("1")), rated(fact("150")))},
	{"ladder-type", all(from(Ladder), panel(fact("1"))), from(Ladder)},
	{"ladder-type", all(from(Ladder), load(fact("1"))), all(from(Ladder), load(fact("1")), in(UK))},
	{"ladder-rating", all(from(Ladder), load(fact("1")), in(UK)), all(from(Ladder), load(fact("1")), in(US))},
	{"ladder-rating", all(from(Ladder), panel(fact("1")), in(EU)), all(from(Ladder), in(EU))},
	// 10 kg: HSE text on stepladders, seen in a secondary copy; it prints 22 lb,
	// which is 9.98 kg.
	{"ladder-carry-over-10-kg", all(from(Ladder), load(fact("7")), panel(fact("3.01"))), all(from(Ladder), load(fact("7")), panel(fact("3")))},
	{"ladder-carry-over-10-kg", all(from(Ladder), panel(pounds("22.1"))), all(from(Ladder), panel(pounds("22")))},
	{"ladder-carry-over-10-kg", all(from(Ladder), panel(fact("11"))), all(deckAt(measure.Metre), panel(fact("11")))},
	{"ladder-near-live-parts", all(from(Ladder), light(Yes)), all(from(Ladder), light(Yes), isolated(Yes))},
	{"ladder-near-live-parts", all(from(Ladder), light("")), all(from(Ladder), light(No))},
	{"ladder-near-live-parts", all(from(Ladder), light(Yes), isolated(No)), all(from(Floor), light(Yes), isolated(No))},
	{"ladder-in-a-doorway", from(Ladder), from(Platform)},
	{"ladder-only-for-a-look", from(Ladder), from("")},
	{"access-not-chosen", all(deckAt(20*cm), from("")), deckAt(20 * cm)},
	{"access-not-chosen", all(deckAt(20*cm), from("")), all(deckAt(15*cm), from(""))},
	{"floor-will-do", from(Platform), from(Floor)},
	{"floor-will-do", deckAt(15 * cm), deckAt(15*cm + 1)},
	{"floor-out-of-reach", all(deckAt(15*cm+1), from(Floor)), all(deckAt(15*cm), from(Floor))},

	{"deck-height-not-known", func(j *Job) { j.CeilingHeight = 0 }, all()},
	{"deck-height-not-known", func(j *Job) { j.Crew[0] = 99 * cm }, func(j *Job) { j.Crew[0] = 100 * cm }},
	{"deck-height", deckAt(15*cm + 1), deckAt(15 * cm)},
	{"deck-height", all(deckAt(measure.Metre), from(Ladder)), from(Ladder)},
	{"fitter-height-assumed", all(deckAt(measure.Metre), func(j *Job) { j.Crew = nil }), deckAt(measure.Metre)},
	{"fitter-height-assumed", all(deckAt(measure.Metre), func(j *Job) { j.Crew[0] = 0 }), func(j *Job) { j.Crew = nil }},
	// A reach that was tried out stands in for the height.
	{"fitter-height-assumed", all(deckAt(measure.Metre), func(j *Job) { j.Crew = nil }), all(deckAt(measure.Metre), func(j *Job) { j.Crew, j.Reach = nil, 190*cm })},
	{"crew-heights-differ", all(deckAt(measure.Metre), func(j *Job) { j.Crew = []measure.Length{160 * cm, 185 * cm} }),
		all(deckAt(measure.Metre), func(j *Job) { j.Crew = []measure.Length{160 * cm, 175 * cm} })},
	{"platform-kind-not-said", deckAt(50*cm + 1), deckAt(50 * cm)},
	{"platform-kind-not-said", deckAt(measure.Metre), all(deckAt(measure.Metre), kind(Podium))},
	{"hop-up-too-low", all(deckAt(50*cm+1), kind(HopUp)), all(deckAt(50*cm), kind(HopUp))},
	{"hop-up-too-low", all(deckAt(measure.Metre), kind(HopUp)), all(deckAt(measure.Metre), kind(Podium))},
	// 0.60 m: EN 12811-1, class W06, from memory. 24 in is 0.6096 m.
	{"deck-under-600-mm", all(deckAt(measure.Metre), deckSides(180*cm, 599*mm), in(UK)), all(deckAt(measure.Metre), deckSides(180*cm, 600*mm), in(UK))},
	{"deck-under-600-mm", all(deckAt(measure.Metre), deckSides(23*measure.Inch, 6*measure.Foot), in(EU)), all(deckAt(measure.Metre), deckSides(24*measure.Inch, 6*measure.Foot), in(EU))},
	{"deck-under-600-mm", all(deckAt(measure.Metre), deckSides(180*cm, 50*cm), in(EU)), all(deckAt(measure.Metre), deckSides(0, 50*cm), in(EU))},
	// 18 in is 0.4572 m: 29 CFR 1926.451(b)(2), seen in a secondary copy, prints 46 cm.
	{"deck-under-18-in", all(deckAt(measure.Metre), deckSides(6*measure.Foot, 18*measure.Inch-1)), all(deckAt(measure.Metre), deckSides(6*measure.Foot, 18*measure.Inch))},
	{"deck-under-18-in", all(deckAt(measure.Metre), deckSides(180*cm, 457*mm)), all(deckAt(measure.Metre), deckSides(180*cm, 458*mm))},
	{"deck-under-18-in", all(deckAt(measure.Metre), deckSides(180*cm, 40*cm)), all(deckAt(measure.Metre), deckSides(180*cm, 40*cm), from(Ladder))},
	// Two people of 250 lb, 113.398 kg, are 226.796 kg: old 29 CFR 1910.29(a)(2)(ii).
	{"deck-overloaded", all(deckAt(measure.Metre), onDeck(2), load(fact("23.3")), rated(fact("250"))), all(deckAt(measure.Metre), onDeck(2), load(fact("23.2")), rated(fact("250")))},
	{"deck-overloaded", all(deckAt(measure.Metre), onDeck(2), load(pounds("50.1")), rated(pounds("550"))), all(deckAt(measure.Metre), onDeck(2), load(pounds("50")), rated(pounds("550")))},
	{"deck-overloaded", all(deckAt(measure.Metre), onDeck(2), rated(fact("226.7"))), all(deckAt(measure.Metre), onDeck(2), rated(fact("226.8")))},
	{"deck-overloaded", all(deckAt(measure.Metre), rated(pounds("249"))), all(deckAt(measure.Metre), rated(pounds("250")))},
	{"deck-overloaded", all(deckAt(measure.Metre), func(j *Job) { j.Crew = []measure.Length{170 * cm, 172 * cm} }, rated(fact("225"))),
		all(deckAt(measure.Metre), func(j *Job) { j.Crew = []measure.Length{170 * cm, 0} }, rated(fact("225")))},
	{"deck-overloaded", all(deckAt(measure.Metre), rated(fact("0"))), all(deckAt(measure.Metre), rated(measure.Fact{}))},
	{"deck-rating-not-known", all(deckAt(measure.Metre), load(fact("1"))), all(deckAt(measure.Metre), load(fact("1")), rated(fact("300")))},
	{"deck-rating-not-known", all(deckAt(measure.Metre), load(fact("1"))), deckAt(measure.Metre)},
	// By hand: 90 kg + 113.398 kg + 37 kg = 240.398 kg on 2 m × 1 m is 120.2 kg/m², 24.62 lb/ft².
	{"floor-overloaded", all(floorJob, floorMay(fact("120.1"))), all(floorJob, floorMay(fact("120.2")))},
	{"floor-overloaded", all(floorJob, floorMay(poundsOnFoot("24"))), all(floorJob, floorMay(poundsOnFoot("25")))},
	{"floor-overloaded", all(floorJob, floorMay(fact("100"))), all(floorJob, floorMay(fact("100")), from(Floor))},
	{"floor-not-checked", all(floorJob, floorMay(fact("100")), foot(0, measure.Metre)), all(floorJob, foot(0, measure.Metre))},
	{"floor-not-checked", all(deckAt(measure.Metre), floorMay(fact("100"))), all(floorJob, floorMay(fact("100")))},
	{"nothing-on-the-deck", deckAt(15*cm + 1), deckAt(15 * cm)},

	// 10 ft is 3.048 m: the rule is written in feet, and 3.05 m is above it.
	{"rails-above-10-ft", all(deckAt(10*measure.Foot+1), rails(No)), all(deckAt(10*measure.Foot), rails(No))},
	{"rails-above-10-ft", all(deckAt(3050*mm), rails(No)), all(deckAt(3040*mm), rails(No))},
	{"rails-above-10-ft", all(deckAt(10*measure.Foot+1), rails("")), all(deckAt(10*measure.Foot+1), rails(Yes))},
	{"rails-above-10-ft", all(deckAt(10*measure.Foot+1), rails(No), from("")), all(deckAt(10*measure.Foot+1), rails(No), from(Ladder))},
	{"rails-above-10-ft", all(deckAt(10*measure.Foot+1), rails(No), in(Other)), all(deckAt(10*measure.Foot+1), rails(No), in(UK))},
	{"rails-above-4-ft", all(deckAt(10*measure.Foot), rails(No)), all(deckAt(10*measure.Foot+1), rails(No))},
	{"rails-above-4-ft", all(deckAt(4*measure.Foot+1), rails("")), all(deckAt(4*measure.Foot), rails(""))},
	{"rails-above-4-ft", all(deckAt(1220*mm), rails("")), all(deckAt(1210*mm), rails(""))},
	{"rails-from-2-m", all(deckAt(2*measure.Metre), rails(No), in(UK)), all(deckAt(2*measure.Metre-1), rails(No), in(UK))},
	{"rails-from-2-m", all(deckAt(79*measure.Inch), rails(No), in(UK)), all(deckAt(78*measure.Inch), rails(No), in(UK))},
	{"rails-from-2-m", all(deckAt(2*measure.Metre), rails(""), in(EU)), all(deckAt(2*measure.Metre), rails(""), in(US))},
	{"rails-any-height", all(deckAt(2*measure.Metre-1), rails(No), in(EU)), all(deckAt(2*measure.Metre), rails(No), in(EU))},
	{"rails-any-height", all(deckAt(15*cm+1), rails(""), in(UK)), all(deckAt(15*cm), rails(""), in(UK))},
	{"rails-any-height", all(deckAt(1*measure.Metre), rails(""), in("")), all(deckAt(1*measure.Metre), rails(Yes), in(""))},
	// 38 to 45 in is 965.2 to 1143 mm: 29 CFR 1926.451(g)(4)(ii), OSHA letter of
	// 2000-05-18.
	{"rail-under-38-in", all(deckAt(measure.Metre), rail(38*measure.Inch-1)), all(deckAt(measure.Metre), rail(38*measure.Inch))},
	{"rail-under-38-in", all(deckAt(measure.Metre), rail(965*mm)), all(deckAt(measure.Metre), rail(966*mm))},
	{"rail-under-38-in", all(deckAt(measure.Metre), rail(955*mm), in("")), all(deckAt(measure.Metre), rail(955*mm), in(UK))},
	{"rail-under-38-in", all(deckAt(measure.Metre), rails(""), rail(90*cm)), all(deckAt(measure.Metre), rails(No), rail(90*cm))},
	{"rail-over-45-in", all(deckAt(measure.Metre), rail(45*measure.Inch+1)), all(deckAt(measure.Metre), rail(45*measure.Inch))},
	{"rail-over-45-in", all(deckAt(measure.Metre), rail(1144*mm)), all(deckAt(measure.Metre), rail(1143*mm))},
	{"rail-over-45-in", all(deckAt(measure.Metre), rail(120*cm)), all(deckAt(measure.Metre), rail(120*cm), in(EU))},
	// 950 mm and 470 mm: Work at Height Regulations 2005, schedule 2. 37 3/8 in
	// is 949.3 mm, 18 1/2 in 469.9 mm.
	{"rail-under-950-mm", all(deckAt(measure.Metre), rail(949*mm), in(UK)), all(deckAt(measure.Metre), rail(950*mm), in(UK))},
	{"rail-under-950-mm", all(deckAt(measure.Metre), rail(37*measure.Inch+3*measure.Inch/8), in(EU)), all(deckAt(measure.Metre), rail(37*measure.Inch+measure.Inch/2), in(EU))},
	{"rail-gap-over-470-mm", all(deckAt(measure.Metre), railGap(471*mm), in(UK)), all(deckAt(measure.Metre), railGap(470*mm), in(UK))},
	{"rail-gap-over-470-mm", all(deckAt(measure.Metre), railGap(19*measure.Inch), in(EU)), all(deckAt(measure.Metre), railGap(18*measure.Inch+measure.Inch/2), in(EU))},
	{"rail-gap-over-470-mm", all(deckAt(measure.Metre), railGap(50*cm), in("")), all(deckAt(measure.Metre), railGap(50*cm), in(US))},
	{"rail-height-not-known", deckAt(measure.Metre), all(deckAt(measure.Metre), rail(110*cm))},
	{"rail-height-not-known", deckAt(measure.Metre), all(deckAt(measure.Metre), kind(HopUp))},
	{"rails-not-measured", all(deckAt(measure.Metre), in(UK), rail(110*cm)), all(deckAt(measure.Metre), in(UK), rail(110*cm), railGap(40*cm))},
	{"rails-not-measured", all(deckAt(measure.Metre), in(EU), railGap(40*cm)), all(deckAt(measure.Metre), in(EU), railGap(40*cm), rails(No))},
	{"gap-to-the-wall", all(deckAt(measure.Metre), rails(No), func(j *Job) { j.DeckGap = 14*measure.Inch + 1 }),
		all(deckAt(measure.Metre), rails(No), func(j *Job) { j.DeckGap = 14 * measure.Inch })},
	{"gap-to-the-wall", all(deckAt(measure.Metre), rails(No), func(j *Job) { j.DeckGap = 356 * mm }),
		all(deckAt(measure.Metre), rails(No), func(j *Job) { j.DeckGap = 355 * mm })},
	{"gap-to-the-wall", all(deckAt(measure.Metre), rails(""), func(j *Job) { j.DeckGap = 20 * measure.Inch }),
		all(deckAt(measure.Metre), rails(Yes), func(j *Job) { j.DeckGap = 20 * measure.Inch })},
	{"falling-things-10-ft", deckAt(10*measure.Foot + 1), deckAt(10 * measure.Foot)},
	{"falling-things-10-ft", all(deckAt(6*measure.Foot), drop(Yes, 4*measure.Foot+1)), all(deckAt(6*measure.Foot), drop(Yes, 4*measure.Foot))},
	{"falling-things-10-ft", all(deckAt(6*measure.Foot), drop(Yes, 0)), all(deckAt(6*measure.Foot), drop(No, 0))},
	{"falling-things-10-ft", deckAt(3050 * mm), deckAt(3040 * mm)},
	{"falling-things-10-ft", all(deckAt(4*measure.Metre), below(Yes)), all(deckAt(4*measure.Metre), below(No))},
	{"falling-things-10-ft", all(deckAt(4*measure.Metre), boards(No)), all(deckAt(4*measure.Metre), boards(Yes))},
	{"falling-things", all(deckAt(50*cm+1), in(EU)), all(deckAt(50*cm), in(EU))},
	{"falling-things", all(deckAt(measure.Metre), in(UK), below(Yes)), all(deckAt(measure.Metre), in(UK), below(No))},
	{"falling-things", all(deckAt(measure.Metre), in(UK), below(Yes)), all(deckAt(measure.Metre), in(UK), below(Yes), boards(Yes))},
	{"falling-things", all(deckAt(30*cm), in(UK), kind(Podium)), all(deckAt(30*cm), in(UK), kind(HopUp))},

	// A deck at 2.90 m with rails of 1.10 m is 4.00 m high.
	{"base-too-narrow", all(deckAt(290*cm), base(100*cm-1)), all(deckAt(290*cm), base(100*cm))},
	{"base-too-narrow", all(deckAt(290*cm), base(39*measure.Inch)), all(deckAt(290*cm), base(40*measure.Inch))},
	{"base-too-narrow", all(deckAt(190*cm), base(100*cm-1), in(Other)), all(deckAt(190*cm), base(100*cm), in(Other))},
	{"base-too-narrow", all(deckAt(290*cm), base(50*cm)), all(deckAt(290*cm), base(50*cm), tied(Yes))},
	{"base-too-narrow", all(deckAt(290*cm), base(50*cm), tied(No)), all(deckAt(290*cm), base(50*cm), kind(HopUp))},
	{"base-too-narrow", all(deckAt(290*cm), base(0), foot(180*cm, 99*cm)), all(deckAt(290*cm), base(0), foot(180*cm, 100*cm))},
	{"base-too-narrow", all(deckAt(290*cm), base(120*cm), foot(99*cm, 180*cm)), all(deckAt(290*cm), base(120*cm), foot(99*cm, 0))},
	{"base-check-table", all(deckAt(190*cm), base(100*cm-1), in(UK)), all(deckAt(190*cm), base(100*cm), in(UK))},
	{"base-check-table", all(deckAt(190*cm), base(50*cm), in(EU)), all(deckAt(190*cm), base(50*cm), in(Other))},
	{"base-check-table", all(deckAt(190*cm), base(50*cm), in(EU), inTheTable(No)), all(deckAt(190*cm), base(50*cm), in(EU), inTheTable(Yes))},
	// The US rule is no table: outside Europe none is taken for an answer.
	{"base-too-narrow", all(deckAt(190*cm), base(50*cm), inTheTable(Yes)), all(deckAt(190*cm), base(50*cm), in(UK), inTheTable(Yes))},
	{"base-check-table", all(deckAt(190*cm), base(50*cm), in(EU)), all(deckAt(190*cm), base(50*cm), in(EU), tied(Yes))},
	{"base-not-known", all(deckAt(50*cm+1), base(0)), all(deckAt(50*cm), base(0))},
	{"base-not-known", all(deckAt(90*cm), base(0)), all(deckAt(90*cm), base(1))},
	{"base-not-known", all(deckAt(90*cm), base(0), foot(0, 90*cm)), all(deckAt(90*cm), base(0), foot(180*cm, 90*cm))},
	{"base-not-known", all(deckAt(40*cm), base(0), kind(Tower)), all(deckAt(90*cm), base(0), kind(HopUp))},
	{"base-not-known", all(deckAt(90*cm), base(0)), all(deckAt(90*cm), base(0), tied(Yes))},
	{"wheels-not-locked", all(deckAt(50*cm+1), wheels(No)), all(deckAt(50*cm), wheels(No))},
	{"wheels-not-locked", all(deckAt(measure.Metre), kind(Podium), wheels(No)), all(deckAt(measure.Metre), kind(Podium), wheels(""))},
	{"wheels-not-locked", all(deckAt(40*cm), kind(Tower), wheels(No)), all(deckAt(40*cm), kind(HopUp), wheels(No))},
	{"wheels-not-locked", all(deckAt(measure.Metre), wheels(No)), all(deckAt(measure.Metre), wheels(No), kind(Scaffold))},
	{"wheels-not-locked", all(deckAt(measure.Metre), wheels(No)), all(deckAt(measure.Metre), wheels(No), from(Floor))},
	{"lock-wheels", deckAt(50*cm + 1), deckAt(50 * cm)},
	{"lock-wheels", all(deckAt(measure.Metre), kind(Tower)), all(deckAt(measure.Metre), kind(Tower), wheels(Yes))},
	{"lock-wheels", all(deckAt(measure.Metre), kind(Tower)), all(deckAt(measure.Metre), kind(Tower), wheels(No))},
	{"lock-wheels", all(deckAt(measure.Metre), kind(Podium)), all(deckAt(measure.Metre), kind(HopUp))},
	{"lock-wheels", all(deckAt(measure.Metre), kind(Scaffold), wheels(No)), all(deckAt(measure.Metre), kind(Scaffold))},
	// The height of the deck may be unknown: what is chosen rolls all the same.
	{"wheels-not-locked", all(deckAt(measure.Metre), heightless, kind(Tower), wheels(No)), all(deckAt(measure.Metre), heightless, kind(Scaffold), wheels(No))},
	{"wheels-not-locked", all(deckAt(measure.Metre), heightless, kind(Podium), wheels(No)), all(deckAt(measure.Metre), heightless, wheels(No))},
	{"lock-wheels", all(deckAt(measure.Metre), heightless, kind(Tower), wheels("")), all(deckAt(measure.Metre), heightless, kind(Tower), wheels(Yes))},
	{"get-down-before-it-moves", all(deckAt(measure.Metre), heightless, kind(Tower), rides(Yes), in(UK)), all(deckAt(measure.Metre), heightless, kind(Tower), rides(Yes))},
	{"nobody-rides", all(deckAt(measure.Metre), heightless, kind(Tower), rides(Yes)), all(deckAt(measure.Metre), heightless, kind(Tower), rides(No))},
	{"get-down-before-it-moves", all(deckAt(measure.Metre), rides(Yes), in(UK)), all(deckAt(measure.Metre), rides(Yes), in(US))},
	{"get-down-before-it-moves", all(deckAt(measure.Metre), rides(Yes), in("")), all(deckAt(measure.Metre), rides(No), in(""))},
	{"get-down-before-it-moves", all(deckAt(measure.Metre), rides(Yes), in(EU)), all(deckAt(measure.Metre), rides(Yes), in(EU), kind(HopUp))},
	// 2 to 1: 29 CFR 1926.452(w)(6). A deck at 0.90 m with rails is 2.00 m high.
	{"riding-too-tall", all(deckAt(90*cm), rides(Yes), base(100*cm-1)), all(deckAt(90*cm), rides(Yes), base(100*cm))},
	{"riding-too-tall", all(deckAt(90*cm), rides(Yes), base(39*measure.Inch)), all(deckAt(90*cm), rides(Yes), base(40*measure.Inch))},
	{"riding-too-tall", all(deckAt(90*cm), rides(Yes), base(0)), all(deckAt(90*cm), rides(""), base(0))},
	{"riding-too-tall", all(deckAt(90*cm), rides(Yes), base(0)), all(deckAt(90*cm), rides(Yes), base(0), in(UK))},
	{"riding-conditions", all(deckAt(90*cm), rides(Yes), base(100*cm)), all(deckAt(90*cm), rides(Yes), base(100*cm-1))},
	{"riding-conditions", all(deckAt(90*cm), rides(Yes), base(100*cm)), all(deckAt(90*cm), rides(Yes), base(100*cm), in(""))},
	{"nobody-rides", deckAt(50*cm + 1), deckAt(50 * cm)},
	{"nobody-rides", deckAt(measure.Metre), all(deckAt(measure.Metre), rides(No))},
	{"nobody-rides", deckAt(measure.Metre), all(deckAt(measure.Metre), kind(Scaffold))},
	{"push-at-the-base", all(deckAt(measure.Metre), rides(No)), deckAt(measure.Metre)},
	{"push-at-the-base", all(deckAt(measure.Metre), rides(No), kind(Podium)), all(deckAt(measure.Metre), rides(No), kind(HopUp))},
	{"lower-before-moving", all(deckAt(290*cm+1), in(UK)), all(deckAt(290*cm), in(UK))},
	{"lower-before-moving", all(deckAt(115*measure.Inch), in(UK)), all(deckAt(114*measure.Inch), in(UK))},
	{"lower-before-moving", all(deckAt(290*cm+1), in("")), all(deckAt(290*cm+1), in(US))},
	{"lower-before-moving", all(deckAt(4*measure.Metre), in(UK), kind(Tower)), all(deckAt(4*measure.Metre), in(UK), kind(Scaffold))},
	// 3.40 m: EN 1004-1:2020, seen in two secondary copies.
	{"decks-between", all(deckAt(340*cm+1), in(UK)), all(deckAt(340*cm), in(UK))},
	{"decks-between", all(deckAt(134*measure.Inch), in(EU)), all(deckAt(133*measure.Inch), in(EU))},
	{"decks-between", all(deckAt(4*measure.Metre), in(EU)), all(deckAt(4*measure.Metre), in(US))},
	{"decks-between", all(deckAt(4*measure.Metre), in(EU), kind(Tower)), all(deckAt(4*measure.Metre), in(EU), kind(Podium))},
	{"too-high-for-a-tower", all(deckAt(12*measure.Metre+1), in(EU)), all(deckAt(12*measure.Metre), in(EU))},
	{"too-high-for-a-tower", all(deckAt(40*measure.Foot), in(UK)), all(deckAt(39*measure.Foot), in(UK))},
	{"too-high-for-a-tower", all(deckAt(13*measure.Metre), in(UK)), all(deckAt(13*measure.Metre), in(UK), kind(Scaffold))},
	{"trained-to-build", deckAt(50*cm + 1), deckAt(50 * cm)},
	{"trained-to-build", all(deckAt(measure.Metre), kind(Scaffold)), all(deckAt(measure.Metre), kind(HopUp))},
	{"check-each-shift", deckAt(50*cm + 1), deckAt(50 * cm)},
	{"check-each-shift", deckAt(measure.Metre), all(deckAt(measure.Metre), in(UK))},
	{"check-within-7-days", all(deckAt(2*measure.Metre), in(UK)), all(deckAt(2*measure.Metre-1), in(UK))},
	{"check-within-7-days", all(deckAt(measure.Metre), in(UK), drop(Yes, measure.Metre)), all(deckAt(measure.Metre), in(UK), drop(Yes, measure.Metre-1))},
	{"check-within-7-days", all(deckAt(40*cm), in(EU), drop(Yes, 0)), all(deckAt(40*cm), in(EU), drop("", 0))},
	{"check-within-7-days", all(deckAt(79*measure.Inch), in(UK)), all(deckAt(78*measure.Inch), in(UK))},
	// 2 ft is 0.6096 m: 29 CFR 1926.451(e)(1), seen in a secondary copy, prints 0.6 m.
	{"no-way-up", all(deckAt(2*measure.Foot+1), wayUp(No)), all(deckAt(2*measure.Foot), wayUp(No))},
	{"no-way-up", all(deckAt(610*mm), wayUp(No)), all(deckAt(609*mm), wayUp(No))},
	{"no-way-up", all(deckAt(measure.Metre), wayUp(No)), all(deckAt(measure.Metre), wayUp(""))},
	{"way-up", deckAt(2*measure.Foot + 1), deckAt(2 * measure.Foot)},
	{"way-up", deckAt(measure.Metre), all(deckAt(measure.Metre), wayUp(Yes))},
	{"way-up", deckAt(measure.Metre), all(deckAt(measure.Metre), wayUp(No))},
	// A podium or a tower is never leaned on: it has a way up of its own.
	{"no-ladder-on-a-tower", deckAt(2*measure.Foot + 1), deckAt(2 * measure.Foot)},
	{"no-ladder-on-a-tower", all(deckAt(measure.Metre), kind(Podium)), all(deckAt(measure.Metre), kind(Podium), wayUp(Yes))},
	{"no-ladder-on-a-tower", all(deckAt(measure.Metre), kind(Tower), wayUp(No)), all(deckAt(measure.Metre), kind(Scaffold), wayUp(No))},
	{"ladder-to-the-deck-1-m", all(deckAt(2*measure.Foot+1), kind(Scaffold), in(UK)), all(deckAt(2*measure.Foot), kind(Scaffold), in(UK))},
	{"ladder-to-the-deck-1-m", all(deckAt(measure.Metre), kind(Scaffold), in("")), all(deckAt(measure.Metre), kind(Scaffold), in(""), wayUp(Yes))},
	{"ladder-to-the-deck-1-m", all(deckAt(measure.Metre), kind(Scaffold), in(EU)), all(deckAt(measure.Metre), kind(Tower), in(EU))},
	{"ladder-to-the-deck-1-m", all(deckAt(measure.Metre), kind(Scaffold), in(EU)), all(deckAt(measure.Metre), in(EU))},
	{"ladder-to-the-deck-3-ft", all(deckAt(2*measure.Foot+1), kind(Scaffold)), all(deckAt(2*measure.Foot), kind(Scaffold))},
	{"ladder-to-the-deck-3-ft", all(deckAt(measure.Metre), kind(Scaffold), wayUp(No)), all(deckAt(measure.Metre), kind(Scaffold), wayUp(Yes))},
	{"ladder-to-the-deck-3-ft", all(deckAt(measure.Metre), kind(Scaffold)), all(deckAt(measure.Metre), kind(Podium))},
	{"loose-sheets", all(from(Ladder), masked(number("0"))), masked(number("0"))},
	{"loose-sheets", all(deckAt(20*cm), masked(number("0"))), all(deckAt(20*cm), from(Floor), masked(number("0")))},
	// The backing of a panel lies about under whoever works from the floor too.
	{"loose-sheets", masked(hair), masked(number("0"))},

	// A deck of 0.40 m by a balustrade of a stairwell 2.60 m deep.
	{"rails-beside-a-drop", all(deckAt(40*cm), rails(No), drop(Yes, 260*cm)), all(deckAt(40*cm), rails(No), drop(No, 0))},
	{"rails-beside-a-drop", all(deckAt(40*cm), rails(""), drop(Yes, 0), in(UK)), all(deckAt(40*cm), rails(Yes), drop(Yes, 0), in(UK))},
	{"rails-beside-a-drop", all(deckAt(40*cm), rails(No), drop(Yes, 260*cm)), all(rails(No), drop(Yes, 260*cm))},
	{"drop-beside-the-deck", all(deckAt(40*cm), drop(Yes, 260*cm)), all(deckAt(40*cm), drop("", 260*cm))},
	{"drop-beside-the-deck", all(deckAt(40*cm), drop(Yes, 260*cm)), drop(Yes, 260*cm)},
	{"look-for-a-drop", deckAt(40 * cm), all(deckAt(40*cm), drop(No, 0))},
	{"look-for-a-drop", deckAt(40 * cm), all(deckAt(40*cm), drop(Yes, 0))},

	{"overhead-over-2-hours", overhead(fact("2.01")), overhead(fact("2"))},
	{"overhead-over-2-hours", overhead(fact("4")), overhead(fact("4.01"))},
	{"overhead-over-4-hours", overhead(fact("4.01")), overhead(fact("4"))},
	{"overhead-hours-not-known", overhead(measure.Fact{}), overhead(fact("0"))},
	// 5 kg and 3 kg a person: HSE INDG143 and L23, from memory. 11 lb is 4.99 kg,
	// 6.6 lb 2.99 kg.
	{"panel-over-5-kg", panel(fact("5.01")), panel(fact("5"))},
	{"panel-over-5-kg", panel(pounds("11.1")), panel(pounds("11"))},
	{"panel-over-5-kg", all(panel(fact("10.1")), onDeck(2)), all(panel(fact("10")), onDeck(2))},
	{"panel-over-5-kg", panel(fact("6")), panel(measure.Fact{})},
	{"panel-over-3-kg", panel(fact("3.01")), panel(fact("3"))},
	{"panel-over-3-kg", panel(pounds("6.7")), panel(pounds("6.6"))},
	{"panel-over-3-kg", panel(fact("5")), panel(fact("5.01"))},
	{"overhead-spell-over-10-minutes", minutes("10.5"), minutes("10")},
	{"overhead-breaks", minutes("10"), minutes("10.5")},
	{"overhead-breaks", all(), nil},
}

// Whatever is typed about towers and ladders, who works from the floor hears
// nothing of it.
func TestFromTheFloorNothingIsToldOfPlatforms(t *testing.T) {
	everything := all(wheels(No), rides(Yes), wayUp(No), tied(No), boards(No), below(Yes), rails(No), rail(50*cm), railGap(80*cm), base(10*cm),
		foot(20*cm, 20*cm), deckSides(50*cm, 10*cm), rated(fact("1")), load(fact("500")), gear(func(g *Gear) { g.LadderHeight = 10 * cm }),
		func(j *Job) { j.DeckGap = measure.Metre })
	for _, k := range []Kind{"", HopUp, Podium, Tower, Scaffold} {
		for _, country := range []Country{US, UK, EU, Other} {
			quiet := ids(notesAfter(in(country)))
			assert.ElementsMatch(t, quiet, ids(notesAfter(all(everything, kind(k), in(country)))), "%s in %s", k, country)
		}
	}
}

// A hop-up hears nothing of what is put up, rolled or climbed.
func TestHopUpIsNoTower(t *testing.T) {
	told := ids(notesAfter(all(deckAt(40*cm), kind(HopUp), wheels(No), rides(Yes), rails(No), boards(No), below(Yes), base(10*cm), in(Other))))
	for _, id := range []string{"wheels-not-locked", "lock-wheels", "get-down-before-it-moves", "nobody-rides", "base-too-narrow",
		"base-check-table", "base-not-known", "falling-things", "trained-to-build", "check-each-shift", "lower-before-moving", "way-up"} {
		assert.NotContains(t, told, id)
	}
	assert.Contains(t, told, "rails-any-height")
}

// A scaffold is no tower: it does not roll, and its standard is another.
func TestScaffoldDoesNotRoll(t *testing.T) {
	told := ids(notesAfter(all(deckAt(13*measure.Metre), kind(Scaffold), rides(Yes), in(Other))))
	for _, id := range []string{"lock-wheels", "get-down-before-it-moves", "nobody-rides", "lower-before-moving", "decks-between", "too-high-for-a-tower"} {
		assert.NotContains(t, told, id)
	}
	assert.Contains(t, told, "check-each-shift")
}

// What is answered well silences the stops and cautions about a platform, and
// each blank left open brings one back.
func TestAnsweredPlatformIsQuiet(t *testing.T) {
	answered := all(deckAt(measure.Metre), kind(Podium), rails(Yes), rail(110*cm), railGap(40*cm), base(measure.Metre), foot(180*cm, measure.Metre),
		deckSides(180*cm, 70*cm), wheels(Yes), rides(No), wayUp(Yes), boards(Yes), below(No), onDeck(1), load(fact("10")), rated(fact("200")), panel(fact("2")))
	for _, country := range []Country{US, UK, EU, Other} {
		for _, note := range notesAfter(all(answered, in(country))) {
			assert.True(t, note.Severity == problem.Note || note.ID == "loose-sheets", "%s in %s", note.ID, country)
		}
	}
	for id, open := range map[string]change{
		"lock-wheels": wheels(""), "nobody-rides": rides(""), "way-up": wayUp(""), "falling-things": all(below(""), boards("")),
		"base-not-known": all(base(0), foot(0, 0)), "deck-rating-not-known": rated(measure.Fact{}), "rails-any-height": rails(""),
	} {
		assert.Contains(t, ids(notesAfter(all(answered, in(Other), open))), id)
	}
}

// Where the country is not known one rule of a subject is told, the stricter.
func TestAccessStrictestWhereCountryIsNotKnown(t *testing.T) {
	for _, row := range []struct {
		change change
		told   string
		silent []string
	}{
		{all(deckAt(measure.Metre), rail(90*cm)), "rail-under-38-in", []string{"rail-under-950-mm"}},
		{all(deckAt(measure.Metre), deckSides(180*cm, 40*cm)), "deck-under-600-mm", []string{"deck-under-18-in"}},
		{ladderOf(measure.Metre), "ladder-three-steps-down", []string{"ladder-two-steps-down"}},
		{all(deckAt(90*cm), rides(Yes), base(measure.Metre)), "get-down-before-it-moves", []string{"riding-conditions", "nobody-rides"}},
		{all(from(Ladder), load(fact("3"))), "ladder-type", []string{"ladder-rating"}},
		{all(deckAt(measure.Metre), kind(Scaffold)), "ladder-to-the-deck-1-m", []string{"ladder-to-the-deck-3-ft"}},
	} {
		told := ids(notesAfter(all(row.change, in(Other))))
		assert.Contains(t, told, row.told)
		for _, id := range row.silent {
			assert.NotContains(t, told, id)
		}
	}
}

// A ladder for long work overhead is answered with this job's own numbers.
func TestLadderIsAnsweredWithNumbers(t *testing.T) {
	note := find(t, notesAfter(all(from(Ladder), overhead(fact("3.5")), minutes("40"), panel(fact("6.25")))), "ladder-both-hands")
	assert.Equal(t, problem.Stop, note.Severity)
	assert.Equal(t, "This job: 3 h 30 min a day overhead, 40 min in one spot, panels of up to 6.25 kg.", note.Working)
	assert.Equal(t, []Block{Hanging}, note.Bites)
	unknown := find(t, notesAfter(all(from(Ladder), overhead(measure.Fact{}))), "ladder-both-hands")
	assert.Equal(t, "This job: hours overhead, minutes in one spot and weight of a panel are not given.", unknown.Working)
}

// The lightest type of ladder that carries what is on it: ANSI A14 ratings of 200,
// 225, 250, 300 and 375 lb, seen in a secondary copy. A person with gear is 250 lb.
func TestLadderTypes(t *testing.T) {
	for tools, words := range map[string]string{
		"0": "type I, which carries 113.4 kg", "0.1": "type IA, which carries 136.1 kg", "22.6": "type IA, which",
		"22.7": "type IAA, which carries 170.1 kg", "56.6": "type IAA, which", "56.7": "more than any type of ladder carries",
	} {
		note := find(t, notesAfter(all(from(Ladder), load(fact(tools)))), "ladder-type")
		assert.Contains(t, note.Words, words, tools)
	}
}

// A quarter of the working length: 29 CFR 1926.1053(b)(5)(i); a ladder of 4.00 m
// reaches 3.873 m and stands 1.000 m out, derived. One in four of the height: 75.96
// degrees, EN 131-3, seen in a secondary copy.
func TestFootOfALeaningLadder(t *testing.T) {
	us := find(t, notesAfter(all(deckAt(3873*mm), kind(Scaffold))), "ladder-to-the-deck-3-ft")
	assert.Contains(t, us.Words, "Its foot is about 1000 mm out")
	uk := find(t, notesAfter(all(deckAt(4*measure.Metre), kind(Scaffold), in(UK))), "ladder-to-the-deck-1-m")
	assert.Contains(t, uk.Words, "Its foot is about 1000 mm out")
}

// What a deck carries, by hand: 3 × 113.398 kg + 40 kg = 380.194 kg.
func TestDeckLoadShowsItsSum(t *testing.T) {
	note := find(t, notesAfter(all(deckAt(measure.Metre), onDeck(3), load(fact("40")), rated(fact("350")))), "deck-overloaded")
	assert.Equal(t, "With gear 3 people weigh 340.2 kg, tools and materials: 40 kg. Together 380.2 kg; the deck may carry 350 kg.", note.Working)
	job := quietJob()
	all(deckAt(measure.Metre), onDeck(1), load(pounds("50")), rated(pounds("250")))(&job)
	note = find(t, Notes(job, inFeet), "deck-overloaded")
	assert.Equal(t, "With gear one person weighs 250 lb, tools and materials: 50 lb. Together 300 lb; the deck may carry 250 lb.", note.Working)
}

// Every rule of these sections that goes by a number says which, and every amount
// in a working is known.
func TestAccessWorkingsAreWhole(t *testing.T) {
	job := quietJob()
	all(deckAt(4*measure.Metre), minutes("40"), panel(fact("6")), overhead(fact("6")))(&job)
	f, found := factsOf(job), 0
	for _, list := range [][]rule{ladderRules(), deckRules(), railRules(), baseRules(), overheadRules()} {
		for i := range list {
			r := &list[i]
			rest := r.working
			for {
				_, after, more := strings.Cut(rest, "{")
				if !more {
					break
				}
				name, tail, closed := strings.Cut(after, "}")
				require.True(t, closed, r.id)
				assert.True(t, strings.HasPrefix(name, "~") || f.amount(name) != nil, "%s in the working of %s", name, r.id)
				rest, found = tail, found+1
			}
		}
	}
	assert.Greater(t, found, 60)
}

// heightless leaves the height of the ceiling out, and so that of the deck.
func heightless(j *Job) { j.CeilingHeight = 0 }
