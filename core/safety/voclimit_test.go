package safety

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func TestVOCLimits(t *testing.T) {
	const (
		directive = "Directive 2004/42/EC, annex II A, phase II"
		table     = "40 CFR 59, subpart D, table 1, from memory"
	)
	for _, row := range []struct {
		country   Country
		category  Category
		binder    Binder
		limit     string
		lessWater bool
		source    string
	}{
		{EU, MattCeiling, Water, "30", false, directive},
		{EU, GlossCeiling, Solvent, "100", false, directive},
		{UK, TrimPaint, Water, "130", false, directive},
		{UK, TrimPaint, Solvent, "300", false, directive},
		{EU, TrimVarnish, DryingOil, "400", false, directive},
		{EU, SealingPrimer, Solvent, "350", false, directive},
		{EU, BindingPrimer, Solvent, "750", false, directive},
		{EU, OnePack, Water, "140", false, directive},
		{EU, TwoPack, Solvent, "500", false, directive},
		{EU, MultiColoured, Water, "100", false, directive},
		{EU, DecorativeEffect, Water, "200", false, directive},
		{US, MattCeiling, Water, "250", true, table},
		{US, GlossCeiling, Water, "380", true, table},
		{US, DecorativeEffect, Water, "700", true, table},
		{US, MetallicPaint, Water, "500", true, table},
		{US, TrimVarnish, Solvent, "450", true, table},
		{US, Lacquer, Solvent, "680", true, table},
		{US, ClearShellac, Solvent, "730", true, table},
		{US, OpaqueShellac, Solvent, "550", true, table},
		{Other, MattCeiling, Water, "30", false, "the lower of the two"},
		{"", Lacquer, Solvent, "680", true, "the only one that names it"},
	} {
		limit, ok := VOCLimitFor(row.country, row.category, row.binder)
		require.True(t, ok, "%s %s", row.country, row.category)
		assert.Equal(t, row.limit, limit.Limit.RoundHalfEven(2).String(), row.source)
		assert.Equal(t, row.lessWater, limit.LessWater)
		assert.NotEmpty(t, limit.AsOf)
		assert.NotEmpty(t, limit.Source)
	}
	for _, country := range []Country{US, UK, EU, Other} {
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
	back, ok := LessWater(material, water, number("0"))
	require.True(t, ok)
	assert.Zero(t, back.Cmp(less))
	for _, shares := range [][2]string{{"1", "0"}, {"0.6", "0.4"}, {"0.7", "0.5"}} {
		_, ok = Material(less, number(shares[0]), number(shares[1]))
		assert.False(t, ok)
		_, ok = LessWater(less, number(shares[0]), number(shares[1]))
		assert.False(t, ok)
	}
	same, ok := Material(less, number("0"), number("0"))
	assert.True(t, ok)
	assert.Zero(t, same.Cmp(less))
}
