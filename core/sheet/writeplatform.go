package sheet

import "ceilingwright/core/jsondoc"

func writePlatform(w *jsondoc.Writer, p *Platform) {
	w.Text("kind", p.Kind)
	w.Text("text", p.Text)
	w.Text("why", p.Why)
	texts(w, "refused", p.Refused)
	w.Text("hire", p.Hire)
	list(w, "stations", len(p.Stations), func(i int) {
		s := &p.Stations[i]
		w.Text("layer", s.Layer)
		number(w, "n", s.N)
		w.Text("text", s.Text)
		truth(w, "clash", s.Clash)
	})
	list(w, "checks", len(p.Checks), func(i int) {
		c := &p.Checks[i]
		w.Text("what", c.What)
		w.Text("have", c.Have)
		w.Text("need", c.Need)
		w.Text("verdict", c.Verdict)
		w.Text("text", c.Text)
	})
	list(w, "overhead", len(p.Overhead), func(i int) {
		o := &p.Overhead[i]
		w.Text("day", o.Day)
		w.Text("text", o.Text)
		truth(w, "over", o.Over)
	})
}

func writeLimit(w *jsondoc.Writer, l *VOCLine) {
	w.Text("step", l.Step)
	w.Text("at", l.At)
	w.Text("category", l.Category)
	w.Text("rule", l.Rule)
	w.Text("holds", l.Holds)
	w.Text("limit", l.Limit)
	w.Text("verdict", l.Verdict)
	w.Text("text", l.Text)
	w.Text("source", l.Source)
	w.Text("asOf", l.AsOf)
}
