package steps

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Covered is the area a step covers; Known is false where it cannot be worked out, and
// what is missing is then said where it is missing. What it comes of, by the basis of
// the step: Layer, the layer whose openings it goes into; Cornice or Wall, the surface
// of the plan that it goes over, which is nil where it names none.
type Covered struct {
	Area    measure.Area
	Known   bool
	Layer   *layers.Layer
	Surface *plan.Surface
	Cornice finish.Cornice
	Wall    finish.Wall
}

// coverSteps works out what each step covers. It reads the room, the mask and the
// steps with their surfaces.
func (w *work) coverSteps() {
	w.Covers = make([]Covered, len(w.Plan.Steps))
	for i := range w.Plan.Steps {
		w.Covers[i] = w.covered(&w.Plan.Steps[i])
	}
}

// Over is the area that a step goes over; ok is false where it is not known or nothing.
func (c *Covered) Over() (area measure.Area, ok bool) {
	return c.Area, c.Known && c.Area.SquareMetres.Sign() > 0
}

func (w *work) covered(s *plan.Step) Covered {
	shape, outline := &w.Room.Shape, w.Plan.Mask.Outline
	switch s.Basis {
	case finish.Surface:
		return Covered{Area: w.Room.Area, Known: shape.Usable()}
	case finish.Border:
		area := w.Room.Area.Sub(outline.Area())
		return Covered{Area: area, Known: shape.Usable() && outline.IsComplete() && area.SquareMetres.Sign() >= 0}
	case finish.Mask:
		return Covered{Area: outline.Area(), Known: outline.IsComplete()}
	case finish.Openings:
		return w.openings(s)
	case finish.Edges:
		return Covered{Area: measure.AreaOf(s.EdgeLength, s.BrushWidth), Known: s.EdgeLength > 0 && s.BrushWidth > 0}
	case finish.SurfaceOf:
		return w.surfaceOf(s)
	}
	return Covered{Area: s.Typed, Known: s.TypedKnown}
}

// openings is the share of a layer's openings that the step goes into.
func (w *work) openings(s *plan.Step) Covered {
	i := slices.IndexFunc(w.Layers, func(l layers.Layer) bool { return l.Panels.ID == s.LayerID })
	if i < 0 {
		w.Remark(s.At+"/layer", problem.Stop, words.Say("The step “{step}” does not say into the openings of which layer it goes.", words.Name("step", s.Name)),
			words.Say("Choose the layer."))
		return Covered{}
	}
	l, outline := &w.Layers[i], w.Plan.Mask.Outline
	if !l.Plan.OpenKnown {
		w.Remark(l.Plan.At+"/open", problem.Stop,
			words.Say("The step “{step}” goes into the openings of this layer, and their share of the mask is not given.", words.Name("step", s.Name)),
			words.Say("Ask the supplier what share of the mask is cut out."))
		return Covered{}
	}
	return Covered{Area: outline.Area().Times(l.Plan.Open).Times(s.Share), Known: outline.IsComplete() && s.ShareKnown, Layer: l}
}

// surfaceOf is another surface of the plan: a cornice or walls.
func (w *work) surfaceOf(s *plan.Step) Covered {
	i := slices.IndexFunc(w.Plan.Finish.Surfaces, func(one plan.Surface) bool { return one.ID == s.Surface })
	if i < 0 {
		w.Remark(s.At+"/surface", problem.Stop, words.Say("The step “{step}” does not say which of the other surfaces it goes over.", words.Name("step", s.Name)),
			words.Say("Choose the surface, or add it to the list of surfaces."))
		return Covered{}
	}
	c := Covered{Surface: &w.Plan.Finish.Surfaces[i]}
	run, known := c.Surface.Run, c.Surface.Run > 0
	if !known {
		run, known = w.Room.Shape.Perimeter(), w.Room.Shape.Usable()
	}
	if c.Surface.Kind == plan.Cornice {
		c.Cornice = finish.Cornice{Run: run, Girth: c.Surface.Girth, Corners: c.Surface.Corners}
		c.Area, c.Known = c.Cornice.Area()
	} else {
		c.Wall = finish.Wall{Run: run, Height: c.Surface.Height}
		for _, o := range c.Surface.Openings {
			c.Wall.Openings = append(c.Wall.Openings, finish.Opening{Length: o.Length, Width: o.Width, Count: o.Count})
		}
		var problems []problem.Problem
		c.Area, problems, c.Known = c.Wall.Area()
		w.Report(c.Surface.At, problems)
	}
	c.Known = c.Known && known
	return c
}
