package job

import (
	"ceilingwright/core/delivery"
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/register"
)

// Layer is one layer of the mask with its panels as they came, how they lie in the
// mask outline and in which order they are hung. Tape is the tape over its seams,
// laps and all. Key is the panel kept up for the next layer; Begin and Last are the
// panel to begin with and those to hang last for the sake of the key before.
// Sequence is the order and what is known of it, Order its steps, Restart what comes
// down first. Stations are the places of the platform that cover the outline, none
// where its size is not known; Stands is how the platform stands at each, where it
// was tried.
type Layer struct {
	Plan          plan.Layer
	Delivery      *delivery.Checked
	Panels        mask.Layer
	Columns, Rows mask.Run
	Tape          measure.Length
	Key           Key
	Begin         mask.Panel
	Last          []mask.Panel
	Sequence      hanging.Sequence
	Order         []hanging.Hang
	Restart       hanging.Restart
	Stations      []hanging.Station
	Stands        []hanging.Standing
}

// Key is the panel of a layer that is kept up for the next. Chosen is "tool" or
// "user"; "" where none can be kept, and Reason says why.
type Key struct {
	register.Key
	Chosen, Reason string
}

// IsKept tells whether a panel is kept up.
func (k *Key) IsKept() bool { return k.Chosen != "" }

// Name is the key as it is spoken of: its label, or the name of the piece.
func (k *Key) Name() string { return k.Piece.Name }

// Stops are the places of the platform in the order they are used, each once.
func (l *Layer) Stops() []int {
	var stops []int
	used := make([]bool, len(l.Stations)+1)
	for i := range l.Order {
		if n := l.Order[i].Station; n > 0 && n <= len(l.Stations) && !used[n] {
			used[n] = true
			stops = append(stops, n)
		}
	}
	return stops
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
