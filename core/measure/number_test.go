package measure

import (
	"math"
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestNumberZeroValueIsZero(t *testing.T) {
	var zero Number
	assert.True(t, zero.IsZero())
	assert.Zero(t, zero.Cmp(NumberFromInt(0)))
	assert.Zero(t, zero.Add(NumberFromInt(3)).Cmp(NumberFromInt(3)))
	assert.Equal(t, "0", zero.RoundHalfEven(0).String())
	whole, ok := zero.Ceil()
	assert.True(t, ok)
	assert.Zero(t, whole)
}

// Every operation leaves what it was given as it was.
func TestNumbersAreNeverChangedInPlace(t *testing.T) {
	a, b := NumberFromFraction(-7, 3), MustNumber("1.5")
	for _, use := range []func(){
		func() { a.Add(b) }, func() { a.Sub(b) }, func() { a.Mul(b) }, func() { a.Quo(b) }, func() { a.Abs() },
		func() { a.RoundHalfEven(2) }, func() { a.RoundHalfEven(-2) }, func() { a.Floor() }, func() { a.Ceil() }, func() { a.Float() },
	} {
		use()
		require.Zero(t, a.Cmp(NumberFromFraction(-7, 3)))
		require.Zero(t, b.Cmp(NumberFromFraction(3, 2)))
	}
}

// One third of a can three times is one can and no hair more.
func TestCeilOfAnExactNeed(t *testing.T) {
	third := NumberFromFraction(1, 3)
	for _, c := range []struct {
		n           Number
		floor, ceil int64
	}{
		{third.Add(third).Add(third), 1, 1},
		{MustNumber("2.0000000000000000001"), 2, 3},
		{MustNumber("-2.5"), -3, -2},
		{NumberFromInt(math.MaxInt64), math.MaxInt64, math.MaxInt64},
	} {
		floor, ok := c.n.Floor()
		assert.True(t, ok)
		assert.Equal(t, c.floor, floor)
		ceil, ok := c.n.Ceil()
		assert.True(t, ok)
		assert.Equal(t, c.ceil, ceil)
	}
	_, ok := NumberFromInt(math.MaxInt64).Add(third).Ceil()
	assert.False(t, ok)
	_, ok = NumberFromInt(math.MinInt64).Sub(third).Floor()
	assert.False(t, ok)
}

// Half to even, held against halves laid out by hand.
func TestRoundHalfEven(t *testing.T) {
	for _, c := range []struct {
		n      string
		places int32
		want   string
	}{
		{"0.5", 0, "0"}, {"1.5", 0, "2"}, {"2.5", 0, "2"}, {"-0.5", 0, "0"}, {"-1.5", 0, "-2"}, {"-2.5", 0, "-2"},
		{"2.500000001", 0, "3"}, {"0.125", 2, "0.12"}, {"0.135", 2, "0.14"}, {"250", -2, "200"}, {"350", -2, "400"}, {"-351", -2, "-400"},
	} {
		assert.Equal(t, c.want, MustNumber(c.n).RoundHalfEven(c.places).String(), "%s to %d", c.n, c.places)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := NumberFromFraction(rapid.Int64().Draw(t, "num"), rapid.Int64Range(1, math.MaxInt64).Draw(t, "den"))
		places := rapid.Int32Range(-3, 12).Draw(t, "places")
		off := NumberFromDecimal(n.RoundHalfEven(places)).Sub(n).Abs()
		last := new(big.Rat).SetFrac(pow10(max(-places, 0)), pow10(max(places, 0)))
		if off.Add(off).Cmp(fromRat(last)) > 0 {
			t.Fatalf("%v to %d places is off by %v", n.Float(), places, off.Float())
		}
	})
}

func TestAreaOf(t *testing.T) {
	// A 3 m × 4 m room is 1.2e19 nm² and would overflow an int64.
	assert.Zero(t, AreaOf(3*Metre, 4*Metre).SquareMetres.Cmp(NumberFromInt(12)))
	assert.Zero(t, AreaOf(Longest, Longest).SquareMetres.Cmp(NumberFromInt(10_000)))
	room := AreaOf(inches("17' 9 1/2"), inches("13' 4"))
	assert.Zero(t, room.SquareFeet().Cmp(NumberFromFraction(2135, 9))) // 427/24 × 40/3
	assert.Zero(t, room.Add(room).Sub(room).Times(NumberFromFraction(9, 2135)).SquareMetres.Cmp(SquareFoot))
	assert.Zero(t, AreaOf(Foot, Foot).SquareMetres.Cmp(SquareFoot))
}

func TestVolume(t *testing.T) {
	gallon := VolumeOf(NumberFromInt(1), UnitGallon)
	assert.Zero(t, gallon.Add(gallon).Times(NumberFromFraction(1, 2)).Gallons().Cmp(NumberFromInt(1)))
	assert.True(t, Volume{}.Gallons().IsZero())
}

