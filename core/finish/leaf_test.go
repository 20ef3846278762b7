package finish

import (
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func leafOf(side, lap string) Leaf {
	return Leaf{Length: inches(side), Width: inches(side), Lap: inches(lap)}
}

func mm(n int64) measure.Length { return measure.Length(n) * measure.Millimetre }

func metricLeaf(side, lap int64) Leaf { return Leaf{Length: mm(side), Width: mm(side), Lap: mm(lap)} }

func field(t *testing.T, area measure.Area, leaf Leaf, cover, waste string) Leaves {
	t.Helper()
	leaves, problems, ok := Field(Gilding{Area: area, Leaf: leaf, Cover: num(cover), Waste: num(waste)})
	require.True(t, ok)
	require.Empty(t, problems)
	return leaves
}

// in25 is leaf in books of 25 and packs of 20 books, without prices.
var in25 = Sold{PerBook: 25, BooksPerPack: 20}

func TestLeafAreas(t *testing.T) {
	book := func(side string) measure.Area { return leafOf(side, "0").Area().Times(num("25")) }
	isRounded(t, "1.833767", book("3.25").SquareFeet(), "Encyclopædia Britannica 1911, Goldbeating: 25 leaves of 3¼ in are 264 in²")
	isWithin(t, "264", "0.1", book("3.25").SquareFeet().Mul(num("144")), "the same, as printed")
	isRounded(t, "1.977539", book("3.375").SquareFeet(), "worked")
	isRounded(t, "100/1", leafOf("3", "0").reach(1600).SquareFeet(), "an early Britannica, Gold-leaf: 1600 leaves of 3 in from an ounce")
	isRounded(t, "9494.36", leafOf("3.125", "0").reach(140_000).SquareFeet(), "Colorado capitol dome notice, 2013")
	isRounded(t, "39.55", leafOf("3.375", "0").reach(500).SquareFeet(), "a coatings distributor's leaf page, where 39.50 is printed")
	isRounded(t, "9401", leafOf("5", "0.25").reach(60_000).SquareFeet(), "a paint studio's post, August 2009: 60 000 sheets overhead")
	isRounded(t, "10417", leafOf("5", "0").reach(60_000).SquareFeet(), "the same without lap")

	// An old text on building construction: the older leaf of 3¼ in
	// covers 7.27 % less than today's.
	less := num("1").Sub(book("3.25").SquareMetres.Quo(book("3.375").SquareMetres))
	isRounded(t, "0.0727", less, "older leaf")
}

func TestBookYieldsAboutAFootAndAHalf(t *testing.T) {
	// A leaf specification sheet: a book does 1½ ft² and a pack of 500 leaves
	// 30 ft² once laps and waste are counted, 75.85 % of the bare leaf. The same
	// sheet's rule lies between the laps of ⅛ and ¼ in with 13 to 22 % waste.
	for _, c := range []struct{ lap, waste string }{{"0.25", "0.13"}, {"0.125", "0.2225"}} {
		leaves := field(t, sqft("30"), leafOf("3.375", c.lap), "1", c.waste)
		isWithin(t, "500", "10", leaves.Exact, "lap "+c.lap)
	}
	// A decorative painter's page: with the rule 200 ft² take 134 books, bare 102.
	bare := field(t, sqft("200"), leafOf("3.375", "0"), "1", "0")
	books, _, _ := BooksFor(bare.Count, in25)
	assert.Equal(t, int64(102), books.Books)
	ruled := field(t, sqft("200"), leafOf("3.375", "0"), "1", num("1.977539").Quo(num("1.5")).Sub(num("1")).RoundHalfEven(6).String())
	books, _, _ = BooksFor(ruled.Count, in25)
	assert.Equal(t, int64(134), books.Books)
}

func TestFieldWorked(t *testing.T) {
	for _, c := range []struct {
		area        measure.Area
		leaf        Leaf
		waste, want string
	}{
		{sqft("1"), leafOf("3.375", "0.125"), "0", "13.633136"},
		{sqft("1"), leafOf("3.375", "0.25"), "0", "14.7456"},
		{sqft("1"), leafOf("3.25", "0.125"), "0", "14.7456"},
		{sqm("1"), metricLeaf(140, 5), "0", "54.869684"},
		{sqm("1"), metricLeaf(140, 5), "0.10", "60.356653"},
		{sqm("1"), metricLeaf(80, 3), "0", "168.662506"},
		{sqft("6"), leafOf("3.375", "0.125"), "0", "81.80"},
		{sqm("0.54"), metricLeaf(140, 5), "0", "29.63"},
	} {
		isRounded(t, c.want, field(t, c.area, c.leaf, "1", c.waste).Exact, "worked")
	}
	// 12 ft² of openings with 48 ft of edges, leaf run ⅛ in past them: ½ ft² falls
	// on the mask. Leaf is bought for 12.5 ft² and shows on 12.
	spilt, _, ok := Field(Gilding{Area: sqft("12"), Spill: SpillOf(48*measure.Foot, inches("0.125")), Leaf: leafOf("3.375", "0.125"), Cover: num("1"), Waste: num("0.10")})
	assert.True(t, ok)
	isRounded(t, "187.4556", spilt.Exact, "worked")
	isRounded(t, "25/2", spilt.Gilded().SquareFeet(), "worked")
	isRounded(t, "12", spilt.Shows().SquareFeet(), "worked")
	yield, _, _ := spilt.Yield()
	isRounded(t, "0.809", yield, "12 × 144 ÷ 3.375² ÷ 187.4556")
	books, _, _ := BooksFor(188, in25)
	assert.Equal(t, int64(8), books.Books, "worked: 187.4556 leaves")
}

func TestCeilingOfCompositionLeaf(t *testing.T) {
	// A gilder's notes, November 2012: a ceiling of 14 × 12 ft in leaves of 5½ in
	// lapped ¼ in takes 32 × 28 = 896 leaves, 36 books. By area and pitch 877.7,
	// by bare area 799.7.
	leaf := leafOf("5.5", "0.25")
	assert.Equal(t, int64(896), gridCount(leaf, 168*measure.Inch, 144*measure.Inch))
	books, _, _ := BooksFor(896, in25)
	assert.Equal(t, int64(36), books.Books)
	isRounded(t, "877.7", field(t, sqft("168"), leaf, "1", "0").Exact, "pitch")
	pitch := field(t, sqft("168"), leaf, "1", "0")
	isRounded(t, "799.7", pitch.Bare, "bare, 96 short")
	grid, _, ok := InGrid(Gilding{Leaf: leaf, Cover: num("1")}, 168*measure.Inch, 144*measure.Inch, 0)
	require.True(t, ok)
	assert.Equal(t, [3]int64{32, 28, 896}, [3]int64{grid.Columns, grid.Rows, grid.Count})
	isRounded(t, "168/1", grid.Area.SquareFeet(), "the rectangle is the area")
}

func TestGridAndLineWorked(t *testing.T) {
	gold := leafOf("3.375", "0.125")
	assert.Equal(t, int64(96), gridCount(gold, 24*measure.Inch, 36*measure.Inch), "8 × 12")
	assert.Equal(t, int64(35), gridCount(metricLeaf(140, 5), mm(600), mm(900)), "5 × 7")
	assert.Equal(t, int64(3), gold.Line(inches("9.875")), "three leaves to the nanometre")
	assert.Equal(t, int64(4), gold.Line(inches("9.876")))
	assert.Equal(t, int64(1), gold.Line(mm(1)), "shorter than the lap")
	assert.Zero(t, gold.Line(0))

	oblong := Leaf{Length: mm(160), Width: mm(80), Lap: mm(5)}
	assert.Equal(t, int64(2*4), gridCount(oblong, mm(315), mm(305)), "each way its own side")
	columns, rows, turned := oblong.Grid(mm(315), mm(305))
	assert.Equal(t, [2]int64{2, 4}, [2]int64{columns, rows})
	assert.False(t, turned)
	// 80 mm along and 160 across: 1 × 2 instead of 1 × 4 along and 1 of 160.
	columns, rows, turned = oblong.Grid(mm(80), mm(315))
	assert.Equal(t, [2]int64{1, 2}, [2]int64{columns, rows}, "turned, with its length across")
	assert.True(t, turned)
	assert.Equal(t, int64(155*75), func() int64 { n, _ := oblong.Laid().SquareMetres.Mul(num("1000000")).Floor(); return n }())
}

func TestLeafRefuses(t *testing.T) {
	good := Gilding{Area: sqft("10"), Leaf: leafOf("5.5", "0.25"), Cover: num("0.7"), Waste: num("0.1")}
	for _, c := range []struct {
		name  string
		spoil func(g *Gilding)
		at    []string
	}{
		{"no leaf", func(g *Gilding) { g.Leaf = Leaf{} }, []string{"/length", "/width"}},
		{"lap as long as the leaf", func(g *Gilding) { g.Leaf.Lap = g.Leaf.Length }, []string{"/lap", "/lap"}},
		{"lap wider than the leaf", func(g *Gilding) { g.Leaf.Width = mm(5) }, []string{"/lap"}},
		{"lap below nothing", func(g *Gilding) { g.Leaf.Lap = -1 }, []string{"/lap"}},
		{"area below nothing", func(g *Gilding) { g.Area = sqft("-1") }, []string{"/area"}},
		{"cover above the whole", func(g *Gilding) { g.Cover = num("1.01") }, []string{"/cover"}},
		{"waste below nothing", func(g *Gilding) { g.Waste = num("-0.1") }, []string{"/waste"}},
		{"more leaves than are counted", func(g *Gilding) { g.Leaf = Leaf{Length: 2, Width: 2, Lap: 1} }, []string{"/length"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := good
			c.spoil(&g)
			_, problems, ok := Field(g)
			assert.False(t, ok)
			assert.Equal(t, c.at, places(problems))
			for _, p := range problems {
				isSentence(t, p)
				assert.Equal(t, problem.Stop, p.Severity)
			}
		})
	}
	bad := Leaf{Length: mm(80), Width: mm(80), Lap: mm(80)}
	assert.Zero(t, bad.Line(mm(100))+bad.Ring(mm(100))+gridCount(bad, mm(100), mm(100)))
	assert.True(t, bad.reach(5).SquareMetres.IsZero())
}

func gridCount(l Leaf, along, across measure.Length) int64 {
	columns, rows, _ := l.Grid(along, across)
	return columns * rows
}

// reach is the area that leaves whole, lapped leaves add to a field: the field
// rule read backwards, without waste.
func (l Leaf) reach(leaves int64) measure.Area {
	if !l.isLaid() || leaves < 0 {
		return measure.Area{}
	}
	return l.Laid().Times(measure.NumberFromInt(leaves))
}
