package pricing

import (
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/job/surface"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

var (
	tenth  = measure.NumberFromFraction(1, 10)
	ninety = decimal.NewFromInt(90)
)

const coat = `{"id":"a","name":"Grey","kind":"coat","area":"typed","typedArea":"45","typedUnit":"m2","coats":"2","spread":"10","spreadUnit":"m2/L","loss":"10","binder":"water"`

// priced is a job of which nothing but steps is given, as it is priced by its terms.
type priced struct {
	Plan     *plan.Plan
	Price    Price
	Problems []problem.Problem
}

func pricedBy(t *testing.T, list string, change func(*plan.Plan)) *priced {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"m"},"finish":{"steps":[` + list + `]}}`))
	require.True(t, doc.Usable)
	p, s := &doc.Plan, &surface.Surface{}
	if change != nil {
		change(p)
	}
	f, _ := steps.WorkOut(p, s)
	j := &priced{Plan: p}
	j.Price, j.Problems = Of(Given{Plan: p, Surface: s, Found: &f, Days: &schedule.Days{}}, func(string) bool { return false })
	return j
}

const cans = coat + `,"cans":[{"size":"4","unit":"L","price":"30"}]}`

func whatsWrong(j *priced, at string) (list []string) {
	for _, p := range j.Problems {
		if p.At == at {
			list = append(list, p.What.String())
		}
	}
	return list
}

// 10 L are three cans of 4 L at 30, which are 90; a tenth on them is 99.
func TestOf(t *testing.T) {
	j := pricedBy(t, cans, func(p *plan.Plan) {
		p.Price.Digits, p.Price.Currency = 2, "GBP"
		p.Price.Overhead.Known, p.Price.Overhead.Share = true, tenth
	})
	p := &j.Price
	require.True(t, p.Known)
	require.Len(t, p.Lines, 1)
	assert.Equal(t, price.Piece, p.Lines[0].Unit)
	assert.Equal(t, "90", p.Quote.Direct.String())
	assert.Equal(t, "99", p.Quote.Total.String())
	assert.Equal(t, "99.00 GBP", p.Currency.Money(p.Quote.Total).In(words.Style{}))
	require.Len(t, p.Missing, 1)
	assert.Equal(t, "the work", p.Missing[0].String())
	assert.Equal(t, []string{"Not in the price, because what it costs is not given: the work."}, whatsWrong(j, "/price"))
	require.Len(t, p.Worked, 1)
	assert.Equal(t, TypedWorked, p.Worked[0].Of)
	assert.Zero(t, p.LabourShare().Sign(), "no work is in it")
}

// Where nothing is asked for, nothing is missing; how a price is paid asks for one.
func TestOf_NothingToPrice(t *testing.T) {
	bare := coat + `}`
	j := pricedBy(t, bare, nil)
	assert.False(t, j.Price.Known)
	assert.Empty(t, whatsWrong(j, "/price"))
	j = pricedBy(t, bare, func(p *plan.Plan) { p.Price.Deposit.Known, p.Price.Deposit.Share = true, tenth })
	assert.False(t, j.Price.Known)
	assert.Equal(t, []string{"A deposit is given, but nothing to make a price of."}, whatsWrong(j, "/price/deposit"))
	j = pricedBy(t, bare, func(p *plan.Plan) { p.Price.Minimum.Known, p.Price.Minimum.Amount = true, ninety })
	assert.True(t, j.Price.Known, "a minimum charge is a price")
	assert.Equal(t, "90", j.Price.Quote.Total.String())
}

// A code of 12 letters is taken, one of 13 is no currency; the plan keeps what was typed.
func TestCurrency(t *testing.T) {
	for typed, want := range map[string]string{"": "", "GBP": "GBP", "abcdefghijkl": "abcdefghijkl", "abcdefghijklm": ""} {
		j := pricedBy(t, cans, func(p *plan.Plan) { p.Price.Currency = typed })
		assert.Equal(t, want, j.Price.Currency.Code)
		assert.Equal(t, typed, j.Plan.Price.Currency)
		assert.Equal(t, want != typed, len(whatsWrong(j, "/price/currency")) > 0, typed)
	}
}

// What is bought for a step stands on the list.
func TestToBuy(t *testing.T) {
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"m"},"finish":{"steps":[` + cans + `]}}`))
	f, _ := steps.WorkOut(&doc.Plan, &surface.Surface{})
	list := ToBuy(&doc.Plan, &surface.Surface{}, &f)
	require.Len(t, list, 1)
	assert.Equal(t, Product, list[0].What)
}
