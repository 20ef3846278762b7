package hanging_test

import (
	"math/rand"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

var inches = measure.Notation{System: measure.FeetInches, InchMark: inch / 16, MetricMark: mm, Plain: true}

// platformOf is a platform of that reach: half of it deck, the rest arms.
func platformOf(length, width, overlap measure.Length) hanging.Platform {
	arm := min(length, width) / 4
	return hanging.Platform{Length: length - 2*arm, Width: width - 2*arm, Arm: arm, Overlap: overlap}
}

// Worked by hand from ceil((box − overlap) ÷ (reach − overlap)) and
// (box − reach) ÷ (places − 1).
func TestLayout_EvenGrid(t *testing.T) {
	for _, c := range []struct {
		length, width, along, across, overlap measure.Length // mm
		columns, rows                         int
		pitchAlong, pitchAcross               float64 // mm
	}{
		{4115, 3048, 1500, 1200, 0, 3, 3, 1307.5, 924},
		{4115, 3048, 1500, 1200, 100, 3, 3, 1307.5, 924},
		{6000, 4000, 1500, 1000, 0, 4, 4, 1500, 1000},
		{6001, 4000, 1500, 1000, 0, 5, 4, 1125.25, 1000},
		{9144, 2438, 1800, 900, 150, 6, 4, 1468.8, 512.666666},
		{1400, 1100, 1500, 1200, 100, 1, 1, 0, 0},
		{1500, 1200, 1500, 1200, 0, 1, 1, 0, 0},
		{1501, 1200, 1500, 1200, 0, 2, 1, 1, 0},
	} {
		o := mask.Outline{Length: c.length * mm, Width: c.width * mm}
		l, problems := hanging.LayoutFor(o, platformOf(c.along*mm, c.across*mm, c.overlap*mm), hanging.Rect{})
		require.Empty(t, problems)
		assert.True(t, l.Fewest)
		require.Len(t, l.Stations, c.columns*c.rows)
		assert.Equal(t, []int{c.columns, c.rows}, []int{l.Columns, l.Rows}, "%v", c)
		first, final := l.Stations[0].Reach, l.Stations[len(l.Stations)-1].Reach
		if c.columns > 1 {
			assert.InDelta(t, c.pitchAlong, float64(l.Stations[1].Reach.X)/1e6, 1e-6)
			assert.Zero(t, first.X)
			assert.Equal(t, o.Length, final.X+final.Length)
		} else {
			assert.Equal(t, o.Length, 2*first.X+first.Length, "in the middle")
		}
		if c.rows > 1 {
			assert.InDelta(t, c.pitchAcross, float64(l.Stations[c.columns].Reach.Y)/1e6, 1e-6)
			assert.Equal(t, o.Width, final.Y+final.Width)
		}
		assert.Equal(t, hanging.Rect{X: first.X + min(c.along, c.across)*mm/4, Y: first.Y + min(c.along, c.across)*mm/4,
			Length: first.Length - min(c.along, c.across)*mm/2, Width: first.Width - min(c.along, c.across)*mm/2}, l.Stations[0].Deck)
	}
}

func TestBoustrophedon(t *testing.T) {
	for _, c := range []struct {
		columns, rows                         int
		pitchAlong, pitchAcross, along, acros measure.Length // tenths of a millimetre
	}{
		{3, 3, 13075, 9240, 96930, 81590},
		{4, 4, 15000, 10000, 210000, 165000},
		{6, 2, 14000, 8000, 148000, 118000},
		{5, 3, 10000, 10000, 140000, 140000}, // equal pitch: (places − 1) × pitch
		{1, 1, 10000, 10000, 0, 0},
		{0, 3, 10000, 10000, 0, 0},
	} {
		along, across := hanging.Boustrophedon(c.columns, c.rows, c.pitchAlong, c.pitchAcross)
		assert.Equal(t, []measure.Length{c.along, c.acros}, []measure.Length{along, across}, "%v", c)
	}
}

// The shorter of the two is the shortest of all ways through small grids, held
// against every order of the places.
func TestBoustrophedon_IsShortest(t *testing.T) {
	for _, c := range []struct {
		columns, rows           int
		pitchAlong, pitchAcross measure.Length
	}{{3, 3, 13075, 9240}, {6, 2, 14000, 8000}, {4, 2, 5, 9}, {2, 5, 3, 7}, {3, 4, 8, 5}} {
		n := c.columns * c.rows
		best := make([][]measure.Length, 1<<n) // by places visited and the last
		for set := range best {
			best[set] = slices.Repeat([]measure.Length{1 << 50}, n)
		}
		for k := range n {
			best[1<<k][k] = 0
		}
		for set := range best {
			for k := range n {
				for j := range n {
					if best[set][k] < 1<<50 && set>>j&1 == 0 {
						way := measure.Length(j%c.columns-k%c.columns).Abs()*c.pitchAlong + measure.Length(j/c.columns-k/c.columns).Abs()*c.pitchAcross
						best[set|1<<j][j] = min(best[set|1<<j][j], best[set][k]+way)
					}
				}
			}
		}
		along, across := hanging.Boustrophedon(c.columns, c.rows, c.pitchAlong, c.pitchAcross)
		assert.Equal(t, slices.Min(best[1<<n-1]), min(along, across), "%v", c)
	}
}

// The way from the middle place of 3 × 3 is no longer than from a corner where
// the parity allows it, and with uneven pitches as short as every order allows.
func TestOrder_RouteFromTheMiddle(t *testing.T) {
	o := mask.Outline{Length: 4115 * mm, Width: 3048 * mm}
	l, _ := hanging.LayoutFor(o, platformOf(1500*mm, 1200*mm, 0), hanging.Rect{})
	columns := mask.RunFromSizes(mask.Equal(o.Length, 6), 0, o.Length)
	rows := mask.RunFromSizes(mask.Equal(o.Width, 6), 0, o.Width)
	s := hanging.Order(hanging.Job{Columns: columns, Rows: rows, Stations: l.Stations})
	assert.Equal(t, 8, s.Moves)
	assert.True(t, s.Fewest)
	// From the middle: two columns of places down and up again cost the least
	// when every move across is 924 and only three run along, 1307.5 each; found
	// by every order of nine places from the middle.
	assert.Equal(t, shortestFrom(l.Stations, 4), s.Way)
}

func shortestFrom(stations []hanging.Station, first int) measure.Length {
	n := len(stations)
	best := make([][]measure.Length, 1<<n)
	for set := range best {
		best[set] = slices.Repeat([]measure.Length{1 << 60}, n)
	}
	best[1<<first][first] = 0
	for set := range best {
		for k := range n {
			for j := range n {
				if best[set][k] < 1<<60 && set>>j&1 == 0 {
					best[set|1<<j][j] = min(best[set|1<<j][j], best[set][k]+wayBetween(stations[k], stations[j]))
				}
			}
		}
	}
	return slices.Min(best[1<<n-1])
}

// Exhaustive search for whole sizes: cells are bits, every place of every
// rectangle both ways round is tried, lowest bare cell first. Reaches may run
// past the box.
func fewestTurned(length, width, a, b int) int {
	var covers [][]uint64 // by cell: what each rectangle over it covers
	covers = make([][]uint64, length*width)
	for _, side := range [][2]int{{a, b}, {b, a}} {
		for y := 1 - side[1]; y < width; y++ {
			for x := 1 - side[0]; x < length; x++ {
				var set uint64
				for r := max(y, 0); r < min(y+side[1], width); r++ {
					for c := max(x, 0); c < min(x+side[0], length); c++ {
						set |= 1 << (r*length + c)
					}
				}
				for cell := range covers {
					if set>>cell&1 == 1 {
						covers[cell] = append(covers[cell], set)
					}
				}
			}
		}
	}
	all := uint64(1)<<(length*width) - 1
	var search func(covered uint64, left int) bool
	search = func(covered uint64, left int) bool {
		bare := 0
		cell := -1
		for i := range length * width {
			if covered>>i&1 == 0 {
				if cell < 0 {
					cell = i
				}
				bare++
			}
		}
		if bare == 0 {
			return true
		}
		if bare > left*a*b {
			return false
		}
		for _, set := range covers[cell] {
			if search((covered|set)&all, left-1) {
				return true
			}
		}
		return false
	}
	for count := 1; ; count++ {
		if search(0, count) {
			return count
		}
	}
}

// Fixed, then turned; each also found by the exhaustive search above.
func TestLayout_TurnedByHand(t *testing.T) {
	for _, c := range []struct{ length, width, a, b, fixed, turned int }{
		{3, 3, 2, 1, 6, 5}, // a pinwheel
		{5, 5, 3, 2, 6, 5},
		{7, 7, 4, 3, 6, 5},
		{4, 4, 3, 1, 8, 6},
		{6, 5, 3, 2, 6, 5},
		{7, 5, 3, 2, 9, 6}, // 8 with all of them turned
		{4, 3, 2, 1, 6, 6},
		{5, 3, 2, 2, 6, 6}, // the area would allow 4
	} {
		o := mask.Outline{Length: measure.Length(c.length) * measure.Metre, Width: measure.Length(c.width) * measure.Metre}
		p := platformOf(measure.Length(c.a)*measure.Metre, measure.Length(c.b)*measure.Metre, 0)
		l, _ := hanging.LayoutFor(o, p, hanging.Rect{})
		assert.Len(t, l.Stations, c.fixed, "%v", c)
		p.Turn = true
		l, _ = hanging.LayoutFor(o, p, hanging.Rect{})
		assert.Len(t, l.Stations, c.turned, "%v", c)
		assert.True(t, l.Fewest, "%v", c)
		assertCovers(t, o, p, l)
		if c.length*c.width < 49 {
			assert.Equal(t, c.turned, fewestTurned(c.length, c.width, c.a, c.b), "%v", c)
		}
	}
}

func TestLayout_TurnedIsTheFewest(t *testing.T) {
	for length := 1; length <= 6; length++ {
		for width := 1; width <= length; width++ {
			for a := 1; a <= 4; a++ {
				for b := 1; b <= a; b++ {
					if length*width > 7*a*b {
						continue // the exhaustive search takes too long
					}
					o := mask.Outline{Length: measure.Length(length) * measure.Metre, Width: measure.Length(width) * measure.Metre}
					p := platformOf(measure.Length(a)*measure.Metre, measure.Length(b)*measure.Metre, 0)
					p.Turn = true
					l, _ := hanging.LayoutFor(o, p, hanging.Rect{})
					require.True(t, l.Fewest)
					require.Len(t, l.Stations, fewestTurned(length, width, a, b), "%d × %d by %d × %d", length, width, a, b)
				}
			}
		}
	}
}

// assertCovers holds that every place of the box is in reach, and that reaches
// overlap as asked: shrunk by the overlap they still cover the box less it.
func assertCovers(t *testing.T, o mask.Outline, p hanging.Platform, l hanging.Layout) {
	t.Helper()
	var xs, ys []measure.Length
	for _, s := range l.Stations {
		xs = append(xs, s.Reach.X, s.Reach.X+s.Reach.Length)
		ys = append(ys, s.Reach.Y, s.Reach.Y+s.Reach.Width)
	}
	xs, ys = append(xs, 0, o.Length), append(ys, 0, o.Width)
	slices.Sort(xs)
	slices.Sort(ys)
	xs, ys = slices.Compact(xs), slices.Compact(ys)
	for i := range xs[1:] {
		for j := range ys[1:] {
			if xs[i] < 0 || ys[j] < 0 || xs[i+1] > o.Length || ys[j+1] > o.Width {
				continue
			}
			require.True(t, slices.ContainsFunc(l.Stations, func(s hanging.Station) bool {
				r := s.Reach
				return r.X <= xs[i] && r.Y <= ys[j] && r.X+r.Length >= xs[i+1] && r.Y+r.Width >= ys[j+1]
			}), "bare from %v, %v to %v, %v", xs[i], ys[j], xs[i+1], ys[j+1])
		}
	}
	for _, s := range l.Stations {
		long, wide := p.Reach()
		if s.Turned {
			long, wide = wide, long
		}
		require.Equal(t, []measure.Length{long, wide}, []measure.Length{s.Reach.Length, s.Reach.Width})
		require.Equal(t, hanging.Rect{X: s.Reach.X + p.Arm, Y: s.Reach.Y + p.Arm, Length: long - 2*p.Arm, Width: wide - 2*p.Arm}, s.Deck)
	}
}

func TestLayout_CoversAnyBox(t *testing.T) {
	random := rand.New(rand.NewSource(21))
	for i := range 200 {
		o := mask.Outline{Length: measure.Length(1 + random.Int63n(int64(12*measure.Metre))), Width: measure.Length(1 + random.Int63n(int64(9*measure.Metre)))}
		p := hanging.Platform{Length: 500*mm + measure.Length(random.Int63n(int64(2*measure.Metre))), Width: 500*mm + measure.Length(random.Int63n(int64(measure.Metre))),
			Arm: measure.Length(random.Int63n(int64(600 * mm))), Overlap: measure.Length(random.Int63n(int64(250 * mm)))}
		fixed, problems := hanging.LayoutFor(o, p, hanging.Rect{})
		require.Empty(t, problems)
		assertCovers(t, o, p, fixed)
		p.Turn = true
		turned, _ := hanging.LayoutFor(o, p, hanging.Rect{})
		assertCovers(t, o, p, turned)
		require.LessOrEqual(t, len(turned.Stations), len(fixed.Stations), "case %d", i)
		if turned.Columns > 0 {
			require.Len(t, turned.Stations, turned.Columns*turned.Rows)
		}
		require.True(t, slices.IsSortedFunc(turned.Stations, func(a, b hanging.Station) int {
			if ay, by := 2*a.Deck.Y+a.Deck.Width, 2*b.Deck.Y+b.Deck.Width; ay != by {
				return int(min(max(ay-by, -1), 1))
			}
			return int(min(max(a.Deck.X-b.Deck.X, -1), 1))
		}))
	}
}

// Of two grids with as many places the one with the shorter way is taken.
func TestLayout_TurnsForAShorterWay(t *testing.T) {
	p := platformOf(3*measure.Metre, 2*measure.Metre, 0)
	p.Turn = true
	l, _ := hanging.LayoutFor(mask.Outline{Length: 3 * measure.Metre, Width: 6 * measure.Metre}, p, hanging.Rect{})
	assert.Equal(t, 3, len(l.Stations))
	assert.False(t, l.Stations[0].Turned, "three one behind the other")
	l, _ = hanging.LayoutFor(mask.Outline{Length: 6 * measure.Metre, Width: 3 * measure.Metre}, p, hanging.Rect{})
	assert.Equal(t, 3, len(l.Stations))
	assert.True(t, l.Stations[0].Turned)
}

// A deck stays inside the room, as far as the room allows.
func TestLayout_KeepsOffTheWalls(t *testing.T) {
	o := mask.Outline{Length: 2 * measure.Metre, Width: 3 * measure.Metre}
	p := hanging.Platform{Length: 2400 * mm, Width: 1 * measure.Metre, Arm: 500 * mm}
	room := hanging.Rect{X: -100 * mm, Y: -200 * mm, Length: 2600 * mm, Width: 3400 * mm}
	l, _ := hanging.LayoutFor(o, p, room)
	require.Len(t, l.Stations, 2)
	for _, s := range l.Stations {
		assert.True(t, s.Fits(room))
		assert.Equal(t, -100*mm, s.Deck.X, "moved by 100 mm off wall ZW")
		assert.Equal(t, -600*mm, s.Reach.X)
	}
	room.Length = 2 * measure.Metre
	l, _ = hanging.LayoutFor(o, p, room)
	assert.False(t, l.Stations[0].Fits(room), "a deck longer than the room")
	assert.Equal(t, -300*mm, l.Stations[0].Deck.X, "over both walls alike")
}

func TestPlatform_Check(t *testing.T) {
	for _, c := range []struct {
		name string
		p    hanging.Platform
		want []string
	}{
		{"nothing known", hanging.Platform{}, nil},
		{"as it should be", hanging.Platform{Length: 6 * foot, Width: 30 * inch, Arm: 20 * inch, Overlap: 6 * inch, Turn: true}, nil},
		{"no width", hanging.Platform{Length: 6 * foot}, []string{"/deckWidth"}},
		{"no length", hanging.Platform{Width: 6 * foot}, []string{"/deckLength"}},
		{"a deck of an inch", hanging.Platform{Length: inch, Width: 30 * inch}, []string{"/deckLength"}},
		{"an arm of a fathom", hanging.Platform{Arm: 6 * foot}, []string{"/armReach"}},
		{"more than half", hanging.Platform{Length: 6 * foot, Width: 2 * foot, Overlap: 13 * inch}, []string{"/overlap"}},
		{"half", hanging.Platform{Length: 6 * foot, Width: 2 * foot, Overlap: 12 * inch}, nil},
	} {
		var at []string
		for _, p := range c.p.Check() {
			at = append(at, p.At)
			assert.NotEmpty(t, p.What.String())
			assert.NotEmpty(t, p.Do.String())
		}
		assert.Equal(t, c.want, at, c.name)
	}
}

// Sizes no platform has end in a sentence or in nothing, not in a long wait.
func TestLayout_Hostile(t *testing.T) {
	hall := mask.Outline{Length: measure.Longest, Width: measure.Longest}
	for _, p := range []hanging.Platform{
		{Length: 1, Width: 1}, {Length: 1, Width: 1, Overlap: 1}, {Length: 1, Width: measure.Longest, Turn: true}, {Length: 4 * measure.Metre, Width: 4 * measure.Metre, Turn: true},
		{Length: 5 * measure.Metre, Width: 4999 * mm, Turn: true, Arm: 1},
	} {
		l, problems := hanging.LayoutFor(hall, p, hanging.Rect{})
		if len(l.Stations) == 0 && 2*p.Overlap <= 1 {
			require.Len(t, problems, 1, "%v", p)
			assert.Equal(t, "/deckLength", problems[0].At)
		}
		require.LessOrEqual(t, len(l.Stations), hanging.MostStations)
	}
	l, problems := hanging.LayoutFor(hall, hanging.Platform{Length: 5 * measure.Metre, Width: 5 * measure.Metre}, hanging.Rect{})
	assert.Empty(t, problems)
	assert.Len(t, l.Stations, 400)
	l, _ = hanging.LayoutFor(mask.Outline{}, hanging.Platform{Length: 1, Width: 1}, hanging.Rect{})
	assert.Empty(t, l.Stations)
}

func BenchmarkLayout(b *testing.B) {
	p := hanging.Platform{Length: 1830 * mm, Width: 760 * mm, Arm: 450 * mm, Overlap: 150 * mm, Turn: true}
	for b.Loop() {
		hanging.LayoutFor(mask.Outline{Length: 4805 * mm, Width: 3443 * mm}, p, hanging.Rect{})
	}
}
