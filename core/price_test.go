package core_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// sumOf is a printed sum as a number.
func sumOf(t *testing.T, text string) decimal.Decimal {
	t.Helper()
	sum, err := decimal.NewFromString(strings.ReplaceAll(text, "\u202f", ""))
	require.NoError(t, err)
	return sum
}

func sumOfAll(t *testing.T, sums []sheet.Total) (all decimal.Decimal) {
	t.Helper()
	for _, s := range sums {
		all = all.Add(sumOf(t, s.Sum))
	}
	return all
}

// totalOf is a row of the totals by its name.
func totalOf(t *testing.T, s sheet.Sheet, what string) sheet.Total {
	t.Helper()
	for _, row := range s.Price.Totals {
		if row.What == what {
			return row
		}
	}
	require.Fail(t, "no total "+what)
	return sheet.Total{}
}

// priced is the kept plan with a price, with some places changed.
func priced(t *testing.T, places map[string]any) sheet.Sheet {
	t.Helper()
	plan := planNamed(t, "priced")
	for at, v := range places {
		plan = changed(t, plan, at, v)
	}
	return sheetOf(t, plan)
}

func TestPrintedPriceAddsUp(t *testing.T) {
	for name, places := range map[string]map[string]any{
		"margin":       {},
		"markup":       {"/price/profit": "markup", "/price/profitPercent": "33.3"},
		"tax by line":  {"/price/taxOn": "lines", "/price/tax": "7.25", "/price/roundTo": ""},
		"rounded down": {"/price/taxOn": "lines-down", "/price/tax": "7.25", "/price/roundTo": "0.05"},
		"no digits":    {"/price/digits": "0", "/price/currency": "JPY", "/price/roundTo": "100"},
		"three digits": {"/price/digits": "3", "/price/roundTo": "", "/price/rate": "38.1255"},
		"least charge": {"/price/minimum": "100000"},
	} {
		s := priced(t, places)
		lines := decimal.Decimal{}
		for _, l := range s.Price.Lines {
			lines = lines.Add(sumOf(t, l.Sum))
		}
		require.NotEmpty(t, s.Price.Lines, name)
		assert.True(t, lines.Equal(sumOf(t, totalOf(t, s, "Direct cost").Sum)), name)
		total := sumOf(t, figures(s)["price.total"].Value)
		assert.True(t, total.Equal(sumOf(t, totalOf(t, s, "Price").Sum)), name)
		assert.True(t, total.Equal(sumOfAll(t, s.Price.Client)), "%s: the client's copy", name)
		assert.True(t, total.Equal(sumOfAll(t, s.Price.Stages)), "%s: the payments", name)
		net, tax := sumOf(t, figures(s)["price.net"].Value), sumOf(t, figures(s)["price.tax"].Value)
		assert.True(t, total.Equal(net.Add(tax)), name)
		for _, row := range s.Price.Client {
			assert.NotContains(t, row.What+row.Text, "38", "%s: no rate on the client's copy", name)
		}
	}
}

func TestMarkupIsShownAsMarginToo(t *testing.T) {
	// An article on markup and margin: 30 % on the cost is 23.08 % of the price.
	s := priced(t, map[string]any{"/price/profit": "markup", "/price/profitPercent": "30"})
	assert.Equal(t, "A markup of 30 % on the cost is a margin of 23.08 % of the price.", totalOf(t, s, "Markup").Text)
	s = priced(t, map[string]any{"/price/profitPercent": "30"})
	assert.Equal(t, "A margin of 30 % of the price is a markup of 42.86 % on the cost.", totalOf(t, s, "Margin").Text)
}

func TestLeafAndCansInThePrice(t *testing.T) {
	s := priced(t, nil)
	sums := map[string]string{}
	for _, l := range s.Price.Lines {
		sums[l.What+" "+l.Amount] = l.Rate + " = " + l.Sum
	}
	// The prices are invented; count and book by the sheet's own figures.
	assert.Equal(t, "6 books", text(t, s, "step.leaf.books"))
	assert.Equal(t, "9.40 = 56.40", sums["Imitation leaf 6 × book of 25 leaves"])
	assert.Equal(t, "22.00 = 44.00", sums["Base coat 2 × 1 qt"])
	assert.Equal(t, "24.00 = 264.00", sums["Travel 11 days"], "every day of work")
	assert.Equal(t, "11 days", text(t, s, "days.working"))
	assert.Equal(t, "65.00 = 1105.00", sums["Platform, first day to last 17 days"], "Mon 22 Mar to Wed 7 Apr 2027")
}

// hoursOf are the hours of the lines of labour.
func hoursOf(s sheet.Sheet) map[string]string {
	hours := map[string]string{}
	for _, l := range s.Price.Lines {
		if l.Group == "Work" {
			hours[l.What] = l.Amount
		}
	}
	return hours
}

