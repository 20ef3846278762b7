package register_test

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/register"
	"ceilingwright/core/survey"
)

func labels(panels []mask.Panel) string {
	var all []string
	for _, p := range panels {
		all = append(all, p.Label())
	}
	return strings.Join(all, " ")
}

// Worked by hand on whole feet.
func TestChooseKey_ByHand(t *testing.T) {
	box := func(columns, rows int) register.Grid { return grid(columns, rows, 12*foot, 12*foot, 0) }
	for _, c := range []struct {
		name               string
		this, next         register.Grid
		key, lies, touches string
	}{
		{"the same grid: the panel beneath is the only one on it", box(3, 3), box(3, 3), "B2", "B2", "A2 B1 B3 C2"},
		{"even: of the four in the middle the first", box(4, 4), box(4, 4), "B2", "B2", "A2 B1 B3 C2"},
		{"shifted by half a panel: the corners lie under fewest", box(2, 2), box(3, 3), "A1", "A1 A2 B1 B2", ""},
		// Four columns of 3 ft over three of 4 ft: the second of the four lies
		// from 3 to 6 ft, under columns 1 and 2; the first lies from 0 to 3 ft,
		// under column 1 alone.
		{"an outer column under one", box(4, 1), box(3, 1), "A1", "A1", ""},
		{"edges that meet at one side", box(4, 1), box(2, 1), "A2", "A1", "A2"},
		{"one panel under everything", box(1, 1), box(2, 2), "A1", "A1 A2 B1 B2", ""},
	} {
		key, ok := register.ChooseKey(c.this, c.next, nil)
		require.True(t, ok)
		assert.Equal(t, c.key, key.Piece.First().Label(), c.name)
		assert.Equal(t, c.lies, labels(key.Lies), c.name)
		assert.Equal(t, c.touches, labels(key.Touches), c.name)
	}
	_, ok := register.ChooseKey(register.Grid{}, box(3, 3), nil)
	assert.False(t, ok)
	_, ok = register.ChooseKey(box(2, 2), box(2, 2), func(mask.Panel) bool { return true })
	assert.False(t, ok, "no panel can be kept")
	key, ok := register.ChooseKey(box(3, 3), box(3, 3), func(p mask.Panel) bool { return p.Row == 2 && p.Column == 2 })
	assert.True(t, ok)
	assert.Equal(t, "A2", key.Piece.First().Label(), "next to the barred middle, the first of four")
}

func TestKeyAt(t *testing.T) {
	this, next := grid(4, 3, 12*foot, 9*foot, inch/4), grid(4, 3, 12*foot, 9*foot, 0)
	key, ok := register.KeyAt(this, next, mask.Panel{Column: 1, Row: 2})
	require.True(t, ok)
	assert.Equal(t, "B1", labels(key.Lies))
	assert.Equal(t, "A1 B2 C1", labels(key.Touches), "its gap of 1/4 in is no more than a seam")
	require.Len(t, key.Sides, 3, "nothing lies towards ZW")
	assert.Equal(t, survey.AB, key.Sides[0].Wall)
	// Columns of 11 ft 11 1/4 in ÷ 4 = 35 13/16 in against 36 in.
	assert.Equal(t, register.Side{Wall: survey.BC, Panels: []mask.Panel{{Column: 2, Row: 2}}, Away: 36*inch - 35*inch - 13*inch/16, Touch: true}, key.Sides[1])

	for _, p := range []mask.Panel{{}, {Column: 5, Row: 1}, {Column: 1, Row: 4}, {Column: -1, Row: 1}} {
		_, ok := register.KeyAt(this, next, p)
		assert.False(t, ok, "%v is no panel", p)
	}

	// Columns of 3 ft, next of 4 ft: from the key's far edge at 3 ft the next
	// column begins 1 ft away.
	key, _ = register.KeyAt(grid(4, 1, 12*foot, foot, 0), grid(3, 1, 12*foot, foot, 0), mask.Panel{Column: 1, Row: 1})
	assert.Empty(t, key.Touches)
	assert.Equal(t, []register.Side{{Wall: survey.BC, Panels: []mask.Panel{{Column: 2, Row: 1}}, Away: foot}}, key.Sides)
	nothing, ok := register.KeyAt(this, register.Grid{}, mask.Panel{Column: 1, Row: 1})
	assert.True(t, ok)
	assert.Empty(t, nothing.Lies)
	assert.Empty(t, nothing.Sides)
}

