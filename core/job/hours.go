package job

import (
	"slices"

	"ceilingwright/core/days"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// The hours that are counted where the plan gives none. A choice.
const (
	usualFrom days.Clock = 8 * 60
	usualTo   days.Clock = 16*60 + 30
)

// runsOver is how many minutes longer a day is worked where that ends a piece of
// work: nobody comes back the next day for so little. A choice.
const runsOver = 20

// MostPeople is more than any crew on one ceiling.
const MostPeople = 100

// Hours are the hours of work; Usable tells that they can be worked.
type Hours struct {
	days.Hours
	Usable bool
}

// People is how many work: one where the plan does not say.
func (j *Job) People() int { return max(1, min(j.Plan.Days.People, MostPeople)) }

// ReadHours reads the hours of work, where the plan asks for the days. It reads the
// plan alone.
func (j *Job) ReadHours() {
	j.Hours = Hours{}
	d := &j.Plan.Days
	if !d.IsAsked() {
		return
	}
	from, ok1 := j.clock("/days/from", d.From, usualFrom)
	to, ok2 := j.clock("/days/to", d.To, usualTo)
	j.Hours.Hours = days.Hours{From: from, To: to, Pause: WholeMinutes(d.Pause.Value, 1), Over: max(0, min(runsOver, int64(days.Day-to)))}
	j.readDays()
	if d.People > MostPeople {
		j.remark("/days/people", problem.Caution, words.Say("{given} people are counted as {most}.", words.Name("given", words.Digits(int64(d.People))), words.Count("most", MostPeople)),
			words.Say("Check the number."))
	}
	h := &j.Hours
	switch {
	case !ok1 || !ok2:
	case to <= from:
		j.remark("/days/to", problem.Stop, words.Say("Work would end before it begins."), words.Say("Write a time after {from}. Work past midnight is not planned.", words.Of("from", from)))
	case h.Net() <= 0:
		j.remark("/days/pause", problem.Stop, words.Say("The pause takes the whole day."), words.Say("Write the minutes of pause in a day."))
	case !slices.Contains(h.Weekdays[:], true):
		j.remark("/days/weekdays", problem.Stop, words.Say("No day of the week is worked."), words.Say("Choose the days, as mon, tue and so on."))
	default:
		h.Usable = true
	}
}

// readDays reads on which days is worked.
func (j *Job) readDays() {
	d, h := &j.Plan.Days, &j.Hours
	for i, text := range d.Weekdays {
		w, ok := days.ParseWeekday(text)
		if !ok {
			j.remark("/days/weekdays"+problem.Index(i), problem.Stop, words.Say("There is no such day of the week."), words.Say("Choose from mon, tue, wed, thu, fri, sat and sun."))
			continue
		}
		h.Weekdays[w] = true
	}
	if len(d.Weekdays) == 0 {
		h.Weekdays = [7]bool{true, true, true, true, true}
	}
	for _, off := range d.Off {
		if day, ok := j.date(off.At, off.Date); ok {
			h.Off = append(h.Off, day)
		}
	}
	slices.Sort(h.Off)
}

// remark reports one problem at a blank.
func (j *Job) remark(at string, severity problem.Severity, what, do words.Text) {
	j.Report(at, []problem.Problem{{Severity: severity, What: what, Do: do}})
}

// date is a date of the plan; one that is not read is reported, an empty one is
// none.
func (j *Job) date(at, text string) (days.Date, bool) {
	if text == "" {
		return 0, false
	}
	d, ok := days.ParseDate(text)
	if !ok {
		j.remark(at, problem.Stop, words.Say("There is no such date."), words.Say("Write year, month and day, such as 2027-03-01."))
	}
	return d, ok
}

func (j *Job) clock(at, text string, usual days.Clock) (days.Clock, bool) {
	do := words.Say("Write it on the clock of 24 hours, such as {time}.", words.Of("time", usual))
	if text == "" {
		j.remark(at, problem.Note, words.Say("Not given: {time} is counted.", words.Of("time", usual)), do)
		return usual, true
	}
	c, ok := days.ParseClock(text)
	if !ok {
		j.remark(at, problem.Stop, words.Say("There is no such time of day."), do)
	}
	return c, ok
}

// painted is when the paint was done that the mask goes on, 0 where it is old.
// A day without a time counts from the end of its work.
func (j *Job) painted() days.Moment {
	text := j.Plan.Days.PaintedOn
	if m, ok := days.ParseMoment(text); ok {
		return m
	}
	if day, ok := j.date("/days/freshPaint/doneOn", text); ok {
		return day.At(j.Hours.To)
	}
	return 0
}

// zone is the changes of the clocks.
func (j *Job) zone() days.Zone {
	var changes []days.Change
	for _, c := range j.Plan.Days.ClockChanges {
		if day, ok := j.date(c.At+"/at", c.Date); ok && c.Minutes != 0 {
			changes = append(changes, days.Change{At: day.At(days.UsualChange), Minutes: int64(c.Minutes)})
		}
	}
	return days.ZoneFrom(changes)
}
