package mask_test

import (
	"math/big"
	"math/rand"
	"strconv"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// fourByThree is 4 × 3 panels of 48 × 36 in, touching.
var (
	wholeEdge   = mask.Outline{Length: 192 * inch, Width: 108 * inch}
	fourByThree = mask.Layer{Columns: repeat(48*inch, 4), Rows: repeat(36*inch, 3)}
)

func block(cells string, kind mask.PieceKind) mask.GivenPiece {
	return mask.GivenPiece{At: "/0", Kind: kind, Cells: cells}
}

func TestWithPieces_Blocks(t *testing.T) {
	for _, c := range []struct {
		cells string
		want  mask.Piece
	}{
		{"B2 C3", mask.Piece{At: "/0", Name: "B2–C3", Kind: mask.Span, Column: 2, Row: 2, Columns: 2, Rows: 2}},
		{"C3 B2", mask.Piece{At: "/0", Name: "B2–C3", Kind: mask.Span, Column: 2, Row: 2, Columns: 2, Rows: 2}},
		{"c2, b3", mask.Piece{At: "/0", Name: "B2–C3", Kind: mask.Span, Column: 2, Row: 2, Columns: 2, Rows: 2}},
		{"B2–C3", mask.Piece{At: "/0", Name: "B2–C3", Kind: mask.Span, Column: 2, Row: 2, Columns: 2, Rows: 2}},
		{"B2 B3 C2 C3", mask.Piece{At: "/0", Name: "B2–C3", Kind: mask.Span, Column: 2, Row: 2, Columns: 2, Rows: 2}},
		{"A1 A2 A3", mask.Piece{At: "/0", Name: "A1–A3", Kind: mask.Span, Column: 1, Row: 1, Columns: 3, Rows: 1}},
		{"A1 C4", mask.Piece{At: "/0", Name: "A1–C4", Kind: mask.Span, Column: 1, Row: 1, Columns: 4, Rows: 3}},
	} {
		layer, problems := fourByThree.WithPieces(wholeEdge, []mask.GivenPiece{block(c.cells, mask.Span)})
		assert.Empty(t, problems, c.cells)
		assert.Equal(t, []mask.Piece{c.want}, layer.Pieces, c.cells)
	}
}

func TestWithPieces_Problems(t *testing.T) {
	const corners = "Write the labels of two opposite corners of the block, such as B2 C3."
	loose := func(g mask.GivenPiece) mask.GivenPiece {
		g.At, g.Kind = "/0", mask.CutLoose
		return g
	}
	for _, c := range []struct {
		name  string
		given []mask.GivenPiece
		keeps int
		want  problem.Problem
	}{
		{"no cells", []mask.GivenPiece{block("", mask.Span)}, 0,
			problem.Problem{At: "/0/cells", Severity: problem.Stop, What: words.Say("The panels of this piece are not given."), Do: words.Say(corners)}},
		{"no labels", []mask.GivenPiece{block("the middle", mask.Span)}, 0,
			problem.Problem{At: "/0/cells", Severity: problem.Stop, What: words.Say("“the middle” does not name panels."), Do: words.Say(corners)}},
		{"outside the grid", []mask.GivenPiece{block("B2 D3", mask.Joined)}, 0,
			problem.Problem{At: "/0/cells", Severity: problem.Stop, What: words.Say("There is no panel D3 in this layer."), Do: words.Say("Its panels run from A1 to C4.")}},
		{"one panel", []mask.GivenPiece{block("B2", mask.Span)}, 0,
			problem.Problem{At: "/0/cells", Severity: problem.Caution, What: words.Say("This piece is panel B2 alone."), Do: words.Say("Take the piece out, or name the other end of its block.")}},
		{"an L", []mask.GivenPiece{block("A1 A2 B1", mask.Span)}, 0,
			problem.Problem{At: "/0/cells", Severity: problem.Stop, What: words.Say("The panels named do not fill the block A1–B2: it has 4."), Do: words.Say(corners)}},
		{"over another", []mask.GivenPiece{block("A1 B2", mask.Span), {At: "/1", Name: "Rose", Kind: mask.Joined, Cells: "B2 C3"}}, 1,
			problem.Problem{At: "/1/cells", Severity: problem.Stop, What: words.Say("Panel B2 belongs to the piece “A1–B2” already."), Do: words.Say("Give each panel to one piece. This piece is left out until then.")}},
		{"one name for two", []mask.GivenPiece{{At: "/0", Name: "Rose", Kind: mask.Span, Cells: "A1 A2"}, {At: "/1", Name: "Rose", Kind: mask.Span, Cells: "C1 C2"}}, 2,
			problem.Problem{At: "/1/name", Severity: problem.Caution, What: words.Say("Another piece is called “Rose” too; this one is “Rose 2” on the sheet."), Do: words.Say("Give each piece a name of its own.")}},
		{"loose without a size", []mask.GivenPiece{loose(mask.GivenPiece{})}, 0,
			problem.Problem{At: "/0/length", Severity: problem.Stop, What: words.Say("The size of the loose piece is not given."), Do: words.Say("Write how long it is, or how far across if it is round.")}},
		{"loose without a width", []mask.GivenPiece{loose(mask.GivenPiece{Length: foot})}, 0,
			problem.Problem{At: "/0/width", Severity: problem.Stop, What: words.Say("The width of the loose piece is not given."), Do: words.Say("Write it in.")}},
		{"smaller than anyone hangs", []mask.GivenPiece{loose(mask.GivenPiece{Round: true, Length: 2 * inch})}, 1,
			problem.Problem{At: "/0/length", Severity: problem.Caution, What: words.Say(`A loose piece of 2" is smaller than anyone hangs.`), Do: words.Say("Check the number and its unit.")}},
		{"round and oblong", []mask.GivenPiece{loose(mask.GivenPiece{Round: true, Length: foot, Width: inch})}, 1,
			problem.Problem{At: "/0/width", Severity: problem.Caution, What: words.Say(`A round piece is as wide as it is long: 1' 0" is taken.`), Do: words.Say("Leave the width empty, or make the piece rectangular.")}},
		{"past the edge", []mask.GivenPiece{loose(mask.GivenPiece{Length: 2 * foot, Width: foot, Placed: true, X: 11 * inch, Y: foot})}, 0,
			problem.Problem{At: "/0/fromDA", Severity: problem.Stop, What: words.Say(`The loose piece runs 1" past the edge of the mask.`), Do: words.Say(`Its middle can be from 1' 0" to 15' 0" from the mask's own side ZW.`)}},
		{"past the far edge", []mask.GivenPiece{loose(mask.GivenPiece{Length: 2 * foot, Width: foot, Placed: true, X: 2 * foot, Y: 103 * inch})}, 0,
			problem.Problem{At: "/0/fromAB", Severity: problem.Stop, What: words.Say(`The loose piece runs 1" past the edge of the mask.`), Do: words.Say(`Its middle can be from 6" to 8' 6" from the mask's own side WX.`)}},
		{"larger than the mask", []mask.GivenPiece{loose(mask.GivenPiece{Round: true, Length: 10 * foot})}, 0,
			problem.Problem{At: "/0/width", Severity: problem.Stop, What: words.Say(`The loose piece is 1' 0" larger than the width of the mask.`), Do: words.Say("Check the number and its unit.")}},
		{"cut out of each other", []mask.GivenPiece{{At: "/0", Name: "Rose", Kind: mask.CutLoose, Round: true, Length: 2 * foot}, {At: "/1", Name: "Star", Kind: mask.CutLoose, Length: foot, Width: foot}}, 2,
			problem.Problem{At: "/1", Severity: problem.Caution, What: words.Say("The pieces “Rose” and “Star” are cut out of each other."), Do: words.Say("Move one of them, or make one piece of both.")}},
	} {
		t.Run(c.name, func(t *testing.T) {
			layer, problems := fourByThree.WithPieces(wholeEdge, c.given)
			assert.Equal(t, []problem.Problem{c.want}, told(problems))
			assert.Equal(t, c.keeps, len(layer.Pieces)+len(layer.Loose))
		})
	}
	empty, problems := mask.Layer{}.WithPieces(wholeEdge, []mask.GivenPiece{block("A1 B2", mask.Span)})
	assert.Empty(t, problems, "a layer without panels has its own stop")
	assert.Empty(t, empty.Pieces)
}

// Whoever moves a loose piece to the limit that is named is not refused again.
func TestWithPieces_LimitsOfALoosePieceAreTaken(t *testing.T) {
	for _, size := range []measure.Length{100*mm + 1, 2*foot + 1, 10*inch + inch/16, 107 * inch, 108 * inch} {
		for _, x := range []measure.Length{(size + 1) / 2, wholeEdge.Length - (size+1)/2} {
			given := mask.GivenPiece{Kind: mask.CutLoose, Round: true, Length: size, Placed: true, X: x, Y: wholeEdge.Width / 2}
			_, problems := fourByThree.WithPieces(wholeEdge, []mask.GivenPiece{given})
			assert.Empty(t, problems, "%d at %d", size, x)
		}
	}
}

// Which pieces share more than a line, by the distance from one's middle to
// the nearest point of the other (worked out by hand; 3-4-5 makes 5 exactly).
func TestWithPieces_LooseOverlap(t *testing.T) {
	at := func(round bool, x, y, length, width measure.Length) mask.GivenPiece {
		return mask.GivenPiece{Kind: mask.CutLoose, Round: round, Placed: true, X: x * mm, Y: y * mm, Length: length * mm, Width: width * mm}
	}
	circle := at(true, 1000, 1000, 400, 0)
	for _, c := range []struct {
		name     string
		one, two mask.GivenPiece
		overlap  bool
	}{
		{"circles that touch: 300-400-500", circle, at(true, 1300, 1400, 600, 0), false},
		{"circles a hair nearer", circle, at(true, 1300, 1400, 601, 0), true},
		{"circle at a corner: 120-160-200", circle, at(false, 1620, 1460, 1000, 600), false},
		{"circle over a corner", circle, at(false, 1619, 1460, 1000, 600), true},
		{"circle against a side", circle, at(false, 1700, 1000, 1000, 600), false},
		{"circle over a side", at(false, 1699, 1000, 1000, 600), circle, true},
		{"circle inside a rectangle", circle, at(false, 1000, 1000, 900, 900), true},
		{"rectangles side by side", at(false, 1000, 1000, 400, 400), at(false, 1400, 1100, 400, 400), false},
		{"rectangles over each other", at(false, 1000, 1000, 400, 400), at(false, 1399, 1100, 400, 400), true},
	} {
		layer, problems := fourByThree.WithPieces(wholeEdge, []mask.GivenPiece{c.one, c.two})
		assert.Len(t, layer.Loose, 2, c.name)
		assert.Equal(t, c.overlap, len(problems) > 0, c.name)
	}
}

func TestLoose_CutLength(t *testing.T) {
	assert.Equal(t, 6*foot, mask.Loose{Length: 2 * foot, Width: foot}.CutLength())
	// π to 30 digits (from memory) in whole numbers: half a nanometre and less
	// is all that the answer may be off.
	pi, _ := new(big.Int).SetString("3141592653589793238462643383279", 10)
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(30), nil)
	random := rand.New(rand.NewSource(6))
	for range 500 {
		d := 1 + random.Int63n(int64(measure.Longest))
		want := new(big.Int).Mul(pi, big.NewInt(d))
		want.Add(want, new(big.Int).Rsh(scale, 1)).Div(want, scale)
		off := want.Int64() - int64(mask.Loose{Round: true, Length: measure.Length(d)}.CutLength())
		require.LessOrEqual(t, off*off, int64(1), "d = %d", d)
	}
	// 24 in across is 75.398 in round (24π, from memory of π).
	assert.Equal(t, "75.398", strconv.FormatFloat(float64(mask.Loose{Round: true, Length: 24 * inch}.CutLength())/float64(inch), 'f', 3, 64))
}

