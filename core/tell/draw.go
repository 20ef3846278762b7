package tell

import (
	"ceilingwright/core/draw"
	"ceilingwright/core/drawing"
	"ceilingwright/core/drawing/svg"
	"ceilingwright/core/sheet"
)

// draw puts the drawings on the sheet.
func (b *builder) draw() {
	const name = "a drawing"
	b.guarded(name, b.drawDays)
	d := b.drawer()
	b.guarded(name, func() {
		for _, one := range d.All() {
			b.add(d, one)
		}
	})
	b.guarded(name, func() { b.drawGilding(d) })
	b.guarded(name, func() {
		if skew, ok := d.Skew(); ok {
			b.add(d, skew)
		}
	})
	b.tellFaults()
}

// drawer draws the job as the sheet puts things.
func (b *builder) drawer() *draw.Drawer { return &draw.Drawer{Job: b.Job, Style: b.Style()} }

func (b *builder) add(d *draw.Drawer, one draw.Named) {
	title, svg := d.SVG(one)
	b.Sheet.Drawings = append(b.Sheet.Drawings, sheet.Drawing{ID: one.ID, Layer: one.Layer, Looking: one.Looking, Shows: one.Shows, Title: title, SVG: svg})
}

// drawGilding draws what is gilded in sections.
func (b *builder) drawGilding(d *draw.Drawer) {
	for i := range b.calendar().gilt {
		g := &b.calendar().gilt[i]
		step := &b.Plan.Steps[g.leaf]
		sections := draw.Sections{Step: step.ID, Name: step.Name, Layer: g.layer, Count: len(g.sections), OnMask: g.onMask, AlongWidth: g.alongWidth, Beyond: b.Plan.Steps[g.sizing].Beyond}
		if g.layer != nil {
			sections.Of = g.panels.Of
		} else if g.along > 0 {
			for k := range g.sections {
				sections.Stops = append(sections.Stops, g.stopAt(k))
			}
		}
		if one, ok := d.Sections(sections); ok {
			b.add(d, one)
		}
	}
}

// written is a drawing as SVG, and its room is free for the next.
func (b *builder) written(d *drawing.Drawing) string {
	b.ink = svg.Append(b.ink[:0], d)
	b.groups = d.Groups
	return string(b.ink)
}
