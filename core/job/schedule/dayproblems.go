package schedule

import (
	"ceilingwright/core/air"
	"ceilingwright/core/days"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// missed says which leaf cannot be laid while its size takes it: the first of it.
func (b *booking) missed() {
	d := &b.Days
	for i := range d.Schedule.Placed {
		if !d.Schedule.Placed[i].Missed {
			continue
		}
		w, hours := d.Tasks[i].Window, &d.Schedule.Hours
		sizing := d.Origins[w.Sizing].Step
		name, open := words.Of("leaf", d.Tasks[i].Name), words.Of("open", days.Lasting(d.Job.Steps[sizing].Open))
		from, to := words.Of("from", hours.From), words.Of("to", hours.To)
		what := words.Say("“{leaf}” cannot be laid while the size takes leaf: it does so {tack} after sizing, for {open} with the reserve kept back, and work goes on from {from} to {to}.",
			name, words.Of("tack", days.Lasting(w.Tack)), open, from, to)
		do := words.Say("Use a size with other times, work at other hours, or let one more person lay leaf.")
		if _, tested := d.Schedule.Opens(i); tested {
			what = words.Say("“{leaf}” cannot be laid while the size takes leaf: it does so from {ready}, as tested, for {open} with the reserve kept back, and work goes on from {from} to {to}.",
				name, words.Of("ready", w.Tested), open, from, to)
		} else if g := giltOnSize(b.Gilding, sizing); g != nil {
			_, laying := d.Schedule.Minutes(i)
			if other := steps.OtherHours(b.Plan, b.Surface, b.Found, g, laying/max(1, int64(d.Schedule.Placed[i].Crew))); !other.IsEmpty() {
				do = words.Sentences(other, words.Say("Or use a size with other times, or let one more person lay leaf."))
			}
		}
		b.Remark(b.Plan.Steps[sizing].At+"/openHours", problem.Stop, what, do)
		return
	}
}

// testedSizes holds a size that was found ready on the job against the days and
// against its label: leaf on size that is not ready goes dull (an icon painter's
// notes of August 2012).
func (b *booking) testedSizes() {
	d, s := &b.Days, &b.Days.Schedule
	for i := range d.Tasks {
		w := d.Tasks[i].Window
		if w == nil || w.Tested == 0 {
			continue
		}
		sized := s.Placed[w.Sizing].End
		tested, label := s.Zone.Instant(w.Tested), sized+days.Instant(w.Tack)
		at, ready := b.Plan.Steps[d.Origins[w.Sizing].Step].At+"/readyAt", words.Of("tested", w.Tested)
		switch {
		case tested < sized:
			b.Remark(at, problem.Stop,
				words.Say("The size cannot be ready at {tested}: by the days it is laid {after} after that, at {sized}. The hours of its label are counted.",
					ready, words.Of("after", days.Lasting(sized-tested)), words.Of("sized", s.Zone.Moment(sized))),
				words.Say("Put in when it was found ready, or begin the work sooner."))
		case tested < label:
			b.Remark(at, problem.Caution,
				words.Say("By its label the size is ready at {label}; at {tested} it is too early by {early}. Leaf laid too early drowns in the size and goes dull.",
					words.Of("label", s.Zone.Moment(label)), ready, words.Of("early", days.Lasting(label-tested))),
				words.Say("Lay it then only if a knuckle feels it pull and no size comes off; else leave this blank and wait."))
		}
	}
}

// paintUnder finds the coat under a mask that lacks most of the age at which
// paint is counted on to hold tape, and says so: paint that is too young lifts with
// the mask. Where the plan gives the days, the calendar keeps them, and nothing is
// said of more than a day.
func (b *booking) paintUnder(hang int) {
	d, s := &b.Days, &b.Days.Schedule
	at := s.Zone.Moment(s.Placed[hang].Start)
	young, lacks, age := -1, days.Moment(0), days.Moment(0)
	for i := range hang {
		o := d.Origins[i]
		if o.Coat == 0 || o.Step < 0 {
			continue
		}
		step := &b.Plan.Steps[o.Step]
		if job := &d.Job.Steps[o.Step]; !step.Kind.IsLiquid() || job.Surface != "" || job.Apart {
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
		words.Name("mask", b.Layers[d.Origins[hang].Layer].Panels.Name), words.Name("step", step.Name), words.Of("age", ageText(age)))
	severity, why := problem.Caution, words.Say("Water paint is counted on to hold a mask after two weeks, some say a month.")
	do := words.Say("Pull tape on it first, or write under fresh paint how many days it must age: the mask then waits for it.")
	switch {
	case age < days.Moment(days.LeastFilmAge*days.Day):
		severity, why = problem.Stop, words.Say("Nobody advises tape on paint less than a day old: the mask would lift it.")
		do = words.Say("Write under fresh paint that it must age a day at least: the mask then waits for it. The makers of paint and mask say how long it should be.")
	case isOil(step.Binder):
		why = words.Say("Oil paint is counted on to hold a mask after a week.")
	}
	b.Remark(step.At, severity, words.Sentences(stuck, why), do)
}

func isOil(binder air.Binder) bool {
	return binder == air.Solvent || binder == air.DryingOil
}

// ageText is a time in whole days, or in whole hours below one.
func ageText(m days.Moment) words.Text {
	if m < days.Day {
		return words.Say("{n|hour|hours}", words.Count("n", int64(m)/60))
	}
	return words.Say("{n|day|days}", words.Count("n", int64(m)/days.Day))
}

// upTooLong says of a mask that it is up for longer than it comes off clean, where the
// plan tells how long that is. A panel kept up for the next layer counts until that is
// hung.
func (b *booking) upTooLong(hang int) {
	d, s, most := &b.Days, &b.Days.Schedule, b.Plan.Days.MaskDays.Value
	layer := d.Origins[hang].Layer
	up, down, key := s.Zone.Moment(s.Placed[hang].Start), days.Moment(0), false
	for i := hang + 1; i < len(d.Tasks); i++ {
		switch o := d.Origins[i]; {
		case o.Work == days.Peeling && o.Layer == layer && down == 0:
			down = s.Zone.Moment(s.Placed[i].End)
		case o.Work == days.Hanging && o.Layer == layer+1 && b.Hung(layer).Key.IsKept():
			down, key = s.Zone.Moment(s.Placed[i].Start), true
		}
	}
	if down-up <= days.Moment(days.WholeMinutes(most, days.Day)) {
		return
	}
	name, from, to := words.Name("layer", b.Layers[layer].Panels.Name), words.Of("from", up), words.Of("to", down)
	long, may := words.Of("long", ageText(down-up)), words.Trimmed("most", most, 1)
	what := words.Say("“{layer}” is up from {from} to {to}, {long}. The mask may stay up for {most}.", name, from, to, long, may)
	if key {
		what = words.Say("The key {key} of “{layer}” is up from {from} to {to}, {long}. The mask may stay up for {most}.",
			words.Name("key", b.Hung(layer).Key.Name()), name, from, to, long, may)
	}
	b.Remark(b.Layers[layer].Plan.At, problem.Caution, what,
		words.Say("Leave an offcut up for as long and see how it comes off, ask for film that may stay up for longer, or bring the coats closer together."))
}
