package schedule

import (
	"cmp"
	"slices"

	"ceilingwright/core/days"
	"ceilingwright/core/job/steps"
)

// DayRow is a row of the days: what is done at a task on the Nth day it is worked at,
// counted from 1, or, where Nth is 0, what it waits for, which is then its Because.
// Crew people, 0 where they are counted in another task, are each at it for so many
// Minutes; Rounded is what rounding adds to that, Pause the pause in between. Critical
// tells that the finish moves with it.
type DayRow struct {
	Task, Nth               int
	From, To                days.Moment
	Crew                    int
	Minutes, Rounded, Pause int64
	Critical                bool
}

// InOrder are the tasks by when they begin.
func (w *Scheduled) InOrder() []int {
	placed := w.Schedule.Placed
	order := make([]int, len(placed))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(placed[i].Start, placed[j].Start) })
	return order
}

// rows are the tasks, day by day, with what dries in between, by when they begin.
func (w *Scheduled) rows() []DayRow {
	list := make([]DayRow, 0, 2*len(w.Tasks))
	critical := w.Schedule.Critical()
	for _, i := range w.InOrder() {
		if w.Waits(i) {
			one := &w.Schedule.Placed[i]
			list = append(list, DayRow{Task: i, From: w.at(w.Schedule.Placed[one.After].End), To: w.at(one.Ready), Critical: critical[i]})
		}
		list = w.appendWork(list, i, critical[i])
	}
	slices.SortStableFunc(list, func(x, y DayRow) int { return cmp.Compare(x.From, y.From) })
	return list
}

// at is what the clock on the wall shows at an instant.
func (w *Scheduled) at(i days.Instant) days.Moment { return w.Schedule.Zone.Moment(i) }

// Waits tells whether a task waits for something to dry, to come to tack or to age.
func (w *Scheduled) Waits(task int) bool {
	one := &w.Schedule.Placed[task]
	if one.After < 0 || one.Ready <= w.Schedule.Placed[one.After].End {
		return false
	}
	return one.Because == days.Dries || one.Because == days.Recoats || one.Because == days.Tacks || one.Because == days.Ages
}

// IsPutOff tells whether the first section of a size is put off to another day, so that
// its leaf is laid in working hours.
func (w *Scheduled) IsPutOff(task int) bool {
	one := &w.Schedule.Placed[task]
	return one.Because == days.Matched && w.Origins[task].Section <= 1 && w.at(one.Start).Date() != w.at(one.Ready).Date()
}

// appendWork are the rows of a task, one for each day it is worked at.
func (w *Scheduled) appendWork(list []DayRow, task int, critical bool) []DayRow {
	crew := max(1, w.Schedule.Placed[task].Crew)
	if w.Tasks[task].Aside {
		crew = 0
	}
	// The days go by steps of some minutes; the labour is what it is.
	_, left := (&days.Work{Tasks: w.Tasks, People: w.Schedule.People}).Takes(task)
	parts := w.Schedule.Parts(task)
	for n, k := 1, 0; k < len(parts); n++ {
		row := DayRow{Task: task, Nth: n, From: parts[k].From, Crew: crew, Critical: critical}
		worked := int64(0)
		for day := row.From.Date(); k < len(parts) && parts[k].From.Date() == day; k++ {
			row.To = parts[k].To
			worked += int64(parts[k].To - parts[k].From)
		}
		row.Minutes = min(worked, left)
		row.Rounded, row.Pause = worked-row.Minutes, int64(row.To-row.From)-worked
		left -= row.Minutes
		list = append(list, row)
	}
	return list
}

// Pause is how the pause moves a task that is not broken off.
type Pause uint8

// The ways: not at all; the pause comes after it, or it waits until the pause is over.
const (
	Unmoved Pause = iota
	PauseAfter
	AfterPause
)

// PauseAt is how the pause moves a task.
func (w *Scheduled) PauseAt(task int) Pause {
	hours, one := &w.Schedule.Hours, &w.Schedule.Placed[task]
	if !w.Tasks[task].Whole || hours.Pause == 0 {
		return Unmoved
	}
	start, end, pause := w.at(one.Start), w.at(one.End), hours.PauseFrom()
	switch {
	case start.Date() != end.Date():
	case start.Clock() < pause && end.Clock() > pause:
		return PauseAfter
	case start.Clock() == pause+days.Clock(hours.Pause) && w.freeBefore(task) < start.Date().At(pause):
		return AfterPause
	}
	return Unmoved
}

