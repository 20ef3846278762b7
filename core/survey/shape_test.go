package survey_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// ell is a room of 5 × 4 m with a corner of 2 × 1.5 m cut out at C.
var ell = survey.ShapeFromCorners(survey.Points, []survey.Point{
	{}, {X: 5000 * mm}, {X: 5000 * mm, Y: 2500 * mm}, {X: 3000 * mm, Y: 2500 * mm}, {X: 3000 * mm, Y: 4000 * mm}, {Y: 4000 * mm}})

func TestShape_Ell(t *testing.T) {
	require.True(t, ell.Usable())
	assert.Equal(t, "17", ell.Area().SquareMetres.RoundHalfEven(0).String(), "20 less 3")
	assert.Zero(t, ell.Area().SquareMetres.Cmp(measure.NumberFromInt(17)))
	assert.Equal(t, 18000*mm, ell.Perimeter(), "as long as without the cut")
	assert.False(t, ell.IsConvex())
	assert.False(t, ell.IsRectangle())
	assert.Equal(t, survey.Point{X: 5000 * mm, Y: 4000 * mm}, ell.TwiceCentre(), "the middle of its bounds, doubled")
	var names []survey.Wall
	for _, w := range ell.Walls() {
		names = append(names, w.Name)
	}
	assert.Equal(t, []survey.Wall{"AB", "BC", "CD", "DE", "EF", "FA"}, names)
	w, ok := ell.Wall("FA")
	assert.True(t, ok)
	assert.Equal(t, survey.WallLine{Name: "FA", From: "F", To: "A", Start: survey.Point{Y: 4000 * mm}}, w)
	for _, name := range []survey.Wall{"AC", "FG", "A", "", "ab", "BA"} {
		_, ok = ell.Wall(name)
		assert.False(t, ok, name)
	}
	x, y, ok := ell.DirectionOf("CD")
	assert.True(t, ok)
	assert.Equal(t, []float64{-1, 0}, []float64{x, y}, "exact along an axis")
	_, _, ok = ell.MidLine("AB")
	assert.False(t, ok, "no opposite wall among six")
	for _, c := range []struct {
		x, y   measure.Length
		inside bool
		clear  measure.Length
	}{
		{1000, 1000, true, 1000}, {4000, 3000, false, -500}, {3000, 3000, true, 0}, {2900, 3000, true, 100}, {0, 0, true, 0}, {2500, 2000, true, 707_106_781},
		{-300, -400, false, -500}, {5000, 2500, true, 0}, {6000, 2500, false, -1000}, {-1, 4000, false, -1},
	} {
		p := survey.Point{X: c.x * mm, Y: c.y * mm}
		assert.Equal(t, c.inside, ell.Contains(p), "%v", p)
		if c.clear < 100000 {
			c.clear *= mm
		}
		assert.Equal(t, c.clear, ell.Clearance(p), "%v", p)
	}
}

func TestShape_Rectangle(t *testing.T) {
	assert.True(t, rectangle.IsRectangle())
	assert.True(t, rectangle.IsConvex())
	assert.Equal(t, survey.Point{X: supper.Length, Y: supper.Width}, rectangle.TwiceCentre())
	from, to, ok := rectangle.MidLine(survey.DA)
	assert.True(t, ok)
	assert.Equal(t, []survey.Point{{Y: supper.Width / 2}, {X: supper.Length, Y: supper.Width / 2}}, []survey.Point{from, to})
	for _, none := range []survey.Shape{{}, survey.ShapeFromSides(survey.Round, 0, foot), survey.ShapeFromSides(survey.Rectangle, foot, measure.Longest+1),
		survey.ShapeFromCorners(survey.Points, make([]survey.Point, 2)), survey.ShapeFromCorners(survey.Points, make([]survey.Point, 27))} {
		assert.False(t, none.Usable())
		assert.False(t, none.Contains(survey.Point{}))
		assert.Zero(t, none.Clearance(survey.Point{}))
		assert.Zero(t, none.Perimeter())
	}
	// The exact area of a room of 100 m, 1e22 nm², takes more than 64 bits.
	largest := survey.ShapeFromSides(survey.Rectangle, measure.Longest, measure.Longest)
	assert.Zero(t, largest.Area().SquareMetres.Cmp(measure.NumberFromInt(10000)))
	assert.True(t, largest.Contains(survey.Point{X: measure.Longest, Y: measure.Longest}))
	assert.False(t, largest.Contains(survey.Point{X: measure.Longest + 1, Y: measure.Longest}))
}

// Whether a point is in a polygon, by the sum of the angles under which it sees
// the walls: another way than the one in the shape.
func TestShape_ContainsAgainstAngles(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	for range 100 {
		var corners []survey.Point
		count := 3 + random.Intn(9)
		for i := range count {
			angle, far := (float64(i)+0.8*random.Float64())/float64(count)*2*math.Pi, 500+3000*random.Float64()
			corners = append(corners, survey.Point{X: inMM(far * math.Cos(angle)), Y: inMM(far * math.Sin(angle))})
		}
		s := survey.ShapeFromCorners(survey.Points, corners)
		for range 10 {
			p := survey.Point{X: inMM(7000*random.Float64() - 3500), Y: inMM(7000*random.Float64() - 3500)}
			sum, nearest := 0.0, math.Inf(1)
			for _, w := range s.Walls() {
				ax, ay, bx, by := float64(w.Start.X-p.X), float64(w.Start.Y-p.Y), float64(w.End.X-p.X), float64(w.End.Y-p.Y)
				sum += math.Atan2(ax*by-ay*bx, ax*bx+ay*by)
				for k := range 401 {
					share := float64(k) / 400
					nearest = min(nearest, math.Hypot(ax+share*(bx-ax), ay+share*(by-ay)))
				}
			}
			inside := math.Abs(sum) > math.Pi
			require.Equal(t, inside, s.Contains(p))
			require.Equal(t, inside, s.Clearance(p) > 0)
			require.InDelta(t, nearest, math.Abs(float64(s.Clearance(p))), nearest*1e-2+10e6, "against points along the walls")
		}
	}
}

