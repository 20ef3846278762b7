package setout

import (
	"math"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// limit is one bound on the sides of a box, in nanometres: long·length +
// wide·width is at most most. long and wide are not below zero.
type limit struct{ long, wide, most float64 }

// limitsAt are the bounds on a box with its middle at a place, so turned that
// its length runs along (ux, uy): at each wall half of either side, as it
// stands to the wall, and the border come off what the place keeps from it.
func limitsAt(walls []halfPlane, border func(i int) float64, x, y, ux, uy float64) []limit {
	limits := make([]limit, len(walls))
	for i, w := range walls {
		limits[i] = w.limit(ux, uy)
		limits[i].most = w.at(x, y) - border(i)
	}
	return limits
}

// limitsAnywhere are the bounds on a box that may be moved: those sets of walls
// that face each other, weighed so that the place falls out (Fourier and
// Motzkin's elimination, from memory).
func limitsAnywhere(walls []halfPlane, border func(i int) float64, ux, uy float64) []limit {
	var limits []limit
	balances(walls, func(b balance) {
		limits = append(limits, limit{
			long: b.over(func(i int) float64 { return walls[i].limit(ux, uy).long }),
			wide: b.over(func(i int) float64 { return walls[i].limit(ux, uy).wide }),
			most: b.over(func(i int) float64 { return walls[i].off - border(i) }),
		})
	})
	return limits
}

// limit is how half a box's sides reach towards a wall.
func (h halfPlane) limit(ux, uy float64) limit {
	return limit{
		long: math.Abs(float64(h.nx*ux)+float64(h.ny*uy)) / 2,
		wide: math.Abs(float64(h.ny*ux)-float64(h.nx*uy)) / 2,
	}
}

// wideAt is the greatest width at a length, minus infinity where the length is
// too great for any.
func wideAt(limits []limit, long float64) float64 {
	wide := math.Inf(1)
	for _, l := range limits {
		left := l.most - float64(l.long*long)
		if l.wide < parallel {
			if left < -0.5 {
				return math.Inf(-1)
			}
			continue
		}
		wide = min(wide, left/l.wide)
	}
	return wide
}

// largest is the box of the greatest area within the limits. The greatest width
// falls with the length along a chain of straight pieces, so the area rises to
// one top and falls again: the chain is walked from length 0 until the top lies
// on the piece or at its end. Both sides are rounded down to the nanometre.
// False where not even a speck fits.
func largest(limits []limit) (mask.Outline, bool) {
	longest := math.Inf(1)
	for _, l := range limits {
		if l.most <= 0 {
			return mask.Outline{}, false
		}
		if l.long > parallel {
			longest = min(longest, l.most/l.long)
		}
	}
	if math.IsInf(longest, 1) || math.IsInf(wideAt(limits, 0), 1) {
		return mask.Outline{}, false
	}
	at, piece := 0.0, pieceAtNothing(limits)
	for range limits {
		end, next := pieceAfter(limits, piece, at, longest)
		if top := piece.top(longest); top < end {
			at = max(at, top)
			break
		}
		at, piece = end, next
		if end == longest {
			break
		}
	}
	o := mask.Outline{Length: down(at), Width: down(wideAt(limits, at))}
	return o, o.Length > 0 && o.Width > 0
}

// top is the length at which the area along this limit is greatest.
func (l limit) top(longest float64) float64 {
	if l.long < parallel {
		return longest
	}
	return l.most / l.long / 2
}

// isSteeper tells whether the width falls faster along this limit.
func (l limit) isSteeper(than limit) bool {
	return float64(l.long*than.wide) > float64(than.long*l.wide)
}

// down is a count of nanometres cut off to a whole one, a thousandth of one
// forgiven to what floats lose.
func down(nanometres float64) measure.Length { return measure.Nearest(math.Floor(nanometres + 0.001)) }

// pieceAtNothing is the limit that holds the width at length 0.
func pieceAtNothing(limits []limit) limit {
	piece, wide := limit{}, math.Inf(1)
	for _, l := range limits {
		if l.wide < parallel {
			continue
		}
		if w := l.most / l.wide; w < wide || w == wide && l.isSteeper(piece) {
			piece, wide = l, w
		}
	}
	return piece
}

// pieceAfter is where a limit, which holds from a length on, gives way to a
// steeper one, and which: of several at once the steepest.
func pieceAfter(limits []limit, piece limit, at, longest float64) (end float64, next limit) {
	end = longest
	for _, l := range limits {
		if l.wide < parallel || !l.isSteeper(piece) {
			continue
		}
		// Where they meet, (most − long·x) ÷ wide is the same for both. Floats may
		// put that a hair before where this one began to hold.
		x := (float64(l.most*piece.wide) - float64(piece.most*l.wide)) / (float64(l.long*piece.wide) - float64(piece.long*l.wide))
		if x = max(x, at); x < end || x == end && l.isSteeper(next) {
			end, next = x, l
		}
	}
	return end, next
}
