package air

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

func TestVOCLimits(t *testing.T) {
	const (
		directive = "Directive 2004/42/EC, annex II A, phase II"
		table     = "40 CFR 59, subpart D, table 1, from memory"
	)
	for _, row := range []struct {
		country   words.Country
		category  Category
		binder    Binder
		limit     string
		lessWater bool
		source    string
	}{
		{words.EU, MattCeiling, Water, "30", false, directive},
		{words.EU, GlossCeiling, Solvent, "100", false, directive},
		{words.UK, TrimPaint, Water, "130", false, directive},
		{words.UK, TrimPaint, Solvent, "300", false, directive},
		{words.EU, TrimVarnish, DryingOil, "400", false, directive},
		{words.EU, SealingPrimer, Solvent, "350", false, directive},
		{words.EU, BindingPrimer, Solvent, "750", false, directive},
		{words.EU, OnePack, Water, "140", false, directive},
		{words.EU, TwoPack, Solvent, "500", false, directive},
		{words.EU, MultiColoured, Water, "100", false, directive},
		{words.EU, DecorativeEffect, Water, "200", false, directive},
		{words.US, MattCeiling, Water, "250", true, table},
		{words.US, GlossCeiling, Water, "380", true, table},
		{words.US, DecorativeEffect, Water, "700", true, table},
		{words.US, MetallicPaint, Water, "500", true, table},
		{words.US, TrimVarnish, Solvent, "450", true, table},
		{words.US, Lacquer, Solvent, "680", true, table},
		{words.US, ClearShellac, Solvent, "730", true, table},
		{words.US, OpaqueShellac, Solvent, "550", true, table},
		{words.Other, MattCeiling, Water, "30", false, "the lower of the two"},
		{"", Lacquer, Solvent, "680", true, "the only one that names it"},
	} {
		limit, ok := VOCLimitFor(row.country, row.category, row.binder)
		require.True(t, ok, "%s %s", row.country, row.category)
		assert.Equal(t, row.limit, limit.Limit.RoundHalfEven(2).String(), row.source)
		assert.Equal(t, row.lessWater, limit.LessWater)
		assert.False(t, limit.AsOf.IsEmpty())
		assert.NotEmpty(t, limit.Source)
	}
	for _, country := range []words.Country{words.US, words.UK, words.EU, words.Other} {
		_, ok := VOCLimitFor(country, Adhesive, Water)
		assert.False(t, ok, "an adhesive is in none of the tables")
		_, ok = VOCLimitFor(country, "", Water)
		assert.False(t, ok)
	}
}

// A metal-finishing handbook of 2013, p. 817: 3 parts of 3.1 lb/gal, 1 part of
// 1.8 and 7 of water are 11.1 ÷ 4 = 2.775 lb/gal less water, 332.5 g/L, and
// 11.1 ÷ 11 = 1.009 lb/gal, 120.9 g/L, as they are (the second worked by hand).
func TestLessWaterAndMaterial(t *testing.T) {
	pound := number("453.59237").Quo(measure.USGallon)
	less := number("2.775").Mul(pound)
	assert.Equal(t, "332.5", less.RoundHalfEven(1).String())
	water := measure.NumberFromFraction(7, 11)
	material, ok := Material(less, water, number("0"))
	require.True(t, ok)
	assert.Equal(t, "120.9", material.RoundHalfEven(1).String())
	back, ok := lessWater(material, water, number("0"))
	require.True(t, ok)
	assert.Zero(t, back.Cmp(less))
	for _, shares := range [][2]string{{"1", "0"}, {"0.6", "0.4"}, {"0.7", "0.5"}} {
		_, ok = Material(less, number(shares[0]), number(shares[1]))
		assert.False(t, ok)
		_, ok = lessWater(less, number(shares[0]), number(shares[1]))
		assert.False(t, ok)
	}
	same, ok := Material(less, number("0"), number("0"))
	assert.True(t, ok)
	assert.Zero(t, same.Cmp(less))
}

