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

// In an L the place is as wide all round as its wing allows, and in the middle
// of what is left the other way. Worked by hand.
func TestRoomiest_InAnL(t *testing.T) {
	site := setout.Site{Shape: ell}
	turn, ok := site.TurnOf("room")
	require.True(t, ok)
	for _, c := range []struct {
		name  string
		mask  mask.Outline
		least float64
		x, y  float64
	}{
		// 2500 wide below: 300 at DA and at the inner wall; along y as much at
		// either end of 5000.
		{"upright in the deep wing", mask.Outline{Length: 1900 * mm, Width: 4000 * mm}, 300, 300, 500},
		{"along the long wing", mask.Outline{Length: 5000 * mm, Width: 1500 * mm}, 250, 500, 250},
		{"too long for any wing", mask.Outline{Length: 5000 * mm, Width: 2500 * mm}, -250, 0, 0},
	} {
		box, least := site.Roomiest(c.mask, turn, 0)
		assert.InDelta(t, c.least, float64(least)/1e6, 0.001, c.name)
		if c.least > 0 {
			assert.InDelta(t, c.x, float64(box.X)/1e6, 0.001, c.name)
			assert.InDelta(t, c.y, float64(box.Y)/1e6, 0.001, c.name)
		}
	}
}

// In a rectangle, and in a room of four walls within what is given up to be
// even, the roomiest place is the middle.
func TestRoomiest_InARectangleIsTheMiddle(t *testing.T) {
	site := siteOf(room, survey.Fixture{})
	box, least := site.Roomiest(supper, setout.Turn{}, 0)
	assert.Equal(t, placed(t, site, setout.OnRoom, supper), box)
	assert.Equal(t, 12*inch+inch/4, least)
	turned, _ := site.Roomiest(mask.Outline{Length: supper.Width, Width: supper.Length}, setout.Turn{}.Quarter(), 0)
	assert.Equal(t, box.Corner(survey.B), turned.Corner(survey.A))
}

// Nothing is given up where the wanted border would be lost by it.
func TestRoomiest_KeepsWhatIsWanted(t *testing.T) {
	// Walls that close in by 8 mm: the widest place is at the far end.
	site := setout.Site{Shape: outline(survey.Points, 0, 0, 2500, -2, 5000, -4, 5000, 3004, 0, 3000)}
	turn, _ := site.TurnOf("AB")
	o := mask.Outline{Length: 2000 * mm, Width: 2800 * mm}
	even, least := site.Roomiest(o, turn, 0)
	ends := site.Borders(even)
	assert.InDelta(t, int64(ends.Sides.DA), int64(ends.Sides.BC), 3e6, "in the middle of the length")
	assert.InDelta(t, 101.2, float64(least)/1e6, 0.01, "half of 3000 + 8 × 1500/5000 − 2800")
	_, most := site.Roomiest(o, turn, measure.Longest)
	assert.InDelta(t, 102.3, float64(most)/1e6, 0.05, "the very widest is at the far end")
	_, kept := site.Roomiest(o, turn, 102*mm)
	assert.GreaterOrEqual(t, kept, 102*mm)
}

// Brute force: no place of a fine grid is better by more than what the search
// allows, in random outlines with corners that point inwards.
func TestRoomiest_AgainstAGrid(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	jitter := func(millimetres float64) float64 { return millimetres + float64(random.Intn(300_000))/1000 }
	for range 12 {
		shape := outline(survey.Points, 0, 0, jitter(5600), jitter(-100), jitter(5700), jitter(1900), jitter(2500), jitter(2000), jitter(2300), jitter(4500), jitter(-100), jitter(4700))
		require.False(t, shape.IsConvex())
		site := setout.Site{Shape: shape}
		turn, ok := site.TurnOf([]setout.Square{"AB", "CD", "room"}[random.Intn(3)])
		require.True(t, ok)
		if random.Intn(2) == 0 {
			turn = turn.Quarter()
		}
		o := mask.Outline{Length: measure.Length(800+random.Intn(1200)) * mm, Width: measure.Length(800+random.Intn(1200)) * mm}
		box, least := site.Roomiest(o, turn, measure.Longest)
		require.Equal(t, least, site.Borders(box).Least())
		low, high := shape.Bounds()
		const steps = 45
		for i := range steps {
			for j := range steps {
				twice := survey.Point{X: 2*low.X + 2*(high.X-low.X)*measure.Length(i)/steps, Y: 2*low.Y + 2*(high.Y-low.Y)*measure.Length(j)/steps}
				other := site.Borders(setout.BoxRound(twice, o, turn)).Least()
				require.LessOrEqual(t, float64(other), float64(least)+2.1e6, "a better place at %v", twice)
			}
		}
	}
}

