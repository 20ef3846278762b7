package finish

import (
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Climate is what was measured where the paint goes on: the temperature of the
// air and of the surface in degrees Celsius, and the relative humidity of the air
// as a fraction. Problems name temperatures in both scales, the one of the
// thermometer first.
type Climate struct {
	Air, Surface, Humidity measure.Fact
	Fahrenheit             bool
}

// Fit is whether it is fit to paint. Dew is the dew point of the air and Margin
// how far the surface is above it, both in degrees Celsius, below 0 where it is
// colder. Verdict is NotAsked where nothing was measured, Unfit as soon as one
// reading alone forbids it, and Unsure where a reading is missing.
type Fit struct {
	Dew, Margin measure.Fact
	Verdict     Verdict
}

// Verdict is the answer whether it is fit to paint.
type Verdict string

// The answers.
const (
	NotAsked Verdict = ""
	Go       Verdict = "go"
	Unfit    Verdict = "stop"
	Unsure   Verdict = "unknown"
)

// The limits. Air and surface 45 to 90 °F for most paints: MIL-HDBK-1110 §7.4.1.
// Below 50 °F another Army manual would not paint: TM 43-0139 ¶5-31. Humidity 40
// to 75 %: TM 55-1500-345-23; below 85 % in a city's paint specification. The
// surface above the dew point by 5 °F and rising: MIL-HDBK-1110 §9.6.6; by 3 °C
// in a book on marine painting. 3 °C are 5.4 °F: the stricter holds.
var (
	coldest   = Fahrenheit(45)
	cool      = Fahrenheit(50)
	hottest   = Fahrenheit(90)
	dry       = measure.NumberFromFraction(40, 100)
	damp      = measure.NumberFromFraction(85, 100)
	leastGap  = measure.NumberFromInt(3)
	leastGapF = measure.NumberFromFraction(25, 9)
)

// LeastMargin is how far above the dew point a surface must be, in degrees
// Celsius: 3. LeastMarginFahrenheit is the 5 °F of the other rule, in degrees
// Celsius too.
func LeastMargin() measure.Number { return leastGap }

// LeastMarginFahrenheit is 5 °F as a difference in degrees Celsius, 25/9.
func LeastMarginFahrenheit() measure.Number { return leastGapF }

// Fahrenheit is f degrees Fahrenheit in degrees Celsius, exactly.
func Fahrenheit(f int64) measure.Number { return measure.NumberFromFraction((f-32)*5, 9) }

// InFahrenheit is a temperature of c degrees Celsius in degrees Fahrenheit,
// exactly.
func InFahrenheit(c measure.Number) measure.Number {
	return c.Mul(measure.NumberFromFraction(9, 5)).Add(measure.NumberFromInt(32))
}

// The range of the formula over water (WMO-No. 8, annex 4.B), and what no
// thermometer in a room reads: outside it a reading is refused.
var (
	leastTemperature    = measure.NumberFromInt(-45)
	greatestTemperature = measure.NumberFromInt(60)
)

// IsReadable tells whether a thermometer in a room can read c degrees Celsius.
func IsReadable(c measure.Number) bool {
	return c.Cmp(leastTemperature) >= 0 && c.Cmp(greatestTemperature) <= 0
}

// Judge tells whether it is fit to paint. The problems are at /air, /surface and
// /humidity; a cold or hot surface, a surface near the dew point and a reading
// that no instrument gives are stops.
func (c Climate) Judge() (fit Fit, problems []problem.Problem) {
	given := c.Air.Known || c.Surface.Known || c.Humidity.Known
	if !given {
		return fit, nil
	}
	if problems = c.refusals(); len(problems) > 0 {
		return Fit{Verdict: Unsure}, problems
	}
	problems = append(c.tooColdOrHot(c.Air, true), c.tooColdOrHot(c.Surface, false)...)
	problems = append(problems, c.humidityRemarks()...)
	if c.Air.Known && c.Humidity.Known {
		fit.Dew = measure.FactOf(DewPoint(c.Air.Value, c.Humidity.Value))
	}
	if fit.Dew.Known && c.Surface.Known {
		fit.Margin = measure.FactOf(c.Surface.Value.Sub(fit.Dew.Value))
		problems = append(problems, c.nearDew(fit.Margin.Value)...)
	}
	fit.Verdict = Go
	if !fit.Margin.Known {
		fit.Verdict = Unsure
	}
	for _, p := range problems {
		if p.Severity == problem.Stop {
			fit.Verdict = Unfit
		}
	}
	return fit, problems
}

func (c Climate) refusals() []problem.Problem {
	var found []problem.Problem
	do := words.Say("Check the reading and its unit.")
	if c.Air.Known && !IsReadable(c.Air.Value) {
		found = append(found, problem.Problem{At: "/air", Severity: problem.Stop, What: words.Say("The air would be at {at}.", c.Degrees("at", c.Air.Value)), Do: do})
	}
	if c.Surface.Known && !IsReadable(c.Surface.Value) {
		found = append(found, problem.Problem{At: "/surface", Severity: problem.Stop, What: words.Say("The surface would be at {at}.", c.Degrees("at", c.Surface.Value)), Do: do})
	}
	if h := c.Humidity; h.Known && (h.Value.Sign() <= 0 || h.Value.Cmp(measure.NumberFromInt(1)) > 0) {
		found = append(found, problem.Problem{At: "/humidity", Severity: problem.Stop,
			What: words.Say("The humidity is {humidity}, which no air has.", words.PerCent("humidity", h.Value)),
			Do:   words.Say("Give the relative humidity that the instrument shows, above 0 and up to 100 per cent.")})
	}
	return found
}

// tooColdOrHot judges the temperature of the air, or of the surface.
func (c Climate) tooColdOrHot(r measure.Fact, ofAir bool) []problem.Problem {
	if !r.Known {
		return nil
	}
	p := problem.Problem{At: "/surface", Severity: problem.Stop}
	if ofAir {
		p.At = "/air"
	}
	at := c.Degrees("at", r.Value)
	switch {
	case r.Value.Cmp(coldest) < 0:
		under, least := c.Difference("under", coldest.Sub(r.Value)), c.Degrees("least", coldest)
		p.What = words.Say("The surface is at {at}, {under} under the least for most paints, {least}.", at, under, least)
		if ofAir {
			p.What = words.Say("The air is at {at}, {under} under the least for most paints, {least}.", at, under, least)
		}
		p.Do = words.Say("Warm the room and let the ceiling come up, or wait.")
	case r.Value.Cmp(hottest) > 0:
		over, most := c.Difference("over", r.Value.Sub(hottest)), c.Degrees("most", hottest)
		p.What = words.Say("The surface is at {at}, {over} over the most for most paints, {most}.", at, over, most)
		if ofAir {
			p.What = words.Say("The air is at {at}, {over} over the most for most paints, {most}.", at, over, most)
		}
		p.Do = words.Say("Wait for a cooler hour; paint that dries too fast cracks.")
	case r.Value.Cmp(cool) < 0:
		least := c.Degrees("least", cool)
		p.What = words.Say("The surface is at {at}; many paints want {least} or more.", at, least)
		if ofAir {
			p.What = words.Say("The air is at {at}; many paints want {least} or more.", at, least)
		}
		p.Severity, p.Do = problem.Caution, words.Say("Read the least temperature on the label.")
	default:
		return nil
	}
	return []problem.Problem{p}
}

func (c Climate) humidityRemarks() []problem.Problem {
	h := c.Humidity
	humidity := words.PerCent("humidity", h.Value)
	switch {
	case !h.Known:
	case h.Value.Cmp(damp) >= 0:
		return []problem.Problem{{At: "/humidity", Severity: problem.Caution,
			What: words.Say("The air is damp, {humidity}: water paint dries slowly and may not knit together.", humidity),
			Do:   words.Say("Air and warm the room until it is below 85 per cent.")}}
	case h.Value.Cmp(dry) < 0:
		return []problem.Problem{{At: "/humidity", Severity: problem.Note,
			What: words.Say("The air is dry, {humidity}: paint and glaze set quickly.", humidity),
			Do:   words.Say("Keep a wet edge and work smaller pieces.")}}
	}
	return nil
}

// nearDew refuses a surface that is less than 3 °C above the dew point.
func (c Climate) nearDew(m measure.Number) []problem.Problem {
	if m.Cmp(leastGap) >= 0 {
		return nil
	}
	what := words.Say("The surface is {above} above the dew point; {least} are asked for, so it is {lacks} too cold.",
		c.Difference("above", m), c.Difference("least", leastGap), c.Difference("lacks", leastGap.Sub(m)))
	switch {
	case m.Sign() < 0:
		what = words.Say("The surface is {below} below the dew point: water settles on it.", c.Difference("below", m.Abs()))
	case m.IsZero():
		what = words.Say("The surface is at the dew point: water settles on it.")
	case m.Cmp(leastGapF) >= 0:
		what = words.Sentences(what, words.Say("By the other rule, 5 °F, it would just do; the stricter holds."))
	default:
		what = words.Sentences(what, words.Say("By the other rule, 5 °F, it is {lacks} too cold.", c.Difference("lacks", leastGapF.Sub(m))))
	}
	return []problem.Problem{{At: "/surface", Severity: problem.Stop, What: what, Do: words.Say("Warm the ceiling or dry the air, and measure again.")}}
}

// degrees is a temperature in both scales, to a tenth, the one of the thermometer first.
type degrees struct {
	fahrenheit, celsius measure.Number
	inFahrenheit        bool
}

// Degrees is a temperature of n degrees Celsius as a thermometer of the plan shows it.
func (c Climate) Degrees(name string, n measure.Number) words.Hole {
	return words.Of(name, degrees{InFahrenheit(n), n, c.Fahrenheit})
}

// Difference is a difference of n degrees Celsius.
func (c Climate) Difference(name string, n measure.Number) words.Hole {
	return words.Of(name, degrees{n.Mul(measure.NumberFromFraction(9, 5)), n, c.Fahrenheit})
}

// In is both scales (words.Value).
func (d degrees) In(words.Style) string {
	f, c := Tenth(d.fahrenheit)+" °F", Tenth(d.celsius)+" °C"
	if d.inFahrenheit {
		return f + " (" + c + ")"
	}
	return c + " (" + f + ")"
}

// Tenth is n to a tenth, as a thermometer shows it.
func Tenth(n measure.Number) string {
	if text, below := strings.CutPrefix(n.RoundHalfEven(1).StringFixed(1), "-"); below {
		return "−" + text
	}
	return n.RoundHalfEven(1).StringFixed(1)
}

// The constants of the Magnus formula over water in degrees Celsius, and the
// saturation vapour pressure at 0 °C in hPa (WMO-No. 8, annex 4.B).
const (
	magnusA  = 17.62
	magnusB  = 243.12
	pressure = 6.112
)

// steps is how finely a figure that has no exact answer is kept: far above the
// last bit, so that every processor gives the same.
const steps = 1_000_000

// DewPoint is the temperature at which air of a temperature and a relative
// humidity begins to give off water, in degrees Celsius to a millionth. Humidity
// is above 0, the temperature in the range of the formula.
//
// Magnus formula, Td = B·g ÷ (A − g) with g = ln(humidity) + A·T ÷ (B + T);
// constants of WMO-No. 8, annex 4.B.
func DewPoint(air, humidity measure.Number) measure.Number {
	t := air.Float()
	g := measure.NaturalLog(humidity.Float()) + float64(magnusA*t)/(magnusB+t)
	return kept(float64(magnusB*g) / (magnusA - g))
}

// saturation is the vapour pressure of air that can take up no more water, in
// hPa.
func saturation(t float64) float64 {
	return float64(pressure * measure.Exp(float64(magnusA*t)/(magnusB+t)))
}
