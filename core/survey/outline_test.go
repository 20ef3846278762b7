package survey_test

import (
	"math"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// points is a room whose corners are given in millimetres: x, y, x, y …
func points(places ...float64) survey.Room {
	room := survey.Room{Form: survey.Points, Height: 2500 * mm}
	for i := 0; i+1 < len(places); i += 2 {
		room.Points = append(room.Points, survey.CornerReading{Point: survey.Point{X: inMM(places[i]), Y: inMM(places[i+1])}, Known: true})
	}
	return room
}

// walls is a room of walls: length in millimetres, angle in degrees, and so on; 0
// where not given.
func walls(walk ...string) survey.Room {
	room := survey.Room{Form: survey.Walls, Height: 2500 * mm}
	for i := 0; i+1 < len(walk); i += 2 {
		var w survey.WallReading
		if walk[i] != "" {
			w.Length = inMM(measure.MustNumber(walk[i]).Float())
		}
		if w.AngleKnown = walk[i+1] != ""; w.AngleKnown {
			w.Angle = measure.MustNumber(walk[i+1])
		}
		room.Walls = append(room.Walls, w)
	}
	return room
}

func TestFind_Points(t *testing.T) {
	got := points(0, 0, 5000, 0, 5000, 2500, 3000, 2500, 3000, 4000, 0, 4000).Find(measure.Metric)
	assert.Empty(t, got.Problems)
	assert.Equal(t, ell.Corners, got.Shape.Corners)
	assert.Equal(t, survey.Assumed, got.Proof)
	require.Len(t, got.Corners, 6)
	assert.Equal(t, 270.0, got.Corners[3].Degrees)
	assert.Equal(t, 270, got.Corners[3].Right)
	assert.Zero(t, got.Corners[3].Out)
	// Signed offsets stay where they were given.
	got = points(-1000, -500, 3000, -500, 3000, 2500, -1000, 2500).Find(measure.Metric)
	assert.Equal(t, survey.Point{X: -1000 * mm, Y: -500 * mm}, got.Shape.Corners[0])
	assert.Zero(t, got.Shape.Area().SquareMetres.Cmp(measure.NumberFromInt(12)))
	// A chamfer of 135° and a bay: corners that are not meant to be square.
	got = points(0, 0, 3000, 0, 4000, 1000, 4000, 3000, 0, 3000).Find(measure.Metric)
	assert.InDelta(t, 135, got.Corners[1].Degrees, 1e-9)
	assert.Zero(t, got.Corners[1].Right)
	_, ok := survey.Found{Corners: got.Corners[1:2]}.Worst()
	assert.False(t, ok)
}

func TestFind_PointsThatMakeNoRoom(t *testing.T) {
	for _, c := range []struct {
		name string
		room survey.Room
		at   string
		what string
	}{
		{"two corners", points(0, 0, 4000, 0), "/points", "The ceiling has 2 of the three corners that it takes at least."},
		{"none", points(), "/points", "The ceiling has 0 of the three corners that it takes at least."},
		{"27 corners", points(make([]float64, 54)...), "/points", "The ceiling has 27 corners; 26 are taken."},
		{"a bow tie", points(0, 0, 4000, 3000, 4000, 0, 0, 3000), "/points/2", "Walls WX and YZ cross or touch."},
		{"twice the same", points(0, 0, 4000, 0, 4000, 0, 4000, 3000), "/points/1", "Corners X and Y are at the same place."},
		{"there and back", points(0, 0, 4000, 0, 2000, 0), "/points/1", "Walls WX and XY cross or touch."},
		{"a spike", points(0, 0, 4000, 0, 4000, 3000, 5000, 3000, 0, 3000), "/points/3", "Walls XY and ZV cross or touch."},
		{"a corner on a wall", points(0, 0, 4000, 0, 4000, 3000, 2000, 0, 0, 3000), "/points/2", "Walls WX and YZ cross or touch."},
		{"anticlockwise", points(0, 0, 0, 3000, 4000, 3000, 4000, 0), "/points",
			"The corners go round anticlockwise, looking up: they were listed backwards, or the room was drawn looking down, and those two are mirror images."},
		{"too large", points(-60000, 0, 60000, 0, 60000, 3000), "/points", "The ceiling is 120.000 m long, more than the 100.000 m that is taken."},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.room.Find(measure.Metric)
			assert.False(t, got.Shape.Usable())
			require.Len(t, got.Problems, 1)
			assert.Equal(t, c.at, got.Problems[0].At)
			assert.Equal(t, problem.Stop, got.Problems[0].Severity)
			assert.Equal(t, c.what, got.Problems[0].What.In(inMetric))
		})
	}
	room := points(0, 0, 4000, 0, 4000, 3000)
	room.Points[1].Known = false
	assert.Equal(t, "The place of corner X is not given.", room.Find(measure.Metric).Problems[0].What.In(inMetric))
	assert.Equal(t, "The ceiling reads 30 mm across, less than any room.", points(0, 0, 30, 0, 30, 30).Find(measure.Metric).Problems[0].What.In(inMetric))
}

