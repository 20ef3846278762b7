package setout

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Turn is how a box lies in the room. Quarters are whole quarter turns
// clockwise looking up, exact: 0, or 1 for a box turned 90°, whose own corner A
// lies nearest the room's corner B and whose length runs along BC. AlongX and
// AlongY are the unit vector that the box is square to before the quarters;
// both zero stand for the direction of x itself, which is exact too. The zero
// Turn is a box that lies as the room's axes do.
type Turn struct {
	Quarters       int
	AlongX, AlongY float64
}

// turnAlong is the turn along a vector of any length.
func turnAlong(dx, dy float64) (Turn, bool) {
	if dy == 0 && dx > 0 {
		return Turn{}, true
	}
	long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if !(long > 0) {
		return Turn{}, false
	}
	return Turn{AlongX: dx / long, AlongY: dy / long}, true
}

// IsExact tells whether the turn is a whole number of quarters from the axes of
// the room, so that every place of the box is a sum of lengths.
func (t Turn) IsExact() bool { return t.AlongX == 0 && t.AlongY == 0 }

// Quarter is the turn one quarter further clockwise, looking up.
func (t Turn) Quarter() Turn {
	t.Quarters = (t.Quarters + 1) & 3
	return t
}

// Length is the unit vector along which the length of a box with this turn
// runs, Width the one along which its width runs: the length's, a quarter
// further.
func (t Turn) Length() (x, y float64) {
	x, y = t.AlongX, t.AlongY
	if t.IsExact() {
		x = 1
	}
	for range t.Quarters & 3 {
		x, y = -y, x
	}
	return x, y
}

// Width is described with Length.
func (t Turn) Width() (x, y float64) {
	x, y = t.Length()
	return -y, x
}

// out turns a step in the box's frame into one in the room's, to the nearest
// nanometre; exact where the turn is.
func (t Turn) out(p survey.Point) survey.Point {
	if t.IsExact() {
		return quarters(p, t.Quarters)
	}
	x, y := t.Length()
	return turned(p, x, y)
}

// in is the step back.
func (t Turn) in(p survey.Point) survey.Point {
	if t.IsExact() {
		return quarters(p, -t.Quarters)
	}
	x, y := t.Length()
	return turned(p, x, -y)
}

// quarters is a step turned by whole quarters clockwise looking up.
func quarters(p survey.Point, n int) survey.Point {
	switch n & 3 {
	case 1:
		return survey.Point{X: -p.Y, Y: p.X}
	case 2:
		return survey.Point{X: -p.X, Y: -p.Y}
	case 3:
		return survey.Point{X: p.Y, Y: -p.X}
	}
	return p
}

// turned is a step turned from x to a unit vector. Products are converted one
// by one, so that no processor fuses them.
func turned(p survey.Point, x, y float64) survey.Point {
	px, py := float64(p.X), float64(p.Y)
	return survey.Point{
		X: measure.Nearest(float64(px*x) - float64(py*y)),
		Y: measure.Nearest(float64(px*y) + float64(py*x)),
	}
}

// Facing is the wall of a four-walled room that a side of the box faces. Sides
// of a box are named as the walls they face when it is not turned 90°.
func (t Turn) Facing(side survey.Wall) survey.Wall {
	return walls[(wallNumber(side)+t.Quarters)&3]
}

// SideFacing is the side of the box that faces a wall: the way back of Facing.
func (t Turn) SideFacing(wall survey.Wall) survey.Wall {
	return walls[(wallNumber(wall)-t.Quarters)&3]
}

// Nearest is the corner of a four-cornered room that a corner of the box lies
// nearest to.
func (t Turn) Nearest(own survey.Corner) survey.Corner {
	return corners[(cornerNumber(own)+t.Quarters)&3]
}

// walls and corners are the four, clockwise looking up.
var (
	walls   = [4]survey.Wall{survey.AB, survey.BC, survey.CD, survey.DA}
	corners = [4]survey.Corner{survey.A, survey.B, survey.C, survey.D}
)

func wallNumber(w survey.Wall) int {
	switch w {
	case survey.BC:
		return 1
	case survey.CD:
		return 2
	case survey.DA:
		return 3
	}
	return 0
}

func cornerNumber(c survey.Corner) int {
	switch c {
	case survey.B:
		return 1
	case survey.C:
		return 2
	case survey.D:
		return 3
	}
	return 0
}
