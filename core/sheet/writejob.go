package sheet

import "ceilingwright/core/jsondoc"

func writeStep(w *jsondoc.Writer, s *Step) {
	w.Text("id", s.ID)
	w.Text("name", s.Name)
	w.Text("kind", s.Kind)
	texts(w, "figures", s.Figures)
	w.Text("buy", s.Buy)
	w.Text("leftOver", s.LeftOver)
	texts(w, "notes", s.Notes)
	w.Text("material", s.Material)
	w.Text("lean", s.Lean)
	w.Text("likely", s.Likely)
	w.Text("rich", s.Rich)
	texts(w, "label", s.Label)
	mixLines(w, "mixLines", s.Mix)
	mixLines(w, "sampleLines", s.Sample)
	list(w, "sections", len(s.Sections), func(i int) {
		c := &s.Sections[i]
		number(w, "n", c.N)
		texts(w, "panels", c.Panels)
		w.Text("area", c.Area)
		w.Text("hours", c.Hours)
		w.Text("sizeAt", c.SizeAt)
		w.Text("layFrom", c.LayFrom)
		w.Text("layTo", c.LayTo)
		w.Text("text", c.Text)
	})
}

func mixLines(w *jsondoc.Writer, name string, lines []MixLine) {
	list(w, name, len(lines), func(i int) {
		m := &lines[i]
		w.Text("name", m.Name)
		w.Text("exact", m.Exact)
		w.Text("measured", m.Measured)
		w.Text("error", m.Error)
	})
}

func writeClimate(w *jsondoc.Writer, c *Climate) {
	w.Text("dew", c.Dew)
	w.Text("margin", c.Margin)
	w.Text("verdict", c.Verdict)
	w.Text("text", c.Text)
	w.Text("drying", c.Drying)
}

func writePurchase(w *jsondoc.Writer, p *Purchase) {
	w.Text("what", p.What)
	w.Text("amount", p.Amount)
	w.Text("detail", p.Detail)
	w.Text("cost", p.Cost)
}

func writeDays(w *jsondoc.Writer, d *Days) {
	w.Text("text", d.Text)
	w.Text("start", d.Start)
	w.Text("finish", d.Finish)
	list(w, "tasks", len(d.Tasks), func(i int) {
		t := &d.Tasks[i]
		w.Text("id", t.ID)
		w.Text("name", t.Name)
		w.Text("at", t.At)
		w.Text("kind", t.Kind)
		w.Text("day", t.Day)
		w.Text("from", t.From)
		w.Text("to", t.To)
		w.Text("start", t.Start)
		w.Text("end", t.End)
		w.Text("labour", t.Labour)
		w.Text("reason", t.Reason)
		w.Text("sum", t.Sum)
		truth(w, "critical", t.Critical)
	})
	texts(w, "waits", d.Waits)
	texts(w, "saves", d.Saves)
	w.Text("chart", d.Chart)
}

func writePrice(w *jsondoc.Writer, p *Price) {
	w.Text("text", p.Text)
	w.Text("quoted", p.Quoted)
	list(w, "lines", len(p.Lines), func(i int) {
		l := &p.Lines[i]
		w.Text("group", l.Group)
		w.Text("what", l.What)
		w.Text("amount", l.Amount)
		w.Text("rate", l.Rate)
		w.Text("sum", l.Sum)
		w.Text("working", l.Working)
	})
	totals(w, "totals", p.Totals)
	totals(w, "client", p.Client)
	totals(w, "stages", p.Stages)
	w.Text("perArea", p.PerArea)
	w.Text("range", p.Range)
	list(w, "whatIf", len(p.WhatIf), func(i int) {
		o := &p.WhatIf[i]
		w.Text("what", o.What)
		w.Text("sum", o.Sum)
		w.Text("change", o.Change)
		w.Text("text", o.Text)
	})
}

func totals(w *jsondoc.Writer, name string, sums []Total) {
	list(w, name, len(sums), func(i int) {
		writeTotal(w, &sums[i])
	})
}

func writeTotal(w *jsondoc.Writer, t *Total) {
	w.Text("what", t.What)
	w.Text("sum", t.Sum)
	w.Text("text", t.Text)
	w.Text("working", t.Working)
}

func writeRecord(w *jsondoc.Writer, r *Record) {
	w.Text("text", r.Text)
	list(w, "lines", len(r.Lines), func(i int) {
		l := &r.Lines[i]
		w.Text("step", l.Step)
		w.Text("where", l.Where)
		w.Text("area", l.Area)
		w.Text("colour", l.Colour)
		w.Text("mix", l.Mix)
		w.Text("batch", l.Batch)
		w.Text("leaf", l.Leaf)
		w.Text("date", l.Date)
	})
}
