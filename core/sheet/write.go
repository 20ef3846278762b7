package sheet

import (
	"ceilingwright/core/jsondoc"
)

// JSON is the sheet as one JSON text: the same bytes for the same sheet. It is
// written field by field, without reflection, for the size and speed of the
// page; the tests hold it against the struct tags.
func (s *Sheet) JSON() []byte {
	w := jsondoc.WriterOf(s.size())
	w.Open('{')
	w.Key("ceilingwright")
	w.Int(s.Format)
	w.Text("version", s.Version)
	w.Key("plan")
	w.Open('{')
	w.Text("id", s.Plan.ID)
	w.Text("title", s.Plan.Title)
	w.Close('}')
	list(w, "problems", len(s.Problems), func(i int) { writeProblem(w, &s.Problems[i]) })
	list(w, "readings", len(s.Readings), func(i int) { writeReading(w, &s.Readings[i]) })
	list(w, "figures", len(s.Figures), func(i int) { writeFigure(w, &s.Figures[i]) })
	object(w, "survey", func() { writeSurvey(w, &s.Survey) })
	list(w, "objects", len(s.Objects), func(i int) { writeObject(w, &s.Objects[i]) })
	list(w, "choices", len(s.Choices), func(i int) { writeChoice(w, &s.Choices[i]) })
	object(w, "box", func() { writeBox(w, &s.Box) })
	list(w, "walls", len(s.Walls), func(i int) { writeWall(w, &s.Walls[i]) })
	list(w, "corners", len(s.Corners), func(i int) { writeCorner(w, &s.Corners[i]) })
	list(w, "layers", len(s.Layers), func(i int) { writeLayer(w, &s.Layers[i]) })
	list(w, "steps", len(s.Steps), func(i int) { writeStep(w, &s.Steps[i]) })
	object(w, "climate", func() { writeClimate(w, &s.Climate) })
	list(w, "shopping", len(s.Shopping), func(i int) { writePurchase(w, &s.Shopping[i]) })
	object(w, "bill", func() { writeTotal(w, &s.Bill) })
	object(w, "days", func() { writeDays(w, &s.Days) })
	object(w, "price", func() { writePrice(w, &s.Price) })
	object(w, "record", func() { writeRecord(w, &s.Record) })
	object(w, "air", func() {
		w.Text("text", s.Air.Text)
		w.Text("curve", s.Air.Curve)
	})
	object(w, "platform", func() { writePlatform(w, &s.Platform) })
	list(w, "limits", len(s.Limits), func(i int) { writeLimit(w, &s.Limits[i]) })
	list(w, "findOut", len(s.FindOut), func(i int) { writeQuestion(w, &s.FindOut[i]) })
	list(w, "safety", len(s.Safety), func(i int) { writeAdvice(w, &s.Safety[i]) })
	list(w, "drawings", len(s.Drawings), func(i int) { writeDrawing(w, &s.Drawings[i]) })
	w.Close('}')
	return w.Bytes()
}

// size is about how long the sheet is as JSON: its drawings, and what the rest
// of it takes from experience.
func (s *Sheet) size() int {
	size := 32<<10 + 700*len(s.Figures)
	for i := range s.Drawings {
		size += len(s.Drawings[i].SVG) + 200
	}
	size += len(s.Days.Chart) + 450*len(s.Days.Tasks)
	for i := range s.Layers {
		size += 500 * s.Layers[i].Count
	}
	return size
}

// list writes a field that holds a list of n objects, the fields of each written
// by one; an empty list is []. It is not generic because the compiler would
// make the page carry one copy of it for each type.
func list(w *jsondoc.Writer, name string, n int, one func(i int)) {
	w.Key(name)
	w.Open('[')
	for i := range n {
		w.Open('{')
		one(i)
		w.Close('}')
	}
	w.Close(']')
}

// object writes a field that holds one object.
func object(w *jsondoc.Writer, name string, fields func()) {
	w.Key(name)
	w.Open('{')
	fields()
	w.Close('}')
}

func truth(w *jsondoc.Writer, name string, is bool) {
	w.Key(name)
	w.Bool(is)
}

func texts(w *jsondoc.Writer, name string, items []string) {
	w.Key(name)
	w.Open('[')
	for _, item := range items {
		w.String(item)
	}
	w.Close(']')
}

func number(w *jsondoc.Writer, name string, n int) {
	w.Key(name)
	w.Int(n)
}

func writeProblem(w *jsondoc.Writer, p *Problem) {
	w.Text("at", p.At)
	w.Text("severity", string(p.Severity))
	w.Text("what", p.What)
	w.Text("do", p.Do)
	if len(p.Answers) > 0 {
		texts(w, "answers", p.Answers)
	}
}

func writeReading(w *jsondoc.Writer, r *Reading) {
	w.Text("at", r.At)
	w.Text("nanometres", r.Nanometres)
	w.Text("text", r.Text)
	w.Text("other", r.Other)
	w.Text("written", r.Written)
}

func writeFigure(w *jsondoc.Writer, f *Figure) {
	w.Text("id", f.ID)
	w.Text("block", f.Block)
	w.Text("label", f.Label)
	w.Text("value", f.Value)
	w.Text("unit", f.Unit)
	w.Text("text", f.Text)
	w.Text("other", f.Other)
	w.Key("working")
	w.Open('{')
	w.Text("rule", f.Working.Rule)
	w.Text("sum", f.Working.Sum)
	w.Text("source", f.Working.Source)
	w.Close('}')
}

func writeAdvice(w *jsondoc.Writer, a *Advice) {
	w.Text("id", a.ID)
	texts(w, "also", a.Also)
	w.Text("severity", a.Severity)
	w.Text("words", a.Words)
	w.Text("decides", a.Decides)
	w.Text("source", a.Source)
	w.Text("jurisdiction", a.Jurisdiction)
	w.Text("at", a.At)
	texts(w, "figures", a.Figures)
	w.Text("working", a.Working)
	texts(w, "bites", a.Bites)
	w.Key("onDemand")
	w.Bool(a.OnDemand)
}

func writeQuestion(w *jsondoc.Writer, q *Question) {
	w.Text("at", q.At)
	w.Text("words", q.Words)
	texts(w, "rules", q.Rules)
}

func writeDrawing(w *jsondoc.Writer, d *Drawing) {
	w.Text("id", d.ID)
	w.Text("layer", d.Layer)
	w.Text("looking", d.Looking)
	w.Text("shows", d.Shows)
	w.Text("title", d.Title)
	w.Text("svg", d.SVG)
}
