// Package hazards works out what bears on the safety of the people on the job: the
// platform to ask for, work above the head, the air, and what the rules say.
package hazards

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
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
func FindPlatform(p *plan.Plan, w *schedule.Scheduled, v *Vapours) (s Safety, wrong []problem.Problem) {
	if p.Quote.Known {
		return s, nil
	}
	s.Facts = factsOf(p)
	s.Facts.Job = v.Job
	if warmth := p.Finish.Climate.Air; warmth.Known && finish.IsReadable(warmth.Value) {
		s.Facts.Warmth = measure.Fact(warmth)
	}
	s.Overhead = overheadDays(p, w)
	s.Facts.OverheadHours = overheadHours(s.Overhead)
	wrong = s.findDeck(&p.Days.Rates)
	if s.Deck.IsAsked() && s.Facts.Access != safety.Floor && s.Facts.Access != safety.Ladder {
		s.Checked = true
		s.checkPlatform()
	}
	s.Deck.First, s.Deck.Last, s.Deck.Hired = w.DaysAloft(p)
	return s, wrong
}

// SeeToRules works out how the products stand against the law, and what the rules have
// to say of it all.
func SeeToRules(facts safety.Job, a *Air) Rules {
	if len(facts.Products) > 0 {
		facts.Course = &a.Course
	}
	return Rules{Limits: limitsOf(&facts), Told: safety.Tell(facts)}
}

// factsOf is what the plan says of what the rules read.
func factsOf(p *plan.Plan) safety.Job {
	facts := safety.Job{
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
		Detectors: inCeiling(p, survey.Detector, p.Place.Detectors), Sprinklers: inCeiling(p, survey.Sprinkler, p.Place.Sprinklers), Isolated: p.Place.Isolated, Flames: p.Place.Flames,
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
func inCeiling(p *plan.Plan, kind survey.Kind, answer safety.Answer) safety.Answer {
	for _, o := range p.Obstructions {
		if o.Kind == kind {
			return safety.Yes
		}
	}
	return answer
}
