package steps

import (
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Usable are the hours in which leaf can be laid, the reserve kept back.
func (g *Gilt) Usable() measure.Number {
	return g.Window.Mul(measure.NumberFromInt(1).Sub(g.Reserve))
}

// open is how many minutes size takes leaf, the reserve taken off.
func (g *Gilt) open() int64 {
	open, ok := g.Usable().Mul(measure.NumberFromInt(60)).Floor()
	if !ok || open > days.LongestMinutes {
		return days.LongestMinutes
	}
	return open
}

// crew is what those who lay leaf lay in an hour.
func (g *Gilt) crew() measure.Area { return g.Rate.Times(measure.NumberFromInt(g.Gilders)) }

// laying is how long an area takes to lay, in minutes rounded up.
func (g *Gilt) laying(a measure.Area) int64 {
	return days.WholeMinutes(a.SquareMetres.Quo(g.crew().SquareMetres), 60)
}

// WholeNeeds is in how many sections the area would be laid at least, were it not for
// panels that stay whole; 0 where that is not known.
func (g *Gilt) WholeNeeds() int64 {
	least, _ := g.Area.SquareMetres.Quo(g.crew().Times(g.Usable()).SquareMetres).Ceil()
	return least
}

// limitToHours holds the sections of a gilding to the part of the time in which
// the size takes leaf that anyone works in: the most that can be laid so, its size
// laid in working hours before it. Where none of it is worked, nothing helps, and
// the days say so.
func (w *work) limitToHours(g *Gilt, people int) {
	if !w.Hours.Usable || g.Rate.SquareMetres.Sign() <= 0 || g.Gilders <= 0 {
		return
	}
	hours := &w.Hours.Hours
	if whole := g.laying(g.Area); whole <= g.open() && w.isLaid(g, hours, people, whole) || w.isLaid(g, hours, people, g.open()) {
		return
	}
	low, high := int64(0), min(g.open(), days.Day)
	for low < high {
		if middle := (low + high + 1) / 2; w.isLaid(g, hours, people, middle) {
			low = middle
		} else {
			high = middle - 1
		}
	}
	g.Worked = measure.NumberFromFraction(low, 60)
}

// isLaid tells whether a section that takes so many minutes to lay can be sized and
// laid in these hours. Who sizes the next in between, where nobody else can, takes
// the time for it out of the reserve.
func (w *work) isLaid(g *Gilt, at *days.Hours, people int, laying int64) bool {
	tack, open := days.WholeMinutes(g.Tack, 60), g.open()
	area := g.crew().Times(measure.NumberFromFraction(laying, 60))
	sizing := days.WholeMinutes(area.Add(w.pastLine(g)).SquareMetres.Quo(RateOf(&w.Plan.Steps[g.Size]).SquareMetres), 60)
	sizing = (sizing + hours.RoundedTo - 1) / hours.RoundedTo * hours.RoundedTo
	if laying < g.laying(g.Area) && days.SizedMeanwhile(people, int(g.Gilders), tack, laying) {
		more := (sizing + g.Gilders - 1) / g.Gilders
		laying += more
		open = max(open, min(days.WholeMinutes(g.Window, 60), open+more))
	}
	return laying <= at.MostLaid(sizing, tack, open)
}

// pastLine is what is sized past one stop line at most.
func (w *work) pastLine(g *Gilt) measure.Area {
	along, across, ok := w.rectangle(g.Leaf)
	if outline := &w.Plan.Mask.Outline; !ok && outline.IsComplete() {
		along, across = outline.Length, outline.Width
	}
	return measure.AreaOf(min(along, across), w.Plan.Steps[g.Size].Beyond)
}

// shortHours says that the hours of work divide a gilding, and what would lay it in
// fewer sections; of a panel that they leave no time for, what would.
func (w *work) shortHours(g *Gilt) {
	if g.Worked.Sign() <= 0 {
		return
	}
	all, _, ok := finish.Sections(finish.Sizing{Area: g.Area, Rate: g.Rate, Gilders: g.Gilders, Window: g.Window, Reserve: g.Reserve})
	section, severity := all.Each, problem.Note
	switch {
	case !g.Divided:
		section, severity = g.Panels.Largest, problem.Caution
	case !ok || all.Count >= int64(len(g.Sections)):
		return
	}
	do := w.otherHours(g, g.laying(section))
	switch {
	case !g.Divided:
	case do.IsEmpty():
		do = words.Say("Use a size with other times for fewer sections.")
	default:
		do = words.Sentences(do, words.Say("Then {n|section does|sections do} it.", words.Count("n", all.Count)))
	}
	g.Problems.Remark("/openHours", severity,
		words.Say("Of the {open} that leaf can be laid in, the reserve kept back, at most {worked} are worked. So no more than {area} are laid at a time.",
			words.Of("open", days.InHours(g.Usable())), words.Of("worked", days.InHours(g.Worked)), words.Area("area", g.crew().Times(g.Worked))), do)
}

func (w *work) otherHours(g *Gilt, laying int64) words.Text {
	now := &w.Hours.Hours
	fits := func(h *days.Hours) bool { return w.isLaid(g, h, hours.People(&w.Plan.Days), laying) }
	if at, ok := now.LatestBegin(fits); ok {
		return words.Say("Begin the day at {time} at the latest.", words.Of("time", at))
	}
	if at, ok := now.EarliestEnd(fits); ok {
		return words.Say("Work until {time} at least.", words.Of("time", at))
	}
	return words.Text{}
}
