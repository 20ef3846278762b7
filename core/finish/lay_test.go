package finish

import (
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func band(t *testing.T, leaf Leaf, b Band, cover, waste string) Leaves {
	t.Helper()
	leaves, problems, ok := InBand(Gilding{Leaf: leaf, Cover: num(cover), Waste: num(waste)}, b)
	require.True(t, ok)
	require.Empty(t, problems)
	return leaves
}

func TestBandsWorked(t *testing.T) {
	gold := leafOf("3.375", "0.125")
	for _, c := range []struct {
		leaf                          Leaf
		band                          Band
		fromLeaf, rows, inRow, leaves int64
		source                        string
	}{
		{gold, Band{Run: 20 * measure.Foot, Width: inches("0.75"), Margin: inches("0.125")}, 3, 1, 74, 25, "worked"},
		{metricLeaf(140, 6), Band{Run: mm(10_000), Width: mm(30), Margin: mm(3), Closed: true}, 3, 1, 75, 25, "worked"},
		{gold, Band{Run: 100 * measure.Foot, Width: inches("4"), Margin: inches("0.125")}, 1, 2, 370, 740, "worked"},
		{metricLeaf(80, 4), Band{Run: mm(5000), Width: mm(20), Margin: mm(3)}, 3, 1, 66, 22, "worked"},
		{leafOf("3.25", "0.125"), Band{Run: inches("3"), Width: inches("0.75")}, 4, 1, 1, 1, "Workshop Receipts, first series: a leaf of 3¼ in is cut in four for lays of ¾ in"},
		{leafOf("3.25", "0.125"), Band{Run: inches("3"), Width: inches("1")}, 3, 1, 1, 1, "the same: in three for those of 1 in"},
	} {
		got := band(t, c.leaf, c.band, "1", "0")
		s := got.Strips
		assert.Equal(t, [4]int64{c.fromLeaf, c.rows, c.inRow, c.leaves}, [4]int64{s.FromLeaf, s.Rows, s.InRow, got.Count}, c.source)
	}
	// A leaf of 3¼ in cut in four is 0.8125 in wide, in three 1.0833 in: the
	// widest bands that are still cut so (worked).
	four, three := Band{Run: inches("3"), Width: inches("0.8125")}, Band{Run: inches("3"), Width: inches("0.8126")}
	assert.Equal(t, int64(4), band(t, leafOf("3.25", "0"), four, "1", "0").Strips.FromLeaf)
	assert.Equal(t, int64(3), band(t, leafOf("3.25", "0"), three, "1", "0").Strips.FromLeaf)
	three.Width = inches("1.0834")
	assert.Equal(t, int64(2), band(t, leafOf("3.25", "0"), three, "1", "0").Strips.FromLeaf)
}

func TestBandRoundAFrame(t *testing.T) {
	// A frame maker's notes, January 2011: a frame of 30 × 40 in inside and 3½
	// in wide is 2 × (33.5 + 43.5) = 154 in along its middle, bought as 13 ft; five
	// leaves for every 3 in make 260. Here each 3 in is one leaf long and five
	// rows wide.
	leaf := Leaf{Length: inches("3"), Width: inches("0.7")}
	assert.Equal(t, 154*measure.Inch, 2*(inches("33.5")+inches("43.5")))
	got := band(t, leaf, Band{Run: 13 * measure.Foot, Width: inches("3.5"), Closed: true}, "1", "0")
	assert.Equal(t, [3]int64{5, 52, 260}, [3]int64{got.Strips.Rows, got.Strips.InRow, got.Count})
	books, _, _ := BooksFor(got.Count, in25)
	assert.Equal(t, int64(11), books.Books, "10.4 books")

	// Derived: mitred at four corners, each strip reaches to the outer corner, so
	// the middle of 154 in and four widths make the outer edge of 2 × (37 + 47) =
	// 168 in.
	got = band(t, leaf, Band{Run: inches("154"), Width: inches("3.5"), Corners: 4, Closed: true}, "1", "0")
	assert.Equal(t, 168*measure.Inch, got.Strips.Length)
	assert.Equal(t, int64(56), got.Strips.InRow)
}

func TestBandFromARoll(t *testing.T) {
	// A leaf specification sheet: a roll is 69 ft long; at 1 in wide it is 5.75 ft²
	// in all, where about 5½ is stated for it, 4 % less.
	roll := Leaf{Length: 69 * measure.Foot, Width: inches("1")}
	require.True(t, roll.IsRoll())
	assert.False(t, leafOf("5.5", "0").IsRoll())
	isRounded(t, "5.75", roll.Area().SquareFeet(), "bare")
	isRounded(t, "0.04", num("1").Sub(num("5.5").Quo(roll.Area().SquareFeet())), "less")

	// The same sheet and notes on rolls of 21 m: a border 4 in wide round 171 × 139
	// in, 51 ft 8 in, is one roll with 17 ft 4 in left over.
	roll.Width = inches("4")
	isRounded(t, "23/1", roll.Area().SquareFeet(), "a roll of 4 in")
	got := band(t, roll, Band{Run: 2 * (171 + 139) * measure.Inch, Width: inches("4"), Closed: true}, "1", "0")
	assert.Equal(t, int64(1), got.Count)
	assert.Equal(t, 17*measure.Foot+4*measure.Inch, roll.Length-got.Strips.Length)
	assert.Equal(t, int64(1), band(t, roll, Band{Run: 620 * measure.Inch, Width: inches("4")}, "1", "0.2").Count, "a fifth more is still one roll")
	assert.Equal(t, int64(2), band(t, roll, Band{Run: 620 * measure.Inch, Width: inches("4")}, "1", "0.4").Count)
}

func TestBrokenLay(t *testing.T) {
	// Derived: 0.7 of 12 × 8 leaves and a tenth more are 73.92.
	leaf := leafOf("3.375", "0.125")
	grid, _, ok := InGrid(Gilding{Leaf: leaf, Cover: num("0.7"), Waste: num("0.1")}, 24*measure.Inch, 36*measure.Inch, 0)
	require.True(t, ok)
	isRounded(t, "73.92", grid.Exact, "grid")
	assert.Equal(t, int64(74), grid.Count)
	isRounded(t, "66.2570", field(t, sqft("6"), leaf, "0.7", "0.1571428571").Exact, "field: 81.7988 × 0.7 × 1.15714")
	// Derived: 20 ft × 0.7 × 1.1 = 184.8 in, 57 strips, 19 leaves.
	got := band(t, leaf, Band{Run: 20 * measure.Foot, Width: inches("0.75"), Margin: inches("0.125")}, "0.7", "0.1")
	assert.Equal(t, inches("184.8"), got.Strips.Length)
	assert.Equal(t, [2]int64{57, 19}, [2]int64{got.Strips.InRow, got.Count})
}

func TestYieldAndHowMuchMore(t *testing.T) {
	// A leaf specification sheet: a book of 1.977539 ft² does 1½ ft² once laps and
	// waste are counted. That is a yield of 75.85 %, and 31.8 % more than the bare
	// area to buy (both per cents worked).
	waste := num("1.977539").Quo(num("1.5")).Sub(num("1")).RoundHalfEven(9).String()
	yield, more, ok := field(t, sqft("200"), leafOf("3.375", "0"), "1", waste).Yield()
	require.True(t, ok)
	isRounded(t, "0.7585", yield, "yield")
	isRounded(t, "0.318", more, "more")

	// Derived: a lap of ¼ in on 3⅜ in takes 1.1664 of the leaf, × 1.13.
	yield, more, _ = field(t, sqft("10"), leafOf("3.375", "0.25"), "1", "0.13").Yield()
	isRounded(t, "0.7587", yield, "yield")
	isRounded(t, "0.3180", more, "more")
	_, _, ok = field(t, sqft("0"), leafOf("3.375", "0"), "1", "0").Yield()
	assert.False(t, ok)
}

func TestForwardAndBackwardAgree(t *testing.T) {
	// Leaves to area and area to leaves are one rule.
	for _, n := range []int64{1, 7, 500, 60_000} {
		leaf := leafOf("5", "0.25")
		assert.Equal(t, n, field(t, leaf.reach(n), leaf, "1", "0").Count)
	}
}

func TestLaysRefuse(t *testing.T) {
	good := Gilding{Leaf: leafOf("5.5", "0.25"), Cover: num("1"), Waste: num("0.1")}
	_, problems, ok := InBand(good, Band{Margin: -1, Corners: -1})
	assert.False(t, ok)
	assert.Equal(t, []string{"/bandRun", "/bandWidth", "/spill", "/bandCorners"}, places(problems))
	for _, p := range problems {
		isSentence(t, p)
	}
	_, problems, ok = InGrid(good, 0, measure.Foot, 0)
	assert.False(t, ok)
	isOnly(t, problems, "/area", problem.Stop)
	tiny := Gilding{Leaf: Leaf{Length: 2, Width: 2, Lap: 1}, Cover: num("1")}
	for name, found := range map[string][]problem.Problem{
		"band":      secondOf(InBand(tiny, Band{Run: measure.Longest, Width: 1})),
		"wide band": secondOf(InBand(tiny, Band{Run: measure.Millimetre, Width: measure.Longest})),
		"grid":      secondOf(InGrid(tiny, measure.Longest, measure.Longest, 0)),
		"corners":   secondOf(InBand(good, Band{Run: 1, Width: measure.Longest, Corners: 1 << 62})),
	} {
		require.NotEmpty(t, found, name)
		isOnly(t, found, "/length", problem.Stop)
	}
}

func secondOf(_ Leaves, problems []problem.Problem, _ bool) []problem.Problem { return problems }

// Whatever the lay, there are never fewer leaves than bare area ÷ leaf area, and
// never fewer for more of anything.
func TestLeavesCoverWhatIsLaid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, low, high int64) measure.Length {
			return measure.Length(rapid.Int64Range(low, high).Draw(t, name)) * measure.Millimetre / 10
		}
		leaf := Leaf{Length: length("length", 200, 3000), Width: length("width", 200, 3000), Lap: length("lap", 0, 190)}
		g := Gilding{Leaf: leaf, Cover: measure.NumberFromFraction(rapid.Int64Range(1, 100).Draw(t, "cover"), 100),
			Waste: measure.NumberFromFraction(rapid.Int64Range(0, 100).Draw(t, "waste"), 100)}
		along, across := length("along", 1, 120_000), length("across", 1, 120_000)
		b := Band{Run: along, Width: length("band", 1, 10_000), Margin: length("margin", 0, 100),
			Corners: rapid.Int64Range(0, 40).Draw(t, "corners"), Closed: rapid.Bool().Draw(t, "closed")}
		lays := map[string]func(g Gilding) (Leaves, []problem.Problem, bool){
			"field": func(g Gilding) (Leaves, []problem.Problem, bool) {
				g.Area = measure.AreaOf(along, across)
				return Field(g)
			},
			"grid": func(g Gilding) (Leaves, []problem.Problem, bool) { return InGrid(g, along, across, 0) },
			"band": func(g Gilding) (Leaves, []problem.Problem, bool) { return InBand(g, b) },
		}
		for name, lay := range lays {
			got, problems, ok := lay(g)
			if !ok || len(problems) > 0 {
				t.Fatalf("%s: %v", name, problems)
			}
			if measure.NumberFromInt(got.Count).Cmp(got.Bare) < 0 || got.Exact.Cmp(got.Bare) < 0 {
				t.Fatalf("%s: %d leaves do not cover what takes %s bare", name, got.Count, got.Bare.RoundHalfEven(3))
			}
			less := g
			less.Cover, less.Waste = g.Cover.Mul(num("0.9")), g.Waste.Mul(num("0.9"))
			if fewer, _, _ := lay(less); fewer.Count > got.Count {
				t.Fatalf("%s: less cover and waste take more leaves", name)
			}
		}
	})
}

