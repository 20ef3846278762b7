package job

import (
	"slices"

	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/steps"

	"ceilingwright/core/days"
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

// PlanDays works out the work of the job, where the plan asks for days, for a price or
// for the hours of a step, and when it is done. It reads the plan, the layers, how they
// are hung, the hours of work, what the steps cover and the gilding.
func (j *Job) PlanDays() {
	w := j.placeDays()
	d := &j.Days
	asked := j.Plan.Days.IsAsked()
	if !asked && !j.Plan.Price.Rate.Known {
		return
	}
	if asked || d.Listed {
		j.sayUsual(&w)
	}
	if asked {
		j.sayUncounted()
	}
	if d.Dated {
		j.layDays()
	}
}

// placeDays is the work of the job and when it is done, before it is judged and laid out
// in rows.
func (j *Job) placeDays() (w tally) {
	j.Days = Days{}
	d := &j.Days
	for i := range j.Gilding {
		j.Report(j.Plan.Steps[j.Gilding[i].Size].At, j.Gilding[i].Problems)
	}
	asked, priced := j.Plan.Days.IsAsked(), j.Plan.Price.Rate.Known
	if !asked && !priced && !j.hasRates() {
		return w // nobody asks for the work
	}
	w = j.workOf(j.Gilding)
	d.Job, d.Unsized = w.Job, w.unsized
	if asked {
		d.Job.Painted = j.painted()
	}
	d.Tasks, d.Origins = d.Job.Tasks(hours.People(&j.Plan.Days))
	d.Listed, d.Labour = len(d.Tasks) > 0 && len(d.Tasks) <= days.MostTasks, d.labour(hours.People(&j.Plan.Days))
	if !asked && !priced {
		return w
	}
	if len(d.Tasks) > days.MostTasks {
		j.remark("/days", problem.Stop, words.Say("The work comes in more than the {most} pieces that are planned.", words.Name("most", words.Digits(days.MostTasks))),
			words.Say("Use a size that takes leaf for longer, or fewer coats."))
	}
	j.schedule()
	return w
}

// hasRates tells whether how fast any step goes is given.
func (j *Job) hasRates() bool {
	for i := range j.Plan.Steps {
		if j.Plan.Steps[i].RateKnown {
			return true
		}
	}
	return false
}

// schedule gives the tasks their days.
func (j *Job) schedule() {
	d := &j.Days
	start, dated := hours.Date(&j.Problems, "/days/start", j.Plan.Days.Start)
	if !d.Listed || !j.Hours.Usable || !dated {
		return
	}
	d.Schedule, d.Dated = days.ScheduleOf(&days.Work{Tasks: d.Tasks, People: hours.People(&j.Plan.Days), Start: start, Hours: j.Hours.Hours, Zone: j.zone(), Round: hours.RoundedTo})
	if !d.Dated {
		j.remark("/days/start", problem.Stop, words.Say("The work takes more than ten years."), words.Say("Check how long each piece of work takes, and the days that are worked."))
	}
}

// layDays is what the days come to once they are known.
func (j *Job) layDays() {
	d := &j.Days
	d.Rows = d.rows()
	j.missed()
	j.testedSizes()
	for i := range d.Tasks {
		if d.Origins[i].Work == days.Hanging {
			j.paintUnder(i)
		}
	}
	if j.Plan.Days.MaskDays.Known {
		for i := range d.Tasks {
			if d.Origins[i].Work == days.Hanging {
				j.upTooLong(i)
			}
		}
	}
}

// DaysPaid is how many days a platform is hired for, from the first on which it
// is needed to the last with those off, and on how many days someone works; known is
// false where the days are not known.
func (j *Job) DaysPaid() (hired, worked int, known bool) {
	d := &j.Days
	if !d.Dated {
		return 0, 0, false
	}
	if first, last, needed := j.DaysAloft(&d.Scheduled); needed {
		hired = int(last-first) + 1
	}
	worked, _, _ = d.Schedule.Count()
	return hired, worked, true
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
func (j *Job) giltOnSize(size int) *steps.Gilt {
	for i := range j.Gilding {
		if g := &j.Gilding[i]; g.Size == size && g.Divided {
			return g
		}
	}
	return nil
}

// UntilDust tells whether the size under a leaf task stays open until dust settles
// on it.
func (j *Job) UntilDust(task int) bool {
	g := j.giltOnSize(j.Days.Origins[j.Days.Tasks[task].Window.Sizing].Step)
	return g != nil && g.UntilDust
}
