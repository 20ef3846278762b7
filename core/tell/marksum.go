package tell

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	lengths "ceilingwright/core/sum"
	"ceilingwright/core/survey"
)

// stretch is a block's part of a run: its first panel, counted from 0, and how
// many.
type stretch struct {
	run          *mask.Run
	first, count int
}

// starts and ends are where it begins and ends, from the tape line the run is
// counted from.
func (s stretch) starts() measure.Length { return s.run.Starts[s.first] }

func (s stretch) ends() measure.Length {
	last := s.first + s.count - 1
	return s.run.Starts[last] + s.run.Sizes[last]
}

// offsetSum is the distance of an edge of a block from a line, as a sum without
// its result: the panels between the edge and a tape line, or those and half of
// the mask.
func (b *builder) offsetSum(s stretch, o hanging.Offset) string {
	low := o.Edge == survey.DA || o.Edge == survey.AB
	at, edge := s.ends(), s.first+s.count
	if low {
		at, edge = s.starts(), s.first
	}
	before, half := lengths.Sum{}.PlusRow(s.run.Sizes[:edge], at), lengths.Sum{}.PlusHalf(s.run.Box)
	switch {
	case o.Line == hanging.ToCentreLine && 2*at > s.run.Box:
		before = before.MinusHalf(s.run.Box)
	case o.Line == hanging.ToCentreLine && edge == 0:
		before = half.Minus(at)
	case o.Line == hanging.ToCentreLine:
		before = half.MinusAll(before)
	case o.Side == survey.DA || o.Side == survey.AB:
	default:
		before = lengths.Sum{}.PlusRow(lengths.Backwards(s.run.Sizes[edge:]), s.run.Box-at)
	}
	return before.In(b.Style())
}

// diagonalSum is the diagonal of a block as a sum.
func (c *cards) diagonalSum(block hanging.Block, diagonal measure.Length) string {
	along := stretch{&c.layer.Columns, block.Column - 1, block.Columns}
	across := stretch{&c.layer.Rows, block.Row - 1, block.Rows}
	return "√((" + c.Put(along.ends()-along.starts()) + ")² + (" + c.Put(across.ends()-across.starts()) + ")²) = " + c.Exactly(diagonal)
}
