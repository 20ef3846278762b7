package finish

import "ceilingwright/core/measure"

// Spread is the area one litre covers in one coat, in square metres a litre,
// exact. The zero value covers nothing and is refused by TakeOff.
//
// A litre spread over a square metre stands a millimetre high, so a spread
// rate and the wet film it leaves are one fact told twice: film in µm =
// 1000 ÷ (m²/L). In US units 1 gal at 1 mil covers 231 × 1000 ÷ 144 =
// 1604.1666… ft²; handbooks print 1600 (MIL-HDBK-1110 §2.1.5) or 1604.
type Spread struct{ SquareMetresPerLitre measure.Number }

// Film is the thickness of a coat while wet, in micrometres, exact. It is a
// fraction and no measure.Length because a spread rate seldom leaves a whole
// count of nanometres.
type Film struct{ Micrometres measure.Number }

// Micrometres in a mil, a thousandth of an inch of 25.4 mm.
var mil = measure.MustNumber("25.4")

// SpreadFromSquareFeet is a rate written in square feet a gallon, or a quart or
// any other unit, exact. A unit that is not known has no rate: the answer is
// then the zero Spread.
func SpreadFromSquareFeet(area measure.Number, per measure.VolumeUnit) Spread {
	litres := per.Litres()
	if litres.IsZero() {
		return Spread{}
	}
	return Spread{area.Mul(measure.SquareFoot).Quo(litres)}
}

// SpreadFromSquareMetres is a rate written in square metres a litre.
func SpreadFromSquareMetres(perLitre measure.Number) Spread { return Spread{perLitre} }

// SpreadFromFilm is the rate that leaves a wet film of f. No film has no rate:
// the answer is then the zero Spread.
func SpreadFromFilm(f Film) Spread {
	if f.Micrometres.IsZero() {
		return Spread{}
	}
	return Spread{measure.NumberFromInt(1000).Quo(f.Micrometres)}
}

// SquareFeetPer is s counted in square feet a gallon, or another unit, exact.
func (s Spread) SquareFeetPer(unit measure.VolumeUnit) measure.Number {
	return s.SquareMetresPerLitre.Mul(unit.Litres()).Quo(measure.SquareFoot)
}

// Film is the wet film that s leaves. No rate leaves no film.
func (s Spread) Film() Film {
	if s.SquareMetresPerLitre.IsZero() {
		return Film{}
	}
	return Film{measure.NumberFromInt(1000).Quo(s.SquareMetresPerLitre)}
}

// Practical is the rate reached in the work when the share loss of the product
// stays in the tray, the sleeve and the air: s × (1 − loss).
func (s Spread) Practical(loss measure.Number) Spread {
	return Spread{s.SquareMetresPerLitre.Mul(measure.NumberFromInt(1).Sub(loss))}
}

// FilmFromMils is a film written in mils, exact.
func FilmFromMils(mils measure.Number) Film { return Film{mils.Mul(mil)} }

// FilmFromMicrometres is a film written in micrometres.
func FilmFromMicrometres(um measure.Number) Film { return Film{um} }

// Mils is f counted in mils, exact.
func (f Film) Mils() measure.Number { return f.Micrometres.Quo(mil) }
