package mask

import (
	"slices"
	"strconv"

	"ceilingwright/core/measure"
)

// Direction says which way a line runs on the ceiling.
type Direction string

// Along the length of the mask (as walls AB and CD do), across it, or round a loose
// piece.
const (
	Along  Direction = "along"
	Across Direction = "across"
	Round  Direction = "round"
)

// Seam is where two neighbouring columns or rows meet. Length is how much of it
// is closed overhead; Floor how much lies inside joined pieces and is closed
// before they go up. What lies inside a span is no seam.
type Seam struct {
	Name   string    // "2│3" between columns, "A│B" between rows, else that of the piece
	Runs   Direction // a seam between columns runs across, between rows along
	After  int       // the column or row before it, from 1
	Length measure.Length
	Floor  measure.Length
}

// ColumnSeam names the seam after a column, RowSeam that after a row.
func ColumnSeam(column int) string { return strconv.Itoa(column) + "│" + strconv.Itoa(column+1) }

// RowSeam names the seam after a row.
func RowSeam(row int) string { return RowLetters(row) + "│" + RowLetters(row+1) }

// Seams are all inner seams: between columns first, then between rows. Each
// runs the whole width or length of the mask, less what pieces take of it: a
// stretch ends in the middle of the gap it meets. One that lies in spans over
// its whole length is not among them.
func (l Layer) Seams(o Outline) []Seam {
	if l.IsEmpty() {
		return nil
	}
	seams := make([]Seam, 0, len(l.Columns)+len(l.Rows)-2)
	for c := 1; c < len(l.Columns); c++ {
		seams = append(seams, Seam{ColumnSeam(c), Across, c, o.Width, 0})
	}
	for r := 1; r < len(l.Rows); r++ {
		seams = append(seams, Seam{RowSeam(r), Along, r, o.Length, 0})
	}
	if len(l.Pieces) == 0 {
		return seams
	}
	l.insides(o, func(between int, kind PieceKind, length measure.Length) {
		seams[between].Length = max(0, seams[between].Length-length)
		if kind == Joined {
			seams[between].Floor += length
		}
	})
	heldColumns, heldRows := l.held()
	left := seams[:0]
	for i, seam := range seams {
		if c := len(l.Columns) - 1; i < c && (heldColumns == nil || !heldColumns[i]) || i >= c && (heldRows == nil || !heldRows[i-c]) {
			left = append(left, seam)
		}
	}
	return left
}

// insides calls for every stretch of seam inside a piece: between counts the
// seams of the whole grid from 0, columns first. What lies outside the box is no
// seam of it: of panels that are larger than the box none is longer than that.
func (l Layer) insides(o Outline, inside func(between int, kind PieceKind, length measure.Length)) {
	columns, rows := l.Runs(o)
	for _, p := range l.Pieces {
		length := max(0, columns.edge(p.Column-1+p.Columns)-columns.edge(p.Column-1))
		width := max(0, rows.edge(p.Row-1+p.Rows)-rows.edge(p.Row-1))
		for c := p.Column; c < p.Column+p.Columns-1; c++ {
			inside(c-1, p.Kind, width)
		}
		for r := p.Row; r < p.Row+p.Rows-1; r++ {
			inside(len(l.Columns)-1+r-1, p.Kind, length)
		}
	}
}

// edge is where seam i − 1 lies, the start of the box for 0 and its end after
// the last panel; never outside the box.
func (r Run) edge(i int) measure.Length {
	switch {
	case len(r.Sizes) == 0 || i <= 0:
		return 0
	case i >= len(r.Sizes):
		return r.Box
	}
	return min(max(r.Seam(i-1), 0), r.Box)
}

// held tells of each seam between columns, and each between rows, whether it
// lies inside spans over its whole length. nil where none does.
func (l Layer) held() (columns, rows []bool) {
	var across, along []int
	for _, p := range l.Pieces {
		if p.Kind != Span {
			continue
		}
		if across == nil {
			across, along = make([]int, len(l.Columns)), make([]int, len(l.Rows))
		}
		for c := p.Column; c < p.Column+p.Columns-1; c++ {
			across[c-1] += p.Rows
		}
		for r := p.Row; r < p.Row+p.Rows-1; r++ {
			along[r-1] += p.Columns
		}
	}
	return full(across, len(l.Rows)), full(along, len(l.Columns))
}

