package survey

import (
	"strconv"

	"ceilingwright/core/measure"
)

// Swapped looks for a length that is within some distance of what is needed and
// becomes what was read when two neighbouring digits of it change places: of
// its millimetres, or in feet and inches of its inches all told, of its feet or
// of the inches beyond them. The nearest is taken; false where there is none.
// That a difference of swapped digits is a multiple of nine is an old rule of
// bookkeepers; here the digits themselves are tried.
func Swapped(read, needed, within measure.Length, system measure.System) (measure.Length, bool) {
	best, ok := measure.Length(0), false
	try := func(other measure.Length) {
		off := (other - needed).Abs()
		if other > 0 && other != read && off <= within && (!ok || off < (best-needed).Abs()) {
			best, ok = other, true
		}
	}
	if system == measure.FeetInches && read%(measure.Inch/64) == 0 {
		swapDigits(read, measure.Inch, 0, try)
		swapDigits(read, measure.Foot, 0, try)
		swapDigits(read, measure.Inch, measure.Foot, try)
	} else {
		swapDigits(read, measure.Millimetre, 0, try)
	}
	return best, ok
}

// swapDigits tries every way to swap two neighbouring digits of the count of a
// unit in a length, or in what a greater unit leaves of it.
func swapDigits(read, unit, greater measure.Length, try func(measure.Length)) {
	rest := read
	if greater > 0 {
		rest = read % greater
	}
	digits := []byte(strconv.FormatInt(int64(rest/unit), 10))
	for i := 1; i < len(digits); i++ {
		digits[i-1], digits[i] = digits[i], digits[i-1]
		if count, err := strconv.ParseInt(string(digits), 10, 64); err == nil {
			try(read - rest + rest%unit + measure.Length(count)*unit)
		}
		digits[i-1], digits[i] = digits[i], digits[i-1]
	}
}
