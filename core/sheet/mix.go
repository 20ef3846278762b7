package sheet

import (
	"slices"
	"strconv"

	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// mixed is the mix of the step in the proportions of its recipe, with what is
// wrong with it said the first time. ok is false where the step mixes nothing, or
// nothing can be mixed.
func (w *step) mixed() (mix finish.Mix, ok bool) {
	if len(w.Mix) == 0 || !w.MixWhole {
		return mix, false
	}
	if w.recipe == nil {
		w.recipe = &recipe{}
		var problems []problem.Problem
		w.recipe.mix, problems, w.recipe.ok = finish.MixOf(w.Mix)
		w.report(w.At+"/mix", problems)
	}
	return w.recipe.mix, w.recipe.ok
}

// recipe is the mix of a step once it is worked out.
type recipe struct {
	mix finish.Mix
	ok  bool
}

// mixer is the step whose recipe the step goes by: its own, or where it has none
// that of the step it is bought with.
func (w *step) mixer() *step {
	if len(w.Mix) == 0 && w.owner != nil {
		return w.owner
	}
	return w
}

// canned is how much of a need the cans of the step have to hold, and of what:
// of a mix, its main part alone and with what is made to spare, since the rest is
// put in on the job.
func (w *step) canned(need measure.Volume) (measure.Volume, string) {
	m := w.mixer()
	share, name := m.canShare()
	return m.withSpare(need).Times(share), name
}

// canShare is the share of the step's product that its cans hold, and what that
// is: all of it, or the main part of its mix.
func (w *step) canShare() (share measure.Number, name string) {
	mix, ok := w.mixed()
	if !ok || mix.Main() < 0 {
		return measure.NumberFromInt(1), w.Name
	}
	main := mix.Portions[mix.Main()]
	if main.Name == "" {
		return main.Share, w.Name
	}
	return main.Share, main.Name + ", for “" + w.Name + "”"
}

// boardInCans is how much of a mix's sample board comes out of the cans.
func (w *step) boardInCans() measure.Volume {
	if _, ok := w.mixed(); !ok {
		return measure.Volume{}
	}
	share, _ := w.canShare()
	return w.Sample.Times(share)
}

// withSpare is the mix to make for a need; of what is not mixed nothing is made
// to spare.
func (w *step) withSpare(need measure.Volume) measure.Volume {
	if _, ok := w.mixed(); !ok || !w.Spare.Known {
		return need
	}
	return need.Times(measure.NumberFromInt(1).Add(w.Spare.Share))
}

// toMix is what has to be mixed by the recipe of the step, all that is bought
// with it and has no recipe of its own included, and what is to be kept. sum
// writes that out. known is false where nothing of it is.
func (w *step) toMix() (made measure.Volume, sum string, known bool) {
	names, users := 0, w.users
	if w.owner != w {
		users = []*step{w}
	}
	for _, user := range users {
		if user.takes && user.mixer() == w {
			need := user.boughtFor()
			made, known, names = made.Add(need), true, names+1
			if names > 1 {
				sum += " + "
			}
			sum += w.n.Volume(need)
		}
	}
	if names > 1 {
		sum = "(" + sum + ")"
	}
	made = w.withSpare(made)
	if w.Spare.Known {
		sum += " × (1 + " + w.builder.share(w.Spare.Share) + ")"
	}
	if known && w.owner == w && w.Keep.Litres.Sign() > 0 {
		made = made.Add(w.Keep)
		sum += " + " + w.n.Volume(w.Keep) + " to keep"
	}
	return made, sum, known
}

// mix is what one batch of a mix comes to, how much of every part is needed, how
// that is measured, and the label for the pot.
func (w *step) mix() {
	if m := w.mixer(); m != w {
		if _, ok := m.mixed(); ok {
			w.out.Notes = append(w.out.Notes, "Mixed together with “"+m.Name+"”.")
		}
		w.label(nil)
		return
	}
	mix, ok := w.mixed()
	if !ok {
		w.label(nil)
		return
	}
	w.report(w.At+"/mix", mix.Remarks(w.Kind == finish.Glaze, dries(&w.Step) == finish.Evaporates))
	w.batchFigure(mix)
	if !w.Sample.Litres.IsZero() {
		board := mix.ScaledTo(w.Sample)
		w.out.Sample = w.measuredOut(board, false)
		w.toHave(board)
	}
	need, sum, known := w.toMix()
	if !known || need.Litres.IsZero() {
		w.label(nil)
		return
	}
	made := mix.ScaledTo(need)
	w.madeFigure(made.Total, sum)
	w.inCans(mix)
	w.batches(mix, made.Total)
	w.placing(mix)
	w.out.Mix = w.measuredOut(made, true)
	w.toHave(made)
	w.label(&made)
}

// batchFigure is what the parts as they were written come to.
func (w *step) batchFigure(mix finish.Mix) {
	sum := ""
	for i, part := range w.Mix {
		if i > 0 {
			sum += " + "
		}
		sum += part.Text()
		if part.Name != "" {
			sum += " " + part.Name
		}
	}
	spoons := w.n.NumberTrimmed(mix.Total.In(measure.UnitTeaspoon), 2) + " tsp"
	millilitres := w.n.NumberTrimmed(mix.Total.In(measure.UnitMillilitre), 0) + " mL"
	text, other := spoons, millilitres
	if w.n.System == measure.Metric {
		text, other = millilitres, spoons
	}
	source := "1 US fl oz = 6 tsp (NIST Handbook 44, appendix C)."
	if w.n.Imperial {
		source = "1 US fl oz = 6 tsp, so 1 tsp = 4.929 mL (NIST Handbook 44, appendix C); imperial measures by the gallon of 4.546 09 L."
	}
	w.figure(Figure{
		ID: w.id("mix"), Block: blockFinish, Label: "one batch of the mix", Value: plain(mix.Total.Litres), Unit: "L", Text: text, Other: other,
		Working: Working{
			Rule: "The parts together. A weight is turned into a volume by its density; per cent are of all other parts together by volume.",
			Sum:  sum + " = " + spoons + " = " + millilitres, Source: source,
		},
	})
}

// inCans says what the cans of a mix are counted for.
func (w *step) inCans(mix finish.Mix) {
	if main := mix.Main(); main >= 0 && len(w.Cans) > 0 && len(mix.Portions) > 1 {
		p := &mix.Portions[main]
		w.out.Notes = append(w.out.Notes, "The cans are counted for “"+partName(p.Part, main)+"”, "+w.builder.share(p.Share)+" of the mix; what is mixed into it stands on the list by itself.")
	}
}

// madeFigure is the mix to make, where that is not simply what the step takes.
func (w *step) madeFigure(made measure.Volume, sum string) {
	if w.takes && made.Litres.Cmp(w.product.Need.Litres) == 0 {
		return
	}
	w.figure(Figure{
		ID: w.id("made"), Block: blockFinish, Label: "mix to make", Value: plain(made.Litres), Unit: "L", Text: w.n.Volume(made), Other: w.other.Volume(made),
		Working: Working{
			Rule:   "What is taken by all that is painted with it, so much more as is to be spare, and what is to be kept. Mix it all before you begin: a second mix seldom matches.",
			Sum:    sum + " = " + w.n.Volume(made),
			Source: ofArithmetic,
		},
	})
}

// batches is how many batches, as the recipe has it, that is.
func (w *step) batches(mix finish.Mix, made measure.Volume) {
	n, ok := mix.Batches(made)
	if !ok {
		return
	}
	rule := "The mix to make, in whole batches. Stir them together in one pail before you start: two batches seldom match."
	if w.PotLife.Known {
		rule = "The mix to make, in whole batches. It sets in the pail: make each when the one before is used up."
	}
	w.count(blockFinish, w.id("batches"), "batches of the mix", n, "", rule,
		w.n.Volume(made)+" ÷ "+w.n.Volume(mix.Total)+", rounded up", ofArithmetic)
}

// mostBatches is more than anyone mixes; what takes more is not worked out.
const mostBatches = 1000

// placing is whether one batch of a mix that sets is on before it does.
func (w *step) placing(mix finish.Mix) {
	if !w.takes || !w.PotLife.Known {
		return
	}
	need, area := w.product.Need, w.product.Area
	rate := w.Rate
	if !w.RateKnown {
		rate = days.UsualRate(w.Kind, "")
	}
	people := int64(w.builder.people())
	all := area.Times(measure.NumberFromInt(int64(w.Coats)))
	placed, problems, ok := finish.Placing{Batch: mix.Total, Need: need, Area: all, Rate: rate.Times(measure.NumberFromInt(people)), Life: w.PotLife.Value}.Place()
	w.report(w.At+"/potLife", problems)
	if !ok || placed.Batches > mostBatches {
		return
	}
	text := w.n.NumberTrimmed(placed.Minutes, 0) + " min"
	w.figure(Figure{
		ID: w.id("placing"), Block: blockFinish, Label: "to put on one batch", Value: plain(placed.Minutes), Unit: "min", Text: text,
		Working: Working{
			Rule: "The share of the area that one batch covers, over what is done in an hour. It has to be shorter than the mix stays workable.",
			Sum: w.n.Area(all) + " × " + w.n.Volume(mix.Total) + " ÷ " + w.n.Volume(need) + " ÷ (" + w.builder.perHour(rate) + " × " +
				plural(people, "person", "people") + ") = " + text,
			Source: ofArithmetic,
		},
	})
	if len(problems) > 0 {
		w.out.Notes = append(w.out.Notes, "Mix at most "+w.n.Volume(placed.Most)+" at a time, in "+plural(placed.Batches, "batch", "batches")+".")
		return
	}
	w.out.Notes = append(w.out.Notes, "Each batch is on with "+w.n.NumberTrimmed(placed.Spare, 0)+" min to spare before it sets; mixing and washing out are not counted.")
}

// mostOff is by how much a part may be off once it is measured, from the method
// of scaling recipes: show the error above 2 %. A choice.
var mostOff = measure.NumberFromFraction(2, 100)

// mostFills is how often one measure is filled before somebody loses count. A
// choice.
const mostFills = 24

// measuredOut is a mix line by line: each part as it should be and as the kit
// measures it. With say, what is measured badly is pointed out.
func (w *step) measuredOut(mix finish.Mix, say bool) []MixLine {
	lines, usual := make([]MixLine, 0, len(mix.Portions)), []string(nil)
	for i := range mix.Portions {
		p := &mix.Portions[i]
		line := MixLine{Name: partName(p.Part, i), Exact: w.exactPart(p)}
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
		w.out.Notes = append(w.out.Notes, "Measured down to "+listed(usual)+", as is usual. List the spoons, jugs and scales at hand, and the mix is measured with those.")
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
func (w *step) measuredBadly(i int, line MixLine, out finish.Measured, own bool) {
	at := w.At + "/mix" + problem.Index(i) + "/amount"
	switch {
	case out.Amount.IsZero() && !out.Off.IsZero():
		w.report(at, []problem.Problem{{Severity: problem.Caution,
			What: "“" + line.Name + "” should be " + line.Exact + ", which is less than can be measured.",
			Do:   "Use a finer measure, or make more of the mix."}})
	case out.Off.Abs().Cmp(mostOff) > 0:
		w.report(at, []problem.Problem{{Severity: problem.Caution,
			What: "“" + line.Name + "” should be " + line.Exact + " and is measured as " + line.Measured + ": " + line.Error + ".",
			Do:   "Use a finer measure, or make an amount that measures even."}})
	}
	if own && out.Most > mostFills {
		w.out.Notes = append(w.out.Notes, "For “"+line.Name+"” one measure is filled "+strconv.FormatInt(out.Most, 10)+" times: with a larger jug it is harder to lose count.")
	}
}

// measure is how a portion is measured: with the kit of the plan where it has
// something for it, else with what is usual.
func (w *step) measure(p *finish.Portion) (out finish.Measured, own, ok bool) {
	unit, amount := w.unitOf(p.Part), p.Volume.Litres
	if p.Weighed {
		amount = p.Grams
	}
	if kit := finish.Suited(w.builder.plan.Finish.Kit, p.Weighed, unit); len(kit) > 0 {
		if out, ok = finish.MeasureOut(amount, kit); ok {
			return out, true, true
		}
	}
	kit := finish.UsualMeasures(unit)
	if p.Weighed {
		kit = []finish.Measure{finish.UsualScale()}
	}
	out, ok = finish.MeasureOut(amount, kit)
	return out, false, ok
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
	case w.n.System == measure.Metric:
		return measure.UnitMillilitre
	}
	return w.builder.plan.Units.Gallon.Volume(measure.UnitFluidOunce)
}

// exactPart is how much of a part there should be, fine enough to compare with
// what is measured.
func (w *step) exactPart(p *finish.Portion) string {
	if p.Weighed {
		return w.n.NumberTrimmed(p.Grams, 1) + " g"
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
			return w.n.NumberTrimmed(n, places) + " " + u.Text()
		}
	}
	return ""
}

// offText is by how much a part is off once it is measured.
func (w *step) offText(off measure.Number) string {
	size := w.n.NumberTrimmed(off.Abs().Mul(measure.NumberFromInt(100)), 1) + " %"
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

// ingredient is a part of mixes that has to be at hand: all of one name
// together, with the steps it is for.
type ingredient struct {
	name   string
	part   finish.Portion
	volume measure.Volume
	grams  measure.Number
	unit   measure.VolumeUnit
	steps  []string
}

// toHave notes the parts of a mix that have to be at hand: all but water, and
// but the main part where that is bought in cans.
func (w *step) toHave(made finish.Mix) {
	main, canned := made.Main(), len(w.owner.Cans) > 0
	for i := range made.Portions {
		p := &made.Portions[i]
		if p.IsWater() || canned && i == main {
			continue
		}
		w.builder.have(ingredient{name: p.Name, part: *p, volume: p.Volume, grams: p.Grams, unit: w.unitOf(p.Part), steps: []string{w.Name}}, i)
	}
}

// have adds to the ingredient of the same name that is measured the same way,
// or begins one.
func (b *builder) have(more ingredient, place int) {
	for i := range b.ingredients {
		if there := &b.ingredients[i]; more.name != "" && there.name == more.name && there.part.Weighed == more.part.Weighed {
			there.volume, there.grams = there.volume.Add(more.volume), there.grams.Add(more.grams)
			if last := there.steps[len(there.steps)-1]; last != more.steps[0] {
				there.steps = append(there.steps, more.steps...)
			}
			return
		}
	}
	if more.name == "" {
		more.name = "Part " + strconv.Itoa(place+1) + " of “" + more.steps[0] + "”"
	}
	b.ingredients = append(b.ingredients, more)
}

// ingredientsToHave puts the parts of mixes on the shopping list, after what is
// bought in cans.
func (b *builder) ingredientsToHave() {
	for i := range b.ingredients {
		g := &b.ingredients[i]
		w := step{builder: b}
		amount := w.exactVolume(g.volume, g.unit)
		if g.part.Weighed {
			amount = b.n.NumberTrimmed(g.grams, 1) + " g"
		}
		quoted := make([]string, len(g.steps))
		for k, name := range g.steps {
			quoted[k] = "“" + name + "”"
		}
		b.buy(g.name, amount, "to mix into "+listed(quoted))
	}
}

// unpricedParts says that what is mixed in has no blank for a price.
func (b *builder) unpricedParts() {
	if len(b.ingredients) == 0 {
		return
	}
	names := make([]string, len(b.ingredients))
	for i := range b.ingredients {
		names[i] = b.ingredients[i].name
	}
	b.report("/price", []problem.Problem{{Severity: problem.Caution,
		What: "What is mixed in has no price of its own and is not in the price: " + listed(names) + ".",
		Do:   "Count it in the price of the cans it is mixed into, or in what is added for the unforeseen."}})
}
