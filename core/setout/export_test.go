package setout

import "ceilingwright/core/survey"

// SpotAt is a place as a Spot.
func SpotAt(p survey.Point) Spot {
	return Spot{Twice: survey.Point{X: 2 * p.X, Y: 2 * p.Y}, Known: true}
}

// TurnTo is the turn of a box whose length runs from one point towards another.
func TurnTo(from, to survey.Point) (Turn, bool) {
	return turnAlong(float64(to.X-from.X), float64(to.Y-from.Y))
}
