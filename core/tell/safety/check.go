package safety

import (
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// notSaid stands for what the plan does not say.
func notSaid() words.Text { return words.Say("not said") }

// line is a line of what is held against what it has to be.
type line struct{ what, have, need, text words.Text }

// check puts one check on the sheet, with the figures it goes by.
func (t *teller) check(c *hazards.Check) {
	l := t.line(c)
	t.Sheet.Platform.Checks = append(t.Sheet.Platform.Checks, sheet.PlatformCheck{
		What: t.Told(l.what), Have: t.Told(l.have), Need: t.Told(l.need), Verdict: string(c.Verdict), Text: t.Told(l.text)})
}

func (t *teller) line(c *hazards.Check) line {
	g := &t.facts.Gear
	least, most, gap := safety.RailsWanted(t.facts.Country)
	switch c.Of {
	case hazards.OfKind:
		return t.kindLine(c.Verdict)
	case hazards.OfBase:
		return t.baseLine(c)
	case hazards.OfRails:
		return railsLine(c.Verdict)
	case hazards.OfTopRail:
		l := line{what: words.Say("Top rail"), have: length(g.RailHeight), need: words.Say("at least {least}", safety.Limit("least", least, g.RailHeight, safety.ToLeast))}
		if most > 0 {
			l.need = words.Say("{least} to {most}", safety.Limit("least", least, g.RailHeight, safety.ToLeast), safety.Limit("most", most, g.RailHeight, safety.ToMost))
		}
		return l
	case hazards.OfRailGap:
		return line{what: words.Say("Gap between rails"), have: length(g.RailGap), need: words.Say("at most {most}", safety.Limit("most", gap, g.RailGap, safety.ToMost))}
	case hazards.OfToeBoards:
		return t.toeBoards()
	case hazards.OfDeckWidth:
		have := t.facts.DeckWidth()
		return line{what: words.Say("Deck, narrower side"), have: length(have),
			need: words.Say("at least {least}", safety.Limit("least", safety.DeckWidthWanted(t.facts.Country), have, safety.ToLeast))}
	case hazards.OfDeckLoad:
		return t.deckLoad(c.Verdict)
	}
	return t.floorLoad(c.Verdict)
}

func length(l measure.Length) words.Text { return words.Say("{length}", words.Length("length", l)) }

// kindLine holds the kind that is chosen against the height.
func (t *teller) kindLine(verdict hazards.Verdict) line {
	l := line{what: words.Say("Kind"), have: kindName(t.facts.Gear.Kind), need: words.Say("deck at {height}", safety.Stepped("height", t.deck.Best, safety.ToNearest))}
	if verdict != hazards.Fits {
		l.text = words.Say("At that height ask for {kind}.", words.Of("kind", asked(t.deck.Kind)))
	}
	return l
}

// baseLine holds the shorter side of what it stands on against its height.
func (t *teller) baseLine(c *hazards.Check) line {
	have := t.facts.LeastBase()
	l := line{what: words.Say("Base, shorter side"), have: length(have), need: words.Say("at least {least}", safety.Stepped("least", t.deck.Base, safety.ToLeast))}
	if have <= 0 {
		l.have = notSaid()
	}
	switch {
	case c.By == hazards.ByTie:
		l.text = words.Say("It is tied to the building, so it need not stand by its own width.")
	case c.By == hazards.ByTable:
		l.need, l.text = words.Say("as the maker's table"), words.Say("The maker's table allows this height on it.")
	case c.Verdict == hazards.NotKnown:
		l.text = words.Say("Fill in what it takes on the floor, outriggers included.")
	case c.Verdict == hazards.FallsShort:
		l.text = words.Say("Outriggers have to make it {more} wider, half of that on each side. Else tie it, or take a wider one.", words.AtLeast("more", t.deck.Base-have))
	}
	return l
}

func railsLine(verdict hazards.Verdict) line {
	l := line{what: words.Say("Rails"), need: words.Say("on all open sides"), have: notSaid()}
	switch verdict {
	case hazards.FallsShort:
		l.have, l.text = words.Say("none"), words.Say("Looking up, nobody sees the edge.")
	case hazards.Fits:
		l.have = l.need
	}
	return l
}

func (t *teller) toeBoards() line {
	l := line{what: words.Say("Toe boards"), need: words.Say("where others pass below"), have: notSaid()}
	switch t.facts.Gear.ToeBoards {
	case safety.Yes:
		l.have = words.Say("yes")
	case safety.No:
		l.have = words.Say("no")
	}
	if t.facts.Building.Below == "" {
		l.text = words.Say("Say so if nobody passes below.")
	}
	return l
}

// deckLoad is what the deck carries against what it may.
func (t *teller) deckLoad(verdict hazards.Verdict) line {
	rated, l := t.facts.Gear.Rated, &t.Safety.Loads
	out := line{what: words.Say("Load on the deck"), have: notSaid(), need: words.Say("within its rating")}
	if !t.Safety.IsLoadGiven() {
		out.text = words.Say("Fill in how many stand on it, what else is on it, and what its label says it may carry.")
		return out
	}
	t.deckFigure()
	out.have, out.need = words.Say("{mass}", safety.Mass("mass", l.Deck)), words.Say("at most {mass}", safety.Mass("mass", rated.Value))
	switch {
	case !rated.Known:
		out.need, out.text = notSaid(), words.Sentences(words.Say("Fill in what its label says it may carry."), t.loadMissing())
	case verdict == hazards.FallsShort:
		out.text = words.Say("Too much by {mass}: fewer people, or less on the deck.", safety.Mass("mass", l.Over))
	case verdict == hazards.NotKnown:
		out.have, out.text = words.Say("{mass} or more", safety.Mass("mass", l.Deck)), t.loadMissing()
	}
	return out
}

func (t *teller) deckFigure() {
	load, l := t.facts.Gear.Load, &t.Safety.Loads
	label := t.Say("load on the deck")
	if !l.Whole {
		label = t.Say("load on the deck, at least")
	}
	sum := t.Notation.Number(measure.NumberFromInt(int64(l.People)), 0) + " × " + t.mass(safety.PersonMass())
	if load.Known {
		sum += " + " + t.mass(load.Value)
	}
	text := t.mass(l.Deck)
	t.Figure(sheet.Figure{ID: "platform.load", Block: page.Safety, Label: label, Value: page.Plain(l.Deck), Unit: "kg", Text: text, Other: safety.MassIn(t.Other, l.Deck),
		Working: sheet.Working{Rule: t.Say("People with clothes and tools, and the tools and materials as far as they are known."), Sum: sum + " = " + text,
			Source: t.Say("A person with clothes and tools, 250 lb or 113.4 kg: the old 29 CFR 1910.29(a)(2)(ii), since superseded. The rest is arithmetic.")}})
}

func (t *teller) mass(kilograms measure.Number) string { return safety.MassIn(t.Notation, kilograms) }

// loadMissing is what is not known of the load.
func (t *teller) loadMissing() words.Text {
	l, n := &t.Safety.Loads, words.Count("n", t.Safety.Loads.People)
	switch known := t.facts.Gear.Load.Known; {
	case !l.Said && !known:
		return words.Say("Fill in how many stand on it and what else is on it; {n|person|people} and nothing else counted.", n)
	case !l.Said:
		return words.Say("Fill in how many stand on it; {n|person|people} counted.", n)
	case !known:
		return words.Say("Fill in what tools and materials weigh; none counted.")
	}
	return words.Text{}
}

// floorLoad is what the platform puts on the floor against what that may carry.
func (t *teller) floorLoad(verdict hazards.Verdict) line {
	may, l := t.facts.Building.FloorLoad, &t.Safety.Loads
	out := line{what: words.Say("Load on the floor"), have: words.Say("{spread}", words.Of("spread", spread(l.Floor.Spread))), need: notSaid()}
	if may.Known {
		out.need = words.Say("at most {spread}", words.Of("spread", spread(may.Value)))
	}
	if !l.Stands {
		out.have, out.text = notSaid(), t.floorMissing()
		return out
	}
	leg := words.Say("Under each of four wheels or legs about {mass}.", safety.Mass("mass", l.Floor.Leg))
	out.text = leg
	switch {
	case !may.Known:
		out.text = words.Sentences(words.Say("Ask what the floor may carry."), leg)
	case verdict == hazards.FallsShort:
		out.text = words.Sentences(leg, words.Say("As a screening figure, boards have to spread it over {area} in all.", words.Area("area", l.Boards)))
	case verdict == hazards.NotKnown:
		out.have = words.Say("{spread} or more", words.Of("spread", spread(l.Floor.Spread)))
		out.text = words.Sentences(leg, words.Say("Fill in who and what is on the deck."))
	}
	return out
}

// floorFigures are what it stands on, and what it puts on that.
func (t *teller) floorFigures() {
	g, l := &t.facts.Gear, &t.Safety.Loads
	if g.FootLength <= 0 || g.FootWidth <= 0 {
		return
	}
	foot := measure.AreaOf(g.FootLength, g.FootWidth)
	t.Area(page.Safety, "platform.foot", t.Say("floor it stands on"), foot, t.Say("Length times width, outriggers included."),
		t.Put(g.FootLength)+" × "+t.Put(g.FootWidth), t.Arithmetic())
	if !l.Stands {
		return
	}
	label := t.Say("load on the floor")
	if l.Floor.AtLeast {
		label = t.Say("load on the floor, at least")
	}
	text, other := t.Style(), t.Style()
	other.Notation = t.Other
	said := spread(l.Floor.Spread).In(text)
	t.Figure(sheet.Figure{ID: "platform.floor", Block: page.Safety, Label: label, Value: page.Plain(l.Floor.Spread), Unit: "kg/m2", Text: said, Other: spread(l.Floor.Spread).In(other),
		Working: sheet.Working{Rule: t.Say("The platform and all on it, over the area it stands on. A screening figure: it is taken as spread evenly."),
			Sum:    "(" + t.mass(g.Mass.Value) + " + " + t.mass(l.Floor.Whole.Sub(g.Mass.Value)) + ") ÷ " + t.Notation.Area(foot) + " = " + said,
			Source: t.Say("Derived here. What a floor carries, its engineer says.")}})
}

func (t *teller) floorMissing() words.Text {
	g := &t.facts.Gear
	switch {
	case !g.Mass.Known && (g.FootLength == 0 || g.FootWidth == 0):
		return words.Say("Fill in what the platform weighs and what it takes on the floor.")
	case !g.Mass.Known:
		return words.Say("Fill in what the platform weighs.")
	}
	return words.Say("Fill in what it takes on the floor.")
}

// spread is kilograms a square metre.
type spread measure.Number

// In is the load as a notation has it.
func (n spread) In(s words.Style) string {
	if kilograms := measure.Number(n); s.Notation.System == measure.FeetInches {
		return s.Notation.Number(kilograms.Mul(measure.SquareFoot).Quo(measure.Pound), 0) + " lb/ft²"
	}
	return s.Notation.Number(measure.Number(n), 0) + " kg/m²"
}
