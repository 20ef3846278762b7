// Package record tells the page Record: what went where, so that a repair in ten years
// matches.
package record

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	tellfinish "ceilingwright/core/tell/finish"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Tell puts the page on the sheet. A blank stays empty, to be filled in by hand.
func Tell(p *page.Page, j *job.Job) {
	for _, i := range j.Record.Steps {
		s := &j.Plan.Steps[i]
		line := sheet.RecordLine{Step: s.Name, Where: p.Told(Where(j, s)), Colour: s.Colour, Mix: tellfinish.Recipe(p, s), Batch: s.Batch, Date: s.MadeOn}
		if j.Covers[i].Known {
			line.Area = p.Notation.Area(j.Covers[i].Area)
		}
		if s.Leaf != nil {
			line.Leaf = p.Told(Leaf(s.Leaf))
		}
		p.Sheet.Record.Lines = append(p.Sheet.Record.Lines, line)
	}
	if len(j.Record.Steps) > 0 {
		p.Sheet.Record.Text = p.Told(words.Sentences(
			words.Say("Keep this with the house, and a labelled pot of each colour: a repair years on is matched from it."), missing(&j.Record), pulled(j)))
	}
}

// missing says what is still to be written in.
func missing(r *job.Record) words.Text {
	if r.Colours+r.Batches == 0 {
		return words.Text{}
	}
	return words.Say("Still to be written in: {colours|colour|colours}, {batches|batch number|batch numbers}.",
		words.Count("colours", r.Colours), words.Count("batches", r.Batches))
}

// pulled says when and where tape was pulled off the old paint, and what it did.
func pulled(j *job.Job) words.Text {
	on, at := words.Name("day", j.Plan.Place.PullOn), words.Name("place", j.Plan.Place.PullAt)
	text := words.Say("Tape was pulled off the old paint on {day}, here: “{place}”.", on, at)
	switch {
	case j.Record.Pull == "":
		return words.Text{}
	case j.Plan.Place.PullAt == "":
		text = words.Say("Tape was pulled off the old paint on {day}.", on)
	case j.Plan.Place.PullOn == "":
		text = words.Say("Tape was pulled off the old paint, here: “{place}”.", at)
	}
	if j.Record.Pull == safety.PaintHeld {
		return words.Sentences(text, words.Say("The paint held."))
	}
	return words.Sentences(text, words.Say("It lifted the paint."))
}

// Where is where a step went.
func Where(j *job.Job, s *plan.Step) words.Text {
	name := layerName(j, s.LayerID)
	layer := words.Name("layer", name)
	switch s.Basis {
	case finish.Surface:
		return words.Say("the whole ceiling")
	case finish.Border:
		return words.Say("the ceiling outside the mask")
	case finish.Mask:
		if name != "" {
			return words.Say("through the openings of “{layer}”", layer)
		}
		return words.Say("through the openings of the mask")
	case finish.Openings:
		if s.ShareKnown && s.Share.Cmp(measure.NumberFromInt(1)) < 0 {
			return words.Say("the openings of “{layer}”, {share} of them", layer, words.Share("share", s.Share))
		}
		return words.Say("the openings of “{layer}”", layer)
	case finish.Edges:
		if name != "" {
			return words.Say("the edges of the openings of “{layer}”", layer)
		}
		return words.Say("the edges of the openings")
	case finish.SurfaceOf:
		for i := range j.Plan.Finish.Surfaces {
			if surface := &j.Plan.Finish.Surfaces[i]; surface.ID == s.Surface {
				return words.Verbatim(surface.Name)
			}
		}
	}
	return words.Text{}
}

// layerName is what the layer with an id is called, "" where there is none.
func layerName(j *job.Job, id string) string {
	for i := range j.Layers {
		if j.Layers[i].Panels.ID == id {
			return j.Layers[i].Panels.Name
		}
	}
	return ""
}

// Leaf is a leaf in one line: its metal, its size and how many are in a book, as far as
// they are known.
func Leaf(leaf *plan.Leaf) words.Text {
	hasSize, per := leaf.Leaf.Length > 0 && leaf.Leaf.Width > 0, words.Name("count", words.Digits(int64(leaf.PerBook)))
	metal, length, width := words.Of("metal", leaf.Metal.Called()), words.Put("length", leaf.Leaf.Length), words.Put("width", leaf.Leaf.Width)
	switch {
	case hasSize && leaf.PerBook > 0:
		return words.Say("{metal}, {length} × {width}, {count} to a book", metal, length, width, per)
	case hasSize:
		return words.Say("{metal}, {length} × {width}", metal, length, width)
	case leaf.PerBook > 0:
		return words.Say("{metal}, {count} to a book", metal, per)
	}
	return words.Say("{metal}", metal)
}
