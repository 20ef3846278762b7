package survey

import (
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Wall names a wall by the corners at its ends, clockwise looking up.
type Wall string

// The walls of a room with four corners. In a rectangle AB and CD are as long
// as the room, BC and DA as wide.
const (
	AB Wall = "AB"
	BC Wall = "BC"
	CD Wall = "CD"
	DA Wall = "DA"
)

// Opposite is the wall over against one of a room with four corners.
func (w Wall) Opposite() Wall {
	switch w {
	case AB:
		return CD
	case BC:
		return DA
	case CD:
		return AB
	}
	return BC
}

// Corner names a corner of the room by its letter, clockwise looking up.
type Corner string

// The corners of a room with four.
const (
	A Corner = "A"
	B Corner = "B"
	C Corner = "C"
	D Corner = "D"
)

// letters are the names of the corners, in order.
const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"

// CornerNumbered is the name of corner i, counted from 0 for A; "" beyond Z.
func CornerNumbered(i int) Corner {
	if i < 0 || i >= len(letters) {
		return ""
	}
	return Corner(letters[i : i+1])
}

// Number is which corner c is, counted from 0 for A; −1 for what is no letter.
func (c Corner) Number() int {
	if len(c) != 1 || c[0] < 'A' || c[0] > 'Z' {
		return -1
	}
	return int(c[0] - 'A')
}

// lettersRead are what people read for the corners, in order. Panels have the
// letters from A for their rows, so the corners of a room with four are W, X, Y
// and Z, clockwise looking up; further corners go on backwards from V.
const lettersRead = "WXYZVUTSRQPONMLKJIHGFEDCBA"

// Text is what people read for the corner: W for A.
func (c Corner) Text() string { return inText(string(c)) }

// Text is what people read for the wall: WX for AB.
func (w Wall) Text() string { return inText(string(w)) }

// Text is what people read for the line: WY for the diagonal AC, WX-YZ for the
// line between the middles of AB and CD.
func (l Line) Text() string { return inText(string(l)) }

// In is the corner, the wall or the line where a sentence names it (words.Value).
func (c Corner) In(words.Style) string { return c.Text() }

// In is described with Corner.In.
func (w Wall) In(words.Style) string { return w.Text() }

// In is described with Corner.In.
func (l Line) In(words.Style) string { return l.Text() }

// Named is the line with what it is: "wall WX", "diagonal WY".
func (l Line) Named() words.Text {
	switch l {
	case LineAC, LineBD:
		return words.Say("diagonal {line}", words.Of("line", l))
	case LineABCD, LineDABC:
		return words.Say("the line from the middle of {one} to the middle of {other}", words.Of("one", l[:2]), words.Of("other", l[3:]))
	}
	return words.Say("wall {line}", words.Of("line", l))
}

// inText puts every corner of a name as people read it.
func inText(name string) string {
	return strings.Map(func(r rune) rune {
		if i := strings.IndexRune(letters, r); i >= 0 {
			return rune(lettersRead[i])
		}
		return r
	}, name)
}

// wallFrom is the name of the wall that runs from corner i of count.
func wallFrom(i, count int) Wall {
	return Wall(CornerNumbered(i) + CornerNumbered((i+1)%count))
}

// WallLine is one wall of a ceiling. Clockwise looking up, the room lies on
// the side that a quarter turn clockwise from the wall's direction points to:
// for AB that is towards CD.
type WallLine struct {
	Name       Wall
	From, To   Corner
	Start, End Point
}

// Length is how long the wall is, to the nearest nanometre; exact along an
// axis.
func (w WallLine) Length() measure.Length { return between(w.Start, w.End) }

// Middle is the middle of the wall, an odd nanometre rounded towards the
// origin.
func (w WallLine) Middle() Point {
	return Point{(w.Start.X + w.End.X) / 2, (w.Start.Y + w.End.Y) / 2}
}

// Distance is how far a point is from the nearest point of the wall, to the
// nearest nanometre.
func (w WallLine) Distance(p Point) measure.Length {
	from, along := spotOf(p).minus(spotOf(w.Start)), spotOf(w.End).minus(spotOf(w.Start))
	at := from.dot(along)
	switch {
	case at <= 0:
		return between(w.Start, p)
	case at >= along.dot(along):
		return between(w.End, p)
	}
	return w.Off(p).Abs()
}

// Off is how far a point is off the line of the wall, square to it and to the
// nearest nanometre: above 0 on the side of the room, below 0 behind the wall.
// Exact for a wall along an axis.
func (w WallLine) Off(p Point) measure.Length {
	switch {
	case w.Start.Y == w.End.Y && w.End.X > w.Start.X:
		return p.Y - w.Start.Y
	case w.Start.Y == w.End.Y && w.End.X < w.Start.X:
		return w.Start.Y - p.Y
	case w.Start.X == w.End.X && w.End.Y > w.Start.Y:
		return w.Start.X - p.X
	case w.Start.X == w.End.X && w.End.Y < w.Start.Y:
		return p.X - w.Start.X
	}
	return measure.LengthFromMillimetres(w.direction().cross(spotOf(p).minus(spotOf(w.Start))))
}

func (w WallLine) direction() spot { return spotOf(w.End).minus(spotOf(w.Start)).unit() }

// touches tells whether a point lies on the wall or at its ends: exact.
func (w WallLine) touches(p Point) bool {
	return side(w.Start, w.End, p) == 0 &&
		min(w.Start.X, w.End.X) <= p.X && p.X <= max(w.Start.X, w.End.X) &&
		min(w.Start.Y, w.End.Y) <= p.Y && p.Y <= max(w.Start.Y, w.End.Y)
}
