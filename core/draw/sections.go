package draw

import (
	"strconv"

	"ceilingwright/core/job/layers"

	"ceilingwright/core/drawing"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Sections are the sections that a leaf step is sized and gilded in. Layer is the layer
// whose panels they are, nil where they divide the ceiling, or with OnMask the mask,
// into equal parts along its length or AlongWidth: Of is then empty, and Stops are where
// the parts end. Of is the section of each panel, row by row. Beyond is how far size goes
// past the line at which leaf stops.
type Sections struct {
	Step, Name         string
	Layer              *layers.Layer
	Count              int
	Of                 []int32
	Stops              []measure.Length
	OnMask, AlongWidth bool
	Beyond             measure.Length
}

// Sections is the drawing of sections; ok is false where they have no place to be
// drawn at.
func (d *Drawer) Sections(g Sections) (n Named, ok bool) {
	if !d.Room.Shape.Usable() || g.Count < 2 || !d.Setting.Placed && (g.Layer != nil || g.OnMask) || g.Layer == nil && len(g.Stops) == 0 {
		return n, false
	}
	layer := ""
	if g.Layer != nil {
		layer = g.Layer.Panels.ID
	}
	return named("step."+g.Step+".sections", layer, up, "sections", words.Say("Sections of {step}", words.Name("step", g.Name)), func() *scene { return d.drawSections(&g) }), true
}

// caption is the drawing in words.
func (g *Sections) caption() words.Text {
	switch count := len(g.Of); {
	case count > 0 && g.Beyond > 0:
		return words.Say("The {n|section|sections} in which size and leaf are laid, each panel with the number of its section; leaf stops at the thick lines, size at the broken lines past them.", words.Count("n", g.Count))
	case count > 0:
		return words.Say("The {n|section|sections} in which size and leaf are laid, each panel with the number of its section; leaf stops at the thick lines.", words.Count("n", g.Count))
	case g.Beyond > 0:
		return words.Say("The {n|section|sections} in which size and leaf are laid; leaf stops at the thick lines, size at the broken lines past them.", words.Count("n", g.Count))
	}
	return words.Say("The {n|section|sections} in which size and leaf are laid; leaf stops at the thick lines.", words.Count("n", g.Count))
}

// drawSections draws each panel with the number of its section, or the ceiling in
// equal parts; the lines at which leaf stops; and how far size goes past them.
func (d *Drawer) drawSections(g *Sections) *scene {
	s := d.scene(up, plainMargin, g.caption())
	s.outline()
	s.sizes()
	s.Begin("step."+g.Step+".sections", "")
	switch {
	case g.Layer == nil:
		s.equalSections(g)
	case g.Layer.Panels.Count() <= readablePanels:
		s.sectionPanels(g)
		s.stopLines(g)
	default:
		s.seams(g.Layer)
		s.stopLines(g)
	}
	if d.Setting.Placed && (g.Layer != nil || g.OnMask) {
		s.box(drawing.Box, &s.Setting.Choice.Box)
	}
	s.drawThings()
	return s
}

// sectionPanels are the panels, each with its own name and, large, the number of
// its section.
func (s *scene) sectionPanels(g *Sections) {
	l := g.Layer
	across := len(l.Panels.Columns)
	for i, section := range g.Of {
		panel := mask.Panel{Column: i%across + 1, Row: i/across + 1}
		box := s.Setting.Choice.Box.PanelBox(l.Columns, l.Rows, panel)
		s.Begin("", l.Panels.ID+":"+panel.Label())
		s.box(drawing.Panel, &box)
		least := min(box.Length, box.Width)
		size := min(2*s.unit, least/2)
		middle := s.clear(s.at(box.Centre()), size)
		s.text(drawing.Order, drawing.Middle, drawing.Point{X: middle.X, Y: middle.Y + size/3}, size, strconv.Itoa(int(section)+1))
		if small := s.unit * smallLetters / 8; least >= s.unit*labelRoom/4 {
			s.text(drawing.Label, drawing.Middle, drawing.Point{X: middle.X, Y: middle.Y + size/3 + small + small/3}, small, panel.Label())
		}
	}
}

// stopLines run in the middle of the seams between sections, and on the side of
// the later one a broken line as far off as size goes past.
func (s *scene) stopLines(g *Sections) {
	l, far := g.Layer, g.Beyond
	across, down := len(l.Panels.Columns), len(l.Panels.Rows)
	s.Begin("step."+g.Step+".sections", "")
	line := func(from, to, past survey.Point) {
		s.line(drawing.Stop, s.Setting.Choice.Box.Out(from), s.Setting.Choice.Box.Out(to))
		if far > 0 {
			s.line(drawing.Blend, s.Setting.Choice.Box.Out(moved(from, past)), s.Setting.Choice.Box.Out(moved(to, past)))
		}
	}
	past := func(here, next int32) measure.Length {
		if here > next {
			return -far
		}
		return far
	}
	for i, section := range g.Of {
		column, row := i%across, i/across
		p := setout.PanelIn(l.Columns, l.Rows, mask.Panel{Column: column + 1, Row: row + 1})
		if column+1 < across && g.Of[i+1] != section {
			x := middleOf(l.Columns, column)
			line(survey.Point{X: x, Y: p.Y}, survey.Point{X: x, Y: p.Y + p.Width}, survey.Point{X: past(section, g.Of[i+1])})
		}
		if row+1 < down && g.Of[i+across] != section {
			y := middleOf(l.Rows, row)
			line(survey.Point{X: p.X, Y: y}, survey.Point{X: p.X + p.Length, Y: y}, survey.Point{Y: past(section, g.Of[i+across])})
		}
	}
}

func moved(p, by survey.Point) survey.Point { return survey.Point{X: p.X + by.X, Y: p.Y + by.Y} }

// middleOf is the middle of the seam after a panel of a run.
func middleOf(run mask.Run, i int) measure.Length {
	return (run.Starts[i] + run.Sizes[i] + run.Starts[i+1]) / 2
}

// equalSections are those of the whole ceiling or the whole mask, divided
// straight across.
func (s *scene) equalSections(g *Sections) {
	length, width := s.Room.Shape.Length, s.Room.Shape.Width
	out := func(p survey.Point) survey.Point { return p }
	if g.OnMask {
		length, width, out = s.Setting.Choice.Box.Length, s.Setting.Choice.Box.Width, s.Setting.Choice.Box.Out
	}
	place := func(along, across measure.Length) survey.Point {
		if g.AlongWidth {
			along, across = across, along
		}
		return out(survey.Point{X: along, Y: across})
	}
	across := width
	if g.AlongWidth {
		across = length
	}
	far, last := g.Beyond, measure.Length(0)
	for i, stop := range g.Stops {
		size := min(2*s.unit, (stop-last)/2)
		middle := s.clear(s.at(place((last+stop)/2, across/2)), size)
		s.text(drawing.Order, drawing.Middle, drawing.Point{X: middle.X, Y: middle.Y + size/3}, size, strconv.Itoa(i+1))
		last = stop
		if i+1 == len(g.Stops) {
			return
		}
		s.line(drawing.Stop, place(stop, 0), place(stop, across))
		s.stopSize(g, s.at(place(stop, 0)), s.Style.Notation.Length(stop))
		if far > 0 {
			s.line(drawing.Blend, place(stop+far, 0), place(stop+far, across))
		}
	}
}

// stopSize is how far a stop line is from where it is measured, beside its end.
func (s *scene) stopSize(g *Sections, end drawing.Point, words string) {
	if g.AlongWidth {
		s.turned(drawing.Dimension, drawing.Middle, drawing.Point{X: end.X - s.unit/2, Y: end.Y}, s.unit, words)
		return
	}
	s.text(drawing.Dimension, drawing.Middle, drawing.Point{X: end.X, Y: end.Y - s.unit/2}, s.unit, words)
}
