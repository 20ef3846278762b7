package mask_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

func gaps(list ...mask.MeasuredGap) []mask.MeasuredGap { return list }

func lengths(millimetres ...measure.Length) []measure.Length {
	for i := range millimetres {
		millimetres[i] *= mm
	}
	return millimetres
}

// Five panels of 600 with 4 mm at four seams fill 3016. Worked by hand from the
// rule: the first panel stays, and each side shares what is left.
func TestRunHang_ByHand(t *testing.T) {
	five := mask.RunFromSizes(repeat(600*mm, 5), 4*mm, 3016*mm)
	four := mask.RunFromSizes(repeat(600*mm, 4), 4*mm, 2412*mm)
	for _, c := range []struct {
		name      string
		run       mask.Run
		from      int
		measured  []mask.MeasuredGap
		gaps      []measure.Length
		starts    []measure.Length
		low, high measure.Length
	}{
		{"nothing measured: as planned", five, 2, nil, lengths(4, 4, 4, 4), lengths(0, 604, 1208, 1812, 2416), 0, 0},
		{"measured as planned", five, 2, gaps(mask.MeasuredGap{Seam: 2, Gap: 4 * mm}), lengths(4, 4, 4, 4), lengths(0, 604, 1208, 1812, 2416), 0, 0},
		{"3 mm too wide: the next seam of that side makes it good", five, 2, gaps(mask.MeasuredGap{Seam: 2, Gap: 7 * mm}),
			lengths(4, 4, 7, 1), lengths(0, 604, 1208, 1815, 2416), 0, 0},
		{"on the other side too", five, 2, gaps(mask.MeasuredGap{Seam: 1, Gap: 2 * mm}),
			lengths(6, 2, 4, 4), lengths(0, 606, 1208, 1812, 2416), 0, 0},
		{"more than the rest can take: 2 mm past the line", five, 2, gaps(mask.MeasuredGap{Seam: 2, Gap: 10 * mm}),
			lengths(4, 4, 10, 0), lengths(0, 604, 1208, 1818, 2418), 0, 2 * mm},
		{"the last seam: what it is, it is", five, 2, gaps(mask.MeasuredGap{Seam: 2, Gap: 7 * mm}, mask.MeasuredGap{Seam: 3, Gap: 2 * mm}),
			lengths(4, 4, 7, 2), lengths(0, 604, 1208, 1815, 2417), 0, mm},
		{"ending short", five, 2, gaps(mask.MeasuredGap{Seam: 0, Gap: mm}, mask.MeasuredGap{Seam: 1, Gap: 4 * mm}),
			lengths(1, 4, 4, 4), lengths(3, 604, 1208, 1812, 2416), -3 * mm, 0},
		{"begun at the tape line", five, 0, gaps(mask.MeasuredGap{Seam: 0, Gap: 7 * mm}),
			lengths(7, 3, 3, 3), lengths(0, 607, 1210, 1813, 2416), 0, 0},
		{"begun at the far line", five, 4, gaps(mask.MeasuredGap{Seam: 3, Gap: mm}),
			lengths(5, 5, 5, 1), lengths(0, 605, 1210, 1815, 2416), 0, 0},
		{"the seam on the centre line counts to the far side", four, 1, gaps(mask.MeasuredGap{Seam: 1, Gap: 6 * mm}),
			lengths(4, 6, 2), lengths(0, 604, 1210, 1812), 0, 0},
		{"an overlap", four, 1, gaps(mask.MeasuredGap{Seam: 1, Gap: -2 * mm}),
			lengths(4, -2, 10), lengths(0, 604, 1202, 1812), 0, 0},
		{"the last word counts, and no seam that is not there", four, 1,
			gaps(mask.MeasuredGap{Seam: 0, Gap: 9 * mm}, mask.MeasuredGap{Seam: 0, Gap: 4 * mm}, mask.MeasuredGap{Seam: 3, Gap: mm}, mask.MeasuredGap{Seam: -1, Gap: mm}),
			lengths(4, 4, 4), lengths(0, 604, 1208, 1812), 0, 0},
		{"one panel", mask.RunFromSizes(repeat(610*mm, 1), 0, 600*mm), 0, nil, []measure.Length{}, lengths(-5), 5 * mm, 5 * mm},
	} {
		t.Run(c.name, func(t *testing.T) {
			h, ok := c.run.Hang(c.from, c.measured)
			require.True(t, ok)
			assert.Equal(t, c.gaps, h.Gaps)
			assert.Equal(t, c.starts, h.Starts)
			assert.Equal(t, c.low, h.Low, "past the line at the start")
			assert.Equal(t, c.high, h.High, "past the line at the end")
		})
	}
	_, ok := mask.Run{}.Hang(0, nil)
	assert.False(t, ok)
	_, ok = five.Hang(5, nil)
	assert.False(t, ok)
	_, ok = five.Hang(-1, nil)
	assert.False(t, ok)
}

