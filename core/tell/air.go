package tell

import (
	"cmp"
	"slices"
	"strconv"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/days"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
)

const (
	airSource   = "Well-mixed room, a screening figure: your face is nearer the wet film than the model."
	purgeSource = airSource + " Air changes and mixing: CDC, MMWR 43 RR-13, 1994; purge: CDC Environmental Infection Control Guidelines 2003, table B.1."
)

// air is what the products give off into the room, and how long it stays there.
// A finish without any has nothing to say of it.
func (b *builder) air(job *safety.Job) {
	if len(job.Products) == 0 {
		return
	}
	air, problems := safety.AirOf(*job)
	b.Report("", problems)
	if air.Mass.Known {
		b.airFigure("air.mass", "solvent given off in all", air.Mass.Value, "g", 0,
			"Litres times the solvent in one, added up: the label’s figure, without the water where that leaves it out, and with the thinner.", b.masses(job), "Arithmetic; that a litre of thinner is 870 g is from memory.")
	}
	if air.Peak.Known {
		b.airFigure("air.atOnce", "all of it at once, room shut", air.Peak.Value, "mg/m³", 0,
			"All of it at once in the air of the shut room. A screening figure, not a forecast.", b.inRoom(job, air.Mass.Value), airSource)
	}
	b.course(job, air)
	if air.Purge.Known {
		b.airFigure("air.purge", "airing all of it at once, down to the limit", air.Purge.Value, "h", 2, purgeRule, b.purged(air), purgeSource)
	}
}

const purgeRule = "From all of it at once down to the limit: mixing factor over air changes, times the natural logarithm of the one over the other."

// inTheRoom is when coats go on and when people are in the room, in minutes from
// the midnight before the first of it, and that midnight. Without a calendar it
// is nothing.
func (b *builder) inTheRoom() (coats []safety.Coat, shifts []safety.Shift, midnight days.Moment) {
	c := b.calendar()
	if !c.isDated {
		return nil, nil, 0
	}
	s := &c.schedule
	first := s.Zone.Moment(s.Placed[0].Start)
	for i := range s.Placed {
		first = min(first, s.Zone.Moment(s.Placed[i].Start))
	}
	midnight = first.Date().At(0)
	begin := s.Zone.Instant(midnight)
	products := map[string]int{}
	for i := range b.products {
		products[b.products[i].step.At] = i
	}
	worked := map[days.Date]bool{}
	for i := range s.Placed {
		whole, _ := s.Minutes(i)
		product, gives := 0, c.origins[i].Work == days.Otherwise && c.origins[i].Step >= 0
		if gives {
			product, gives = products[b.Plan.Steps[c.origins[i].Step].At]
		}
		for _, p := range s.Parts(i) {
			worked[p.From.Date()] = true
			if from, to := s.Zone.Instant(p.From), s.Zone.Instant(p.To); gives {
				coat := safety.Coat{Product: product, Start: int64(from - begin), Minutes: int64(to - from), Part: int64(to - from), Whole: whole}
				coats = append(coats, b.ofSections(c, i, coat))
			}
		}
	}
	for day := range worked {
		shifts = append(shifts, safety.Shift{From: int64(s.Zone.Instant(day.At(s.Hours.From)) - begin), To: int64(s.Zone.Instant(day.At(s.Hours.To)) - begin)})
	}
	slices.SortFunc(shifts, func(a, b safety.Shift) int { return cmp.Compare(a.From, b.From) })
	return coats, shifts, midnight
}

// ofSections is a coat of size that is laid in sections: each is as much of it
// as it takes of its labour.
func (b *builder) ofSections(c *calendar, task int, coat safety.Coat) safety.Coat {
	o := c.origins[task]
	if o.Section == 0 {
		return coat
	}
	all := int64(0)
	for i := range c.tasks {
		if p := c.origins[i]; p.Step == o.Step && p.Coat == o.Coat && p.Work == o.Work && p.Section > 0 {
			minutes, _ := c.schedule.Minutes(i)
			all += minutes
		}
	}
	coat.Whole = all
	return coat
}

