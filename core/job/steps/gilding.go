package steps

import (
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Gilt is a leaf step on the size of the step before it, divided into sections
// that can be laid while the size takes leaf. Size and Leaf are the indexes of
// the two steps; Layer is the layer whose panels are divided, nil where the
// sections are no panels. Hours are exact.
type Gilt struct {
	Size, Leaf   int
	Layer        *layers.Layer
	Gilders      int64
	Rate         measure.Area
	Tack, Window measure.Number
	Reserve      measure.Number
	// ReserveGiven tells that the reserve is of the plan, not the usual one.
	ReserveGiven bool
	// Worked are the hours in which the size takes leaf that are worked, the
	// reserve taken off, 0 where that is no limit.
	Worked   measure.Number
	Panels   finish.PanelSections
	Area     measure.Area
	Sections []finish.PanelSection
	// UntilDust tells that the size has no closing time of its own.
	UntilDust bool
	// Stops is the length of the lines at which sections end, Beyond the area
	// that is sized twice along them; LinesKnown tells that there are such lines.
	Stops      measure.Length
	Beyond     measure.Area
	LinesKnown bool
	// Along is the side that the lines of equal sections divide, where they run
	// straight across a rectangle; 0 elsewhere. AlongWidth tells that it is the
	// width, OnMask that the rectangle is the mask and not the ceiling.
	Along              measure.Length
	AlongWidth, OnMask bool
	// Divided tells that there are sections; what stands against them, or is worth
	// knowing of them, is among the problems, relative to the step of the size.
	Divided  bool
	timed    bool // the times of the size leave some to lay leaf in
	Problems problem.List
}

// SizeUnder is the index of the size that a leaf step is laid on, −1 for none.
func SizeUnder(steps []plan.Step, leaf int) int {
	return finish.SizeUnder(leaf, func(i int) (finish.Kind, string) { return steps[i].Kind, steps[i].Surface })
}

// gildedBy is each leaf step on a size, divided for so many people.
func (w *work) gildedBy(people int) []Gilt {
	var list []Gilt
	for i := range w.Plan.Steps {
		if size := SizeUnder(w.Plan.Steps, i); w.Plan.Steps[i].Kind == finish.LeafLaying && size >= 0 {
			g := Gilt{Leaf: i, Size: size}
			w.divide(&g, people)
			list = append(list, g)
		}
	}
	return list
}

// RateOf is the area one person does in an hour in a step, the usual one where
// the plan does not say.
func RateOf(s *plan.Step) measure.Area {
	if s.RateKnown {
		return s.Rate
	}
	metal := finish.Metal("")
	if s.Leaf != nil {
		metal = s.Leaf.Metal
	}
	return days.UsualRate(s.Kind, metal)
}

// divide divides a leaf step for so many people.
func (w *work) divide(g *Gilt, people int) {
	size, step := &w.Plan.Steps[g.Size], &w.Plan.Steps[g.Leaf]
	area, known := w.Covers[g.Leaf].Over()
	if !known || !step.RateKnown && !w.Plan.Days.IsAsked() {
		return
	}
	g.Area, g.Rate = area, RateOf(step)
	g.Gilders = int64(size.Gilders)
	if g.Gilders == 0 {
		g.Gilders = int64(people)
	}
	// Any spot can be laid from the latest tack to the earliest close.
	g.Tack, g.Reserve = size.TackHours.To, size.Reserve.Share
	g.Window = size.TackHours.From.Add(size.OpenHours.From).Sub(g.Tack)
	if !size.TackHours.Known {
		g.Tack = size.DryHours.Value
	}
	if g.ReserveGiven = size.Reserve.Known; !g.ReserveGiven {
		g.Reserve = days.UsualReserve
	}
	if g.UntilDust = !size.OpenHours.Known; g.UntilDust {
		g.Window = measure.NumberFromFraction(days.UsualOpen, 60)
	} else if g.Window.Sign() <= 0 {
		g.Problems.Remark("/openHours", problem.Stop,
			words.Say("With tack anywhere from {soonest} to {latest} and leaf taken for {open} from then, one spot may have closed before another is ready.",
				words.Of("soonest", days.InHours(size.TackHours.From)), words.Of("latest", days.InHours(g.Tack)), words.Of("open", days.InHours(size.OpenHours.From))),
			words.Say("Use a size that stays open longer, or narrow the times by a test patch in this room."))
		return
	}
	w.limitToHours(g, people)
	w.section(g)
	g.timed = true
}

// judge says what could be laid otherwise, and which times of the size are not given.
func (w *work) judge(g *Gilt) {
	if !g.timed {
		return
	}
	size := &w.Plan.Steps[g.Size]
	w.shortHours(g)
	ask := words.Say("Write what the label says, or a test patch.")
	if !size.TackHours.Known && !size.DryHours.Known {
		g.Problems.Remark("/tackHours", problem.Caution, words.Say("How long it takes until leaf can be laid on the size is not given, so no time is counted."), ask)
	}
	if g.UntilDust {
		g.Problems.Remark("/openHours", problem.Caution, words.Say("How long the size takes leaf is not given, so a day is counted: until dust settles on it."), ask)
	}
}

// section makes the sections: of whole panels where the leaf goes through a
// layer, else of equal areas.
func (w *work) section(g *Gilt) {
	s := finish.Sizing{Area: g.Area, Rate: g.Rate, Gilders: g.Gilders, Window: g.Window, Reserve: g.Reserve, Worked: g.Worked}
	step := &w.Plan.Steps[g.Leaf]
	for i := range w.Layers {
		if l := &w.Layers[i]; l.Panels.ID == step.LayerID && step.Basis.IsOnMask() && !l.Panels.IsEmpty() {
			g.Layer = l
		}
	}
	var problems []problem.Problem
	if g.Layer != nil {
		g.Panels, problems, g.Divided = finish.SectionsOfPanels(finish.Grid{Columns: g.Layer.Panels.Columns, Rows: g.Layer.Panels.Rows}, s, w.Plan.Steps[g.Size].Beyond)
		g.Sections, g.Stops, g.Beyond, g.LinesKnown = g.Panels.Sections, g.Panels.Stops, g.Panels.Beyond, true
		g.blameAll(problems)
		return
	}
	var equal finish.Sectioned
	equal, problems, g.Divided = finish.Sections(s)
	if g.blameAll(problems); !g.Divided {
		return
	}
	over := w.acrossRectangle(g, equal.Count)
	for i := range equal.Count {
		one := finish.PanelSection{Area: equal.Each, Hours: equal.Hours, Sized: equal.Each}
		if i+1 < equal.Count {
			one.Sized = one.Sized.Add(over)
		}
		g.Sections = append(g.Sections, one)
	}
}

// blameAll moves problems of a Sizing to the blanks of a step of size.
func (g *Gilt) blameAll(problems []problem.Problem) {
	for _, p := range problems {
		switch p.At {
		case "/window":
			p.At = "/openHours"
		case "/rate", "/area", "/panels":
			p.At = ""
		}
		g.Problems = append(g.Problems, p)
	}
}

// rectangle is what a step goes over, where that is one: the ceiling or the mask.
func (w *work) rectangle(step int) (along, across measure.Length, ok bool) {
	switch shape, outline := &w.Room.Shape, &w.Plan.Mask.Outline; {
	case w.Plan.Steps[step].Basis == finish.Surface && shape.Usable() && shape.IsRectangle():
		return shape.Length, shape.Width, true
	case w.Plan.Steps[step].Basis == finish.Mask && outline.IsComplete():
		return outline.Length, outline.Width, true
	}
	return 0, 0, false
}

// acrossRectangle puts the lines between equal sections of a rectangle across it,
// and answers what is sized past one of them. Elsewhere there is no telling where
// the lines are.
func (w *work) acrossRectangle(g *Gilt, sections int64) measure.Area {
	along, across, ok := w.rectangle(g.Leaf)
	if !ok || sections < 2 {
		return measure.Area{}
	}
	line, beyond := min(along, across), w.Plan.Steps[g.Size].Beyond
	g.Along, g.AlongWidth, g.OnMask = max(along, across), across > along, w.Plan.Steps[g.Leaf].Basis == finish.Mask
	g.Stops, g.LinesKnown = measure.Length(sections-1)*line, true
	g.Beyond = measure.AreaOf(g.Stops, beyond)
	return measure.AreaOf(line, beyond)
}

// StopAt is where a section that ends in a straight line across ends: so far from
// wall DA or AB, or from that side of the mask.
func (g *Gilt) StopAt(section int) measure.Length {
	return measure.Length((int64(g.Along)*int64(section+1) + int64(len(g.Sections))/2) / int64(len(g.Sections)))
}

// sizedTwice is the area that a step of size covers a second time, past stop lines of
// such a length, so that each section's size blends into the one before: none of
// another step. It reads the gilding.
func (w *work) sizedTwice(size int) (beyond measure.Area, stops measure.Length) {
	s := &w.Plan.Steps[size]
	if s.Kind != finish.SizeCoat || s.Beyond <= 0 {
		return beyond, stops
	}
	for i := range w.Gilding {
		if g := &w.Gilding[i]; g.Size == size {
			if !w.linesFound(g) {
				break
			}
			beyond, stops = beyond.Add(g.Beyond), stops+g.Stops
		}
	}
	return beyond, stops
}

// linesFound says what is amiss with the size past the lines of a gilding; false where
// they are not known.
func (w *work) linesFound(g *Gilt) bool {
	s, leaf := &w.Plan.Steps[g.Size], w.Plan.Steps[g.Leaf].Leaf
	at, area := s.At+"/sizeBeyond", w.Covers[g.Size].Area
	switch {
	case !g.Divided:
		w.Remark(at, problem.Note, words.Say("In how many sections the leaf is laid is not known, so the size past their lines is not counted."),
			words.Say("Give the area that one gilder lays in an hour, and how long the size takes leaf."))
		return false
	case len(g.Sections) < 2:
	case !g.LinesKnown:
		w.Remark(at, problem.Note, words.Say("Where the sections end is not known, since they follow no panels and no rectangle. The size past their lines is not counted."),
			words.Say("Name the layer that the leaf goes through, or buy size for {past} more at each line.", words.Put("past", s.Beyond)))
		return false
	case leaf != nil && leaf.Known && s.Beyond < leaf.Leaf.Width:
		w.Remark(at, problem.Note, words.Say("The size goes {past} past the line, less than a leaf of {leaf}.", words.Put("past", s.Beyond), words.Put("leaf", leaf.Leaf.Width)),
			words.Say("Go past by a leaf at least, so that no leaf has to be cut at the line."))
	case g.Beyond.Add(g.Beyond).SquareMetres.Cmp(area.SquareMetres) > 0:
		w.Remark(at, problem.Caution, words.Say("Past the lines {past} are sized twice, more than half of the {all} in all.", words.Area("past", g.Beyond), words.Area("all", area)),
			words.Say("Check how far the size goes past a line."))
	}
	return true
}
