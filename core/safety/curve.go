package safety

import (
	"math"

	"ceilingwright/core/measure"
)

// The room is taken as well mixed: what is given off, less what the fresh air
// carries out, is what stays. The two functions that have no exact answer are
// worked out here and not by package math, whose results differ in the last
// digit from one processor to the next; the conversions stop a multiplication
// and an addition from being fused.

// part is how finely a share or a logarithm is kept once it leaves float64.
const part = 1_000_000_000

// builtUp is the share of what a steady source gave off that is still in the
// room when the air has been changed so many times meanwhile: (1 − e⁻ˣ)/x, 1
// where no air is changed. It is rounded up to 10⁻⁹ and never above 1.
func builtUp(changes measure.Number) measure.Number {
	x := changes.Float()
	if x <= 0 {
		return measure.NumberFromInt(1)
	}
	share := -expMinusOne(-x) / x
	return measure.NumberFromFraction(min(part, int64(math.Ceil(float64(share*part)))), part)
}

// purgeHours is how long fresh air takes to thin what is in a room from one
// level down to another, when nothing more is given off: mixing ÷ changes ×
// ln(from ÷ to), the logarithm rounded up to 10⁻⁹. It is 0 where the air is
// thin enough already. ok is false where a level to reach, or a number of
// changes, is not above 0, or where the levels are too far apart to compare.
//
// CDC, Guidelines for Environmental Infection Control, 2003, table B.1; the
// mixing factor as in MMWR 43 RR-13, 1994, table S3-1.
func purgeHours(changes, mixing, from, to measure.Number) (hours measure.Number, ok bool) {
	if changes.Sign() <= 0 || to.Sign() <= 0 {
		return measure.Number{}, false
	}
	if from.Cmp(to) <= 0 {
		return measure.Number{}, true
	}
	ratio := from.Quo(to).Float()
	if math.IsInf(ratio, 0) {
		return measure.Number{}, false
	}
	log := measure.NumberFromFraction(int64(math.Ceil(float64(naturalLog(ratio)*part))), part)
	return mixing.Quo(changes).Mul(log), true
}

// naturalLog is ln x for a finite x above 0, to about 15 digits: x is split in
// m·2ᵉ with m near 1, and ln m = 2·(s + s³/3 + s⁵/5 + …) with s = (m−1)/(m+1).
func naturalLog(x float64) float64 {
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

// expMinusOne is eˣ − 1 for x of 0 or less, to about 14 digits: a power series
// for a small x, and from there (1+y)² − 1 = y·(y+2) for twice the exponent.
func expMinusOne(x float64) float64 {
	if x < -700 {
		return -1
	}
	doublings := 0
	for x < -0.25 {
		x, doublings = float64(x/2), doublings+1
	}
	term, sum := x, x
	for n := 2.0; n < 16; n++ {
		term = float64(term*x) / n
		sum += term
	}
	for range doublings {
		sum = float64(sum * (sum + 2))
	}
	return sum
}
