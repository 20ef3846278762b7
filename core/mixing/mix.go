// Package mixing works out what is stirred together: a mix of parts in any units, how
// each is measured out with the spoons, jugs and scales at hand, and whether what sets
// in the pail is on before it does.
package mixing

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Part is one ingredient of a mix as it was written: an amount of a unit of
// volume, so many grams where it is weighed (Weighed, and Amount in grams), or a
// share of the other parts together (Shared, and Amount a fraction). Density, in
// grams a millilitre and 0 where not known, is needed where weights meet
// volumes. Tint marks a colourant, Paint and Water what is called so.
type Part struct {
	Name            string
	Amount          measure.Number
	Unit            measure.VolumeUnit
	Weighed, Shared bool
	Density         measure.Number
	Tint            bool
	Paint, Water    bool
}

// In is the amount as it was written, such as 12 fl oz, 40 g or 5 % (words.Value).
func (p Part) In(style words.Style) string {
	switch {
	case p.Weighed:
		return style.Notation.NumberTrimmed(p.Amount, 3) + " g"
	case p.Shared:
		return style.Say("{share}", words.PerCent("share", p.Amount))
	}
	return MeasureOf(p.Amount, p.Unit).In(style)
}

// Portion is an ingredient of a Mix: its volume and its share of the whole, both
// exact. Grams is its weight, where it is weighed.
type Portion struct {
	Part
	Volume measure.Volume
	Share  measure.Number
	Grams  measure.Number
}

// Mix is ingredients added up. Volumes are taken to add: what two liquids lose
// in each other is below any spoon.
type Mix struct {
	Portions []Portion
	Total    measure.Volume
}

// MixOf adds up parts in any units, exactly: 12 fl oz + 6 tsp + 8 tsp are
// 86 tsp. A weight becomes a volume by its density. A shared part is so much of
// all the other parts together by volume: 5 % of 100 mL are 5 mL; with several of
// them each counts in the others, and the whole is what is not shared ÷
// (1 − Σ p/(1+p)). ok is false where nothing can be mixed.
//
// Refused: an amount below 0, a weight without a density, shares that leave
// nothing for the other parts, and parts that come to nothing. A refused part is
// left out, and ok is false, since the shares would be wrong without it.
func MixOf(parts []Part) (mix Mix, problems []problem.Problem, ok bool) {
	one, shared := measure.NumberFromInt(1), measure.Number{}
	for i, part := range parts {
		if refusals := part.refusals(i); len(refusals) > 0 {
			problems = append(problems, refusals...)
			continue
		}
		portion := Portion{Part: part}
		switch {
		case part.Shared:
			portion.Share = part.Amount.Quo(one.Add(part.Amount)).Settled()
			shared = shared.Add(portion.Share).Settled()
		case part.Weighed:
			portion.Grams = part.Amount
			portion.Volume = measure.VolumeOf(part.Amount.Quo(part.Density), measure.UnitMillilitre).Settled()
		default:
			portion.Volume = measure.VolumeOf(part.Amount, part.Unit)
		}
		mix.Portions = append(mix.Portions, portion)
		mix.Total = mix.Total.Add(portion.Volume).Settled()
	}
	switch {
	case len(problems) > 0:
		return mix, problems, false
	case mix.Total.Litres.IsZero():
		return mix, []problem.Problem{{Severity: problem.Stop,
			What: words.Say("The parts of the mix come to nothing."),
			Do:   words.Say("Give the amount of at least one part, and not in per cent.")}}, false
	case shared.Cmp(one) >= 0:
		return mix, []problem.Problem{{Severity: problem.Stop,
			What: words.Say("The parts in per cent of all others leave nothing for the others."),
			Do:   words.Say("Give smaller per cents, or write one of the parts as an amount.")}}, false
	}
	mix.Total = measure.Volume{Litres: mix.Total.Litres.Quo(one.Sub(shared))}
	for i := range mix.Portions {
		if p := &mix.Portions[i]; p.Shared {
			p.Volume = measure.Volume{Litres: mix.Total.Litres.Mul(p.Share)}
		} else {
			p.Share = p.Volume.Litres.Quo(mix.Total.Litres)
		}
	}
	return mix, nil, true
}

func (p Part) refusals(i int) []problem.Problem {
	switch {
	case p.Amount.Sign() < 0:
		return []problem.Problem{{At: problem.Index(i) + "/amount", Severity: problem.Stop,
			What: words.Say("The amount is below nothing, {amount}.", words.Of("amount", p)),
			Do:   words.Say("Give an amount of 0 or more.")}}
	case p.Weighed && p.Density.Sign() <= 0:
		return []problem.Problem{{At: problem.Index(i) + "/density", Severity: problem.Stop,
			What: words.Say("This part is weighed, {amount}, and its density is not given: nobody can say how much room it takes.", words.Of("amount", p)),
			Do:   words.Say("Give what a millilitre weighs in grams, from its data sheet: weigh 100 mL of it and divide by 100. Water weighs 1.")}}
	}
	return nil
}

