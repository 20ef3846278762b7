package hanging_test

import (
	"math/big"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

func one(column, row int) hanging.Block { return hanging.BlockFromPanel(panel(column, row)) }

// Worked by hand on columns of 4 ft and rows of 3 ft: a 3-4-5 triangle each.
func TestCard_ByHand(t *testing.T) {
	columns, rows := equalRuns(5, 4, 4*foot, 3*foot)
	offset := func(edge survey.Wall, line hanging.Target, side survey.Wall, l measure.Length) hanging.Offset {
		return hanging.Offset{Edge: edge, Line: line, Side: side, Length: l}
	}
	for _, c := range []struct {
		name          string
		block         hanging.Block
		along, across hanging.Offset
		diagonal      measure.Length
	}{
		{"the middle column straddles the centre line", one(3, 2),
			offset(survey.DA, hanging.ToCentreLine, "", 2*foot), offset(survey.AB, hanging.ToTapeLine, survey.AB, 3*foot), 5 * foot},
		{"a corner is on both tape lines: its far edges are measured", one(1, 1),
			offset(survey.BC, hanging.ToTapeLine, survey.DA, 4*foot), offset(survey.CD, hanging.ToTapeLine, survey.AB, 3*foot), 5 * foot},
		{"the second column is nearer the centre line than the tape line", one(2, 3),
			offset(survey.BC, hanging.ToCentreLine, "", 2*foot), offset(survey.CD, hanging.ToTapeLine, survey.CD, 3*foot), 5 * foot},
		{"the far corner", one(5, 4),
			offset(survey.DA, hanging.ToTapeLine, survey.BC, 4*foot), offset(survey.AB, hanging.ToTapeLine, survey.CD, 3*foot), 5 * foot},
		{"a piece of three by four", hanging.Block{Column: 1, Row: 1, Columns: 3, Rows: 4},
			offset(survey.BC, hanging.ToCentreLine, "", 2*foot), offset(survey.AB, hanging.ToCentreLine, "", 6*foot), 0},
	} {
		card := hanging.CardFor(columns, rows, c.block)
		assert.Equal(t, c.along, card.Along, c.name)
		assert.Equal(t, c.across, card.Across, c.name)
		if c.diagonal > 0 {
			assert.Equal(t, c.diagonal, card.Diagonal, c.name)
		}
	}
	// One panel fills the box: only the centre lines are left to measure from.
	columns, rows = equalRuns(1, 1, 4*foot, 3*foot)
	card := hanging.CardFor(columns, rows, one(1, 1))
	assert.Equal(t, hanging.Card{Along: offset(survey.DA, hanging.ToCentreLine, "", 2*foot),
		Across: offset(survey.AB, hanging.ToCentreLine, "", 18*inch), Diagonal: 5 * foot}, card)
}

// Whatever the grid, an offset leads from its line to where the edge lies, and
// no line is nearer to an edge that is not on it.
func TestCard_LeadsToTheEdge(t *testing.T) {
	random := rand.New(rand.NewSource(41))
	for range 300 {
		job := randomJob(random, 6, 6, 1)
		for _, h := range hanging.Order(job).Hangs {
			card := hanging.CardFor(job.Columns, job.Rows, h.Block)
			checkOffset(t, card.Along, job.Columns, h.Block.Column, h.Block.Columns, survey.DA, survey.BC)
			checkOffset(t, card.Across, job.Rows, h.Block.Row, h.Block.Rows, survey.AB, survey.CD)
		}
	}
}

func checkOffset(t *testing.T, o hanging.Offset, run mask.Run, first, count int, low, high survey.Wall) {
	t.Helper()
	ends := map[survey.Wall]measure.Length{low: run.Starts[first-1], high: run.Starts[first+count-2] + run.Sizes[first+count-2]}
	lines := []measure.Length{0, run.Box, run.Box.Half()}
	line := run.Box.Half()
	if o.Line == hanging.ToTapeLine {
		line = map[survey.Wall]measure.Length{low: 0, high: run.Box}[o.Side]
	}
	require.Equal(t, (ends[o.Edge] - line).Abs(), o.Length)
	require.InDelta(t, int64(o.Length), int64(o.Sum(&run, first-1, count).Value()), 1, "%s", o.Sum(&run, first-1, count).In(words.Style{}))
	require.Positive(t, o.Length)
	for _, end := range ends {
		for _, l := range lines {
			if off := (end - l).Abs(); off > 10 {
				require.LessOrEqual(t, o.Length, off+10)
			}
		}
	}
}

func TestCard_DiagonalIsExact(t *testing.T) {
	random := rand.New(rand.NewSource(42))
	for range 2000 {
		a, b := 1+random.Int63n(int64(20*measure.Metre)), 1+random.Int63n(int64(measure.Longest))
		columns := mask.RunFromSizes([]measure.Length{measure.Length(a)}, 0, measure.Length(a))
		rows := mask.RunFromSizes([]measure.Length{measure.Length(b)}, 0, measure.Length(b))
		// The whole root of four times the square, up by one and halved.
		square := new(big.Int).Add(new(big.Int).Mul(big.NewInt(a), big.NewInt(a)), new(big.Int).Mul(big.NewInt(b), big.NewInt(b)))
		want := (new(big.Int).Sqrt(square.Lsh(square, 2)).Int64() + 1) / 2
		require.Equal(t, measure.Length(want), hanging.CardFor(columns, rows, one(1, 1)).Diagonal)
	}
}

// A panel 48 in long hung 2° off runs off by 48 × tan 2° = 1.676197 in, said as
// 1.68 in (worked from a craft page's trouble with a turned ceiling ornament).
func TestTurn(t *testing.T) {
	assert.InDelta(t, 2, hanging.Turn(1_676_197*inch/1_000_000, 48*inch), 1e-6)
	assert.InDelta(t, 45, hanging.Turn(foot, foot), 1e-12)
	assert.InDelta(t, -45, hanging.Turn(-foot, foot), 1e-12)
	assert.InDelta(t, 0.238732, hanging.Turn(inch/4, 60*inch), 1e-6) // 1/240 rad less its third power over three
	assert.Zero(t, hanging.Turn(foot, 0))
}

// Alike triangles, by hand.
func TestGrown(t *testing.T) {
	assert.Equal(t, inch, hanging.Grown(inch/4, 4*foot, 16*foot))
	assert.Equal(t, inch/32, hanging.Grown(inch/16, 4*foot, 2*foot))
	assert.Equal(t, -5*mm, hanging.Grown(-mm, measure.Metre, 5*measure.Metre))
	assert.Equal(t, 10*measure.Metre, hanging.Grown(measure.Metre, 10*measure.Metre, measure.Longest), "past what 64 bits hold on the way")
	assert.Equal(t, measure.Length(2), hanging.Grown(1, 2, 5), "2.5 goes to the even one")
	assert.Zero(t, hanging.Grown(inch, 0, foot))
}

// An order read looking down, the columns counted from the other end, is the
// order of the mirrored mask: the same blocks against the same kinds of edges,
// with the walls DA and BC in each other's place on the page. Sizes are all
// different, so that no tie is settled by the count of columns.
func TestOrder_MirroredReadsTheSame(t *testing.T) {
	columns := mask.RunFromSizes([]measure.Length{11 * inch, 17 * inch, 29 * inch, 23 * inch}, 0, 80*inch)
	mirrored := mask.RunFromSizes([]measure.Length{23 * inch, 29 * inch, 17 * inch, 11 * inch}, 0, 80*inch)
	rows := mask.RunFromSizes([]measure.Length{13 * inch, 31 * inch, 19 * inch}, 0, 63*inch)
	there, back := order(columns, rows), order(mirrored, rows)
	for i, h := range there {
		require.Equal(t, panel(5-h.Panel.Column, h.Panel.Row), back[i].Panel)
		changed := map[survey.Wall]survey.Wall{survey.DA: survey.BC, survey.BC: survey.DA, survey.AB: survey.AB, survey.CD: survey.CD}
		seen := map[survey.Wall]hanging.Target{}
		for _, e := range h.Edges {
			seen[changed[e.Side]] = e.To
		}
		for _, e := range back[i].Edges {
			require.Equal(t, e.To, seen[e.Side], "step %d", i+1)
		}
	}
}