func FuzzLeavesCoverTheField(f *testing.F) {
	f.Add(int64(16_000_000), int64(85_725_000), int64(3_175_000), int64(700), int64(100))
	f.Add(int64(1), int64(2), int64(1), int64(1000), int64(0))
	f.Fuzz(func(t *testing.T, area, side, lap, cover, waste int64) {
		if side > int64(measure.Metre) {
			t.Skip()
		}
		g := Gilding{Area: measure.Area{SquareMetres: measure.NumberFromFraction(area, 1_000_000)},
			Leaf:  Leaf{Length: measure.Length(side), Width: measure.Length(side), Lap: measure.Length(lap)},
			Cover: measure.NumberFromFraction(cover, 1000), Waste: measure.NumberFromFraction(waste, 1000)}
		leaves, problems, ok := Field(g)
		if !ok {
			if len(problems) == 0 {
				t.Fatal("no answer and no reason")
			}
			return
		}
		if measure.NumberFromInt(leaves.Count).Cmp(leaves.Bare) < 0 {
			t.Fatalf("%d leaves do not cover the field", leaves.Count)
		}
		g.Area = g.Area.Add(g.Area)
		if twice, _, ok := Field(g); ok && twice.Count < leaves.Count {
			t.Fatal("more area takes fewer leaves")
		}
	})
}

