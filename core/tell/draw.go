package tell

import (
	"ceilingwright/core/draw"
	"ceilingwright/core/job"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
)

// draw lists the drawings there are, and draws those that are asked for.
func (s *Session) draw(asked func(id string) bool, out *sheet.Sheet) []job.Fault {
	return guarded("a drawing", func() {
		d := drawer(&s.hand, s.job)
		for _, one := range s.drawings(d) {
			drawn := sheet.Drawing{ID: one.ID, Layer: one.Layer, Looking: one.Looking, Shows: one.Shows, Title: s.hand.Told(one.Title)}
			if asked != nil && asked(one.ID) {
				drawn.SVG = d.SVG(one)
			}
			out.Drawings = append(out.Drawings, drawn)
		}
	})
}

// Drawing is one drawing of a plan as SVG by its id, "" where there is none of it.
func (s *Session) Drawing(doc *plan.Document, id string) string {
	s.take(doc)
	if !doc.Usable {
		return ""
	}
	d := drawer(&s.hand, s.job)
	for _, one := range s.drawings(d) {
		if one.ID == id {
			return d.SVG(one)
		}
	}
	return ""
}

// drawings are the drawings there are.
func (s *Session) drawings(d *draw.Drawer) []draw.Named {
	return append(d.All(), drawnSections(s.job, d)...)
}

// drawnSections are the drawings of what is gilded in sections.
func drawnSections(j *job.Job, d *draw.Drawer) (list []draw.Named) {
	for i := range j.Gilding {
		g := &j.Gilding[i]
		step := &j.Plan.Steps[g.Leaf]
		sections := draw.Sections{Step: step.ID, Name: step.Name, Layer: g.Layer, Count: len(g.Sections), OnMask: g.OnMask, AlongWidth: g.AlongWidth, Beyond: j.Plan.Steps[g.Size].Beyond}
		if g.Layer != nil {
			sections.Of = g.Panels.Of
		} else if g.Along > 0 {
			for k := range g.Sections {
				sections.Stops = append(sections.Stops, g.StopAt(k))
			}
		}
		if one, ok := d.Sections(sections); ok {
			list = append(list, one)
		}
	}
	return list
}

// drawer draws a job as the page puts things.
func drawer(p *page.Page, j *job.Job) *draw.Drawer { return &draw.Drawer{Job: j, Style: p.Style()} }
