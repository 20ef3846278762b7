package main

import (
	"fmt"
	"strconv"
	"strings"

	"ceilingwright/core/sheet"
)

// layer is one layer of the mask: what came, how it is hung, and its seams.
func (p *paper) layer(l *sheet.Layer) {
	p.block(l.Name)
	if l.Count == 0 {
		p.line(1, "No panels yet.")
	}
	p.line(1, l.Advice)
	p.delivery(l)
	p.panels(l)
	p.key(&l.Key)
	p.line(1, between("", l.Restart.Text, " "), between("Take down: ", strings.Join(l.Restart.Down, ", "), "."))
	p.hanging(l.Order)
	p.line(1, l.Route)
	for _, s := range l.Stations {
		p.line(1, "position ", strconv.Itoa(s.N), ": ", s.Text, " Hung from there: ", strings.Join(s.Panels, ", "), ".")
	}
	p.seams(l)
	p.register(&l.Register)
}

// delivery is the count of what came, and what to ask the supplier for.
func (p *paper) delivery(l *sheet.Layer) {
	p.line(1, l.Delivery.Text)
	for _, ask := range l.Delivery.Ask {
		p.line(2, "ask for: ", ask)
	}
	p.lines(2, l.Delivery.Changed)
}

// panels are the sizes, which panels have them, and what is to be said of one.
func (p *paper) panels(l *sheet.Layer) {
	p.sizes("column", l.Columns)
	p.sizes("row", l.Rows)
	names := map[string]string{} // of each size
	var sizes []string
	for _, one := range l.Panels {
		if names[one.Size] == "" {
			sizes = append(sizes, one.Size)
		}
		names[one.Size] = some(" ", names[one.Size], one.Label)
	}
	for _, size := range sizes {
		p.line(1, "panels of ", size, ": ", names[size])
	}
	for i := range l.Panels {
		p.panel(&l.Panels[i])
	}
	for _, piece := range l.Pieces {
		p.line(1, "piece ", piece.Name, note(piece.Kind), ": ", piece.Text)
		for _, c := range piece.Cuts {
			p.line(2, "cut from ", c.Panel, ": ", c.Text)
		}
	}
}

// panel is what there is to say of one panel besides its size.
func (p *paper) panel(of *sheet.Panel) {
	state := of.State
	if state == "unchecked" {
		state = "" // every panel is, until the delivery is counted
	}
	p.told(2, of.Label, some("; ", state, between("their label ", of.Supplier, ""), between("measured ", of.Measured, ""),
		between("part of ", of.Piece, ""), of.Cut))
}

// sizes are those of the columns or rows, neighbours of one size together.
func (p *paper) sizes(what string, sizes []sheet.Size) {
	for first := 0; first < len(sizes); {
		last := first
		for last+1 < len(sizes) && sizes[last+1] == sizes[first] {
			last++
		}
		which := what + " " + strconv.Itoa(first+1)
		if last > first {
			which = fmt.Sprintf("%ss %d to %d", what, first+1, last+1)
		}
		p.line(1, which, ": ", sizes[first].Text, note(sizes[first].Other))
		first = last + 1
	}
}

// key is the panel kept up for the next layer.
func (p *paper) key(k *sheet.Key) {
	if k.Panel+k.Reason == "" {
		return
	}
	p.line(1, "kept up for the next layer: ", k.Panel, ". ", some(" ", k.Reason, k.Down, k.Masked))
	p.told(2, "panels that lie on it", strings.Join(k.Lies, ", "))
	p.told(2, "panels set against it", strings.Join(k.Touches, ", "))
}

// hanging is the order, with the distances that place each panel.
func (p *paper) hanging(order []sheet.Hang) {
	for _, h := range order {
		up, from := "", ""
		if h.Up {
			up = " (up)"
		}
		if h.Station > 0 {
			from = " From position " + strconv.Itoa(h.Station) + "."
		}
		p.line(1, strconv.Itoa(h.N), ". ", h.Text, from, up)
		p.measures(h.Measures)
	}
}

// measures stand on one line, or each with how it comes about.
func (p *paper) measures(list []sheet.Measure) {
	var texts []string
	for _, m := range list {
		text := m.What + ": " + m.Text
		if p.working {
			p.line(3, text, between(", as ", m.Sum, ""))
			continue
		}
		texts = append(texts, text)
	}
	p.line(3, strings.Join(texts, "; "))
}

// seams are the seams with their gaps, the tape over them, and what they run into.
func (p *paper) seams(l *sheet.Layer) {
	gaps := map[string]*sheet.Gap{}
	for i := range l.Gaps {
		gaps[l.Gaps[i].Seam] = &l.Gaps[i]
	}
	for _, s := range l.Seams {
		p.line(1, "seam ", s.Seam, ": ", s.Length, gap(gaps[s.Seam]))
		delete(gaps, s.Seam)
	}
	for i := range l.Gaps {
		if one := &l.Gaps[i]; gaps[one.Seam] != nil {
			p.line(1, "seam ", one.Seam, gap(one))
		}
	}
	for i := range l.Bridges {
		p.line(1, "tape over ", bridge(&l.Bridges[i]))
	}
	p.lines(1, l.Flags)
}

// bridge is the tape over one seam.
func bridge(b *sheet.Bridge) string {
	if strings.HasPrefix(b.Text, b.Seam+": ") {
		return b.Text + note(b.Length)
	}
	pieces := "1 piece"
	if b.Pieces != 1 {
		pieces = strconv.Itoa(b.Pieces) + " pieces"
	}
	return b.Seam + ": " + b.Length + ", " + pieces + between(". ", b.Text, "")
}

// gap is what the gap of a seam is to be.
func gap(g *sheet.Gap) string {
	if g == nil {
		return ""
	}
	set := g.Set
	if strings.Contains(g.Text, set) {
		set = "" // the text says it
	}
	return between(", gap planned ", g.Planned, "") + between(", measured ", g.Measured, "") + between(", set to ", set, "") + between(". ", g.Text, "")
}

// register is how the layer lies on the one before.
func (p *paper) register(r *sheet.Registered) {
	p.line(1, r.Text)
	p.told(2, "shift", r.Shift)
	p.told(2, "turn", r.Turn)
	for _, m := range r.Marks {
		p.line(2, "mark ", m.Name, between(": ", m.Text, ""))
	}
	p.lines(2, r.Remedy)
}
