package tell

import (
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/words"

	"ceilingwright/core/job"
	"ceilingwright/core/mask"
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
	thing, size, place := words.Verbatim(called(t)), b.thingSize(t), words.Of("place", tellmask.FromEdges(b.Job, c.Middle))
	text := words.Say("For {thing}: its middle is {place}.", words.Of("thing", thing), place)
	if size != "" {
		text = words.Say("For {thing}, {size}: its middle is {place}.", words.Of("thing", thing), words.Name("size", size), place)
	}
	return b.Told(words.Sentences(text, tellmask.Edges(b.Job, c, t.Round)))
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
				Text: b.Told(tellmask.Middle(b.Job, &c, t.Round))})
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
			flags = append(flags, b.Say("Seam {seam} runs into {thing}: bridge it on both sides, and cut the tape round.",
				words.Name("seam", s.Name), words.Name("thing", called(t))))
		}
	}
	return flags
}
