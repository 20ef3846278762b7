package survey

import "ceilingwright/core/measure"

// findRound works out a circle or an ellipse from its two axes.
func (r Room) findRound(n measure.Notation) Found {
	f := Found{Proof: Assumed, Shape: ShapeFromSides(Round, r.Length, r.Width)}
	f.Problems = append(f.Problems, checkSide("/length", "length", "straight across through the middle", r.Length, LeastSide, n)...)
	f.Problems = append(f.Problems, checkSide("/width", "width", "straight across, square to the length,", r.Width, LeastSide, n)...)
	switch {
	case !f.Shape.Usable():
	case r.Length == r.Width:
		f.Text = "Taken as a true circle: it was measured across in two directions, and nothing checks the curve between them."
	default:
		f.Text = "Taken as a true ellipse: it was measured across in two directions, and nothing checks the curve between them."
	}
	return f
}
