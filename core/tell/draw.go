package tell

import (
	"ceilingwright/core/draw"
	"ceilingwright/core/sheet"
)

// draw puts the drawings on the sheet.
func (b *builder) draw() {
	const name = "a drawing"
	d := b.drawer()
	if b.Sheet.Days.Start != "" {
		b.guarded(name, func() { b.Sheet.Days.Chart = d.Chart(b.Sheet.Days.Text) })
	}
	b.guarded(name, func() {
		for _, one := range b.drawings(d) {
			b.add(d, one)
		}
	})
	b.tellFaults()
}

// drawings are the drawings there are.
func (b *builder) drawings(d *draw.Drawer) []draw.Named {
	list := append(d.All(), b.drawnSections(d)...)
	if skew, ok := d.Skew(); ok {
		list = append(list, skew)
	}
	return list
}

// Drawing is one drawing as SVG by its id, "" where there is none of it.
func (t *Telling) Drawing(id string) string {
	d := t.b.drawer()
	for _, one := range t.b.drawings(d) {
		if one.ID == id {
			return d.SVG(one)
		}
	}
	return ""
}

// drawer draws the job as the sheet puts things.
func (b *builder) drawer() *draw.Drawer { return &draw.Drawer{Job: b.Job, Style: b.Style()} }

func (b *builder) add(d *draw.Drawer, one draw.Named) {
	out := sheet.Drawing{ID: one.ID, Layer: one.Layer, Looking: one.Looking, Shows: one.Shows, Title: one.Title.In(b.Style())}
	if b.drawn {
		out.SVG = d.SVG(one)
	}
	b.Sheet.Drawings = append(b.Sheet.Drawings, out)
}

// lookAtSteps gives each step of hanging that has a card its part of the drawing.
func (b *builder) lookAtSteps() {
	for i := range b.Layers {
		l := b.Hung(i)
		for k := range b.Sheet.Layers[i].Order {
			step := &b.Sheet.Layers[i].Order[k]
			switch {
			case !b.Setting.Placed:
			case k >= len(l.Order):
				step.View = draw.ViewRound(&b.Room.Shape, b.PlaceOfLoose(&l.Panels.Loose[k-len(l.Order)]))
			case len(l.Cards) > 0:
				step.View = draw.ViewRound(&b.Room.Shape, b.PlaceOf(l.Layer, &l.Order[k]))
			}
		}
	}
}

// drawnSections are the drawings of what is gilded in sections.
func (b *builder) drawnSections(d *draw.Drawer) (list []draw.Named) {
	for i := range b.Gilding {
		g := &b.Gilding[i]
		step := &b.Plan.Steps[g.Leaf]
		sections := draw.Sections{Step: step.ID, Name: step.Name, Layer: g.Layer, Count: len(g.Sections), OnMask: g.OnMask, AlongWidth: g.AlongWidth, Beyond: b.Plan.Steps[g.Size].Beyond}
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
