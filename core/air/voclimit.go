package air

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// VOCLimit is what a law allows a coating of one category to hold, in grams a
// litre: of the product ready to use where LessWater is false, else of the
// product less its water and exempt solvents. AsOf says which table, and of what
// day; Source where it was read, and how far it was checked. Stricter are places
// under the same law that allow less.
type VOCLimit struct {
	Limit        measure.Number
	LessWater    bool
	AsOf, Source words.Text
	Stricter     []Stricter
}

// Stricter is a place that allows less: an example, there are more.
type Stricter struct {
	Where, Source words.Text
	Limit         measure.Number
}

// PoundPerGallon is 1 lb/gal in g/L, with the pound of 453.592 37 g (NIST
// Handbook 44, appendix C).
var PoundPerGallon = measure.MustNumber("453.59237").Quo(measure.USGallon)

// InPounds is a limit of grams a litre as the US tables print it in pounds a
// gallon, to a tenth.
func InPounds(limit measure.Number) measure.Number {
	return measure.NumberFromDecimal(limit.Quo(PoundPerGallon).RoundHalfEven(1))
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

// federal is 40 CFR 59, subpart D, table 1; indiana, 326 IAC 8-14-3, and coast,
// South Coast Rule 1113 as it stood in 2015, are examples of stricter places, 0
// where their figure is not known here.
var federal = []struct {
	category                Category
	federal, indiana, coast int64
}{
	{MattCeiling, 250, 100, 50},
	{GlossCeiling, 380, 150, 50},
	{TrimPaint, 380, 150, 50},
	{TrimVarnish, 450, 350, 275},
	{SealingPrimer, 400, 200, 100},
	{BindingPrimer, 350, 200, 100},
	{MultiColoured, 580, 250, 250},
	{DecorativeEffect, 700, 350, 350},
	{MetallicPaint, 500, 500, 150},
	{Lacquer, 680, 550, 275},
	{ClearShellac, 730, 730, 730},
	{OpaqueShellac, 550, 550, 550},
}

const (
	inEuropeSource = "Directive 2004/42/EC, annex II A, phase II, read in the German ChemVOCFarbV, annex II, and a Serbian copy that agree"
	inUKSource     = inEuropeSource + "; kept in the UK by SI 2012/1715, from memory."
	inUSSource     = "40 CFR 59, subpart D, table 1, from memory: check it before you rely on it. Containers of a litre and less are exempt, and the most restrictive category holds (59.400(c), 59.402(b)). States may be stricter."
	indianaSource  = "326 IAC 8-14-3; primers, sealers and shellac from memory"
	coastSource    = "South Coast Rule 1113 as it stood in 2015, flat and decorative seen in a secondary copy, the rest from memory"
)

// VOCLimitFor is the limit on a category in a country. An unknown country has
// the lower of the two. ok is false where no law here names the category; size
// for leaf is an adhesive by its use, which the tables leave out.
func VOCLimitFor(country words.Country, category Category, binder Binder) (limit VOCLimit, ok bool) {
	there, known := europeLimit(country, category, binder)
	here, also := usLimit(category)
	switch {
	case country == words.US:
		return here, also
	case country == words.UK, country == words.EU:
		return there, known
	case known && (!also || there.Limit.Cmp(here.Limit) <= 0):
		return there, true
	}
	return here, also
}

func europeLimit(country words.Country, category Category, binder Binder) (VOCLimit, bool) {
	for _, row := range europe {
		if row.category != category {
			continue
		}
		grams, source := row.solvent, words.Say(inEuropeSource+".")
		if binder == Water {
			grams = row.water
		}
		if country == words.UK {
			source = words.Say(inUKSource)
		}
		return VOCLimit{Limit: measure.NumberFromInt(grams), AsOf: words.Say("category {row}, in force since 2010", words.Name("row", row.row)), Source: source}, true
	}
	return VOCLimit{}, false
}

func usLimit(category Category) (VOCLimit, bool) {
	for _, row := range federal {
		if row.category != category {
			continue
		}
		limit := VOCLimit{Limit: measure.NumberFromInt(row.federal), LessWater: true, AsOf: words.Say("federal table, in force since 1999 (from memory)"), Source: words.Say(inUSSource)}
		limit.stricter(words.Say("Indiana"), row.indiana, words.Say(indianaSource))
		limit.stricter(words.Say("the South Coast of California"), row.coast, words.Say(coastSource))
		return limit, true
	}
	return VOCLimit{}, false
}

func (l *VOCLimit) stricter(where words.Text, grams int64, source words.Text) {
	if there := measure.NumberFromInt(grams); grams > 0 && there.Cmp(l.Limit) < 0 {
		l.Stricter = append(l.Stricter, Stricter{Where: where, Limit: there, Source: source})
	}
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

// thinnerDensity is what a litre of thinner weighs, in grams: turpentine, the
// heaviest of the common ones (from memory). All of it evaporates.
var thinnerDensity = measure.NumberFromInt(870)

// ThinnerDensity is what a litre of solvent thinner is taken to hold, in grams.
func ThinnerDensity() measure.Number { return thinnerDensity }

// thinnerVOC is the solvent in a litre of what a product is thinned with: none in
// water. Where the binder is not known it is taken to be solvent.
func (p Product) thinnerVOC() measure.Number {
	if p.Binder == Water {
		return measure.Number{}
	}
	return thinnerDensity
}

// waterPart is how much of the product is water. What is thinned with solvent is
// taken to hold none unless the plan says otherwise.
func (p Product) waterPart() measure.Fact {
	if !p.Water.Known && (p.Binder == Solvent || p.Binder == DryingOil) {
		return measure.FactOf(measure.Number{})
	}
	return p.Water
}

// AsUsed is the solvent in a litre of the product as it is put on, thinner and
// all: (material + thinner × its own) ÷ (1 + thinner). A label less water is
// first brought back to the litre as it is; where nobody has said how much is
// water, unsplit is true and the label's own figure is taken, which is too high.
// Not known where the label is not, or where its shares leave nothing over.
func AsUsed(p Product) (voc measure.Fact, unsplit bool) {
	voc = p.Label
	if !voc.Known {
		return voc, false
	}
	if p.LessWater {
		grams, ok := Material(p.Label.Value, p.waterPart().Value, p.Exempt)
		if unsplit = !ok || !p.waterPart().Known; !unsplit {
			voc.Value = grams
		}
	}
	if p.Thinner.Sign() > 0 {
		voc.Value = blended(voc.Value, once, p.thinnerVOC(), p.Thinner)
	}
	return voc, unsplit
}

// blended is what a litre of two liquids holds: so much of each, and of solvent
// in a litre of each.
func blended(a, partsA, b, partsB measure.Number) measure.Number {
	return a.Mul(partsA).Add(b.Mul(partsB)).Quo(partsA.Add(partsB))
}

// Range is a figure that may only be known to lie between two: it is at least
// Least, and at most Most where that is known.
type Range struct {
	Least measure.Number
	Most  measure.Fact
}

// IsExact tells whether the two ends are one.
func (r Range) IsExact() bool { return r.Most.Known && r.Most.Value.Cmp(r.Least) == 0 }

func exactly(n measure.Number) Range { return Range{n, measure.FactOf(n)} }

// Holds is what a product holds as a limit counts it: with its water or less it,
// thinned as the plan thins it. The label's figure can be turned into the other
// kind where it is known how much of the product is water; where it is not, a
// figure less water is never below one with it, and that bounds it on one side.
// ok is false where the label's figure is not known.
func Holds(p Product, lessWater bool) (holds Range, ok bool) {
	if !p.Label.Known {
		return Range{}, false
	}
	rest, known := measure.Fact{}, p.waterPart()
	if left := once.Sub(known.Value).Sub(p.Exempt); known.Known && left.Sign() > 0 {
		rest = measure.FactOf(left)
	}
	if lessWater {
		return p.holdsLessWater(rest), true
	}
	voc, unsplit := AsUsed(p)
	if unsplit {
		return Range{Least: blended(measure.Number{}, once, p.thinnerVOC(), p.Thinner), Most: voc}, true
	}
	return exactly(voc.Value), true
}

// holdsLessWater is Holds less water; rest is the share of the product that is
// neither water nor exempt, where it is known. Thinning with water changes
// nothing: it is left out like the rest of the water.
func (p Product) holdsLessWater(rest measure.Fact) Range {
	thinner := p.Thinner
	if p.Binder == Water {
		thinner = measure.Number{}
	}
	at := func(rest measure.Number) measure.Number {
		if p.LessWater {
			return blended(p.Label.Value, rest, thinnerDensity, thinner)
		}
		return p.Label.Value.Add(thinnerDensity.Mul(thinner)).Quo(rest.Add(thinner))
	}
	switch {
	case rest.Known:
		return exactly(at(rest.Value))
	case !p.LessWater:
		return Range{Least: at(once)}
	case thinner.IsZero():
		return exactly(p.Label.Value)
	}
	// The less of the product counts, the nearer it comes to the thinner alone.
	a, b := at(once), thinnerDensity
	if a.Cmp(b) > 0 {
		a, b = b, a
	}
	return Range{a, measure.FactOf(b)}
}

// Verdict is how a figure stands against a limit.
type Verdict string

// The three verdicts. Undecided is said where the figure may lie on either side.
const (
	Within    Verdict = "within"
	Above     Verdict = "above"
	Undecided Verdict = "unknown"
)

// Against is how the range stands against a limit: within it where the most is
// not above it, above it where the least is. A label in pounds a gallon is
// rounded as the table is, so it is held against the higher of the limit and its
// pounds; the law is in grams (from memory).
func (r Range) Against(limit measure.Number, inPounds bool) Verdict {
	if most := InPounds(limit).Mul(PoundPerGallon); inPounds && most.Cmp(limit) > 0 {
		limit = most
	}
	switch {
	case r.Most.Known && r.Most.Value.Cmp(limit) <= 0:
		return Within
	case r.Least.Cmp(limit) > 0:
		return Above
	}
	return Undecided
}
