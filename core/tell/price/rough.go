package price

import (
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// rough is the price of a first visit.
func (t *told) rough() {
	r := &t.Price.Rough
	if !r.Known {
		return
	}
	t.out.Range = t.Told(t.between(r.Low, r.High))
	rule := words.Say("A rough area by what such work has cost for an area, tax included, less and more what it may be off; rounded outwards.")
	if len(r.Asked.Bands) > 0 {
		rule = words.Sentences(rule, words.Say("Each price is charged for the area inside its size alone, so that a larger job never costs less."))
	}
	t.Figure(sheet.Figure{
		ID: "price.rough", Block: page.Price, Label: t.Say("rough price"), Value: r.Middle.StringFixed(t.Price.Currency.Digits), Unit: t.Price.Currency.Code, Text: t.out.Range,
		Working: sheet.Working{
			Rule: t.Told(rule), Sum: t.roughParts(r) + " = " + t.money(r.Middle) + t.roughEnds(r),
			Source: t.Say("Arithmetic. What such work costs is the firm's own experience."),
		},
	})
}

// between is what a rough price lies between.
func (t *told) between(low, high decimal.Decimal) words.Text {
	if low.Equal(high) {
		return words.Say("about {price}", t.holeMoney("price", high))
	}
	return words.Say("{low} to {high}", t.holeSum("low", low), t.holeMoney("high", high))
}

// roughEnds goes on from the middle of a rough price to its two ends, each rounded
// outwards.
func (t *told) roughEnds(r *pricing.Rough) string {
	if r.Low.Equal(r.High) {
		return ""
	}
	one, off := measure.NumberFromInt(1), r.Asked.Off
	end := func(sign string, share measure.Number, to decimal.Decimal) string {
		sum := t.sum(r.Middle)
		if off.Sign() > 0 {
			sum += " × (1 " + sign + " " + t.Share(off) + ")"
		}
		if step := t.Plan.Price.RoundTo; step.Known && measure.NumberFromDecimal(r.Middle).Mul(share).Cmp(measure.NumberFromDecimal(to)) != 0 {
			sum = t.Say("{sum}, outwards to whole {step}", words.Name("sum", sum), t.holeSum("step", step.Amount))
		}
		return "\n" + sum + " = " + t.money(to)
	}
	return end("−", one.Sub(off), r.Low) + end("+", one.Add(off), r.High)
}

// roughParts is the sum of a rough price, in the unit of its prices.
func (t *told) roughParts(r *pricing.Rough) (sum string) {
	for _, part := range r.Asked.Parts() {
		area := words.Trimmed("area", part.Area.SquareMetres.Quo(r.Unit), 4)
		each := words.Of("each", t.Price.Currency.Each(trimmed(part.PerSquareMetre.Mul(r.Unit).RoundHalfEven(4))))
		if t.Plan.Price.Rough.PerSquareMetre {
			sum = page.Plus(sum, t.Say("{area} m² × {each} for 1 m²", area, each))
		} else {
			sum = page.Plus(sum, t.Say("{area} ft² × {each} for 1 ft²", area, each))
		}
	}
	return sum
}

// trimmed is an amount without the zeros that end its decimals.
func trimmed(amount decimal.Decimal) decimal.Decimal {
	for amount.Exponent() < 0 && amount.Equal(amount.Truncate(-amount.Exponent()-1)) {
		amount = amount.Truncate(-amount.Exponent() - 1)
	}
	return amount
}
