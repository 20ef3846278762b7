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

func TestMarks_RunFromOneEnd(t *testing.T) {
	site := siteOf(room, light)
	box := placed(t, site, setout.OnFixture, supper)
	walls := site.Marks(box, []mask.Layer{layerOf(supper, 4, 2)})
	require.Len(t, walls, 4)

	quarter := supper.Length / 4
	ab := walls[0]
	assert.Equal(t, setout.End{Wall: survey.CD, From: survey.D, At: box.X}, ab.Marks[0].Join)
	for _, w := range walls {
		for i, m := range w.Marks {
			assert.Equal(t, m.At, m.Join.At, "lines run square across")
			assert.Equal(t, m.At, m.Cast.Along)
			assert.Zero(t, m.Cast.Slope)
			w.Marks[i].Join, w.Marks[i].In, w.Marks[i].Cast = setout.End{}, 0, setout.Cast{}
		}
	}
	assert.Equal(t, setout.WallMarks{Wall: survey.AB, From: survey.A, To: survey.B, Length: room.Length, Marks: []setout.Mark{
		{Kind: setout.BoxMark, Label: "DA", At: box.X},
		{Kind: setout.SeamMark, Label: "1│2", Layer: "L1", At: box.X + quarter, After: 1, Columns: true},
		{Kind: setout.CentreMark, At: 105 * inch},
		{Kind: setout.FixtureMark, At: 105 * inch},
		{Kind: setout.SeamMark, Label: "2│3", Layer: "L1", At: box.X + 2*quarter, After: 2, Columns: true},
		{Kind: setout.SeamMark, Label: "3│4", Layer: "L1", At: box.X + 3*quarter, After: 3, Columns: true},
		{Kind: setout.BoxMark, Label: "BC", At: box.X + supper.Length},
	}}, ab)

	bc := walls[1]
	assert.Equal(t, []measure.Length{box.Y, 80 * inch, 80 * inch, 80 * inch, box.Y + supper.Width},
		[]measure.Length{bc.Marks[0].At, bc.Marks[1].At, bc.Marks[2].At, bc.Marks[3].At, bc.Marks[4].At})
	assert.Equal(t, "A│B", bc.Marks[3].Label)

	// Opposite walls are read from the same end.
	for i, want := range []setout.WallMarks{
		{Wall: survey.CD, From: survey.D, To: survey.C, Length: room.Length, Marks: ab.Marks},
		{Wall: survey.DA, From: survey.A, To: survey.D, Length: room.Width, Marks: bc.Marks},
	} {
		assert.Equal(t, want, walls[2+i])
	}
}

func TestMarks_SeamsTakeUpTheRunOut(t *testing.T) {
	// Three columns 6 mm over in a box of 3000: each seam closes by 3 mm, so
	// the first panel ends at 1002 and the next begins at 999.
	hall, o := survey.Room{Length: 4000 * mm, Width: 2000 * mm}, mask.Outline{Length: 3000 * mm, Width: 1000 * mm}
	layer := mask.Layer{ID: "L2", Columns: []measure.Length{1002 * mm, 1002 * mm, 1002 * mm}, Rows: []measure.Length{1000 * mm}}
	site := siteOf(hall, survey.Fixture{})
	marks := site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{layer})[0].Marks
	assert.Equal(t, 1500*mm+500_000, marks[1].At, "500 of border, then the middle between 999 and 1002")
	assert.Equal(t, 2499*mm+500_000, marks[3].At)
	assert.Equal(t, "L2", marks[1].Layer)
	assert.Equal(t, 3500*mm, marks[4].At, "and the last lands on its tape line")

	empty := site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{{ID: "L3"}})
	assert.Len(t, empty[0].Marks, 3, "a layer without panels adds no seam")
}

