package measure

// Common is the greatest number that goes a whole number of times into a and into b, by
// Euclid. It stops below the finest, where ok is false.
func Common(a, b, finest Number) (common Number, ok bool) {
	for !b.IsZero() {
		if b.Cmp(finest) < 0 {
			return a, false
		}
		times, fits := a.Quo(b).Floor()
		if !fits {
			return a, false
		}
		a, b = b, a.Sub(b.Mul(NumberFromInt(times)))
	}
	return a, true
}
