package survey

import "ceilingwright/core/measure"

// Form says how a ceiling was measured. The zero value counts as Rectangle.
type Form string

// The forms: length and width of a room taken as square; four walls, diagonals
// and lines across, each read as often as wanted; corners by their offsets;
// walls with the angles between them; a circle or an ellipse by its two axes.
const (
	Rectangle Form = "rectangle"
	Lines     Form = "lines"
	Points    Form = "points"
	Walls     Form = "walls"
	Round     Form = "round"
)

// Tape is how good the tape is: the standard deviation of one reading, and the
// mark it is read to. A length of zero counts as not given.
type Tape struct{ Deviation, ReadTo measure.Length }

// Line names a line that was measured: a wall or a diagonal by the corners at
// its ends, or one from the middle of a wall to the middle of the opposite one.
type Line string

// The lines of a room with four corners. The walls are AB, BC, CD and DA.
const (
	LineAB   Line = "AB"
	LineBC   Line = "BC"
	LineCD   Line = "CD"
	LineDA   Line = "DA"
	LineAC   Line = "AC"
	LineBD   Line = "BD"
	LineABCD Line = "AB-CD"
	LineDABC Line = "DA-BC"
)

// Reading is one reading of the tape. Length is what was read, Start the mark
// at which the tape began: the burnt inch, taken off. A Length of zero counts as
// not read. At is the reading's pointer relative to the room, "/readings/3".
type Reading struct {
	Line          Line
	Length, Start measure.Length
	At            string
}

// Taken is the reading less where the tape began.
func (r Reading) Taken() measure.Length { return r.Length - r.Start }

// WallReading is one wall of an outline: its length from its corner to the
// next, and the inside angle in degrees at that next corner. A Length of zero
// counts as not given.
type WallReading struct {
	Length     measure.Length
	Angle      measure.Number
	AngleKnown bool
}

// MostReadings and MostCorners are far above what anyone measures, and keep a
// hostile plan from taking time. Corners have the letters A to Z.
const (
	MostReadings = 200
	MostCorners  = 26
)
