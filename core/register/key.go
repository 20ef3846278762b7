package register

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Grid is a layer as it lies in the box: its columns, its rows and the blocks
// of panels that are hung as one. Every panel outside Pieces is by itself.
type Grid struct {
	Columns, Rows mask.Run
	Pieces        []mask.Piece
}

// Key is the panel of one layer, or the block hung as one, that is kept up for
// the next layer to be set against. Lies are the panels of the next layer that
// lie on it and so cannot go up until it is down, whole blocks of them; Touches
// those that have an edge on one of its edges and are set against it, without
// those that lie on it for being part of a block. Both are in reading order.
// Sides are what comes next to each of its edges that has anything beside it.
type Key struct {
	Piece   mask.Piece
	Lies    []mask.Panel
	Touches []mask.Panel
	Sides   []Side
}

// Side is what the next layer has beside one edge of the key: the panels that
// begin past it, and how far from it they begin. Wall names the side of the box
// that the edge faces. They Touch when no more than a seam is between.
type Side struct {
	Wall   survey.Wall
	Panels []mask.Panel
	Away   measure.Length
	Touch  bool
}

// ChooseKey chooses the key of a layer for the next: the panel that the fewest
// panels of the next layer lie on; of those the one with its middle nearest the
// middle of the box, to a thousandth of a millimetre; of equals the lower row,
// then the lower column. A block hung as one is kept up as one. barred tells
// which panels cannot be kept up: out of reach, missing, cut into; nil bars
// none. False where no panel is left. It takes a time that grows with the
// panels of both layers.
func ChooseKey(this, next Grid, barred func(mask.Panel) bool) (Key, bool) {
	owner := this.owner()
	best, bestLies, bestAway := mask.Piece{}, 0, int64(0)
	for r := range this.Rows.Starts {
		for c := range this.Columns.Starts {
			p := this.pieceAt(owner, c, r)
			if p.Column != c+1 || p.Row != r+1 {
				continue // the block was looked at with its first panel
			}
			columns, rows := p.spans()
			along, across := stretch(this.Columns, columns), stretch(this.Rows, rows)
			lies := along.over(next.Columns).count() * across.over(next.Rows).count()
			x, y := along.fromMiddle(this.Columns.Box), across.fromMiddle(this.Rows.Box)
			away := x*x + y*y
			worse := best.Row > 0 && (lies > bestLies || lies == bestLies && away >= bestAway)
			if worse || barred != nil && anyOf(columns, rows, barred) {
				continue
			}
			best, bestLies, bestAway = p.Piece, lies, away
		}
	}
	if best.Row == 0 {
		return Key{}, false
	}
	return KeyAt(this, next, best.First())
}

// KeyAt is a panel of this layer as the key, or the block it belongs to. False
// where the layer has no such panel.
func KeyAt(this, next Grid, p mask.Panel) (Key, bool) {
	if p.Column < 1 || p.Column > len(this.Columns.Starts) || p.Row < 1 || p.Row > len(this.Rows.Starts) {
		return Key{}, false
	}
	piece := this.pieceAt(this.owner(), p.Column-1, p.Row-1)
	columns, rows := piece.spans()
	along, across := stretch(this.Columns, columns), stretch(this.Rows, rows)
	overColumns, overRows := along.over(next.Columns), across.over(next.Rows)
	key := Key{Piece: piece.Piece, Lies: next.withBlocks(overColumns, overRows)}
	before, after := along.beside(this.Columns, columns, next.Columns)
	above, below := across.beside(this.Rows, rows, next.Rows)
	for _, side := range [4]struct {
		wall          survey.Wall
		columns, rows span
		near          near
	}{
		{survey.AB, overColumns, above.span(), above}, {survey.DA, before.span(), overRows, before},
		{survey.BC, after.span(), overRows, after}, {survey.CD, overColumns, below.span(), below},
	} {
		panels := panelsOf(side.columns, side.rows)
		panels = slices.DeleteFunc(panels, func(p mask.Panel) bool { return isIn(key.Lies, p) })
		if len(panels) == 0 {
			continue
		}
		key.Sides = append(key.Sides, Side{side.wall, panels, side.near.away, side.near.touches})
		if side.near.touches {
			key.Touches = append(key.Touches, panels...)
		}
	}
	slices.SortFunc(key.Touches, readingOrder)
	return key, true
}

func readingOrder(p, q mask.Panel) int {
	if p.Row != q.Row {
		return p.Row - q.Row
	}
	return p.Column - q.Column
}

func isIn(sorted []mask.Panel, p mask.Panel) bool {
	_, found := slices.BinarySearchFunc(sorted, p, readingOrder)
	return found
}

// owner is for each panel in reading order the piece it belongs to, counted
// from 1, or 0; nil without pieces.
func (g Grid) owner() []int32 {
	if len(g.Pieces) == 0 {
		return nil
	}
	columns, rows := len(g.Columns.Starts), len(g.Rows.Starts)
	owner := make([]int32, columns*rows)
	for i, p := range g.Pieces {
		for r := max(p.Row, 1); r < min(p.Row+p.Rows, rows+1); r++ {
			for c := max(p.Column, 1); c < min(p.Column+p.Columns, columns+1); c++ {
				owner[(r-1)*columns+c-1] = int32(i + 1)
			}
		}
	}
	return owner
}

// held is what is kept up as one, with the stretches it takes of the grid.
type held struct{ mask.Piece }

