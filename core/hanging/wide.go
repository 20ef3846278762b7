package hanging

import (
	"math/bits"

	"ceilingwright/core/measure"
)

// wide is a whole number of 128 bits: nanometres squared overflow 64 bits at
// three metres.
type wide struct{ high, low uint64 }

func squareOf(l measure.Length) wide {
	high, low := bits.Mul64(uint64(l), uint64(l))
	return wide{high, low}
}

func (w wide) plus(v wide) wide {
	low, carry := bits.Add64(w.low, v.low, 0)
	return wide{w.high + v.high + carry, low}
}

func (w wide) less(v wide) bool {
	return w.high < v.high || w.high == v.high && w.low < v.low
}
