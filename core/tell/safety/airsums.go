package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// sum writes a sum out with numbers of so many decimals, and says what they come
// to as written.
type sum func(places int32) (text string, result measure.Number)

// mostDecimals is how many decimals a number put into a sum has at most.
const mostDecimals = 6

// closing is a sum with as few decimals, from a least number on, as let a reader
// who works it out come to the figure that is shown, which has so many places.
func closing(shown measure.Number, places, least int32, sum sum) string {
	text, result := sum(least)
	for more := least + 1; more <= mostDecimals && !result.RoundHalfEven(places).Equal(shown.RoundHalfEven(places)); more++ {
		text, result = sum(more)
	}
	return text
}

// rounded is a number as it is put into a sum.
func rounded(n measure.Number, places int32) measure.Number {
	return measure.NumberFromDecimal(n.RoundHalfEven(places))
}

// over is a divided by b, and 0 where b came to nothing when it was rounded: such
// a sum is tried again with more decimals.
func over(a, b measure.Number) measure.Number {
	if b.IsZero() {
		return b
	}
	return a.Quo(b)
}

// masses is what each product gives off.
func (t *teller) masses() sum {
	return func(places int32) (text string, result measure.Number) {
		for i := range t.facts.Products {
			p := &t.facts.Products[i]
			if !air.IsCounted(*p) || p.VOC.Value.IsZero() {
				continue
			}
			if text != "" {
				text += " + "
			}
			holds, grams := t.inLitre(p, places)
			text += t.Notation.Number(p.Litres.Value, places+1) + " L × " + holds
			result = result.Add(rounded(p.Litres.Value, places+1).Mul(grams))
		}
		if text == "" {
			text = "0 L"
		}
		return text, result
	}
}

// inLitre is the solvent in a litre of a product as it is used, from what its
// label says.
func (t *teller) inLitre(p *air.Product, places int32) (text string, grams measure.Number) {
	one := measure.NumberFromInt(1)
	text, grams = t.Notation.NumberTrimmed(p.Label.Value, places)+" g/L", rounded(p.Label.Value, places)
	if rest := one.Sub(p.Water.Value).Sub(p.Exempt); p.LessWater && !p.Unsplit && rest.Cmp(one) != 0 {
		text += " × " + t.Share(rest)
		grams = grams.Mul(rest)
	}
	if p.Thinner.Sign() <= 0 {
		return text, grams
	}
	if p.Binder != air.Water {
		text = "(" + text + " + " + t.Share(p.Thinner) + " × " + t.Notation.NumberTrimmed(air.ThinnerDensity(), 0) + " g/L)"
		grams = grams.Add(p.Thinner.Mul(air.ThinnerDensity()))
	}
	return text + " ÷ " + t.Share(one.Add(p.Thinner)), grams.Quo(one.Add(p.Thinner))
}

// inRoom is grams in the air of the room, in milligrams a cubic metre.
func (t *teller) inRoom(grams measure.Number) sum {
	return func(places int32) (string, measure.Number) {
		by, room := t.overRoom(t.facts.RoomVolume, places)
		return t.Notation.Number(grams, places) + " g" + by, over(rounded(grams, places), room)
	}
}

// overRoom divides grams by the room, and gives what they are divided by.
func (t *teller) overRoom(volume measure.Volume, places int32) (text string, by measure.Number) {
	room := volume.Litres.Quo(measure.CubicMetre)
	return " × 1000 mg/g ÷ " + t.Notation.Number(room, places+1) + " m³", rounded(room, places+1).Quo(measure.NumberFromInt(1000))
}

// peakSum is what was given off until the highest point of the course, less what
// was carried out by then.
func (t *teller) peakSum() sum {
	c := &t.Air.Course
	return func(places int32) (string, measure.Number) {
		by, room := t.overRoom(t.facts.RoomVolume, places)
		left := rounded(c.Given.Value, places).Sub(rounded(c.Carried.Value, places))
		return "(" + t.Notation.Number(c.Given.Value, places) + " g − " + t.Notation.Number(c.Carried.Value, places) + " g)" + by, over(left, room)
	}
}

