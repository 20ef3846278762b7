package measure

import (
	"cmp"
	"math"
	"math/big"
	"math/bits"
	"strings"

	"github.com/shopspring/decimal"
)

// Number is an exact fraction. The zero value is 0. Numbers are never changed
// in place: every method answers with a new one, so they may be copied freely.
// Compare them with Cmp: == would compare where large ones are kept.
// They are held as fractions because a spread rate in square feet a gallon
// over an area in square metres has no finite decimal, and a need of exactly
// one can must not become one can and a hair.
//
// A fraction in lowest terms whose parts fit an int64 is kept in num and
// below; one that does not is kept in rat. Nearly all of a sheet's numbers fit,
// and working them out without the heap halves the time of a sheet.
type Number struct {
	num   int64
	below int64 // the denominator less one, so that the zero value is 0/1
	rat   *big.Rat
}

// NumberFromInt is the whole number n.
func NumberFromInt(n int64) Number { return Number{num: n} }

// NumberFromFraction is num/den; den must not be 0.
func NumberFromFraction(num, den int64) Number {
	if den > 0 && num != math.MinInt64 {
		return lowest(num, den)
	}
	return fromRat(big.NewRat(num, den))
}

// NumberFromDecimal is d, exactly.
func NumberFromDecimal(d decimal.Decimal) Number {
	if places := -d.Exponent(); places >= 0 && places <= 18 && d.NumDigits() <= 18 {
		return lowest(d.CoefficientInt64(), tens[places])
	}
	return fromRat(d.Rat())
}

// MustNumber reads a plain decimal such as "3.785411784"; for constants and
// tests only: it panics on anything else.
func MustNumber(text string) Number { return NumberFromDecimal(decimal.RequireFromString(text)) }

// tens are the powers of ten that fit an int64.
var tens = func() (powers [19]int64) {
	powers[0] = 1
	for i := 1; i < len(powers); i++ {
		powers[i] = powers[i-1] * 10
	}
	return powers
}()

// lowest is num/den in lowest terms; den is above 0 and num not the least int64.
func lowest(num, den int64) Number {
	if common := commonDivisor(num, den); common > 1 {
		num, den = num/common, den/common
	}
	return Number{num: num, below: den - 1}
}

// commonDivisor is the greatest number that divides both (Euclid); b is above 0.
func commonDivisor(a, b int64) int64 {
	if a < 0 {
		a = -a
	}
	for a != 0 {
		a, b = b%a, a
	}
	return b
}

// product is a × b, and whether it fits. Neither is the least int64.
func product(a, b int64) (int64, bool) {
	negative := (a < 0) != (b < 0)
	hi, lo := bits.Mul64(uint64(max(a, -a)), uint64(max(b, -b)))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if negative {
		return -int64(lo), true
	}
	return int64(lo), true
}

// fromRat keeps r, as a small fraction where it fits.
func fromRat(r *big.Rat) Number {
	if r.Num().IsInt64() && r.Denom().IsInt64() {
		if num := r.Num().Int64(); num != math.MinInt64 {
			return Number{num: num, below: r.Denom().Int64() - 1}
		}
	}
	return Number{rat: r}
}

// value is n as a big fraction, which must not be changed.
func (n Number) value() *big.Rat {
	if n.rat == nil {
		return big.NewRat(n.num, n.below+1)
	}
	return n.rat
}

// isSmall tells whether n can be worked with in int64.
func (n Number) isSmall() bool { return n.rat == nil && n.num != math.MinInt64 }

// Add is n + m.
func (n Number) Add(m Number) Number {
	if n.isSmall() && m.isSmall() {
		if sum, ok := smallSum(n, m); ok {
			return sum
		}
	}
	return fromRat(new(big.Rat).Add(n.value(), m.value()))
}

// smallSum adds over the least common denominator.
func smallSum(n, m Number) (sum Number, ok bool) {
	over, under := n.below+1, m.below+1
	common := commonDivisor(over, under)
	left, ok1 := product(n.num, under/common)
	right, ok2 := product(m.num, over/common)
	den, ok3 := product(over, under/common)
	num := left + right
	if !ok1 || !ok2 || !ok3 || (left > 0) == (right > 0) && (num > 0) != (left > 0) || num == math.MinInt64 {
		return Number{}, false
	}
	return lowest(num, den), true
}

// Settled is n itself where its parts fit an int64, else n to settledPlaces
// decimals, half to even. Fractions with large parts that have nothing in common
// grow by all their digits in every sum; whoever adds up many that were measured,
// not counted, settles each, and is off by less than anyone can measure.
func (n Number) Settled() Number {
	if n.isSmall() {
		return n
	}
	return NumberFromDecimal(n.RoundHalfEven(settledPlaces))
}

// settledPlaces are twelve: a billionth of a millilitre in litres.
const settledPlaces = 12

// Sub is n − m.
func (n Number) Sub(m Number) Number { return n.Add(m.negative()) }

func (n Number) negative() Number {
	if n.isSmall() {
		n.num = -n.num
		return n
	}
	return fromRat(new(big.Rat).Neg(n.value()))
}

