package finish

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func squareFeet(a measure.Area) float64 { return a.SquareMetres.Quo(measure.SquareFoot).Float() }

func TestWallArea(t *testing.T) {
	door, window := Opening{7 * measure.Foot, 3 * measure.Foot, 2}, Opening{5 * measure.Foot, 3 * measure.Foot, 2}
	for _, row := range []struct {
		wall   Wall
		want   float64
		source string
	}{
		{Wall{50 * measure.Foot, 8 * measure.Foot, []Opening{door, window}}, 328, "an almanac's paint page: 10 × 15 ft, 8 ft high, two doors of 21, two windows of 15 ft²"},
		{Wall{52 * measure.Foot, 9 * measure.Foot, []Opening{{9 * measure.Foot, 5 * measure.Foot, 1}}}, 423, "a home-repair worksheet: 12 × 14 ft, 9 ft high, 45 ft² of openings"},
		{Wall{52 * measure.Foot, 8 * measure.Foot, []Opening{door, {5 * measure.Foot, 3 * measure.Foot, 1}}}, 359, "a paint maker's coverage page: 12 × 14 × 8 ft, two doors of 21, a window of 15 ft²"},
		{Wall{56 * measure.Foot, 8 * measure.Foot, nil}, 448, "a painter's job-cost article: 12 × 16 × 8 ft"},
	} {
		area, problems, ok := row.wall.Area()
		require.True(t, ok && len(problems) == 0)
		assert.InDelta(t, row.want, squareFeet(area), 1e-9, row.source)
	}
	_, problems, ok := Wall{10 * measure.Foot, 8 * measure.Foot, []Opening{{10 * measure.Foot, 8 * measure.Foot, 1}}}.Area()
	assert.False(t, ok, "nothing is left of the wall")
	require.Len(t, problems, 1)
	assert.Equal(t, "/openings", problems[0].At)
	_, problems, ok = Wall{Run: 10 * measure.Foot}.Area()
	assert.False(t, ok)
	assert.Empty(t, problems, "that the height is missing is said where it is missing")
}

// Run times girth, and a girth more for each mitre: common practice, no source.
func TestCorniceArea(t *testing.T) {
	area, ok := Cornice{Run: 60 * measure.Foot, Girth: 6 * measure.Inch}.Area()
	require.True(t, ok)
	assert.InDelta(t, 30, squareFeet(area), 1e-12)
	area, ok = Cornice{Run: 60 * measure.Foot, Girth: 6 * measure.Inch, Corners: 4}.Area()
	require.True(t, ok)
	assert.InDelta(t, 31, squareFeet(area), 1e-12)
	_, ok = Cornice{Run: 60 * measure.Foot}.Area()
	assert.False(t, ok)
}
