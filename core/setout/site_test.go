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
	// ell is an L, its inner corner at D.
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

// Rotating the labels, B for A and so on, turns the answer with them and moves
// nothing: the box lies on the same spot of the ceiling and the borders are the
// same ones under other names.
func TestPlace_RelabelledIsTheSame(t *testing.T) {
	random := rand.New(rand.NewSource(9))
	for range 200 {
		shape := randomQuad(random)
		names := shape.Corners
		relabelled := survey.ShapeFromCorners(survey.Points, []survey.Point{names[1], names[2], names[3], names[0]})
		one, other := setout.Site{Shape: shape}, setout.Site{Shape: relabelled}
		// The long side that lay along AB lies along the new DA, so the mask is
		// turned to stay where it is.
		box := placed(t, one, setout.OnRoom, pattern)
		for _, square := range [][2]setout.Square{{"room", "room"}, {"AB", "DA"}, {"BC", "AB"}, {"CD", "BC"}} {
			box, _ = one.Place(onRoom(square[0]), pattern, 0)
			turned, ok := other.Place(setout.Way{On: "room", Square: square[1], Turned: true}, pattern, 0)
			require.True(t, ok)
			// Turned clockwise from the new AB it runs the other way along it.
			for _, c := range []survey.Corner{"A", "B", "C", "D"} {
				opposite := map[survey.Corner]survey.Corner{"A": "C", "B": "D", "C": "A", "D": "B"}[c]
				p, q := box.Corner(c), turned.Corner(opposite)
				require.InDelta(t, int64(p.X), int64(q.X), 3, "%v %s", square, c)
				require.InDelta(t, int64(p.Y), int64(q.Y), 3)
			}
			before, after := one.Borders(box), other.Borders(turned)
			for i, p := range before.Places {
				q := after.Places[(i+6)%8]
				require.InDelta(t, int64(p.Length), int64(q.Length), 3, "%+v %+v", p, q)
			}
		}
	}
}

// The rectangle is the limit of the skew room: as its skew goes to nothing every
// border goes to that of the rectangle, and at nothing it is exact.
func TestPlace_TheRectangleIsTheLimit(t *testing.T) {
	for _, square := range []setout.Square{"room", "AB", "BC", "CD", "DA"} {
		exact := placed(t, setout.Site{Shape: outline(survey.Lines, 0, 0, 5000, 0, 5000, 4000, 0, 4000)}, setout.OnRoom, pattern)
		assert.True(t, exact.Turn.IsExact())
		last := math.Inf(1)
		for skew := 100.0; skew > 1e-5; skew /= 10 {
			site := setout.Site{Shape: outline(survey.Lines, 0, 0, 5000, 0, 5000+skew, 4000-skew/2, -skew/3, 4000+skew/4)}
			box, ok := site.Place(onRoom(square), pattern, 0)
			require.True(t, ok)
			off := math.Hypot(float64(box.X-exact.X), float64(box.Y-exact.Y)) / 1e6
			assert.Less(t, off, last, "square to %s", square)
			assert.Less(t, off, skew)
			last = off
		}
		site := setout.Site{Shape: outline(survey.Lines, 0, 0, 5000, 0, 5000, 4000, 0, 4000)}
		box, _ := site.Place(onRoom(square), pattern, 0)
		assert.Equal(t, exact, box, "square to %s", square)
	}
}

