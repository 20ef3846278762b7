package job

import (
	"ceilingwright/core/delivery"
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
)

// Layer is one layer of the mask with its panels as they came and how they lie in
// the mask outline. Tape is the tape over its seams, laps and all.
type Layer struct {
	Plan          plan.Layer
	Delivery      *delivery.Checked
	Panels        mask.Layer
	Columns, Rows mask.Run
	Tape          measure.Length
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
