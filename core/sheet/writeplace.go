package sheet

import "ceilingwright/core/jsondoc"

func writeSurvey(w *jsondoc.Writer, s *Survey) {
	w.Text("form", s.Form)
	w.Text("proved", s.Proved)
	w.Text("text", s.Text)
	list(w, "corners", len(s.Corners), func(i int) {
		c := &s.Corners[i]
		w.Text("corner", c.Corner)
		w.Text("angle", c.Angle)
		w.Text("out", c.Out)
		w.Text("text", c.Text)
	})
	list(w, "lines", len(s.Lines), func(i int) {
		l := &s.Lines[i]
		w.Text("at", l.At)
		w.Text("line", l.Line)
		w.Text("read", l.Read)
		w.Text("adjusted", l.Adjusted)
		w.Text("off", l.Off)
		w.Text("flag", l.Flag)
	})
	w.Text("closing", s.Closing)
	texts(w, "again", s.Again)
}

func writeObject(w *jsondoc.Writer, o *Object) {
	w.Text("at", o.At)
	w.Text("name", o.Name)
	w.Text("kind", o.Kind)
	w.Text("text", o.Text)
	list(w, "panels", len(o.Panels), func(i int) {
		p := &o.Panels[i]
		w.Text("layer", p.Layer)
		w.Text("panel", p.Panel)
		w.Text("text", p.Text)
	})
}

func writeChoice(w *jsondoc.Writer, c *Choice) {
	w.Text("on", c.On)
	w.Text("square", c.Square)
	w.Text("turned", c.Turned)
	w.Text("title", c.Title)
	truth(w, "taken", c.Taken)
	truth(w, "recommended", c.Recommended)
	w.Text("reason", c.Reason)
	object(w, "borders", func() {
		w.Text("AB", c.Borders.AB)
		w.Text("BC", c.Borders.BC)
		w.Text("CD", c.Borders.CD)
		w.Text("DA", c.Borders.DA)
	})
	list(w, "places", len(c.Places), func(i int) {
		p := &c.Places[i]
		w.Text("corner", p.Corner)
		w.Text("wall", p.Wall)
		w.Text("text", p.Text)
	})
	list(w, "tapers", len(c.Tapers), func(i int) {
		w.Text("wall", c.Tapers[i].Wall)
		w.Text("text", c.Tapers[i].Text)
	})
	w.Text("ends", c.Ends)
	w.Text("sides", c.Sides)
	w.Text("refused", c.Refused)
}

func writeBox(w *jsondoc.Writer, b *BoxPlace) {
	w.Text("text", b.Text)
	w.Text("line", b.Line)
	list(w, "corners", len(b.Corners), func(i int) {
		w.Text("corner", b.Corners[i].Corner)
		w.Text("text", b.Corners[i].Text)
	})
	list(w, "lines", len(b.Lines), func(i int) {
		l := &b.Lines[i]
		w.Text("name", l.Name)
		w.Text("kind", l.Kind)
		w.Text("layer", l.Layer)
		w.Text("text", l.Text)
	})
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
		w.Text("join", m.Join)
		w.Text("sum", m.Sum)
	})
}

func writeCorner(w *jsondoc.Writer, c *Corner) {
	w.Text("corner", c.Corner)
	w.Text("along", c.Along)
	w.Text("across", c.Across)
	w.Text("diagonal", c.Diagonal)
	w.Text("text", c.Text)
}
