package price

import (
	"testing"

	"ceilingwright/core/measure"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
)

func number(text string) measure.Number {
	if text[0] == '-' {
		return measure.NumberFromInt(0).Sub(measure.MustNumber(text[1:]))
	}
	return measure.MustNumber(text)
}

func money(text string) decimal.Decimal { return decimal.RequireFromString(text) }

// shown is money with all its digits.
func shown(sum decimal.Decimal, digits int32) string { return sum.StringFixed(digits) }

func TestRound(t *testing.T) {
	for _, test := range []struct {
		exact  string
		digits int32
		want   string
	}{
		// accounting.js#84, #169, #53: binary floats lose half a cent.
		{"1.005", 2, "1.01"}, {"0.145", 2, "0.15"}, {"158.605", 2, "158.61"}, {"35.175", 2, "35.18"},
		// currency.js#451, accounting.js#164: a refund mirrors its charge.
		{"-1.25", 1, "-1.3"}, {"1.25", 1, "1.3"}, {"-61.005", 2, "-61.01"}, {"61.005", 2, "61.01"},
		// SSUTA §324: the cent goes up where the third decimal is above 4.
		{"103.125", 2, "103.13"}, {"0.686875", 2, "0.69"}, {"1.234", 2, "1.23"}, {"1.235", 2, "1.24"},
		// Never twice by way of 0.685: arithmetic.
		{"0.6849", 2, "0.68"},
		// Regulation (EC) 1103/97, article 5: an exact half goes up.
		{"2.345", 2, "2.35"}, {"2.355", 2, "2.36"},
		// Minor units of ISO 4217: none (yen), three digits (dinar); from memory.
		{"1234.5", 0, "1235"}, {"1234.4999", 0, "1234"}, {"0.0005", 3, "0.001"}, {"1.23449", 3, "1.234"},
		{"0", 2, "0.00"}, {"-0.004", 2, "0.00"}, {"1000000000000", 3, "1000000000000.000"},
	} {
		sum, ok := Round(number(test.exact), test.digits)
		assert.True(t, ok, test.exact)
		assert.Equal(t, test.want, shown(sum, test.digits), test.exact)
		// Another library's rounding away from zero agrees.
		assert.True(t, money(test.exact).Round(test.digits).Equal(sum), test.exact)
	}
	_, ok := Round(number("1000000000000.01"), 2)
	assert.False(t, ok, "more than Most")
	third, _ := Round(measure.NumberFromFraction(200, 3), 2)
	assert.Equal(t, "66.67", shown(third, 2), "a fraction without an end")
}

func TestRoundAfterTwoShares(t *testing.T) {
	// dinero.js#157: 5 % of a price and 21 % tax on it, one rule told and another
	// used.
	for price, want := range map[string]string{"50.00": "3.03", "150.00": "9.08"} {
		sum, _ := Round(number(price).Mul(number("0.05")).Mul(number("1.21")), 2)
		assert.Equal(t, want, shown(sum, 2), price)
	}
}

func TestUpTo(t *testing.T) {
	for _, test := range []struct{ sum, step, up, down string }{
		{"4704.01", "1.00", "4705", "4704"}, {"4704.00", "1.00", "4704", "4704"}, {"4704.01", "50", "4750", "4700"},
		{"0.07", "0.05", "0.1", "0.05"}, {"7", "0", "7", "7"}, {"0", "10", "0", "0"},
	} {
		assert.Equal(t, test.up, UpTo(money(test.sum), money(test.step)).String())
		assert.Equal(t, test.down, downTo(money(test.sum), money(test.step)).String())
	}
}

func TestSplit(t *testing.T) {
	parts := func(sum string, digits int32, weights ...string) (texts []string) {
		var list []decimal.Decimal
		for _, w := range weights {
			list = append(list, money(w))
		}
		for _, part := range Split(money(sum), list, digits) {
			texts = append(texts, shown(part, digits))
		}
		return texts
	}
	// Largest remainders: arithmetic.
	assert.Equal(t, []string{"33.34", "33.33", "33.33"}, parts("100.00", 2, "1", "1", "1"))
	assert.Equal(t, []string{"16.67", "33.33", "50.00"}, parts("100.00", 2, "1", "2", "3"))
	assert.Equal(t, []string{"34", "33", "33"}, parts("100", 0, "5", "5", "5"))
	assert.Equal(t, []string{"0.02", "0.01", "0.01", "0.01"}, parts("0.05", 2, "1", "1", "1", "1"))
	assert.Equal(t, []string{"5.00", "0.00"}, parts("5.00", 2, "0", "0"))
	assert.Equal(t, []string{"0.00", "5.00"}, parts("5.00", 2, "0", "0.5"))
	assert.Nil(t, parts("5.00", 2))
}
