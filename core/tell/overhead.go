package tell

import (
	"cmp"
	"slices"
	"strconv"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/safety"
)

// isAloft tells whether a task is done from the platform: all that is done on
// the ceiling, or on a cornice under it. Marking out is; measuring, protecting
// and clearing away are done from the floor, and so are walls.
func (b *builder) isAloft(c *calendar, task int) bool {
	o := c.origins[task]
	switch {
	case o.Work != days.Otherwise:
		return true
	case o.Step < 0:
		return false
	}
	s := &b.Plan.Steps[o.Step]
	return s.Kind != finish.Protect && (s.Basis != finish.SurfaceOf || b.isCornice(s.Surface))
}

// isCornice tells whether a surface is a cornice; one that is not known counts
// as one, which is the less safe.
func (b *builder) isCornice(id string) bool {
	return !slices.ContainsFunc(b.Plan.Finish.Surfaces, func(s plan.Surface) bool { return s.ID == id && s.Kind == plan.Walls })
}

// overheadOf is how many of so many minutes at a task the hands are above the
// head: all of them, but none in marking out, and in hanging not those in which
// the platform is moved. Rounded up to the minute.
func (b *builder) overheadOf(c *calendar, task int, minutes int64) int64 {
	o, t := c.origins[task], &c.tasks[task]
	switch {
	case t.Aside || o.Work == days.Marking || !b.isAloft(c, task):
		return 0
	case o.Work == days.Hanging && t.Fixed > 0:
		return (minutes*(t.Fixed-c.job.Layers[o.Layer].Move) + t.Fixed - 1) / t.Fixed
	}
	return minutes
}

// daysAloft are the first and the last day on which the platform is needed,
// false where the days are not known or it is needed on none.
func (b *builder) daysAloft(c *calendar) (first, last days.Date, ok bool) {
	if !c.isDated {
		return 0, 0, false
	}
	s := &c.schedule
	for i := range s.Placed {
		if !b.isAloft(c, i) {
			continue
		}
		from, to := s.Zone.Moment(s.Placed[i].Start).Date(), s.Zone.Moment(max(s.Placed[i].Start, s.Placed[i].End-1)).Date()
		if !ok {
			first, last, ok = from, to, true
		}
		first, last = min(first, from), max(last, to)
	}
	return first, last, ok
}

// overheadDay is the work above the head on one day. One is what one person
// has who takes part in all of it, in minutes; All what everybody has together;
// Crew the most who are at it at a time.
type overheadDay struct {
	day      days.Date
	one, all int64
	crew     int
	tasks    []overheadTask
}

type overheadTask struct {
	task    int
	minutes int64
}

// overheadDays are the days with work above the head, in order.
func (b *builder) overheadDays() []overheadDay {
	c := b.calendar()
	if !c.isDated {
		return nil
	}
	type stretch struct {
		task int
		days.Part
	}
	s := &c.schedule
	var parts []stretch
	for i := range s.Placed {
		if b.overheadOf(c, i, 1) > 0 {
			for _, p := range s.Parts(i) {
				parts = append(parts, stretch{i, p})
			}
		}
	}
	slices.SortStableFunc(parts, func(x, y stretch) int { return cmp.Compare(x.From, y.From) })
	var list []overheadDay
	var until days.Moment // one person is busy
	for _, p := range parts {
		day := p.From.Date()
		if len(list) == 0 || list[len(list)-1].day != day {
			list = append(list, overheadDay{day: day})
		}
		d := &list[len(list)-1]
		crew := max(1, s.Placed[p.task].Crew)
		d.crew, d.all = max(d.crew, crew), d.all+int64(crew)*b.overheadOf(c, p.task, int64(p.To-p.From))
		if from := max(p.From, until); from < p.To {
			d.add(p.task, b.overheadOf(c, p.task, int64(p.To-from)))
			until = p.To
		}
	}
	return list
}

