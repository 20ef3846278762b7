package sheet

import "ceilingwright/core/jsondoc"

func writeLayer(w *jsondoc.Writer, l *Layer) {
	w.Text("id", l.ID)
	w.Text("name", l.Name)
	number(w, "count", l.Count)
	list(w, "columns", len(l.Columns), func(i int) { writeSize(w, &l.Columns[i]) })
	list(w, "rows", len(l.Rows), func(i int) { writeSize(w, &l.Rows[i]) })
	list(w, "panels", len(l.Panels), func(i int) { writePanel(w, &l.Panels[i]) })
	list(w, "order", len(l.Order), func(i int) { writeHang(w, &l.Order[i]) })
	list(w, "seams", len(l.Seams), func(i int) {
		s := &l.Seams[i]
		w.Text("seam", s.Seam)
		w.Text("length", s.Length)
	})
	w.Text("advice", l.Advice)
	object(w, "delivery", func() { writeDelivery(w, &l.Delivery) })
	list(w, "pieces", len(l.Pieces), func(i int) { writePiece(w, &l.Pieces[i]) })
	list(w, "stations", len(l.Stations), func(i int) {
		s := &l.Stations[i]
		number(w, "n", s.N)
		w.Text("text", s.Text)
		texts(w, "panels", s.Panels)
	})
	w.Text("route", l.Route)
	object(w, "restart", func() {
		w.Text("text", l.Restart.Text)
		texts(w, "down", l.Restart.Down)
	})
	list(w, "gaps", len(l.Gaps), func(i int) { writeGap(w, &l.Gaps[i]) })
	list(w, "bridges", len(l.Bridges), func(i int) {
		b := &l.Bridges[i]
		w.Text("seam", b.Seam)
		number(w, "pieces", b.Pieces)
		w.Text("length", b.Length)
		w.Text("text", b.Text)
	})
	texts(w, "flags", l.Flags)
	object(w, "key", func() { writeKey(w, &l.Key) })
	object(w, "register", func() { writeRegistered(w, &l.Register) })
}

func writeSize(w *jsondoc.Writer, s *Size) {
	w.Text("text", s.Text)
	w.Text("other", s.Other)
}

func writePanel(w *jsondoc.Writer, p *Panel) {
	w.Text("label", p.Label)
	number(w, "column", p.Column)
	number(w, "row", p.Row)
	w.Text("size", p.Size)
	number(w, "order", p.Order)
	w.Text("cut", p.Cut)
	w.Text("supplier", p.Supplier)
	w.Text("state", p.State)
	w.Text("measured", p.Measured)
	w.Text("piece", p.Piece)
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
	number(w, "station", h.Station)
	list(w, "measures", len(h.Measures), func(i int) {
		w.Text("what", h.Measures[i].What)
		w.Text("text", h.Measures[i].Text)
		w.Text("sum", h.Measures[i].Sum)
	})
	w.Text("view", h.View)
	truth(w, "up", h.Up)
}

func writeDelivery(w *jsondoc.Writer, d *Delivery) {
	w.Text("text", d.Text)
	number(w, "total", d.Total)
	number(w, "found", d.Found)
	number(w, "missing", d.Missing)
	number(w, "damaged", d.Damaged)
	number(w, "recut", d.Recut)
	number(w, "measured", d.Measured)
	number(w, "unchecked", d.Unchecked)
	texts(w, "ask", d.Ask)
	texts(w, "changed", d.Changed)
}

func writePiece(w *jsondoc.Writer, p *Piece) {
	w.Text("name", p.Name)
	w.Text("kind", p.Kind)
	w.Text("text", p.Text)
	list(w, "cuts", len(p.Cuts), func(i int) {
		w.Text("panel", p.Cuts[i].Panel)
		w.Text("text", p.Cuts[i].Text)
	})
}

func writeGap(w *jsondoc.Writer, g *Gap) {
	w.Text("seam", g.Seam)
	w.Text("at", g.At)
	w.Text("planned", g.Planned)
	w.Text("measured", g.Measured)
	w.Text("set", g.Set)
	w.Text("text", g.Text)
	texts(w, "offers", g.Offers)
}

func writeKey(w *jsondoc.Writer, k *Key) {
	w.Text("panel", k.Panel)
	w.Text("chosen", k.Chosen)
	w.Text("reason", k.Reason)
	texts(w, "lies", k.Lies)
	texts(w, "touches", k.Touches)
	w.Text("down", k.Down)
	w.Text("masked", k.Masked)
}

func writeRegistered(w *jsondoc.Writer, r *Registered) {
	w.Text("text", r.Text)
	w.Text("verdict", r.Verdict)
	w.Text("shift", r.Shift)
	w.Text("turn", r.Turn)
	list(w, "marks", len(r.Marks), func(i int) {
		w.Text("name", r.Marks[i].Name)
		w.Text("text", r.Marks[i].Text)
	})
	texts(w, "remedy", r.Remedy)
}
