package setout

import (
	"math/big"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Box is the rectangle the mask lands in: X from wall DA and Y from wall AB to
// its nearest side, Length along AB and Width along BC. X or Y below zero is a
// box that runs past the wall.
type Box struct{ X, Y, Length, Width measure.Length }

// BoxOnRoom is the mask centred on the room. Where a border would not be a
// whole nanometre, the ones at DA and AB are the smaller by one; borders and
// mask always add up to the room exactly.
func BoxOnRoom(room survey.Room, o mask.Outline) Box {
	return boxOnTwice(survey.Point{X: room.Length, Y: room.Width}, o)
}

// BoxOnFixture is the mask centred on the fixture, rounded as in BoxOnRoom.
// False where there is no fixture in the room.
func BoxOnFixture(room survey.Room, fixture survey.Fixture, o mask.Outline) (Box, bool) {
	twice, ok := fixture.TwiceCentre(room)
	if !ok {
		return Box{}, false
	}
	return boxOnTwice(twice, o), true
}

// boxOnTwice centres on a point given doubled.
func boxOnTwice(twice survey.Point, o mask.Outline) Box {
	x, _ := EdgeBorders(twice.X, 0, o.Length)
	y, _ := EdgeBorders(twice.Y, 0, o.Width)
	return Box{x, y, o.Length, o.Width}
}

// EdgeBorders is what a mask leaves at the near and the far end of one side of
// the room, when its middle is at a distance given doubled from the near wall:
// enough to say two borders while the other side is not known. It rounds down,
// also below zero, so that the smaller part of an odd nanometre is always at
// DA and AB.
func EdgeBorders(twiceMiddle, side, mask measure.Length) (near, far measure.Length) {
	near = (twiceMiddle - mask) >> 1
	return near, side - near - mask
}

// Borders are the distances from the mask's edge to each wall. Below zero the
// mask runs past that wall.
type Borders struct{ AB, BC, CD, DA measure.Length }

// Borders is what the box leaves of the room at each wall. DA + length + BC is
// the room's length and AB + width + CD its width, exactly.
func (b Box) Borders(room survey.Room) Borders {
	return Borders{
		AB: b.Y, CD: room.Width - b.Y - b.Width,
		DA: b.X, BC: room.Length - b.X - b.Length,
	}
}

// At is the border at one wall.
func (b Borders) At(w survey.Wall) measure.Length {
	switch w {
	case survey.AB:
		return b.AB
	case survey.BC:
		return b.BC
	case survey.CD:
		return b.CD
	}
	return b.DA
}

// EndsDiffer is by how much the two ends, at DA and BC, differ: twice the
// distance of the box from the middle of the room.
func (b Borders) EndsDiffer() measure.Length { return (b.BC - b.DA).Abs() }

// SidesDiffer is by how much the two sides, at AB and CD, differ.
func (b Borders) SidesDiffer() measure.Length { return (b.CD - b.AB).Abs() }

// Diagonal is the box from corner to corner, exact to the nearest nanometre.
// Equal diagonals prove a box whose opposite sides are equal square.
func (b Box) Diagonal() measure.Length {
	length, width := big.NewInt(int64(b.Length)), big.NewInt(int64(b.Width))
	square := length.Mul(length, length)
	square.Add(square, width.Mul(width, width))
	// The whole root of four times the square is twice the diagonal, cut off;
	// no root of a whole number lies half way between two, so this rounds.
	root := square.Sqrt(square.Lsh(square, 2))
	return measure.Length((root.Int64() + 1) / 2)
}

// Corner is where a corner of the box lies; corners are named as the room's.
func (b Box) Corner(c survey.Corner) survey.Point {
	switch c {
	case survey.B:
		return survey.Point{X: b.X + b.Length, Y: b.Y}
	case survey.C:
		return survey.Point{X: b.X + b.Length, Y: b.Y + b.Width}
	case survey.D:
		return survey.Point{X: b.X, Y: b.Y + b.Width}
	}
	return survey.Point{X: b.X, Y: b.Y}
}

// Centre is the middle of the box. The half of an odd count of nanometres is
// rounded towards corner A.
func (b Box) Centre() survey.Point {
	return survey.Point{X: b.X + b.Length.Half(), Y: b.Y + b.Width.Half()}
}

// PanelBox is where a panel lies on the ceiling, its columns and rows laid
// into the box. The panel must be one of theirs.
func (b Box) PanelBox(columns, rows mask.Run, p mask.Panel) Box {
	return Box{
		X: b.X + columns.Starts[p.Column-1], Length: columns.Sizes[p.Column-1],
		Y: b.Y + rows.Starts[p.Row-1], Width: rows.Sizes[p.Row-1],
	}
}

// Mirror is the same place looking down, as on the floor: left and right
// change, so x counts from wall BC; wall AB stays on top. Twice is back again.
func Mirror(p survey.Point, room survey.Room) survey.Point {
	return survey.Point{X: room.Length - p.X, Y: p.Y}
}

// Mirror is the box looking down.
func (b Box) Mirror(room survey.Room) Box {
	b.X = room.Length - b.X - b.Length
	return b
}
