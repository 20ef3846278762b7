package sheet

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
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
	long, wide := b.plan.Mask.Length, b.plan.Mask.Width
	if way.Turned {
		long, wide = wide, long
	}
	fixture, set, found := b.plan.Fixture, b.plan.Setting, b.site.Fixture.Twice
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
	fixture := b.plan.Fixture.At
	switch {
	case on == setout.OnRoom:
		return e.room, true
	case on == setout.OnPoint:
		return 2 * e.point, b.plan.Setting.PointKnown && e.point < e.room
	case b.site.Fixture.Known:
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
	rest := b.put(e.room) + " − " + b.put(e.mask)
	rule, sum := "What the mask leaves of the "+e.side+", halved.", "("+rest+") ÷ 2"
	farRule, farSum := rule, sum
	if on != setout.OnRoom {
		what := "the light"
		if on == setout.OnPoint {
			what = "the mask"
		}
		rule, sum = "From the wall to the middle of "+what+", less half the mask.", b.put(twice.Half())+" − "+b.put(e.mask)+" ÷ 2"
		farRule, farSum = "What the mask and the other border leave of the "+e.side+".", rest+" − "+b.put(near)
	}
	b.length(blockSetting, "border."+string(e.near), "border at wall "+string(e.near), near, rule, sum, ofArithmetic)
	b.length(blockSetting, "border."+string(e.far), "border at wall "+string(e.far), far, farRule, farSum, ofArithmetic)
}

// trueBorders are the borders where the walls do not stand as the box does: on
// each side the smaller of its ends, and both ends where they differ.
func (b *builder) trueBorders() {
	layout := b.choice.Layout
	for i, side := range [4]survey.Wall{survey.AB, survey.BC, survey.CD, survey.DA} {
		wall, label := layout.Nearest[i], "border at wall "+string(side)
		switch {
		case wall == "":
			label = "border beyond side " + string(side)
		case wall != side:
			label = "border towards " + string(side) + ", at wall " + string(wall)
		}
		b.trueBorder(side, wall, label, layout)
	}
}

const ofPerpendicular = "The distance of a point from a line, any geometry text."

func (b *builder) trueBorder(side, wall survey.Wall, label string, layout setout.Layout) {
	var ends []setout.Border
	for _, p := range layout.Places {
		if p.Wall == wall || wall == "" && p.Wall == side {
			ends = append(ends, p)
		}
	}
	least, id := layout.Sides.At(side), "border."+string(side)
	rule, sum := "The least distance from the box to the wall.", "the nearest place of the box"
	switch {
	case wall == "":
		rule = "From both corners of the mask to where the wall is nearest; the smaller of the two."
		sum = b.ends(ends)
	case len(ends) == 2:
		rule, sum = "From both corners of the box to the wall, square to the wall; the smaller of the two.", b.ends(ends)
	case len(ends) > 0:
		sum = b.ends(ends)
	}
	b.length(blockSetting, id, label, least, rule, sum, ofPerpendicular)
	if len(ends) != 2 || wall == "" || (ends[0].Length-ends[1].Length).Abs() < setout.Visible {
		return
	}
	for _, end := range ends {
		b.length(blockSetting, id+"."+string(end.Corner), label+", at "+string(end.Corner), end.Length,
			"From the corner of the box to the wall, square to the wall.", "corner "+string(end.Own)+" of the box off wall "+string(wall), ofPerpendicular)
	}
	wide, narrow := max(ends[0].Length, ends[1].Length), min(ends[0].Length, ends[1].Length)
	b.length(blockSetting, id+".taper", label+" widens by", wide-narrow, "The border at one end less that at the other.",
		b.put(wide)+" − "+b.put(narrow), ofArithmetic)
}

// ends are the borders at the places of one wall, as they go into a sum.
func (b *builder) ends(list []setout.Border) string {
	text := ""
	for i, p := range list {
		if i > 0 {
			text += ", "
		}
		if p.Corner == "" {
			text += "in the middle "
		} else {
			text += "at " + string(p.Corner) + " "
		}
		text += b.put(p.Length)
	}
	return text
}
