package hanging

import (
	"slices"

	"ceilingwright/core/measure"
)

// mostSwaps bounds how long a tour is looked at for something shorter, in
// exchanges tried.
const mostSwaps = 2_000_000

// tour is a short way through stations that together reach the whole goal, the
// first being where the hanging begins: with the fewest stations, then the
// shortest. It is not proven the shortest.
func (w *work) tour(goal []int32) []int32 {
	if len(w.hangs) > 0 {
		return w.tourFrom(w.place, w.needed(goal, noBlock))
	}
	var best []int32
	var bestWay measure.Length
	for _, k := range w.reach.from(w.first)[:min(len(w.reach.from(w.first)), mostTogether)] {
		tour := w.tourFrom(k, w.needed(goal, k))
		way := w.length(tour)
		if best == nil || len(tour) < len(best) || len(tour) == len(best) && way < bestWay {
			best, bestWay = tour, way
		}
	}
	return best
}

// needed are stations that together reach the whole goal, none of which can be
// left out; the first is always among them.
func (w *work) needed(goal []int32, first int32) []int32 {
	reached := make([][]int32, len(w.queues))
	for _, b := range goal {
		for _, k := range w.reach.from(b) {
			reached[k] = append(reached[k], b)
		}
	}
	left := make([]int32, len(w.blocks)) // how many stations reach each
	list := make([]int32, 0, len(w.queues))
	for k := range reached {
		if len(reached[k]) > 0 {
			list = append(list, int32(k))
		}
		for _, b := range reached[k] {
			left[b]++
		}
	}
	slices.SortStableFunc(list, func(a, b int32) int { return len(reached[a]) - len(reached[b]) })
	kept := list[:0]
	for _, k := range list {
		if k != first && !slices.ContainsFunc(reached[k], func(b int32) bool { return left[b] == 1 }) {
			for _, b := range reached[k] {
				left[b]--
			}
			continue
		}
		kept = append(kept, k)
	}
	return kept
}

// tourFrom begins at a station, which need not be one of those to visit, and
// goes on to the nearest each time; then stretches are turned round and single
// stations moved for as long as that makes it shorter.
func (w *work) tourFrom(start int32, stations []int32) []int32 {
	tour := make([]int32, 1, len(stations)+1)
	tour[0] = start
	rest := slices.DeleteFunc(stations, func(k int32) bool { return k == start })
	slices.Sort(rest)
	for at := start; len(rest) > 0; {
		best := 0
		for i, k := range rest {
			if w.way(at, k) < w.way(at, rest[best]) {
				best = i
			}
		}
		at = rest[best]
		tour = append(tour, at)
		rest = slices.Delete(rest, best, best+1)
	}
	for tries, shorter := 0, true; shorter && tries < mostSwaps; tries += len(tour) * len(tour) {
		shorter = w.turnStretches(tour)
		shorter = w.moveSingles(tour) || shorter
	}
	return tour
}

func (w *work) length(tour []int32) (way measure.Length) {
	for i := 1; i < len(tour); i++ {
		way += w.way(tour[i-1], tour[i])
	}
	return way
}

// turnStretches turns every stretch round that is shorter that way (2-opt).
func (w *work) turnStretches(tour []int32) (shorter bool) {
	for i := 1; i < len(tour); i++ {
		for j := i + 1; j < len(tour); j++ {
			before, after := w.way(tour[i-1], tour[i]), w.way(tour[i-1], tour[j])
			if j+1 < len(tour) {
				before += w.way(tour[j], tour[j+1])
				after += w.way(tour[i], tour[j+1])
			}
			if after < before {
				slices.Reverse(tour[i : j+1])
				shorter = true
			}
		}
	}
	return shorter
}

// moveSingles moves every station to where it lengthens the way least.
func (w *work) moveSingles(tour []int32) (shorter bool) {
	for i := 1; i < len(tour); i++ {
		k := tour[i]
		gain := w.way(tour[i-1], k)
		if i+1 < len(tour) {
			gain += w.way(k, tour[i+1]) - w.way(tour[i-1], tour[i+1])
		}
		best, bestCost := -1, gain
		for j := 1; j <= len(tour); j++ { // before tour[j], or at the end
			if j == i || j == i+1 {
				continue
			}
			cost := w.way(tour[j-1], k)
			if j < len(tour) {
				cost += w.way(k, tour[j]) - w.way(tour[j-1], tour[j])
			}
			if cost < bestCost {
				best, bestCost = j, cost
			}
		}
		if best < 0 {
			continue
		}
		if best > i {
			copy(tour[i:best-1], tour[i+1:best])
			tour[best-1] = k
		} else {
			copy(tour[best+1:i+1], tour[best:i])
			tour[best] = k
		}
		shorter = true
	}
	return shorter
}
