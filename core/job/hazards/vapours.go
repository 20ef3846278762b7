package hazards

import (
	"cmp"
	"slices"

	"ceilingwright/core/air"
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// Vapours are what is used in the room and when, and who is in it.
type Vapours struct {
	Job air.Job
	InTheRoom
}

// Air is what the solvents come to, Course that from day to day, Wait how long to stay
// out after the last coat, Flow the fresh air needed in cubic metres an hour.
type Air struct {
	air.Air
	Course air.Course
	Wait   measure.Fact
	Flow   measure.Number
}

// FindVapours reads which products give something off, and when.
func FindVapours(p *plan.Plan, room measure.Volume, f *steps.Finish, w *schedule.Scheduled) (v Vapours) {
	if p.Quote.Known {
		return v
	}
	v.Job = air.Job{RoomVolume: room, Air: p.Air}
	var places []string
	for i := range p.Steps {
		if step := &p.Steps[i]; step.Kind.IsLiquid() {
			v.Job.Products, places = append(v.Job.Products, solvents(step, f, i)), append(places, step.At)
		}
	}
	v.InTheRoom = inTheRoom(p, w, places)
	v.Job.Coats, v.Job.Shifts = v.Coats, v.Shifts
	return v
}

// FollowAir works out what the products give off into the air. It reads nothing but the
// vapours, so that it is followed again only where these change.
func FollowAir(of *air.Job) (a Air, wrong []problem.Problem) {
	if len(of.Products) == 0 {
		return a, nil
	}
	found, wrong := air.Of(*of)
	a.Air, a.Course = found, air.CourseOf(*of)
	a.Wait = air.Wait(a.Air, a.Course)
	a.Flow = a.Course.Needed.Changes.Value.Mul(of.RoomVolume.Litres).Quo(measure.CubicMetre)
	return a, wrong
}

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

// inTheRoom reads them from the calendar; places are those in the plan of the
// steps that use up products, in the order of these.
func inTheRoom(p *plan.Plan, w *schedule.Scheduled, places []string) (r InTheRoom) {
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
			product = slices.Index(places, p.Steps[o.Step].At)
		}
		for _, part := range s.Parts(i) {
			worked[part.From.Date()] = true
			if from, to := s.Zone.Instant(part.From), s.Zone.Instant(part.To); product >= 0 {
				coat := air.Coat{Product: product, Start: int64(from - begin), Minutes: int64(to - from), Part: int64(to - from), Whole: whole}
				r.Coats = append(r.Coats, ofSections(w, i, coat))
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
func ofSections(w *schedule.Scheduled, task int, coat air.Coat) air.Coat {
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

// solvents is what a step uses up, as the rules read it.
func solvents(s *plan.Step, f *steps.Finish, step int) air.Product {
	used, known := f.UsedBy(step)
	p := air.Product{
		At: s.At, StepName: s.Name, Litres: measure.Fact{Value: used.Litres, Known: known},
		Label: s.VOC, Binder: s.Binder, Coats: int64(s.Coats), DryHours: s.DryHours, Limit: s.Limit,
		FlashPoint: s.FlashPoint, Sprayed: s.Method == finish.Spray, Size: s.Kind == finish.SizeCoat, Category: s.Category, LessWater: s.LessWater, InPounds: s.VOCInPounds,
		Water: measure.Fact{Value: s.WaterPart.Share, Known: s.WaterPart.Known}, Exempt: s.ExemptPart.Share, Thinner: s.Thinned.Share,
	}
	p.VOC, p.Unsplit = air.AsUsed(p)
	return p
}
