package survey

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Point is a place on the ceiling, looking up: in a rectangle X is from wall DA
// and Y from wall AB.
type Point struct{ X, Y measure.Length }

// Room is a room as it was measured. Which fields count depends on Form: Length,
// Width and the diagonals for Rectangle, Length and Width for Round (its two
// axes), Tape for Rectangle and Lines, Readings for Lines, Points for Points
// (corner A first, clockwise looking up, offsets may be signed) and Walls for
// Walls. A length of zero counts as not given.
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

// checkSide says what is missing or hard to believe about one side. Each is
// looked at by itself: what needs only the others still holds.
func checkSide(at, name, where string, side, least measure.Length, n measure.Notation) []problem.Problem {
	switch {
	case side <= 0:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: words.Raw("The " + name + " of the room is not given."),
			Do:   words.Raw("Measure " + where + " and write it in.")}}
	case side < least:
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: words.Raw("The " + name + " of the room reads " + n.Length(side) + ", less than any room."),
			Do:   words.Say("Check the number and write its unit.")}}
	case side > measure.Longest:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: words.Raw("The " + name + " of the room reads " + n.Length(side) + ", more than the " + n.Length(measure.Longest) + " that is taken."),
			Do:   words.Say("Check the number and its unit.")}}
	}
	return nil
}
