package hanging

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

const cm = measure.Centimetre

func corners(r Rect) []survey.Point {
	return []survey.Point{{X: r.X, Y: r.Y}, {X: r.X + r.Length, Y: r.Y}, {X: r.X + r.Length, Y: r.Y + r.Width}, {X: r.X, Y: r.Y + r.Width}}
}

// A room of 4 × 3 m, its corner A at the origin of the box; a deck of 180 × 60 cm
// with an arm of 50 cm all round.
var (
	fourByThree = corners(Rect{Length: 400 * cm, Width: 300 * cm})
	longDeck    = Platform{Length: 180 * cm, Width: 60 * cm, Arm: 50 * cm}
	longFoot    = Foot{Length: 180 * cm, Width: 100 * cm}
	midStation  = Station{Deck: Rect{100 * cm, 100 * cm, 180 * cm, 60 * cm}, Reach: Rect{50 * cm, 50 * cm, 280 * cm, 160 * cm}}
	itsPanels   = Rect{60 * cm, 60 * cm, 240 * cm, 120 * cm}
)

// Worked by hand: the foot of 180 × 100 cm lies from 80 to 180 cm across. The
// panels lie from 60 to 300 along and from 60 to 180 across, so the deck of 180 ×
// 60 cm may go 30 cm back and 10 cm on, either way.
func TestStand(t *testing.T) {
	for _, row := range []struct {
		name        string
		things      []Rect
		fits        bool
		x, y, lacks measure.Length
		inTheWay    []int
	}{
		{name: "nothing stands there", fits: true},
		{name: "a chest touches the foot", things: []Rect{{100 * cm, 180 * cm, 100 * cm, 50 * cm}}, fits: true},
		{name: "a chest 10 cm under the edge: the deck goes 10 cm towards WX", things: []Rect{{100 * cm, 170 * cm, 100 * cm, 50 * cm}}, fits: true, y: -10 * cm},
		{name: "and 30 cm, as far as the panels allow: they end at 180, the reach at 210", things: []Rect{{100 * cm, 150 * cm, 100 * cm, 50 * cm}}, fits: true, y: -30 * cm},
		{name: "31 cm is 1 cm too much", things: []Rect{{100 * cm, 149 * cm, 100 * cm, 50 * cm}}, y: -31 * cm, lacks: cm, inTheWay: []int{0}},
		{name: "a chest at the end: 10 cm is all there is", things: []Rect{{270 * cm, 90 * cm, 60 * cm, 60 * cm}}, fits: true, x: -10 * cm},
		{name: "two chests, one on either side", things: []Rect{{100 * cm, 150 * cm, 100 * cm, 10 * cm}, {100 * cm, 60 * cm, 100 * cm, 10 * cm}}, inTheWay: []int{0}},
	} {
		f := Floor{Room: fourByThree}
		for _, r := range row.things {
			f.Things = append(f.Things, corners(r))
		}
		got := f.Stand(midStation, itsPanels, longDeck, longFoot)
		assert.Equal(t, row.fits, got.Fits, row.name)
		assert.Equal(t, row.inTheWay, got.Things, row.name)
		if row.fits || row.lacks > 0 {
			assert.Equal(t, [3]measure.Length{row.x, row.y, row.lacks}, [3]measure.Length{got.MovedX, got.MovedY, got.Lacks}, row.name)
		} else {
			assert.Positive(t, got.Lacks, row.name)
		}
	}
}

