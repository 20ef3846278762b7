package sheet

import (
	"cmp"
	"slices"
	"strconv"

	"ceilingwright/core/days"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
)

const airSource = "Well-mixed room, screening figure: your face is nearer the wet film than the model. Air changes and mixing: CDC, MMWR 43 RR-13, 1994; purge: CDC Environmental Infection Control Guidelines 2003, table B.1."

// air is what the products give off into the room, and how long it stays there.
// A finish without any has nothing to say of it.
func (b *builder) air(job *safety.Job) {
	if len(job.Products) == 0 {
		return
	}
	air, problems := safety.AirOf(*job)
	b.report("", problems)
	room := cubic(b.n, job.RoomVolume)
	b.fact("air.mass", "solvent given off in all", air.Mass, "g", 0,
		"Litres times the VOC of each product, added up.", b.masses(job), airSource)
	b.fact("air.atOnce", "all of it at once, room shut", air.Peak, "mg/m³", 0,
		"All of it at once in the air of the shut room. A screening figure, not a forecast.", b.amount(air.Mass, 0)+" g ÷ "+room, airSource)
	b.course(job)
	b.fact("air.changes", "air changes needed", air.Changes, "an hour", 1,
		"Mixing factor times what the worst coat gives off in an hour, over its limit and the room.",
		b.amount(b.plan.Air.Mixing, 1)+" × "+b.amount(air.Needs.Rate, 1)+" g/h ÷ "+b.amount(air.Needs.Limit, 0)+" mg/m³ ÷ "+room, airSource)
	b.flow(air.Changes, job.RoomVolume)
	b.fact("air.purge", "airing, down to the limit", air.Purge, "h", 1,
		"From all of it at once down to the limit: mixing factor over air changes, times the natural logarithm of the one over the other.",
		b.purgeSum(air), airSource)
}

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
			product, gives = products[b.plan.Steps[c.origins[i].Step].At]
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

const courseSource = "What is wet evaporates in proportion to what is left, nine tenths of it in the time it takes to dry (derived); well-mixed room: what is given off, less what the fresh air carries out, stays. A screening figure: your face is nearer the wet film than the model. Eight hours: 29 CFR 1915.1000(d)(1)(i); shares of several limits added up: 29 CFR 1910.1000(d)(2)(i), from memory."

// course is the air over the days: figures, one line for each day with a coat,
// and the curve.
func (b *builder) course(job *safety.Job) {
	c := safety.CourseOf(*job)
	job.Course = &c
	out := &b.sheet.Air
	if len(c.Curve) == 0 {
		return
	}
	_, _, midnight := b.inTheRoom()
	when := func(minute int64) string { return b.minuteText(minute, midnight) }
	aired := "open " + b.amount(b.plan.Air.Opened, 1) + ", shut " + b.amount(b.plan.Air.Shut, 1) + " air changes an hour, mixed by " + b.amount(b.plan.Air.Mixing, 1)
	if b.plan.Air.Fan.Known {
		aired += ", a fan of " + b.flowText(b.plan.Air.Fan.Value) + " while people work"
	}
	b.fact("air.peak", "fumes at their highest, as planned", c.Peak, "mg/m³", 0,
		"The highest point of the curve: every coat given off as it dries, the windows open while people work.", aired+"; "+when(c.PeakAt), courseSource)
	b.fact("air.average", "fumes over eight hours, worst day", c.Average, "mg/m³", 0,
		"What is in the air while people work, over eight hours, on the worst day.", aired, courseSource)
	b.percent("air.share", "of the limit, worst day", c.Share,
		"Each product's average over eight hours by its own limit, or by the job's where it has none; added up.", b.limitsText(job), courseSource)
	b.fact("air.short", "worst quarter of an hour", c.ShortTerm, "mg/m³", 0,
		"The highest average of fifteen minutes while people work.", aired, courseSource)
	b.fact("air.over", "time above the limits", c.Over, "h", 1, "The hours in which the products together are above their limits, people in the room or not.", aired, courseSource)
	b.fact("air.reentry", "after the last coat, until the air is fit", c.Reentry, "h", 1,
		"From the end of the last coat until the air stays below the limits, up to a quarter of an hour.", aired, courseSource)
	out.Text = b.airText(&c, when)
	b.drawAir(&c, midnight)
}

func (b *builder) airText(c *safety.Course, when func(int64) string) string {
	text := "As a screening figure the fumes are highest " + when(c.PeakAt) + ", " + b.n.Number(c.Peak.Value, 0) + " mg/m³."
	if !c.Share.Known {
		return text + " No limit is given to hold them against."
	}
	text += " On the worst day people breathe " + b.n.Number(c.Share.Value.Mul(measure.NumberFromInt(100)), 0) + " % of what is allowed over eight hours."
	if c.Over.Value.Sign() > 0 {
		text += " For " + b.n.NumberTrimmed(c.Over.Value, 2) + " h in all it is above the limit."
	}
	if c.Reentry.Value.Sign() > 0 {
		text += " After the last coat nobody should stay in the room for " + b.n.NumberTrimmed(c.Reentry.Value, 2) + " h, aired as planned."
	}
	return text
}

