package schedule

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/plan"
)

// Otherwise is one thing that could be otherwise about the days.
type Otherwise uint8

// What could be otherwise: one person more, one hour more a day, Saturdays too.
const (
	OneMore Otherwise = iota
	OneHourMore
	Saturdays
)

// Saved is what one thing otherwise would save: the job is then done at Then, by so
// many Days of the calendar sooner, or by so many Minutes of the same day; no sooner
// where both are nothing.
type Saved struct {
	By            Otherwise
	Then          days.Moment
	Days, Minutes int64
}

// TryOtherwise works out what one more person, one more hour a day and Saturdays would
// save of the days, as far as leaf can then be laid in its time.
func TryOtherwise(p *plan.Plan, s *surface.Surface, f *steps.Found, d *Days) (saves []Saved) {
	if !d.Dated {
		return nil
	}
	now := &d.Schedule
	try := func(by Otherwise, work *days.Work) {
		then, ok := days.ScheduleOf(work)
		if !ok || misses(&then) {
			return
		}
		end, before := then.Zone.Moment(then.Finish), now.Zone.Moment(now.Finish)
		one := Saved{By: by, Then: end}
		if one.Days = int64(before.Date() - end.Date()); end >= before {
			one.Days = 0
		} else if one.Days == 0 {
			one.Minutes = int64(before - end)
		}
		saves = append(saves, one)
	}
	if now.People < hours.MostPeople {
		b := booking{Plan: p, Surface: s, Found: f}
		more := b.workOf(steps.Gild(p, s, f, now.People+1))
		more.Painted = d.Job.Painted
		work := *now.Work
		work.People++
		if work.Tasks, _ = more.Tasks(work.People); len(work.Tasks) <= days.MostTasks {
			try(OneMore, &work)
		}
	}
	if now.Hours.To+60 <= days.Day {
		work := *now.Work
		work.Hours.To += 60
		try(OneHourMore, &work)
	}
	if !now.Hours.Weekdays[days.Saturday] {
		work := *now.Work
		work.Hours.Weekdays[days.Saturday] = true
		try(Saturdays, &work)
	}
	return saves
}
