package price

import (
	"strconv"
	"strings"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// item is one line of labour.
func item(count, rate string) Item {
	return Item{Group: Labour, What: words.Say("work"), Count: number(count), Unit: Hour, Rate: money(rate)}
}

// cost is a job of one line.
func cost(sum string) []Item { return []Item{item("1", sum)} }

// per is a share of so many per cent.
func per(text string) measure.Number { return number(text).Quo(measure.NumberFromInt(100)) }

func quoted(t *testing.T, items []Item, terms Terms) Quote {
	t.Helper()
	quote, problems, ok := QuoteOf(items, terms)
	require.True(t, ok, "%v", problems)
	require.Empty(t, problems)
	return quote
}

func TestMarkupAndMargin(t *testing.T) {
	for _, test := range []struct {
		cost, share    string
		profit         Profit
		net            string
		markup, margin string // per cent
	}{
		// An article on markup and margin, and two on contractors' money: 30 % on
		// cost is taken for 30 % of price.
		{"1000", "30", Markup, "1300.00", "30", "23.08"},
		{"8000", "30", Markup, "10400.00", "30", "23.08"},
		{"1000", "30", Margin, "1428.57", "42.86", "30"},
		{"8000", "30", Margin, "11428.57", "42.86", "30"},
		// Engineering tables: markup of 25 % on 200 000 is a margin of 20 %.
		{"200000", "25", Markup, "250000.00", "25", "20"},
		// A builder's note: a margin of 20 % is a markup of 25 %.
		{"10000", "20", Margin, "12500.00", "25", "20"},
		// A contractor's article: 10 at a margin of 60 % is 25.
		{"10", "60", Margin, "25.00", "150", "60"},
		// Engineering tables: two overheads of 10 % of the price are the factor
		// 1.25, which is a margin of 20 %.
		{"1", "20", Margin, "1.25", "25", "20"},
		// margin = markup ÷ (1 + markup), and back: arithmetic. The costs are such
		// that nothing is rounded.
		{"1100", "10", Markup, "1210.00", "10", "9.09"},
		{"2300", "15", Markup, "2645.00", "15", "13.04"},
		{"500", "20", Markup, "600.00", "20", "16.67"},
		{"700", "40", Markup, "980.00", "40", "28.57"},
		{"300", "50", Markup, "450.00", "50", "33.33"},
		{"100", "100", Markup, "200.00", "100", "50"},
		{"900", "10", Margin, "1000.00", "11.11", "10"},
		{"850", "15", Margin, "1000.00", "17.65", "15"},
		{"750", "25", Margin, "1000.00", "33.33", "25"},
		{"600", "40", Margin, "1000.00", "66.67", "40"},
		{"500", "50", Margin, "1000.00", "100", "50"},
	} {
		quote := quoted(t, cost(test.cost), Terms{Digits: 2, Profit: test.profit, ProfitShare: per(test.share)})
		name := test.cost + " " + string(test.profit) + " " + test.share
		assert.Equal(t, test.net, shown(quote.Net, 2), name)
		markup, _ := quote.AsMarkup()
		margin, _ := quote.AsMargin()
		assert.Equal(t, test.markup, inPerCent(markup), name)
		assert.Equal(t, test.margin, inPerCent(margin), name)
	}
}

func inPerCent(share measure.Number) string {
	return share.Mul(measure.NumberFromInt(100)).RoundHalfEven(2).String()
}

func TestOrderOfBuildingUp(t *testing.T) {
	// The usual order, common practice; the sum by hand: 4000 + 5 % = 4200, + 12 %
	// = 4704, ÷ 0.85 = 5534.1176.
	quote := quoted(t, cost("4000"), Terms{Digits: 2, Contingency: per("5"), Overhead: per("12"), Profit: Margin, ProfitShare: per("15")})
	assert.Equal(t, "200.00", shown(quote.Contingency, 2))
	assert.Equal(t, "504.00", shown(quote.Overhead, 2))
	assert.Equal(t, "4704.00", shown(quote.Cost, 2))
	assert.Equal(t, "5534.12", shown(quote.Net, 2))
	assert.Equal(t, "830.12", shown(quote.Profit, 2))
}

func TestOverheadAsAShareOfThePrice(t *testing.T) {
	// Articles on contractors' money: cost 8000 sold at 9600 with an overhead of 10
	// % of the price leaves 640, 6.67 % of the price. 960 of overhead are 12 % of
	// the cost, and 9600 is the least charge here.
	quote := quoted(t, cost("8000"), Terms{Digits: 2, Overhead: per("12"), Minimum: money("9600")})
	assert.Equal(t, "9600.00", shown(quote.Net, 2))
	overhead, ok := quote.OverheadOfNet()
	require.True(t, ok)
	assert.Equal(t, "10", inPerCent(overhead))
	assert.Equal(t, "640.00", shown(quote.Gain(), 2))
	margin, _ := quote.AsMargin()
	assert.Equal(t, "6.67", inPerCent(margin))
}

func TestLineSums(t *testing.T) {
	for _, test := range []struct {
		items []Item
		want  string
	}{
		// A painter's question and a decorative painters' pricing note: one more coat,
		// 2.8 h at 45, two tins at 38, 25 for the change.
		{[]Item{item("2.8", "45"), item("2", "38"), item("1", "25")}, "227.00"},
		// A painter's article on job costs: 448 ft² at 0.667 h for 100 ft², 25 an hour.
		{[]Item{item("2.98816", "25")}, "74.70"},
		// A line and its refund cancel (accounting.js#164).
		{[]Item{item("1", "61.005"), item("-1", "61.005")}, "0.00"},
		// Each line is rounded, and the rounded lines are added: 3 × 0.06.
		{[]Item{item("0.0625", "0.99"), item("0.0625", "0.99"), item("0.0625", "0.99")}, "0.18"},
	} {
		assert.Equal(t, test.want, shown(quoted(t, test.items, Terms{Digits: 2}).Total, 2))
	}
}

func TestTax(t *testing.T) {
	// Two questions on accounting pages: two
	// lines, three answers.
	lines := []Item{{Group: Materials, What: words.Say("paint"), Count: number("1"), Rate: money("2.53")}, {Group: Labour, What: words.Say("work"), Count: number("1"), Rate: money("3.68")}}
	for on, want := range map[TaxOn]string{TaxOnTotal: "1.24", TaxOnLines: "1.25", TaxOnLinesDown: "1.23", "": "1.24"} {
		quote := quoted(t, lines, Terms{Digits: 2, Tax: per("20"), TaxOn: on})
		assert.Equal(t, want, shown(quote.Tax, 2), on)
		assert.True(t, quote.Total.Equal(money("6.21").Add(quote.Tax)))
	}
	// SSUTA §324: 8.25 % on 1250.00 and 6.25 % on 10.99.
	assert.Equal(t, "103.13", shown(quoted(t, cost("1250"), Terms{Digits: 2, Tax: per("8.25")}).Tax, 2))
	assert.Equal(t, "0.69", shown(quoted(t, cost("10.99"), Terms{Digits: 2, Tax: per("6.25")}).Tax, 2))
	// Three lines of 0.99 at 6.25 %: 0.06 each, or 0.185625 on all.
	var three []Item
	for _, group := range []Group{Masks, Tape, Travel} {
		three = append(three, Item{Group: group, What: words.Say("a"), Count: number("1"), Rate: money("0.99")})
	}
	assert.Equal(t, "0.18", shown(quoted(t, three, Terms{Digits: 2, Tax: per("6.25"), TaxOn: TaxOnLines}).Tax, 2))
	assert.Equal(t, "0.19", shown(quoted(t, three, Terms{Digits: 2, Tax: per("6.25"), TaxOn: TaxOnTotal}).Tax, 2))
}

func TestLeastChargeAndRounding(t *testing.T) {
	quote := quoted(t, cost("100.40"), Terms{Digits: 2, Profit: Markup, ProfitShare: per("10"), Minimum: money("250"), RoundTo: money("20"), Tax: per("20")})
	assert.Equal(t, "10.04", shown(quote.Profit, 2))
	assert.Equal(t, "139.56", shown(quote.ToMinimum, 2))
	assert.Equal(t, "10.00", shown(quote.ToStep, 2))
	assert.Equal(t, "260.00", shown(quote.Net, 2))
	assert.Equal(t, "312.00", shown(quote.Total, 2))
	assert.Equal(t, "159.60", shown(quote.Gain(), 2))
	plain := quoted(t, cost("1234.5"), Terms{Digits: 0, RoundTo: money("1")})
	assert.Equal(t, "1235", shown(plain.Total, 0), "no minor unit")
	none := quoted(t, nil, Terms{Digits: 2, Minimum: money("80")})
	assert.Equal(t, []ClientLine{{Group: Labour, Sum: money("80")}}, none.Client)
	_, ok := none.AsMarkup()
	assert.False(t, ok, "no cost to be a share of")
}

func TestPayments(t *testing.T) {
	sums := func(total string, terms Terms) (texts []string) {
		terms.Digits = 2
		payments, problems := PaymentsOf(money(total), terms)
		require.Empty(t, problems)
		for _, p := range payments {
			texts = append(texts, p.Name+shown(p.Sum, 2))
		}
		return texts
	}
	stages := func(shares ...string) (list []Stage) {
		for _, s := range shares {
			list = append(list, Stage{Share: per(s)})
		}
		return list
	}
	// A painter's question and a guide to painting contracts: 50, 30 and 20
	// % rounded each come to a cent too many; the last takes the rest.
	assert.Equal(t, []string{"2418.83", "1451.30", "967.52"}, sums("4837.65", Terms{Stages: stages("50", "30", "20")}))
	assert.Equal(t, []string{"2418.83", "1451.30", "967.52"}, sums("4837.65", Terms{Deposit: per("50"), Stages: stages("30")}), "the rest is a payment of its own")
	assert.Equal(t, []string{"25.00", "75.00"}, sums("100", Terms{Deposit: per("25")}))
	assert.Equal(t, []string{"100.00"}, sums("100", Terms{Deposit: per("100")}))
	assert.Equal(t, []string{"0.01", "0.01", "0.00", "0.00"}, sums("0.02", Terms{Stages: stages("25", "25", "25", "25")}), "none asks for more than is left")
	assert.Nil(t, sums("100", Terms{}))
	payments, _ := PaymentsOf(money("100"), Terms{Digits: 2, Deposit: per("10"), Stages: stages("20")})
	assert.True(t, payments[0].Deposit && !payments[1].Deposit && payments[2].Rest)
	assert.Equal(t, "70", inPerCent(payments[2].Share))
}

func TestRoughPrice(t *testing.T) {
	// 14 × 12 ft at 30 a square foot, 20 % off either way: arithmetic.
	foot := measure.Foot
	rough := Rough{Area: measure.AreaOf(14*foot, 12*foot), PerSquareMetre: number("30").Quo(measure.SquareFoot), Off: per("20")}
	got, problems, ok := RoughOf(rough, 2, money("50"))
	require.True(t, ok, "%v", problems)
	assert.Equal(t, []string{"4000.00", "5040.00", "6050.00"}, []string{shown(got.Low, 2), shown(got.Middle, 2), shown(got.High, 2)})
	got, _, _ = RoughOf(rough, 2, decimal.Decimal{})
	assert.Equal(t, []string{"4032.00", "5040.00", "6048.00"}, []string{shown(got.Low, 2), shown(got.Middle, 2), shown(got.High, 2)})
	_, problems, ok = RoughOf(Rough{Off: per("101")}, 2, decimal.Decimal{})
	assert.False(t, ok)
	assert.Equal(t, []string{"/length", "/perArea", "/range"}, places(problems))
	_, problems, ok = RoughOf(Rough{Area: rough.Area, PerSquareMetre: number("999999999999")}, 2, decimal.Decimal{})
	assert.False(t, ok)
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].What.String(), "more than 1000000000000")
}

