package job

import (
	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/survey"
)

// Safety is what bears on the safety of the people on the job. Facts are what the
// rules read. Checks are what a platform is held against, where Checked. Air is what the solvents come to, Course that from day to day, Wait how
// long to stay out after the last coat, Flow the fresh air needed in cubic metres an
// hour.
type Safety struct {
	Facts    safety.Job
	Room     InTheRoom
	Deck     Deck
	Checks   []Check
	Checked  bool
	Loads    Loads
	Overhead []OverheadDay

	Air    air.Air
	Course air.Course
	Wait   measure.Fact
	Flow   measure.Number
	Limits []VOCLimit
	Told   safety.Told
}

// FindPlatform reads the facts of the job and works out the platform it needs. It
// reads the plan, the air of the room, what the steps use up and the days.
func (j *Job) FindPlatform() {
	s, w := &j.Safety, &j.Days.Scheduled
	s.Facts = j.safetyFacts()
	if warmth := j.Plan.Finish.Climate.Air; warmth.Known && finish.IsReadable(warmth.Value) {
		s.Facts.Warmth = measure.Fact(warmth)
	}
	var steps []string
	for i := range j.Plan.Steps {
		if step := &j.Plan.Steps[i]; step.Kind.IsLiquid() {
			s.Facts.Products, steps = append(s.Facts.Products, j.solvents(i)), append(steps, step.At)
		}
	}
	s.Room = j.inTheRoom(w, steps)
	s.Facts.Coats, s.Facts.Shifts = s.Room.Coats, s.Room.Shifts
	s.Overhead = j.OverheadDays(w, int64(j.People()))
	s.Facts.OverheadHours = overheadHours(s.Overhead)
	j.findDeck()
	if s.Deck.IsAsked() && s.Facts.Access != safety.Floor && s.Facts.Access != safety.Ladder {
		s.Checked = true
		j.checkPlatform()
		j.stand()
	}
	s.Deck.First, s.Deck.Last, s.Deck.Hired = j.DaysAloft(w)
}

// FindAir works out what the products give off into the air, how they stand against
// what the law lets them hold, and what the rules have to say of it all.
func (j *Job) FindAir() {
	s := &j.Safety
	if len(s.Facts.Products) > 0 {
		found, problems := air.Of(s.Facts.Job)
		j.Report("", problems)
		s.Air, s.Course = found, air.CourseOf(s.Facts.Job)
		s.Wait = air.Wait(s.Air, s.Course)
		s.Flow = s.Course.Needed.Changes.Value.Mul(s.Facts.RoomVolume.Litres).Quo(measure.CubicMetre)
		s.Facts.Course = &s.Course
	}
	j.limitProducts()
	s.Told = safety.Tell(s.Facts)
}

// safetyFacts is what the plan says of what the rules read.
func (j *Job) safetyFacts() safety.Job {
	p := &j.Plan
	facts := safety.Job{
		Job:     air.Job{RoomVolume: j.Room.Air, Air: p.Air},
		Country: p.Place.Rules, Year: p.Place.Built, Textured: p.Place.Textured, Lead: p.Place.Lead, Pull: p.Place.Pull, Asbestos: p.Place.Asbestos,
		CeilingHeight: p.Room.Height, Fixture: safety.Yes,
		Access: p.Access.By, Reach: p.Access.Reach, Base: p.Access.Base, Rails: p.Access.Rails, DeckGap: p.Access.DeckGap,
		MaskArea: p.Mask.Area(), Hands: p.Days.People,
	}
	if p.Fixture.At == survey.NoFixture {
		facts.Fixture = safety.No
	}
	for _, stature := range []measure.Length{p.Access.Stature, p.Access.OtherStature} {
		if stature > 0 {
			facts.Crew = append(facts.Crew, stature)
		}
	}
	facts.Building = safety.Building{
		Detectors: j.inCeiling(survey.Detector, p.Place.Detectors), Sprinklers: j.inCeiling(survey.Sprinkler, p.Place.Sprinklers), Isolated: p.Place.Isolated, Flames: p.Place.Flames,
		AirHandling: p.Place.AirHandling, Below: p.Place.Below, Fixings: p.Place.Fixings, FloorLoad: p.Place.FloorLoad,
		Use: p.Place.Use, LeadFirm: p.Place.LeadFirm, LeadPlan: p.Place.LeadPlan, SprinklersAgreed: p.Place.SprinklersAgreed,
		Drop: p.Place.Drop, DropDepth: p.Place.DropDepth,
	}
	a := &p.Access
	facts.Gear = safety.Gear{
		Kind: a.Kind, DeckLength: a.DeckLength, DeckWidth: a.DeckWidth, LadderHeight: a.LadderHeight, RailHeight: a.RailHeight, RailGap: a.RailGap,
		FootLength: a.FootLength, FootWidth: a.FootWidth, Wheels: a.Wheels, Rides: a.Rides, ToeBoards: a.ToeBoards,
		WayUp: a.WayUp, Tied: a.Tied, BaseChecked: a.BaseChecked, Rated: a.Rated, Load: a.Load, Mass: a.Mass, Panel: a.Panel, OnDeck: a.OnDeck, Minutes: a.Minutes,
	}
	for _, s := range p.Steps {
		if s.Kind == finish.LeafLaying && s.Leaf != nil {
			facts.Leaf = append(facts.Leaf, safety.Metal(s.Leaf.Metal))
		}
	}
	return facts
}

// inCeiling is whether there are obstructions of a kind in the ceiling: one that
// is drawn there counts, whatever was answered.
func (j *Job) inCeiling(kind survey.Kind, answer safety.Answer) safety.Answer {
	for _, o := range j.Plan.Obstructions {
		if o.Kind == kind {
			return safety.Yes
		}
	}
	return answer
}

// solvents is what a step uses up, as the rules read it.
func (j *Job) solvents(step int) air.Product {
	s := &j.Plan.Steps[step]
	used, known := j.UsedBy(step)
	p := air.Product{
		At: s.At, StepName: s.Name, Litres: measure.Fact{Value: used.Litres, Known: known},
		Label: s.VOC, Binder: s.Binder, Coats: int64(s.Coats), DryHours: s.DryHours, Limit: s.Limit,
		FlashPoint: s.FlashPoint, Sprayed: s.Method == finish.Spray, Size: s.Kind == finish.SizeCoat, Category: s.Category, LessWater: s.LessWater, InPounds: s.VOCInPounds,
		Water: measure.Fact{Value: s.WaterPart.Share, Known: s.WaterPart.Known}, Exempt: s.ExemptPart.Share, Thinner: s.Thinned.Share,
	}
	p.VOC, p.Unsplit = air.AsUsed(p)
	return p
}
