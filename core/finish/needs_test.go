package finish

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func TestNeedsOf(t *testing.T) {
	needs, ok := NeedsOf(litres("4.6"), Vary{Share: num("0.15")})
	require.True(t, ok)
	assert.Zero(t, needs.Lean.Litres.Cmp(num("4")))
	assert.Zero(t, needs.Likely.Litres.Cmp(num("4.6")))
	assert.InDelta(t, 4.6/0.85, needs.Rich.Litres.Float(), 1e-12)
	same, ok := NeedsOf(litres("4.6"), Vary{})
	require.True(t, ok)
	assert.Equal(t, same.Lean, same.Rich)
	for _, vary := range []string{"1", "1.2"} {
		_, ok = NeedsOf(litres("1"), Vary{Share: num(vary)})
		assert.False(t, ok)
	}
	_, ok = NeedsOf(litres("1"), Vary{Share: num("0").Sub(num("0.1"))})
	assert.False(t, ok)
}

// A fifth more paint on 300 ft²/gal is 250 ft²/gal, a fifth less cover 240: 600
// ft² take 2 gal, then 2.4 or 2.5. Worked.
func TestMorePaintIsNotLessCover(t *testing.T) {
	for _, c := range []struct {
		ofPaint          bool
		lean, rich, rate string
	}{{false, "5/3", "5/2", "240"}, {true, "8/5", "12/5", "250"}} {
		likely := takeOff(t, Paint{Area: sqft("600"), Coats: 1, Spread: perGallon("300")}).Need
		needs, ok := NeedsOf(likely, Vary{num("0.2"), c.ofPaint})
		require.True(t, ok)
		isRounded(t, c.lean, needs.Lean.Gallons(), "if it spreads well")
		isRounded(t, c.rich, needs.Rich.Gallons(), "if it spreads badly")
		isRounded(t, c.rate, num("600").Quo(needs.Rich.Gallons()), "ft²/gal")
	}
}

// One batch is cans of one size: 7.3 L is cheapest as 5 + 2.5 for 76, and in one
// size as 3 × 2.5 L for 84, before 1 × 10 L for 85 and 2 × 5 L for 96. The sizes
// and prices are those of a trade example of tin sizes.
func TestOneBatch(t *testing.T) {
	cans := []Can{CanOf(num("2.5"), "L").At(decimal.RequireFromString("28")), CanOf(num("5"), "L").At(decimal.RequireFromString("48")), CanOf(num("10"), "L").At(decimal.RequireFromString("85"))}
	purchase, _, ok := OneBatch(litres("7.3"), cans)
	require.True(t, ok)
	assert.Equal(t, []int64{3, 0, 0}, purchase.Counts)
	assert.Equal(t, "84", purchase.Price.String())
	assert.Equal(t, int64(3), purchase.Cans)
	assert.Zero(t, purchase.Left.Litres.Cmp(num("0.2")))
	purchase, _, ok = OneBatch(litres("7.6"), cans)
	require.True(t, ok)
	assert.Equal(t, []int64{0, 0, 1}, purchase.Counts, "85 before 4 × 28 and 2 × 48")
}

func TestOneBatchWithoutPrices(t *testing.T) {
	purchase, problems, ok := OneBatch(litres("7.3"), []Can{CanOf(num("2.5"), "L"), CanOf(num("5"), "L").At(decimal.RequireFromString("48"))})
	require.True(t, ok)
	assert.Equal(t, []int64{3, 0}, purchase.Counts, "0.2 L over before 2.7 L")
	assert.False(t, purchase.Priced)
	assert.NotEmpty(t, problems)
	_, problems, ok = OneBatch(litres("1"), nil)
	assert.False(t, ok)
	assert.Len(t, problems, 1)
	none, _, ok := OneBatch(litres("0"), []Can{CanOf(num("2.5"), "L")})
	assert.True(t, ok)
	assert.Zero(t, none.Cans)
}

// One batch never costs less than the cheapest cans, holds the need, and is of
// one size.
func TestOneBatchIsOneSize(t *testing.T) {
	for _, cans := range [][]Can{usCans(), metricCans()} {
		for tenths := int64(1); tenths < 400; tenths += 7 {
			want := measure.Volume{Litres: measure.NumberFromFraction(tenths, 10)}
			one, _, ok := OneBatch(want, cans)
			require.True(t, ok)
			any, _, _ := CheapestCans(want, cans)
			require.GreaterOrEqual(t, one.Price.Cmp(any.Price), 0)
			require.GreaterOrEqual(t, one.Bought.Litres.Cmp(want.Litres), 0)
			sizes := 0
			for _, n := range one.Counts {
				if n > 0 {
					sizes++
				}
			}
			require.Equal(t, 1, sizes)
		}
	}
}
