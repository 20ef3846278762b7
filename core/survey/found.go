package survey

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
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

// Found is a room worked out: its shape and how well it is known. Text says it
// in words, Again what to measure again. Problems have pointers relative to the
// room. Where the shape cannot be worked out it is not Usable, and the problems
// say why; the rest is as far as it could be told.
type Found struct {
	Shape    Shape
	Proof    Proof
	Text     string
	Tape     Tape
	TapeSaid bool
	Corners  []CornerFound
	Lines    []LineFound
	Closing  Closing
	Again    []string
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
func (l LineFound) Off() measure.Length { return l.Adjusted - l.Taken() }

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
func usualTape(n measure.Notation) Tape {
	if n.System == measure.FeetInches {
		return Tape{measure.Inch / 16, measure.Inch / 16}
	}
	return Tape{3 * measure.Millimetre / 2, measure.Millimetre}
}

// OrUsual is the tape with what is not given filled in. said is whether both
// were given.
func (t Tape) OrUsual(n measure.Notation) (full Tape, said bool) {
	usual := usualTape(n)
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
func (f *Found) checkTape(t Tape, n measure.Notation) {
	if t.Deviation > worstTape {
		f.report("/tape/deviation", problem.Caution, "The tape is said to be off by "+n.Length(t.Deviation)+" in a usual reading, more than any tape.", "Check the number and write its unit.")
	}
	if t.ReadTo > worstTape {
		f.report("/tape/readTo", problem.Caution, "The tape is said to be read to "+n.Length(t.ReadTo)+", coarser than any tape.", "Check the number and write its unit.")
	}
}

// deviation is the standard deviation of one reading in millimetres: what the
// tape does, and that a reading lies anywhere within half a mark, whose
// variance is a twelfth of the mark squared.
func (t Tape) deviation() float64 {
	return spot{t.Deviation.Millimetres(), t.ReadTo.Millimetres() / 3.4641016151377544}.long()
}

// Find works the room out.
func (r Room) Find(n measure.Notation) Found {
	var f Found
	switch r.Form {
	case Lines:
		f = r.findLines(n)
	case Points:
		f = r.findPoints(n)
	case Walls:
		f = r.findWalls(n)
	case Round:
		f = r.findRound(n)
	default:
		f = r.findRectangle(n)
	}
	f.Problems = append(f.Problems, checkSide("/height", "height", "from floor to ceiling", r.Height, LeastHeight, n)...)
	return f
}
