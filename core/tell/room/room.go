// Package room tells the page Room: the shape of the ceiling, how well it is known,
// and what is on it.
package room

import (
	"strings"

	"ceilingwright/core/job/room"

	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// teller tells the room of one job.
type teller struct {
	*page.Page
	*job.Job
}

// Tell puts the page on the sheet.
func Tell(p *page.Page, j *job.Job) {
	t := teller{p, j}
	t.measured()
	for i := range j.Room.Objects {
		o := &j.Room.Objects[i]
		t.Sheet.Objects = append(t.Sheet.Objects, sheet.Object{At: o.At, Name: o.Name, Kind: o.Kind, Text: t.whereIs(o)})
	}
	if !j.Room.Shape.Usable() {
		return
	}
	t.Area(page.Room, "room.area", t.Say("ceiling"), j.Room.Area, t.areaRule(), t.areaSum(), t.Arithmetic())
	t.perimeter()
	if j.Plan.Room.Height > 0 {
		t.volume()
	}
	if j.Room.Found.Closing.Spare > 0 {
		t.closing()
	}
	if c, ok := j.Room.Found.Worst(); ok {
		t.Length(page.Room, "room.out", t.Say("corner {corner} out of square over {over}", words.Of("corner", c.Corner), words.Length("over", c.Over)), c.Out,
			t.Say("How far its wall runs off a square line: the tangent of what the corner has beyond a right angle, times the way along. Above nothing it is too wide."),
			t.Say("tan({angle} − {right}) × {over}", words.Of("angle", c.Angle()), words.Of("right", survey.Angle(c.Right)), words.Length("over", c.Over)),
			t.Say("Trigonometry; the corners as in room.area."))
	}
	if j.Room.Apart > 0 {
		t.twoMiddles()
	}
}

// whereIs is where a thing is and how large.
func (t *teller) whereIs(o *room.Thing) string {
	if !o.Placed {
		return t.Say("Its place is not known.")
	}
	middle := words.Say("Its middle is in the middle of the room")
	if !o.InMiddle {
		middle = words.Say("Its middle is {off}", words.Of("off", t.off(o.Middle)))
	}
	where, length, width := words.Of("where", middle), words.Length("length", o.Length), words.Length("width", o.Width)
	switch {
	case o.Length <= 0 || !o.Round && o.Width <= 0:
		return t.Say("{where}.", where)
	case o.Round:
		return t.Say("{where}; it is {length} across.", where, length)
	case o.OwnAxis:
		return t.Say("{where}; it is {length} by {width}, along its own axis.", where, length, width)
	case t.Room.Shape.Form == survey.Round:
		return t.Say("{where}; it is {length} by {width}.", where, length, width)
	}
	return t.Say("{where}; it is {length} by {width}, along wall WX.", where, length, width)
}

// off is how far a place is from the two walls at A, or in a round room along
// its length and its width.
func (t *teller) off(p survey.Point) words.Text {
	if t.Room.Shape.Form == survey.Round {
		return words.Say("{x} along the length and {y} along the width", words.Length("x", p.X), words.Length("y", p.Y))
	}
	walls := t.Room.Shape.Walls()
	last, first := walls[len(walls)-1], walls[0]
	return words.Say("{x} off wall {last} and {y} off wall {first}", words.Length("x", last.Off(p)), words.Of("last", last.Name), words.Length("y", first.Off(p)), words.Of("first", first.Name))
}

// sides is the length of the room times its width, as a sum.
func (t *teller) sides() string {
	return t.Put(t.Room.Shape.Length) + " × " + t.Put(t.Room.Shape.Width)
}

func (t *teller) areaRule() string {
	s, proof := &t.Room.Shape, t.Room.Found.Proof
	switch {
	case s.Form == survey.Round:
		return t.Say("A quarter of π times length times width.")
	case s.Form == survey.Rectangle && proof == survey.Assumed:
		return t.Say("Length times width. Until a diagonal is measured the room is taken as square.")
	case s.Form == survey.Rectangle && proof == survey.Contradicted:
		return t.Say("Length times width, as if the room were square; a diagonal says that it is not.")
	case t.Room.Fan == nil:
		return t.Say("Length times width.")
	}
	return t.Say("Cut into triangles that meet at corner W, added up; what lies outside the room is taken off.")
}

// areaSum is the area of the ceiling as a sum: of an outline "WXY 6 m² + WYZ 6 m²".
func (t *teller) areaSum() string {
	switch {
	case t.Room.Shape.Form == survey.Round:
		return "π ÷ 4 × " + t.sides()
	case t.Room.Fan == nil:
		return t.sides()
	}
	var sum strings.Builder
	for i, a := range t.Room.Fan {
		switch {
		case a.SquareMetres.Sign() < 0:
			sum.WriteString(" − ")
		case i > 0:
			sum.WriteString(" + ")
		}
		sum.WriteString(survey.A.Text() + survey.CornerNumbered(i+1).Text() + survey.CornerNumbered(i+2).Text() + " " + t.Notation.Area(measure.Area{SquareMetres: a.SquareMetres.Abs()}))
	}
	return strings.TrimSpace(sum.String())
}

func (t *teller) perimeter() {
	s, source := &t.Room.Shape, t.Arithmetic()
	long, wide := t.Put(s.Length), t.Put(s.Width)
	var rule, sum string
	switch {
	case s.Form == survey.Round && s.Length == s.Width:
		rule, sum = t.Say("π times the diameter."), "π × "+long
	case s.Form == survey.Round:
		rule = t.Say("Half of π times length and width together, times the series 1 + h ÷ 4 + h² ÷ 64 + h³ ÷ 256 + …, with h the square of their difference over their sum.")
		sum, source = "π ÷ 2 × ("+long+" + "+wide+") × "+survey.SlopeText(s.Series()), t.Say("Gauss–Kummer series for the perimeter of an ellipse, from memory.")
	case t.Room.Fan == nil:
		rule, sum = t.Say("Twice the length and the width together."), "2 × ("+long+" + "+wide+")"
	default:
		var walls []string
		for _, w := range s.Walls() {
			walls = append(walls, w.Name.Text()+" "+t.Put(w.Length()))
		}
		rule, sum = t.Say("The walls added up."), strings.Join(walls, " + ")
	}
	t.Length(page.Room, "room.perimeter", t.Say("perimeter"), t.Room.Perimeter, rule, sum, source)
}

// volume is the figure of the room's air.
func (t *teller) volume() {
	air := t.Room.Air
	t.Figure(sheet.Figure{
		ID: "room.volume", Block: page.Room, Label: t.Say("room volume"),
		Value: page.Plain(air.Litres.Quo(measure.CubicMetre)), Unit: "m3",
		Text: cubic(t.Notation, air), Other: cubic(t.Other, air),
		Working: sheet.Working{Rule: t.Say("Ceiling area times height."),
			Sum:    t.Notation.Area(t.Room.Area) + " × " + t.Put(t.Plan.Room.Height) + " = " + cubic(t.Notation, air),
			Source: t.Arithmetic()},
	})
}

func cubic(n measure.Notation, v measure.Volume) string {
	if n.System == measure.FeetInches {
		return n.Number(v.Litres.Quo(measure.CubicFoot), 0) + " ft³"
	}
	return n.Number(v.Litres.Quo(measure.CubicMetre), 1) + " m³"
}

// twoMiddles says where the two points that pass for the middle of a room are: people
// who strike the diagonals and people who join the middles of the walls would hang the
// mask in two places.
func (t *teller) twoMiddles() {
	r := &t.Room
	t.Sheet.Survey.Text += " " + t.Say("The diagonals cross {apart} from where lines between the middles of opposite walls cross; the plan takes the second. To take the first, centre on the point {off}.",
		words.Length("apart", r.Apart), words.Of("off", t.off(r.Crossed)))
	p, q := r.Shape.FromA(r.Crossed), r.Shape.FromA(r.Middle)
	less := func(one, other measure.Length) string {
		return "(" + t.Notation.Fine(one) + " − " + t.Notation.Fine(other) + ")²"
	}
	t.Length(page.Room, "room.middles", t.Say("the two middles of the room, apart"), r.Apart,
		t.Say("From where lines between the middles of opposite walls cross, which the plan takes, to where the diagonals cross. Each place is given from corner W: along wall WX, and square to it."),
		"√("+less(p.X, q.X)+" + "+less(p.Y, q.Y)+")", t.Say("Pythagoras."))
}

// closing is the figure of how far the readings miss each other.
func (t *teller) closing() {
	c := t.Room.Found.Closing
	sum := t.Put(t.Room.Read) + " − " + t.Put(t.Room.Read-c.Amount)
	line, limit := words.Of("line", c.Line), words.AtMost("limit", c.Limit)
	switch t.Room.Shape.Form {
	case survey.Lines:
		t.Length(page.Room, "room.closing", t.Say("closing error, at {line}", line), c.Amount,
			t.Say("The reading less what all other readings make of this line. Up to {limit} may be the tape.", limit),
			sum, t.Say("Least squares, as in any text on adjustment, from memory; three standard deviations may be the tape."))
	case survey.Walls:
		t.Length(page.Room, "room.closing", t.Say("closing error"), c.Amount,
			t.Say("How far the last wall ends from corner W, walking along all walls with their angles. It is spread over them in proportion to their length."),
			t.Say("the way from the end of the last wall to W"), t.Say("Compass rule (Bowditch), as in any text on traverses, from memory."))
	default:
		t.Length(page.Room, "room.closing", t.Say("diagonal {line} off", line), c.Amount,
			t.Say("The diagonal less what a square room has, the root of length² + width². Up to {limit} may be the tape.", limit),
			sum, t.Say("Pythagoras; the limit is three standard deviations of the difference, √2 times the tape's."))
	}
}
