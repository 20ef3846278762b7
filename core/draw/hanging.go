package draw

import (
	"strconv"

	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"

	"ceilingwright/core/drawing"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

func (d *Drawer) drawHanging(l hung.Layer, see looking) *scene {
	s := d.scene(see, plainMargin,
		words.Say("The ceiling with the mask's {panels|panel|panels} numbered in the order of hanging. Panel {first} goes up first.",
			words.Count("panels", l.Panels.Count()), words.Name("first", l.Order[0].Panel.Label())))
	readable := l.Panels.Count() <= readablePanels
	s.outline()
	s.sizes()
	if readable {
		s.panels(l)
	} else {
		s.seams(l.Layer)
	}
	s.Begin("mask.area", "")
	s.box(drawing.Box, &s.Setting.Choice.Box)
	s.loosePieces(l)
	s.centreLines()
	s.drawThings()
	if readable {
		s.numbers(l)
	}
	s.borders()
	return s
}

func (s *scene) panels(l hung.Layer) {
	for i := range l.Order {
		h, part := &l.Order[i], drawing.Panel
		if h.N == 1 {
			part = drawing.FirstUp
		}
		box := hung.PlaceOf(&s.Setting.Choice.Box, l.Layer, h)
		s.Begin("", l.Panels.ID+":"+h.Panel.Label())
		s.box(part, &box)
	}
}

// numbers are each panel's turn, large, and its label, small in the corner that
// is at the top left as drawn. They stand above lines and clear of the things
// on the ceiling.
func (s *scene) numbers(l hung.Layer) {
	for i := range l.Order {
		h := &l.Order[i]
		box := hung.PlaceOf(&s.Setting.Choice.Box, l.Layer, h)
		least := min(box.Length, box.Width)
		turn, small := min(2*s.unit, least/2), s.unit*smallLetters/8
		label := h.Panel.Label()
		s.Begin("", l.Panels.ID+":"+label)
		middle := s.clear(s.at(box.Centre()), turn)
		s.text(drawing.Order, drawing.Middle, drawing.Point{X: middle.X, Y: middle.Y + turn/3}, turn, strconv.Itoa(h.N))
		if least < s.unit*labelRoom/4 {
			continue
		}
		corner := s.topLeft(&box)
		s.text(drawing.Label, drawing.Start, drawing.Point{X: corner.X + small/2, Y: corner.Y + small + small/4}, small, label)
	}
}

// topLeft is the corner of a box that is at the top left as drawn.
func (s *scene) topLeft(box *setout.Box) drawing.Point {
	best := s.at(box.Corner(survey.A))
	for _, c := range [3]survey.Corner{survey.B, survey.C, survey.D} {
		if p := s.at(box.Corner(c)); p.X+p.Y < best.X+best.Y {
			best = p
		}
	}
	return best
}

// clear is a place for a letter of that height, or where a thing is drawn there,
// one just below it.
func (s *scene) clear(p drawing.Point, height measure.Length) drawing.Point {
	for i := range s.Room.Things {
		t := &s.Room.Things[i]
		middle, reach := s.at(t.Middle), max(s.radius(t), t.Width/2)+height*2/3
		if (p.X-middle.X).Abs() <= reach && (p.Y-middle.Y).Abs() <= reach {
			return drawing.Point{X: p.X, Y: middle.Y + reach}
		}
	}
	return p
}

// seams are the seams alone, for a grid too fine for numbers.
func (s *scene) seams(l *layers.Layer) {
	box := &s.Setting.Choice.Box
	s.Begin("seams.length", "")
	for i := range l.Columns.Gaps {
		x := l.Columns.Seam(i)
		s.line(drawing.Seam, box.Out(survey.Point{X: x}), box.Out(survey.Point{X: x, Y: box.Width}))
	}
	for i := range l.Rows.Gaps {
		y := l.Rows.Seam(i)
		s.line(drawing.Seam, box.Out(survey.Point{Y: y}), box.Out(survey.Point{X: box.Length, Y: y}))
	}
}

// loosePieces are the lines that loose pieces are cut along.
func (s *scene) loosePieces(l hung.Layer) {
	for _, piece := range l.Panels.Loose {
		s.Begin("", l.Panels.ID+":"+piece.Name)
		if piece.Round {
			s.circle(drawing.Loose, s.Setting.Choice.Box.Out(survey.Point{X: piece.X, Y: piece.Y}), piece.Length/2)
			continue
		}
		box := hung.PlaceOfLoose(&s.Setting.Choice.Box, &piece)
		s.box(drawing.Loose, &box)
	}
}

// centreLines run through the middle of the box, to a little beyond the walls.
func (s *scene) centreLines() {
	box := &s.Setting.Choice.Box
	over := max(s.Room.Shape.Length, s.Room.Shape.Width)
	half := survey.Point{X: box.Length.Half(), Y: box.Width.Half()}
	s.Begin("", "")
	s.ruled(box.Out(survey.Point{X: half.X, Y: half.Y - over}), box.Out(survey.Point{X: half.X, Y: half.Y + over}))
	s.ruled(box.Out(survey.Point{X: half.X - over, Y: half.Y}), box.Out(survey.Point{X: half.X + over, Y: half.Y}))
}

// ruled is a centre line between two places outside the room, cut a letter
// beyond the room's bounds.
func (s *scene) ruled(from, to survey.Point) {
	low, high := s.Room.Shape.Bounds()
	low, high = survey.Point{X: low.X - s.unit, Y: low.Y - s.unit}, survey.Point{X: high.X + s.unit, Y: high.Y + s.unit}
	enter, leave := 0.0, 1.0
	for _, axis := range [2][4]measure.Length{{from.X, to.X, low.X, high.X}, {from.Y, to.Y, low.Y, high.Y}} {
		step := float64(axis[1] - axis[0])
		if step == 0 {
			continue
		}
		one, other := float64(axis[2]-axis[0])/step, float64(axis[3]-axis[0])/step
		enter, leave = max(enter, min(one, other)), min(leave, max(one, other))
	}
	if enter >= leave {
		return
	}
	part := func(a, b measure.Length, share float64) measure.Length { return a + measure.Length(share*float64(b-a)) }
	s.line(drawing.Centre,
		survey.Point{X: part(from.X, to.X, enter), Y: part(from.Y, to.Y, enter)},
		survey.Point{X: part(from.X, to.X, leave), Y: part(from.Y, to.Y, leave)})
}

// borders are the borders, each with a line in the border and its figure
// outside the wall, where no panel's label is in the way: one at each wall where
// both its ends are alike, else one at each end.
func (s *scene) borders() {
	if s.Room.Shape.IsRectangle() && s.Setting.Choice.Box.Turn.IsExact() {
		for i, w := range s.Room.Shape.Walls() {
			s.evenBorder(w, i)
		}
		return
	}
	for _, place := range s.Setting.Choice.Layout.Places {
		if w, ok := s.Room.Shape.Wall(place.Wall); ok && place.Own != "" {
			s.endBorder(w, place)
		}
	}
}

// evenBorder stands a quarter along the wall, clear of the wall's own size.
func (s *scene) evenBorder(w survey.WallLine, i int) {
	share := measure.Length(4)
	at := survey.Point{X: w.Start.X + (w.End.X-w.Start.X)/share, Y: w.Start.Y + (w.End.Y-w.Start.Y)/share}
	if i%3 != 0 {
		at = survey.Point{X: w.End.X - (w.End.X-w.Start.X)/share, Y: w.End.Y - (w.End.Y-w.Start.Y)/share}
	}
	s.border("border."+string(w.Name), w, at, s.Setting.Choice.Borders.At(w.Name))
}

// endBorder stands at a corner of the box.
func (s *scene) endBorder(w survey.WallLine, place setout.Border) {
	corner, x, y := s.Setting.Choice.Box.Corner(place.Own), 0.0, 0.0
	if dx, dy, ok := s.Room.Shape.DirectionOf(w.Name); ok {
		x, y = dy, -dx
	}
	foot := survey.Point{
		X: corner.X + measure.Length(x*float64(place.Length)),
		Y: corner.Y + measure.Length(y*float64(place.Length)),
	}
	id := "border." + string(w.Name)
	if place.Corner != "" {
		id += "." + string(place.Corner)
	}
	s.border(id, w, foot, place.Length)
}

// border is a line from a place on a wall to the mask, and its figure: outside the wall,
// or, where marks stand there, inside the mask.
func (s *scene) border(id string, w survey.WallLine, at survey.Point, border measure.Length) {
	u, out, foot := s.unit, s.outOf(w), s.at(at)
	s.Begin(id, "")
	end, inner := beyond(foot, out, u/2), beyond(foot, out, -border)
	figure := s.Style.Notation.Length(border)
	if !s.marked {
		s.stroke(drawing.Dimension, end, inner)
		s.beside(drawing.Dimension, end, out, u/3, figure)
		return
	}
	s.stroke(drawing.Dimension, foot, inner)
	along, start := s.along(w.Start, w.End), s.at(w.Start)
	if far := s.at(w.End); (foot.X-start.X).Abs()+(foot.Y-start.Y).Abs() > (foot.X-far.X).Abs()+(foot.Y-far.Y).Abs() {
		along = direction{-along.x, -along.y}
	}
	s.beside(drawing.Dimension, beyond(inner, along, 4*u), direction{-out.x, -out.y}, u/3, figure)
}
