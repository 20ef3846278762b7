package job

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/register"
	"ceilingwright/core/setout"
)

// Hanging is how the layers are hung, one Hung for each of them.
type Hanging struct {
	Layers []Hung
}

// Hung is how one layer is hung. Key is the panel kept up for the next layer; Begin
// and Last are the panel to begin with and those to hang last for the sake of the key
// before. Sequence is the order and what is known of it, Order its steps, Restart what
// comes down first. Stations are the places of the platform that cover the outline,
// none where its size is not known; Stands is how the platform stands at each, where
// it was tried.
type Hung struct {
	Key      Key
	Begin    mask.Panel
	Last     []mask.Panel
	Sequence hanging.Sequence
	Order    []hanging.Hang
	Restart  hanging.Restart
	Stations []hanging.Station
	Stands   []hanging.Standing
}

// HungLayer is a layer of the mask and how it is hung.
type HungLayer struct {
	*Layer
	*Hung
}

// Hung is layer i and how it is hung, as far as that is worked out. Room for what is
// found is made when it is first asked for.
func (j *Job) Hung(i int) HungLayer {
	if more := len(j.Layers) - len(j.Hanging.Layers); more > 0 {
		j.Hanging.Layers = append(j.Hanging.Layers, make([]Hung, more)...)
	}
	return HungLayer{&j.Layers[i], &j.Hanging.Layers[i]}
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
func (h *Hung) Stops() []int {
	var stops []int
	used := make([]bool, len(h.Stations)+1)
	for i := range h.Order {
		if n := h.Order[i].Station; n > 0 && n <= len(h.Stations) && !used[n] {
			used[n] = true
			stops = append(stops, n)
		}
	}
	return stops
}

// PlaceOf is where a block of panels lies on the ceiling.
func (j *Job) PlaceOf(l *Layer, h *hanging.Hang) setout.Box {
	first, last := h.Block.Panel(), mask.Panel{Column: h.Block.Column + h.Block.Columns - 1, Row: h.Block.Row + h.Block.Rows - 1}
	box := j.Setting.Choice.Box.PanelBox(l.Columns, l.Rows, first)
	end := setout.PanelIn(l.Columns, l.Rows, last)
	start := setout.PanelIn(l.Columns, l.Rows, first)
	box.Length, box.Width = end.X+end.Length-start.X, end.Y+end.Width-start.Y
	return box
}
