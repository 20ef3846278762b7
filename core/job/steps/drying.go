package steps

import (
	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
)

// Dries is how the film of a step comes to be dry.
func Dries(s *plan.Step) finish.Drying {
	switch s.Binder {
	case air.Water:
		return finish.Evaporates
	case air.Solvent, air.DryingOil:
		return finish.Reacts
	}
	return finish.Unsaid
}

// Slowing is by how much the hours of drying of a step are counted longer for
// the climate: never shorter than the label says, and 1 for a size, whose tack a
// test patch decides.
func Slowing(climate *finish.Climate, s *plan.Step) measure.Number {
	one := measure.NumberFromInt(1)
	if s.Kind == finish.SizeCoat {
		return one
	}
	factor, ok := climate.DryingFactor(Dries(s))
	if !ok || factor.Cmp(one) < 0 {
		return one
	}
	return factor
}
