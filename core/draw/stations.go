package draw

import (
	"strconv"

	"ceilingwright/core/job/hung"

	"ceilingwright/core/drawing"
	"ceilingwright/core/hanging"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// drawStations is the platform: where its deck stands at each place, what is
// reached from there, and its way from one place to the next.
func (d *Drawer) drawStations(l hung.Layer) *scene {
	s := d.scene(up, plainMargin,
		words.Say("The deck at {n|platform position|platform positions}, numbered in the order they are used, with what is reached from each and the way between them.",
			words.Count("n", len(l.Stations))))
	s.outline()
	s.sizes()
	s.seams(l.Layer)
	s.Begin("mask.area", "")
	s.box(drawing.Box, &s.Setting.Choice.Box)
	for i := range l.Places {
		station := &l.Stations[l.Places[i].N-1]
		s.Begin(l.Panels.ID+".stations", "")
		s.rect(drawing.Station, station.Reach)
		s.rect(drawing.Deck, station.Deck)
	}
	s.drawThings()
	s.furnish()
	s.route(l)
	return s
}

// rect is a rectangle given in the frame of the box.
func (s *scene) rect(part drawing.Part, r hanging.Rect) {
	at := s.Setting.Choice.Box.Out(survey.Point{X: r.X, Y: r.Y})
	box := setout.Box{X: at.X, Y: at.Y, Length: r.Length, Width: r.Width, Turn: s.Setting.Choice.Box.Turn}
	s.box(part, &box)
}

// route is the way of the platform and the numbers of its places.
func (s *scene) route(l hung.Layer) {
	way := make([]drawing.Point, len(l.Places))
	for i := range l.Places {
		way[i] = s.at(s.Setting.Choice.Box.Out(l.Places[i].Middle))
	}
	s.Begin(l.Panels.ID+".stations", "")
	if len(way) > 1 {
		s.Put(&drawing.Item{Shape: drawing.Path, Part: drawing.Route, Corners: way})
	}
	u := s.unit * 3 / 2
	for i, p := range way {
		s.text(drawing.Order, drawing.Middle, drawing.Point{X: p.X, Y: p.Y + u/3}, u, strconv.Itoa(l.Places[i].N)+blocked(l, l.Places[i].N))
	}
}

// furnish is what stays on the floor, with its name.
func (s *scene) furnish() {
	s.Begin("", "")
	for i := range s.Plan.Furniture {
		stands, ok := hung.StandsAt(&s.Plan.Furniture[i])
		if !ok || !s.Room.Shape.Contains(stands.Centre()) {
			continue
		}
		s.box(drawing.Standing, &stands)
		if name := s.Plan.Furniture[i].Name; name != "" {
			at := s.at(stands.Centre())
			s.text(drawing.Label, drawing.Middle, drawing.Point{X: at.X, Y: at.Y + s.unit/3}, s.unit, name)
		}
	}
}

// blocked marks the number of a place where the platform was tried and cannot stand.
func blocked(l hung.Layer, stop int) string {
	if stop <= len(l.Stands) && l.Stands[stop-1].Tried && !l.Stands[stop-1].Fits {
		return " !"
	}
	return ""
}
