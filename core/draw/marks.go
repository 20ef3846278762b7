package draw

import (
	"ceilingwright/core/drawing"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// drawMarks is the setting-out drawing: box, centre lines and the ticks along
// the walls with their running dimensions.
func (d *Drawer) drawMarks(l hung.Layer) *scene {
	s := d.scene(up, marksMargin,
		words.Say("The mask outline, its centre lines the marks along the walls, each measured from the corner its wall is read from, and the borders."))
	s.Max.Y += s.unit // the title stands clear of the longest figure
	s.outline()
	s.seams(l.Layer)
	s.Begin("box.diagonal", "")
	s.box(drawing.Box, &s.Setting.Choice.Box)
	s.centreLines()
	s.drawThings()
	for _, w := range s.Setting.Site.Marks(s.Setting.Choice.Box, []mask.Layer{l.Panels}) {
		if line, ok := s.lineOf(w); ok {
			s.ticks(line, setout.Merged(w.Marks))
		}
	}
	s.marked = true
	s.borders()
	return s
}

// lineOf is the wall that marks are for, running the way they are read. False
// in a round room, where they are read along the centre lines.
func (s *scene) lineOf(w setout.WallMarks) (survey.WallLine, bool) {
	line, ok := s.Room.Shape.Wall(w.Wall)
	if ok && w.From != line.From {
		line.From, line.To, line.Start, line.End = line.To, line.From, line.End, line.Start
	}
	return line, ok
}

// ticks are the marks of one wall. Where two come close their figures are
// pushed apart, so that none is written over another; where there are many they are
// smaller.
func (s *scene) ticks(w survey.WallLine, marks []setout.Tick) {
	last, letters := measure.Length(-1<<60), min(s.unit, w.Length()*5/6/measure.Length(len(marks)+1))
	along, out := s.along(w.Start, w.End), s.outward(w)
	s.Begin("", "")
	for i := range marks {
		at := marks[i].At
		place := max(at, last+letters*6/5)
		last = place
		s.tick(s.at(w.Start), along, out, at, place, letters, len(marks) <= readableMarks)
	}
}

// outward is outOf for a wall that may be read from either end.
func (s *scene) outward(w survey.WallLine) direction {
	if line, ok := s.Room.Shape.Wall(w.Name); ok {
		return s.outOf(line)
	}
	return s.outOf(w)
}

// tick is one mark: a stroke out of the wall, a leader to where there is room
// for the figure, and the figure.
func (s *scene) tick(start drawing.Point, along, out direction, at, place, letters measure.Length, words bool) {
	u := s.unit
	foot := beyond(start, along, at)
	s.stroke(drawing.Tick, foot, beyond(foot, out, u/2))
	if !words {
		return
	}
	end := beyond(beyond(start, along, place), out, u)
	s.stroke(drawing.Tick, beyond(foot, out, u/2), end)
	text := beyond(end, out, u/4)
	figure := s.Style.Notation.Length(at)
	switch {
	case !out.isLevel() && out.y < 0:
		s.turned(drawing.Tick, drawing.Start, drawing.Point{X: text.X + letters/3, Y: text.Y}, letters, figure)
	case !out.isLevel():
		s.turned(drawing.Tick, drawing.End, drawing.Point{X: text.X + letters/3, Y: text.Y}, letters, figure)
	case out.x < 0:
		s.text(drawing.Tick, drawing.End, drawing.Point{X: text.X, Y: text.Y + letters/3}, letters, figure)
	default:
		s.text(drawing.Tick, drawing.Start, drawing.Point{X: text.X, Y: text.Y + letters/3}, letters, figure)
	}
}
