package register

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// Grid is a layer as it lies in the box: its columns and its rows.
type Grid struct{ Columns, Rows mask.Run }

// Key is the panel of one layer that is kept up for the next to be set against.
// Lies are the panels of the next layer that lie on it and so cannot go up
// until it is down; Touches those that have an edge on one of its edges and are
// set against it. Both are in reading order.
type Key struct {
	Panel   mask.Panel
	Lies    []mask.Panel
	Touches []mask.Panel
}

// ChooseKey chooses the key of a layer for the next: the panel that the fewest
// panels of the next layer lie on; of those the one with its middle nearest the
// middle of the box, to a thousandth of a millimetre; of equals the lower row,
// then the lower column. barred tells which panels cannot be kept up: out of
// reach, missing, cut for the fixture; nil bars none. False where no panel is
// left. It takes a time that grows with the panels of both layers.
func ChooseKey(this, next Grid, barred func(mask.Panel) bool) (Key, bool) {
	lieColumns, lieRows := overlaps(this.Columns, next.Columns), overlaps(this.Rows, next.Rows)
	away := func(run mask.Run, i int) int64 {
		return int64((2*run.Starts[i] + run.Sizes[i] - run.Box) / 1000)
	}
	best, bestLies, bestAway := mask.Panel{}, 0, int64(0)
	for r := range this.Rows.Starts {
		for c := range this.Columns.Starts {
			p := mask.Panel{Column: c + 1, Row: r + 1}
			lies := lieColumns[c].count() * lieRows[r].count()
			x, y := away(this.Columns, c), away(this.Rows, r)
			distance := x*x + y*y
			worse := best.Row > 0 && (lies > bestLies || lies == bestLies && distance >= bestAway)
			if worse || barred != nil && barred(p) {
				continue
			}
			best, bestLies, bestAway = p, lies, distance
		}
	}
	if best.Row == 0 {
		return Key{}, false
	}
	return KeyAt(this, next, best)
}

// KeyAt is a panel of this layer as the key. False where it has no such panel.
func KeyAt(this, next Grid, p mask.Panel) (Key, bool) {
	c, r := p.Column-1, p.Row-1
	if c < 0 || c >= len(this.Columns.Starts) || r < 0 || r >= len(this.Rows.Starts) {
		return Key{}, false
	}
	along := overlap(this.Columns, c, next.Columns)
	across := overlap(this.Rows, r, next.Rows)
	key := Key{Panel: p, Lies: block(along, across)}
	before, after := beside(this.Columns, c, next.Columns)
	above, below := beside(this.Rows, r, next.Rows)
	key.Touches = slices.Concat(block(along, above), block(before, across), block(after, across), block(along, below))
	slices.SortFunc(key.Touches, readingOrder)
	return key, true
}

func readingOrder(p, q mask.Panel) int {
	if p.Row != q.Row {
		return p.Row - q.Row
	}
	return p.Column - q.Column
}

// span is a stretch of columns or rows, counted from 0, without its end.
type span struct{ from, to int }

func (s span) count() int { return max(s.to-s.from, 0) }

func block(columns, rows span) []mask.Panel {
	panels := make([]mask.Panel, 0, columns.count()*rows.count())
	for r := rows.from; r < rows.to; r++ {
		for c := columns.from; c < columns.to; c++ {
			panels = append(panels, mask.Panel{Column: c + 1, Row: r + 1})
		}
	}
	return panels
}

func overlaps(this, next mask.Run) []span {
	spans := make([]span, len(this.Starts))
	for i := range spans {
		spans[i] = overlap(this, i, next)
	}
	return spans
}

// overlap is which of the next run's panels lie on panel i: by more than what
// is not spoken of, so that cuts rounded apart by a nanometre do not count.
func overlap(this mask.Run, i int, next mask.Run) span {
	low, high := this.Starts[i]+mask.Noticeable, this.Starts[i]+this.Sizes[i]-mask.Noticeable
	return span{endingAfter(next, low), startingFrom(next, high)}
}

// beside is the panel of the next run that ends where panel i begins, and the
// one that begins where it ends, each at most a seam away. The spans are empty
// where there is none.
func beside(this mask.Run, i int, next mask.Run) (before, after span) {
	low, high := this.Starts[i], this.Starts[i]+this.Sizes[i]
	if b := endingAfter(next, low+mask.Noticeable) - 1; b >= 0 {
		if low-next.Starts[b]-next.Sizes[b] <= seam(this, i-1, next, b) {
			before = span{b, b + 1}
		}
	}
	if a := startingFrom(next, high-mask.Noticeable); a < len(next.Starts) {
		if next.Starts[a]-high <= seam(this, i, next, a-1) {
			after = span{a, a + 1}
		}
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