// Mul is n × m.
func (n Number) Mul(m Number) Number {
	if n.isSmall() && m.isSmall() {
		if made, ok := smallProduct(n.num, n.below+1, m.num, m.below+1); ok {
			return made
		}
	}
	return fromRat(new(big.Rat).Mul(n.value(), m.value()))
}

// smallProduct is a/b × c/d. What divides out across is divided out first, so
// that the parts stay as small as they can.
func smallProduct(a, b, c, d int64) (Number, bool) {
	if common := commonDivisor(a, d); common > 1 {
		a, d = a/common, d/common
	}
	if common := commonDivisor(c, b); common > 1 {
		c, b = c/common, b/common
	}
	num, ok1 := product(a, c)
	den, ok2 := product(b, d)
	return Number{num: num, below: den - 1}, ok1 && ok2
}

// Quo is n ÷ m. Dividing by 0 is a mistake of the caller and panics: check
// m.IsZero first and say which field is to blame.
func (n Number) Quo(m Number) Number {
	if n.isSmall() && m.isSmall() && m.num != 0 {
		over, under := m.below+1, m.num
		if under < 0 {
			over, under = -over, -under
		}
		if made, ok := smallProduct(n.num, n.below+1, over, under); ok {
			return made
		}
	}
	return fromRat(new(big.Rat).Quo(n.value(), m.value()))
}

// Cmp is −1, 0 or +1 as n is less than, equal to or more than m.
func (n Number) Cmp(m Number) int {
	if n.isSmall() && m.isSmall() {
		if n.Sign() != m.Sign() {
			return cmp.Compare(n.Sign(), m.Sign())
		}
		// Crosswise, in as many bits as it takes.
		left, leftLow := bits.Mul64(uint64(max(n.num, -n.num)), uint64(m.below+1))
		right, rightLow := bits.Mul64(uint64(max(m.num, -m.num)), uint64(n.below+1))
		return n.Sign() * cmp.Or(cmp.Compare(left, right), cmp.Compare(leftLow, rightLow))
	}
	return n.value().Cmp(m.value())
}

// Sign is −1, 0 or +1.
func (n Number) Sign() int {
	if n.rat == nil {
		return cmp.Compare(n.num, 0)
	}
	return n.rat.Sign()
}

// Abs is n without its sign.
func (n Number) Abs() Number {
	if n.Sign() < 0 {
		return n.negative()
	}
	return n
}

// IsZero tells whether n is 0.
func (n Number) IsZero() bool { return n.Sign() == 0 }

// Floor is the greatest whole number not above n. ok is false where it does
// not fit an int64.
func (n Number) Floor() (whole int64, ok bool) {
	if n.rat == nil {
		return floorOf(n.num, n.below+1), true
	}
	quotient, remainder := new(big.Int).QuoRem(n.rat.Num(), n.rat.Denom(), new(big.Int))
	if remainder.Sign() < 0 {
		quotient.Sub(quotient, big.NewInt(1))
	}
	return quotient.Int64(), quotient.IsInt64()
}

// floorOf is a ÷ b rounded down; b is above 0.
func floorOf(a, b int64) int64 {
	whole := a / b
	if a%b < 0 {
		whole--
	}
	return whole
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
	if scaled, ok := n.scaledHalfEven(places); ok {
		return decimal.New(scaled, -places)
	}
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

// scaledHalfEven is n times ten to places, to the nearest whole number, an exact
// half to the even one; ok is false where that takes more than int64. The product
// between may take twice as many bits.
func (n Number) scaledHalfEven(places int32) (scaled int64, ok bool) {
	if places < 0 || places >= int32(len(tens)) || !n.isSmall() {
		return 0, false
	}
	below := uint64(n.below + 1)
	hi, lo := bits.Mul64(uint64(max(n.num, -n.num)), uint64(tens[places]))
	if hi >= below {
		return 0, false
	}
	whole, rest := bits.Div64(hi, lo, below)
	if left := below - rest; rest > left || rest == left && whole&1 == 1 {
		whole++
	}
	if whole > math.MaxInt64 {
		return 0, false
	}
	if n.num < 0 {
		return -int64(whole), true
	}
	return int64(whole), true
}

// Fixed is n with exactly that many decimals, rounded as RoundHalfEven does, with
// a plain minus and point: "-0.50". Negative places give a whole number.
func (n Number) Fixed(places int32) string {
	scaled, ok := n.scaledHalfEven(places)
	if !ok {
		return n.RoundHalfEven(places).StringFixed(max(places, 0))
	}
	text := fixed(magnitude(Length(scaled)), int(places), int(places))
	if scaled < 0 {
		return "-" + text
	}
	return text
}

// Trimmed is Fixed without the zeros that end its decimals.
func (n Number) Trimmed(places int32) string {
	text := n.Fixed(places)
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// Float is the nearest float64, for drawing and for functions such as the
// square root that have no exact answer.
func (n Number) Float() float64 {
	const exact = 1 << 53 // whole numbers up to here have a float64 of their own
	if n.isSmall() && max(n.num, -n.num) <= exact && n.below < exact {
		return float64(n.num) / float64(n.below+1) // rounded once
	}
	f, _ := n.value().Float64()
	return f
}

func pow10(places int32) *big.Int {
	return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
}
