package measure

import (
	"math"
	"testing"

	"github.com/bcicen/go-units"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Exact since 1 July 1959 (NBS notice of 1959, addendum to NBS Circular 572);
// the marks of a tape follow by division.
func TestUnitsOfLengthAreExact(t *testing.T) {
	for text, want := range map[string]Length{
		"1/64 in": 396_875, "1/32 in": 793_750, "1/16 in": 1_587_500, "1/8 in": 3_175_000, "1/4 in": 6_350_000,
		"1 in": 25_400_000, "1 ft": 304_800_000, "1 mm": 1_000_000, "1 m": 1_000_000_000, "100 m": 100_000_000_000,
		"0.1 in": 2_540_000, "0.01 ft": 3_048_000,
	} {
		got, err := Parse(text, "")
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	assert.EqualValues(t, 914_400_000, 3*Foot) // the yard of the notice
}

func TestParseUnit(t *testing.T) {
	for _, unit := range []Unit{UnitInch, UnitFoot, UnitYard, UnitMillimetre, UnitCentimetre, UnitMetre} {
		got, err := ParseUnit(string(unit))
		require.NoError(t, err)
		assert.Equal(t, unit, got)
		assert.Positive(t, unit.Length())
	}
	got, err := ParseUnit(" Inches ")
	require.NoError(t, err)
	assert.Equal(t, UnitInch, got)
	for _, text := range []string{"", "rod", "km", "in in", "."} {
		_, err := ParseUnit(text)
		requireRefusal(t, text, err, "no unit of length")
	}
	assert.Zero(t, Unit("rod").Length())
	assert.Zero(t, Unit("").Length())
}

// As many decimals as a unit takes are always a whole count of nanometres.
func TestUnitDecimals(t *testing.T) {
	for unit, text := range map[Unit]string{
		UnitInch: "0.00001", UnitFoot: "0.00001", UnitMillimetre: "0.000001", UnitCentimetre: "0.0000001", UnitMetre: "0.000000001",
	} {
		got, err := Parse(text, unit)
		require.NoError(t, err, "%s %s", text, unit)
		assert.Positive(t, got)
		_, err = Parse(text[:len(text)-1]+"01", unit)
		requireRefusal(t, text[:len(text)-1]+"01", err, "finer")
	}
}

// US: NIST Handbook 44, appendix C; the gallon is 231 in³ and the cubic inch
// 16.387064 mL. Imperial: the gallon of NIST SP 811 (4.546 09 L, from memory),
// divided as in the notes of Handbook 44.
func TestVolumeUnits(t *testing.T) {
	for unit, millilitres := range map[VolumeUnit]string{
		UnitGallon: "3785.411784", UnitQuart: "946.352946", UnitPint: "473.176473", UnitCup: "236.5882365",
		UnitFluidOunce: "29.5735295625", UnitTablespoon: "14.78676478125", UnitTeaspoon: "4.92892159375",
		UnitLitre: "1000", UnitMillilitre: "1",
		UnitImperialGallon: "4546.09", UnitImperialQuart: "1136.5225", UnitImperialPint: "568.26125", UnitImperialFluidOunce: "28.4130625",
	} {
		got := VolumeOf(NumberFromInt(1), unit).In(UnitMillilitre)
		assert.Zero(t, MustNumber(millilitres).Cmp(got), "%s is %v mL", unit, got.Float())
	}
	inch3 := Inch.In(Centimetre).Mul(Inch.In(Centimetre)).Mul(Inch.In(Centimetre))
	assert.Zero(t, MustNumber("16.387064").Cmp(inch3))
	assert.Zero(t, VolumeOf(NumberFromInt(1), UnitGallon).In(UnitMillilitre).Cmp(inch3.Mul(NumberFromInt(231))))
	assert.Zero(t, MustNumber("1.8046875").Cmp(VolumeOf(NumberFromInt(1), UnitFluidOunce).In(UnitMillilitre).Quo(inch3)))
}

// Quotients worked out on paper from the exact values above.
func TestVolumeUnitsBesideEachOther(t *testing.T) {
	one := NumberFromInt(1)
	for _, c := range []struct {
		from, to VolumeUnit
		want     string
	}{
		{UnitImperialGallon, UnitGallon, "1.2009499255"},
		{UnitImperialFluidOunce, UnitFluidOunce, "0.9607599404"},
		{UnitLitre, UnitFluidOunce, "33.8140227018"},
		{UnitLitre, UnitImperialFluidOunce, "35.1950797279"},
		{UnitLitre, UnitGallon, "0.2641720524"},
		{UnitLitre, UnitQuart, "1.0566882094"},
		{UnitGallon, UnitTeaspoon, "768.0000000000"},
		{UnitGallon, UnitTablespoon, "256.0000000000"},
		{UnitImperialPint, UnitImperialFluidOunce, "20.0000000000"},
	} {
		assert.Equal(t, c.want, VolumeOf(one, c.from).In(c.to).RoundHalfEven(10).StringFixed(10), "%s in %s", c.from, c.to)
	}
}

// A general library of units, in floating point, has to come to the same.
func TestUnitsAgainstAGeneralLibrary(t *testing.T) {
	near := func(t *rapid.T, x float64, from, to units.Unit, got Number) {
		want := units.MustConvertFloat(x, from, to).Float()
		if diff := math.Abs(want - got.Float()); diff > 1e-12*math.Max(1, math.Abs(want)) {
			t.Fatalf("%v %s is %v %s here and %v there", x, from.Name, got.Float(), to.Name, want)
		}
	}
	lengths := map[Unit]units.Unit{
		UnitInch: units.Inch, UnitFoot: units.Foot, UnitMillimetre: units.MilliMeter, UnitCentimetre: units.CentiMeter, UnitMetre: units.Meter,
	}
	volumes := map[VolumeUnit]units.Unit{
		UnitGallon: units.FluidGallon, UnitQuart: units.FluidQuart, UnitPint: units.FluidPint, UnitFluidOunce: units.CustomaryFluidOunce,
		UnitLitre: units.Liter, UnitMillilitre: units.MilliLiter,
		UnitImperialGallon: units.Gallon, UnitImperialQuart: units.Quart, UnitImperialPint: units.Pint, UnitImperialFluidOunce: units.FluidOunce,
	}
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.IntRange(1, 100_000).Draw(t, "x")
		n := NumberFromInt(int64(x))
		for from, there := range lengths {
			l := Length(x) * from.Length()
			near(t, float64(x), there, units.KiloMeter, l.In(1000*Metre))
		}
		for from, there := range volumes {
			near(t, float64(x), there, units.HectoLiter, VolumeOf(n, from).Litres.Quo(NumberFromInt(100)))
		}
	})
}