// Outriggers wider than the room leaves beside the deck keep it off the wall: a
// deck that reaches the wall itself has its foot in it.
func TestStand_OutriggersKeepOffTheWall(t *testing.T) {
	f := Floor{Room: fourByThree}
	s := Station{Deck: Rect{100 * cm, 0, 180 * cm, 60 * cm}, Reach: Rect{50 * cm, -50 * cm, 280 * cm, 160 * cm}}
	got := f.Stand(s, Rect{60 * cm, 0, 240 * cm, 80 * cm}, longDeck, longFoot)
	assert.True(t, got.Fits)
	assert.Equal(t, 20*cm, got.MovedY)
	assert.Equal(t, Rect{100 * cm, 0, 180 * cm, 100 * cm}, got.Foot)
	// Panels that end at the far end of the reach leave less room to move only
	// where they begin: at 0 they allow the deck to be 50 cm off.
	got = f.Stand(s, Rect{60 * cm, -40 * cm, 240 * cm, 80 * cm}, longDeck, longFoot)
	assert.False(t, got.Fits)
	assert.True(t, got.Wall)
	assert.Empty(t, got.Things)
	assert.Equal(t, 10*cm, got.Lacks)
}

func TestStand_Turned(t *testing.T) {
	f := Floor{Room: fourByThree, Things: [][]survey.Point{corners(Rect{100 * cm, 100 * cm, 20 * cm, 60 * cm}), corners(Rect{255 * cm, 100 * cm, 20 * cm, 60 * cm})}}
	p := longDeck
	panels := Rect{160 * cm, 100 * cm, 60 * cm, 60 * cm}
	assert.False(t, f.Stand(midStation, panels, p, Foot{180 * cm, 60 * cm}).Fits, "between two pillars 135 cm apart")
	p.Turn = true
	got := f.Stand(midStation, panels, p, Foot{180 * cm, 60 * cm})
	assert.True(t, got.Fits, "turned a quarter it fits")
	assert.True(t, got.Turned)
	assert.Equal(t, Rect{160 * cm, 40 * cm, 60 * cm, 180 * cm}, got.Deck)
}

// Walls at 45° cut a corner off the room: the foot's corner may touch them.
func TestStand_Slanting(t *testing.T) {
	room := []survey.Point{{X: 100 * cm}, {X: 400 * cm}, {X: 400 * cm, Y: 300 * cm}, {Y: 300 * cm}, {Y: 100 * cm}}
	f := Floor{Room: room}
	s := Station{Deck: Rect{50 * cm, 50 * cm, 60 * cm, 60 * cm}, Reach: Rect{0, 0, 160 * cm, 160 * cm}}
	p := Platform{Length: 60 * cm, Width: 60 * cm, Arm: 50 * cm}
	got := f.Stand(s, Rect{20 * cm, 20 * cm, 100 * cm, 100 * cm}, p, Foot{60 * cm, 60 * cm})
	assert.True(t, got.Fits)
	assert.False(t, got.IsMoved(), "x + y = 100 cm touches the corner at 50, 50")
	got = f.Stand(s, Rect{20 * cm, 20 * cm, 100 * cm, 100 * cm}, p, Foot{70 * cm, 70 * cm})
	assert.True(t, got.Fits)
	assert.InDelta(t, 10*float64(cm), float64(got.MovedX+got.MovedY), 1, "the corner of the wider foot has to come 5 and 5 cm back")
}

// cell is the unit of the small rooms below.
const cell = measure.Length(2)

// small is a rectilinear room on a grid of cells, with things in it.
type small struct {
	room   []survey.Point
	in     func(x, y measure.Length) bool // whether the unit square there is in the room
	things []Rect
}

func drawSmall(t *rapid.T) small {
	side := func(name string, least, most int) measure.Length {
		return cell * measure.Length(rapid.IntRange(least, most).Draw(t, name))
	}
	length, width := side("length", 3, 9), side("width", 3, 9)
	cutX, cutY := side("cutX", 0, 3), side("cutY", 0, 3)
	s := small{room: []survey.Point{{}, {X: length}, {X: length, Y: width}, {Y: width}}}
	if cutX > 0 && cutY > 0 && cutX < length && cutY < width {
		s.room = []survey.Point{{}, {X: length}, {X: length, Y: width - cutY}, {X: length - cutX, Y: width - cutY}, {X: length - cutX, Y: width}, {Y: width}}
	} else {
		cutX, cutY = 0, 0
	}
	s.in = func(x, y measure.Length) bool {
		return x >= 0 && y >= 0 && x < length && y < width && (x < length-cutX || y < width-cutY)
	}
	for range rapid.IntRange(0, 4).Draw(t, "things") {
		s.things = append(s.things, Rect{side("x", -1, 8), side("y", -1, 8), side("long", 1, 4), side("wide", 1, 4)})
	}
	return s
}

