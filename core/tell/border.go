package tell

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
)

// borders are the four figures that matter most. Each pair needs only its own
// side of the room and of the mask, so that a blank that cannot be read takes
// no more than two of them away.
func (b *builder) borders(way setout.Way) {
	along, across := b.edges(way)
	b.border(way.On, along)
	b.border(way.On, across)
}

// edges are the two directions of a rectangular room.
func (b *builder) edges(way setout.Way) (along, across edge) {
	length, width := b.sides()
	long, wide := b.Plan.Mask.Length, b.Plan.Mask.Width
	if way.Turned {
		long, wide = wide, long
	}
	fixture, set, found := b.Plan.Fixture, b.Plan.Setting, b.Setting.Site.Fixture.Twice
	return edge{survey.DA, survey.BC, "length", length, long, fixture.FromDA, set.PointDA, found.X},
		edge{survey.AB, survey.CD, "width", width, wide, fixture.FromAB, set.PointAB, found.Y}
}

// edge is one side of the room, between two walls, with the mask along it and
// the distances of the fixture and the point from the near wall: the fixture's
// as measured, and where it was found, doubled.
type edge struct {
	near, far      survey.Wall
	side           string
	room           measure.Length
	mask           measure.Length
	fixture, point measure.Length
	found          measure.Length
}

// twiceMiddle is twice the distance from the near wall to what the mask is
// centred on, and false where that is not known.
func (b *builder) twiceMiddle(on setout.On, e edge) (measure.Length, bool) {
	fixture := b.Plan.Fixture.At
	switch {
	case on == setout.OnRoom:
		return e.room, true
	case on == setout.OnPoint:
		return 2 * e.point, b.Plan.Setting.PointKnown && e.point < e.room
	case b.Setting.Site.Fixture.Known:
		return e.found, true
	case fixture == survey.InMiddle:
		return e.room, true
	case fixture == survey.Measured && e.fixture > 0 && e.fixture < e.room:
		return 2 * e.fixture, true
	}
	return 0, false
}

func (b *builder) border(on setout.On, e edge) {
	twice, ok := b.twiceMiddle(on, e)
	if !ok || e.room <= 0 || e.mask <= 0 {
		return
	}
	near, far := setout.EdgeBorders(twice, e.room, e.mask)
	if min(near, far) < 0 {
		return
	}
	rest := b.Put(e.room) + " − " + b.Put(e.mask)
	rule, sum := "What the mask leaves of the "+e.side+", halved.", "("+rest+") ÷ 2"
	farRule, farSum := rule, sum
	if on != setout.OnRoom {
		what := "the light"
		if on == setout.OnPoint {
			what = "the mask"
		}
		rule, sum = "From the wall to the middle of "+what+", less half the mask.", b.Put(twice.Half())+" − "+b.Put(e.mask)+" ÷ 2"
		farRule, farSum = "What the mask and the other border leave of the "+e.side+".", rest+" − "+b.Put(near)
	}
	b.Length(page.Setting, "border."+string(e.near), "border at wall "+e.near.Text(), near, rule, sum, page.OfArithmetic)
	b.Length(page.Setting, "border."+string(e.far), "border at wall "+e.far.Text(), far, farRule, farSum, page.OfArithmetic)
}

// trueBorders are the borders where the walls do not stand as the box does: on
// each side the smaller of its ends, and both ends where they differ.
func (b *builder) trueBorders() {
	layout := b.Setting.Choice.Layout
	for i, side := range [4]survey.Wall{survey.AB, survey.BC, survey.CD, survey.DA} {
		wall, label := layout.Nearest[i], "border at wall "+side.Text()
		switch {
		case wall == "":
			label = "border beyond side " + side.Text()
		case wall != side:
			label = "border towards " + side.Text() + ", at wall " + wall.Text()
		}
		b.trueBorder(side, wall, label, layout)
	}
}

const ofPerpendicular = "The distance of a point from a line, any geometry text."

