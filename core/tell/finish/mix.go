package finish

import (
	"slices"
	"strings"

	"ceilingwright/core/days"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/mixing"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// mix is what one batch of a mix comes to, how much of every part is needed, and how
// that is measured.
func (t *teller) mix() {
	m, recipe := &t.taken.Mixed, &t.taken.Recipe
	switch {
	case m.With != t.at:
		if t.Finish.Steps[m.With].Recipe.Known {
			t.out.Sample = t.lines(m.OfSample)
			t.note(words.Say("Mixed together with “{step}”.", t.name("step", m.With)))
		}
		return
	case !recipe.Known:
		if len(t.step.Mix) > 0 && t.out.Buy != "" {
			t.note(words.Say("The mix cannot be worked out yet, so the cans are counted as if nothing were mixed in."))
		}
		return
	}
	if !recipe.OfCan {
		t.batch()
	}
	t.out.Sample = t.lines(m.OfSample)
	if len(m.Made.Portions) == 0 {
		return
	}
	t.made()
	t.cansOfMix()
	if !recipe.OfCan {
		t.batches()
	}
	t.placing()
	t.out.Mix = t.lines(m.Lines)
	t.measuring()
}

// Recipe is a mix as it was written, in one line; none where a part could not be read.
func Recipe(p *page.Page, s *plan.Step) string {
	if !s.MixWhole {
		return ""
	}
	parts := make([]string, len(s.Mix))
	for i, part := range s.Mix {
		parts[i] = part.In(p.Style())
		if part.Name != "" {
			parts[i] += " " + part.Name
		}
	}
	return strings.Join(parts, " + ")
}

// batch is what the parts as they were written come to.
func (t *teller) batch() {
	total := t.taken.Recipe.Mix.Total
	sum, spoons := Recipe(t.Page, t.step), mixing.InUnits(total, measure.UnitTeaspoon).In(t.Style())
	if counted := t.Notation.NumberTrimmed(total.In(measure.UnitTeaspoon), 2) + " tsp"; counted != spoons {
		sum += " = " + counted
	}
	millilitres := t.Notation.NumberTrimmed(total.In(measure.UnitMillilitre), 0) + " mL"
	text, other := spoons, millilitres
	if t.Notation.System == measure.Metric {
		text, other = millilitres, spoons
	}
	source := t.Say("1 US fl oz = 6 tsp (NIST Handbook 44, appendix C).")
	if t.Notation.Imperial {
		source = t.Say("1 US fl oz = 6 tsp, so 1 tsp = 4.929 mL (NIST Handbook 44, appendix C); imperial measures by the gallon of 4.546 09 L.")
	}
	t.Figure(sheet.Figure{
		ID: t.id("mix"), Block: page.Finish, Label: t.Say("one batch of the mix"), Value: page.Plain(total.Litres), Unit: "L", Text: text, Other: other,
		Working: sheet.Working{
			Rule: t.Say("The parts together. A weight is turned into a volume by its density; per cent are of all other parts together by volume."),
			Sum:  sum + " = " + spoons + " = " + millilitres, Source: source,
		},
	})
}

// cansOfMix says what the cans of a mix are counted for.
func (t *teller) cansOfMix() {
	mix := &t.taken.Recipe.Mix
	if main := mix.Main(); main >= 0 && len(t.step.Cans) > 0 && len(mix.Portions) > 1 {
		t.note(words.Say("The cans are counted for “{part}”, {share} of the mix; what is mixed into it stands on the list by itself.",
			words.Of("part", t.taken.Mixed.Lines[main].Part.Called()), words.Share("share", mix.Portions[main].Share)))
	}
}

// made is the mix to make, where that is not simply what the step takes.
func (t *teller) made() {
	m := &t.taken.Mixed
	if t.taken.Known && m.Made.Total.Litres.Cmp(t.taken.Product.Need.Litres) == 0 {
		return
	}
	parts := make([]string, len(m.Parts))
	for i, p := range m.Parts {
		parts[i] = t.part(p, "")
	}
	t.volume("made", t.Say("mix to make"), m.Made.Total,
		t.Say("What is taken by all that is painted with it, so much more as is to be spare, and what is to be kept. Mix it all before you begin: a second mix seldom matches."),
		strings.Join(parts, " + "), t.Arithmetic())
}

// batches is how often the recipe goes into what is mixed. A mix that sets in the pail
// is made in so many batches, the last of them smaller; any other is made at once, so
// that what is mixed is what the cans were counted for.
func (t *teller) batches() {
	m := &t.taken.Mixed
	sum := t.Notation.VolumeInSum(m.Made.Total) + " ÷ " + t.Notation.VolumeInSum(t.taken.Recipe.Mix.Total)
	switch {
	case m.Counted:
		t.Count(page.Finish, t.id("batches"), t.Say("batches of the mix"), m.Batches, "",
			t.Say("The mix to make, over what the recipe makes; the last batch is as small as what is left. It sets in the pail: make each when the one before is used up."),
			t.Say("{sum}, rounded up", words.Name("sum", sum)), t.Arithmetic())
	case !t.step.PotLife.Known:
		text := t.Notation.NumberTrimmed(m.Times, 1)
		t.Figure(sheet.Figure{ID: t.id("batches"), Block: page.Finish, Label: t.Say("times the recipe"), Value: page.Plain(m.Times), Text: text,
			Working: sheet.Working{Rule: t.Say("The mix to make, over what the recipe makes. Make it all in one pail before you start: two batches seldom match."),
				Sum: sum + " = " + text, Source: t.Arithmetic()}})
	}
}

// placing is whether one batch of a mix that sets is on before it does.
func (t *teller) placing() {
	m := &t.taken.Mixed
	if !m.IsPlaced {
		return
	}
	text := t.Notation.NumberTrimmed(m.Placed.Minutes, 0) + " min"
	t.Figure(sheet.Figure{
		ID: t.id("placing"), Block: page.Finish, Label: t.Say("to put on one batch"), Value: page.Plain(m.Placed.Minutes), Unit: "min", Text: text,
		Working: sheet.Working{
			Rule: t.Say("The share of the area that one batch covers, over what is done in an hour. It has to be shorter than the mix stays workable."),
			Sum: t.Notation.Area(m.Coats) + " × " + t.Notation.VolumeInSum(m.Batch) + " ÷ " + t.Notation.VolumeInSum(t.taken.Product.Need) + " ÷ (" + days.PerHour(m.Rate).In(t.Style()) + " × " +
				t.Say("{n|person|people}", words.Count("n", hours.People(&t.Plan.Days))) + ") × 60 = " + text,
			Source: t.Arithmetic(),
		},
	})
	if !m.Late {
		t.note(words.Say("Each batch is on with {spare} min to spare before it sets; mixing and washing out are not counted.", words.Trimmed("spare", m.Placed.Spare, 0)))
		return
	}
	if n, ok := m.Made.Total.Litres.Quo(m.Placed.Most.Litres).Ceil(); ok {
		t.note(words.Say("Mix at most {most} at a time, in {n|batch|batches}.", words.Volume("most", m.Placed.Most), words.Count("n", n)))
	}
}

// lines are a mix part by part: each as it should be and as the kit measures it.
func (t *teller) lines(list []steps.MixLine) []sheet.MixLine {
	lines := make([]sheet.MixLine, len(list))
	for i := range list {
		l := &list[i]
		lines[i] = sheet.MixLine{Name: t.Told(l.Part.Called()), Exact: l.Exact.In(t.Style())}
		if l.Can {
			lines[i].Measured, lines[i].Error = l.Measured.In(t.Style()), t.off(l.Measured.Off)
		}
	}
	return lines
}

// off is by how much a part is off once it is measured.
func (t *teller) off(off measure.Number) string {
	size := words.PerCent("off", off.Abs())
	switch {
	case off.IsZero():
		return t.Say("exact")
	case off.Abs().Cmp(measure.NumberFromFraction(5, 10_000)) <= 0:
		return t.Say("under 0.1 % off")
	case off.Sign() < 0:
		return t.Say("{off} too little", size)
	}
	return t.Say("{off} too much", size)
}

// mostFills is how often one measure is filled before somebody loses count. A choice.
const mostFills = 24

// measuring says for which part a measure is filled too often to be counted, and what
// was taken as usual.
func (t *teller) measuring() {
	var usual []words.Text
	for i := range t.taken.Mixed.Lines {
		switch l := &t.taken.Mixed.Lines[i]; {
		case !l.Can:
		case !l.OfKit:
			least := words.Say("{least}", words.Of("least", l.Least))
			if !slices.ContainsFunc(usual, func(o words.Text) bool { return t.Told(o) == t.Told(least) }) {
				usual = append(usual, least)
			}
		case l.Measured.Most > mostFills:
			t.note(words.Say("For “{part}” one measure is filled {n} times: with a larger jug it is harder to lose count.", words.Of("part", l.Part.Called()), words.Count("n", l.Measured.Most)))
		}
	}
	if len(usual) > 0 {
		t.note(words.Say("Measured down to {least}, as is usual. List the spoons, jugs and scales at hand, and the mix is measured with those.", words.FewOf("least", usual)))
	}
}
