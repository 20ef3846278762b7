package core_test

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
)

// firmsOwn are numbers put into every blank that is the firm's own, each to be
// known again wherever it is written.
var firmsOwn = map[string]any{
	"/price/rate": "73.1957", "/price/contingency": "5.3719", "/price/overhead": "12.8317", "/price/profitPercent": "17.5939",
	"/price/minimum": "913.47", "/price/roundTo": "1.37", "/price/hirePerDay": "65.7137", "/price/travelPerDay": "24.6791", "/price/tapePerRoll": "14.5313",
	"/price/rough/perArea": "47.6171", "/price/rough/range": "21.3797",
	"/mask/layers/0/price": "1243.61", "/mask/layers/1/price": "1319.83",
	"/finish/steps/1/cans/0/price": "62.4359", "/finish/steps/1/cans/1/price": "22.7193", "/finish/steps/3/cans/0/price": "24.1379",
	"/finish/steps/4/cans/0/price": "61.3391", "/finish/steps/7/cans/0/price": "31.7717",
	"/finish/steps/8/leaf/pricePerBook": "9.4127", "/finish/steps/8/leaf/pricePerPack": "172.3931",
	"/finish/steps/1/rate": "151.7333", "/finish/steps/4/rate": "121.3771", "/finish/steps/8/rate": "19.7339",
	"/days/rates/hang": "11.7373", "/days/rates/protect": "3.1739",
}

// numeral is a number as any notation writes it.
var numeral = regexp.MustCompile(`[0-9]([0-9.,\x{202f}\x{a0}]*[0-9])?`)

// leastDigits is how many digits tell a number from another by chance.
const leastDigits = 4

// digitsOf are the digits of a number without what sets them apart, so that
// 1,243.61 and 1243,61 are one.
func digitsOf(text string) string {
	return strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, text)
}

// numbersIn are the digits of all numbers in a text.
func numbersIn(text string) map[string]bool {
	all := map[string]bool{}
	for _, one := range numeral.FindAllString(text, -1) {
		all[digitsOf(one)] = true
	}
	return all
}

// writtenIn is the form in which a number is among others, exact or rounded to fewer
// places; "" for none.
func writtenIn(numbers map[string]bool, number string) string {
	exact := decimal.RequireFromString(number)
	for places := int32(2); places <= 4; places++ {
		if text := digitsOf(exact.StringFixed(places)); len(text) >= leastDigits && numbers[text] {
			return exact.StringFixed(places)
		}
	}
	return ""
}

// secrets are the numbers of the firm alone: what was typed, and every sum on its
// own copy that is not on the client's.
func secrets(t *testing.T, own sheet.Sheet) map[string]string {
	t.Helper()
	told := map[string]bool{}
	for _, list := range [][]sheet.Total{own.Price.Client, own.Price.Stages} {
		for _, row := range list {
			told[row.Sum] = true
			told[row.Sum+" GBP"] = true
		}
	}
	list := map[string]string{}
	for at, number := range firmsOwn {
		list[at] = number.(string)
	}
	told[figures(own)["price.total"].Text] = true
	add := func(what, sum string) {
		if len(digitsOf(sum)) >= leastDigits && !told[sum] {
			list[what] = strings.ReplaceAll(sum, "\u202f", "")
		}
	}
	for i, l := range own.Price.Lines {
		add("line "+l.What, l.Sum)
		add("rate "+strconv.Itoa(i), l.Rate)
	}
	for _, row := range own.Price.Totals {
		if row.What != "Price" && row.What != "Price before tax" {
			add("total "+row.What, row.Sum)
		}
	}
	for _, s := range own.Shopping {
		if cost, _, ok := strings.Cut(s.Cost, " "); ok {
			add("shopping "+s.What, cost)
		}
	}
	for _, w := range own.Price.WhatIf {
		if !told[w.Sum] {
			add("what if "+w.What, strings.TrimSuffix(w.Sum, " GBP"))
		}
	}
	require.Greater(t, len(list), len(firmsOwn)+20)
	return list
}

