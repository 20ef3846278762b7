package price

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// WhatIf puts on the sheet what a change would cost.
func WhatIf(p *page.Page, j *job.Job, w *job.WhatIf) {
	t := &told{p, j, &p.Sheet.Price}
	more := t.money(w.More)
	if w.More.Sign() > 0 {
		more = "+" + more
	}
	what, text := t.change(&w.Change)
	t.out.WhatIf = append(t.out.WhatIf, sheet.WhatIf{What: t.Told(what), Sum: t.money(w.Total), Change: more, Text: t.Told(words.Sentences(text, whenDone(w)))})
}

// whenDone says when the job is done, where that is another day.
func whenDone(w *job.WhatIf) words.Text {
	day := words.Of("day", days.WithYear(w.Done))
	switch {
	case w.Later < 0:
		return words.Say("Done on {day}, {n|day|days} sooner.", day, words.Count("n", -w.Later))
	case w.Later > 0:
		return words.Say("Done on {day}, {n|day|days} later.", day, words.Count("n", w.Later))
	}
	return words.Text{}
}

// change is what a change is called, and what it is.
func (t *told) change(c *job.Change) (what, text words.Text) {
	switch c.Of {
	case job.BordersWanted, job.BordersWider:
		if what = words.Say("The borders you want"); c.Of == job.BordersWider {
			what = words.Say("A border {wider} wider all round", words.Length("wider", c.Wider))
		}
		return what, words.Say("A mask of {length} × {width}; its panels are taken to cost in proportion to their area.", words.Length("length", c.Length), words.Length("width", c.Width))
	case job.LayerLess:
		return words.Say("One layer less"), words.Say("Without “{layer}” and the steps that go through it.", words.Name("layer", t.Layers[c.Layer].Panels.Name))
	case job.LeafInMetal:
		return words.Say("“{step}” in {metal}", words.Name("step", t.Plan.Steps[c.Step].Name), words.Of("metal", c.Metal.Called())), words.Say("In the leaf of another step: its size, its lap and its price.")
	case job.LeafLess:
		return words.Say("Without “{step}”", words.Name("step", t.Plan.Steps[c.Step].Name)), t.withoutLeaf(c)
	}
	return words.Say("One person more"), words.Say("With {n|person|people} on the job.", words.Count("n", c.People))
}

func (t *told) withoutLeaf(c *job.Change) words.Text {
	if c.Layer < 0 {
		if c.SizeStays {
			return words.Say("Not the leaf, but the size, for the other leaf on it.")
		}
		return words.Say("Neither the leaf nor the size under it.")
	}
	layer := words.Name("layer", t.Layers[c.Layer].Panels.Name)
	if c.SizeStays {
		return words.Say("Not the leaf, but the size, for the other leaf on it, nor “{layer}”, which nothing else goes through.", layer)
	}
	return words.Say("Neither the leaf nor the size under it, nor “{layer}”, which nothing else goes through.", layer)
}
