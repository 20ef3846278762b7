package setout_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// at is a length given in millimetres to any number of decimals.
func at(millimetres float64) measure.Length { return measure.Length(math.Round(millimetres * 1e6)) }

func outline(form survey.Form, millimetres ...float64) survey.Shape {
	points := make([]survey.Point, len(millimetres)/2)
	for i := range points {
		points[i] = survey.Point{X: at(millimetres[2*i]), Y: at(millimetres[2*i+1])}
	}
	return survey.ShapeFromCorners(form, points)
}

var (
	// skew is the room of four sides 4115, 3048, 4102, 3061 mm with the diagonal
	// AC 5120: C and D worked out by the law of cosines and by the crossing of
	// two circles, to nine decimals.
	skew = outline(survey.Lines, 0, 0, 4115, 0, 4113.890765492, 3047.999798163, 11.911292508, 3060.976824661)
	// ell is an L, its inner corner at E.
	ell = outline(survey.Points, 0, 0, 6000, 0, 6000, 2000, 2500, 2000, 2500, 5000, 0, 5000)
	// chamfered is 5 × 4 m with a corner splayed at 45°.
	chamfered = outline(survey.Points, 0, 0, 4000, 0, 5000, 1000, 5000, 4000, 0, 4000)
)

// near holds a length against one in millimetres to nine decimals: both ends of
// it are rounded to the nanometre here, so it may be off by two.
func near(t *testing.T, want float64, got measure.Length, what ...any) {
	t.Helper()
	assert.InDelta(t, want, float64(got)/1e6, 2.1e-6, what...)
}

var pattern = mask.Outline{Length: 3600 * mm, Width: 2600 * mm}

// The mean of the corners, the centre line's direction and length, and the
// eight borders of a pattern of 3600 × 2600 at that centre, parallel to AB and
// along the centre line: law of cosines, circle crossing and double precision
// agree (worked two ways).
func TestPlace_InASkewRoom(t *testing.T) {
	twice := skew.TwiceCentre()
	near(t, 2060.200514500, twice.X/2)
	near(t, 1527.244155706, twice.Y/2)
	start, end, _ := skew.MidLine(survey.DA)
	near(t, 4108.494860124, survey.WallLine{Start: start, End: end}.Length())

	site := setout.Site{Shape: skew}
	turn, ok := site.TurnOf("room")
	require.True(t, ok)
	assert.InDelta(t, -0.090486806, math.Atan2(turn.AlongY, turn.AlongX)*180/math.Pi, 1e-8)

	for _, c := range []struct {
		square setout.Square
		want   [8]float64 // AB at A and B, BC at B and C, CD at C and D, DA at D and A
		worst  float64
	}{
		{"AB", [8]float64{227.244155706, 227.244155706, 254.716769461, 253.770572046, 221.557108487, 232.946015214, 249.196867860, 259.314267573}, 11.388906727},
		{"room", [8]float64{230.088502594, 224.403051232, 256.773127672, 251.720772392, 224.394953150, 230.098422763, 251.241121094, 257.252379961}, 6.011258867},
	} {
		box, ok := site.Place(onRoom(c.square), pattern, 0)
		require.True(t, ok)
		layout := site.Borders(box)
		require.Len(t, layout.Places, 8)
		walls, ends := []survey.Wall{"AB", "BC", "CD", "DA"}, []survey.Corner{"A", "B", "B", "C", "C", "D", "D", "A"}
		for i, p := range layout.Places {
			near(t, c.want[i], p.Length, "square to %s: %+v", c.square, p)
			assert.Equal(t, walls[i/2], p.Wall)
			assert.Equal(t, ends[i], p.Corner)
			assert.Equal(t, ends[i], p.Own)
		}
		worst, ok := layout.Worst()
		require.True(t, ok)
		near(t, c.worst, worst.By())
		near(t, min(c.want[0], c.want[1]), layout.Sides.AB, "a side's border is the smaller of its ends")
		near(t, min(c.want[6], c.want[7]), layout.Sides.DA)
	}
}