// The borders of an outline are true: no place of a wall is nearer to the box
// than the least says, and some wall is as near.
func TestBorders_InAnOutline(t *testing.T) {
	for _, c := range []struct {
		name  string
		shape survey.Shape
		box   setout.Box
		want  setout.Borders
	}{
		{"in the wing of an L", ell, setout.Box{X: 300 * mm, Y: 400 * mm, Length: 2000 * mm, Width: 3000 * mm}, borders(400*mm, 200*mm, 1600*mm, 300*mm)},
		// The corner at 2500, 2000 is 200 and 600 off the box's own: √(200² + 600²).
		{"before the inner corner", ell, setout.Box{X: 300 * mm, Y: 400 * mm, Length: 2000 * mm, Width: 1000 * mm}, borders(400*mm, at(math.Hypot(200, 600)), at(math.Hypot(200, 600)), 300*mm)},
		{"turned in the wing of an L", ell, setout.Box{X: 2300 * mm, Y: 400 * mm, Length: 3000 * mm, Width: 2000 * mm, Turn: setout.Turn{Quarters: 1}}, borders(400*mm, 200*mm, 1600*mm, 300*mm)},
		// The corner of the box at 4000, 800 is (4000 − 800 − 4000)/√2 from
		// the splay x − y = 4000: 800/√2.
		{"beside a splay", chamfered, setout.Box{X: 1000 * mm, Y: 800 * mm, Length: 3000 * mm, Width: 2000 * mm}, borders(800*mm, at(800/math.Sqrt2), 1200*mm, 1000*mm)},
		{"outside the room", ell, setout.Box{X: 4000 * mm, Y: 3000 * mm, Length: 1000 * mm, Width: 1000 * mm}, setout.Borders{}},
	} {
		got := setout.Site{Shape: c.shape}.Borders(c.box)
		if c.want == (setout.Borders{}) {
			assert.Less(t, got.Least(), measure.Length(0), c.name)
			continue
		}
		assert.Equal(t, c.want, got.Sides, c.name)
		for _, p := range got.Places {
			wall, _ := c.shape.Wall(p.Wall)
			assert.LessOrEqual(t, p.Length, wall.Distance(c.box.Corner(p.Own))+1, "%s: %+v", c.name, p)
		}
	}
}

// Brute force: the least border is the least distance between places of the walls
// and of the edge of the box, in random outlines with a corner that points in.
func TestBorders_AreTheLeastDistance(t *testing.T) {
	random := rand.New(rand.NewSource(8))
	for range 200 {
		shape := outline(survey.Points, 0, 0, 6000, 0, 6000, 2000+400*random.Float64(), 2500+400*random.Float64(), 2000+400*random.Float64(), 2500, 5000, 0, 5000)
		site := setout.Site{Shape: shape}
		turn, _ := setout.TurnTo(survey.Point{}, survey.Point{X: 1000 * mm, Y: measure.Length(random.Intn(200)-100) * mm})
		o := mask.Outline{Length: measure.Length(500+random.Intn(900)) * mm, Width: measure.Length(500+random.Intn(900)) * mm}
		box := setout.BoxRound(survey.Point{X: measure.Length(1500+random.Intn(4500)) * mm, Y: measure.Length(1500+random.Intn(3000)) * mm}, o, turn)
		least := site.Borders(box).Least()
		if least <= 0 {
			continue
		}
		nearest := math.Inf(1)
		for _, w := range shape.Walls() {
			for _, own := range []survey.Corner{"A", "B", "C", "D"} {
				nearest = min(nearest, float64(w.Distance(box.Corner(own))))
			}
			for _, end := range []survey.Point{w.Start, w.End} {
				in := box.In(end)
				nearest = min(nearest, math.Hypot(float64(max(-in.X, in.X-box.Length, 0)), float64(max(-in.Y, in.Y-box.Width, 0))))
			}
		}
		require.InDelta(t, nearest, float64(least), 3)
	}
}
