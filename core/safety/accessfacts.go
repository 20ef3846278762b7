package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Amounts the rules for ladders, decks and the people on them compare with, each
// in the unit its rule is written in. Sources stand beside the rules.
const (
	twoSteps      = 24 * measure.Inch       // from a stepladder's cap down to the highest step of use: two steps of 12 in
	threeSteps    = 75 * measure.Centimetre // three steps of 250 mm
	leastRailUS   = 38 * measure.Inch
	mostRailUS    = 45 * measure.Inch
	leastRailEU   = 950 * measure.Millimetre
	mostRailGapEU = 470 * measure.Millimetre
	leastDeckUS   = 18 * measure.Inch
	leastDeckEU   = 60 * measure.Centimetre
	mostDeckGapUS = 14 * measure.Inch
	firstDeckEU   = 340 * measure.Centimetre
	nextDeckEU    = 225 * measure.Centimetre
	ladderPastUS  = 3 * measure.Foot
	ladderPastEU  = 1 * measure.Metre
	pushUpTo      = 5 * measure.Foot
	ridingRatio   = 2
	mostTowerEU   = 12 * measure.Metre
	lowerToEU     = 4 * measure.Metre
	properWayUp   = 2 * measure.Foot
	rootOfFifteen = 3.872983346207417
)

var (
	ladderCarry   = measure.NumberFromInt(10) // kg, above: not up a ladder in the hands
	panelCaution  = measure.NumberFromInt(5)  // kg a person, overhead at arm's length
	panelNote     = measure.NumberFromInt(3)
	ladderMinutes = measure.NumberFromInt(30) // in one spot, above: not from a ladder
	spellMinutes  = measure.NumberFromInt(10) // overhead without a pause
	europeLadder  = measure.NumberFromInt(150)
)

// ladderTypes are the duty ratings of US ladders, ANSI A14 series, seen in a
// secondary copy, the lightest first.
var ladderTypes = [...]struct {
	name   string
	pounds int64
}{{"III", 200}, {"II", 225}, {"I", 250}, {"IA", 300}, {"IAA", 375}}

// fall is how far one can fall from the deck: to the lowest level beside it. known
// is false where the floor falls away and nobody has said how far.
func (f *facts) fall() (height measure.Length, known bool) {
	if f.Building.Drop != Yes {
		return f.deck.Best, true
	}
	return f.deck.Best + f.Building.DropDepth, f.Building.DropDepth > 0
}

// mayFall: so far or farther, or nobody knows how far.
func (f *facts) mayFall(height measure.Length) bool {
	fall, known := f.fall()
	return !known || fall >= height
}

// onLadder: the work is done from a ladder.
func (f *facts) onLadder() bool { return f.Access == Ladder }

// builtUp: the deck is more than a hop-up, so it is put up, has rails and is
// climbed. A kind that nobody has said may be one above half a metre.
func (f *facts) builtUp() bool {
	switch f.Gear.Kind {
	case HopUp:
		return false
	case "":
		return f.onPlatform()
	}
	return f.onDeck()
}

// mayRoll: the platform has wheels, or may have.
func (f *facts) mayRoll() bool { return f.builtUp() && f.Gear.Kind != Scaffold }

// rolls: it may, or what is chosen stands on wheels, at whatever height: where
// the deck's is not known, a wheel that is not locked is no less a danger.
func (f *facts) rolls() bool {
	chosen := f.Access == Platform && (f.Gear.Kind == Podium || f.Gear.Kind == Tower)
	return f.mayRoll() || !f.deckKnown && chosen
}

// mayBeTower: a mobile tower is chosen, or may be.
func (f *facts) mayBeTower() bool { return f.mayRoll() && f.Gear.Kind != Podium }

// baseTooSmall: what carries the platform free-standing is too narrow, and nobody
// has said that it is tied.
func (f *facts) baseTooSmall() bool {
	return f.onDeck() && f.Gear.Kind != HopUp && f.Gear.Tied != Yes && f.LeastBase() > 0 && f.LeastBase() < f.deck.Base(BaseRatio(f.Country))
}

// wideToRide: the base is known and at least half as wide as the platform is high.
func (f *facts) wideToRide() bool { return f.LeastBase() >= f.ridingBase() }

