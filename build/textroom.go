package main

import (
	"cmp"
	"strings"

	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
)

// room is what the measuring of the room came to.
func (p *paper) room(s sheet.Survey) {
	p.block("the room as measured")
	p.line(1, s.Text)
	p.told(1, "closing", s.Closing)
	p.lines(1, s.Again)
	for _, c := range s.Corners {
		p.line(2, c.Text)
	}
	for _, l := range s.Lines {
		p.line(2, survey.Line(l.Line).Text(), ": read ", l.Read, ", taken as ", l.Adjusted, ", ", l.Off, between("; ", l.Flag, ""))
	}
}

// objects are the light and the obstructions: where each is, and on which panels
// it falls. Where to cut stands with the panel.
func (p *paper) objects(s sheet.Sheet) {
	p.block("the light and obstructions")
	for _, o := range s.Objects {
		kind := o.Kind
		if kind == "fixture" {
			kind = "light"
		}
		p.line(1, cmp.Or(some(" ", kind, between("“", o.Name, "”")), "obstruction"), ": ", o.Text)
		for _, l := range s.Layers {
			var panels []string
			for _, on := range o.Panels {
				if on.Layer == l.ID {
					panels = append(panels, on.Panel)
				}
			}
			p.told(2, "on "+l.Name, strings.Join(panels, ", "))
		}
	}
}

// settings are the ways to place the mask.
func (p *paper) settings(choices []sheet.Choice) {
	p.block("where the mask can go")
	for _, c := range choices {
		chosen := ""
		if c.Taken {
			chosen = " (chosen)"
		}
		p.line(1, c.Title, chosen, ": WX ", c.Borders.AB, ", XY ", c.Borders.BC, ", YZ ", c.Borders.CD, ", ZW ", c.Borders.DA)
		p.line(2, c.Refused)
		recommended := ""
		if c.Recommended {
			recommended = "Take this one. "
		}
		p.line(2, recommended, c.Reason)
		p.line(2, "the ends differ by ", c.Ends, ", the sides by ", c.Sides)
		p.line(2, places(c.Places))
		for _, t := range c.Tapers {
			p.line(2, t.Text)
		}
	}
}

// places are the borders at both ends of each wall.
func places(borders []sheet.Border) string {
	var texts []string
	for _, b := range borders {
		texts = append(texts, survey.Corner(b.Corner).Text()+" off wall "+survey.Wall(b.Wall).Text()+" "+b.Text)
	}
	return between("corners of the mask: ", strings.Join(texts, ", "), "")
}

// outline is where the mask lies, and what is struck for it.
func (p *paper) outline(b sheet.BoxPlace) {
	p.block("mask outline")
	p.line(1, b.Text)
	p.line(1, b.Line)
	for _, c := range b.Corners {
		p.line(2, c.Text)
	}
	for _, l := range b.Lines {
		p.line(2, "strike ", some(", ", l.Layer, l.Name), ": ", l.Text)
	}
}

func (p *paper) walls(walls []sheet.Wall) {
	for _, w := range walls {
		p.block(w.Title)
		for _, m := range w.Marks {
			p.line(1, m.Text, " ", note(m.Other), "  ", some(", ", m.Layer, m.Label),
				between("; rounding hides ", m.Hides, ""), between("; ", m.Join, ""))
			p.made(2, m.Sum)
		}
		p.line(1, w.Length, "  corner ", survey.Corner(w.To).Text())
	}
}

func (p *paper) corners(corners []sheet.Corner) {
	p.block("to check the diagonals")
	for _, c := range corners {
		p.line(1, c.Text)
	}
}
