package sheet

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// setting is the block Setting out: where the box goes, the borders, the marks
// along the walls and the triangles that prove the corners.
func (b *builder) setting() {
	b.site = b.siteOf()
	outline, set := b.plan.Mask.Outline, b.plan.Setting
	way, problems := b.site.Settle(setout.Way{On: set.On, Square: setout.SquareToRoom})
	choices, taken := b.site.Choices(way, outline, set.LeastBorder, b.n)
	if taken >= 0 {
		b.choice = choices[taken]
		b.placed = isInside(b.choice.Borders)
		b.report("/mask", b.site.CheckFit(outline, b.choice.Box.Turn, set.LeastBorder, b.n))
		b.report("/setting", append(problems, b.choice.Problems...))
	}
	b.orderSizes()
	for i, c := range choices {
		b.addChoice(c, i == taken)
	}
	b.corners()
	on := set.On
	if taken >= 0 {
		on = way.On
	}
	b.borders(on)
	if !b.placed {
		return
	}
	b.length(blockSetting, "box.diagonal", "box, corner to corner", b.choice.Box.Diagonal(),
		"The root of length squared and width squared. Both diagonals must read the same: then the box is square.",
		"√(("+b.put(b.choice.Box.Length)+")² + ("+b.put(b.choice.Box.Width)+")²)", "Pythagoras.")
	b.walls()
}

// siteOf is the ceiling with what a mask can be centred on.
func (b *builder) siteOf() setout.Site {
	room := b.plan.Room
	s := setout.Site{Shape: survey.ShapeFromSides(room.Form, room.Length, room.Width)}
	s.Fixture.Twice, s.Fixture.Known = b.plan.Fixture.TwiceCentre(room)
	return s
}

// fixtureHole is the fixture as the box sees it, or false where there is none.
func (b *builder) fixtureHole() (setout.Hole, bool) {
	at := survey.Point{X: b.site.Fixture.Twice.X / 2, Y: b.site.Fixture.Twice.Y / 2}
	f := b.plan.Fixture
	return setout.HoleOf(b.choice.Box, !f.Rectangular, at, f.Across, f.Deep, setout.Turn{}), b.site.Fixture.Known
}

// isInside tells whether the box lies between the walls. One that does not is
// refused with how much to trim; marks beyond a wall would help nobody.
func isInside(borders setout.Borders) bool {
	return min(borders.AB, borders.BC, borders.CD, borders.DA) >= 0
}

// orderSizes turns a wanted border round into the mask to order.
func (b *builder) orderSizes() {
	room, set := b.plan.Room, b.plan.Setting
	if set.WantEndsKnown && room.Length > 0 {
		b.orderSize("order.length", "/wantEnds", "mask to order, long", room.Length, set.WantEnds)
	}
	if set.WantSidesKnown && room.Width > 0 {
		b.orderSize("order.width", "/wantSides", "mask to order, wide", room.Width, set.WantSides)
	}
}

func (b *builder) orderSize(id, at, label string, side, border measure.Length) {
	size, problems := setout.OrderSide(at, side, border, b.n)
	b.report("/setting", problems)
	if len(problems) > 0 {
		return
	}
	b.length(blockSetting, id, label, size, "The room less the wanted border on both sides.",
		b.put(side)+" − 2 × "+b.put(border), ofArithmetic)
}

func titleOf(on setout.On) string {
	if on == setout.OnFixture {
		return "on the fixture"
	}
	return "on the middle of the room"
}

func (b *builder) addChoice(c setout.Choice, taken bool) {
	say := b.n.Length
	choice := Choice{
		On: string(c.On), Title: titleOf(c.On), Taken: taken,
		Borders: Borders{AB: say(c.Borders.AB), BC: say(c.Borders.BC), CD: say(c.Borders.CD), DA: say(c.Borders.DA)},
		Ends:    say(c.Borders.EndsDiffer()), Sides: say(c.Borders.SidesDiffer()),
	}
	for _, p := range c.Problems {
		if p.Severity == problem.Stop {
			choice.Refused = p.What
			break
		}
	}
	if choice.Refused == "" && !isInside(c.Borders) {
		choice.Refused = "The mask is larger than the room."
	}
	b.sheet.Choices = append(b.sheet.Choices, choice)
}

// borders are the four figures that matter most. Each pair needs only its own
// side of the room and of the mask, so that a blank that cannot be read takes
// no more than two of them away.
func (b *builder) borders(on setout.On) {
	room, outline, fixture := b.plan.Room, b.plan.Mask.Outline, b.plan.Fixture
	b.border(on, edge{survey.DA, survey.BC, "length", room.Length, outline.Length, fixture.FromDA})
	b.border(on, edge{survey.AB, survey.CD, "width", room.Width, outline.Width, fixture.FromAB})
}

// edge is one side of the room, between two walls, with the mask along it and
// the measured distance of the fixture from the near wall.
type edge struct {
	near, far survey.Wall
	side      string
	room      measure.Length
	mask      measure.Length
	fixture   measure.Length
}