func TestHoursOfWork(t *testing.T) {
	plan := tree(t, planNamed(t, "priced"))
	steps := []any{}
	for _, step := range []struct{ name, kind, coats, area, rate string }{
		// A pricing guide of decorative painters, slow end, days of 8 h: three passes of
		// paint at 1200 ft² a day and one of glaze at 600, over 420 ft².
		{"Paint", "coat", "3", "420", "150"}, {"Glaze", "glaze", "1", "420", "75"},
		// A painter's article on job costs: 448 ft² at 0.667 h for 100 ft² is 2.98816 h;
		// days count whole minutes, rounded up: 180.
		{"Room", "coat", "1", "448", "149.925"},
	} {
		fields := paint(map[string]any{"id": step.name, "name": step.name, "kind": step.kind, "coats": step.coats, "typedArea": step.area, "spread": "400", "rate": step.rate, "rateUnit": "ft2/h"})
		steps = append(steps, fields...)
	}
	plan["finish"].(map[string]any)["steps"] = steps
	hours := hoursOf(sheetOfTree(t, plan))
	assert.Equal(t, "8.4 h", hours["Paint"])
	assert.Equal(t, "5.6 h", hours["Glaze"])
	assert.Equal(t, "3 h", hours["Room"])
}

func TestWorkIsPricedWithoutDates(t *testing.T) {
	with := hoursOf(priced(t, nil))
	assert.Equal(t, with, hoursOf(priced(t, map[string]any{"/days/start": ""})))
	require.Contains(t, with, "Hang First layer", "set-up, masking and moves are lines of their own")
	s := priced(t, map[string]any{"/days": nil})
	require.NotEmpty(t, hoursOf(s))
	assert.Empty(t, s.Days.Tasks, "no days are asked for")
	require.NotEmpty(t, toldAt(s, "/days/rates"))
	assert.Contains(t, toldAt(s, "/days/rates")[0], "Counted as usual")
}

func TestShoppingListSaysWhatThingsCost(t *testing.T) {
	costs := map[string]string{}
	for _, buy := range priced(t, map[string]any{"/finish/steps/3/cans/0/price": ""}).Shopping {
		costs[buy.What] = buy.Cost
	}
	assert.Equal(t, "106.00 GBP", costs["Base coat"], "62 + 2 × 22")
	assert.Equal(t, "29.00 GBP", costs["Tape for the seams"], "2 × 14.50")
	assert.Equal(t, "56.40 GBP", costs["Imitation leaf"], "6 × 9.40")
	assert.Empty(t, costs["Edge seal"], "a can without a price")
}

func TestRoughPriceOfAFirstVisit(t *testing.T) {
	// 18 × 14 ft at 45.00 a square foot is 11 340, 20 % either way 9072 and 13 608.
	s := priced(t, nil)
	assert.Equal(t, "9072.00 to 13\u202f608.00 GBP", s.Price.Range)
	assert.Equal(t, 11340.0, value(t, s, "price.rough"))
	s = priced(t, map[string]any{"/price/rough/length": "", "/price/rough/width": "", "/price/rough/range": ""})
	assert.Equal(t, "about 10\u202f675.00 GBP", s.Price.Range, "the ceiling of 17′ 9½″ × 13′ 4″ as measured, 237.2222… ft²")
	s = priced(t, map[string]any{"/price/rough/width": ""})
	assert.Empty(t, s.Price.Range)
	assert.Contains(t, toldAt(s, "/price/rough/length"), "The rough area is nothing.")
}

// toldAt is what is said at a blank.
func toldAt(s sheet.Sheet, at string) (what []string) {
	for _, p := range problemsAt(s, at) {
		what = append(what, p.What)
	}
	return what
}

func TestPriceRefusals(t *testing.T) {
	s := priced(t, map[string]any{"/price/profitPercent": "100"})
	assert.Contains(t, toldAt(s, "/price/profitPercent"), "A margin of 100 per cent leaves nothing of the price for the cost.")
	assert.NotContains(t, figures(s), "price.total", "no price without its profit")
	assert.NotEmpty(t, s.Price.Lines, "what can be worked out still is")
	s = priced(t, map[string]any{"/price/overhead": "-5"})
	assert.Contains(t, toldAt(s, "/price/overhead"), "This number cannot be negative.")
	assert.NotContains(t, figures(s), "price.total", "no price without its overhead")
	s = priced(t, map[string]any{"/mask/layers/0/price": "999999999999", "/mask/layers/1/price": "999999999999"})
	assert.Contains(t, toldAt(s, "/price"), "The price comes to more than 1000000000000.")
	s = priced(t, map[string]any{"/price/deposit": "70"})
	assert.Contains(t, toldAt(s, "/price/stages"), "The deposit and the stages come to 110 per cent of the price.")
	assert.Contains(t, figures(s), "price.total", "the price stands without its payments")
	s = priced(t, map[string]any{"/price/stages/0/percent": ""})
	require.Len(t, s.Price.Stages, 2, "the last stage takes the rest")
	assert.Equal(t, "70 % of the price.", s.Price.Stages[1].Text)
	s = priced(t, map[string]any{"/price/currency": "more than a currency"})
	assert.NotContains(t, text(t, s, "price.total"), "more")
}

