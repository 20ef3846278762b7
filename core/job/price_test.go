package job

import (
	"testing"

	"ceilingwright/core/job/steps"
	"ceilingwright/core/plan"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/price"
	"ceilingwright/core/words"
)

var (
	tenth  = measure.NumberFromFraction(1, 10)
	ninety = decimal.NewFromInt(90)
)

const coat = `{"id":"a","name":"Grey","kind":"coat","area":"typed","typedArea":"45","typedUnit":"m2","coats":"2","spread":"10","spreadUnit":"m2/L","loss":"10","binder":"water"`

// finished is the job of a plan of which nothing but steps is given: what they take and
// are bought in.
func finished(t *testing.T, list string, change func(*Job)) *Job {
	t.Helper()
	doc := plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"m"},"finish":{"steps":[` + list + `]}}`))
	require.True(t, doc.Usable)
	j := From(doc)
	j.Problems = nil
	if change != nil {
		change(j)
	}
	j.Found, _ = steps.WorkOut(&j.Plan, &j.Surface)
	return j
}

// pricedBy is a job whose one coat is bought in cans, priced by terms.
func pricedBy(t *testing.T, steps string, change func(*Job)) *Job {
	t.Helper()
	j := finished(t, steps, change)
	j.MakePrice()
	return j
}

const cans = coat + `,"cans":[{"size":"4","unit":"L","price":"30"}]}`

func whatsWrong(j *Job, at string) (list []string) {
	for _, p := range j.Problems {
		if p.At == at {
			list = append(list, p.What.String())
		}
	}
	return list
}

// 10 L are three cans of 4 L at 30, which are 90; a tenth on them is 99.
func TestMakePrice(t *testing.T) {
	j := pricedBy(t, cans, func(j *Job) {
		j.Plan.Price.Digits, j.Plan.Price.Currency = 2, "GBP"
		j.Plan.Price.Overhead.Known, j.Plan.Price.Overhead.Share = true, tenth
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
func TestMakePrice_NothingToPrice(t *testing.T) {
	bare := coat + `}`
	j := pricedBy(t, bare, nil)
	assert.False(t, j.Price.Known)
	assert.Empty(t, whatsWrong(j, "/price"))
	j = pricedBy(t, bare, func(j *Job) { j.Plan.Price.Deposit.Known, j.Plan.Price.Deposit.Share = true, tenth })
	assert.False(t, j.Price.Known)
	assert.Equal(t, []string{"A deposit is given, but nothing to make a price of."}, whatsWrong(j, "/price/deposit"))
	j = pricedBy(t, bare, func(j *Job) { j.Plan.Price.Minimum.Known, j.Plan.Price.Minimum.Amount = true, ninety })
	assert.True(t, j.Price.Known, "a minimum charge is a price")
	assert.Equal(t, "90", j.Price.Quote.Total.String())
}

// A code of 12 letters is taken, one of 13 is no currency; the plan keeps what was typed.
func TestCurrency(t *testing.T) {
	for typed, want := range map[string]string{"": "", "GBP": "GBP", "abcdefghijkl": "abcdefghijkl", "abcdefghijklm": ""} {
		j := pricedBy(t, cans, func(j *Job) { j.Plan.Price.Currency = typed })
		assert.Equal(t, want, j.Price.Currency.Code)
		assert.Equal(t, typed, j.Plan.Price.Currency)
		assert.Equal(t, want != typed, len(whatsWrong(j, "/price/currency")) > 0, typed)
	}
}
