// Package setting tells the page Setting out: where the mask goes, the borders, the
// marks along the walls and the triangles that prove the corners.
package setting

import (
	"math"

	"ceilingwright/core/job/setting"

	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/sum"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// teller tells where the mask of one job goes.
type teller struct {
	*page.Page
	*job.Job
}

// Tell puts the page on the sheet.
func Tell(p *page.Page, j *job.Job) {
	t := teller{p, j}
	t.choices()
	t.order()
	t.largest()
	t.corners()
	if j.Setting.Upright {
		for i := range j.Setting.Edges {
			t.borders(&j.Setting.Edges[i])
		}
	}
	for i := range j.Setting.Sides {
		t.side(&j.Setting.Sides[i])
	}
	if !j.Setting.Placed {
		return
	}
	box := &j.Setting.Choice.Box
	t.Length(page.Setting, "box.diagonal", t.Say("mask outline, corner to corner"), box.Diagonal(),
		t.Say("The root of length squared and width squared. Both diagonals must read the same: then the outline is square."),
		"√(("+t.Put(box.Length)+")² + ("+t.Put(box.Width)+")²)", t.Say("Pythagoras."))
	t.walls()
	t.box()
	t.objects()
}

// sum is a figure that is a sum.
func (t *teller) sum(id, label string, s sum.Sum, rule string) {
	t.Length(page.Setting, id, label, s.Value(), rule, s.In(t.Style()), t.Arithmetic())
}

// order is the mask to order for the borders wanted.
func (t *teller) order() {
	set, list := &t.Plan.Setting, t.Setting.Order
	for i := range list {
		s := &list[i]
		id, label := "order.length", t.Say("mask to order, long")
		if s.Side == setout.WideSide {
			id, label = "order.width", t.Say("mask to order, wide")
		}
		switch {
		case !s.Sum.IsNone():
			t.sum(id, label, s.Sum, t.Say("The room less the wanted border on both sides."))
		case s.Other > 0:
			t.Length(page.Setting, id, label, s.Length, t.Say("The largest that keeps the wanted border at both its ends, with the other side as it is."),
				t.Say("a border of {border}, the other side {other}", words.Put("border", s.Border), words.Put("other", s.Other)), t.ofLargest())
		default:
			t.Length(page.Setting, id, label, s.Length, t.Say("The largest mask that keeps the wanted borders everywhere, where it is centred and as it lies."),
				t.sideOf(s.Side, words.Say("borders of {ends} at the ends and {sides} at the sides: {length} × {width}", words.Put("ends", set.WantEnds), words.Put("sides", set.WantSides),
					words.Put("length", list[0].Length), words.Put("width", list[1].Length))), t.ofLargest())
		}
	}
}

// largest is the largest mask that keeps the least border.
func (t *teller) largest() {
	list := t.Setting.Largest
	for i := range list {
		s := &list[i]
		id, label := "order.largest.length", t.Say("largest mask, long")
		if s.Side == setout.WideSide {
			id, label = "order.largest.width", t.Say("largest mask, wide")
		}
		if !s.Sum.IsNone() {
			t.sum(id, label, s.Sum, t.Say("Twice the way from its middle to the nearer wall, less the least border at both ends."))
			continue
		}
		t.Length(page.Setting, id, label, s.Length,
			t.Say("The largest mask that keeps the least border everywhere, {way}.", words.Of("way", t.title(t.Setting.Way))),
			t.sideOf(s.Side, words.Say("the least border of {least} all round: {length} × {width}", words.Put("least", t.Plan.Setting.LeastBorder),
				words.Put("length", list[0].Length), words.Put("width", list[1].Length))), t.ofLargest())
	}
}

// sideOf is the size of a mask with which of its sides is meant.
func (t *teller) sideOf(side setout.Side, size words.Text) string {
	if side == setout.WideSide {
		return t.Say("{size}, wide", words.Of("size", size))
	}
	return t.Say("{size}, long", words.Of("size", size))
}

// ofLargest is where the largest mask comes from.
func (t *teller) ofLargest() string {
	if t.Room.Shape.Form == survey.Round {
		return t.Say("The chord of an ellipse; the largest area by the golden section.")
	}
	return t.Say("One straight limit for each wall, and the largest area within them all.")
}

// borders are the two borders along one side of a rectangular room.
func (t *teller) borders(e *setting.Edge) {
	if e.NearBorder.IsNone() {
		return
	}
	near, far := t.Say("What the mask leaves of the length, halved."), t.Say("What the mask and the other border leave of the length.")
	if e.Near == survey.AB {
		near, far = t.Say("What the mask leaves of the width, halved."), t.Say("What the mask and the other border leave of the width.")
	}
	switch t.Setting.Way.On {
	case setout.OnRoom:
		far = near
	case setout.OnPoint:
		near = t.Say("From the wall to the middle of the mask, less half the mask.")
	default:
		near = t.Say("From the wall to the middle of the light, less half the mask.")
	}
	t.sum("border."+string(e.Near), t.atWall(e.Near), e.NearBorder, near)
	t.sum("border."+string(e.Far), t.atWall(e.Far), e.FarBorder, far)
}

func (t *teller) atWall(w survey.Wall) string {
	return t.Say("border at wall {wall}", words.Of("wall", w))
}

// side is the border on one side where the walls do not stand as the mask does: the
// smaller of its ends, and both ends where they differ.
func (t *teller) side(s *setting.Side) {
	id := "border." + string(s.Side)
	side, wall := words.Of("side", s.Side), words.Of("wall", s.Wall)
	label := words.Say("border at wall {wall}", wall)
	switch {
	case s.Wall == "":
		label = words.Say("border beyond side {side}", side)
	case s.Wall != s.Side:
		label = words.Say("border towards {side}, at wall {wall}", side, wall)
	}
	rule, sum, source := t.leastOf(s)
	t.Length(page.Setting, id, t.Told(label), s.Least, rule, sum, source)
	if s.Widens.IsNone() {
		return
	}
	of := words.Of("border", label)
	for i := range s.Ends {
		end := &s.Ends[i]
		t.Length(page.Setting, id+"."+string(end.Corner), t.Say("{border}, at {corner}", of, words.Of("corner", end.Corner)), end.Length, t.squareRule(end), t.squareSum(end), t.Say(ofPerpendicular))
	}
	t.sum(id+".taper", t.Say("{border} widens by", of), s.Widens, t.Say("The border at one end less that at the other."))
}

const ofPerpendicular = "The distance of a point from a line, any geometry text."

// leastOf is how the border on one side comes about.
func (t *teller) leastOf(s *setting.Side) (rule, sum, source string) {
	switch s.By {
	case setting.LeastByEnds:
		rule = t.Say("From both corners of the mask to the wall, square to the wall; the smaller of the two.")
		if s.Wall == "" {
			rule = t.Say("From both corners of the mask to where the wall is nearest; the smaller of the two.")
		}
		one, other := &s.Ends[0], &s.Ends[1]
		return rule, t.Say("the smaller of {one} at {corner} and {other} at {far}", words.Put("one", one.Length), words.Of("corner", one.Corner),
			words.Put("other", other.Length), words.Of("far", other.Corner)), t.Say(ofPerpendicular)
	case setting.LeastByFirst, setting.LeastBySecond:
		end := &s.Ends[s.By-setting.LeastByFirst]
		return t.squareRule(end), t.squareSum(end), t.Say(ofPerpendicular)
	}
	return t.Say("From the mask to the place of the wall that is nearest: how far they are apart along the mask’s length, and across it."),
		"√((" + t.Notation.Fine(s.Along) + ")² + (" + t.Notation.Fine(s.Across) + ")²)", t.Say("Pythagoras.")
}

func (t *teller) squareRule(end *setting.End) string {
	return t.Say("Square to the wall. The corner of the mask and corner {corner} of the room are each taped from corner W, along wall WX and square to it; the way between them is turned into the wall’s own direction.",
		words.Of("corner", end.Start))
}

// squareSum is the distance of a corner of the mask from a wall.
func (t *teller) squareSum(end *setting.End) string {
	less := func(one, other measure.Length, slope float64) string {
		if slope < 0 {
			one, other = other, one
		}
		return "(" + t.Put(one) + " − " + t.Put(other) + ") × " + survey.SlopeText(math.Abs(slope))
	}
	y, x := less(end.Of.Y, end.From.Y, end.Along), less(end.From.X, end.Of.X, end.Square)
	switch flat := survey.SlopeText(0); {
	case survey.SlopeText(math.Abs(end.Square)) == flat:
		return y
	case survey.SlopeText(math.Abs(end.Along)) == flat:
		return x
	}
	return y + " + " + x
}

// corners are the triangles that prove the corners square.
func (t *teller) corners() {
	tri := &t.Setting.Triangle
	if !tri.Known {
		return
	}
	along, across, diagonal := words.Length("along", tri.Along), words.Length("across", tri.Across), words.Length("diagonal", tri.Diagonal)
	slip, strays := words.Length("slip", tri.Slip), words.Length("strays", tri.Strays)
	for _, c := range [4]survey.Corner{survey.A, survey.B, survey.C, survey.D} {
		corner := words.Of("corner", c)
		text := words.Say("From corner {corner}: {along} along the length, {across} across; the diagonal between must read {diagonal}. Read wrong by {slip}, a line is off by {strays} at the far wall.",
			corner, along, across, diagonal, slip, strays)
		if !tri.OfRoom {
			text = words.Say("From the mask outline’s corner {corner}: {along} along its length, {across} across; the diagonal between must read {diagonal}. Read wrong by {slip}, a line is off by {strays} at its far end.",
				corner, along, across, diagonal, slip, strays)
		}
		t.Sheet.Corners = append(t.Sheet.Corners, sheet.Corner{
			Corner: string(c), Along: t.Notation.Length(tri.Along), Across: t.Notation.Length(tri.Across), Diagonal: t.Notation.Length(tri.Diagonal), Text: t.Told(text),
		})
	}
}
