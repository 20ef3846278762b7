package finish

import (
	"strconv"
	"strings"

	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// cans is what is bought for the step and all that are bought with it.
func (t *teller) cans() {
	c := &t.taken.Cans
	if c.Lacks >= 0 {
		t.note(words.Say("No cans are chosen yet: what “{step}” takes is not known.", t.name("step", c.Lacks)))
	}
	if !c.Known {
		return
	}
	t.out.Buy = CanList(t.Page, t.taken.Packs)
	t.out.LeftOver = t.Say("{left} left over", words.Volume("left", c.Left))
	sum := t.canParts() + t.out.Buy + " = " + t.Notation.Volume(c.Bought)
	if c.Priced {
		sum += "\n" + prices(t.taken.Packs) + " = " + c.Price.StringFixed(2)
	}
	t.Figure(sheet.Figure{
		ID: t.id("cans"), Block: page.Finish, Label: t.Say("cans to buy"), Value: strconv.FormatInt(c.Purchase.Cans, 10), Text: t.out.Buy,
		Working: sheet.Working{Rule: t.Told(words.Sentences(canRule(c), words.Say("Needed are {need}.", words.Volume("need", c.Need)))), Sum: sum,
			Source: t.Say("Exact search. What a can holds is its net contents on the label, not its name.")},
	})
	if c.OneBatch && c.Purchase.Cans > 1 {
		t.note(words.Say("Ask for the same batch number on every can, and stir them together in one pail before you begin."))
	}
}

func canRule(c *steps.Cans) words.Text {
	switch {
	case c.OneBatch && c.Priced:
		return words.Say("From one batch: cans of one size alone, the size that costs least in all, then leaves the least over. Only cans of one size can be asked for with one batch number.")
	case c.OneBatch:
		return words.Say("From one batch: cans of one size alone, the size that leaves the least over. Only cans of one size can be asked for with one batch number.")
	case c.Priced:
		return words.Say("Whole cans that hold the need at the lowest price, then with the least left over, then the fewest. Every choice is compared.")
	}
	return words.Say("Whole cans that hold the need and leave the least over.")
}

// CanList is cans as they are bought: 2 × 1 gal + 1 × 1 qt.
func CanList(p *page.Page, packs []steps.Pack) string {
	cans := make([]string, len(packs))
	for i := range packs {
		cans[i] = strconv.FormatInt(packs[i].Count, 10) + " × " + mixing.MeasureOf(packs[i].Size, packs[i].Unit).In(p.Style())
	}
	return strings.Join(cans, " + ")
}

// prices are what cans cost, added up.
func prices(packs []steps.Pack) string {
	parts := make([]string, len(packs))
	for i := range packs {
		parts[i] = strconv.FormatInt(packs[i].Count, 10) + " × " + packs[i].Each.StringFixed(2)
	}
	return strings.Join(parts, " + ")
}

// canParts is what the cans have to hold as a line of a sum, where it is more than one
// number.
func (t *teller) canParts() string {
	c := &t.taken.Cans
	parts := make([]string, len(c.Parts))
	for i, p := range c.Parts {
		parts[i] = t.part(p, t.inCans(p.Step))
	}
	if need := t.Notation.VolumeInSum(c.Need); len(parts) == 0 || len(parts) == 1 && parts[0] == need {
		return ""
	}
	return strings.Join(parts, " + ") + " = " + t.sumOf(c.Need) + "\n"
}

// part is an amount that is bought or mixed for a step, before the share of it that
// comes out of the cans, and what it is for.
func (t *teller) part(p steps.Part, share string) string {
	s := &t.Plan.Steps[p.Step]
	switch {
	case p.As == steps.ForBoard:
		return t.Say("{amount} for the sample board", words.Name("amount", t.Notation.VolumeInSum(s.Sample)+share))
	case p.As == steps.ToKeep:
		return t.Say("{amount} to keep", words.Name("amount", t.Notation.VolumeInSum(s.Keep)+share))
	case s.BuyFor == plan.Lean:
		return t.Say("{amount} if it spreads well", words.Name("amount", t.needInSum(p.Step)+share))
	case s.BuyFor == plan.Rich:
		return t.Say("{amount} if it spreads badly", words.Name("amount", t.needInSum(p.Step)+share))
	}
	return t.needInSum(p.Step) + share
}

// needInSum is the need a step is bought for, and what of a mix is made to spare, as
// they stand in a sum.
func (t *teller) needInSum(step int) string {
	taken := &t.Finish.Steps[step]
	sum := t.Notation.VolumeInSum(taken.BoughtFor(&t.Plan.Steps[step]))
	if !taken.Spare.IsZero() {
		sum += " × (1 + " + t.Share(taken.Spare) + ")"
	}
	return sum
}

// inCans is the share of a mix that comes out of the cans, as it stands in a sum, ""
// where that is all of it.
func (t *teller) inCans(step int) string {
	share := t.Finish.Steps[step].Cans.Share
	if share.Cmp(measure.NumberFromInt(1)) == 0 {
		return ""
	}
	return " × " + t.Share(share)
}
