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