func TestWhatHasNoPriceIsNamed(t *testing.T) {
	s := priced(t, map[string]any{"/mask/layers/1/price": "", "/price/tapePerRoll": ""})
	assert.Contains(t, s.Price.Text, "Not in it: Panels of “Second layer”, Tape for the seams.")
	assert.Contains(t, priced(t, map[string]any{"/days/start": ""}).Price.Text, "Not in it: the platform, travel.", "the days are not known")
	require.NotEmpty(t, toldAt(s, "/price"))
	assert.Contains(t, priced(t, map[string]any{"/price/rate": ""}).Price.Text, "Not in it: the work.")
	assert.Contains(t, priced(t, map[string]any{"/finish/steps/1/cans": []any{}}).Price.Text, "Not in it: Base coat.", "no sizes to buy it in")
	for _, p := range s.Problems {
		if p.At == "/price" {
			assert.Equal(t, problem.Caution, p.Severity)
		}
	}
}

func TestNoPriceUnlessAsked(t *testing.T) {
	s := sheetNamed(t, "full")
	assert.Equal(t, sheet.Price{Lines: []sheet.PriceLine{}, Totals: []sheet.Total{}, Client: []sheet.Total{}, Stages: []sheet.Total{}, WhatIf: []sheet.WhatIf{}}, s.Price,
		"cans have their prices for the shopping list")
}

func TestFinishRecord(t *testing.T) {
	s := priced(t, nil)
	require.NotEmpty(t, s.Record.Lines)
	assert.Equal(t, sheet.RecordLine{Step: "Base coat", Where: "the whole ceiling", Area: text(t, s, "step.base.area"), Colour: "Chalk 3", Batch: "0412", Date: "2027-03-02"}, s.Record.Lines[0])
	for _, l := range s.Record.Lines {
		assert.NotContains(t, []string{"Cover floor and walls", "Peel the first layer"}, l.Step, "nothing stays of it on the ceiling")
		if l.Step == "Imitation leaf" {
			assert.Equal(t, "imitation, 5½″ × 5½″, 25 to a book", l.Leaf)
		}
		if l.Step == "Umber glaze" {
			assert.Equal(t, "12 fl oz glaze medium + 6 tsp raw umber + 8 tsp water", l.Mix)
		}
	}
	assert.Contains(t, s.Record.Text, "Still to be written in: ")
}

func TestShoppingTableIsReadBack(t *testing.T) {
	// Go's own reader of RFC 4180 is the outside witness.
	for comma, separator := range map[bool]rune{false: ',', true: ';'} {
		table, marked := strings.CutPrefix(string(core.Shopping(planNamed(t, "priced"), comma)), "\uFEFF")
		require.True(t, marked)
		reader := csv.NewReader(strings.NewReader(table))
		reader.Comma = separator
		rows, err := reader.ReadAll()
		require.NoError(t, err)
		all, s := decimal.Decimal{}, priced(t, nil)
		for _, row := range rows[1:] {
			require.Len(t, row, 9)
			for _, number := range []int{1, 3, 5, 6} {
				if row[number] != "" {
					_, err := decimal.NewFromString(strings.Replace(row[number], ",", ".", 1))
					assert.NoError(t, err, "%s in %v", rows[0][number], row)
				}
			}
			if row[6] != "" { // what is mixed in has no price
				all = all.Add(decimal.RequireFromString(strings.Replace(row[6], ",", ".", 1)))
			}
		}
		bought := decimal.Decimal{}
		for _, l := range s.Price.Lines {
			if l.Group == "Paint and other products" || l.Group == "Metal leaf" || l.Group == "Tape" {
				bought = bought.Add(sumOf(t, l.Sum))
			}
		}
		assert.True(t, all.Equal(bought), "the table comes to %s, the price to %s", all, bought)
	}
}

func TestShoppingOfAnyPlan(t *testing.T) {
	for _, folder := range []string{"plans/v1", "hostile"} {
		for name, plan := range kept(t, folder) {
			table := strings.TrimPrefix(string(core.Shopping(plan, false)), "\uFEFF")
			rows, err := csv.NewReader(strings.NewReader(table)).ReadAll()
			require.NoError(t, err, name)
			for _, row := range rows {
				for _, cell := range row {
					assert.NotContains(t, []string{"=", "+", "@"}, cell[:min(1, len(cell))], "%s: %q", name, cell)
				}
			}
		}
	}
}
