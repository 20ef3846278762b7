package survey_test

import (
	"math"
	"math/rand"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

var fourByThree = survey.ShapeFromSides(survey.Rectangle, 4000*mm, 3000*mm)

func fromCorners(one survey.Corner, fromOne float64, two survey.Corner, fromTwo float64, side survey.Corner) survey.Fixture {
	return survey.Fixture{At: survey.FromCorners, CornerOne: one, FromOne: inMM(fromOne), CornerTwo: two, FromTwo: inMM(fromTwo), Side: side}
}

func TestFixture_FromCorners(t *testing.T) {
	for _, c := range []struct {
		name    string
		fixture survey.Fixture
		x, y    float64
	}{
		// 3-4-5 triangles: (1600, 1200) is 2000 from A and √(2400² + 1200²) from B.
		{"one place in the room", fromCorners("A", 2000, "B", math.Hypot(2400, 1200), ""), 1600, 1200},
		{"the same from C and D", fromCorners("C", math.Hypot(2400, 1800), "D", math.Hypot(1600, 1800), ""), 1600, 1200},
		{"the other way round", fromCorners("B", math.Hypot(2400, 1200), "A", 2000, ""), 1600, 1200},
		// Across a diagonal two places are in the room, mirrored in it.
		{"on B's side of WY", fromCorners("A", 2500, "C", 2600, "B"), 2446.1056, 516.5792},
		{"on D's side of WY", fromCorners("A", 2500, "C", 2600, "D"), 1464.8944, 2025.8741},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := c.fixture.Middle(fourByThree)
			require.True(t, ok)
			if c.fixture.Side != "" {
				// Worked back: the distances must come out again, on that side.
				assert.InDelta(t, float64(c.fixture.FromOne), math.Hypot(float64(got.X), float64(got.Y)), 2)
				assert.InDelta(t, float64(c.fixture.FromTwo), math.Hypot(float64(4000*mm-got.X), float64(3000*mm-got.Y)), 2)
				assert.Equal(t, c.fixture.Side == "B", 3*got.X > 4*got.Y)
				return
			}
			near(t, c.x, mm, got.X, "x")
			near(t, c.y, mm, got.Y, "y")
		})
	}
}

func TestFixture_CheckFromCorners(t *testing.T) {
	for _, c := range []struct {
		name, at, what string
		severity       problem.Severity
		fixture        survey.Fixture
	}{
		{"both places in the room", "/side", "Two places in the room are as far from corners W and Y.", problem.Stop, fromCorners("A", 2500, "C", 2600, "")},
		{"side on the line itself", "/side", "Corner W lies on the line between the two corners and tells no side.", problem.Stop, fromCorners("A", 2500, "C", 2600, "A")},
		{"too short", "/fromTwo", "From corner W and from corner X the tapes reach 3.900 m together, but the corners are 4.000 m apart: they cannot meet.", problem.Stop, fromCorners("A", 1900, "B", 2000, "")},
		{"one too long", "/fromTwo", "The two distances differ by 4.100 m, but corners W and X are only 4.000 m apart: the tapes cannot meet.", problem.Stop, fromCorners("A", 5000, "B", 900, "")},
		{"outside", "/fromOne", "The light lies 1.000 m outside the room.", problem.Stop, fromCorners("A", math.Hypot(2000, 4000), "B", math.Hypot(2000, 4000), "")},
		{"no such corner", "/cornerOne", "The room has no such corner to measure from.", problem.Stop, fromCorners("E", 2000, "B", 3000, "")},
		{"twice the same corner", "/cornerTwo", "A place takes two different corners to measure from.", problem.Stop, fromCorners("A", 2000, "A", 3000, "")},
		{"first not measured", "/fromOne", "The distance from corner W to the middle of the light is not given.", problem.Stop, fromCorners("A", 0, "B", 3000, "")},
		{"second not measured", "/fromTwo", "The distance from corner X to the middle of the light is not given.", problem.Stop, fromCorners("A", 2000, "B", 0, "")},
		{"tapes nearly in line", "/fromTwo", "The tapes from corners W and X cross so flat that a slip of one moves the place three times as far.", problem.Caution, fromCorners("A", 2010, "B", 2010, "")},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.fixture.CheckIn(fourByThree)
			require.NotEmpty(t, got)
			assert.Equal(t, c.at, got[0].At)
			assert.Equal(t, c.what, got[0].What.In(inMetric))
			assert.Equal(t, c.severity, got[0].Severity)
			if _, ok := c.fixture.Middle(fourByThree); c.severity == problem.Stop {
				assert.False(t, ok, "what is refused has no place")
			}
		})
	}
}

// In a room that is not square the distances off two walls are still square to
// each wall: in Q6, 1000 off DA and 700 off AB, worked back with the distance of a
// point from a line.
func TestFixture_MeasuredInASkewRoom(t *testing.T) {
	hall := read(mm, 4115, 3048, 4102, 3061, 5120).Find(measure.Metric).Shape
	fixture := survey.Fixture{At: survey.Measured, FromDA: 1000 * mm, FromAB: 700 * mm, Across: 300 * mm}
	got, ok := fixture.Middle(hall)
	require.True(t, ok)
	assert.Equal(t, 700*mm, got.Y, "WX lies along x")
	d := hall.Corners[3]
	dx, dy := float64(d.X), float64(d.Y)
	assert.InDelta(t, 1e9, (float64(got.X)*dy-float64(got.Y)*dx)/math.Hypot(dx, dy), 2)
	da, _ := hall.Wall(survey.DA)
	assert.InDelta(t, 1e9, float64(da.Off(got)), 2)
	assert.Empty(t, fixture.CheckIn(hall))
	fixture.FromDA = 4500 * mm
	assert.Equal(t, "/fromDA", fixture.CheckIn(hall)[0].At)
	fixture.FromDA, fixture.FromAB = 100*mm, 100*mm
	assert.Equal(t, "The light is 300 mm across and its centre 100 mm from the wall, so it would reach into it.", fixture.CheckIn(hall)[0].What.In(inMetric))

	// Where the two walls at A make one line they tell no place.
	flat := survey.ShapeFromCorners(survey.Points, []survey.Point{{}, {X: 4000 * mm}, {X: 2000 * mm, Y: 3000 * mm}, {X: -3000 * mm, Y: 10 * mm}})
	assert.Equal(t, "Wall ZW and wall WX lie so nearly on one line that distances off them tell no place.",
		survey.Fixture{At: survey.Measured, FromDA: 500 * mm, FromAB: 500 * mm}.CheckIn(flat)[0].What.In(inMetric))
}

