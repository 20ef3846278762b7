package hazards

import (
	"ceilingwright/core/days"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
)

// Deck is the platform to ask for: its kind, "" where its height cannot be worked
// out, and the heights of its deck. Shortest and Tallest are the statures these go
// by. Base is the shorter side of what it has to stand on, at Ratio times which it may
// be high. Panel is how long one panel takes to hang, by the plan where Rated.
// Reach is how high people reach from the floor in comfort. First and Last are the days
// on which it is needed, where Hired.
type Deck struct {
	safety.Deck
	Kind              safety.Kind
	Shortest, Tallest measure.Length
	By                AimBy
	LeastByReach      bool
	Aim, Lowest, Top  Height
	Base              measure.Length
	Ratio             int64
	Reach             measure.Length
	Panel             int64
	Rated             bool
	First, Last       days.Date
	Hired             bool
}

// Height is a height of deck as it is, and what its sum gives before it is kept
// within bounds.
type Height struct{ Is, Sum measure.Length }

// AimBy is what the height of deck to ask for goes by.
type AimBy int

// A fitter's height; half way between the shortest and the tallest; a height taken as
// usual; a reach that was tried out.
const (
	AimByOne AimBy = iota
	AimBetween
	AimAssumed
	AimTried
)

// IsAsked tells whether a platform is asked for at all.
func (d *Deck) IsAsked() bool { return d.Kind != "" && d.Kind != safety.OnFloor }

// findDeck works out what to ask for.
func (s *Safety) findDeck(rates *plan.Rates) []problem.Problem {
	facts, d := &s.Facts, &s.Deck
	deck, problems := safety.DeckOf(*facts)
	d.Deck, d.Kind = deck, safety.KindFor(deck)
	if d.Kind == "" {
		return problems
	}
	d.statures(facts)
	ceiling := facts.CeilingHeight
	d.Aim = Height{deck.Best, ceiling - (safety.Clearance(d.Shortest)+safety.Clearance(d.Tallest))/2}
	d.Lowest = Height{deck.Least, ceiling - safety.EasyReach(d.Shortest)}
	d.Top = Height{deck.Most, ceiling - d.Tallest - safety.HeadRoom}
	d.Ratio = safety.BaseRatio(facts.Country)
	d.Base = deck.Base(d.Ratio)
	switch {
	case deck.Tried:
		d.By, d.Aim.Sum = AimTried, ceiling-facts.Reach
		if d.LeastByReach = deck.Least == deck.Best; d.LeastByReach {
			d.Lowest.Sum = ceiling - facts.Reach
		}
	case deck.Assumed:
		d.By = AimAssumed
	case d.Shortest != d.Tallest:
		d.By = AimBetween
	}
	d.Reach = safety.EasyReach(d.Shortest)
	if facts.Reach > 0 {
		d.Reach = facts.Reach
	}
	d.Panel = days.UsualHang
	if rate := rates.Hang; rate.Known {
		d.Panel, d.Rated = days.WholeMinutes(rate.Value, 1), true
	}
	return problems
}

// statures are the heights that the deck was worked out from. Where nobody's is
// known they are what the deck leaves room for.
func (d *Deck) statures(facts *safety.Job) {
	for _, stature := range facts.Crew {
		if stature > 0 && (d.Shortest == 0 || stature < d.Shortest) {
			d.Shortest = stature
		}
		d.Tallest = max(d.Tallest, stature)
	}
	if d.Tallest == 0 {
		d.Tallest = facts.CeilingHeight - d.Most - safety.HeadRoom
		d.Shortest = d.Tallest
	}
}