func TestShape_Round(t *testing.T) {
	circle := survey.ShapeFromSides(survey.Round, 4*measure.Metre, 4*measure.Metre)
	assert.InDelta(t, 4*math.Pi, circle.Area().SquareMetres.Float(), 1e-12)
	assert.InDelta(t, 4000*math.Pi*1e6, float64(circle.Perimeter()), 1)
	assert.Empty(t, circle.Walls())
	assert.True(t, circle.IsConvex())
	assert.Equal(t, survey.Point{X: 4000 * mm, Y: 4000 * mm}, circle.TwiceCentre())
	assert.True(t, circle.Contains(survey.Point{X: 0, Y: 2000 * mm}))
	assert.False(t, circle.Contains(survey.Point{X: 500 * mm, Y: 500 * mm}), "the corner of its square")
	// (600, 800) from the middle is 1000 from it, (1800, 2400) is 3000.
	assert.Equal(t, 1000*mm, circle.Clearance(survey.Point{X: 2600 * mm, Y: 2800 * mm}))
	assert.Equal(t, -1000*mm, circle.Clearance(survey.Point{X: 3800 * mm, Y: 4400 * mm}))
	_, ok := circle.Corner("A")
	assert.False(t, ok)

	for _, c := range []struct {
		source            string
		a, b, way, within float64
	}{
		// 4 a E(e) from tables of the complete elliptic integral, from memory:
		// E(√3/2) = 1.2110560275684594.
		{"4 × 2000 × E(√3/2)", 2000, 1000, 8000 * 1.2110560275684594, 1e-6},
		{"as flat as a line: there and back", 50000, 0.0000005, 200000, 1e-3},
		{"circle", 1500, 1500, 3000 * math.Pi, 1e-6},
	} {
		s := survey.ShapeFromSides(survey.Round, inMM(2*c.a), inMM(2*c.b))
		assert.InDelta(t, c.way, float64(s.Perimeter())/1e6, c.within, c.source)
	}
	for _, c := range [][2]float64{{2000, 1000}, {3000, 2900}, {5000, 700}, {9000, 300}, {1200, 4800}} {
		s := survey.ShapeFromSides(survey.Round, inMM(2*c[0]), inMM(2*c[1]))
		got := float64(s.Perimeter()) / 1e6
		// The trapezoid rule converges faster than any power for a closed curve.
		sum, steps := 0.0, 1<<14
		for i := range steps {
			sine, cosine := math.Sincos(2 * math.Pi * float64(i) / float64(steps))
			sum += math.Hypot(c[0]*sine, c[1]*cosine)
		}
		assert.InDelta(t, sum*2*math.Pi/float64(steps), got, 2e-6, "numeric integration, %v", c)
		// Ramanujan 1914, from memory; his second formula falls short by about
		// 3 h⁵ ÷ 2¹⁷ of π (a + b), and by more than that where it is flat.
		h := math.Pow((c[0]-c[1])/(c[0]+c[1]), 2)
		ramanujan := math.Pi * (c[0] + c[1]) * (1 + 3*h/(10+math.Sqrt(4-3*h)))
		if h < 0.4 {
			assert.InDelta(t, ramanujan, got, math.Pi*(c[0]+c[1])*6*math.Pow(h, 5)/(1<<17)+2e-6, "Ramanujan, %v", c)
		}
		assert.InDelta(t, math.Pi*c[0]*c[1]/1e6, s.Area().SquareMetres.Float(), 1e-9)
	}
}

// The distance to an ellipse against the nearest of very many points on it.
func TestShape_RoundClearance(t *testing.T) {
	random := rand.New(rand.NewSource(3))
	for range 60 {
		a, b := 500+4000*random.Float64(), 500+4000*random.Float64()
		s := survey.ShapeFromSides(survey.Round, inMM(2*a), inMM(2*b))
		a, b = float64(s.Length)/2e6, float64(s.Width)/2e6
		px, py := (2.6*random.Float64()-0.3)*a, (2.6*random.Float64()-0.3)*b
		switch random.Intn(6) {
		case 0:
			px = a
		case 1:
			py = b
		}
		nearest := math.Inf(1)
		for i := range 20000 {
			sine, cosine := math.Sincos(2 * math.Pi * float64(i) / 20000)
			nearest = min(nearest, math.Hypot(a+a*cosine-px, b+b*sine-py))
		}
		p := survey.Point{X: inMM(px), Y: inMM(py)}
		require.InDelta(t, nearest, math.Abs(float64(s.Clearance(p)))/1e6, 1e-2, "%v of %v × %v", p, a, b)
		require.LessOrEqual(t, math.Abs(float64(s.Clearance(p)))/1e6, nearest+1e-5)
		require.Equal(t, s.Contains(p), s.Clearance(p) >= 0)
	}
}

func TestCornerNumbered(t *testing.T) {
	assert.Equal(t, survey.Corner("A"), survey.CornerNumbered(0))
	assert.Equal(t, survey.Corner("Z"), survey.CornerNumbered(25))
	assert.Equal(t, survey.Corner(""), survey.CornerNumbered(26))
	assert.Equal(t, survey.Corner(""), survey.CornerNumbered(-1))
	for i := range 26 {
		assert.Equal(t, i, survey.CornerNumbered(i).Number())
	}
	for _, none := range []survey.Corner{"", "AB", "a", "Ä", "1"} {
		assert.Equal(t, -1, none.Number())
	}
}