func (b *builder) trueBorder(side, wall survey.Wall, label string, layout setout.Layout) {
	var ends []setout.Border
	for _, p := range layout.Places {
		if p.Own != "" && (p.Wall == wall || wall == "" && p.Wall == side) {
			ends = append(ends, p)
		}
	}
	least, id := layout.Sides.At(side), "border."+string(side)
	rule, sum, source := b.leastOf(ends, least, wall, layout)
	b.Length(page.Setting, id, label, least, rule, sum, source)
	if len(ends) != 2 || wall == "" || (ends[0].Length-ends[1].Length).Abs() < setout.Visible {
		return
	}
	for _, end := range ends {
		rule, sum := b.squareOff(end)
		b.Length(page.Setting, id+"."+string(end.Corner), label+", at "+end.Corner.Text(), end.Length, rule, sum, ofPerpendicular)
	}
	wide, narrow := max(ends[0].Length, ends[1].Length), min(ends[0].Length, ends[1].Length)
	b.Length(page.Setting, id+".taper", label+" widens by", wide-narrow, "The border at one end less that at the other.",
		b.Put(wide)+" − "+b.Put(narrow), page.OfArithmetic)
}

// leastOf is how the border on one side comes about: the smaller of its two ends,
// one end alone, or the distance of two corners where one points inwards.
func (b *builder) leastOf(ends []setout.Border, least measure.Length, wall survey.Wall, layout setout.Layout) (rule, sum, source string) {
	switch {
	case len(ends) == 2 && wall == "":
		rule = "From both corners of the mask to where the wall is nearest; the smaller of the two."
	case len(ends) == 2:
		rule = "From both corners of the mask to the wall, square to the wall; the smaller of the two."
	}
	if len(ends) == 2 && (ends[0].Length == least || ends[1].Length == least) {
		return rule, "the smaller of " + b.Put(ends[0].Length) + " at " + ends[0].Corner.Text() + " and " + b.Put(ends[1].Length) + " at " + ends[1].Corner.Text(), ofPerpendicular
	}
	for _, end := range ends {
		if w, ok := b.Room.Shape.Wall(wall); ok && end.Length == least && w.Off(b.Setting.Choice.Box.Corner(end.Own)) == least {
			rule, sum = b.squareOff(end)
			return rule, sum, ofPerpendicular
		}
	}
	along, across := b.Setting.Site.Apart(b.Setting.Choice.Box, wall)
	return "From the mask to the place of the wall that is nearest: how far they are apart along the mask’s length, and across it.",
		"√((" + b.fine(along) + ")² + (" + b.fine(across) + ")²)", "Pythagoras."
}

// squareOff is the distance of a corner of the mask from a wall as a sum, in
// places taped from corner A along wall AB and square to it.
func (b *builder) squareOff(end setout.Border) (rule, sum string) {
	w, _ := b.Room.Shape.Wall(end.Wall)
	p, from, to := b.Room.Shape.FromA(b.Setting.Choice.Box.Corner(end.Own)), b.Room.Shape.FromA(w.Start), b.Room.Shape.FromA(w.End)
	along, square := survey.Slopes(from, to)
	less := func(one, other measure.Length, slope float64) string {
		if slope < 0 {
			one, other = other, one
		}
		return "(" + b.Put(one) + " − " + b.Put(other) + ") × " + survey.SlopeText(math.Abs(slope))
	}
	rule = "Square to the wall. The corner of the mask and corner " + w.From.Text() + " of the room are each taped from corner W, along wall WX and square to it; the way between them is turned into the wall’s own direction."
	switch flat := survey.SlopeText(0); {
	case survey.SlopeText(math.Abs(square)) == flat:
		return rule, less(p.Y, from.Y, along)
	case survey.SlopeText(math.Abs(along)) == flat:
		return rule, less(from.X, p.X, square)
	}
	return rule, less(p.Y, from.Y, along) + " + " + less(from.X, p.X, square)
}
