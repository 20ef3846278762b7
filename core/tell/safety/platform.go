package safety

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

const reachSource = "Grip reach 1.185 times stature: an ergonomics handbook of 1996, as reprinted in a course table. The aim of 1.10 times stature under the ceiling is derived: head clear, elbows bent."

// heights are the height of deck to ask for, and the base under it.
func (t *teller) heights() {
	d := t.deck
	ceiling, tall := t.Put(t.facts.CeilingHeight), t.Put(d.Tallest)
	several := d.Shortest != d.Tallest
	t.aim(ceiling)
	t.lowest(ceiling, several)
	rule := t.Say("The ceiling less the height and a little head room.")
	if several {
		rule = t.Say("The ceiling less the height of the tallest and a little head room.")
	}
	t.height("platform.most", t.Say("deck at most"), d.Top, safety.ToMost, rule, ceiling+" − "+tall+" − "+t.Put(safety.HeadRoom), t.Say(reachSource))
	if d.Base > 0 {
		source := t.Say("29 CFR 1926.451(c)(1): more than four times the least base needs tying, guying or bracing.")
		if d.Ratio != 4 {
			source = t.Say("Screening figure after the stricter ratio reported for California, seen in a secondary copy; EN 1004-1 leaves it to the maker's table.")
		}
		t.height("platform.base", t.Say("base at least"), hazards.Height{Is: d.Base, Sum: d.Base}, safety.ToLeast, t.Say("Deck and rails over the ratio of height to base."),
			"("+t.Put(d.Best)+" + "+t.Put(safety.RailHeight)+") ÷ "+t.Notation.Number(measure.NumberFromInt(d.Ratio), 0), source)
	}
}

// aim is the height of deck to ask for, by whichever way it was come by.
func (t *teller) aim(ceiling string) {
	d := t.deck
	rule, sum := t.aimRule(d.Aim.Is != max(0, d.Aim.Sum)), ceiling+" − 1.10 × "+t.Put(d.Tallest)
	switch d.By {
	case hazards.AimTried:
		sum = ceiling + " − " + t.Put(t.facts.Reach)
	case hazards.AimBetween:
		sum = ceiling + " − 1.10 × (" + t.Put(d.Shortest) + " + " + t.Put(d.Tallest) + ") ÷ 2"
	}
	t.height("platform.height", t.Say("height of deck to ask for"), d.Aim, safety.ToNearest, rule, sum, t.Say(reachSource))
}

// aimRule is the rule for it; kept tells that the sum gave something else.
func (t *teller) aimRule(kept bool) string {
	tall := words.Put("tall", t.deck.Tallest)
	switch t.deck.By {
	case hazards.AimTried:
		if kept {
			return t.Say("The ceiling less the reach that was tried out, kept where the head is clear and the ceiling in reach. This is deck height, not “working height”.")
		}
		return t.Say("The ceiling less the reach that was tried out. This is deck height, not “working height”.")
	case hazards.AimAssumed:
		if kept {
			return t.Say("The ceiling less 1.10 times the height of a fitter taken as {tall}, kept where the head is clear and the ceiling in reach. This is deck height, not “working height”.", tall)
		}
		return t.Say("The ceiling less 1.10 times the height of a fitter taken as {tall}. This is deck height, not “working height”.", tall)
	case hazards.AimBetween:
		if kept {
			return t.Say("The ceiling less 1.10 times the height half way between the shortest and the tallest, kept where the head is clear and the ceiling in reach. This is deck height, not “working height”.")
		}
		return t.Say("The ceiling less 1.10 times the height half way between the shortest and the tallest. This is deck height, not “working height”.")
	}
	if kept {
		return t.Say("The ceiling less 1.10 times the height of a fitter of {tall}, kept where the head is clear and the ceiling in reach. This is deck height, not “working height”.", tall)
	}
	return t.Say("The ceiling less 1.10 times the height of a fitter of {tall}. This is deck height, not “working height”.", tall)
}

// lowest is the lowest deck from which the ceiling is in easy reach.
func (t *teller) lowest(ceiling string, several bool) {
	rule, sum := t.Say("The ceiling less the reach, 1.185 times the height."), ceiling+" − 1.185 × "+t.Put(t.deck.Shortest)
	switch {
	case t.deck.LeastByReach:
		rule, sum = t.Say("The ceiling less the reach that was tried out, which is longer than most have."), ceiling+" − "+t.Put(t.facts.Reach)
	case several:
		rule = t.Say("The ceiling less the reach of the shortest, 1.185 times the height.")
	}
	t.height("platform.least", t.Say("deck at least"), t.deck.Lowest, safety.ToLeast, rule, sum, t.Say(reachSource))
}

// height is a height of deck, said in whole steps, which the working names. Value
// has it exactly, Other is what is said, converted.
func (t *teller) height(id, label string, h hazards.Height, how safety.Rounding, rule, sum, source string) {
	step := safety.Step(t.Notation)
	whole := how.Of(h.Is, step)
	said := t.Notation.Length(whole)
	sum += " = " + t.Notation.Length(h.Sum)
	switch {
	case h.Is == 0 && h.Sum < 0:
		sum += t.Say("; not below 0")
	case h.Is != h.Sum && t.Notation.Length(h.Is) != t.Notation.Length(h.Sum):
		sum += t.Say("; kept at {height}", words.Length("height", h.Is))
	}
	t.Figure(sheet.Figure{
		ID: id, Block: page.Safety, Label: label, Value: page.Nanometres(h.Is), Unit: "nm",
		Text: said, Other: t.Other.Length(whole),
		Working: sheet.Working{Rule: rule, Sum: sum + t.rounded(how, step, said), Source: source},
	})
}

// rounded ends a sum with how it is rounded.
func (t *teller) rounded(how safety.Rounding, to measure.Length, said string) string {
	step, height := words.Length("step", to), words.Name("said", said)
	switch how {
	case safety.ToLeast:
		return t.Say("; up to a whole step of {step}: {said}", step, height)
	case safety.ToMost:
		return t.Say("; down to a whole step of {step}: {said}", step, height)
	}
	return t.Say("; to the nearest step of {step}: {said}", step, height)
}

// hire is how long the platform is needed.
func (t *teller) hire() {
	d := t.deck
	if !d.Hired {
		return
	}
	n := int64(d.Last-d.First) + 1
	first, last, count := words.Of("first", d.First), words.Of("last", d.Last), words.Count("n", n)
	if n == 1 {
		t.Sheet.Platform.Hire = t.Say("It is needed on {first}: {n|day|days}, days off counted too.", first, count)
	} else {
		t.Sheet.Platform.Hire = t.Say("It is needed from {first} to {last}: {n|day|days}, days off counted too.", first, last, count)
	}
	t.Count(page.Safety, "platform.days", t.Say("days of {~hire}"), n, t.Say("{n|day|days}", count),
		t.Say("From the first day on which something is done on the ceiling to the last, both counted, days off and days of waiting too. What counts as a day, the firm says itself."),
		t.Say("{last} − {first} + 1 day", words.Of("last", days.WithYear(d.Last)), words.Of("first", days.WithYear(d.First))), t.Say("From the days on this sheet."))
}
