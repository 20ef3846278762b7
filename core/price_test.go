package core_test

import (
	"encoding/csv"
	"math/big"
	"strconv"
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
		"margin":         {},
		"markup":         {"/price/profit": "markup", "/price/profitPercent": "33.3"},
		"tax by line":    {"/price/taxOn": "lines", "/price/tax": "7.25", "/price/roundTo": ""},
		"rounded down":   {"/price/taxOn": "lines-down", "/price/tax": "7.25", "/price/roundTo": "0.05"},
		"no digits":      {"/price/digits": "0", "/price/currency": "JPY", "/price/roundTo": "100"},
		"three digits":   {"/price/digits": "3", "/price/roundTo": "", "/price/rate": "38.1255"},
		"minimum charge": {"/price/minimum": "100000"},
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

// worth is what a printed sum of money comes to: an outside reader of + − × ÷, per
// cent and brackets, with exact fractions.
func worth(t *testing.T, text string) *big.Rat {
	t.Helper()
	rest := strings.NewReplacer("\u202f", "", " %", "%", " GBP", "", " JPY", "").Replace(text)
	next := func(signs string) string {
		rest = strings.TrimLeft(rest, " ")
		for _, sign := range signs {
			if after, ok := strings.CutPrefix(rest, string(sign)); ok {
				rest = after
				return string(sign)
			}
		}
		return ""
	}
	var terms func() *big.Rat
	factor := func() *big.Rat {
		if next("(") != "" {
			inside := terms()
			require.NotEmpty(t, next(")"), text)
			return inside
		}
		rest = strings.TrimLeft(rest, " ")
		end := 0
		for end < len(rest) && strings.IndexByte("0123456789.", rest[end]) >= 0 {
			end++
		}
		n, ok := new(big.Rat).SetString(rest[:end])
		require.True(t, ok, "%q in %q", rest, text)
		rest = rest[end:]
		if next("%") != "" {
			n.Quo(n, big.NewRat(100, 1))
		}
		return n
	}
	product := func() *big.Rat {
		all := factor()
		for {
			switch next("×÷") {
			case "×":
				all.Mul(all, factor())
			case "÷":
				all.Quo(all, factor())
			default:
				return all
			}
		}
	}
	terms = func() *big.Rat {
		all := product()
		for {
			switch next("+−") {
			case "+":
				all.Add(all, product())
			case "−":
				all.Sub(all, product())
			default:
				return all
			}
		}
	}
	all := terms()
	require.Empty(t, strings.TrimSpace(rest), text)
	return all
}

// Every line of the price, every total and every payment can be worked out again from
// its printed sum, to the coin.
func TestEverySumOfThePriceIsWorkedOutAgain(t *testing.T) {
	for name, places := range map[string]map[string]any{
		"margin":         {},
		"markup":         {"/price/profit": "markup", "/price/profitPercent": "33.333", "/price/overhead": "12.8317"},
		"tax by line":    {"/price/taxOn": "lines", "/price/tax": "7.25", "/price/roundTo": ""},
		"no digits":      {"/price/digits": "0", "/price/currency": "JPY", "/price/roundTo": "100"},
		"three digits":   {"/price/digits": "3", "/price/roundTo": "", "/price/rate": "38.1255"},
		"minimum charge": {"/price/minimum": "100000"},
		"metric":         {"/units/show": "metric"},
	} {
		s, read := priced(t, places), 0
		digits := map[string]int{"no digits": 0, "three digits": 3}
		places, ok := digits[name]
		if !ok {
			places = 2
		}
		check := func(what, sum, working string) {
			read++
			made, stands, ok := strings.Cut(working, " = ")
			require.True(t, ok, "%s: %s has no sum: %q", name, what, working)
			assert.Equal(t, strings.ReplaceAll(sum, "\u202f", ""), worth(t, made).FloatString(places), "%s: %s: %s", name, what, working)
			assert.Equal(t, sum, stands, "%s: %s", name, what)
		}
		for _, l := range s.Price.Lines {
			check(l.What, l.Sum, l.Working)
		}
		for _, total := range append(s.Price.Totals, s.Price.Stages...) {
			check(total.What, total.Sum, total.Working)
		}
		check("the list", strings.Fields(s.Bill.Sum)[0], s.Bill.Working)
		assert.Greater(t, read, 30, name)
		for _, row := range s.Price.Client {
			assert.Empty(t, row.Working, "what it is made of would tell the client what it costs")
		}
	}
}

// What a step takes in work stands three times on the sheet: it is one time.
func TestLabourOfAStepReadsTheSame(t *testing.T) {
	for _, people := range []string{"1", "2", "3"} {
		s := priced(t, map[string]any{"/days/people": people})
		days := map[string]int64{}
		for _, task := range s.Days.Tasks {
			name, _, _ := strings.Cut(task.Name, ", ")
			if task.Kind == "work" {
				days[name] += labourMinutes(t, task.Labour)
			}
		}
		paid := hoursOf(s)
		for i, step := range s.Steps {
			f, ok := figures(s)["step."+step.ID+".hours"]
			if !ok {
				continue
			}
			assert.Equal(t, f.Text, paid[step.Name], "%d %s", i, step.Name)
			name, _, _ := strings.Cut(step.Name, ", ")
			assert.Equal(t, labourMinutes(t, f.Text), days[name], "%s with %s people", step.Name, people)
		}
	}
}

// labourMinutes reads work as it is printed: 2 people, 1 h 30 min each.
func labourMinutes(t *testing.T, text string) int64 {
	t.Helper()
	if text == "" {
		return 0
	}
	crew := int64(1)
	if before, after, ok := strings.Cut(strings.TrimSuffix(text, " each"), " people, "); ok {
		n, err := strconv.ParseInt(before, 10, 64)
		require.NoError(t, err)
		crew, text = n, after
	}
	fields, minutes := strings.Fields(text), int64(0)
	for i := 0; i+1 < len(fields); i += 2 {
		n, err := strconv.ParseInt(fields[i], 10, 64)
		require.NoError(t, err, text)
		minutes += n * map[string]int64{"h": 60, "min": 1}[fields[i+1]]
	}
	return crew * minutes
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
	assert.Equal(t, "24.00 = 216.00", sums["Travel 9 days"], "every day of work")
	assert.Equal(t, "9 days", text(t, s, "days.working"))
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
		// A decorative painters' pricing note, slow end, days of 8 h: three passes of
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
	assert.Equal(t, "8 h 24 min", hours["Paint"], "14.0 h with the glaze")
	assert.Equal(t, "5 h 36 min", hours["Glaze"])
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

// What the list comes to is what its lines come to, and what the price takes of them.
func TestShoppingListHasATotal(t *testing.T) {
	s := priced(t, nil)
	all := decimal.Decimal{}
	unpriced := 0
	for _, buy := range s.Shopping {
		if buy.Cost == "" {
			unpriced++
			assert.Contains(t, s.Bill.Text, buy.What)
			continue
		}
		all = all.Add(sumOf(t, strings.TrimSuffix(buy.Cost, " GBP")))
	}
	assert.True(t, all.Equal(sumOf(t, strings.TrimSuffix(s.Bill.Sum, " GBP"))), s.Bill.Sum)
	assert.Equal(t, 4, unpriced, "what is mixed in, and three sundries")
	costs := map[string]sheet.Purchase{}
	for _, buy := range s.Shopping {
		costs[buy.What] = buy
	}
	assert.Equal(t, "1240.00 GBP", costs["Panels of “First layer”"].Cost)
	assert.Equal(t, "15 panels", costs["Panels of “First layer”"].Amount)
	assert.Equal(t, "54′ 1″", costs["Tape for the mask outline"].Amount, "2 × (15′ 9″ + 11′ 3½″)")
	assert.Equal(t, "237.2 ft²", costs["Covers for the floor"].Amount)
	assert.Equal(t, "632.9 ft²", costs["Film or paper for the walls"].Amount, "62′ 3″ × 10′ 2″ = 632.875")
	for _, buy := range priced(t, map[string]any{"/finish/steps/0/kind": "peel"}).Shopping {
		assert.NotContains(t, buy.What, "floor", "nothing is covered up")
	}
	assert.Empty(t, sheetOf(t, planNamed(t, "one-panel")).Bill.Sum, "a list without a price has no total")
}

// The tape is counted in the unit of the plan: 180 ft a roll, or 54.864 m.
func TestTapeIsInThePlansOwnUnit(t *testing.T) {
	for show, want := range map[string]string{"feet-inches": "180,ft", "metric": "54.864,m"} {
		table := string(core.Shopping(changed(t, planNamed(t, "priced"), "/units/show", show), false))
		assert.Regexp(t, `Tape for the seams,2,[^,]*,`+want+`,`, table)
	}
}

// 29 400 for a band of 720 ft² in a room of 1800: divided by the band 40.83 (by the
// ceiling it would be 16.33; a decorative painter's notes have such a room).
func TestPriceByAreaIsThatOfWhatIsWorkedOn(t *testing.T) {
	room := func(steps ...map[string]any) sheet.Sheet {
		var list []any
		for _, s := range steps {
			list = append(list, s)
		}
		return sheetOfTree(t, map[string]any{
			"ceilingwright": 1, "units": map[string]any{"show": "feet-inches", "bare": "ft"}, "room": map[string]any{"length": "60", "width": "30", "height": "10"},
			"finish": map[string]any{"steps": list, "surfaces": []any{map[string]any{"id": "c", "name": "Cornice", "kind": "cornice", "run": "100", "girth": "1"}}},
			"price":  map[string]any{"currency": "USD", "minimum": "29400"},
		})
	}
	band := map[string]any{"id": "a", "kind": "coat", "area": "typed", "typedArea": "720", "typedUnit": "ft2"}
	small := map[string]any{"id": "d", "kind": "coat", "area": "typed", "typedArea": "20", "typedUnit": "ft2"}
	whole := map[string]any{"id": "b", "kind": "coat", "area": "surface"}
	cornice := map[string]any{"id": "e", "kind": "coat", "area": "surface-of", "surface": "c"}
	covers := map[string]any{"id": "f", "kind": "protect", "area": "surface"}
	for want, s := range map[string]sheet.Sheet{
		"40.83 USD for 1\u00a0ft² of the area typed":            room(covers, band, small),
		"16.33 USD for 1\u00a0ft² of the ceiling":               room(covers, whole, band),
		"15.47 USD for 1\u00a0ft² of the ceiling and “Cornice”": room(whole, cornice, cornice),
		"294.00 USD for 1\u00a0ft² of “Cornice”":                room(cornice),
	} {
		assert.Equal(t, want, s.Price.PerArea)
		assert.Contains(t, want, strings.TrimPrefix(figures(s)["price.perArea"].Label, "by the area of "))
	}
	assert.Contains(t, figures(room(whole, cornice))["price.perArea"].Working.Sum, "29\u202f400.00 USD ÷ (1800 ft² + 100 ft²) = 15.47 USD")
}

// How it is paid and what is added to it, without what it is made of, is no price: the
// sheet says so, and tells none of 0.
func TestPaymentsWithoutAPriceAreSaid(t *testing.T) {
	for at, p := range map[string]map[string]any{
		"/price/deposit":          {"deposit": "30"},
		"/price/stages/0/percent": {"stages": []any{map[string]any{"name": "half way", "percent": "50"}}},
		"/price/roundTo":          {"roundTo": "50"},
		"/price/holdsDays":        {"holdsDays": "30"},
		"/price/contingency":      {"contingency": "5"},
		"/price/overhead":         {"overhead": "15"},
		"/price/profitPercent":    {"profitPercent": "20"},
		"/price/tax":              {"tax": "19"},
	} {
		plan := tree(t, planNamed(t, "empty"))
		plan["price"] = p
		s := sheetOfTree(t, plan)
		assert.Empty(t, s.Price.Text, at)
		assert.Empty(t, s.Price.Totals, at)
		require.NotEmpty(t, toldAt(s, at), at)
		assert.Contains(t, toldAt(s, at)[0], "nothing to make a price of")
		p["rate"] = "45"
		for _, what := range toldAt(sheetOfTree(t, plan), at) {
			assert.NotContains(t, what, "nothing to make a price of", at)
		}
	}
	plan := tree(t, planNamed(t, "full"))
	plan["price"] = map[string]any{"stages": []any{map[string]any{"name": "", "percent": ""}}, "deposit": "", "tapePerRoll": "14"}
	for _, p := range sheetOfTree(t, plan).Problems {
		assert.NotContains(t, p.What, "nothing to make a price of", "blanks that are empty, and what the shopping list takes")
	}
}

// A price by area follows the mask, a price of the set stays: 15′ 9″ × 11′ 3½″ is
// 177.84375 ft², and 14′ × 11′ 3½″ is 158.0833… ft².
func TestPanelPriceByAreaFollowsTheMask(t *testing.T) {
	plan := tree(t, planNamed(t, "priced"))
	layers := plan["mask"].(map[string]any)["layers"].([]any)
	layers[0].(map[string]any)["price"], layers[0].(map[string]any)["priceFor"] = "7", "ft2"
	line := func(s sheet.Sheet, what string) sheet.PriceLine {
		for _, l := range s.Price.Lines {
			if l.What == what {
				return l
			}
		}
		return sheet.PriceLine{}
	}
	s := sheetOfTree(t, plan)
	assert.Equal(t, "177.84 ft²", line(s, "Panels of “First layer”").Amount)
	assert.Equal(t, "1244.88", line(s, "Panels of “First layer”").Sum)
	assert.Equal(t, "1310.00", line(s, "Panels of “Second layer”").Sum)
	plan["mask"].(map[string]any)["length"] = "14'"
	s = sheetOfTree(t, plan)
	assert.Equal(t, "1106.56", line(s, "Panels of “First layer”").Sum, "158.08 × 7")
	assert.Equal(t, "1310.00", line(s, "Panels of “Second layer”").Sum)
	layers[0].(map[string]any)["priceFor"] = "m2"
	assert.Equal(t, "14.69 m²", line(sheetOfTree(t, plan), "Panels of “First layer”").Amount)
	plan["mask"].(map[string]any)["length"] = ""
	assert.Contains(t, sheetOfTree(t, plan).Price.Text, "Panels of “First layer”", "the area is not known, so it is not in the price")
}

// A mural painter's price list falls at sizes, and all of a job is charged at the
// price of its size there: 503 ft² at 23 are 11 569, 504 at 21 are 10 584. Here each
// price is charged for the area inside its size.
func TestRoughPriceBySizeHasNoCliff(t *testing.T) {
	of := func(area int) sheet.Sheet {
		return sheetOfTree(t, map[string]any{"ceilingwright": 1, "units": map[string]any{"show": "feet-inches", "bare": "ft"},
			"price": map[string]any{"currency": "USD", "rough": map[string]any{"length": strconv.Itoa(area), "width": "1", "perArea": "25", "perAreaUnit": "ft2", "range": "0",
				"bands": []any{map[string]any{"above": "294", "perArea": "23"}, map[string]any{"above": "504", "perArea": "21"}, map[string]any{"above": "975", "perArea": "19"}, map[string]any{"above": "", "perArea": ""}}}}})
	}
	s := of(320)
	assert.Equal(t, 7948.0, value(t, s, "price.rough"))
	assert.Contains(t, figures(s)["price.rough"].Working.Sum, "294 ft² × 25.00 for 1 ft² + 26 ft² × 23.00 for 1 ft² = 7948.00 USD")
}

func TestRoughPriceOfAFirstVisit(t *testing.T) {
	// 18 × 14 ft at 45.00 a square foot is 11 340, 20 % either way 9072 and 13 608.
	s := priced(t, nil)
	assert.Equal(t, "9072.00 to 13\u202f608.00 GBP", s.Price.Range)
	assert.Equal(t, 11340.0, value(t, s, "price.rough"))
	s = priced(t, map[string]any{"/price/rough/length": "", "/price/rough/width": "", "/price/rough/range": ""})
	assert.Equal(t, "about 10\u202f675.00 GBP", s.Price.Range, "the ceiling of 17′ 9½″ × 13′ 4″ as measured, 237.2222… ft²")
	s = priced(t, map[string]any{"/price/rough/range": "", "/price/rough/perArea": "45.01", "/price/roundTo": "50"})
	assert.Equal(t, "11\u202f300.00 to 11\u202f350.00 GBP", s.Price.Range, "252 ft² are 11 342.52")
	assert.NotContains(t, figures(s)["price.rough"].Working.Sum, "0 %", "nothing either way is no part of the sum")
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
	assert.Equal(t, sheet.Price{}, s.Price, "cans have their prices for the shopping list")
}

func TestFinishRecord(t *testing.T) {
	s := priced(t, nil)
	require.NotEmpty(t, s.Record.Lines)
	assert.Equal(t, sheet.RecordLine{Step: "Base coat", Where: "the whole ceiling", Area: text(t, s, "step.base.area"), Colour: "White", Batch: "0412", Date: "2027-03-02"}, s.Record.Lines[0])
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
			if l.Group == "Paint and other products" || l.Group == "Metal leaf" || l.Group == "Tape" || l.Group == "Masks" {
				bought = bought.Add(sumOf(t, l.Sum))
			}
		}
		assert.True(t, all.Equal(bought), "the table comes to %s, the price to %s", all, bought)
	}
}

func TestShoppingOfAnyPlan(t *testing.T) {
	t.Parallel()
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
