package measure

// Area is a surface in square metres, exact. The zero value is no area.
type Area struct{ SquareMetres Number }

// Volume is a volume in litres, exact. The zero value is none.
type Volume struct{ Litres Number }

// Units of area and volume in their base unit. The US gallon is 231 in³, the
// US fluid ounce 1/128 of it (NIST Handbook 44, appendix C); the imperial
// gallon is 4.546 09 L (NIST SP 811, from memory). Pound is in kilograms (NIST
// Handbook 44, appendix C), CubicFootAMinute in cubic metres an hour, rounded to
// nine places from the foot of 0.3048 m.
var (
	SquareFoot     = MustNumber("0.09290304")
	USGallon       = MustNumber("3.785411784")
	ImperialGallon = MustNumber("4.54609")
	CubicMetre     = NumberFromInt(1000)
	CubicFoot      = MustNumber("28.316846592") // from the foot of 304.8 mm
	Pound          = MustNumber("0.45359237")

	CubicFootAMinute = MustNumber("1.699010796")
)

// AreaOf is the area of a rectangle.
func AreaOf(length, width Length) Area {
	return Area{length.In(Metre).Mul(width.In(Metre))}
}

// Add is a + b.
func (a Area) Add(b Area) Area { return Area{a.SquareMetres.Add(b.SquareMetres)} }

// Sub is a − b.
func (a Area) Sub(b Area) Area { return Area{a.SquareMetres.Sub(b.SquareMetres)} }

// Times is a taken n times, or the share n of it.
func (a Area) Times(n Number) Area { return Area{a.SquareMetres.Mul(n)} }

// SquareFeet is a counted in square feet, exactly.
func (a Area) SquareFeet() Number { return a.SquareMetres.Quo(SquareFoot) }

// VolumeOver is what stands over an area up to a height, exact.
func VolumeOver(a Area, height Length) Volume {
	return Volume{a.SquareMetres.Mul(height.In(Metre)).Mul(CubicMetre)}
}

// Add is v + w.
func (v Volume) Add(w Volume) Volume { return Volume{v.Litres.Add(w.Litres)} }

// Times is v taken n times.
func (v Volume) Times(n Number) Volume { return Volume{v.Litres.Mul(n)} }

// Settled is v with its litres settled, so that sums of many stay short.
func (v Volume) Settled() Volume { return Volume{v.Litres.Settled()} }

// Gallons is v counted in US gallons, exactly.
func (v Volume) Gallons() Number { return v.Litres.Quo(USGallon) }
