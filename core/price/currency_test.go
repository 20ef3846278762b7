package price

import (
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
)

func TestMoney(t *testing.T) {
	pounds, yen := Currency{"GBP", 2}, Currency{"", 0}
	for _, test := range []struct {
		money Money
		want  string
	}{
		{pounds.Money(money("12345")), "12\u202f345.00 GBP"},
		{pounds.Sum(money("12345")), "12\u202f345.00"},
		{pounds.Money(money("-0.5")), "−0.50 GBP"},
		{pounds.Each(money("1.625")), "1.625"},
		{pounds.Each(money("1.6")), "1.60"},
		{yen.Money(money("950")), "950"},
	} {
		assert.Equal(t, test.want, test.money.In(words.Style{}))
	}
}