func (f *facts) ridingBase() measure.Length {
	return (f.deck.Total() + ridingRatio - 1) / ridingRatio
}

// railed: there are rails on the deck, or nobody has said that there are none.
func (f *facts) railed() bool { return f.onDeck() && f.Rails != No }

func (f *facts) deckNarrower(than measure.Length) bool {
	return f.onDeck() && f.DeckWidth() > 0 && f.DeckWidth() < than
}

// mayBePassedUnder: things may fall on someone, and no boards at the edge of the
// deck hold them back.
func (f *facts) mayBePassedUnder() bool {
	return f.builtUp() && f.Building.Below != No && f.Gear.ToeBoards != Yes
}

// wantsWayUp: the deck is too high to step on.
func (f *facts) wantsWayUp() bool { return f.onDeck() && f.deck.Best > properWayUp }

// leansUp: a ladder may lean on what is built there to get up. A podium or a tower
// has a way up of its own, and falls over where one leans on it.
func (f *facts) leansUp() bool {
	return f.wantsWayUp() && f.Gear.WayUp != Yes && f.Gear.Kind == Scaffold
}

// What nobody has said of the deck.
func railsNotSaid(f *facts) bool  { return f.Rails == "" }
func wheelsNotSaid(f *facts) bool { return f.Gear.Wheels == "" }
func ridesNotSaid(f *facts) bool  { return f.Gear.Rides == "" }
func wayUpNotSaid(f *facts) bool  { return f.Gear.WayUp == "" }
func belowNotSaid(f *facts) bool  { return f.Building.Below == "" }

// atFallingThings is the blank that settles what falls: whether anybody is below,
// and then whether boards hold it back.
func atFallingThings(f *facts) string {
	if belowNotSaid(f) {
		return "/place/below"
	}
	return "/access/toeBoards"
}

// atGapToTheWall is the blank that settles the gap: rails, and then its width.
func atGapToTheWall(f *facts) string {
	if railsNotSaid(f) {
		return "/access/rails"
	}
	return "/access/deckGap"
}

// atRails is the blank of the rails that is not filled in.
func atRails(f *facts) string {
	if f.Gear.RailHeight > 0 {
		return "/access/railGap"
	}
	return "/access/railHeight"
}

// shortLadder: to reach the ceiling one would stand higher than so far below the
// top of the ladder.
func (f *facts) shortLadder(below measure.Length) bool {
	return f.onLadder() && f.needsDeck() && f.Gear.LadderHeight > 0 && f.deck.Best > f.Gear.LadderHeight-below
}

func (f *facts) ladderNeeded() measure.Length {
	if f.Country == US {
		return f.deck.Best + twoSteps
	}
	return f.deck.Best + threeSteps
}

// count is how many people are up at once.
func (f *facts) count() int {
	people, _ := f.People()
	return people
}

func (f *facts) deckOverloaded() bool {
	load, _ := f.DeckLoad()
	return f.onDeck() && exceeds(measure.FactOf(load), f.Gear.Rated, once)
}

// floorOverloaded: the platform and all on it weigh more than the floor may carry
// over the area it stands on.
func (f *facts) floorOverloaded() bool {
	load, ok := f.FloorLoad()
	return f.onDeck() && ok && exceeds(measure.FactOf(load.Spread), f.Building.FloorLoad, once)
}

// floorNotChecked: what the floor may carry is given, and what the platform weighs
// or takes on it is not.
func (f *facts) floorNotChecked() bool {
	_, ok := f.FloorLoad()
	return f.onDeck() && !ok && f.Building.FloorLoad.Known
}

// floorMayCarry is what the floor may carry over the area the platform stands on,
// in kilograms.
func (f *facts) floorMayCarry() measure.Number {
	return f.Building.FloorLoad.Value.Mul(measure.AreaOf(f.Gear.FootLength, f.Gear.FootWidth).SquareMetres)
}

// onTheLadder is what a ladder carries: one person, the tools and the panel as
// far as they are known.
func (f *facts) onTheLadder() measure.Number { return PersonMass().Add(f.carried()) }

// carried is what goes up in the hands, as far as it is known.
func (f *facts) carried() measure.Number { return f.Gear.Load.Value.Add(f.Gear.Panel.Value) }