func TestFind_Walls(t *testing.T) {
	// A straight walk round: whole quarter turns are exact.
	got := walls("5000", "90", "2500", "90", "2000", "270", "1500", "90", "3000", "90", "", "").Find(measure.Metric)
	assert.Empty(t, got.Problems)
	assert.Equal(t, ell.Corners, got.Shape.Corners, "the last wall is worked out")
	assert.Equal(t, survey.Proved, got.Proof)
	for _, last := range [][2]string{{"4000", "90"}, {"4000", ""}, {"", "90"}} {
		again := walls("5000", "90", "2500", "90", "2000", "270", "1500", "90", "3000", "90", last[0], last[1]).Find(measure.Metric)
		assert.Equal(t, ell.Corners, again.Shape.Corners, "%v", last)
	}
	for _, c := range []struct {
		name      string
		room      survey.Room
		area, way float64
	}{
		// Regular figures of side 1 m, from the formulas of any geometry text:
		// √3 ÷ 4, ¼ √(25 + 10 √5), 3 √3 ÷ 2, 2 (1 + √2).
		{"triangle", walls("1000", "60", "1000", "60", "1000", "60"), math.Sqrt(3) / 4, 3000},
		{"pentagon", walls("1000", "108", "1000", "108", "1000", "108", "1000", "108", "1000", "108"), math.Sqrt(25+10*math.Sqrt(5)) / 4, 5000},
		{"hexagon", walls("1000", "120", "1000", "120", "1000", "120", "1000", "120", "1000", "120", "1000", "120"), 3 * math.Sqrt(3) / 2, 6000},
		{"octagon", walls("1000", "135", "1000", "135", "1000", "135", "1000", "135", "1000", "135", "1000", "135", "1000", "135", "1000", "135"), 2 * (1 + math.Sqrt2), 8000},
		// An octagon 7 ft across its corners has chords of 84 × sin 22.5° =
		// 32.145 in (mathcentral.uregina.ca); its area is 2 √2 r².
		{"octagon in 7 ft", walls("816.493371", "135", "816.493371", "135", "816.493371", "135", "816.493371", "135", "816.493371", "135", "816.493371", "135", "816.493371", "135", "", ""),
			2 * math.Sqrt2 * 1.0668 * 1.0668, 8 * 816.493371},
		// A chamfered corner: 4 × 3 m less half of 1 × 1 m.
		{"chamfer", walls("3000", "135", "1414.213562", "135", "2000", "90", "4000", "90", "3000", "90"), 11.5, 12000 + 1414.213562},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.room.Find(measure.Metric)
			require.True(t, got.Shape.Usable(), "%v", got.Problems)
			assert.InDelta(t, c.area, got.Shape.Area().SquareMetres.Float(), 1e-8)
			assert.InDelta(t, c.way, float64(got.Shape.Perimeter())/1e6, 1e-5)
			assert.Zero(t, got.Shape.Corners[1].Y, "WX lies along x")
		})
	}
	assert.InDelta(t, 32.145, 816.493371/25.4, 0.001)
}