// full tells of each seam whether all of it is counted; nil where none is.
func full(counted []int, all int) []bool {
	var held []bool
	for i, n := range counted {
		if n == all && i < len(counted)-1 {
			if held == nil {
				held = make([]bool, len(counted)-1)
			}
			held[i] = true
		}
	}
	return held
}

// SeamLength is all inner seams that are closed overhead, together, exact.
func (l Layer) SeamLength(o Outline) measure.Length {
	if l.IsEmpty() {
		return 0
	}
	if len(l.Pieces) == 0 {
		return measure.Length(len(l.Columns)-1)*o.Width + measure.Length(len(l.Rows)-1)*o.Length
	}
	length := measure.Length(0)
	for _, seam := range l.Seams(o) {
		length += seam.Length
	}
	return length
}

// FloorLength is the seams inside joined pieces, which are closed on the floor,
// together, exact.
func (l Layer) FloorLength(o Outline) measure.Length {
	length := measure.Length(0)
	if len(l.Pieces) > 0 {
		l.insides(o, func(_ int, kind PieceKind, inside measure.Length) {
			if kind == Joined {
				length += inside
			}
		})
	}
	return length
}

// LooseLength is the lines that loose pieces are cut along, together, each
// rounded as CutLength says. What they take of a seam is not taken off it.
func (l Layer) LooseLength() measure.Length {
	length := measure.Length(0)
	for _, loose := range l.Loose {
		length += loose.CutLength()
	}
	return length
}

// Crossings is how many points there are where four panels meet. A joined piece
// counts as the panels it is made of, a span as one.
func (l Layer) Crossings() int {
	crossings, _ := l.meetings()
	return crossings
}

// TJoints is how many points there are where a seam ends on the side of
// another: where a span lies along one side of it.
func (l Layer) TJoints() int {
	_, joints := l.meetings()
	return joints
}

// meetings counts where seams meet. Of the points inside the grid none is left
// inside a span; on the side of a span one of the four seams ends, and where
// the sides of two spans meet there, both do and the third runs straight on.
func (l Layer) meetings() (crossings, joints int) {
	if l.IsEmpty() {
		return 0, 0
	}
	crossings = (len(l.Columns) - 1) * (len(l.Rows) - 1)
	var sides []int
	for _, p := range l.Pieces {
		if p.Kind != Span {
			continue
		}
		crossings -= (p.Columns - 1) * (p.Rows - 1)
		sides = l.appendSides(sides, p)
	}
	slices.Sort(sides)
	for i := 0; i < len(sides); i++ {
		crossings--
		if i+1 < len(sides) && sides[i+1] == sides[i] {
			i++
			continue
		}
		joints++
	}
	return crossings, joints
}

// appendSides adds the points inside the grid that lie on the sides of a span
// between its corners, each as one number.
func (l Layer) appendSides(sides []int, p Piece) []int {
	add := func(column, row int) {
		if column > 0 && row > 0 && column < len(l.Columns) && row < len(l.Rows) {
			sides = append(sides, row*len(l.Columns)+column)
		}
	}
	left, right, top, bottom := p.Column-1, p.Column-1+p.Columns, p.Row-1, p.Row-1+p.Rows
	for c := left + 1; c < right; c++ {
		add(c, top)
		add(c, bottom)
	}
	for r := top + 1; r < bottom; r++ {
		add(left, r)
		add(right, r)
	}
	return sides
}

// LooseSeams are the lines that loose pieces are cut along.
func (l Layer) LooseSeams() []Seam {
	seams := make([]Seam, len(l.Loose))
	for i, p := range l.Loose {
		seams[i] = Seam{Name: p.Name, Runs: Round, Length: p.CutLength()}
	}
	return seams
}

// Cover says what is bridged with tape.
type Cover string

// Every seam once, or every seam and the outside edge of the mask.
const (
	CoverSeams   Cover = "seams"
	CoverOutside Cover = "seams-and-outside"
)

// TapeLength is the tape that covers a layer once, without waste: the seams
// overhead, those closed on the floor and the lines round loose pieces.
func (l Layer) TapeLength(o Outline, cover Cover) measure.Length {
	length := l.SeamLength(o) + l.FloorLength(o) + l.LooseLength()
	if cover == CoverOutside && !l.IsEmpty() {
		length += o.Perimeter()
	}
	return length
}
