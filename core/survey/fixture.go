package survey

import (
	"fmt"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Place says how the fixture's place is known.
type Place string

// No fixture, a fixture in the middle of the room, one that was measured square
// off two walls, or one measured from two corners.
const (
	NoFixture   Place = "none"
	InMiddle    Place = "middle"
	Measured    Place = "measured"
	FromCorners Place = "corners"
)

// Fixture is the light the work is centred on, or anything else in the ceiling
// with a middle and a size. A length of zero counts as not given.
//
// FromDA and FromAB go square off the two walls that meet at corner A to its
// middle and count when it was Measured; in a room without a wall DA the last
// wall stands for it. FromOne and FromTwo go from CornerOne and CornerTwo to its
// middle and count FromCorners; Side is a corner on whose side of the line
// between those two it lies, "" where not said.
//
// Across is its width: the diameter of a round one, or of a Rectangular one the
// size along AB, with Deep the size square to that. A second point on its axis
// is AxisDA and AxisAB off the same two walls; with one, a rectangular fixture
// lies along its axis, and without along wall AB.
type Fixture struct {
	At                   Place
	FromDA, FromAB       measure.Length
	Rectangular          bool
	Across, Deep         measure.Length
	CornerOne, CornerTwo Corner
	FromOne, FromTwo     measure.Length
	Side                 Corner
	AxisDA, AxisAB       measure.Length
}

// Kind says what an obstruction is.
type Kind string

// The kinds of obstruction.
const (
	Vent      Kind = "vent"
	Hatch     Kind = "hatch"
	Detector  Kind = "detector"
	Sprinkler Kind = "sprinkler"
	Beam      Kind = "beam"
	OtherKind Kind = "other"
)

// Obstruction is anything in the ceiling but the fixture: where it is and how
// large is said in the same way.
type Obstruction struct {
	Fixture
	Name string
	Kind Kind
}

// Check says what keeps the fixture from being used, at "/fromDA", "/fromAB"
// and "/across". Without a usable room it only looks at what is missing.
func (f Fixture) Check(room Room, n measure.Notation) []problem.Problem {
	var found []problem.Problem
	if f.At == Measured {
		found = append(found, f.checkAxis("/fromDA", DA, BC, f.FromDA, room.Length, n)...)
		found = append(found, f.checkAxis("/fromAB", AB, CD, f.FromAB, room.Width, n)...)
	}
	if f.At != NoFixture && f.At != "" && room.HasPlan() && f.Across > min(room.Length, room.Width) {
		found = append(found, problem.Problem{At: "/across", Severity: problem.Caution,
			What: fmt.Sprintf("The fixture reads %s across, wider than the room.", n.Length(f.Across)),
			Do:   "Check the number and its unit."})
	}
	return found
}

func (f Fixture) checkAxis(at string, from, to Wall, place, side measure.Length, n measure.Notation) []problem.Problem {
	switch {
	case place <= 0:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("The distance from wall %s to the centre of the fixture is not given.", from),
			Do:   "Measure it, or say that the fixture is in the middle."}}
	case side <= 0:
		return nil
	case place >= side:
		return []problem.Problem{{At: at, Severity: problem.Stop,
			What: fmt.Sprintf("The fixture is %s from wall %s, but wall %s is only %s away, so it lies %s outside the room.",
				n.Length(place), from, to, n.Length(side), n.Length(place-side)),
			Do: fmt.Sprintf("Measure again from wall %s to the centre of the fixture.", from)}}
	case place < f.Across.Half() || side-place < f.Across.Half():
		near := from
		if side-place < place {
			near = to
		}
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: fmt.Sprintf("The fixture is %s across and its centre %s from wall %s, so it would reach into the wall.",
				n.Length(f.Across), n.Length(min(place, side-place)), near),
			Do: "Check both numbers: the distance goes to the centre of the fixture."}}
	}
	return nil
}

// Centre is where the centre of the fixture is, or false where there is none
// in the room. The middle of an odd count of nanometres is rounded towards
// corner A.
func (f Fixture) Centre(room Room) (Point, bool) {
	twice, ok := f.TwiceCentre(room)
	return Point{twice.X / 2, twice.Y / 2}, ok
}

// TwiceCentre is the centre of the fixture with both distances doubled, which
// is exact even where the middle of the room is not a whole nanometre.
func (f Fixture) TwiceCentre(room Room) (Point, bool) {
	if !room.HasPlan() {
		return Point{}, false
	}
	switch f.At {
	case InMiddle:
		return Point{room.Length, room.Width}, true
	case Measured:
		inside := f.FromDA > 0 && f.FromDA < room.Length && f.FromAB > 0 && f.FromAB < room.Width
		if inside {
			return Point{2 * f.FromDA, 2 * f.FromAB}, true
		}
	}
	return Point{}, false
}