// Four walls square to each other, the first 10 mm too long: by the compass rule
// each corner moves back by 10 mm times the way walked over the 14 010 mm round.
func TestFind_WallsByTheCompassRule(t *testing.T) {
	got := walls("4010", "90", "3000", "90", "4000", "90", "3000", "90").Find(measure.Metric)
	assert.Equal(t, 10*mm, got.Closing.Amount)
	for i, want := range [][2]float64{{0, 0}, {4010 - 10*4010.0/14010, 0}, {4010 - 10*7010.0/14010, 3000}, {10 - 10*11010.0/14010, 3000}} {
		near(t, want[0], mm, got.Shape.Corners[i].X, "x")
		near(t, want[1], mm, got.Shape.Corners[i].Y, "y")
	}
	assert.Equal(t, survey.ClosingSpread, got.Verdict)
	assert.Equal(t, survey.Proved, got.Proof)
	// Out across AB, so that AB itself would turn: it is laid along x again.
	got = walls("4000", "90", "3010", "90", "4000", "90", "3000", "90").Find(measure.Metric)
	assert.Zero(t, got.Shape.Corners[1].Y)
	ab, _ := got.Shape.Wall(survey.AB)
	assert.InDelta(t, math.Hypot(4000, 10*4000.0/14010)*1e6, float64(ab.Length()), 1)
	// Angles that lack 0.4°: 0.1° a corner, which squares the room.
	got = walls("4000", "89.9", "3000", "89.9", "4000", "89.9", "3000", "89.9").Find(measure.Metric)
	assert.Equal(t, "The angles add up to 359.6° where it should be 360°; the difference is shared out equally.", got.Problems[0].What.In(inMetric))
	assert.True(t, got.Shape.IsRectangle())
	// More than one part in 200.
	got = walls("4100", "90", "3000", "90", "4000", "90", "3000", "90").Find(measure.Metric)
	assert.Equal(t, survey.Contradicted, got.Proof)
	assert.Equal(t, problem.Caution, got.Problems[0].Severity)
}

func TestFind_WallsThatMakeNoRoom(t *testing.T) {
	for _, c := range []struct {
		name, at, what string
		room           survey.Room
	}{
		{"angle left out", "/walls/1/angle", "The angle at corner Y is not given.", walls("4000", "90", "3000", "", "4000", "90", "3000", "90")},
		{"length left out", "/walls/1/length", "The length of wall XY is not given.", walls("4000", "90", "", "90", "4000", "90", "3000", "90")},
		{"angle of nothing", "/walls/0/angle", "No corner has an angle of 0° inside the room.", walls("4000", "0", "3000", "90", "4000", "90", "3000", "90")},
		{"full turn", "/walls/3/angle", "No corner has an angle of 360° inside the room.", walls("4000", "90", "3000", "90", "4000", "90", "3000", "360")},
		{"angles that do not add up", "/walls", "The angles inside 4 corners add up to 360°, but these to 380°.", walls("4000", "90", "3000", "100", "4000", "90", "3000", "100")},
		{"too long", "/walls/0/length", "Wall WX reads 101.000 m, more than the 100.000 m that is taken.", walls("101000", "90", "3000", "90", "4000", "90", "3000", "90")},
		{"far from closing", "/walls", "Walked round, the walls miss corner W by 2.000 m: they do not close.", walls("6000", "90", "3000", "90", "4000", "90", "3000", "90")},
		{"last runs backwards", "/walls/3/length", "The last wall would have to run backwards to end at corner W.", walls("4000", "90", "3000", "90", "4000", "270", "", "")},
		{"two walls", "/walls", "The ceiling has 2 of the three corners that it takes at least.", walls("4000", "90", "3000", "90")},
		{"crossing", "/walls/3", "Walls WX and ZV cross or touch.", walls("4000", "90", "3000", "90", "2000", "90", "4000", "270", "2000", "270", "1000", "")},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.room.Find(measure.Metric)
			assert.False(t, got.Shape.Usable())
			require.NotEmpty(t, got.Problems)
			assert.Equal(t, c.at, got.Problems[0].At)
			assert.Equal(t, c.what, got.Problems[0].What.In(inMetric))
		})
	}
}

