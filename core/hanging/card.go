package hanging

import (
	"math"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/sum"
	"ceilingwright/core/survey"
)

// Offset is how far one edge of a block must be from a line of the box: Edge is
// the side of the block that is measured to, Line a tape line or a centre line,
// Side the side of the box that a tape line is on. Both ends of the edge must
// read the same.
type Offset struct {
	Edge   survey.Wall
	Line   Target
	Side   survey.Wall
	Length measure.Length
}

// Card is what places a block apart from the edges it is set to: one offset
// along and one across, and the diagonal that proves it square.
type Card struct {
	Along, Across Offset
	Diagonal      measure.Length
}

// CardFor is the card of a block, which must lie on the grid. Each offset is
// the shortest there is from a tape line or the centre line to an edge that is
// not on it: a short length is read best. The diagonal is exact to the nearest
// nanometre.
func CardFor(columns, rows mask.Run, b Block) Card {
	g := ground{columns: columns, rows: rows}
	r := g.rect(b)
	return Card{
		Along:    offset(r.X, r.Length, columns.Box, survey.DA, survey.BC),
		Across:   offset(r.Y, r.Width, rows.Box, survey.AB, survey.CD),
		Diagonal: diagonal(r.Length, r.Width),
	}
}

// offset is the shortest from a line to an edge in one direction; of equals
// the one from a tape line, then the one to the lower edge. An edge past a tape line
// is not measured from that line: the length would read as if it lay inside.
func offset(start, length, box measure.Length, low, high survey.Wall) Offset {
	end, middle := start+length, box.Half()
	best := Offset{Length: -1}
	for _, o := range [6]Offset{
		{low, ToTapeLine, low, start},
		{high, ToTapeLine, high, box - end},
		{low, ToTapeLine, high, box - start},
		{high, ToTapeLine, low, end},
		{low, ToCentreLine, "", start - middle},
		{high, ToCentreLine, "", end - middle},
	} {
		if o.Line == ToTapeLine && o.Length < 0 {
			continue // past the line, where no tape is held to
		}
		o.Length = o.Length.Abs()
		if o.Length > alike && (best.Length < 0 || o.Length < best.Length-alike) {
			best = o
		}
	}
	return best
}

// diagonal is √(a² + b²) to the nearest nanometre; no root of a whole number
// lies half way between two.
func diagonal(a, b measure.Length) measure.Length {
	square := squareOf(a.Abs()).plus(squareOf(b.Abs()))
	root := measure.Length(math.Sqrt(float64(float64(square.high)*(1<<64)) + float64(square.low)))
	for square.less(squareOf(root)) {
		root--
	}
	for !square.less(squareOf(root + 1)) {
		root++
	}
	if half := squareOf(root).plus(wide{low: uint64(root)}); half.less(square) {
		root++
	}
	return root
}

// Turn is by how many degrees an edge is turned whose two ends read differently
// by so much: atan(run-off ÷ length). 0 for an edge without length.
func Turn(runOff, length measure.Length) float64 {
	if length <= 0 {
		return 0
	}
	return math.Atan(float64(runOff)/float64(length)) * (180 / math.Pi)
}

// Grown is what a run-off over one length becomes over another, half to even:
// everything set to a turned edge goes on in its direction. 0 for an edge
// without length.
func Grown(runOff, over, to measure.Length) measure.Length {
	if over <= 0 {
		return 0
	}
	grown := measure.NumberFromInt(int64(runOff)).Mul(measure.NumberFromInt(int64(to))).Quo(measure.NumberFromInt(int64(over)))
	return measure.Length(grown.RoundHalfEven(0).IntPart())
}

// Sum is how the distance comes about for panels of a run, count of them from first on,
// counted from 0: the panels between their edge and a tape line, or those and half of
// the mask.
func (o Offset) Sum(run *mask.Run, first, count int) sum.Sum {
	last := first + count - 1
	at, edge := run.Starts[last]+run.Sizes[last], first+count
	if o.Edge == survey.DA || o.Edge == survey.AB {
		at, edge = run.Starts[first], first
	}
	before, half := sum.Sum{}.PlusRow(run.Sizes[:edge], at), sum.Sum{}.PlusHalf(run.Box)
	switch {
	case o.Line == ToCentreLine && 2*at > run.Box:
		return before.MinusHalf(run.Box)
	case o.Line == ToCentreLine && edge == 0:
		return half.Minus(at)
	case o.Line == ToCentreLine:
		return half.MinusAll(before)
	case o.Side == survey.DA || o.Side == survey.AB:
		return before
	}
	return sum.Sum{}.PlusRow(sum.Backwards(run.Sizes[edge:]), run.Box-at)
}
