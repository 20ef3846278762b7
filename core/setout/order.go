package setout

import (
	"fmt"
	"math"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// OrderSide is the side of a mask that leaves a wanted border at both ends of
// a room's side, exact: side − 2 × border. A border that leaves no panel's
// worth of mask is refused at the place given, "/wantEnds" or "/wantSides".
func OrderSide(at string, side, border measure.Length, n measure.Notation) (measure.Length, []problem.Problem) {
	left := side - 2*border
	if left < mask.LeastPanel {
		do := "Check the size of the room."
		if side > mask.LeastPanel {
			do = fmt.Sprintf("Want a border of at most %s.", n.AtMost((side - mask.LeastPanel).Half()))
		}
		return 0, []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("Borders of %s at both ends leave no mask in a room side of %s.", n.Length(border), n.Length(side)),
			Do:   do}}
	}
	return left, nil
}

// Largest is the mask of the greatest area that keeps a border on each side
// when it is laid one way: exact, rounded down to the nanometre. On the room it
// is centred as Place does it, which in a room with other than four corners
// means wherever it fits best. A round room takes it in its middle, a border
// running along the box's axes. False where it is not worked out: in a room
// with a corner that points inwards, off the middle of a round one, and askew
// in an ellipse; and where nothing fits.
func (s Site) Largest(w Way, border Borders) (mask.Outline, bool) {
	turn, ok := s.turn(w)
	if ok && w.On == OnRoom && s.Shape.Form == survey.Round {
		return s.largestRound(turn, border)
	}
	limits, ok := s.limits(w, border)
	if !ok {
		return mask.Outline{}, false
	}
	return largest(limits)
}

// LargestAnywhere is Largest where the mask may be moved.
func (s Site) LargestAnywhere(t Turn, border Borders) (mask.Outline, bool) {
	if s.Shape.Form == survey.Round {
		return s.largestRound(t, border)
	}
	if !s.Shape.IsConvex() {
		return mask.Outline{}, false
	}
	ux, uy := t.Length()
	return largest(limitsAnywhere(s.planes(), s.borderAt(t, border), ux, uy))
}

// limits are the bounds on a mask laid one way between straight walls, or false
// where there are none to be had.
func (s Site) limits(w Way, border Borders) ([]limit, bool) {
	turn, ok := s.turn(w)
	if !ok || !s.Shape.IsConvex() || s.Shape.Form == survey.Round {
		return nil, false
	}
	ux, uy := turn.Length()
	planes, wanted := s.planes(), s.borderAt(turn, border)
	var spot Spot
	switch {
	case w.On == OnFixture:
		spot = s.Fixture
	case w.On == OnPoint:
		spot = s.Point
	case s.isFour():
		spot = Spot{s.Shape.TwiceCentre(), true}
	default:
		return limitsAnywhere(planes, wanted, ux, uy), true
	}
	return limitsAt(planes, wanted, float64(spot.Twice.X)/2, float64(spot.Twice.Y)/2, ux, uy), spot.Known
}

// borderAt is the border wanted at each wall: that of the side of the box that
// faces it most squarely.
func (s Site) borderAt(t Turn, border Borders) func(i int) float64 {
	wanted := make([]float64, len(s.Shape.Corners))
	for i, plane := range s.planes() {
		best, most := 0, math.Inf(-1)
		for side := range walls {
			x, y := outward(t, side)
			if squarely := -float64(plane.nx*x) - float64(plane.ny*y); squarely > most+parallel {
				best, most = side, squarely
			}
		}
		wanted[i] = float64(border.At(t.Facing(walls[best])))
	}
	return func(i int) float64 { return wanted[i] }
}

// largestRound is Largest in the middle of a round room. The greatest width
// falls with the length, ever faster, so the area has one top; it is closed in
// on by the golden section until nothing is left between (Kiefer 1953, from
// memory).
func (s Site) largestRound(t Turn, border Borders) (mask.Outline, bool) {
	a, b := float64(s.Shape.Length)/2, float64(s.Shape.Width)/2
	ends, sides := float64(max(border.DA, border.BC)), float64(max(border.AB, border.CD))
	if !t.IsExact() && a != b {
		return mask.Outline{}, false
	}
	// half the mask across, at half of it along x
	across := func(x float64) float64 {
		return min(chord(b, a, x+ends), chord(b, a, x)-sides)
	}
	low, high := 0.0, a-ends
	if high <= 0 || across(0) <= 0 {
		return mask.Outline{}, false
	}
	const golden = 0.6180339887498949
	for range 100 {
		left, right := high-float64(golden*(high-low)), low+float64(golden*(high-low))
		if float64(left*across(left)) < float64(right*across(right)) {
			low = left
		} else {
			high = right
		}
	}
	o := mask.Outline{Length: down(2 * low), Width: down(2 * across(low))}
	if t.Quarters&1 == 1 {
		o.Length, o.Width = o.Width, o.Length
	}
	return o, o.Length > 0 && o.Width > 0
}

// chord is half the chord of an ellipse with the half axes across and along, so
// far along from its middle; below zero beyond its end.
func chord(across, along, at float64) float64 {
	share := at / along
	left := 1 - float64(share*share)
	if left < 0 {
		return -1
	}
	return float64(across * math.Sqrt(left))
}

// Side is one side of a mask.
type Side bool

// The two sides of a mask.
const (
	LongSide Side = false
	WideSide Side = true
)

// LargestSide is the greatest that one side of a mask can be, the other given,
// so that it keeps the borders wanted at its two ends when it is laid one way;
// the borders along it are left to the other side. False where it is not worked
// out, as with Largest.
func (s Site) LargestSide(w Way, side Side, other measure.Length, border Borders) (measure.Length, bool) {
	turn, ok := s.turn(w)
	if !ok || other <= 0 {
		return 0, false
	}
	if w.On == OnRoom && s.Shape.Form == survey.Round {
		return s.largestRoundSide(turn, side, other, border)
	}
	limits, ok := s.limits(w, border)
	if !ok {
		return 0, false
	}
	most := math.Inf(1)
	for _, l := range limits {
		if side == WideSide {
			l.long, l.wide = l.wide, l.long
		}
		if l.long > l.wide {
			most = min(most, (l.most-float64(l.wide*float64(other)))/l.long)
		}
	}
	if math.IsInf(most, 1) || down(most) <= 0 {
		return 0, false
	}
	return down(most), true
}

func (s Site) largestRoundSide(t Turn, side Side, other measure.Length, border Borders) (measure.Length, bool) {
	along, across := float64(s.Shape.Length)/2, float64(s.Shape.Width)/2
	if !t.IsExact() && along != across {
		return 0, false
	}
	wanted := max(border.DA, border.BC)
	if (t.Quarters&1 == 1) != (side == WideSide) {
		along, across = across, along
		wanted = max(border.AB, border.CD)
	}
	most := down(2 * (chord(along, across, float64(other)/2) - float64(wanted)))
	return most, most > 0
}
