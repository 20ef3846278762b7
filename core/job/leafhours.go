package job

import (
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// roundedTo is the step of minutes to which work is rounded up: nobody goes by
// the minute. A choice.
const roundedTo = 5

// usable are the hours in which leaf can be laid, the reserve kept back.
func (g *Gilt) usable() measure.Number {
	return g.Window.Mul(measure.NumberFromInt(1).Sub(g.Reserve))
}

// open is how many minutes size takes leaf, the reserve taken off.
func (g *Gilt) open() int64 {
	open, ok := g.usable().Mul(measure.NumberFromInt(60)).Floor()
	if !ok || open > LongestMinutes {
		return LongestMinutes
	}
	return open
}

// crew is what those who lay leaf lay in an hour.
func (g *Gilt) crew() measure.Area { return g.Rate.Times(measure.NumberFromInt(g.Gilders)) }

// laying is how long an area takes to lay, in minutes rounded up.
func (g *Gilt) laying(a measure.Area) int64 {
	return WholeMinutes(a.SquareMetres.Quo(g.crew().SquareMetres), 60)
}

// WholeNeeds is in how many sections the area would be laid at least, were it not for
// panels that stay whole; 0 where that is not known.
func (g *Gilt) WholeNeeds() int64 {
	least, _ := g.Area.SquareMetres.Quo(g.crew().Times(g.usable()).SquareMetres).Ceil()
	return least
}

// limitToHours holds the sections of a gilding to the part of the time in which
// the size takes leaf that anyone works in: the most that can be laid so, its size
// laid in working hours before it. Where none of it is worked, nothing helps, and
// the days say so.
func (j *Job) limitToHours(g *Gilt, people int) {
	if !j.Hours.Usable || g.Rate.SquareMetres.Sign() <= 0 || g.Gilders <= 0 {
		return
	}
	hours := &j.Hours.Hours
	if whole := g.laying(g.Area); whole <= g.open() && j.isLaid(g, hours, people, whole) || j.isLaid(g, hours, people, g.open()) {
		return
	}
	low, high := int64(0), min(g.open(), days.Day)
	for low < high {
		if middle := (low + high + 1) / 2; j.isLaid(g, hours, people, middle) {
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
func (j *Job) isLaid(g *Gilt, hours *days.Hours, people int, laying int64) bool {
	tack, open := WholeMinutes(g.Tack, 60), g.open()
	area := g.crew().Times(measure.NumberFromFraction(laying, 60))
	sizing := WholeMinutes(area.Add(j.pastLine(g)).SquareMetres.Quo(j.RateOf(g.Size).SquareMetres), 60)
	sizing = (sizing + roundedTo - 1) / roundedTo * roundedTo
	if laying < g.laying(g.Area) && days.SizedMeanwhile(people, int(g.Gilders), tack, laying) {
		more := (sizing + g.Gilders - 1) / g.Gilders
		laying += more
		open = max(open, min(WholeMinutes(g.Window, 60), open+more))
	}
	return laying <= hours.MostLaid(sizing, tack, open)
}

// pastLine is what is sized past one stop line at most.
func (j *Job) pastLine(g *Gilt) measure.Area {
	along, across, ok := j.Rectangle(g.Leaf)
	if outline := &j.Plan.Mask.Outline; !ok && outline.IsComplete() {
		along, across = outline.Length, outline.Width
	}
	return measure.AreaOf(min(along, across), j.Plan.Steps[g.Size].Beyond)
}

// shortHours says that the hours of work divide a gilding, and what would lay it in
// fewer sections; of a panel that they leave no time for, what would.
func (j *Job) shortHours(g *Gilt) {
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
	do := j.otherHours(g, g.laying(section))
	switch {
	case !g.Divided:
	case do.IsEmpty():
		do = words.Say("Use a size with other times for fewer sections.")
	default:
		do = words.Sentences(do, words.Say("Then {n|section does|sections do} it.", words.Count("n", all.Count)))
	}
	g.blame("/openHours", severity,
		words.Say("Of the {open} that leaf can be laid in, the reserve kept back, at most {worked} are worked. So no more than {area} are laid at a time.",
			words.Of("open", days.InHours(g.usable())), words.Of("worked", days.InHours(g.Worked)), words.Area("area", g.crew().Times(g.Worked))), do)
}

// otherHours are the nearest hours of work in which so many minutes of leaf can be
// laid at a time: an earlier beginning of the day, else a later end. It says nothing
// where there are none.
func (j *Job) otherHours(g *Gilt, laying int64) words.Text {
	hours := &j.Hours.Hours
	fits := func(h *days.Hours) bool { return j.isLaid(g, h, j.People(), laying) }
	if at, ok := hours.LatestBegin(fits); ok {
		return words.Say("Begin the day at {time} at the latest.", words.Of("time", at))
	}
	if at, ok := hours.EarliestEnd(fits); ok {
		return words.Say("Work until {time} at least.", words.Of("time", at))
	}
	return words.Text{}
}
