package steps

import (
	"slices"

	"ceilingwright/core/air"
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Finish is what the steps take and are bought in, step by step. ToHave are the parts
// of mixes that have to be at hand.
type Finish struct {
	Steps  []Taken
	ToHave []Ingredient

	jugs, scales *mixing.Measuring // the measures at hand
}

// Taken is what a step takes, as far as it is Known. Spread is the rate of what is put
// on: as typed, or what the dry film asks for. Beyond is sized twice, past so much of
// Stops where sections end.
//
// Owner is the step whose product it is, itself where it is bought for itself; Users
// are all steps of the product, where it owns it. Packs is what is bought for the
// step: Cans as far as it is a liquid.
type Taken struct {
	Spread  finish.Spread
	Beyond  measure.Area
	Stops   measure.Length
	Product finish.Product
	Needs   finish.Needs
	Known   bool
	Owner   int
	Users   []int
	Spare   measure.Number // the share of its mix that is made to spare
	Thinner measure.Volume
	Recipe  Recipe
	Cans    Cans
	Mixed   Mixed
	Packs   []Pack
	Leaf    Laid
}

// beginFinish is the finish with nothing taken yet, each step bought for itself.
func (w *work) beginFinish() {
	w.Finish = Finish{Steps: make([]Taken, len(w.Plan.Steps))}
	for i := range w.Finish.Steps {
		w.Finish.Steps[i].Owner = i
	}
}

// isSpread finds the rate of a step and tells whether all is known that its take-off
// needs.
func (w *work) isSpread(step int) bool {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	if !s.Kind.IsLiquid() {
		return false
	}
	known := s.SpreadKnown
	if t.Spread = s.Spread; s.ByDryFilm && s.DryFilmKnown {
		var problems []problem.Problem
		t.Spread, problems, known = finish.SpreadFromDryFilm(finish.DryCoat{Film: s.DryFilm, Solids: s.Solids.Share, Thinned: s.Thinned.Share})
		w.Report(s.At, problems)
	}
	return w.Covers[step].Known && s.Coats > 0 && known && s.LossKnown
}

// takeOff works out what a step takes, of what is sized twice too.
func (w *work) takeOff(step int) {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	t.Beyond, t.Stops = w.sizedTwice(step)
	product, problems, ok := finish.TakeOff(finish.Paint{
		Area: w.Covers[step].Area.Add(t.Beyond), Coats: int64(s.Coats), Spread: t.Spread, Loss: s.Loss, Thinned: s.Thinned.Share,
	})
	w.Report(s.At, problems)
	if ok {
		t.Product = product
		t.Needs, t.Known = finish.NeedsOf(product.Need, Vary(s))
	}
}

// UsedBy is what a step uses up, its thinner included. known is false where that could
// not be worked out.
func (f *Finish) UsedBy(step int) (used measure.Volume, known bool) {
	if step >= len(f.Steps) {
		return used, false
	}
	t := &f.Steps[step]
	return t.Product.Used(), t.Known
}

// Vary is how far the need of a step may be off: as typed, or as usual.
func Vary(s *plan.Step) finish.Vary {
	if s.Vary.Known {
		return finish.Vary{Share: s.Vary.Share, OfPaint: s.VaryOfPaint}
	}
	return finish.Vary{Share: finish.UsualVary, OfPaint: s.VaryOfPaint}
}

// shareMaterials finds which steps are bought together, each says of which earlier
// step its product is, and what is mixed for each.
func (w *work) shareMaterials() {
	for i := range w.Plan.Steps {
		s, t := &w.Plan.Steps[i], &w.Finish.Steps[i]
		if s.SameAs != "" && s.Kind.IsLiquid() {
			t.Owner = w.ownerOf(i)
		}
		owner := &w.Finish.Steps[t.Owner]
		owner.Users = append(owner.Users, i)
	}
}

// ownerOf is the step whose product a step is. One that is itself bought with another
// leads on to that.
func (w *work) ownerOf(step int) int {
	s := &w.Plan.Steps[step]
	earlier := slices.IndexFunc(w.Plan.Steps[:step], func(o plan.Step) bool { return o.ID == s.SameAs && o.Kind.IsLiquid() })
	if earlier >= 0 {
		return w.Finish.Steps[earlier].Owner
	}
	w.Remark(s.At+"/sameAs", problem.Stop,
		words.Say("No earlier step with a product of its own is called “{id}”, so “{step}” is bought for itself.", words.Name("id", problem.Name(s.SameAs)), words.Name("step", s.Name)),
		words.Say("Choose an earlier step again."))
	return step
}

// BoughtFor is the need that a step is bought for.
func (t *Taken) BoughtFor(s *plan.Step) measure.Volume {
	switch s.BuyFor {
	case plan.Lean:
		return t.Needs.Lean
	case plan.Rich:
		return t.Needs.Rich
	}
	return t.Needs.Likely
}

// WithSpare is what is made for the need that a step is bought for.
func (t *Taken) WithSpare(s *plan.Step) measure.Volume {
	return t.BoughtFor(s).Times(measure.NumberFromInt(1).Add(t.Spare))
}

// thin finds how much thinner to stir in, for the need the step is bought for: what is
// made of a mix to spare is thinned too, what is kept is not. It has to be at hand;
// water comes from the tap.
func (w *work) thin(step int) {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	if !t.Known || s.Thinned.Share.IsZero() {
		return
	}
	t.Thinner = t.WithSpare(s).Times(s.Thinned.Share)
	if s.Binder != air.Water && !t.Thinner.Litres.IsZero() {
		w.have(Ingredient{As: IsThinner, Step: t.Owner, StepName: w.Plan.Steps[t.Owner].Name, Volume: t.Thinner, Unit: w.unitOf(&mixing.Part{}), Steps: []int{step}})
	}
}

// Called is what is in the cans of a step: the step's own product, or the main part of
// its mix.
func (t *Taken) Called(s *plan.Step) words.Text {
	if t.Cans.Main != "" {
		return words.Say("{part}, for “{step}”", words.Name("part", t.Cans.Main), words.Name("step", s.Name))
	}
	return words.Say("{step}", words.Name("step", s.Name))
}
