package mixing

import (
	"slices"
	"strconv"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
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

// LeastUsual is the smallest of the usual measures for what is written in a unit, or
// of what is weighed.
func LeastUsual(unit measure.VolumeUnit, weighed bool) Measure {
	if weighed {
		return UsualScale()
	}
	kit := UsualMeasures(unit)
	return kit[len(kit)-1]
}

// UsualScale is a scale that shows whole grams: common practice, no source.
func UsualScale() Measure {
	return ScaleOf(measure.NumberFromInt(1), "g", measure.NumberFromInt(1))
}

// Measured is how an amount is measured out: the Amount that is, in litres or grams,
// and by what share of the exact amount it is off, below 0 where it is less. Most is
// how often the measure used most often is filled.
type Measured struct {
	Amount measure.Number
	Off    measure.Number
	Most   int64
	counts []int64
	kit    []Measure
}

// Measuring is spoons and jugs, or scales, to measure with: all there are. It
// keeps what it has worked out, so one is made for a plan and not for an amount.
type Measuring struct{ sets []*measureSet }

// MeasuringWith is all measures of a kit for what is weighed, or for what is not.
func MeasuringWith(kit []Measure, weighed bool) *Measuring {
	m := &Measuring{}
	for _, one := range []system{usCustomary, imperial, metric} {
		var same []Measure
		for _, k := range kit {
			if k.weighs == weighed && k.step.Sign() > 0 && (weighed || k.system == one) {
				same = append(same, k)
			}
		}
		if len(same) > 0 {
			m.sets = append(m.sets, newMeasureSet(one, same))
		}
		if weighed {
			break
		}
	}
	return m
}

// Out measures an amount of something written in a unit, in litres or in grams,
// as near as can be with all the measures together. Of one system that is the
// least error there is, then the fewest fills. Systems go together as whole
// measures of the one and the rest in another. The unit's own system alone, then
// with a rest, is taken where it comes as near to a tenth of a per cent: nobody
// fills a pint up with millilitres for less. ok is false where there is
// no measure, or one would have to be filled more than a million times.
func (m *Measuring) Out(amount measure.Number, unit measure.VolumeUnit) (out Measured, ok bool) {
	own := systemOf(unit)
	amount = amount.Settled()
	try := func(other Measured, can bool) {
		if can && (!ok || errorClass(other.Off).Cmp(errorClass(out.Off)) < 0) {
			out, ok = other, true
		}
	}
	for _, isOwn := range []bool{true, false} {
		for _, set := range m.sets {
			if (set.system == own) == isOwn {
				try(set.measure(amount))
				for i := len(set.kit) - 1; i >= 0; i-- { // as little as can be in the other system
					m.tryWithRest(set, i, amount, try)
				}
			}
		}
		if ok && errorClass(out.Off).IsZero() {
			break
		}
	}
	return out, ok
}

// tryWithRest tries whole fills of one measure with the rest in each other system.
func (m *Measuring) tryWithRest(set *measureSet, at int, amount measure.Number, try func(Measured, bool)) {
	for _, rest := range m.sets {
		if rest != set {
			try(set.measureWith(rest, at, amount))
		}
	}
}

// errorClass is an error to a tenth of a per cent, as it is told.
func errorClass(off measure.Number) measure.Number {
	return measure.NumberFromDecimal(off.Abs().RoundHalfEven(3))
}

// mostFills is how often one measure may be filled: far more than anyone would.
const mostFills = 1_000_000

// fill is how often each measure is filled: as often as it goes with the largest,
// what remains with the next, and the last rounded to its nearest step, a half
// up.
func fill(amount measure.Number, kit []Measure) (counts []int64, ok bool) {
	half := measure.NumberFromFraction(1, 2)
	for i, m := range kit {
		if i < len(kit)-1 && amount.Cmp(m.step) < 0 {
			counts = append(counts, 0)
			continue
		}
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

// In is such as 1 pt + 3 fl oz + 1 1/4 tsp (words.Value): what is measured in one unit
// is added up, 1 tsp and a quarter of one.
func (out Measured) In(style words.Style) string {
	text, counts, kit := "", out.counts, out.kit
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
		m.size = sum
		text += m.In(style)
	}
	if text == "" && len(kit) > 0 {
		return style.Say("none")
	}
	return text
}

// In is the size as it was written, "116 fl oz" or "1 1/2 cups" (words.Value): cups are
// the one unit that is written out.
func (m Measure) In(style words.Style) string {
	n := m.written(m.size)
	switch {
	case m.unit != string(measure.UnitCup):
		return n + " " + m.unit
	case m.size.Cmp(measure.NumberFromInt(1)) > 0:
		return style.Say("{n} cups", words.Name("n", n))
	}
	return style.Say("{n} cup", words.Name("n", n))
}

// written is a number of the measure's unit: metric and weights in decimals, the
// rest with a fraction of a spoon where it is one.
func (m Measure) written(n measure.Number) string {
	if m.weighs || m.system == metric {
		return n.Trimmed(3)
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
	return n.Trimmed(3)
}
