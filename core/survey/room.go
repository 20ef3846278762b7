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

// sideRead is one side of a room as it is looked at: its blank, what to call it and
// to do where it is not given, and the least that is believed.
type sideRead struct {
	at                     string
	missing, measure, name words.Text
	least                  measure.Length
}

var (
	wallAlong  = sideRead{"/length", noLength, words.Say("Measure wall WX and write it in."), roomLength, LeastSide}
	wallAcross = sideRead{"/width", noWidth, words.Say("Measure wall ZW and write it in."), roomWidth, LeastSide}
	axisAlong  = sideRead{"/length", noLength, words.Say("Measure straight across through the middle and write it in."), roomLength, LeastSide}
	axisAcross = sideRead{"/width", noWidth, words.Say("Measure straight across, square to the length, and write it in."), roomWidth, LeastSide}
	heightSide = sideRead{"/height", words.Say("The height of the room is not given."), words.Say("Measure from floor to ceiling and write it in."),
		words.Say("the height of the room"), LeastHeight}

	noLength, roomLength = words.Say("The length of the room is not given."), words.Say("the length of the room")
	noWidth, roomWidth   = words.Say("The width of the room is not given."), words.Say("the width of the room")
	checkUnit            = words.Say("Check the number and write its unit.")
	checkItsUnit         = words.Say("Check the number and its unit.")
)

// check says what is missing or hard to believe about one side. Each is looked at
// by itself: what needs only the others still holds.
func (s *sideRead) check(read measure.Length) []problem.Problem {
	name, l := words.Of("name", s.name), words.Length("l", read)
	switch {
	case read <= 0:
		return []problem.Problem{{At: s.at, Severity: problem.Stop, What: s.missing, Do: s.measure}}
	case read < s.least:
		return []problem.Problem{{At: s.at, Severity: problem.Caution, Do: checkUnit,
			What: words.Say("{^name} reads {l}, less than any room.", name, l)}}
	case read > measure.Longest:
		return []problem.Problem{{At: s.at, Severity: problem.Stop, Do: checkItsUnit,
			What: words.Say("{^name} reads {l}, more than the {most} that is taken.", name, l, words.Length("most", measure.Longest))}}
	}
	return nil
}
