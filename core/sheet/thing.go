package sheet

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// thing is the light or an obstruction, found in the room. A round one is
// Length across; one of no length counts as a point. Lies is how a rectangular
// one lies in the room.
type thing struct {
	At, Name, Kind string
	Light          bool
	Middle         survey.Point
	Round          bool
	Length, Width  measure.Length
	Lies           setout.Turn
}

// hole is the thing as the box sees it.
func (t *thing) hole(box setout.Box) setout.Hole {
	return setout.HoleOf(box, t.Round, t.Middle, t.Length, t.Width, t.Lies)
}
