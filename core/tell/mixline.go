package tell

import (
	"slices"
	"strconv"

	"ceilingwright/core/sheet"

	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// mostOff is by how much a part may be off once it is measured, from the method
// of scaling recipes: show the error above 2 %. A choice.
var mostOff = measure.NumberFromFraction(2, 100)

// mostFills is how often one measure is filled before somebody loses count. A
// choice.
const mostFills = 24

// measuredOut is a mix line by line: each part as it should be and as the kit
// measures it. With say, what is measured badly is pointed out.
// Of a change that is only priced nobody measures anything out.
func (w *step) measuredOut(mix finish.Mix, say bool) []sheet.MixLine {
	if w.builder.onlyPriced {
		return nil
	}
	lines, usual := make([]sheet.MixLine, 0, len(mix.Portions)), []string(nil)
	for i := range mix.Portions {
		p := &mix.Portions[i]
		line := sheet.MixLine{Name: partName(p.Part, i), Exact: w.exactPart(p)}
		if out, own, ok := w.measure(p); ok {
			line.Measured, line.Error = out.Text, w.offText(out.Off)
			if last := usualStep(p, w.unitOf(p.Part)); !own && !slices.Contains(usual, last) {
				usual = append(usual, last)
			}
			if say {
				w.measuredBadly(i, line, out, own)
			}
		}
		lines = append(lines, line)
	}
	if say && len(usual) > 0 {
		w.out.Notes = append(w.out.Notes, "Measured down to "+problem.Listed(usual)+", as is usual. List the spoons, jugs and scales at hand, and the mix is measured with those.")
	}
	return lines
}

// usualStep is the smallest step of the usual measures for a portion.
func usualStep(p *finish.Portion, unit measure.VolumeUnit) string {
	switch {
	case p.Weighed:
		return "1 g"
	case finish.IsUSUnit(unit):
		return "1/8 tsp"
	}
	return "0.5 mL"
}

// measuredBadly points out a part that is more than 2 % off once measured, and
// one for which a measure is filled too often to be counted.
func (w *step) measuredBadly(i int, line sheet.MixLine, out finish.Measured, own bool) {
	at := w.At + "/mix"
	if i < len(w.Mix) {
		at += problem.Index(i) + "/amount"
	}
	switch {
	case out.Amount.IsZero() && !out.Off.IsZero():
		w.Report(at, []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("“" + line.Name + "” should be " + line.Exact + ", which is less than can be measured."),
			Do:   words.Say("Use a finer measure, or make more of the mix.")}})
	case out.Off.Abs().Cmp(mostOff) > 0:
		w.Report(at, []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("“" + line.Name + "” should be " + line.Exact + " and is measured as " + line.Measured + ": " + line.Error + "."),
			Do:   words.Say("Use a finer measure, or make an amount that measures even.")}})
	}
	if own && out.Most > mostFills {
		w.out.Notes = append(w.out.Notes, "For “"+line.Name+"” one measure is filled "+strconv.FormatInt(out.Most, 10)+" times: with a larger jug it is harder to lose count.")
	}
}

// measure is how a portion is measured: with all of the kit of the plan that can
// measure it, else with what is usual.
func (w *step) measure(p *finish.Portion) (out finish.Measured, own, ok bool) {
	unit, amount := w.unitOf(p.Part), p.Volume.Litres
	if p.Weighed {
		amount = p.Grams
	}
	if out, ok = w.builder.measuring(p.Weighed).Out(amount, unit); ok {
		return out, true, true
	}
	kit := finish.UsualMeasures(unit)
	if p.Weighed {
		kit = []finish.Measure{finish.UsualScale()}
	}
	out, ok = finish.MeasuringWith(kit, p.Weighed).Out(amount, unit)
	return out, false, ok
}

// measuring is the measures at hand, for what is weighed or for what is not.
func (b *builder) measuring(weighed bool) *finish.Measuring {
	at := &b.jugs
	if weighed {
		at = &b.scales
	}
	if *at == nil {
		*at = finish.MeasuringWith(b.Plan.Finish.Kit, weighed)
	}
	return *at
}

// partName is what a part is called, by its place where it has no name.
func partName(p finish.Part, i int) string {
	if p.Name != "" {
		return p.Name
	}
	return "part " + strconv.Itoa(i+1)
}

// unitOf is the unit that tells whether a part is measured with spoons and jugs
// of one system or another: the one it was written in, or for per cent the one
// that the sheet is written in.
func (w *step) unitOf(p finish.Part) measure.VolumeUnit {
	switch {
	case p.Unit != "":
		return p.Unit
	case w.Notation.System == measure.Metric:
		return measure.UnitMillilitre
	}
	return w.builder.Plan.Units.Gallon.Volume(measure.UnitFluidOunce)
}

// exactPart is how much of a part there should be, fine enough to compare with
// what is measured.
func (w *step) exactPart(p *finish.Portion) string {
	if p.Weighed {
		return w.Notation.NumberTrimmed(p.Grams, 1) + " g"
	}
	return w.exactVolume(p.Volume, w.unitOf(p.Part))
}

// exactVolume is a volume in the largest of the system's units of which there is
// one: gallons, fluid ounces and teaspoons, or litres and millilitres.
func (w *step) exactVolume(v measure.Volume, unit measure.VolumeUnit) string {
	units := []measure.VolumeUnit{measure.UnitLitre, measure.UnitMillilitre}
	switch {
	case finish.IsUSUnit(unit):
		units = []measure.VolumeUnit{measure.UnitGallon, measure.UnitFluidOunce, measure.UnitTeaspoon}
	case unit != measure.UnitLitre && unit != measure.UnitMillilitre:
		units = []measure.VolumeUnit{measure.UnitImperialGallon, measure.UnitImperialFluidOunce, measure.UnitMillilitre}
	}
	last := len(units) - 1
	for i, u := range units {
		if n := v.In(u); i == last || n.Cmp(measure.NumberFromInt(1)) >= 0 {
			places := int32(2)
			if i == 0 {
				places = 3
			}
			return w.Notation.NumberTrimmed(n, places) + " " + u.Text()
		}
	}
	return ""
}

// offText is by how much a part is off once it is measured.
func (w *step) offText(off measure.Number) string {
	size := w.Notation.NumberTrimmed(off.Abs().Mul(measure.NumberFromInt(100)), 1) + " %"
	switch {
	case off.IsZero():
		return "exact"
	case size == "0 %":
		return "under 0.1 % off"
	case off.Sign() < 0:
		return size + " too little"
	}
	return size + " too much"
}
