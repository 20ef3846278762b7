package hazards

import (
	"ceilingwright/core/air"
	"ceilingwright/core/safety"
)

// VOCLimit holds a product against what its category may hold. Named tells that the
// law here names the category, and Limit is then what it allows; Known that the
// label's figure is known, and Holds what the product then holds as the limit counts
// it. InPounds: both are told in pounds a gallon too. Stricter are the places whose
// limit it is above though not above this one.
type VOCLimit struct {
	Product      *air.Product
	Named, Known bool
	Limit        air.VOCLimit
	InPounds     bool
	Holds        air.Range
	Verdict      air.Verdict
	Stricter     []air.Stricter
}

// limitsOf compares each product that gives off solvent, or of which somebody
// has said what it counts as, with what its category may hold.
func limitsOf(facts *safety.Job) (limits []VOCLimit) {
	for i := range facts.Products {
		if p := &facts.Products[i]; p.Category != "" || p.Label.Known && !p.Label.Value.IsZero() {
			limits = append(limits, limitOf(facts.Country, p))
		}
	}
	return limits
}

func limitOf(country safety.Country, p *air.Product) VOCLimit {
	l := VOCLimit{Product: p, Verdict: air.Undecided}
	if l.Limit, l.Named = air.VOCLimitFor(country, p.Category, p.Binder); !l.Named {
		return l
	}
	l.InPounds = p.InPounds && l.Limit.LessWater
	if l.Holds, l.Known = air.Holds(*p, l.Limit.LessWater); !l.Known {
		return l
	}
	l.Verdict = l.Holds.Against(l.Limit.Limit, l.InPounds)
	for _, s := range l.Limit.Stricter {
		if l.Verdict != air.Above && l.Holds.Against(s.Limit, p.InPounds) == air.Above {
			l.Stricter = append(l.Stricter, s)
		}
	}
	return l
}