// twiceMiddle is twice the distance from the near wall to what the mask is
// centred on, and false where that is not known.
func (b *builder) twiceMiddle(on setout.On, e edge) (measure.Length, bool) {
	switch {
	case on == setout.OnRoom || b.plan.Fixture.At == survey.InMiddle:
		return e.room, true
	case b.plan.Fixture.At == survey.Measured && e.fixture > 0 && e.fixture < e.room:
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
	if on == setout.OnFixture {
		rule, sum = "From the wall to the middle of the fixture, less half the mask.", b.put(twice.Half())+" − "+b.put(e.mask)+" ÷ 2"
		farRule, farSum = "What the mask and the other border leave of the "+e.side+".", rest+" − "+b.put(near)
	}
	b.length(blockSetting, "border."+string(e.near), "border at wall "+string(e.near), near, rule, sum, ofArithmetic)
	b.length(blockSetting, "border."+string(e.far), "border at wall "+string(e.far), far, farRule, farSum, ofArithmetic)
}

// tapeSlip is how far a diagonal is taken to be misread by, for the error a
// triangle leaves: two marks of the tape.
const tapeSlip = 2

// corners are the triangles that prove the corners of the box square.
func (b *builder) corners() {
	room := b.plan.Room
	if !room.HasPlan() {
		return
	}
	t, ok := survey.LargestTriangle(room.Length, room.Width, b.n.System)
	if !ok {
		return
	}
	slip := tapeSlip * b.n.Mark()
	strays := t.Strays(slip, room.Length)
	for _, c := range []survey.Corner{survey.A, survey.B, survey.C, survey.D} {
		b.sheet.Corners = append(b.sheet.Corners, Corner{
			Corner: string(c), Along: b.n.Length(t.Along), Across: b.n.Length(t.Across), Diagonal: b.n.Length(t.Diagonal),
			Text: "From corner " + string(c) + ": " + b.n.Length(t.Along) + " along the length, " + b.n.Length(t.Across) + " across; the diagonal between must read " +
				b.n.Length(t.Diagonal) + ". Read wrong by " + b.n.Length(slip) + ", a line is off by " + b.n.Length(strays) + " at the far wall.",
		})
	}
}

// walls are the marks along each wall.
func (b *builder) walls() {
	layers := make([]mask.Layer, 0, len(b.layers))
	for _, l := range b.layers {
		if !l.panels.IsEmpty() {
			layers = append(layers, l.panels)
		}
	}
	for _, w := range b.site.Marks(b.choice.Box, layers) {
		wall := Wall{
			Wall: string(w.Wall), From: string(w.From), To: string(w.To),
			Title: "Along wall " + string(w.Wall) + ", from " + string(w.From), Length: b.n.Length(w.Length),
			Marks: make([]Mark, 0, len(w.Marks)),
		}
		for _, m := range merged(w.Marks, b.n.Mark()) {
			wall.Marks = append(wall.Marks, b.mark(m, len(layers)))
		}
		b.sheet.Walls = append(b.sheet.Walls, wall)
	}
}

// tick is marks of one kind and place, with the layers they are for.
type tick struct {
	setout.Mark
	layers []string
}

// merged puts marks of one kind that fall on the same tape mark together: two
// layers cut alike have their seams on the same ticks.
func merged(marks []setout.Mark, tape measure.Length) []tick {
	ticks := make([]tick, 0, len(marks))
next:
	for _, m := range marks {
		for i := len(ticks) - 1; i >= 0 && ticks[i].At.ToMark(tape) == m.At.ToMark(tape); i-- {
			if ticks[i].Kind == m.Kind && ticks[i].Label == m.Label {
				ticks[i].layers = append(ticks[i].layers, m.Layer)
				continue next
			}
		}
		ticks = append(ticks, tick{m, []string{m.Layer}})
	}
	return ticks
}

func (b *builder) mark(t tick, layers int) Mark {
	m := Mark{
		Kind: string(t.Kind), Label: t.Label, Text: b.n.Length(t.At), Other: b.other.Length(t.At), Exact: nanometres(t.At),
	}
	switch t.Kind {
	case setout.BoxMark:
		m.Label = "box"
	case setout.CentreMark:
		m.Label = "middle"
	case setout.FixtureMark:
		m.Label = "fixture"
	case setout.SeamMark:
		if len(t.layers) < layers {
			m.Layer = b.names(t.layers)
		}
	}
	m.Hides = b.hides(t.At)
	return m
}

// hides is what the rounding to the tape mark leaves out, in words, to a
// hundredth of a millimetre: below that it says nothing.
func (b *builder) hides(l measure.Length) string {
	left := (-b.n.Hides(l)).ToMark(measure.Millimetre / 100)
	switch {
	case left > 0:
		return left.String() + " more"
	case left < 0:
		return (-left).String() + " less"
	}
	return ""
}

// names are the names of layers, for marks that are not for all of them.
func (b *builder) names(ids []string) string {
	text := ""
	for _, l := range b.layers {
		for _, id := range ids {
			if l.panels.ID == id {
				if text != "" {
					text += ", "
				}
				text += l.panels.Name
			}
		}
	}
	return text
}
