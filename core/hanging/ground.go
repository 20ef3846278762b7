package hanging

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// rank is in which turn a block may be hung at the earliest.
type rank uint8

const (
	now      rank = iota // as soon as it touches one that is up
	last                 // once all that can go up now are up
	later                // once it has come
	ranks    = 3
	noBlock  = int32(-1)
	anywhere = int32(0) // the one station where none is known
)

// ground is what does not change while an order is worked out: the blocks, who
// touches whom, and how far each is from where the hanging starts. Blocks are
// known by their number from 0, in reading order of their first panels.
type ground struct {
	columns, rows mask.Run
	blocks        []Block
	owner         []int32 // the block of each panel, row by row
	rank          []rank
	distance      []wide // squared, of doubled lengths
}

func newGround(job Job) *ground {
	g := &ground{columns: job.Columns, rows: job.Rows}
	if g.across() == 0 || g.down() == 0 {
		return g
	}
	g.divide(job.Blocks)
	g.rank = make([]rank, len(g.blocks))
	g.atLeast(last, job.Last)
	g.atLeast(later, job.Waiting)
	return g
}

func (g *ground) across() int { return len(g.columns.Sizes) }
func (g *ground) down() int   { return len(g.rows.Sizes) }

// divide gives every panel its block. Those that were given first come first,
// so that one that overlaps an earlier one is left out whole.
func (g *ground) divide(given []Block) {
	count := g.across() * g.down()
	g.owner = slices.Repeat([]int32{noBlock}, count)
	taken := make([]Block, 0, len(given))
	for _, b := range given {
		if g.isFree(b) {
			g.claim(b, int32(len(taken)))
			taken = append(taken, b)
		}
	}
	g.blocks = make([]Block, 0, count)
	for row := 1; row <= g.down(); row++ {
		for column := 1; column <= g.across(); column++ {
			p := mask.Panel{Column: column, Row: row}
			block := BlockFromPanel(p)
			if at := g.owner[g.cell(column, row)]; at != noBlock {
				block = taken[at]
			}
			if block.Panel() == p {
				g.blocks = append(g.blocks, block)
			}
		}
	}
	for i, b := range g.blocks {
		g.claim(b, int32(i))
	}
}

func (g *ground) isFree(b Block) bool {
	if b.Column < 1 || b.Row < 1 || b.Columns < 1 || b.Rows < 1 ||
		b.Columns > g.across() || b.Rows > g.down() || b.Column+b.Columns-1 > g.across() || b.Row+b.Rows-1 > g.down() {
		return false
	}
	for row := b.Row; row < b.Row+b.Rows; row++ {
		for column := b.Column; column < b.Column+b.Columns; column++ {
			if g.owner[g.cell(column, row)] != noBlock {
				return false
			}
		}
	}
	return true
}

func (g *ground) claim(b Block, owner int32) {
	for row := b.Row; row < b.Row+b.Rows; row++ {
		for column := b.Column; column < b.Column+b.Columns; column++ {
			g.owner[g.cell(column, row)] = owner
		}
	}
}

func (g *ground) cell(column, row int) int { return (row-1)*g.across() + column - 1 }

// at is the block that a panel belongs to, false where there is no such panel.
func (g *ground) at(p mask.Panel) (int32, bool) {
	if p.Column < 1 || p.Row < 1 || p.Column > g.across() || p.Row > g.down() {
		return noBlock, false
	}
	return g.owner[g.cell(p.Column, p.Row)], true
}

// atLeast puts the blocks of those panels into a turn, unless they are in a
// later one.
func (g *ground) atLeast(r rank, panels []mask.Panel) {
	for _, p := range panels {
		if b, ok := g.at(p); ok {
			g.rank[b] = max(g.rank[b], r)
		}
	}
}

// rect is where a block lies in the box.
func (g *ground) rect(b Block) Rect {
	endColumn, endRow := b.Column+b.Columns-2, b.Row+b.Rows-2
	x, y := g.columns.Starts[b.Column-1], g.rows.Starts[b.Row-1]
	return Rect{
		X: x, Length: g.columns.Starts[endColumn] + g.columns.Sizes[endColumn] - x,
		Y: y, Width: g.rows.Starts[endRow] + g.rows.Sizes[endRow] - y,
	}
}

// neighbour is a block that shares an edge with another, on that side of it.
type neighbour struct {
	side  survey.Wall
	block int32
}

