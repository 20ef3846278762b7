package price

import (
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
	minor, ok := scaled(n, digits, half)
	return minor, ok
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
	minor := measure.NumberFromDecimal(decimal.New(1, digits))
	whole, ok := size.Mul(minor).Add(nudge).Floor()
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

// Split shares sum out by weight in money of that many digits, so that the parts
// add up to it: each gets its share rounded down, and the minor units left over
// go one each to those that lost most, the first of equals first (largest
// remainders). Weights and sum are not below 0. Where all weights are 0, the
// first gets everything.
func Split(sum decimal.Decimal, weights []decimal.Decimal, digits int32) []decimal.Decimal {
	if len(weights) == 0 {
		return nil
	}
	parts := make([]decimal.Decimal, len(weights))
	all := decimal.Decimal{}
	for _, w := range weights {
		all = all.Add(w)
	}
	if all.Sign() <= 0 {
		parts[0] = sum
		return parts
	}
	left, lost := sum, make([]measure.Number, len(weights))
	whole, total := measure.NumberFromDecimal(sum), measure.NumberFromDecimal(all)
	for i, w := range weights {
		exact := whole.Mul(measure.NumberFromDecimal(w)).Quo(total)
		parts[i], _ = roundDown(exact, digits)
		lost[i] = exact.Sub(measure.NumberFromDecimal(parts[i]))
		left = left.Sub(parts[i])
	}
	for unit := decimal.New(1, -digits); left.Sign() > 0; left = left.Sub(unit) {
		most := 0
		for i := range lost {
			if lost[i].Cmp(lost[most]) > 0 {
				most = i
			}
		}
		parts[most], lost[most] = parts[most].Add(unit), measure.NumberFromInt(-1)
	}
	return parts
}
