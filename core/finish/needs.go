package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Needs is what a step takes if the product spreads better than said, as said,
// and worse. A single figure would look surer than any spread rate is.
type Needs struct{ Lean, Likely, Rich measure.Volume }

// Vary is how far a need may be off either way, and of what it is the share. A
// product that covers a fifth less takes a quarter more: 300 ft²/gal less a fifth
// is 240, while a fifth more paint is 250.
type Vary struct {
	Share   measure.Number
	OfPaint bool // the paint it takes; else the area it covers
}

// UsualVary is how far a spread rate may be off either way where the plan does
// not say: 15 per cent. Labels of one kind of wall paint differ from 350 to 400
// ft²/gal (trade notes), and the ground by more: common practice, no source.
var UsualVary = measure.NumberFromFraction(15, 100)

// NeedsOf is a need if the product spreads better or worse. Where the area it
// covers is off, the rate changes by the share, so the need is divided by
// 1 ± share; where the paint is, the need is taken 1 ± share times. ok is false
// where the share is below 0 or not below 1.
func NeedsOf(likely measure.Volume, vary Vary) (needs Needs, ok bool) {
	one := measure.NumberFromInt(1)
	if vary.Share.Sign() < 0 || vary.Share.Cmp(one) >= 0 {
		return Needs{}, false
	}
	more, less := one.Add(vary.Share), one.Sub(vary.Share)
	needs = Needs{Lean: likely.Times(less), Likely: likely, Rich: likely.Times(more)}
	if !vary.OfPaint {
		needs.Lean, needs.Rich = measure.Volume{Litres: likely.Litres.Quo(more)}, measure.Volume{Litres: likely.Litres.Quo(less)}
	}
	return needs, true
}

// OneBatch chooses cans of one size alone, the cheapest size that does, then the
// least left over, then the fewest: cans of one size can be asked for with one
// batch number. Where prices are missing the least left over comes first. ok is
// false where CheapestCans would say so; problems are those of CheapestCans for
// the size chosen, and for all sizes where none will do.
func OneBatch(need measure.Volume, cans []Can) (purchase Purchase, problems []problem.Problem, ok bool) {
	best, problems, ok := CheapestCans(need, cans)
	if !ok || best.Cans == 0 {
		return best, problems, ok
	}
	found := false
	for i := range cans {
		alone, remarks, ok := CheapestCans(need, cans[i:i+1])
		if !ok || best.Priced != alone.Priced && best.Priced {
			continue
		}
		alone.Counts = make([]int64, len(cans))
		alone.Counts[i] = alone.Cans
		alone.Priced = alone.Priced && best.Priced
		if !found || alone.isBetterThan(&purchase) {
			purchase, problems, found = alone, keepIndex(remarks, problems), true
		}
	}
	return purchase, problems, found
}

// isBetterThan compares two purchases of one need.
func (p *Purchase) isBetterThan(q *Purchase) bool {
	if c := p.Price.Cmp(q.Price); p.Priced && c != 0 {
		return c < 0
	}
	if c := p.Bought.Litres.Cmp(q.Bought.Litres); c != 0 {
		return c < 0
	}
	return p.Cans < q.Cans
}

// keepIndex is the remarks on a choice, with those of all sizes that stand at
// one of them.
func keepIndex(remarks, all []problem.Problem) []problem.Problem {
	kept := []problem.Problem{}
	for _, p := range all {
		if p.At != "" {
			kept = append(kept, p)
		}
	}
	for _, p := range remarks {
		if p.At == "" {
			kept = append(kept, p)
		}
	}
	return kept
}
