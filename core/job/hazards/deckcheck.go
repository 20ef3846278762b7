package hazards

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
)

// Check holds one thing of the platform that is there against what it has to be.
// The numbers are those of the facts. By is why a base will do.
type Check struct {
	Of      CheckOf
	Verdict Verdict
	By      BaseBy
}

// CheckOf is what is checked.
type CheckOf int

// The checks, in their order.
const (
	OfKind CheckOf = iota
	OfBase
	OfRails
	OfTopRail
	OfRailGap
	OfToeBoards
	OfDeckWidth
	OfDeckLoad
	OfFloorLoad
)

// Verdict is how a thing stands against what it has to be.
type Verdict string

// The three verdicts.
const (
	Fits       Verdict = "ok"
	FallsShort Verdict = "short"
	NotKnown   Verdict = "unknown"
)

// BaseBy is what a base is held against.
type BaseBy int

// Its own width; the building it is tied to; the maker's table.
const (
	ByWidth BaseBy = iota
	ByTie
	ByTable
)

// Loads are what the deck and the floor carry: Deck in kilograms, the least where not
// Whole, with so many People, as was Said or counted. Floor is known where Stands.
// Over is what is too much on the deck, Boards the area over which boards have to
// spread what is too much for the floor.
type Loads struct {
	Deck         measure.Number
	Whole        bool
	People       int
	Said, Stands bool
	Floor        safety.FloorLoad
	Over         measure.Number
	Boards       measure.Area
}

// checking holds a platform against what it has to be.
type checking struct {
	*Safety
	*safety.Job
}

// checkPlatform is every check of which there is something to say. A hop-up has no
// rails and no base to tip over.
func (s *Safety) checkPlatform() {
	c := checking{s, &s.Facts}
	low := c.Deck.Kind == safety.HopUp
	if c.Gear.Kind != "" {
		c.put(OfKind, shortUnless(c.Gear.Kind.Carries(c.Deck.Kind)))
	}
	if !low {
		c.base()
		c.railing()
		c.toeBoards()
		if have := c.DeckWidth(); have > 0 {
			c.put(OfDeckWidth, shortUnless(have >= safety.DeckWidthWanted(c.Country)))
		}
	}
	c.load(low)
	c.floor()
}

func (c *checking) put(of CheckOf, verdict Verdict) {
	c.Checks = append(c.Checks, Check{Of: of, Verdict: verdict})
}

func shortUnless(fits bool) Verdict {
	if fits {
		return Fits
	}
	return FallsShort
}

// base holds the shorter side of what it stands on against its height.
func (c *checking) base() {
	have, check := c.LeastBase(), Check{Of: OfBase, Verdict: Fits}
	switch {
	case c.Gear.Tied == safety.Yes:
		check.By = ByTie
	case have > 0 && have < c.Deck.Base && c.TableAllows():
		check.By = ByTable
	case have <= 0:
		check.Verdict = NotKnown
	default:
		check.Verdict = shortUnless(have >= c.Deck.Base)
	}
	c.Checks = append(c.Checks, check)
}

// railing is whether there are rails, how high, and the gap between them.
func (c *checking) railing() {
	switch c.Rails {
	case safety.No:
		c.put(OfRails, FallsShort)
		return
	case safety.Yes:
		c.put(OfRails, Fits)
	default:
		c.put(OfRails, NotKnown)
	}
	least, most, gap := safety.RailsWanted(c.Country)
	if have := c.Gear.RailHeight; have > 0 {
		c.put(OfTopRail, shortUnless(have >= least && (most <= 0 || have <= most)))
	}
	if have := c.Gear.RailGap; have > 0 && gap > 0 {
		c.put(OfRailGap, shortUnless(have <= gap))
	}
}

// toeBoards are wanted where others pass below, or may.
func (c *checking) toeBoards() {
	switch {
	case c.Building.Below == safety.No:
	case c.Gear.ToeBoards == "":
		c.put(OfToeBoards, NotKnown)
	default:
		c.put(OfToeBoards, shortUnless(c.Gear.ToeBoards == safety.Yes))
	}
}

// load is what the deck carries against what it may.
func (c *checking) load(low bool) {
	g, l := &c.Gear, &c.Loads
	l.Deck, l.Whole = c.DeckLoad()
	l.People, l.Said = c.People()
	switch {
	case !c.IsLoadGiven():
		if !low {
			c.put(OfDeckLoad, NotKnown)
		}
	case !g.Rated.Known:
		c.put(OfDeckLoad, NotKnown)
	case l.Deck.Cmp(g.Rated.Value) > 0:
		l.Over = l.Deck.Sub(g.Rated.Value)
		c.put(OfDeckLoad, FallsShort)
	case !l.Whole:
		c.put(OfDeckLoad, NotKnown)
	default:
		c.put(OfDeckLoad, Fits)
	}
}

// IsLoadGiven tells whether anything is known of the load on the deck.
func (s *Safety) IsLoadGiven() bool {
	g := &s.Facts.Gear
	return g.OnDeck != 0 || g.Load.Known || g.Rated.Known
}

// floor is what the platform puts on the floor against what that may carry.
func (c *checking) floor() {
	may, l := c.Building.FloorLoad, &c.Loads
	l.Floor, l.Stands = c.FloorLoad()
	switch {
	case !l.Stands && !may.Known && !c.Gear.Mass.Known:
	case !l.Stands, !may.Known:
		c.put(OfFloorLoad, NotKnown)
	case l.Floor.Spread.Cmp(may.Value) > 0:
		l.Boards = measure.Area{SquareMetres: l.Floor.Whole.Quo(may.Value)}
		c.put(OfFloorLoad, FallsShort)
	case l.Floor.AtLeast:
		c.put(OfFloorLoad, NotKnown)
	default:
		c.put(OfFloorLoad, Fits)
	}
}
