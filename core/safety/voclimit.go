package safety

import "ceilingwright/core/measure"

// VOCLimit is what a law allows a coating of one category to hold, in grams a
// litre: of the product ready to use where LessWater is false, else of the
// product less its water and exempt solvents. AsOf says which table, and of what
// day; Source where it was read, and how far it was checked.
type VOCLimit struct {
	Limit        measure.Number
	LessWater    bool
	AsOf, Source string
}

// europe is Directive 2004/42/EC, annex II A, phase II: category, the limit for
// what is thinned with water, and for the rest.
var europe = []struct {
	category       Category
	row            string
	water, solvent int64
}{
	{MattCeiling, "a", 30, 30},
	{GlossCeiling, "b", 100, 100},
	{TrimPaint, "d", 130, 300},
	{TrimVarnish, "e", 130, 400},
	{SealingPrimer, "g", 30, 350},
	{BindingPrimer, "h", 30, 750},
	{OnePack, "i", 140, 500},
	{TwoPack, "j", 140, 500},
	{MultiColoured, "k", 100, 100},
	{DecorativeEffect, "l", 200, 200},
	{MetallicPaint, "l", 200, 200},
}

// federal is 40 CFR 59, subpart D, table 1, and indiana 326 IAC 8-14-3, an
// example of a stricter state; 0 where the state's figure is not known here.
var federal = []struct {
	category         Category
	federal, indiana int64
}{
	{MattCeiling, 250, 100},
	{GlossCeiling, 380, 150},
	{TrimPaint, 380, 150},
	{TrimVarnish, 450, 350},
	{SealingPrimer, 400, 0},
	{BindingPrimer, 350, 0},
	{MultiColoured, 580, 250},
	{DecorativeEffect, 700, 350},
	{MetallicPaint, 500, 500},
	{Lacquer, 680, 550},
	{ClearShellac, 730, 730},
	{OpaqueShellac, 550, 550},
}

const (
	inEuropeSource = "Directive 2004/42/EC, annex II A, phase II, read in the German ChemVOCFarbV, annex II, and a Serbian copy that agree"
	inUSSource     = "40 CFR 59, subpart D, table 1, from memory: check it before you rely on it. Containers of a litre and less are exempt, and the most restrictive category holds (59.400(c), 59.402(b))"
)

// VOCLimitFor is the limit on a category in a country. An unknown country has
// the lower of the two. ok is false where no law here names the category; size
// for leaf is an adhesive by its use, which the tables leave out.
func VOCLimitFor(country Country, category Category, binder Binder) (limit VOCLimit, ok bool) {
	there, known := europeLimit(country, category, binder)
	here, also := usLimit(category)
	switch {
	case country == US:
		return here, also
	case country == UK, country == EU:
		return there, known
	case known && (!also || there.Limit.Cmp(here.Limit) <= 0):
		return there, true
	}
	return here, also
}

func europeLimit(country Country, category Category, binder Binder) (VOCLimit, bool) {
	for _, row := range europe {
		if row.category != category {
			continue
		}
		grams, source := row.solvent, inEuropeSource
		if binder == Water {
			grams = row.water
		}
		if country == UK {
			source += "; kept in the UK by SI 2012/1715, from memory"
		}
		return VOCLimit{Limit: measure.NumberFromInt(grams), AsOf: "category " + row.row + ", in force since 2010", Source: source + "."}, true
	}
	return VOCLimit{}, false
}

func usLimit(category Category) (VOCLimit, bool) {
	for _, row := range federal {
		if row.category != category {
			continue
		}
		source := inUSSource
		if row.indiana > 0 && row.indiana < row.federal {
			source += ". States may be stricter: Indiana, 326 IAC 8-14-3, has " + measure.NumberFromInt(row.indiana).RoundHalfEven(0).String() + " g/L"
		}
		return VOCLimit{Limit: measure.NumberFromInt(row.federal), LessWater: true, AsOf: "federal table", Source: source + "."}, true
	}
	return VOCLimit{}, false
}

// Material is the solvent in a litre of the product as it is, from a figure that
// leaves its water and exempt solvents out: figure × (1 − water − exempt), the
// two as shares of the volume (derived from 40 CFR 59.104(a)(1)). ok is false
// where the shares leave nothing over.
func Material(lessWater, water, exempt measure.Number) (grams measure.Number, ok bool) {
	rest := measure.NumberFromInt(1).Sub(water).Sub(exempt)
	if rest.Sign() <= 0 || water.Sign() < 0 || exempt.Sign() < 0 {
		return measure.Number{}, false
	}
	return lessWater.Mul(rest), true
}

// LessWater is the other way round: what a figure of the product as it is comes
// to less water and exempt solvents. ok is false where they leave nothing over.
func LessWater(material, water, exempt measure.Number) (grams measure.Number, ok bool) {
	rest := measure.NumberFromInt(1).Sub(water).Sub(exempt)
	if rest.Sign() <= 0 || water.Sign() < 0 || exempt.Sign() < 0 {
		return measure.Number{}, false
	}
	return material.Quo(rest), true
}