// A mark is where its line comes to: so far along, and a slope for each unit off,
// in rooms out of square and lying at an angle.
func TestMarks_AreWhereTheirLinesMeetTheWall(t *testing.T) {
	random := rand.New(rand.NewSource(12))
	for range 60 {
		site := setout.Site{Shape: randomQuad(random)}
		o := mask.Outline{Length: 1500 * mm, Width: 1100 * mm}
		for _, w := range site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{layerOf(o, 3, 2)}) {
			for _, m := range w.Marks {
				require.InDelta(t, float64(m.At), float64(m.Cast.Along)+float64(m.Cast.Off)*m.Cast.Slope, 2.5, "%+v", m)
				require.Positive(t, m.Cast.Off)
			}
		}
	}
}

// A place that falls on half a tape mark gets one mark, whichever way it was
// worked out. The middle of a room of 143 3/16 in is at 71 19/32 in: there are the
// light, the centre line of a mask that is an odd count of nanometres long, and its
// seams between equal halves.
func TestMark_OnePlaceReadsAlike(t *testing.T) {
	hall := survey.Room{Length: 143*inch + 3*inch/16, Width: 100 * inch}
	o := mask.Outline{Length: 120*inch + inch/64, Width: 90 * inch}
	site := siteOf(hall, survey.Fixture{At: survey.InMiddle})
	var layers []mask.Layer
	for _, n := range []int{2, 4, 6, 14} {
		layers = append(layers, layerOf(o, n, 1))
	}
	read := map[measure.Length]int{}
	for _, m := range site.Marks(placed(t, site, setout.OnRoom, o), layers)[0].Marks {
		if (m.At - hall.Length/2).Abs() < mm {
			read[m.At.ToMark(inch/16)]++
		}
	}
	assert.Equal(t, map[measure.Length]int{71*inch + 5*inch/8: 6}, read)
}

func TestMark_RoundingNeverBuildsUp(t *testing.T) {
	random := rand.New(rand.NewSource(4))
	for range 300 {
		hall := survey.Room{Length: 3*measure.Metre + measure.Length(random.Int63n(int64(9*measure.Metre))), Width: 3 * measure.Metre}
		o := mask.Outline{Length: hall.Length - measure.Length(random.Int63n(int64(measure.Metre))), Width: 2 * measure.Metre}
		n := 1 + random.Intn(25)
		site := siteOf(hall, survey.Fixture{})
		box := placed(t, site, setout.OnRoom, o)
		marks := site.Marks(box, []mask.Layer{layerOf(o, n, 1)})[0].Marks
		last, seam := measure.Length(0), 0
		for _, m := range marks {
			require.GreaterOrEqual(t, m.At, last)
			last = m.At
			for _, tape := range []measure.Length{inch / 64, inch / 16, mm, 5 * mm} {
				require.Zero(t, m.At.ToMark(tape)%tape)
				require.LessOrEqual(t, 2*(m.At.ToMark(tape)-m.At).Abs(), tape+tape/5000)
			}
			if m.Kind != setout.SeamMark {
				continue
			}
			seam++
			// Every seam is within a nanometre of i ÷ n of the box.
			off := (m.At-box.X)*measure.Length(n) - o.Length*measure.Length(seam)
			require.LessOrEqual(t, off.Abs(), measure.Length(n))
		}
		require.Equal(t, n-1, seam)
	}
}

