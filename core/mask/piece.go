package mask

import (
	"math"
	"math/bits"
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// PieceKind says how panels hang together.
type PieceKind string

// A panel by itself, a block delivered as one, a block taped together on the
// floor and hung as one, and a piece cut loose out of its neighbours.
const (
	Single   PieceKind = ""
	Span     PieceKind = "span"
	Joined   PieceKind = "joined"
	CutLoose PieceKind = "loose"
)

// Piece is what is hung in one go: a block of Columns × Rows cells of the grid
// with its corner nearest A1 at Column and Row, both from 1. Kind is Single,
// Span or Joined. At is where it was asked for.
type Piece struct {
	At, Name                   string
	Kind                       PieceKind
	Column, Row, Columns, Rows int
}

// First is the panel of the block nearest A1.
func (p Piece) First() Panel { return Panel{p.Column, p.Row} }

// Last is the panel of the block farthest from A1.
func (p Piece) Last() Panel { return Panel{p.Column + p.Columns - 1, p.Row + p.Rows - 1} }

// Count is how many panels of the grid the piece takes.
func (p Piece) Count() int { return p.Columns * p.Rows }

// Contains tells whether a panel of the grid belongs to the piece.
func (p Piece) Contains(panel Panel) bool {
	return panel.Column >= p.Column && panel.Column < p.Column+p.Columns && panel.Row >= p.Row && panel.Row < p.Row+p.Rows
}

// Cells names the block by its first and last panel, "B2–C3".
func (p Piece) Cells() string {
	if p.Count() == 1 {
		return p.First().Label()
	}
	return p.First().Label() + "–" + p.Last().Label()
}

// Size is the piece as it is cut: its panels and the planned gaps between
// them.
func (p Piece) Size(l Layer) (length, width measure.Length) {
	return block(l.Columns, p.Column, p.Columns, l.Gap), block(l.Rows, p.Row, p.Rows, l.Gap)
}

func block(sizes []measure.Length, first, count int, gap measure.Length) measure.Length {
	sum := gap * measure.Length(count-1)
	for _, size := range sizes[first-1 : first-1+count] {
		sum += size
	}
	return sum
}

// Place is the room the piece has in its layer as laid into the box: from the
// outer edge of its first panel to that of its last. Where the seams were
// opened or closed it differs from Size, since a piece in one cannot give. ok is
// false where a side of the box is not known, and no place with it.
func (p Piece) Place(columns, rows Run) (length, width measure.Length, ok bool) {
	if len(columns.Starts) < p.Last().Column || len(rows.Starts) < p.Last().Row {
		return 0, 0, false
	}
	return place(columns, p.Column, p.Columns), place(rows, p.Row, p.Rows), true
}

func place(run Run, first, count int) measure.Length {
	last := first - 1 + count - 1
	return run.Starts[last] + run.Sizes[last] - run.Starts[first-1]
}

// Loose is a piece cut out of its neighbours and hung last on its own marks: a
// rectangle, or a circle as wide as Length. X and Y are its middle in the
// frame of the box, x along the mask's length and y along its width. At is
// where it was asked for.
type Loose struct {
	At, Name      string
	Round         bool
	X, Y          measure.Length
	Length, Width measure.Length
}

// CutLength is the way round the piece, which is bridged like a seam: exact for
// a rectangle, π × diameter to the nearest nanometre for a circle.
func (l Loose) CutLength() measure.Length {
	if l.Round {
		return measure.Length(math.Round(math.Pi * float64(l.Length)))
	}
	return 2 * (l.Length + l.Width)
}

// GivenPiece is a piece as it is asked for. At is where to blame. Kind is Span
// or Joined with Cells, the labels of two opposite corners of the block or of
// all its panels; or CutLoose with a size and, where Placed, a middle.
type GivenPiece struct {
	At, Name      string
	Kind          PieceKind
	Cells         string
	Round, Placed bool
	X, Y          measure.Length
	Length, Width measure.Length
}

// WithPieces is the layer with its pieces, and what is wrong at "/cells",
// "/name", "/length" and their likes behind each piece's At. A block that is
// not in the grid, is a single panel or takes a panel of an earlier one is left
// out, and so is a loose piece without a size or past the edge of the mask. A
// layer without panels takes no pieces, and there is no more to say about it.
func (l Layer) WithPieces(o Outline, given []GivenPiece) (Layer, []problem.Problem) {
	if l.IsEmpty() || len(given) == 0 {
		return l, nil
	}
	g := gathering{layer: l, outline: o, names: map[string]bool{}, owner: make([]int32, l.Count())}
	for _, one := range given {
		if one.Kind == CutLoose {
			g.addLoose(one)
		} else {
			g.addBlock(one)
		}
	}
	return g.layer, g.problems
}

// gathering is a layer as its pieces come in.
type gathering struct {
	layer    Layer
	outline  Outline
	names    map[string]bool
	owner    []int32 // of each panel in reading order its piece, from 1, or 0
	problems []problem.Problem
}

func (g *gathering) say(at string, severity problem.Severity, what, do words.Text) {
	g.problems = append(g.problems, problem.Problem{At: at, Severity: severity, What: what, Do: do})
}

func (g *gathering) addBlock(given GivenPiece) {
	piece, ok := g.blockOf(given)
	if !ok {
		return
	}
	if taken, by := g.taken(piece); by > 0 {
		g.say(given.At+"/cells", problem.Stop,
			words.Say("Panel {panel} belongs to the piece “{piece}” already.", words.Name("panel", taken.Label()), words.Name("piece", g.layer.Pieces[by-1].Name)),
			words.Say("Give each panel to one piece. This piece is left out until then."))
		return
	}
	piece.Name = g.named(given, piece.Cells())
	g.layer.Pieces = append(g.layer.Pieces, piece)
	for row := piece.Row; row <= piece.Last().Row; row++ {
		for column := piece.Column; column <= piece.Last().Column; column++ {
			g.owner[g.layer.Index(Panel{column, row})] = int32(len(g.layer.Pieces))
		}
	}
}

// blockOf is the block a piece asks for, or false with the reason reported.
func (g *gathering) blockOf(given GivenPiece) (Piece, bool) {
	at := given.At + "/cells"
	corners := words.Say("Write the labels of two opposite corners of the block, such as B2 C3.")
	panels, ok := ParsePanels(given.Cells)
	switch {
	case given.Cells == "":
		g.say(at, problem.Stop, words.Say("The panels of this piece are not given."), corners)
		return Piece{}, false
	case !ok:
		g.say(at, problem.Stop, words.Say("{typed} does not name panels.", words.Name("typed", problem.Quote(given.Cells))), corners)
		return Piece{}, false
	}
	low, high := panels[0], panels[0]
	for _, p := range panels {
		if !g.layer.Has(p) {
			g.say(at, problem.Stop, words.Say("There is no panel {panel} in this layer.", words.Name("panel", p.Label())),
				words.Say("Its panels run from A1 to {last}.", words.Name("last", g.layer.LastPanel().Label())))
			return Piece{}, false
		}
		low = Panel{min(low.Column, p.Column), min(low.Row, p.Row)}
		high = Panel{max(high.Column, p.Column), max(high.Row, p.Row)}
	}
	piece := Piece{At: given.At, Kind: given.Kind, Column: low.Column, Row: low.Row,
		Columns: high.Column - low.Column + 1, Rows: high.Row - low.Row + 1}
	switch {
	case piece.Count() == 1:
		g.say(at, problem.Caution, words.Say("This piece is panel {panel} alone.", words.Name("panel", low.Label())), words.Say("Take the piece out, or name the other end of its block."))
		return Piece{}, false
	case len(panels) > 2 && distinct(panels) != piece.Count():
		g.say(at, problem.Stop, words.Say("The panels named do not fill the block {cells}: it has {count}.", words.Name("cells", piece.Cells()), words.Count("count", piece.Count())), corners)
		return Piece{}, false
	}
	return piece, true
}

func distinct(panels []Panel) int {
	seen := make(map[Panel]bool, len(panels))
	for _, p := range panels {
		seen[p] = true
	}
	return len(seen)
}

// taken is the first panel of a block that belongs to a piece already, and to
// which, counted from 1; 0 for none.
func (g *gathering) taken(piece Piece) (Panel, int32) {
	for row := piece.Row; row <= piece.Last().Row; row++ {
		for column := piece.Column; column <= piece.Last().Column; column++ {
			p := Panel{column, row}
			if by := g.owner[g.layer.Index(p)]; by > 0 {
				return p, by
			}
		}
	}
	return Panel{}, 0
}

// named is the name of a piece, its own as far as no other has it.
func (g *gathering) named(given GivenPiece, otherwise string) string {
	name := given.Name
	if name == "" {
		name = otherwise
	}
	if g.names[name] {
		first := name
		for i := 2; g.names[name]; i++ {
			name = first + " " + strconv.Itoa(i)
		}
		if given.Name != "" {
			g.say(given.At+"/name", problem.Caution, words.Say("Another piece is called “{first}” too; this one is “{name}” on the sheet.",
				words.Name("first", first), words.Name("name", name)), words.Say("Give each piece a name of its own."))
		}
	}
	g.names[name] = true
	return name
}

func (g *gathering) addLoose(given GivenPiece) {
	l, ok := g.looseOf(given)
	if !ok || !g.isInside(l, given) {
		return
	}
	l.Name = g.named(given, "Loose "+strconv.Itoa(len(g.layer.Loose)+1))
	for _, other := range g.layer.Loose {
		if l.overlaps(other) {
			g.say(given.At, problem.Caution, words.Say("The pieces “{one}” and “{other}” are cut out of each other.",
				words.Name("one", other.Name), words.Name("other", l.Name)), words.Say("Move one of them, or make one piece of both."))
			break
		}
	}
	g.layer.Loose = append(g.layer.Loose, l)
}

// looseOf is the loose piece that is asked for, or false with the reason
// reported.
func (g *gathering) looseOf(given GivenPiece) (Loose, bool) {
	l := Loose{At: given.At, Round: given.Round, X: given.X, Y: given.Y, Length: given.Length, Width: given.Width}
	if !given.Placed {
		l.X, l.Y = g.outline.Length.Half(), g.outline.Width.Half()
	}
	switch {
	case l.Length <= 0:
		g.say(given.At+"/length", problem.Stop, words.Say("The size of the loose piece is not given."), words.Say("Write how long it is, or how far across if it is round."))
		return l, false
	case l.Round:
		if l.Width > 0 && l.Width != l.Length {
			g.say(given.At+"/width", problem.Caution, words.Say("A round piece is as wide as it is long: {taken} is taken.", words.Amount("taken", l.Length)),
				words.Say("Leave the width empty, or make the piece rectangular."))
		}
		l.Width = l.Length
	case l.Width <= 0:
		g.say(given.At+"/width", problem.Stop, words.Say("The width of the loose piece is not given."), words.Say("Write it in."))
		return l, false
	}
	if least := min(l.Length, l.Width); least < LeastPanel {
		g.say(given.At+"/length", problem.Caution, words.Say("A loose piece of {least} is smaller than anyone hangs.", words.Amount("least", least)), words.Say("Check the number and its unit."))
	}
	return l, true
}

// isInside tells whether a loose piece lies inside the mask, and reports by how
// much it does not.
func (g *gathering) isInside(l Loose, given GivenPiece) bool {
	if !g.outline.IsComplete() {
		return false
	}
	return g.isWithin(l.X, l.Length, g.outline.Length, given.At, "/fromDA", "/length", words.Say("length"), "ZW") &&
		g.isWithin(l.Y, l.Width, g.outline.Width, given.At, "/fromAB", "/width", words.Say("width"), "WX")
}

// isWithin is isInside in one direction. Twice the distances are compared, so
// that half of an odd size is not rounded.
func (g *gathering) isWithin(middle, size, side measure.Length, at, fromAt, sizeAt string, name words.Text, wall string) bool {
	past := max(size-2*middle, 2*middle+size-2*side)
	switch {
	case size > side:
		g.say(at+sizeAt, problem.Stop, words.Say("The loose piece is {by} larger than the {side} of the mask.", words.Amount("by", size-side), words.Of("side", name)),
			words.Say("Check the number and its unit."))
		return false
	case past > 0:
		g.say(at+fromAt, problem.Stop, words.Say("The loose piece runs {past} past the edge of the mask.", words.Amount("past", (past+1)/2)),
			words.Say("Its middle can be from {least} to {most} from the mask's own side {wall}.",
				words.AtLeast("least", (size+1)/2), words.AtMost("most", (2*side-size)/2), words.Name("wall", wall)))
		return false
	}
	return true
}

// overlaps tells whether two loose pieces share more than a line.
func (l Loose) overlaps(other Loose) bool {
	// Everything is doubled so that halves stay whole.
	dx, dy := 2*(l.X-other.X).Abs(), 2*(l.Y-other.Y).Abs()
	switch {
	case l.Round && other.Round:
		return isNearer(dx, dy, l.Length+other.Length)
	case l.Round:
		return isNearer(max(dx-other.Length, 0), max(dy-other.Width, 0), l.Length)
	case other.Round:
		return isNearer(max(dx-l.Length, 0), max(dy-l.Width, 0), other.Length)
	}
	return dx < l.Length+other.Length && dy < l.Width+other.Width
}

// isNearer tells whether x² + y² is below reach², in 128 bits.
func isNearer(x, y, reach measure.Length) bool {
	xHigh, xLow := bits.Mul64(uint64(x), uint64(x))
	yHigh, yLow := bits.Mul64(uint64(y), uint64(y))
	rHigh, rLow := bits.Mul64(uint64(reach), uint64(reach))
	low, carry := bits.Add64(xLow, yLow, 0)
	high, _ := bits.Add64(xHigh, yHigh, carry)
	return high < rHigh || high == rHigh && low < rLow
}
