package mask_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

func TestCentred(t *testing.T) {
	const mm, inch = measure.Millimetre, measure.Inch
	onSeam := func(whole int, edge measure.Length) mask.Centring {
		return mask.Centring{OnSeam: true, Whole: whole, Edge: edge}
	}
	onPanel := func(whole int, edge measure.Length) mask.Centring { return mask.Centring{Whole: whole, Edge: edge} }
	for _, c := range []struct {
		name            string
		run, panel, gap measure.Length
		want            mask.Centring
	}{
		// Worked two ways: rest = R/2 − w/2 − g, or R/2 − g/2, modulo w + g.
		{"3650 in 600", 3650 * mm, 600 * mm, 0, onPanel(5, 325*mm)},
		{"3000 in 300 and 3", 3000 * mm, 300 * mm, 3 * mm, onSeam(8, 573*mm/2)},
		{"3048 in 457 and 2", 3048 * mm, 457 * mm, 2 * mm, onPanel(5, 751*mm/2)},
		{"143 1/2 in in 24 and 1/8", 287 * inch / 2, 24 * inch, inch / 8, onSeam(4, 375*inch/16)},
		{"109 in in 16 and 1/8", 109 * inch, 16 * inch, inch / 8, onPanel(5, 113*inch/8)},
		{"3605 in 600 and 10", 3605 * mm, 600 * mm, 10 * mm, onSeam(4, 1155*mm/2)},
		{"no cut at all", 3600 * mm, 600 * mm, 0, onSeam(6, 0)},
		// A tiler's question: 5.4 panels; seam on the middle leaves 14
		// in at either end, a panel there 4 in.
		{"108 in in 20", 108 * inch, 20 * inch, 0, onSeam(4, 14*inch)},
		{"one panel fills it", 600 * mm, 600 * mm, 0, onPanel(1, 0)},
	} {
		got, ok := mask.Centred(c.run, c.panel, c.gap)
		assert.True(t, ok, c.name)
		assert.Equal(t, c.want, got, c.name)
	}
	_, ok := mask.Centred(500*mm, 600*mm, 0)
	assert.False(t, ok)
}

// Whatever is laid, it fills the run and no end is under half a panel; and the
// fewest equal panels never are either (ANSI A108.02).
func TestCentred_LeavesNoSliver(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 20_000 {
		panel := measure.Length(200+random.Intn(1500)) * measure.Millimetre
		gap := measure.Length(random.Intn(20)) * measure.Millimetre
		run := panel + measure.Length(random.Int63n(int64(12*measure.Metre)))
		c, ok := mask.Centred(run, panel, gap)
		require.True(t, ok)
		if c.Edge > 0 {
			require.GreaterOrEqual(t, 2*c.Edge+1, panel)
			require.Less(t, c.Edge, panel)
			pieces := measure.Length(c.Whole)*panel + 2*c.Edge + measure.Length(c.Whole+1)*gap
			require.InDelta(t, int64(run), int64(pieces), 1)
		} else {
			left := run - measure.Length(c.Whole)*panel - measure.Length(c.Whole-1)*gap
			require.GreaterOrEqual(t, left, measure.Length(0))
			require.Less(t, left, 2*gap+2, "what is left at the ends is part of a gap")
		}
		require.Equal(t, c.OnSeam, c.Whole&1 == 0)

		if n := mask.Fewest(run, panel, gap); n > 1 {
			size := (run - gap*measure.Length(n-1)) / measure.Length(n)
			require.GreaterOrEqual(t, 2*size, panel-gap)
		}
	}
}
