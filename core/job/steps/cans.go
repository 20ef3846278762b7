package steps

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/price"
)

// Cans are the cheapest choice of cans for a step and all that are bought with it, as
// far as it is Known. They hold the Need that the Parts come to. Lacks is the step
// among several of which it is not known what it takes, −1 for none.
//
// Share is the share of the step's product that its cans hold: all of it, or the main
// part of its mix, which Main then names.
type Cans struct {
	Known, OneBatch bool
	finish.Purchase
	Parts []Part
	Lacks int
	Share measure.Number
	Main  string
}

// Part is an amount that is bought or mixed for a step.
type Part struct {
	Step   int
	As     PartKind
	Amount measure.Volume
}

// PartKind is what an amount is for.
type PartKind int

// What an amount is for: the step itself, its sample board, and what is kept for later.
const (
	ForStep PartKind = iota
	ForBoard
	ToKeep
)

// buyCans works out the thinner of a step, and the cans where it is bought for itself.
func (w *work) buyCans(step int) {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	w.thin(step)
	c := &t.Cans
	c.Share, c.Main = w.canShare(step)
	if c.Lacks = -1; t.Owner != step {
		return
	}
	for _, user := range t.Users {
		if !w.Finish.Steps[user].Known {
			if len(t.Users) > 1 {
				c.Lacks = user
			}
			return
		}
		c.OneBatch = c.OneBatch || w.Plan.Steps[user].OneBatch
	}
	choose := finish.CheapestCans
	if c.OneBatch {
		choose = finish.OneBatch
	}
	need := measure.Volume{}
	c.Parts = w.inCans(t.Users)
	for _, p := range c.Parts {
		need = need.Add(p.Amount)
	}
	purchase, problems, ok := choose(need, s.Cans)
	w.Report(s.At+"/cans", problems)
	if c.Known = ok && purchase.Cans > 0; !c.Known {
		return
	}
	c.Purchase = purchase
	for i, n := range purchase.Counts {
		if can := &s.Cans[i]; n > 0 {
			t.Packs = append(t.Packs, Pack{Group: price.Materials, As: Can, Count: n, Size: can.Size, Unit: can.Unit, Each: can.Price, Priced: can.Priced})
		}
	}
}

// inCans is what the cans of steps have to hold: what they take, as each is bought for,
// their sample boards, and last what is to be kept of each.
func (w *work) inCans(users []int) (parts []Part) {
	var kept []Part
	for _, user := range users {
		share, _ := w.canShare(user)
		s, boards := &w.Plan.Steps[user], measure.Volume{}
		if w.recipeFor(user).Known {
			boards = s.Sample
		}
		for _, p := range []Part{{user, ForStep, w.Finish.Steps[user].WithSpare(s)}, {user, ForBoard, boards}, {user, ToKeep, s.Keep}} {
			if p.Amount.Litres.Sign() <= 0 {
				continue
			}
			p.Amount = p.Amount.Times(share)
			if p.As == ToKeep {
				kept = append(kept, p)
			} else {
				parts = append(parts, p)
			}
		}
	}
	return slices.Concat(parts, kept)
}

// canShare is the share of a step's product that its cans hold, and the part of its mix
// that is by name, "" where that is what the step itself is called.
func (w *work) canShare(step int) (share measure.Number, name string) {
	r := w.recipeFor(step)
	if !r.Known || r.Mix.Main() < 0 {
		return measure.NumberFromInt(1), ""
	}
	main := &r.Mix.Portions[r.Mix.Main()]
	if r.OfCan {
		return main.Share, ""
	}
	return main.Share, main.Name
}
