package sheet

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/price"
)

// work is labour to be paid: so many hours of one person, to the hundredth of an
// hour as they are printed, so that a printed line can be checked by hand.
type work struct {
	what  string
	hours measure.Number
}

// work is the labour of the job: of each step whose rate is known.
func (b *builder) work() []work {
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
	if p.HirePerDay.Known {
		c.miss("the platform")
	}
	if !p.TravelPerDay.Known {
		return
	}
	if p.TravelDays == 0 {
		c.miss("travel")
		return
	}
	c.add(price.Item{Group: price.Travel, What: "Travel", Count: measure.NumberFromInt(int64(p.TravelDays)), Unit: "days"}, p.TravelPerDay)
}
