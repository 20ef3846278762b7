// Package layers works out the mask: how its layers are cut, what came of them, and
// the tape over their seams.
package layers

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/delivery"
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Mask is the mask as taken: its layers, or that there is none and no step needs one.
type Mask struct {
	Layers   []Layer
	Maskless bool
}

// work is a mask being worked out.
type work struct {
	Plan *plan.Plan
	Mask
	problem.List
}

// Take works out the layers of the mask: how each is cut, what came of it, how it lies
// in the mask outline and what tape goes over its seams. isRefused tells of a blank, by
// its pointer, whether it could not be read.
func Take(p *plan.Plan, isRefused func(at string) bool) (Mask, []problem.Problem) {
	w := work{Plan: p}
	if w.Maskless = !isRefused("/mask/length") && !isRefused("/mask/width") && isMaskless(p); w.Maskless {
		w.Remark("/mask/length", problem.Note, words.Say("No mask is given, and no step needs one."), words.Say("Write its length and width if there is one."))
	} else {
		w.take()
	}
	return w.Mask, w.List
}

func (w *work) take() {
	m := &w.Plan.Mask
	w.Report("/mask", m.Outline.Check())
	if len(m.Layers) == 0 {
		w.Remark("/mask/layers", problem.Stop, words.Say("The mask has no layer."), words.Say("Add a layer."))
	}
	used := map[string]bool{}
	for i, l := range m.Layers {
		given := l.Cut.ID
		for used[l.Cut.ID] {
			l.Cut.ID += "-" + strconv.Itoa(i+1)
		}
		if l.Cut.ID != given {
			w.Remark(l.At+"/id", problem.Caution,
				words.Say("Another layer is called “{given}” too; this one is “{id}” on the sheet, and steps that name “{given}” mean the first.",
					words.Name("given", given), words.Name("id", l.Cut.ID)), words.Say("Give each layer a word of its own."))
		}
		used[l.Cut.ID] = true
		w.Layers = append(w.Layers, w.layerOf(l))
	}
}

// isMaskless tells whether this is a job without a mask, as graining is, or leaf
// alone: no size of one is typed, and no step lies in it, beside it or peels it.
func isMaskless(p *plan.Plan) bool {
	if p.Mask.Length != 0 || p.Mask.Width != 0 || len(p.Steps) == 0 {
		return false
	}
	for i := range p.Steps {
		s := &p.Steps[i]
		onMask := s.Basis.IsOnMask() && s.Basis != finish.Typed || s.Basis == finish.Border || s.Kind == finish.Peel
		if onMask || s.Basis == finish.Typed && s.LayerID != "" {
			return false
		}
	}
	for i := range p.Mask.Layers {
		l := &p.Mask.Layers[i].Cut
		if l.Columns != 0 || l.Rows != 0 || len(l.ColumnSizes)+len(l.RowSizes) > 0 || l.GreatestLength != 0 || l.GreatestWidth != 0 {
			return false
		}
	}
	return true
}

// layerOf is a layer with its pieces, laid out by the panels as they were measured.
func (w *work) layerOf(given plan.Layer) Layer {
	outline := w.Plan.Mask.Outline
	ordered, problems := mask.LayerFromCut(outline, given.Cut)
	w.Report(given.At, problems)
	if given.Tolerance >= mask.LeastPanel {
		w.Remark(given.At+"/panelTolerance", problem.Caution, words.Say("A panel that may be off by {off} may be off by a whole panel.", words.Put("off", given.Tolerance)),
			words.Say("Check the number and write its unit."))
	}
	ordered, problems = w.fewEnough(given.At, ordered).WithPieces(outline, given.Pieces)
	w.Report("", problems)
	checked, problems := delivery.Check(delivery.Given{Layer: ordered, Labels: given.Labels, Notes: notesOf(&given),
		Tolerance: given.Tolerance, Mark: w.Plan.Units.Notation().Mark()})
	w.Report(given.At, problems)
	w.Report(given.At, checked.CheckRuns(outline, w.Plan.Seams.Width))
	l := Layer{Plan: given, Delivery: checked, Panels: checked.Layer}
	if l.Panels.IsEmpty() {
		return l
	}
	l.Asked, l.Changes = checked.Ask(), checked.Changes(outline)
	l.Columns, l.Rows = l.Panels.Runs(outline)
	l.LooseCuts = make([][]setout.Cut, len(l.Panels.Loose))
	for i := range l.Panels.Loose {
		p := &l.Panels.Loose[i]
		hole := setout.Hole{Round: p.Round, Middle: survey.Point{X: p.X, Y: p.Y}, Length: p.Length, Width: p.Width}
		l.LooseCuts[i] = hole.Cuts(l.Columns, l.Rows)
	}
	if outline.IsComplete() {
		l.bridge(outline, &w.Plan.Seams)
	}
	return l
}

// bridge is the tape over the seams of a layer.
func (l *Layer) bridge(outline mask.Outline, seams *plan.Seams) {
	tape := mask.Bridging{Width: seams.Width, Piece: seams.Piece}
	l.Tape = l.Panels.TapeLength(outline, seams.Cover)
	l.Bridges = tape.Bridges(append(l.Panels.Seams(outline), l.Panels.LooseSeams()...))
	l.Bridges = slices.DeleteFunc(l.Bridges, func(b mask.Bridge) bool { return b.Seam.Length <= 0 })
	for i := range l.Bridges {
		l.Laps += l.Bridges[i].Length - l.Bridges[i].Seam.Length
	}
	l.Tape += l.Laps
}

// notesOf are the notes of the plan on its panels, each blamed by its place in the
// layer.
func notesOf(l *plan.Layer) []delivery.Note {
	list := make([]delivery.Note, len(l.Panels))
	for i, n := range l.Panels {
		list[i] = delivery.Note{At: strings.TrimPrefix(n.At, l.At), Panel: n.Panel, State: delivery.State(n.State), Length: n.Length, Width: n.Width}
	}
	return list
}

// mostLines is how many columns and rows all layers may have: each has its marks
// on the walls, its seam and its gap to set. On the largest mask 1000 panels side
// by side are as narrow as anyone cuts one.
const mostLines = 2000

// fewEnough is a layer, or one without panels where all layers together would
// have more than are taken of one: a sheet of many such layers is more than a
// page can hold.
func (w *work) fewEnough(at string, panels mask.Layer) mask.Layer {
	total, lines := panels.Count(), len(panels.Columns)+len(panels.Rows)
	for i := range w.Layers {
		total += w.Layers[i].Panels.Count()
		lines += len(w.Layers[i].Panels.Columns) + len(w.Layers[i].Panels.Rows)
	}
	var what words.Text
	switch {
	case total > mask.MostPanels:
		what = words.Say("All layers so far have {have} panels, more than the {most} that are taken. This layer is left out.",
			words.Count("have", total), words.Count("most", mask.MostPanels))
	case lines > mostLines:
		what = words.Say("All layers so far have {have} columns and rows, more than the {most} that are taken. This layer is left out.",
			words.Count("have", lines), words.Count("most", mostLines))
	default:
		return panels
	}
	w.Remark(at, problem.Stop, what, words.Say("Cut the layers into fewer panels, or plan this one in a job of its own."))
	panels.Columns, panels.Rows = nil, nil
	return panels
}