func TestFind_Round(t *testing.T) {
	got := survey.Room{Form: survey.Round, Length: 4 * measure.Metre, Width: 3 * measure.Metre, Height: 3 * measure.Metre}.Find(measure.Metric)
	assert.Empty(t, got.Problems)
	assert.Equal(t, survey.Round, got.Shape.Form)
	got = survey.Room{Form: survey.Round, Length: 4 * measure.Metre}.Find(measure.Metric)
	assert.False(t, got.Shape.Usable())
	assert.Equal(t, "/width", got.Problems[0].At)
	assert.Equal(t, "/height", got.Problems[1].At)
}

func TestFind_Rectangle(t *testing.T) {
	room := survey.Room{Length: 4 * measure.Metre, Width: 3 * measure.Metre, Height: 3 * measure.Metre, Tape: unitTape}
	got := room.Find(measure.Metric)
	assert.Equal(t, survey.Assumed, got.Proof)
	assert.Equal(t, survey.NoDiagonal, got.Verdict)
	assert.True(t, got.Shape.IsRectangle())
	// The difference has √2 times the standard deviation of one reading, three
	// of which are 4.2426 mm.
	for _, c := range []struct {
		ac, bd float64
		want   survey.Proof
	}{
		{5000, 0, survey.Proved}, {0, 5000, survey.Proved}, {5004.2, 4995.8, survey.Proved}, {5004.3, 0, survey.Contradicted}, {5000, 4995.7, survey.Contradicted}, {100, 0, survey.Contradicted},
	} {
		room.DiagonalAC, room.DiagonalBD = inMM(c.ac), inMM(c.bd)
		got = room.Find(measure.Metric)
		assert.Equal(t, c.want, got.Proof, "%v", c)
		assert.True(t, got.Shape.IsRectangle(), "length and width alone make no other shape")
	}
	// Q2: a diagonal 12 mm too long is a corner of 90.2868°, the sine of it 5.006
	// mm over a metre.
	room.DiagonalAC, room.DiagonalBD = 5012*mm, 0
	got = room.Find(measure.Metric)
	assert.Equal(t, []problem.Problem{{At: "/diagonalAC", Severity: problem.Caution,
		What: words.Say("Diagonal WY reads 5.012 m; with this length and width a square room has 5.000 m, so it is 12 mm too long, and corner X would be 90.29°, 5 mm out of square over 1.000 m."),
		Do:   words.Say("Measure it again. If it stays so, measure the four walls and both diagonals and enter those.")}}, said(metric, got.Problems))
	assert.Equal(t, 12*mm, got.Closing.Amount)
	room.DiagonalAC = 8000 * mm
	assert.Contains(t, room.Find(measure.Metric).Problems[0].What.In(inMetric), "3.000 m too long: the three cannot meet.")
}

// Whatever corners are given, the answer is an outline whose angles add up, or
// the reason why not.
func FuzzFindPoints(f *testing.F) {
	f.Add([]byte{0, 0, 9, 0, 9, 9, 0, 9})             // a square
	f.Add([]byte{0, 0, 9, 9, 9, 0, 0, 9})             // a bow tie
	f.Add([]byte{0, 0, 9, 0, 5, 0, 9, 9})             // there and back
	f.Add([]byte{0, 0, 4, 0, 9, 0, 9, 9, 0, 9, 0, 5}) // corners on straight walls
	f.Fuzz(func(t *testing.T, places []byte) {
		if len(places) > 60 {
			return
		}
		room := survey.Room{Form: survey.Points}
		for i := 0; i+1 < len(places); i += 2 {
			room.Points = append(room.Points, survey.CornerReading{Known: true, Point: survey.Point{X: measure.Length(int8(places[i])) * foot, Y: measure.Length(int8(places[i+1])) * foot}})
		}
		got := room.Find(measure.FeetInches)
		if !got.Shape.Usable() {
			require.NotEmpty(t, stops(got.Problems))
			return
		}
		require.Positive(t, got.Shape.Area().SquareMetres.Sign())
		sum := 0.0
		for _, c := range got.Corners {
			sum += c.Degrees
		}
		require.InDelta(t, 180*(len(got.Corners)-2), sum, 1e-6, "the angles of a figure that does not cross itself")
		require.Equal(t, got.Shape.IsConvex(), convexByAngles(got.Corners))
	})
}

func convexByAngles(corners []survey.CornerFound) bool {
	for _, c := range corners {
		if c.Degrees > 180+1e-9 {
			return false
		}
	}
	return true
}
