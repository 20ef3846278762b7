package finish

import "ceilingwright/core/measure"

// Gallon says which gallon "gal" and its parts mean: the two differ by a fifth.
type Gallon string

// The two gallons. The US gallon is 231 in³ (NIST Handbook 44, appendix C).
// The imperial gallon is 4.546 09 L (NIST SP 811, from memory).
const (
	US       Gallon = "US"
	Imperial Gallon = "imperial"
)

// Volume is one gallon.
func (g Gallon) Volume() measure.Volume {
	if g == Imperial {
		return measure.Volume{Litres: measure.ImperialGallon}
	}
	return measure.Volume{Litres: measure.USGallon}
}

// Unit is a unit that paint is sold or mixed in.
type Unit string

// The units of volume.
const (
	Gal        Unit = "gal"
	Quart      Unit = "qt"
	Pint       Unit = "pt"
	Cup        Unit = "cup"
	FluidOunce Unit = "floz"
	Tablespoon Unit = "tbsp"
	Teaspoon   Unit = "tsp"
	Litre      Unit = "L"
	Millilitre Unit = "mL"
)

// Units lists the units of volume.
func Units() []Unit {
	return []Unit{Gal, Quart, Pint, Cup, FluidOunce, Tablespoon, Teaspoon, Litre, Millilitre}
}

// ParseUnit reads a unit of volume. Only the exact words of Units are read.
func ParseUnit(text string) (Unit, bool) { return parseWord(text, Units()) }

// Text is the unit as it is printed after a number.
func (u Unit) Text() string {
	if u == FluidOunce {
		return "fl oz"
	}
	return string(u)
}

// Of is the volume of amount of u, exact.
//
// US: 1 gal = 4 qt = 8 pt = 16 cup = 128 fl oz = 256 tbsp = 768 tsp (NIST
// Handbook 44, appendix C). Imperial: 1 gal = 4 qt = 8 pt = 160 fl oz (the
// notes of the same appendix); a cup is taken as half a pint, and spoons as the
// metric ones of 15 and 5 mL, as no imperial spoon is fixed (from memory).
// A word that is no unit gives no volume; ParseUnit refuses it first.
func (u Unit) Of(amount measure.Number, gallon Gallon) measure.Volume {
	return measure.Volume{Litres: amount.Mul(u.litres(gallon))}
}

func (u Unit) litres(gallon Gallon) measure.Number {
	switch u {
	case Litre:
		return measure.NumberFromInt(1)
	case Millilitre:
		return measure.NumberFromFraction(1, 1000)
	case Tablespoon, Teaspoon:
		if gallon == Imperial {
			return metricSpoon(u)
		}
	}
	parts := u.perGallon(gallon)
	if parts == 0 {
		return measure.Number{}
	}
	return gallon.Volume().Litres.Quo(measure.NumberFromInt(parts))
}

func metricSpoon(u Unit) measure.Number {
	if u == Tablespoon {
		return measure.NumberFromFraction(15, 1000)
	}
	return measure.NumberFromFraction(5, 1000)
}

func (u Unit) perGallon(gallon Gallon) int64 {
	switch u {
	case Gal:
		return 1
	case Quart:
		return 4
	case Pint:
		return 8
	case Cup:
		return 16
	case FluidOunce:
		if gallon == Imperial {
			return 160
		}
		return 128
	case Tablespoon:
		return 256
	case Teaspoon:
		return 768
	}
	return 0
}

// In is v counted in u, exact. u must be one of Units.
func (u Unit) In(v measure.Volume, gallon Gallon) measure.Number {
	one := u.litres(gallon)
	if one.IsZero() {
		return measure.Number{}
	}
	return v.Litres.Quo(one)
}

// figure prints a number in a problem: to three decimals, without idle zeros.
func figure(n measure.Number) string { return n.RoundHalfEven(3).String() }

// perCent prints a fraction in a problem as a percentage.
func perCent(n measure.Number) string {
	return n.Mul(measure.NumberFromInt(100)).RoundHalfEven(1).String() + " %"
}
