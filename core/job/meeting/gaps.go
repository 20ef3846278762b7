// Package meeting works out how panels meet at their seams, and layers one on another.
package meeting

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Meeting is how panels and layers meet: one Met for each layer. Widest is the widest
// gap that tape has to bridge and WidestAt its seam, "" where there is none.
type Meeting struct {
	Layers   []Met
	Widest   measure.Length
	WidestAt string
}

// Met is how the panels of a layer meet at its seams, where its sides come to lie,
// and how it lies by its check marks. Columns and Rows are its panels as they come to
// lie with the gaps measured so far, and Cards what places each step of the order there.
type Met struct {
	Gaps          []Gap
	Landings      []Landing
	Register      Register
	Columns, Rows mask.Run
	Cards         []hanging.Card
}

// Gap is a seam that can be set: as planned, and as it was measured or is to be set
// now. At is the blank it was measured in, "" for none. Edge is how far the edge of
// the next panel is then from the tape line towards Wall. Offers are likely gaps, on
// the marks of the tape.
type Gap struct {
	Seam         string
	Planned, Set measure.Length
	At           string
	Edge         measure.Length
	Wall         survey.Wall
	Offers       [5]measure.Length
}

// Landing is where the side of a layer towards Wall comes to lie, of which gaps are
// measured: so far past the tape line, below nothing short of it. Panels are those
// after the first with their gaps, Gaps the gaps alone, Room the way to the tape
// line; Open is how many seams are still to come.
type Landing struct {
	Wall                     survey.Wall
	Past, Panels, Gaps, Room measure.Length
	Open                     int
}

// work is a meeting being worked out.
type work struct {
	Plan    *plan.Plan
	Setting *setting.Setting
	Meeting Meeting
	problem.List
}

// Of works out how panels and layers meet: from the layers, where the mask goes, and the
// panel of each layer that is hung first.
func Of(p *plan.Plan, list []layers.Layer, set *setting.Setting, h *hung.Hanging) (Meeting, []problem.Problem) {
	w := work{Plan: p, Setting: set, Meeting: Meeting{Layers: make([]Met, len(list))}}
	for i := range list {
		l, met := &list[i], &w.Meeting.Layers[i]
		met.Columns, met.Rows = l.Columns, l.Rows
		if i < len(h.Layers) && len(h.Layers[i].Order) > 0 {
			met.Cards = h.Layers[i].Cards
			w.setGaps(l, h.Layers[i].Order[0].Panel, met)
			if len(met.Landings) > 0 {
				met.placeAnew(h.Layers[i].Order)
			}
		}
		met.Register = w.registerOf(l, i > 0)
	}
	w.checkBridging()
	return w.Meeting, w.List
}

// placeAnew works out the cards where measured gaps have moved the panels, so that what
// a panel is set to and the gap at its seam agree.
func (met *Met) placeAnew(order []hanging.Hang) {
	planned := met.Cards
	met.Cards = make([]hanging.Card, len(planned))
	for k := range planned {
		met.Cards[k] = hanging.CardFor(met.Columns, met.Rows, order[k].Block)
	}
}

// line is one direction of a layer while it is hung.
type line struct {
	run  mask.Run
	lies *mask.Run // as it comes to lie
	name func(int) string
	// low and high are the sides of the box where the run begins and ends.
	low, high survey.Wall
	first     int   // the panel first up, counted from 0
	notes     []int // for each seam its entry in the plan's list, from 1; 0 for none
	measured  []mask.MeasuredGap
}

// setGaps is every seam of a layer that can be set, between columns first.
func (w *work) setGaps(l *layers.Layer, first mask.Panel, met *Met) {
	lines := [2]line{
		{run: l.Columns, lies: &met.Columns, name: mask.ColumnSeam, low: survey.DA, high: survey.BC, first: first.Column - 1},
		{run: l.Rows, lies: &met.Rows, name: mask.RowSeam, low: survey.AB, high: survey.CD, first: first.Row - 1},
	}
	w.readGaps(l, &lines)
	met.Gaps = make([]Gap, 0, len(l.Columns.Gaps)+len(l.Rows.Gaps))
	for i := range lines {
		a := &lines[i]
		if h, ok := a.run.Hang(a.first, a.measured); ok {
			w.gapsAlong(l, a, &h, met)
			a.lies.Gaps, a.lies.Starts = h.Gaps, h.Starts
		}
	}
}

// readGaps sorts the measured gaps to their seams.
func (w *work) readGaps(l *layers.Layer, lines *[2]line) {
	for i := range l.Plan.Gaps {
		note := &l.Plan.Gaps[i]
		if note.Seam == "" && !note.Known {
			continue
		}
		columns, after, ok := mask.ParseSeam(note.Seam)
		a := &lines[1]
		if columns {
			a = &lines[0]
		}
		switch {
		case !ok || after > len(a.run.Gaps):
			w.Remark(note.At+"/seam", problem.Stop, words.Say("“{seam}” is no seam of this layer.", words.Name("seam", note.Seam)),
				words.Say("Write it as the list of seams does, such as {seam}.", words.Name("seam", exampleOf(lines))))
		case a.run.Held != nil && a.run.Held[after-1]:
			w.Remark(note.At+"/seam", problem.Caution, words.Say("Seam {seam} lies inside pieces over its whole length, so it cannot be set.", words.Name("seam", a.name(after))),
				words.Say("Take this line out."))
		case !note.Known:
		case note.Gap >= mask.LeastPanel:
			w.Remark(note.At+"/gap", problem.Stop, words.Say("A gap of {gap} is as wide as a panel.", words.Length("gap", note.Gap)),
				words.Say("Check the number and write its unit."))
		default:
			a.take(after-1, i, note.Gap)
		}
	}
}

