package sheet

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
)

// cans is the cheapest choice of cans for the step and all that are bought with
// it.
func (w *step) cans() {
	need, what, sum, known := w.wanted()
	if !known {
		return
	}
	choose, oneBatch := finish.CheapestCans, w.isOneBatch()
	if oneBatch {
		choose = finish.OneBatch
	}
	purchase, problems, ok := choose(need, w.Cans)
	w.report(w.At+"/cans", problems)
	if !ok || purchase.Cans == 0 {
		return
	}
	w.out.Buy = canList(purchase, w.Cans)
	w.out.LeftOver = w.n.Volume(purchase.Left) + " left over"
	sum += w.out.Buy + " hold " + w.n.Volume(purchase.Bought) + " for " + w.n.Volume(need)
	if purchase.Priced {
		sum += ", " + purchase.Price.StringFixed(2) + " in all"
	}
	w.figure(Figure{
		ID: w.id("cans"), Block: blockFinish, Label: "cans to buy", Value: strconv.FormatInt(purchase.Cans, 10), Text: w.out.Buy,
		Working: Working{Rule: canRule(purchase.Priced, oneBatch), Sum: sum, Source: "Exact search. What a can holds is its net contents on the label, not its name."},
	})
	detail := w.n.Volume(need) + " needed, " + w.out.LeftOver
	if oneBatch && purchase.Cans > 1 {
		detail += ", all of one batch"
		w.out.Notes = append(w.out.Notes, "Ask for the same batch number on every can, and stir them together in one pail before you begin.")
	}
	w.buy(what, w.out.Buy, detail)
	w.bought(cansBought(what, purchase, w.Cans)...)
}

func canRule(priced, oneBatch bool) string {
	switch {
	case oneBatch && priced:
		return "From one batch: cans of one size alone, the size that costs least in all, then leaves the least over. Only cans of one size can be asked for with one batch number."
	case oneBatch:
		return "From one batch: cans of one size alone, the size that leaves the least over. Only cans of one size can be asked for with one batch number."
	case priced:
		return "Whole cans that hold the need at the lowest price, then with the least left over, then the fewest. Every choice is compared."
	}
	return "Whole cans that hold the need and leave the least over."
}

// wanted is what the cans of the step have to hold: what it and the steps bought
// with it take, at best, as said or at worst as each is bought for, their sample
// boards, and what is to be kept. sum writes that out where it is more than one number. known is
// false where nothing of it is.
func (w *step) wanted() (need measure.Volume, what, sum string, known bool) {
	parts := []string(nil)
	for _, user := range w.users {
		if !user.takes {
			if len(w.users) > 1 {
				w.out.Notes = append(w.out.Notes, "No cans are chosen yet: what “"+user.Name+"” takes is not known.")
			}
			return measure.Volume{}, "", "", false
		}
		one, name := user.canned(user.boughtFor())
		if user == w {
			what = name
		}
		need, known = need.Add(one), true
		parts = append(parts, w.n.Volume(one)+user.buyWords())
		if board := user.boardInCans(); board.Litres.Sign() > 0 {
			need = need.Add(board)
			parts = append(parts, w.n.Volume(board)+" for the sample board")
		}
	}
	if what == "" {
		what = w.Name
	}
	if known && w.Keep.Litres.Sign() > 0 {
		share, _ := w.canShare()
		kept := w.Keep.Times(share)
		need = need.Add(kept)
		parts = append(parts, w.n.Volume(kept)+" to keep")
	}
	if len(parts) > 1 || len(parts) == 1 && w.BuyFor != plan.Likely {
		sum = strings.Join(parts, " + ") + " = " + w.n.Volume(need) + "; "
	}
	return need, what, sum, known
}

// buyWords says which of its needs a step is bought for, where that is not the
// likely one.
func (w *step) buyWords() string {
	switch w.BuyFor {
	case plan.Lean:
		return " at best"
	case plan.Rich:
		return " at worst"
	}
	return ""
}

// isOneBatch tells whether one of the steps bought together asks for one batch.
func (w *step) isOneBatch() bool {
	return slices.ContainsFunc(w.users, func(user *step) bool { return user.OneBatch })
}

func canList(p finish.Purchase, cans []finish.Can) string {
	text := ""
	for i, n := range p.Counts {
		if n == 0 {
			continue
		}
		if text != "" {
			text += " + "
		}
		text += strconv.FormatInt(n, 10) + " × " + cans[i].Label()
	}
	return text
}
