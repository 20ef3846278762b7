package tell

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// setting is the block Setting out: where the box goes, the borders, the marks
// along the walls and the triangles that prove the corners.
func (b *builder) setting() {
	b.Setting.Site = b.siteOf()
	outline, set := b.Plan.Mask.Outline, b.Plan.Setting
	square := setout.Square(set.Square)
	if square == "" {
		square = setout.SquareToRoom
	}
	way, problems := b.Setting.Site.Settle(setout.Way{On: set.On, Square: square, Turned: set.Turned})
	choices, taken := b.Setting.Site.Choices(way, outline, set.LeastBorder, b.Notation)
	if taken >= 0 {
		b.Setting.Choice = choices[taken]
		b.Setting.Placed = b.isInside(b.Setting.Choice)
		b.Report("/mask", b.Setting.Site.CheckFit(outline, b.Setting.Choice.Box.Turn, set.LeastBorder, b.Notation))
		b.Report("/setting", append(problems, b.Setting.Choice.Problems...))
	}
	b.choices(choices, taken, way.On)
	b.orderSizes(way)
	b.corners()
	if b.isUpright(way) {
		b.borders(way)
	} else if b.Setting.Placed {
		b.trueBorders()
	}
	if !b.Setting.Placed {
		return
	}
	b.Length(page.Setting, "box.diagonal", "mask outline, corner to corner", b.Setting.Choice.Box.Diagonal(),
		"The root of length squared and width squared. Both diagonals must read the same: then the outline is square.",
		"√(("+b.Put(b.Setting.Choice.Box.Length)+")² + ("+b.Put(b.Setting.Choice.Box.Width)+")²)", "Pythagoras.")
	b.checkTape()
	walls := b.walls()
	b.box(walls)
	b.objectPanels()
}

// siteOf is the ceiling with what a mask can be centred on and square to. A
// point of one's own that lies in no room is reported.
func (b *builder) siteOf() setout.Site {
	s := setout.Site{Shape: b.Room.Shape}
	fixture, set := b.Plan.Fixture, b.Plan.Setting
	s.Fixture.Twice, s.Fixture.Known = fixture.TwiceMiddle(b.Room.Shape)
	if x, y, given := fixture.Axis(b.Room.Shape); given && s.Fixture.Known {
		s.AxisX, s.AxisY = x, y
	}
	if set.PointKnown && set.On == setout.OnPoint && b.Room.Shape.Usable() {
		at := survey.Fixture{At: survey.Measured, FromDA: set.PointDA, FromAB: set.PointAB}
		if s.Point.Twice, s.Point.Known = at.TwiceMiddle(b.Room.Shape); !s.Point.Known {
			b.Report("/setting", []problem.Problem{{At: "/pointDA", Severity: problem.Stop,
				What: words.Say("The point to centre on does not lie inside the room."),
				Do:   words.Say("Measure again from the two walls that meet at corner W.")}})
		}
	}
	return s
}

// isInside tells whether the box lies between the walls. One that does not is
// refused with how much to trim; marks beyond a wall would help nobody.
func (b *builder) isInside(c setout.Choice) bool { return c.Borders.Least() >= 0 }

// isUpright tells whether the box stands as the walls of a rectangular room do,
// so that each border is a plain sum. So does one in a room of which only one
// side is known yet.
func (b *builder) isUpright(way setout.Way) bool {
	if !b.Room.Shape.Usable() {
		return b.Plan.Room.Form == survey.Rectangle || b.Plan.Room.Form == ""
	}
	turn, ok := b.Setting.Site.TurnOf(way.Square)
	return ok && turn.IsExact() && b.Room.Shape.IsRectangle()
}

// sides are the two sides of a rectangular room, as far as they are known.
func (b *builder) sides() (length, width measure.Length) {
	if b.Room.Shape.Usable() {
		return b.Room.Shape.Length, b.Room.Shape.Width
	}
	return b.Plan.Room.Length, b.Plan.Room.Width
}

// orderSizes turns a wanted border round into the mask to order, and says how
// large a mask can be that keeps the least border.
func (b *builder) orderSizes(way setout.Way) {
	set := b.Plan.Setting
	if b.isUpright(way) {
		long, wide := b.sides()
		longID, wideID := [2]string{"order.length", "mask to order, long"}, [2]string{"order.width", "mask to order, wide"}
		if way.Turned {
			longID, wideID = wideID, longID
		}
		if set.WantEndsKnown && long > 0 {
			b.orderSize(longID, "/wantEnds", long, set.WantEnds)
		}
		if set.WantSidesKnown && wide > 0 {
			b.orderSize(wideID, "/wantSides", wide, set.WantSides)
		}
	} else {
		b.orderTrue(way)
	}
	b.largest(way)
}

func (b *builder) orderSize(id [2]string, at string, side, border measure.Length) {
	size, problems := setout.OrderSide(at, side, border, b.Notation)
	b.Report("/setting", problems)
	if len(problems) > 0 {
		return
	}
	b.Length(page.Setting, id[0], id[1], size, "The room less the wanted border on both sides.",
		b.Put(side)+" − 2 × "+b.Put(border), page.OfArithmetic)
}