func TestPiece_SizeAndPlace(t *testing.T) {
	layer := mask.Layer{Columns: []measure.Length{40 * inch, 50 * inch, 60 * inch}, Rows: repeat(36*inch, 2), Gap: inch / 4}
	outline := mask.Outline{Length: 151 * inch, Width: 72*inch + inch/4}
	layer, problems := layer.WithPieces(outline, []mask.GivenPiece{block("A2 B3", mask.Joined)})
	require.Empty(t, problems)
	piece := layer.Pieces[0]
	length, width := piece.Size(layer)
	assert.Equal(t, 110*inch+inch/4, length, "50 + 60 in and the gap between")
	assert.Equal(t, 72*inch+inch/4, width)
	columns, rows := layer.Runs(outline)
	// 150 in of panels in 151 in: two seams of 1/2 in.
	length, width, ok := piece.Place(columns, rows)
	assert.True(t, ok)
	assert.Equal(t, 110*inch+inch/2, length)
	assert.Equal(t, 72*inch+inch/4, width)
	assert.Equal(t, 4, piece.Count())
	assert.True(t, piece.Contains(mask.Panel{Column: 3, Row: 1}))
	assert.False(t, piece.Contains(mask.Panel{Column: 1, Row: 1}))
}

// While a side of the mask is being typed anew, its panels have no place.
func TestPiece_HasNoPlaceWithoutABox(t *testing.T) {
	layer := mask.Layer{Columns: repeat(40*inch, 2), Rows: repeat(36*inch, 2)}
	whole := mask.Outline{Length: 80 * inch, Width: 72 * inch}
	layer, problems := layer.WithPieces(whole, []mask.GivenPiece{block("A1 B2", mask.Joined)})
	require.Empty(t, problems)
	for _, c := range []struct {
		outline mask.Outline
		want    bool
	}{{whole, true}, {mask.Outline{Length: 80 * inch}, false}, {mask.Outline{Width: 72 * inch}, false}, {mask.Outline{}, false}} {
		columns, rows := layer.Runs(c.outline)
		_, _, ok := layer.Pieces[0].Place(columns, rows)
		assert.Equal(t, c.want, ok, "%v", c.outline)
	}
}