// Thirds are no whole nanometres: the cuts of two layers of the same grid may
// be rounded apart and still are the same line.
func TestKeyAt_RoundedCutsMeet(t *testing.T) {
	this, next := grid(3, 3, 10*foot+1, 10*foot+2, 0), grid(3, 3, 10*foot, 10*foot+1, 0)
	key, _ := register.KeyAt(this, next, mask.Panel{Column: 2, Row: 2})
	assert.Equal(t, "B2", labels(key.Lies))
	assert.Equal(t, "A2 B1 B3 C2", labels(key.Touches))
}

func TestKeyAt_Blocks(t *testing.T) {
	this, next := grid(4, 4, 12*foot, 12*foot, 0), grid(4, 4, 12*foot, 12*foot, 0)
	this.Pieces = []mask.Piece{{Name: "centre", Kind: mask.Span, Column: 2, Row: 2, Columns: 2, Rows: 2}}
	next.Pieces = []mask.Piece{{Name: "side", Kind: mask.Joined, Column: 3, Row: 1, Columns: 1, Rows: 2}}
	key, ok := register.KeyAt(this, next, mask.Panel{Column: 3, Row: 3})
	require.True(t, ok)
	assert.Equal(t, "centre", key.Piece.Name, "a span is kept up whole")
	assert.Equal(t, "A3 B2 B3 C2 C3", labels(key.Lies), "a block that lies on it in part lies on it")
	assert.Equal(t, "A2 B1 B4 C1 C4 D2 D3", labels(key.Touches))
	key, ok = register.ChooseKey(this, next, nil)
	require.True(t, ok)
	assert.Equal(t, "A2", key.Piece.Name, "one lies on a single panel, four on the block")
	_, ok = register.ChooseKey(register.Grid{Columns: this.Columns, Rows: this.Rows, Pieces: []mask.Piece{{Column: 1, Row: 1, Columns: 4, Rows: 4}}},
		next, func(p mask.Panel) bool { return p.Column == 4 && p.Row == 4 })
	assert.False(t, ok, "a block with a panel missing is not kept up")
}

func randomGrid(random *rand.Rand, box measure.Length) register.Grid {
	run := func() mask.Run {
		sizes := make([]measure.Length, 1+random.Intn(6))
		left := box
		for i := range sizes[:len(sizes)-1] {
			sizes[i] = left * measure.Length(1+random.Intn(3)) / 8
			left -= sizes[i]
		}
		sizes[len(sizes)-1] = left
		return mask.RunFromSizes(sizes, measure.Length(random.Intn(3))*mm, box)
	}
	return register.Grid{Columns: run(), Rows: run()}
}

// Against brute force: every panel of the next layer held against every panel
// of this one, by areas.
func TestChooseKey_AgreesWithBruteForce(t *testing.T) {
	random := rand.New(rand.NewSource(19))
	for range 400 {
		box := measure.Length(4000+random.Intn(3)*500) * mm
		this, next := randomGrid(random, box), randomGrid(random, box)
		barred := func(p mask.Panel) bool { return (p.Column*7+p.Row*3)%5 == 0 }
		var want mask.Panel
		wantLies, wantAway := 0, 0.0
		for r := range this.Rows.Sizes {
			for c := range this.Columns.Sizes {
				p := mask.Panel{Column: c + 1, Row: r + 1}
				key, ok := register.KeyAt(this, next, p)
				require.True(t, ok)
				require.Equal(t, labels(lying(this, next, p)), labels(key.Lies))
				require.Equal(t, labels(touching(this, next, p)), labels(key.Touches))
				x := float64(2*this.Columns.Starts[c]+this.Columns.Sizes[c]-box) / 1e6
				y := float64(2*this.Rows.Starts[r]+this.Rows.Sizes[r]-box) / 1e6
				away := x*x + y*y
				if !barred(p) && (want.Row == 0 || len(key.Lies) < wantLies || len(key.Lies) == wantLies && away < wantAway-1) {
					want, wantLies, wantAway = p, len(key.Lies), away
				}
			}
		}
		key, ok := register.ChooseKey(this, next, barred)
		require.Equal(t, want.Row > 0, ok)
		if ok {
			require.Len(t, key.Lies, wantLies)
			if want != key.Piece.First() {
				x := float64(2*this.Columns.Starts[key.Piece.Column-1]+this.Columns.Sizes[key.Piece.Column-1]-box) / 1e6
				y := float64(2*this.Rows.Starts[key.Piece.Row-1]+this.Rows.Sizes[key.Piece.Row-1]-box) / 1e6
				require.InDelta(t, wantAway, x*x+y*y, 20, "another panel only where it is as near")
			}
		}
	}
}

