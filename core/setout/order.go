package setout

import (
	"math"

	"ceilingwright/core/sum"
	"ceilingwright/core/words"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// OrderSide is the side of a mask that leaves a wanted border at both ends of
// a room's side, exact: side − 2 × border. A border that leaves no panel's
// worth of mask is refused at the place given, "/wantEnds" or "/wantSides".
func OrderSide(at string, side, border measure.Length) (sum.Sum, []problem.Problem) {
	left := sum.Of(side).MinusTwice(border)
	if left.Value() >= mask.LeastPanel {
		return left, nil
	}
	do := words.Say("Check the size of the room.")
	if side > mask.LeastPanel {
		do = words.Say("Want a border of at most {most}.", words.AtMost("most", (side-mask.LeastPanel).Half()))
	}
	return sum.Sum{}, []problem.Problem{{At: at, Severity: problem.Stop, Do: do,
		What: words.Say("Borders of {border} at both ends leave no mask in a room side of {side}.", words.Length("border", border), words.Length("side", side))}}
}

// Largest is the mask of the greatest area that keeps a border on each side
// when it is laid one way: exact, rounded down to the nanometre. On the room it
// is centred as Place does it, which in a room with other than four corners
// means wherever it fits best. A round room takes it in its middle, and keeps the
// widest of the borders at every corner. False where it is not worked out: in a room
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

// kept is the line in an oval along which a corner of a mask keeps a border: a
// quarter of it, by the angle of the place of the curve it is nearest to. a and b
// are half the axes.
type kept struct{ a, b, border float64 }

// at is the place on the line at an angle of the ellipse (its eccentric anomaly).
func (k kept) at(angle float64) (x, y float64) {
	cos, sin := math.Cos(angle), math.Sin(angle)
	alongX, alongY := cos/k.a, sin/k.b
	steep := math.Sqrt(float64(alongX*alongX) + float64(alongY*alongY))
	return float64(k.a*cos) - float64(k.border*(alongX/steep)), float64(k.b*sin) - float64(k.border*(alongY/steep))
}

// ends are the angles between which the line is one: where the border is wider
// than the curve bends, it folds back on itself beyond the long axis.
func (k kept) ends() (from, to float64) {
	from = when(0, math.Pi/2, func(angle float64) bool { _, y := k.at(angle); return y >= 0 })
	to = when(from, math.Pi/2, func(angle float64) bool { x, _ := k.at(angle); return x < 0 })
	return from, to
}

// when is the angle from which on something holds, having not held before; to,
// where it never does.
func when(from, to float64, holds func(angle float64) bool) float64 {
	for range 60 {
		if middle := from + (to-from)/2; holds(middle) {
			to = middle
		} else {
			from = middle
		}
	}
	return to
}

// largestRound is Largest in the middle of a round room: one corner of it goes
// along the line that keeps the widest of the borders, since every corner lies at
// two sides. The area has one top there; it is closed in on by the golden section
// until nothing is left between (Kiefer 1953, from memory).
func (s Site) largestRound(t Turn, border Borders) (mask.Outline, bool) {
	line, ok := s.keptBy(t, max(border.AB, border.BC, border.CD, border.DA))
	if !ok {
		return mask.Outline{}, false
	}
	area := func(angle float64) float64 { x, y := line.at(angle); return float64(x * y) }
	low, high := line.ends()
	const golden = 0.6180339887498949
	for range 100 {
		left, right := high-float64(golden*(high-low)), low+float64(golden*(high-low))
		if area(left) < area(right) {
			low = left
		} else {
			high = right
		}
	}
	x, y := line.at(low)
	o := mask.Outline{Length: down(2 * x), Width: down(2 * y)}
	if t.Quarters&1 == 1 {
		o.Length, o.Width = o.Width, o.Length
	}
	return o, o.Length > 0 && o.Width > 0
}

// keptBy is the line that keeps a border in this room, or false where the mask
// lies askew in an oval or nothing is left.
func (s Site) keptBy(t Turn, border measure.Length) (kept, bool) {
	line := kept{float64(s.Shape.Length) / 2, float64(s.Shape.Width) / 2, float64(border)}
	return line, (t.IsExact() || line.a == line.b) && line.border < min(line.a, line.b)
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
	along := (t.Quarters&1 == 1) == (side == WideSide)
	wanted := max(border.DA, border.BC)
	if !along {
		wanted = max(border.AB, border.CD)
	}
	line, ok := s.keptBy(t, wanted)
	if !ok {
		return 0, false
	}
	half := float64(other) / 2
	if !along {
		line.a, line.b = line.b, line.a
	}
	from, to := line.ends()
	x, y := line.at(when(from, to, func(angle float64) bool { _, y := line.at(angle); return y >= half }))
	most := down(2 * x)
	return most, most > 0 && y >= half
}