// The steps of a mural painter's price list: 25 a square foot, 23 above 294, 21 above
// 504, 19 above 975. By hand 294 × 25 = 7350; + 210 × 23 = 12 180; + 471 × 21 =
// 22 071; + 25 × 19 = 22 546. Charged at the price of its size, 504 would cost less
// than 503.
func TestRoughPriceBySize(t *testing.T) {
	foot := measure.SquareFoot
	band := func(above, each string) Band {
		return Band{Above: number(above).Mul(foot), PerSquareMetre: number(each).Quo(foot)}
	}
	rough := Rough{PerSquareMetre: number("25").Quo(foot), Bands: []Band{band("294", "23"), band("504", "21"), band("975", "19")}}
	of := func(area string) string {
		rough.Area = measure.Area{SquareMetres: number(area).Mul(foot)}
		got, problems, ok := RoughOf(rough, 2, decimal.Decimal{})
		require.True(t, ok, "%v", problems)
		return shown(got.Middle, 2)
	}
	for area, want := range map[string]string{
		"100": "2500.00", "293.99": "7349.75", "294": "7350.00", "295": "7373.00", "503": "12157.00", "504": "12180.00", "505": "12201.00", "975": "22071.00", "1000": "22546.00",
	} {
		assert.Equal(t, want, of(area), area)
	}
	before := decimal.Decimal{}
	for area := range 1200 {
		now := money(of(strconv.Itoa(area + 1)))
		assert.True(t, now.Cmp(before) > 0, "%d ft² cost less than one less", area+1)
		before = now
	}
	rough.Bands = []Band{band("504", "21"), band("504", "19"), {Above: number("600").Mul(foot)}}
	_, problems, ok := RoughOf(rough, 2, decimal.Decimal{})
	assert.False(t, ok)
	assert.Equal(t, []string{"/bands/1/above", "/bands/2/perArea"}, places(problems))
}

