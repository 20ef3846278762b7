package schedule

import (
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/plan"
)

// IsAloft tells whether a task is done from the platform: all that is done on
// the ceiling, or on a cornice under it. Marking out is; measuring, protecting
// and clearing away are done from the floor, and so are walls.
func IsAloft(p *plan.Plan, o days.Origin) bool {
	switch {
	case o.Work != days.Otherwise:
		return true
	case o.Step < 0:
		return false
	}
	s := &p.Steps[o.Step]
	return s.Kind != finish.Protect && (s.Basis != finish.SurfaceOf || !p.IsWalls(s.Surface))
}

// DaysAloft are the first and the last day on which the platform is needed,
// false where the days are not known or it is needed on none.
func (w *Scheduled) DaysAloft(p *plan.Plan) (first, last days.Date, ok bool) {
	if !w.Dated {
		return 0, 0, false
	}
	s := &w.Schedule
	for i := range s.Placed {
		if !IsAloft(p, w.Origins[i]) {
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

// DaysPaid is how many days a platform is hired for, from the first on which it
// is needed to the last with those off, and on how many days someone works; known is
// false where the days are not known.
func (w *Scheduled) DaysPaid(p *plan.Plan) (hired, worked int, known bool) {
	if !w.Dated {
		return 0, 0, false
	}
	if first, last, needed := w.DaysAloft(p); needed {
		hired = int(last-first) + 1
	}
	worked, _, _ = w.Schedule.Count()
	return hired, worked, true
}
