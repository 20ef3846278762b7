package tell

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

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
	w.Report(w.At+"/cans", problems)
	if !ok || purchase.Cans == 0 {
		return
	}
	w.out.Buy = canList(purchase, w.Cans)
	w.out.LeftOver = w.Notation.Volume(purchase.Left) + " left over"
	sum += w.out.Buy + " = " + w.Notation.Volume(purchase.Bought) + priceOf(purchase, w.Cans)
	w.Figure(sheet.Figure{
		ID: w.id("cans"), Block: page.Finish, Label: "cans to buy", Value: strconv.FormatInt(purchase.Cans, 10), Text: w.out.Buy,
		Working: sheet.Working{Rule: canRule(purchase.Priced, oneBatch) + " Needed are " + w.Notation.Volume(need) + ".", Sum: sum, Source: "Exact search. What a can holds is its net contents on the label, not its name."},
	})
	detail := w.Notation.Volume(need) + " needed, " + w.out.LeftOver
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
// with it take, as each is bought for, their sample boards, and what is to be
// kept of each. sum writes that out where it is more than one number. known is
// false where nothing of it is.
func (w *step) wanted() (need measure.Volume, what, sum string, known bool) {
	parts, kept := []string(nil), []string(nil)
	add := func(amount measure.Volume, of *step, words string, list *[]string) {
		if amount.Litres.Sign() > 0 {
			share, _ := of.mixer().canShare()
			need = need.Add(amount.Times(share))
			*list = append(*list, words)
		}
	}
	for _, user := range w.users {
		if !user.takes {
			if len(w.users) > 1 {
				w.out.Notes = append(w.out.Notes, "No cans are chosen yet: what “"+user.Name+"” takes is not known.")
			}
			return measure.Volume{}, "", "", false
		}
		share := user.inCansWords()
		add(user.withSpare(user.boughtFor()), user, user.needInSum()+share+user.buyWords(), &parts)
		add(user.board(), user, w.Notation.VolumeInSum(user.board())+share+" for the sample board", &parts)
		add(user.Keep, user, w.Notation.VolumeInSum(user.Keep)+share+" to keep", &kept)
		if user == w {
			_, what = user.mixer().canShare()
		}
		known = true
	}
	parts = append(parts, kept...)
	if len(parts) > 1 || len(parts) == 1 && parts[0] != w.Notation.VolumeInSum(need) {
		sum = strings.Join(parts, " + ") + " = " + w.sumOf(need) + "\n"
	}
	return need, what, sum, known
}

// needInSum is the need the step is bought for, and what of a mix is made to
// spare, as they stand in a sum.
func (w *step) needInSum() string {
	sum := w.Notation.VolumeInSum(w.boughtFor())
	if spare := w.spareShare(); !spare.IsZero() {
		sum += " × (1 + " + w.builder.Share(spare) + ")"
	}
	return sum
}

// inCansWords is the share of a mix that comes out of the cans, as it stands in a
// sum, "" where that is all of it.
func (w *step) inCansWords() string {
	share, _ := w.mixer().canShare()
	if share.Cmp(measure.NumberFromInt(1)) == 0 {
		return ""
	}
	return " × " + w.builder.Share(share)
}

// buyWords says which of its needs a step is bought for, where that is not the
// likely one.
func (w *step) buyWords() string {
	switch w.BuyFor {
	case plan.Lean:
		return " if it spreads well"
	case plan.Rich:
		return " if it spreads badly"
	}
	return ""
}

// isOneBatch tells whether one of the steps bought together asks for one batch.
func (w *step) isOneBatch() bool {
	return slices.ContainsFunc(w.users, func(user *step) bool { return user.OneBatch })
}

// priceOf is a second line of a sum: what the cans cost, "" where not all have a
// price.
func priceOf(p finish.Purchase, cans []finish.Can) string {
	if !p.Priced {
		return ""
	}
	var parts []string
	for i, n := range p.Counts {
		if n > 0 {
			parts = append(parts, strconv.FormatInt(n, 10)+" × "+cans[i].Price.StringFixed(2))
		}
	}
	return "\n" + strings.Join(parts, " + ") + " = " + p.Price.StringFixed(2)
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
