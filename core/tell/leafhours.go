package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// open is how many minutes size takes leaf, the reserve taken off.
func (g *gilt) open() int64 {
	open, ok := g.window.Mul(measure.NumberFromInt(1).Sub(g.reserve)).Mul(measure.NumberFromInt(60)).Floor()
	if !ok || open > longestMinutes {
		return longestMinutes
	}
	return open
}

// crew is what those who lay leaf lay in an hour.
func (g *gilt) crew() measure.Area { return g.rate.Times(measure.NumberFromInt(g.gilders)) }

// laying is how long an area takes to lay, in minutes rounded up.
func (g *gilt) laying(a measure.Area) int64 {
	return minutes(a.SquareMetres.Quo(g.crew().SquareMetres), 60)
}

// laidIn is the area that is laid in so many minutes.
func (g *gilt) laidIn(time int64) measure.Area {
	return g.crew().Times(measure.NumberFromFraction(time, 60))
}

// limitToHours holds the sections of a gilding to the part of the time in which
// the size takes leaf that anyone works in: the most that can be laid so, its size
// laid in working hours before it. Where none of it is worked, nothing helps, and
// the days say so.
func (b *builder) limitToHours(g *gilt, people int) {
	if !b.Plan.Days.IsAsked() || g.rate.SquareMetres.Sign() <= 0 || g.gilders <= 0 {
		return
	}
	hours := b.workingHours()
	if !hours.isUsable {
		return
	}
	if whole := g.laying(g.area); whole <= g.open() && b.isLaid(g, &hours.Hours, people, whole) {
		return
	}
	low, high := int64(0), min(g.open(), days.Day)
	if b.isLaid(g, &hours.Hours, people, g.open()) {
		return
	}
	for low < high {
		if middle := (low + high + 1) / 2; b.isLaid(g, &hours.Hours, people, middle) {
			low = middle
		} else {
			high = middle - 1
		}
	}
	g.worked = measure.NumberFromFraction(low, 60)
}

// isLaid tells whether a section that takes so many minutes to lay can be sized and
// laid in these hours. Who sizes the next in between, where nobody else can, takes
// the time for it out of the reserve.
func (b *builder) isLaid(g *gilt, hours *days.Hours, people int, laying int64) bool {
	tack, open := minutes(g.tack, 60), g.open()
	sizing := minutes(g.laidIn(laying).Add(b.pastLine(g)).SquareMetres.Quo(b.rateOf(g.sizing).SquareMetres), 60)
	sizing = (sizing + roundedTo - 1) / roundedTo * roundedTo
	if laying < g.laying(g.area) && days.SizedMeanwhile(people, int(g.gilders), tack, laying) {
		more := (sizing + g.gilders - 1) / g.gilders
		laying += more
		open = max(open, min(minutes(g.window, 60), open+more))
	}
	return laying <= hours.MostLaid(sizing, tack, open)
}

// pastLine is what is sized past one stop line at most.
func (b *builder) pastLine(g *gilt) measure.Area {
	beyond := b.Plan.Steps[g.sizing].Beyond
	w := &step{builder: b, Step: b.Plan.Steps[g.leaf]}
	along, across, ok := w.rectangle()
	if outline := &b.Plan.Mask.Outline; !ok && outline.IsComplete() {
		along, across = outline.Length, outline.Width
	}
	return measure.AreaOf(min(along, across), beyond)
}

// shortHours says that the hours of work divide a gilding, and what would lay it in
// fewer sections; of a panel that they leave no time for, what would.
func (b *builder) shortHours(g *gilt, divided bool) []problem.Problem {
	if g.worked.Sign() <= 0 {
		return nil
	}
	one := measure.NumberFromInt(1)
	unlimited := finish.Sizing{Area: g.area, Rate: g.rate, Gilders: g.gilders, Window: g.window, Reserve: g.reserve}
	all, _, ok := finish.Sections(unlimited)
	section := all.Each
	switch {
	case !divided:
		section = g.panels.Largest
	case !ok || all.Count >= int64(len(g.sections)):
		return nil
	}
	p := problem.Problem{At: "/openHours", Severity: problem.Note,
		What: words.Raw("Of the " + b.hours(g.window.Mul(one.Sub(g.reserve))) + " that leaf can be laid in, the reserve kept back, at most " + b.hours(g.worked) + " are worked. So no more than " +
			b.Notation.Area(g.crew().Times(g.worked)) + " are laid at a time.")}
	p.Do = b.otherHours(g, g.laying(section))
	if !divided {
		p.Severity = problem.Caution
	} else if p.Do.IsEmpty() {
		p.Do = words.Say("Use a size with other times for fewer sections.")
	} else {
		p.Do = words.Sentences(p.Do, words.Say("Then {n|section does|sections do} it.", words.Count("n", all.Count)))
	}
	return []problem.Problem{p}
}

// otherHours are the nearest hours of work in which so many minutes of leaf can be
// laid at a time: an earlier beginning of the day, else a later end. "" where there
// are none.
func (b *builder) otherHours(g *gilt, laying int64) words.Text {
	hours := &b.workingHours().Hours
	fits := func(h *days.Hours) bool { return b.isLaid(g, h, b.people(), laying) }
	if at, ok := hours.LatestBegin(fits); ok {
		return words.Say("Begin the day at {time} at the latest.", words.Name("time", at.String()))
	}
	if at, ok := hours.EarliestEnd(fits); ok {
		return words.Say("Work until {time} at least.", words.Name("time", at.String()))
	}
	return words.Text{}
}
