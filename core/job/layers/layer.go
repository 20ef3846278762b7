package layers

import (
	"ceilingwright/core/delivery"
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/register"
	"ceilingwright/core/setout"
	"ceilingwright/core/words"
)

// Layer is one layer of the mask with its panels as they came and how they lie in
// the mask outline. Asked is what to ask the supplier for, Changes what the panels as
// measured change. LooseCuts is where each loose piece is cut out of the panels.
// Bridges are the tapes over its seams and round its loose pieces, Laps what their
// joins take over and above those, and Tape all of it; none where the mask is not
// known.
type Layer struct {
	Plan          plan.Layer
	Delivery      *delivery.Checked
	Asked         []delivery.Asked
	Changes       delivery.Changes
	Panels        mask.Layer
	Columns, Rows mask.Run
	LooseCuts     [][]setout.Cut
	Bridges       []mask.Bridge
	Laps, Tape    measure.Length
}

// PanelsCalled is what the panels of a layer are called where they are bought.
func (l *Layer) PanelsCalled() words.Text {
	return words.Say("Panels of “{layer}”", words.Name("layer", l.Panels.Name))
}

// Rect is where what is hung in one go lies in the box.
func (l *Layer) Rect(block hanging.Block) hanging.Rect {
	endColumn, endRow := block.Column+block.Columns-2, block.Row+block.Rows-2
	x, y := l.Columns.Starts[block.Column-1], l.Rows.Starts[block.Row-1]
	return hanging.Rect{
		X: x, Length: l.Columns.Starts[endColumn] + l.Columns.Sizes[endColumn] - x,
		Y: y, Width: l.Rows.Starts[endRow] + l.Rows.Sizes[endRow] - y,
	}
}

// Grid is the layer as it lies in the mask outline.
func (l *Layer) Grid() register.Grid {
	return register.Grid{Columns: l.Columns, Rows: l.Rows, Pieces: l.Panels.Pieces}
}

// Lying is a piece as it is hung: its size, how much more its place has than a span
// can fill, below nothing less, from mask.Noticeable on; and the gaps to leave open on
// the floor inside a joined one, where they are known.
type Lying struct {
	Length, Width           measure.Length
	SpareLength, SpareWidth measure.Length
	Floor                   []FloorGap
}

// FloorGap is a seam that is closed on the floor.
type FloorGap struct {
	Seam string
	Gap  measure.Length
}

// Lies is a piece of the layer as it is hung.
func (l *Layer) Lies(p mask.Piece) Lying {
	length, width := p.Size(l.Panels)
	lies := Lying{Length: length, Width: width}
	if size := l.Delivery.Panels; p.Kind == mask.Span && size != nil {
		own := size[l.Panels.Index(p.First())].Own()
		lies.Length, lies.Width = own.Length, own.Width
	}
	length, width, ok := p.Place(l.Columns, l.Rows)
	switch {
	case !ok:
	case p.Kind == mask.Span:
		lies.SpareLength, lies.SpareWidth = noticeable(length-lies.Length), noticeable(width-lies.Width)
	default:
		lies.Length, lies.Width = length, width
		for c := p.Column; c < p.Last().Column; c++ {
			lies.Floor = append(lies.Floor, FloorGap{mask.ColumnSeam(c), l.Columns.Gaps[c-1]})
		}
		for r := p.Row; r < p.Last().Row; r++ {
			lies.Floor = append(lies.Floor, FloorGap{mask.RowSeam(r), l.Rows.Gaps[r-1]})
		}
	}
	return lies
}

// noticeable is a length from mask.Noticeable on, else 0.
func noticeable(l measure.Length) measure.Length {
	if l.Abs() < mask.Noticeable {
		return 0
	}
	return l
}
