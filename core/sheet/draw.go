package sheet

import (
	"strconv"

	"ceilingwright/core/drawing"
	"ceilingwright/core/drawing/svg"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Looking says from where a drawing is seen. Up is the ceiling as the fitter
// sees it, corners A to D clockwise; down is its mirror, as panels lie on the
// floor with their faces up.
type looking string

const (
	up   looking = "up"
	down looking = "down"
)

// Above readablePanels a drawing shows the seams alone: numbers would be too
// small to read. Above readableMarks along a wall the running dimensions are
// left to the table.
const (
	readablePanels = 240
	readableMarks  = 34
)

// lettersAcross is how many letters' heights the longer side of the room is:
// few enough that a phone shows them at a legible size.
const lettersAcross = 30

// draw puts the drawings on the sheet: for each layer the hanging order looking
// up and looking down and the marks along the walls; without any panels, the
// room alone.
func (b *builder) draw() {
	if !b.plan.Room.HasPlan() {
		return
	}
	drawn := false
	for i := range b.layers {
		l := &b.layers[i]
		if !b.placed || l.panels.IsEmpty() {
			continue
		}
		drawn = true
		b.add(l.panels.ID+".up", l, up, "hanging", b.drawHanging(l, up))
		b.add(l.panels.ID+".down", l, down, "hanging", b.drawHanging(l, down))
		b.add(l.panels.ID+".marks", l, up, "marks", b.drawMarks(l))
	}
	if !drawn {
		b.add("room.up", nil, up, "hanging", b.drawRoom())
	}
}

func (b *builder) add(id string, l *layer, see looking, shows string, s *scene) {
	out := Drawing{ID: id, Looking: string(see), Shows: shows, Title: s.Title, SVG: svg.Write(&s.Drawing)}
	if l != nil {
		out.Layer = l.panels.ID
	}
	b.sheet.Drawings = append(b.sheet.Drawings, out)
}

// scene is one drawing in the making. unit is the height of its letters.
type scene struct {
	*builder
	drawing.Drawing
	see  looking
	room survey.Room
	unit measure.Length
}

// scene starts a drawing with so many letters' heights of margin round the room.
func (b *builder) scene(title string, see looking, margin measure.Length, caption string) *scene {
	room := b.plan.Room
	s := &scene{builder: b, see: see, room: room, unit: max(room.Length, room.Width) / lettersAcross}
	s.Title, s.Caption = title+", looking "+string(see), caption
	margin *= s.unit
	s.Min = drawing.Point{X: -margin, Y: -margin}
	s.Max = drawing.Point{X: room.Length + margin, Y: room.Width + margin}
	return s
}

// at is a place on the ceiling as the drawing shows it.
func (s *scene) at(x, y measure.Length) drawing.Point {
	if s.see == down {
		p := setout.Mirror(survey.Point{X: x, Y: y}, s.site.Shape)
		return drawing.Point{X: p.X, Y: p.Y}
	}
	return drawing.Point{X: x, Y: y}
}

func (s *scene) line(part drawing.Part, x1, y1, x2, y2 measure.Length) {
	s.Put(&drawing.Item{Shape: drawing.Line, Part: part, From: s.at(x1, y1), To: s.at(x2, y2)})
}

func (s *scene) rect(part drawing.Part, b *setout.Box) {
	s.Put(&drawing.Item{Shape: drawing.Rect, Part: part, From: s.at(b.X, b.Y), To: s.at(b.X+b.Length, b.Y+b.Width)})
}

func (s *scene) text(part drawing.Part, anchor drawing.Anchor, x, y, size measure.Length, words string) {
	s.Put(&drawing.Item{Shape: drawing.Text, Part: part, Anchor: anchor, From: s.at(x, y), Size: size, Words: words})
}

func (s *scene) turned(part drawing.Part, anchor drawing.Anchor, x, y, size measure.Length, words string) {
	s.Put(&drawing.Item{Shape: drawing.Text, Part: part, Anchor: anchor, Turned: true, From: s.at(x, y), Size: size, Words: words})
}

// outline is the room, the names of its corners, and below it what the drawing
// is and from where it is seen, so that no copy of it can be mistaken.
func (s *scene) outline() {
	u := s.unit
	s.text(drawing.Label, drawing.Middle, s.room.Length/2, s.Max.Y-u/2, u, s.Title)
	s.Begin("room.area", "")
	s.rect(drawing.Wall, &setout.Box{Length: s.room.Length, Width: s.room.Width})
	s.Begin("", "")
	for _, c := range []survey.Corner{survey.A, survey.B, survey.C, survey.D} {
		p := s.room.Corner(c)
		dx, dy := -u, -u/2
		if p.X > 0 {
			dx = u
		}
		if p.Y > 0 {
			dy = u + u/4
		}
		s.text(drawing.Corner, drawing.Middle, p.X+dx, p.Y+dy, u, string(c))
	}
}

// sizes are the two sizes of the room, outside the walls.
func (s *scene) sizes() {
	u, long, wide := s.unit, s.room.Length, s.room.Width
	off := -3*u - u/2
	s.Begin("room.area", "")
	s.line(drawing.Dimension, 0, off, long, off)
	s.line(drawing.Dimension, 0, off-u/3, 0, off+u/3)
	s.line(drawing.Dimension, long, off-u/3, long, off+u/3)
	s.text(drawing.Dimension, drawing.Middle, long/2, off-u/3, u, s.n.Length(long))
	s.Begin("room.area", "")
	s.line(drawing.Dimension, off, 0, off, wide)
	s.line(drawing.Dimension, off-u/3, 0, off+u/3, 0)
	s.line(drawing.Dimension, off-u/3, wide, off+u/3, wide)
	s.turned(drawing.Dimension, drawing.Middle, s.beside(off), wide/2, u, s.n.Length(wide))
}

// beside is where a turned text stands so that it is on the left of its line
// as drawn: turned text grows to the left of its point.
func (s *scene) beside(x measure.Length) measure.Length {
	if s.see == down {
		return x + s.unit/3
	}
	return x - s.unit/3
}

// centreLines run through the middle of the box, beyond the walls a little.
func (s *scene) centreLines() {
	c, over := s.choice.Box.Centre(), s.unit
	s.Begin("", "")
	s.line(drawing.Centre, c.X, -over, c.X, s.room.Width+over)
	s.line(drawing.Centre, -over, c.Y, s.room.Length+over, c.Y)
}

func (s *scene) fixture() {
	centre, ok := s.plan.Fixture.Centre(s.room)
	if !ok {
		return
	}
	s.Begin("", "")
	s.Put(&drawing.Item{Shape: drawing.Circle, Part: drawing.Fixture, From: s.at(centre.X, centre.Y), Size: s.fixtureRadius()})
}

// borders are the four borders, each with a line in the border and its figure
// outside the wall, where no panel's label is in the way.
func (s *scene) borders() {
	box, borders, u, room := &s.choice.Box, &s.choice.Borders, s.unit, s.room
	x, y := room.Length/4, room.Width-room.Width/4
	s.Begin("border.AB", "")
	s.line(drawing.Dimension, x, -u/2, x, box.Y)
	s.text(drawing.Dimension, drawing.Middle, x, -u, u, s.n.Length(borders.AB))
	s.Begin("border.CD", "")
	s.line(drawing.Dimension, x, box.Y+box.Width, x, room.Width+u/2)
	s.text(drawing.Dimension, drawing.Middle, x, room.Width+u+u/2, u, s.n.Length(borders.CD))
	left, right := -u, room.Length+u+u/2
	if s.see == down {
		left, right = -u-u/2, room.Length+u
	}
	s.Begin("border.DA", "")
	s.line(drawing.Dimension, -u/2, y, box.X, y)
	s.turned(drawing.Dimension, drawing.Middle, left, y, u, s.n.Length(borders.DA))
	s.Begin("border.BC", "")
	s.line(drawing.Dimension, box.X+box.Length, y, room.Length+u/2, y)
	s.turned(drawing.Dimension, drawing.Middle, right, y, u, s.n.Length(borders.BC))
}

func (b *builder) drawRoom() *scene {
	s := b.scene("Ceiling", up, 5, "The room alone: there is no mask yet that fits in it.")
	s.outline()
	s.sizes()
	s.fixture()
	return s
}

func (b *builder) drawHanging(l *layer, see looking) *scene {
	s := b.scene(l.panels.Name, see, 5, "The ceiling with the mask's "+plural(int64(l.panels.Count()), "panel", "panels")+" numbered in the order of hanging. Panel "+
		l.order[0].Panel.Label()+" goes up first.")
	readable := l.panels.Count() <= readablePanels
	s.outline()
	s.sizes()
	if readable {
		s.panels(l)
	} else {
		s.seams(l)
	}
	s.Begin("mask.area", "")
	s.rect(drawing.Box, &s.choice.Box)
	s.centreLines()
	s.fixture()
	if readable {
		s.numbers(l)
	}
	s.borders()
	return s
}

func (s *scene) panels(l *layer) {
	for i := range l.order {
		h, part := &l.order[i], drawing.Panel
		if h.N == 1 {
			part = drawing.FirstUp
		}
		box := s.choice.Box.PanelBox(l.columns, l.rows, h.Panel)
		s.Begin("", l.panels.ID+":"+h.Panel.Label())
		s.rect(part, &box)
	}
}

// numbers are each panel's turn, large, and its label, small in the corner that
// is at the top left as drawn. They stand above lines and clear of the fixture.
func (s *scene) numbers(l *layer) {
	for i := range l.order {
		h := &l.order[i]
		box := s.choice.Box.PanelBox(l.columns, l.rows, h.Panel)
		least := min(box.Length, box.Width)
		turn, small := min(2*s.unit, least/2), min(s.unit*4/5, least/5)
		label := h.Panel.Label()
		s.Begin("", l.panels.ID+":"+label)
		x, y := box.X+box.Length/2, box.Y+box.Width/2
		s.text(drawing.Order, drawing.Middle, x, s.clearOfFixture(x, y, turn)+turn/3, turn, strconv.Itoa(h.N))
		if small <= s.unit/4 {
			continue
		}
		x = box.X + small/2
		if s.see == down {
			x = box.X + box.Length - small/2
		}
		s.text(drawing.Label, drawing.Start, x, box.Y+small+small/2, small, label)
	}
}

// clearOfFixture is y, or where the fixture is drawn there, the place of a
// letter of that height just below it.
func (s *scene) clearOfFixture(x, y, height measure.Length) measure.Length {
	centre, ok := s.plan.Fixture.Centre(s.room)
	reach := s.fixtureRadius() + height*2/3
	if !ok || (x-centre.X).Abs() > reach || (y-centre.Y).Abs() > reach {
		return y
	}
	return centre.Y + reach
}

// fixtureRadius is how large the fixture is drawn: never too small to see.
func (s *scene) fixtureRadius() measure.Length { return max(s.plan.Fixture.Across/2, s.unit/2) }

// seams are the seams alone, for a grid too fine for numbers.
func (s *scene) seams(l *layer) {
	box := &s.choice.Box
	s.Begin("seams.length", "")
	for i := range l.columns.Gaps {
		x := box.X + l.columns.Seam(i)
		s.line(drawing.Seam, x, box.Y, x, box.Y+box.Width)
	}
	for i := range l.rows.Gaps {
		y := box.Y + l.rows.Seam(i)
		s.line(drawing.Seam, box.X, y, box.X+box.Length, y)
	}
}

// drawMarks is the setting-out drawing: box, centre lines and the ticks along
// the walls with their running dimensions.
func (b *builder) drawMarks(l *layer) *scene {
	s := b.scene("Marks for "+l.panels.Name, up, 8, "The box, its centre lines and the marks along the walls, each measured from the corner its wall is read from.")
	s.outline()
	s.seams(l)
	s.Begin("box.diagonal", "")
	s.rect(drawing.Box, &s.choice.Box)
	s.centreLines()
	s.fixture()
	for _, w := range s.site.Marks(s.choice.Box, []mask.Layer{l.panels}) {
		s.ticks(w.Wall, merged(w.Marks, s.n.Mark()))
	}
	return s
}

// ticks are the marks of one wall. Where two come close their figures are
// pushed apart, so that none is written over another.
func (s *scene) ticks(wall survey.Wall, marks []tick) {
	last := measure.Length(-1 << 60)
	s.Begin("", "")
	for i := range marks {
		at := marks[i].At
		place := max(at, last+s.unit+s.unit/5)
		last = place
		s.tick(wall, at, place, len(marks) <= readableMarks)
	}
}

// tick is one mark: a stroke across the wall's end of it, a leader to where
// there is room for the figure, and the figure.
func (s *scene) tick(wall survey.Wall, at, place measure.Length, words bool) {
	u, letters := s.unit, s.unit*4/5
	base, out := measure.Length(0), -u
	anchor := drawing.End
	switch wall {
	case survey.BC:
		base, out, anchor = s.room.Length, u, drawing.Start
	case survey.CD:
		base, out = s.room.Width, u
	case survey.AB:
		anchor = drawing.Start
	}
	along := wall == survey.AB || wall == survey.CD
	line := func(from, to, out1, out2 measure.Length) {
		if along {
			s.line(drawing.Tick, from, base+out1, to, base+out2)
		} else {
			s.line(drawing.Tick, base+out1, from, base+out2, to)
		}
	}
	line(at, at, 0, out/2)
	if !words {
		return
	}
	line(at, place, out/2, out)
	if along {
		s.turned(drawing.Tick, anchor, place+letters/3, base+out+out/4, letters, s.n.Length(at))
	} else {
		s.text(drawing.Tick, anchor, base+out+out/4, place+letters/3, letters, s.n.Length(at))
	}
}
