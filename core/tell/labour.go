package tell

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/days"
)

// work is labour: minutes of one person, as the days count them, and so as they are
// paid. step is the step of the finish, −1 for what is done to a layer or to the room.
// shares are the tasks it is made of, those alike counted together.
type work struct {
	what    string
	step    int
	minutes int64
	shares  []share
}

// share is so many tasks that crew people do together in so many minutes each.
type share struct{ tasks, crew, minutes int64 }

// labour is what has to be paid, in the order of the work: the coats of a step
// and the sections of a gilding together, and each thing done to a layer by
// itself. Labour is that of the people who share a task, not of all there are, each
// for whole minutes.
func (c *calendar) labour(people int) []work {
	var list []work
	line := slices.Repeat([]int{-1}, len(c.job.Steps))   // of each step
	counted := days.Work{Tasks: c.tasks, People: people} // to the minute
	for i := range c.tasks {
		t, o := &c.tasks[i], c.origins[i]
		if t.Aside {
			continue // counted with the leaf it is done beside
		}
		at := len(list)
		switch isOfStep := o.Coat > 0 || o.Section > 0; {
		case !isOfStep:
			list = append(list, work{what: t.Name, step: -1})
		case line[o.Step] < 0:
			line[o.Step] = at
			list = append(list, work{what: c.job.Steps[o.Step].Name, step: o.Step})
		default:
			at = line[o.Step]
		}
		crew, minutes := counted.Takes(i)
		list[at].add(int64(crew), minutes)
	}
	return list
}

func (w *work) add(crew, minutes int64) {
	w.minutes += crew * minutes
	if last := len(w.shares) - 1; last >= 0 && w.shares[last].crew == crew && w.shares[last].minutes == minutes {
		w.shares[last].tasks++
		return
	}
	w.shares = append(w.shares, share{1, crew, minutes})
}

// sum is how the minutes come about: 2 × 2 × 50 min + 45 min.
func (w *work) sum() string {
	parts := make([]string, len(w.shares))
	for i, s := range w.shares {
		for _, n := range []int64{s.tasks, s.crew} {
			if n > 1 {
				parts[i] += strconv.FormatInt(n, 10) + " × "
			}
		}
		parts[i] += minutesText(s.minutes)
	}
	if len(parts) == 1 && w.shares[0].tasks*w.shares[0].crew == 1 {
		return "1 × " + parts[0]
	}
	return strings.Join(parts, " + ")
}

// daysPaid is how many days a platform is hired for, from the first on which it
// is needed to the last with those off, and on how many days someone works. ok is
// false where the days are not known.
func (b *builder) daysPaid() (hired, worked int, ok bool) {
	c := b.calendar()
	if !c.isDated {
		return 0, 0, false
	}
	if first, last, needed := b.DaysAloft(c.scheduled()); needed {
		hired = int(last-first) + 1
	}
	worked, _, _ = c.schedule.Count()
	return hired, worked, true
}
