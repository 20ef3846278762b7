package air

import (
	"strconv"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

var (
	once = measure.NumberFromInt(1)
	half = measure.NumberFromFraction(1, 2)
)

// Hours is a time in hours, said up to a whole minute.
type Hours measure.Number

// In is the time as 2 h 15 min.
func (h Hours) In(words.Style) string {
	minutes, _ := measure.Number(h).Mul(measure.NumberFromInt(60)).Ceil()
	switch {
	case minutes < 60:
		return strconv.FormatInt(minutes, 10) + " min"
	case minutes%60 == 0:
		return strconv.FormatInt(minutes/60, 10) + " h"
	}
	return strconv.FormatInt(minutes/60, 10) + " h " + strconv.FormatInt(minutes%60, 10) + " min"
}

// Share is a share of what is allowed, said in per cent. Next to a half or a whole it
// has a decimal, so that what is above a limit never reads as the limit.
type Share measure.Number

// In is the share as it is said.
func (s Share) In(style words.Style) string {
	share := measure.Number(s)
	whole := measure.NumberFromDecimal(share.Mul(measure.NumberFromInt(100)).RoundHalfEven(0))
	rounded := whole.Quo(measure.NumberFromInt(100))
	if apart := share.Cmp(rounded); apart != 0 && (rounded.Cmp(half) == 0 || rounded.Cmp(once) == 0) {
		tenth := RoundUp(share.Mul(measure.NumberFromInt(100)), 10)
		if apart < 0 {
			tenth = RoundDown(share.Mul(measure.NumberFromInt(100)), 10)
		}
		return style.Notation.Number(tenth, 1) + " %"
	}
	return style.Notation.Number(whole, 0) + " %"
}

// Flow is fresh air in cubic metres an hour, said in the measure of fans.
type Flow measure.Number

// In is the fresh air as it is said.
func (f Flow) In(style words.Style) string {
	flow, n := measure.Number(f), style.Notation
	if n.System == measure.FeetInches {
		return n.Number(flow.Quo(measure.CubicFootAMinute), 0) + " cfm"
	}
	return n.Number(flow, 0) + " m³/h"
}

// RoundDown is n rounded down to a whole multiple of 1/parts; n itself where the
// multiple does not fit an int64.
func RoundDown(n measure.Number, parts int64) measure.Number {
	return measure.Number{}.Sub(RoundUp(measure.Number{}.Sub(n), parts))
}
