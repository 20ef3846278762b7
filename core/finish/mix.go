package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Part is one ingredient of a mix as it was written: an amount of a unit of
// volume, so many grams where it is weighed (Weighed, and Amount in grams), or a
// share of the other parts together (Shared, and Amount a fraction). Density, in
// grams a millilitre and 0 where not known, is needed where weights meet
// volumes. Tint marks a colourant.
type Part struct {
	Name            string
	Amount          measure.Number
	Unit            measure.VolumeUnit
	Weighed, Shared bool
	Density         measure.Number
	Tint            bool
}

// Portion is an ingredient of a Mix: its volume and its share of the whole,
// both exact.
type Portion struct {
	Name   string
	Volume measure.Volume
	Share  measure.Number
}

// Mix is ingredients added up. Volumes are taken to add: what two liquids lose
// in each other is below any spoon.
type Mix struct {
	Portions []Portion
	Total    measure.Volume
}

// MixOf adds up parts in any units, exactly: 12 fl oz + 6 tsp + 8 tsp are
// 86 tsp. ok is false where nothing can be mixed.
//
// Refused: an amount below 0, and parts that come to nothing. A refused part
// is left out, and ok is false, since the shares would be wrong without it.
func MixOf(parts []Part) (mix Mix, problems []problem.Problem, ok bool) {
	for i, part := range parts {
		if part.Amount.Sign() < 0 {
			problems = append(problems, problem.Problem{At: problem.Index(i) + "/amount", Severity: problem.Stop,
				What: "The amount is below nothing, " + Amount(part.Amount, part.Unit) + ".",
				Do:   "Give an amount of 0 or more."})
			continue
		}
		volume := measure.VolumeOf(part.Amount, part.Unit)
		mix.Portions = append(mix.Portions, Portion{Name: part.Name, Volume: volume})
		mix.Total = mix.Total.Add(volume)
	}
	if mix.Total.Litres.IsZero() {
		return mix, append(problems, problem.Problem{At: "", Severity: problem.Stop,
			What: "The parts of the mix come to nothing.",
			Do:   "Give the amount of at least one part."}), false
	}
	for i, portion := range mix.Portions {
		mix.Portions[i].Share = portion.Volume.Litres.Quo(mix.Total.Litres)
	}
	return mix, problems, len(problems) == 0
}

// Times is every part taken n times; the shares stay.
func (m Mix) Times(n measure.Number) Mix {
	scaled := Mix{Portions: make([]Portion, len(m.Portions)), Total: m.Total.Times(n)}
	for i, portion := range m.Portions {
		portion.Volume = portion.Volume.Times(n)
		scaled.Portions[i] = portion
	}
	return scaled
}

// ScaledTo is m in the same proportions for an amount needed, exact. m must
// hold something: the mix that MixOf answered with ok.
func (m Mix) ScaledTo(need measure.Volume) Mix {
	return m.Times(need.Litres.Quo(m.Total.Litres))
}

// Batches is how many times m, as written, has to be made to hold the need,
// rounded up. ok is false where that is beyond counting. m must hold something.
func (m Mix) Batches(need measure.Volume) (batches int64, ok bool) {
	return need.Litres.Quo(m.Total.Litres).Ceil()
}
