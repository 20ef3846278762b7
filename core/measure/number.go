package measure

import (
	"math"
	"math/big"

	"github.com/shopspring/decimal"
)

// Number is an exact fraction. The zero value is 0. Numbers are never changed
// in place: every method answers with a new one, so they may be copied freely.
// Compare them with Cmp: == would compare where they are kept.
// They are held as fractions because a spread rate in square feet a gallon
// over an area in square metres has no finite decimal, and a need of exactly
// one can must not become one can and a hair.
type Number struct{ rat *big.Rat }

// NumberFromInt is the whole number n.
func NumberFromInt(n int64) Number { return Number{big.NewRat(n, 1)} }

// NumberFromFraction is num/den; den must not be 0.
func NumberFromFraction(num, den int64) Number { return Number{big.NewRat(num, den)} }

// NumberFromDecimal is d, exactly.
func NumberFromDecimal(d decimal.Decimal) Number { return Number{d.Rat()} }

// MustNumber reads a plain decimal such as "3.785411784"; for constants and
// tests only: it panics on anything else.
func MustNumber(text string) Number { return NumberFromDecimal(decimal.RequireFromString(text)) }

func (n Number) value() *big.Rat {
	if n.rat == nil {
		return new(big.Rat)
	}
	return n.rat
}

// Add is n + m.
func (n Number) Add(m Number) Number { return Number{new(big.Rat).Add(n.value(), m.value())} }

// Sub is n − m.
func (n Number) Sub(m Number) Number { return Number{new(big.Rat).Sub(n.value(), m.value())} }

// Mul is n × m.
func (n Number) Mul(m Number) Number { return Number{new(big.Rat).Mul(n.value(), m.value())} }

// Quo is n ÷ m. Dividing by 0 is a mistake of the caller and panics: check
// m.IsZero first and say which field is to blame.
func (n Number) Quo(m Number) Number { return Number{new(big.Rat).Quo(n.value(), m.value())} }

// Cmp is −1, 0 or +1 as n is less than, equal to or more than m.
func (n Number) Cmp(m Number) int { return n.value().Cmp(m.value()) }

// Sign is −1, 0 or +1.
func (n Number) Sign() int { return n.value().Sign() }

// Abs is n without its sign.
func (n Number) Abs() Number { return Number{new(big.Rat).Abs(n.value())} }

// IsZero tells whether n is 0.
func (n Number) IsZero() bool { return n.Sign() == 0 }

// Floor is the greatest whole number not above n. ok is false where it does
// not fit an int64.
func (n Number) Floor() (whole int64, ok bool) {
	quotient, remainder := new(big.Int).QuoRem(n.value().Num(), n.value().Denom(), new(big.Int))
	if remainder.Sign() < 0 {
		quotient.Sub(quotient, big.NewInt(1))
	}
	return quotient.Int64(), quotient.IsInt64()
}

// Ceil is the least whole number not below n: whole cans, books, rolls. ok is
// false where it does not fit an int64.
func (n Number) Ceil() (whole int64, ok bool) {
	floor, ok := NumberFromInt(0).Sub(n).Floor()
	return -floor, ok && floor != math.MinInt64
}

// RoundHalfEven is n to the given number of decimal places, an exact half going
// to the even digit: the rule for measured and converted values (NIST SP 811
// B.7.1; the even rule is from memory). Negative places round to tens,
// hundreds and so on.
func (n Number) RoundHalfEven(places int32) decimal.Decimal {
	scaled := new(big.Rat).SetInt(pow10(max(places, -places)))
	if places < 0 {
		scaled.Inv(scaled)
	}
	scaled.Mul(scaled, n.value())
	twice := new(big.Int).Lsh(scaled.Num(), 1)
	quotient, remainder := new(big.Int).DivMod(twice.Add(twice, scaled.Denom()), new(big.Int).Lsh(scaled.Denom(), 1), new(big.Int))
	if remainder.Sign() == 0 && quotient.Bit(0) == 1 {
		quotient.Sub(quotient, big.NewInt(1))
	}
	return decimal.NewFromBigInt(quotient, -places)
}

// Float is the nearest float64, for drawing and for functions such as the
// square root that have no exact answer.
func (n Number) Float() float64 {
	f, _ := n.value().Float64()
	return f
}

func pow10(places int32) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
}
