// Package steps works out what the steps of the finish cover and take, how leaf is
// divided, and what is mixed and bought for them.
package steps

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/mixing"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Found is what is found of the steps, one by one: what they cover, and what they take
// and are bought in.
type Found struct {
	Covers []Covered
	Hours  hours.Hours
	// Gilding is each leaf step on a size, in the order of the plan.
	Gilding []Gilt
	Finish  Finish
}

// work is the finish being worked out.
type work struct {
	Plan *plan.Plan
	*surface.Surface
	Found
	problem.List
}

// WorkOut works out what the steps cover and take, how leaf is divided, and what is
// bought and mixed for them.
func WorkOut(p *plan.Plan, s *surface.Surface) (Found, []problem.Problem) {
	w := &work{Plan: p, Surface: s}
	w.coverSteps()
	var wrong []problem.Problem
	w.Hours, wrong = hours.Read(&p.Days)
	w.Report("", wrong)
	w.gild()
	for i := range w.Gilding {
		w.judge(&w.Gilding[i])
	}
	w.buy(true)
	w.lookUnderLeaf()
	return w.Found, w.List
}

// Buy is WorkOut in such hours without what is mixed and without the words for it.
func Buy(p *plan.Plan, s *surface.Surface, h hours.Hours) Found {
	w := divided(p, s, h)
	w.buy(false)
	return w.Found
}

// Divide is Buy as far as how leaf is divided, with nothing taken yet.
func Divide(p *plan.Plan, s *surface.Surface, h hours.Hours) Found { return divided(p, s, h).Found }

func divided(p *plan.Plan, s *surface.Surface, h hours.Hours) *work {
	w := &work{Plan: p, Surface: s, Found: Found{Hours: h}}
	w.coverSteps()
	w.gild()
	return w
}

// gild divides the leaf, and begins the finish.
func (w *work) gild() {
	w.Gilding = w.gildedBy(hours.People(&w.Plan.Days))
	w.beginFinish()
}

// buy works out what all steps take, since some are bought together, and in what.
func (w *work) buy(mix bool) {
	for i := range w.Plan.Steps {
		if w.isSpread(i) {
			w.takeOff(i)
		}
	}
	w.shareMaterials()
	w.readRecipes()
	if kit := w.Plan.Finish.Kit; mix {
		w.Finish.jugs, w.Finish.scales = mixing.MeasuringWith(kit, false), mixing.MeasuringWith(kit, true)
	}
	for i := range w.Plan.Steps {
		switch kind := w.Plan.Steps[i].Kind; {
		case kind.IsLiquid():
			w.buyCans(i)
			if mix {
				w.mix(i)
			}
		case kind == finish.LeafLaying:
			w.layLeaf(i)
		}
	}
}

// Gild divides every leaf step on a size into sections, for so many people. What stands
// against a division is for the days to say, which it holds up.
func Gild(p *plan.Plan, s *surface.Surface, f *Found, people int) []Gilt {
	w := work{Plan: p, Surface: s, Found: *f}
	return w.gildedBy(people)
}

// OtherHours are the nearest hours of work in which so many minutes of leaf can be
// laid at a time: an earlier beginning of the day, else a later end. It says nothing
// where there are none.
func OtherHours(p *plan.Plan, s *surface.Surface, f *Found, g *Gilt, laying int64) words.Text {
	w := work{Plan: p, Surface: s, Found: *f}
	return w.otherHours(g, laying)
}