func lying(this, next register.Grid, p mask.Panel) (panels []mask.Panel) {
	x, w := this.Columns.Starts[p.Column-1], this.Columns.Sizes[p.Column-1]
	y, h := this.Rows.Starts[p.Row-1], this.Rows.Sizes[p.Row-1]
	for r := range next.Rows.Sizes {
		for c := range next.Columns.Sizes {
			wide := min(x+w, next.Columns.Starts[c]+next.Columns.Sizes[c]) - max(x, next.Columns.Starts[c])
			high := min(y+h, next.Rows.Starts[r]+next.Rows.Sizes[r]) - max(y, next.Rows.Starts[r])
			if wide > mask.Noticeable && high > mask.Noticeable {
				panels = append(panels, mask.Panel{Column: c + 1, Row: r + 1})
			}
		}
	}
	return panels
}

func touching(this, next register.Grid, p mask.Panel) (panels []mask.Panel) {
	x, w := this.Columns.Starts[p.Column-1], this.Columns.Sizes[p.Column-1]
	y, h := this.Rows.Starts[p.Row-1], this.Rows.Sizes[p.Row-1]
	widest := func(this, next mask.Run, i, j int) measure.Length {
		all := max(this.Gap, next.Gap)
		if i >= 0 && i < len(this.Gaps) {
			all = max(all, this.Gaps[i])
		}
		if j >= 0 && j < len(next.Gaps) {
			all = max(all, next.Gaps[j])
		}
		return all + mm
	}
	meets := func(away, most measure.Length) bool { return away >= -mask.Noticeable && away <= most }
	for r := range next.Rows.Sizes {
		for c := range next.Columns.Sizes {
			left, right := next.Columns.Starts[c], next.Columns.Starts[c]+next.Columns.Sizes[c]
			top, bottom := next.Rows.Starts[r], next.Rows.Starts[r]+next.Rows.Sizes[r]
			wide, high := min(x+w, right)-max(x, left), min(y+h, bottom)-max(y, top)
			beside := high > mask.Noticeable && (meets(x-right, widest(this.Columns, next.Columns, p.Column-2, c)) ||
				meets(left-x-w, widest(this.Columns, next.Columns, p.Column-1, c-1)))
			above := wide > mask.Noticeable && (meets(y-bottom, widest(this.Rows, next.Rows, p.Row-2, r)) ||
				meets(top-y-h, widest(this.Rows, next.Rows, p.Row-1, r-1)))
			if beside || above {
				panels = append(panels, mask.Panel{Column: c + 1, Row: r + 1})
			}
		}
	}
	return panels
}

func TestChooseKey_TenThousandPanels(t *testing.T) {
	this, next := grid(100, 100, 80*measure.Metre, 60*measure.Metre, 0), grid(99, 101, 80*measure.Metre, 60*measure.Metre, 0)
	key, ok := register.ChooseKey(this, next, nil)
	require.True(t, ok)
	assert.Len(t, key.Lies, 2, "99 columns over 100: the outer ones lie under one, and 101 rows over 100 under two")
	asked := 0
	_, ok = register.ChooseKey(this, this, func(mask.Panel) bool { asked++; return true })
	assert.False(t, ok)
	assert.Equal(t, 10_000, asked, "each panel is asked about once")
}
