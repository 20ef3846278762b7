// Package finish tells the finish: what each step covers, takes and is bought in.
package finish

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/plan"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Covers is how the area of a step comes about: the rule, and the numbers put in.
func Covers(p *page.Page, j *job.Job, step int) (rule, sum string) {
	s, c, outline := &j.Plan.Steps[step], &j.Covers[step], j.Plan.Mask.Outline
	switch s.Basis {
	case finish.Surface:
		return p.Say("The whole ceiling."), ceiling(p, j)
	case finish.Border:
		return p.Say("The ceiling outside the mask."), p.Notation.Area(j.Room.Area) + " − " + p.Notation.Area(outline.Area())
	case finish.Mask:
		sum = p.Put(outline.Length) + " × " + p.Put(outline.Width)
		if s.Kind == finish.Peel {
			return p.Say("The whole mask."), sum
		}
		return p.Say("The whole mask: a roller covers the vinyl as well as the openings."), sum
	case finish.Openings:
		return openings(p, j, s, c)
	case finish.Edges:
		return p.Say("Length of the edges times the width of the brush."), p.Put(s.EdgeLength) + " × " + p.Put(s.BrushWidth)
	case finish.SurfaceOf:
		if c.Surface == nil {
			return "", ""
		}
		if c.Surface.Kind == plan.Cornice {
			return cornice(p, &c.Cornice)
		}
		return walls(p, &c.Wall)
	}
	return p.Say("As typed."), p.Notation.Area(s.Typed)
}

// ceiling is how the area of the ceiling comes about, where that can be said in
// two lengths.
func ceiling(p *page.Page, j *job.Job) string {
	if shape := &j.Room.Shape; shape.IsRectangle() {
		return p.Put(shape.Length) + " × " + p.Put(shape.Width)
	}
	return p.Say("as worked out in Room")
}

func openings(p *page.Page, j *job.Job, s *plan.Step, c *steps.Covered) (rule, sum string) {
	if c.Layer == nil {
		return "", ""
	}
	sum = p.Notation.Area(j.Plan.Mask.Outline.Area()) + " × " + p.Share(c.Layer.Plan.Open) + " × " + p.Share(s.Share)
	return p.Say("The mask, the share of it that is cut out in “{layer}”, and the share of those openings.", words.Name("layer", c.Layer.Panels.Name)), sum
}

func cornice(p *page.Page, c *finish.Cornice) (rule, sum string) {
	if c.Corners == 0 {
		return p.Say("The run of the {~cornice} times its girth, measured round the profile."), p.Put(c.Run) + " × " + p.Put(c.Girth)
	}
	return p.Say("The run of the {~cornice} times its girth, measured round the profile. Each mitre counts for one girth more of run (common practice, no source)."),
		"(" + p.Put(c.Run) + " + " + strconv.Itoa(c.Corners) + " × " + p.Put(c.Girth) + ") × " + p.Put(c.Girth)
}

func walls(p *page.Page, w *finish.Wall) (rule, sum string) {
	sum = p.Put(w.Run) + " × " + p.Put(w.Height)
	if len(w.Openings) > 0 {
		sum += " − " + p.Notation.Area(w.OpeningsArea())
	}
	return p.Say("The run of the walls times their height, less doors and windows."), sum
}
