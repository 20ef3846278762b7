package survey

import (
	"math"

	"ceilingwright/core/measure"
)

// pi has the digits of π that a float64 and twelve decimals of a square metre
// both need: 3.14159265358979323846 (Abramowitz & Stegun, table 1.1, from
// memory; the tests work it out).
var pi = measure.MustNumber("3.14159265358979323846")

// ellipseArea is π × length × width ÷ 4, to twelve decimals of a square metre.
func ellipseArea(length, width measure.Length) measure.Area {
	exact := measure.AreaOf(length, width).SquareMetres.Mul(pi).Quo(measure.NumberFromInt(4))
	return measure.Area{SquareMetres: measure.NumberFromDecimal(exact.RoundHalfEven(12))}
}

// mostTerms bounds the series of the perimeter. An ellipse ten times as long
// as wide takes some sixty terms; a flat one gets as far as this, which is
// still good to a ten-thousand-millionth.
const mostTerms = 20000

// ellipsePerimeter is the way round an ellipse, by the Gauss–Kummer series
// (from memory): π (a + b) Σ c² hⁿ with the half axes a and b, h =
// ((a − b) ÷ (a + b))², and c the binomial coefficient of 1/2 over n.
func ellipsePerimeter(length, width measure.Length) measure.Length {
	a, b := length.Millimetres()/2, width.Millimetres()/2
	return measure.LengthFromMillimetres(float64(math.Pi*(a+b)) * ellipseSeries(a, b))
}

// ellipseSeries is Σ c² hⁿ: what the way round an ellipse is over that round a
// circle as wide as its axes on the mean.
func ellipseSeries(a, b float64) float64 {
	h := (a - b) / (a + b)
	h *= h
	sum, term := 1.0, 1.0
	for n := 1.0; n < mostTerms && term > 1e-18; n++ {
		ratio := (1.5 - n) / n
		term = float64(float64(float64(term*ratio)*ratio) * h)
		sum += term
	}
	return sum
}

// inEllipse tells whether a point is inside the ellipse or on it, as near as a
// float64 tells: some billionths of a millimetre.
func inEllipse(length, width measure.Length, p Point) bool {
	x := (2*p.X - length).Millimetres() / length.Millimetres()
	y := (2*p.Y - width).Millimetres() / width.Millimetres()
	return float64(x*x)+float64(y*y) <= 1
}

// toEllipse is the distance of a point from the ellipse.
//
// The nearest point (x, y) of the curve satisfies x = a²px/(t + a²), y =
// b²py/(t + b²) for the greatest t that puts it on the curve; t is found by
// halving, since the sum falls all the way (Eberly, distance from a point to an
// ellipse, from memory).
func toEllipse(length, width measure.Length, p Point) measure.Length {
	a, b := length.Millimetres()/2, width.Millimetres()/2
	px, py := math.Abs(p.X.Millimetres()-a), math.Abs(p.Y.Millimetres()-b)
	if length == width {
		return measure.LengthFromMillimetres(math.Abs(a - spot{px, py}.long()))
	}
	if a < b {
		a, b, px, py = b, a, py, px
	}
	near := nearestOnEllipse(a, b, px, py)
	return measure.LengthFromMillimetres(near.minus(spot{px, py}).long())
}

// nearestOnEllipse is the nearest point of the quarter of an ellipse with a ≥ b
// to a point of that quarter.
func nearestOnEllipse(a, b, px, py float64) spot {
	if py == 0 {
		return nearestToLongAxis(a, b, px)
	}
	over := func(t float64) float64 {
		x, y := float64(a*px)/(t+float64(a*a)), float64(b*py)/(t+float64(b*b))
		return float64(x*x) + float64(y*y) - 1
	}
	low := float64(b*py) - float64(b*b)
	high := spot{float64(a * px), float64(b * py)}.long() - float64(b*b)
	for range 200 {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			break
		}
		if over(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	t := low + (high-low)/2
	return spot{float64(float64(a*a)*px) / (t + float64(a*a)), float64(float64(b*b)*py) / (t + float64(b*b))}
}

// nearestToLongAxis is the nearest point to one on the long axis: the end of
// the axis from beyond its centre of curvature on, else a point beside it.
func nearestToLongAxis(a, b, px float64) spot {
	focus := float64(a*a) - float64(b*b)
	if float64(a*px) >= focus {
		return spot{a, 0}
	}
	x := float64(float64(a*a)*px) / focus
	share := x / a
	return spot{x, float64(b * math.Sqrt(1-float64(share*share)))}
}