// In a room wider than long the long centre line runs from AB to CD.
func TestTurnOf_FollowsTheLongCentreLine(t *testing.T) {
	deep := outline(survey.Lines, 0, 0, 3000, 0, 3030, 5000, 10, 5006)
	turn, ok := setout.Site{Shape: deep}.TurnOf("room")
	require.True(t, ok)
	// From (1500, 0) to (1520, 5003): its length, taken back a quarter.
	assert.InDelta(t, -20.0/5003, turn.AlongY/turn.AlongX, 1e-12)
	wide := outline(survey.Lines, 0, 0, 5000, 0, 5010, 3030, 0, 3000)
	turn, _ = setout.Site{Shape: wide}.TurnOf("room")
	assert.InDelta(t, 15.0/5005, turn.AlongY/turn.AlongX, 1e-12)
	// An outline has its longest wall, folded to within 45° of AB.
	bay := outline(survey.Points, 0, 0, 2000, 0, 3000, 1000, 3000, 5000, 0, 5000)
	turn, _ = setout.Site{Shape: bay}.TurnOf("room")
	assert.Equal(t, setout.Turn{}, turn, "EA is longest, and square to WX")
	turn, _ = setout.Site{Shape: bay}.TurnOf("BC")
	assert.InDelta(t, 1, turn.AlongY/turn.AlongX, 1e-12, "45° clockwise of WX")
}

// The panel hung 2° off runs off 48 in × sin 2° at its far edge, and by
// 48 × tan 2° = 1.68 in over 48 in of wall (a model maker's notes on an ornamental
// ceiling, March 2010).
func TestBox_HungTwoDegreesOff(t *testing.T) {
	turn, ok := setout.TurnTo(survey.Point{}, survey.Point{X: 48 * inch, Y: measure.Length(math.Round(48 * 25.4e6 * math.Tan(2*math.Pi/180)))})
	require.True(t, ok)
	box := setout.Box{X: foot, Y: foot, Length: 48 * inch, Width: 48 * inch, Turn: turn}
	off := box.Corner(survey.B).Y - box.Corner(survey.A).Y
	assert.InDelta(t, 48*25.4*math.Sin(2*math.Pi/180), float64(off)/1e6, 1e-6)
	over := float64(off) / float64(box.Corner(survey.B).X-box.Corner(survey.A).X) * 48
	assert.InDelta(t, 1.68, over, 0.005)
	// The box's own frame does not know that it is turned.
	assert.InDelta(t, int64(48*inch), int64(box.In(box.Corner(survey.C)).X), 2)
	assert.InDelta(t, int64(48*inch), int64(box.In(box.Corner(survey.C)).Y), 2)
}

func TestBox_InAndOut(t *testing.T) {
	random := rand.New(rand.NewSource(10))
	for range 2000 {
		angle := random.Float64() * 2 * math.Pi
		box := setout.Box{X: measure.Length(random.Int63n(5e9)), Y: measure.Length(random.Int63n(5e9)), Length: 3 * measure.Metre, Width: 2 * measure.Metre,
			Turn: setout.Turn{Quarters: random.Intn(4)}}
		exact := random.Intn(2) == 0
		if !exact {
			box.Turn.AlongX, box.Turn.AlongY = math.Cos(angle), math.Sin(angle)
		}
		p := survey.Point{X: measure.Length(random.Int63n(9e9)), Y: measure.Length(random.Int63n(9e9))}
		back := box.Out(box.In(p))
		if exact {
			require.Equal(t, p, back)
		}
		require.InDelta(t, int64(p.X), int64(back.X), 2)
		require.InDelta(t, int64(p.Y), int64(back.Y), 2)
	}
	// Turned 90°, its own corner A lies nearest the room's B and its length runs
	// along BC.
	hall := siteOf(survey.Room{Length: 4 * measure.Metre, Width: 5 * measure.Metre}, survey.Fixture{})
	box, ok := hall.Place(setout.Way{On: "room", Square: "room", Turned: true}, mask.Outline{Length: 4400 * mm, Width: 3000 * mm}, 0)
	require.True(t, ok)
	assert.Equal(t, point(3500, 300), box.Corner(survey.A))
	assert.Equal(t, point(3500, 4700), box.Corner(survey.B))
	assert.Equal(t, point(500, 4700), box.Corner(survey.C))
	assert.Equal(t, point(500, 300), box.Corner(survey.D))
	assert.Equal(t, point(2000, 2500), box.Centre())
	assert.Equal(t, []survey.Wall{"BC", "CD", "DA", "AB"}, []survey.Wall{box.Facing("AB"), box.Facing("BC"), box.Facing("CD"), box.Facing("DA")})
	for _, w := range []survey.Wall{"AB", "BC", "CD", "DA"} {
		assert.Equal(t, w, box.Turn.SideFacing(box.Facing(w)))
	}
	assert.Equal(t, survey.B, box.Turn.Nearest(survey.A))
	assert.Equal(t, borders(300*mm, 500*mm, 300*mm, 500*mm), hall.Borders(box).Sides)
}

