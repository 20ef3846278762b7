package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Step is the step in which a platform is set and said: nobody sets one to a
// sixteenth.
func Step(n measure.Notation) measure.Length {
	if n.System == measure.Metric {
		return 50 * measure.Millimetre
	}
	return 2 * measure.Inch
}

// limitStep is the step in which a limit of the other system is said: a rail is
// measured to a centimetre or an inch.
func limitStep(n measure.Notation) measure.Length {
	if n.System == measure.Metric {
		return 10 * measure.Millimetre
	}
	return measure.Inch
}

// Rounding is a way to whole steps.
type Rounding int

// The ways: what is aimed at goes to the nearest, half a step going up, the least
// that will do up, the most down.
const (
	ToNearest Rounding = iota
	ToLeast
	ToMost
)

// towardsSafety is the way of a limit.
func towardsSafety(least bool) Rounding {
	if least {
		return ToLeast
	}
	return ToMost
}

// Of is the length rounded.
func (r Rounding) Of(l, step measure.Length) measure.Length {
	switch r {
	case ToLeast:
		return (l + step - 1) / step * step
	case ToMost:
		return l / step * step
	}
	return l.ToMark(step)
}

// stepped is a length said in whole steps of a platform.
type stepped struct {
	measure.Length
	how Rounding
}

// In is the length as it is said.
func (s stepped) In(style words.Style) string {
	return style.Notation.Length(s.how.Of(s.Length, Step(style.Notation)))
}

// Stepped is a length in whole steps of a platform.
func Stepped(name string, l measure.Length, how Rounding) words.Hole {
	return words.Of(name, stepped{l, how})
}

// limit is a length that something is held against.
type limit struct {
	measure.Length
	have measure.Length
	how  Rounding
}

// In is the limit in whole steps towards safety, unless what is there lies between
// the two: then to the mark.
func (l limit) In(style words.Style) string {
	whole := l.how.Of(l.Length, limitStep(style.Notation))
	if min(l.Length, whole) <= l.have && l.have <= max(l.Length, whole) {
		return style.Notation.Length(l.Length)
	}
	return style.Notation.Length(whole)
}

// Limit is a length that what is there is held against, ToLeast or ToMost.
func Limit(name string, l, have measure.Length, how Rounding) words.Hole {
	return words.Of(name, limit{l, have, how})
}
