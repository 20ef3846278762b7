package job

import (
	"cmp"
	"slices"

	"ceilingwright/core/air"
	"ceilingwright/core/days"
)

// InTheRoom is when coats go on and when people are in the room, in minutes from
// Midnight, the one before the first piece of work. Without dates it is nothing.
type InTheRoom struct {
	Coats    []air.Coat
	Shifts   []air.Shift
	Midnight days.Moment
	Zone     days.Zone
}

// When is the moment of a minute of the job; there are none without dates.
func (r *InTheRoom) When(minute int64) days.Moment {
	return r.Zone.Moment(r.Zone.Instant(r.Midnight) + days.Instant(minute))
}

// inTheRoom reads them from the calendar; steps are the places in the plan of the
// steps that use up products, in the order of these.
func (j *Job) inTheRoom(w *Scheduled, steps []string) (r InTheRoom) {
	if !w.Dated {
		return r
	}
	s := &w.Schedule
	r.Zone = s.Zone
	first := s.Zone.Moment(s.Placed[0].Start)
	for i := range s.Placed {
		first = min(first, s.Zone.Moment(s.Placed[i].Start))
	}
	r.Midnight = first.Date().At(0)
	begin := s.Zone.Instant(r.Midnight)
	worked := map[days.Date]bool{}
	for i := range s.Placed {
		whole, _ := s.Minutes(i)
		product := -1
		if o := w.Origins[i]; o.Work == days.Otherwise && o.Step >= 0 {
			product = slices.Index(steps, j.Plan.Steps[o.Step].At)
		}
		for _, p := range s.Parts(i) {
			worked[p.From.Date()] = true
			if from, to := s.Zone.Instant(p.From), s.Zone.Instant(p.To); product >= 0 {
				coat := air.Coat{Product: product, Start: int64(from - begin), Minutes: int64(to - from), Part: int64(to - from), Whole: whole}
				r.Coats = append(r.Coats, w.ofSections(i, coat))
			}
		}
	}
	for day := range worked {
		r.Shifts = append(r.Shifts, air.Shift{From: int64(s.Zone.Instant(day.At(s.Hours.From)) - begin), To: int64(s.Zone.Instant(day.At(s.Hours.To)) - begin)})
	}
	slices.SortFunc(r.Shifts, func(a, b air.Shift) int { return cmp.Compare(a.From, b.From) })
	return r
}

// ofSections is a coat of size that is laid in sections: each is as much of it
// as it takes of its labour.
func (w *Scheduled) ofSections(task int, coat air.Coat) air.Coat {
	o := w.Origins[task]
	if o.Section == 0 {
		return coat
	}
	all := int64(0)
	for i := range w.Tasks {
		if p := w.Origins[i]; p.Step == o.Step && p.Coat == o.Coat && p.Work == o.Work && p.Section > 0 {
			minutes, _ := w.Schedule.Minutes(i)
			all += minutes
		}
	}
	coat.Whole = all
	return coat
}