// Running marks from one end, each rounded by itself, against a chain of rounded
// widths (worked two ways; ISO 129-1 lists both and keeps chains for where the
// build-up does no harm).
func TestMark_RunningValues(t *testing.T) {
	eighths := func(n int) measure.Length { return measure.Length(n) * inch / 16 }
	for _, c := range []struct {
		name  string
		total measure.Length
		n     int
		mark  measure.Length
		want  []measure.Length
		worst float64 // of a mark, in nanometres
	}{
		{"100 in in 7, to 1/16 in", 100 * inch, 7, inch / 16,
			[]measure.Length{eighths(229), eighths(457), eighths(686), eighths(914), eighths(1143), eighths(1371)}, 3.0 / 112 * 25.4e6},
		{"3650 mm in 7, to 1 mm", 3650 * mm, 7, mm,
			[]measure.Length{521 * mm, 1043 * mm, 1564 * mm, 2086 * mm, 2607 * mm, 3129 * mm}, 3.0 / 7 * 1e6},
		{"5029.2 mm in 11, to 1 mm", 11 * 4572 * mm / 10, 11, mm,
			[]measure.Length{457 * mm, 914 * mm, 1372 * mm, 1829 * mm, 2286 * mm, 2743 * mm, 3200 * mm, 3658 * mm, 4115 * mm, 4572 * mm}, 0.4e6},
	} {
		o := mask.Outline{Length: c.total, Width: measure.Metre}
		site := siteOf(survey.Room{Length: c.total, Width: measure.Metre}, survey.Fixture{})
		var got []measure.Length
		worst := 0.0
		for _, m := range site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{layerOf(o, c.n, 1)})[0].Marks {
			if m.Kind == setout.SeamMark {
				got = append(got, m.At.ToMark(c.mark))
				worst = max(worst, float64((m.At.ToMark(c.mark) - m.At).Abs()))
			}
		}
		assert.Equal(t, c.want, got, c.name)
		assert.InDelta(t, c.worst, worst, 1, c.name)
	}
}

// A line of the box struck between its two marks runs along the box: random
// rooms out of square, turned or not. The marks lie on their walls, in order,
// and every one has its other end on the wall that its own other end names.
func TestMarks_InSkewRooms(t *testing.T) {
	random := rand.New(rand.NewSource(12))
	for range 100 {
		site := setout.Site{Shape: randomQuad(random), Fixture: setout.SpotAt(point(2500, 1800))}
		way := setout.Way{On: "fixture", Square: []setout.Square{"room", "AB", "CD", "DA"}[random.Intn(4)], Turned: random.Intn(2) == 0}
		o := mask.Outline{Length: 2600 * mm, Width: 2400 * mm}
		box, ok := site.Place(way, o, 0)
		require.True(t, ok)
		layer := layerOf(o, 1+random.Intn(6), 1+random.Intn(6))
		columns, rows := layer.Runs(o)
		walls := site.Marks(box, []mask.Layer{layer})
		require.Len(t, walls, 4)
		on := func(wall survey.Wall, from survey.Corner, l measure.Length) (x, y float64) {
			w, _ := site.Shape.Wall(wall)
			start, end := w.Start, w.End
			if from == w.To {
				start, end = end, start
			}
			long := math.Hypot(float64(end.X-start.X), float64(end.Y-start.Y))
			share := float64(l) / long
			return float64(start.X) + share*float64(end.X-start.X), float64(start.Y) + share*float64(end.Y-start.Y)
		}
		count := 0
		for _, w := range walls {
			last := measure.Length(0)
			for _, m := range w.Marks {
				count++
				require.GreaterOrEqual(t, m.At, last)
				last = m.At
				require.LessOrEqual(t, m.At, w.Length)
				require.NotEqual(t, w.Wall, m.Join.Wall)
				x, y := on(w.Wall, w.From, m.At)
				jx, jy := on(m.Join.Wall, m.Join.From, m.Join.At)
				for _, end := range [][2]float64{{x, y}, {jx, jy}} {
					p := box.In(survey.Point{X: measure.Length(end[0]), Y: measure.Length(end[1])})
					require.True(t, lies(m, p, box, columns, rows, site), "%+v at %v", m, p)
				}
			}
		}
		// Three lines each way, two of the fixture, and the seams; two ends each.
		require.Equal(t, 2*(6+2+len(columns.Gaps)+len(rows.Gaps)), count)
	}
}