// grown is a layer with random blocks laid into it, and for each cell the
// number of its block, which the counts below go by. Nothing of it is shared
// with the code under test.
func grown(t *testing.T, random *rand.Rand) (mask.Layer, mask.Outline, [][]int, []mask.PieceKind) {
	t.Helper()
	columns, rows := 1+random.Intn(7), 1+random.Intn(7)
	layer := mask.Layer{Gap: measure.Length(random.Int63n(int64(6 * mm)))}
	outline := mask.Outline{}
	for range columns {
		layer.Columns = append(layer.Columns, 300*mm+measure.Length(random.Int63n(int64(measure.Metre))))
		outline.Length += layer.Columns[len(layer.Columns)-1] + layer.Gap
	}
	for range rows {
		layer.Rows = append(layer.Rows, 300*mm+measure.Length(random.Int63n(int64(measure.Metre))))
		outline.Width += layer.Rows[len(layer.Rows)-1] + layer.Gap
	}
	cells := make([][]int, rows)
	for r := range cells {
		cells[r] = make([]int, columns)
		for c := range cells[r] {
			cells[r][c] = -1
		}
	}
	var kinds []mask.PieceKind
	var given []mask.GivenPiece
	for range random.Intn(9) {
		c, r := random.Intn(columns), random.Intn(rows)
		w, h := 1+random.Intn(columns-c), 1+random.Intn(rows-r)
		free := w*h > 1
		for y := r; y < r+h; y++ {
			for x := c; x < c+w; x++ {
				free = free && cells[y][x] < 0
			}
		}
		if !free {
			continue
		}
		kind := []mask.PieceKind{mask.Span, mask.Joined}[random.Intn(2)]
		for y := r; y < r+h; y++ {
			for x := c; x < c+w; x++ {
				cells[y][x] = len(kinds)
			}
		}
		kinds = append(kinds, kind)
		given = append(given, block(mask.Panel{Column: c + 1, Row: r + 1}.Label()+" "+mask.Panel{Column: c + w, Row: r + h}.Label(), kind))
	}
	layer, problems := layer.WithPieces(outline, given)
	require.Empty(t, problems)
	require.Len(t, layer.Pieces, len(kinds))
	return layer, outline, cells, kinds
}

