package finish

import (
	"slices"
	"strconv"

	"ceilingwright/core/measure"
)

// Measure is a spoon, a jug or a scale, by the smallest step that it shows.
type Measure struct {
	step   measure.Number // in litres, or in grams
	size   measure.Number // of the unit
	unit   string         // as it is printed
	weighs bool
	system system
}

// system tells measures apart that nobody uses together.
type system int

const (
	usCustomary system = iota
	imperial
	metric
)

func systemOf(unit measure.VolumeUnit) system {
	switch unit {
	case measure.UnitLitre, measure.UnitMillilitre:
		return metric
	case measure.UnitImperialGallon, measure.UnitImperialQuart, measure.UnitImperialPint, measure.UnitImperialFluidOunce:
		return imperial
	}
	return usCustomary
}

// IsUSUnit tells whether a unit of volume is one of the US customary ones.
func IsUSUnit(unit measure.VolumeUnit) bool { return systemOf(unit) == usCustomary }

// MeasureOf is a spoon or a jug that shows size of a unit of volume.
func MeasureOf(size measure.Number, unit measure.VolumeUnit) Measure {
	return Measure{step: size.Mul(unit.Litres()), size: size, unit: unit.Text(), system: systemOf(unit)}
}

// ScaleOf is a scale that shows size of a unit that weighs so many grams.
func ScaleOf(size measure.Number, unit string, grams measure.Number) Measure {
	return Measure{step: size.Mul(grams), size: size, unit: unit, weighs: true}
}

// UsualMeasures are the spoons and jugs that are counted on for what is written
// in a unit, where nobody says what is at hand: from the gallon down to 1/8 tsp,
// or half a millilitre. The steps are common practice, no source.
func UsualMeasures(unit measure.VolumeUnit) []Measure {
	one, half := measure.NumberFromInt(1), measure.NumberFromFraction(1, 2)
	var units []measure.VolumeUnit
	last := MeasureOf(half, measure.UnitMillilitre)
	switch systemOf(unit) {
	case metric:
		units = []measure.VolumeUnit{measure.UnitLitre}
	case imperial:
		units = []measure.VolumeUnit{measure.UnitImperialGallon, measure.UnitImperialQuart, measure.UnitImperialPint, measure.UnitImperialFluidOunce}
	default:
		units = []measure.VolumeUnit{measure.UnitGallon, measure.UnitQuart, measure.UnitPint, measure.UnitCup, measure.UnitFluidOunce}
		last = MeasureOf(measure.NumberFromFraction(1, 8), measure.UnitTeaspoon)
	}
	kit := make([]Measure, 0, len(units)+1)
	for _, u := range units {
		kit = append(kit, MeasureOf(one, u))
	}
	return append(kit, last)
}

// UsualScale is a scale that shows whole grams: common practice, no source.
func UsualScale() Measure {
	return ScaleOf(measure.NumberFromInt(1), "g", measure.NumberFromInt(1))
}

// Measured is how an amount is measured out: Text such as 1 pt + 3 fl oz +
// 1 1/4 tsp, the Amount that is, in litres or grams, and by what share of the
// exact amount it is off, below 0 where it is less. Most is how often the measure
// used most often is filled.
type Measured struct {
	Text   string
	Amount measure.Number
	Off    measure.Number
	Most   int64
}

// Suited are the measures of a kit for a portion written in a unit: scales where
// it is weighed, else spoons and jugs, and of those the ones of the unit's own
// system where there are any, since nobody fills a pint up with millilitres.
func Suited(kit []Measure, weighed bool, unit measure.VolumeUnit) []Measure {
	var suited, own []Measure
	for _, m := range kit {
		if m.weighs != weighed || m.step.Sign() <= 0 {
			continue
		}
		suited = append(suited, m)
		if m.system == systemOf(unit) {
			own = append(own, m)
		}
	}
	if len(own) > 0 && !weighed {
		return own
	}
	return suited
}