// lies tells whether a place is on the line that a mark stands for.
func lies(m setout.Mark, p survey.Point, box setout.Box, columns, rows mask.Run, site setout.Site) bool {
	near := func(a, b measure.Length) bool { return (a - b).Abs() <= 4 }
	switch m.Kind {
	case setout.BoxMark:
		switch box.Turn.SideFacing(survey.Wall(m.Label)) {
		case survey.AB:
			return near(p.Y, 0)
		case survey.BC:
			return near(p.X, box.Length)
		case survey.CD:
			return near(p.Y, box.Width)
		}
		return near(p.X, 0)
	case setout.CentreMark:
		return near(p.X, box.Length/2) || near(p.Y, box.Width/2)
	case setout.FixtureMark:
		at := box.In(survey.Point{X: site.Fixture.Twice.X / 2, Y: site.Fixture.Twice.Y / 2})
		return near(p.X, at.X) || near(p.Y, at.Y)
	}
	for i := range columns.Gaps {
		if m.Label == mask.ColumnSeam(i+1) && near(p.X, columns.Seam(i)) {
			return true
		}
	}
	for i := range rows.Gaps {
		if m.Label == mask.RowSeam(i+1) && near(p.Y, rows.Seam(i)) {
			return true
		}
	}
	return false
}

// In an L a line stops at the first wall it meets, and each wall is read from
// its first corner. Worked by hand.
func TestMarks_InAnL(t *testing.T) {
	site := setout.Site{Shape: ell}
	box := setout.Box{X: 300 * mm, Y: 400 * mm, Length: 2000 * mm, Width: 3000 * mm}
	walls := site.Marks(box, nil)
	require.Len(t, walls, 6)
	ends := map[survey.Wall][]measure.Length{}
	for _, w := range walls {
		for _, m := range w.Marks {
			ends[w.Wall] = append(ends[w.Wall], m.At)
		}
	}
	assert.Equal(t, map[survey.Wall][]measure.Length{
		"AB": {300 * mm, 1300 * mm, 2300 * mm},
		"BC": {400 * mm, 1900 * mm},             // y 400 and the middle, 1900, go through to x 6000
		"DE": {1400 * mm},                       // y 3400, from D at y 2000
		"EF": {200 * mm, 1200 * mm, 2200 * mm},  // from E at x 2500
		"FA": {1600 * mm, 3100 * mm, 4600 * mm}, // from F at y 5000
	}, ends)
	assert.Equal(t, setout.End{Wall: "EF", From: "E", At: 2200 * mm}, walls[0].Marks[0].Join)
}

// A round room is marked along the two centre lines of the box.
func TestMarks_InARoundRoom(t *testing.T) {
	site := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 6*measure.Metre, 4*measure.Metre), Fixture: setout.SpotAt(point(3100, 2000))}
	o := mask.Outline{Length: 3600 * mm, Width: 2400 * mm}
	walls := site.Marks(placed(t, site, setout.OnRoom, o), []mask.Layer{layerOf(o, 2, 3)})
	require.Len(t, walls, 2)
	for i, m := range walls[0].Marks {
		assert.Equal(t, m.At, m.Cast.Along+m.In)
		walls[0].Marks[i].In, walls[0].Marks[i].Cast = 0, setout.Cast{}
	}
	assert.Equal(t, setout.WallMarks{Wall: setout.AlongLine, Length: 6 * measure.Metre, Marks: []setout.Mark{
		{Kind: setout.BoxMark, Label: "DA", At: 1200 * mm},
		{Kind: setout.CentreMark, At: 3000 * mm},
		{Kind: setout.SeamMark, Label: "1│2", Layer: "L1", At: 3000 * mm, After: 1, Columns: true},
		{Kind: setout.FixtureMark, At: 3100 * mm},
		{Kind: setout.BoxMark, Label: "BC", At: 4800 * mm},
	}}, walls[0])
	assert.Equal(t, 4*measure.Metre, walls[1].Length)
	assert.Equal(t, []measure.Length{800 * mm, 1600 * mm, 2000 * mm, 2000 * mm, 2400 * mm, 3200 * mm},
		[]measure.Length{walls[1].Marks[0].At, walls[1].Marks[1].At, walls[1].Marks[2].At, walls[1].Marks[3].At, walls[1].Marks[4].At, walls[1].Marks[5].At})
}
