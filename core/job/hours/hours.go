// Package hours reads who works, and when.
package hours

import (
	"slices"

	"ceilingwright/core/plan"

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

// RoundedTo is the step of minutes to which work is rounded up: nobody goes by the
// minute. A choice.
const RoundedTo = 5

// Hours are the hours of work; Usable tells that they can be worked.
type Hours struct {
	days.Hours
	Usable bool
}

// People is how many work: one where the plan does not say.
func People(d *plan.Days) int { return max(1, min(d.People, MostPeople)) }

// Read reads the hours of work, where the plan asks for the days.
func Read(d *plan.Days) (h Hours, wrong problem.List) {
	if !d.IsAsked() {
		return h, nil
	}
	from, ok1 := clock(&wrong, "/days/from", d.From, usualFrom)
	to, ok2 := clock(&wrong, "/days/to", d.To, usualTo)
	h.Hours = days.Hours{From: from, To: to, Pause: days.WholeMinutes(d.Pause.Value, 1), Over: max(0, min(runsOver, int64(days.Day-to)))}
	h.readDays(d, &wrong)
	if d.People > MostPeople {
		wrong.Remark("/days/people", problem.Caution, words.Say("{given} people are counted as {most}.", words.Name("given", words.Digits(int64(d.People))), words.Count("most", MostPeople)),
			words.Say("Check the number."))
	}
	switch {
	case !ok1 || !ok2:
	case to <= from:
		wrong.Remark("/days/to", problem.Stop, words.Say("Work would end before it begins."), words.Say("Write a time after {from}. Work past midnight is not planned.", words.Of("from", from)))
	case h.Net() <= 0:
		wrong.Remark("/days/pause", problem.Stop, words.Say("The pause takes the whole day."), words.Say("Write the minutes of pause in a day."))
	case !slices.Contains(h.Weekdays[:], true):
		wrong.Remark("/days/weekdays", problem.Stop, words.Say("No day of the week is worked."), words.Say("Choose the days, as mon, tue and so on."))
	default:
		h.Usable = true
	}
	return h, wrong
}

// readDays reads on which days is worked.
func (h *Hours) readDays(d *plan.Days, wrong *problem.List) {
	for i, text := range d.Weekdays {
		w, ok := days.ParseWeekday(text)
		if !ok {
			wrong.Remark("/days/weekdays"+problem.Index(i), problem.Stop, words.Say("There is no such day of the week."), words.Say("Choose from mon, tue, wed, thu, fri, sat and sun."))
			continue
		}
		h.Weekdays[w] = true
	}
	if len(d.Weekdays) == 0 {
		h.Weekdays = [7]bool{true, true, true, true, true}
	}
	for _, off := range d.Off {
		if day, ok := Date(wrong, off.At, off.Date); ok {
			h.Off = append(h.Off, day)
		}
	}
	slices.Sort(h.Off)
}

// Date is a date of the plan; one that is not read is reported, an empty one is
// none.
func Date(wrong *problem.List, at, text string) (days.Date, bool) {
	if text == "" {
		return 0, false
	}
	d, ok := days.ParseDate(text)
	if !ok {
		wrong.Remark(at, problem.Stop, words.Say("There is no such date."), words.Say("Write year, month and day, such as 2027-03-01."))
	}
	return d, ok
}

func clock(wrong *problem.List, at, text string, usual days.Clock) (days.Clock, bool) {
	do := words.Say("Write it on the clock of 24 hours, such as {time}.", words.Of("time", usual))
	if text == "" {
		wrong.Remark(at, problem.Note, words.Say("Not given: {time} is counted.", words.Of("time", usual)), do)
		return usual, true
	}
	c, ok := days.ParseClock(text)
	if !ok {
		wrong.Remark(at, problem.Stop, words.Say("There is no such time of day."), do)
	}
	return c, ok
}
