package tell

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
)

// hourUnit is the unit of what is paid by the hour; its count is whole minutes.
const hourUnit = "h"

// labourCost puts in the labour of the job, which is that of the days, whether or
// not they have their dates.
func (b *builder) labourCost(costs *costing) {
	c := &b.Days
	if !b.Plan.Price.Rate.Known || !c.Listed {
		costs.miss("the work")
		return
	}
	for _, l := range c.Labour {
		costs.add(price.Item{Group: price.Labour, What: b.Told(l.What), Count: measure.NumberFromFraction(l.Minutes, 60), Unit: hourUnit}, b.Plan.Price.Rate)
	}
	for _, i := range c.Unsized {
		costs.miss("the work of “" + b.Plan.Steps[i].Name + "”")
	}
}

// byDay puts in what is paid by the day: the platform and the travel.
func (b *builder) byDay(c *costing) {
	p := &b.Plan.Price
	hired, travelled, known := b.DaysPaid()
	c.byDay("the platform", price.Item{Group: price.Hire, What: "Platform, first day to last"}, hired, known, p.HirePerDay)
	if p.TravelDays > 0 {
		travelled, known = p.TravelDays, true
	}
	c.byDay("travel", price.Item{Group: price.Travel, What: "Travel"}, travelled, known, p.TravelPerDay)
}

// byDay puts in what is paid by the day, or misses it where the days are not
// known. What is needed on no day costs nothing.
func (c *costing) byDay(name string, item price.Item, count int, known bool, each plan.Money) {
	switch {
	case !each.Known:
		return
	case !known:
		c.miss(name)
		return
	case count == 0:
		return
	}
	item.Count, item.Unit = measure.NumberFromInt(int64(count)), "days"
	c.add(item, each)
}
