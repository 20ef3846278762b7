package sheet

import (
	"slices"

	"ceilingwright/core/measure"
)

// labour is what has to be paid, in the order of the work: the coats of a step
// and the sections of a gilding together, and each thing done to a layer by
// itself. Labour is that of the people who share a task, not of all there are.
func (c *calendar) labour(people int) []work {
	var list []work
	var minutes []int64
	line := slices.Repeat([]int{-1}, len(c.job.Steps)) // of each step
	for i := range c.tasks {
		t, o := &c.tasks[i], c.origins[i]
		if t.Aside {
			continue // counted with the leaf it is done beside
		}
		paid, name := t.Labour+int64(max(1, min(t.Share, people)))*t.Fixed, t.Name
		if o.Coat > 0 || o.Section > 0 {
			if at := line[o.Step]; at >= 0 {
				minutes[at] += paid
				continue
			}
			name, line[o.Step] = c.job.Steps[o.Step].Name, len(list)
		}
		list, minutes = append(list, work{what: name}), append(minutes, paid)
	}
	for i := range list {
		list[i].hours = measure.NumberFromDecimal(measure.NumberFromFraction(minutes[i], 60).RoundHalfEven(2))
	}
	return list
}

// daysPaid is how many days a platform is hired for, from the first on which it
// is needed to the last with those off, and on how many days someone works. ok is
// false where the days are not known.
func (b *builder) daysPaid() (hired, worked int, ok bool) {
	c := b.calendar()
	if !c.isDated {
		return 0, 0, false
	}
	if first, last, needed := b.daysAloft(c); needed {
		hired = int(last-first) + 1
	}
	worked, _, _ = c.schedule.Count()
	return hired, worked, true
}
