package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

var (
	// nearFlammable is mg/m³, a tenth of the lower limit of burning: 0.6 % for white
	// spirit, the cautious one of the common thinners, of 140 g a mole (both from
	// memory), at 24.45 L a mole is 34 356 mg/m³; rounded down. Turpentine, 0.8 %, would
	// have 4450.
	nearFlammable = measure.NumberFromInt(3400)
	mostChanges   = measure.NumberFromInt(60) // an hour: more than windows and a fan bring to a room, common practice, no source
)

// averageOverLimit: in the worst working day the products together are above
// what is allowed over eight hours.
func (f *facts) averageOverLimit() bool { return exceeds(f.course.Share, measure.FactOf(once), once) }

// shortOverLimit: the worst quarter of an hour is above what is allowed for one.
func (f *facts) shortOverLimit() bool { return exceeds(f.course.ShortPart, measure.FactOf(once), once) }

// nearLimit: the products are above half of what is allowed over eight hours, or
// for a quarter of an hour with people in the room.
func (f *facts) nearLimit() bool {
	return exceeds(f.course.Share, measure.FactOf(half), once) || exceeds(f.course.ShortPart, measure.FactOf(half), once)
}

// shutOverLimit: the air comes above the limit while the room is shut and nobody
// is at work; where the days are not known, when one coat has dried in the shut
// room.
func (f *facts) shutOverLimit() bool {
	if f.Air.Nights == air.NightsOpen {
		return false
	}
	return exceeds(f.course.NightPart, measure.FactOf(once), once) || !f.course.NightPart.Known && exceeds(f.air.Shut, air.Positive(f.Air.Limit), once)
}

func (f *facts) nightLevel() measure.Fact {
	if f.course.NightPart.Known {
		return f.course.Night
	}
	return f.air.Shut
}

func (f *facts) nightPart() measure.Fact {
	if f.course.NightPart.Known {
		return f.course.NightPart
	}
	if limit := air.Positive(f.Air.Limit); limit.Known {
		return measure.FactOf(f.air.Shut.Value.Quo(limit.Value))
	}
	return measure.Fact{}
}

func (f *facts) givesOff() bool { return f.air.Mass.Known && f.air.Mass.Value.Sign() > 0 }

func (f *facts) staysOut() bool {
	wait := air.Wait(f.air, f.course)
	return wait.Known && wait.Value.Sign() > 0
}

// mayBurnAsPlanned: the vapour of what may burn comes near what can burn; where
// its course is not known, all of it at once.
func (f *facts) mayBurnAsPlanned() bool {
	highest := f.course.Burning
	if !highest.Known {
		highest = f.burningPeak
	}
	return exceeds(highest, measure.FactOf(nearFlammable), once)
}

// mayBeShut: nobody has said that fresh air comes in day and night.
func (f *facts) mayBeShut() bool {
	return f.Air.Nights != air.NightsOpen || !air.Positive(f.Air.Opened).Known
}

func isWaterBorne(product air.Product) bool {
	return product.Binder == air.Water && !air.IsZero(product.Litres)
}

func isSprayed(product air.Product) bool { return product.Sprayed }

func isTwoPack(product air.Product) bool { return product.Category == air.TwoPack }

func isSprayedTwoPack(product air.Product) bool {
	return product.Sprayed && product.Category == air.TwoPack
}

func isUnsplit(product air.Product) bool { return product.Unsplit }

// addsFumes: thinned with something that evaporates into the air.
func addsFumes(product air.Product) bool {
	return product.Thinner.Sign() > 0 && product.Binder != air.Water
}

// cleansWithSolvent: its brushes are not washed in water.
func cleansWithSolvent(product air.Product) bool {
	return product.Binder == air.Solvent || product.Binder == air.DryingOil
}

func isUncounted(product air.Product) bool {
	if air.IsZero(product.VOC) || air.IsZero(product.Litres) {
		return false
	}
	return air.Lacks(product)
}

// burningLitres is how much is used of the products that may burn, as far as
// known.
func (f *facts) burningLitres() measure.Volume {
	var sum measure.Volume
	for _, product := range f.steps(air.MayBurn) {
		if product.Litres.Known {
			sum = sum.Add(measure.Volume{Litres: product.Litres.Value})
		}
	}
	return sum
}

// flashPoints is what is known of the flash points of the products that may burn.
func (f *facts) flashPoints() words.Value {
	var list []words.Text
	for _, p := range f.steps(air.MayBurn) {
		name := words.Name("name", air.Named(p))
		if p.FlashPoint.Known {
			list = append(list, words.Say("{name} {degrees}", name, words.Of("degrees", degrees(p.FlashPoint.Value))))
		} else {
			list = append(list, words.Say("{name} not given", name))
		}
	}
	return words.Say("Flash point: {list}", words.Texts("list", list))
}

// degrees is a temperature in both units, down to a tenth: what is below a limit
// never reads as the limit.
func degrees(celsius measure.Number) words.Text {
	fahrenheit := celsius.Mul(measure.NumberFromFraction(9, 5)).Add(measure.NumberFromInt(32))
	return words.Say("{celsius} °C ({fahrenheit} °F)", words.Number("celsius", air.RoundDown(celsius, 10), 1), words.Number("fahrenheit", air.RoundDown(fahrenheit, 10), 1))
}

