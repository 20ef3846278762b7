package setting

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sum"
	"ceilingwright/core/survey"
)

// Edge is one side of a rectangular room between two walls, and the mask along it.
// Twice is twice the way from the near wall to what the mask is centred on, Known
// whether that is known. NearBorder and FarBorder are the borders at the two walls:
// none where they are not known, or the mask does not fit between the walls. Each needs
// only its own side of the room and of the mask, so that a blank that cannot be read
// takes no more than two of four borders away.
type Edge struct {
	Near, Far             survey.Wall
	Room, Mask            measure.Length
	Twice                 measure.Length
	Known                 bool
	NearBorder, FarBorder sum.Sum
}

// edges are the two directions of a rectangular room, along its length first.
func (o *out) edges() [2]Edge {
	length, width := o.Plan.Room.Length, o.Plan.Room.Width
	if o.Room.Shape.Usable() {
		length, width = o.Room.Shape.Length, o.Room.Shape.Width
	}
	long, wide := o.Plan.Mask.Length, o.Plan.Mask.Width
	if o.Setting.Way.Turned {
		long, wide = wide, long
	}
	fixture, set, found := &o.Plan.Fixture, &o.Plan.Setting, o.Setting.Site.Fixture.Twice
	return [2]Edge{
		o.edge(Edge{Near: survey.DA, Far: survey.BC, Room: length, Mask: long}, fixture.FromDA, set.PointDA, found.X),
		o.edge(Edge{Near: survey.AB, Far: survey.CD, Room: width, Mask: wide}, fixture.FromAB, set.PointAB, found.Y),
	}
}

// edge is an edge with the middle of the mask and the borders. fixture and point are
// how far they are from the near wall, found where the fixture was found, doubled.
func (o *out) edge(e Edge, fixture, point, found measure.Length) Edge {
	on, at := o.Setting.Way.On, o.Plan.Fixture.At
	switch {
	case on == setout.OnRoom:
		e.Twice, e.Known = e.Room, true
	case on == setout.OnPoint:
		e.Twice, e.Known = 2*point, o.Plan.Setting.PointKnown && point < e.Room
	case o.Setting.Site.Fixture.Known:
		e.Twice, e.Known = found, true
	case at == survey.InMiddle:
		e.Twice, e.Known = e.Room, true
	case at == survey.Measured && fixture > 0 && fixture < e.Room:
		e.Twice, e.Known = 2*fixture, true
	}
	if !e.Known || e.Room <= 0 || e.Mask <= 0 {
		return e
	}
	rest := sum.Of(e.Room).Minus(e.Mask)
	near, far := rest.Halved(), rest.OtherHalf()
	if on != setout.OnRoom {
		near = sum.OfTwice(e.Twice).MinusHalf(e.Mask)
		far = rest.Minus(near.Value())
	}
	if min(near.Value(), far.Value()) >= 0 {
		e.NearBorder, e.FarBorder = near, far
	}
	return e
}

// Side is the border on one side of the mask where the walls do not stand as it does:
// Wall is the wall where it is least, "" beyond a curve, and Ends the borders at the
// corners of the mask there. Widens is how much it widens from one end to the other,
// none where that cannot be seen.
type Side struct {
	Side, Wall survey.Wall
	Least      measure.Length
	By         LeastBy
	Ends       []End
	Widens     sum.Sum
	// Along and Across are how far the mask and the nearest place of the wall are
	// apart, for LeastByCorners.
	Along, Across measure.Length
}

// LeastBy tells how the least border of a side comes about: the smaller of its two
// ends, one end alone, or the distance of two corners where one points inwards.
type LeastBy int

// The ways.
const (
	LeastByCorners LeastBy = iota
	LeastByEnds
	LeastByFirst
	LeastBySecond
)

// End is the border at one end. Of is the corner of the mask and From the corner of
// the room that the wall starts at, both as taped from corner A along wall AB and
// square to it. Along and Square are the direction of the wall in the same frame.
type End struct {
	setout.Border
	Of, From      survey.Point
	Start         survey.Corner
	Along, Square float64
}

// sides are the borders on the four sides of the mask.
func (o *out) sides() []Side {
	layout := &o.Setting.Choice.Layout
	sides := make([]Side, 0, 4)
	for i, name := range [4]survey.Wall{survey.AB, survey.BC, survey.CD, survey.DA} {
		s := Side{Side: name, Wall: layout.Nearest[i], Least: layout.Sides.At(name)}
		for _, p := range layout.At(name, s.Wall) {
			s.Ends = append(s.Ends, o.endOf(p))
		}
		o.least(&s)
		if len(s.Ends) == 2 && s.Wall != "" && (s.Ends[0].Length-s.Ends[1].Length).Abs() >= setout.Visible {
			wide, narrow := max(s.Ends[0].Length, s.Ends[1].Length), min(s.Ends[0].Length, s.Ends[1].Length)
			s.Widens = sum.Of(wide).Minus(narrow)
		}
		sides = append(sides, s)
	}
	return sides
}

func (o *out) endOf(p setout.Border) End {
	shape := &o.Room.Shape
	w, _ := shape.Wall(p.Wall)
	e := End{Border: p, Start: w.From, Of: shape.FromA(o.Setting.Choice.Box.Corner(p.Own)), From: shape.FromA(w.Start)}
	e.Along, e.Square = survey.Slopes(e.From, shape.FromA(w.End))
	return e
}

// least tells how the border on one side comes about.
func (o *out) least(s *Side) {
	box := o.Setting.Choice.Box
	if len(s.Ends) == 2 && (s.Ends[0].Length == s.Least || s.Ends[1].Length == s.Least) {
		s.By = LeastByEnds
		return
	}
	w, ok := o.Room.Shape.Wall(s.Wall)
	for i, end := range s.Ends {
		if ok && end.Length == s.Least && w.Off(box.Corner(end.Own)) == s.Least {
			s.By = LeastByFirst + LeastBy(i)
			return
		}
	}
	s.Along, s.Across = o.Setting.Site.Apart(box, s.Wall)
}
