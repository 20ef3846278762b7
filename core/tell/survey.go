package tell

import (
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// survey is the block Room: the shape of the ceiling, how well it is known, and
// what is on it.
func (b *builder) survey() {
	room := b.Plan.Room
	b.Room.Found = room.Find(b.Notation)
	b.Room.Shape = b.Room.Found.Shape
	b.Report("/room", b.Room.Found.Problems)
	b.Report("/room/fixture", b.Plan.Fixture.CheckIn(b.Room.Shape, b.Notation))
	for _, o := range b.Plan.Obstructions {
		b.Report(o.At, o.CheckIn(b.Room.Shape, b.Notation))
	}
	b.surveyed()
	b.objects()
	if !b.Room.Shape.Usable() {
		return
	}
	b.roomSize()
	b.crooked()
	b.twoMiddles()
}

// surveyed is what the measuring came to, in words.
func (b *builder) surveyed() {
	f, s := b.Room.Found, &b.Sheet.Survey
	s.Form, s.Proved, s.Text, s.Again = string(b.form()), string(f.Proof), f.Text, f.Again
	if usesTape := len(f.Lines) > 0 || f.Closing.Line != ""; usesTape && !f.TapeSaid {
		s.Text += " The tape is taken as good to " + page.Said(b.Notation, f.Tape.Deviation) + " and read to " + page.Said(b.Notation, f.Tape.ReadTo) + ", since the plan does not say both."
	}
	for _, c := range f.Corners {
		s.Corners = append(s.Corners, b.roomCorner(c))
	}
	for _, l := range f.Lines {
		s.Lines = append(s.Lines, b.roomLine(l))
	}
	if c := f.Closing; c.Spare > 0 && c.Line != "" {
		s.Closing = c.Line.Text() + " " + b.longer(c.Amount, "than the others make it", "just as the others make it")
	} else if c.Spare > 0 {
		s.Closing = b.Notation.Amount(c.Amount) + " from closing"
	}
}

func (b *builder) form() survey.Form {
	if b.Plan.Room.Form == "" {
		return survey.Rectangle
	}
	return b.Plan.Room.Form
}

// longer is a difference in words: "3 mm longer than …".
func (b *builder) longer(l measure.Length, than, same string) string {
	switch {
	case l > 0:
		return b.Notation.Amount(l) + " longer " + than
	case l < 0:
		return b.Notation.Amount(-l) + " shorter " + than
	}
	return same
}

func (b *builder) roomCorner(c survey.CornerFound) sheet.RoomCorner {
	out := sheet.RoomCorner{Corner: string(c.Corner), Angle: survey.AngleText(c.Degrees)}
	out.Text = "Corner " + c.Corner.Text() + " is " + out.Angle
	if c.Deviation > 0 {
		out.Text += " (± " + survey.AngleText(c.Deviation) + ")"
	}
	switch {
	case c.Right == 0:
		out.Text += ": not meant to be square"
	case b.Notation.Length(c.Out) == b.Notation.Length(0):
		out.Text += ": square to the mark of the tape"
	default:
		out.Out = b.Notation.Length(c.Out.Abs())
		out.Text += ": " + out.Out + " too "
		if c.Out > 0 {
			out.Text += "wide"
		} else {
			out.Text += "narrow"
		}
		out.Text += " over " + b.Notation.Length(c.Over)
	}
	out.Text += "."
	return out
}

func (b *builder) roomLine(l survey.LineFound) sheet.RoomLine {
	out := sheet.RoomLine{At: "/room" + l.At, Line: string(l.Line), Read: b.Put(l.Taken()), Adjusted: b.Notation.Length(l.Adjusted)}
	if l.Start > 0 {
		out.Read += " (" + b.Put(l.Length) + " less " + b.Put(l.Start) + ")"
	}
	out.Off = b.longer(l.Off().ToMark(b.Notation.Mark()), "than read", "as read")
	if l.Check {
		out.Flag = "check"
	}
	return out
}

// objects are the light and the obstructions, and where each is.
func (b *builder) objects() {
	if f := b.Plan.Fixture; f.At != survey.NoFixture && f.At != "" {
		b.object(f, job.Thing{At: "/room/fixture", Kind: "fixture", Light: true})
	}
	for _, o := range b.Plan.Obstructions {
		b.object(o.Fixture, job.Thing{At: o.At, Name: o.Name, Kind: string(o.Kind)})
	}
}

// object puts one of them on the sheet, and among the things that the mask is
// cut for where its place is known.
func (b *builder) object(f survey.Fixture, t job.Thing) {
	text := "Its place is not known."
	if middle, ok := f.Middle(b.Room.Shape); ok {
		x, y, own := f.Axis(b.Room.Shape)
		t.Middle, t.Round, t.Length, t.Width = middle, !f.Rectangular, f.Across, f.Across
		if f.Rectangular {
			t.Width = f.Deep
		}
		if y != 0 || x < 0 {
			t.Lies = setout.Turn{AlongX: x, AlongY: y}
		}
		b.Room.Things = append(b.Room.Things, t)
		text = b.whereIs(f, &t, own)
	}
	b.Sheet.Objects = append(b.Sheet.Objects, sheet.Object{At: t.At, Name: t.Name, Kind: t.Kind, Text: text})
}

// whereIs is where a thing is and how large.
func (b *builder) whereIs(f survey.Fixture, t *job.Thing, own bool) string {
	text := "Its middle is in the middle of the room"
	if f.At != survey.InMiddle {
		text = "Its middle is " + strings.Join(b.offs(t.Middle), " and ")
	}
	switch {
	case t.Length <= 0:
	case t.Round:
		text += "; it is " + b.Notation.Length(t.Length) + " across"
	case t.Width > 0:
		text += "; it is " + b.Notation.Length(t.Length) + " by " + b.Notation.Length(t.Width)
		if own {
			text += ", along its own axis"
		} else if b.Room.Shape.Form != survey.Round {
			text += ", along wall WX"
		}
	}
	return text + "."
}

// offs is how far a place is from the two walls at A, or in a round room along
// its length and its width.
func (b *builder) offs(p survey.Point) []string {
	s := b.Room.Shape
	if s.Form == survey.Round {
		return []string{b.Notation.Length(p.X) + " along the length", b.Notation.Length(p.Y) + " along the width"}
	}
	walls := s.Walls()
	last, first := walls[len(walls)-1], walls[0]
	return []string{b.Notation.Length(last.Off(p)) + " off wall " + last.Name.Text(), b.Notation.Length(first.Off(p)) + " off wall " + first.Name.Text()}
}

// roomSize is the area, the way round and the air.
func (b *builder) roomSize() {
	s := b.Room.Shape
	rule, sum := b.areaRule()
	b.Area(page.Room, "room.area", "ceiling", s.Area(), rule, sum, page.OfArithmetic)
	rule, sum, source := b.perimeterRule()
	b.Length(page.Room, "room.perimeter", "perimeter", s.Perimeter(), rule, sum, source)
	if b.Plan.Room.Height > 0 {
		b.volume()
	}
}

// areaRule is how the area of the ceiling is worked out, and the numbers put
// in.
func (b *builder) areaRule() (rule, sum string) {
	s := b.Room.Shape
	sides := b.Put(s.Length) + " × " + b.Put(s.Width)
	switch {
	case s.Form == survey.Round:
		return "A quarter of π times length times width.", "π ÷ 4 × " + sides
	case s.Form == survey.Rectangle && b.Room.Found.Proof == survey.Assumed:
		return "Length times width. Until a diagonal is measured the room is taken as square.", sides
	case s.Form == survey.Rectangle && b.Room.Found.Proof == survey.Contradicted:
		return "Length times width, as if the room were square; a diagonal says that it is not.", sides
	case s.IsRectangle():
		return "Length times width.", sides
	}
	return "Cut into triangles that meet at corner W, added up; what lies outside the room is taken off.", b.triangles()
}

// triangles is the area of an outline as a sum: "WXY 6 m² + WYZ 6 m²".
func (b *builder) triangles() string {
	var sum strings.Builder
	corners := b.Room.Shape.Corners
	for i := 1; i+1 < len(corners); i++ {
		a := survey.ShapeFromCorners(survey.Points, []survey.Point{corners[0], corners[i], corners[i+1]}).Area()
		switch {
		case a.SquareMetres.Sign() < 0:
			sum.WriteString(" − ")
		case i > 1:
			sum.WriteString(" + ")
		}
		sum.WriteString(survey.A.Text() + survey.CornerNumbered(i).Text() + survey.CornerNumbered(i+1).Text() + " " + b.Notation.Area(measure.Area{SquareMetres: a.SquareMetres.Abs()}))
	}
	return strings.TrimSpace(sum.String())
}

func (b *builder) perimeterRule() (rule, sum, source string) {
	s := b.Room.Shape
	long, wide := b.Put(s.Length), b.Put(s.Width)
	switch {
	case s.Form == survey.Round && s.Length == s.Width:
		return "π times the diameter.", "π × " + long, page.OfArithmetic
	case s.Form == survey.Round:
		return "Half of π times length and width together, times the series 1 + h ÷ 4 + h² ÷ 64 + h³ ÷ 256 + …, with h the square of their difference over their sum.",
			"π ÷ 2 × (" + long + " + " + wide + ") × " + survey.SlopeText(s.Series()), "Gauss–Kummer series for the perimeter of an ellipse, from memory."
	case s.IsRectangle():
		return "Twice the length and the width together.", "2 × (" + long + " + " + wide + ")", page.OfArithmetic
	}
	var walls []string
	for _, w := range s.Walls() {
		walls = append(walls, w.Name.Text()+" "+b.Put(w.Length()))
	}
	return "The walls added up.", strings.Join(walls, " + "), page.OfArithmetic
}

var cubicFoot = measure.MustNumber("28.316846592")

// volume is the figure of the room's air. A cubic foot is 28.316 846 592 L,
// from the foot of 304.8 mm.
func (b *builder) volume() {
	v := b.roomAir()
	b.Figure(sheet.Figure{
		ID: "room.volume", Block: page.Room, Label: "room volume",
		Value: page.Plain(v.Litres.Quo(measure.CubicMetre)), Unit: "m3",
		Text: cubic(b.Notation, v), Other: cubic(b.Other, v),
		Working: sheet.Working{Rule: "Ceiling area times height.",
			Sum:    b.Notation.Area(b.Room.Shape.Area()) + " × " + b.Put(b.Plan.Room.Height) + " = " + cubic(b.Notation, v),
			Source: page.OfArithmetic},
	})
}

func cubic(n measure.Notation, v measure.Volume) string {
	if n.System == measure.FeetInches {
		return n.Number(v.Litres.Quo(cubicFoot), 0) + " ft³"
	}
	return n.Number(v.Litres.Quo(measure.CubicMetre), 1) + " m³"
}

// crooked is how far the readings miss each other, and the worst corner.
func (b *builder) crooked() {
	if c := b.Room.Found.Closing; c.Spare > 0 {
		b.closing(c)
	}
	if c, ok := b.Room.Found.Worst(); ok {
		b.Length(page.Room, "room.out", "corner "+c.Corner.Text()+" out of square over "+b.Notation.Length(c.Over), c.Out,
			"How far its wall runs off a square line: the tangent of what the corner has beyond a right angle, times the way along. Above nothing it is too wide.",
			"tan("+survey.AngleText(c.Degrees)+" − "+survey.AngleText(float64(c.Right))+") × "+b.Notation.Length(c.Over), "Trigonometry; the corners as in room.area.")
	}
}

// twoMiddles says where the two points that pass for the middle of a room are,
// where they differ by more than a mark: people who strike the diagonals and
// people who join the middles of the walls would hang the mask in two places.
func (b *builder) twoMiddles() {
	middle, crossing, apart, ok := b.Room.Shape.Middles()
	if !ok || apart <= b.Notation.Mark() {
		return
	}
	offs := b.offs(crossing)
	b.Sheet.Survey.Text += " The diagonals cross " + b.Notation.Length(apart) + " from where lines between the middles of opposite walls cross; the plan takes the second. To take the first, centre on the point " +
		offs[0] + " and " + offs[1] + "."
	b.Length(page.Room, "room.middles", "the two middles of the room, apart", apart,
		"From where lines between the middles of opposite walls cross, which the plan takes, to where the diagonals cross. Each place is given from corner W: along wall WX, and square to it.",
		b.rootOf(b.Room.Shape.FromA(crossing), b.Room.Shape.FromA(middle)), "Pythagoras.")
}

// rootOf is the distance of two places as a sum.
func (b *builder) rootOf(p, q survey.Point) string {
	less := func(one, other measure.Length) string { return "(" + b.fine(one) + " − " + b.fine(other) + ")²" }
	return "√(" + less(p.X, q.X) + " + " + less(p.Y, q.Y) + ")"
}

// Sources of the ways to find by how much a room misses closing.
const (
	ofAdjusting = "Least squares, as in any text on adjustment, from memory; three standard deviations may be the tape."
	ofTraverse  = "Compass rule (Bowditch), as in any text on traverses, from memory."
)

func (b *builder) closing(c survey.Closing) {
	switch b.Room.Shape.Form {
	case survey.Lines:
		read := c.Amount
		for _, l := range b.Room.Found.Lines {
			if l.At == c.At {
				read = l.Taken()
			}
		}
		b.Length(page.Room, "room.closing", "closing error, at "+c.Line.Text(), c.Amount,
			"The reading less what all other readings make of this line. Up to "+b.Notation.AtMost(c.Limit)+" may be the tape.",
			b.Put(read)+" − "+b.Put(read-c.Amount), ofAdjusting)
	case survey.Walls:
		b.Length(page.Room, "room.closing", "closing error", c.Amount,
			"How far the last wall ends from corner W, walking along all walls with their angles. It is spread over them in proportion to their length.",
			"the way from the end of the last wall to W", ofTraverse)
	default:
		should := b.Plan.Room.DiagonalAC
		if c.Line == survey.LineBD {
			should = b.Plan.Room.DiagonalBD
		}
		b.Length(page.Room, "room.closing", "diagonal "+c.Line.Text()+" off", c.Amount,
			"The diagonal less what a square room has, the root of length² + width². Up to "+b.Notation.AtMost(c.Limit)+" may be the tape.",
			b.Put(should)+" − "+b.Put(should-c.Amount), "Pythagoras; the limit is three standard deviations of the difference, √2 times the tape's.")
	}
}
