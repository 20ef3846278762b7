package tell

import (
	"strconv"

	"ceilingwright/core/days"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/tell/page"
)

// kindName is a kind of platform in words, article the same as something to ask
// for.
func kindName(k safety.Kind, country safety.Country) string {
	switch k {
	case safety.HopUp:
		return country.Says("hop-up") + " or low deck"
	case safety.Podium:
		return "podium or steps platform"
	case safety.Tower:
		return "mobile tower"
	case safety.Scaffold:
		return "scaffold over the room"
	}
	return "the floor"
}

func article(k safety.Kind, country safety.Country) string { return "a " + kindName(k, country) }

// deckText is a height of deck in whole steps.
func (b *builder) deckText(l measure.Length, round func(l, step measure.Length) measure.Length) string {
	return b.Notation.Length(round(l, b.step()))
}

func (b *builder) step() measure.Length {
	if b.Notation.System == measure.Metric {
		return metricStep
	}
	return inchStep
}

// limitStep is the step in which a limit of the other system is said: a rail is
// measured to a centimetre or an inch.
func (b *builder) limitStep() measure.Length {
	if b.Notation.System == measure.Metric {
		return 10 * measure.Millimetre
	}
	return measure.Inch
}

// atLeast is a length rounded up to a whole step.
func (b *builder) atLeast(l measure.Length) string { return b.deckText(l, upwards) }

// ask says what to work from, why, and why not from something else.
func (b *builder) ask(job *safety.Job, deck *safety.Deck, kind safety.Kind) {
	p := &b.Sheet.Platform
	p.Kind, p.Text, p.Why = string(kind), b.askText(job, deck, kind), b.whyText(job, deck, kind)
	if kind != safety.OnFloor {
		p.Refused = b.refused(job, deck, kind)
	}
}

func (b *builder) askText(job *safety.Job, deck *safety.Deck, kind safety.Kind) string {
	height := b.deckText(deck.Best, nearest)
	if kind == safety.OnFloor {
		return "Work from the floor: the ceiling is in easy reach."
	}
	text := "Ask for " + article(kind, job.Country) + " with its deck about " + height + " above the floor"
	if kind == safety.Scaffold {
		text = "Have a scaffold designed and built over the room, its deck about " + height + " above the floor"
	}
	// In whole steps the two may leave nothing between them.
	if least, most := upwards(deck.Least, b.step()), downwards(deck.Most, b.step()); deck.Shared && least < most {
		text += ", to be set between " + b.Notation.Length(least) + " and " + b.Notation.Length(most)
	}
	if kind == safety.HopUp {
		return text + ", wide enough for two feet and a step to the side."
	}
	text += ", with rails on all open sides: " + b.atLeast(deck.Total()) + " to the top of them"
	if kind == safety.Scaffold {
		return text + "."
	}
	text += ", and at least " + b.atLeast(deck.Base(safety.BaseRatio(job.Country))) + " on the shorter side of what it stands on, outriggers included."
	if job.Building.Below != safety.No {
		text += " Toe boards too, where others may pass below."
	}
	if kind == safety.Tower {
		text += " A tower is climbed inside, and its wheels lock."
	}
	return text
}

