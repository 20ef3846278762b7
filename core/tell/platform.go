package tell

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
)

const reachSource = "Grip reach 1.185 times stature: an ergonomics handbook of 1996, as reprinted in a course table. The aim of 1.10 times stature under the ceiling is derived: head clear, elbows bent."

// platform is what the work is done from: what to ask for, whether it can stand
// where it has to, how long it is needed, and how long the hands are up.
func (b *builder) platform(job *safety.Job) {
	deck, problems := safety.DeckOf(*job)
	b.Report("", problems)
	kind := safety.KindFor(deck)
	if kind != "" {
		b.deckFigures(job, &deck)
		if kind != safety.OnFloor && job.Access != safety.Floor && job.Access != safety.Ladder {
			(&checked{b, job, &deck, kind}).all()
			b.stand(job, &deck)
		}
		b.ask(job, &deck, kind)
	}
	if kind != safety.OnFloor {
		b.hire()
	}
	b.overhead()
}

// deckFigures are the height of deck to ask for, and the base under it.
func (b *builder) deckFigures(job *safety.Job, deck *safety.Deck) {
	shortest, tallest := staturesOf(job, deck)
	ceiling, tall := b.Put(job.CeilingHeight), b.Put(tallest)
	b.deckAim(job, deck, shortest, tallest)
	b.deckLeast(job, deck, shortest, shortest != tallest)
	rule := "The ceiling less the height and a little head room."
	if shortest != tallest {
		rule = "The ceiling less the height of the tallest and a little head room."
	}
	b.deck("platform.most", "deck at most", stepped{deck.Most, job.CeilingHeight - tallest - headRoom, toMost}, rule, ceiling+" − "+tall+" − "+b.Put(headRoom), reachSource)
	ratio := safety.BaseRatio(job.Country)
	if base := deck.Base(ratio); base > 0 {
		source := "29 CFR 1926.451(c)(1): more than four times the least base needs tying, guying or bracing."
		if ratio != 4 {
			source = "Screening figure after the stricter ratio reported for California, seen in a secondary copy; EN 1004-1 leaves it to the maker's table."
		}
		b.deck("platform.base", "base at least", stepped{base, base, toLeast}, "Deck and rails over the ratio of height to base.",
			"("+b.Put(deck.Best)+" + "+b.Put(safety.RailHeight)+") ÷ "+b.Notation.Number(measure.NumberFromInt(ratio), 0), source)
	}
}

// staturesOf are the heights that the deck was worked out from, of the shortest
// and the tallest.
func staturesOf(job *safety.Job, deck *safety.Deck) (shortest, tallest measure.Length) {
	for _, stature := range job.Crew {
		if stature > 0 && (shortest == 0 || stature < shortest) {
			shortest = stature
		}
		tallest = max(tallest, stature)
	}
	if tallest == 0 {
		// Nobody's height is known: it is what the deck leaves room for.
		tallest = job.CeilingHeight - deck.Most - headRoom
		shortest = tallest
	}
	return shortest, tallest
}

// deckAim is the height of deck to ask for, by whichever of three ways it was
// come by.
func (b *builder) deckAim(job *safety.Job, deck *safety.Deck, shortest, tallest measure.Length) {
	ceiling, short, tall := b.Put(job.CeilingHeight), b.Put(shortest), b.Put(tallest)
	raw := job.CeilingHeight - (shortest*110/100+tallest*110/100)/2
	rule, sum := "The ceiling less 1.10 times the height of a fitter of "+tall, ceiling+" − 1.10 × "+tall
	switch {
	case deck.Tried:
		rule, sum, raw = "The ceiling less the reach that was tried out", ceiling+" − "+b.Put(job.Reach), job.CeilingHeight-job.Reach
	case deck.Assumed:
		rule = "The ceiling less 1.10 times the height of a fitter taken as " + tall
	case short != tall:
		rule, sum = "The ceiling less 1.10 times the height half way between the shortest and the tallest", ceiling+" − 1.10 × ("+short+" + "+tall+") ÷ 2"
	}
	if deck.Best != max(0, raw) {
		rule += ", kept where the head is clear and the ceiling in reach"
	}
	b.deck("platform.height", "height of deck to ask for", stepped{deck.Best, raw, toNearest}, rule+". This is deck height, not “working height”.", sum, reachSource)
}

