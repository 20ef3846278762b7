package tell

import (
	"slices"
	"strconv"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// gilt is a leaf step on the size of the step before it, divided into sections
// that can be laid while the size takes leaf. sizing and leaf are the indexes of
// the two steps; layer the layer whose panels are divided, nil where the
// sections are no panels. Hours are exact.
type gilt struct {
	sizing, leaf int
	layer        *job.Layer
	gilders      int64
	rate         measure.Area
	tack, window measure.Number
	reserve      measure.Number
	reserveGiven bool
	// worked are the hours in which the size takes leaf that are worked, the
	// reserve taken off, 0 where that is no limit.
	worked        measure.Number
	panels        finish.PanelSections
	area          measure.Area
	sections      []finish.PanelSection
	limitedByDust bool
	// stops is the length of the lines at which sections end, beyond the area
	// that is sized twice along them; linesKnown tells that there are such lines.
	stops      measure.Length
	beyond     measure.Area
	linesKnown bool
	// along is the side that the lines of equal sections divide, where they run
	// straight across a rectangle; 0 elsewhere. alongWidth tells that it is the
	// width, onMask that the rectangle is the mask and not the ceiling.
	along              measure.Length
	alongWidth, onMask bool
}

// sizingFor is the index of the size that a leaf step is laid on, −1 for none.
func (b *builder) sizingFor(leaf int) int {
	return finish.SizeUnder(leaf, func(i int) (finish.Kind, string) { return b.Plan.Steps[i].Kind, b.Plan.Steps[i].Surface })
}

// gilding is a leaf step divided, kept because both the product and the days ask
// for it.
type gilding struct {
	leaf, people int
	gilt         gilt
	problems     []problem.Problem
	ok           bool
}

// gild divides a leaf step for so many people. ok is false where there is
// nothing to divide, or it cannot be; what stands against it is then among the
// problems, relative to the sizing step.
func (b *builder) gild(leaf, people int) (g gilt, problems []problem.Problem, ok bool) {
	for i := range b.gildings {
		if one := &b.gildings[i]; one.leaf == leaf && one.people == people {
			return one.gilt, one.problems, one.ok
		}
	}
	g, problems, ok = b.divided(leaf, people)
	b.gildings = append(b.gildings, gilding{leaf, people, g, problems, ok})
	return g, problems, ok
}

func (b *builder) divided(leaf, people int) (g gilt, problems []problem.Problem, ok bool) {
	g = gilt{leaf: leaf, sizing: b.sizingFor(leaf)}
	if g.sizing < 0 {
		return g, nil, false
	}
	size, step := &b.Plan.Steps[g.sizing], &b.Plan.Steps[leaf]
	area, known := b.AreaOf(leaf)
	if !known || !step.RateKnown && !b.Plan.Days.IsAsked() {
		return g, nil, false
	}
	g.area, g.rate = area, b.rateOf(leaf)
	g.gilders = int64(size.Gilders)
	if g.gilders == 0 {
		g.gilders = int64(people)
	}
	// Any spot can be laid from the latest tack to the earliest close.
	g.tack, g.reserve = size.TackHours.To, size.Reserve.Share
	g.window = size.TackHours.From.Add(size.OpenHours.From).Sub(g.tack)
	if !size.TackHours.Known {
		g.tack = size.DryHours.Value
	}
	if g.reserveGiven = size.Reserve.Known; !g.reserveGiven {
		g.reserve = days.UsualReserve
	}
	if g.limitedByDust = !size.OpenHours.Known; g.limitedByDust {
		g.window = measure.NumberFromFraction(days.UsualOpen, 60)
	} else if g.window.Sign() <= 0 {
		return g, []problem.Problem{{At: "/openHours", Severity: problem.Stop,
			What: words.Raw("With tack anywhere from " + b.hours(size.TackHours.From) + " to " + b.hours(g.tack) + " and leaf taken for " + b.hours(size.OpenHours.From) + " from then, one spot may have closed before another is ready."),
			Do:   words.Say("Use a size that stays open longer, or narrow the times by a test patch in this room.")}}, false
	}
	b.limitToHours(&g, people)
	problems, ok = b.divide(&g)
	problems = append(problems, b.shortHours(&g, ok)...)
	if !size.TackHours.Known && !size.DryHours.Known {
		problems = append(problems, problem.Problem{At: "/tackHours", Severity: problem.Caution,
			What: words.Say("How long it takes until leaf can be laid on the size is not given, so no time is counted."), Do: words.Say("Write what the label says, or a test patch.")})
	}
	if g.limitedByDust {
		problems = append(problems, problem.Problem{At: "/openHours", Severity: problem.Caution,
			What: words.Say("How long the size takes leaf is not given, so a day is counted: until dust settles on it."), Do: words.Say("Write what the label says, or a test patch.")})
	}
	return g, problems, ok
}

// divide makes the sections: of whole panels where the leaf goes through a
// layer, else of equal areas.
func (b *builder) divide(g *gilt) (problems []problem.Problem, ok bool) {
	s := finish.Sizing{Area: g.area, Rate: g.rate, Gilders: g.gilders, Window: g.window, Reserve: g.reserve, Worked: g.worked}
	step := &b.Plan.Steps[g.leaf]
	for i := range b.Layers {
		if l := &b.Layers[i]; l.Panels.ID == step.LayerID && isOnMask(step.Basis) && !l.Panels.IsEmpty() {
			g.layer = l
		}
	}
	if g.layer != nil {
		g.panels, problems, ok = finish.SectionsOfPanels(finish.Grid{Columns: g.layer.Panels.Columns, Rows: g.layer.Panels.Rows}, s, b.Plan.Steps[g.sizing].Beyond)
		g.sections, g.stops, g.beyond, g.linesKnown = g.panels.Sections, g.panels.Stops, g.panels.Beyond, true
		return blamed(problems), ok
	}
	equal, problems, ok := finish.Sections(s)
	if !ok {
		return blamed(problems), false
	}
	over := b.acrossRectangle(g, equal.Count)
	for i := range equal.Count {
		one := finish.PanelSection{Area: equal.Each, Hours: equal.Hours, Sized: equal.Each}
		if i+1 < equal.Count {
			one.Sized = one.Sized.Add(over)
		}
		g.sections = append(g.sections, one)
	}
	return nil, true
}

// acrossRectangle puts the lines between equal sections of a rectangle across it,
// and answers what is sized past one of them. Elsewhere there is no telling where
// the lines are.
func (b *builder) acrossRectangle(g *gilt, sections int64) measure.Area {
	w := &step{builder: b, Step: b.Plan.Steps[g.leaf]}
	along, across, ok := w.rectangle()
	if !ok || sections < 2 {
		return measure.Area{}
	}
	line, beyond := min(along, across), b.Plan.Steps[g.sizing].Beyond
	g.along, g.alongWidth, g.onMask = max(along, across), across > along, w.Basis == finish.Mask
	g.stops, g.linesKnown = measure.Length(sections-1)*line, true
	g.beyond = measure.AreaOf(g.stops, beyond)
	return measure.AreaOf(line, beyond)
}

// sized is the area that the product of a size has to do for: what lies past the
// stop lines is sized twice, so that each section's size blends into the one
// before. Other steps cover their area once.
func (w *step) sized(area measure.Area) measure.Area {
	if w.Kind != finish.SizeCoat || w.Beyond <= 0 {
		return area
	}
	b := w.builder
	at := slices.IndexFunc(b.Plan.Steps, func(s plan.Step) bool { return s.ID == w.ID })
	for leaf := at + 1; leaf < len(b.Plan.Steps); leaf++ {
		if s := &b.Plan.Steps[leaf]; s.Kind == finish.LeafLaying && b.sizingFor(leaf) == at && !w.sizedFor(area, leaf) {
			break
		}
	}
	return area.Add(w.beyond)
}

// sizedFor adds what is sized past the lines of one leaf. It is false where they are
// not known.
func (w *step) sizedFor(area measure.Area, leaf int) bool {
	b := w.builder
	g, _, ok := b.gild(leaf, b.people())
	switch {
	case !ok:
		w.Report(w.At+"/sizeBeyond", []problem.Problem{{Severity: problem.Note,
			What: words.Say("In how many sections the leaf is laid is not known, so the size past their lines is not counted."),
			Do:   words.Say("Give the area that one gilder lays in an hour, and how long the size takes leaf.")}})
		return false
	case len(g.sections) < 2:
		return true
	case !g.linesKnown:
		w.Report(w.At+"/sizeBeyond", []problem.Problem{{Severity: problem.Note,
			What: words.Say("Where the sections end is not known, since they follow no panels and no rectangle. The size past their lines is not counted."),
			Do:   words.Raw("Name the layer that the leaf goes through, or buy size for " + w.Put(w.Beyond) + " more at each line.")}})
		return false
	}
	w.beyondRemarks(&g, area)
	w.beyond, w.stops = w.beyond.Add(g.beyond), w.stops+g.stops
	return true
}

// sizedFigure shows the area to size, where that is more than the area.
func (w *step) sizedFigure() {
	if w.beyond.SquareMetres.Sign() <= 0 {
		return
	}
	w.builder.Area(page.Finish, w.id("sized"), "area to size", w.area.Add(w.beyond),
		"The area, and what is sized twice: past the line where each section stops, so that the next section's size blends into it: "+w.Notation.Length(w.stops)+" of lines in all. Through a mask only its openings count.",
		w.Notation.Area(w.area)+" + "+w.Notation.Area(w.beyond)+" past the stop lines", "A gilder's notes of May 2011: size half a foot past where you will stop.")
}

// beyondRemarks is whether the size goes far enough past a line, or too far.
func (w *step) beyondRemarks(g *gilt, area measure.Area) {
	leaf := w.builder.Plan.Steps[g.leaf].Leaf
	switch {
	case leaf != nil && leaf.Known && w.Beyond < leaf.Leaf.Width:
		w.Report(w.At+"/sizeBeyond", []problem.Problem{{Severity: problem.Note,
			What: words.Raw("The size goes " + w.Put(w.Beyond) + " past the line, less than a leaf of " + w.Put(leaf.Leaf.Width) + "."),
			Do:   words.Say("Go past by a leaf at least, so that no leaf has to be cut at the line.")}})
	case g.beyond.Add(g.beyond).SquareMetres.Cmp(area.SquareMetres) > 0:
		w.Report(w.At+"/sizeBeyond", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("Past the lines " + w.Notation.Area(g.beyond) + " are sized twice, more than half of the " + w.Notation.Area(area) + " in all."),
			Do:   words.Say("Check how far the size goes past a line.")}})
	}
}