// clientsOf is the kept plan with a price, as the firm has it with the numbers
// above, and as its client has it.
func clientsOf(t *testing.T) (own sheet.Sheet, plan []byte) {
	t.Helper()
	text := planNamed(t, "priced")
	for at, number := range firmsOwn {
		text = changed(t, text, at, number)
	}
	holds := tree(t, text)
	holds["price"].(map[string]any)["holdsDays"] = "30"
	text, err := json.Marshal(holds)
	require.NoError(t, err)
	plan = core.Quoted(text, "2027-02-10")
	require.NotNil(t, plan)
	return sheetOf(t, text), plan
}

func TestNothingOfTheFirmsOwnIsInTheClientsBytes(t *testing.T) {
	own, plan := clientsOf(t)
	inPlan, inSheet, inOwn := numbersIn(string(plan)), numbersIn(string(core.Compute(plan))), numbersIn(string(own.JSON()))
	for what, number := range secrets(t, own) {
		assert.Empty(t, writtenIn(inPlan, number), "%s in the plan", what)
		assert.Empty(t, writtenIn(inSheet, number), "%s on the sheet", what)
	}
	// The search finds what is there: each rate stands on the firm's own sheet or
	// in its plan.
	for _, at := range []string{"/price/rate", "/price/hirePerDay", "/price/tapePerRoll", "/price/overhead", "/mask/layers/0/price", "/finish/steps/8/leaf/pricePerBook"} {
		assert.NotEmpty(t, writtenIn(inOwn, firmsOwn[at].(string)), at)
	}
	for _, word := range []string{"margin", "markup", "Overhead", "overhead of", "unforeseen", "direct cost", "Direct cost"} {
		assert.NotContains(t, string(plan), word)
	}
}

func TestClientsSheetShowsWhatWasQuoted(t *testing.T) {
	own, plan := clientsOf(t)
	s := sheetOf(t, plan)
	assert.Equal(t, own.Price.Client, s.Price.Client)
	for i := range own.Price.Stages {
		own.Price.Stages[i].Working = "" // a payment stands as it was quoted
	}
	assert.Equal(t, own.Price.Stages, s.Price.Stages)
	assert.Empty(t, s.Price.Range, "there is a price")
	for _, id := range []string{"price.net", "price.tax", "price.total"} {
		assert.Equal(t, figures(own)[id].Value, figures(s)[id].Value, id)
		assert.Equal(t, figures(own)[id].Text, figures(s)[id].Text, id)
	}
	assert.Equal(t, "Quoted on Wed 10 Feb 2027; the price holds until Fri 12 Mar 2027.", s.Price.Quoted)
	assert.Empty(t, own.Price.Quoted)
	assert.Equal(t, "The work is planned to be done on "+figures(own)["days.finish"].Text+".", s.Days.Text)
	assert.Empty(t, s.Price.Lines)
	assert.Empty(t, s.Price.WhatIf)
	assert.Empty(t, s.Shopping)
	assert.Empty(t, s.Days.Tasks, "how long each takes is the firm's own")
	assert.Empty(t, s.Problems, "nothing is asked of a client")
	assert.Equal(t, own.Layers, s.Layers, "the mask is as it was")

	// What else is changed, the amounts stay.
	other := tree(t, changed(t, plan, "/mask/length", "12'"))
	other["price"] = map[string]any{"rate": "400", "tax": "50"}
	wider := sheetOfTree(t, other)
	assert.Equal(t, s.Price, wider.Price)
	// Quoting again, on another day, changes nothing.
	again := map[string]any{}
	require.NoError(t, json.Unmarshal(core.Quoted(plan, "2028-01-01"), &again))
	assert.Equal(t, tree(t, plan)["quote"], again["quote"])
}