// unitEdges walks over every edge between two cells of the grid: what kind of
// edge it is (Single for a seam, Span for none, Joined for one closed on the
// floor), and how long.
func unitEdges(layer mask.Layer, outline mask.Outline, cells [][]int, kinds []mask.PieceKind, each func(across bool, c, r int, kind mask.PieceKind, length measure.Length)) {
	// Lines of the grid are in the middle of their gaps as laid.
	lines := func(sizes, gaps, starts []measure.Length, box measure.Length) []measure.Length {
		at := []measure.Length{0}
		for i := range gaps {
			at = append(at, starts[i]+sizes[i]+gaps[i].Half())
		}
		return append(at, box)
	}
	columns, rows := layer.Runs(outline)
	xs := lines(layer.Columns, columns.Gaps, columns.Starts, outline.Length)
	ys := lines(layer.Rows, rows.Gaps, rows.Starts, outline.Width)
	kind := func(one, two int) mask.PieceKind {
		if one >= 0 && one == two {
			return kinds[one]
		}
		return mask.Single
	}
	for r := range cells {
		for c := range cells[r] {
			if c+1 < len(cells[r]) {
				each(true, c, r, kind(cells[r][c], cells[r][c+1]), ys[r+1]-ys[r])
			}
			if r+1 < len(cells) {
				each(false, c, r, kind(cells[r][c], cells[r+1][c]), xs[c+1]-xs[c])
			}
		}
	}
}