func overlaps(a, b Rect) bool {
	return a.X < b.X+b.Length && b.X < a.X+a.Length && a.Y < b.Y+b.Width && b.Y < a.Y+a.Width
}

func (s small) free(deck, foot Rect) bool {
	body := Rect{X: min(deck.X, foot.X), Y: min(deck.Y, foot.Y)}
	body.Length = max(deck.X+deck.Length, foot.X+foot.Length) - body.X
	body.Width = max(deck.Y+deck.Width, foot.Y+foot.Width) - body.Y
	for x := body.X; x < body.X+body.Length; x++ {
		for y := body.Y; y < body.Y+body.Width; y++ {
			if !s.in(x, y) {
				return false
			}
		}
	}
	for _, thing := range s.things {
		if overlaps(foot, thing) {
			return false
		}
	}
	return true
}

// Every place on the grid is tried: none fits where Stand says so, none is nearer
// than its answer, and where nothing fits none lacks less.
func TestStand_AgainstEveryPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSmall(t)
		f := Floor{Room: s.room}
		for _, thing := range s.things {
			f.Things = append(f.Things, corners(thing))
		}
		side := func(name string, most int) measure.Length {
			return cell * measure.Length(rapid.IntRange(1, most).Draw(t, name))
		}
		p := Platform{Length: side("deck", 4), Width: side("deck width", 3), Arm: cell * measure.Length(rapid.IntRange(0, 3).Draw(t, "arm"))}
		foot := Foot{p.Length + 2*measure.Length(rapid.IntRange(-1, 2).Draw(t, "foot"))*cell/2, p.Width + 2*measure.Length(rapid.IntRange(0, 2).Draw(t, "foot width"))*cell/2}
		if foot.Length <= 0 {
			foot.Length = p.Length
		}
		at := stationAt(Rect{cell * measure.Length(rapid.IntRange(-3, 6).Draw(t, "x")), cell * measure.Length(rapid.IntRange(-3, 6).Draw(t, "y")), p.Length + 2*p.Arm, p.Width + 2*p.Arm}, p.Arm, false)
		panels := Rect{X: at.Reach.X + cell*measure.Length(rapid.IntRange(0, 2).Draw(t, "from")), Y: at.Reach.Y + cell*measure.Length(rapid.IntRange(0, 2).Draw(t, "from across"))}
		panels.Length = max(cell, at.Reach.Length-(panels.X-at.Reach.X)-cell*measure.Length(rapid.IntRange(0, 2).Draw(t, "less")))
		panels.Width = max(cell, at.Reach.Width-(panels.Y-at.Reach.Y)-cell*measure.Length(rapid.IntRange(0, 2).Draw(t, "less across")))
		panels.Length = min(panels.Length, at.Reach.X+at.Reach.Length-panels.X)
		panels.Width = min(panels.Width, at.Reach.Y+at.Reach.Width-panels.Y)
		if panels.Length <= 0 || panels.Width <= 0 {
			return
		}
		got := f.Stand(at, panels, p, foot)

		leastLack, leastWay := measure.Length(-1), measure.Length(0)
		for dx := measure.Length(-30); dx <= 30; dx++ {
			for dy := measure.Length(-30); dy <= 30; dy++ {
				deck := Rect{at.Deck.X + dx, at.Deck.Y + dy, p.Length, p.Width}
				under := Rect{deck.X + (p.Length - foot.Length).Half(), deck.Y + (p.Width - foot.Width).Half(), foot.Length, foot.Width}
				if !s.free(deck, under) {
					continue
				}
				lack := max(0, deck.X-p.Arm-panels.X, panels.X+panels.Length-(deck.X+deck.Length+p.Arm),
					deck.Y-p.Arm-panels.Y, panels.Y+panels.Width-(deck.Y+deck.Width+p.Arm))
				if way := dx.Abs() + dy.Abs(); leastLack < 0 || lack < leastLack || lack == leastLack && way < leastWay {
					leastLack, leastWay = lack, way
				}
			}
		}
		require.Equal(t, leastLack == 0, got.Fits, "%+v", got)
		if leastLack < 0 {
			return // it stands nowhere in the room
		}
		require.Equal(t, leastLack, got.Lacks)
		require.Equal(t, leastWay, got.MovedX.Abs()+got.MovedY.Abs())
		require.True(t, s.free(got.Deck, got.Foot))
	})
}