// MeasureOut measures an amount, in litres or in grams, with the measures given,
// as painters do it: as often as it goes with the largest, what remains with the
// next, and the last rounded to its nearest step, a half up. ok is false where
// there is no measure, or one would have to be filled more than a million times.
func MeasureOut(amount measure.Number, kit []Measure) (out Measured, ok bool) {
	kit = slices.Clone(kit)
	slices.SortStableFunc(kit, func(a, b Measure) int { return b.step.Cmp(a.step) })
	counts, ok := fill(amount, kit)
	if !ok {
		return out, false
	}
	// What was rounded up may fill a larger measure: share out what is measured
	// once more.
	out.Amount = filled(counts, kit)
	if counts, ok = fill(out.Amount, kit); !ok {
		return out, false
	}
	out.Amount = filled(counts, kit)
	out.Text, out.Most = countText(counts, kit), slices.Max(counts)
	if !amount.IsZero() {
		out.Off = out.Amount.Sub(amount).Quo(amount)
	}
	return out, true
}

// mostFills is how often one measure may be filled: far more than anyone would.
const mostFills = 1_000_000

// fill is how often each measure is filled.
func fill(amount measure.Number, kit []Measure) (counts []int64, ok bool) {
	half := measure.NumberFromFraction(1, 2)
	for i, m := range kit {
		fills := amount.Quo(m.step)
		if i == len(kit)-1 {
			fills = fills.Add(half)
		}
		n, fits := fills.Floor()
		if !fits || n < 0 || n > mostFills {
			return nil, false
		}
		counts = append(counts, n)
		amount = amount.Sub(m.step.Mul(measure.NumberFromInt(n)))
	}
	return counts, len(kit) > 0
}

func filled(counts []int64, kit []Measure) (amount measure.Number) {
	for i, n := range counts {
		amount = amount.Add(kit[i].step.Mul(measure.NumberFromInt(n)))
	}
	return amount
}

// countText adds up what is measured in one unit: 1 tsp and a quarter of one are
// 1 1/4 tsp.
func countText(counts []int64, kit []Measure) string {
	text := ""
	for i, m := range kit {
		if slices.ContainsFunc(kit[:i], func(o Measure) bool { return o.unit == m.unit }) {
			continue
		}
		sum := measure.Number{}
		for k := i; k < len(kit); k++ {
			if kit[k].unit == m.unit {
				sum = sum.Add(kit[k].size.Mul(measure.NumberFromInt(counts[k])))
			}
		}
		if sum.IsZero() {
			continue
		}
		if text != "" {
			text += " + "
		}
		text += m.written(sum) + " " + m.named(sum)
	}
	if text == "" {
		return "none"
	}
	return text
}

// named is the measure's unit after so many of it: cups are the one unit that is
// written out.
func (m Measure) named(n measure.Number) string {
	if m.unit == string(measure.UnitCup) && n.Cmp(measure.NumberFromInt(1)) > 0 {
		return m.unit + "s"
	}
	return m.unit
}

// written is a number of the measure's unit: metric and weights in decimals, the
// rest with a fraction of a spoon where it is one.
func (m Measure) written(n measure.Number) string {
	if m.weighs || m.system == metric {
		return figure(n)
	}
	whole, _ := n.Floor()
	rest := n.Sub(measure.NumberFromInt(whole))
	for _, parts := range []int64{1, 2, 3, 4, 8, 16} {
		count := rest.Mul(measure.NumberFromInt(parts))
		k, _ := count.Floor()
		if !measure.NumberFromInt(k).Sub(count).IsZero() {
			continue
		}
		fraction := strconv.FormatInt(k, 10) + "/" + strconv.FormatInt(parts, 10)
		switch {
		case k == 0:
			return strconv.FormatInt(whole, 10)
		case whole == 0:
			return fraction
		}
		return strconv.FormatInt(whole, 10) + " " + fraction
	}
	return figure(n)
}
