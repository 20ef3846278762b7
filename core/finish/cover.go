package finish

// The cheapest cover: whole containers that together hold a need. Everything
// here is in whole numbers. Volumes are counted in the measure common to all
// sizes, so one search serves quarts and litres alike.
//
// Choices are compared by price, then by what is bought, then by the number of
// containers. All three add up container by container, so the best of a part
// belongs to the best of the whole and a table of needs, each solved from the
// smaller ones, is exact.
//
// The common measure of US and metric sizes is 8 nL, too fine for a table. But
// US sizes are whole pints and metric sizes whole quarter litres: each family
// gets a table of its own, and every total of the one is joined to the cover of
// what remains by the other. Only sizes of three families or more, which need
// labels such as 0.946 353 L, fall to branch and bound, and only there can the
// search be cut short.

import (
	"cmp"
	"math"
	"math/big"
	"math/bits"
	"slices"
)

// container is one size: its volume in common units, at least 1, and its price
// in whole thousandths, at least 0.
type container struct{ volume, price int64 }

// longestTable is the greatest number of entries in a table, and mostBranches
// the greatest number of branches looked at: both bound the time and memory of
// a search.
const (
	longestTable = 1 << 19
	mostBranches = 200_000
)

// score is how good a choice is; less is better, the first that differs.
type score struct{ price, volume, count int64 }

var worst = score{math.MaxInt64, math.MaxInt64, math.MaxInt64}

func (s score) isBetterThan(t score) bool {
	if s.price != t.price {
		return s.price < t.price
	}
	if s.volume != t.volume {
		return s.volume < t.volume
	}
	return s.count < t.count
}

func (s score) with(c container, n int64) score {
	return score{s.price + n*c.price, s.volume + n*c.volume, s.count + n}
}

func (s score) plus(t score) score {
	return score{s.price + t.price, s.volume + t.volume, s.count + t.count}
}

// cheapestCover answers how many of each container to take. proved is false
// where the search was cut short. sizes must not be empty.
func cheapestCover(need int64, sizes []container) (counts []int64, proved bool) {
	if need <= 0 {
		return make([]int64, len(sizes)), true
	}
	order := byWorth(sizes)
	ranked := make([]container, len(order))
	for i, at := range order {
		ranked[i] = sizes[at]
	}
	inOrder, proved := coverRanked(need, ranked)
	counts = make([]int64, len(sizes))
	for i, n := range inOrder {
		counts[order[i]] = n
	}
	return counts, proved
}

// coverRanked first tries the ring of remainders, which is short for sizes in one
// system of units. Where it does not serve it looks no further than two of the
// largest container beside the one of best worth. What that finds may show that
// nothing further off is better; if not, it looks as far as a best choice can be.
func coverRanked(need int64, ranked []container) (counts []int64, proved bool) {
	if counts, ok := coverByRemainder(need, ranked); ok {
		return counts, true
	}
	near, far := 2*largestOf(ranked), mostBesides(need, ranked)
	counts, proved = coverBeside(min(near, far), need, ranked)
	if !proved || far <= near || len(ranked) == 1 {
		return counts, proved
	}
	found := score{}
	for i, n := range counts {
		found = found.with(ranked[i], n)
	}
	far = min(far, mostAtPrice(need, found.price, ranked[0], ranked[1]), mostAtCount(need, found, ranked[0], ranked[1]))
	if far <= near {
		return counts, true
	}
	return coverBeside(far, need, ranked)
}

// coverBeside finds the best of the choices that hold at most the volume
// besides in containers other than the first: what is needed above it is
// bought in the first straight away, so the tables are short whatever the need.
func coverBeside(besides, need int64, ranked []container) (counts []int64, proved bool) {
	ahead := max(0, (need-besides)/ranked[0].volume)
	counts, proved = search(need-ahead*ranked[0].volume, ranked)
	counts[0] += ahead
	return counts, proved
}

func search(need int64, ranked []container) (counts []int64, proved bool) {
	families := familiesOf(need, ranked)
	if len(families) > 2 || slices.ContainsFunc(families, func(f family) bool { return f.rounds(need) > longestTable }) {
		return branchAndBound(need, ranked)
	}
	if len(families) == 2 {
		return joinTables(need, ranked, families[0], families[1]), true
	}
	counts = make([]int64, len(ranked))
	families[0].coverTable(need, ranked).take(families[0].rounds(need), ranked, counts)
	return counts, true
}