const courseSource = airSource + " What is wet evaporates in proportion to what is left, nine tenths of it in the time it takes to dry (derived), or in 10 h where a solvent or oil product takes longer (after EPA/600/A-98/024). What is given off, less what the fresh air carries out, stays."

// course is the air over the days: figures, one line for each day with a coat,
// and the curve.
func (b *builder) course(job *safety.Job, air safety.Air) {
	c := safety.CourseOf(*job)
	job.Course = &c
	if len(c.Curve) > 0 {
		_, _, midnight := b.inTheRoom()
		when := func(minute int64) string { return b.minuteText(minute, midnight) }
		b.levels(job, &c, when)
		b.Sheet.Air.Text = b.airText(&c, safety.Wait(air, c), when)
		b.drawAir(&c, midnight)
	}
	b.wait(&c, air)
	b.needed(job, c.Needed)
}

// levels are the figures of the course.
func (b *builder) levels(job *safety.Job, c *safety.Course, when func(int64) string) {
	b.airFigure("air.peak", "solvent in air, highest", c.Peak.Value, "mg/m³", 0,
		"The highest point of the curve, "+when(c.PeakAt)+": what was given off until then, less what the fresh air carried out, over the room.", b.peakSum(job, c), courseSource)
	b.airFigure("air.average", "solvent in air, 8-hour average, worst day", c.Average.Value, "mg/m³", 0,
		"What was in the air when people came in, and what was given off while they worked, less what was left when they went, over how often the air is changed in eight hours.", b.balanceSum(job, c.OfAverage, measure.NumberFromInt(8)),
		courseSource+" Eight hours: 29 CFR 1915.1000(d)(1)(i).")
	if c.Share.Known {
		text := safety.ShareText(c.Share.Value, b.safetyStyle())
		b.Figure(sheet.Figure{ID: "air.share", Block: page.Safety, Label: "of the limit, worst day", Value: page.Plain(c.Share.Value), Text: text,
			Working: sheet.Working{Rule: "The average over eight hours by its limit: each product’s own, or the job’s where it has none; added up.",
				Sum: closing(c.Share.Value, 3, 1, b.sharesSum(c.OfShare)) + " = " + text, Source: "Limits added up: 29 CFR 1910.1000(d)(2)(i), from memory. " + airSource}})
	}
	b.airFigure("air.short", "solvent in air, worst quarter of an hour", c.ShortTerm.Value, "mg/m³", 0,
		"What was in the air before, and what was given off, less what was left after, over how often the air is changed meanwhile.",
		b.balanceSum(job, c.OfShortTerm, measure.NumberFromFraction(c.OfShortTerm.Minutes, 60)), courseSource)
	if c.Over.Known {
		b.airFigure("air.over", "time above the limits", c.Over.Value, "h", 2, "The minutes in which the products together are above their limits, people in the room or not.", b.minutes(c.Over.Value), courseSource)
	}
}

// wait is how long to stay out after the last coat: one figure, the longer.
func (b *builder) wait(c *safety.Course, air safety.Air) {
	wait := safety.Wait(air, *c)
	switch {
	case !wait.Known:
	case c.Reentry.Known && c.Reentry.Value.Cmp(wait.Value) == 0:
		b.airFigure("air.reentry", "stay out after the last coat, people at work", wait.Value, "h", 2,
			"From the end of the last coat until the air stays below the limits, up to a quarter of an hour. Children, anyone pregnant and anyone with asthma wait as long as the label says, and until there is no smell.", b.minutes(wait.Value), courseSource)
	default:
		b.airFigure("air.reentry", "stay out after the last coat, people at work", wait.Value, "h", 2,
			purgeRule+" Children, anyone pregnant and anyone with asthma wait as long as the label says, and until there is no smell.", b.purged(air), purgeSource)
	}
}

