package job

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/survey"
)

// Safety is what bears on the safety of the people on the job. Facts are what the
// rules read, but for the course of the air. Checks are what a platform is held against,
// where Checked.
type Safety struct {
	Facts    safety.Job
	Deck     Deck
	Checks   []Check
	Checked  bool
	Loads    Loads
	Overhead []OverheadDay
}

// Rules are how the products stand against what the law lets them hold, and what the
// rules have to say of the job.
type Rules struct {
	Limits []VOCLimit
	Told   safety.Told
}

// FindPlatform reads the facts of the job and works out the platform it needs. A
// client's copy has nothing of it, nor of the air or the rules: they are judged by the
// days of the work, which stay with those who do it.
func (j *Job) FindPlatform() {
	if j.Plan.Quote.Known {
		return
	}
	s, w := &j.Safety, &j.Days.Scheduled
	s.Facts = j.safetyFacts()
	if warmth := j.Plan.Finish.Climate.Air; warmth.Known && finish.IsReadable(warmth.Value) {
		s.Facts.Warmth = measure.Fact(warmth)
	}
	s.Overhead = j.OverheadDays(w, int64(hours.People(&j.Plan.Days)))
	s.Facts.OverheadHours = overheadHours(s.Overhead)
	j.findDeck()
	if s.Deck.IsAsked() && s.Facts.Access != safety.Floor && s.Facts.Access != safety.Ladder {
		s.Checked = true
		j.checkPlatform()
		stands, problems := hung.Stand(j.On(&j.Plan), &j.Hanging, max(s.Facts.LeastBase(), s.Deck.Base))
		j.Standing = stands
		j.Report("", problems)
	}
	s.Deck.First, s.Deck.Last, s.Deck.Hired = w.DaysAloft(&j.Plan)
}

// SeeToRules works out what the rules have to say of it all.
func (j *Job) SeeToRules() {
	if j.Plan.Quote.Known {
		return
	}
	j.limitProducts()
	facts := j.Safety.Facts
	if len(facts.Products) > 0 {
		facts.Course = &j.Air.Course
	}
	j.Rules.Told = safety.Tell(facts)
}

// safetyFacts is what the plan says of what the rules read.
func (j *Job) safetyFacts() safety.Job {
	p := &j.Plan
	facts := safety.Job{
		Job:     j.Vapours.Job,
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
