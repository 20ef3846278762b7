package safety

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/safety"
	"ceilingwright/core/words"
)

// kindName is a kind of platform in words.
func kindName(k safety.Kind) words.Text {
	switch k {
	case safety.HopUp:
		return words.Say("{~hop-up} or low deck")
	case safety.Podium:
		return words.Say("podium or steps platform")
	case safety.Tower:
		return words.Say("mobile tower")
	case safety.Scaffold:
		return words.Say("scaffold over the room")
	}
	return words.Say("the floor")
}

// asked is a kind as something to ask for.
func asked(k safety.Kind) words.Text {
	switch k {
	case safety.HopUp:
		return words.Say("a {~hop-up} or low deck")
	case safety.Podium:
		return words.Say("a podium or steps platform")
	case safety.Tower:
		return words.Say("a mobile tower")
	}
	return words.Say("a scaffold over the room")
}

// ask says what to work from, why, and why not from something else, and for how long
// it is needed.
func (t *teller) ask() {
	p := &t.Sheet.Platform
	p.Kind = string(t.deck.Kind)
	switch t.deck.Kind {
	case safety.OnFloor:
		p.Text = t.Say("Work from the floor: the ceiling is in easy reach.")
		p.Why = t.Say("The ceiling is at {ceiling}. Who is {tall} tall reaches it with bent elbows or nearly so.",
			words.Length("ceiling", t.facts.CeilingHeight), words.Length("tall", t.deck.Tallest))
		return
	case "":
	default:
		p.Text, p.Why, p.Refused = t.Told(t.askFor()), t.Told(words.Sentences(words.Say("The ceiling is at {ceiling}.", words.Length("ceiling", t.facts.CeilingHeight)), t.whyHeight(), t.whyKind())), t.refused()
	}
	t.hire()
}

// askFor is what to ask for.
func (t *teller) askFor() words.Text {
	d, step := t.deck, safety.Step(t.Notation)
	// In whole steps the two may leave nothing between them.
	set := d.Shared && safety.ToLeast.Of(d.Least, step) < safety.ToMost.Of(d.Most, step)
	height, top := safety.Stepped("height", d.Best, safety.ToNearest), safety.Stepped("top", d.Total(), safety.ToLeast)
	least, most := safety.Stepped("least", d.Least, safety.ToLeast), safety.Stepped("most", d.Most, safety.ToMost)
	kind, base := words.Of("kind", asked(d.Kind)), safety.Stepped("base", d.Base, safety.ToLeast)
	var text words.Text
	switch {
	case d.Kind == safety.HopUp && set:
		return words.Say("Ask for {kind} with its deck about {height} above the floor, to be set between {least} and {most}, wide enough for two feet and a step to the side.", kind, height, least, most)
	case d.Kind == safety.HopUp:
		return words.Say("Ask for {kind} with its deck about {height} above the floor, wide enough for two feet and a step to the side.", kind, height)
	case d.Kind == safety.Scaffold && set:
		return words.Say("Have a scaffold designed and built over the room, its deck about {height} above the floor, to be set between {least} and {most}, with rails on all open sides: {top} to the top of them.", height, least, most, top)
	case d.Kind == safety.Scaffold:
		return words.Say("Have a scaffold designed and built over the room, its deck about {height} above the floor, with rails on all open sides: {top} to the top of them.", height, top)
	case set:
		text = words.Say("Ask for {kind} with its deck about {height} above the floor, to be set between {least} and {most}, with rails on all open sides: {top} to the top of them, and at least {base} on the shorter side of what it stands on, outriggers included.", kind, height, least, most, top, base)
	default:
		text = words.Say("Ask for {kind} with its deck about {height} above the floor, with rails on all open sides: {top} to the top of them, and at least {base} on the shorter side of what it stands on, outriggers included.", kind, height, top, base)
	}
	if t.facts.Building.Below != safety.No {
		text = words.Sentences(text, words.Say("Toe boards too, where others may pass below."))
	}
	if d.Kind == safety.Tower {
		text = words.Sentences(text, words.Say("A tower is climbed inside, and its wheels lock."))
	}
	return text
}

