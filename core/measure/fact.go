package measure

// Fact is a number that may not be known. The zero value is not known, which is
// not the same as 0.
type Fact struct {
	Value Number
	Known bool
}

// FactOf is the known number n.
func FactOf(n Number) Fact { return Fact{Value: n, Known: true} }