// What stands where the platform is put never lies under its foot, however the
// things and the walls are turned: by separating lines, in another way than Stand
// finds it.
func TestStand_NeverOnAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		turn := func(p survey.Point, c, s float64) survey.Point {
			return survey.Point{X: measure.Length(float64(p.X)*c - float64(p.Y)*s), Y: measure.Length(float64(p.X)*s + float64(p.Y)*c)}
		}
		f := Floor{}
		k := rapid.Float64Range(-1, 1).Draw(t, "half tangent")
		c, s := (1-k*k)/(1+k*k), 2*k/(1+k*k)
		for _, p := range fourByThree {
			f.Room = append(f.Room, turn(p, c, s))
		}
		for range rapid.IntRange(1, 5).Draw(t, "things") {
			at := func(name string) measure.Length { return cm * measure.Length(rapid.IntRange(0, 380).Draw(t, name)) }
			var thing []survey.Point
			for _, p := range corners(Rect{at("x"), at("y"), at("long")/4 + cm, at("wide")/4 + cm}) {
				thing = append(thing, turn(p, c, s))
			}
			f.Things = append(f.Things, thing)
		}
		middle := turn(survey.Point{X: 200 * cm, Y: 150 * cm}, c, s)
		station := stationAt(Rect{middle.X - 140*cm, middle.Y - 80*cm, 280 * cm, 160 * cm}, 50*cm, false)
		p := longDeck
		p.Turn = rapid.Bool().Draw(t, "turn")
		got := f.Stand(station, Rect{station.Reach.X + 60*cm, station.Reach.Y + 40*cm, 160 * cm, 80 * cm}, p, Foot{180 * cm, 80 * cm})
		if !got.Fits {
			return
		}
		for _, thing := range f.Things {
			require.True(t, apart(corners(got.Foot), thing), "%+v stands on %v", got, thing)
		}
		for _, p := range corners(got.Foot) {
			for i, w := range f.Room {
				next := f.Room[(i+1)%4]
				across := float64(next.X-w.X)*float64(p.Y-w.Y) - float64(next.Y-w.Y)*float64(p.X-w.X)
				require.Greater(t, across, -float64(400*cm)*10, "outside the wall by more than a rounding")
			}
		}
	})
}

// apart tells whether a side of one of two convex outlines has the other outline
// on its outer side, to a few nanometres.
func apart(a, b []survey.Point) bool {
	for _, pair := range [2][2][]survey.Point{{a, b}, {b, a}} {
		one, other := pair[0], pair[1]
		for i, p := range one {
			q := one[(i+1)%len(one)]
			outside := true
			for _, r := range other {
				across := float64(q.X-p.X)*float64(r.Y-p.Y) - float64(q.Y-p.Y)*float64(r.X-p.X)
				outside = outside && across < float64((q.X-p.X).Abs()+(q.Y-p.Y).Abs())*10
			}
			if outside {
				return true
			}
		}
	}
	return false
}
