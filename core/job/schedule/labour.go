package schedule

import (
	"slices"

	"ceilingwright/core/days"
	"ceilingwright/core/words"
)

// Labour is minutes of one person, as the days count them, and so as they are
// paid. Step is the step of the finish, −1 for what is done to a layer or to the room.
// Shares are the tasks it is made of, those alike counted together.
type Labour struct {
	What    words.Text
	Step    int
	Minutes int64
	Shares  []Share
}

// Share is so many tasks that crew people do together in so many minutes each.
type Share struct{ Tasks, Crew, Minutes int64 }

// labour is what has to be paid, in the order of the work: the coats of a step
// and the sections of a gilding together, and each thing done to a layer by
// itself. Labour is that of the people who share a task, not of all there are, each
// for whole minutes.
func (w *Scheduled) labour(people int) []Labour {
	var list []Labour
	line := slices.Repeat([]int{-1}, len(w.Job.Steps))   // of each step
	counted := days.Work{Tasks: w.Tasks, People: people} // to the minute
	for i := range w.Tasks {
		t, o := &w.Tasks[i], w.Origins[i]
		if t.Aside {
			continue // counted with the leaf it is done beside
		}
		at := len(list)
		switch isOfStep := o.Coat > 0 || o.Section > 0; {
		case !isOfStep:
			list = append(list, Labour{What: t.Name, Step: -1})
		case line[o.Step] < 0:
			line[o.Step] = at
			list = append(list, Labour{What: words.Verbatim(w.Job.Steps[o.Step].Name), Step: o.Step})
		default:
			at = line[o.Step]
		}
		crew, minutes := counted.Takes(i)
		list[at].add(int64(crew), minutes)
	}
	return list
}

func (l *Labour) add(crew, minutes int64) {
	l.Minutes += crew * minutes
	if last := len(l.Shares) - 1; last >= 0 && l.Shares[last].Crew == crew && l.Shares[last].Minutes == minutes {
		l.Shares[last].Tasks++
		return
	}
	l.Shares = append(l.Shares, Share{1, crew, minutes})
}
