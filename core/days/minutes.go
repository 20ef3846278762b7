package days

import "ceilingwright/core/measure"

// LongestMinutes is past all that is planned, so that what is longer need not be
// told apart.
const LongestMinutes = 1_000_000_000

// WholeMinutes is a time, of so many minutes each, as whole minutes, rounded up.
func WholeMinutes(n measure.Number, each int64) int64 {
	whole, ok := n.Mul(measure.NumberFromInt(each)).Ceil()
	if !ok || whole > LongestMinutes {
		return LongestMinutes
	}
	return whole
}
