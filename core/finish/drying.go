package finish

import (
	"math"

	"ceilingwright/core/measure"
)

// Drying is how a film comes to be dry.
type Drying string

// By giving off water; by a reaction with the air, as oil, alkyd and oil size
// do; or not known.
const (
	Unsaid     Drying = ""
	Evaporates Drying = "evaporates"
	Reacts     Drying = "reacts"
)

// The factor of drying is held between these: beyond them a rule of thumb says
// nothing. A choice.
var (
	leastFactor    = measure.NumberFromFraction(1, 2)
	greatestFactor = measure.NumberFromInt(6)
)

// The climate for which labels give their hours: about 77 °F and 50 %, from a
// trade sheet.
const (
	labelAir      = 25
	labelHumidity = 0.5
)

// DryingFactor is by how much the hours of a label grow in a climate, from 0.5 to
// 6, to a millionth. ok is false where a reading it needs is missing or refused,
// or how the film dries is not said.
//
// A rule of thumb and no standard: none was found. What gives off water slows as
// the air takes up less of it, by the vapour pressure it lacks of being
// saturated (a model, no source). What reacts takes twice as long for every 10 °C
// it is colder than 25 °C (from memory); the colder of air and surface counts,
// since the film is as cold as what it lies on.
func (c Climate) DryingFactor(d Drying) (factor measure.Number, ok bool) {
	if len(c.refusals()) > 0 || !c.Air.Known {
		return factor, false
	}
	switch d {
	case Evaporates:
		if !c.Humidity.Known {
			return factor, false
		}
		factor = greatestFactor
		if lack := vapourLack(c.Air.Value.Float(), c.Humidity.Value.Float()); lack > 0.01 {
			factor = kept(vapourLack(labelAir, labelHumidity) / lack)
		}
	case Reacts:
		coldest := c.Air.Value
		if c.Surface.Known && c.Surface.Value.Cmp(coldest) < 0 {
			coldest = c.Surface.Value
		}
		factor = kept(measure.Exp(float64(math.Ln2 * (labelAir - coldest.Float()) / 10)))
	default:
		return factor, false
	}
	return within(factor, leastFactor, greatestFactor), true
}

// vapourLack is the vapour pressure that air lacks of being saturated, in hPa.
func vapourLack(air, humidity float64) float64 { return float64(saturation(air) * (1 - humidity)) }

func within(n, least, most measure.Number) measure.Number {
	switch {
	case n.Cmp(least) < 0:
		return least
	case n.Cmp(most) > 0:
		return most
	}
	return n
}

// kept is x to the nearest of a million steps; x is within the range of rooms.
func kept(x float64) measure.Number {
	return measure.NumberFromFraction(int64(math.Round(float64(x*steps))), steps)
}