// Each worked by hand from the definition: grams of solvent over litres, of all
// of it, or of what is neither water nor exempt. Thinner has 870 g in a litre.
func TestHolds(t *testing.T) {
	label := func(binder Binder, voc string, changes ...func(*Product)) Product {
		p := Product{Binder: binder, Label: fact(voc)}
		for _, c := range changes {
			c(&p)
		}
		return p
	}
	lessWater := func(p *Product) { p.LessWater = true }
	water := func(share string) func(*Product) { return func(p *Product) { p.Water = fact(share) } }
	exempt := func(share string) func(*Product) { return func(p *Product) { p.Exempt = number(share) } }
	thinned := func(share string) func(*Product) { return func(p *Product) { p.Thinner = number(share) } }
	for name, row := range map[string]struct {
		product   Product
		asItIs    string
		lessWater string
	}{
		"as it is, how much is water not said":   {label(Water, "100"), "100", "100 or more"},
		"as it is, half of it water":             {label(Water, "100", water("0.5")), "100", "200"},
		"less water, how much is not said":       {label(Water, "90", lessWater), "0 to 90", "90"},
		"less water, half of it":                 {label(Water, "90", lessWater, water("0.5")), "45", "90"},
		"the handbook's mix of 11 parts":         {label(Water, "332.5", lessWater, water("0.636363636363")), "120.909", "332.5"},
		"solvent-borne holds no water":           {label(Solvent, "400"), "400", "400"},
		"oil less water":                         {label(DryingOil, "400", lessWater), "400", "400"},
		"exempt solvent":                         {label(Solvent, "400", exempt("0.2")), "400", "500"},
		"a tenth of thinner":                     {label(Solvent, "400", thinned("0.1")), "442.727", "442.727"},
		"a quarter of water":                     {label(Water, "100", water("0.5"), thinned("0.25")), "80", "200"},
		"a quarter of water, binder not said":    {label("", "100", thinned("0.25")), "254", "254 or more"},
		"thinner, water and exempt":              {label(Solvent, "400", lessWater, water("0.2"), exempt("0.1"), thinned("0.1")), "333.636", "458.75"},
		"thinner in what may hold water":         {label("", "400", lessWater, thinned("0.1")), "79.091 to 442.727", "442.727 to 870"},
		"shares that leave nothing over":         {label(Water, "90", lessWater, water("0.6"), exempt("0.4")), "0 to 90", "90"},
		"as it is, nothing left over":            {label(Water, "90", water("1")), "90", "90 or more"},
		"heavier than the thinner, and thinned":  {label("", "1000", lessWater, thinned("1")), "435 to 935", "870 to 935"},
		"nothing given off":                      {label(Water, "0"), "0", "0 or more"},
		"thinned with all of itself, all solven": {label(Solvent, "870", thinned("1")), "870", "870"},
	} {
		for i, want := range []string{row.asItIs, row.lessWater} {
			holds, ok := Holds(row.product, i == 1)
			require.True(t, ok, name)
			text := func(n measure.Number) string { return n.RoundHalfEven(3).String() }
			got := text(holds.Least)
			switch {
			case !holds.Most.Known:
				got += " or more"
			case !holds.IsExact():
				got += " to " + text(holds.Most.Value)
			}
			assert.Equal(t, want, got, "%s, less water %v", name, i == 1)
		}
	}
	_, ok := Holds(Product{}, true)
	assert.False(t, ok, "no label, no figure")
}

func TestAgainstALimit(t *testing.T) {
	r := func(least, most string) Range {
		if most == "" {
			return Range{Least: number(least)}
		}
		return Range{number(least), fact(most)}
	}
	for _, row := range []struct {
		holds Range
		want  Verdict
	}{
		{r("250", "250"), Within}, {r("250.001", "250.001"), Above}, {r("0", "250"), Within}, {r("0", "250.001"), Undecided},
		{r("250", ""), Undecided}, {r("250.001", ""), Above}, {r("300", "400"), Above},
	} {
		assert.Equal(t, row.want, row.holds.Against(number("250"), false), "%v", row.holds)
	}
}