// weightGiven: somebody has weighed tools, materials or a panel.
func (f *facts) weightGiven() bool { return f.Gear.Load.Known || f.Gear.Panel.Known }

// panelShare is what each holds of the heaviest panel.
func (f *facts) panelShare() measure.Fact {
	if !f.Gear.Panel.Known {
		return measure.Fact{}
	}
	return measure.FactOf(f.Gear.Panel.Value.Quo(measure.NumberFromInt(int64(f.count()))))
}

// mayBeLive: there is a light in the ceiling, or may be, and nobody has said that
// its circuit is off and proved dead.
func (f *facts) mayBeLive() bool { return f.Fixture != No && f.Building.Isolated != Yes }

// accessAmount is what a word in braces of a rule about access stands for, nil
// where there is no such word.
func (f *facts) accessAmount(name string) words.Value {
	if l, ok := f.accessLength(name); ok {
		return length(l)
	}
	if l, least, ok := limitNamed(name); ok {
		return limit{l, 0, towardsSafety(least)}
	}
	if kilograms, ok := f.accessMass(name); ok {
		return mass(kilograms)
	}
	if value := f.deckAmount(name); value != nil {
		return value
	}
	g := &f.Gear
	switch name {
	case "fall":
		fall, known := f.fall()
		if !known {
			return words.Say("farther than the deck is high")
		}
		return stepped{fall, ToNearest}
	case "drop":
		if f.Building.DropDepth <= 0 {
			return words.Say("not said")
		}
		return length(f.Building.DropDepth)
	case "rails":
		return said(f.Rails)
	case "toe boards":
		return said(g.ToeBoards)
	case "below":
		return said(f.Building.Below)
	case "base given":
		if f.LeastBase() <= 0 {
			return words.Say("not given")
		}
		return length(f.LeastBase())
	case "riding base":
		return stepped{f.ridingBase(), ToLeast}
	case "foot":
		return area(measure.AreaOf(g.FootLength, g.FootWidth))
	case "ladder needed":
		return stepped{f.ladderNeeded(), ToLeast}
	case "ladder foot, US":
		return stepped{measure.Length(float64(f.deck.Best)/rootOfFifteen + 0.5), ToNearest}
	case "ladder foot, Europe":
		return stepped{f.deck.Best / 4, ToNearest}
	case "ladder type":
		return f.ladderType()
	case "ladder case":
		return f.ladderCase()
	case "people":
		if f.count() == 1 {
			return words.Say("one person")
		}
		return words.Say("{n} people", words.Count("n", f.count()))
	case "people weigh":
		if f.count() == 1 {
			return words.Say("one person weighs")
		}
		return words.Say("{n} people weigh", words.Count("n", f.count()))
	case "load":
		return massOrNone(g.Load)
	case "panel":
		return massOrNone(g.Panel)
	case "rated":
		return massOrNone(g.Rated)
	case "minutes":
		return minutesIn(g.Minutes)
	case "overhead hours":
		return air.Hours(f.OverheadHours.Value)
	}
	return nil
}

// deckAmount are the amounts about the deck to ask for, in whole steps where it is
// to be set or hired.
func (f *facts) deckAmount(name string) words.Value {
	switch name {
	case "best deck":
		return stepped{f.deck.Best, ToNearest}
	case "least deck":
		return stepped{f.deck.Least, ToLeast}
	case "most deck":
		return stepped{f.deck.Most, ToMost}
	case "total height":
		return stepped{f.deck.Total(), ToLeast}
	case "base":
		return length(f.LeastBase())
	case "base needed":
		return stepped{f.deck.Base(BaseRatio(f.Country)), ToLeast}
	case "base ratio":
		return words.Count("", BaseRatio(f.Country)).Value
	case "assumed height":
		return length(assumedStature)
	case "deck gap":
		return length(f.DeckGap)
	}
	return nil
}

// accessLength are the amounts that are lengths.
func (f *facts) accessLength(name string) (measure.Length, bool) {
	switch name {
	case "deck":
		return f.deck.Best, true
	case "total":
		return f.deck.Total(), true
	case "ladder height":
		return f.Gear.LadderHeight, true
	case "two steps down":
		return max(0, f.Gear.LadderHeight-twoSteps), true
	case "three steps down":
		return max(0, f.Gear.LadderHeight-threeSteps), true
	case "rail height":
		return f.Gear.RailHeight, true
	case "rail gap":
		return f.Gear.RailGap, true
	case "deck width":
		return f.DeckWidth(), true
	}
	return 0, false
}

