// Package shopping tells what to buy: the list on the sheet, and the same as a table.
package shopping

import (
	"ceilingwright/core/job"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	tellfinish "ceilingwright/core/tell/finish"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// List is what to buy, line by line, and what it costs together. Leaf tells what is
// bought of the leaf of a step.
type List struct {
	*page.Page
	*job.Job
	Bought []pricing.Bought
	Leaf   func(step int) (amount, detail string)
}

// Tell puts the list on the sheet: what each line costs, where all that is bought of it
// has a price, and what they cost together.
func (l *List) Tell() {
	money := pricing.Currency(&l.Plan)
	sumOf := func(amount decimal.Decimal) string { return money.Sum(amount).In(l.Style()) }
	all, missing, sums := decimal.Decimal{}, []words.Text(nil), ""
	for i := range l.Bought {
		line := &l.Bought[i]
		out := l.line(line)
		if sum, ok := l.cost(line); ok {
			out.Cost = money.Money(sum).In(l.Style())
			all, sums = all.Add(sum), page.Plus(sums, sumOf(sum))
		} else {
			missing = append(missing, l.What(line))
		}
		l.Sheet.Shopping = append(l.Sheet.Shopping, out)
	}
	if sums == "" {
		return
	}
	l.Sheet.Bill = sheet.Total{What: l.Say("Together"), Sum: money.Money(all).In(l.Style()), Working: sums + " = " + sumOf(all)}
	if len(missing) > 0 {
		l.Sheet.Bill.Text = l.Say("Not in it, because what it costs is not given: {missing}.", words.FewOf("missing", missing))
	}
}

// cost is what a line costs, where all of it has a price.
func (l *List) cost(line *pricing.Bought) (sum decimal.Decimal, known bool) {
	for i := range line.Packs {
		cost, ok := line.Packs[i].Cost(l.Plan.Price.Digits)
		if !ok {
			return sum, false
		}
		sum = sum.Add(cost)
	}
	return sum, len(line.Packs) > 0
}

// What is what a line is called.
func (l *List) What(line *pricing.Bought) words.Text {
	switch line.What {
	case pricing.Panels:
		return l.Layers[line.Layer].PanelsCalled()
	case pricing.SeamTape:
		return pricing.SeamTapeCalled()
	case pricing.Product:
		return l.Finish.Steps[line.Step].Called(&l.Plan.Steps[line.Step])
	case pricing.LeafGoods:
		return words.Verbatim(l.Plan.Steps[line.Step].Name)
	case pricing.ToMixIn:
		return l.Finish.ToHave[line.Ingredient].CalledAlone()
	case pricing.OutlineTape:
		return words.Say("Tape for the mask outline")
	case pricing.FloorCover:
		return words.Say("Covers for the floor")
	}
	return words.Say("Film or paper for the walls")
}

func (l *List) line(line *pricing.Bought) sheet.Purchase {
	out := sheet.Purchase{What: l.Told(l.What(line))}
	length, area := words.Length("length", line.Length), words.Area("area", line.Area)
	switch line.What {
	case pricing.Panels:
		mask := &l.Plan.Mask
		out.Amount = l.Say("{n|panel|panels}", words.Count("n", l.Layers[line.Layer].Panels.Count()))
		out.Detail = l.Say("{length} × {width} in all", words.Length("length", mask.Length), words.Length("width", mask.Width))
	case pricing.SeamTape:
		rolls := &l.Tape.Rolls
		out.Amount = l.Say("{n|roll|rolls}", words.Count("n", rolls.Count))
		out.Detail = l.Say("{length} and {waste} waste", words.Length("length", l.Tape.Length), words.Share("waste", rolls.Waste))
	case pricing.Product:
		out.Amount, out.Detail = tellfinish.CanList(l.Page, line.Packs), l.cans(line.Step)
	case pricing.LeafGoods:
		out.Amount, out.Detail = l.Leaf(line.Step)
	case pricing.ToMixIn:
		g := &l.Finish.ToHave[line.Ingredient]
		steps := make([]words.Text, len(g.Steps))
		for i, step := range g.Steps {
			steps[i] = words.Say("“{step}”", words.Name("step", l.Plan.Steps[step].Name))
		}
		out.Amount, out.Detail = g.Amount().In(l.Style()), l.Say("to mix into {steps}", words.FewOf("steps", steps))
	case pricing.OutlineTape:
		out.Amount, out.Detail = l.Say("{length}", length), l.Say("laid outside the line, once round")
	case pricing.FloorCover:
		out.Amount, out.Detail = l.Say("{area}", area), l.Say("without laps")
	case pricing.WallCover:
		out.Amount, out.Detail = l.Say("{area}", area), l.Say("{length} round, {height} high; without laps", length, words.Length("height", l.Plan.Room.Height))
	}
	return out
}

// cans is what the cans of a step are for, and what they leave over.
func (l *List) cans(step int) string {
	c := &l.Finish.Steps[step].Cans
	need, left := words.Volume("need", c.Need), words.Volume("left", c.Left)
	if c.OneBatch && c.Purchase.Cans > 1 {
		return l.Say("{need} needed, {left} left over, all of one batch", need, left)
	}
	return l.Say("{need} needed, {left} left over", need, left)
}

// contents are how much is in one of a pack, and the unit of that.
func (l *List) contents(pack *steps.Pack) (size measure.Number, unit string) {
	switch pack.As {
	case steps.PanelSet:
		return pack.Size, l.Say("panels")
	case steps.LeafPack, steps.LeafBook:
		return pack.Size, l.Say("leaves")
	case steps.RollPack, steps.RollBook, steps.LeafRoll:
		return pack.Size, l.Say("rolls")
	case steps.Can:
		return pack.Size, pack.Unit.Text()
	}
	if l.Notation.System == measure.FeetInches {
		return pack.Length.In(measure.Foot), "ft"
	}
	return pack.Length.In(measure.Metre), "m"
}
