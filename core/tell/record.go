package tell

import (
	"strconv"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/safety"
)

// record is what is handed over: what went where, so that a repair in ten years
// matches. A blank stays empty, to be filled in by hand.
func (b *builder) record() {
	colours, batches := 0, 0
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		if s.Kind == finish.Protect || s.Kind == finish.Peel {
			continue
		}
		line := sheet.RecordLine{Step: s.Name, Where: b.where(s), Area: b.areaText(s), Colour: s.Colour, Mix: recordedMix(s), Batch: s.Batch, Date: s.MadeOn}
		if s.Leaf != nil {
			line.Leaf = b.recordedLeaf(s.Leaf)
		}
		if line.Colour == "" && line.Mix == "" && line.Leaf == "" {
			colours++
		}
		if line.Batch == "" {
			batches++
		}
		b.Sheet.Record.Lines = append(b.Sheet.Record.Lines, line)
	}
	if len(b.Sheet.Record.Lines) == 0 {
		return
	}
	text := "Keep this with the house, and a labelled pot of each colour: a repair years on is matched from it."
	if colours+batches > 0 {
		text += " Still to be written in: " + page.Plural(int64(colours), "colour", "colours") + ", " + page.Plural(int64(batches), "batch number", "batch numbers") + "."
	}
	b.Sheet.Record.Text = text + b.pullRecord()
}

// pullRecord is when and where tape was pulled off the old paint, and what it
// did; "" where nobody wrote that down.
func (b *builder) pullRecord() string {
	p := &b.Plan.Place
	if p.PullOn == "" && p.PullAt == "" || p.Pull != safety.PaintHeld && p.Pull != safety.Lifted {
		return ""
	}
	text := " Tape was pulled off the old paint"
	if p.PullOn != "" {
		text += " on " + p.PullOn
	}
	if p.PullAt != "" {
		text += ", here: “" + p.PullAt + "”"
	}
	if p.Pull == safety.PaintHeld {
		return text + ". The paint held."
	}
	return text + ". It lifted the paint."
}

// where is where a step went, in words.
func (b *builder) where(s *plan.Step) string {
	layer := b.layerName(s.LayerID)
	switch s.Basis {
	case finish.Surface:
		return "the whole ceiling"
	case finish.Border:
		return "the ceiling outside the mask"
	case finish.Mask:
		if layer != "" {
			return "through the openings of “" + layer + "”"
		}
		return "through the openings of the mask"
	case finish.Openings:
		text := "the openings of “" + layer + "”"
		if s.ShareKnown && s.Share.Cmp(measure.NumberFromInt(1)) < 0 {
			text += ", " + b.Share(s.Share) + " of them"
		}
		return text
	case finish.Edges:
		if layer != "" {
			return "the edges of the openings of “" + layer + "”"
		}
		return "the edges of the openings"
	case finish.SurfaceOf:
		for i := range b.Plan.Finish.Surfaces {
			if surface := &b.Plan.Finish.Surfaces[i]; surface.ID == s.Surface {
				return surface.Name
			}
		}
	}
	return ""
}

// layerName is what the layer with an id is called, "" where there is none.
func (b *builder) layerName(id string) string {
	for i := range b.Layers {
		if b.Layers[i].Panels.ID == id {
			return b.Layers[i].Panels.Name
		}
	}
	return ""
}

// areaText is the area of a step as its figure says it.
func (b *builder) areaText(s *plan.Step) string {
	id := "step." + s.ID + ".area"
	for i := range b.Sheet.Figures {
		if b.Sheet.Figures[i].ID == id {
			return b.Sheet.Figures[i].Text
		}
	}
	return ""
}

// recordedMix is a mix as it was written, in one line; none where a part could
// not be read.
func recordedMix(s *plan.Step) string {
	text := ""
	if !s.MixWhole {
		return text
	}
	for i, part := range s.Mix {
		if i > 0 {
			text += " + "
		}
		text += part.Text()
		if part.Name != "" {
			text += " " + part.Name
		}
	}
	return text
}

// recordedLeaf is a leaf in one line.
func (b *builder) recordedLeaf(leaf *plan.Leaf) string {
	text := string(leaf.Metal)
	if leaf.Leaf.Length > 0 && leaf.Leaf.Width > 0 {
		text += ", " + b.Put(leaf.Leaf.Length) + " × " + b.Put(leaf.Leaf.Width)
	}
	if leaf.PerBook > 0 {
		text += ", " + strconv.Itoa(leaf.PerBook) + " to a book"
	}
	return text
}
