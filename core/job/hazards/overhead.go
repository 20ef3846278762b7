package hazards

import (
	"cmp"
	"slices"

	"ceilingwright/core/days"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/words"
)

// OverheadDay is the work above the head on one day. One is what one person
// has who takes part in all of it, in minutes; Turns what sharing it makes of it.
type OverheadDay struct {
	Day      days.Date
	One      int64
	Strain   Strain
	Tasks    []OverheadTask
	Turns    Turns
	all      int64 // what everybody has together
	together int   // the most who are at it at a time
}

// OverheadTask is so many minutes at one task, by its name.
type OverheadTask struct {
	Name    words.Text
	Minutes int64
	task    int
}

// Strain is what so much work above the head in a day is: over two hours it is a
// strain, over four too much (Washington State, WAC 296-62-05105 and 296-62-05174,
// repealed in 2003, as guidance; the figures are from memory).
type Strain int

// The degrees of it.
const (
	NoStrain Strain = iota
	Strained
	TooMuch
)

const (
	overheadMuch    = 2 * 60
	overheadTooMuch = 4 * 60
)

// Turns is what sharing the work of a day makes of it. Now are those there are, 0
// where sharing among them gains nothing, NowEach the minutes each then has;
// Suffices tells that these are few enough. Next are one more, NextEach what each
// has; Enough is how many it takes to come to two hours each.
type Turns struct {
	Now, NowEach   int64
	Suffices       bool
	Next, NextEach int64
	Enough         int64
}

// overheadOf is how many of so many minutes at a task the hands are above the
// head: all of them, but none in marking out, and in hanging not those in which
// the platform is moved. Rounded up to the minute.
func overheadOf(p *plan.Plan, w *schedule.Scheduled, task int, minutes int64) int64 {
	o, t := w.Origins[task], &w.Tasks[task]
	switch {
	case t.Aside || o.Work == days.Marking || !schedule.IsAloft(p, o):
		return 0
	case o.Work == days.Hanging && t.Fixed > 0:
		return (minutes*(t.Fixed-w.Job.Layers[o.Layer].Move) + t.Fixed - 1) / t.Fixed
	}
	return minutes
}

// overheadDays are the days with work above the head, in order, shared among those who
// work.
func overheadDays(p *plan.Plan, w *schedule.Scheduled) []OverheadDay {
	if !w.Dated {
		return nil
	}
	type stretch struct {
		task int
		days.Part
	}
	s := &w.Schedule
	var parts []stretch
	for i := range s.Placed {
		if overheadOf(p, w, i, 1) > 0 {
			for _, part := range s.Parts(i) {
				parts = append(parts, stretch{i, part})
			}
		}
	}
	slices.SortStableFunc(parts, func(x, y stretch) int { return cmp.Compare(x.From, y.From) })
	var list []OverheadDay
	var until days.Moment // one person is busy
	for _, part := range parts {
		day := part.From.Date()
		if len(list) == 0 || list[len(list)-1].Day != day {
			list = append(list, OverheadDay{Day: day})
		}
		d := &list[len(list)-1]
		crew := max(1, s.Placed[part.task].Crew)
		d.together, d.all = max(d.together, crew), d.all+int64(crew)*overheadOf(p, w, part.task, int64(part.To-part.From))
		if from := max(part.From, until); from < part.To {
			d.add(part.task, w.Tasks[part.task].Name, overheadOf(p, w, part.task, int64(part.To-from)))
			until = part.To
		}
	}
	for i := range list {
		list[i].weigh(int64(hours.People(&p.Days)))
	}
	return list
}

// add counts time at a task, with what it had before the pause.
func (d *OverheadDay) add(task int, name words.Text, minutes int64) {
	d.One += minutes
	if last := len(d.Tasks) - 1; last >= 0 && d.Tasks[last].task == task {
		d.Tasks[last].Minutes += minutes
		return
	}
	d.Tasks = append(d.Tasks, OverheadTask{Name: name, Minutes: minutes, task: task})
}

// weigh tells how much the day is for one person, and what sharing makes of it.
func (d *OverheadDay) weigh(people int64) {
	if d.One <= overheadMuch {
		return
	}
	d.Strain = Strained
	if d.One > overheadTooMuch {
		d.Strain = TooMuch
	}
	each := func(people int64) int64 { return (d.all + people - 1) / people }
	d.Turns = Turns{Next: people + 1, NextEach: each(people + 1), Enough: (d.all + overheadMuch - 1) / overheadMuch}
	if now := each(people); people > int64(d.together) && now < d.One {
		d.Turns.Now, d.Turns.NowEach, d.Turns.Suffices = people, now, now <= overheadMuch
	}
}

// WorstDay is the first of the days with most work above the head, nil where there
// is none.
func WorstDay(list []OverheadDay) *OverheadDay {
	var worst *OverheadDay
	for i := range list {
		if worst == nil || list[i].One > worst.One {
			worst = &list[i]
		}
	}
	return worst
}

// overheadHours is the most one person has above the head on a day.
func overheadHours(list []OverheadDay) measure.Fact {
	worst := WorstDay(list)
	if worst == nil {
		return measure.Fact{}
	}
	return measure.FactOf(measure.NumberFromFraction(worst.One, 60))
}
