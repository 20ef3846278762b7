package survey

import (
	"fmt"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Point is a place on the ceiling, looking up: in a rectangle X is from wall DA
// and Y from wall AB.
type Point struct{ X, Y measure.Length }

// Room is a room as it was measured. Which fields count depends on Form: Length,
// Width and the diagonals for Rectangle, Length and Width for Round (its two
// axes), Tape for Rectangle and Lines, Readings for Lines, Points for Points
// (corner A first, clockwise looking up, offsets may be signed) and Walls for
// Walls. A length of zero counts as not given.
//
// The methods of Room itself, Find left out, speak of the rectangle with this
// length and width.
type Room struct {
	Form                   Form
	Length, Width, Height  measure.Length
	DiagonalAC, DiagonalBD measure.Length
	Tape                   Tape
	Readings               []Reading
	Points                 []CornerReading
	Walls                  []WallReading
}

// CornerReading is one corner of an outline given by offsets. Known tells
// whether both could be read.
type CornerReading struct {
	Point
	Known bool
}

// Sizes below which a room is asked about rather than believed, because the
// unit was probably left off. A choice: common practice, no source.
const (
	LeastSide   = 300 * measure.Millimetre
	LeastHeight = 1200 * measure.Millimetre
)

// Check says what is missing or hard to believe, at "/length", "/width" and
// "/height". Each is looked at by itself: what needs only the others still
// holds.
func (r Room) Check(n measure.Notation) []problem.Problem {
	var found []problem.Problem
	found = append(found, checkSide("/length", "length", "wall AB", r.Length, LeastSide, n)...)
	found = append(found, checkSide("/width", "width", "wall DA", r.Width, LeastSide, n)...)
	found = append(found, checkSide("/height", "height", "from floor to ceiling", r.Height, LeastHeight, n)...)
	return found
}

func checkSide(at, name, where string, side, least measure.Length, n measure.Notation) []problem.Problem {
	switch {
	case side <= 0:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("The %s of the room is not given.", name),
			Do:   fmt.Sprintf("Measure %s and write it in.", where)}}
	case side < least:
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: fmt.Sprintf("The %s of the room reads %s, less than any room.", name, n.Length(side)),
			Do:   "Check the number and write its unit."}}
	case side > measure.Longest:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("The %s of the room reads %s, more than the %s that is taken.", name, n.Length(side), n.Length(measure.Longest)),
			Do:   "Check the number and its unit."}}
	}
	return nil
}

// HasPlan tells whether length and width are both usable, so that there is a
// ceiling to work on.
func (r Room) HasPlan() bool {
	return r.Length > 0 && r.Width > 0 && r.Length <= measure.Longest && r.Width <= measure.Longest
}

// Area is the ceiling, exact.
func (r Room) Area() measure.Area { return measure.AreaOf(r.Length, r.Width) }

// Perimeter is the way round the four walls, exact.
func (r Room) Perimeter() measure.Length { return 2 * (r.Length + r.Width) }

// Volume is the air in the room, exact. Without a height it is zero.
func (r Room) Volume() measure.Volume { return measure.VolumeOver(r.Area(), r.Height) }

// Wall is how long a wall is.
func (r Room) Wall(w Wall) measure.Length {
	if w == AB || w == CD {
		return r.Length
	}
	return r.Width
}

// Corner is where a corner is.
func (r Room) Corner(c Corner) Point {
	switch c {
	case B:
		return Point{r.Length, 0}
	case C:
		return Point{r.Length, r.Width}
	case D:
		return Point{0, r.Width}
	}
	return Point{}
}
