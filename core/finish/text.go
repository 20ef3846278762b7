package finish

import "ceilingwright/core/measure"

// figure prints a number in a problem: to three decimals, without idle zeros.
func figure(n measure.Number) string { return n.RoundHalfEven(3).String() }

// perCent prints a fraction in a problem as a percentage.
func perCent(n measure.Number) string {
	return n.Mul(measure.NumberFromInt(100)).RoundHalfEven(1).String() + " %"
}

func millimetres(l measure.Length) string { return figure(l.In(measure.Millimetre)) + " mm" }
