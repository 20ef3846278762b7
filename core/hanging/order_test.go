package hanging_test

import (
	"math/big"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

func equalRuns(columns, rows int, width, height measure.Length) (mask.Run, mask.Run) {
	return mask.RunFromSizes(mask.Equal(measure.Length(columns)*width, columns), 0, measure.Length(columns)*width),
		mask.RunFromSizes(mask.Equal(measure.Length(rows)*height, rows), 0, measure.Length(rows)*height)
}

func order(columns, rows mask.Run) []hanging.Hang {
	return hanging.Order(hanging.Job{Columns: columns, Rows: rows}).Hangs
}

func labels(order []hanging.Hang) string {
	var all []string
	for _, h := range order {
		all = append(all, h.Panel.Label())
	}
	return strings.Join(all, " ")
}

// Worked by hand from the rule: the panel on the middle, then the nearest that
// shares an edge, then the one that touches more, the row, the column.
func TestOrder_ByHand(t *testing.T) {
	for _, c := range []struct {
		name          string
		columns, rows int
		width, height measure.Length
		want          string
	}{
		{"one panel", 1, 1, foot, foot, "A1"},
		{"a row of five", 5, 1, foot, foot, "A3 A2 A4 A1 A5"},
		{"a row of four starts at the centre line", 4, 1, foot, foot, "A2 A3 A1 A4"},
		{"a column of three", 1, 3, foot, foot, "B1 A1 C1"},
		{"two by two", 2, 2, foot, foot, "A1 A2 B1 B2"},
		{"three by three: edges, then corners", 3, 3, foot, foot, "B2 A2 B1 B3 C2 A1 A3 C1 C3"},
		{"wide panels go up in a column first", 3, 3, 2 * foot, foot, "B2 A2 C2 B1 B3 A1 A3 C1 C3"},
		{"four by two: the four round the middle first", 4, 2, foot, foot, "A2 A3 B2 B3 A1 B1 A4 B4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, labels(order(equalRuns(c.columns, c.rows, c.width, c.height))))
		})
	}
	assert.Empty(t, order(mask.Run{}, mask.Run{}))
	row, _ := equalRuns(3, 1, foot, foot)
	assert.Empty(t, order(row, mask.Run{}), "rows that could not be worked out")
}

func TestOrder_EdgesByHand(t *testing.T) {
	panel := func(column, row int) mask.Panel { return mask.Panel{Column: column, Row: row} }
	odd := order(equalRuns(3, 3, foot, foot))
	assert.Equal(t, hanging.Hang{N: 1, Panel: panel(2, 2), Block: hanging.Block{Column: 2, Row: 2, Columns: 1, Rows: 1}, Edges: []hanging.Edge{
		{Side: survey.DA, To: hanging.ToSeamLine, Seam: "1│2"}, {Side: survey.BC, To: hanging.ToSeamLine, Seam: "2│3"},
		{Side: survey.AB, To: hanging.ToSeamLine, Seam: "A│B"}, {Side: survey.CD, To: hanging.ToSeamLine, Seam: "B│C"},
	}}, odd[0], "an odd middle panel hangs between its seam lines")
	assert.Equal(t, hanging.Hang{N: 2, Panel: panel(2, 1), Block: hanging.Block{Column: 2, Row: 1, Columns: 1, Rows: 1}, Edges: []hanging.Edge{
		{Side: survey.DA, To: hanging.ToSeamLine, Seam: "1│2"}, {Side: survey.BC, To: hanging.ToSeamLine, Seam: "2│3"},
		{Side: survey.AB, To: hanging.ToTapeLine}, {Side: survey.CD, To: hanging.ToPanel, Panel: panel(2, 2)},
	}}, odd[1])
	assert.Equal(t, hanging.Hang{N: 6, Panel: panel(1, 1), Block: hanging.Block{Column: 1, Row: 1, Columns: 1, Rows: 1}, Edges: []hanging.Edge{
		{Side: survey.DA, To: hanging.ToTapeLine}, {Side: survey.BC, To: hanging.ToPanel, Panel: panel(2, 1)},
		{Side: survey.AB, To: hanging.ToTapeLine}, {Side: survey.CD, To: hanging.ToPanel, Panel: panel(1, 2)},
	}}, odd[5])

	even := order(equalRuns(4, 4, foot, foot))
	assert.Equal(t, hanging.Hang{N: 1, Panel: panel(2, 2), Block: hanging.Block{Column: 2, Row: 2, Columns: 1, Rows: 1}, Edges: []hanging.Edge{
		{Side: survey.BC, To: hanging.ToCentreLine, Seam: "2│3"}, {Side: survey.CD, To: hanging.ToCentreLine, Seam: "B│C"},
	}}, even[0], "an even middle is the crossing of the centre lines")
	assert.Equal(t, hanging.Hang{N: 2, Panel: panel(3, 2), Block: hanging.Block{Column: 3, Row: 2, Columns: 1, Rows: 1}, Edges: []hanging.Edge{
		{Side: survey.DA, To: hanging.ToPanel, Panel: panel(2, 2)}, {Side: survey.CD, To: hanging.ToCentreLine, Seam: "B│C"},
	}}, even[1])

	// Of two panels that meet on the centre line the one with its middle nearer
	// is first, here the one beyond the line.
	columns := mask.RunFromSizes([]measure.Length{foot, 3 * foot, foot, 3 * foot}, 0, 8*foot)
	rows := mask.RunFromSizes([]measure.Length{foot}, 0, foot)
	first := order(columns, rows)[0]
	assert.Equal(t, panel(3, 1), first.Panel)
	assert.Equal(t, hanging.Edge{Side: survey.DA, To: hanging.ToCentreLine, Seam: "2│3"}, first.Edges[0])

	// A middle seam beside the centre line is a seam line, not the centre line.
	columns = mask.RunFromSizes([]measure.Length{3 * foot, 5 * foot}, 0, 8*foot)
	first = order(columns, rows)[0]
	assert.Equal(t, panel(2, 1), first.Panel, "the panel that holds the middle")
	assert.Equal(t, hanging.Edge{Side: survey.BC, To: hanging.ToTapeLine}, first.Edges[0])
}

