package steps

import (
	"slices"

	"ceilingwright/core/job/hours"

	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Recipe is the mix of a step as it was written, in its proportions, as far as it is
// Known: whether its step mixes anything, and all of it could be read. OfCan tells
// that its parts are shares of the product in the can, which the plan need not name: a
// tint of so much per cent. The can is then its last part.
type Recipe struct {
	Mix          mixing.Mix
	Known, OfCan bool
}

// readRecipes adds up the mix of each step, and finds what of it is made to spare.
func (w *work) readRecipes() {
	for i := range w.Plan.Steps {
		s, r := &w.Plan.Steps[i], &w.Finish.Steps[i].Recipe
		if len(s.Mix) == 0 || !s.MixWhole || !s.Kind.IsLiquid() {
			continue
		}
		parts := s.Mix
		if r.OfCan = mixing.IsAllShared(parts); r.OfCan {
			parts = append(slices.Clip(parts), w.fromTheCan(s.Kind))
		}
		var problems []problem.Problem
		r.Mix, problems, r.Known = mixing.MixOf(parts)
		w.Report(s.At+"/mix", problems)
	}
	for i := range w.Finish.Steps {
		w.Finish.Steps[i].Spare = w.spareShare(i)
	}
}

// fromTheCan is the product that the parts are shares of, in any amount.
func (w *work) fromTheCan(kind finish.Kind) mixing.Part {
	unit := measure.UnitLitre
	if w.isInFeet() {
		unit = w.Plan.Units.Gallon.Volume(measure.UnitGallon)
	}
	return mixing.Part{Paint: kind.Liquid() == finish.PaintOf, Amount: measure.NumberFromInt(1), Unit: unit}
}

// isInFeet tells whether the plan's own notation is in feet.
func (w *work) isInFeet() bool { return w.Plan.Units.Notation().System == measure.FeetInches }

// mixer is the step whose recipe a step goes by: its own, or where it has none that of
// the step it is bought with.
func (w *work) mixer(step int) int {
	if len(w.Plan.Steps[step].Mix) == 0 {
		return w.Finish.Steps[step].Owner
	}
	return step
}

// recipeFor is the recipe that a step goes by.
func (w *work) recipeFor(step int) *Recipe { return &w.Finish.Steps[w.mixer(step)].Recipe }

// spareShare is the share of a mix that is made to spare: the step's own, or where it
// says nothing that of the step it is mixed with. Of what is not mixed nothing is made
// to spare.
func (w *work) spareShare(step int) measure.Number {
	if !w.recipeFor(step).Known {
		return measure.Number{}
	}
	if s := &w.Plan.Steps[step]; s.Spare.Known {
		return s.Spare.Share
	}
	return w.Plan.Steps[w.mixer(step)].Spare.Share
}

// Mixed is what is mixed for a step, none where nothing is or its amount is not known.
// With is the step it is mixed together with, itself where it is mixed by itself.
//
// Sample is the mix of a sample board, Made that of all it is mixed for, as the Parts
// come to. Batches is how often the recipe goes into that, Counted where it sets in
// the pail and is made in whole batches. Placed is how one of them goes on, as far as
// it is IsPlaced, at Rate by one person; it is less than is mixed at once where it is
// Late.
type Mixed struct {
	With            int
	Sample, Made    mixing.Mix
	Parts           []Part
	Times           measure.Number
	Batches         int64
	Counted         bool
	Batch           measure.Volume
	Placed          mixing.Placed
	IsPlaced, Late  bool
	Coats           measure.Area
	Rate            measure.Area
	Lines, OfSample []MixLine
}

// mix works out what is mixed for a step, what of it has to be at hand, and how it is
// measured.
func (w *work) mix(step int) {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	m, recipe := &t.Mixed, w.recipeFor(step)
	m.With = w.mixer(step)
	if !recipe.Known {
		return
	}
	if m.With == step {
		w.Report(s.At+"/mix", recipe.Mix.Remarks(s.Kind == finish.Glaze, Dries(s) == finish.Evaporates))
	}
	if !s.Sample.Litres.IsZero() {
		m.Sample = recipe.Mix.ScaledTo(s.Sample)
		m.OfSample = w.measuredOut(step, &m.Sample)
		w.toHave(step, &m.Sample)
	}
	if m.With != step {
		return
	}
	m.Parts = w.toMix(step)
	need := measure.Volume{}
	for _, p := range m.Parts {
		need = need.Add(p.Amount)
	}
	if need.Litres.IsZero() {
		return
	}
	m.Made = recipe.Mix.ScaledTo(need)
	if m.Times = need.Litres.Quo(recipe.Mix.Total.Litres); s.PotLife.Known {
		m.Batches, m.Counted = recipe.Mix.Batches(need)
	}
	w.place(step)
	m.Lines = w.measuredOut(step, &m.Made)
	w.checkMeasured(step)
	w.toHave(step, &m.Made)
}

// toMix is what has to be mixed by the recipe of a step, all that is bought with it and
// has no recipe of its own included, and last what is to be kept of it: none where it is
// not known what any of them takes.
func (w *work) toMix(step int) (parts []Part) {
	users, known := w.Finish.Steps[step].Users, false
	if w.Finish.Steps[step].Owner != step {
		users = []int{step}
	}
	var kept []Part
	for _, user := range users {
		if w.mixer(user) != step {
			continue
		}
		if w.Finish.Steps[user].Known {
			known = true
			parts = append(parts, Part{Step: user, As: ForStep, Amount: w.Finish.Steps[user].WithSpare(&w.Plan.Steps[user])})
		}
		if keep := w.Plan.Steps[user].Keep; keep.Litres.Sign() > 0 {
			kept = append(kept, Part{Step: user, As: ToKeep, Amount: keep})
		}
	}
	if !known {
		return nil
	}
	return append(parts, kept...)
}

// mostBatches is more than anyone mixes; what takes more is not worked out.
const mostBatches = 1000

// place works out whether one batch of a mix that sets is on before it does.
func (w *work) place(step int) {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	m := &t.Mixed
	if !t.Known || !s.PotLife.Known {
		return
	}
	if m.Rate = s.Rate; !s.RateKnown {
		m.Rate = days.UsualRate(s.Kind, "")
	}
	if m.Batch = t.Recipe.Mix.Total; t.Recipe.OfCan { // it has no recipe to make one of
		m.Batch = m.Made.Total
	}
	m.Coats = t.Product.Area.Times(measure.NumberFromInt(int64(s.Coats)))
	placed, problems, ok := mixing.Placing{
		Batch: m.Batch, Need: t.Product.Need, Area: m.Coats, Rate: m.Rate.Times(measure.NumberFromInt(int64(hours.People(&w.Plan.Days)))), Life: s.PotLife.Value,
	}.Place()
	w.Report(s.At+"/potLife", problems)
	m.Placed, m.IsPlaced, m.Late = placed, ok && placed.Batches <= mostBatches, len(problems) > 0
}

// MixLine is one part of a mix, scaled: how much of it there should be, and where it
// Can be measured, how it is measured out, with the kit of the plan where that is
// OfKit, else with what is usual.
type MixLine struct {
	Part     Ingredient
	Exact    mixing.Quantity
	Measured mixing.Measured
	Can      bool
	OfKit    bool
	Least    mixing.Measure // the smallest of what is usual
}

// measuredOut is a mix as it is measured out, line by line.
func (w *work) measuredOut(step int, mix *mixing.Mix) []MixLine {
	lines := make([]MixLine, len(mix.Portions))
	for i := range mix.Portions {
		p, l := &mix.Portions[i], &lines[i]
		unit := w.unitOf(&p.Part)
		l.Part = w.ingredient(step, mix, i)
		l.Exact = p.Exactly(unit)
		l.Measured, l.OfKit, l.Can = w.measure(p, unit)
		l.Least = mixing.LeastUsual(unit, p.Weighed)
	}
	return lines
}

// measure is how a portion is measured: with all of the kit of the plan that can
// measure it, else with what is usual.
func (w *work) measure(p *mixing.Portion, unit measure.VolumeUnit) (out mixing.Measured, ofKit, ok bool) {
	amount, kit, own := p.Volume.Litres, mixing.UsualMeasures(unit), w.Finish.jugs
	if p.Weighed {
		amount, kit, own = p.Grams, []mixing.Measure{mixing.UsualScale()}, w.Finish.scales
	}
	if out, ok = own.Out(amount, unit); ok {
		return out, true, true
	}
	out, ok = mixing.MeasuringWith(kit, p.Weighed).Out(amount, unit)
	return out, false, ok
}

// unitOf is the unit that tells whether a part is measured with spoons and jugs of one
// system or another: the one it was written in, or for per cent the one that the plan
// is written in.
func (w *work) unitOf(p *mixing.Part) measure.VolumeUnit {
	switch {
	case p.Unit != "":
		return p.Unit
	case !w.isInFeet():
		return measure.UnitMillilitre
	}
	return w.Plan.Units.Gallon.Volume(measure.UnitFluidOunce)
}

// mostOff is by how much a part may be off once it is measured, from the method of
// scaling recipes: show the error above 2 %. A choice.
var mostOff = measure.NumberFromFraction(2, 100)

// checkMeasured points out the parts that are more than 2 % off once measured.
func (w *work) checkMeasured(step int) {
	s := &w.Plan.Steps[step]
	for i := range w.Finish.Steps[step].Mixed.Lines {
		l, at := &w.Finish.Steps[step].Mixed.Lines[i], s.At+"/mix"
		if i < len(s.Mix) {
			at += problem.Index(i) + "/amount"
		}
		part, exact, off := words.Of("part", l.Part.Called()), words.Of("exact", l.Exact), l.Measured.Off
		size, out := words.PerCent("off", off.Abs()), words.Of("measured", l.Measured)
		p := problem.Problem{Severity: problem.Caution, Do: words.Say("Use a finer measure, or make an amount that measures even.")}
		switch {
		case !l.Can:
			continue
		case l.Measured.Amount.IsZero() && !off.IsZero():
			p.What = words.Say("“{part}” should be {exact}, which is less than can be measured.", part, exact)
			p.Do = words.Say("Use a finer measure, or make more of the mix.")
		case off.Abs().Cmp(mostOff) <= 0:
			continue
		case off.Sign() < 0:
			p.What = words.Say("“{part}” should be {exact} and is measured as {measured}: {off} too little.", part, exact, out, size)
		default:
			p.What = words.Say("“{part}” should be {exact} and is measured as {measured}: {off} too much.", part, exact, out, size)
		}
		w.Report(at, []problem.Problem{p})
	}
}
