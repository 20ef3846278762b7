// Package draw draws a job: the ceiling with the order of hanging, the marks along the
// walls, the places of the platform, a room that is out of square. It decides nothing:
// what is where, package job says.
package draw

import (
	"strconv"

	"ceilingwright/core/job/hung"

	"ceilingwright/core/job"
	"ceilingwright/core/words"

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

// lettersAcross is how many letters' heights the longer side of the room is. With its
// margins no drawing is wider than 40 of them, so that on a phone, where it has about
// 370 px, they are a little over 9 px high.
const lettersAcross = 24

// A panel's label is written in letters of smallLetters eighths, where its shorter side
// is labelRoom quarters of a letter's height or more: else there is no room for it beside
// the large number.
const (
	smallLetters = 7
	labelRoom    = 15
)

// The margins round the room, in letters' heights: wide enough for the figures
// outside the walls.
const (
	plainMargin = 5
	marksMargin = 8
)

// Drawer draws a job. Style is how what is written on the drawings is put.
type Drawer struct {
	*job.Job
	Style words.Style
	// groups and ink are what drawings are laid out and written in, one after
	// another.
	groups []drawing.Group
	ink    []byte
	title  string // of the one that is drawn
}

// Named is a drawing there is: its public id, the layer it is of, "" where it is of
// none, from where it is seen, what it shows ("hanging", "panels", "marks", "stations",
// "sections", "room", "skew", "side", "days" or "air"), and its title, which says from
// where it is seen. Looking is "" where that is neither up nor down.
type Named struct {
	ID, Layer, Looking, Shows string
	Title                     words.Text
	draw                      func() *drawing.Drawing
}

// named is a drawing with the title of what it shows.
func named(id, layer string, see looking, shows string, what words.Text, draw func() *scene) Named {
	title := words.Say("{drawing}, looking up", words.Of("drawing", what))
	if see == down {
		title = words.Say("{drawing}, looking down", words.Of("drawing", what))
	}
	return Named{id, layer, string(see), shows, title, func() *drawing.Drawing { return &draw().Drawing }}
}

// All are the drawings of the job but those of sections, none of them drawn yet: for
// each layer the order of hanging looking up and looking down, its panels, the marks along
// the walls and the places of the platform; the room; and what is no plan of the ceiling.
func (d *Drawer) All() []Named {
	var list []Named
	if d.Room.Shape.Usable() {
		for i := range d.Layers {
			list = append(list, d.ofLayer(d.Hung(i))...)
		}
		list = append(list, named("room.up", "", up, "room", words.Say("Room"), d.drawRoom))
	}
	for _, one := range []func() (Named, bool){d.skew, d.side, d.chart, d.air} {
		if n, ok := one(); ok {
			list = append(list, n)
		}
	}
	return list
}

// skew is the drawing of a room that is out of square; ok is false where it is not.
func (d *Drawer) skew() (n Named, ok bool) {
	if !d.Room.Shape.Usable() || len(d.Room.Shape.Corners) != 4 || d.Room.Shape.IsRectangle() {
		return n, false
	}
	skew := skewOf(&d.Room.Shape)
	return named("room.skew", "", up, "skew", words.Say("Room with its skew {times} times too large", words.Count("times", int64(skew.factor))),
		func() *scene { return d.drawSkew(skew) }), true
}

// ofLayer are the drawings of a layer that has its place.
func (d *Drawer) ofLayer(l hung.Layer) []Named {
	if !d.Setting.Placed || l.Panels.IsEmpty() {
		return nil
	}
	id, name := l.Panels.ID, l.Panels.Name
	list := []Named{
		named(id+".up", id, up, "hanging", words.Verbatim(name), func() *scene { return d.drawHanging(l, up) }),
		named(id+".down", id, down, "hanging", words.Verbatim(name), func() *scene { return d.drawHanging(l, down) }),
		named(id+".panels", id, up, "panels", words.Say("Panels of {layer}", words.Name("layer", name)), func() *scene { return d.drawPanels(l) }),
		named(id+".marks", id, up, "marks", words.Say("Marks for {layer}", words.Name("layer", name)), func() *scene { return d.drawMarks(l) }),
	}
	if len(l.Stations) > 0 {
		list = append(list, named(id+".stations", id, up, "stations", words.Say("Platform positions for {layer}", words.Name("layer", name)), func() *scene { return d.drawStations(l) }))
	}
	return list
}

// usualInk is about how long a drawing is as SVG.
const usualInk = 16 << 10

// SVG is a drawing as SVG.
func (d *Drawer) SVG(n Named) string {
	d.title = n.Title.In(d.Style)
	one := n.draw()
	if d.ink == nil {
		d.ink = make([]byte, 0, usualInk)
	}
	d.ink = svg.Append(d.ink[:0], one)
	d.groups = one.Groups
	return string(d.ink)
}

// scene is one drawing in the making. unit is the height of its letters. Places
// on the ceiling become places on the drawing by at; letters are then set by
// the drawing, so that they stand the same way round in its mirror. marked tells that
// marks stand outside the walls.
type scene struct {
	*Drawer
	drawing.Drawing
	see    looking
	unit   measure.Length
	marked bool
}

// scene starts a drawing with so many letters' heights of margin round the room.
func (d *Drawer) scene(see looking, margin measure.Length, caption words.Text) *scene {
	s := &scene{Drawer: d, see: see, unit: letters(&d.Room.Shape)}
	s.Title, s.Caption, s.Groups = d.title, caption.In(d.Style), d.groups[:0]
	low, high := d.Room.Shape.Bounds()
	margin *= s.unit
	s.Min = drawing.Point{X: low.X - margin, Y: low.Y - margin}
	s.Max = drawing.Point{X: high.X + margin, Y: high.Y + margin}
	if len(d.Room.Shape.Corners) > 0 && !d.Room.Shape.IsRectangle() {
		s.Max.Y += 2 * s.unit // the lower walls have their sizes above the title
	}
	return s
}

// letters is the height of the letters of a drawing of a room.
func letters(shape *survey.Shape) measure.Length {
	return max(shape.Length, shape.Width) / lettersAcross
}

// ViewRound is the part of a layer's hanging drawing, looking up, that shows a
// panel or a block of them with some of what is round it: an SVG viewBox, in the
// drawing's own units of a millimetre.
func ViewRound(shape *survey.Shape, part setout.Box) string {
	low, high := part.Corner(survey.A), part.Corner(survey.A)
	for _, c := range [3]survey.Corner{survey.B, survey.C, survey.D} {
		p := part.Corner(c)
		low = survey.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = survey.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	margin := max(part.Length, part.Width) * 2 / 3
	from, _ := shape.Bounds()
	edge := plainMargin * letters(shape)
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
