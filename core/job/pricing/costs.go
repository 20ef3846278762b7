package pricing

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/words"
)

// Costs are what a price is made from: Items, and in Missing the names of what has no
// price.
type Costs struct {
	Items   []price.Item
	Missing []words.Text
}

// CostsOf gathers what the job costs, in the order the groups are printed.
func CostsOf(g Given) (c Costs) {
	for i := range g.Layers {
		l := &g.Layers[i]
		item, ok := g.panelItem(l)
		c.add(item, plan.Money{Amount: l.Plan.Price.Amount, Known: l.Plan.Price.Known && ok})
	}
	for _, isLeaf := range []bool{false, true} {
		for i := range g.Plan.Steps {
			if (g.Plan.Steps[i].Kind == finish.LeafLaying) == isLeaf {
				c.packs(g.Finish.Steps[i].Called(&g.Plan.Steps[i]), g.Finish.Steps[i].Packs...)
			}
		}
	}
	if pack, ok := tapePack(g.Plan, &g.Tape); ok {
		c.packs(SeamTapeCalled(), pack)
	}
	g.unbought(&c)
	g.labourCost(&c)
	g.byDay(&c)
	return c
}

// packs puts in what is bought of a thing.
func (c *Costs) packs(what words.Text, packs ...steps.Pack) {
	for i := range packs {
		p := &packs[i]
		c.add(price.Item{Group: p.Group, What: what, Count: measure.NumberFromInt(p.Count), Sold: p.Called()}, plan.Money{Amount: p.Each, Known: p.Priced})
	}
}

// panelItem is what the panels of a layer are paid by: the set of them, or the area of
// the mask. ok is false where the area is not known.
func (g *Given) panelItem(l *layers.Layer) (item price.Item, ok bool) {
	item = price.Item{Group: price.Masks, What: l.PanelsCalled(), Unit: price.Set}
	switch l.Plan.PriceFor {
	case plan.ForSquareFoot:
		item.Unit = price.SquareFoot
	case plan.ForSquareMetre:
		item.Unit = price.SquareMetre
	}
	item.Count, ok = panelsPaid(g.Plan, l)
	return item, ok
}

// unbought names the products of which it is not known what is bought.
func (g *Given) unbought(c *Costs) {
	for i := range g.Plan.Steps {
		s := &g.Plan.Steps[i]
		if s.Kind != finish.LeafLaying && !s.Kind.IsLiquid() || s.Kind.IsLiquid() && s.Coats == 0 {
			continue
		}
		if owner := g.Finish.Steps[i].Owner; len(g.Finish.Steps[owner].Packs) == 0 {
			c.miss(words.Verbatim(g.Plan.Steps[owner].Name))
		}
	}
}

// labourCost puts in the labour of the job, which is that of the days, whether or
// not they have their dates.
func (g *Given) labourCost(c *Costs) {
	if !g.Plan.Price.Rate.Known || !g.Days.Listed {
		c.miss(words.Say("the work"))
		return
	}
	for _, l := range g.Days.Labour {
		c.add(price.Item{Group: price.Labour, What: l.What, Count: measure.NumberFromFraction(l.Minutes, 60), Unit: price.Hour}, g.Plan.Price.Rate)
	}
	for _, i := range g.Days.Unsized {
		c.miss(words.Say("the work of “{step}”", words.Name("step", g.Plan.Steps[i].Name)))
	}
}

// byDay puts in what is paid by the day: the platform and the travel.
func (g *Given) byDay(c *Costs) {
	p := &g.Plan.Price
	hired, travelled, known := g.Days.DaysPaid(g.Plan)
	c.byDay(words.Say("the platform"), price.Item{Group: price.Hire, What: words.Say("Platform, first day to last")}, hired, known, p.HirePerDay)
	if p.TravelDays > 0 {
		travelled, known = p.TravelDays, true
	}
	c.byDay(words.Say("travel"), price.Item{Group: price.Travel, What: words.Say("Travel")}, travelled, known, p.TravelPerDay)
}

// byDay puts in what is paid by the day, or misses it where the days are not
// known. What is needed on no day costs nothing.
func (c *Costs) byDay(name words.Text, item price.Item, count int, known bool, each plan.Money) {
	switch {
	case !each.Known:
	case !known:
		c.miss(name)
	case count > 0:
		item.Count, item.Unit = measure.NumberFromInt(int64(count)), price.Day
		c.add(item, each)
	}
}

// add puts an item into the price, or its name among what is missing.
func (c *Costs) add(item price.Item, each plan.Money) {
	if !each.Known {
		c.miss(item.What)
		return
	}
	item.Rate = each.Amount
	c.Items = append(c.Items, item)
}

func (c *Costs) miss(what words.Text) {
	if !isAmong(c.Missing, what) {
		c.Missing = append(c.Missing, what)
	}
}

// isAmong tells whether a thing is among others by what it is called.
func isAmong(list []words.Text, what words.Text) bool {
	return slices.ContainsFunc(list, func(t words.Text) bool { return t.String() == what.String() })
}

// MissesMore tells whether something has no price that is not among what is missing
// elsewhere: the two prices could then not be compared.
func (c *Costs) MissesMore(missing []words.Text) bool {
	return slices.ContainsFunc(c.Missing, func(what words.Text) bool { return !isAmong(missing, what) })
}
