package sheet

import (
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/problem"
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
	list(w, "choices", len(s.Choices), func(i int) { writeChoice(w, &s.Choices[i]) })
	list(w, "walls", len(s.Walls), func(i int) { writeWall(w, &s.Walls[i]) })
	list(w, "corners", len(s.Corners), func(i int) { writeCorner(w, &s.Corners[i]) })
	list(w, "layers", len(s.Layers), func(i int) { writeLayer(w, &s.Layers[i]) })
	list(w, "steps", len(s.Steps), func(i int) { writeStep(w, &s.Steps[i]) })
	list(w, "shopping", len(s.Shopping), func(i int) { writePurchase(w, &s.Shopping[i]) })
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

func writeProblem(w *jsondoc.Writer, p *problem.Problem) {
	w.Text("at", p.At)
	w.Text("severity", string(p.Severity))
	w.Text("what", p.What)
	w.Text("do", p.Do)
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

func writeChoice(w *jsondoc.Writer, c *Choice) {
	w.Text("on", c.On)
	w.Text("title", c.Title)
	w.Key("taken")
	w.Bool(c.Taken)
	w.Key("borders")
	w.Open('{')
	w.Text("AB", c.Borders.AB)
	w.Text("BC", c.Borders.BC)
	w.Text("CD", c.Borders.CD)
	w.Text("DA", c.Borders.DA)
	w.Close('}')
	w.Text("ends", c.Ends)
	w.Text("sides", c.Sides)
	w.Text("refused", c.Refused)
}

func writeWall(w *jsondoc.Writer, wall *Wall) {
	w.Text("wall", wall.Wall)
	w.Text("from", wall.From)
	w.Text("to", wall.To)
	w.Text("title", wall.Title)
	w.Text("length", wall.Length)
	list(w, "marks", len(wall.Marks), func(i int) {
		m := &wall.Marks[i]
		w.Text("kind", m.Kind)
		w.Text("label", m.Label)
		w.Text("layer", m.Layer)
		w.Text("text", m.Text)
		w.Text("other", m.Other)
		w.Text("exact", m.Exact)
		w.Text("hides", m.Hides)
	})
}

func writeCorner(w *jsondoc.Writer, c *Corner) {
	w.Text("corner", c.Corner)
	w.Text("along", c.Along)
	w.Text("across", c.Across)
	w.Text("diagonal", c.Diagonal)
	w.Text("text", c.Text)
}

func writeLayer(w *jsondoc.Writer, l *Layer) {
	w.Text("id", l.ID)
	w.Text("name", l.Name)
	number(w, "count", l.Count)
	list(w, "columns", len(l.Columns), func(i int) { writeSize(w, &l.Columns[i]) })
	list(w, "rows", len(l.Rows), func(i int) { writeSize(w, &l.Rows[i]) })
	list(w, "panels", len(l.Panels), func(i int) {
		p := &l.Panels[i]
		w.Text("label", p.Label)
		number(w, "column", p.Column)
		number(w, "row", p.Row)
		w.Text("size", p.Size)
		number(w, "order", p.Order)
		w.Text("cut", p.Cut)
	})
	list(w, "order", len(l.Order), func(i int) { writeHang(w, &l.Order[i]) })
	list(w, "seams", len(l.Seams), func(i int) {
		s := &l.Seams[i]
		w.Text("seam", s.Seam)
		w.Text("length", s.Length)
	})
	w.Text("advice", l.Advice)
}

func writeSize(w *jsondoc.Writer, s *Size) {
	w.Text("text", s.Text)
	w.Text("other", s.Other)
}

func writeHang(w *jsondoc.Writer, h *Hang) {
	number(w, "n", h.N)
	w.Text("panel", h.Panel)
	list(w, "set", len(h.Set), func(i int) {
		e := &h.Set[i]
		w.Text("edge", e.Edge)
		w.Text("to", e.To)
	})
	w.Text("text", h.Text)
}

func writeStep(w *jsondoc.Writer, s *Step) {
	w.Text("id", s.ID)
	w.Text("name", s.Name)
	w.Text("kind", s.Kind)
	texts(w, "figures", s.Figures)
	w.Text("buy", s.Buy)
	w.Text("leftOver", s.LeftOver)
	texts(w, "notes", s.Notes)
}

func writePurchase(w *jsondoc.Writer, p *Purchase) {
	w.Text("what", p.What)
	w.Text("amount", p.Amount)
	w.Text("detail", p.Detail)
}

func writeAdvice(w *jsondoc.Writer, a *Advice) {
	w.Text("id", a.ID)
	w.Text("severity", a.Severity)
	w.Text("words", a.Words)
	w.Text("source", a.Source)
	w.Text("jurisdiction", a.Jurisdiction)
	w.Text("at", a.At)
	texts(w, "figures", a.Figures)
}

func writeDrawing(w *jsondoc.Writer, d *Drawing) {
	w.Text("id", d.ID)
	w.Text("layer", d.Layer)
	w.Text("looking", d.Looking)
	w.Text("shows", d.Shows)
	w.Text("title", d.Title)
	w.Text("svg", d.SVG)
}
