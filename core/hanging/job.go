package hanging

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Block is what is hung in one go: a panel, or several that were delivered as
// one or taped together on the floor. Column and Row are its first panel, both
// from 1; Columns and Rows how many it spans.
type Block struct{ Column, Row, Columns, Rows int }

// BlockFromPanel is a panel hung by itself.
func BlockFromPanel(p mask.Panel) Block { return Block{p.Column, p.Row, 1, 1} }

// Panel is the first panel of a block, the one nearest corner A.
func (b Block) Panel() mask.Panel { return mask.Panel{Column: b.Column, Row: b.Row} }

// IsPanel tells whether the block is a single panel.
func (b Block) IsPanel() bool { return b.Columns == 1 && b.Rows == 1 }

// Job is what is to be hung and how things stand.
type Job struct {
	Columns, Rows mask.Run
	// Blocks are panels hung as one. One that does not lie on the grid, or
	// shares a panel with one before it, is left out: its panels are hung one
	// by one.
	Blocks []Block
	// Waiting are panels that are not there to be hung: missing or damaged.
	Waiting []mask.Panel
	// Last are panels that can go up only after all others: those that lie on
	// the panel kept up from the layer before.
	Last []mask.Panel
	// Start is the panel to begin with; the zero value leaves it to the tool.
	Start mask.Panel
	// Up are the panels that are up, in the order they went up.
	Up []mask.Panel
	// Again is a panel that came down and goes up again first, or the zero
	// value.
	Again mask.Panel
	// Stations are the places of the platform; none where they are not known.
	Stations []Station
}

// Target says what an edge of a panel is set against.
type Target string

// A panel already up, the panel kept up from the layer before, a centre line, a seam
// line snapped between two marks, or the tape line round the box. No order sets an edge
// to the key: it does not know of one.
const (
	ToPanel      Target = "panel"
	ToKey        Target = "key"
	ToCentreLine Target = "centre line"
	ToSeamLine   Target = "seam line"
	ToTapeLine   Target = "tape line"
)

// Edge is one edge of a block, named by the wall it faces, and what it is set
// against. Panel is the first panel of the neighbour for ToPanel, Seam the name
// of the seam for ToSeamLine and ToCentreLine. A block of several panels has an
// edge for each neighbour that is up.
type Edge struct {
	Side  survey.Wall
	To    Target
	Panel mask.Panel
	Seam  string
}

// Wait says why a block comes after the others.
type Wait string

// It lies on the panel kept up from the layer before; it has not come, or is
// damaged; it touches no panel that is up until one of those has gone up.
const (
	WaitsForKey      Wait = "key"
	WaitsForDelivery Wait = "delivery"
	WaitsBehind      Wait = "behind"
)

// Hang is one step of the hanging order, N counted from 1, with the edges the
// block is set to. A block always has at least one in each direction: a
// neighbour that is up or the tape line, and where it has neither, the centre
// line or the seam lines on both sides. Panel is its first panel. Station is
// the place of the platform it is hung from, counted from 1, 0 where none is
// known; Part tells that not all of it is in reach from there. Up tells that it
// is up already, Waits why it comes late, "" where it does not.
type Hang struct {
	N       int
	Panel   mask.Panel
	Block   Block
	Edges   []Edge
	Station int
	Part    bool
	Up      bool
	Waits   Wait
}

// Sequence is the order in which everything is hung. Moves is how often the
// platform moves for what is not up yet and Way how far, each move along and
// then across. Fewest tells that no valid order has fewer moves; Shortest that
// of those none has a shorter way. What is known of a part is not said of the
// whole: where the platform moves for what waits, both are false.
type Sequence struct {
	Hangs    []Hang
	Moves    int
	Way      measure.Length
	Fewest   bool
	Shortest bool
}
