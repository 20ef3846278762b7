package finish

import (
	"testing"

	"ceilingwright/core/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRollsFor(t *testing.T) {
	const roll = 180 * measure.Foot // 60 yd
	for _, c := range []struct {
		feet  measure.Length
		waste string
		want  int64
		left  string // ft
		why   string
	}{
		{108, "0.10", 1, "61.2", "worked: two lines round a room of 12 × 15 ft, 118.8 ft"},
		{109, "0", 1, "71", "a guide to wall stencils: one layer of 4 × 3 panels"},
		{218, "0", 2, "142", "the same, two layers"},
		{180, "0", 1, "0", "exactly one roll"},
		{0, "0.10", 0, "0", "nothing to tape"},
	} {
		rolls, problems, ok := RollsFor(Tape{Length: c.feet * measure.Foot, Waste: num(c.waste), Roll: roll})
		require.True(t, ok)
		assert.Empty(t, problems)
		assert.Equal(t, c.want, rolls.Count, c.why)
		isRounded(t, c.left, rolls.Left.Quo(num("0.3048")), c.why)
	}
	// A leaf specification sheet's roll of 69 ft serves a band round a box of
	// 171 × 139 in with 17′ 4″ to spare.
	rolls, _, _ := RollsFor(Tape{Length: 620 * measure.Inch, Roll: 69 * measure.Foot})
	assert.Equal(t, int64(1), rolls.Count)
	isRounded(t, "208/1", rolls.Left.Quo(num("0.0254")), "left, in inches")
}

func TestRollsForRefuses(t *testing.T) {
	_, problems, ok := RollsFor(Tape{Length: -1, Waste: num("1.5")})
	assert.False(t, ok)
	assert.Equal(t, []string{"", "/rollLength", "/waste"}, places(problems))
	for _, p := range problems {
		isSentence(t, p)
	}
}
