package setout_test

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func point(x, y float64) survey.Point { return survey.Point{X: at(x), Y: at(y)} }

// grid is columns and rows of panels 1000 × 800 mm.
func grid(columns, rows int) (mask.Run, mask.Run) {
	o := mask.Outline{Length: measure.Length(columns) * 1000 * mm, Width: measure.Length(rows) * 800 * mm}
	return layerOf(o, columns, rows).Runs(o)
}

func labels(cuts []setout.Cut) []string {
	var names []string
	for _, c := range cuts {
		names = append(names, c.Panel.Label())
	}
	return names
}

func TestHole_Cuts(t *testing.T) {
	columns, rows := grid(3, 2)
	round := func(x, y, across float64) setout.Hole {
		return setout.Hole{Round: true, Middle: point(x, y), Length: at(across)}
	}
	upright := func(x, y, length, width float64) setout.Hole {
		return setout.Hole{Middle: point(x, y), Length: at(length), Width: at(width)}
	}
	for _, c := range []struct {
		name string
		hole setout.Hole
		want []string
	}{
		{"inside one", round(500, 400, 200), []string{"A1"}},
		{"on a crossing", round(1000, 800, 200), []string{"A1", "A2", "B1", "B2"}},
		{"over a seam", round(1050, 400, 200), []string{"A1", "A2"}},
		{"just up to a seam", round(1100, 400, 200), []string{"A2"}},
		// 40 and 30 from the crossing: the corner is 50 away (3-4-5).
		{"just misses a corner panel", round(1040, 830, 100), []string{"A2", "B1", "B2"}},
		{"reaches it by a nanometre", setout.Hole{Round: true, Middle: point(1040, 830), Length: 100*mm + 1}, []string{"A1", "A2", "B1", "B2"}},
		{"a point on a seam", setout.Hole{Round: true, Middle: point(1000, 300)}, []string{"A1", "A2"}},
		{"a point on a crossing", setout.Hole{Middle: point(2000, 800)}, []string{"A2", "A3", "B2", "B3"}},
		{"outside the mask", round(-200, 400, 300), nil},
		{"a rectangle has its corner", upright(1040, 830, 100, 100), []string{"A1", "A2", "B1", "B2"}},
		{"a rectangle up to both seams", upright(1050, 850, 100, 100), []string{"B2"}},
		{"a beam over all", upright(1500, 400, 4000, 100), []string{"A1", "A2", "A3"}},
		// A square stood on its corner reaches 100/√2 = 70.7 along the axes, and
		// from (1040, 830) does not reach the crossing: 40 + 30 = 70 < 70.7, so it
		// does; from (1040, 831) it does not.
		{"askew, reaching the corner", setout.Hole{Middle: point(1040, 830), Length: 100 * mm, Width: 100 * mm, Turn: diagonal}, []string{"A1", "A2", "B1", "B2"}},
		{"askew, missing the corner", setout.Hole{Middle: point(1040, 831), Length: 100 * mm, Width: 100 * mm, Turn: diagonal}, []string{"A2", "B1", "B2"}},
	} {
		assert.Equal(t, c.want, labels(c.hole.Cuts(columns, rows)), c.name)
	}
}

var diagonal = setout.Turn{AlongX: math.Sqrt2 / 2, AlongY: math.Sqrt2 / 2}

