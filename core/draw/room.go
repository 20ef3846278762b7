package draw

import (
	"math"

	"ceilingwright/core/job/room"

	"ceilingwright/core/drawing"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// drawRoom is the room as it was worked out, with its diagonals where they were read,
// and by how much any reading is off.
func (d *Drawer) drawRoom() *scene {
	s := d.scene(up, plainMargin, words.Say("The room with its sizes, and what was read of it where that is something else."))
	s.outline()
	s.sizes()
	if len(s.Room.Shape.Corners) == 4 {
		s.diagonals()
	}
	for _, w := range s.Room.Shape.Walls() {
		if l, ok := s.reading(survey.Line(w.Name)); ok && s.isOff(l) {
			s.Begin("room.closing", "")
			from, to, out := s.at(w.Start), s.at(w.End), s.outOf(w)
			s.beside(drawing.Dimension, drawing.Point{X: from.X/2 + to.X/2, Y: from.Y/2 + to.Y/2}, direction{-out.x, -out.y}, s.unit/3, l.Off().In(s.Style))
		}
	}
	s.drawThings()
	return s
}

// reading is the first reading of a line.
func (s *scene) reading(line survey.Line) (survey.LineFound, bool) {
	for _, l := range s.Room.Found.Lines {
		if l.Line == line {
			return l, true
		}
	}
	return survey.LineFound{}, false
}

// isOff tells whether a reading is off by what a tape shows.
func (s *scene) isOff(l survey.LineFound) bool {
	return measure.Length(l.Off()).ToMark(s.Style.Notation.Mark()) != 0
}

// diagonals are those that were read, with their lengths where they are clear of
// each other and of the light.
func (s *scene) diagonals() {
	corners := s.Room.Shape.Corners
	s.Begin("room.closing", "")
	for i, line := range [...]survey.Line{survey.LineAC, survey.LineBD} {
		l, ok := s.reading(line)
		if !ok {
			continue
		}
		from, to := s.at(corners[i]), s.at(corners[i+2])
		s.stroke(drawing.Square, from, to)
		// Of both, the quarter at the wall DA.
		near, far := [...]measure.Length{3, 1}[i], [...]measure.Length{1, 3}[i]
		at := drawing.Point{X: (from.X*near+to.X*far)/4 + s.unit, Y: (from.Y*near + to.Y*far) / 4}
		if i == 1 {
			at.Y += s.unit
		}
		s.text(drawing.Dimension, drawing.Start, at, s.unit, s.Style.Notation.Length(l.Adjusted))
		if s.isOff(l) {
			at.Y += s.unit * 5 / 4
			s.text(drawing.Dimension, drawing.Start, at, s.unit, l.Off().In(s.Style))
		}
	}
}

// outline is the room, the names of its corners, and below it what the drawing
// is and from where it is seen, so that no copy of it can be mistaken.
func (s *scene) outline() {
	u := s.unit
	s.text(drawing.Label, drawing.Middle, drawing.Point{X: s.Min.X/2 + s.Max.X/2, Y: s.Max.Y - u/2}, u, s.Title)
	s.Begin("room.area", "")
	s.walls()
	s.Begin("", "")
	far := u + u/3
	if !s.Room.Shape.IsRectangle() {
		far = 2*u + u/4 // clear of the borders, which stand at the corners there
	}
	for i := range s.Room.Shape.Corners {
		p := beyond(s.at(s.Room.Shape.Corners[i]), s.outOfCorner(i), far)
		s.text(drawing.Corner, drawing.Middle, drawing.Point{X: p.X, Y: p.Y + u/3}, u, survey.CornerNumbered(i).Text())
	}
}

// walls is the line of the walls.
func (s *scene) walls() {
	shape := &s.Room.Shape
	switch {
	case shape.Form == survey.Round:
		middle := survey.Point{X: shape.Length / 2, Y: shape.Width / 2}
		s.Put(&drawing.Item{Shape: drawing.Ellipse, Part: drawing.Wall, From: s.at(middle), To: s.at(survey.Point{X: shape.Length, Y: shape.Width})})
	case shape.IsRectangle():
		s.Put(&drawing.Item{Shape: drawing.Rect, Part: drawing.Wall, From: s.at(survey.Point{}), To: s.at(survey.Point{X: shape.Length, Y: shape.Width})})
	default:
		corners := make([]drawing.Point, len(shape.Corners))
		for i, p := range shape.Corners {
			corners[i] = s.at(p)
		}
		s.Put(&drawing.Item{Shape: drawing.Polygon, Part: drawing.Wall, Corners: corners})
	}
}

// along is the direction from one place on the ceiling to another, on the
// drawing.
func (s *scene) along(from, to survey.Point) direction {
	a, b := s.at(from), s.at(to)
	x, y := float64(b.X-a.X), float64(b.Y-a.Y)
	long := math.Sqrt(float64(x*x) + float64(y*y))
	if long == 0 {
		return direction{1, 0}
	}
	return direction{x / long, y / long}
}

// outOf is the direction out of the room across a wall. Walls run clockwise
// looking up and so anticlockwise in the mirror.
func (s *scene) outOf(w survey.WallLine) direction {
	out := s.along(w.Start, w.End).left()
	if s.see == down {
		return direction{-out.x, -out.y}
	}
	return out
}

// outOfCorner is the direction out of the room at corner i: half way between
// those of its two walls.
func (s *scene) outOfCorner(i int) direction {
	walls := s.Room.Shape.Walls()
	one, other := s.outOf(walls[i]), s.outOf(walls[(i+len(walls)-1)%len(walls)])
	x, y := one.x+other.x, one.y+other.y
	long := math.Sqrt(float64(x*x) + float64(y*y))
	if long < 0.01 {
		return one
	}
	return direction{x / long, y / long}
}

// sizes are the lengths of the walls, outside them: of a rectangle one long and
// one wide, of a round room its two axes.
func (s *scene) sizes() {
	shape := &s.Room.Shape
	switch {
	case len(shape.Corners) == 0:
		s.size(survey.WallLine{End: survey.Point{X: shape.Length}})
		s.size(survey.WallLine{Start: survey.Point{Y: shape.Width}})
	case shape.IsRectangle():
		walls := shape.Walls()
		s.size(walls[0])
		s.size(walls[3])
	default:
		for _, w := range shape.Walls() {
			s.size(w)
		}
	}
}

// size is the dimension of one wall.
func (s *scene) size(w survey.WallLine) {
	u, out := s.unit, s.outOf(w)
	from, to := beyond(s.at(w.Start), out, 3*u+u/2), beyond(s.at(w.End), out, 3*u+u/2)
	s.Begin("room.area", "")
	s.stroke(drawing.Dimension, from, to)
	for _, end := range [2]drawing.Point{from, to} {
		s.stroke(drawing.Dimension, beyond(end, out, -u/3), beyond(end, out, u/3))
	}
	start, end := s.partsAt(w)
	at := drawing.Point{X: (from.X*end + to.X*start) / (start + end), Y: (from.Y*end + to.Y*start) / (start + end)}
	s.beside(drawing.Dimension, at, out, u/3, s.Style.Notation.Length(w.Length()))
}

// partsAt are the parts in which the words divide the line of a wall: on its
// middle, but away from a corner that points into the room, where the lines of
// the two walls cross.
func (s *scene) partsAt(w survey.WallLine) (start, end measure.Length) {
	walls := s.Room.Shape.Walls()
	start, end = 1, 1
	for i := range walls {
		if walls[i].Name != w.Name {
			continue
		}
		if pointsIn(walls[(i+len(walls)-1)%len(walls)], w) {
			start = 3
		}
		if pointsIn(w, walls[(i+1)%len(walls)]) {
			end = 3
		}
	}
	return start, end
}

// pointsIn tells whether the corner between a wall and the next points into the
// room: the walls go clockwise, and there they turn the other way.
func pointsIn(w, next survey.WallLine) bool {
	ax, ay := float64(w.End.X-w.Start.X), float64(w.End.Y-w.Start.Y)
	bx, by := float64(next.End.X-next.Start.X), float64(next.End.Y-next.Start.Y)
	return float64(ax*by)-float64(ay*bx) < 0
}

// beside is a text on the outer side of a line that runs square to out, clear
// of it by so much: level where the line is, else read from the right.
func (s *scene) beside(part drawing.Part, at drawing.Point, out direction, clear measure.Length, words string) {
	u := s.unit
	switch {
	case !out.isLevel() && out.y < 0:
		s.text(part, drawing.Middle, drawing.Point{X: at.X, Y: at.Y - clear}, u, words)
	case !out.isLevel():
		s.text(part, drawing.Middle, drawing.Point{X: at.X, Y: at.Y + clear + u*3/4}, u, words)
	case out.x < 0:
		s.turned(part, drawing.Middle, drawing.Point{X: at.X - clear, Y: at.Y}, u, words)
	default:
		s.turned(part, drawing.Middle, drawing.Point{X: at.X + clear + u*3/4, Y: at.Y}, u, words)
	}
}

// drawThings are the light and the obstructions, never too small to see.
func (s *scene) drawThings() {
	s.Begin("", "")
	for i := range s.Room.Things {
		t := &s.Room.Things[i]
		part := drawing.Object
		if t.Light {
			part = drawing.Fixture
		}
		if t.Round || t.Length == 0 || t.Width == 0 {
			s.circle(part, t.Middle, s.radius(t))
			continue
		}
		box := t.Box()
		s.box(part, &box)
	}
}

// radius is how large a round thing is drawn.
func (s *scene) radius(t *room.Thing) measure.Length { return max(t.Length/2, s.unit/2) }
