package air

import (
	"math"

	"ceilingwright/core/measure"
)

// The room is taken as well mixed: what is given off, less what the fresh air
// carries out, is what stays.

// part is how finely a share or a logarithm is kept once it leaves float64.
const part = 1_000_000_000

// builtUp is the share of what a steady source gave off that is still in the
// room when the air has been changed so many times meanwhile: (1 − e⁻ˣ)/x, 1
// where no air is changed. It is rounded up to 10⁻⁹ and never above 1.
func builtUp(changes measure.Number) measure.Number {
	x := changes.Float()
	if x <= 0 {
		return measure.NumberFromInt(1)
	}
	share := -measure.ExpMinusOne(-x) / x
	return measure.NumberFromFraction(min(part, int64(math.Ceil(float64(share*part)))), part)
}

// purgeHours is how long fresh air takes to thin what is in a room from one
// level down to another, when nothing more is given off: mixing ÷ changes ×
// ln(from ÷ to), the logarithm rounded up to 10⁻⁹. It is 0 where the air is
// thin enough already. ok is false where a level to reach, or a number of
// changes, is not above 0, or where the levels are too far apart to compare.
//
// CDC, Guidelines for Environmental Infection Control, 2003, table B.1; the
// mixing factor as in MMWR 43 RR-13, 1994, table S3-1.
func purgeHours(changes, mixing, from, to measure.Number) (hours measure.Number, ok bool) {
	if changes.Sign() <= 0 || to.Sign() <= 0 {
		return measure.Number{}, false
	}
	if from.Cmp(to) <= 0 {
		return measure.Number{}, true
	}
	ratio := from.Quo(to).Float()
	if math.IsInf(ratio, 0) {
		return measure.Number{}, false
	}
	log := measure.NumberFromFraction(int64(math.Ceil(float64(measure.NaturalLog(ratio)*part))), part)
	return mixing.Quo(changes).Mul(log), true
}
