package hanging

import "ceilingwright/core/survey"

// Hand is which way a side lies as a drawing shows it.
type Hand string

// The four ways on the page.
const (
	Left   Hand = "left"
	Right  Hand = "right"
	Top    Hand = "top"
	Bottom Hand = "bottom"
)

// HandOf is where a side lies on the page: looking up, corner A is top left and
// B top right; looking down, as on the floor, left and right change and the
// names stay.
func HandOf(side survey.Wall, lookingDown bool) Hand {
	switch side {
	case survey.AB:
		return Top
	case survey.CD:
		return Bottom
	}
	if (side == survey.DA) != lookingDown {
		return Left
	}
	return Right
}