func (b *builder) whyText(job *safety.Job, deck *safety.Deck, kind safety.Kind) string {
	text := "The ceiling is at " + b.Notation.Length(job.CeilingHeight) + ". "
	_, tallest := staturesOf(job, deck)
	reach := b.Notation.Length(job.CeilingHeight - deck.Best)
	switch {
	case kind == safety.OnFloor:
		return text + "Who is " + b.Notation.Length(tallest) + " tall reaches it with bent elbows or nearly so."
	case deck.Tried:
		text += "The hands work in comfort up to " + reach + ", as was tried out."
	case deck.Assumed:
		text += "A fitter taken as " + b.Notation.Length(tallest) + " tall works best with " + reach + " from deck to ceiling: head clear, elbows bent, the tool flat."
	case !deck.Shared:
		text += "The fitters differ too much in height for one deck: the shortest could not reach from where the tallest has head room. Take two heights, or let people of like height work together."
	default:
		text += "With " + reach + " from deck to ceiling the head is clear, the elbows are bent and the tool lies flat."
	}
	switch kind {
	case safety.HopUp:
		return text + " Up to " + b.deckText(safety.LowDeckUpTo, nearest) + " a low deck does it (common practice)."
	case safety.Podium:
		return text + " Above " + b.deckText(safety.LowDeckUpTo, nearest) + " one step back while looking up is a fall, so it has rails; up to " + b.deckText(safety.PodiumUpTo, nearest) + " a podium carries that far (common practice)."
	case safety.Tower:
		return text + " That is above the " + b.deckText(safety.PodiumUpTo, nearest) + " up to which podiums go (common practice), so it is a tower."
	}
	return text + " That is above " + b.deckText(safety.TowerUpTo, nearest) + ", where the standard for mobile towers ends indoors (EN 1004-1, scope)."
}

// refused says why not from the floor, a ladder, or the kinds next to the one asked
// for.
func (b *builder) refused(job *safety.Job, deck *safety.Deck, kind safety.Kind) []string {
	shortest, _ := staturesOf(job, deck)
	list := []string{b.noLadder(job), b.noFloor(job, shortest)}
	switch kind {
	case safety.Podium:
		list = append(list, "Not a "+job.Country.Says("hop-up")+": it has no rails, and "+b.deckText(deck.Best, nearest)+" is above the "+b.deckText(safety.LowDeckUpTo, nearest)+" of a low deck.",
			"Not a tower: at this height it is more to build and to move, and no safer for it.")
	case safety.Tower:
		list = append(list, "Not a podium: they end at about "+b.deckText(safety.PodiumUpTo, nearest)+".")
	case safety.Scaffold:
		list = append(list, "Not a mobile tower: its standard ends at "+b.deckText(safety.TowerUpTo, nearest)+" indoors.")
	}
	if kind == safety.Podium || kind == safety.Tower {
		list = append(list, b.noScaffold())
	}
	return list
}

// noLadder is the answer to a ladder, by the numbers of this job.
func (b *builder) noLadder(job *safety.Job) string {
	text := "Not a ladder: both hands are on the panel and none holds on, there are no rails, and the jerk when a panel lets go can throw you."
	hang, said := days.UsualHang, "as usual"
	if rate := b.Plan.Days.Rates.Hang; rate.Known {
		hang, said = minutes(rate.Value, 1), "as planned"
	}
	text += " One panel takes " + minutesText(hang) + ", " + said
	if hours := job.OverheadHours; hours.Known {
		text += ", and on the worst day the hands are up for " + minutesText(minutes(hours.Value, 60))
	}
	return text + "."
}

func (b *builder) noFloor(job *safety.Job, shortest measure.Length) string {
	reach := shortest * 1185 / 1000
	if job.Reach > 0 {
		reach = job.Reach
	}
	return "Not from the floor: an easy reach is " + b.Notation.Length(reach) + ", and the ceiling is " + b.Notation.Length(job.CeilingHeight-reach) + " above it."
}

// noScaffold says what a scaffold over the whole room would change.
func (b *builder) noScaffold() string {
	clashes, moves := 0, 0
	for _, s := range b.Sheet.Platform.Stations {
		if s.Clash {
			clashes++
		}
	}
	for i := range b.Layers {
		moves += b.Hung(i).Sequence.Moves
	}
	text := "A scaffold over the whole room is not needed for this height"
	switch {
	case clashes > 0:
		return text + ", but it would bridge what is in the way at " + page.Plural(int64(clashes), "platform position", "platform positions") + "."
	case moves > 0:
		return text + "; it would save " + strconv.Itoa(moves) + " " + page.Noun(int64(moves), "move", "moves") + " of the platform."
	}
	return text + "."
}