// byWorth is the order of sizes by price for the volume, the cheapest first,
// and the larger first among equals. There are a few dozen sizes at most, so
// each is put in its place by hand.
func byWorth(sizes []container) []int {
	order := make([]int, 0, len(sizes))
	for i := range sizes {
		at := len(order)
		for at > 0 && isWorthMore(sizes[i], sizes[order[at-1]]) {
			at--
		}
		order = slices.Insert(order, at, i)
	}
	return order
}

func isWorthMore(a, b container) bool {
	worth := compareWorth(a, b)
	return worth < 0 || worth == 0 && a.volume > b.volume
}

// compareWorth compares a.price/a.volume to b.price/b.volume.
func compareWorth(a, b container) int {
	ahi, alo := bits.Mul64(uint64(a.price), uint64(b.volume))
	bhi, blo := bits.Mul64(uint64(b.price), uint64(a.volume))
	return cmp.Or(cmp.Compare(ahi, bhi), cmp.Compare(alo, blo))
}

// mostBesides is a volume that some best choice does not exceed in containers
// other than the first, the one of best worth. Two bounds, the lower counts.
//
// Among any v containers, where v is the first's volume, some have volumes that
// add up to a multiple of v (two of the v+1 running sums agree modulo v); first
// containers in their place hold as much, cost no more and are no more in
// number. So fewer than v others are needed. And the first container alone
// covers the need at a known price.
func mostBesides(need int64, ranked []container) int64 {
	if len(ranked) == 1 {
		return 0
	}
	first, common := ranked[0], int64(0)
	for _, c := range ranked {
		common = divisor(common, c.volume)
	}
	most := int64(math.MaxInt64)
	if others := product(first.volume/common-1, largestOf(ranked)); others.IsInt64() {
		most = others.Int64()
	}
	alone := (need + first.volume - 1) / first.volume * first.price
	return min(most, mostAtPrice(need, alone, first, ranked[1]))
}

// mostAtPrice is the volume besides the first container that no choice at the
// price or below exceeds: each unit of the others costs at least what it costs
// in the second.
func mostAtPrice(need, price int64, first, second container) int64 {
	dear := product(second.price, first.volume)
	dear.Sub(dear, product(first.price, second.volume))
	spare := product(price, first.volume)
	spare.Sub(spare, product(first.price, need))
	return quotient(spare.Mul(spare, big.NewInt(second.volume)), dear)
}

// mostAtCount is the volume besides the first container that no choice of as
// few containers as found exceeds, where found holds the need exactly and all
// of it at the first's worth: a better choice then does so too, and is only
// made of containers of that worth, the second being the largest after the
// first.
func mostAtCount(need int64, found score, first, second container) int64 {
	atWorth := product(found.price, first.volume).Cmp(product(first.price, need)) == 0
	if !atWorth || found.volume != need {
		return math.MaxInt64
	}
	spare := product(found.count, first.volume)
	spare.Sub(spare, big.NewInt(need))
	return quotient(spare.Mul(spare, big.NewInt(second.volume)), big.NewInt(first.volume-second.volume))
}

// quotient is a/b rounded down, or the greatest int64 where it is more or b is
// not above 0.
func quotient(a, b *big.Int) int64 {
	if b.Sign() <= 0 {
		return math.MaxInt64
	}
	if a.Quo(a, b); a.IsInt64() {
		return a.Int64()
	}
	return math.MaxInt64
}

func largestOf(sizes []container) int64 {
	largest := int64(0)
	for _, c := range sizes {
		largest = max(largest, c.volume)
	}
	return largest
}

func product(a, b int64) *big.Int { return new(big.Int).Mul(big.NewInt(a), big.NewInt(b)) }

func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// family is a group of sizes whose common measure is coarse enough for a
// table; members are places in the ranked list.
type family struct {
	unit    int64
	members []int
}

// rounds is the need in the family's unit, rounded up: its containers hold no
// part of a unit.
func (f family) rounds(need int64) int64 { return (need + f.unit - 1) / f.unit }

// familiesOf sorts the sizes into as few families as it finds, each joining the
// first whose table stays short with it.
func familiesOf(need int64, ranked []container) []family {
	families := []family{}
	for i, c := range ranked {
		joined := false
		for at := range families {
			unit := divisor(families[at].unit, c.volume)
			if need/unit < longestTable {
				families[at] = family{unit, append(families[at].members, i)}
				joined = true
				break
			}
		}
		if !joined {
			families = append(families, family{c.volume, []int{i}})
		}
	}
	return families
}

// table holds for every need, in a family's unit, the best score and the
// container taken last. Entry 0 takes none. steps are the members' volumes in
// the unit.
type table struct {
	family family
	steps  []int64
	best   []score
	last   []int8
}