// minuteText is a minute of the job: by the calendar where there is one.
func (b *builder) minuteText(minute int64, midnight days.Moment) string {
	if midnight == 0 {
		return "on day " + strconv.FormatInt(minute/(24*60)+1, 10) + " of the coats, " + b.n.NumberTrimmed(measure.NumberFromFraction(minute%(24*60), 60), 1) + " h into it"
	}
	zone := b.calendar().schedule.Zone
	return "on " + momentText(zone.Moment(zone.Instant(midnight)+days.Instant(minute)))
}

// limitsText is what the products are counted by.
func (b *builder) limitsText(job *safety.Job) string {
	text := ""
	for _, p := range job.Products {
		if p.Limit.Known {
			text += p.StepName + " by " + b.amount(p.Limit, 0) + ", "
		}
	}
	if text == "" {
		return "all by " + b.amount(job.Air.Limit, 0) + " mg/m³"
	}
	return text + "the others by " + b.amount(job.Air.Limit, 0) + " mg/m³"
}

// flow is the air to bring, as fans are sold.
func (b *builder) flow(changes safety.Fact, room measure.Volume) {
	if !changes.Known {
		return
	}
	flow := changes.Value.Mul(room.Litres).Quo(measure.CubicMetre)
	text := b.flowText(flow)
	b.figure(Figure{ID: "air.flow", Block: blockSafety, Label: "fresh air to bring", Value: plain(flow), Unit: "m3/h", Text: text,
		Working: Working{Rule: "Air changes needed times the room.", Sum: b.amount(changes, 1) + " an hour × " + cubic(b.n, room) + " = " + text, Source: ofArithmetic}})
}

func (b *builder) flowText(flow measure.Number) string {
	if b.n.System == measure.FeetInches {
		return b.n.Number(flow.Quo(measure.CubicFootAMinute), 0) + " cfm"
	}
	return b.n.Number(flow, 0) + " m³/h"
}

// percent is a figure that is a share, shown in per cent.
func (b *builder) percent(id, label string, f safety.Fact, rule, sum, source string) {
	if !f.Known {
		return
	}
	text := b.n.Number(f.Value.Mul(measure.NumberFromInt(100)), 0) + " %"
	b.figure(Figure{ID: id, Block: blockSafety, Label: label, Value: plain(f.Value), Text: text,
		Working: Working{Rule: rule, Sum: sum + " = " + text, Source: source}})
}

// purgeSum is the airing written out; a peak that the limit allows needs none.
func (b *builder) purgeSum(air safety.Air) string {
	peak, limit := b.amount(air.Peak, 0), b.amount(b.plan.Air.Limit, 0)
	if air.Peak.Value.Cmp(b.plan.Air.Limit.Value) <= 0 {
		return peak + " mg/m³ is not above " + limit + " mg/m³"
	}
	return b.amount(b.plan.Air.Mixing, 1) + " ÷ " + b.amount(b.plan.Air.Opened, 1) + " × ln(" + peak + " ÷ " + limit + ")"
}

// masses is what each product gives off, written as a sum.
func (b *builder) masses(job *safety.Job) string {
	sum := ""
	for i := range job.Products {
		p := &job.Products[i]
		if !p.Litres.Known || !p.VOC.Known || p.VOC.Value.IsZero() {
			continue
		}
		if sum != "" {
			sum += " + "
		}
		sum += b.n.Number(p.Litres.Value, 2) + " L × " + b.n.NumberTrimmed(p.VOC.Value, 0) + " g/L"
	}
	if sum == "" {
		return "nothing"
	}
	return sum
}

func (b *builder) amount(f safety.Fact, places int32) string {
	if !f.Known {
		return "?"
	}
	return b.n.NumberTrimmed(f.Value, places)
}

func (b *builder) fact(id, label string, f safety.Fact, unit string, places int32, rule, sum, source string) {
	if !f.Known {
		return
	}
	text := b.n.Number(f.Value, places) + " " + unit
	base := map[string]string{"g": "g", "mg/m³": "mg/m3", "an hour": "1/h", "h": "h"}[unit]
	b.figure(Figure{ID: id, Block: blockSafety, Label: label, Value: plain(f.Value), Unit: base, Text: text,
		Working: Working{Rule: rule, Sum: sum + " = " + text, Source: source}})
}
