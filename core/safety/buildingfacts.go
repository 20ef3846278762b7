package safety

import (
	"strconv"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Years the rules about old buildings compare with. Sources stand beside the
// rules.
const (
	leadYearUS     = 1978 // built before
	leadYearElse   = 1992 // built before
	asbestosYearUS = 1980 // built in or before
	lateCoatYearUS = 1986 // built in or before
	asbestosYearUK = 2000 // built before
	asbestosYearEU = 2005 // built before, elsewhere too
)

// Areas and a temperature the rules compare with, each in the unit its rule is
// written in.
var (
	smallLeadJob = squareFeet(6)   // at most, 40 CFR 745.83
	airRuleArea  = squareFeet(160) // at least, 40 CFR 61.145, which prints 15 m² beside it
	patchOfCoat  = measure.Area{SquareMetres: measure.NumberFromInt(1)}
	hotFrom      = measure.NumberFromInt(30) // °C, above
)

func squareFeet(n int64) measure.Area {
	return measure.Area{SquareMetres: measure.SquareFoot.Mul(measure.NumberFromInt(n))}
}

// mayBeAsbestos: nobody has had the coat looked at, the surface may be
// textured, and the building is as old as those in which a textured coat may
// hold asbestos. Elsewhere counts as the strictest.
func (f *facts) mayBeAsbestos() bool {
	if f.Country == US {
		return f.texturedUpTo(lateCoatYearUS)
	}
	return f.texturedUpTo(asbestosYearElsewhere(f.Country) - 1)
}

// asbestosYearElsewhere is the year before which a building outside the US may
// hold asbestos: HSE takes 2000 for the ban of November 1999; Directive
// 1999/77/EC bans it from 1 January 2005 at the latest.
func asbestosYearElsewhere(country Country) int {
	if country == UK {
		return asbestosYearUK
	}
	return asbestosYearEU
}

// asbestosInTheWay: it was found, or may be there.
func (f *facts) asbestosInTheWay() bool { return f.Asbestos == AsbestosFound || f.mayBeAsbestos() }

// asbestosForUS: it was found, or US rules presume it.
func (f *facts) asbestosForUS() bool {
	return f.Asbestos == AsbestosFound || f.texturedUpTo(asbestosYearUS)
}

// texturedUpTo: the surface is or was textured, or may be, is as old as the year, and no
// laboratory has answered.
func (f *facts) texturedUpTo(year int) bool {
	return f.Textured != No && f.Year <= year && (f.Asbestos == "" || f.Asbestos == NoAsbestosTest)
}

// oldBoards: the building is as old as those whose boards and fillers may hold
// asbestos. A laboratory's look at the coat says nothing of them.
func (f *facts) oldBoards() bool {
	if f.Country == US {
		return f.Year <= asbestosYearUS
	}
	return f.Year < asbestosYearElsewhere(f.Country)
}

// leadPossible: old enough, and no test has found the paint free of lead.
func (f *facts) leadPossible(before int) bool { return f.Year < before && f.Lead != LeadFoundFree }

// leadUntested: old enough, and no test has been made.
func (f *facts) leadUntested(before int) bool { return f.leadPossible(before) && f.Lead != LeadFound }

// youngMayBeThere: it is a home or a place young children come to again and
// again, or nobody has said. The US rule for renovating firms holds there only.
func (f *facts) youngMayBeThere() bool {
	return f.Building.Use == "" || f.Building.Use == Home || f.Building.Use == Children
}

// renovates: the US rule for renovating firms holds for this job.
func (f *facts) renovates() bool {
	return f.leadPossible(leadYearUS) && f.youngMayBeThere() && f.largeMask()
}

// leadBlank is the blank that clears a building of lead: the test, or once that
// has found some, that the firm is certified.
func leadBlank(f *facts) string {
	if f.Lead == LeadFound {
		return "/place/leadFirm"
	}
	return "/place/leadTest"
}

// mayBeLead: it was found, or the paint is old enough in this country and nobody
// has found it free.
func (f *facts) mayBeLead() bool {
	before := leadYearElse
	if f.Country == US {
		before = leadYearUS
	}
	return f.Lead == LeadFound || f.leadPossible(before)
}

// largeMask: more of the old paint is under the mask than a small job may
// disturb.
func (f *facts) largeMask() bool { return f.maskAbove(smallLeadJob) }

// maskAbove: the mask is larger, or nobody knows how large it is.
func (f *facts) maskAbove(area measure.Area) bool {
	return f.MaskArea.SquareMetres.Sign() <= 0 || f.MaskArea.SquareMetres.Cmp(area.SquareMetres) > 0
}

// maskBelow: the mask is known to be smaller.
func (f *facts) maskBelow(area measure.Area) bool {
	return f.MaskArea.SquareMetres.Sign() > 0 && f.MaskArea.SquareMetres.Cmp(area.SquareMetres) < 0
}

// untested: no tape has been pulled, and lead has not been found, which forbids
// it.
func (f *facts) untested() bool {
	return f.Pull != PaintHeld && f.Pull != Lifted && f.Lead != LeadFound
}

func (f *facts) lays(metals ...Metal) bool {
	for _, laid := range f.Leaf {
		for _, metal := range metals {
			if laid == metal {
				return true
			}
		}
	}
	return false
}

func isDryingOil(product air.Product) bool { return product.Binder == air.DryingOil }

func inSeveralCoats(product air.Product) bool { return product.Coats > 1 }

func hasMetalPowder(product air.Product) bool { return product.Category == air.MetallicPaint }

// isHardOnSkin: it holds solvent or oil, nobody knows, or it is size, which
// stays tacky.
func isHardOnSkin(product air.Product) bool {
	return air.IsSolvent(product) || hasNoBinder(product) || product.Binder == air.DryingOil || product.Size || product.Category == air.Adhesive
}

func anyProduct(air.Product) bool { return true }

// buildingAmount is what a word in braces of the rules about the building
// stands for, nil where it is none of them.
func (f *facts) buildingAmount(name string) words.Value {
	switch name {
	case "year":
		return f.yearBuilt()
	case "6 ft²":
		return area(smallLeadJob)
	case "160 ft²":
		return area(airRuleArea)
	case "1 m²":
		return area(patchOfCoat)
	case "mask area":
		if f.MaskArea.SquareMetres.Sign() <= 0 {
			return words.Say("an area not yet known")
		}
		return area(f.MaskArea)
	case "test or certified firm":
		if f.Lead == LeadFound {
			return words.Say("Let a firm certified for lead do this job")
		}
		return words.Say("Have the old paint tested for lead, or let a certified firm do this job")
	case "use":
		return f.usedFor()
	case "earth leakage switch":
		if isElsewhere(f.Country) {
			return words.Say("an RCD or GFCI")
		}
		return words.Say("{~an RCD}")
	case "dust mask":
		return f.dustMask()
	case "leaf dust":
		return f.leafDust()
	case "leaf dust limits":
		return f.leafDustLimits()
	case "warmth":
		fahrenheit := f.Warmth.Value.Mul(measure.NumberFromFraction(9, 5)).Add(measure.NumberFromInt(32))
		return words.Say("{celsius} °C ({fahrenheit} °F)", words.Number("celsius", f.Warmth.Value, 1), words.Number("fahrenheit", fahrenheit, 1))
	}
	return nil
}

// yearBuilt is the year the building is from, in words.
func (f *facts) yearBuilt() words.Value {
	if f.Year == 0 {
		return words.Say("nobody knows when")
	}
	return words.Verbatim(strconv.Itoa(f.Year))
}

// usedFor is what the building is used for, in words.
func (f *facts) usedFor() words.Value {
	switch f.Building.Use {
	case Home:
		return words.Say("a home")
	case Children:
		return words.Say("a place young children come to")
	case Public:
		return words.Say("open to the public")
	case Works:
		return words.Say("a place of work")
	}
	return words.Say("use not said")
}

// dustMask is the finest filter for dust, by its name in the country.
func (f *facts) dustMask() words.Value {
	switch f.Country {
	case US:
		return words.Verbatim("P100")
	case UK, EU:
		return words.Verbatim("P3")
	}
	return words.Say("P100 or P3")
}

// leafDust is what the crumbs of the leaf hold that is bad to breathe.
func (f *facts) leafDust() words.Value {
	switch {
	case f.lays(Silver) && f.lays(Imitation, Copper):
		return words.Say("copper and silver")
	case f.lays(Silver):
		return words.Say("silver")
	}
	return words.Say("copper")
}

// leafDustLimits is how much of it the air may hold; of silver far less.
func (f *facts) leafDustLimits() words.Value {
	const copper, silver = "copper 1 mg/m³", "silver 0.01 mg/m³ in the US, 0.1 mg/m³ in the UK and the EU"
	switch {
	case f.lays(Silver) && f.lays(Imitation, Copper):
		return words.Say(copper + "; " + silver)
	case f.lays(Silver):
		return words.Say(silver)
	}
	return words.Say(copper)
}
