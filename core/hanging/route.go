package hanging

import (
	"ceilingwright/core/measure"
)

// How the platform goes from station to station.
//
// Hanging all that can be hung before moving never costs a move: whatever can
// be hung with less up can be hung with more up. So an order is settled by the
// stations in turn, and the search is over those alone. For a few stations it
// is complete (exact.go). For more, stations that others make unnecessary are
// left out one after the other, those with the fewest panels first, and the
// rest are visited on a short tour (tour.go). That the moves are the fewest is
// then proven where so many panels can be found of which no station reaches two;
// that the way is the shortest, where no other stations would do either.

// proof is what is known about an order.
type proof struct{ fewest, shortest bool }

// route hangs all that can be hung in this turn.
func (w *work) route() {
	if len(w.stations) == 0 {
		w.begin(anywhere)
		w.hangFrom(anywhere)
		return
	}
	if len(w.hangs) > 0 {
		w.hangFrom(w.place)
	}
	goal := w.goal()
	if len(goal) == 0 {
		return
	}
	if w.settle(goal) {
		return
	}
	tour := w.tour(goal)
	isShortest := w.isShortest(goal, tour)
	visits, asItIs := w.follow(tour)
	w.proven.fewest = w.proven.fewest && visits <= w.apart(goal)
	w.proven.shortest = w.proven.shortest && isShortest && asItIs
}

// goal is what can be hung in this turn: what is connected to what is up, or to
// the first.
func (w *work) goal() []int32 {
	seen := make([]bool, len(w.blocks))
	var found []int32
	if len(w.hangs) == 0 {
		seen[w.first] = true
		found = append(found, w.first)
	} else {
		for k := range w.queues {
			for _, o := range w.queues[k] {
				if !w.up[o.block] && !seen[o.block] {
					seen[o.block] = true
					found = append(found, o.block)
				}
			}
		}
	}
	for i := 0; i < len(found); i++ {
		w.near = w.neighbours(w.near, found[i])
		for _, n := range w.near {
			if !seen[n.block] && w.mayHang(n.block) {
				seen[n.block] = true
				found = append(found, n.block)
			}
		}
	}
	return found
}

// settle takes the cases in which there is nothing to choose, and the small
// ones. False where it is neither.
func (w *work) settle(goal []int32) bool {
	if only, ok := w.only(goal); ok {
		w.begin(only)
		w.hangFrom(only)
		return true
	}
	visits, ok := w.exact(goal)
	if !ok {
		return false
	}
	w.follow(visits)
	return true
}

// only is a station that reaches the whole goal: where nothing is up yet the
// lowest of them, else the one with the shortest way.
func (w *work) only(goal []int32) (int32, bool) {
	best, bestWay := noBlock, measure.Length(0)
	for _, k := range w.reach.from(goal[0]) {
		all := true
		for _, b := range goal {
			if all = w.reach.reaches(k, b); !all {
				break
			}
		}
		if all && (best == noBlock || w.way(w.place, k) < bestWay) {
			best, bestWay = k, w.way(w.place, k)
		}
	}
	return best, best != noBlock
}

// way is how far it is from one station to another, nothing from nowhere.
func (w *work) way(from, to int32) measure.Length {
	if from == noBlock || from == to {
		return 0
	}
	return w.stations[from].wayTo(w.stations[to])
}

// begin offers the first block to the station it is hung from, where nothing is
// up yet.
func (w *work) begin(k int32) {
	if len(w.hangs) == 0 {
		w.queues[k].push(offer{w.distance[w.first], 0, w.first})
	}
}

// follow visits stations in the order given, passing over those that have
// nothing to hang yet until they have, and returns how many it stopped at and
// whether it could follow the order as it is, the place where the platform
// stands left out. What is left after the last is hung from whichever station
// is nearest.
func (w *work) follow(tour []int32) (visits int, asItIs bool) {
	w.begin(tour[0])
	asItIs = true
	if tour[0] == w.place {
		tour = tour[1:]
	}
	for {
		next := noBlock
		for i, k := range tour {
			if w.isLive(k) {
				next, asItIs = k, asItIs && i == 0
				copy(tour[1:i+1], tour[:i]) // those passed over stay in front
				tour = tour[1:]
				break
			}
		}
		if next == noBlock {
			if next = w.nearestLive(); next == noBlock {
				return visits, asItIs && len(tour) == 0
			}
			asItIs = false
		}
		w.hangFrom(next)
		visits++
	}
}

func (w *work) nearestLive() int32 {
	best, bestWay := noBlock, measure.Length(0)
	for k := range int32(len(w.queues)) {
		if w.isLive(k) && (best == noBlock || w.way(w.place, k) < bestWay) {
			best, bestWay = k, w.way(w.place, k)
		}
	}
	return best
}

// apart is how many blocks of the goal there are of which no station reaches
// two, counted greedily: so many stations are needed at least.
func (w *work) apart(goal []int32) int {
	used := make([]bool, len(w.queues))
	count := 0
	for wanted := 1; wanted <= mostTogether; wanted++ {
		for _, b := range goal {
			from := w.reach.from(b)
			if len(from) == wanted && !anyOf(used, from) {
				count++
				for _, k := range from {
					used[k] = true
				}
			}
		}
	}
	return count
}

// mostTogether is the most stations that reach one block for it to count in
// apart: more only make the count worse.
const mostTogether = 4

func anyOf(used []bool, list []int32) bool {
	for _, k := range list {
		if used[k] {
			return true
		}
	}
	return false
}