// whyHeight is why the deck is so high.
func (t *teller) whyHeight() words.Text {
	d := t.deck
	reach := words.Length("reach", t.facts.CeilingHeight-d.Best)
	switch {
	case d.Tried:
		return words.Say("The hands work in comfort up to {reach}, as was tried out.", reach)
	case d.Assumed:
		return words.Say("A fitter taken as {tall} tall works best with {reach} from deck to ceiling: head clear, elbows bent, the tool flat.", words.Length("tall", d.Tallest), reach)
	case !d.Shared:
		return words.Say("The fitters differ too much in height for one deck: the shortest could not reach from where the tallest has head room. Take two heights, or let people of like height work together.")
	}
	return words.Say("With {reach} from deck to ceiling the head is clear, the elbows are bent and the tool lies flat.", reach)
}

// whyKind is why it is of that kind.
func (t *teller) whyKind() words.Text {
	switch t.deck.Kind {
	case safety.HopUp:
		return words.Say("Up to {low} a low deck does it (common practice).", safety.Stepped("low", safety.LowDeckUpTo, safety.ToNearest))
	case safety.Podium:
		return words.Say("Above {low} one step back while looking up is a fall, so it has rails; up to {podium} a podium carries that far (common practice).", safety.Stepped("low", safety.LowDeckUpTo, safety.ToNearest), safety.Stepped("podium", safety.PodiumUpTo, safety.ToNearest))
	case safety.Tower:
		return words.Say("That is above the {podium} up to which podiums go (common practice), so it is a tower.", safety.Stepped("podium", safety.PodiumUpTo, safety.ToNearest))
	}
	return words.Say("That is above {tower}, where the standard for mobile towers ends indoors (EN 1004-1, scope).", safety.Stepped("tower", safety.TowerUpTo, safety.ToNearest))
}

// refused says why not from the floor, a ladder, or the kinds next to the one asked
// for.
func (t *teller) refused() []string {
	list := []string{t.noLadder(), t.noFloor()}
	switch t.deck.Kind {
	case safety.Podium:
		list = append(list, t.Say("Not a {~hop-up}: it has no rails, and {height} is above the {low} of a low deck.", safety.Stepped("height", t.deck.Best, safety.ToNearest), safety.Stepped("low", safety.LowDeckUpTo, safety.ToNearest)),
			t.Say("Not a tower: at this height it is more to build and to move, and no safer for it."), t.noScaffold())
	case safety.Tower:
		list = append(list, t.Say("Not a podium: they end at about {podium}.", safety.Stepped("podium", safety.PodiumUpTo, safety.ToNearest)), t.noScaffold())
	case safety.Scaffold:
		list = append(list, t.Say("Not a mobile tower: its standard ends at {tower} indoors.", safety.Stepped("tower", safety.TowerUpTo, safety.ToNearest)))
	}
	return list
}

// noLadder is the answer to a ladder, by the numbers of this job.
func (t *teller) noLadder() string {
	const why = "Not a ladder: both hands are on the panel and none holds on, there are no rails, and the jerk when a panel lets go can throw you."
	panel := words.Of("panel", days.Lasting(t.deck.Panel))
	worst := hazards.WorstDay(t.Safety.Overhead)
	switch {
	case worst == nil && t.deck.Rated:
		return t.Say(why+" One panel takes {panel}, as planned.", panel)
	case worst == nil:
		return t.Say(why+" One panel takes {panel}, as usual.", panel)
	case t.deck.Rated:
		return t.Say(why+" One panel takes {panel}, as planned, and on the worst day the hands are up for {hands}.", panel, words.Of("hands", days.Lasting(worst.One)))
	}
	return t.Say(why+" One panel takes {panel}, as usual, and on the worst day the hands are up for {hands}.", panel, words.Of("hands", days.Lasting(worst.One)))
}

func (t *teller) noFloor() string {
	return t.Say("Not from the floor: an easy reach is {reach}, and the ceiling is {above} above it.",
		words.Length("reach", t.deck.Reach), words.Length("above", t.facts.CeilingHeight-t.deck.Reach))
}

// noScaffold says what a scaffold over the whole room would change.
func (t *teller) noScaffold() string {
	if n := t.Standing.Clashes; n > 0 {
		return t.Say("A scaffold over the whole room is not needed for this height, but it would bridge what is in the way at {n|platform position|platform positions}.", words.Count("n", n))
	}
	if n := t.Hanging.Moves(); n > 0 {
		return t.Say("A scaffold over the whole room is not needed for this height; it would save {n|move|moves} of the platform.", words.Count("n", n))
	}
	return t.Say("A scaffold over the whole room is not needed for this height.")
}