// IsAllShared tells whether all parts are shares, of something that is not among
// them: what is tinted, so much per cent of it.
func IsAllShared(parts []Part) bool {
	for _, p := range parts {
		if !p.Shared {
			return false
		}
	}
	return len(parts) > 0
}

// Times is every part taken n times; the shares stay.
func (m Mix) Times(n measure.Number) Mix {
	scaled := Mix{Portions: make([]Portion, len(m.Portions)), Total: m.Total.Times(n)}
	for i, portion := range m.Portions {
		portion.Volume = portion.Volume.Times(n)
		portion.Grams = portion.Grams.Mul(n)
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

// Main is the place of the part that the mix is made up in, and that its cans
// hold: the largest that is no water, the first of equals. It is −1 where all is
// water.
func (m Mix) Main() int {
	main := -1
	for i := range m.Portions {
		if p := &m.Portions[i]; !p.Water && (main < 0 || p.Volume.Litres.Cmp(m.Portions[main].Volume.Litres) > 0) {
			main = i
		}
	}
	return main
}

// The limits of colourant in a base by volume, of glaze medium to paint, and of
// water in a water glaze: common practice and from memory, no source. Three
// how-to pages agree on 3 to 6 parts of medium to one of paint, and 4 as usual.
var (
	muchTint    = measure.NumberFromFraction(5, 100)
	tooMuchTint = measure.NumberFromFraction(10, 100)
	thinnestMix = measure.NumberFromInt(6)
	muchWater   = measure.NumberFromFraction(10, 100)
)

// TintLoad is how much colourant there is, as a share of the volume of all other
// parts. ok is false where no part is a tint, or all are.
func (m Mix) TintLoad() (load measure.Number, ok bool) {
	tint := m.sum(func(p Part) bool { return p.Tint })
	rest := m.Total.Litres.Sub(tint)
	if tint.IsZero() || rest.IsZero() {
		return load, false
	}
	return tint.Quo(rest), true
}

func (m Mix) sum(counts func(Part) bool) (litres measure.Number) {
	for i := range m.Portions {
		if counts(m.Portions[i].Part) {
			litres = litres.Add(m.Portions[i].Volume.Litres)
		}
	}
	return litres
}

// MediumToPaint is how many parts of medium come to one of paint in a glaze: the
// paint is what is called paint, the medium all that is neither paint nor water
// nor tint. ok is false where nothing is called paint, or nothing else is there.
func (m Mix) MediumToPaint() (ratio measure.Number, ok bool) {
	paint := m.sum(func(p Part) bool { return !p.Tint && p.Paint })
	medium := m.sum(func(p Part) bool { return !p.Tint && !p.Paint && !p.Water })
	if paint.IsZero() || medium.IsZero() {
		return ratio, false
	}
	return medium.Quo(paint), true
}

// Remarks points out a mix that may not dry or hold: too much colourant, and in a
// glaze too little paint or, where it is thinned with water, too much of it.
func (m Mix) Remarks(glaze, waterBorne bool) []problem.Problem {
	found := m.tintRemarks()
	if !glaze {
		return found
	}
	if ratio, ok := m.MediumToPaint(); ok && ratio.Cmp(thinnestMix) > 0 {
		found = append(found, problem.Problem{Severity: problem.Note,
			What: words.Say("There are {ratio} parts of glaze to one of paint; above 6 to 1 the film gets weak.", words.Trimmed("ratio", ratio, 1)),
			Do:   words.Say("Use 3 to 6 parts to one of paint; 4 to 1 is usual.")})
	}
	if water := m.sum(func(p Part) bool { return p.Water }); waterBorne && !water.IsZero() {
		if rest := m.Total.Litres.Sub(water); !rest.IsZero() && water.Quo(rest).Cmp(muchWater) > 0 {
			found = append(found, problem.Problem{Severity: problem.Note,
				What: words.Say("There is {water} of water on the rest; more than 10 per cent weakens a water glaze.", words.PerCent("water", water.Quo(rest))),
				Do:   words.Say("Add less water, or try the mix on a sample board first.")})
		}
	}
	return found
}

func (m Mix) tintRemarks() []problem.Problem {
	load, ok := m.TintLoad()
	switch {
	case !ok:
	case load.Cmp(tooMuchTint) > 0:
		return []problem.Problem{{Severity: problem.Caution,
			What: words.Say("The tint comes to {load} of the rest; above 10 per cent a mix may never dry.", words.PerCent("load", load)),
			Do:   words.Say("Use less tint or a stronger one, or see on a sample board that yours dries hard.")}}
	case load.Cmp(muchTint) > 0:
		return []problem.Problem{{Severity: problem.Caution,
			What: words.Say("The tint comes to {load} of the rest; above 5 per cent a mix dries slowly.", words.PerCent("load", load)),
			Do:   words.Say("Make a sample board, and wait until it is hard.")}}
	}
	return nil
}