// limitNamed are the lengths the rules compare with, by what they are called;
// least tells that it is the least that will do.
func limitNamed(name string) (l measure.Length, least, ok bool) {
	switch name {
	case "half a metre":
		return lowDeckUpTo, false, true
	case "2 ft":
		return properWayUp, false, true
	case "3 ft":
		return ladderPastUS, true, true
	case "4 ft":
		return 4 * measure.Foot, false, true
	case "5 ft":
		return pushUpTo, false, true
	case "10 ft":
		return 10 * measure.Foot, false, true
	case "14 in":
		return mostDeckGapUS, false, true
	case "18 in":
		return leastDeckUS, true, true
	case "38 in":
		return leastRailUS, true, true
	case "45 in":
		return mostRailUS, false, true
	case "470 mm":
		return mostRailGapEU, false, true
	case "600 mm":
		return leastDeckEU, true, true
	case "950 mm":
		return leastRailEU, true, true
	case "1 m":
		return ladderPastEU, true, true
	case "2 m":
		return 2 * measure.Metre, false, true
	case "2.25 m":
		return nextDeckEU, false, true
	case "3.4 m":
		return firstDeckEU, false, true
	case "4 m":
		return lowerToEU, false, true
	case "12 m":
		return mostTowerEU, false, true
	}
	return 0, false, false
}

// accessMass are the amounts in kilograms.
func (f *facts) accessMass(name string) (measure.Number, bool) {
	switch name {
	case "one person":
		return PersonMass(), true
	case "people mass":
		return PersonMass().Mul(measure.NumberFromInt(int64(f.count()))), true
	case "on the deck":
		load, _ := f.DeckLoad()
		return load, true
	case "on the ladder":
		return f.onTheLadder(), true
	case "carried":
		return f.carried(), true
	case "panel share":
		return f.panelShare().Value, true
	case "on the floor":
		load, _ := f.FloorLoad()
		return load.Whole, true
	case "floor may carry":
		return f.floorMayCarry(), true
	case "10 kg":
		return ladderCarry, true
	case "5 kg":
		return panelCaution, true
	case "3 kg":
		return panelNote, true
	case "150 kg":
		return europeLadder, true
	}
	return measure.Number{}, false
}

// ladderType is the lightest US type of ladder that carries what is on it.
func (f *facts) ladderType() words.Value {
	for _, t := range ladderTypes {
		if rated := measure.Pound.Mul(measure.NumberFromInt(t.pounds)); f.onTheLadder().Cmp(rated) <= 0 {
			return words.Say("type {type}, which carries {mass}", words.Name("type", t.name), Mass("mass", rated))
		}
	}
	return words.Say("more than any type of ladder carries")
}

// ladderCase is what speaks against a ladder in this job's own numbers.
func (f *facts) ladderCase() words.Value {
	var list []words.Text
	if f.OverheadHours.Known {
		list = append(list, words.Say("{hours} a day overhead", words.Of("hours", air.Hours(f.OverheadHours.Value))))
	}
	if f.Gear.Minutes.Known {
		list = append(list, words.Say("{minutes} in one spot", words.Of("minutes", minutesIn(f.Gear.Minutes))))
	}
	if f.Gear.Panel.Known {
		list = append(list, words.Say("panels of up to {mass}", Mass("mass", f.Gear.Panel.Value)))
	}
	if len(list) == 0 {
		return words.Say("hours overhead, minutes in one spot and weight of a panel are not given")
	}
	return words.Texts("", list).Value
}

// minutesIn is minutes as a time.
func minutesIn(minutes measure.Fact) air.Hours {
	return air.Hours(minutes.Value.Quo(measure.NumberFromInt(60)))
}

func said(answer Answer) words.Value {
	switch answer {
	case Yes:
		return words.Say("yes")
	case No:
		return words.Say("no")
	}
	return words.Say("not said")
}

func massOrNone(kilograms measure.Fact) words.Value {
	if !kilograms.Known {
		return words.Say("not given")
	}
	return mass(kilograms.Value)
}
