package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

const (
	airSource    = "Well-mixed room, a screening figure: your face is nearer the wet film than the model."
	purgeSource  = airSource + " Air changes and mixing: CDC, MMWR 43 RR-13, 1994; purge: CDC Environmental Infection Control Guidelines 2003, table B.1."
	courseSource = airSource + " What is wet evaporates in proportion to what is left, nine tenths of it in the time it takes to dry (derived), or in 10 h where a solvent or oil product takes longer (after EPA/600/A-98/024). What is given off, less what the fresh air carries out, stays."
	purgeRule    = "From all of it at once down to the limit: mixing factor over air changes, times the natural logarithm of the one over the other."
)

// air is what the products give off into the room, and how long it stays there.
// A finish without any has nothing to say of it.
func (t *teller) air() {
	air, c := &t.Air.Air, &t.Air.Course
	if len(t.facts.Products) == 0 {
		return
	}
	if air.Mass.Known {
		t.airFigure("air.mass", t.Say("solvent given off in all"), air.Mass.Value, "g", 0,
			t.Say("Litres times the solvent in one, added up: the label’s figure, without the water where that leaves it out, and with the thinner."), t.masses(),
			t.Say("Arithmetic; that a litre of thinner is 870 g is from memory."))
	}
	if air.Peak.Known {
		t.airFigure("air.atOnce", t.Say("all of it at once, room shut"), air.Peak.Value, "mg/m³", 0,
			t.Say("All of it at once in the air of the shut room. A screening figure, not a forecast."), t.inRoom(air.Mass.Value), t.Say(airSource))
	}
	if len(c.Curve) > 0 {
		t.levels()
		t.Sheet.Air.Text = t.Told(t.airText())
	}
	t.wait()
	t.needed()
	if air.Purge.Known {
		t.airFigure("air.purge", t.Say("airing all of it at once, down to the limit"), air.Purge.Value, "h", 2, t.Say(purgeRule), t.purged(), t.Say(purgeSource))
	}
}

// when is the moment at which there is most in the air: by the calendar where there
// is one.
func (t *teller) when() words.Text {
	r, minute := &t.Vapours.InTheRoom, t.Air.Course.PeakAt
	if r.Midnight != 0 {
		return words.Say("on {moment}", words.Of("moment", r.When(minute)))
	}
	return words.Say("on day {day} of the coats, {hours} h into it",
		words.Count("day", minute/(24*60)+1), words.Trimmed("hours", measure.NumberFromFraction(minute%(24*60), 60), 1))
}

// levels are the figures of the course.
func (t *teller) levels() {
	c := &t.Air.Course
	t.airFigure("air.peak", t.Say("solvent in air, highest"), c.Peak.Value, "mg/m³", 0,
		t.Say("The highest point of the curve, {when}: what was given off until then, less what the fresh air carried out, over the room.", words.Of("when", t.when())), t.peakSum(), t.Say(courseSource))
	t.airFigure("air.average", t.Say("solvent in air, 8-hour average, worst day"), c.Average.Value, "mg/m³", 0,
		t.Say("What was in the air when people came in, and what was given off while they worked, less what was left when they went, over how often the air is changed in eight hours."), t.balanceSum(c.OfAverage, measure.NumberFromInt(8)),
		t.Say(courseSource+" Eight hours: 29 CFR 1915.1000(d)(1)(i)."))
	if c.Share.Known {
		text := air.Share(c.Share.Value).In(t.Style())
		t.Figure(sheet.Figure{ID: "air.share", Block: page.Safety, Label: t.Say("of the limit, worst day"), Value: page.Plain(c.Share.Value), Text: text,
			Working: sheet.Working{Rule: t.Say("The average over eight hours by its limit: each product’s own, or the job’s where it has none; added up."),
				Sum: closing(c.Share.Value, 3, 1, t.sharesSum(c.OfShare)) + " = " + text, Source: t.Say("Limits added up: 29 CFR 1910.1000(d)(2)(i), from memory. " + airSource)}})
	}
	t.airFigure("air.short", t.Say("solvent in air, worst quarter of an hour"), c.ShortTerm.Value, "mg/m³", 0,
		t.Say("What was in the air before, and what was given off, less what was left after, over how often the air is changed meanwhile."),
		t.balanceSum(c.OfShortTerm, measure.NumberFromFraction(c.OfShortTerm.Minutes, 60)), t.Say(courseSource))
	if c.Over.Known {
		t.airFigure("air.over", t.Say("time above the limits"), c.Over.Value, "h", 2,
			t.Say("The minutes in which the products together are above their limits, people in the room or not."), t.minutes(c.Over.Value), t.Say(courseSource))
	}
}

