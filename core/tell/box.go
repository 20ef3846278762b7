package tell

import (
	"strings"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
)

// tapeSlip is how far a diagonal is taken to be misread by, for the error a
// triangle leaves: two marks of the tape.
const tapeSlip = 2

// corners are the triangles that prove the corners of the box square: as large
// as the room takes, or where the room is not square, the box, since a triangle
// in a corner of such a room would only prove that it is not.
func (b *builder) corners() {
	if !b.Room.Shape.Usable() {
		return
	}
	long, wide, where := b.Room.Shape.Length, b.Room.Shape.Width, "From corner "
	along, far := "along the length", "at the far wall"
	if !b.Room.Shape.IsRectangle() || !b.Setting.Choice.Box.Turn.IsExact() {
		if !b.Setting.Placed {
			return
		}
		long, wide, where = b.Setting.Choice.Box.Length, b.Setting.Choice.Box.Width, "From the mask outline’s corner "
		along, far = "along its length", "at its far end"
	}
	t, ok := survey.LargestTriangle(long, wide, b.Notation.System)
	if !ok {
		return
	}
	slip := tapeSlip * b.Notation.Mark()
	strays := t.Strays(slip, long)
	for _, c := range [4]survey.Corner{survey.A, survey.B, survey.C, survey.D} {
		b.Sheet.Corners = append(b.Sheet.Corners, sheet.Corner{
			Corner: string(c), Along: b.Notation.Length(t.Along), Across: b.Notation.Length(t.Across), Diagonal: b.Notation.Length(t.Diagonal),
			Text: where + c.Text() + ": " + b.Notation.Length(t.Along) + " " + along + ", " + b.Notation.Length(t.Across) + " across; the diagonal between must read " +
				b.Notation.Length(t.Diagonal) + ". Read wrong by " + b.Notation.Length(slip) + ", a line is off by " + b.Notation.Length(strays) + " " + far + ".",
		})
	}
}

// walls are the marks along each wall, onto the sheet, and as they were before
// they were put in words.
func (b *builder) walls() [][]tick {
	layers := make([]mask.Layer, 0, len(b.Layers))
	for _, l := range b.Layers {
		if !l.Panels.IsEmpty() {
			layers = append(layers, l.Panels)
		}
	}
	list := b.Setting.Site.Marks(b.Setting.Choice.Box, layers)
	ticks := make([][]tick, len(list))
	for i, w := range list {
		wall := sheet.Wall{
			Wall: string(w.Wall), From: string(w.From), To: string(w.To),
			Title: b.wallTitle(w), Length: b.Notation.Length(w.Length), Marks: make([]sheet.Mark, 0, len(w.Marks)),
		}
		ticks[i] = merged(w.Marks)
		for _, m := range ticks[i] {
			mark := b.mark(w.Wall, m, len(layers))
			if sum := b.markSum(&list[i], &m); sum != "" {
				mark.Sum = sum + " = " + b.Exactly(m.At)
			}
			wall.Marks = append(wall.Marks, mark)
		}
		b.Sheet.Walls = append(b.Sheet.Walls, wall)
	}
	return ticks
}

func (b *builder) wallTitle(w setout.WallMarks) string {
	switch w.Wall {
	case setout.AlongLine:
		return "Along the centre line that runs with the mask’s length, from its end at ZW"
	case setout.AcrossLine:
		return "Along the centre line that runs across it, from its end at WX"
	}
	return "Along wall " + w.Wall.Text() + ", from " + w.From.Text()
}

// tick is marks of one kind and place, with the layers they are for.
type tick struct {
	setout.Mark
	layers []string
}

// onePlace is how far apart two marks may be worked out that are one place: what
// shares of a length lose when they are cut off to the nanometre.
const onePlace = measure.Millimetre / 10_000

// merged puts marks of one kind that are one place together: two layers cut
// alike have their seams on the same ticks. Seams that only read alike stay two,
// each with what its rounding hides.
func merged(marks []setout.Mark) []tick {
	ticks := make([]tick, 0, len(marks))
next:
	for _, m := range marks {
		for i := len(ticks) - 1; i >= 0 && m.At-ticks[i].At <= onePlace; i-- {
			if ticks[i].Kind == m.Kind && ticks[i].Label == m.Label {
				ticks[i].layers = append(ticks[i].layers, m.Layer)
				continue next
			}
		}
		ticks = append(ticks, tick{m, []string{m.Layer}})
	}
	return ticks
}

func (b *builder) mark(wall survey.Wall, t tick, layers int) sheet.Mark {
	m := sheet.Mark{
		Kind: string(t.Kind), Label: t.Label, Text: b.Notation.Length(t.At), Other: b.Other.Length(t.At), Exact: page.Nanometres(t.At),
		Hides: b.hides(t.At),
	}
	switch t.Kind {
	case setout.BoxMark:
		m.Label = "mask outline"
	case setout.CentreMark:
		m.Label = "middle"
	case setout.FixtureMark:
		m.Label = "light"
	case setout.SeamMark:
		if len(t.layers) < layers {
			m.Layer = b.names(t.layers)
		}
	}
	if !b.readsAlike(wall, t) {
		m.Join = "join to " + b.Notation.Length(t.Join.At) + " on " + t.Join.Wall.Text() + " from " + t.Join.From.Text()
	}
	return m
}

// readsAlike tells whether the other end of a line is the same reading on the
// opposite wall, so that there is nothing to say; or has no other end.
func (b *builder) readsAlike(wall survey.Wall, t tick) bool {
	mark := b.Notation.Mark()
	return t.Join.Wall == "" || b.Room.Shape.IsRectangle() && isOpposite(wall, t.Join.Wall) && t.At.ToMark(mark) == t.Join.At.ToMark(mark)
}

