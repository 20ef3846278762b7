package tell

import (
	"strconv"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"

	"ceilingwright/core/drawing"
	"ceilingwright/core/drawing/svg"
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

// The margins round the room, in letters' heights: wide enough for the figures
// outside the walls.
const (
	plainMargin = 5
	marksMargin = 8
)

// draw puts the drawings on the sheet: for each layer the hanging order looking
// up and looking down, the marks along the walls and the places of the platform;
// without any panels, the room alone; and a room that is out of square once
// more with that drawn large.
func (b *builder) draw() {
	const name = "a drawing"
	b.guarded(name, b.drawDays)
	if b.Room.Shape.Usable() {
		b.guarded(name, b.drawLayers)
		b.guarded(name, b.drawGilding)
		b.guarded(name, func() {
			if s, ok := b.drawSkew(); ok {
				b.add("room.skew", nil, up, "skew", s)
			}
		})
	}
	b.tellFaults()
}

// drawLayers draws the layers, or the room where there is none to draw.
func (b *builder) drawLayers() {
	drawn := false
	for i := range b.Layers {
		l := b.Hung(i)
		if !b.Setting.Placed || l.Panels.IsEmpty() {
			continue
		}
		drawn = true
		b.add(l.Panels.ID+".up", l.Layer, up, "hanging", b.drawHanging(l, up))
		b.add(l.Panels.ID+".down", l.Layer, down, "hanging", b.drawHanging(l, down))
		b.add(l.Panels.ID+".marks", l.Layer, up, "marks", b.drawMarks(l))
		if len(l.Stations) > 0 {
			b.add(l.Panels.ID+".stations", l.Layer, up, "stations", b.drawStations(l))
		}
	}
	if !drawn {
		b.add("room.up", nil, up, "hanging", b.drawRoom())
	}
}

// drawGilding draws what is gilded in sections.
func (b *builder) drawGilding() {
	for i := range b.calendar().gilt {
		g := &b.calendar().gilt[i]
		if len(g.sections) < 2 {
			continue
		}
		if b.Setting.Placed && g.layer != nil || g.along > 0 && (b.Setting.Placed || !g.onMask) {
			b.add("step."+b.Plan.Steps[g.leaf].ID+".sections", g.layer, up, "sections", b.drawSections(g))
		}
	}
}

func (b *builder) add(id string, l *job.Layer, see looking, shows string, s *scene) {
	out := sheet.Drawing{ID: id, Looking: string(see), Shows: shows, Title: s.Title, SVG: b.written(&s.Drawing)}
	if l != nil {
		out.Layer = l.Panels.ID
	}
	b.Sheet.Drawings = append(b.Sheet.Drawings, out)
}

// written is a drawing as SVG, and its room is free for the next.
func (b *builder) written(d *drawing.Drawing) string {
	b.ink = svg.Append(b.ink[:0], d)
	b.groups = d.Groups
	return string(b.ink)
}

// scene is one drawing in the making. unit is the height of its letters. Places
// on the ceiling become places on the drawing by at; letters are then set by
// the drawing, so that they stand the same way round in its mirror.
type scene struct {
	*builder
	drawing.Drawing
	see  looking
	unit measure.Length
}

// scene starts a drawing with so many letters' heights of margin round the room.
func (b *builder) scene(title string, see looking, margin measure.Length, caption string) *scene {
	s := &scene{builder: b, see: see, unit: b.letters()}
	s.Title, s.Caption, s.Groups = title+", looking "+string(see), caption, b.groups[:0]
	low, high := b.Room.Shape.Bounds()
	margin *= s.unit
	s.Min = drawing.Point{X: low.X - margin, Y: low.Y - margin}
	s.Max = drawing.Point{X: high.X + margin, Y: high.Y + margin}
	if len(b.Room.Shape.Corners) > 0 && !b.Room.Shape.IsRectangle() {
		s.Max.Y += 2 * s.unit // the lower walls have their sizes above the title
	}
	return s
}

// letters is the height of the letters of a drawing of the room.
func (b *builder) letters() measure.Length {
	return max(b.Room.Shape.Length, b.Room.Shape.Width) / lettersAcross
}

// viewRound is the part of a layer's hanging drawing, looking up, that shows a
// panel or a block of them with some of what is round it: an SVG viewBox, in the
// drawing's own units of a millimetre.
func (b *builder) viewRound(part setout.Box) string {
	low, high := part.Corner(survey.A), part.Corner(survey.A)
	for _, c := range [3]survey.Corner{survey.B, survey.C, survey.D} {
		p := part.Corner(c)
		low = survey.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = survey.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	margin := max(part.Length, part.Width) * 2 / 3
	from, _ := b.Room.Shape.Bounds()
	edge := plainMargin * b.letters()
	text := ""
	for i, l := range [4]measure.Length{
		low.X - margin - from.X + edge, low.Y - margin - from.Y + edge,
		high.X - low.X + 2*margin, high.Y - low.Y + 2*margin,
	} {
		if i > 0 {
			text += " "
		}
		text += strconv.FormatInt(int64(l.ToMark(measure.Millimetre)/measure.Millimetre), 10)
	}
	return text
}

// at is a place on the ceiling as the drawing shows it.
func (s *scene) at(p survey.Point) drawing.Point {
	if s.see == down {
		p = setout.Mirror(p, s.Room.Shape)
	}
	return drawing.Point{X: p.X, Y: p.Y}
}

func (s *scene) line(part drawing.Part, from, to survey.Point) {
	s.stroke(part, s.at(from), s.at(to))
}

// stroke is a line between two places on the drawing.
func (s *scene) stroke(part drawing.Part, from, to drawing.Point) {
	s.Put(&drawing.Item{Shape: drawing.Line, Part: part, From: from, To: to})
}

// box is a rectangle on the ceiling, which may lie turned.
func (s *scene) box(part drawing.Part, b *setout.Box) {
	if b.Turn.IsExact() {
		s.Put(&drawing.Item{Shape: drawing.Rect, Part: part, From: s.at(b.Corner(survey.A)), To: s.at(b.Corner(survey.C))})
		return
	}
	corners := make([]drawing.Point, 0, 4)
	for _, c := range [4]survey.Corner{survey.A, survey.B, survey.C, survey.D} {
		corners = append(corners, s.at(b.Corner(c)))
	}
	s.Put(&drawing.Item{Shape: drawing.Polygon, Part: part, Corners: corners})
}

// circle is a circle on the ceiling.
func (s *scene) circle(part drawing.Part, middle survey.Point, radius measure.Length) {
	s.Put(&drawing.Item{Shape: drawing.Circle, Part: part, From: s.at(middle), Size: radius})
}

// text stands at a place on the drawing.
func (s *scene) text(part drawing.Part, anchor drawing.Anchor, at drawing.Point, size measure.Length, words string) {
	s.Put(&drawing.Item{Shape: drawing.Text, Part: part, Anchor: anchor, From: at, Size: size, Words: words})
}

// turned is text that is read from the right.
func (s *scene) turned(part drawing.Part, anchor drawing.Anchor, at drawing.Point, size measure.Length, words string) {
	s.Put(&drawing.Item{Shape: drawing.Text, Part: part, Anchor: anchor, Turned: true, From: at, Size: size, Words: words})
}

// beyond is a place on the drawing so far from another one along a direction.
func beyond(p drawing.Point, d direction, far measure.Length) drawing.Point {
	return drawing.Point{X: p.X + d.times(d.x, far), Y: p.Y + d.times(d.y, far)}
}

// direction is a unit vector on the drawing.
type direction struct{ x, y float64 }

func (direction) times(part float64, far measure.Length) measure.Length {
	return measure.Length(part * float64(far))
}

// isLevel tells whether the direction is nearer to level than to upright.
func (d direction) isLevel() bool { return d.x*d.x >= d.y*d.y }

// away is the direction of what lies outside a line that runs this way round.
func (d direction) left() direction { return direction{d.y, -d.x} }
