package mixing

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Quantity is how much of a part there should be, fine enough to compare with what is
// measured: a number of a unit of volume, or of grams where it has none.
type Quantity struct {
	N      measure.Number
	Unit   measure.VolumeUnit
	places int32
}

// Grams is a weight, told to a tenth of a gram.
func Grams(n measure.Number) Quantity { return Quantity{N: n, places: 1} }

// InUnits is a volume in the largest unit of which there is one, in the system of the
// unit given: gallons, fluid ounces and teaspoons, or litres and millilitres. It is
// told to the hundredth, of the largest unit to the thousandth.
func InUnits(v measure.Volume, unit measure.VolumeUnit) Quantity {
	units := []measure.VolumeUnit{measure.UnitGallon, measure.UnitFluidOunce, measure.UnitTeaspoon}
	switch systemOf(unit) {
	case metric:
		units = []measure.VolumeUnit{measure.UnitLitre, measure.UnitMillilitre}
	case imperial:
		units = []measure.VolumeUnit{measure.UnitImperialGallon, measure.UnitImperialFluidOunce, measure.UnitMillilitre}
	}
	q := Quantity{places: 3}
	for i, u := range units {
		if i > 0 {
			q.places = 2
		}
		if q.N, q.Unit = v.In(u), u; q.N.Cmp(measure.NumberFromInt(1)) >= 0 {
			break
		}
	}
	return q
}

// Exactly is a portion that is measured in the system of a unit.
func (p *Portion) Exactly(unit measure.VolumeUnit) Quantity {
	if p.Weighed {
		return Grams(p.Grams)
	}
	return InUnits(p.Volume, unit)
}

// In is the quantity with its unit (words.Value).
func (q Quantity) In(style words.Style) string {
	unit := "g"
	if q.Unit != "" {
		unit = q.Unit.Text()
	}
	return style.Notation.NumberTrimmed(q.N, q.places) + " " + unit
}

// ReadTo is the unit that bottles are read in, in the system of another unit, and into
// how many parts of it.
func ReadTo(unit measure.VolumeUnit) (read measure.VolumeUnit, parts int64) {
	switch systemOf(unit) {
	case metric:
		return measure.UnitMillilitre, 1
	case imperial:
		return measure.UnitImperialFluidOunce, 10
	}
	return measure.UnitFluidOunce, 10
}
