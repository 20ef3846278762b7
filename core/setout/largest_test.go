package setout_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func all(l measure.Length) setout.Borders { return borders(l, l, l, l) }

// In a rectangle the largest mask is the room less the borders (room −
// pattern, halved, turned round), and the order helper gives the same.
func TestLargest_InARectangle(t *testing.T) {
	site := siteOf(survey.Room{Length: 4115 * mm, Width: 3061 * mm}, survey.Fixture{At: survey.Measured, FromDA: 2000 * mm, FromAB: 1600 * mm})
	for _, c := range []struct {
		way         setout.Way
		border      setout.Borders
		long, wide  measure.Length
		description string
	}{
		{onRoom("room"), all(0), 4115 * mm, 3061 * mm, "all of the room"},
		{onRoom("room"), all(100 * mm), 3915 * mm, 2861 * mm, "100 all round"},
		{onRoom("room"), borders(50*mm, 200*mm, 50*mm, 200*mm), 3715 * mm, 2961 * mm, "200 at the ends, 50 at the sides"},
		{onRoom("room"), borders(50*mm, 200*mm, 80*mm, 100*mm), 3715 * mm, 2901 * mm, "centred, the larger of two holds"},
		{onFixture("room"), all(100 * mm), 3800 * mm, 2722 * mm, "2000 from ZW and 1461 from YZ, less 100, twice"},
		{setout.Way{On: "room", Square: "room", Turned: true}, borders(50*mm, 200*mm, 50*mm, 200*mm), 2961 * mm, 3715 * mm, "turned"},
	} {
		got, ok := site.Largest(c.way, c.border)
		require.True(t, ok, c.description)
		assert.Equal(t, mask.Outline{Length: c.long, Width: c.wide}, got, c.description)
	}
	_, ok := site.Largest(onRoom("room"), all(2*measure.Metre))
	assert.False(t, ok, "no room is left")
}

// A square room cut by a splayed corner: on its middle the limit is that half
// of both sides together reaches the splay. Worked by hand: the middle of a
// square of 4 m with a corner off by 1 m each way keeps (4 + 4 − 1 − 2 − 2)/√2
// from the splay, and half of l + w over √2 comes off that: l + w = 6 m; of all
// such the square is the largest.
func TestLargest_BesideASplay(t *testing.T) {
	site := setout.Site{Shape: outline(survey.Points, 0, 0, 4000, 0, 4000, 3000, 3000, 4000, 0, 4000), Point: setout.SpotAt(survey.Point{X: 2000 * mm, Y: 2000 * mm})}
	got, ok := site.Largest(setout.Way{On: "point", Square: "AB"}, all(0))
	require.True(t, ok)
	assert.InDelta(t, int64(3000*mm), int64(got.Length), 2)
	assert.InDelta(t, int64(3000*mm), int64(got.Width), 2)

	// A side of its own: 3.5 m wide leaves 2.5 m of length (l + w = 6 m).
	long, ok := site.LargestSide(setout.Way{On: "point", Square: "AB"}, setout.LongSide, 3500*mm, all(0))
	require.True(t, ok)
	assert.Equal(t, 4000*mm, long, "the splay lies as much along it as across and is left to the width")
}

// Whatever the room, the largest mask keeps its borders, and brute force finds
// none larger: random convex rooms, each way of centring, against a fine grid of
// lengths with the greatest width each allows by the borders themselves.
func TestLargest_IsLargest(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	for range 80 {
		site := setout.Site{Shape: randomQuad(random), Point: setout.SpotAt(survey.Point{X: 2000*mm + measure.Length(random.Intn(1000))*mm, Y: 1400*mm + measure.Length(random.Intn(500))*mm})}
		way := onRoom([]setout.Square{"room", "AB", "BC", "CD", "DA"}[random.Intn(5)])
		way.Turned = random.Intn(2) == 0
		if random.Intn(3) == 0 {
			way.On = setout.OnPoint
		}
		border := measure.Length(random.Intn(300)) * mm
		got, ok := site.Largest(way, all(border))
		require.True(t, ok)
		keeps := func(o mask.Outline) measure.Length {
			box, ok := site.Place(way, o, 0)
			require.True(t, ok)
			return site.Borders(box).Least()
		}
		require.InDelta(t, int64(border), int64(keeps(got)), 3, "it touches, and no more")
		best := area(got)
		for i := 1; i < 40; i++ {
			long := got.Length * measure.Length(i) / 30
			low, high := measure.Length(0), 8*measure.Metre
			for high-low > mm/100 {
				wide := (low + high) / 2
				if keeps(mask.Outline{Length: long, Width: wide}) >= border {
					low = wide
				} else {
					high = wide
				}
			}
			require.LessOrEqual(t, area(mask.Outline{Length: long, Width: low}), best+1e-4, "%v by %v is larger than %+v", long, low, got)
		}
	}
}

func area(o mask.Outline) float64 { return float64(o.Length) / 1e9 * float64(o.Width) / 1e9 }

