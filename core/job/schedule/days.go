// Package schedule works out the work of a job: how long each piece of it takes, and on
// which day it is done.
package schedule

import (
	"slices"

	"ceilingwright/core/days"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Days are the work of the job and when it is done. Listed tells that the tasks are
// no more than are planned, Unsized are the steps, by their indexes, of which the
// labour is not known, and Labour what has to be paid. Rows are the days, row by row.
type Days struct {
	Scheduled
	Listed  bool
	Unsized []int
	Labour  []Labour
	Rows    []DayRow
}

// Scheduled is the work of the job as tasks with their days. Dated tells that they
// have them.
type Scheduled struct {
	Job      days.Job
	Tasks    []days.Task
	Origins  []days.Origin
	Schedule days.Schedule
	Dated    bool
}

// booking is the work being given its days.
type booking struct {
	Plan *plan.Plan
	*surface.Surface
	*steps.Found
	Days Days
	problem.List
}

// Of is the work of the job, where the plan asks for days, for a price or for the hours
// of a step, and when it is done: by how the layers are hung, the hours of work, what the
// steps cover and the gilding.
func Of(p *plan.Plan, s *surface.Surface, f *steps.Found) (Days, []problem.Problem) {
	b := booking{Plan: p, Surface: s, Found: f}
	w := b.placeDays()
	asked := p.Days.IsAsked()
	if !asked && !p.Price.Rate.Known {
		return b.Days, b.List
	}
	if asked || b.Days.Listed {
		b.sayUsual(&w)
	}
	if asked {
		b.sayUncounted()
	}
	if b.Days.Dated {
		b.layDays()
	}
	return b.Days, b.List
}

// Place is Of before the days are judged and laid out in rows.
func Place(p *plan.Plan, s *surface.Surface, f *steps.Found) Days {
	b := booking{Plan: p, Surface: s, Found: f}
	b.placeDays()
	return b.Days
}

// placeDays is the work of the job and when it is done, before it is judged and laid out
// in rows.
func (b *booking) placeDays() (w tally) {
	d := &b.Days
	for i := range b.Gilding {
		b.Report(b.Plan.Steps[b.Gilding[i].Size].At, b.Gilding[i].Problems)
	}
	asked, priced := b.Plan.Days.IsAsked(), b.Plan.Price.Rate.Known
	if !asked && !priced && !b.hasRates() {
		return w // nobody asks for the work
	}
	w = b.workOf(b.Gilding)
	d.Job, d.Unsized = w.Job, w.unsized
	if asked {
		d.Job.Painted = b.painted()
	}
	d.Tasks, d.Origins = d.Job.Tasks(hours.People(&b.Plan.Days))
	d.Listed, d.Labour = len(d.Tasks) > 0 && len(d.Tasks) <= days.MostTasks, d.labour(hours.People(&b.Plan.Days))
	if !asked && !priced {
		return w
	}
	if len(d.Tasks) > days.MostTasks {
		b.Remark("/days", problem.Stop, words.Say("The work comes in more than the {most} pieces that are planned.", words.Name("most", words.Digits(days.MostTasks))),
			words.Say("Use a size that takes leaf for longer, or fewer coats."))
	}
	b.schedule()
	return w
}

// hasRates tells whether how fast any step goes is given.
func (b *booking) hasRates() bool {
	for i := range b.Plan.Steps {
		if b.Plan.Steps[i].RateKnown {
			return true
		}
	}
	return false
}

// schedule gives the tasks their days.
func (b *booking) schedule() {
	d := &b.Days
	start, dated := hours.Date(&b.List, "/days/start", b.Plan.Days.Start)
	if !d.Listed || !b.Hours.Usable || !dated {
		return
	}
	d.Schedule, d.Dated = days.ScheduleOf(&days.Work{Tasks: d.Tasks, People: hours.People(&b.Plan.Days), Start: start, Hours: b.Hours.Hours, Zone: b.zone(), Round: hours.RoundedTo})
	if !d.Dated {
		b.Remark("/days/start", problem.Stop, words.Say("The work takes more than ten years."), words.Say("Check how long each piece of work takes, and the days that are worked."))
	}
}

// layDays is what the days come to once they are known.
func (b *booking) layDays() {
	d := &b.Days
	d.Rows = d.rows()
	b.missed()
	b.testedSizes()
	for i := range d.Tasks {
		if d.Origins[i].Work == days.Hanging {
			b.paintUnder(i)
		}
	}
	if b.Plan.Days.MaskDays.Known {
		for i := range d.Tasks {
			if d.Origins[i].Work == days.Hanging {
				b.upTooLong(i)
			}
		}
	}
}

// LastDay is the day on which the job is done.
func (w *Scheduled) LastDay() days.Date {
	_, last := w.Schedule.Span()
	return last
}

// Missed tells whether leaf cannot be laid while its size takes it, so that these days
// do not work yet.
func (w *Scheduled) Missed() bool { return misses(&w.Schedule) }

func misses(s *days.Schedule) bool {
	return slices.ContainsFunc(s.Placed, func(p days.Placed) bool { return p.Missed })
}

// giltOnSize is the gilding on a size, nil where there is none.
func giltOnSize(gilding []steps.Gilt, size int) *steps.Gilt {
	for i := range gilding {
		if g := &gilding[i]; g.Size == size && g.Divided {
			return g
		}
	}
	return nil
}

// UntilDust tells whether the size under a leaf task stays open until dust settles
// on it.
func (w *Scheduled) UntilDust(task int, gilding []steps.Gilt) bool {
	g := giltOnSize(gilding, w.Origins[w.Tasks[task].Window.Sizing].Step)
	return g != nil && g.UntilDust
}