// isOnMask tells whether a step with this area lies in the openings of a
// mask or over it.
func isOnMask(basis finish.Basis) bool {
	return basis.IsOnMask()
}

// blamed moves problems of a Sizing to the blanks of a step of size.
func blamed(problems []problem.Problem) []problem.Problem {
	moved := make([]problem.Problem, len(problems))
	for i, p := range problems {
		switch p.At {
		case "/window":
			p.At = "/openHours"
		case "/rate", "/area", "/panels":
			p.At = ""
		}
		moved[i] = p
	}
	return moved
}

// gilding puts the sections on the sheet, with the times at which they are
// sized and laid: on the calendar where there is one, else counted from the
// first leaf.
func (b *builder) gilding() {
	c := b.calendar()
	for i := range c.gilt {
		g := &c.gilt[i]
		out := &b.Sheet.Steps[g.leaf]
		first := measure.Number{}
		for k := range g.sections {
			out.Sections = append(out.Sections, b.section(g, k, first))
			first = first.Add(g.sections[k].Hours)
		}
		g.labels(out.Sections)
		b.dateSections(c, g, out.Sections)
		for k := range out.Sections {
			b.sectionText(g, k, &out.Sections[k])
		}
		b.sectionFigure(g, out)
	}
}

// section is one section, its times in hours after the first leaf.
func (b *builder) section(g *gilt, k int, first measure.Number) sheet.Section {
	one := &g.sections[k]
	s := sheet.Section{N: k + 1, Area: b.Notation.Area(one.Area), Hours: b.hours(one.Hours)}
	s.SizeAt = b.fromFirstLeaf(first.Sub(g.tack))
	s.LayFrom, s.LayTo = b.hoursIn(first), b.hoursIn(first.Add(one.Hours))
	return s
}

