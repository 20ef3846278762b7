package survey

import (
	"math"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// findRectangle takes the room as square: an assumption, until a diagonal
// proves it. It stays a rectangle where a diagonal speaks against it, since
// length and width alone are not enough for any other shape; the problem says
// what to enter instead.
func (r Room) findRectangle(n measure.Notation) Found {
	f := Found{Proof: Assumed, Shape: ShapeFromSides(Rectangle, r.Length, r.Width)}
	f.Problems = append(checkSide("/length", "length", "wall WX", r.Length, LeastSide, n), checkSide("/width", "width", "wall ZW", r.Width, LeastSide, n)...)
	f.Tape, f.TapeSaid = r.Tape.OrUsual(n)
	f.checkTape(r.Tape, n)
	if !f.Shape.Usable() {
		return f
	}
	f.Text = "Taken as square: no diagonal was measured."
	agree := 0
	for _, d := range []diagonal{{LineAC, B, "/diagonalAC", r.DiagonalAC}, {LineBD, A, "/diagonalBD", r.DiagonalBD}} {
		switch {
		case d.read <= 0:
		case d.proves(&f, n):
			agree++
		default:
			f.Proof = Contradicted
		}
	}
	switch {
	case f.Proof == Contradicted:
		f.Text = "Not square: a diagonal does not fit the length and the width. The sheet still takes the room as square; do not mark anything by it."
		f.Again = []string{"The four walls and both diagonals"}
	case agree > 0:
		f.Proof = Proved
		f.Text = "Square as far as the tape can tell, if the walls opposite each other are as long as each other: the "
		if agree == 2 {
			f.Text += "diagonals are both as long as they should be."
		} else {
			f.Text += "diagonal is as long as it should be."
		}
	}
	return f
}

// diagonal is a diagonal of a room given by length and width, and a corner that
// it lies across from.
type diagonal struct {
	line Line
	at   Corner
	to   string
	read measure.Length
}

// proves tells whether the diagonal is as long as in a rectangle, as far as the
// tape can tell, and says what is off where it is not.
//
// The difference has √2 times the standard deviation of one reading: once that of
// the diagonal, and length and width add (length² + width²) ÷ diagonal² = 1 more
// to its square.
func (d diagonal) proves(f *Found, n measure.Notation) bool {
	long, wide, read := f.Shape.Length.Millimetres(), f.Shape.Width.Millimetres(), d.read.Millimetres()
	should := spot{long, wide}.long()
	off, limit := d.read-measure.LengthFromMillimetres(should), measure.LengthFromMillimetres(beyond*math.Sqrt2*f.Tape.deviation())
	c := &f.Closing
	c.Spare++
	if off.Abs() > c.Amount.Abs() || c.Line == "" {
		c.Line, c.At, c.Amount, c.Limit = d.line, d.to, off, limit
	}
	if off.Abs() <= limit {
		return true
	}
	what := "Diagonal " + d.line.Text() + " reads " + n.Length(d.read) + "; with this length and width a square room has " + n.Length(measure.LengthFromMillimetres(should)) + ", so it is " + n.Amount(off.Abs())
	if off > 0 {
		what += " too long"
	} else {
		what += " too short"
	}
	cosine := (float64(long*long) + float64(wide*wide) - float64(read*read)) / float64(2*long*wide)
	if math.Abs(cosine) < 1 {
		c := cornerFound(d.at, spot{1, 0}, spot{cosine, math.Sqrt(1 - float64(cosine*cosine))}, overOf(n))
		what += ", and corner " + d.at.Text() + " would be " + AngleText(c.Degrees)
		if c.Right != 0 {
			what += ", " + n.Amount(c.Out.Abs()) + " out of square over " + n.Length(c.Over)
		}
	} else {
		what += ": the three cannot meet"
	}
	f.Problems = append(f.Problems, problem.Problem{At: d.to, Severity: problem.Caution, What: words.Raw(what + "."),
		Do: words.Say("Measure it again. If it stays so, measure the four walls and both diagonals and enter those.")})
	return false
}