// wait is how long to stay out after the last coat: one figure, the longer.
func (t *teller) wait() {
	wait, reentry := t.Air.Wait, t.Air.Course.Reentry
	label := t.Say("stay out after the last coat, people at work")
	switch {
	case !wait.Known:
	case reentry.Known && reentry.Value.Cmp(wait.Value) == 0:
		t.airFigure("air.reentry", label, wait.Value, "h", 2,
			t.Say("From the end of the last coat until the air stays below the limits, up to a quarter of an hour. Children, anyone pregnant and anyone with asthma wait as long as the label says, and until there is no smell."), t.minutes(wait.Value), t.Say(courseSource))
	default:
		t.airFigure("air.reentry", label, wait.Value, "h", 2,
			t.Say(purgeRule+" Children, anyone pregnant and anyone with asthma wait as long as the label says, and until there is no smell."), t.purged(), t.Say(purgeSource))
	}
}

// needed is the fresh air that the limits ask for, as changes of the room's air
// and as fans are sold.
func (t *teller) needed() {
	needed := &t.Air.Course.Needed
	if !needed.Changes.Known {
		return
	}
	text := t.Say("{changes} an hour", words.Number("changes", needed.Changes.Value, 1))
	sum := t.allowed(needed.Changes.Value, needed.Part)
	if needed.Less.Known {
		sum = t.allowed(needed.Changes.Value.Sub(measure.NumberFromFraction(1, 10)), needed.Less) + "; " + sum
	}
	t.Figure(sheet.Figure{ID: "air.changes", Block: page.Safety, Label: t.Say("air changes needed"), Value: page.Plain(needed.Changes.Value), Unit: "1/h", Text: text,
		Working: sheet.Working{Rule: t.Say("The least that keeps people below the limits over eight hours and for a quarter of an hour, to a tenth: tried over the days of this job in place of the air changes with the windows open, all else as planned. Where shut windows would do, it is theirs."),
			Sum: sum, Source: t.Say(courseSource + " For a quarter of an hour, where no limit is given, three times the eight-hour limit: HSE, EH40/2005, from memory.")}})
	rule, flow := t.Say("Air changes needed times the room."), air.Flow(t.Air.Flow).In(t.Style())
	if t.Notation.System == measure.FeetInches {
		rule = t.Say("Air changes needed times the room, by the minute.")
	}
	t.Figure(sheet.Figure{ID: "air.flow", Block: page.Safety, Label: t.Say("fresh air to bring"), Value: page.Plain(t.Air.Flow), Unit: "m3/h", Text: flow,
		Working: sheet.Working{Rule: rule, Sum: t.flowSum(text, needed.Changes.Value, t.facts.RoomVolume) + " = " + flow, Source: t.Arithmetic()}})
}

// allowed is what so many changes leave of what is allowed.
func (t *teller) allowed(changes measure.Number, part measure.Fact) string {
	return t.Say("{changes} an hour: {part} of what is allowed", words.Number("changes", changes, 1), words.Of("part", air.Share(part.Value)))
}

func (t *teller) airText() words.Text {
	c := &t.Air.Course
	text := words.Say("As a screening figure there is most solvent in the air {when}, {peak} mg/m³.", words.Of("when", t.when()), words.Number("peak", c.Peak.Value, 0))
	if !c.Share.Known {
		return words.Sentences(text, words.Say("No limit is given to hold it against."))
	}
	text = words.Sentences(text, words.Say("On the worst day people breathe {part} of what is allowed over eight hours.", words.Of("part", air.Share(c.Share.Value))))
	if c.Over.Value.Sign() > 0 {
		text = words.Sentences(text, words.Say("For {time} in all it is above the limit.", words.Of("time", air.Hours(c.Over.Value))))
	}
	if wait := t.Air.Wait; wait.Known && wait.Value.Sign() > 0 {
		text = words.Sentences(text, words.Say("After the last coat stay out for {time}, aired as planned; children, anyone pregnant and anyone with asthma as long as the label says, and until there is no smell.",
			words.Of("time", air.Hours(wait.Value))))
	}
	return text
}

// airFigure is a figure of the air with its sum; one that a plan gives a unit of
// the sheet's own has none to convert.
func (t *teller) airFigure(id, label string, n measure.Number, unit string, places int32, rule string, sum sum, source string) {
	text := t.Notation.Number(n, places) + " " + unit
	if unit == "h" {
		text = t.Notation.NumberTrimmed(n, places) + " h"
	}
	base := map[string]string{"g": "g", "mg/m³": "mg/m3", "h": "h"}[unit]
	t.Figure(sheet.Figure{ID: id, Block: page.Safety, Label: label, Value: page.Plain(n), Unit: base, Text: text,
		Working: sheet.Working{Rule: rule, Sum: closing(n, places, 1, sum) + " = " + text, Source: source}})
}
