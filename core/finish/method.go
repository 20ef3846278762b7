package finish

import "ceilingwright/core/measure"

// Method is how a product is put on. The zero value is not said.
type Method string

// The methods. Spray is airless.
const (
	Brush  Method = "brush"
	Roller Method = "roller"
	Pad    Method = "pad"
	Spray  Method = "spray"
)

// Methods lists the methods.
func Methods() []Method { return []Method{Brush, Roller, Pad, Spray} }

// UsualLoss is the share of the product that a method loses where nobody has
// measured it: 12 per cent by brush, roller or pad, in the middle of the 10 to
// 15 that a trade table of loss and spread gives for brush and roller (a pad is
// counted like them: common practice, no source), 30 per cent by airless spray
// (the same table and a second one). ok is false for no method.
func UsualLoss(m Method) (loss measure.Number, ok bool) {
	switch m {
	case Brush, Roller, Pad:
		return measure.NumberFromFraction(12, 100), true
	case Spray:
		return measure.NumberFromFraction(30, 100), true
	}
	return measure.Number{}, false
}