func TestHole_CutsSayWhereOnThePanel(t *testing.T) {
	columns, rows := grid(3, 2)
	// A circle of 500 with its middle 150 past the seam: its half chord on the
	// seam is 200 (3-4-5).
	cuts := setout.Hole{Round: true, Middle: point(1150, 400), Length: 500 * mm}.Cuts(columns, rows)
	require.Len(t, cuts, 2)
	assert.Equal(t, setout.Cut{Panel: mask.Panel{Column: 1, Row: 1}, Middle: point(1150, 400), From: point(900, 200), To: point(1000, 600),
		Crossings: []setout.Crossing{{Edge: "BC", At: 200 * mm}, {Edge: "BC", At: 600 * mm}}}, cuts[0])
	assert.Equal(t, setout.Cut{Panel: mask.Panel{Column: 2, Row: 1}, Middle: point(150, 400), From: point(0, 150), To: point(400, 650),
		Crossings: []setout.Crossing{{Edge: "DA", At: 200 * mm}, {Edge: "DA", At: 600 * mm}}}, cuts[1])

	// A rectangle over a seam between rows, with two of its corners on either.
	cuts = setout.Hole{Middle: point(400, 750), Length: 300 * mm, Width: 200 * mm}.Cuts(columns, rows)
	require.Len(t, cuts, 2)
	assert.Equal(t, setout.Cut{Panel: mask.Panel{Column: 1, Row: 1}, Middle: point(400, 750), From: point(250, 650), To: point(550, 800),
		Corners:   []survey.Point{point(250, 650), point(550, 650)},
		Crossings: []setout.Crossing{{Edge: "CD", At: 550 * mm}, {Edge: "CD", At: 250 * mm}}}, cuts[0])
	assert.Equal(t, point(400, -50), cuts[1].Middle, "on the neighbour")
	assert.Equal(t, point(250, 0), cuts[1].From)
	assert.Equal(t, point(550, 50), cuts[1].To)

	whole := setout.Hole{Round: true, Middle: point(500, 400), Length: 200 * mm}.Cuts(columns, rows)
	assert.True(t, whole[0].Whole)
	assert.Empty(t, whole[0].Crossings)
}

// What all panels take of a hole together is the hole: brute force by points,
// for circles and rectangles lying anyhow. The upright rectangle round each cut
// holds the points of that panel and none sticks out.
func TestHole_CutsAgainstPoints(t *testing.T) {
	random := rand.New(rand.NewSource(8))
	columns, rows := grid(4, 4)
	for range 80 {
		angle := random.Float64() * math.Pi
		h := setout.Hole{Round: random.Intn(2) == 0, Middle: point(random.Float64()*4000, random.Float64()*3200), Length: at(50 + random.Float64()*1500), Width: at(50 + random.Float64()*900),
			Turn: setout.Turn{AlongX: math.Cos(angle), AlongY: math.Sin(angle)}}
		cuts := h.Cuts(columns, rows)
		found := map[mask.Panel]setout.Cut{}
		for _, c := range cuts {
			found[c.Panel] = c
		}
		touched := map[mask.Panel]bool{}
		const steps = 50
		for i := range steps {
			for j := range steps {
				u, v := (float64(i)+0.5)/steps-0.5, (float64(j)+0.5)/steps-0.5
				if h.Round && u*u+v*v >= 0.25 {
					continue
				}
				long, wide := float64(h.Length)*u, float64(h.Width)*v
				ux, uy := h.Turn.AlongX, h.Turn.AlongY
				if h.Round {
					wide, ux, uy = float64(h.Length)*v, 1, 0
				}
				x, y := float64(h.Middle.X)+long*ux-wide*uy, float64(h.Middle.Y)+long*uy+wide*ux
				column, row := int(math.Floor(x/1e9)), int(math.Floor(y/0.8e9))
				if column < 0 || row < 0 || column > 3 || row > 3 {
					continue
				}
				p := mask.Panel{Column: column + 1, Row: row + 1}
				c, ok := found[p]
				require.True(t, ok, "%+v takes some of %s", h, p.Label())
				touched[p] = true
				px, py := measure.Length(x-float64(column)*1e9), measure.Length(y-float64(row)*0.8e9)
				require.True(t, px >= c.From.X-2 && px <= c.To.X+2 && py >= c.From.Y-2 && py <= c.To.Y+2, "%+v at %v, %v", c, px, py)
			}
		}
		for p, c := range found {
			if !touched[p] {
				// Less of it than the points are apart.
				require.True(t, c.To.X-c.From.X < 60*mm || c.To.Y-c.From.Y < 60*mm, "%+v does not touch %+v", h, c)
			}
			for _, x := range c.Crossings {
				require.GreaterOrEqual(t, x.At, measure.Length(0))
			}
			require.Equal(t, 0, len(c.Crossings)&1, "a cut line that enters a panel leaves it: %+v", c)
		}
	}
}

