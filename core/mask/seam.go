package mask

import (
	"strconv"

	"ceilingwright/core/measure"
)

// Direction says which way a line runs on the ceiling.
type Direction string

// Along the length of the mask (as walls AB and CD do), or across it.
const (
	Along  Direction = "along"
	Across Direction = "across"
)

// Seam is where two neighbouring columns or rows meet, over the whole mask.
type Seam struct {
	Name   string    // "2│3" between columns, "A│B" between rows
	Runs   Direction // a seam between columns runs across, between rows along
	After  int       // the column or row before it, from 1
	Length measure.Length
}

// ColumnSeam names the seam after a column, RowSeam that after a row.
func ColumnSeam(column int) string { return strconv.Itoa(column) + "│" + strconv.Itoa(column+1) }

// RowSeam names the seam after a row.
func RowSeam(row int) string { return RowLetters(row) + "│" + RowLetters(row+1) }

// Seams are all inner seams: between columns first, then between rows. Each
// runs the whole width or length of the mask.
func (l Layer) Seams(o Outline) []Seam {
	if l.IsEmpty() {
		return nil
	}
	seams := make([]Seam, 0, len(l.Columns)+len(l.Rows)-2)
	for c := 1; c < len(l.Columns); c++ {
		seams = append(seams, Seam{ColumnSeam(c), Across, c, o.Width})
	}
	for r := 1; r < len(l.Rows); r++ {
		seams = append(seams, Seam{RowSeam(r), Along, r, o.Length})
	}
	return seams
}

// SeamLength is all inner seams together, exact.
func (l Layer) SeamLength(o Outline) measure.Length {
	if l.IsEmpty() {
		return 0
	}
	return measure.Length(len(l.Columns)-1)*o.Width + measure.Length(len(l.Rows)-1)*o.Length
}

// Crossings is how many points there are where four panels meet.
func (l Layer) Crossings() int {
	if l.IsEmpty() {
		return 0
	}
	return (len(l.Columns) - 1) * (len(l.Rows) - 1)
}

// Cover says what is bridged with tape.
type Cover string

// Every seam once, or every seam and the outside edge of the mask.
const (
	CoverSeams   Cover = "seams"
	CoverOutside Cover = "seams-and-outside"
)

// TapeLength is the tape that covers a layer once, without waste, exact.
func (l Layer) TapeLength(o Outline, cover Cover) measure.Length {
	length := l.SeamLength(o)
	if cover == CoverOutside && !l.IsEmpty() {
		length += o.Perimeter()
	}
	return length
}
