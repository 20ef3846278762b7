package setout

import (
	"math/big"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Box is the rectangle the mask lands in: X and Y are the place of its own
// corner A in the room, Length and Width its sides, Turn how it lies. Panels,
// seams and pieces are placed in the frame of the box: origin at its own corner
// A, x along its length, y along its width. For a box that is not turned, X is
// the distance from wall DA and Y that from AB of a rectangular room, and below
// zero it runs past the wall.
type Box struct {
	X, Y          measure.Length
	Length, Width measure.Length
	Turn          Turn
}

// nearBorder is what a mask leaves at the near end of one side of the room, when its
// middle is at a distance given doubled from there. It rounds down, also below zero, so
// that the smaller part of an odd nanometre is always at DA and AB.
func nearBorder(twiceMiddle, mask measure.Length) measure.Length { return (twiceMiddle - mask) >> 1 }

// Borders are the distances from the mask's edge to the walls on its four
// sides, under the names of the walls of a rectangular room. Below zero the mask
// runs past a wall there. In a rectangle DA + length + BC is the room's length
// and AB + width + CD its width, exactly.
type Borders struct{ AB, BC, CD, DA measure.Length }

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

// In is a place of the room in the frame of the box, and Out the way back. Both
// are exact for a box turned by whole quarters, and rounded to the nearest
// nanometre for any other.
func (b Box) In(p survey.Point) survey.Point {
	return b.Turn.in(survey.Point{X: p.X - b.X, Y: p.Y - b.Y})
}

// Out is described with In.
func (b Box) Out(p survey.Point) survey.Point {
	p = b.Turn.out(p)
	return survey.Point{X: b.X + p.X, Y: b.Y + p.Y}
}

// Facing is the wall of a four-walled room that a side of the box faces.
func (b Box) Facing(side survey.Wall) survey.Wall { return b.Turn.Facing(side) }

// Corner is where one of the box's own corners lies in the room. A box that is
// not turned 90° has its corners by the room's corners of the same names.
func (b Box) Corner(own survey.Corner) survey.Point {
	var p survey.Point
	if own == survey.B || own == survey.C {
		p.X = b.Length
	}
	if own == survey.C || own == survey.D {
		p.Y = b.Width
	}
	return b.Out(p)
}

// Centre is the middle of the box in the room. The half of an odd count of
// nanometres is rounded towards its own corner A.
func (b Box) Centre() survey.Point {
	return b.Out(survey.Point{X: b.Length.Half(), Y: b.Width.Half()})
}

// PanelBox is where a panel lies on the ceiling, turned as the box is, its
// columns and rows laid into the box. The panel must be one of theirs.
func (b Box) PanelBox(columns, rows mask.Run, p mask.Panel) Box {
	panel := PanelIn(columns, rows, p)
	at := b.Out(survey.Point{X: panel.X, Y: panel.Y})
	panel.X, panel.Y, panel.Turn = at.X, at.Y, b.Turn
	return panel
}

// PanelIn is where a panel lies in the frame of the box.
func PanelIn(columns, rows mask.Run, p mask.Panel) Box {
	return Box{
		X: columns.Starts[p.Column-1], Length: columns.Sizes[p.Column-1],
		Y: rows.Starts[p.Row-1], Width: rows.Sizes[p.Row-1],
	}
}

// Mirror is the same place looking down, as on the floor: left and right
// change, and what lay farthest in x now lies nearest, so that the ceiling keeps
// its place on the sheet; wall AB stays on top. Twice is back again.
func Mirror(p survey.Point, shape survey.Shape) survey.Point {
	low, high := shape.Bounds()
	return survey.Point{X: low.X + high.X - p.X, Y: p.Y}
}
