package finish

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// teller tells one step of the finish.
type teller struct {
	*page.Page
	*job.Job
	at    int
	step  *plan.Step
	taken *steps.Taken
	out   *sheet.Step
}

// Step begins what is told of a step.
func Step(j *job.Job, step int) sheet.Step {
	s := &j.Plan.Steps[step]
	return sheet.Step{ID: s.ID, Name: s.Name, Kind: string(s.Kind), Material: j.Plan.Steps[j.Finish.Steps[step].Owner].ID}
}

func told(p *page.Page, j *job.Job, step int, out *sheet.Step) *teller {
	return &teller{p, j, step, &j.Plan.Steps[step], &j.Finish.Steps[step], out}
}

// id is a figure id of the step, which is noted as one of its figures.
func (t *teller) id(name string) string {
	id := "step." + t.step.ID + "." + name
	t.out.Figures = append(t.out.Figures, id)
	return id
}

func (t *teller) note(sentence words.Text) { t.out.Notes = append(t.out.Notes, t.Told(sentence)) }

// name is the name of a step in a hole.
func (t *teller) name(hole string, step int) words.Hole {
	return words.Name(hole, t.Plan.Steps[step].Name)
}

// volume is a figure that is a volume. sum is the numbers put in, or all of the sum.
func (t *teller) volume(id, label string, v measure.Volume, rule, sum, source string) {
	t.Figure(sheet.Figure{ID: t.id(id), Block: page.Finish, Label: label, Value: page.Plain(v.Litres), Unit: "L", Text: t.Notation.Volume(v), Other: t.Other.Volume(v),
		Working: sheet.Working{Rule: rule, Sum: sum + " = " + t.sumOf(v), Source: source}})
}

// sumOf is a volume as a sum comes out: in gallons or litres, and in the smaller unit
// too where it is told in that.
func (t *teller) sumOf(v measure.Volume) string {
	return page.Equals(t.Notation.VolumeInSum(v), t.Notation.Volume(v))
}

// Area tells the area of a step, and what is sized of it where that is more.
func Area(p *page.Page, j *job.Job, step int, out *sheet.Step) {
	t := told(p, j, step, out)
	c := &j.Covers[step]
	if !c.Known {
		return
	}
	rule, sum := Covers(p, j, step)
	t.Page.Area(page.Finish, t.id("area"), p.Say("area"), c.Area, rule, sum, p.Arithmetic())
	if t.taken.Beyond.SquareMetres.Sign() > 0 {
		t.Page.Area(page.Finish, t.id("sized"), p.Say("area to size"), c.Area.Add(t.taken.Beyond),
			p.Say("The area, and what is sized twice: past the line where each section stops, so that the next section's size blends into it: {stops} of lines in all. Through a mask only its openings count.",
				words.Length("stops", t.taken.Stops)),
			p.Say("{area} + {beyond} past the stop lines", words.Area("area", c.Area), words.Area("beyond", t.taken.Beyond)),
			p.Say("A gilder's notes of May 2011: size half a foot past where you will stop."))
	}
}

// Product tells the product of a liquid step: what it takes, the film it leaves, its
// cans, its mix and the label for its pot.
func Product(p *page.Page, j *job.Job, step int, out *sheet.Step) {
	t := told(p, j, step, out)
	if t.taken.Known {
		t.need()
		t.needs()
		t.thinner()
		t.film()
	}
	if t.taken.Owner != step {
		out.Buy = p.Say("bought with “{step}”", t.name("step", t.taken.Owner))
	} else {
		t.cans()
	}
	t.mix()
	t.label()
}

func (t *teller) thinner() {
	amount := t.taken.Thinner
	if amount.Litres.IsZero() {
		return
	}
	label := t.Say("thinner to thin it")
	if steps.Dries(t.step) == finish.Evaporates {
		label = t.Say("water to thin it")
	}
	t.volume("thinner", label, amount, t.Say("The share of thinner, of the paint as it is in the can."),
		t.needInSum(t.at)+" × "+t.Share(t.step.Thinned.Share), t.labelDecides())
}
