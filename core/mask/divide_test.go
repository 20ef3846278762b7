package mask_test

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

var inches = measure.Notation{System: measure.FeetInches, InchMark: inch / 16, MetricMark: mm, Plain: true}

// running is each size added to those before it.
func running(sizes []measure.Length) []measure.Length {
	sums, sum := make([]measure.Length, len(sizes)), measure.Length(0)
	for i, size := range sizes {
		sum += size
		sums[i] = sum
	}
	return sums
}

// The four divisions by which chain and running dimensions are told apart
// (ISO 129-1 names both; the values were worked out two ways). Only the
// running value is rounded to the tape, so no error passes half a mark, and
// the chain of rounded widths would be off by the amount shown.
func TestEqual_RunningMarksDoNotBuildUp(t *testing.T) {
	sixteenth := inch / 16
	for _, c := range []struct {
		name    string
		total   measure.Length
		n       int
		mark    measure.Length
		width   measure.Length // each width rounded by itself
		chain   measure.Length // what the chain of those is off at its end
		running []measure.Length
	}{
		{"100 in in 7", 100 * inch, 7, sixteenth, 229 * sixteenth, 3 * sixteenth,
			[]measure.Length{229 * sixteenth, 457 * sixteenth, 686 * sixteenth, 914 * sixteenth, 1143 * sixteenth, 1371 * sixteenth, 1600 * sixteenth}},
		{"3650 mm in 7", 3650 * mm, 7, mm, 521 * mm, -3 * mm,
			[]measure.Length{521 * mm, 1043 * mm, 1564 * mm, 2086 * mm, 2607 * mm, 3129 * mm, 3650 * mm}},
		{"11 of 457.2 mm", 11 * 18 * inch, 11, mm, 457 * mm, -2_200_000,
			[]measure.Length{457 * mm, 914 * mm, 1372 * mm, 1829 * mm, 2286 * mm, 2743 * mm, 3200 * mm, 3658 * mm, 4115 * mm, 4572 * mm, 5029 * mm}},
	} {
		t.Run(c.name, func(t *testing.T) {
			sizes := mask.Equal(c.total, c.n)
			for i, at := range running(sizes) {
				assert.Equal(t, c.running[i], at.ToMark(c.mark), "mark %d", i+1)
				assert.LessOrEqual(t, (at.ToMark(c.mark) - at).Abs(), c.mark/2)
			}
			assert.Equal(t, c.width, sizes[0].ToMark(c.mark))
			assert.Equal(t, c.chain, c.width*measure.Length(c.n)-c.total)
		})
	}
	// 24 of 3 1/32 in: every second running mark is exact on a sixteenth.
	for i, at := range running(mask.Equal(24*97*inch/32, 24)) {
		hides := (at.ToMark(sixteenth) - at).Abs()
		assert.Equal(t, measure.Length((i+1)%2)*inch/32, hides, "mark %d", i+1)
	}
}

func TestEqual_AddsUpAndSpreads(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	for range 1000 {
		total, n := measure.Length(1+random.Int63n(int64(measure.Longest))), 1+random.Intn(100)
		sizes := mask.Equal(total, n)
		sums := running(sizes)
		require.Equal(t, total, sums[n-1])
		for i, at := range sums {
			// Twice the distance from i × total ÷ n, times n, is at most n.
			require.LessOrEqual(t, (2 * (at*measure.Length(n) - total*measure.Length(i+1))).Abs(), measure.Length(n))
			require.LessOrEqual(t, (sizes[i] - total/measure.Length(n)).Abs(), measure.Length(1))
		}
	}
	assert.Empty(t, mask.Equal(foot, 0))
	assert.Empty(t, mask.Equal(0, 3))
	assert.Empty(t, mask.Equal(-foot, 3))
}

func TestFewest(t *testing.T) {
	for _, c := range []struct {
		total, greatest, gap measure.Length
		want                 int
	}{
		{12 * foot, 4 * foot, 0, 3},                    // exactly
		{12*foot + 1, 4 * foot, 0, 4},                  // a nanometre over needs one more
		{12*foot + inch, 4 * foot, 0, 4},               //
		{12 * foot, 20 * foot, 0, 1},                   // one does
		{12*foot + 1, 4 * foot, 1, 3},                  // two gaps of 1 nm fill it
		{252*inch + 6*inch/16, 3 * foot, inch / 16, 7}, // the joints count (a tiler's question)
		{252*inch + 7*inch/16, 3 * foot, inch / 16, 8},
		{0, foot, 0, 0}, {foot, 0, 0, 0}, {foot, foot, -1, 0},
	} {
		assert.Equal(t, c.want, mask.Fewest(c.total, c.greatest, c.gap), "%v of at most %v, gap %v", c.total, c.greatest, c.gap)
	}
}

func TestFewest_IsLeast(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	fits := func(n int, total, greatest, gap measure.Length) bool {
		return measure.Length(n)*greatest+measure.Length(n-1)*gap >= total
	}
	for range 5000 {
		total := measure.Length(1 + random.Int63n(int64(20*measure.Metre)))
		greatest, gap := 50*mm+measure.Length(random.Int63n(int64(2*measure.Metre))), measure.Length(random.Int63n(int64(10*mm)))
		n := mask.Fewest(total, greatest, gap)
		require.True(t, fits(n, total, greatest, gap))
		require.True(t, n == 1 || !fits(n-1, total, greatest, gap))
	}
}

// told are problems in words, as feet and inches put them.
func told(list []problem.Problem) []problem.Problem {
	said := slices.Clone(list)
	for i := range said {
		style := words.Style{Notation: inches}
		said[i].What, said[i].Do = words.Say(said[i].What.In(style)), words.Say(said[i].Do.In(style))
	}
	return said
}
