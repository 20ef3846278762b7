package setout

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Found is how a corner of the box is found from the room: Own is the box's own
// corner, Corner the corner of a four-cornered room it lies nearest to (else as
// Own), Walls how far it is off two walls, square to each (in a round room how far
// it is to the curve along the two sides of the box), and Tapes how far it is from
// two corners of the room, which fixes it without any line.
type Found struct {
	Own, Corner survey.Corner
	Walls       []Border
	Tapes       [2]Tape
	// Taped tells whether two corners can be taped from.
	Taped bool
}

// toCurveFrom is how far it is from a corner of the box to the curve, along the
// two sides that meet there: in the order of the sides it goes beyond.
func (s Site) toCurveFrom(box Box, own survey.Corner) []Border {
	var found []Border
	for side, name := range walls {
		if own == corners[side] || own == corners[(side+1)&3] {
			x, y := outward(box.Turn, side)
			found = append(found, Border{own, own, box.Turn.Facing(name), toCurve(s.Shape, box.Corner(own), x, y)})
		}
	}
	return found
}

// Tape is a length taped from a corner of the room.
type Tape struct {
	From   survey.Corner
	Length measure.Length
}

// Corners are the four corners of the box, in the order of its own. The tapes
// are from two corners of the room in sight that cross about as squarely at the
// corner of the box as any do, since there a slip of the tape moves it least;
// of such pairs the one that needs the shorter tape.
func (s Site) Corners(box Box, layout Layout) []Found {
	list := make([]Found, 0, 4)
	for _, own := range corners {
		f := Found{Own: own, Corner: own}
		if s.isFour() {
			f.Corner = box.Turn.Nearest(own)
		}
		if s.Shape.Form == survey.Round {
			f.Walls = s.toCurveFrom(box, own)
		}
		for _, b := range layout.Places {
			if b.Own == own && s.Shape.Form != survey.Round {
				f.Walls = append(f.Walls, b)
			}
		}
		f.Tapes, f.Taped = s.tapes(box.Corner(own))
		list = append(list, f)
	}
	return list
}

// least tape that helps: a shorter one cannot be swung from a corner.
const leastTape = 100 * measure.Millimetre

// ray is a tape with its direction.
type ray struct {
	Tape
	dx, dy float64
}

func (s Site) tapes(p survey.Point) (best [2]Tape, ok bool) {
	rays := make([]ray, 0, 8)
	for i, c := range s.Shape.Corners {
		dx, dy := float64(p.X-c.X), float64(p.Y-c.Y)
		long := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if measure.Nearest(long) >= leastTape && s.sees(p, i) {
			rays = append(rays, ray{Tape{survey.CornerNumbered(i), measure.Nearest(long)}, dx / long, dy / long})
		}
	}
	squarest := 0.0
	pairs(rays, func(_, _ ray, sine float64) { squarest = max(squarest, sine) })
	shortest := measure.Length(math.MaxInt64)
	pairs(rays, func(a, b ray, sine float64) {
		if longer := max(a.Length, b.Length); sine >= 0.9*squarest && longer < shortest {
			shortest, best, ok = longer, [2]Tape{a.Tape, b.Tape}, true
		}
	})
	return best, ok && squarest > flattest
}

// flattest is the sine of ten degrees: tapes that cross flatter tell nothing. A
// choice.
const flattest = 0.17

// pairs calls each for every two tapes with the sine of the angle between them.
func pairs(rays []ray, each func(a, b ray, sine float64)) {
	for i, a := range rays {
		for _, b := range rays[i+1:] {
			each(a, b, math.Abs(float64(a.dx*b.dy)-float64(a.dy*b.dx)))
		}
	}
}

// sees tells whether a tape reaches straight from a place to a corner: no wall
// stands between.
func (s Site) sees(p survey.Point, corner int) bool {
	if s.Shape.IsConvex() {
		return true
	}
	c := s.Shape.Corners[corner]
	for _, w := range s.Shape.Walls() {
		if w.Start == c || w.End == c {
			continue
		}
		if crosses(p, c, w.Start, w.End) {
			return false
		}
	}
	// Two walls at the corner itself may still hide it from behind.
	return s.Shape.Contains(survey.Point{X: p.X + (c.X-p.X)/2, Y: p.Y + (c.Y-p.Y)/2})
}

// crosses tells whether two stretches have a place in common that is not an
// end.
func crosses(a, b, c, d survey.Point) bool {
	return turns(a, b, c) > 0 != (turns(a, b, d) > 0) && turns(c, d, a) > 0 != (turns(c, d, b) > 0)
}

// turns is which way one goes from a by b to c: above zero clockwise looking up.
func turns(a, b, c survey.Point) float64 {
	return float64(float64(b.X-a.X)*float64(c.Y-a.Y)) - float64(float64(b.Y-a.Y)*float64(c.X-a.X))
}