func isOpposite(a, c survey.Wall) bool {
	switch a {
	case survey.AB:
		return c == survey.CD
	case survey.BC:
		return c == survey.DA
	case survey.CD:
		return c == survey.AB
	}
	return c == survey.BC
}

// hides is what the rounding to the tape mark leaves out, in words: nothing where
// that is finer than can be measured.
func (b *builder) hides(l measure.Length) string {
	left := -b.Notation.Hides(l)
	fine := b.Notation.Fine(left.Abs())
	switch {
	case left == 0 || strings.HasPrefix(fine, "under "):
		return ""
	case left < 0:
		return fine + " less"
	}
	return fine + " more"
}

// names are the names of layers, for marks that are not for all of them.
func (b *builder) names(ids []string) string {
	text := ""
	for _, l := range b.Layers {
		for _, id := range ids {
			if l.Panels.ID == id {
				if text != "" {
					text += ", "
				}
				text += l.Panels.Name
			}
		}
	}
	return text
}

// box is where the box lies: its corners from the walls, and every line to
// strike.
func (b *builder) box(walls [][]tick) {
	box := b.Setting.Choice.Box
	out := &b.Sheet.Box
	out.Text = "The mask outline is " + b.Notation.Length(box.Length) + " × " + b.Notation.Length(box.Width) + ", " + b.titleOf(b.Setting.Choice.Way) + ". Both its diagonals read " + b.Notation.Length(box.Diagonal()) + "."
	out.Line = b.lineRound()
	for _, f := range b.Setting.Site.Corners(box, b.Setting.Choice.Layout) {
		out.Corners = append(out.Corners, sheet.BoxCorner{Corner: string(f.Corner), Text: b.cornerText(f)})
	}
	for i, ticks := range walls {
		for _, t := range ticks {
			if strike, ok := b.strike(i, t); ok {
				out.Lines = append(out.Lines, strike)
			}
		}
	}
}

// lineRound says what is struck or taped round the box.
func (b *builder) lineRound() string {
	set := b.Plan.Setting
	switch {
	case !set.Taped:
		return "Snap a chalk line on each side of the mask outline, on the marks."
	case set.TapeWidth <= 0:
		return "The tape lies outside the mask outline, its inner edge on the marks."
	}
	text := "The tape lies outside the mask outline, its inner edge on the marks. It is " + b.Notation.Length(set.TapeWidth) + " wide, so its outer edge is "
	if !isEven(b.Setting.Choice.Layout) {
		return text + "that much outside them."
	}
	for i, wall := range [4]survey.Wall{survey.AB, survey.BC, survey.CD, survey.DA} {
		switch i {
		case 1, 2:
			text += ", "
		case 3:
			text += " and "
		}
		text += b.Notation.Length(max(b.Setting.Choice.Borders.At(wall)-set.TapeWidth, 0)) + " from wall " + wall.Text()
	}
	return text + "."
}

// cornerText is how one corner of the box is found.
func (b *builder) cornerText(f setout.Found) string {
	text := "Corner " + f.Corner.Text()
	if f.Own != f.Corner {
		text += " (the mask’s own corner " + f.Own.Text() + ")"
	}
	text += ": "
	for i, w := range f.Walls {
		switch {
		case i > 0 && i == len(f.Walls)-1:
			text += " and "
		case i > 0:
			text += ", "
		}
		if b.Room.Shape.Form == survey.Round {
			text += b.Notation.Length(w.Length) + " from the curve beyond side " + w.Wall.Text()
		} else {
			text += b.Notation.Length(w.Length) + " off wall " + w.Wall.Text()
		}
	}
	if f.Taped {
		text += "; by tape " + b.Notation.Length(f.Tapes[0].Length) + " from corner " + f.Tapes[0].From.Text() +
			" and " + b.Notation.Length(f.Tapes[1].Length) + " from corner " + f.Tapes[1].From.Text()
	}
	return text + "."
}

// strike is the line of a mark, said once for both its ends: from the wall that
// comes first.
func (b *builder) strike(wall int, t tick) (sheet.Strike, bool) {
	s := sheet.Strike{Name: t.Label, Kind: string(t.Kind)}
	switch t.Kind {
	case setout.BoxMark:
		s.Name = "side " + survey.Wall(t.Label).Text() + " of the mask outline"
	case setout.CentreMark:
		s.Name = "centre line"
	case setout.FixtureMark:
		return s, false
	case setout.SeamMark:
		if len(t.layers) < b.layersHung() {
			s.Layer = b.names(t.layers)
		}
	}
	on := b.Sheet.Walls[wall]
	if t.Join.Wall == "" {
		s.Text = "square across the centre line at " + b.Notation.Length(t.At) + " from its end at " + onCurve(wall)
		return s, true
	}
	for _, earlier := range b.Sheet.Walls[:wall+1] {
		if earlier.Wall == string(t.Join.Wall) {
			return s, false
		}
	}
	s.Text = b.Notation.Length(t.At) + " on " + survey.Wall(on.Wall).Text() + " from " + survey.Corner(on.From).Text() + " to " + b.Notation.Length(t.Join.At) + " on " + t.Join.Wall.Text() + " from " + t.Join.From.Text()
	return s, true
}

// onCurve is the side a centre line of a round room is read from.
func onCurve(line int) string {
	if line == 0 {
		return survey.DA.Text()
	}
	return survey.AB.Text()
}

// layersHung is how many layers have panels.
func (b *builder) layersHung() int {
	count := 0
	for i := range b.Layers {
		if !b.Layers[i].Panels.IsEmpty() {
			count++
		}
	}
	return count
}