func places(problems []problem.Problem) (list []string) {
	for _, p := range problems {
		list = append(list, p.At)
	}
	return list
}

func TestPerArea(t *testing.T) {
	quote := quoted(t, cost("1680"), Terms{Digits: 2})
	sum, ok := quote.PerArea(measure.AreaOf(14*measure.Foot, 12*measure.Foot))
	require.True(t, ok)
	assert.Equal(t, "10", sum.Mul(measure.SquareFoot).RoundHalfEven(6).String(), "168 ft²")
	_, ok = quote.PerArea(measure.Area{})
	assert.False(t, ok)
}

func TestRefusals(t *testing.T) {
	for name, test := range map[string]struct {
		items []Item
		terms Terms
		at    string
		what  string
	}{
		"margin of all":        {cost("1"), Terms{Profit: Margin, ProfitShare: per("100")}, "/profitPercent", "A margin of 100 per cent leaves nothing of the price for the cost."},
		"margin below nothing": {cost("1"), Terms{Profit: Margin, ProfitShare: per("-1")}, "/profitPercent", "The margin is -1 per cent."},
		"markup too large":     {cost("1"), Terms{Profit: Markup, ProfitShare: per("1001")}, "/profitPercent", "The markup is 1001 per cent."},
		"overhead":             {cost("1"), Terms{Overhead: per("-0.5")}, "/overhead", "The overhead is -0.5 per cent."},
		"contingency":          {cost("1"), Terms{Contingency: per("-3")}, "/contingency", "The contingency is -3 per cent."},
		"tax":                  {cost("1"), Terms{Tax: per("101")}, "/tax", "The tax is 101 per cent."},
		"least charge":         {cost("1"), Terms{Digits: 2, Minimum: money("-1")}, "/minimum", "The minimum charge is -1."},
		"step":                 {cost("1"), Terms{Digits: 2, RoundTo: money("0.005")}, "/roundTo", "The step to round up to is 0.005, and the money has 2 digits after the point."},
		"digits":               {cost("1"), Terms{Digits: 4}, "/digits", "The money has 4 digits after the point."},
		"line":                 {cost("1000000000001"), Terms{}, "", "“work” comes to more than 1000000000000."},
		"price":                {cost("999999999999"), Terms{Profit: Markup, ProfitShare: per("50")}, "", "The price comes to more than 1000000000000."},
		"tax on top":           {cost("999999999999"), Terms{Tax: per("50")}, "", "The price comes to more than 1000000000000."},
		"credits":              {cost("-5"), Terms{}, "", "The credits are 5 more than the lines."},
	} {
		quote, problems, ok := QuoteOf(test.items, test.terms)
		assert.False(t, ok, name)
		assert.True(t, quote.Total.IsZero(), name)
		if assert.Len(t, problems, 1, name) {
			assert.Equal(t, test.at, problems[0].At, name)
			assert.Equal(t, test.what, problems[0].What.String(), name)
			assert.Equal(t, problem.Stop, problems[0].Severity, name)
			assert.NotEmpty(t, problems[0].Do.String(), name)
		}
	}
	// What is wrong with the payments leaves the price as it is.
	quote, problems, ok := QuoteOf(cost("100"), Terms{Digits: 2, Deposit: per("60"), Stages: []Stage{{Name: "half way", Share: per("50")}}})
	assert.True(t, ok)
	assert.Equal(t, "100.00", shown(quote.Total, 2))
	assert.Empty(t, quote.Payments)
	require.Len(t, problems, 1)
	assert.Equal(t, "The deposit and the stages come to 110 per cent of the price.", problems[0].What.String())
	_, problems, _ = QuoteOf(cost("100"), Terms{Stages: []Stage{{Share: per("-10")}}})
	assert.Equal(t, []string{"/stages/0/percent"}, places(problems))
	_, problems, _ = QuoteOf(cost("100"), Terms{Stages: make([]Stage, 25)})
	assert.Equal(t, []string{"/stages"}, places(problems))
	// A refused line does not stop the others.
	quote, _, ok = QuoteOf(append(cost("1000000000001"), item("1", "7")), Terms{Digits: 2})
	assert.False(t, ok)
	assert.Equal(t, "7.00", shown(quote.Direct, 2))
}

