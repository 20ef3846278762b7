package setting

import (
	"math"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sum"
	"ceilingwright/core/survey"
)

// Wall is a wall with its marks, those that are one place put together.
type Wall struct {
	setout.WallMarks
	Marks []Mark
}

// Mark is a mark on a wall and how it comes about: Sum is none where it was measured,
// or where the line slants (Slants). Of are the layers a seam is of, where it is not
// of all. Hides is what the rounding to the tape mark leaves out, above 0 where the
// place is farther. Alike tells that the other end of the line is the same reading on
// the opposite wall, or that there is none. Struck tells that the line is named with
// this mark: of its two ends with the first.
type Mark struct {
	setout.Tick
	Sum           sum.Sum
	Slants        bool
	Of            []string
	Hides         measure.Length
	Alike, Struck bool
}

// flat is the slope below which a line is taken to meet its wall squarely: half of the
// last decimal that slopes are written with.
const flat = 0.5e-6

// mark works out the marks along each wall.
func (o *out) mark() {
	layers := make([]mask.Layer, 0, len(o.Layers))
	for i := range o.Layers {
		if !o.Layers[i].Panels.IsEmpty() {
			layers = append(layers, o.Layers[i].Panels)
		}
	}
	s, notation := &o.Setting, o.Plan.Units.Notation()
	list := s.Site.Marks(s.Choice.Box, layers)
	s.Walls = make([]Wall, 0, len(list))
	for i := range list {
		w := Wall{WallMarks: list[i]}
		ticks := setout.Merged(list[i].Marks)
		w.Marks = make([]Mark, 0, len(ticks))
		for _, t := range ticks {
			m := Mark{Tick: t, Hides: -notation.Hides(t.At), Slants: math.Abs(t.Cast.Slope) > flat}
			if t.Kind == setout.SeamMark && len(t.Layers) < len(layers) {
				m.Of = o.namesOf(t.Layers)
			}
			if !m.Slants {
				m.Sum = o.markSum(&w.WallMarks, &t)
			}
			m.Alike = o.readsAlike(w.Wall, &t, notation.Mark())
			m.Struck = t.Kind != setout.FixtureMark && !s.hasWall(t.Join.Wall, w.Wall)
			w.Marks = append(w.Marks, m)
		}
		s.Walls = append(s.Walls, w)
	}
}

// hasWall tells whether a wall is among those with their marks, or is this one.
func (s *Setting) hasWall(name, this survey.Wall) bool {
	for i := range s.Walls {
		if s.Walls[i].Wall == name {
			return true
		}
	}
	return name == this
}

func (o *out) namesOf(ids []string) (names []string) {
	for i := range o.Layers {
		for _, id := range ids {
			if l := &o.Layers[i]; l.Panels.ID == id {
				names = append(names, l.Panels.Name)
			}
		}
	}
	return names
}

// readsAlike tells whether the other end of a line is the same reading on the
// opposite wall, so that there is nothing to say; or has no other end.
func (o *out) readsAlike(wall survey.Wall, t *setout.Tick, mark measure.Length) bool {
	return t.Join.Wall == "" || o.Room.Shape.IsRectangle() && wall.Opposite() == t.Join.Wall && t.At.ToMark(mark) == t.Join.At.ToMark(mark)
}

// markSum is how a mark along a wall that its line meets squarely comes about.
func (o *out) markSum(w *setout.WallMarks, t *setout.Tick) sum.Sum {
	near, side, ok := w.Outlined()
	switch {
	case !ok:
	case t.Kind == setout.BoxMark && t.At-near <= measure.OnePlace:
		return o.nearBorder(w.Wall)
	case t.Kind == setout.BoxMark:
		return sum.Of(near).Plus(side)
	case t.Kind == setout.CentreMark:
		return sum.Of(near).PlusHalf(side)
	case t.Kind == setout.SeamMark:
		// The mask may lie with its own edge at the far end.
		return o.seamSum(t, near, (near+t.In-t.At).Abs() <= measure.OnePlace)
	case o.Plan.Fixture.At == survey.InMiddle:
		return sum.Sum{}.PlusHalf(w.Length)
	}
	return sum.Sum{}
}

// nearBorder is the border before the mask on a wall.
func (o *out) nearBorder(wall survey.Wall) sum.Sum {
	switch {
	case !o.Setting.Upright:
		return sum.Sum{}
	case wall == survey.BC || wall == survey.DA:
		return o.Setting.Edges[1].NearBorder
	}
	return o.Setting.Edges[0].NearBorder
}

// seamSum is the border, the panels before the seam and their gaps.
func (o *out) seamSum(t *setout.Tick, near measure.Length, forward bool) sum.Sum {
	for i := range o.Layers {
		l := &o.Layers[i]
		if l.Panels.ID != t.Layers[0] {
			continue
		}
		run := &l.Rows
		if t.Columns {
			run = &l.Columns
		}
		if forward {
			return sum.Of(near).PlusRow(run.Sizes[:t.After], run.Seam(t.After-1))
		}
		return sum.Of(near).PlusRow(sum.Backwards(run.Sizes[t.After:]), run.Box-run.Seam(t.After-1))
	}
	return sum.Sum{}
}
