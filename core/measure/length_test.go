package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Values by hand: 1/64 in is 0.396 875 mm, a whole count of nanometres.
func TestMillimetresAndBack(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		want Length
	}{
		{0.396875, Inch / 64}, {-25.4, -Inch}, {0.0000004, 0}, {0.0000005, 1}, {-0.0000005, -1}, {4115.0000000004, 4115 * Millimetre},
		{math.NaN(), -1 << 52}, {math.Inf(1), 1 << 52}, {math.Inf(-1), -1 << 52},
	} {
		assert.Equal(t, c.want, LengthFromMillimetres(c.mm), "%g mm", c.mm)
	}
	for _, l := range []Length{0, 1, -1, Inch / 64, 123_456_789_012, Longest} {
		assert.Equal(t, l, LengthFromMillimetres(l.Millimetres()), "%d nm", l)
	}
}
