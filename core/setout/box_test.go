package setout_test

import (
	"math/big"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

var inches = measure.Notation{System: measure.FeetInches, InchMark: inch / 16, MetricMark: mm, Plain: true}

// The supper room with its mask and the light a little off the middle.
var (
	room   = survey.Room{Length: 17*foot + 9*inch + inch/2, Width: 13*foot + 4*inch, Height: 10*foot + 2*inch}
	supper = mask.Outline{Length: 15*foot + 9*inch, Width: 11*foot + 3*inch + inch/2}
	light  = survey.Fixture{At: survey.Measured, FromDA: 105 * inch, FromAB: 80 * inch, Across: 9 * inch}
)

func borders(ab, bc, cd, da measure.Length) setout.Borders {
	return setout.Borders{AB: ab, BC: bc, CD: cd, DA: da}
}

func TestBoxOnRoom_Borders(t *testing.T) {
	for _, c := range []struct {
		source string
		room   survey.Room
		mask   mask.Outline
		want   setout.Borders
	}{
		{"figures of the trade, common practice, no source", survey.Room{Length: 188 * inch, Width: 122 * inch}, mask.Outline{Length: 180 * inch, Width: 115 * inch},
			borders(3*inch+inch/2, 4*inch, 3*inch+inch/2, 4*inch)},
		{"worked by hand: 24 1/2 in and 24 1/2 in over, halved", room, supper,
			borders(12*inch+inch/4, 12*inch+inch/4, 12*inch+inch/4, 12*inch+inch/4)},
		{"a reader's question, ceiling light not centred", survey.Room{Length: 171 * inch, Width: 139 * inch}, mask.Outline{Length: 120 * inch, Width: 96 * inch},
			borders(21*inch+inch/2, 25*inch+inch/2, 21*inch+inch/2, 25*inch+inch/2)},
		{"(room − pattern) ÷ 2, worked two ways", survey.Room{Length: 4000 * mm, Width: 287 * inch / 2}, mask.Outline{Length: 3200 * mm, Width: 96 * inch},
			borders(23*inch+3*inch/4, 400*mm, 23*inch+3*inch/4, 400*mm)},
		{"an odd nanometre goes to XY and YZ", survey.Room{Length: 4000*mm + 1, Width: 3000*mm + 1}, mask.Outline{Length: 3000 * mm, Width: 2000 * mm},
			borders(500*mm, 500*mm+1, 500*mm+1, 500*mm)},
		{"also when the mask is too large", survey.Room{Length: 3000 * mm, Width: 2000 * mm}, mask.Outline{Length: 3000*mm + 3, Width: 2000*mm + 2},
			borders(-1, -1, -1, -2)},
	} {
		t.Run(c.source, func(t *testing.T) {
			assert.Equal(t, c.want, bordersOf(t, siteOf(c.room, survey.Fixture{}), setout.OnRoom, c.mask))
		})
	}
}

// Two readers' questions on a ceiling light off the middle, one on a
// decorating page of December 2021: 14'3" × 11'7", field 10 × 8 ft, lamp 3 1/2 in
// east and 1 1/4 in north of the centre. North is wall AB, east wall BC.
func TestBoxOnFixture_DiffersByTwiceTheOffset(t *testing.T) {
	hall := survey.Room{Length: 171 * inch, Width: 139 * inch}
	lamp := survey.Fixture{At: survey.Measured, FromDA: hall.Length/2 + 7*inch/2, FromAB: hall.Width/2 - 5*inch/4}
	field := mask.Outline{Length: 120 * inch, Width: 96 * inch}
	got := bordersOf(t, siteOf(hall, lamp), setout.OnFixture, field)
	assert.Equal(t, borders(20*inch+inch/4, 22*inch, 22*inch+3*inch/4, 29*inch), got)
	assert.Equal(t, 7*inch, got.EndsDiffer())
	assert.Equal(t, 2*inch+inch/2, got.SidesDiffer())

	// 4000 with the fixture at 1965, and 143 1/2 in with it at 70 3/4
	// (worked two ways: difference of borders is twice the offset).
	for _, c := range []struct{ side, at, pattern, low, high measure.Length }{
		{4000 * mm, 1965 * mm, 3200 * mm, 365 * mm, 435 * mm},
		{287 * inch / 2, 283 * inch / 4, 96 * inch, 91 * inch / 4, 99 * inch / 4},
	} {
		narrow := survey.Room{Length: c.side, Width: c.side}
		at := survey.Fixture{At: survey.Measured, FromDA: c.at, FromAB: c.at}
		assert.Equal(t, borders(c.low, c.high, c.high, c.low),
			bordersOf(t, siteOf(narrow, at), setout.OnFixture, mask.Outline{Length: c.pattern, Width: c.pattern}))
	}
}

func TestBoxOnFixture_InTheMiddleIsTheRooms(t *testing.T) {
	odd := survey.Room{Length: 4000*mm + 1, Width: 3000*mm + 3}
	for _, o := range []mask.Outline{{Length: 3000 * mm, Width: 2000 * mm}, {Length: 3000*mm + 1, Width: 2000*mm + 5}} {
		site := siteOf(odd, survey.Fixture{At: survey.InMiddle})
		assert.Equal(t, placed(t, site, setout.OnRoom, o), placed(t, site, setout.OnFixture, o))
	}
	_, ok := siteOf(odd, survey.Fixture{}).Place(setout.Way{On: setout.OnFixture, Square: setout.SquareToRoom}, supper, 0)
	assert.False(t, ok)
}

func TestBorders_AddUpToTheRoom(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	length := func() measure.Length { return measure.Length(1 + random.Int63n(int64(measure.Longest))) }
	for range 10_000 {
		room := survey.Room{Length: length(), Width: length()}
		o := mask.Outline{Length: length(), Width: length()}
		fixture := survey.Fixture{At: survey.Measured, FromDA: length(), FromAB: length()}
		site := siteOf(room, fixture)
		onRoom := placed(t, site, setout.OnRoom, o)
		onFixture, ok := site.Place(setout.Way{On: setout.OnFixture, Square: setout.SquareToRoom}, o, 0)
		for i, box := range []setout.Box{onRoom, onFixture} {
			if i == 1 && !ok {
				continue
			}
			b := site.Borders(box).Sides
			if b.DA+b.BC+box.Length != room.Length || b.AB+b.CD+box.Width != room.Width {
				t.Fatalf("%+v in %+v: borders %+v do not add up", box, room, b)
			}
		}
		b := site.Borders(onRoom).Sides
		if b.EndsDiffer() > 1 || b.SidesDiffer() > 1 || b.DA > b.BC || b.AB > b.CD {
			t.Fatalf("%+v in %+v is not centred: %+v", o, room, b)
		}
		if !ok {
			continue
		}
		f := site.Borders(onFixture).Sides
		off := measure.Length(2 * (2*fixture.FromDA - room.Length).Abs())
		if (2*f.EndsDiffer() - off).Abs() > 2 {
			t.Fatalf("ends of %+v differ by %v, twice the offset is %v", f, f.EndsDiffer(), off/2)
		}
	}
}

func TestBox_Diagonal(t *testing.T) {
	for _, c := range []struct {
		name                string
		length, width, want measure.Length
	}{
		{"3-4-5", 4000 * mm, 3000 * mm, 5000 * mm},
		{"5-12-13", 12 * foot, 5 * foot, 13 * foot},
		{"8-15-17", 1500 * mm, 800 * mm, 1700 * mm},
		{"20-21-29", 2100 * mm, 2000 * mm, 2900 * mm},
		{"√2 of a nanometre is nearer 1", 1, 1, 1},
		{"√8 of a nanometre is nearer 3", 2, 2, 3},
		{"the longest, 100√2 m", measure.Longest, measure.Longest, 141_421_356_237},
		{"nothing", 0, 0, 0},
	} {
		assert.Equal(t, c.want, setout.Box{Length: c.length, Width: c.width}.Diagonal(), c.name)
	}
}

func TestBox_DiagonalIsNearest(t *testing.T) {
	random := rand.New(rand.NewSource(2))
	square := func(n measure.Length) *big.Int { return new(big.Int).Mul(big.NewInt(int64(n)), big.NewInt(int64(n))) }
	for range 2000 {
		length, width := measure.Length(random.Int63n(int64(measure.Longest))), measure.Length(random.Int63n(int64(measure.Longest)))
		d := setout.Box{Length: length, Width: width}.Diagonal()
		// (2d − 1)² ≤ 4(l² + w²) ≤ (2d + 1)²
		four := new(big.Int).Lsh(new(big.Int).Add(square(length), square(width)), 2)
		require.LessOrEqual(t, square(2*d-1).Cmp(four), 0)
		require.GreaterOrEqual(t, square(2*d+1).Cmp(four), 0)
	}
}

func TestBox_CornersAndPanels(t *testing.T) {
	box := placed(t, siteOf(room, survey.Fixture{}), setout.OnRoom, supper)
	edge := 12*inch + inch/4
	assert.Equal(t, survey.Point{X: edge, Y: edge}, box.Corner(survey.A))
	assert.Equal(t, survey.Point{X: edge + supper.Length, Y: edge}, box.Corner(survey.B))
	assert.Equal(t, survey.Point{X: edge + supper.Length, Y: edge + supper.Width}, box.Corner(survey.C))
	assert.Equal(t, survey.Point{X: edge, Y: edge + supper.Width}, box.Corner(survey.D))
	assert.Equal(t, survey.Point{X: room.Length / 2, Y: room.Width / 2}, box.Centre())

	columns, rows := layerOf(supper, 5, 3).Runs(supper)
	area := measure.Area{}
	for c := 1; c <= 5; c++ {
		for r := 1; r <= 3; r++ {
			p := box.PanelBox(columns, rows, mask.Panel{Column: c, Row: r})
			area = area.Add(measure.AreaOf(p.Length, p.Width))
		}
	}
	assert.Zero(t, area.SquareMetres.Cmp(supper.Area().SquareMetres), "the panels cover the mask")
	last := box.PanelBox(columns, rows, mask.Panel{Column: 5, Row: 3})
	assert.Equal(t, box.Corner(survey.C), last.Corner(survey.C))
	assert.Equal(t, box.Corner(survey.A), box.PanelBox(columns, rows, mask.Panel{Column: 1, Row: 1}).Corner(survey.A))
}

func layerOf(o mask.Outline, columns, rows int) mask.Layer {
	return mask.Layer{ID: "L1", Columns: mask.Equal(o.Length, columns), Rows: mask.Equal(o.Width, rows)}
}

func TestMirror(t *testing.T) {
	// A reflected ceiling plan keeps one wall on top: (600, 400) in a room of
	// 4000 is seen at (3400, 400) (several glossaries of drawing practice).
	hall := survey.ShapeFromSides(survey.Rectangle, 4000*mm, 3000*mm)
	at := survey.Point{X: 600 * mm, Y: 400 * mm}
	assert.Equal(t, survey.Point{X: 3400 * mm, Y: 400 * mm}, setout.Mirror(at, hall))

	random := rand.New(rand.NewSource(3))
	for _, shape := range []survey.Shape{hall, skew, ell, chamfered, survey.ShapeFromSides(survey.Round, 5000*mm, 3000*mm)} {
		low, high := shape.Bounds()
		for range 200 {
			p := survey.Point{X: measure.Length(random.Int63n(int64(9 * measure.Metre))), Y: measure.Length(random.Int63n(int64(9 * measure.Metre)))}
			mirrored := setout.Mirror(p, shape)
			require.Equal(t, p, setout.Mirror(mirrored, shape), "twice is back again")
			require.Equal(t, p.Y, mirrored.Y)
			require.Equal(t, p.X-low.X, high.X-mirrored.X)
		}
	}
}

// siteOf is a rectangular room as a site.
func siteOf(room survey.Room, fixture survey.Fixture) setout.Site {
	s := setout.Site{Shape: survey.ShapeFromSides(survey.Rectangle, room.Length, room.Width)}
	s.Fixture.Twice, s.Fixture.Known = fixture.TwiceMiddle(s.Shape)
	return s
}

func placed(t *testing.T, s setout.Site, on setout.On, o mask.Outline) setout.Box {
	t.Helper()
	box, ok := s.Place(setout.Way{On: on, Square: setout.SquareToRoom}, o, 0)
	require.True(t, ok)
	return box
}

func bordersOf(t *testing.T, s setout.Site, on setout.On, o mask.Outline) setout.Borders {
	t.Helper()
	return s.Borders(placed(t, s, on, o)).Sides
}
