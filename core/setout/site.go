package setout

import (
	"math"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// On says what the box is centred on.
type On string

// The middle of the room, the light fixture, or a point of one's own.
const (
	OnRoom    On = "room"
	OnFixture On = "fixture"
	OnPoint   On = "point"
)

// Square says what the box is square to: the long centre line of the room, the
// axis of the fixture, or a wall by its name.
type Square string

// What the box can be square to besides a wall.
const (
	SquareToRoom    Square = "room"
	SquareToFixture Square = "fixture"
)

// Spot is a place on the ceiling that a box can be centred on, x and y doubled
// so that the half of an odd count of nanometres is still exact. The zero Spot
// is none.
type Spot struct {
	Twice survey.Point
	Known bool
}

// Site is what a mask is set out on: the ceiling, where the fixture and a point
// of one's own are, and the direction of the fixture's axis, both zero where
// none is known.
type Site struct {
	Shape          survey.Shape
	Fixture, Point Spot
	AxisX, AxisY   float64
}

// Way is one way to lay the mask: what it is centred on, what it is square to,
// and whether it is turned 90°.
type Way struct {
	On     On
	Square Square
	Turned bool
}

// TurnOf is how a box lies that is square to something. The direction is that
// of the long centre line (from the middle of a wall to the middle of the
// opposite one, the longer of the two), of a wall, or of the fixture's axis,
// taken by whole quarter turns to where it comes nearest to wall AB. A room
// with other than four corners has no centre line: its longest wall stands for
// it, the first of equals. In a round room it is x. False where there is no such
// wall or axis.
func (s Site) TurnOf(square Square) (Turn, bool) {
	dx, dy, ok := s.direction(square)
	if !ok {
		return Turn{}, false
	}
	return s.fold(dx, dy)
}

func (s Site) direction(square Square) (dx, dy float64, ok bool) {
	switch square {
	case SquareToRoom:
		return s.mainDirection()
	case SquareToFixture:
		return s.AxisX, s.AxisY, s.Fixture.Known && (s.AxisX != 0 || s.AxisY != 0)
	}
	return s.Shape.DirectionOf(survey.Wall(square))
}

func (s Site) mainDirection() (dx, dy float64, ok bool) {
	if s.Shape.Form == survey.Round {
		return 1, 0, true
	}
	var best survey.WallLine
	if from, to, four := s.Shape.MidLine(survey.DA); four {
		best = survey.WallLine{Start: from, End: to}
		from, to, _ = s.Shape.MidLine(survey.AB)
		if across := (survey.WallLine{Start: from, End: to}); across.Length() > best.Length() {
			best = across
		}
	} else {
		for _, w := range s.Shape.Walls() {
			if w.Length() > best.Length() {
				best = w
			}
		}
	}
	return float64(best.End.X - best.Start.X), float64(best.End.Y - best.Start.Y), best.Length() > 0
}

// fold takes a direction by quarter turns to where it comes nearest to AB. Of
// two that are as near the one clockwise of AB is taken.
func (s Site) fold(dx, dy float64) (Turn, bool) {
	ax, ay := 1.0, 0.0
	if x, y, ok := s.Shape.DirectionOf(survey.AB); ok {
		ax, ay = x, y
	}
	bestX, bestY, best := dx, dy, math.Inf(-1)
	for range 4 {
		along, clockwise := float64(dx*ax)+float64(dy*ay), float64(dy*ax)-float64(dx*ay)
		if along > best || along == best && clockwise > 0 {
			bestX, bestY, best = dx, dy, along
		}
		dx, dy = -dy, dx
	}
	return turnAlong(bestX, bestY)
}

// BoxRound is a box with its middle at a place given doubled. Where a box that
// lies along the axes would leave half a nanometre, the smaller border is the
// one at the lower x and y, so that borders and mask always add up.
func BoxRound(twice survey.Point, o mask.Outline, t Turn) Box {
	b := Box{Length: o.Length, Width: o.Width, Turn: t}
	if !t.IsExact() {
		ux, uy := t.Length()
		long, wide := float64(o.Length)/2, float64(o.Width)/2
		b.X = measure.Nearest(float64(twice.X)/2 - float64(ux*long) + float64(uy*wide))
		b.Y = measure.Nearest(float64(twice.Y)/2 - float64(uy*long) - float64(ux*wide))
		return b
	}
	alongX, alongY := o.Length, o.Width
	if t.Quarters&1 == 1 {
		alongX, alongY = alongY, alongX
	}
	b.X = nearBorder(twice.X, alongX)
	b.Y = nearBorder(twice.Y, alongY)
	if q := t.Quarters & 3; q == 1 || q == 2 {
		b.X += alongX
	}
	if q := t.Quarters & 3; q >= 2 {
		b.Y += alongY
	}
	return b
}

// isFour tells whether the ceiling has four walls and no corner that points
// inwards, so that each side of the box faces one wall.
func (s Site) isFour() bool { return len(s.Shape.Corners) == 4 && s.Shape.IsConvex() }

// Place lays the mask one way. The middle of the room is the mean of four
// corners, or of a round room its own; in any other room it is the place where
// the least border is greatest (see Roomiest). False where what it is to be
// centred on or square to is not there.
func (s Site) Place(w Way, o mask.Outline, least measure.Length) (Box, bool) {
	if !s.Shape.Usable() || !o.IsComplete() {
		return Box{}, false
	}
	turn, ok := s.turn(w)
	if !ok {
		return Box{}, false
	}
	switch {
	case w.On == OnRoom && (s.isFour() || s.Shape.Form == survey.Round):
		return BoxRound(s.Shape.TwiceCentre(), o, turn), true
	case w.On == OnRoom:
		box, _ := s.Roomiest(o, turn, least)
		return box, true
	case w.On == OnFixture && s.Fixture.Known:
		return BoxRound(s.Fixture.Twice, o, turn), true
	case w.On == OnPoint && s.Point.Known:
		return BoxRound(s.Point.Twice, o, turn), true
	}
	return Box{}, false
}

// turn is how a box laid one way lies.
func (s Site) turn(w Way) (Turn, bool) {
	turn, ok := s.TurnOf(w.Square)
	if w.Turned {
		turn = turn.Quarter()
	}
	return turn, ok
}

// planes are the walls as half-planes with the room inside, in the room's own
// coordinates.
func (s Site) planes() []halfPlane {
	walls := s.Shape.Walls()
	planes := make([]halfPlane, len(walls))
	for i, w := range walls {
		planes[i] = planeOf(w)
	}
	return planes
}

func planeOf(w survey.WallLine) halfPlane {
	dx, dy := float64(w.End.X-w.Start.X), float64(w.End.Y-w.Start.Y)
	long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	nx, ny := -dy/long, dx/long
	return halfPlane{nx, ny, -float64(nx*float64(w.Start.X)) - float64(ny*float64(w.Start.Y))}
}

// Roomiest is the box, so turned, where its least border is greatest, and that
// border (below zero where the mask fits nowhere). Where no corner points inwards the place is exact; elsewhere it is found
// by a search, good to 2 mm where a thousand looks are enough for that, and else
// the best of those. Up to 5 mm of what the least border has beyond the
// one wanted is given up where that makes opposite borders alike.
// A round room's is its middle.
func (s Site) Roomiest(o mask.Outline, t Turn, wanted measure.Length) (Box, measure.Length) {
	if s.Shape.Form == survey.Round {
		box := BoxRound(s.Shape.TwiceCentre(), o, t)
		return box, s.roundBorders(box).Least()
	}
	// Everything is turned into the frame of the box, where it stands upright.
	ux, uy := t.Length()
	long, wide := float64(o.Length)/2, float64(o.Width)/2
	hunt := search{}
	for _, w := range s.Shape.Walls() {
		fromX, fromY := upright(w.Start, ux, uy)
		toX, toY := upright(w.End, ux, uy)
		hunt.blocks = append(hunt.blocks, blockOf(fromX, fromY, toX, toY, long, wide))
		hunt.corners = append(hunt.corners, [2]float64{fromX, fromY})
	}
	planes := make([]halfPlane, len(hunt.blocks))
	if s.Shape.IsConvex() {
		for i, b := range hunt.blocks {
			planes[i] = b.wall
			planes[i].off -= b.reach
		}
	} else {
		hunt.run()
		for i, b := range hunt.blocks {
			planes[i] = b.facing(hunt.x, hunt.y)
		}
	}
	x, y, least, ok := deepest(planes)
	if !ok {
		x, y, least = hunt.x, hunt.y, hunt.least
	}
	x, y = evened(planes, x, y, least, float64(wanted))
	twice := survey.Point{
		X: measure.Nearest(2 * (float64(x*ux) - float64(y*uy))),
		Y: measure.Nearest(2 * (float64(x*uy) + float64(y*ux))),
	}
	box := BoxRound(twice, o, t)
	return box, s.Borders(box).Least()
}

// upright is a place as a box along (ux, uy) sees it from the room's origin.
func upright(p survey.Point, ux, uy float64) (x, y float64) {
	px, py := float64(p.X), float64(p.Y)
	return float64(px*ux) + float64(py*uy), float64(py*ux) - float64(px*uy)
}
