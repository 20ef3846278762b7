package sheet

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
)

// work is labour to be paid: so many hours of one person, to the hundredth of an
// hour as they are printed, so that a printed line can be checked by hand.
type work struct {
	what  string
	hours measure.Number
}

// work is the labour of the job: that of the days, where the plan asks for them,
// else of each step whose rate is known.
func (b *builder) work() []work {
	if c := b.calendar(); c.isListed {
		return c.labour(b.people())
	}
	var list []work
	for _, s := range b.plan.Steps {
		area, _, _, ok := (&step{builder: b, Step: s}).covered()
		if !ok || !s.RateKnown {
			continue
		}
		hours := price.Hours(area, int64(max(s.Coats, 1)), s.Rate)
		list = append(list, work{s.Name, measure.NumberFromDecimal(hours.RoundHalfEven(2))})
	}
	return list
}

// byDay puts in what is paid by the day: the platform and the travel.
func (b *builder) byDay(c *costing) {
	p := &b.plan.Price
	hired, travelled := b.daysPaid()
	if p.TravelDays > 0 {
		travelled = p.TravelDays
	}
	c.byDay("the platform", price.Item{Group: price.Hire, What: "Platform"}, hired, p.HirePerDay)
	c.byDay("travel", price.Item{Group: price.Travel, What: "Travel"}, travelled, p.TravelPerDay)
}

// byDay puts in what is paid by the day, or misses it where the days are not
// known.
func (c *costing) byDay(name string, item price.Item, count int, each plan.Money) {
	if !each.Known {
		return
	}
	if count == 0 {
		c.miss(name)
		return
	}
	item.Count, item.Unit = measure.NumberFromInt(int64(count)), "days"
	c.add(item, each)
}