// 40 CFR 59, subpart D, table 1 in pounds a gallon, from memory.
func TestLimitsInPounds(t *testing.T) {
	for grams, pounds := range map[string]string{"250": "2.1", "350": "2.9", "380": "3.2", "400": "3.3", "450": "3.8", "500": "4.2", "680": "5.7", "730": "6.1"} {
		assert.Equal(t, pounds, InPounds(number(grams)).RoundHalfEven(3).String())
	}
	for label, want := range map[string]Verdict{"2.1": Within, "2.11": Above} {
		assert.Equal(t, want, exactly(number(label).Mul(PoundPerGallon)).Against(number("250"), true))
	}
	assert.Equal(t, Above, exactly(number("2.1").Mul(PoundPerGallon)).Against(number("250"), false))
	assert.Equal(t, Within, exactly(number("400")).Against(number("400"), true), "printed as 3.3, which is 395.4 g/L")
}

// However a product is described, what it holds with its water lies in the range
// that is told of it when the water is not known.
func TestRangesHoldWhatTheyLeaveOpen(t *testing.T) {
	for _, binder := range []Binder{Water, ""} {
		for _, less := range []bool{false, true} {
			for _, thinner := range []string{"0", "0.05", "0.3", "2"} {
				for _, voc := range []string{"0", "45", "350", "1200"} {
					for _, share := range []string{"0", "0.1", "0.5", "0.9"} {
						open := Product{Binder: binder, Label: fact(voc), LessWater: less, Thinner: number(thinner)}
						told := open
						told.Water = fact(share)
						for _, counted := range []bool{false, true} {
							wide, _ := Holds(open, counted)
							exact, _ := Holds(told, counted)
							require.True(t, exact.IsExact())
							require.LessOrEqual(t, wide.Least.Cmp(exact.Least), 0)
							require.True(t, !wide.Most.Known || wide.Most.Value.Cmp(exact.Least) >= 0)
						}
					}
				}
			}
		}
	}
}

// A place under the federal law that allows less is told; one that allows as
// much is not.
func TestStricterPlaces(t *testing.T) {
	limit, _ := VOCLimitFor(words.US, MattCeiling, Water)
	require.Len(t, limit.Stricter, 2)
	assert.Equal(t, "Indiana", limit.Stricter[0].Where.String())
	assert.Equal(t, "100", limit.Stricter[0].Limit.RoundHalfEven(0).String(), "326 IAC 8-14-3")
	assert.Equal(t, "50", limit.Stricter[1].Limit.RoundHalfEven(0).String(), "South Coast Rule 1113 as of 2015, seen in a secondary copy")
	limit, _ = VOCLimitFor(words.US, ClearShellac, Solvent)
	assert.Empty(t, limit.Stricter)
	limit, _ = VOCLimitFor(words.EU, MattCeiling, Water)
	assert.Empty(t, limit.Stricter)
}

// A litre thinned with solvent gives off more, with water less; a label that
// leaves water out is too high until it is said how much is water.
func TestAsUsed(t *testing.T) {
	for _, row := range []struct {
		product Product
		voc     string
		unsplit bool
	}{
		{Product{Binder: Water, Label: fact("100"), Thinner: number("0.25")}, "80", false},
		{Product{Binder: Solvent, Label: fact("400"), Thinner: number("0.1")}, "442.727", false},
		{Product{Binder: Water, Label: fact("90"), LessWater: true}, "90", true},
		{Product{Binder: Water, Label: fact("90"), LessWater: true, Water: fact("0.5"), Exempt: number("0.1")}, "36", false},
		{Product{Binder: Water, Label: fact("90"), LessWater: true, Water: fact("1")}, "90", true},
	} {
		voc, unsplit := AsUsed(row.product)
		require.True(t, voc.Known)
		assert.Equal(t, row.voc, voc.Value.RoundHalfEven(3).String())
		assert.Equal(t, row.unsplit, unsplit)
	}
	voc, unsplit := AsUsed(Product{LessWater: true})
	assert.False(t, voc.Known || unsplit)
}

// lessWater is the other way round: what a figure of the product as it is comes
// to less water and exempt solvents. ok is false where they leave nothing over.
func lessWater(material, water, exempt measure.Number) (grams measure.Number, ok bool) {
	rest := measure.NumberFromInt(1).Sub(water).Sub(exempt)
	if rest.Sign() <= 0 || water.Sign() < 0 || exempt.Sign() < 0 {
		return measure.Number{}, false
	}
	return material.Quo(rest), true
}
