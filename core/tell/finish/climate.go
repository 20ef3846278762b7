package finish

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Climate tells whether it is fit to paint, with the dew point, and how long drying
// takes.
func Climate(p *page.Page, j *job.Job) {
	c, out := &j.Judged, &p.Sheet.Climate
	out.Verdict = string(c.Verdict)
	if c.Dew.Known {
		dewFigure(p, c)
		out.Dew = p.Say("{dew}", c.Degrees("dew", c.Dew.Value))
	}
	if c.Margin.Known {
		marginFigure(p, c)
		out.Margin = p.Say("{margin}", c.Difference("margin", c.Margin.Value))
	}
	out.Text, out.Drying = p.Told(verdict(c)), p.Told(drying(c))
}

// oneScale is a figure in degrees: in the scale of the thermometer, and in the other.
func oneScale(inFahrenheit bool, fahrenheit, celsius measure.Number) (text, other string) {
	f, c := finish.Tenth(fahrenheit)+" °F", finish.Tenth(celsius)+" °C"
	if inFahrenheit {
		return f, c
	}
	return c, f
}

func dewFigure(p *page.Page, c *steps.Judged) {
	dew, air := c.Dew.Value, finish.Tenth(c.Air.Value)
	text, other := oneScale(c.Fahrenheit, finish.InFahrenheit(dew), dew)
	p.Figure(sheet.Figure{ID: "dew.point", Block: page.Finish, Label: p.Say("dew point"), Value: page.Plain(dew), Unit: "C", Text: text, Other: other,
		Working: sheet.Working{
			Rule: p.Say("The temperature at which this air begins to give off water: on anything colder, water settles."),
			Sum: p.Say("243.12 × g ÷ (17.62 − g) with g = ln {humidity} + 17.62 × {air} ÷ (243.12 + {air}), air in °C, = {dew}",
				words.Share("humidity", c.Humidity.Value), words.Name("air", air), c.Degrees("dew", dew)),
			Source: p.Say("Magnus formula with the constants of WMO-No. 8, annex 4.B: 17.62 and 243.12 °C."),
		}})
}

func marginFigure(p *page.Page, c *steps.Judged) {
	m := c.Margin.Value
	text, other := oneScale(c.Fahrenheit, m.Mul(measure.NumberFromFraction(9, 5)), m)
	p.Figure(sheet.Figure{ID: "dew.margin", Block: page.Finish, Label: p.Say("ceiling above the dew point"), Value: page.Plain(m), Unit: "C", Text: text, Other: other,
		Working: sheet.Working{
			Rule: p.Told(words.Sentences(words.Say("The temperature of the ceiling less the dew point."), leastMargins(c))),
			Sum: p.Say("{ceiling} − {dew} = {margin}", c.Degrees("ceiling", c.Surface.Value), c.Degrees("dew", c.Dew.Value),
				c.Difference("margin", m)),
			Source: p.Say("At least 3 °C above: a book on marine painting. At least 5 °F above and rising: MIL-HDBK-1110 §9.6.6. They are not the same; the stricter holds."),
		}})
}

// leastMargins are both rules for the margin.
func leastMargins(c *steps.Judged) words.Text {
	return words.Say("At least {one}, or by the other rule {other}.", c.Difference("one", finish.LeastMargin()), c.Difference("other", finish.LeastMarginFahrenheit()))
}

// verdict is whether it is fit to paint.
func verdict(c *steps.Judged) words.Text {
	switch c.Verdict {
	case finish.Go:
		return words.Sentences(words.Say("Fit to paint: the ceiling is {margin} above the dew point.", c.Difference("margin", c.Margin.Value)), leastMargins(c),
			words.Say("Measure again near the work about every 4 hours."))
	case finish.Unfit:
		texts := []words.Text{words.Say("Do not paint yet.")}
		for _, p := range c.Problems {
			if p.Severity == problem.Stop {
				texts = append(texts, p.What)
			}
		}
		return words.Sentences(texts...)
	case finish.Unsure:
		return lacking(c)
	}
	return words.Text{}
}

// lacking is what has to be measured before anything can be said.
func lacking(c *steps.Judged) words.Text {
	var missing []words.Text
	if !c.Air.Known {
		missing = append(missing, words.Say("the air"))
	}
	if !c.Surface.Known {
		missing = append(missing, words.Say("the ceiling itself"))
	}
	if !c.Humidity.Known {
		missing = append(missing, words.Say("the humidity"))
	}
	if len(missing) == 0 && len(c.Problems) > 0 {
		return words.Say("Not known yet whether it is fit to paint: a reading cannot be right.")
	}
	return words.Say("Not known yet whether it is fit to paint: measure {missing}.", words.Texts("missing", missing))
}

// drying is how long what the steps use takes to dry.
func drying(c *steps.Judged) words.Text {
	var by words.Text
	water, oil := words.Trimmed("water", c.Water.Value, 1), words.Trimmed("oil", c.Oil.Value, 1)
	switch {
	case c.Water.Known && c.Oil.Known:
		by = words.Say("Drying, by a rule of thumb: what is thinned with water about {water} times, oil and alkyd about {oil} times the hours on the label.", water, oil)
	case c.Water.Known:
		by = words.Say("Drying, by a rule of thumb: what is thinned with water about {water} times the hours on the label.", water)
	case c.Oil.Known:
		by = words.Say("Drying, by a rule of thumb: oil and alkyd about {oil} times the hours on the label.", oil)
	default:
		return words.Text{}
	}
	one, counted := measure.NumberFromInt(1), words.Text{}
	is := func(r measure.Fact, sign int) bool { return r.Known && r.Value.Cmp(one) == sign }
	switch {
	case is(c.Water, 1) || is(c.Oil, 1):
		counted = words.Say("The days count the longer hours, but not for size: a test patch decides there.")
	case is(c.Water, -1) || is(c.Oil, -1):
		counted = words.Say("The days count the label’s own hours all the same.")
	}
	return words.Sentences(by, counted, words.Say("Thick coats and still air take longer yet."))
}
