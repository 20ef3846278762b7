package measure

import "math"

// Logarithm and exponential have no exact answer. They are worked out here and
// not by package math, whose results differ in the last digit from one processor
// to the next; the conversions stop a multiplication and an addition from being
// fused.

// NaturalLog is ln x for a finite x above 0, to about 15 digits: x is split in
// m·2ᵉ with m near 1, and ln m = 2·(s + s³/3 + s⁵/5 + …) with s = (m−1)/(m+1).
func NaturalLog(x float64) float64 {
	m, e := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m, e = float64(m*2), e-1
	}
	s := (m - 1) / (m + 1)
	square, power, sum := float64(s*s), s, 0.0
	for n := 1.0; n < 40; n += 2 {
		sum += power / n
		power = float64(power * square)
	}
	return float64(2*sum) + float64(float64(e)*math.Ln2)
}

// series are the factors 1/n! of the exponential, from the smallest: with an x of a
// quarter what is left out is below 10⁻¹⁷.
var series = [...]float64{
	1.0 / 6227020800, 1.0 / 479001600, 1.0 / 39916800, 1.0 / 3628800, 1.0 / 362880, 1.0 / 40320, 1.0 / 5040, 1.0 / 720, 1.0 / 120, 1.0 / 24, 1.0 / 6, 1.0 / 2, 1,
}

// ExpMinusOne is eˣ − 1 for x of 0 or less, to about 14 digits: a power series
// for a small x, and from there (1+y)² − 1 = y·(y+2) for twice the exponent.
func ExpMinusOne(x float64) float64 {
	if x < -700 {
		return -1
	}
	doublings := 0
	for x < -0.25 {
		x, doublings = float64(x/2), doublings+1
	}
	sum := series[0]
	for _, factor := range series[1:] {
		sum = float64(sum*x) + factor
	}
	sum = float64(sum * x)
	for range doublings {
		sum = float64(sum * (sum + 2))
	}
	return sum
}

// Exp is eˣ, to about 13 digits for x from −30 to 30: that of a small part of x,
// squared as often as the part was halved.
func Exp(x float64) float64 {
	halvings := 0
	for (x < -0.25 || x > 0.25) && halvings < 12 {
		x, halvings = float64(x/2), halvings+1
	}
	power := 1 + ExpMinusOne(-math.Abs(x))
	if x > 0 {
		power = 1 / power
	}
	for range halvings {
		power = float64(power * power)
	}
	return power
}
