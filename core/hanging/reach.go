package hanging

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// reach is from which stations each block is hung.
type reach struct {
	starts   []int32 // where the stations of each block begin in list
	list     []int32
	panels   []int32 // how many blocks are hung from each station
	isWhole  []bool  // whether the stations of a block reach all of it
	stations int
}

// from are the stations a block is hung from, at least one.
func (r *reach) from(b int32) []int32 { return r.list[r.starts[b]:r.starts[b+1]] }

func (r *reach) reaches(station, b int32) bool { return slices.Contains(r.from(b), station) }

// reachOf works out from where each block is hung: from every station that
// reaches all of it; where none does, from those that reach its middle; where
// none does that either, from the one nearest to its middle. Without stations
// everything is hung from the same place.
func (g *ground) reachOf(stations []Station) reach {
	count := len(g.blocks)
	r := reach{starts: make([]int32, count+1), isWhole: make([]bool, count), stations: len(stations)}
	if len(stations) == 0 {
		r.list = make([]int32, count)
		for i := range r.starts {
			r.starts[i] = int32(i)
		}
		return r
	}
	pairs := g.whole(stations)
	for _, p := range pairs {
		r.isWhole[p.block] = true
	}
	pairs = g.middles(pairs, stations, r.isWhole)
	pairs = g.nearest(pairs, stations)
	slices.SortFunc(pairs, func(a, b reached) int {
		if a.block != b.block {
			return int(a.block) - int(b.block)
		}
		return int(a.station) - int(b.station)
	})
	r.list = make([]int32, len(pairs))
	for i, p := range pairs {
		r.list[i] = p.station
		r.starts[p.block+1] = int32(i + 1)
	}
	return r
}

// reached is one block that is hung from one station.
type reached struct{ block, station int32 }

// whole are the blocks that lie wholly in reach. Columns and rows in reach are
// found by halving, so that it takes no longer than there are answers.
func (g *ground) whole(stations []Station) []reached {
	var pairs []reached
	for k, s := range stations {
		fromColumn, toColumn := within(g.columns, s.Reach.X, s.Reach.Length)
		fromRow, toRow := within(g.rows, s.Reach.Y, s.Reach.Width)
		for row := fromRow; row < toRow; row++ {
			for column := fromColumn; column < toColumn; column++ {
				b := g.owner[g.cell(column+1, row+1)]
				block := g.blocks[b]
				if block.Panel() == (mask.Panel{Column: column + 1, Row: row + 1}) &&
					column+block.Columns <= toColumn && row+block.Rows <= toRow {
					pairs = append(pairs, reached{b, int32(k)})
				}
			}
		}
	}
	return pairs
}

// within are the panels of a run, from and up to, that lie on a stretch.
func within(run mask.Run, start, length measure.Length) (from, to int) {
	from, _ = slices.BinarySearch(run.Starts, start)
	for to = from; to < len(run.Starts) && run.Starts[to]+run.Sizes[to] <= start+length; {
		to++
	}
	return from, to
}

// middles adds the blocks no station reaches wholly, at those that reach their
// middle.
func (g *ground) middles(pairs []reached, stations []Station, isWhole []bool) []reached {
	columns, rows := middlesOf(g.columns), middlesOf(g.rows)
	for k, s := range stations {
		fromColumn, toColumn := between(columns, s.Reach.X, s.Reach.Length)
		fromRow, toRow := between(rows, s.Reach.Y, s.Reach.Width)
		for row := fromRow; row < toRow; row++ {
			for column := fromColumn; column < toColumn; column++ {
				b := g.owner[g.cell(column+1, row+1)]
				if !isWhole[b] && g.blocks[b].IsPanel() {
					pairs = append(pairs, reached{b, int32(k)})
				}
			}
		}
	}
	for i, b := range g.blocks {
		if b.IsPanel() || isWhole[i] {
			continue
		}
		x, y := g.rect(b).twiceMiddle()
		for k, s := range stations {
			if holds(s.Reach.X, s.Reach.Length, x) && holds(s.Reach.Y, s.Reach.Width, y) {
				pairs = append(pairs, reached{int32(i), int32(k)})
			}
		}
	}
	return pairs
}

// middlesOf is the middle of each panel of a run, doubled.
func middlesOf(run mask.Run) []measure.Length {
	list := make([]measure.Length, len(run.Starts))
	for i, start := range run.Starts {
		list[i] = 2*start + run.Sizes[i]
	}
	return list
}

func between(middles []measure.Length, start, length measure.Length) (from, to int) {
	from, _ = slices.BinarySearch(middles, 2*start)
	to, _ = slices.BinarySearch(middles, 2*(start+length)+1)
	return from, max(from, to)
}

func holds(start, length, twice measure.Length) bool {
	return 2*start <= twice && twice <= 2*(start+length)
}

// nearest adds the blocks that no station reaches at all.
func (g *ground) nearest(pairs []reached, stations []Station) []reached {
	has := make([]bool, len(g.blocks))
	for _, p := range pairs {
		has[p.block] = true
	}
	for i, b := range g.blocks {
		if has[i] {
			continue
		}
		best, bestWay := int32(0), measure.Length(-1)
		x, y := g.rect(b).twiceMiddle()
		for k, s := range stations {
			sx, sy := s.Reach.twiceMiddle()
			if way := (sx - x).Abs() + (sy - y).Abs(); bestWay < 0 || way < bestWay {
				best, bestWay = int32(k), way
			}
		}
		pairs = append(pairs, reached{int32(i), best})
	}
	return pairs
}

// twiceMiddle is the middle of a rectangle, doubled.
func (r Rect) twiceMiddle() (x, y measure.Length) { return 2*r.X + r.Length, 2*r.Y + r.Width }

// wayTo is how far the platform moves from one station to another, along and
// then across, to the nanometre below.
func (s Station) wayTo(t Station) measure.Length {
	sx, sy := s.Deck.twiceMiddle()
	tx, ty := t.Deck.twiceMiddle()
	return ((sx - tx).Abs() + (sy - ty).Abs()).Half()
}
