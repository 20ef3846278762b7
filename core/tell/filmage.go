package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/words"
)

// filmAges holds the calendar against what masks can be stuck to: paint that is
// too young lifts with the mask.
func (b *builder) filmAges(c *calendar) {
	for i := range c.tasks {
		if c.origins[i].Work == days.Hanging {
			b.paintUnder(c, i)
		}
	}
}

// paintUnder finds the coat under a mask that lacks most of the age at which
// paint is counted on to hold tape, and says so. Where the plan gives the days,
// the calendar keeps them, and nothing is said of more than a day.
func (b *builder) paintUnder(c *calendar, hang int) {
	s := &c.schedule
	at := s.Zone.Moment(s.Placed[hang].Start)
	young, lacks, age := -1, days.Moment(0), days.Moment(0)
	for i := range hang {
		o := c.origins[i]
		if o.Coat == 0 || o.Step < 0 {
			continue
		}
		step := &b.Plan.Steps[o.Step]
		if job := &c.job.Steps[o.Step]; !step.Kind.IsLiquid() || job.Surface != "" || job.Apart {
			continue
		}
		old := at - s.Zone.Moment(s.Placed[i].End)
		need := days.UsualFilmAge(isOil(step.Binder))
		if b.Plan.Days.FilmAge.Known {
			need = days.LeastFilmAge
		}
		if missing := days.Moment(need*days.Day) - old; missing > lacks {
			young, lacks, age = o.Step, missing, old
		}
	}
	if young < 0 {
		return
	}
	step := &b.Plan.Steps[young]
	stuck := words.Say("“{mask}” is stuck to “{step}” {age} after its last coat.",
		words.Name("mask", b.Layers[c.origins[hang].Layer].Panels.Name), words.Name("step", step.Name), words.Of("age", ageText(age)))
	p := problem.Problem{Severity: problem.Caution,
		Do: words.Say("Pull tape on it first, or write under fresh paint how many days it must age: the mask then waits for it.")}
	switch {
	case age < days.Moment(days.LeastFilmAge*days.Day):
		p.Severity = problem.Stop
		p.What = words.Sentences(stuck, words.Say("Nobody advises tape on paint less than a day old: the mask would lift it."))
		p.Do = words.Say("Write under fresh paint that it must age a day at least: the mask then waits for it. The makers of paint and mask say how long it should be.")
	case isOil(step.Binder):
		p.What = words.Sentences(stuck, words.Say("Oil paint is counted on to hold a mask after a week."))
	default:
		p.What = words.Sentences(stuck, words.Say("Water paint is counted on to hold a mask after two weeks, some say a month."))
	}
	b.Report(step.At, []problem.Problem{p})
}

func isOil(binder safety.Binder) bool {
	return binder == safety.Solvent || binder == safety.DryingOil
}

// ageText is a time in whole days, or in whole hours below one.
func ageText(m days.Moment) words.Text {
	if m < days.Day {
		return words.Say("{n|hour|hours}", words.Count("n", int64(m)/60))
	}
	return words.Say("{n|day|days}", words.Count("n", int64(m)/days.Day))
}
