package tell

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
)

// The verdicts of a check.
const (
	verdictOK      = "ok"
	verdictShort   = "short"
	verdictUnknown = "unknown"
)

// notSaid stands for what the plan does not say.
const notSaid = "not said"

// checked is one platform held against what it has to be.
type checked struct {
	*builder
	job  *safety.Job
	deck *safety.Deck
	kind safety.Kind // asked for
}

func (c *checked) put(what, have, need, verdict, text string) {
	c.Sheet.Platform.Checks = append(c.Sheet.Platform.Checks, sheet.PlatformCheck{What: what, Have: have, Need: need, Verdict: verdict, Text: text})
}

// all is every check of which there is something to say. A hop-up has no rails and
// no base to tip over.
func (c *checked) all() {
	c.isHighEnough()
	if c.kind != safety.HopUp {
		c.base()
		c.rails()
		c.toeBoards()
	}
	c.width()
	c.load()
	c.floor()
}

// isHighEnough holds the kind that is chosen against the height.
func (c *checked) isHighEnough() {
	have := c.job.Gear.Kind
	if have == "" {
		return
	}
	need := "deck at " + c.deckText(c.deck.Best, nearest)
	if have.Carries(c.kind) {
		c.put("Kind", kindName(have, c.job.Country), need, verdictOK, "")
		return
	}
	c.put("Kind", kindName(have, c.job.Country), need, verdictShort, "At that height ask for "+article(c.kind, c.job.Country)+".")
}

// base holds the shorter side of what it stands on against its height.
func (c *checked) base() {
	ratio := safety.BaseRatio(c.job.Country)
	need, have := c.deck.Base(ratio), c.job.LeastBase()
	wants := "at least " + c.atLeast(need)
	switch {
	case c.job.Gear.Tied == safety.Yes:
		c.put("Base, shorter side", c.lengthOr(have), wants, verdictOK, "It is tied to the building, so it need not stand by its own width.")
	case have > 0 && have < need && c.job.TableAllows():
		c.put("Base, shorter side", c.Notation.Length(have), "as the maker's table", verdictOK, "The maker's table allows this height on it.")
	case have <= 0:
		c.put("Base, shorter side", notSaid, wants, verdictUnknown, "Fill in what it takes on the floor, outriggers included.")
	case have < need:
		c.put("Base, shorter side", c.Notation.Length(have), wants, verdictShort, "Outriggers have to make it "+c.Notation.AtLeast(need-have)+" wider, half of that on each side. Else tie it, or take a wider one.")
	default:
		c.put("Base, shorter side", c.Notation.Length(have), wants, verdictOK, "")
	}
}

// rails are whether there are any, how high, and the gap between them.
func (c *checked) rails() {
	g := &c.job.Gear
	switch c.job.Rails {
	case safety.No:
		c.put("Rails", "none", "on all open sides", verdictShort, "Looking up, nobody sees the edge.")
		return
	case safety.Yes:
		c.put("Rails", "on all open sides", "on all open sides", verdictOK, "")
	default:
		c.put("Rails", notSaid, "on all open sides", verdictUnknown, "")
	}
	least, most, gap := safety.RailsWanted(c.job.Country)
	if g.RailHeight > 0 {
		need, verdict := "at least "+c.limit(g.RailHeight, least, upwards), verdictOK
		if most > 0 {
			need = c.limit(g.RailHeight, least, upwards) + " to " + c.limit(g.RailHeight, most, downwards)
		}
		if g.RailHeight < least || most > 0 && g.RailHeight > most {
			verdict = verdictShort
		}
		c.put("Top rail", c.Notation.Length(g.RailHeight), need, verdict, "")
	}
	if g.RailGap > 0 && gap > 0 {
		verdict := verdictOK
		if g.RailGap > gap {
			verdict = verdictShort
		}
		c.put("Gap between rails", c.Notation.Length(g.RailGap), "at most "+c.limit(g.RailGap, gap, downwards), verdict, "")
	}
}

// toeBoards are wanted where others pass below, or may.
func (c *checked) toeBoards() {
	if c.job.Building.Below == safety.No {
		return
	}
	have, verdict := notSaid, verdictUnknown
	switch c.job.Gear.ToeBoards {
	case safety.Yes:
		have, verdict = "yes", verdictOK
	case safety.No:
		have, verdict = "no", verdictShort
	}
	text := ""
	if c.job.Building.Below == "" {
		text = "Say so if nobody passes below."
	}
	c.put("Toe boards", have, "where others pass below", verdict, text)
}

// width is the deck's, where it is known.
func (c *checked) width() {
	have, need := min(c.job.Gear.DeckLength, c.job.Gear.DeckWidth), safety.DeckWidthWanted(c.job.Country)
	if have <= 0 || c.kind == safety.HopUp {
		return
	}
	verdict := verdictOK
	if have < need {
		verdict = verdictShort
	}
	c.put("Deck, narrower side", c.Notation.Length(have), "at least "+c.limit(have, need, upwards), verdict, "")
}

// limit is a length that something is held against. One of the other system is
// said in whole steps towards safety, unless what is there lies between the two:
// then to the mark.
func (c *checked) limit(have, limit measure.Length, round func(l, step measure.Length) measure.Length) string {
	whole := round(limit, c.limitStep())
	if min(limit, whole) <= have && have <= max(limit, whole) {
		return c.Notation.Length(limit)
	}
	return c.Notation.Length(whole)
}

const loadSource = "A person with clothes and tools, 250 lb or 113.4 kg: the old 29 CFR 1910.29(a)(2)(ii), since superseded. The rest is arithmetic."