// The fractions kept in int64 are held against big fractions, which are the
// standard library's, over numbers of every size and around the edges of int64.
func TestNumberAgreesWithBigFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-1000, 1000),
			rapid.SampledFrom([]int64{0, 1, -1, math.MaxInt64, math.MinInt64, math.MinInt64 + 1, 1 << 32, 3_037_000_500, 25_400_000}))
		draw := func(name string) (Number, *big.Rat) {
			num, den := part.Draw(t, name), part.Filter(func(d int64) bool { return d != 0 }).Draw(t, name+" below")
			return NumberFromFraction(num, den), big.NewRat(num, den)
		}
		a, bigA := draw("a")
		b, bigB := draw("b")
		same := func(want *big.Rat, got Number) {
			require.Zero(t, want.Cmp(got.value()), "%v against %v", want, got.value())
		}
		same(bigA, a)
		same(new(big.Rat).Add(bigA, bigB), a.Add(b))
		same(new(big.Rat).Sub(bigA, bigB), a.Sub(b))
		same(new(big.Rat).Mul(bigA, bigB), a.Mul(b))
		same(new(big.Rat).Abs(bigA), a.Abs())
		if bigB.Sign() != 0 {
			same(new(big.Rat).Quo(bigA, bigB), a.Quo(b))
		}
		require.Equal(t, bigA.Cmp(bigB), a.Cmp(b))
		require.Equal(t, bigA.Sign(), a.Sign())
		floor := new(big.Int).Div(bigA.Num(), bigA.Denom()) // Euclidean, which is the floor above a positive denominator
		if whole, ok := a.Floor(); ok {
			require.Zero(t, floor.Cmp(big.NewInt(whole)))
		} else {
			require.False(t, floor.IsInt64())
		}
		places := rapid.Int32Range(-3, 20).Draw(t, "places")
		require.True(t, Number{rat: bigA}.RoundHalfEven(places).Equal(a.RoundHalfEven(places)), "%v to %d places", bigA, places)
	})
}

// Fixed and Trimmed are RoundHalfEven as the decimal library writes it, whether
// a number fits the quick way or not.
func TestFixedIsRoundHalfEvenWritten(t *testing.T) {
	assert.Equal(t, "-0.50", NumberFromFraction(-1, 2).Fixed(2))
	assert.Equal(t, "0", NumberFromFraction(-1, 2).Fixed(0))
	assert.Equal(t, "2", NumberFromFraction(3, 2).Fixed(0))
	assert.Equal(t, "1200", NumberFromInt(1234).Fixed(-2))
	assert.Equal(t, "0.3333333333333333333333333", NumberFromFraction(1, 3).Fixed(25))
	assert.Equal(t, "9223372036854775807.0", NumberFromInt(math.MaxInt64).Fixed(1))
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-5000, 5000))
		den := parts.Filter(func(d int64) bool { return d != 0 }).Draw(t, "den")
		n := NumberFromFraction(parts.Draw(t, "num"), den)
		places := rapid.Int32Range(-3, 20).Draw(t, "places")
		// The rule again with big numbers alone: 2n/2d rounded, its half to even.
		scaled := new(big.Rat).Mul(n.value(), new(big.Rat).SetFrac(pow10(max(places, 0)), pow10(max(-places, 0))))
		floor := new(big.Int).Div(scaled.Num(), scaled.Denom())
		over := new(big.Rat).Sub(scaled, new(big.Rat).SetInt(floor))
		if half := over.Cmp(big.NewRat(1, 2)); half > 0 || half == 0 && floor.Bit(0) == 1 {
			floor.Add(floor, big.NewInt(1))
		}
		want := decimal.NewFromBigInt(floor, -places)
		require.Equal(t, want.StringFixed(max(places, 0)), n.Fixed(places))
		if places >= 0 {
			require.Equal(t, want.String(), n.Trimmed(places))
		}
	})
}

// What fits is compared and turned into a float64 as the big fractions are, up
// to the ends of what fits.
func TestCmpAndFloatAreThoseOfBigFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-9, 9), rapid.Int64Range(1<<53-2, 1<<53+2), rapid.Just[int64](math.MaxInt64), rapid.Just[int64](math.MinInt64))
		number := func(name string) Number {
			den := parts.Filter(func(d int64) bool { return d != 0 }).Draw(t, name+" den")
			return NumberFromFraction(parts.Draw(t, name), den)
		}
		n, m := number("n"), number("m")
		require.Equal(t, n.value().Cmp(m.value()), n.Cmp(m))
		want, _ := n.value().Float64()
		require.Equal(t, want, n.Float())
	})
}
