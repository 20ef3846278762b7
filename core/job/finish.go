package job

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
	Thinner measure.Volume
	Recipe  Recipe
	Cans    Cans
	Mixed   Mixed
	Packs   []Pack
	Leaf    Laid
}

// BeginFinish is the finish with nothing taken yet, each step bought for itself.
func (j *Job) BeginFinish() {
	kit := j.Plan.Finish.Kit
	j.Finish = Finish{Steps: make([]Taken, len(j.Plan.Steps)), jugs: mixing.MeasuringWith(kit, false), scales: mixing.MeasuringWith(kit, true)}
	for i := range j.Finish.Steps {
		j.Finish.Steps[i].Owner = i
	}
}

// IsSpread finds the rate of a step and tells whether all is known that its take-off
// needs.
func (j *Job) IsSpread(step int) bool {
	s, t := &j.Plan.Steps[step], &j.Finish.Steps[step]
	if !s.Kind.IsLiquid() {
		return false
	}
	known := s.SpreadKnown
	if t.Spread = s.Spread; s.ByDryFilm && s.DryFilmKnown {
		var problems []problem.Problem
		t.Spread, problems, known = finish.SpreadFromDryFilm(finish.DryCoat{Film: s.DryFilm, Solids: s.Solids.Share, Thinned: s.Thinned.Share})
		j.Report(s.At, problems)
	}
	return j.Covers[step].Known && s.Coats > 0 && known && s.LossKnown
}

// TakeOff works out what a step takes, of what is sized twice too.
func (j *Job) TakeOff(step int) {
	s, t := &j.Plan.Steps[step], &j.Finish.Steps[step]
	t.Beyond, t.Stops = j.SizedTwice(step)
	product, problems, ok := finish.TakeOff(finish.Paint{
		Area: j.Covers[step].Area.Add(t.Beyond), Coats: int64(s.Coats), Spread: t.Spread, Loss: s.Loss, Thinned: s.Thinned.Share,
	})
	j.Report(s.At, problems)
	if ok {
		t.Product = product
		t.Needs, t.Known = finish.NeedsOf(product.Need, Vary(s))
	}
}

// UsedBy is what a step uses up, its thinner included. known is false where that could
// not be worked out.
func (j *Job) UsedBy(step int) (used measure.Volume, known bool) {
	if step >= len(j.Finish.Steps) {
		return used, false
	}
	t := &j.Finish.Steps[step]
	return t.Product.Used(), t.Known
}

// Vary is how far the need of a step may be off: as typed, or as usual.
func Vary(s *plan.Step) finish.Vary {
	if s.Vary.Known {
		return finish.Vary{Share: s.Vary.Share, OfPaint: s.VaryOfPaint}
	}
	return finish.Vary{Share: finish.UsualVary, OfPaint: s.VaryOfPaint}
}

// ShareMaterials finds which steps are bought together, each says of which earlier
// step its product is, and what is mixed for each.
func (j *Job) ShareMaterials() {
	for i := range j.Plan.Steps {
		s, t := &j.Plan.Steps[i], &j.Finish.Steps[i]
		if s.SameAs != "" && s.Kind.IsLiquid() {
			t.Owner = j.ownerOf(i)
		}
		owner := &j.Finish.Steps[t.Owner]
		owner.Users = append(owner.Users, i)
	}
}

// ownerOf is the step whose product a step is. One that is itself bought with another
// leads on to that.
func (j *Job) ownerOf(step int) int {
	s := &j.Plan.Steps[step]
	earlier := slices.IndexFunc(j.Plan.Steps[:step], func(o plan.Step) bool { return o.ID == s.SameAs && o.Kind.IsLiquid() })
	if earlier >= 0 {
		return j.Finish.Steps[earlier].Owner
	}
	j.Report(s.At+"/sameAs", []problem.Problem{{Severity: problem.Stop,
		What: words.Say("No earlier step with a product of its own is called “{id}”, so “{step}” is bought for itself.", words.Name("id", problem.Name(s.SameAs)), words.Name("step", s.Name)),
		Do:   words.Say("Choose an earlier step again.")}})
	return step
}

// BoughtFor is the need that a step is bought for.
func (j *Job) BoughtFor(step int) measure.Volume {
	needs := &j.Finish.Steps[step].Needs
	switch j.Plan.Steps[step].BuyFor {
	case plan.Lean:
		return needs.Lean
	case plan.Rich:
		return needs.Rich
	}
	return needs.Likely
}

// thin finds how much thinner to stir in, for the need the step is bought for: what is
// made of a mix to spare is thinned too, what is kept is not. It has to be at hand;
// water comes from the tap.
func (j *Job) thin(step int) {
	s, t := &j.Plan.Steps[step], &j.Finish.Steps[step]
	if !t.Known || s.Thinned.Share.IsZero() {
		return
	}
	t.Thinner = j.WithSpare(step, j.BoughtFor(step)).Times(s.Thinned.Share)
	if s.Binder != air.Water && !t.Thinner.Litres.IsZero() {
		j.have(Ingredient{As: IsThinner, Step: t.Owner, Volume: t.Thinner, Unit: j.unitOf(&mixing.Part{}), Steps: []int{step}})
	}
}