// A leaf of 100 × 80 mm in a band of 45 mm and 10 m: along its length one strip is
// cut from a leaf, 106 leaves of 95 mm; crosswise two of 75 mm, 134 strips from 67
// leaves. Worked by hand. A ribbon is never cut across.
func TestInBand_TurnsAnOblongLeaf(t *testing.T) {
	g := Gilding{Leaf: Leaf{Length: 100 * measure.Millimetre, Width: 80 * measure.Millimetre, Lap: 5 * measure.Millimetre}, Cover: num("1")}
	b := Band{Run: 10 * measure.Metre, Width: 45 * measure.Millimetre}
	leaves, _, ok := InBand(g, b)
	assert.True(t, ok)
	assert.True(t, leaves.Turned)
	assert.EqualValues(t, 67, leaves.Count)
	assert.EqualValues(t, 134, leaves.Strips.InRow)
	assert.EqualValues(t, 2, leaves.Strips.FromLeaf)
	g.Leaf = g.Leaf.Turned()
	leaves, _, _ = InBand(g, b)
	assert.False(t, leaves.Turned)
	assert.EqualValues(t, 67, leaves.Count, "it lay so from the first")
	b.Width = 30 * measure.Millimetre
	leaves, _, _ = InBand(g, b)
	assert.EqualValues(t, 45, leaves.Count, "3 strips of 100 mm less the lap: 134 ÷ 3")
	g.Leaf = Leaf{Length: 67 * measure.Metre, Width: 40 * measure.Millimetre}
	leaves, _, _ = InBand(g, Band{Run: 10 * measure.Metre, Width: 45 * measure.Millimetre})
	assert.False(t, leaves.Turned)
}

// Turned or not, it is never more than the other way would take.
func TestInBand_TakesTheFewer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := func(name string) measure.Length {
			return measure.Length(rapid.Int64Range(20, 200).Draw(t, name)) * measure.Millimetre
		}
		g := Gilding{Leaf: Leaf{Length: side("long"), Width: side("wide"), Lap: measure.Length(rapid.Int64Range(0, 10).Draw(t, "lap")) * measure.Millimetre}, Cover: num("1"), Waste: num("0.1")}
		b := Band{Run: measure.Length(rapid.Int64Range(1, 30_000).Draw(t, "run")) * measure.Millimetre, Width: side("band"), Margin: measure.Length(rapid.Int64Range(0, 5).Draw(t, "margin")) * measure.Millimetre, Closed: rapid.Bool().Draw(t, "closed")}
		one, _, _ := InBand(g, b)
		g.Leaf = g.Leaf.Turned()
		other, _, _ := InBand(g, b)
		if one.Count != other.Count {
			t.Fatalf("%d leaves one way and %d the other", one.Count, other.Count)
		}
	})
}
