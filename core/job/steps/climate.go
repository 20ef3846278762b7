package steps

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Judged is what was measured where the paint goes on, and whether it is fit to
// paint; Problems are what stands against it. Water and Oil are how many times the
// hours of its label a step takes that dries so, where any does and that is known.
type Judged struct {
	finish.Climate
	finish.Fit
	Problems   []problem.Problem
	Water, Oil measure.Fact
}

// JudgeClimate judges the climate of the plan, for its steps too.
func JudgeClimate(p *plan.Plan) (c Judged, wrong problem.List) {
	c.Climate = p.Finish.Climate
	c.Fit, c.Problems = c.Judge()
	wrong.Report("/finish/climate", c.Problems)
	if c.Verdict == finish.NotAsked {
		return c, wrong
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		factor, ok := c.DryingFactor(Dries(s))
		switch {
		case !ok || !s.Kind.IsLiquid():
		case Dries(s) == finish.Evaporates:
			c.Water = measure.FactOf(factor)
		default:
			c.Oil = measure.FactOf(factor)
		}
		if s.Kind == finish.SizeCoat && ok {
			sizeInClimate(&wrong, s, factor)
		}
	}
	return c, wrong
}

// sizeInClimate says of a size that its tack is not what the label says, where the
// climate is not that of the label.
func sizeInClimate(wrong *problem.List, s *plan.Step, factor measure.Number) {
	off := factor.Sub(measure.NumberFromInt(1)).Abs()
	if off.Cmp(measure.NumberFromFraction(1, 10)) <= 0 {
		return
	}
	wrong.Remark(s.At+"/tackHours", problem.Caution,
		words.Say("In the climate measured “{step}” may take about {times} times the hours of its label to come to tack. The days do not count that.",
			words.Name("step", s.Name), words.Trimmed("times", factor, 1)),
		words.Say("Lay a test patch and go by it."))
}