// exampleOf is the name of a seam of a layer.
func exampleOf(lines *[2]line) string {
	if len(lines[0].run.Gaps) == 0 && len(lines[1].run.Gaps) > 0 {
		return lines[1].name(1)
	}
	return lines[0].name(1)
}

func (a *line) take(seam, note int, gap measure.Length) {
	if a.notes == nil {
		a.notes = make([]int, len(a.run.Gaps))
	}
	a.notes[seam] = note + 1
	a.measured = append(a.measured, mask.MeasuredGap{Seam: seam, Gap: gap})
}

// gapsAlong are the seams of one direction and, where any is measured, where its two
// sides come to lie.
func (w *work) gapsAlong(l *layers.Layer, a *line, h *mask.Hanging, met *Met) {
	mark := w.Plan.Units.Notation().Mark()
	for i, set := range h.Gaps {
		if a.run.Held != nil && a.run.Held[i] {
			continue
		}
		g := Gap{Seam: a.name(i + 1), Planned: a.run.Gaps[i], Set: set, Offers: mask.Offers(set, mark)}
		g.Edge, g.Wall = a.edge(h, i)
		g.Wall = w.Setting.Facing(g.Wall)
		if a.notes != nil && a.notes[i] > 0 {
			g.At = l.Plan.Gaps[a.notes[i]-1].At + "/gap"
		}
		met.Gaps = append(met.Gaps, g)
		if m := &w.Meeting; m.WidestAt == "" || set > m.Widest {
			m.Widest, m.WidestAt = set, g.Seam
		}
	}
	if len(a.measured) == 0 {
		return
	}
	start := a.run.Starts[a.first]
	w.land(l, a, h, 0, a.first, Landing{Wall: a.low, Past: h.Low, Room: start}, met)
	w.land(l, a, h, a.first, len(h.Gaps), Landing{Wall: a.high, Past: h.High, Room: a.run.Box - start - a.run.Sizes[a.first]}, met)
}

// edge is where the edge of the panel hung next at a seam comes to lie: how far from
// the nearer of the two tape lines. Panels set to these distances do not build up.
func (a *line) edge(h *mask.Hanging, seam int) (measure.Length, survey.Wall) {
	edge := h.Starts[seam+1]
	if seam < a.first {
		edge = h.Starts[seam] + a.run.Sizes[seam]
	}
	if edge > a.run.Box-edge {
		return a.run.Box - edge, a.high
	}
	return edge, a.low
}

// land is where a side of the layer, its seams from up to to, comes to lie, with a
// problem at the last gap measured on that side where it does not land.
func (w *work) land(l *layers.Layer, a *line, h *mask.Hanging, from, to int, side Landing, met *Met) {
	last := 0
	for i := from; i < to; i++ {
		last = max(last, a.notes[i])
		side.Gaps += h.Gaps[i]
		if !h.Fixed[i] {
			side.Open++
		}
	}
	if last == 0 {
		return
	}
	side.Wall, side.Panels = w.Setting.Facing(side.Wall), side.Past+side.Room-side.Gaps
	met.Landings = append(met.Landings, side)
	if side.Past.Abs() < mask.Noticeable {
		return
	}
	past, wall := words.Amount("past", side.Past.Abs()), words.Name("wall", side.Wall.Text())
	what := words.Say("The panels will run {past} past the tape line towards {wall}.", past, wall)
	do := words.Say("Trim the last panel there by that much, or take down what was hung too wide.")
	switch {
	case side.Past < 0:
		what = words.Say("The panels end {past} short of the tape line towards {wall}.", past, wall)
		do = words.Say("Move the tape line there, or take down what was hung too tight.")
	case side.Open > 0:
		what = words.Say("The panels will run {past} past the tape line towards {wall}, even with {open|seam|seams} still to come closed up.",
			past, wall, words.Count("open", side.Open))
	}
	w.Remark(l.Plan.Gaps[last-1].At+"/gap", problem.Caution, what, do)
}

// checkBridging says when the tape is too narrow for the widest gap of all layers,
// or its pieces too short.
func (w *work) checkBridging() {
	widest, seam := w.Meeting.Widest, w.Meeting.WidestAt
	tape := mask.Bridging{Width: w.Plan.Seams.Width, Piece: w.Plan.Seams.Piece}
	if tape.Piece > 0 && tape.Piece < mask.ShortestPiece {
		w.Remark("/seams/pieceLength", problem.Caution,
			words.Say("Pieces of {piece} would be mostly laps, so every seam is reckoned as one piece.", words.Length("piece", tape.Piece)),
			words.Say("Write the longest piece one person lays, {least} or more.", words.AtLeast("least", mask.ShortestPiece)))
	}
	if tape.Width <= 0 || seam == "" || widest <= tape.WidestGap() {
		return
	}
	gap, at, width := words.Fine("gap", widest), words.Name("seam", seam), words.Fine("width", tape.Width)
	what := words.Say("Over the gap of {gap} at seam {seam} tape of {width} covers {hold} of the panel on either side.", gap, at, width,
		words.Held("hold", tape.Hold(widest), mask.LeastHold))
	if tape.Hold(widest) <= 0 {
		what = words.Say("Over the gap of {gap} at seam {seam} tape of {width} does not reach across.", gap, at, width)
	}
	w.Remark("/seams/tapeWidth", problem.Caution, what,
		words.Say("Use tape of {width} or wider, so that it holds about {hold} on either side (common practice, no source).",
			words.AtLeast("width", widest+2*mask.LeastHold), words.Length("hold", mask.LeastHold)))
}
