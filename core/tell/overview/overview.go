// Package overview tells the job at a glance: the answers people come for, a line for
// each page, and what to see to first. It goes by the job alone, so that it is there
// whichever page is told.
package overview

import (
	"slices"

	"ceilingwright/core/job"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/setting"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// teller tells one job at a glance.
type teller struct {
	*page.Page
	*job.Job
	out *sheet.Overview
}

// Tell is the overview of a job, of which the problems are told already.
func Tell(p *page.Page, j *job.Job, problems []sheet.Problem) (out sheet.Overview) {
	t := teller{p, j, &out}
	t.answers()
	for _, name := range page.Names {
		out.Pages = append(out.Pages, sheet.PageState{Page: name, Text: p.Told(t.line(name)), State: "empty", Ticked: slices.Contains(j.Plan.Ticked, name)})
	}
	for i := range problems {
		p := &problems[i]
		if p.ToCome {
			continue // work to come is nothing wrong
		}
		t.count(p.Page, p.Severity)
		if p.Severity == problem.Stop || p.Page == "" && p.Severity == problem.Caution {
			out.First = append(out.First, sheet.ToSee{At: p.At, Page: p.Page, Severity: p.Severity, Words: p.What})
		}
	}
	for i := range j.Rules.Told.Notes {
		note := &j.Rules.Told.Notes[i]
		t.count(page.Safety, note.Severity)
		if note.Severity == problem.Stop {
			out.First = append(out.First, sheet.ToSee{At: note.At, Page: page.Safety, Severity: problem.Stop, Words: p.Told(note.First)})
		}
	}
	for i := range out.Pages {
		one := &out.Pages[i]
		switch {
		case one.Stops > 0:
			one.State = "stop"
		case one.Cautions > 0:
			one.State = "look"
		case one.Text != "":
			one.State = "begun"
		}
	}
	return out
}

// count counts a problem on the page that it is on.
func (t *teller) count(of string, severity problem.Severity) {
	i := slices.Index(page.Names[:], of)
	if i < 0 {
		return
	}
	switch severity {
	case problem.Stop:
		t.out.Pages[i].Stops++
	case problem.Caution:
		t.out.Pages[i].Cautions++
	}
}

// line is what a page comes to, in a line.
func (t *teller) line(of string) words.Text {
	switch of {
	case page.Room:
		if t.Room.Shape.Usable() {
			return words.Say("{area}", words.Area("area", t.Room.Area))
		}
	case page.Mask:
		if panels := t.panels(); panels > 0 {
			return words.Say("{n|layer|layers}, {panels|panel|panels}", words.Count("n", len(t.Layers)), words.Count("panels", panels))
		}
	case page.Setting:
		return t.borders()
	case page.Hanging:
		return t.hanging()
	case page.Finish:
		return t.finish()
	case page.Days:
		if t.Days.Dated {
			first, last := t.Days.Schedule.Span()
			return words.Say("{first} to {last}", words.Of("first", first), words.Of("last", last))
		}
	case page.Price:
		_, text, taxed := t.price()
		if taxed {
			return words.Say("{price} with tax", words.Of("price", text))
		}
		return text
	case page.Record:
		if missing := t.Record.Colours + t.Record.Batches; missing > 0 && len(t.Record.Steps) > 0 {
			return words.Say("{n|blank|blanks} to write in", words.Count("n", missing))
		}
	case page.Safety:
		if t.Safety.Deck.IsAsked() {
			return words.Say("deck about {height} up", safety.Stepped("height", t.Safety.Deck.Best, safety.ToNearest))
		}
	}
	return words.Text{}
}

func (t *teller) panels() (n int) {
	for i := range t.Layers {
		n += t.Layers[i].Panels.Count()
	}
	return n
}

// borders are what is left round the mask, opposite ones once where they are alike.
func (t *teller) borders() words.Text {
	if !t.Setting.Placed {
		return words.Text{}
	}
	b := &t.Setting.Choice.Borders
	if b.EndsDiffer() == 0 && b.SidesDiffer() == 0 && b.DA == b.AB {
		return words.Say("{border} all round", words.Length("border", b.AB))
	}
	if b.EndsDiffer() == 0 && b.SidesDiffer() == 0 {
		return words.Say("{ends} at the ends, {sides} at the sides", words.Length("ends", b.DA), words.Length("sides", b.AB))
	}
	return words.Say("{least} to {most}", words.Length("least", b.Least()), words.Length("most", max(b.AB, b.BC, b.CD, b.DA)))
}

// border is the answer to how wide the border is, and what it is of.
func (t *teller) border() (label, text words.Text) {
	if !t.Setting.Placed {
		return label, text
	}
	b := &t.Setting.Choice.Borders
	switch {
	case b.EndsDiffer() != 0 || b.SidesDiffer() != 0:
		return words.Say("border, least to most"), t.borders()
	case b.DA == b.AB:
		return words.Say("border all round"), words.Say("{border}", words.Length("border", b.AB))
	}
	return words.Say("border at the ends, at the sides"), words.Say("{ends} and {sides}", words.Length("ends", b.DA), words.Length("sides", b.AB))
}

// places is how many places the platform has for the layer that needs most.
func (t *teller) places() (most int) {
	for i := range t.Layers {
		most = max(most, len(t.Job.Hung(i).Places))
	}
	return most
}

func (t *teller) hanging() words.Text {
	if len(t.Layers) == 0 || len(t.Job.Hung(0).Order) == 0 {
		return words.Text{}
	}
	from := words.Name("panel", t.Job.Hung(0).Order[0].Panel.Label())
	if n := t.places(); n > 0 {
		return words.Say("from {panel}, {n|platform position|platform positions}", from, words.Count("n", n))
	}
	return words.Say("from {panel}", from)
}

// goods are the cans, and the leaf in books or rolls, that are bought.
func (t *teller) goods() (cans, books, rolls int64) {
	for _, line := range pricing.ToBuy(&t.Plan, &t.Surface, &t.Found) {
		for _, pack := range line.Packs {
			switch pack.As {
			case steps.Can:
				cans += pack.Count
			case steps.LeafRoll:
				rolls += pack.Count
			}
		}
	}
	for i := range t.Finish.Steps {
		if laid := &t.Finish.Steps[i].Leaf; laid.Bought && !t.Plan.Steps[i].Leaf.Leaf.IsRoll() {
			books += laid.Books.Books
		}
	}
	return cans, books, rolls
}

// leaf is what is bought of leaf.
func leaf(books, rolls int64) words.Text {
	switch {
	case books > 0 && rolls > 0:
		return words.Say("{books|book|books}, {rolls|roll|rolls}", words.Count("books", books), words.Count("rolls", rolls))
	case rolls > 0:
		return words.Say("{rolls|roll|rolls}", words.Count("rolls", rolls))
	case books > 0:
		return words.Say("{books|book|books}", words.Count("books", books))
	}
	return words.Text{}
}

func (t *teller) finish() words.Text {
	if len(t.Plan.Steps) == 0 {
		return words.Text{}
	}
	steps := words.Count("steps", len(t.Plan.Steps))
	cans, books, rolls := t.goods()
	bought, of := words.Count("cans", cans), leaf(books, rolls)
	switch {
	case cans > 0 && !of.IsEmpty():
		return words.Say("{steps|step|steps}, {cans|can|cans}, {leaf} of leaf", steps, bought, words.Of("leaf", of))
	case cans > 0:
		return words.Say("{steps|step|steps}, {cans|can|cans}", steps, bought)
	}
	return words.Say("{steps|step|steps}", steps)
}

// price is the price, or the range of a rough one, the figure that has it, and whether
// tax is in it.
func (t *teller) price() (figure string, text words.Text, taxed bool) {
	p, quoted, c := &t.Price, &t.Plan.Quote, t.Price.Currency
	switch {
	case quoted.Total.Known:
		return "price.total", words.Say("{price}", words.Of("price", c.Money(quoted.Total.Amount))), quoted.Tax.Share.Known
	case p.Known:
		return "price.total", words.Say("{price}", words.Of("price", c.Money(p.Quote.Total))), t.Plan.Price.Tax.Known
	case p.Rough.Known:
		return "price.rough", words.Say("{low} to {high}", words.Of("low", c.Sum(p.Rough.Low)), words.Of("high", c.Money(p.Rough.High))), false
	case quoted.Low.Known && quoted.High.Known:
		return "price.rough", words.Say("{low} to {high}", words.Of("low", c.Sum(quoted.Low.Amount)), words.Of("high", c.Money(quoted.High.Amount))), false
	}
	return "", words.Text{}, false
}

// answers are what people come for.
func (t *teller) answers() {
	if long, ok := setting.Sized(t.Setting.Largest, setout.LongSide); ok && t.Plan.Mask.Outline.Length == 0 {
		if wide, ok := setting.Sized(t.Setting.Largest, setout.WideSide); ok {
			length, width := words.AtMost("length", long), words.AtMost("width", wide)
			t.answer("mask", words.Say("largest mask that leaves {border}", words.Length("border", t.Plan.Setting.LeastBorder)), words.Say("{length} × {width}", length, width), "", page.Setting)
			t.out.Answers[len(t.out.Answers)-1].Fills = []sheet.Fill{{At: "/mask/length", Text: t.Say("{length}", length)}, {At: "/mask/width", Text: t.Say("{width}", width)}}
		}
	}
	if label, text := t.border(); !text.IsEmpty() {
		t.answer("borders", label, text, "", page.Setting)
	}
	panels, places := words.Count("n", t.panels()), words.Count("places", t.places())
	switch {
	case t.panels() > 0 && t.places() > 0:
		t.answer("panels", words.Say("{n?panel|panels}, {places?platform position|platform positions}", panels, places), words.Say("{n} in {places}", panels, places), "", page.Hanging)
	case t.panels() > 0:
		t.answer("panels", words.Say("{n?panel|panels}", panels), words.Say("{n}", panels), "", page.Mask)
	}
	cans, books, rolls := t.goods()
	if cans > 0 {
		t.answer("cans", words.Say("paint and clear coats to buy"), words.Say("{n|can|cans}", words.Count("n", cans)), "", page.Finish)
	}
	t.answer("leaf", words.Say("leaf to buy"), leaf(books, rolls), "", page.Finish)
	if t.Days.Dated {
		first, last := t.Days.Schedule.Span()
		t.answer("done", words.Say("done on, days in the house"), words.Say("{day}, {n|day|days}", words.Of("day", last), words.Count("n", int64(last-first)+1)), "", page.Days)
	}
	figure, price, taxed := t.price()
	label := words.Say("price")
	switch {
	case figure == "price.rough":
		label = words.Say("rough price")
	case taxed:
		label = words.Say("price with tax")
	}
	t.answer("price", label, price, figure, page.Price)
}

func (t *teller) answer(id string, label, text words.Text, figure, of string) {
	if !text.IsEmpty() {
		t.out.Answers = append(t.out.Answers, sheet.Answer{ID: id, Label: t.Told(label), Text: t.Told(text), Figure: figure, Page: of})
	}
}
