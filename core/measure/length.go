package measure

import "math"

// Length is a distance in whole nanometres. The zero value is no distance.
// It is signed so that offsets and differences fit; what people type as a
// length is read by Parse, which refuses a sign.
type Length int64

// Units of length, exact: 1 in = 25.4 mm and 1 ft = 304.8 mm since 1 July 1959
// (NBS notice of 1959, addendum to NBS Circular 572).
const (
	Nanometre  Length = 1
	Millimetre Length = 1_000_000
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
	Yard              = 3 * Foot
)

// OnePlace is how far apart two places may be worked out that are one: what shares of
// a length lose when they are cut off to the nanometre.
const OnePlace = Millimetre / 10_000

// Longest is the greatest length that is read, 100 m: more than any ceiling
// and far below what an int64 of nanometres holds, so sums of lengths are safe.
const Longest = 100 * Metre

// LongestRun is the greatest length that is read of what may be many lengths
// together, 10 km: all edges of a pattern, all walls of a house, or what is on a
// roll.
const LongestRun = 100 * Longest

// Half is l divided by two. An odd count of nanometres cannot be halved; the
// half is then rounded towards zero, and l − Half(l) is the other part.
func (l Length) Half() Length { return l / 2 }

// Abs is l without its sign.
func (l Length) Abs() Length {
	if l < 0 {
		return -l
	}
	return l
}

// In is l counted in the given unit, exactly.
func (l Length) In(unit Length) Number {
	return NumberFromInt(int64(l)).Quo(NumberFromInt(int64(unit)))
}

// Millimetres is l in millimetres, for what has no exact answer: roots, angles
// and least squares. A whole count of nanometres below 2⁵³ loses nothing but
// what the division rounds.
func (l Length) Millimetres() float64 { return float64(l) / float64(Millimetre) }

// LengthFromMillimetres is the way back, rounded as by Nearest.
func LengthFromMillimetres(mm float64) Length { return Nearest(mm * float64(Millimetre)) }

// Nearest is a count of nanometres to the nearest whole one, a half away from
// zero. What is no number, or beyond all lengths that sums can still take, ends
// at that limit.
func Nearest(nanometres float64) Length {
	const most = 1 << 52
	if !(nanometres > -most) {
		return -most
	}
	return Length(math.Round(min(nanometres, most)))
}