// dice is a small generator of the same numbers every time (a linear
// congruential one; multiplier of Knuth's MMIX, from memory).
type dice uint64

func (d *dice) below(n int64) int64 {
	*d = *d*6364136223846793005 + 1442695040888963407
	return int64(uint64(*d>>33) % uint64(n))
}

func (d *dice) share(most int64) measure.Number {
	return measure.NumberFromFraction(d.below(most*100+1), 10000)
}

func (d *dice) job() ([]Item, Terms) {
	terms := Terms{
		Digits: []int32{0, 2, 3}[d.below(3)], Contingency: d.share(30), Overhead: d.share(60), Profit: Profits()[d.below(2)],
		ProfitShare: d.share(95), Tax: d.share(30), TaxOn: TaxesOn()[d.below(3)], Deposit: d.share(40),
	}
	terms.Minimum = decimal.New(d.below(100_000), -terms.Digits)
	terms.RoundTo = decimal.New(d.below(3)*d.below(5000), -terms.Digits)
	for range d.below(4) {
		terms.Stages = append(terms.Stages, Stage{Name: "stage", Share: d.share(20)})
	}
	var items []Item
	for range d.below(30) {
		items = append(items, Item{Group: Groups()[d.below(7)], What: words.Say("thing"),
			Count: measure.NumberFromFraction(d.below(100_000), 1+d.below(97)), Rate: decimal.New(d.below(10_000_000), -4)})
	}
	return items, terms
}