func TestSeams_WithPiecesMatchACountOverUnitEdges(t *testing.T) {
	random := rand.New(rand.NewSource(7))
	for range 700 {
		layer, outline, cells, kinds := grown(t, random)
		overhead, floor := map[string]measure.Length{}, map[string]measure.Length{}
		sumOverhead, sumFloor := measure.Length(0), measure.Length(0)
		meet := map[[2]int]int{}
		unitEdges(layer, outline, cells, kinds, func(across bool, c, r int, kind mask.PieceKind, length measure.Length) {
			name, ends := mask.RowSeam(r+1), [][2]int{{c, r + 1}, {c + 1, r + 1}}
			if across {
				name, ends = mask.ColumnSeam(c+1), [][2]int{{c + 1, r}, {c + 1, r + 1}}
			}
			if kind == mask.Span {
				return
			}
			for _, end := range ends {
				meet[end]++
			}
			overhead[name] += 0
			if kind == mask.Joined {
				floor[name] += length
				sumFloor += length
				return
			}
			overhead[name] += length
			sumOverhead += length
		})
		crossings, joints := 0, 0
		for end, n := range meet {
			inside := end[0] > 0 && end[1] > 0 && end[0] < len(layer.Columns) && end[1] < len(layer.Rows)
			if inside && n == 4 {
				crossings++
			}
			if inside && n == 3 {
				joints++
			}
		}
		require.Equal(t, sumOverhead, layer.SeamLength(outline))
		require.Equal(t, sumFloor, layer.FloorLength(outline))
		require.Equal(t, sumOverhead+sumFloor, layer.TapeLength(outline, mask.CoverSeams))
		require.Equal(t, crossings, layer.Crossings())
		require.Equal(t, joints, layer.TJoints())
		seams := layer.Seams(outline)
		require.Len(t, seams, len(overhead))
		for _, seam := range seams {
			require.Equal(t, overhead[seam.Name], seam.Length, seam.Name)
			require.Equal(t, floor[seam.Name], seam.Floor, seam.Name)
		}
	}
}

