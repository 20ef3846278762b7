package price

import (
	"math/bits"

	"ceilingwright/core/measure"

	"github.com/shopspring/decimal"
)

// MostDigits is the most digits a minor unit has: no currency in use has more
// than three (ISO 4217, from memory; the list has a four for a unit of account
// that nobody pays in).
const MostDigits = 3

// Most is the greatest amount of money that is worked with, either way from
// nothing.
const Most = 1_000_000_000_000

// minorUnits is how many minor units make one of the currency, by their digits.
var minorUnits = [MostDigits + 1]int64{1, 10, 100, 1000}

var (
	greatest = measure.NumberFromInt(Most)
	half     = measure.NumberFromFraction(1, 2)
	one      = measure.NumberFromInt(1)
)

// Round is n in money of that many digits after the point, an exact half going
// away from zero: 1.005 is 1.01 and −1.005 is −1.01, so that a charge and its
// refund cancel. It is the rule of SSUTA §324 (US sales tax) and of Council
// Regulation (EC) 1103/97, article 5, for amounts above zero. n is exact, so
// nothing is rounded twice. ok is false above Most.
func Round(n measure.Number, digits int32) (sum decimal.Decimal, ok bool) {
	return scaled(n, digits, half)
}

// roundDown is n rounded towards zero.
func roundDown(n measure.Number, digits int32) (decimal.Decimal, bool) {
	return scaled(n, digits, measure.Number{})
}

// scaled cuts |n| + nudge minor units to whole ones and gives it the sign of n.
func scaled(n measure.Number, digits int32, nudge measure.Number) (decimal.Decimal, bool) {
	size := n.Abs()
	if size.Cmp(greatest) > 0 {
		return decimal.Decimal{}, false
	}
	whole, ok := size.Mul(measure.NumberFromInt(minorUnits[digits])).Add(nudge).Floor()
	if n.Sign() < 0 {
		whole = -whole
	}
	return decimal.New(whole, -digits), ok
}

// UpTo is sum raised to the next whole number of steps; a step of 0 leaves it.
// sum and step are not below 0.
func UpTo(sum, step decimal.Decimal) decimal.Decimal {
	if step.Sign() <= 0 {
		return sum
	}
	if over := sum.Mod(step); over.Sign() > 0 {
		return sum.Add(step.Sub(over))
	}
	return sum
}

// downTo is sum lowered to a whole number of steps.
func downTo(sum, step decimal.Decimal) decimal.Decimal {
	if step.Sign() <= 0 {
		return sum
	}
	return sum.Sub(sum.Mod(step))
}

// Split shares sum out by weight, so that the parts add up to it: each gets its
// share rounded down to a minor unit, and the units left over go one each to
// those that lost most, the first of equals first (largest remainders). Weights
// and sum are money of that many digits, not below 0, and add up to Most at
// the most. Where all weights are 0, the first gets everything.
func Split(sum decimal.Decimal, weights []decimal.Decimal, digits int32) []decimal.Decimal {
	if len(weights) == 0 {
		return nil
	}
	whole, all := minor(sum, digits), uint64(0)
	for _, w := range weights {
		all += minor(w, digits)
	}
	parts, lost := make([]uint64, len(weights)), make([]uint64, len(weights))
	left := whole
	for i, w := range weights {
		if all > 0 {
			high, low := bits.Mul64(whole, minor(w, digits))
			parts[i], lost[i] = bits.Div64(high, low, all)
		}
		left -= parts[i]
	}
	if all == 0 {
		parts[0], left = whole, 0
	}
	for ; left > 0; left-- {
		most := 0
		for i := range lost {
			if lost[i] > lost[most] {
				most = i
			}
		}
		parts[most], lost[most] = parts[most]+1, 0
	}
	sums := make([]decimal.Decimal, len(parts))
	for i, part := range parts {
		sums[i] = decimal.New(int64(part), -digits)
	}
	return sums
}

// minor is a sum in minor units.
func minor(sum decimal.Decimal, digits int32) uint64 { return uint64(sum.Shift(digits).IntPart()) }
