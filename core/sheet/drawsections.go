package sheet

import (
	"strconv"

	"ceilingwright/core/drawing"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// drawSections are the sections that a leaf step is sized and gilded in: each
// panel with the number of its section, and the lines at which size stops.
func (b *builder) drawSections(g *gilt) *scene {
	l := g.layer
	s := b.scene("Sections of "+b.plan.Steps[g.leaf].Name, up, plainMargin,
		"The "+plural(int64(len(g.sections)), "section", "sections")+" in which size and leaf are laid, with the panels of each; size stops at the thick lines.")
	s.outline()
	s.sizes()
	s.Begin("step."+b.plan.Steps[g.leaf].ID+".sections", "")
	if l.panels.Count() <= readablePanels {
		s.sectionPanels(g)
	} else {
		s.seams(l)
	}
	s.stopLines(g)
	s.box(drawing.Box, &s.choice.Box)
	s.drawThings()
	return s
}

// sectionPanels are the panels, each with the number of its section.
func (s *scene) sectionPanels(g *gilt) {
	l := g.layer
	across := len(l.panels.Columns)
	for i, section := range g.panels.Of {
		panel := mask.Panel{Column: i%across + 1, Row: i/across + 1}
		box := s.choice.Box.PanelBox(l.columns, l.rows, panel)
		s.Begin("", l.panels.ID+":"+panel.Label())
		s.box(drawing.Panel, &box)
		size := min(2*s.unit, min(box.Length, box.Width)/2)
		middle := s.clear(s.at(box.Centre()), size)
		s.text(drawing.Order, drawing.Middle, drawing.Point{X: middle.X, Y: middle.Y + size/3}, size, strconv.Itoa(int(section)+1))
	}
}

// stopLines run in the middle of the seams between sections.
func (s *scene) stopLines(g *gilt) {
	l := g.layer
	across, down := len(l.panels.Columns), len(l.panels.Rows)
	s.Begin("step."+s.plan.Steps[g.leaf].ID+".sections", "")
	line := func(from, to survey.Point) {
		s.line(drawing.Stop, s.choice.Box.Out(from), s.choice.Box.Out(to))
	}
	for i, section := range g.panels.Of {
		column, row := i%across, i/across
		p := setout.PanelIn(l.columns, l.rows, mask.Panel{Column: column + 1, Row: row + 1})
		if column+1 < across && g.panels.Of[i+1] != section {
			x := middleOf(l.columns, column)
			line(survey.Point{X: x, Y: p.Y}, survey.Point{X: x, Y: p.Y + p.Width})
		}
		if row+1 < down && g.panels.Of[i+across] != section {
			y := middleOf(l.rows, row)
			line(survey.Point{X: p.X, Y: y}, survey.Point{X: p.X + p.Length, Y: y})
		}
	}
}

// middleOf is the middle of the seam after a panel of a run.
func middleOf(run mask.Run, i int) measure.Length {
	return (run.Starts[i] + run.Sizes[i] + run.Starts[i+1]) / 2
}
