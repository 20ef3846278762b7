package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/tell/page"
)

// workSum is how the end of a day's work at a task comes about, from one moment to
// another with so many minutes of work between them: the minutes that each of those
// who share it is at it, what rounding adds, and the pause.
func (b *builder) workSum(from, to days.Moment, worked, rounded int64) string {
	sum := from.Clock().String() + " + " + minutesText(worked-rounded)
	if rounded > 0 {
		sum += " + " + minutesText(rounded) + " to the full five"
	}
	if pause := int64(to-from) - worked; pause > 0 {
		sum += " + " + minutesText(pause) + " of pause"
	}
	return sum + " = " + clockText(from.Date(), to)
}

// waitSum is how the end of a wait comes about: so long on a clock that is never
// changed, and what the change of the clocks does to it; or days of the calendar.
func (b *builder) waitSum(s *days.Schedule, i int) string {
	one := &s.Placed[i]
	begun := s.Placed[one.After].End
	from, to := s.Zone.Moment(begun), s.Zone.Moment(one.Ready)
	if one.Because == days.Ages {
		return "to the same time, " + from.Clock().String() + ": " + longDate(from.Date()) + " + " + page.Plural(int64(to.Date()-from.Date()), "day", "days") + " = " + longDate(to.Date())
	}
	told := func(m days.Moment) string { return longDate(m.Date()) + " at " + m.Clock().String() }
	if from.Date() == to.Date() {
		told = func(m days.Moment) string { return m.Clock().String() }
	}
	sum := told(from) + " + " + minutesText(int64(one.Ready-begun))
	switch by := int64(to-from) - int64(one.Ready-begun); {
	case by > 0:
		sum += " + " + minutesText(by) + " the clocks go forward"
	case by < 0:
		sum += " − " + minutesText(-by) + " the clocks go back"
	}
	return sum + " = " + told(to)
}

// beginBy is the latest time at which leaf can still be begun and all laid on a day,
// where that is later than planned; "" elsewhere.
func (b *builder) beginBy(c *calendar, i int) string {
	s := &c.schedule
	_, minutes := s.Takes(i)
	start := s.Zone.Moment(s.Placed[i].Start)
	opens, _ := s.Opens(i)
	pause := start.Date().At(s.Hours.PauseFrom())
	after := pause + days.Moment(s.Hours.Pause)
	end := min(s.Zone.Moment(opens+days.Instant(c.tasks[i].Window.Open)), start.Date().At(s.Hours.To))
	if end > pause && end < after {
		end = pause
	}
	begin := end - days.Moment(minutes)
	if begin < after && end > pause {
		begin -= after - pause
	}
	if begin <= start {
		return ""
	}
	return ", so begin by " + begin.Clock().String()
}
