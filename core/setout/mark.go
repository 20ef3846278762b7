package setout

import (
	"cmp"
	"math"
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Kind says what a mark on a wall stands for.
type Kind string

// A side of the box, its centre line, a seam, or the centre of the fixture.
const (
	BoxMark     Kind = "box"
	CentreMark  Kind = "centre"
	SeamMark    Kind = "seam"
	FixtureMark Kind = "fixture"
)

// Mark is one tick along a wall. At is its running distance from the corner
// the wall is read from, exact in a rectangle and else to the nearest
// nanometre, so that no mark inherits another's rounding (running dimensions,
// ISO 129-1). Label is the name of the seam, or of the wall that a box line runs
// beside; Layer is the layer of a seam. Join is the other end of the line. In is
// how far the line lies from the mask's own edge DA or AB, and Cast how it meets
// the wall.
type Mark struct {
	Kind  Kind
	Label string
	Layer string
	At    measure.Length
	Join  End
	In    measure.Length
	Cast  Cast
	// After is how many columns, or rows where Columns is false, lie before a seam.
	After   int
	Columns bool
}

// Cast is how a line of the mask is prolonged to a wall: its middle lies so far
// along the wall from the corner it is read from, and so far off it; on the way it
// goes Slope along for each unit off. The mark is at Along + Off × Slope. Slope is
// 0 where the line meets the wall squarely. In a round room Along is how far the
// curve is from the mask's own edge, and the mark at Along + In.
type Cast struct {
	Along, Off measure.Length
	Slope      float64
}

// End is an end of a line on a wall: its running distance from the corner From.
// Wall is "" where the line has no second end to mark.
type End struct {
	Wall survey.Wall
	From survey.Corner
	At   measure.Length
}

// WallMarks are all marks along one wall, read from corner From to corner To,
// nearest first. In a room with four walls opposite walls are read from the same
// end: AB from A and CD from D, BC from B and DA from A. Any other wall is read
// from its first corner. A round room has no walls to mark: its two entries are
// the box's own centre lines from curve to curve, Along and Across.
type WallMarks struct {
	Wall     survey.Wall
	From, To survey.Corner
	Length   measure.Length
	Marks    []Mark
}

// The two centre lines that a round room is marked along, named by the side of
// the ceiling they are read from.
const (
	AlongLine  survey.Wall = "along"
	AcrossLine survey.Wall = "across"
)

// line is one line to strike, in the frame of the box: upright at x, or level
// at y.
type line struct {
	kind         Kind
	label, layer string
	upright      bool
	at           measure.Length
	after        int
}

// Marks are the marks for all walls: the lines of the box, its centre lines, the
// two through the fixture where there is one, and every seam of every layer,
// each under its own layer even where two fall together; seams that pieces cover
// all along are left out. Each line is prolonged both ways to where it first
// meets a wall. Seams are marked where they lie once
// each has taken its part of what the panels are over or short. A line is left
// out where it meets no wall, which happens only to the fixture's, outside the
// room. The work is a sort, and one step for each line and wall.
func (s Site) Marks(box Box, layers []mask.Layer) []WallMarks {
	lines := s.lines(box, layers)
	if s.Shape.Form == survey.Round {
		return s.roundMarks(box, lines)
	}
	list := make([]WallMarks, len(s.Shape.Corners))
	walls := s.Shape.Walls()
	for i, w := range walls {
		list[i] = WallMarks{Wall: w.Name, From: w.From, To: w.To, Length: w.Length(), Marks: make([]Mark, 0, len(lines)/2+1)}
		if s.isReadBack(i) {
			list[i].From, list[i].To = w.To, w.From
		}
	}
	caster := s.casterOf(box, walls)
	for _, l := range lines {
		ends, ok := caster.ends(l)
		if !ok {
			continue
		}
		for k, end := range ends {
			other := ends[1-k]
			list[end.wall].Marks = append(list[end.wall].Marks, Mark{Kind: l.kind, Label: l.label, Layer: l.layer,
				At: end.at, Join: End{list[other.wall].Wall, list[other.wall].From, other.at}, In: l.at, Cast: end.cast, After: l.after, Columns: l.upright && l.after > 0})
		}
	}
	for i := range list {
		slices.SortStableFunc(list[i].Marks, func(a, b Mark) int { return cmp.Compare(a.At, b.At) })
	}
	return list
}

// isReadBack tells whether a wall is read from its second corner.
func (s Site) isReadBack(wall int) bool { return len(s.Shape.Corners) == 4 && wall >= 2 }

// lines are all lines to strike: of those that fall together the first named
// comes first on the wall.
func (s Site) lines(box Box, layers []mask.Layer) []line {
	count := 8
	for _, layer := range layers {
		count += len(layer.Columns) + len(layer.Rows)
	}
	lines := make([]line, 0, count)
	side := func(own survey.Wall) string { return string(box.Facing(own)) }
	lines = append(lines,
		line{kind: BoxMark, label: side(survey.DA), upright: true},
		line{kind: CentreMark, upright: true, at: box.Length.Half()},
		line{kind: BoxMark, label: side(survey.BC), upright: true, at: box.Length},
		line{kind: BoxMark, label: side(survey.AB)},
		line{kind: CentreMark, at: box.Width.Half()},
		line{kind: BoxMark, label: side(survey.CD), at: box.Width},
	)
	if s.Fixture.Known {
		at := box.In(survey.Point{X: s.Fixture.Twice.X / 2, Y: s.Fixture.Twice.Y / 2})
		lines = append(lines, line{kind: FixtureMark, upright: true, at: at.X}, line{kind: FixtureMark, at: at.Y})
	}
	for _, layer := range layers {
		columns, rows := layer.Runs(mask.Outline{Length: box.Length, Width: box.Width})
		lines = seamLines(lines, layer.ID, columns, true, mask.ColumnSeam)
		lines = seamLines(lines, layer.ID, rows, false, mask.RowSeam)
	}
	return lines
}

// seamLines adds the seams of one run. One that lies inside pieces all along is
// never set to a line.
func seamLines(lines []line, layer string, run mask.Run, upright bool, name func(int) string) []line {
	for i := range run.Gaps {
		if run.Held == nil || !run.Held[i] {
			lines = append(lines, line{SeamMark, name(i + 1), layer, upright, run.Seam(i), i + 1})
		}
	}
	return lines
}

// caster prolongs lines of a box to the walls.
type caster struct {
	site  Site
	box   Box
	walls []survey.WallLine
	// What the walls and lines are in floats, for where no exact answer is.
	planes []halfPlane
}

func (s Site) casterOf(box Box, walls []survey.WallLine) caster {
	return caster{s, box, walls, s.planes()}
}

// met is where a line meets a wall: at from the corner the wall is read from.
type met struct {
	wall int
	at   measure.Length
	cast Cast
}

// ends are where a line meets the walls ahead of it either way.
func (c caster) ends(l line) (ends [2]met, ok bool) {
	middle := survey.Point{X: l.at, Y: c.box.Width.Half()}
	if !l.upright {
		middle = survey.Point{X: c.box.Length.Half(), Y: l.at}
	}
	from := c.box.Out(middle)
	dx, dy := c.box.Turn.Length()
	if l.upright {
		dx, dy = c.box.Turn.Width()
	}
	ends[0], ok = c.meets(from, -dx, -dy)
	if ok {
		ends[1], ok = c.meets(from, dx, dy)
	}
	return ends, ok
}

// meets is the first wall that lies ahead of a place, and where on it. Exact for
// walls along the axes and ways along them.
func (c caster) meets(from survey.Point, dx, dy float64) (found met, ok bool) {
	first, found := math.Inf(1), met{wall: -1}
	for i, w := range c.walls {
		away := c.planes[i]
		closing := float64(away.nx*dx) + float64(away.ny*dy)
		if math.Abs(closing) < parallel {
			continue
		}
		way := -away.at(float64(from.X), float64(from.Y)) / closing
		if way < -1 || way >= first {
			continue
		}
		along, long := c.along(w, away, from, way, dx, dy)
		if along < -1 || along > long+1 {
			continue
		}
		first, found = way, met{wall: i, at: along}
	}
	if found.wall < 0 {
		return found, false
	}
	c.cast(&found, from, dx, dy)
	return found, true
}

// cast fills in how a place comes to where a way from it meets a wall, and reads
// it from the corner the wall is read from.
func (c caster) cast(m *met, from survey.Point, dx, dy float64) {
	w, away := c.walls[m.wall], c.planes[m.wall]
	alongX, alongY := away.ny, -away.nx
	x, y := float64(from.X-w.Start.X), float64(from.Y-w.Start.Y)
	m.cast = Cast{
		Along: measure.Nearest(float64(x*alongX) + float64(y*alongY)),
		Off:   measure.Nearest(math.Abs(away.at(float64(from.X), float64(from.Y)))),
		Slope: (float64(dx*alongX) + float64(dy*alongY)) / math.Abs(float64(away.nx*dx)+float64(away.ny*dy)),
	}
	if c.site.isReadBack(m.wall) {
		long := w.Length()
		m.at, m.cast.Along, m.cast.Slope = long-m.at, long-m.cast.Along, -m.cast.Slope
	}
}

// along is how far from the first corner of a wall a way meets it, and how long
// the wall is.
func (c caster) along(w survey.WallLine, away halfPlane, from survey.Point, way, dx, dy float64) (at, long measure.Length) {
	long = w.Length()
	switch {
	case dx == 0 && w.Start.Y == w.End.Y:
		return (from.X - w.Start.X) * sign(w.End.X-w.Start.X), long
	case dy == 0 && w.Start.X == w.End.X:
		return (from.Y - w.Start.Y) * sign(w.End.Y-w.Start.Y), long
	}
	x, y := float64(from.X-w.Start.X)+float64(way*dx), float64(from.Y-w.Start.Y)+float64(way*dy)
	// The wall runs a quarter turn anticlockwise from its normal.
	return measure.Nearest(float64(x*away.ny) - float64(y*away.nx)), long
}

func sign(l measure.Length) measure.Length { return measure.Length(cmp.Compare(l, 0)) }

// roundMarks are the marks along the two centre lines of the box, each from the
// curve at its own side DA or AB.
func (s Site) roundMarks(box Box, lines []line) []WallMarks {
	list := []WallMarks{{Wall: AlongLine}, {Wall: AcrossLine}}
	ux, uy := box.Turn.Length()
	centre := box.Centre()
	for i, way := range [2][2]float64{{ux, uy}, {-uy, ux}} {
		before := toCurve(s.Shape, centre, -way[0], -way[1])
		list[i].Length = before + toCurve(s.Shape, centre, way[0], way[1])
		half := box.Length.Half()
		if i == 1 {
			half = box.Width.Half()
		}
		for _, l := range lines {
			if l.upright == (i == 0) {
				list[i].Marks = append(list[i].Marks, Mark{Kind: l.kind, Label: l.label, Layer: l.layer, At: before - half + l.at, In: l.at, Cast: Cast{Along: before - half}, After: l.after, Columns: l.upright && l.after > 0})
			}
		}
		slices.SortStableFunc(list[i].Marks, func(a, b Mark) int { return cmp.Compare(a.At, b.At) })
	}
	return list
}

// Tick is marks of one kind and place, with the layers they are for.
type Tick struct {
	Mark
	Layers []string
}

// Merged puts marks of one kind that are one place together: two layers cut
// alike have their seams on the same ticks. Seams that only read alike stay two,
// each with what its rounding hides.
func Merged(marks []Mark) []Tick {
	ticks := make([]Tick, 0, len(marks))
next:
	for _, m := range marks {
		for i := len(ticks) - 1; i >= 0 && m.At-ticks[i].At <= measure.OnePlace; i-- {
			if ticks[i].Kind == m.Kind && ticks[i].Label == m.Label {
				ticks[i].Layers = append(ticks[i].Layers, m.Layer)
				continue next
			}
		}
		ticks = append(ticks, Tick{m, []string{m.Layer}})
	}
	return ticks
}

// Outlined is where the mask lies along a wall: its nearer mark, and its side between
// the two. False where the wall does not have both.
func (w *WallMarks) Outlined() (near, side measure.Length, ok bool) {
	var at []measure.Length
	for _, m := range w.Marks {
		if m.Kind == BoxMark {
			at = append(at, m.At)
		}
	}
	if len(at) != 2 {
		return 0, 0, false
	}
	return at[0], at[1] - at[0], true
}
