package tell

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// covered is the area a step covers, with the rule and the numbers put in. ok is
// false where it cannot be worked out; what is missing is then already said
// where it is missing.
func (w *step) covered() (a measure.Area, rule, sum string, ok bool) {
	shape, outline := w.builder.Room.Shape, w.builder.Plan.Mask.Outline
	switch w.Basis {
	case finish.Surface:
		return shape.Area(), "The whole ceiling.", w.ceiling(), shape.Usable()
	case finish.Border:
		a = shape.Area().Sub(outline.Area())
		ok = shape.Usable() && outline.IsComplete() && a.SquareMetres.Sign() >= 0
		return a, "The ceiling outside the mask.", w.Notation.Area(shape.Area()) + " − " + w.Notation.Area(outline.Area()), ok
	case finish.Mask:
		rule = "The whole mask: a roller covers the vinyl as well as the openings."
		if w.Kind == finish.Peel {
			rule = "The whole mask."
		}
		return outline.Area(), rule,
			w.Put(outline.Length) + " × " + w.Put(outline.Width), outline.IsComplete()
	case finish.Openings:
		return w.openings()
	case finish.Edges:
		return measure.AreaOf(w.EdgeLength, w.BrushWidth), "Length of the edges times the width of the brush.",
			w.Put(w.EdgeLength) + " × " + w.Put(w.BrushWidth), w.EdgeLength > 0 && w.BrushWidth > 0
	case finish.SurfaceOf:
		return w.surfaceOf()
	}
	return w.Typed, "As typed.", w.Notation.Area(w.Typed), w.TypedKnown
}

// ceiling is how the area of the ceiling comes about, where that can be said in
// two lengths.
func (w *step) ceiling() string {
	if shape := w.builder.Room.Shape; shape.IsRectangle() {
		return w.Put(shape.Length) + " × " + w.Put(shape.Width)
	}
	return "as worked out in Room"
}

// openings is the share of a layer's openings that the step goes into.
func (w *step) openings() (a measure.Area, rule, sum string, ok bool) {
	outline := w.builder.Plan.Mask.Outline
	for _, l := range w.Layers {
		if l.Panels.ID != w.LayerID {
			continue
		}
		if !l.Plan.OpenKnown {
			w.Report(l.Plan.At+"/open", []problem.Problem{{Severity: problem.Stop,
				What: words.Raw("The step “" + w.Name + "” goes into the openings of this layer, and their share of the mask is not given."),
				Do:   words.Say("Ask the supplier what share of the mask is cut out.")}})
			return a, "", "", false
		}
		a = outline.Area().Times(l.Plan.Open).Times(w.Share)
		sum = w.Notation.Area(outline.Area()) + " × " + w.builder.Share(l.Plan.Open) + " × " + w.builder.Share(w.Share)
		return a, "The mask, the share of it that is cut out in “" + l.Panels.Name + "”, and the share of those openings.", sum, outline.IsComplete() && w.ShareKnown
	}
	w.Report(w.At+"/layer", []problem.Problem{{Severity: problem.Stop,
		What: words.Raw("The step “" + w.Name + "” does not say into the openings of which layer it goes."), Do: words.Say("Choose the layer.")}})
	return a, "", "", false
}

// surfaceOf is another surface of the plan: a cornice or walls.
func (w *step) surfaceOf() (a measure.Area, rule, sum string, ok bool) {
	for i := range w.builder.Plan.Finish.Surfaces {
		if s := &w.builder.Plan.Finish.Surfaces[i]; s.ID == w.Surface {
			run, ok := s.Run, s.Run > 0
			if !ok {
				run, ok = w.builder.Room.Shape.Perimeter(), w.builder.Room.Shape.Usable()
			}
			if s.Kind == plan.Cornice {
				return w.cornice(finish.Cornice{Run: run, Girth: s.Girth, Corners: s.Corners}, ok)
			}
			return w.walls(s, run, ok)
		}
	}
	w.Report(w.At+"/surface", []problem.Problem{{Severity: problem.Stop,
		What: words.Raw("The step “" + w.Name + "” does not say which of the other surfaces it goes over."), Do: words.Say("Choose the surface, or add it to the list of surfaces.")}})
	return a, "", "", false
}

func (w *step) cornice(c finish.Cornice, known bool) (a measure.Area, rule, sum string, ok bool) {
	a, ok = c.Area()
	sum = w.Put(c.Run) + " × " + w.Put(c.Girth)
	rule = "The run of the " + w.builder.Plan.Place.Rules.Says("cornice") + " times its girth, measured round the profile."
	if c.Corners > 0 {
		rule += " Each mitre counts for one girth more of run (common practice, no source)."
		sum = "(" + w.Put(c.Run) + " + " + strconv.Itoa(c.Corners) + " × " + w.Put(c.Girth) + ") × " + w.Put(c.Girth)
	}
	return a, rule, sum, ok && known
}

func (w *step) walls(s *plan.Surface, run measure.Length, known bool) (a measure.Area, rule, sum string, ok bool) {
	wall := finish.Wall{Run: run, Height: s.Height}
	for _, o := range s.Openings {
		wall.Openings = append(wall.Openings, finish.Opening{Length: o.Length, Width: o.Width, Count: o.Count})
	}
	a, problems, ok := wall.Area()
	w.Report(s.At, problems)
	sum = w.Put(run) + " × " + w.Put(s.Height)
	if len(wall.Openings) > 0 {
		sum += " − " + w.Notation.Area(wall.OpeningsArea())
	}
	return a, "The run of the walls times their height, less doors and windows.", sum, ok && known
}