// load is what the deck carries against what it may.
func (c *checked) load() {
	g := &c.job.Gear
	load, whole := c.job.DeckLoad()
	if g.OnDeck == 0 && !g.Load.Known && !g.Rated.Known {
		if c.kind != safety.HopUp {
			c.put("Load on the deck", notSaid, "within its rating", verdictUnknown, "Fill in how many stand on it, what else is on it, and what its label says it may carry.")
		}
		return
	}
	people, said := c.job.People()
	sum := c.Notation.Number(measure.NumberFromInt(int64(people)), 0) + " × " + c.mass(safety.PersonMass())
	if g.Load.Known {
		sum += " + " + c.mass(g.Load.Value)
	}
	c.weight("platform.load", "load on the deck"+atLeast(!whole), load,
		"People with clothes and tools, and the tools and materials as far as they are known.", sum, loadSource)
	missing := ""
	switch {
	case !said && !g.Load.Known:
		missing = "Fill in how many stand on it and what else is on it; " + page.Plural(int64(people), "person", "people") + " and nothing else counted."
	case !said:
		missing = "Fill in how many stand on it; " + page.Plural(int64(people), "person", "people") + " counted."
	case !g.Load.Known:
		missing = "Fill in what tools and materials weigh; none counted."
	}
	switch {
	case !g.Rated.Known:
		c.put("Load on the deck", c.mass(load), notSaid, verdictUnknown, "Fill in what its label says it may carry. "+missing)
	case load.Cmp(g.Rated.Value) > 0:
		c.put("Load on the deck", c.mass(load), "at most "+c.mass(g.Rated.Value), verdictShort, "Too much by "+c.mass(load.Sub(g.Rated.Value))+": fewer people, or less on the deck.")
	case !whole:
		c.put("Load on the deck", c.mass(load)+" or more", "at most "+c.mass(g.Rated.Value), verdictUnknown, missing)
	default:
		c.put("Load on the deck", c.mass(load), "at most "+c.mass(g.Rated.Value), verdictOK, "")
	}
}

func atLeast(is bool) string {
	if is {
		return ", at least"
	}
	return ""
}

// floor is what the platform puts on the floor against what that may carry.
func (c *checked) floor() {
	g := &c.job.Gear
	if g.FootLength > 0 && g.FootWidth > 0 {
		c.Area(page.Safety, "platform.foot", "floor it stands on", measure.AreaOf(g.FootLength, g.FootWidth), "Length times width, outriggers included.",
			c.builder.Put(g.FootLength)+" × "+c.builder.Put(g.FootWidth), page.OfArithmetic)
	}
	load, ok := c.job.FloorLoad()
	may := c.job.Building.FloorLoad
	if !ok {
		if may.Known || g.Mass.Known {
			c.put("Load on the floor", notSaid, c.mayCarry(may), verdictUnknown, c.floorMissing())
		}
		return
	}
	c.weight("platform.floor", "load on the floor"+atLeast(load.AtLeast), load.Spread,
		"The platform and all on it, over the area it stands on. A screening figure: it is taken as spread evenly.",
		"("+c.mass(g.Mass.Value)+" + "+c.mass(load.Whole.Sub(g.Mass.Value))+") ÷ "+c.Notation.Area(measure.AreaOf(g.FootLength, g.FootWidth)), "Derived here. What a floor carries, its engineer says.")
	have := c.spreadText(load.Spread, c.Notation)
	leg := "Under each of four wheels or legs about " + c.mass(load.Leg) + "."
	switch {
	case !may.Known:
		c.put("Load on the floor", have, notSaid, verdictUnknown, "Ask what the floor may carry. "+leg)
	case load.Spread.Cmp(may.Value) > 0:
		c.put("Load on the floor", have, c.mayCarry(may), verdictShort, leg+" As a screening figure, boards have to spread it over "+c.Notation.Area(measure.Area{SquareMetres: load.Whole.Quo(may.Value)})+" in all.")
	case load.AtLeast:
		c.put("Load on the floor", have+" or more", c.mayCarry(may), verdictUnknown, leg+" Fill in who and what is on the deck.")
	default:
		c.put("Load on the floor", have, c.mayCarry(may), verdictOK, leg)
	}
}

func (c *checked) mayCarry(may safety.Fact) string {
	if !may.Known {
		return notSaid
	}
	return "at most " + c.spreadText(may.Value, c.Notation)
}

func (c *checked) floorMissing() string {
	g := &c.job.Gear
	switch {
	case !g.Mass.Known && (g.FootLength == 0 || g.FootWidth == 0):
		return "Fill in what the platform weighs and what it takes on the floor."
	case !g.Mass.Known:
		return "Fill in what the platform weighs."
	}
	return "Fill in what it takes on the floor."
}

// weight is a figure in kilograms, or kilograms a square metre.
func (c *checked) weight(id, label string, kilograms measure.Number, rule, sum, source string) {
	unit, text, other := "kg", c.mass(kilograms), c.massIn(c.Other, kilograms)
	if id == "platform.floor" {
		unit, text, other = "kg/m2", c.spreadText(kilograms, c.Notation), c.spreadText(kilograms, c.Other)
	}
	c.Figure(sheet.Figure{ID: id, Block: page.Safety, Label: label, Value: page.Plain(kilograms), Unit: unit, Text: text, Other: other,
		Working: sheet.Working{Rule: rule, Sum: sum + " = " + text, Source: source}})
}

// spreadText is kilograms a square metre as a notation has them.
func (b *builder) spreadText(n measure.Number, notation measure.Notation) string {
	if notation.System == measure.FeetInches {
		return notation.Number(n.Mul(measure.SquareFoot).Quo(measure.Pound), 0) + " lb/ft²"
	}
	return notation.Number(n, 0) + " kg/m²"
}

func (c *checked) lengthOr(l measure.Length) string {
	if l <= 0 {
		return notSaid
	}
	return c.Notation.Length(l)
}