// add counts time at a task, with what it had before the pause.
func (d *overheadDay) add(task int, minutes int64) {
	d.one += minutes
	if last := len(d.tasks) - 1; last >= 0 && d.tasks[last].task == task {
		d.tasks[last].minutes += minutes
		return
	}
	d.tasks = append(d.tasks, overheadTask{task, minutes})
}

// overheadHours is the most one person has above the head on a day.
func overheadHours(list []overheadDay) safety.Fact {
	if len(list) == 0 {
		return safety.Fact{}
	}
	return safety.FactOf(measure.NumberFromFraction(worstDay(list).one, 60))
}

// worstDay is the first of the days with most work above the head.
func worstDay(list []overheadDay) *overheadDay {
	worst := &list[0]
	for i := range list {
		if list[i].one > worst.one {
			worst = &list[i]
		}
	}
	return worst
}

// Hours above the head in a day from which it is told: over the first it is a
// strain, over the second too much.
const (
	overheadMuch    = 2 * 60
	overheadTooMuch = 4 * 60
)

const overheadSource = "Two and four hours a day: Washington State, WAC 296-62-05105 and 296-62-05174, repealed in 2003, as guidance; the figures are from memory. What counts as overhead here is common practice, no source."

// overhead is how long one person has the hands above the head, day by day.
func (b *builder) overhead() {
	list := b.overheadDays()
	if len(list) == 0 {
		return
	}
	for i := range list {
		d := &list[i]
		b.Sheet.Platform.Overhead = append(b.Sheet.Platform.Overhead, sheet.Overhead{
			Day: dateText(d.day), Text: b.overheadText(d), Over: d.one > overheadMuch,
		})
	}
	worst := worstDay(list)
	text := minutesText(worst.one)
	b.Figure(sheet.Figure{
		ID: "overhead.hours", Block: page.Safety, Label: "hands above the head, worst day, one person", Value: page.Plain(overheadHours(list).Value), Unit: "h", Text: text,
		Working: sheet.Working{
			Rule:   "What one person has who takes part in all of it: hanging without the moves of the platform, bridging, coats, leaf, peeling and touching up on the ceiling.",
			Sum:    dateText(worst.day) + ": " + b.overheadSum(worst) + " = " + text,
			Source: overheadSource,
		},
	})
}

// overheadSum is what the time is made of, as a sum.
func (b *builder) overheadSum(d *overheadDay) string {
	c := b.calendar()
	text := ""
	for i, t := range d.tasks {
		if i > 0 {
			text += " + "
		}
		text += minutesText(t.minutes) + " “" + c.tasks[t.task].Name + "”"
	}
	return text
}

// overheadText is one day in words; a long one with what to do about it.
func (b *builder) overheadText(d *overheadDay) string {
	text := minutesText(d.one) + ": " + b.overheadSum(d) + "."
	if d.one <= overheadMuch {
		return text
	}
	if d.one > overheadTooMuch {
		text += " Over 4 h is too much for one person."
	} else {
		text += " Over 2 h is a strain."
	}
	return text + b.turns(d)
}

// turns is what sharing the work of a day makes of it: among those there are,
// and how many it takes to come to two hours each.
func (b *builder) turns(d *overheadDay) string {
	each := func(people int64) int64 { return (d.all + people - 1) / people }
	now, enough := int64(b.people()), (d.all+overheadMuch-1)/overheadMuch
	text := ""
	if now > int64(d.crew) && each(now) < d.one {
		text = " Take turns: shared among the " + strconv.FormatInt(now, 10) + " of you each has " + minutesText(each(now)) + "."
		if each(now) <= overheadMuch {
			return text
		}
	}
	next := now + 1
	if next < enough {
		text += " With " + strconv.FormatInt(next, 10) + " people taking turns each would have " + minutesText(each(next)) + ", with " + strconv.FormatInt(enough, 10) + " no more than 2 h."
	} else {
		text += " With " + strconv.FormatInt(next, 10) + " people taking turns each would have " + minutesText(each(next)) + "."
	}
	return text + " Or spread it over more days, with work on the floor in between."
}
