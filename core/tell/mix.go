package tell

import (
	"slices"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"

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
		parts := w.Mix
		if w.recipe.isOfCan = finish.IsAllShared(parts); w.recipe.isOfCan {
			parts = append(slices.Clip(parts), w.fromTheCan())
		}
		w.recipe.mix, problems, w.recipe.ok = finish.MixOf(parts)
		w.Report(w.At+"/mix", problems)
	}
	return w.recipe.mix, w.recipe.ok
}

// recipe is the mix of a step once it is worked out.
// isOfCan tells that its parts are shares of the product in the can, which the
// plan need not name: a tint of so much per cent.
type recipe struct {
	mix         finish.Mix
	ok, isOfCan bool
}

// fromTheCan is the product that the parts are shares of, in any amount.
func (w *step) fromTheCan() finish.Part {
	unit := measure.UnitLitre
	if w.Notation.System == measure.FeetInches {
		unit = w.gallon()
	}
	return finish.Part{Name: w.called() + " from the can", Amount: measure.NumberFromInt(1), Unit: unit}
}

// mixer is the step whose recipe the step goes by: its own, or where it has none
// that of the step it is bought with.
func (w *step) mixer() *step {
	if len(w.Mix) == 0 && w.owner != nil {
		return w.owner
	}
	return w
}

// canShare is the share of the step's product that its cans hold, and what that
// is: all of it, or the main part of its mix.
func (w *step) canShare() (share measure.Number, name string) {
	mix, ok := w.mixed()
	if !ok || mix.Main() < 0 {
		return measure.NumberFromInt(1), w.Name
	}
	main := mix.Portions[mix.Main()]
	if main.Name == "" || w.recipe.isOfCan {
		return main.Share, w.Name
	}
	return main.Share, main.Name + ", for “" + w.Name + "”"
}

// board is the mix for the step's sample board, none where nothing is mixed.
func (w *step) board() measure.Volume {
	if _, ok := w.mixer().mixed(); !ok {
		return measure.Volume{}
	}
	return w.Sample
}

// spareShare is the share of a mix that is made to spare: the step's own, or where it
// says nothing that of the step it is mixed with. Of what is not mixed nothing is
// made to spare.
func (w *step) spareShare() measure.Number {
	m := w.mixer()
	if _, ok := m.mixed(); !ok {
		return measure.Number{}
	}
	if w.Spare.Known {
		return w.Spare.Share
	}
	return m.Spare.Share
}

// withSpare is what is made for a need.
func (w *step) withSpare(need measure.Volume) measure.Volume {
	return need.Times(measure.NumberFromInt(1).Add(w.spareShare()))
}

// toMix is what has to be mixed by the recipe of the step, all that is bought
// with it and has no recipe of its own included, and what is to be kept of it.
// sum writes that out. known is false where nothing of it is.
func (w *step) toMix() (made measure.Volume, sum string, known bool) {
	users, parts, kept := w.users, []string(nil), []string(nil)
	if w.owner != w {
		users = []*step{w}
	}
	for _, user := range users {
		if user.mixer() != w {
			continue
		}
		if user.takes {
			made, known = made.Add(user.withSpare(user.boughtFor())), true
			parts = append(parts, user.needInSum()+user.buyWords())
		}
		if user.Keep.Litres.Sign() > 0 {
			made = made.Add(user.Keep)
			kept = append(kept, w.Notation.VolumeInSum(user.Keep)+" to keep")
		}
	}
	return made, strings.Join(append(parts, kept...), " + "), known
}

// mix is what one batch of a mix comes to, how much of every part is needed, how
// that is measured, and the label for the pot.
func (w *step) mix() {
	if m := w.mixer(); m != w {
		if mix, ok := m.mixed(); ok {
			w.sampleBoard(mix)
			w.out.Notes = append(w.out.Notes, "Mixed together with “"+m.Name+"”.")
		}
		w.label(nil)
		return
	}
	mix, ok := w.mixed()
	if !ok {
		if len(w.Mix) > 0 && w.out.Buy != "" {
			w.out.Notes = append(w.out.Notes, "The mix cannot be worked out yet, so the cans are counted as if nothing were mixed in.")
		}
		w.label(nil)
		return
	}
	w.Report(w.At+"/mix", mix.Remarks(w.Kind == finish.Glaze, job.Dries(&w.Step) == finish.Evaporates))
	if !w.recipe.isOfCan {
		w.batchFigure(mix)
	}
	w.sampleBoard(mix)
	need, sum, known := w.toMix()
	if !known || need.Litres.IsZero() {
		w.label(nil)
		return
	}
	made := mix.ScaledTo(need)
	w.madeFigure(made.Total, sum)
	w.inCans(mix)
	if !w.recipe.isOfCan {
		w.batches(mix, made.Total)
	}
	w.placing(mix, made.Total)
	w.out.Mix = w.measuredOut(made, true)
	w.toHave(made)
	w.label(&made)
}