// overCategory are the products that hold more solvent than their category may.
func (f *facts) overCategory() []air.Product {
	return f.steps(func(p air.Product) bool {
		limit, named := air.VOCLimitFor(f.Country, p.Category, p.Binder)
		holds, known := air.Holds(p, limit.LessWater)
		return named && known && holds.Against(limit.Limit, p.InPounds && limit.LessWater) == air.Above
	})
}

func atOverCategory(f *facts) string {
	if over := f.overCategory(); len(over) > 0 {
		return over[0].At + "/category"
	}
	return "/finish/steps"
}

// holdsAndMay is what the first product above its category holds, and may hold.
func (f *facts) holdsAndMay() words.Value {
	over := f.overCategory()
	if len(over) == 0 {
		return nil
	}
	limit, _ := air.VOCLimitFor(f.Country, over[0].Category, over[0].Binder)
	holds, _ := air.Holds(over[0], limit.LessWater)
	return words.Say("{name} {holds}, and {limit} is the most", words.Name("name", air.Named(over[0])), words.Of("holds", litreful(holds.Least)), words.Of("limit", litreful(limit.Limit)))
}

// thinning is what the thinner does to the first product thinned with solvent.
func (f *facts) thinning() words.Value {
	thinned := f.steps(addsFumes)
	if len(thinned) == 0 {
		return nil
	}
	p := thinned[0]
	name, share := words.Name("name", air.Named(p)), words.Number("share", p.Thinner.Mul(measure.NumberFromInt(100)), 0)
	if !p.Label.Known {
		return words.Say("{name}: {share} % of thinner", name, share)
	}
	return words.Say("{name}: {label} on the label, {used} with {share} % of thinner", name, words.Of("label", litreful(p.Label.Value)), words.Of("used", litreful(p.VOC.Value)), share)
}

// airAmount is what a word in braces stands for in the rules about air and fire.
func (f *facts) airAmount(name string) words.Value {
	switch name {
	case "average":
		return level(f.course.Average)
	case "share":
		return air.Share(f.course.Share.Value)
	case "short limit":
		return f.shortLimit()
	case "short share":
		return air.Share(f.course.ShortPart.Value)
	case "level":
		return level(f.course.ShortTerm)
	case "bring":
		return f.bring()
	case "spare":
		return f.spare()
	case "night level":
		return level(f.nightLevel())
	case "night share":
		return air.Share(f.nightPart().Value)
	case "burning peak":
		return level(f.burningPeak)
	case "burning as planned":
		if f.course.Burning.Known {
			return words.Say("{level} as planned", words.Of("level", level(f.course.Burning)))
		}
		return words.Say("{level} all at once", words.Of("level", level(f.burningPeak)))
	case "near flammable":
		return level(measure.FactOf(nearFlammable))
	case "wait":
		return air.Hours(air.Wait(f.air, f.course).Value)
	case "burning amount":
		litres := f.burningLitres().Litres
		return words.Say("{litres} L, {gallons} US gallons", words.Number("litres", air.RoundUp(litres, 10), 1), words.Number("gallons", air.RoundUp(litres.Quo(measure.USGallon), 10), 1))
	case "flash points":
		return f.flashPoints()
	case "holds and may":
		return f.holdsAndMay()
	case "thinning":
		return f.thinning()
	case "steps over category":
		return air.Names(f.overCategory())
	}
	return nil
}

func level(fact measure.Fact) words.Text {
	return words.Say("{level} mg/m³", words.Number("level", fact.Value, 0))
}

// litreful is grams in a litre, up to a tenth: what is above a limit never reads
// as the limit.
func litreful(grams measure.Number) words.Text {
	return words.Say("{grams} g/L", words.Number("grams", air.RoundUp(grams, 10), 1))
}

// shortLimit is what is allowed for a quarter of an hour.
func (f *facts) shortLimit() words.Value {
	if short := air.Positive(f.Air.ShortTerm); short.Known {
		return words.Say("{level} for fifteen minutes", words.Of("level", level(short)))
	}
	return words.Say("three times the eight-hour limit, as none is given for fifteen minutes")
}

// bring is the fresh air that keeps people below the limits.
func (f *facts) bring() words.Value {
	if c := f.course.Needed.Changes; c.Known && c.Value.Cmp(mostChanges) <= 0 {
		return words.Say("Bring at least {air}, or use less, or another product", words.Of("air", f.freshAir(c)))
	}
	return words.Say("Use less, or another product: no windows and fan bring fresh air enough")
}

// spare is the fresh air that leaves half of what is allowed to spare.
func (f *facts) spare() words.Value {
	if c := air.AmpleAir(f.Job.Job).Changes; c.Known && c.Value.Cmp(mostChanges) <= 0 {
		return words.Say("Bring {air} where you can", words.Of("air", f.freshAir(c)))
	}
	return words.Say("Use less, or bring more fresh air, where you can")
}

// freshAir is so many air changes an hour, and what they are in a fan's own
// measure.
func (f *facts) freshAir(changes measure.Fact) words.Text {
	n := words.Number("n", changes.Value, 1)
	flow := words.Of("flow", air.Flow(changes.Value.Mul(f.RoomVolume.Litres).Quo(measure.CubicMetre)))
	if air.Positive(f.Air.Fan).Known {
		return words.Say("{n} air changes an hour ({flow} of fresh air) besides the fan’s", n, flow)
	}
	return words.Say("{n} air changes an hour ({flow} of fresh air)", n, flow)
}