// A span in the middle of four by three takes 36 in of seam, makes two
// crossings into T-joints, and a joined block takes no seam away.
func TestSeams_OneSpan(t *testing.T) {
	for _, c := range []struct {
		name              string
		given             []mask.GivenPiece
		overhead, floor   measure.Length
		crossings, joints int
	}{
		{"none", nil, 708 * inch, 0, 6, 0},
		{"two side by side in the middle", []mask.GivenPiece{block("B2 B3", mask.Span)}, 672 * inch, 0, 4, 2},
		{"two at the edge", []mask.GivenPiece{block("A1 A2", mask.Span)}, 672 * inch, 0, 5, 1},
		{"four", []mask.GivenPiece{block("A1 B2", mask.Span)}, 708*inch - 72*inch - 96*inch, 0, 3, 2},
		{"two above each other: the seam runs straight on", []mask.GivenPiece{block("A1 A2", mask.Span), block("B1 B2", mask.Span)}, 636 * inch, 0, 4, 1},
		{"joined", []mask.GivenPiece{block("B2 B3", mask.Joined)}, 672 * inch, 36 * inch, 6, 0},
		{"all in one", []mask.GivenPiece{block("A1 C4", mask.Span)}, 0, 0, 0, 0},
		{"each row one strip", []mask.GivenPiece{block("A1 A4", mask.Span), block("B1 B4", mask.Span), block("C1 C4", mask.Span)}, 384 * inch, 0, 0, 0},
	} {
		layer, problems := fourByThree.WithPieces(wholeEdge, c.given)
		require.Empty(t, problems, c.name)
		assert.Equal(t, c.overhead, layer.SeamLength(wholeEdge), c.name)
		assert.Equal(t, c.floor, layer.FloorLength(wholeEdge), c.name)
		assert.Equal(t, c.crossings, layer.Crossings(), c.name)
		assert.Equal(t, c.joints, layer.TJoints(), c.name)
	}
	loose, problems := fourByThree.WithPieces(wholeEdge, []mask.GivenPiece{{Kind: mask.CutLoose, Length: 2 * foot, Width: foot}})
	require.Empty(t, problems)
	assert.Equal(t, 780*inch, loose.TapeLength(wholeEdge, mask.CoverSeams), "708 in of seams and 72 in round the loose piece")
}

// A seam inside spans over its whole length cannot give: what the panels are
// over goes to the others.
func TestRuns_HeldSeams(t *testing.T) {
	layer := mask.Layer{Columns: repeat(1000*mm, 4), Rows: repeat(1000*mm, 2), Gap: 2 * mm}
	outline := mask.Outline{Length: 4012 * mm, Width: 2002 * mm}
	held, problems := layer.WithPieces(outline, []mask.GivenPiece{block("A1 A2", mask.Span), block("B1 B2", mask.Span)})
	require.Empty(t, problems)
	columns, rows := held.Runs(outline)
	assert.Equal(t, []bool{true, false, false}, columns.Held)
	assert.Nil(t, rows.Held)
	assert.Equal(t, -6*mm, columns.Over)
	assert.Equal(t, []measure.Length{2 * mm, 5 * mm, 5 * mm}, columns.Gaps)
	assert.Equal(t, []measure.Length{0, 1002 * mm, 2007 * mm, 3012 * mm}, columns.Starts)
	assert.Equal(t, 2, columns.Free())
	change, ok := columns.Change()
	assert.True(t, ok)
	assert.Zero(t, change.Cmp(measure.NumberFromInt(int64(3*mm))))
	narrowest, _ := columns.Narrowest()
	assert.Equal(t, 5*mm, narrowest)

	strips, problems := layer.WithPieces(outline, []mask.GivenPiece{block("A1 A4", mask.Span), block("B1 B4", mask.Span)})
	require.Empty(t, problems)
	columns, _ = strips.Runs(outline)
	_, ok = columns.Narrowest()
	assert.False(t, ok, "strips as long as the mask leave no seam between columns")
	assert.Equal(t, 3*mm, columns.Starts[0], "and lie with their middle on the middle")

	half, problems := layer.WithPieces(outline, []mask.GivenPiece{block("A1 A2", mask.Span)})
	require.Empty(t, problems)
	columns, _ = half.Runs(outline)
	assert.Nil(t, columns.Held, "one row still opens there")
}
