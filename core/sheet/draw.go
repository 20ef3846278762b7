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

func (b *builder) add(id string, l *layer, see looking, shows string, d drawing.Drawing) {
	out := Drawing{ID: id, Looking: string(see), Shows: shows, Title: d.Title, SVG: svg.Write(d)}
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

func (b *builder) scene(title string, see looking, caption string) *scene {
	room := b.plan.Room
	s := &scene{builder: b, see: see, room: room, unit: max(room.Length, room.Width) / 40}
	s.Title, s.Caption = title+", looking "+string(see), caption
	margin := 5 * s.unit
	s.Min = drawing.Point{X: -margin, Y: -margin}
	s.Max = drawing.Point{X: room.Length + margin, Y: room.Width + margin}
	return s
}

// at is a place on the ceiling as the drawing shows it.
func (s *scene) at(x, y measure.Length) drawing.Point {
	if s.see == down {
		p := setout.Mirror(survey.Point{X: x, Y: y}, s.room)
		return drawing.Point{X: p.X, Y: p.Y}
	}
	return drawing.Point{X: x, Y: y}
}

func (s *scene) group(figure, panel string, items ...drawing.Item) {
	s.Add(drawing.Group{Figure: figure, Panel: panel, Items: items})
}

func (s *scene) line(part drawing.Part, x1, y1, x2, y2 measure.Length) drawing.Item {
	return drawing.Item{Shape: drawing.Line, Part: part, From: s.at(x1, y1), To: s.at(x2, y2)}
}

func (s *scene) rect(part drawing.Part, b setout.Box) drawing.Item {
	return drawing.Item{Shape: drawing.Rect, Part: part, From: s.at(b.X, b.Y), To: s.at(b.X+b.Length, b.Y+b.Width)}
}

func (s *scene) text(part drawing.Part, x, y, size measure.Length, words string) drawing.Item {
	return drawing.Item{Shape: drawing.Text, Part: part, From: s.at(x, y), Size: size, Words: words, Anchor: drawing.Middle}
}

func (s *scene) turned(part drawing.Part, x, y, size measure.Length, words string) drawing.Item {
	t := s.text(part, x, y, size, words)
	t.Turned = true
	return t
}

// walls are the room, its corners and its two sizes.
func (s *scene) walls() {
	room, u := s.room, s.unit
	s.group("room.area", "", s.rect(drawing.Wall, setout.Box{Length: room.Length, Width: room.Width}))
	for _, c := range []struct {
		name string
		x, y measure.Length
	}{
		{"A", -u, -u / 2}, {"B", room.Length + u, -u / 2},
		{"C", room.Length + u, room.Width + u + u/4}, {"D", -u, room.Width + u + u/4},
	} {
		s.group("", "", s.text(drawing.Corner, c.x, c.y, u, c.name))
	}
	top, left := -3*u-u/2, -3*u-u/2
	s.group("room.length", "", s.line(drawing.Dimension, 0, top, room.Length, top),
		s.line(drawing.Dimension, 0, top-u/3, 0, top+u/3), s.line(drawing.Dimension, room.Length, top-u/3, room.Length, top+u/3),
		s.text(drawing.Dimension, room.Length/2, top-u/3, u, s.n.Length(room.Length)))
	s.group("room.width", "", s.line(drawing.Dimension, left, 0, left, room.Width),
		s.line(drawing.Dimension, left-u/3, 0, left+u/3, 0), s.line(drawing.Dimension, left-u/3, room.Width, left+u/3, room.Width),
		s.turned(drawing.Dimension, s.beside(left), room.Width/2, u, s.n.Length(room.Width)))
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
	s.group("", "", s.line(drawing.Centre, c.X, -over, c.X, s.room.Width+over),
		s.line(drawing.Centre, -over, c.Y, s.room.Length+over, c.Y))
}

func (s *scene) fixture() {
	centre, ok := s.plan.Fixture.Centre(s.room)
	if !ok {
		return
	}
	radius := max(s.plan.Fixture.Across/2, s.unit/2)
	s.group("", "", drawing.Item{Shape: drawing.Circle, Part: drawing.Fixture, From: s.at(centre.X, centre.Y), Size: radius})
}

// borders are the four borders, each with a line in the border and its figure
// outside the wall, where no panel's label is in the way.
func (s *scene) borders() {
	box, borders, u, room := s.choice.Box, s.choice.Borders, s.unit, s.room
	quarterX, quarterY := room.Length/4, room.Width-room.Width/4
	s.group("border.AB", "", s.line(drawing.Dimension, quarterX, -u/2, quarterX, box.Y),
		s.text(drawing.Dimension, quarterX, -u, u, s.n.Length(borders.AB)))
	s.group("border.CD", "", s.line(drawing.Dimension, quarterX, box.Y+box.Width, quarterX, room.Width+u/2),
		s.text(drawing.Dimension, quarterX, room.Width+u+u/2, u, s.n.Length(borders.CD)))
	left, right := -u, room.Length+u+u/2
	if s.see == down {
		left, right = -u-u/2, room.Length+u
	}
	s.group("border.DA", "", s.line(drawing.Dimension, -u/2, quarterY, box.X, quarterY),
		s.turned(drawing.Dimension, left, quarterY, u, s.n.Length(borders.DA)))
	s.group("border.BC", "", s.line(drawing.Dimension, box.X+box.Length, quarterY, room.Length+u/2, quarterY),
		s.turned(drawing.Dimension, right, quarterY, u, s.n.Length(borders.BC)))
}

func (b *builder) drawRoom() drawing.Drawing {
	s := b.scene("Ceiling", up, "The room alone: there is no mask yet that fits in it.")
	s.walls()
	s.fixture()
	return s.Drawing
}

func (b *builder) drawHanging(l *layer, see looking) drawing.Drawing {
	s := b.scene(l.panels.Name, see, "The ceiling with the mask's "+plural(int64(l.panels.Count()), "panel", "panels")+" numbered in the order of hanging. Panel "+
		l.order[0].Panel.Label()+" goes up first.")
	s.walls()
	if l.panels.Count() > readablePanels {
		s.seams(l)
	} else {
		for _, h := range l.order {
			s.panel(l, h)
		}
	}
	s.group("mask.area", "", s.rect(drawing.Box, s.choice.Box))
	s.centreLines()
	s.fixture()
	if l.panels.Count() <= readablePanels {
		for _, h := range l.order {
			s.numbers(l, h)
		}
	}
	s.borders()
	return s.Drawing
}

func (s *scene) panel(l *layer, h setout.Hang) {
	part := drawing.Panel
	if h.N == 1 {
		part = drawing.FirstUp
	}
	s.group("", l.panels.ID+":"+h.Panel.Label(), s.rect(part, s.choice.Box.PanelBox(l.columns, l.rows, h.Panel)))
}

// numbers are a panel's turn, large, and its label, small in the corner that
// is at the top left as drawn. They stand above lines, the turn clear of the
// centre lines.
func (s *scene) numbers(l *layer, h setout.Hang) {
	box, u := s.choice.Box.PanelBox(l.columns, l.rows, h.Panel), s.unit
	least := min(box.Length, box.Width)
	turn := min(2*u, least/2)
	items := []drawing.Item{s.text(drawing.Order, box.X+box.Length/2, box.Y+box.Width/2+turn+turn/4, turn, strconv.Itoa(h.N))}
	if small := min(u*4/5, least/5); small > u/4 {
		label := s.text(drawing.Label, box.X+small/2, box.Y+small+small/2, small, h.Panel.Label())
		if s.see == down {
			label.From = s.at(box.X+box.Length-small/2, box.Y+small+small/2)
		}
		label.Anchor = drawing.Start
		items = append(items, label)
	}
	s.group("", l.panels.ID+":"+h.Panel.Label(), items...)
}

// seams are the seams alone, for a grid too fine for numbers.
func (s *scene) seams(l *layer) {
	box := s.choice.Box
	var items []drawing.Item
	for i := range l.columns.Gaps {
		x := box.X + l.columns.Seam(i)
		items = append(items, s.line(drawing.Seam, x, box.Y, x, box.Y+box.Width))
	}
	for i := range l.rows.Gaps {
		y := box.Y + l.rows.Seam(i)
		items = append(items, s.line(drawing.Seam, box.X, y, box.X+box.Length, y))
	}
	s.group("seams.length", "", items...)
}

// drawMarks is the setting-out drawing: box, centre lines and the ticks along
// the walls with their running dimensions.
func (b *builder) drawMarks(l *layer) drawing.Drawing {
	s := b.scene("Marks for "+l.panels.Name, up, "The box, its centre lines and the marks along the walls, each measured from the corner its wall is read from.")
	margin := 8 * s.unit
	s.Min, s.Max = drawing.Point{X: -margin, Y: -margin}, drawing.Point{X: s.room.Length + margin, Y: s.room.Width + margin}
	s.group("room.area", "", s.rect(drawing.Wall, setout.Box{Length: s.room.Length, Width: s.room.Width}))
	s.seams(l)
	s.group("box.diagonal", "", s.rect(drawing.Box, s.choice.Box))
	s.centreLines()
	s.fixture()
	for _, c := range []survey.Corner{survey.A, survey.B, survey.C, survey.D} {
		p := s.room.Corner(c)
		dx, dy := -s.unit, -s.unit/2
		if p.X > 0 {
			dx = s.unit
		}
		if p.Y > 0 {
			dy = s.unit + s.unit/4
		}
		s.group("", "", s.text(drawing.Corner, p.X+dx, p.Y+dy, s.unit, string(c)))
	}
	for _, w := range setout.Marks(s.room, s.plan.Fixture, s.choice.Box, []mask.Layer{l.panels}) {
		s.ticks(w)
	}
	return s.Drawing
}

// ticks are the marks of one wall. Where two come close their figures are
// pushed apart, so that none is written over another.
func (s *scene) ticks(w setout.WallMarks) {
	u := s.unit
	marks := merged(w.Marks, s.n.Mark())
	words := len(marks) <= readableMarks
	last := measure.Length(-1 << 60)
	for _, m := range marks {
		place := max(m.At, last+u+u/5)
		last = place
		s.group("", "", s.tick(w.Wall, m.At, place, words)...)
	}
}

func (s *scene) tick(w survey.Wall, at, place measure.Length, words bool) []drawing.Item {
	u, words2 := s.unit, s.n.Length(at)
	var items []drawing.Item
	var text drawing.Item
	letters := u * 4 / 5
	switch w {
	case survey.AB:
		items = append(items, s.line(drawing.Tick, at, 0, at, -u/2), s.line(drawing.Tick, at, -u/2, place, -u))
		text = s.turned(drawing.Tick, place+letters/3, -u-u/4, letters, words2)
		text.Anchor = drawing.Start
	case survey.CD:
		items = append(items, s.line(drawing.Tick, at, s.room.Width, at, s.room.Width+u/2), s.line(drawing.Tick, at, s.room.Width+u/2, place, s.room.Width+u))
		text = s.turned(drawing.Tick, place+letters/3, s.room.Width+u+u/4, letters, words2)
		text.Anchor = drawing.End
	case survey.BC:
		items = append(items, s.line(drawing.Tick, s.room.Length, at, s.room.Length+u/2, at), s.line(drawing.Tick, s.room.Length+u/2, at, s.room.Length+u, place))
		text = s.text(drawing.Tick, s.room.Length+u+u/4, place+letters/3, letters, words2)
		text.Anchor = drawing.Start
	case survey.DA:
		items = append(items, s.line(drawing.Tick, 0, at, -u/2, at), s.line(drawing.Tick, -u/2, at, -u, place))
		text = s.text(drawing.Tick, -u-u/4, place+letters/3, letters, words2)
		text.Anchor = drawing.End
	}
	if !words {
		return items[:1]
	}
	return append(items, text)
}
