package survey

// findRound works out a circle or an ellipse from its two axes.
func (r Room) findRound() Found {
	f := Found{Proof: Assumed, Shape: ShapeFromSides(Round, r.Length, r.Width)}
	f.Problems = append(axisAlong.check(r.Length), axisAcross.check(r.Width)...)
	switch {
	case !f.Shape.Usable():
	case r.Length == r.Width:
		f.Verdict = TakenAsCircle
	default:
		f.Verdict = TakenAsEllipse
	}
	return f
}