// orderTrue is orderSizes where the walls do not stand as the box does: both
// sides together where both borders are wanted, else the one with the other as
// the mask has it.
func (b *builder) orderTrue(way setout.Way) {
	set, outline := b.Plan.Setting, b.Plan.Mask.Outline
	if !b.Room.Shape.Usable() || !set.WantEndsKnown && !set.WantSidesKnown {
		return
	}
	border := setout.Borders{AB: set.WantSides, BC: set.WantEnds, CD: set.WantSides, DA: set.WantEnds}
	const rule = "The largest mask that keeps the wanted borders everywhere, where it is centred and as it lies."
	if set.WantEndsKnown && set.WantSidesKnown {
		if size, ok := b.Setting.Site.Largest(way, border); ok {
			sum := "borders of " + b.Put(set.WantEnds) + " at the ends and " + b.Put(set.WantSides) + " at the sides: " + b.Put(size.Length) + " × " + b.Put(size.Width)
			b.Length(page.Setting, "order.length", "mask to order, long", size.Length, rule, sum+", long", b.ofLargest())
			b.Length(page.Setting, "order.width", "mask to order, wide", size.Width, rule, sum+", wide", b.ofLargest())
			return
		}
		b.noOrder("/wantEnds")
		return
	}
	// Ends are borders at the mask's own ends unless it is turned.
	side, id, label, other := setout.LongSide, "order.length", "mask to order, long", outline.Width
	if set.WantSidesKnown != way.Turned {
		side, id, label, other = setout.WideSide, "order.width", "mask to order, wide", outline.Length
	}
	at, want := "/wantEnds", set.WantEnds
	if set.WantSidesKnown {
		at, want = "/wantSides", set.WantSides
	}
	if other <= 0 {
		return
	}
	if size, ok := b.Setting.Site.LargestSide(way, side, other, border); ok {
		b.Length(page.Setting, id, label, size, "The largest that keeps the wanted border at both its ends, with the other side as it is.",
			"a border of "+b.Put(want)+", the other side "+b.Put(other), b.ofLargest())
		return
	}
	b.noOrder(at)
}

// noOrder says that no size to order is worked out.
func (b *builder) noOrder(at string) {
	p := problem.Problem{At: at, Severity: problem.Caution,
		What: words.Say("No mask keeps these borders where it is centred."),
		Do:   words.Say("Want smaller borders, or centre it elsewhere.")}
	switch {
	case !b.Room.Shape.IsConvex():
		p.What = words.Say("In a room with a corner that points inwards the size to order is not worked out from the border.")
		p.Do = words.Say("Try sizes for the mask, and read the borders they leave.")
	case b.Room.Shape.Form == survey.Round:
		p.What = words.Say("In a round room the size to order is worked out only for a mask in its middle and along its axes.")
		p.Do = words.Say("Centre on the room, or try sizes and read the borders they leave.")
	}
	b.Report("/setting", []problem.Problem{p})
}

// largest is the largest mask that keeps the least border, where one is given.
func (b *builder) largest(way setout.Way) {
	least := b.Plan.Setting.LeastBorder
	if least <= 0 {
		return
	}
	if b.isUpright(way) {
		along, across := b.edges(way)
		b.largestSide(way, along, least)
		b.largestSide(way, across, least)
		return
	}
	size, ok := b.Setting.Site.Largest(way, setout.Borders{AB: least, BC: least, CD: least, DA: least})
	if !ok || min(size.Length, size.Width) < mask.LeastPanel {
		return
	}
	rule := "The largest mask that keeps the least border everywhere, " + b.titleOf(way) + "."
	sum := "the least border of " + b.Put(least) + " all round: " + b.Put(size.Length) + " × " + b.Put(size.Width)
	b.Length(page.Setting, "order.largest.length", "largest mask, long", size.Length, rule, sum+", long", b.ofLargest())
	b.Length(page.Setting, "order.largest.width", "largest mask, wide", size.Width, rule, sum+", wide", b.ofLargest())
}

// ofLargest is where the largest mask comes from.
func (b *builder) ofLargest() string {
	if b.Room.Shape.Form == survey.Round {
		return "The chord of an ellipse; the largest area by the golden section."
	}
	return "One straight limit for each wall, and the largest area within them all."
}

// largestSide is one side of the largest mask between two walls that stand as
// the box does.
func (b *builder) largestSide(way setout.Way, e edge, least measure.Length) {
	twice, ok := b.twiceMiddle(way.On, e)
	if !ok || e.room <= 0 {
		return
	}
	near := min(twice, 2*e.room-twice)
	size := near - 2*least
	if size < mask.LeastPanel {
		return
	}
	id, label := "order.largest.length", "largest mask, long"
	if (e.near == survey.AB) != way.Turned {
		id, label = "order.largest.width", "largest mask, wide"
	}
	b.Length(page.Setting, id, label, size, "Twice the way from its middle to the nearer wall, less the least border at both ends.",
		b.Put(near)+" − 2 × "+b.Put(least), page.OfArithmetic)
}

// checkTape says where the tape round the box is wider than the border, and
// where a border widens more than it can hide.
func (b *builder) checkTape() {
	set := b.Plan.Setting
	if least := b.Setting.Choice.Borders.Least(); set.Taped && set.TapeWidth > least {
		b.Report("/setting", []problem.Problem{{At: "/tapeWidth", Severity: problem.Caution,
			What: words.Raw("The tape is " + b.Notation.Length(set.TapeWidth) + " wide and the narrowest border " + b.Notation.Length(least) + ", so it would run up the wall."),
			Do:   words.Say("Use a narrower tape there, or slit it along the corner.")}})
	}
	if worst, ok := b.Setting.Choice.Layout.Worst(); ok && worst.By() > setout.HiddenTaper {
		b.Report("/setting", []problem.Problem{{At: "/square", Severity: problem.Note,
			What: words.Raw("Along wall " + worst.Wall.Text() + " the border widens by " + b.Notation.Amount(worst.By()) + ", more than the " + b.Notation.Length(setout.HiddenTaper) + " that a border hides."),
			Do:   words.Say("See whether it tapers less when the mask is square to something else, and show the client.")}})
	}
}