// deckLeast is the lowest deck from which the ceiling is in easy reach.
func (b *builder) deckLeast(job *safety.Job, deck *safety.Deck, shortest measure.Length, several bool) {
	ceiling, raw := b.Put(job.CeilingHeight), job.CeilingHeight-shortest*1185/1000
	rule, sum := "The ceiling less the reach, 1.185 times the height.", ceiling+" − 1.185 × "+b.Put(shortest)
	switch {
	case deck.Tried && deck.Least == deck.Best:
		rule, sum, raw = "The ceiling less the reach that was tried out, which is longer than most have.", ceiling+" − "+b.Put(job.Reach), job.CeilingHeight-job.Reach
	case several:
		rule = "The ceiling less the reach of the shortest, 1.185 times the height."
	}
	b.deck("platform.least", "deck at least", stepped{deck.Least, raw, toLeast}, rule, sum, reachSource)
}

// Steps of a platform's height: nobody sets one to a sixteenth.
const (
	metricStep = 50 * measure.Millimetre
	inchStep   = 2 * measure.Inch
)

// headRoom is what is left free over the head of who stands on the deck.
const headRoom = 10 * measure.Centimetre

// rounding is a way to whole steps, and its name: the aim goes to the nearest one,
// the least up and the most down.
type rounding struct {
	round func(l, step measure.Length) measure.Length
	name  string
}

var (
	toNearest = rounding{nearest, "to the nearest"}
	toLeast   = rounding{upwards, "up to a whole"}
	toMost    = rounding{downwards, "down to a whole"}
)

func nearest(l, step measure.Length) measure.Length   { return l.ToMark(step) }
func upwards(l, step measure.Length) measure.Length   { return (l + step - 1) / step * step }
func downwards(l, step measure.Length) measure.Length { return l / step * step }

// stepped is a height of deck that is said in whole steps: what it is, what its
// sum gives before it is kept within bounds, and how it is rounded.
type stepped struct {
	is, sum measure.Length
	how     rounding
}

// deck is a height of deck, said in whole steps, which the working names. Value
// has it exactly, Other is what is said, converted.
func (b *builder) deck(id, label string, l stepped, rule, sum, source string) {
	said := b.Notation.Length(l.how.round(l.is, b.step()))
	sum += " = " + b.Notation.Length(l.sum)
	switch {
	case l.is == 0 && l.sum < 0:
		sum += "; not below 0"
	case l.is != l.sum && b.Notation.Length(l.is) != b.Notation.Length(l.sum):
		sum += "; kept at " + b.Notation.Length(l.is)
	}
	b.Figure(sheet.Figure{
		ID: id, Block: page.Safety, Label: label, Value: page.Nanometres(l.is), Unit: "nm",
		Text: said, Other: b.Other.Length(l.how.round(l.is, b.step())),
		Working: sheet.Working{Rule: rule, Sum: sum + "; " + l.how.name + " step of " + b.Notation.Length(b.step()) + ": " + said, Source: source},
	})
}

// hire is how long the platform is needed.
func (b *builder) hire() {
	c := b.calendar()
	first, last, ok := b.daysAloft(c)
	if !ok {
		return
	}
	count := int64(last-first) + 1
	text := page.Plural(count, "day", "days")
	span := "on " + dateText(first)
	if count > 1 {
		span = "from " + dateText(first) + " to " + dateText(last)
	}
	b.Sheet.Platform.Hire = "It is needed " + span + ": " + text + ", days off counted too."
	b.Count(page.Safety, "platform.days", "days of "+b.Plan.Place.Rules.Says("hire"), count, text,
		"From the first day on which something is done on the ceiling to the last, both counted, days off and days of waiting too. What counts as a day, the firm says itself.",
		longDate(last)+" − "+longDate(first)+" + 1 day", "From the days on this sheet.")
}