func TestRunHang_Properties(t *testing.T) {
	random := rand.New(rand.NewSource(23))
	for range 500 {
		sizes, total := anySizes(random, 14)
		box := total + measure.Length(random.Int63n(int64(60*mm)))
		run := mask.RunFromSizes(sizes, 2*mm, box)
		from := random.Intn(len(sizes))

		none, ok := run.Hang(from, nil)
		require.True(t, ok)
		require.Zero(t, none.Low)
		require.Zero(t, none.High)
		for i := range run.Starts {
			// Shared out anew from the first panel, a cut is rounded on its own.
			require.LessOrEqual(t, (none.Starts[i] - run.Starts[i]).Abs(), measure.Length(1))
		}

		var measured []mask.MeasuredGap
		for i := range run.Gaps {
			if random.Intn(3) == 0 {
				measured = append(measured, mask.MeasuredGap{Seam: i, Gap: run.Gaps[i] + measure.Length(random.Int63n(int64(12*mm))) - 5*mm})
			}
		}
		h, _ := run.Hang(from, measured)
		sum := total
		for i, gap := range h.Gaps {
			sum += gap
			require.Equal(t, h.Starts[i+1], h.Starts[i]+sizes[i]+gap)
			require.True(t, h.Fixed[i] || gap >= 0, "no panel is told to overlap")
		}
		for _, m := range measured {
			require.Equal(t, m.Gap, h.Gaps[m.Seam], "what was measured is")
		}
		require.Equal(t, box, sum-h.Low-h.High, "sizes, gaps and what is over make the box")
		require.Equal(t, run.Starts[from], h.Starts[from], "the first panel stays")
		for seam, fixed := range h.Fixed {
			past := h.High
			if seam < from {
				past = h.Low
			}
			if !fixed {
				require.GreaterOrEqual(t, past, measure.Length(0), "a side that is not done ends on its line or past it")
			}
		}
		for i := range h.Gaps {
			for j := range h.Gaps {
				if (i < from) == (j < from) && !h.Fixed[i] && !h.Fixed[j] {
					require.LessOrEqual(t, (h.Gaps[i] - h.Gaps[j]).Abs(), measure.Length(1), "seams of one side are set alike")
				}
			}
		}
	}
}

// A seam inside a span keeps its gap; the others of its side share what is left.
func TestRunHang_HeldSeams(t *testing.T) {
	layer := mask.Layer{Columns: repeat(600*mm, 5), Rows: repeat(600*mm, 1), Gap: 4 * mm,
		Pieces: []mask.Piece{{Kind: mask.Span, Column: 4, Row: 1, Columns: 2, Rows: 1}}}
	columns, _ := layer.Runs(mask.Outline{Length: 3016 * mm, Width: 600 * mm})
	h, ok := columns.Hang(1, gaps(mask.MeasuredGap{Seam: 1, Gap: 7 * mm}, mask.MeasuredGap{Seam: 3, Gap: 9 * mm}))
	require.True(t, ok)
	assert.Equal(t, lengths(4, 7, 1, 4), h.Gaps)
	assert.Equal(t, []bool{false, true, false, true}, h.Fixed)
	assert.Zero(t, h.High)
}