// Out of square up to ¾ in is hidden in the border spacing: 144 in wide at one
// end and 144¾ at the other, 180 long; a field square on the centre line, 6 in in
// at the narrow end, has margins running from 6 to 6⅜ in on either side (a
// historic-stencil studio's page on stencilling a floor).
func TestTapers_OfATaperedRoom(t *testing.T) {
	// AB and CD are the long walls, 180 apart at DA (144) and BC (144¾).
	shape := survey.ShapeFromCorners(survey.Lines, []survey.Point{{X: 0, Y: 0}, {X: 180 * inch, Y: -3 * inch / 8}, {X: 180 * inch, Y: 144*inch + 3*inch/8}, {X: 0, Y: 144 * inch}})
	site := setout.Site{Shape: shape}
	box, ok := site.Place(onRoom("room"), mask.Outline{Length: 180 * inch, Width: 132 * inch}, 0)
	require.True(t, ok)
	layout := site.Borders(box)
	tapers := layout.Tapers()
	require.Len(t, tapers, 4)
	for _, i := range []int{0, 2} {
		assert.InDelta(t, int64(3*inch/8), int64(tapers[i].By()), 200_000, "⅜ in a side")
		assert.InDelta(t, int64(6*inch), int64(tapers[i].Narrow.Length), 200_000)
	}
	worst, _ := layout.Worst()
	assert.LessOrEqual(t, worst.By(), setout.HiddenTaper)
	caught, ok := layout.Catching()
	require.True(t, ok)
	assert.Contains(t, []survey.Wall{"AB", "CD"}, caught.Wall)

	_, ok = siteOf(room, survey.Fixture{}).Borders(placed(t, siteOf(room, survey.Fixture{}), setout.OnRoom, supper)).Catching()
	assert.False(t, ok, "a rectangle has nothing to catch")
}

// The same taper shows more beside a narrow border than beside a wide one.
func TestCatching_IsTheGreatestShare(t *testing.T) {
	shape := outline(survey.Lines, 0, 0, 5000, 10, 5012, 4000, 0, 4000)
	site := setout.Site{Shape: shape, Point: setout.SpotAt(point(2500, 2000))}
	box, _ := site.Place(setout.Way{On: "point", Square: "CD"}, mask.Outline{Length: 4600 * mm, Width: 2000 * mm}, 0)
	layout := site.Borders(box)
	worst, _ := layout.Worst()
	caught, ok := layout.Catching()
	require.True(t, ok)
	assert.Equal(t, survey.AB, worst.Wall)
	assert.Equal(t, survey.BC, caught.Wall)
}

