package tell

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
)

// limits compares each product that gives off solvent, or of which somebody has
// said what it counts as, with what its category may hold.
func (b *builder) limits(job *safety.Job) {
	for i := range job.Products {
		p := &job.Products[i]
		if p.Category == "" && (!p.Label.Known || p.Label.Value.IsZero()) {
			continue
		}
		b.Sheet.Limits = append(b.Sheet.Limits, b.limitLine(job.Country, p))
	}
}

func (b *builder) limitLine(country safety.Country, p *safety.Product) sheet.VOCLine {
	line := sheet.VOCLine{Step: p.StepName, At: p.At + "/category", Category: categoryWords(p.Category), Verdict: string(safety.Undecided)}
	limit, named := safety.VOCLimitFor(country, p.Category, p.Binder)
	switch {
	case p.Category == "":
		line.Holds = b.label(p)
		line.Text = "Choose what the product counts as. The label or its data sheet names the category."
		return line
	case p.Category == safety.Adhesive:
		line.Holds = b.label(p)
		line.Text = "Size for leaf is an adhesive by its use, and the tables for coatings leave adhesives out. Ask which rule for adhesives holds where you work."
		return line
	case !named:
		line.Holds = b.label(p)
		line.Text = "The table for coatings has no category of this name. Choose the one that the label names."
		return line
	}
	line.Rule, line.Limit, line.AsOf, line.Source = limitRule(country, limit.LessWater), b.grams(limit.Limit), limit.AsOf, limit.Source
	for _, s := range limit.Stricter {
		line.Source += " " + s.Where + ": " + s.Source + "."
	}
	inPounds := p.InPounds && limit.LessWater
	if inPounds {
		line.Limit += ", " + b.Notation.NumberTrimmed(safety.InPounds(limit.Limit), 1) + " lb/gal"
	}
	holds, known := safety.Holds(*p, limit.LessWater)
	if !known {
		line.At, line.Text = p.At+"/voc", "Copy the VOC figure from the label or the data sheet."
		return line
	}
	verdict := holds.Against(limit.Limit, inPounds)
	line.Holds, line.Verdict = b.holdsText(holds), string(verdict)
	if inPounds && holds.IsExact() {
		line.Holds += ", " + b.pounds(holds.Least)
	}
	line.Text = b.limitText(p, &limit, holds, verdict)
	if verdict == safety.Undecided {
		line.At = p.At + "/waterPart"
	}
	return line
}

// pounds is grams a litre in pounds a US gallon.
func (b *builder) pounds(grams measure.Number) string {
	return b.Notation.NumberTrimmed(grams.Quo(safety.PoundPerGallon), 2) + " lb/gal"
}

// limitRule says whose limit it is, and how it counts.
func limitRule(country safety.Country, lessWater bool) string {
	whose := "EU limit"
	switch {
	case lessWater:
		whose = "US federal limit"
	case country == safety.UK:
		whose = "UK limit"
	}
	if country != safety.US && country != safety.UK && country != safety.EU {
		whose += ", as no country is chosen"
	}
	if lessWater {
		return whose + ": grams a litre, its water and exempt solvents left out"
	}
	return whose + ": grams a litre, ready to use, water and all"
}

func (b *builder) limitText(p *safety.Product, limit *safety.VOCLimit, holds safety.Range, verdict safety.Verdict) string {
	text := ""
	switch verdict {
	case safety.Within:
		text = "Not above the limit."
	case safety.Above:
		text = "Above the limit for its category. Check the category and the rule where you work, or choose another product."
	default:
		text = "Cannot be compared yet: fill in how much of the product is water."
	}
	for _, s := range limit.Stricter {
		if verdict != safety.Above && holds.Against(s.Limit, p.InPounds) == safety.Above {
			text += " It would be above what " + s.Where + " allows, " + b.grams(s.Limit) + "."
		}
	}
	if p.Thinner.Sign() > 0 {
		text += b.thinnedText(p, limit.LessWater)
	}
	return text
}

// thinnedText is how the thinner counts.
func (b *builder) thinnedText(p *safety.Product, lessWater bool) string {
	share := b.Share(p.Thinner)
	switch {
	case p.Binder == safety.Water && lessWater:
		return " The " + share + " of water added is left out like the rest of the water."
	case p.Binder == safety.Water:
		return " Counted as used, with " + share + " of water added."
	}
	return " Counted as used, with " + share + " of thinner added, taken as " + b.grams(safety.ThinnerDensity()) + "."
}

// label is the label's own figure.
func (b *builder) label(p *safety.Product) string {
	if !p.Label.Known {
		return ""
	}
	text := b.grams(p.Label.Value)
	if p.LessWater {
		text += " less water"
	}
	return text
}

// holdsText is a figure, or what is known of it, up to a tenth of a gram: so
// what is above a limit never reads as the limit.
func (b *builder) holdsText(r safety.Range) string {
	switch {
	case r.IsExact():
		return b.grams(r.Least)
	case !r.Most.Known:
		return b.grams(r.Least) + " or more"
	}
	return "at most " + b.grams(r.Most.Value)
}

// grams is an amount of solvent in a litre, up to a tenth of a gram.
func (b *builder) grams(n measure.Number) string {
	ten := measure.NumberFromInt(10)
	if tenths, ok := n.Mul(ten).Ceil(); ok {
		n = measure.NumberFromFraction(tenths, 10)
	}
	return b.Notation.NumberTrimmed(n, 1) + " g/L"
}

// categoryWords are the categories as a label would name them.
func categoryWords(c safety.Category) string {
	switch c {
	case safety.MattCeiling:
		return "matt paint for walls and ceilings"
	case safety.GlossCeiling:
		return "glossy paint for walls and ceilings"
	case safety.TrimPaint:
		return "paint for trim"
	case safety.TrimVarnish:
		return "varnish or stain for trim"
	case safety.SealingPrimer:
		return "sealing primer"
	case safety.BindingPrimer:
		return "binding primer"
	case safety.OnePack:
		return "one-pack performance coating"
	case safety.TwoPack:
		return "two-pack performance coating"
	case safety.MultiColoured:
		return "multi-coloured coating"
	case safety.DecorativeEffect:
		return "decorative effect: glaze, faux finish"
	case safety.MetallicPaint:
		return "metallic paint"
	case safety.Lacquer:
		return "lacquer"
	case safety.ClearShellac:
		return "shellac, clear"
	case safety.OpaqueShellac:
		return "shellac, opaque"
	case safety.Adhesive:
		return "adhesive, size for leaf"
	}
	return ""
}