// balanceSum is the average over so many hours of a stretch with people in the
// room.
func (t *teller) balanceSum(of air.Balance, hours measure.Number) sum {
	return func(places int32) (string, measure.Number) {
		level := func(f measure.Fact) string { return t.Notation.Number(f.Value, places) + " mg/m³" }
		out := rounded(of.Before.Value, places).Add(rounded(of.Given.Value, places)).Sub(rounded(of.After.Value, places))
		opened, changes := t.anHour(t.facts.Air.Opened.Value, mostDecimals), rounded(t.facts.Air.Opened.Value, mostDecimals)
		if fan := t.facts.Air.Fan; fan.Known && fan.Value.Sign() > 0 {
			brings := fan.Value.Mul(measure.CubicMetre).Quo(t.facts.RoomVolume.Litres)
			opened, changes = "("+opened+" + "+t.Say("{n} an hour", words.Number("n", brings, places))+")", changes.Add(rounded(brings, places))
		}
		mixing, time := rounded(t.facts.Air.Mixing.Value, mostDecimals), rounded(hours, places+1)
		text := "(" + level(of.Before) + " + " + level(of.Given) + " − " + level(of.After) + ") ÷ (" +
			opened + " ÷ " + t.Notation.NumberTrimmed(mixing, mostDecimals) + " × " + t.Notation.NumberTrimmed(time, places+1) + " h)"
		return text, over(out, over(changes, mixing).Mul(time))
	}
}

// anHour is so many an hour, with at most so many decimals.
func (t *teller) anHour(n measure.Number, places int32) string {
	return t.Say("{n} an hour", words.Trimmed("n", n, places))
}

// minutes is a time in hours that was counted in minutes.
func (t *teller) minutes(hours measure.Number) sum {
	return func(int32) (string, measure.Number) {
		return t.Notation.NumberTrimmed(hours.Mul(measure.NumberFromInt(60)), 0) + " min ÷ 60 min/h", hours
	}
}

// sharesSum is each average by its limit.
func (t *teller) sharesSum(of []air.OfLimit) sum {
	return func(places int32) (text string, result measure.Number) {
		for _, part := range of {
			if text != "" {
				text += " + "
			}
			text += t.Notation.Number(part.Average.Value, places) + " mg/m³ ÷ " + t.Notation.NumberTrimmed(part.Limit.Value, 3) + " mg/m³"
			result = result.Add(over(rounded(part.Average.Value, places), rounded(part.Limit.Value, 3)))
		}
		if text == "" {
			text = "0 mg/m³"
		}
		return text, result
	}
}

// flowSum is so many air changes an hour times the room.
func (t *teller) flowSum(written string, changes measure.Number, room measure.Volume) string {
	metric := t.Notation.System != measure.FeetInches
	volume, unit, places := room.Litres.Quo(measure.CubicMetre), " m³", int32(1)
	shown := changes.Mul(volume)
	if !metric {
		volume, unit, places = room.Litres.Quo(measure.CubicFoot), " ft³ ÷ 60 min/h", 0
		shown = shown.Quo(measure.CubicFootAMinute)
	}
	return closing(shown, 0, places, func(places int32) (string, measure.Number) {
		result := changes.Mul(rounded(volume, places))
		if !metric {
			result = result.Quo(measure.NumberFromInt(60))
		}
		return written + " × " + t.Notation.Number(volume, places) + unit, result
	})
}

// purged is the airing written out; a peak that the limit allows needs none.
func (t *teller) purged() sum {
	limit, mixing, opened := t.facts.Air.Limit.Value, t.facts.Air.Mixing.Value, t.facts.Air.Opened.Value
	return func(places int32) (string, measure.Number) {
		ratio := rounded(t.Air.Peak.Value, places-1).Quo(limit)
		if ratio.Cmp(measure.NumberFromInt(1)) <= 0 {
			return t.Say("{peak} mg/m³ is not above {limit} mg/m³", words.Trimmed("peak", t.Air.Peak.Value, places-1), words.Trimmed("limit", limit, 3)), measure.Number{}
		}
		text := t.Notation.NumberTrimmed(mixing, mostDecimals) + " ÷ " + t.anHour(opened, mostDecimals) + " × ln(" + t.Notation.NumberTrimmed(t.Air.Peak.Value, places-1) + " mg/m³ ÷ " + t.Notation.NumberTrimmed(limit, 3) + " mg/m³)"
		return text, mixing.Quo(opened).Mul(logarithm(ratio))
	}
}

// logarithm is the natural one, to twelve decimals.
func logarithm(n measure.Number) measure.Number {
	const part = 1_000_000_000_000
	return measure.NumberFromFraction(int64(measure.NaturalLog(n.Float())*part), part)
}
