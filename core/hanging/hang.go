package hanging

import (
	"math/bits"
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Target says what an edge of a panel is set against.
type Target string

// A panel already up, a centre line, a seam line snapped between two marks, or
// the tape line round the box.
const (
	ToPanel      Target = "panel"
	ToCentreLine Target = "centre line"
	ToSeamLine   Target = "seam line"
	ToTapeLine   Target = "tape line"
)

// Edge is one edge of a panel, named by the wall it faces, and what it is set
// against. Panel is the neighbour for ToPanel, Seam the name of the seam for
// ToSeamLine and ToCentreLine.
type Edge struct {
	Side  survey.Wall
	To    Target
	Panel mask.Panel
	Seam  string
}

// Hang is one step of the hanging order, N counted from 1, with the edges the
// panel is set to. A panel always has at least one in each direction: a
// neighbour that is up or the tape line, and where it has neither, the centre
// line or the seam lines on both sides.
type Hang struct {
	N     int
	Panel mask.Panel
	Edges []Edge
}

// Order is the order in which a layer's panels are hung, worked out from the
// centre because that halves what can build up. The first panel is the one
// that holds the middle of the box, or of those that meet there the nearest.
// Every later one shares an edge, not just a corner, with one that is up.
// Among those the nearest to the middle of the box (from the middle of the
// panel) comes next; of equals the one that touches more panels already up,
// then the lower row, then the lower column. It takes a time of n log n.
func Order(columns, rows mask.Run) []Hang {
	h := newHanging(columns, rows)
	if h.count() == 0 {
		return nil
	}
	order := make([]Hang, 0, h.count())
	for h.offer(nearest(columns), nearest(rows)); h.heap.len() > 0; {
		next := h.heap.pop()
		i := h.index(next.column, next.row)
		if h.up[i] {
			continue // an older offer of a panel that touches more by now
		}
		order = append(order, Hang{len(order) + 1, panel(next.column, next.row), h.edges(next.column, next.row)})
		h.up[i] = true
		h.offerNeighbours(next.column, next.row)
	}
	return order
}

func panel(column, row int) mask.Panel { return mask.Panel{Column: column + 1, Row: row + 1} }

// hanging is the work in progress. Columns and rows count from 0 here.
type hanging struct {
	columns, rows mask.Run
	dx, dy        []wide // squared distance of each column and row, doubled lengths
	up            []bool
	touching      []uint8 // neighbours that are up
	heap          offers
	set           []Edge // one stretch of memory for the edges of all panels
}

func newHanging(columns, rows mask.Run) *hanging {
	count := len(columns.Sizes) * len(rows.Sizes)
	dx, dy := distances(columns, rows)
	return &hanging{
		columns: columns, rows: rows, dx: dx, dy: dy,
		up: make([]bool, count), touching: make([]uint8, count),
		set: make([]Edge, 0, 3*count),
	}
}

func (h *hanging) count() int { return len(h.up) }

func (h *hanging) index(column, row int) int { return row*len(h.columns.Sizes) + column }

// isUp tells whether there is a panel there and it is up.
func (h *hanging) isUp(column, row int) bool {
	return column >= 0 && column < len(h.columns.Sizes) && row >= 0 && row < len(h.rows.Sizes) &&
		h.up[h.index(column, row)]
}

func (h *hanging) offer(column, row int) {
	touching := h.touching[h.index(column, row)]
	h.heap.push(offer{h.dx[column].plus(h.dy[row]), touching, row, column})
}

func (h *hanging) offerNeighbours(column, row int) {
	for _, step := range [4][2]int{{0, -1}, {1, 0}, {0, 1}, {-1, 0}} {
		c, r := column+step[0], row+step[1]
		if c < 0 || c >= len(h.columns.Sizes) || r < 0 || r >= len(h.rows.Sizes) || h.isUp(c, r) {
			continue
		}
		h.touching[h.index(c, r)]++
		h.offer(c, r)
	}
}

// edges are what a panel is set to as it goes up, first along, then across.
func (h *hanging) edges(column, row int) []Edge {
	from := len(h.set)
	h.direction(column, len(h.columns.Sizes), h.columns, survey.DA, survey.BC, mask.ColumnSeam,
		func(c int) (mask.Panel, bool) { return panel(c, row), h.isUp(c, row) })
	h.direction(row, len(h.rows.Sizes), h.rows, survey.AB, survey.CD, mask.RowSeam,
		func(r int) (mask.Panel, bool) { return panel(column, r), h.isUp(column, r) })
	return h.set[from:len(h.set):len(h.set)]
}

// direction adds the edges of one direction: neighbours that are up and tape
// lines; failing both, the centre line, or else both seam lines.
func (h *hanging) direction(i, count int, run mask.Run, low, high survey.Wall, name func(int) string,
	neighbour func(int) (mask.Panel, bool)) {
	from := len(h.set)
	for _, side := range [2]struct {
		wall survey.Wall
		next int
	}{{low, i - 1}, {high, i + 1}} {
		if side.next < 0 || side.next >= count {
			h.set = append(h.set, Edge{Side: side.wall, To: ToTapeLine})
		} else if p, up := neighbour(side.next); up {
			h.set = append(h.set, Edge{Side: side.wall, To: ToPanel, Panel: p})
		}
	}
	if len(h.set) > from {
		return
	}
	switch {
	case onCentreLine(run, i-1):
		h.set = append(h.set, Edge{Side: low, To: ToCentreLine, Seam: name(i)})
	case onCentreLine(run, i):
		h.set = append(h.set, Edge{Side: high, To: ToCentreLine, Seam: name(i + 1)})
	default:
		h.set = append(h.set, Edge{Side: low, To: ToSeamLine, Seam: name(i)}, Edge{Side: high, To: ToSeamLine, Seam: name(i + 1)})
	}
}

// onCentreLine tells whether seam i lies on the middle of the box, to the few
// nanometres that halving leaves.
func onCentreLine(run mask.Run, i int) bool {
	return (2*run.Seam(i) - run.Box).Abs() <= 4*measure.Nanometre
}

// nearest is the panel of a run that holds the middle of the box; of several
// as near, the one with its middle nearest, then the first.
func nearest(run mask.Run) int {
	best, bestOff, bestMiddle := 0, measure.Length(-1), measure.Length(0)
	for i, start := range run.Starts {
		end := start + run.Sizes[i]
		off := max(2*start-run.Box, run.Box-2*end, 0)
		middle := (start + end - run.Box).Abs()
		if bestOff < 0 || off < bestOff || off == bestOff && middle < bestMiddle {
			best, bestOff, bestMiddle = i, off, middle
		}
	}
	return best
}

// alike is the difference up to which two doubled distances count as one. The
// panels left and right of the middle are as far from it, but their cuts were
// each rounded to a nanometre, and that must not decide who hangs first. It
// holds for one column or row against another, not for sums of two squares.
const alike = 8 * measure.Nanometre

// distances is how far the middle of each column and each row is from the
// middle of the box, doubled (so that halves stay whole) and squared.
func distances(columns, rows mask.Run) (dx, dy []wide) {
	twice := append(fromMiddle(columns), fromMiddle(rows)...)
	sorted := slices.Clone(twice)
	slices.Sort(sorted)
	kept := sorted[:0]
	for _, d := range sorted {
		if len(kept) == 0 || d-kept[len(kept)-1] > alike {
			kept = append(kept, d)
		}
	}
	squares := make([]wide, len(twice))
	for i, d := range twice {
		at, exact := slices.BinarySearch(kept, d)
		if !exact {
			at--
		}
		squares[i] = squareOf(kept[at])
	}
	return squares[:len(columns.Starts)], squares[len(columns.Starts):]
}

func fromMiddle(run mask.Run) []measure.Length {
	twice := make([]measure.Length, len(run.Starts))
	for i, start := range run.Starts {
		twice[i] = (2*start + run.Sizes[i] - run.Box).Abs()
	}
	return twice
}

// wide is a whole number of 128 bits: nanometres squared overflow 64 bits at
// three metres.
type wide struct{ high, low uint64 }

func squareOf(l measure.Length) wide {
	high, low := bits.Mul64(uint64(l), uint64(l))
	return wide{high, low}
}

func (w wide) plus(v wide) wide {
	low, carry := bits.Add64(w.low, v.low, 0)
	return wide{w.high + v.high + carry, low}
}

func (w wide) less(v wide) bool {
	return w.high < v.high || w.high == v.high && w.low < v.low
}
