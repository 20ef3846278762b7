package survey

import (
	"ceilingwright/core/measure"
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
