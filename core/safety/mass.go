package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// mass is a number of kilograms that is said.
type mass measure.Number

// In is the mass as it is said.
func (m mass) In(s words.Style) string { return MassIn(s.Notation, measure.Number(m)) }

// Mass is a number of kilograms in a sentence.
func Mass(name string, kilograms measure.Number) words.Hole { return words.Of(name, mass(kilograms)) }

// MassIn is a number of kilograms as a notation has it: to a tenth of a pound or a
// hundredth of a kilogram where it is carried in the hands, to a tenth from a hundred
// on, so that sums of them can be worked out again.
func MassIn(n measure.Notation, kilograms measure.Number) string {
	unit, places := " kg", int32(2)
	if n.System == measure.FeetInches {
		kilograms, unit, places = kilograms.Quo(measure.Pound), " lb", 1
	}
	if kilograms.Cmp(measure.NumberFromInt(100)) >= 0 {
		places = 1
	}
	return n.NumberTrimmed(kilograms, places) + unit
}