func (h held) spans() (columns, rows span) {
	return span{h.Column - 1, h.Column - 1 + h.Columns}, span{h.Row - 1, h.Row - 1 + h.Rows}
}

// pieceAt is the block that a panel, counted from 0, belongs to.
func (g Grid) pieceAt(owner []int32, c, r int) held {
	if owner != nil {
		if i := owner[r*len(g.Columns.Starts)+c]; i > 0 {
			return held{g.Pieces[i-1]}
		}
	}
	p := mask.Panel{Column: c + 1, Row: r + 1}
	return held{mask.Piece{Name: p.Label(), Column: p.Column, Row: p.Row, Columns: 1, Rows: 1}}
}

// withBlocks are the panels of a stretch of the grid, and all others of the
// blocks that any of them belongs to, in reading order.
func (g Grid) withBlocks(columns, rows span) []mask.Panel {
	panels := panelsOf(columns, rows)
	owner := g.owner()
	if owner == nil {
		return panels
	}
	taken := make([]bool, len(g.Pieces)+1)
	for _, p := range panels {
		taken[owner[(p.Row-1)*len(g.Columns.Starts)+p.Column-1]] = true
	}
	taken[0] = false
	for i, is := range owner {
		if taken[is] {
			panels = append(panels, mask.Panel{Column: i%len(g.Columns.Starts) + 1, Row: i/len(g.Columns.Starts) + 1})
		}
	}
	slices.SortFunc(panels, readingOrder)
	return slices.Compact(panels)
}

// span is a stretch of columns or rows, counted from 0, without its end.
type span struct{ from, to int }

func (s span) count() int { return max(s.to-s.from, 0) }

func panelsOf(columns, rows span) []mask.Panel {
	panels := make([]mask.Panel, 0, columns.count()*rows.count())
	for r := rows.from; r < rows.to; r++ {
		for c := columns.from; c < columns.to; c++ {
			panels = append(panels, mask.Panel{Column: c + 1, Row: r + 1})
		}
	}
	return panels
}

func anyOf(columns, rows span, is func(mask.Panel) bool) bool {
	for r := rows.from; r < rows.to; r++ {
		for c := columns.from; c < columns.to; c++ {
			if is(mask.Panel{Column: c + 1, Row: r + 1}) {
				return true
			}
		}
	}
	return false
}

// reach is a stretch of the box along one direction.
type reach struct{ low, high measure.Length }

func stretch(run mask.Run, s span) reach {
	return reach{run.Starts[s.from], run.Starts[s.to-1] + run.Sizes[s.to-1]}
}

// fromMiddle is how far the middle of the stretch is from the middle of the
// box, doubled, in thousandths of a millimetre: what cuts rounded to the
// nanometre differ by must not decide.
func (s reach) fromMiddle(box measure.Length) int64 {
	const micrometre = measure.Millimetre / 1000
	return int64((s.low + s.high - box).Abs().ToMark(micrometre) / micrometre)
}

// over is which panels of a run lie on the stretch: by more than what is not
// spoken of, so that cuts rounded apart by a nanometre do not count.
func (s reach) over(next mask.Run) span {
	return span{endingAfter(next, s.low+mask.Noticeable), startingFrom(next, s.high-mask.Noticeable)}
}

// near is a panel of the next run beside a stretch, or none: index −1.
type near struct {
	index   int
	away    measure.Length
	touches bool
}

func (n near) span() span {
	if n.index < 0 {
		return span{}
	}
	return span{n.index, n.index + 1}
}

// beside is the last panel of the next run that ends before the stretch and the
// first that begins after it.
func (s reach) beside(this mask.Run, of span, next mask.Run) (before, after near) {
	before, after = near{index: -1}, near{index: -1}
	if b := endingAfter(next, s.low+mask.Noticeable) - 1; b >= 0 {
		away := s.low - next.Starts[b] - next.Sizes[b]
		before = near{b, away, away <= seam(this, of.from-1, next, b)}
	}
	if a := startingFrom(next, s.high-mask.Noticeable); a < len(next.Starts) {
		away := next.Starts[a] - s.high
		after = near{a, away, away <= seam(this, of.to-1, next, a-1)}
	}
	return before, after
}

// loose is what a panel may be away from an edge over and above the gap of its
// seam and still be set against it. A choice.
const loose = measure.Millimetre

// seam is how far apart two panels of the two runs may be when only a seam is
// between them.
func seam(this mask.Run, i int, next mask.Run, j int) measure.Length {
	widest := max(this.Gap, next.Gap, 0)
	if i >= 0 && i < len(this.Gaps) {
		widest = max(widest, this.Gaps[i])
	}
	if j >= 0 && j < len(next.Gaps) {
		widest = max(widest, next.Gaps[j])
	}
	return widest + loose
}

// endingAfter is the first panel of a run that ends past a place.
func endingAfter(run mask.Run, at measure.Length) int {
	return firstOf(len(run.Starts), func(i int) bool { return run.Starts[i]+run.Sizes[i] > at })
}

// startingFrom is the first panel of a run that starts at a place or past it.
func startingFrom(run mask.Run, at measure.Length) int {
	return firstOf(len(run.Starts), func(i int) bool { return run.Starts[i] >= at })
}

// firstOf is the first of n for which is holds, when it holds for all after it;
// n where it holds for none.
func firstOf(n int, is func(int) bool) int {
	low, high := 0, n
	for low < high {
		middle := (low + high) / 2
		if is(middle) {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return low
}