// freeBefore is when a task could have begun, had it been short.
func (w *Scheduled) freeBefore(task int) days.Moment {
	one := &w.Schedule.Placed[task]
	free := one.Ready
	if one.Because == days.Staffed {
		free = max(free, w.Schedule.Placed[one.After].End)
	}
	return w.at(free)
}

// RunsOver tells whether a task is ended after the hours of the day on which it ends.
func (w *Scheduled) RunsOver(task int) (day days.Date, runs bool) {
	last := w.at(w.Schedule.Placed[task].End - 1)
	return last.Date(), last >= last.Date().At(w.Schedule.Hours.To)
}

// Fewer is why not all who are there do a task.
type Fewer uint8

// The reasons: there is none to give; two hold a panel; two hold a line; shared by
// more, each would have too little.
const (
	NotFewer Fewer = iota
	AtPanel
	AtLine
	TooLittle
)

// Fewer is why not all who are there do a task, where more than two are.
func (w *Scheduled) Fewer(task int) Fewer {
	o := w.Origins[task]
	switch {
	case w.Schedule.Placed[task].Crew >= w.Schedule.People || w.Schedule.People <= 2 || w.Tasks[task].Aside:
	case o.Work == days.Hanging:
		return AtPanel
	case o.Work == days.Marking:
		return AtLine
	case o.Coat > 0 && w.Job.Steps[o.Step].Kind.IsLiquid(), o.Work == days.Bridging, o.Work == days.TouchingUp:
		return TooLittle
	}
	return NotFewer
}

// LeafOn is the leaf task on the size of a task, −1 where it is no size.
func (w *Scheduled) LeafOn(task int) int {
	return slices.IndexFunc(w.Tasks, func(t days.Task) bool { return t.Window != nil && t.Window.Sizing == task })
}

// TakesLeaf is from when to when the size under a leaf task takes leaf, the reserve
// taken off; tested tells that it goes by the test.
func (w *Scheduled) TakesLeaf(task int) (from, to days.Moment, tested bool) {
	opens, tested := w.Schedule.Opens(task)
	return w.at(opens), w.at(opens + days.Instant(w.Tasks[task].Window.Open)), tested
}

// BeginBy is the latest time at which leaf can still be begun and all laid on a day;
// later tells that it is later than planned.
func (w *Scheduled) BeginBy(task int) (at days.Moment, later bool) {
	s := &w.Schedule
	_, minutes := s.Takes(task)
	start := w.at(s.Placed[task].Start)
	_, closes, _ := w.TakesLeaf(task)
	pause := start.Date().At(s.Hours.PauseFrom())
	after := pause + days.Moment(s.Hours.Pause)
	end := min(closes, start.Date().At(s.Hours.To))
	if end > pause && end < after {
		end = pause
	}
	begin := end - days.Moment(minutes)
	if begin < after && end > pause {
		begin -= after - pause
	}
	return begin, begin > start
}

// SectionTimes are when the size of a section is laid, and its leaf from when to when.
type SectionTimes struct{ Size, From, To days.Moment }

// SectionTimes are the times of the sections of a gilding, none where the days are not
// known.
func (w *Scheduled) SectionTimes(g *steps.Gilt, gilding []steps.Gilt) []SectionTimes {
	if !w.Dated {
		return nil
	}
	times := make([]SectionTimes, len(g.Sections))
	before := 0 // sections of the same size under leaf that is laid earlier
	for i := range gilding {
		if other := &gilding[i]; other.Divided && other.Size == g.Size && other.Leaf < g.Leaf {
			before += len(other.Sections)
		}
	}
	for i, o := range w.Origins {
		k, one := o.Section-1, &w.Schedule.Placed[i]
		if o.Step == g.Size {
			k -= before
		}
		if k < 0 || k >= len(times) {
			continue
		}
		switch o.Step {
		case g.Size:
			times[k].Size = w.at(one.Start)
		case g.Leaf:
			times[k].From, times[k].To = w.at(one.Start), w.at(one.End)
		}
	}
	return times
}