func TestParseSeam(t *testing.T) {
	for _, c := range []struct {
		text    string
		columns bool
		after   int
		ok      bool
	}{
		{"2│3", true, 2, true}, {" 2 | 3 ", true, 2, true}, {"9999-10000", true, 9999, true}, {"2/3", true, 2, true},
		{"B│C", false, 2, true}, {"b c", false, 2, true}, {"Z–AA", false, 26, true},
		{"2│4", true, 2, false}, {"3│2", true, 3, false}, {"0│1", true, 0, false}, {"-1│0", true, 1, false},
		{"10001│10002", true, 10001, false}, {"2│C", true, 2, false}, {"B│3", false, 0, false}, {"B", false, 0, false}, {"", false, 0, false},
		{"A│B│C", false, 0, false}, {"Ä│Å", false, 0, false}, {"ZZZZZ│ZZZZZ", false, 0, false}, {"99999999999999999999│1", false, 0, false},
	} {
		columns, after, ok := mask.ParseSeam(c.text)
		assert.Equal(t, c.ok, ok, c.text)
		if ok {
			assert.Equal(t, c.columns, columns, c.text)
			assert.Equal(t, c.after, after, c.text)
		}
	}
	for i := 1; i < 800; i++ {
		columns, after, ok := mask.ParseSeam(mask.ColumnSeam(i))
		assert.True(t, ok && columns && after == i)
		columns, after, ok = mask.ParseSeam(mask.RowSeam(i))
		assert.True(t, ok && !columns && after == i)
	}
}

func FuzzParseSeam(f *testing.F) {
	for _, seed := range []string{"2│3", "B│C", "1-2", "", "│", "A│A│A", "aa ab"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		columns, after, ok := mask.ParseSeam(text)
		if !ok {
			return
		}
		name := mask.RowSeam(after)
		if columns {
			name = mask.ColumnSeam(after)
		}
		if again, same, ok := mask.ParseSeam(name); !ok || again != columns || same != after {
			t.Fatalf("%q is read as %q, which is read otherwise", text, name)
		}
	})
}

// Scholz 1995, Tolerance Stack Analysis Methods; the figures worked out from
// its formulas.
func TestBuildUp_WithSeamsAndFlat(t *testing.T) {
	for _, c := range []struct {
		name          string
		got           mask.BuildUp
		worst, likely measure.Length
	}{
		{"6 of 0.8 with 5 of 0.5", mask.BuildUpWithSeams(6, 800_000, 500_000), 7_300_000, 2_256_103},
		{"10 of 0.5 with 9 of 0.3", mask.BuildUpWithSeams(10, 500_000, 300_000), 7_700_000, 1_819_341},
		{"4 of 0.5, seams exact", mask.BuildUpWithSeams(4, mm/2, 0), 2 * mm, mm},
		{"one panel has no seam", mask.BuildUpWithSeams(1, mm, mm), mm, mm},
		{"none", mask.BuildUpWithSeams(0, mm, mm), 0, 0},
		{"fewer than none", mask.BuildUpWithSeams(-3, mm, mm), 0, 0},
	} {
		assert.Equal(t, mask.BuildUp{Worst: c.worst, Likely: c.likely}, c.got, c.name)
	}
	for _, c := range []struct {
		name string
		got  measure.Length
		want measure.Length
	}{
		{"4 of 0.5", mask.LikelyIfFlat(4, mm/2), 1_732_051},
		{"9 of 0.8", mask.LikelyIfFlat(9, 800_000), 4_156_922},
		{"6 of 1/32 in", mask.LikelyIfFlat(6, inch/32), 3_367_596}, // 0.132582521 in
		{"12 of 1", mask.LikelyIfFlat(12, mm), 6 * mm},
		{"none", mask.LikelyIfFlat(-1, mm), 0},
	} {
		assert.Equal(t, c.want, c.got, c.name)
	}
}

// Share of sums of flat errors that stay within √n × t, from the exact
// distribution of their sum (Irwin 1927 and Hall 1927, from memory): for two
// 0.914213562, so the claim of about one in twelve past it holds.
func TestBuildUp_OneInTwelve(t *testing.T) {
	random := rand.New(rand.NewSource(29))
	inside := 0
	const times = 40_000
	likely := float64(mask.BuildUpFromEnd(2, mm).Likely) / 1e6
	for range times {
		if sum := random.Float64()*2 - 1 + random.Float64()*2 - 1; sum <= likely && sum >= -likely {
			inside++
		}
	}
	assert.InDelta(t, 0.914213562, float64(inside)/times, 0.006)
}