func TestFixture_Axis(t *testing.T) {
	fixture := survey.Fixture{At: survey.Measured, FromDA: 1000 * mm, FromAB: 1000 * mm, Rectangular: true, Across: 600 * mm, Deep: 300 * mm}
	x, y, given := fixture.Axis(fourByThree)
	assert.Equal(t, []float64{1, 0}, []float64{x, y})
	assert.False(t, given)
	fixture.AxisDA, fixture.AxisAB = 1800*mm, 1600*mm
	x, y, given = fixture.Axis(fourByThree)
	assert.True(t, given)
	assert.InDelta(t, 0.8, x, 1e-15)
	assert.InDelta(t, 0.6, y, 1e-15)
	// Its corner lies √(300² + 150²) from the middle, turned: 150 × 0.8 + 300 ×
	// 0.6 = 300 across, so it just fits 300 off a wall.
	fixture.FromAB, fixture.AxisAB = 300*mm, 900*mm
	assert.Empty(t, fixture.CheckIn(fourByThree))
	fixture.FromAB, fixture.AxisAB = 299*mm, 899*mm
	assert.Equal(t, "With its size the light would reach 1 mm into the wall.", fixture.CheckIn(fourByThree)[0].What.In(inMetric))
	fixture.Deep = 0
	assert.Equal(t, "/deep", fixture.CheckIn(fourByThree)[0].At)
}

func TestObstruction_CheckIn(t *testing.T) {
	hatch := survey.Obstruction{Name: "attic", Kind: survey.Hatch, Fixture: survey.Fixture{At: survey.Measured, FromDA: 5000 * mm, FromAB: 1000 * mm}}
	assert.Equal(t, []problem.Problem{{At: "/fromDA", Severity: problem.Stop,
		What: words.Say("The hatch “attic” is 5.000 m from wall ZW, but wall XY is only 4.000 m away, so it lies 1.000 m outside the room."),
		Do:   words.Say("Measure again from wall ZW to the centre of the hatch “attic”.")}}, said(metric, hatch.CheckIn(fourByThree)))
	beam := survey.Obstruction{Kind: survey.Beam, Fixture: survey.Fixture{At: survey.Measured, FromDA: 2000 * mm, FromAB: 1500 * mm, Rectangular: true, Across: 200 * mm, Deep: 3100 * mm}}
	assert.Empty(t, beam.CheckIn(fourByThree), "a beam runs into the walls")
	beam.Kind = survey.OtherKind
	assert.Equal(t, "The obstruction reads 3.100 m deep, wider than the room.", beam.CheckIn(fourByThree)[0].What.In(inMetric))
	assert.Empty(t, survey.Obstruction{}.CheckIn(fourByThree))
}

// A place in a crooked room, found again from its distances off the walls and
// from any two corners.
func TestFixture_FoundAgain(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	for range 300 {
		q := crooked(random)
		s := survey.ShapeFromCorners(survey.Lines, q)
		centre := s.TwiceCentre()
		spread := func() measure.Length { return measure.Length((random.Float64() - 0.5) * 1.4e9) }
		p := survey.Point{X: centre.X/2 + spread(), Y: centre.Y/2 + spread()}
		require.True(t, s.Contains(p))
		da, _ := s.Wall(survey.DA)
		ab, _ := s.Wall(survey.AB)
		got, ok := survey.Fixture{At: survey.Measured, FromDA: da.Off(p), FromAB: ab.Off(p)}.Middle(s)
		require.True(t, ok)
		require.InDelta(t, float64(p.X), float64(got.X), 3)
		require.InDelta(t, float64(p.Y), float64(got.Y), 3)
		one, two := random.Intn(4), 0
		for two = random.Intn(4); two == one; two = random.Intn(4) {
		}
		f := fromCorners(survey.CornerNumbered(one), far(q[one], p), survey.CornerNumbered(two), far(q[two], p), "")
		for _, corner := range q {
			if turn(q[one], q[two], corner) != 0 && (turn(q[one], q[two], corner) > 0) == (turn(q[one], q[two], p) > 0) {
				f.Side = survey.CornerNumbered(index(q, corner))
			}
		}
		if f.CheckIn(s) != nil {
			continue // tapes nearly in line
		}
		got, ok = f.Middle(s)
		require.True(t, ok)
		require.InDelta(t, float64(p.X), float64(got.X), 20)
		require.InDelta(t, float64(p.Y), float64(got.Y), 20)
	}
}

func far(p, q survey.Point) float64 { return math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y)) / 1e6 }

func turn(p, q, r survey.Point) float64 {
	return float64(q.X-p.X)*float64(r.Y-p.Y) - float64(q.Y-p.Y)*float64(r.X-p.X)
}

func index(list []survey.Point, p survey.Point) int {
	for i := range list {
		if list[i] == p {
			return i
		}
	}
	return -1
}
