package sheet

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
)

// cans is the cheapest choice of cans for a need.
func (w *step) cans(need measure.Volume) {
	need, what := w.canned(need)
	purchase, problems, ok := finish.CheapestCans(need, w.Cans)
	w.report(w.At+"/cans", problems)
	if !ok || purchase.Cans == 0 {
		return
	}
	w.out.Buy = canList(purchase, w.Cans)
	w.out.LeftOver = w.n.Volume(purchase.Left) + " left over"
	sum, price := w.out.Buy+" hold "+w.n.Volume(purchase.Bought)+" for "+w.n.Volume(need), ""
	rule := "Whole cans that hold the need and leave the least over."
	if purchase.Priced {
		rule = "Whole cans that hold the need at the lowest price, then with the least left over, then the fewest. Every choice is compared."
		price = purchase.Price.StringFixed(2)
		sum += ", " + price + " in all"
	}
	w.figure(Figure{
		ID: w.id("cans"), Block: blockFinish, Label: "cans to buy", Value: strconv.FormatInt(purchase.Cans, 10), Text: w.out.Buy,
		Working: Working{Rule: rule, Sum: sum, Source: "Exact search. What a can holds is its net contents on the label, not its name."},
	})
	w.buy(what, w.out.Buy, w.n.Volume(need)+" needed, "+w.out.LeftOver)
	w.bought(cansBought(what, purchase, w.Cans)...)
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