func (f family) newTable(entries int64, ranked []container) table {
	t := table{f, make([]int64, len(f.members)), make([]score, entries), make([]int8, entries)}
	for i, at := range f.members {
		t.steps[i] = ranked[at].volume / f.unit
	}
	return t
}

// coverTable solves every need up to the given one: entry n is the best choice
// that holds n units or more.
func (f family) coverTable(need int64, ranked []container) table {
	t := f.newTable(f.rounds(need)+1, ranked)
	for n := int64(1); n < int64(len(t.best)); n++ {
		t.best[n] = worst
		for i, at := range f.members {
			t.offer(n, at, t.best[max(0, n-t.steps[i])].with(ranked[at], 1))
		}
	}
	return t
}

// exactTable solves every total up to the given need: entry n is the best
// choice that holds n units exactly, or worst.
func (f family) exactTable(need int64, ranked []container) table {
	t := f.newTable(need/f.unit+1, ranked)
	for n := int64(1); n < int64(len(t.best)); n++ {
		t.best[n] = worst
		for i, at := range f.members {
			if before := n - t.steps[i]; before >= 0 && t.best[before] != worst {
				t.offer(n, at, t.best[before].with(ranked[at], 1))
			}
		}
	}
	return t
}

func (t table) offer(n int64, at int, s score) {
	if s.isBetterThan(t.best[n]) {
		t.best[n], t.last[n] = s, int8(at)
	}
}

// take adds the containers of entry n to counts.
func (t table) take(n int64, ranked []container, counts []int64) {
	for n > 0 {
		at := int(t.last[n])
		counts[at]++
		n = max(0, n-ranked[at].volume/t.family.unit)
	}
}

// joinTables tries every exact total of the one family, up to the need, with
// the best cover of the rest by the other, and then the one family alone: where
// it holds more than the need nothing of the other is taken.
func joinTables(need int64, ranked []container, one, other family) []int64 {
	totals, covers := one.exactTable(need, ranked), other.coverTable(need, ranked)
	best, total, rest := worst, int64(0), int64(0)
	for n, s := range totals.best {
		if s == worst {
			continue
		}
		lacking := other.rounds(need - int64(n)*one.unit)
		if joined := s.plus(covers.best[lacking]); joined.isBetterThan(best) {
			best, total, rest = joined, int64(n), lacking
		}
	}
	counts := make([]int64, len(ranked))
	if alone := one.coverTable(need, ranked); alone.best[one.rounds(need)].isBetterThan(best) {
		alone.take(one.rounds(need), ranked, counts)
		return counts
	}
	totals.take(total, ranked, counts)
	covers.take(rest, ranked, counts)
	return counts
}

// branch is the state of branch and bound: containers are tried in the order
// of worth, the greatest number of each first, and a branch is left when even
// the worth of the container next in turn could not make it better.
type branch struct {
	ranked []container
	need   int64
	counts []int64
	best   score
	found  []int64
	looks  int
}

func branchAndBound(need int64, ranked []container) (counts []int64, proved bool) {
	b := &branch{ranked: ranked, need: need, counts: make([]int64, len(ranked)),
		best: worst, found: make([]int64, len(ranked))}
	b.try(0, need, score{})
	return b.found, !b.isSpent()
}

// isSpent tells whether the search has to stop. The first descent always ends
// with a choice, as it takes enough of the first container.
func (b *branch) isSpent() bool { return b.looks > mostBranches && b.best != worst }

func (b *branch) try(at int, rest int64, so score) {
	if rest <= 0 {
		b.keep(so)
		return
	}
	c, lastOne := b.ranked[at], at == len(b.ranked)-1
	enough := (rest + c.volume - 1) / c.volume
	for n := enough; n >= 0 && !b.isSpent(); n-- {
		b.looks++
		after, lacking := so.with(c, n), rest-n*c.volume
		if lacking > 0 && lastOne {
			break
		}
		least := b.least(at+1, lacking, after)
		if lacking > 0 && least.price > b.best.price {
			break // fewer of c leaves more to the dearer containers
		}
		if least.isBetterThan(b.best) {
			b.counts[at] = n
			b.try(at+1, lacking, after)
		}
	}
	b.counts[at] = 0
}

func (b *branch) keep(so score) {
	if so.isBetterThan(b.best) {
		b.best = so
		copy(b.found, b.counts)
	}
}

// least is a score that no choice from here on can better.
func (b *branch) least(at int, rest int64, so score) score {
	if rest <= 0 {
		return so
	}
	c := b.ranked[at]
	more := product(rest, c.price)
	more.Add(more, big.NewInt(c.volume-1)).Quo(more, big.NewInt(c.volume))
	return score{so.price + more.Int64(), so.volume + rest, so.count + 1}
}
