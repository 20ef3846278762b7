package finish

import "slices"

// A large need is mostly bought in the size of best worth, the first. What the
// other sizes hold together matters only by its remainder over the first's
// volume: with the remainder the first's number is settled, and so are what is
// bought and what it costs. So it is enough to know, for each remainder, the
// cheapest others that leave it. That is a shortest way round a ring of as many
// places as the first has units, found by going round it once for each size
// (Böcker and Lipták, A Fast and Simple Algorithm for the Money Changing
// Problem, 2007, from memory), whatever the need.

// longestRing is the greatest number of places in a ring.
const longestRing = 1 << 16

// ring holds for each remainder what the cheapest others cost above the first
// containers they stand in for, how many more they are, and the one taken last.
type ring struct {
	price, count []int64
	last         []int8
}

// coverByRemainder is the best cover, or ok false where the ring would be too
// long or its answer takes more of the others than the need holds.
func coverByRemainder(need int64, ranked []container) (counts []int64, ok bool) {
	first := ranked[0]
	if first.volume > longestRing || need < first.volume {
		return nil, false
	}
	r := newRing(ranked)
	best, at := worst, int64(0)
	for remainder := range first.volume {
		if r.last[remainder] == unreached {
			continue
		}
		firsts := (need - remainder + first.volume - 1) / first.volume
		s := score{r.price[remainder] + firsts*first.price, remainder + firsts*first.volume, r.count[remainder] + firsts}
		if s.isBetterThan(best) {
			best, at = s, remainder
		}
	}
	return r.take(at, best.volume, ranked)
}

// Marks in last: a remainder no others leave, and that of none.
const (
	unreached int8 = -2
	noOthers  int8 = -1
)

func newRing(ranked []container) ring {
	places := ranked[0].volume
	r := ring{make([]int64, places), make([]int64, places), slices.Repeat([]int8{unreached}, int(places))}
	r.last[0] = noOthers
	for i, c := range ranked[1:] {
		if c.volume%places != 0 {
			r.goRound(int8(i+1), c, ranked[0])
		}
	}
	return r
}

// goRound offers one more of a size at every place, ring by ring: a size meets
// every so-manieth place only. A second time round is needed as far as the
// first changed where it had begun.
func (r *ring) goRound(size int8, c, first container) {
	places, on, times := first.volume, c.volume%first.volume, c.volume/first.volume
	price, count := c.price-times*first.price, 1-times
	for start := range divisor(c.volume, places) {
		from := start
		for step := int64(0); step < 2*places; step++ {
			to, dearer, more := from+on, price, count
			if to >= places {
				to, dearer, more = to-places, price-first.price, count-1
			}
			changed := r.last[from] != unreached && r.offer(to, size, r.price[from]+dearer, r.count[from]+more)
			if from = to; step >= places && !changed {
				break
			}
		}
	}
}

// offer keeps a way to a place where it is cheaper, or as cheap and of fewer
// containers.
func (r *ring) offer(to int64, size int8, price, count int64) bool {
	if r.last[to] != unreached && (price > r.price[to] || price == r.price[to] && count >= r.count[to]) {
		return false
	}
	r.price[to], r.count[to], r.last[to] = price, count, size
	return true
}

// take is the choice that leaves a remainder and holds so much in all. ok is
// false where the others alone hold more.
func (r *ring) take(at, volume int64, ranked []container) (counts []int64, ok bool) {
	counts, places := make([]int64, len(ranked)), ranked[0].volume
	for r.last[at] != noOthers {
		size := r.last[at]
		counts[size]++
		volume -= ranked[size].volume
		if volume < 0 {
			return nil, false
		}
		at = ((at-ranked[size].volume)%places + places) % places
	}
	counts[0] = volume / places
	return counts, true
}
