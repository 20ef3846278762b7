package measure

import "strings"

// VolumeUnit is a unit of volume as the plan writes it. Gallon, quart, pint,
// cup, fluid ounce and spoons are the US liquid ones; the imperial ones carry
// "imp" in their name. The zero value is no unit.
type VolumeUnit string

// The units a volume is counted in.
const (
	UnitGallon             VolumeUnit = "gal"
	UnitQuart              VolumeUnit = "qt"
	UnitPint               VolumeUnit = "pt"
	UnitCup                VolumeUnit = "cup"
	UnitFluidOunce         VolumeUnit = "floz"
	UnitTablespoon         VolumeUnit = "tbsp"
	UnitTeaspoon           VolumeUnit = "tsp"
	UnitLitre              VolumeUnit = "L"
	UnitMillilitre         VolumeUnit = "mL"
	UnitImperialGallon     VolumeUnit = "imp gal"
	UnitImperialQuart      VolumeUnit = "imp qt"
	UnitImperialPint       VolumeUnit = "imp pt"
	UnitImperialFluidOunce VolumeUnit = "imp floz"
)

// Litres is one of the unit in litres, exactly, or 0 for a unit that is not
// known. US: 1 gal = 4 qt = 8 pt = 16 cup = 128 fl oz = 256 tbsp = 768 tsp
// (NIST Handbook 44, appendix C). Imperial: 1 gal = 4 qt = 8 pt = 160 fl oz
// (same appendix, notes).
func (u VolumeUnit) Litres() Number {
	switch u {
	case UnitLitre:
		return NumberFromInt(1)
	case UnitMillilitre:
		return NumberFromFraction(1, 1000)
	}
	gallon := USGallon
	if strings.HasPrefix(string(u), "imp ") {
		gallon = ImperialGallon
	}
	parts := u.inGallon()
	if parts == 0 {
		return Number{}
	}
	return gallon.Quo(NumberFromInt(parts))
}

// Text is the unit as it is printed after a number: "fl oz" for floz.
func (u VolumeUnit) Text() string {
	switch u {
	case UnitFluidOunce:
		return "fl oz"
	case UnitImperialFluidOunce:
		return "imp fl oz"
	}
	return string(u)
}

// inGallon is how many of the unit make its gallon, or 0.
func (u VolumeUnit) inGallon() int64 {
	switch u {
	case UnitGallon, UnitImperialGallon:
		return 1
	case UnitQuart, UnitImperialQuart:
		return 4
	case UnitPint, UnitImperialPint:
		return 8
	case UnitCup:
		return 16
	case UnitFluidOunce:
		return 128
	case UnitImperialFluidOunce:
		return 160
	case UnitTablespoon:
		return 256
	case UnitTeaspoon:
		return 768
	}
	return 0
}

// VolumeOf is n of the unit; of a unit that is not known it is none.
func VolumeOf(n Number, unit VolumeUnit) Volume { return Volume{n.Mul(unit.Litres())} }

// In is v counted in the given unit, exactly; in a unit that is not known it
// is 0.
func (v Volume) In(unit VolumeUnit) Number {
	litres := unit.Litres()
	if litres.IsZero() {
		return Number{}
	}
	return v.Litres.Quo(litres)
}
