package mixing

import (
	"slices"

	"ceilingwright/core/measure"
)

// measureSet is the measures of one system, the largest first. Where each is a
// whole number of the next, filling the largest first comes as near as can be
// with the fewest fills. Else 2 × 30 mL and 5 mL too little may be worse than
// 1 × 30 mL and 5 × 7 mL, so every total is kept, in the measure common to all,
// with the fewest fills that make it and the measure filled last.
type measureSet struct {
	system  system
	kit     []Measure
	isChain bool
	unit    measure.Number
	steps   []int64
	fewest  []int32
	last    []int8
}

// longestTotals bounds the totals that are kept: 128 thousand are 16 L in
// eighths of a millilitre.
const longestTotals = 1 << 17

// noTotal marks a total that no fills make.
const noTotal = int32(-1)

func newMeasureSet(of system, kit []Measure) *measureSet {
	s := &measureSet{system: of, kit: slices.Clone(kit), isChain: true}
	slices.SortStableFunc(s.kit, func(a, b Measure) int { return b.step.Cmp(a.step) })
	for i := 1; i < len(s.kit); i++ {
		s.isChain = s.isChain && isWhole(s.kit[i-1].step.Quo(s.kit[i].step))
	}
	if !s.isChain {
		s.countInUnits()
	}
	return s
}

func isWhole(n measure.Number) bool {
	whole, ok := n.Floor()
	return ok && n.Cmp(measure.NumberFromInt(whole)) == 0
}

// countInUnits counts the steps in their common measure. None are left where that
// is too fine for a list of totals.
func (s *measureSet) countInUnits() {
	largest := s.kit[0].step
	finest := largest.Mul(measure.NumberFromFraction(2, longestTotals))
	s.unit = largest
	for _, m := range s.kit[1:] {
		common, ok := measure.Common(s.unit, m.step, finest)
		if s.unit = common; !ok {
			return
		}
	}
	for _, m := range s.kit {
		n, _ := m.step.Quo(s.unit).Floor()
		s.steps = append(s.steps, n)
	}
	s.fewest, s.last = []int32{0}, []int8{0}
}

// measure is an amount measured with the set.
func (s *measureSet) measure(amount measure.Number) (out Measured, ok bool) {
	counts, ok := s.fills(amount)
	if !ok {
		return out, false
	}
	return measuredAs(amount, counts, s.kit), true
}

// measureWith is an amount measured in whole fills of the measure at a place, and
// what remains with another set.
func (s *measureSet) measureWith(rest *measureSet, at int, amount measure.Number) (out Measured, ok bool) {
	n, fits := amount.Quo(s.kit[at].step).Floor()
	if !fits || n < 1 || n > mostFills {
		return out, false
	}
	whole := s.kit[at].step.Mul(measure.NumberFromInt(n))
	first, ok := s.fills(whole)
	if !ok {
		return out, false
	}
	second, ok := rest.fills(amount.Sub(whole))
	if !ok {
		return out, false
	}
	return measuredAs(amount, slices.Concat(first, second), slices.Concat(s.kit, rest.kit)), true
}

func measuredAs(amount measure.Number, counts []int64, kit []Measure) Measured {
	out := Measured{Amount: filled(counts, kit), Most: slices.Max(counts), counts: counts, kit: kit}
	if !amount.IsZero() {
		out.Off = out.Amount.Sub(amount).Quo(amount)
	}
	return out
}

// fills is how often each measure is filled.
func (s *measureSet) fills(amount measure.Number) (counts []int64, ok bool) {
	switch {
	case amount.Sign() < 0:
		return nil, false
	case s.isChain:
		return fillChain(amount, s.kit)
	case len(s.steps) == 0:
		return s.fillRoughly(amount)
	}
	return s.fillNearest(amount)
}

// fillChain fills measures that each are a whole number of the next. What was
// rounded up may fill a larger one, so it is shared out once more.
func fillChain(amount measure.Number, kit []Measure) (counts []int64, ok bool) {
	if counts, ok = fill(amount, kit); !ok {
		return nil, false
	}
	return fill(filled(counts, kit), kit)
}

// fillRoughly fills measures that have no common measure worth the name: the
// largest first, with all of them or without the smallest or the largest, which
// ever comes nearest.
func (s *measureSet) fillRoughly(amount measure.Number) (counts []int64, ok bool) {
	var least measure.Number
	for i := range 2 * len(s.kit) {
		from, to := 0, len(s.kit)-i
		if i >= len(s.kit) {
			from, to = i-len(s.kit), len(s.kit)
		}
		some, can := fill(amount, s.kit[from:to])
		if !can {
			continue
		}
		all := make([]int64, len(s.kit))
		copy(all[from:], some)
		if off := filled(all, s.kit).Sub(amount).Abs(); !ok || off.Cmp(least) < 0 {
			counts, least, ok = all, off, true
		}
	}
	return counts, ok
}

// fillNearest finds the total nearest to the amount, the larger of two as near.
// What is more than the totals kept hold is filled with the largest measure.
func (s *measureSet) fillNearest(amount measure.Number) (counts []int64, ok bool) {
	exact := amount.Quo(s.unit)
	below, fits := exact.Floor()
	if !fits || below/s.steps[0] > mostFills {
		return nil, false
	}
	smallest := s.steps[len(s.steps)-1]
	first := max(0, (below+smallest-longestTotals+s.steps[0]+1)/s.steps[0])
	over := exact.Sub(measure.NumberFromInt(below))
	below -= first * s.steps[0]
	s.extend(below + smallest + 1)
	nearerAbove := over.Cmp(measure.NumberFromFraction(1, 2)) >= 0
	for d := int64(0); ; d++ {
		near, far := below-d, below+1+d
		if nearerAbove {
			near, far = far, near
		}
		for _, total := range []int64{near, far} {
			if total >= 0 && total < int64(len(s.fewest)) && s.fewest[total] != noTotal {
				counts = s.take(total)
				counts[0] += first
				return counts, slices.Max(counts) <= mostFills
			}
		}
	}
}

// extend works out the totals up to one.
func (s *measureSet) extend(total int64) {
	for t := int64(len(s.fewest)); t <= total; t++ {
		best, last := noTotal, int8(0)
		for i, step := range s.steps {
			if step <= t && s.fewest[t-step] != noTotal && (best == noTotal || s.fewest[t-step]+1 < best) {
				best, last = s.fewest[t-step]+1, int8(i)
			}
		}
		s.fewest, s.last = append(s.fewest, best), append(s.last, last)
	}
}

// take is how a total is made.
func (s *measureSet) take(total int64) []int64 {
	counts := make([]int64, len(s.kit))
	for total > 0 {
		at := s.last[total]
		counts[at]++
		total -= s.steps[at]
	}
	return counts
}