// needed is the fresh air that the limits ask for, as changes of the room's air
// and as fans are sold.
func (b *builder) needed(job *safety.Job, needed safety.Needed) {
	if !needed.Changes.Known {
		return
	}
	style := b.safetyStyle()
	changes := b.Notation.Number(needed.Changes.Value, 1)
	sum := changes + " an hour: " + safety.ShareText(needed.Part.Value, style) + " of what is allowed"
	if needed.Less.Known {
		less := b.Notation.Number(needed.Changes.Value.Sub(measure.NumberFromFraction(1, 10)), 1)
		sum = less + " an hour: " + safety.ShareText(needed.Less.Value, style) + " of what is allowed; " + sum
	}
	b.Figure(sheet.Figure{ID: "air.changes", Block: page.Safety, Label: "air changes needed", Value: page.Plain(needed.Changes.Value), Unit: "1/h", Text: changes + " an hour",
		Working: sheet.Working{Rule: "The least that keeps people below the limits over eight hours and for a quarter of an hour, to a tenth: tried over the days of this job in place of the air changes with the windows open, all else as planned. Where shut windows would do, it is theirs.",
			Sum: sum, Source: courseSource + " For a quarter of an hour, where no limit is given, three times the eight-hour limit: HSE, EH40/2005, from memory."}})
	flow := needed.Changes.Value.Mul(job.RoomVolume.Litres).Quo(measure.CubicMetre)
	b.Figure(sheet.Figure{ID: "air.flow", Block: page.Safety, Label: "fresh air to bring", Value: page.Plain(flow), Unit: "m3/h", Text: b.flowText(flow),
		Working: sheet.Working{Rule: "Air changes needed times the room" + b.inMinutes() + ".", Sum: b.flowSum(changes, needed.Changes.Value, job.RoomVolume) + " = " + b.flowText(flow), Source: page.OfArithmetic}})
}

func (b *builder) airText(c *safety.Course, wait safety.Fact, when func(int64) string) string {
	text := "As a screening figure there is most solvent in the air " + when(c.PeakAt) + ", " + b.Notation.Number(c.Peak.Value, 0) + " mg/m³."
	if !c.Share.Known {
		return text + " No limit is given to hold it against."
	}
	text += " On the worst day people breathe " + safety.ShareText(c.Share.Value, b.safetyStyle()) + " of what is allowed over eight hours."
	if c.Over.Value.Sign() > 0 {
		text += " For " + safety.HoursAndMinutes(c.Over.Value) + " in all it is above the limit."
	}
	if wait.Known && wait.Value.Sign() > 0 {
		text += " After the last coat stay out for " + safety.HoursAndMinutes(wait.Value) + ", aired as planned; children, anyone pregnant and anyone with asthma as long as the label says, and until there is no smell."
	}
	return text
}

// minuteText is a minute of the job: by the calendar where there is one.
func (b *builder) minuteText(minute int64, midnight days.Moment) string {
	if midnight == 0 {
		return "on day " + strconv.FormatInt(minute/(24*60)+1, 10) + " of the coats, " + b.Notation.NumberTrimmed(measure.NumberFromFraction(minute%(24*60), 60), 1) + " h into it"
	}
	zone := b.calendar().schedule.Zone
	return "on " + momentText(zone.Moment(zone.Instant(midnight)+days.Instant(minute)))
}

func (b *builder) flowText(flow measure.Number) string {
	if b.Notation.System == measure.FeetInches {
		return b.Notation.Number(flow.Quo(measure.CubicFootAMinute), 0) + " cfm"
	}
	return b.Notation.Number(flow, 0) + " m³/h"
}

// airFigure is a figure of the air with its sum; one that a plan gives a unit of
// the sheet's own has none to convert.
func (b *builder) airFigure(id, label string, n measure.Number, unit string, places int32, rule string, sum sum, source string) {
	text := b.Notation.Number(n, places) + " " + unit
	if unit == "h" {
		text = b.Notation.NumberTrimmed(n, places) + " h"
	}
	base := map[string]string{"g": "g", "mg/m³": "mg/m3", "h": "h"}[unit]
	b.Figure(sheet.Figure{ID: id, Block: page.Safety, Label: label, Value: page.Plain(n), Unit: base, Text: text,
		Working: sheet.Working{Rule: rule, Sum: closing(n, places, 1, sum) + " = " + text, Source: source}})
}