// sampleBoard is the mix for the step's sample board.
func (w *step) sampleBoard(mix finish.Mix) {
	if w.Sample.Litres.IsZero() {
		return
	}
	board := mix.ScaledTo(w.Sample)
	w.out.Sample = w.measuredOut(board, false)
	w.toHave(board)
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
	spoons := w.exactVolume(mix.Total, measure.UnitTeaspoon)
	if counted := w.Notation.NumberTrimmed(mix.Total.In(measure.UnitTeaspoon), 2) + " tsp"; counted != spoons {
		sum += " = " + counted
	}
	millilitres := w.Notation.NumberTrimmed(mix.Total.In(measure.UnitMillilitre), 0) + " mL"
	text, other := spoons, millilitres
	if w.Notation.System == measure.Metric {
		text, other = millilitres, spoons
	}
	source := "1 US fl oz = 6 tsp (NIST Handbook 44, appendix C)."
	if w.Notation.Imperial {
		source = "1 US fl oz = 6 tsp, so 1 tsp = 4.929 mL (NIST Handbook 44, appendix C); imperial measures by the gallon of 4.546 09 L."
	}
	w.Figure(sheet.Figure{
		ID: w.id("mix"), Block: page.Finish, Label: "one batch of the mix", Value: page.Plain(mix.Total.Litres), Unit: "L", Text: text, Other: other,
		Working: sheet.Working{
			Rule: "The parts together. A weight is turned into a volume by its density; per cent are of all other parts together by volume.",
			Sum:  sum + " = " + spoons + " = " + millilitres, Source: source,
		},
	})
}

// inCans says what the cans of a mix are counted for.
func (w *step) inCans(mix finish.Mix) {
	if main := mix.Main(); main >= 0 && len(w.Cans) > 0 && len(mix.Portions) > 1 {
		p := &mix.Portions[main]
		w.out.Notes = append(w.out.Notes, "The cans are counted for “"+partName(p.Part, main)+"”, "+w.builder.Share(p.Share)+" of the mix; what is mixed into it stands on the list by itself.")
	}
}

// madeFigure is the mix to make, where that is not simply what the step takes.
func (w *step) madeFigure(made measure.Volume, sum string) {
	if w.takes && made.Litres.Cmp(w.product.Need.Litres) == 0 {
		return
	}
	w.Figure(sheet.Figure{
		ID: w.id("made"), Block: page.Finish, Label: "mix to make", Value: page.Plain(made.Litres), Unit: "L", Text: w.Notation.Volume(made), Other: w.Other.Volume(made),
		Working: sheet.Working{
			Rule:   "What is taken by all that is painted with it, so much more as is to be spare, and what is to be kept. Mix it all before you begin: a second mix seldom matches.",
			Sum:    sum + " = " + w.sumOf(made),
			Source: page.OfArithmetic,
		},
	})
}

// batches is how often the recipe goes into what is mixed. A mix that sets in the
// pail is made in so many batches, the last of them smaller; any other is made at
// once, so that what is mixed is what the cans were counted for.
func (w *step) batches(mix finish.Mix, made measure.Volume) {
	times := made.Litres.Quo(mix.Total.Litres)
	sum := w.Notation.VolumeInSum(made) + " ÷ " + w.Notation.VolumeInSum(mix.Total)
	if !w.PotLife.Known {
		text := w.Notation.NumberTrimmed(times, 1)
		w.Figure(sheet.Figure{ID: w.id("batches"), Block: page.Finish, Label: "times the recipe", Value: page.Plain(times), Text: text,
			Working: sheet.Working{Rule: "The mix to make, over what the recipe makes. Make it all in one pail before you start: two batches seldom match.",
				Sum: sum + " = " + text, Source: page.OfArithmetic}})
		return
	}
	if n, ok := mix.Batches(made); ok {
		w.Count(page.Finish, w.id("batches"), "batches of the mix", n, "",
			"The mix to make, over what the recipe makes; the last batch is as small as what is left. It sets in the pail: make each when the one before is used up.",
			sum+", rounded up", page.OfArithmetic)
	}
}

// mostBatches is more than anyone mixes; what takes more is not worked out.
const mostBatches = 1000

// placing is whether one batch of a mix that sets is on before it does.
func (w *step) placing(mix finish.Mix, made measure.Volume) {
	if !w.takes || !w.PotLife.Known {
		return
	}
	need, area := w.product.Need, w.product.Area
	rate := w.Rate
	if !w.RateKnown {
		rate = days.UsualRate(w.Kind, "")
	}
	batch := mix.Total
	if w.recipe.isOfCan { // it has no recipe to make one of
		batch = made
	}
	people := int64(w.builder.People())
	all := area.Times(measure.NumberFromInt(int64(w.Coats)))
	placed, problems, ok := finish.Placing{Batch: batch, Need: need, Area: all, Rate: rate.Times(measure.NumberFromInt(people)), Life: w.PotLife.Value}.Place()
	w.Report(w.At+"/potLife", problems)
	if !ok || placed.Batches > mostBatches {
		return
	}
	text := w.Notation.NumberTrimmed(placed.Minutes, 0) + " min"
	w.Figure(sheet.Figure{
		ID: w.id("placing"), Block: page.Finish, Label: "to put on one batch", Value: page.Plain(placed.Minutes), Unit: "min", Text: text,
		Working: sheet.Working{
			Rule: "The share of the area that one batch covers, over what is done in an hour. It has to be shorter than the mix stays workable.",
			Sum: w.Notation.Area(all) + " × " + w.Notation.VolumeInSum(batch) + " ÷ " + w.Notation.VolumeInSum(need) + " ÷ (" + w.Told(words.Say("{rate}", words.Of("rate", days.PerHour(rate)))) + " × " +
				page.Plural(people, "person", "people") + ") × 60 = " + text,
			Source: page.OfArithmetic,
		},
	})
	if len(problems) > 0 {
		if n, ok := made.Litres.Quo(placed.Most.Litres).Ceil(); ok {
			w.out.Notes = append(w.out.Notes, "Mix at most "+w.Notation.Volume(placed.Most)+" at a time, in "+page.Plural(n, "batch", "batches")+".")
		}
		return
	}
	w.out.Notes = append(w.out.Notes, "Each batch is on with "+w.Notation.NumberTrimmed(placed.Spare, 0)+" min to spare before it sets; mixing and washing out are not counted.")
}