// labels are the panels of each section.
func (g *gilt) labels(sections []sheet.Section) {
	if g.layer == nil {
		return
	}
	across := len(g.layer.Panels.Columns)
	for i, of := range g.panels.Of {
		s := &sections[of]
		s.Panels = append(s.Panels, mask.Panel{Column: i%across + 1, Row: i/across + 1}.Label())
	}
}

func (b *builder) sectionText(g *gilt, k int, s *sheet.Section) {
	sized := g.sections[k].Sized
	s.Text = "Size " + b.Notation.Area(sized) + ": " + s.SizeAt + ". Lay leaf from " + s.LayFrom + " to " + s.LayTo + "." + b.stopText(g, k)
	if more := sized.Sub(g.sections[k].Area); more.SquareMetres.Sign() > 0 {
		s.Text += " " + b.Notation.Area(more) + " of the size lies past the stop line: leave it without leaf, so that the next section's size blends into it."
	}
}

// stopAt is where a section that ends in a straight line across ends: so far from
// wall DA or AB, or from that side of the mask.
func (g *gilt) stopAt(section int) measure.Length {
	return measure.Length((int64(g.along)*int64(section+1) + int64(len(g.sections))/2) / int64(len(g.sections)))
}

func (b *builder) stopText(g *gilt, section int) string {
	if g.along == 0 || section+1 == len(g.sections) {
		return ""
	}
	side := survey.DA
	if g.alongWidth {
		side = survey.AB
	}
	from := "wall " + side.Text()
	if g.onMask {
		from = "the edge of the mask " + b.towardsSide(side)
	}
	return " Stop the leaf " + b.Notation.Length(g.stopAt(section)) + " from " + from + "."
}

