package survey

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Proof says whether the shape of a ceiling was checked.
type Proof string

// Proved where spare readings agree with the shape as far as the tape can
// tell, Contradicted where they do not, Assumed where nothing checks it.
const (
	Proved       Proof = "yes"
	Contradicted Proof = "no"
	Assumed      Proof = "assumed"
)

// Verdict is what the measuring of a room came to.
type Verdict int

// What it can come to: of length and width with diagonals, of two axes, of corners
// by their offsets, of walls with their angles, and of lines. Unfound is a room
// that could not be worked out.
const (
	Unfound Verdict = iota
	NoDiagonal
	OffSquare
	SquareByOne
	SquareByBoth
	TakenAsCircle
	TakenAsEllipse
	AsGiven
	FarFromClosing
	ClosesExactly
	ClosingSpread
	Unchecked     // no line is checked by another
	PartlyChecked // what was read more than once agrees, nothing checks the rest
	ReadingsAgree // all of them
	ReadUnlike    // a line was read more than once, and not alike
	ReadingsClash // some lines do not fit the others
)

// Found is a room worked out: its shape, how well it is known and what that comes
// to. Unread is a line to measure too, where one would check the others; "" where
// each was read. Again are the lines to measure again. Problems have pointers
// relative to the room. Where the shape cannot be worked out it is not Usable, and
// the problems say why; the rest is as far as it could be told.
type Found struct {
	Shape    Shape
	Proof    Proof
	Verdict  Verdict
	Unread   Line
	Tape     Tape
	TapeSaid bool
	Corners  []CornerFound
	Lines    []LineFound
	Closing  Closing
	Again    []Line
	Problems []problem.Problem
}

// LineFound is one reading beside the room as worked out: Adjusted is how long
// the line is there, to the nearest nanometre. Check is whether it is one to
// take again.
type LineFound struct {
	Reading
	Adjusted measure.Length
	Check    bool
}

// Off is by how much the line was moved: adjusted − measured.
func (l LineFound) Off() Moved { return Moved(l.Adjusted - l.Taken()) }

// Moved is by how much a line is other than it was read, said on the tape mark.
type Moved measure.Length

// In is the difference in words (words.Value).
func (m Moved) In(s words.Style) string {
	l := measure.Length(m).ToMark(s.Notation.Mark())
	switch off := words.Amount("off", l.Abs()); {
	case l > 0:
		return s.Say("{off} longer than read", off)
	case l < 0:
		return s.Say("{off} shorter than read", off)
	}
	return s.Say("as read")
}

// Closing is by how much one reading misses what all others say: Amount is
// measured − worked out from the others, to the nearest nanometre. With one
// spare reading that is all there is to tell, and the reading is the second
// diagonal where it was taken; with more it is the reading that misses most.
// Limit is three standard deviations of that miss. Spare is how many readings
// there are beyond what the shape needs; without one nothing is told.
type Closing struct {
	Spare         int
	Line          Line
	At            string
	Amount, Limit measure.Length
}

// Beyond tells whether the readings miss each other by more than the tape can.
func (c Closing) Beyond() bool { return c.Spare > 0 && c.Amount.Abs() > c.Limit }

// Worst is the corner that is farthest out of square. False where no corner is
// near a right angle.
func (f Found) Worst() (CornerFound, bool) {
	var worst CornerFound
	for _, c := range f.Corners {
		if c.Right != 0 && (worst.Right == 0 || c.Out.Abs() > worst.Out.Abs()) {
			worst = c
		}
	}
	return worst, worst.Right != 0
}

// usualTape is the tape where nothing is said: a standard deviation of 1/16 in
// read to 1/16 in, or of 1.5 mm read to 1 mm. A choice: common practice, no
// source.
func usualTape(system measure.System) Tape {
	if system == measure.FeetInches {
		return Tape{measure.Inch / 16, measure.Inch / 16}
	}
	return Tape{3 * measure.Millimetre / 2, measure.Millimetre}
}

// OrUsual is the tape with what is not given filled in. said is whether both
// were given.
func (t Tape) OrUsual(system measure.System) (full Tape, said bool) {
	usual := usualTape(system)
	said = t.Deviation > 0 && t.ReadTo > 0
	if t.Deviation <= 0 {
		t.Deviation = usual.Deviation
	}
	if t.ReadTo <= 0 {
		t.ReadTo = usual.ReadTo
	}
	return t, said
}

// worstTape is more than any tape is off by or read to. A choice: common
// practice, no source.
const worstTape = 25 * measure.Millimetre

// checkTape looks at whether what is said of the tape can be believed.
func (f *Found) checkTape(t Tape) {
	if t.Deviation > worstTape {
		f.report("/tape/deviation", problem.Caution, words.Say("The tape is said to be off by {l} in a usual reading, more than any tape.", words.Length("l", t.Deviation)), checkUnit)
	}
	if t.ReadTo > worstTape {
		f.report("/tape/readTo", problem.Caution, words.Say("The tape is said to be read to {l}, coarser than any tape.", words.Length("l", t.ReadTo)), checkUnit)
	}
}

// deviation is the standard deviation of one reading in millimetres: what the
// tape does, and that a reading lies anywhere within half a mark, whose
// variance is a twelfth of the mark squared.
func (t Tape) deviation() float64 {
	return spot{t.Deviation.Millimetres(), t.ReadTo.Millimetres() / 3.4641016151377544}.long()
}

// Find works the room out. The system tells over what length a corner is compared
// with a square one, and how good a tape is that nothing is said of.
func (r Room) Find(system measure.System) Found {
	var f Found
	switch r.Form {
	case Lines:
		f = r.findLines(system)
	case Points:
		f = r.findPoints(system)
	case Walls:
		f = r.findWalls(system)
	case Round:
		f = r.findRound()
	default:
		f = r.findRectangle(system)
	}
	f.Problems = append(f.Problems, heightSide.check(r.Height)...)
	return f
}
