// Package setting works out where the mask goes: the borders it leaves, the marks along
// the walls, and what proves the corners.
package setting

import (
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/room"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Setting is where the mask goes. Site is the ceiling with what a mask can be centred
// on and square to, Way the way asked for as far as it can be had. Choices are the ways
// side by side, Taken which of them is taken, −1 for none, and Best the recommended
// one, where there is one. Choice is the place taken; Placed tells whether there is a
// mask outline to set out.
//
// Upright tells whether the outline stands as the walls of a rectangular room do, so
// that each border is a plain sum: Edges are then its two directions. Otherwise Sides
// are the borders on the four sides. Order are the sides of the mask that leave the
// borders wanted, Largest those that keep the least one.
//
// Triangle proves the corners square, Known where there is room for one. Walls are the
// marks along each wall, Corners how the corners of the outline are found. TapeFrom is
// how far the tape round the outline stays from each wall. Under are the panels that
// the things on the ceiling come through, SeamsHit the seams.
type Setting struct {
	Site            setout.Site
	Way             setout.Way
	Choices         []setout.Choice
	Taken           int
	Best            setout.Recommendation
	Recommended     bool
	Choice          setout.Choice
	Placed, Upright bool
	Edges           [2]Edge
	Sides           []Side
	Order, Largest  []SizedSide
	Triangle        Triangle
	Walls           []Wall
	Corners         []setout.Found
	TapeFrom        setout.Borders
	Under           []Under
	SeamsHit        []SeamHit
}

// Triangle is a triangle in each corner of the room, or of the mask outline where that
// is all that can be proved. Strays is how far a line is off at the far end where the
// tape was read wrong by Slip.
type Triangle struct {
	survey.Triangle
	Known, OfRoom bool
	Slip, Strays  measure.Length
}

// Under is a panel that a thing on the ceiling comes through; Layer is the layer's ID
// and Thing its place among the things of the room.
type Under struct {
	Layer string
	Thing int
	Cut   setout.Cut
}

// SeamHit is a seam that runs into a thing on the ceiling.
type SeamHit struct {
	Layer string
	Thing int
	Seam  mask.Seam
}

// Facing is the wall that a side of the mask faces; where it is not placed, the side's
// own.
func (s *Setting) Facing(side survey.Wall) survey.Wall {
	if s.Placed {
		return s.Choice.Box.Facing(side)
	}
	return side
}

// out is a mask being set out.
type out struct {
	Plan    *plan.Plan
	Room    *room.Room
	Layers  []layers.Layer
	Setting Setting
	problem.List
}

// SetOut works out where the mask goes, the borders, the marks along the walls and the
// triangles that prove the corners.
func SetOut(p *plan.Plan, r *room.Room, list []layers.Layer) (Setting, []problem.Problem) {
	o := out{Plan: p, Room: r, Layers: list}
	o.setOut()
	return o.Setting, o.List
}

func (o *out) setOut() {
	s, outline, set := &o.Setting, o.Plan.Mask.Outline, o.Plan.Setting
	s.Site = o.siteOf()
	square := setout.Square(set.Square)
	if square == "" {
		square = setout.SquareToRoom
	}
	var problems []problem.Problem
	s.Way, problems = s.Site.Settle(setout.Way{On: set.On, Square: square, Turned: set.Turned})
	s.Choices, s.Taken = s.Site.Choices(s.Way, outline, set.LeastBorder, o.Plan.Units.Notation().Mark())
	if s.Taken >= 0 {
		s.Choice = s.Choices[s.Taken]
		s.Placed = s.Choice.IsInside()
		o.Report("/mask", s.Site.CheckFit(outline, s.Choice.Box.Turn, set.LeastBorder))
		o.Report("/setting", append(problems, s.Choice.Problems...))
	}
	s.Best, s.Recommended = setout.Recommend(s.Choices, s.Way.On)
	s.Upright = o.isUpright()
	s.Edges = o.edges()
	o.sizeToOrder()
	o.prove()
	if !s.Placed {
		return
	}
	if !s.Upright {
		s.Sides = o.sides()
	}
	o.checkTape()
	o.mark()
	s.Corners = s.Site.Corners(s.Choice.Box, s.Choice.Layout)
	o.cut()
}

// siteOf is the ceiling with what a mask can be centred on and square to. A
// point of one's own that lies in no room is reported.
func (o *out) siteOf() setout.Site {
	s := setout.Site{Shape: o.Room.Shape}
	fixture, set := o.Plan.Fixture, o.Plan.Setting
	s.Fixture.Twice, s.Fixture.Known = fixture.TwiceMiddle(s.Shape)
	if x, y, given := fixture.Axis(s.Shape); given && s.Fixture.Known {
		s.AxisX, s.AxisY = x, y
	}
	if set.PointKnown && set.On == setout.OnPoint && s.Shape.Usable() {
		at := survey.Fixture{At: survey.Measured, FromDA: set.PointDA, FromAB: set.PointAB}
		if s.Point.Twice, s.Point.Known = at.TwiceMiddle(s.Shape); !s.Point.Known {
			o.Remark("/setting/pointDA", problem.Stop, words.Say("The point to centre on does not lie inside the room."),
				words.Say("Measure again from the two walls that meet at corner W."))
		}
	}
	return s
}

// isUpright tells whether the outline stands as the walls of a rectangular room do. So
// does one in a room of which only one side is known yet.
func (o *out) isUpright() bool {
	if !o.Room.Shape.Usable() {
		return o.Room.Form == survey.Rectangle
	}
	turn, ok := o.Setting.Site.TurnOf(o.Setting.Way.Square)
	return ok && turn.IsExact() && o.Room.Shape.IsRectangle()
}

// tapeSlip is how far a diagonal is taken to be misread by, for the error a
// triangle leaves: two marks of the tape.
const tapeSlip = 2

// prove finds the triangles that prove the corners of the outline square: as large
// as the room takes, or where the room is not square, the outline, since a triangle
// in a corner of such a room would only prove that it is not.
func (o *out) prove() {
	shape, box, t := &o.Room.Shape, &o.Setting.Choice.Box, &o.Setting.Triangle
	if !shape.Usable() {
		return
	}
	long, wide := shape.Length, shape.Width
	if t.OfRoom = shape.IsRectangle() && box.Turn.IsExact(); !t.OfRoom {
		if !o.Setting.Placed {
			return
		}
		long, wide = box.Length, box.Width
	}
	notation := o.Plan.Units.Notation()
	if t.Triangle, t.Known = survey.LargestTriangle(long, wide, notation.System); t.Known {
		t.Slip = tapeSlip * notation.Mark()
		t.Strays = t.Triangle.Strays(t.Slip, long)
	}
}

// checkTape says where the tape round the outline is wider than the border, and
// where a border widens more than it can hide.
func (o *out) checkTape() {
	set, choice, from := &o.Plan.Setting, &o.Setting.Choice, &o.Setting.TapeFrom
	least := choice.Borders.Least()
	if set.Taped && set.TapeWidth > least {
		o.Remark("/setting/tapeWidth", problem.Caution,
			words.Say("The tape is {tape} wide and the narrowest border {border}, so it would run up the wall.", words.Length("tape", set.TapeWidth), words.Length("border", least)),
			words.Say("Use a narrower tape there, or slit it along the corner."))
	}
	b := choice.Borders
	*from = setout.Borders{AB: max(b.AB-set.TapeWidth, 0), BC: max(b.BC-set.TapeWidth, 0), CD: max(b.CD-set.TapeWidth, 0), DA: max(b.DA-set.TapeWidth, 0)}
	if worst, ok := choice.Layout.Worst(); ok && worst.By() > setout.HiddenTaper {
		o.Remark("/setting/square", problem.Note,
			words.Say("Along wall {wall} the border widens by {by}, more than the {hidden} that a border hides.",
				words.Of("wall", worst.Wall), words.Amount("by", worst.By()), words.Length("hidden", setout.HiddenTaper)),
			words.Say("See whether it tapers less when the mask is square to something else, and show the client."))
	}
}

// cut finds the panels that the things on the ceiling come through and the seams that
// run into them. A seam inside a piece is none.
func (o *out) cut() {
	s := &o.Setting
	for t := range o.Room.Things {
		hole := o.Room.Things[t].Hole(s.Choice.Box)
		for i := range o.Layers {
			l := &o.Layers[i]
			for _, c := range hole.Cuts(l.Columns, l.Rows) {
				s.Under = append(s.Under, Under{l.Panels.ID, t, c})
			}
			for _, seam := range hole.Seams(l.Columns, l.Rows, o.Plan.Mask.Outline) {
				run := &l.Columns
				if seam.Runs == mask.Along {
					run = &l.Rows
				}
				if run.Held == nil || !run.Held[seam.After-1] {
					s.SeamsHit = append(s.SeamsHit, SeamHit{l.Panels.ID, t, seam})
				}
			}
		}
	}
}
