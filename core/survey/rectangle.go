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
func (r Room) findRectangle(system measure.System) Found {
	f := Found{Proof: Assumed, Shape: ShapeFromSides(Rectangle, r.Length, r.Width)}
	f.Problems = append(wallAlong.check(r.Length), wallAcross.check(r.Width)...)
	f.Tape, f.TapeSaid = r.Tape.OrUsual(system)
	f.checkTape(r.Tape)
	if !f.Shape.Usable() {
		return f
	}
	f.Verdict = NoDiagonal
	agree := 0
	for _, d := range []diagonal{{LineAC, B, "/diagonalAC", r.DiagonalAC}, {LineBD, A, "/diagonalBD", r.DiagonalBD}} {
		switch {
		case d.read <= 0:
		case d.proves(&f, system):
			agree++
		default:
			f.Proof = Contradicted
		}
	}
	switch {
	case f.Proof == Contradicted:
		f.Verdict = OffSquare
	case agree == 2:
		f.Proof, f.Verdict = Proved, SquareByBoth
	case agree == 1:
		f.Proof, f.Verdict = Proved, SquareByOne
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
func (d diagonal) proves(f *Found, system measure.System) bool {
	should := spot{f.Shape.Length.Millimetres(), f.Shape.Width.Millimetres()}.long()
	off, limit := d.read-measure.LengthFromMillimetres(should), measure.LengthFromMillimetres(beyond*math.Sqrt2*f.Tape.deviation())
	c := &f.Closing
	c.Spare++
	if off.Abs() > c.Amount.Abs() || c.Line == "" {
		c.Line, c.At, c.Amount, c.Limit = d.line, d.to, off, limit
	}
	if off.Abs() <= limit {
		return true
	}
	f.report(d.to, problem.Caution, d.fault(f, off, measure.LengthFromMillimetres(should), overOf(system)),
		words.Say("Measure it again. If it stays so, measure the four walls and both diagonals and enter those."))
	return false
}

// fault is by how much the diagonal is off, and what it would make of a corner.
func (d diagonal) fault(f *Found, off, should, over measure.Length) words.Text {
	line, taken, square, by := words.Of("line", d.line), words.Length("read", d.read), words.Length("should", should), words.Amount("off", off.Abs())
	reads := words.Say("Diagonal {line} reads {read}; with this length and width a square room has {should}, so it is {off} too long", line, taken, square, by)
	if off < 0 {
		reads = words.Say("Diagonal {line} reads {read}; with this length and width a square room has {should}, so it is {off} too short", line, taken, square, by)
	}
	long, wide, read := f.Shape.Length.Millimetres(), f.Shape.Width.Millimetres(), d.read.Millimetres()
	cosine := (float64(long*long) + float64(wide*wide) - float64(read*read)) / float64(2*long*wide)
	if math.Abs(cosine) >= 1 {
		return words.Say("{reads}: the three cannot meet.", words.Of("reads", reads))
	}
	c := cornerFound(d.at, spot{1, 0}, spot{cosine, math.Sqrt(1 - float64(cosine*cosine))}, over)
	says, corner, angle := words.Of("reads", reads), words.Of("corner", d.at), words.Of("angle", c.Angle())
	if c.Right == 0 {
		return words.Say("{reads}, and corner {corner} would be {angle}.", says, corner, angle)
	}
	return words.Say("{reads}, and corner {corner} would be {angle}, {out} out of square over {over}.",
		says, corner, angle, words.Amount("out", c.Out.Abs()), words.Length("over", c.Over))
}
