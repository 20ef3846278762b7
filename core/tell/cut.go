package tell

import (
	"ceilingwright/core/job"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
)

// called is a thing as it is spoken of: the fixture, or an obstruction by its
// name and kind.
func called(t *job.Thing) string {
	switch {
	case t.Light:
		return "the light"
	case t.Name != "" && t.Kind != "" && t.Kind != string(survey.OtherKind):
		return "the " + t.Kind + " “" + t.Name + "”"
	case t.Name != "":
		return "“" + t.Name + "”"
	case t.Kind != "" && t.Kind != string(survey.OtherKind):
		return "the " + t.Kind
	}
	return "the obstruction"
}

// size is a thing's size in words, "" for a point.
func (b *builder) thingSize(t *job.Thing) string {
	switch {
	case t.Length <= 0:
		return ""
	case t.Round:
		return b.Notation.Length(t.Length) + " across"
	}
	return b.Notation.Length(t.Length) + " × " + b.Notation.Length(t.Width)
}

// cutOuts says on the panels that the fixture or an obstruction comes through
// where to cut.
func (b *builder) cutOuts(l *job.Layer, panels []sheet.Panel) {
	if !b.Setting.Placed {
		return
	}
	for i := range b.Room.Things {
		t := &b.Room.Things[i]
		for _, c := range t.Hole(b.Setting.Choice.Box).Cuts(l.Columns, l.Rows) {
			panel := &panels[l.Panels.Index(c.Panel)]
			if panel.Cut != "" {
				panel.Cut += " "
			}
			panel.Cut += b.cutFor(t, &c)
		}
	}
}

func (b *builder) cutFor(t *job.Thing, c *setout.Cut) string {
	text := "For " + called(t)
	if size := b.thingSize(t); size != "" {
		text += ", " + size
	}
	return text + ": its middle is " + b.fromEdges(c.Middle) + "." + b.cutEdges(t.Round, c)
}

// cutEdges says where a cut lies on a panel besides its middle: for a
// rectangle its edges, or its corners where it lies askew.
func (b *builder) cutEdges(round bool, c *setout.Cut) string {
	if round || c.From.X >= c.To.X || c.From.Y >= c.To.Y {
		return ""
	}
	if askew(c) {
		text := ""
		for _, p := range c.Corners {
			text += " A corner is " + b.fromEdges(p) + "."
		}
		return text
	}
	return " Cut from " + b.Notation.Length(c.From.X) + " to " + b.Notation.Length(c.To.X) + " off the edge " + b.towards(survey.DA) +
		", and from " + b.Notation.Length(c.From.Y) + " to " + b.Notation.Length(c.To.Y) + " off the edge " + b.towards(survey.AB) + "."
}

// askew tells whether a rectangle lies so that its corners are not those of
// what it takes of the panel.
func askew(c *setout.Cut) bool {
	for _, p := range c.Corners {
		if (p.X-c.From.X).Abs() > measure.Millimetre && (p.X-c.To.X).Abs() > measure.Millimetre ||
			(p.Y-c.From.Y).Abs() > measure.Millimetre && (p.Y-c.To.Y).Abs() > measure.Millimetre {
			return true
		}
	}
	return false
}

// fromEdges is how far a place is from the two edges of a panel that meet at
// its corner A.
func (b *builder) fromEdges(p survey.Point) string {
	return b.fromEdge(p.X, survey.DA) + " and " + b.fromEdge(p.Y, survey.AB)
}

// fromEdge is how far a place is from a panel's edge. On the neighbour it lies
// outside that edge.
func (b *builder) fromEdge(l measure.Length, side survey.Wall) string {
	if l < 0 {
		return b.Notation.Length(-l) + " outside the edge " + b.towards(side)
	}
	return b.Notation.Length(l) + " from the edge " + b.towards(side)
}

// towards says which wall a side of the box, or an edge of a panel, faces.
func (b *builder) towards(side survey.Wall) string {
	return "towards " + b.Setting.Choice.Box.Facing(side).Text()
}

// objectPanels says of each thing in the ceiling on which panels it falls.
func (b *builder) objectPanels() {
	for i := range b.Sheet.Objects {
		o := &b.Sheet.Objects[i]
		for j := range b.Room.Things {
			if t := &b.Room.Things[j]; t.At == o.At {
				o.Panels = b.panelsUnder(t)
			}
		}
	}
}

func (b *builder) panelsUnder(t *job.Thing) []sheet.ObjectPanel {
	var found []sheet.ObjectPanel
	for i := range b.Layers {
		l := &b.Layers[i]
		for _, c := range t.Hole(b.Setting.Choice.Box).Cuts(l.Columns, l.Rows) {
			found = append(found, sheet.ObjectPanel{Layer: l.Panels.ID, Panel: c.Panel.Label(),
				Text: "Its middle is " + b.fromEdges(c.Middle) + "." + b.cutEdges(t.Round, &c)})
		}
	}
	return found
}

// seamFlags are the seams of a layer that run into the fixture or an
// obstruction, in words.
func (b *builder) seamFlags(l *job.Layer) []string {
	if !b.Setting.Placed {
		return nil
	}
	var flags []string
	for i := range b.Room.Things {
		t := &b.Room.Things[i]
		for _, s := range t.Hole(b.Setting.Choice.Box).Seams(l.Columns, l.Rows, b.Plan.Mask.Outline) {
			if run := l.Columns; s.Runs == mask.Across && run.Held != nil && run.Held[s.After-1] {
				continue
			}
			if run := l.Rows; s.Runs == mask.Along && run.Held != nil && run.Held[s.After-1] {
				continue
			}
			flags = append(flags, "Seam "+s.Name+" runs into "+called(t)+": bridge it on both sides, and cut the tape round.")
		}
	}
	return flags
}