// neighbours are the blocks that share an edge with a block, first along, then
// across, each once. They are put into list, whose memory is used again.
func (g *ground) neighbours(list []neighbour, of int32) []neighbour {
	b := g.blocks[of]
	list = list[:0]
	for row := b.Row; row < b.Row+b.Rows; row++ {
		list = g.append(list, survey.DA, b.Column-1, row)
	}
	for row := b.Row; row < b.Row+b.Rows; row++ {
		list = g.append(list, survey.BC, b.Column+b.Columns, row)
	}
	for column := b.Column; column < b.Column+b.Columns; column++ {
		list = g.append(list, survey.AB, column, b.Row-1)
	}
	for column := b.Column; column < b.Column+b.Columns; column++ {
		list = g.append(list, survey.CD, column, b.Row+b.Rows)
	}
	return list
}

func (g *ground) append(list []neighbour, side survey.Wall, column, row int) []neighbour {
	block, ok := g.at(mask.Panel{Column: column, Row: row})
	if !ok || len(list) > 0 && list[len(list)-1] == (neighbour{side, block}) {
		return list
	}
	return append(list, neighbour{side, block})
}

// start is the block to begin with: the one the user chose where it may be
// hung in the first turn that has any; else the one of that turn that holds the
// middle of the box, or of those as near the one with its middle nearest, then
// the first in reading order. Distances must be those from the middle.
func (g *ground) start(chosen mask.Panel) (block int32, isChosen bool) {
	first := slices.Min(g.rank)
	if b, ok := g.at(chosen); ok && g.rank[b] == first {
		return b, true
	}
	best, bestOff := noBlock, wide{}
	for i, b := range g.blocks {
		if g.rank[i] != first {
			continue
		}
		r := g.rect(b)
		off := squareOf(outside(r.X, r.Length, g.columns.Box)).plus(squareOf(outside(r.Y, r.Width, g.rows.Box)))
		if best == noBlock || off.less(bestOff) || off == bestOff && g.distance[i].less(g.distance[best]) {
			best, bestOff = int32(i), off
		}
	}
	return best, false
}

// outside is how far the middle of the box lies outside a stretch, doubled; 0
// where it lies on it, to the few nanometres that halving leaves.
func outside(from, length, box measure.Length) measure.Length {
	off := max(2*from-box, box-2*(from+length), 0)
	if off <= alike {
		return 0
	}
	return off
}

// fromMiddle is how far the middle of a stretch is from the middle of the box,
// doubled so that halves stay whole.
func fromMiddle(from, length, box measure.Length) measure.Length {
	return (2*from + length - box).Abs()
}

// alike is the difference up to which two doubled distances count as one. The
// panels left and right of the middle are as far from it, but their cuts were
// each rounded to a nanometre, and that must not decide who hangs first. It
// holds for one direction against another, not for sums of two squares.
const alike = 8 * measure.Nanometre

// measureFrom works out how far the middle of each block is from a place, given
// doubled.
func (g *ground) measureFrom(twiceX, twiceY measure.Length) {
	twice := make([]measure.Length, 0, g.across()+g.down())
	for i, x := range g.columns.Starts {
		twice = append(twice, fromMiddle(x, g.columns.Sizes[i], twiceX))
	}
	for i, y := range g.rows.Starts {
		twice = append(twice, fromMiddle(y, g.rows.Sizes[i], twiceY))
	}
	for _, b := range g.blocks {
		if !b.IsPanel() {
			r := g.rect(b)
			twice = append(twice, fromMiddle(r.X, r.Length, twiceX), fromMiddle(r.Y, r.Width, twiceY))
		}
	}
	squares := squaresOf(twice)
	joined := g.across() + g.down()
	g.distance = make([]wide, len(g.blocks))
	for i, b := range g.blocks {
		if b.IsPanel() {
			g.distance[i] = squares[b.Column-1].plus(squares[g.across()+b.Row-1])
			continue
		}
		g.distance[i] = squares[joined].plus(squares[joined+1])
		joined += 2
	}
}

// squaresOf are the squares of distances, those that are alike taken as one.
func squaresOf(list []measure.Length) []wide {
	sorted := slices.Clone(list)
	slices.Sort(sorted)
	kept := sorted[:0]
	for _, d := range sorted {
		if len(kept) == 0 || d-kept[len(kept)-1] > alike {
			kept = append(kept, d)
		}
	}
	squares := make([]wide, len(list))
	for i, d := range list {
		at, exact := slices.BinarySearch(kept, d)
		if !exact {
			at--
		}
		squares[i] = squareOf(kept[at])
	}
	return squares
}