// naive is the same rule spelled out with the slowest means: big numbers, and
// every panel looked at for every step. Panels as far from the middle but for
// the rounding of their cuts count as one, so it is used on whole grids.
func naive(columns, rows mask.Run) []mask.Panel {
	distance := func(c, r int) *big.Int {
		x := big.NewInt(int64(2*columns.Starts[c] + columns.Sizes[c] - columns.Box))
		y := big.NewInt(int64(2*rows.Starts[r] + rows.Sizes[r] - rows.Box))
		return new(big.Int).Add(x.Mul(x, x), y.Mul(y, y))
	}
	up := map[mask.Panel]int{}
	var order []mask.Panel
	for len(order) < len(columns.Sizes)*len(rows.Sizes) {
		var best mask.Panel
		var bestDistance *big.Int
		bestTouching := 0
		for r := range rows.Sizes {
			for c := range columns.Sizes {
				p := mask.Panel{Column: c + 1, Row: r + 1}
				touching := up[mask.Panel{Column: c, Row: r + 1}] + up[mask.Panel{Column: c + 2, Row: r + 1}] +
					up[mask.Panel{Column: c + 1, Row: r}] + up[mask.Panel{Column: c + 1, Row: r + 2}]
				if up[p] == 1 || len(order) > 0 && touching == 0 {
					continue
				}
				d := distance(c, r)
				if bestDistance == nil || d.Cmp(bestDistance) < 0 || d.Cmp(bestDistance) == 0 && touching > bestTouching {
					best, bestDistance, bestTouching = p, d, touching
				}
			}
		}
		up[best] = 1
		order = append(order, best)
	}
	return order
}

func panels(order []hanging.Hang) []mask.Panel {
	all := make([]mask.Panel, len(order))
	for i, h := range order {
		all[i] = h.Panel
	}
	return all
}

func TestOrder_AgreesWithTheSlowWay(t *testing.T) {
	for columns := 1; columns <= 7; columns++ {
		for rows := 1; rows <= 6; rows++ {
			for _, height := range []measure.Length{foot, 2 * foot, 7 * inch} {
				c, r := equalRuns(columns, rows, foot, height)
				require.Equal(t, naive(c, r), panels(order(c, r)), "%d × %d, %v", columns, rows, height)
			}
		}
	}
}

