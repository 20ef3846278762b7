package air

import (
	"math"

	"ceilingwright/core/measure"
)

// wet is a product in the room: how fast what is wet evaporates, how much is wet and how
// much is in the air, all of it in grams for each cubic metre of the room.
type wet struct {
	burns    bool
	decay    float64 // 1/h
	limit    float64 // +Inf where there is none
	part     float64 // of the limit that a gram is
	coat     float64 // in one coat
	little   float64 // wet and in the air that count as next to nothing
	left     float64 // wet
	level    float64 // in the air
	input    float64 // being put on, an hour
	wasLeft  float64 // at the beginning of the step
	wasLevel float64
	given    float64 // off, over the last step
	shift    float64 // level × hours of this shift
	keep     float64 // factors of a whole quarter of an hour, shut and open
	fading   [2]float64
}

// span is a step of so many hours in air that is changed so often: kept is the share of
// what is in the air that is still there at its end, steady what a gram an hour put on
// leaves in it, once the hours of one change, 0 where hardly any air is changed. A whole
// quarter of an hour has its factors ready, inside is which.
type span struct {
	hours, changes, kept, steady, once float64
	whole                              bool
	inside                             int
}

func spanOf(hours, changes float64) span {
	turned := float64(changes * hours)
	gone := -measure.ExpMinusOne(-turned)
	s := span{hours: hours, changes: changes, kept: 1 - gone, steady: hours}
	if turned > 1e-9 {
		s.steady = gone / changes
	}
	if turned > 1e-3 {
		s.once = 1 / changes
	}
	return s
}

// dose is the level × hours of a step, from what was in the air before it, what was
// given off in it and what is there after it.
func (s *span) dose(before, given, after float64) float64 {
	if s.once > 0 {
		return float64((given + before - after) * s.once)
	}
	return float64((before + after) / 2 * s.hours)
}

// factors are the share of what is wet that is still wet at the end of a step, and what a
// gram an hour given off besides what is put on leaves in the air.
func (w *wet) factors(s *span) (keep, fading float64) {
	if s.whole {
		return w.keep, w.fading[s.inside]
	}
	keep = decayed(float64(w.decay * s.hours))
	if apart := s.changes - w.decay; math.Abs(float64(apart*s.hours)) > 0.01 {
		return keep, (keep - s.kept) / apart
	}
	return keep, between(w.decay, s.changes, s.hours)
}

// idle tells whether nothing of the product is wet, in the air or being put on;
// it then forgets the step before.
func (w *wet) idle() bool {
	if w.left != 0 || w.level != 0 || w.input != 0 {
		return false
	}
	w.wasLeft, w.wasLevel, w.given = 0, 0, 0
	return true
}

// gone is how many grams of a product, wet and in the air, count as none: a
// millionth of what a sheet rounds to. Without it every coat of a long job would be
// followed to its end.
const gone = 1e-9

// over carries one product over a step: what is wet by its own decay, what is in the
// air by the balance of the room.
func (w *wet) over(s *span, volume float64) {
	keep, fading := w.factors(s)
	w.wasLeft, w.wasLevel = w.left, w.level
	w.level, w.left = w.levelAfter(s, fading), w.leftAfter(keep)
	w.given = w.givenUntil(s, w.left)
	if w.input == 0 && float64(w.left*volume) < gone && float64(w.level*volume) < gone {
		w.left, w.level = 0, 0
	}
}

// leftAfter is what is still wet at the end of a step with this factor.
func (w *wet) leftAfter(keep float64) float64 {
	if w.input == 0 {
		return float64(w.wasLeft * keep)
	}
	steady := w.input / w.decay
	return steady + float64((w.wasLeft-steady)*keep)
}

// givenUntil is what is given off in a step at the end of which so much is wet.
func (w *wet) givenUntil(s *span, left float64) float64 {
	return w.wasLeft - left + float64(w.input*s.hours)
}

// levelAfter is the level at the end of a step with this factor.
func (w *wet) levelAfter(s *span, fading float64) float64 {
	extra := float64(w.decay*w.wasLeft) - w.input
	return float64(w.wasLevel*s.kept) + float64(w.input*s.steady) + float64(extra*fading)
}

// decayed is e^−x for an x of 0 or more.
func decayed(x float64) float64 { return 1 + measure.ExpMinusOne(-x) }

// between is (e^−at − e^−bt) ÷ (b − a), also where a and b are alike.
func between(a, b, t float64) float64 {
	low, apart := min(a, b), math.Abs(b-a)
	gone := float64(apart * t)
	if gone < 1e-9 {
		return float64(t * decayed(float64(low*t)))
	}
	return float64(decayed(float64(low*t))*-measure.ExpMinusOne(-gone)) / apart
}