func TestEveryCopyAddsUp(t *testing.T) {
	d := dice(7)
	for n := range 10_000 {
		items, terms := d.job()
		quote, problems, ok := QuoteOf(items, terms)
		if !ok || len(problems) > 0 {
			t.Fatalf("job %d: %v", n, problems)
		}
		check := func(what string, total decimal.Decimal, parts ...decimal.Decimal) {
			sum := decimal.Decimal{}
			for _, part := range parts {
				sum = sum.Add(part)
				if part.Sign() < 0 || !part.Equal(part.Truncate(terms.Digits)) {
					t.Fatalf("job %d: %s has a part of %s", n, what, part)
				}
			}
			if !sum.Equal(total) {
				t.Fatalf("job %d: %s comes to %s, not %s", n, what, sum, total)
			}
		}
		var lines, client, taxes, payments []decimal.Decimal
		for _, line := range quote.Lines {
			lines = append(lines, line.Sum)
		}
		for _, line := range quote.Client {
			client, taxes = append(client, line.Sum), append(taxes, line.Tax)
		}
		for _, p := range quote.Payments {
			payments = append(payments, p.Sum)
		}
		check("the lines", quote.Direct, lines...)
		check("the cost", quote.Cost, quote.Direct, quote.Contingency, quote.Overhead)
		check("the net", quote.Net, quote.Cost, quote.Profit, quote.ToMinimum, quote.ToStep)
		check("the client's copy", quote.Net, client...)
		check("the total", quote.Total, quote.Net, quote.Tax)
		if terms.TaxOn != TaxOnTotal {
			check("the tax", quote.Tax, taxes...)
		}
		if len(payments) > 0 {
			check("the payments", quote.Total, payments...)
		}
		if quote.Net.Cmp(terms.Minimum) < 0 || terms.RoundTo.Sign() > 0 && !quote.Net.Mod(terms.RoundTo).IsZero() {
			t.Fatalf("job %d: %s is below %s or no multiple of %s", n, quote.Net, terms.Minimum, terms.RoundTo)
		}
		if tax := measure.NumberFromDecimal(quote.Net).Mul(terms.Tax).Float() - quote.Tax.InexactFloat64(); tax > 7.01*unit(terms.Digits) || tax < -7.01*unit(terms.Digits) {
			t.Fatalf("job %d: the tax is %v off", n, tax)
		}
	}
}

func unit(digits int32) float64 { return decimal.New(1, -digits).InexactFloat64() }

func TestClientSeesNoRates(t *testing.T) {
	quote := quoted(t, []Item{
		{Group: Travel, What: words.Say("van"), Count: number("3"), Rate: money("40")},
		{Group: Materials, What: words.Say("paint"), Count: number("2"), Rate: money("38")},
		item("10", "45"),
	}, Terms{Digits: 2, Profit: Markup, ProfitShare: per("50")})
	var groups []string
	for _, line := range quote.Client {
		groups = append(groups, string(line.Group)+" "+shown(line.Sum, 2))
	}
	assert.Equal(t, "materials 114.00, labour 675.00, travel 180.00", strings.Join(groups, ", "), "cost and half of it, in the order of the groups")
}
