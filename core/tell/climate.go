package tell

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

const (
	dewSource    = "Magnus formula with the constants of WMO-No. 8, annex 4.B: 17.62 and 243.12 °C."
	marginSource = "At least 3 °C above: a book on marine painting. At least 5 °F above and rising: MIL-HDBK-1110 §9.6.6. They are not the same; the stricter holds."
)

// climate is whether it is fit to paint, with the dew point, and how long drying
// takes.
func (b *builder) climate() {
	c := b.Climate()
	fit, problems := c.Judge()
	b.Report("/finish/climate", problems)
	out := &b.Sheet.Climate
	out.Verdict = string(fit.Verdict)
	if fit.Dew.Known {
		b.dewFigure(c, fit.Dew.Value)
		out.Dew = c.Degrees(fit.Dew.Value)
	}
	if fit.Margin.Known {
		b.marginFigure(c, fit)
		out.Margin = c.Difference(fit.Margin.Value)
	}
	out.Text = climateText(c, fit, problems, b.Told)
	if fit.Verdict != finish.NotAsked {
		out.Drying = b.dryingText(c)
		b.sizeInClimate(c)
	}
}

// oneScale is a figure in degrees: in the scale of the thermometer, and in the
// other.
func oneScale(fahrenheit bool, f, c string) (text, other string) {
	if fahrenheit {
		return f + " °F", c + " °C"
	}
	return c + " °C", f + " °F"
}

func (b *builder) dewFigure(c finish.Climate, dew measure.Number) {
	text, other := oneScale(c.Fahrenheit, finish.Tenth(finish.InFahrenheit(dew)), finish.Tenth(dew))
	air := finish.Tenth(c.Air.Value)
	b.Figure(sheet.Figure{ID: "dew.point", Block: page.Finish, Label: "dew point", Value: page.Plain(dew), Unit: "C", Text: text, Other: other,
		Working: sheet.Working{
			Rule: "The temperature at which this air begins to give off water: on anything colder, water settles.",
			Sum: "243.12 × g ÷ (17.62 − g) with g = ln " + b.Share(c.Humidity.Value) + " + 17.62 × " + air + " ÷ (243.12 + " + air + "), air in °C, = " +
				c.Degrees(dew),
			Source: dewSource,
		}})
}

func (b *builder) marginFigure(c finish.Climate, fit finish.Fit) {
	m := fit.Margin.Value
	text, other := oneScale(c.Fahrenheit, finish.Tenth(m.Mul(measure.NumberFromFraction(9, 5))), finish.Tenth(m))
	b.Figure(sheet.Figure{ID: "dew.margin", Block: page.Finish, Label: "ceiling above the dew point", Value: page.Plain(m), Unit: "C", Text: text, Other: other,
		Working: sheet.Working{
			Rule:   "The temperature of the ceiling less the dew point. At least " + leastMargins(c) + ".",
			Sum:    c.Degrees(c.Surface.Value) + " − " + c.Degrees(fit.Dew.Value) + " = " + c.Difference(m),
			Source: marginSource,
		}})
}

// leastMargins are both rules for the margin.
func leastMargins(c finish.Climate) string {
	return c.Difference(finish.LeastMargin()) + ", or by the other rule " + c.Difference(finish.LeastMarginFahrenheit())
}

// climateText is the verdict in words.
func climateText(c finish.Climate, fit finish.Fit, problems []problem.Problem, told func(words.Text) string) string {
	switch fit.Verdict {
	case finish.Go:
		return "Fit to paint: the ceiling is " + c.Difference(fit.Margin.Value) + " above the dew point. At least " + leastMargins(c) +
			". Measure again near the work about every 4 hours."
	case finish.Unfit:
		text := "Do not paint yet."
		for _, p := range problems {
			if p.Severity == problem.Stop {
				text += " " + told(p.What)
			}
		}
		return text
	case finish.Unsure:
		return "Not known yet whether it is fit to paint: " + lacking(c, problems) + "."
	}
	return ""
}

// lacking is what has to be measured before anything can be said.
func lacking(c finish.Climate, problems []problem.Problem) string {
	var missing []string
	for _, r := range []struct {
		known bool
		name  string
	}{{c.Air.Known, "the air"}, {c.Surface.Known, "the ceiling itself"}, {c.Humidity.Known, "the humidity"}} {
		if !r.known {
			missing = append(missing, r.name)
		}
	}
	if len(missing) == 0 && len(problems) > 0 {
		return "a reading cannot be right"
	}
	return "measure " + problem.Listed(missing)
}

func (b *builder) times(factor measure.Number) string {
	return "about " + b.Notation.NumberTrimmed(factor, 1) + " times"
}

// dryingText is how long what the steps use takes to dry.
func (b *builder) dryingText(c finish.Climate) string {
	text, longer, shorter := "", false, false
	for _, k := range []struct {
		by   finish.Drying
		name string
	}{{finish.Evaporates, "what is thinned with water"}, {finish.Reacts, "oil and alkyd"}} {
		factor, ok := c.DryingFactor(k.by)
		if !ok || !b.isUsed(k.by) {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += k.name + " " + b.times(factor)
		switch factor.Cmp(measure.NumberFromInt(1)) {
		case 1:
			longer = true
		case -1:
			shorter = true
		}
	}
	switch {
	case text == "":
		return ""
	case longer:
		text += " the hours on the label. The days count the longer hours, but not for size: a test patch decides there."
	case shorter:
		text += " the hours on the label. The days count the label’s own hours all the same."
	default:
		text += " the hours on the label."
	}
	return "Drying, by a rule of thumb: " + text + " Thick coats and still air take longer yet."
}

// isUsed tells whether a step dries this way.
func (b *builder) isUsed(by finish.Drying) bool {
	for i := range b.Plan.Steps {
		if s := &b.Plan.Steps[i]; s.Kind.IsLiquid() && job.Dries(s) == by {
			return true
		}
	}
	return false
}

// sizeInClimate says of every size that its tack is not what the label says,
// where the climate is not that of the label.
func (b *builder) sizeInClimate(c finish.Climate) {
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		if s.Kind != finish.SizeCoat {
			continue
		}
		factor, ok := c.DryingFactor(job.Dries(s))
		if off := factor.Sub(measure.NumberFromInt(1)).Abs(); !ok || off.Cmp(measure.NumberFromFraction(1, 10)) <= 0 {
			continue
		}
		b.Report(s.At+"/tackHours", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("In the climate measured “" + s.Name + "” may take " + b.times(factor) + " the hours of its label to come to tack. The days do not count that."),
			Do:   words.Say("Lay a test patch and go by it.")}})
	}
}
