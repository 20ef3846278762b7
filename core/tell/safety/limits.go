package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	"ceilingwright/core/words"
)

// limit is how one product stands against what its category may hold.
func (t *teller) limit(l *hazards.VOCLimit) sheet.VOCLine {
	p := l.Product
	line := sheet.VOCLine{Step: p.StepName, At: p.At + "/category", Category: t.Told(categoryOf(p.Category)), Verdict: string(l.Verdict)}
	if !l.Named {
		line.Holds, line.Text = t.Told(label(p)), t.Told(unnamed(p.Category))
		return line
	}
	limit := &l.Limit
	line.Rule, line.Limit, line.AsOf = t.Told(t.ruleOf(limit.LessWater)), grams(limit.Limit).In(t.Style()), t.Told(limit.AsOf)
	source := limit.Source
	for _, s := range limit.Stricter {
		source = words.Sentences(source, words.Say("{where}: {source}.", words.Of("where", s.Where), words.Of("source", s.Source)))
	}
	line.Source = t.Told(source)
	if l.InPounds {
		line.Limit += ", " + t.Notation.NumberTrimmed(air.InPounds(limit.Limit), 1) + " lb/gal"
	}
	if !l.Known {
		line.At, line.Text = p.At+"/voc", t.Say("Copy the VOC figure from the label or the data sheet.")
		return line
	}
	line.Holds, line.Text = t.Told(holds(l.Holds)), t.Told(against(l))
	if l.InPounds && l.Holds.IsExact() {
		line.Holds += ", " + t.Notation.NumberTrimmed(l.Holds.Least.Quo(air.PoundPerGallon), 2) + " lb/gal"
	}
	if l.Verdict == air.Undecided {
		line.At = p.At + "/waterPart"
	}
	return line
}

// unnamed is why there is no limit for a category.
func unnamed(c air.Category) words.Text {
	switch c {
	case "":
		return words.Say("Choose what the product counts as. The label or its data sheet names the category.")
	case air.Adhesive:
		return words.Say("Size for leaf is an adhesive by its use, and the tables for coatings leave adhesives out. Ask which rule for adhesives holds where you work.")
	}
	return words.Say("The table for coatings has no category of this name. Choose the one that the label names.")
}

// ruleOf says whose limit it is, and how it counts.
func (t *teller) ruleOf(lessWater bool) words.Text {
	country := t.facts.Country
	chosen := country == safety.US || country == safety.UK || country == safety.EU
	switch {
	case lessWater && chosen:
		return words.Say("US federal limit: grams a litre, its water and exempt solvents left out")
	case lessWater:
		return words.Say("US federal limit, as no country is chosen: grams a litre, its water and exempt solvents left out")
	case country == safety.UK:
		return words.Say("UK limit: grams a litre, ready to use, water and all")
	case chosen:
		return words.Say("EU limit: grams a litre, ready to use, water and all")
	}
	return words.Say("EU limit, as no country is chosen: grams a litre, ready to use, water and all")
}

// against is how the product stands against the limit, and why.
func against(l *hazards.VOCLimit) words.Text {
	var text words.Text
	switch l.Verdict {
	case air.Within:
		text = words.Say("Not above the limit.")
	case air.Above:
		text = words.Say("Above the limit for its category. Check the category and the rule where you work, or choose another product.")
	default:
		text = words.Say("Cannot be compared yet: fill in how much of the product is water.")
	}
	for _, s := range l.Stricter {
		text = words.Sentences(text, words.Say("It would be above what {where} allows, {limit}.", words.Of("where", s.Where), words.Of("limit", grams(s.Limit))))
	}
	return words.Sentences(text, thinned(l.Product, l.Limit.LessWater))
}

// thinned is how the thinner counts.
func thinned(p *air.Product, lessWater bool) words.Text {
	share := words.Share("share", p.Thinner)
	switch {
	case p.Thinner.Sign() <= 0:
		return words.Text{}
	case p.Binder == air.Water && lessWater:
		return words.Say("The {share} of water added is left out like the rest of the water.", share)
	case p.Binder == air.Water:
		return words.Say("Counted as used, with {share} of water added.", share)
	}
	return words.Say("Counted as used, with {share} of thinner added, taken as {density}.", share, words.Of("density", grams(air.ThinnerDensity())))
}

// label is the label's own figure.
func label(p *air.Product) words.Text {
	figure := words.Of("grams", grams(p.Label.Value))
	switch {
	case !p.Label.Known:
		return words.Text{}
	case p.LessWater:
		return words.Say("{grams} less water", figure)
	}
	return words.Say("{grams}", figure)
}

// holds is a figure, or what is known of it, up to a tenth of a gram: so
// what is above a limit never reads as the limit.
func holds(r air.Range) words.Text {
	least, most := words.Of("least", grams(r.Least)), words.Of("most", grams(r.Most.Value))
	switch {
	case r.IsExact():
		return words.Say("{least}", least)
	case !r.Most.Known:
		return words.Say("{least} or more", least)
	}
	return words.Say("at most {most}", most)
}

// grams is an amount of solvent in a litre, up to a tenth of a gram.
type grams measure.Number

// In is the amount as it is said.
func (g grams) In(s words.Style) string {
	n := measure.Number(g)
	if tenths, ok := n.Mul(measure.NumberFromInt(10)).Ceil(); ok {
		n = measure.NumberFromFraction(tenths, 10)
	}
	return s.Notation.NumberTrimmed(n, 1) + " g/L"
}

// categoryOf is a category as a label would name it.
func categoryOf(c air.Category) words.Text {
	switch c {
	case air.MattCeiling:
		return words.Say("matt paint for walls and ceilings")
	case air.GlossCeiling:
		return words.Say("glossy paint for walls and ceilings")
	case air.TrimPaint:
		return words.Say("paint for trim")
	case air.TrimVarnish:
		return words.Say("varnish or stain for trim")
	case air.SealingPrimer:
		return words.Say("sealing primer")
	case air.BindingPrimer:
		return words.Say("binding primer")
	case air.OnePack:
		return words.Say("one-pack performance coating")
	case air.TwoPack:
		return words.Say("two-pack performance coating")
	case air.MultiColoured:
		return words.Say("multi-coloured coating")
	case air.DecorativeEffect:
		return words.Say("decorative effect: glaze, faux finish")
	case air.MetallicPaint:
		return words.Say("metallic paint")
	case air.Lacquer:
		return words.Say("lacquer")
	case air.ClearShellac:
		return words.Say("shellac, clear")
	case air.OpaqueShellac:
		return words.Say("shellac, opaque")
	case air.Adhesive:
		return words.Say("adhesive, size for leaf")
	}
	return words.Text{}
}
