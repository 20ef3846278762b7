package hazards

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/job/schedule"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/safety"
)

// onDeck is a job under a ceiling of 4 m with a fitter of 1.70 m: the deck is asked
// for at 4 − 1.10 × 1.70 = 2.13 m, to the top of its rails 3.23 m, which at 3 to 1
// takes a base of 1.076 666 667 m.
func onDeck(change func(*plan.Access)) *Safety {
	var p plan.Plan
	p.Place.Rules, p.Room.Height = safety.UK, 4*measure.Metre
	p.Access = plan.Access{By: safety.Platform, Stature: 170 * measure.Centimetre}
	change(&p.Access)
	s, _ := FindPlatform(&p, &schedule.Scheduled{}, &Vapours{})
	return &s
}

func (s *Safety) checked(of CheckOf) (c Check, ok bool) {
	for _, c := range s.Checks {
		if c.Of == of {
			return c, true
		}
	}
	return c, false
}

func TestDeckToAskFor(t *testing.T) {
	d := onDeck(func(*plan.Access) {}).Deck
	assert.Equal(t, Height{213 * measure.Centimetre, 213 * measure.Centimetre}, d.Aim)
	assert.Equal(t, AimByOne, d.By)
	assert.Equal(t, safety.Podium, d.Kind)
	assert.Equal(t, measure.Length(1_076_666_667), d.Base)
	d = onDeck(func(a *plan.Access) { a.OtherStature = 180 * measure.Centimetre }).Deck
	assert.Equal(t, AimBetween, d.By)
	d = onDeck(func(a *plan.Access) { a.Reach = 190 * measure.Centimetre }).Deck
	assert.Equal(t, AimTried, d.By)
	assert.Equal(t, 210*measure.Centimetre, d.Aim.Sum)
}

// What is there is held from both sides of what it has to be.
func TestPlatformIsChecked(t *testing.T) {
	kg := func(n int64) measure.Fact { return measure.FactOf(measure.NumberFromInt(n)) }
	for _, row := range []struct {
		of     CheckOf
		change func(*plan.Access)
		want   Verdict
	}{
		{OfBase, func(a *plan.Access) { a.Base = 1_076_666_666 }, FallsShort},
		{OfBase, func(a *plan.Access) { a.Base = 1_076_666_667 }, Fits},
		{OfBase, func(a *plan.Access) { a.Base, a.BaseChecked = measure.Metre, safety.Yes }, Fits},
		{OfBase, func(a *plan.Access) {}, NotKnown},
		{OfKind, func(a *plan.Access) { a.Kind = safety.HopUp }, FallsShort},
		{OfKind, func(a *plan.Access) { a.Kind = safety.Podium }, Fits},
		{OfRails, func(a *plan.Access) { a.Rails = safety.No }, FallsShort},
		{OfTopRail, func(a *plan.Access) { a.RailHeight = 949 * measure.Millimetre }, FallsShort},
		{OfTopRail, func(a *plan.Access) { a.RailHeight = 950 * measure.Millimetre }, Fits},
		{OfRailGap, func(a *plan.Access) { a.RailGap = 470 * measure.Millimetre }, Fits},
		{OfRailGap, func(a *plan.Access) { a.RailGap = 471 * measure.Millimetre }, FallsShort},
		{OfDeckWidth, func(a *plan.Access) { a.DeckLength, a.DeckWidth = measure.Metre, 599*measure.Millimetre }, FallsShort},
		{OfDeckWidth, func(a *plan.Access) { a.DeckLength, a.DeckWidth = measure.Metre, 600*measure.Millimetre }, Fits},
		{OfDeckLoad, func(a *plan.Access) { a.OnDeck, a.Load, a.Rated = 1, kg(36), kg(150) }, Fits},
		{OfDeckLoad, func(a *plan.Access) { a.OnDeck, a.Load, a.Rated = 1, kg(37), kg(150) }, FallsShort},
		{OfDeckLoad, func(a *plan.Access) { a.OnDeck, a.Rated = 1, kg(150) }, NotKnown},
	} {
		c, ok := onDeck(row.change).checked(row.of)
		assert.True(t, ok, "%d", row.of)
		assert.Equal(t, row.want, c.Verdict, "%d", row.of)
	}
}

// Two hours are no strain, a minute more is; so with four. 250 minutes of one person
// are 125 each of two, and no more than two hours each of three.
func TestOverheadIsWeighed(t *testing.T) {
	for one, strain := range map[int64]Strain{120: NoStrain, 121: Strained, 240: Strained, 241: TooMuch} {
		d := OverheadDay{One: one, all: one, together: 1}
		d.weigh(1)
		assert.Equal(t, strain, d.Strain, "%d", one)
	}
	d := OverheadDay{One: 250, all: 250, together: 1}
	d.weigh(2)
	assert.Equal(t, Turns{Now: 2, NowEach: 125, Next: 3, NextEach: 84, Enough: 3}, d.Turns)
	d.weigh(3)
	assert.True(t, d.Turns.Suffices)
}
