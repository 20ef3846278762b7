package hanging

import (
	"math/bits"
	"slices"

	"ceilingwright/core/measure"
)

// The complete search: every sequence of stations, what is up being a set of at
// most 64 blocks. Two ways to the same set and station count as one.
const (
	fewStations = 6
	fewBlocks   = 64
	mostStates  = 4096
)

// state is what is up and where the platform stands, a station of few.
type state struct {
	up uint64
	at int8
}

// cost is moves first, then way. Below zero is not possible.
type cost struct {
	moves int
	way   measure.Length
}

func (c cost) less(d cost) bool { return c.moves < d.moves || c.moves == d.moves && c.way < d.way }

// few is a search under way.
type few struct {
	w        *work
	stations []int32
	reach    []uint64 // what of the goal each station reaches
	near     []uint64 // the neighbours of each block
	goal     uint64
	known    map[state]cost
	gaveUp   bool
}

// exact is the best sequence of stations: fewest moves, then the shortest way,
// then at each move the one whose panels in turn come before the other's. False
// where there are too many stations or blocks.
func (w *work) exact(goal []int32) ([]int32, bool) {
	if len(w.blocks) > fewBlocks {
		return nil, false
	}
	f := few{w: w, known: map[state]cost{}}
	for _, b := range goal {
		f.goal |= 1 << b
		for _, k := range w.reach.from(b) {
			if !slices.Contains(f.stations, k) {
				f.stations = append(f.stations, k)
			}
		}
	}
	if len(f.stations) > fewStations {
		return nil, false
	}
	slices.Sort(f.stations)
	f.prepare(goal)
	visits := f.best()
	return visits, !f.gaveUp && len(visits) > 0
}

func (f *few) prepare(goal []int32) {
	f.reach, f.near = make([]uint64, len(f.stations)), make([]uint64, len(f.w.blocks))
	for _, b := range goal {
		for _, k := range f.w.reach.from(b) {
			at, _ := slices.BinarySearch(f.stations, k)
			f.reach[at] |= 1 << b
		}
	}
	for b := range f.w.blocks {
		f.w.near = f.w.neighbours(f.w.near, int32(b))
		for _, n := range f.w.near {
			f.near[b] |= 1 << n.block
		}
	}
}

// best walks from the start along what costs least.
func (f *few) best() []int32 {
	var up uint64
	for b, isUp := range f.w.up {
		if isUp {
			up |= 1 << b
		}
	}
	at := int8(-1)
	var visits []int32
	for up&f.goal != f.goal && !f.gaveUp {
		next, list := f.next(up, at)
		if next < 0 {
			break
		}
		visits = append(visits, f.stations[next])
		for _, o := range list {
			up |= 1 << o.block
		}
		at = next
	}
	return visits
}

// next is the station to go to and what is hung from it.
func (f *few) next(up uint64, at int8) (int8, []offer) {
	best, bestCost, bestList := int8(-1), cost{}, []offer(nil)
	for to := range int8(len(f.stations)) {
		after := f.after(up, to)
		if after == up {
			continue
		}
		c := f.from(state{after, to})
		c.moves++
		c.way += f.wayFrom(at, to)
		if best >= 0 && bestCost.less(c) {
			continue
		}
		list := f.list(up, to)
		if best < 0 || c.less(bestCost) || slices.CompareFunc(list, bestList, compare) < 0 {
			best, bestCost, bestList = to, c, list
		}
	}
	return best, bestList
}

func compare(a, b offer) int {
	switch {
	case a.before(b):
		return -1
	case b.before(a):
		return 1
	}
	return 0
}

// wayFrom is the way to a station of few; from the one where the platform
// stands before the first.
func (f *few) wayFrom(at, to int8) measure.Length {
	if at < 0 {
		return f.w.way(f.w.place, f.stations[to])
	}
	return f.w.way(f.stations[at], f.stations[to])
}

// from is what it costs to hang the rest of the goal.
func (f *few) from(s state) cost {
	if s.up&f.goal == f.goal {
		return cost{}
	}
	if c, ok := f.known[s]; ok || f.gaveUp {
		return c
	}
	best := cost{moves: -1}
	for to := range int8(len(f.stations)) {
		after := f.after(s.up, to)
		if after == s.up {
			continue
		}
		c := f.from(state{after, to})
		c.moves++
		c.way += f.wayFrom(s.at, to)
		if best.moves < 0 || c.less(best) {
			best = c
		}
	}
	if len(f.known) == mostStates {
		f.gaveUp = true
	}
	f.known[s] = best
	return best
}

// after is what is up once all has been hung from a station.
func (f *few) after(up uint64, to int8) uint64 {
	for fresh := f.open(up, up) & f.reach[to]; fresh != 0; {
		up |= fresh
		fresh = f.open(fresh, up) & f.reach[to]
	}
	return up
}

// open is what touches some blocks and is not up; the first, where nothing is.
func (f *few) open(blocks, up uint64) uint64 {
	if up == 0 {
		return 1 << f.w.first
	}
	var touched uint64
	for ; blocks != 0; blocks &= blocks - 1 {
		touched |= f.near[bits.TrailingZeros64(blocks)]
	}
	return touched &^ up
}

// list is what is hung from a station, in order.
func (f *few) list(up uint64, to int8) []offer {
	var list []offer
	for {
		open := f.open(up, up) & f.reach[to]
		if open == 0 {
			return list
		}
		best := offer{block: noBlock}
		for ; open != 0; open &= open - 1 {
			b := bits.TrailingZeros64(open)
			o := offer{f.w.distance[b], int32(bits.OnesCount64(f.near[b] & up)), int32(b)}
			if best.block == noBlock || o.before(best) {
				best = o
			}
		}
		up |= 1 << best.block
		list = append(list, best)
	}
}
