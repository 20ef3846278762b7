package draw

import (
	"ceilingwright/core/delivery"
	"ceilingwright/core/drawing"
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// drawPanels is the panels by their labels, each with what the count of the delivery
// found of it, by a sign and a shade, and the key to the signs below.
func (d *Drawer) drawPanels(l hung.Layer) *scene {
	s := d.scene(up, plainMargin,
		words.Say("The {panels|panel|panels} of the mask by label. One that was found has a tick, a missing one is crossed out, a damaged one is darker with an exclamation mark, one cut to another size two short strokes.",
			words.Count("panels", l.Panels.Count())))
	count := l.Delivery.Count
	isCounted := count.Found+count.Missing+count.Damaged+count.Recut > 0
	if isCounted {
		s.Max.Y += 2 * s.unit
	}
	s.outline()
	if l.Panels.Count() > readablePanels {
		s.seams(l.Layer)
	} else {
		for i := range l.Order {
			s.panel(l, &l.Order[i])
		}
	}
	s.Begin("mask.area", "")
	s.box(drawing.Box, &s.Setting.Choice.Box)
	s.loosePieces(l)
	s.drawThings()
	if isCounted {
		s.key(&count)
	}
	return s
}

// panel is one panel, or a block of them, with its label and its sign.
func (s *scene) panel(l hung.Layer, h *hanging.Hang) {
	box, state := hung.PlaceOf(&s.Setting.Choice.Box, l.Layer, h), delivery.Unchecked
	if i := l.Panels.Index(h.Panel); i < len(l.Delivery.Panels) {
		state = l.Delivery.Panels[i].State
	}
	label := h.Panel.Label()
	s.Begin("", l.Panels.ID+":"+label)
	s.box(partOf(state), &box)
	s.sign(state, s.at(box.Corner(survey.A)), s.at(box.Corner(survey.C)))
	size := min(s.unit*5/4, min(box.Length, box.Width)*2/5)
	middle := s.clear(s.at(box.Centre()), size)
	s.text(drawing.Order, drawing.Middle, drawing.Point{X: middle.X, Y: middle.Y + size/3}, size, label)
}

// partOf is the shade of a panel.
func partOf(state delivery.State) drawing.Part {
	switch state {
	case delivery.Found, delivery.Recut:
		return drawing.FirstUp
	case delivery.Missing:
		return drawing.Missing
	case delivery.Damaged:
		return drawing.Damaged
	}
	return drawing.Panel
}

// sign is the sign of a panel between two opposite corners: through all of it where it is
// not there, else small at the middle of its upper edge.
func (s *scene) sign(state delivery.State, from, to drawing.Point) {
	left, right := min(from.X, to.X), max(from.X, to.X)
	top, bottom := min(from.Y, to.Y), max(from.Y, to.Y)
	path := func(corners ...drawing.Point) {
		s.Put(&drawing.Item{Shape: drawing.Path, Part: drawing.Sign, Corners: corners})
	}
	middle, tick := left/2+right/2, min(s.unit/2, (bottom-top)/5)
	low := top + tick/2
	switch state {
	case delivery.Missing:
		path(drawing.Point{X: left, Y: top}, drawing.Point{X: right, Y: bottom})
		path(drawing.Point{X: left, Y: bottom}, drawing.Point{X: right, Y: top})
	case delivery.Damaged:
		path(drawing.Point{X: middle, Y: low - tick/4}, drawing.Point{X: middle, Y: low + tick/2})
		path(drawing.Point{X: middle, Y: low + tick*3/4}, drawing.Point{X: middle, Y: low + tick})
	case delivery.Found:
		path(drawing.Point{X: middle - tick, Y: low + tick/2}, drawing.Point{X: middle - tick/4, Y: low + tick}, drawing.Point{X: middle + tick, Y: low})
	case delivery.Recut:
		path(drawing.Point{X: middle - tick, Y: low}, drawing.Point{X: middle + tick, Y: low})
		path(drawing.Point{X: middle - tick, Y: low + tick}, drawing.Point{X: middle + tick, Y: low + tick})
	}
}

// key is the signs with what they stand for and how many panels bear them, in a row
// under the title.
func (s *scene) key(count *delivery.Count) {
	u := s.unit
	at, y := s.Min.X+2*u, s.Max.Y-3*u
	s.Begin("", "")
	for _, one := range [...]struct {
		state delivery.State
		n     int
		said  words.Text
	}{
		{delivery.Found, count.Found, words.Say("{n} found", words.Count("n", count.Found))},
		{delivery.Missing, count.Missing, words.Say("{n} missing", words.Count("n", count.Missing))},
		{delivery.Damaged, count.Damaged, words.Say("{n} damaged", words.Count("n", count.Damaged))},
		{delivery.Recut, count.Recut, words.Say("{n} recut", words.Count("n", count.Recut))},
	} {
		if one.n == 0 {
			continue
		}
		from, to := drawing.Point{X: at, Y: y}, drawing.Point{X: at + u*3/2, Y: y + u*3/2}
		s.Put(&drawing.Item{Shape: drawing.Rect, Part: partOf(one.state), From: from, To: to})
		s.sign(one.state, from, to)
		s.text(drawing.Label, drawing.Start, drawing.Point{X: at + 2*u, Y: y + u + u/8}, u, one.said.In(s.Style))
		at += 8 * u
	}
}