// The rough price of a first visit is quoted while there is no other.
func TestRoughPriceIsQuoted(t *testing.T) {
	rough := tree(t, planNamed(t, "priced"))
	rough["price"] = map[string]any{"currency": "GBP", "rough": map[string]any{"length": "18 ft", "width": "14 ft", "perArea": "47.6171", "range": "21.3797"}}
	text, err := json.Marshal(rough)
	require.NoError(t, err)
	own, plan := sheetOf(t, text), core.Quoted(text, "2027-02-10")
	require.NotEmpty(t, own.Price.Range)
	s := sheetOf(t, plan)
	assert.Equal(t, own.Price.Range, s.Price.Range)
	assert.Equal(t, "A rough price has been quoted: "+own.Price.Range+".", s.Price.Text)
	for _, number := range []string{"47.6171", "21.3797"} {
		assert.Empty(t, writtenIn(numbersIn(string(plan)), number))
		assert.Empty(t, writtenIn(numbersIn(string(core.Compute(plan))), number))
	}
	// What is added to every price makes none by itself: no client is quoted 0.
	rough["price"].(map[string]any)["tax"], rough["price"].(map[string]any)["overhead"] = "20", "15"
	rough["finish"], rough["seams"], rough["mask"].(map[string]any)["layers"] = nil, nil, nil
	text, err = json.Marshal(rough)
	require.NoError(t, err)
	assert.Equal(t, "A rough price has been quoted: "+own.Price.Range+".", sheetOf(t, core.Quoted(text, "2027-02-10")).Price.Text)
	assert.Empty(t, toldAt(sheetOf(t, text), "/price/tax"), "a rough price has it in it")
}

// Of any plan, damaged ones too, the client's copy is a plan that reads without a
// word about what is in it, and is its own client's copy.
func TestClientsCopyOfAnyPlan(t *testing.T) {
	t.Parallel()
	for _, folder := range []string{"plans/v1", "hostile"} {
		for name, plan := range kept(t, folder) {
			copied := core.Quoted(plan, "2027-02-10")
			if copied == nil {
				continue // no plan at all
			}
			require.True(t, json.Valid(copied), name)
			for _, word := range []string{`"price":`, `"rates":`, `"pricePerBook":`, `"rate":`} {
				assert.NotContains(t, string(copied), word, name)
			}
			for _, p := range sheetOf(t, copied).Problems {
				assert.True(t, strings.HasPrefix(p.At, "/quote"), "%s: %v", name, p)
			}
			assert.Equal(t, tree(t, copied)["quote"], tree(t, core.Quoted(copied, "2028-01-01"))["quote"], name)
		}
	}
}

// How long a price holds is days, up to ten years.
func TestHowLongAPriceHolds(t *testing.T) {
	for holds, want := range map[string]string{
		"1": "Quoted on Wed 10 Feb 2027; the price holds until Thu 11 Feb 2027.", "3650": "Quoted on Wed 10 Feb 2027; the price holds until Sat 7 Feb 2037.",
		"3651": "Quoted on Wed 10 Feb 2027.", "0": "Quoted on Wed 10 Feb 2027.", "": "Quoted on Wed 10 Feb 2027.",
	} {
		plan := tree(t, planNamed(t, "priced"))
		plan["price"].(map[string]any)["holdsDays"] = holds
		text, err := json.Marshal(plan)
		require.NoError(t, err)
		assert.Equal(t, want, sheetOf(t, core.Quoted(text, "2027-02-10")).Price.Quoted, holds)
		assert.Equal(t, holds == "3651" || holds == "0", len(toldAt(sheetOf(t, text), "/price/holdsDays")) > 0, holds)
	}
}

func TestQuoteWithoutAPrice(t *testing.T) {
	plan := core.Quoted(planNamed(t, "full"), "2027-02-10")
	require.NotNil(t, plan)
	s := sheetOf(t, plan)
	assert.Equal(t, "No price has been quoted.", s.Price.Text)
	assert.Equal(t, "Quoted on Wed 10 Feb 2027.", s.Price.Quoted)
	assert.Nil(t, core.Quoted([]byte("no plan"), "2027-02-10"))
	for _, date := range []string{"", "10.2.2027", "2027-02-30"} {
		assert.Nil(t, core.Quoted(planNamed(t, "full"), date), date)
	}
}