// Round rooms: the border is what a corner or the middle of a side keeps from the
// curve. In a circle of 5 m a corner 1.8 and 1.5 m off the middle is √(1.8² + 1.5²)
// out; one of a square of 2.4 m in a circle of 4 m is 2 − 1.2 × √2 = 0.303 m from
// the wall, not the 0.4 m along the side.
func TestBorders_InARoundRoom(t *testing.T) {
	site := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 5*measure.Metre, 5*measure.Metre)}
	layout := site.Borders(placed(t, site, setout.OnRoom, mask.Outline{Length: 3600 * mm, Width: 3000 * mm}))
	require.Len(t, layout.Places, 12)
	for _, side := range [4]measure.Length{layout.Sides.AB, layout.Sides.BC, layout.Sides.CD, layout.Sides.DA} {
		near(t, 2500-math.Hypot(1800, 1500), side)
	}
	for _, p := range layout.Places {
		if p.Own == "" && (p.Wall == "BC" || p.Wall == "DA") {
			near(t, 700, p.Length, "in the middle of a side")
		}
	}
	assert.Empty(t, layout.Tapers())
	site.Shape = survey.ShapeFromSides(survey.Round, 4*measure.Metre, 4*measure.Metre)
	near(t, 2000-1200*math.Sqrt2, site.Borders(placed(t, site, setout.OnRoom, mask.Outline{Length: 2400 * mm, Width: 2400 * mm})).Least())

	// In an oval 6 × 4 no place of the curve is nearer to any place of the box than
	// the least, and one is as near.
	oval := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 6*measure.Metre, 4*measure.Metre)}
	for _, o := range []mask.Outline{{Length: 3600 * mm, Width: 2400 * mm}, {Length: 5000 * mm, Width: 900 * mm}, {Length: 400 * mm, Width: 3700 * mm}} {
		box := placed(t, oval, setout.OnRoom, o)
		nearest := math.Inf(1)
		for i := range 40_000 {
			angle := 2 * math.Pi * float64(i) / 40_000
			x, y := 3e9*(1+math.Cos(angle))-float64(box.X), 2e9*(1+math.Sin(angle))-float64(box.Y)
			offX, offY := max(-x, x-float64(o.Length), 0), max(-y, y-float64(o.Width), 0)
			nearest = min(nearest, math.Hypot(offX, offY))
		}
		assert.InDelta(t, nearest, float64(oval.Borders(box).Least()), 1000, "%v", o)
	}
	// A corner outside is below nothing on both its sides, wherever it lies.
	layout = oval.Borders(placed(t, oval, setout.OnRoom, mask.Outline{Length: 5000 * mm, Width: 3500 * mm}))
	assert.Less(t, layout.Sides.AB, measure.Length(0))
	assert.Less(t, layout.Sides.BC, measure.Length(0))
	outside := oval.Borders(setout.Box{X: 9000 * mm, Y: 9000 * mm, Length: 500 * mm, Width: 500 * mm})
	assert.Less(t, outside.Least(), measure.Length(0))
}

// The corners of the box by two tapes from corners of the room are where the
// box is, and the tapes cross as squarely as any.
func TestCorners(t *testing.T) {
	random := rand.New(rand.NewSource(11))
	for range 50 {
		site := setout.Site{Shape: randomQuad(random)}
		box := placed(t, site, setout.OnRoom, pattern)
		found := site.Corners(box, site.Borders(box))
		require.Len(t, found, 4)
		for _, f := range found {
			require.Len(t, f.Walls, 2)
			require.True(t, f.Taped)
			for _, tape := range f.Tapes {
				from, _ := site.Shape.Corner(tape.From)
				p := box.Corner(f.Own)
				require.InDelta(t, math.Hypot(float64(p.X-from.X), float64(p.Y-from.Y)), float64(tape.Length), 1)
			}
			require.NotEqual(t, f.Tapes[0].From, f.Tapes[1].From)
		}
	}
	// Worked by hand: 3 m and 4 m from the corners of a room of 5 m (3-4-5).
	site := setout.Site{Shape: outline(survey.Lines, 0, 0, 5000, 0, 5000, 6000, 0, 6000)}
	box := setout.Box{X: 1800 * mm, Y: 2400 * mm, Length: 1000 * mm, Width: 1000 * mm}
	a := site.Corners(box, site.Borders(box))[0]
	assert.Equal(t, [2]setout.Tape{{From: "A", Length: 3 * measure.Metre}, {From: "B", Length: 4 * measure.Metre}}, a.Tapes)

	// In an L no tape goes through the wall.
	site = setout.Site{Shape: ell}
	box = setout.Box{X: 300 * mm, Y: 2500 * mm, Length: 1800 * mm, Width: 2000 * mm}
	for _, f := range site.Corners(box, site.Borders(box)) {
		for _, tape := range f.Tapes {
			assert.NotEqual(t, survey.C, tape.From, "%+v", f)
		}
	}
}
