package finish

import "ceilingwright/core/measure"

// figure prints a number in a problem: to three decimals, without idle zeros.
func figure(n measure.Number) string { return n.RoundHalfEven(3).String() }

// perCent prints a fraction in a problem as a percentage.
func perCent(n measure.Number) string {
	return n.Mul(measure.NumberFromInt(100)).RoundHalfEven(1).String() + " %"
}

func millimetres(l measure.Length) string { return figure(l.In(measure.Millimetre)) + " mm" }

// Amount prints a volume as it was written, "116 fl oz" or "1 1/2 cups".
func Amount(n measure.Number, unit measure.VolumeUnit) string {
	one := MeasureOf(measure.NumberFromInt(1), unit)
	return one.written(n) + " " + one.named(n)
}