// randomQuad is a room about 5 × 3.6 m, out of square as no real room is.
func randomQuad(random *rand.Rand) survey.Shape {
	off := func() float64 { return float64(random.Intn(500_000)-250_000) / 1000 }
	return outline(survey.Lines, 0, 0, 5000+off(), 0, 5000+off(), 3600+off(), off(), 3600+off())
}

// Free to move, the mask is never smaller than centred, and it fits where
// Roomiest lays it, touching.
func TestLargestAnywhere(t *testing.T) {
	random := rand.New(rand.NewSource(6))
	shapes := []survey.Shape{skew, chamfered, outline(survey.Points, 0, 0, 5000, 0, 2500, 4000)}
	for range 100 {
		shapes = append(shapes, randomQuad(random))
	}
	for _, shape := range shapes {
		site := setout.Site{Shape: shape}
		for _, square := range []setout.Square{"room", "AB"} {
			turn, _ := site.TurnOf(square)
			border := measure.Length(random.Intn(200)) * mm
			most, ok := site.LargestAnywhere(turn, all(border))
			require.True(t, ok)
			box, least := site.Roomiest(most, turn, 0)
			require.InDelta(t, int64(border), int64(least), 5e6, "within what is given up to be even")
			_, tight := site.Roomiest(most, turn, border-10)
			require.InDelta(t, int64(border), int64(tight), 20, "%+v", box)
			centred, ok := site.Largest(onRoom(square), all(border))
			if ok && len(shape.Corners) == 4 {
				require.GreaterOrEqual(t, area(most), area(centred)-1e-9)
			}
		}
	}
	// The largest rectangle in a triangle is half of it, half as high (known
	// since Euclid's time; textbook geometry).
	triangle := setout.Site{Shape: shapes[2]}
	turn, _ := triangle.TurnOf("AB")
	most, ok := triangle.LargestAnywhere(turn, all(0))
	require.True(t, ok)
	assert.InDelta(t, int64(2500*mm), int64(most.Length), 2)
	assert.InDelta(t, int64(2000*mm), int64(most.Width), 2)
}

func TestLargest_InARoundRoom(t *testing.T) {
	circle := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 4*measure.Metre, 4*measure.Metre)}
	// The largest rectangle in a circle is the square on its diagonal: 4 m ÷ √2.
	got, ok := circle.Largest(onRoom("room"), all(0))
	require.True(t, ok)
	assert.InDelta(t, 4e9/math.Sqrt2, float64(got.Length), 200)
	assert.InDelta(t, 4e9/math.Sqrt2, float64(got.Width), 200)
	// In an ellipse each side of it is its axis ÷ √2.
	oval := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 6*measure.Metre, 3*measure.Metre)}
	got, ok = oval.Largest(onRoom("room"), all(0))
	require.True(t, ok)
	assert.InDelta(t, 6e9/math.Sqrt2, float64(got.Length), 1500)
	assert.InDelta(t, 3e9/math.Sqrt2, float64(got.Width), 1500)
	// With a border it keeps it and no grid finds a larger, also where the border
	// is wider than the curve bends at its ends (1.5² ÷ 3 = 0.75 m), and lying
	// either way.
	upright := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 3*measure.Metre, 6*measure.Metre)}
	for _, site := range []setout.Site{oval, upright} {
		for _, border := range []measure.Length{150 * mm, 900 * mm} {
			got, ok = site.Largest(onRoom("room"), all(border))
			require.True(t, ok)
			assert.InDelta(t, int64(border), int64(site.Borders(placed(t, site, setout.OnRoom, got)).Least()), 3)
			for i := 1; i < 600; i++ {
				o := mask.Outline{Length: measure.Length(i) * 10 * mm}
				o.Width, ok = site.LargestSide(onRoom("room"), setout.WideSide, o.Length, all(border))
				if !ok {
					continue
				}
				require.InDelta(t, int64(border), int64(site.Borders(placed(t, site, setout.OnRoom, o)).Least()), 3, "%v", o)
				require.LessOrEqual(t, area(o), area(got)+1e-9)
			}
		}
	}
	// A square of 2.277 m keeps 390 mm in a circle of 4 m: (2 − 0.39) × √2.
	got, ok = circle.Largest(onRoom("room"), all(390*mm))
	require.True(t, ok)
	assert.InDelta(t, 1.61e9*math.Sqrt2, float64(got.Length), 200)
	assert.InDelta(t, 1.61e9*math.Sqrt2, float64(got.Width), 200)
	_, ok = oval.Largest(onFixture("room"), all(0))
	assert.False(t, ok, "off the middle of an ellipse it is not worked out")
	// A corner 2.5 m off the middle of a circle of 5.4 m keeps 0.2 m: half the
	// width 1.5 m, half the length 2 m (3-4-5).
	circle.Shape = survey.ShapeFromSides(survey.Round, 5400*mm, 5400*mm)
	long, ok := circle.LargestSide(onRoom("room"), setout.LongSide, 3*measure.Metre, borders(0, 200*mm, 0, 200*mm))
	require.True(t, ok)
	assert.InDelta(t, int64(4*measure.Metre), int64(long), 2)
}
