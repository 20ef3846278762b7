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
	at := 0.0
	for range limits {
		piece, end := pieceFrom(limits, at, longest)
		top := longest
		if piece.long > parallel {
			top = piece.most / piece.long / 2
		}
		if top <= at {
			break
		}
		if at = min(top, end); at == top {
			break
		}
	}
	o := mask.Outline{Length: down(at), Width: down(wideAt(limits, at))}
	return o, o.Length > 0 && o.Width > 0
}

// down is a count of nanometres cut off to a whole one, a thousandth of one
// forgiven to what floats lose.
func down(nanometres float64) measure.Length { return nearest(math.Floor(nanometres + 0.001)) }

// pieceFrom is the limit that holds the width just beyond a length, and the
// length up to which it does.
func pieceFrom(limits []limit, at, longest float64) (piece limit, end float64) {
	wide := math.Inf(1)
	for _, l := range limits {
		if l.wide < parallel {
			continue
		}
		w := (l.most - float64(l.long*at)) / l.wide
		// Of two that meet here the steeper one holds from here on.
		if w < wide-0.001 || w < wide+0.001 && l.long/l.wide > piece.long/piece.wide {
			wide, piece = w, l
		}
	}
	end = longest
	for _, l := range limits {
		if l.wide < parallel || l.long/l.wide <= piece.long/piece.wide {
			continue
		}
		// most − long·x over wide is the same for both.
		x := (float64(l.most*piece.wide) - float64(piece.most*l.wide)) / (float64(l.long*piece.wide) - float64(piece.long*l.wide))
		if x > at {
			end = min(end, x)
		}
	}
	return piece, end
}
