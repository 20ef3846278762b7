package survey

import "ceilingwright/core/measure"

// Triangle is a 3-4-5 triangle that proves a corner square: one leg Along the
// room's length, the other Across it, and the Diagonal that joins their ends.
// All three are exact.
type Triangle struct{ Along, Across, Diagonal measure.Length }

// Steps of which one part of a triangle (its fifth of the diagonal) is a whole
// multiple, so that both legs fall on plain marks of the tape. The small step
// is for a space where the large one does not fit. A choice: common practice,
// no source.
const (
	StepFeetInches      = 6 * measure.Inch
	SmallStepFeetInches = 1 * measure.Inch
	StepMetric          = 100 * measure.Millimetre
	SmallStepMetric     = 10 * measure.Millimetre
)

// LargestTriangle is the largest 3-4-5 triangle in a corner whose sides run
// along and across, tried both ways round; where both are as large, the longer
// leg lies along. False where not even three small steps fit.
//
// The larger the triangle, the less a slip of the tape turns the corner. The
// 3-4-5 rule is that of the US Army's engineer carpentry course.
func LargestTriangle(along, across measure.Length, system measure.System) (Triangle, bool) {
	step, small := StepFeetInches, SmallStepFeetInches
	if system == measure.Metric {
		step, small = StepMetric, SmallStepMetric
	}
	if t, ok := largestOfStep(along, across, step); ok {
		return t, true
	}
	return largestOfStep(along, across, small)
}

func largestOfStep(along, across, step measure.Length) (Triangle, bool) {
	longAlong := min(along/4, across/3) / step * step
	longAcross := min(along/3, across/4) / step * step
	switch {
	case longAlong <= 0 && longAcross <= 0:
		return Triangle{}, false
	case longAlong >= longAcross:
		return Triangle{4 * longAlong, 3 * longAlong, 5 * longAlong}, true
	}
	return Triangle{3 * longAcross, 4 * longAcross, 5 * longAcross}, true
}

// Strays is how far a line set out with this triangle is off at a distance
// over, when the diagonal was read wrong by slip: slip × diagonal ÷ (along ×
// across) × over. It is the first-order error, good to a thousandth for any
// slip a tape can hide; rounded to the nanometre, half to even.
func (t Triangle) Strays(slip, over measure.Length) measure.Length {
	if t.Along <= 0 || t.Across <= 0 {
		return 0
	}
	turn := slip.In(t.Along).Mul(t.Diagonal.In(t.Across))
	return measure.Length(turn.Mul(over.In(measure.Nanometre)).RoundHalfEven(0).IntPart())
}
