package tell

import (
	"slices"
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/days"
	"ceilingwright/core/problem"
)

// The hours that are counted where the plan gives none. A choice.
const (
	usualFrom days.Clock = 8 * 60
	usualTo   days.Clock = 16*60 + 30
)

// painted is when the paint was done that the mask goes on, 0 where it is old.
// A day without a time counts from the end of its work.
func (b *builder) painted(hours *days.Hours) days.Moment {
	text := b.Plan.Days.PaintedOn
	if m, ok := days.ParseMoment(text); ok {
		return m
	}
	if day, ok := b.date("/days/freshPaint/doneOn", text); ok {
		return day.At(hours.To)
	}
	return 0
}

// date is a date of the plan; one that is not read is reported, an empty one is
// none.
func (b *builder) date(at, text string) (days.Date, bool) {
	if text == "" {
		return 0, false
	}
	d, ok := days.ParseDate(text)
	if !ok {
		b.Report(at, []problem.Problem{{Severity: problem.Stop, What: words.Say("There is no such date."), Do: words.Say("Write year, month and day, such as 2027-03-01.")}})
	}
	return d, ok
}

func (b *builder) clock(at, text string, usual days.Clock) (days.Clock, bool) {
	if text == "" {
		b.Report(at, []problem.Problem{{Severity: problem.Note, What: words.Raw("Not given: " + usual.String() + " is counted."), Do: words.Raw("Write it on the clock of 24 hours, such as " + usual.String() + ".")}})
		return usual, true
	}
	c, ok := days.ParseClock(text)
	if !ok {
		b.Report(at, []problem.Problem{{Severity: problem.Stop, What: words.Say("There is no such time of day."), Do: words.Raw("Write it on the clock of 24 hours, such as " + usual.String() + ".")}})
	}
	return c, ok
}

// workHours are the hours of the job; isUsable tells that they can be worked.
type workHours struct {
	days.Hours
	isUsable bool
}

// workingHours are read once.
func (b *builder) workingHours() *workHours {
	if b.hoursRead == nil {
		h, ok := b.readHours()
		b.hoursRead = &workHours{h, ok}
	}
	return b.hoursRead
}

func (b *builder) readHours() (days.Hours, bool) {
	d := &b.Plan.Days
	from, ok1 := b.clock("/days/from", d.From, usualFrom)
	to, ok2 := b.clock("/days/to", d.To, usualTo)
	h := days.Hours{From: from, To: to, Pause: minutes(d.Pause.Value, 1), Over: max(0, min(runsOver, int64(days.Day-to)))}
	for i, text := range d.Weekdays {
		w, ok := days.ParseWeekday(text)
		if !ok {
			b.Report("/days/weekdays"+problem.Index(i), []problem.Problem{{Severity: problem.Stop, What: words.Say("There is no such day of the week."), Do: words.Say("Choose from mon, tue, wed, thu, fri, sat and sun.")}})
			continue
		}
		h.Weekdays[w] = true
	}
	if len(d.Weekdays) == 0 {
		h.Weekdays = [7]bool{true, true, true, true, true}
	}
	for _, off := range d.Off {
		if day, ok := b.date(off.At, off.Date); ok {
			h.Off = append(h.Off, day)
		}
	}
	slices.Sort(h.Off)
	if d.People > mostPeople {
		b.Report("/days/people", []problem.Problem{{Severity: problem.Caution, What: words.Raw(strconv.Itoa(d.People) + " people are counted as " + strconv.Itoa(mostPeople) + "."), Do: words.Say("Check the number.")}})
	}
	switch {
	case !ok1 || !ok2:
		return h, false
	case to <= from:
		b.Report("/days/to", []problem.Problem{{Severity: problem.Stop, What: words.Say("Work would end before it begins."), Do: words.Raw("Write a time after " + from.String() + ". Work past midnight is not planned.")}})
	case h.Net() <= 0:
		b.Report("/days/pause", []problem.Problem{{Severity: problem.Stop, What: words.Say("The pause takes the whole day."), Do: words.Say("Write the minutes of pause in a day.")}})
	case !slices.Contains(h.Weekdays[:], true):
		b.Report("/days/weekdays", []problem.Problem{{Severity: problem.Stop, What: words.Say("No day of the week is worked."), Do: words.Say("Choose the days, as mon, tue and so on.")}})
	default:
		return h, true
	}
	return h, false
}

// zone is the changes of the clocks.
func (b *builder) zone() days.Zone {
	var changes []days.Change
	for _, c := range b.Plan.Days.ClockChanges {
		if day, ok := b.date(c.At+"/at", c.Date); ok && c.Minutes != 0 {
			changes = append(changes, days.Change{At: day.At(days.UsualChange), Minutes: int64(c.Minutes)})
		}
	}
	return days.ZoneFrom(changes)
}

// dateText is a date as Mon 1 Mar, longDate with its year.
func dateText(d days.Date) string { return d.In(words.Style{}) }

func longDate(d days.Date) string { return days.WithYear(d).In(words.Style{}) }

// basicDate is a date as ISO 8601 has it without hyphens, 20270301: a number.
func basicDate(d days.Date) string {
	text := d.String()
	return text[:4] + text[5:7] + text[8:]
}

// momentText is a date and a time, Mon 1 Mar at 08:00.
func momentText(m days.Moment) string { return m.In(words.Style{}) }

// whenText is a time, with its date where that is not the day it is told on.
func whenText(m, on days.Moment) string {
	if m.Date() == on.Date() {
		return m.Clock().String()
	}
	return m.Clock().String() + " on " + dateText(m.Date())
}

// clockText is the end of something on a day: 24:00 rather than the 00:00 of the
// next, and with its date where that is later.
func clockText(day days.Date, m days.Moment) string {
	switch {
	case m.Date() == day:
		return m.Clock().String()
	case m == (day + 1).At(0):
		return "24:00"
	}
	return whenText(m, day.At(0))
}