// fromFirstLeaf is a time in hours before or after the first leaf is laid.
func (b *builder) fromFirstLeaf(hours measure.Number) string {
	switch hours.Sign() {
	case 0:
		return "with the first leaf"
	case -1:
		return b.hours(hours.Abs()) + " before the first leaf"
	}
	return b.hours(hours) + " after the first leaf"
}

// hoursIn is a time in hours since the first leaf was laid.
func (b *builder) hoursIn(hours measure.Number) string {
	if hours.IsZero() {
		return "the start"
	}
	return b.hours(hours) + " in"
}

// hours is a number of hours as they are said: 2 h, 2 h 30 min, 45 min; to the
// minute.
func (b *builder) hours(n measure.Number) string {
	minutes, ok := n.Mul(measure.NumberFromInt(60)).Add(measure.NumberFromFraction(1, 2)).Floor()
	if !ok {
		return b.Notation.Number(n, 0) + " h"
	}
	return minutesText(minutes)
}

func minutesText(minutes int64) string { return days.Lasting(minutes).In(words.Style{}) }

// dateSections puts the times of the calendar in the place of hours counted from
// the first leaf.
func (b *builder) dateSections(c *calendar, g *gilt, sections []sheet.Section) {
	if !c.isDated {
		return
	}
	for i, o := range c.origins {
		k := o.Section - 1
		if o.Step == g.sizing {
			k -= c.sizedBefore(g)
		}
		if o.Section == 0 || k < 0 || k >= len(sections) {
			continue
		}
		s, one := &sections[k], &c.schedule.Placed[i]
		switch o.Step {
		case g.sizing:
			s.SizeAt = momentText(c.schedule.Zone.Moment(one.Start))
		case g.leaf:
			s.LayFrom, s.LayTo = momentText(c.schedule.Zone.Moment(one.Start)), momentText(c.schedule.Zone.Moment(one.End))
		}
	}
}

