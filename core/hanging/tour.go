package hanging

import (
	"slices"

	"ceilingwright/core/measure"
)

// A tour goes through stations that together reach the whole goal. Up to
// mostTour of them it is the shortest way through those, found by looking at
// every set visited and where it ended (Bellman 1962; Held and Karp 1962, from
// memory); for more it begins with the nearest each time, and then stretches are
// turned round (2-opt) and moved (Or-opt) for as long as that makes it shorter.
const (
	mostTour = 10
	// mostLooks bounds how long a tour is looked at for something shorter.
	mostLooks = 2_000_000
)

// tour is a way through stations that together reach the whole goal, the first
// being where the hanging begins: with the fewest stations, then the shortest.
func (w *work) tour(goal []int32) []int32 {
	if len(w.hangs) > 0 {
		return w.tourFrom(w.place, w.needed(goal, noBlock))
	}
	var best []int32
	var bestWay measure.Length
	from := w.reach.from(w.first)
	for _, k := range from[:min(len(from), mostTogether)] {
		tour := w.tourFrom(k, w.needed(goal, k))
		way := w.length(tour)
		if best == nil || len(tour) < len(best) || len(tour) == len(best) && way < bestWay {
			best, bestWay = tour, way
		}
	}
	return best
}

// isShortest tells whether a tour that could be followed as it is has the
// shortest way of all with as few moves: it is the shortest through its
// stations, and none of those could be any other, since each reaches something
// that no other does.
func (w *work) isShortest(goal, tour []int32) bool {
	alone := make([]bool, len(w.queues))
	count := 0
	for _, b := range goal {
		if from := w.reach.from(b); len(from) == 1 && !alone[from[0]] {
			alone[from[0]] = true
			count++
		}
	}
	if len(w.hangs) > 0 {
		return len(tour) <= mostTour+1 && count == len(tour)-1 && !alone[tour[0]]
	}
	return len(tour) <= mostTour+1 && count == len(tour) && len(w.reach.from(w.first)) <= mostTogether
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

// tourFrom begins at a station, which need not be one of those to visit.
func (w *work) tourFrom(start int32, stations []int32) []int32 {
	rest := slices.DeleteFunc(stations, func(k int32) bool { return k == start })
	slices.Sort(rest)
	if len(rest) <= mostTour {
		return w.shortestTour(start, rest)
	}
	tour := make([]int32, 1, len(rest)+1)
	tour[0] = start
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
	for looks, shorter := 0, true; shorter && looks < mostLooks; looks += 4 * len(tour) * len(tour) {
		shorter = w.turnStretches(tour)
		for long := 1; long <= 3; long++ {
			shorter = w.moveStretches(tour, long) || shorter
		}
	}
	return tour
}

// shortestTour is the shortest way from a station through all the others, the
// lower numbers first where ways are alike. least is, by the set still to visit
// and the station last visited, the way that is left.
func (w *work) shortestTour(start int32, rest []int32) []int32 {
	count := len(rest)
	if count == 0 {
		return []int32{start}
	}
	var ways [mostTour][mostTour]measure.Length
	for i, from := range rest {
		for j, to := range rest {
			ways[i][j] = w.way(from, to)
		}
	}
	least := make([]measure.Length, count<<count)
	step := func(left, at int) (int, measure.Length) {
		best, bestWay := -1, measure.Length(0)
		for to := range count {
			if left>>to&1 == 0 {
				continue
			}
			way := least[(left&^(1<<to))*count+to]
			if at < 0 {
				way += w.way(start, rest[to])
			} else {
				way += ways[at][to]
			}
			if best < 0 || way < bestWay {
				best, bestWay = to, way
			}
		}
		return best, bestWay
	}
	for left := 1; left < 1<<count; left++ {
		for at := range count {
			if left>>at&1 == 0 {
				_, least[left*count+at] = step(left, at)
			}
		}
	}
	tour := append(make([]int32, 0, count+1), start)
	for left, at := 1<<count-1, -1; left != 0; {
		at, _ = step(left, at)
		left &^= 1 << at
		tour = append(tour, rest[at])
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

// moveStretches moves every stretch of so many stations to where it lengthens
// the way least, turned round where that is better.
func (w *work) moveStretches(tour []int32, long int) (shorter bool) {
	for i := 1; i+long <= len(tour); i++ {
		first, last := tour[i], tour[i+long-1]
		gain := w.way(tour[i-1], first)
		if i+long < len(tour) {
			gain += w.way(last, tour[i+long]) - w.way(tour[i-1], tour[i+long])
		}
		best, bestCost, turned := -1, gain, false
		for j := 1; j <= len(tour); j++ { // before tour[j], or at the end
			if j >= i && j <= i+long {
				continue
			}
			straight, round := w.way(tour[j-1], first), w.way(tour[j-1], last)
			if j < len(tour) {
				through := w.way(tour[j-1], tour[j])
				straight += w.way(last, tour[j]) - through
				round += w.way(first, tour[j]) - through
			}
			if straight < bestCost {
				best, bestCost, turned = j, straight, false
			}
			if round < bestCost {
				best, bestCost, turned = j, round, true
			}
		}
		if best < 0 {
			continue
		}
		if turned {
			slices.Reverse(tour[i : i+long])
		}
		if best > i {
			rotate(tour[i:best], long)
		} else {
			rotate(tour[best:i+long], i-best)
		}
		shorter = true
	}
	return shorter
}

// rotate brings what is in front of a list to its end.
func rotate(list []int32, front int) {
	slices.Reverse(list[:front])
	slices.Reverse(list[front:])
	slices.Reverse(list)
}
