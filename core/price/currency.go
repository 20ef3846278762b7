package price

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
)

// Currency is what money is counted in: its code of three letters, "" where none is
// said, and the digits of its minor unit.
type Currency struct {
	Code   string
	Digits int32
}

// Money is an amount as it is said (words.Value): with so many digits after the point,
// and its currency where it has one.
type Money struct {
	Amount decimal.Decimal
	Currency
}

// Money is a sum with its currency.
func (c Currency) Money(sum decimal.Decimal) Money { return Money{sum, c} }

// Sum is a sum without its currency, which is said beside it.
func (c Currency) Sum(sum decimal.Decimal) Money { return Money{sum, Currency{Digits: c.Digits}} }

// Each is the price of one, without its currency: with more digits than the minor unit
// where it was typed so.
func (c Currency) Each(price decimal.Decimal) Money {
	return Money{price, Currency{Digits: max(c.Digits, -price.Exponent())}}
}

// In is the amount with its currency.
func (m Money) In(style words.Style) string {
	text := style.Notation.Number(measure.NumberFromDecimal(m.Amount), m.Digits)
	if m.Code != "" {
		text += " " + m.Code
	}
	return text
}

// ForArea is a price for a square metre as one for the unit of area of a notation, the
// square foot with inFeet; it says nothing where that is more than Most.
func (c Currency) ForArea(each measure.Number, inFeet bool) words.Text {
	if inFeet {
		each = each.Mul(measure.SquareFoot)
	}
	sum, ok := Round(each, c.Digits)
	said := words.Of("sum", c.Money(sum))
	switch {
	case !ok:
		return words.Text{}
	case inFeet:
		return words.Say("{sum} for 1\u00a0ft²", said)
	}
	return words.Say("{sum} for 1\u00a0m²", said)
}