// sizedBefore is how many sections of the same size lie under leaf before this one.
func (c *calendar) sizedBefore(g *gilt) (sections int) {
	for i := range c.gilt {
		if other := &c.gilt[i]; other.sizing == g.sizing && other.leaf < g.leaf {
			sections += len(other.sections)
		}
	}
	return sections
}

// sectionFigure is how many sections a leaf step has, and how long it takes.
func (b *builder) sectionFigure(g *gilt, out *sheet.Step) {
	id := "step." + out.ID + "."
	most := g.rate.Times(measure.NumberFromInt(g.gilders)).Times(g.window).Times(measure.NumberFromInt(1).Sub(g.reserve))
	rule := "The area over what is laid while the size takes leaf, rounded up."
	if g.layer != nil {
		rule = "As few sections as whole panels make that each hang together and are laid while the size takes leaf, as equal as can be."
		if !g.panels.Fewest {
			rule += " Found by trying; it is not shown that fewer could not do."
		}
	}
	if size := &b.Plan.Steps[g.sizing]; size.TackHours.IsRange() && size.OpenHours.Known {
		rule += " Any spot can be laid from the latest tack, " + b.hours(size.TackHours.To) + ", to the earliest close, " + b.hours(size.TackHours.From) + " + " + b.hours(size.OpenHours.From) + "."
	}
	rule += " A share of the time is kept back."
	if !g.reserveGiven {
		rule += " A fifth, as usual."
	}
	sum := b.Notation.Area(g.area) + " ÷ (" + b.perHour(g.rate) + " × " + page.Plural(g.gilders, "gilder", "gilders") + " × " + b.hours(g.window) + " × (1 − " + b.Share(g.reserve) + ")), rounded up"
	if least, ok := g.area.SquareMetres.Quo(most.SquareMetres).Ceil(); ok && int64(len(g.sections)) > least {
		sum += " + " + strconv.FormatInt(int64(len(g.sections))-least, 10) + " since panels stay whole"
	}
	out.Figures = append(out.Figures, id+"sections")
	b.Count(page.Finish, id+"sections", "sections", int64(len(g.sections)), "", rule, sum,
		"Size in parts that can be gilded while it is open, each finished before the next (Workshop Receipts, first series). The fifth kept back is common practice, no source.")
}

// stepHours are the hours of work in each step whose rate is given, as the days and
// the price count them.
func (b *builder) stepHours() {
	if !slices.ContainsFunc(b.Plan.Steps, func(s plan.Step) bool { return s.RateKnown }) {
		return
	}
	c := b.calendar()
	if c.tasks == nil { // nobody asks for days or price
		c = &calendar{}
		b.gildAll(c, b.people(), false)
		b.fillJob(c)
		c.tasks, c.origins = c.job.Tasks(b.people())
	}
	for _, w := range c.labour(b.people()) {
		if w.step >= 0 && b.Plan.Steps[w.step].RateKnown {
			b.hoursFigure(&b.Sheet.Steps[w.step], &w)
		}
	}
}

func (b *builder) hoursFigure(out *sheet.Step, w *work) {
	id, text := "step."+out.ID+".hours", minutesText(w.minutes)
	rule := "The area over what one person does in an hour"
	if area, ok := b.AreaOf(w.step); ok {
		rule += ", " + b.Notation.Area(area) + " ÷ " + b.perHour(b.Plan.Steps[w.step].Rate)
	}
	out.Figures = append(out.Figures, id)
	b.Figure(sheet.Figure{ID: id, Block: page.Finish, Label: "hours of work", Value: page.Plain(measure.NumberFromFraction(w.minutes, 60)), Unit: "h", Text: text,
		Working: sheet.Working{Rule: rule + ", for each coat; each of those who share it is at it for whole minutes. The days say the same, and it is paid so.", Sum: w.sum() + " = " + text, Source: page.OfArithmetic}})
}

// perHour is a rate as it is written in this notation.
func (b *builder) perHour(rate measure.Area) string {
	if b.Notation.System == measure.Metric {
		return b.Notation.NumberTrimmed(rate.SquareMetres, 2) + " m²/h"
	}
	return b.Notation.NumberTrimmed(rate.SquareFeet(), 1) + " ft²/h"
}