func TestHole_Seams(t *testing.T) {
	columns, rows := grid(3, 2)
	o := mask.Outline{Length: 3000 * mm, Width: 1600 * mm}
	names := func(h setout.Hole) []string {
		var list []string
		for _, s := range h.Seams(columns, rows, o) {
			list = append(list, s.Name)
		}
		return list
	}
	assert.Equal(t, []string{"1│2", "A│B"}, names(setout.Hole{Round: true, Middle: point(1000, 800), Length: 100 * mm}))
	assert.Equal(t, []string{"2│3"}, names(setout.Hole{Round: true, Middle: point(1990, 400), Length: 100 * mm}))
	assert.Empty(t, names(setout.Hole{Round: true, Middle: point(500, 400), Length: 100 * mm}))
	assert.Empty(t, names(setout.Hole{Round: true, Middle: point(1000, -400), Length: 100 * mm}), "beyond the mask")
	assert.Equal(t, []string{"1│2", "2│3"}, names(setout.Hole{Middle: point(1500, 300), Length: 1400 * mm, Width: 50 * mm}))
}

func TestHoleOf_SeesThingsAsTheBoxDoes(t *testing.T) {
	box := setout.Box{X: 3000 * mm, Y: 500 * mm, Length: 2400 * mm, Width: 1800 * mm, Turn: setout.Turn{Quarters: 1}}
	// A vent 400 along AB by 100: along the box's width.
	h := setout.HoleOf(box, false, point(2500, 900), 400*mm, 100*mm, setout.Turn{})
	assert.Equal(t, setout.Hole{Middle: point(400, 500), Length: 100 * mm, Width: 400 * mm}, h)

	// Along AB, under a box half a degree off it.
	box = setout.Box{X: 500 * mm, Y: 400 * mm, Length: 2000 * mm, Width: 1000 * mm, Turn: setout.Turn{AlongX: math.Cos(math.Pi / 360), AlongY: math.Sin(math.Pi / 360)}}
	h = setout.HoleOf(box, false, box.Out(point(700, 300)), 400*mm, 100*mm, setout.Turn{})
	assert.InDelta(t, -math.Pi/360, math.Atan2(h.Turn.AlongY, h.Turn.AlongX), 1e-12)
	assert.InDelta(t, 700e6, float64(h.Middle.X), 2)
	// Lying as the box does, whatever the direction.
	h = setout.HoleOf(box, false, box.Out(point(700, 300)), 400*mm, 100*mm, box.Turn.Quarter())
	assert.Equal(t, setout.Turn{}, h.Turn)
	assert.Equal(t, 100*mm, h.Length)
}

// A loose piece of a mask is cut out of its neighbours by the same rule: a
// circle of 1200 on the crossing of four panels takes a quarter of each.
func TestHole_ALoosePieceIsCutFromFour(t *testing.T) {
	columns, rows := grid(2, 2)
	cuts := setout.Hole{Round: true, Middle: point(1000, 800), Length: 1200 * mm}.Cuts(columns, rows)
	require.Equal(t, []string{"A1", "A2", "B1", "B2"}, labels(cuts))
	for _, c := range cuts {
		assert.Equal(t, 600*mm, c.To.X-c.From.X)
		assert.Equal(t, 600*mm, c.To.Y-c.From.Y)
		edges := []survey.Wall{c.Crossings[0].Edge, c.Crossings[1].Edge}
		slices.Sort(edges)
		assert.Len(t, slices.Compact(edges), 2, "once over each inner edge")
	}
}
