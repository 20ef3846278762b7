package mask_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

func TestRunFromSizes_Joints(t *testing.T) {
	// A tiler's question: seven panels of 36 in with 1/16 in at every
	// seam make 252 3/8 in: 3/8 in past the plan from one side, 3/16 in a side
	// from the middle.
	run := mask.RunFromSizes(repeat(3*foot, 7), inch/16, 252*inch)
	assert.Equal(t, 3*inch/8, run.Over)
	assert.Equal(t, 252*inch+3*inch/8, run.Box+run.Over)
	assert.Equal(t, 3*inch/16, run.Over.Half())
	change, ok := run.Change()
	require.True(t, ok)
	assert.Zero(t, change.Cmp(measure.NumberFromInt(int64(-inch/16))), "closing each seam by 1/16 in lands on both lines")
	assert.Equal(t, repeat(0, 6), run.Gaps)
	narrowest, ok := run.Narrowest()
	assert.True(t, ok)
	assert.Zero(t, narrowest)
}

func TestRunFromSizes_OpensAndCloses(t *testing.T) {
	for _, c := range []struct {
		name     string
		sizes    []measure.Length
		gap, box measure.Length
		over     measure.Length
		gaps     []measure.Length
		starts   []measure.Length
	}{
		{"fits", repeat(4*foot, 3), 0, 12 * foot, 0, repeat(0, 2), []measure.Length{0, 4 * foot, 8 * foot}},
		{"short: seams open", repeat(1000*mm, 4), 2 * mm, 4012 * mm, -6 * mm, repeat(4*mm, 3),
			[]measure.Length{0, 1004 * mm, 2008 * mm, 3012 * mm}},
		{"long with no gap: seams overlap", repeat(1001*mm, 3), 0, 3000 * mm, 3 * mm, repeat(-1_500_000, 2),
			[]measure.Length{0, 999_500_000, 1999 * mm}},
		{"the remainder is spread", repeat(1000*mm, 4), 0, 4000*mm + 4, -4, []measure.Length{1, 2, 1},
			[]measure.Length{0, 1000*mm + 1, 2000*mm + 3, 3000*mm + 4}},
		{"one panel lies with its middle on the middle", repeat(1010*mm, 1), 0, 1000 * mm, 10 * mm, []measure.Length{}, []measure.Length{-5 * mm}},
	} {
		t.Run(c.name, func(t *testing.T) {
			run := mask.RunFromSizes(c.sizes, c.gap, c.box)
			assert.Equal(t, c.over, run.Over)
			assert.Equal(t, c.gaps, run.Gaps)
			assert.Equal(t, c.starts, run.Starts)
		})
	}
	assert.Equal(t, mask.Run{}, mask.RunFromSizes(nil, mm, foot), "no panels, no run")
	assert.Equal(t, mask.Run{}, mask.RunFromSizes(repeat(foot, 2), 0, 0), "no box, no run")
	_, ok := mask.RunFromSizes(repeat(foot, 1), 0, foot).Change()
	assert.False(t, ok, "one panel has no seam")
	_, ok = mask.Run{}.Narrowest()
	assert.False(t, ok)
}

// anySizes are sizes of two panels or more, below so many, and what they come to.
func anySizes(random *rand.Rand, below int) (sizes []measure.Length, sum measure.Length) {
	for range 2 + random.Intn(below-2) {
		sizes = append(sizes, 200*mm+measure.Length(random.Int63n(int64(measure.Metre))))
		sum += sizes[len(sizes)-1]
	}
	return sizes, sum
}

func TestRunFromSizes_LandsOnBothTapeLines(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	for range 300 {
		sizes, sum := anySizes(random, 32)
		gap := measure.Length(random.Int63n(int64(5 * mm)))
		box := sum + measure.Length(random.Int63n(int64(40*mm))) - 20*mm
		run := mask.RunFromSizes(sizes, gap, box)
		last := len(sizes) - 1
		require.Zero(t, run.Starts[0])
		require.Equal(t, box, run.Starts[last]+sizes[last])
		change, _ := run.Change()
		for i, width := range run.Gaps {
			// No seam is more than a nanometre from the exact change.
			off := measure.NumberFromInt(int64(width - gap)).Sub(change)
			require.LessOrEqual(t, off.Cmp(measure.NumberFromInt(1)), 0)
			require.GreaterOrEqual(t, off.Cmp(measure.NumberFromInt(-1)), 0)
			middle := 2*run.Seam(i) - run.Starts[i] - sizes[i] - run.Starts[i+1]
			require.LessOrEqual(t, middle.Abs(), measure.Length(1), "a seam is marked in the middle of its gap")
		}
	}
}

// n × t and √n × t: Scholz 1995, Tolerance Stack Analysis Methods; the
// propagation law also in JCGM 100, 5.1.2.
func TestBuildUp(t *testing.T) {
	for _, c := range []struct {
		name          string
		got           mask.BuildUp
		worst, likely measure.Length
	}{
		{"4 of 0.5 mm", mask.BuildUpFromEnd(4, mm/2), 2 * mm, mm},
		{"9 of 0.8 mm", mask.BuildUpFromEnd(9, 800_000), 7_200_000, 2_400_000},
		{"6 of 1/32 in", mask.BuildUpFromEnd(6, inch/32), 3 * inch / 16, 1_944_282}, // 0.076546554 in
		{"12 of 1 mm", mask.BuildUpFromEnd(12, mm), 12 * mm, 3_464_102},
		{"10 of 0.5 mm from one wall", mask.BuildUpFromEnd(10, mm/2), 5 * mm, 1_581_139},
		{"10 of 0.5 mm from the centre", mask.BuildUpFromCentre(10, mm/2), 2_500_000, 1_118_034},
		// Shares of a single panel's error: half a panel each side, alone.
		{"1 of 1 mm from the centre", mask.BuildUpFromCentre(1, mm), mm / 2, mm / 2},
		{"3 of 1 mm from the centre: √(1 + ¼)", mask.BuildUpFromCentre(3, mm), 1_500_000, 1_118_034},
		{"no panels", mask.BuildUpFromEnd(0, mm), 0, 0},
		{"fewer than none", mask.BuildUpFromCentre(-2, mm), 0, 0},
	} {
		assert.Equal(t, mask.BuildUp{Worst: c.worst, Likely: c.likely}, c.got, c.name)
	}
	// A large-format printer's article on sticker shrinkage: six panels of
	// 48 in all grown 0.2 % are 0.576 in out from one side, 0.288 in from the
	// centre. One shared error is the worst case.
	grown := 48 * inch * 2 / 1000
	assert.Equal(t, inch*576/1000, mask.BuildUpFromEnd(6, grown).Worst)
	assert.Equal(t, inch*288/1000, mask.BuildUpFromCentre(6, grown).Worst)
}