func TestOrder_HoldsForAnySizes(t *testing.T) {
	random := rand.New(rand.NewSource(5))
	sizes := func(n int) []measure.Length {
		list := make([]measure.Length, n)
		for i := range list {
			list[i] = 200*mm + measure.Length(random.Int63n(int64(measure.Metre)))
		}
		return list
	}
	sum := func(list []measure.Length) (total measure.Length) {
		for _, l := range list {
			total += l
		}
		return total
	}
	for range 150 {
		c, r := sizes(1+random.Intn(9)), sizes(1+random.Intn(9))
		columns, rows := mask.RunFromSizes(c, 0, sum(c)+3*mm), mask.RunFromSizes(r, mm, sum(r))
		checkOrder(t, columns, rows, order(columns, rows))
	}
}

func TestOrder_TenThousandPanels(t *testing.T) {
	columns, rows := equalRuns(100, 100, 10*inch, 9*inch)
	checkOrder(t, columns, rows, order(columns, rows))
	// The longest room: distances squared pass 64 bits.
	columns, rows = equalRuns(5, 5, 20*measure.Metre, 20*measure.Metre)
	assert.Equal(t, naive(columns, rows), panels(order(columns, rows)))
}

// checkOrder holds an order against what it promises.
func checkOrder(t *testing.T, columns, rows mask.Run, order []hanging.Hang) {
	t.Helper()
	if len(order) != len(columns.Sizes)*len(rows.Sizes) {
		t.Fatalf("%d steps for %d panels", len(order), len(columns.Sizes)*len(rows.Sizes))
	}
	up := map[mask.Panel]bool{}
	for i, h := range order {
		if h.N != i+1 || up[h.Panel] || h.Panel.Column < 1 || h.Panel.Column > len(columns.Sizes) || h.Panel.Row < 1 || h.Panel.Row > len(rows.Sizes) {
			t.Fatalf("step %d hangs %v again or out of place", i+1, h)
		}
		touches, along, across := 0, 0, 0
		for _, e := range h.Edges {
			next := map[survey.Wall]mask.Panel{
				survey.DA: {Column: h.Panel.Column - 1, Row: h.Panel.Row}, survey.BC: {Column: h.Panel.Column + 1, Row: h.Panel.Row},
				survey.AB: {Column: h.Panel.Column, Row: h.Panel.Row - 1}, survey.CD: {Column: h.Panel.Column, Row: h.Panel.Row + 1},
			}[e.Side]
			outside := next.Column < 1 || next.Column > len(columns.Sizes) || next.Row < 1 || next.Row > len(rows.Sizes)
			if outside != (e.To == hanging.ToTapeLine) || up[next] != (e.To == hanging.ToPanel) {
				t.Fatalf("step %d: %v is set against %v", i+1, h.Panel, e)
			}
			if e.To == hanging.ToPanel {
				touches++
				if e.Panel != next {
					t.Fatalf("step %d: %v names the wrong neighbour %v", i+1, h.Panel, e)
				}
			}
			if e.Side == survey.DA || e.Side == survey.BC {
				along++
			} else {
				across++
			}
		}
		if i > 0 && touches == 0 || along == 0 || across == 0 {
			t.Fatalf("step %d: %v is set only to %v", i+1, h.Panel, h.Edges)
		}
		up[h.Panel] = true
	}
}

// Rounding the cuts of an equal division to the nanometre must not decide the
// order: thirds and sevenths hang as whole sizes do. From 8 × 8 on there are
// panels as far off by chance (7² + 1² = 5² + 5²), which no longer tie.
func TestOrder_CutsRoundedAlikeHangAlike(t *testing.T) {
	for _, n := range []int{3, 4, 5, 6, 7} {
		whole, wholeRows := equalRuns(n, n, foot, foot)
		total := measure.Length(n)*foot + 1
		cut := mask.RunFromSizes(mask.Equal(total, n), 0, total)
		cutRows := mask.RunFromSizes(mask.Equal(total, n), 0, total)
		assert.Equal(t, labels(order(whole, wholeRows)), labels(order(cut, cutRows)), "%d × %d", n, n)
	}
}

func BenchmarkOrder(b *testing.B) {
	for _, side := range []int{10, 32, 100} {
		columns, rows := equalRuns(side, side, 10*inch, 9*inch)
		b.Run(strconv.Itoa(side*side)+" panels", func(b *testing.B) {
			for b.Loop() {
				order(columns, rows)
			}
		})
	}
}
