package room

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Thing is the light or an obstruction, Placed where it could be found in the room.
// A round one is Length across; one of no length counts as a point. Lies is how a
// rectangular one lies in the room, along wall AB unless it has an axis of its own.
type Thing struct {
	At, Name, Kind string
	Light          bool
	Placed         bool
	InMiddle       bool
	OwnAxis        bool
	Middle         survey.Point
	Round          bool
	Length, Width  measure.Length
	Lies           setout.Turn
}

// Hole is the thing as the box sees it.
func (t *Thing) Hole(box setout.Box) setout.Hole {
	return setout.HoleOf(box, t.Round, t.Middle, t.Length, t.Width, t.Lies)
}

// Box is a rectangular thing as it lies in the room.
func (t *Thing) Box() setout.Box {
	box := setout.Box{Length: t.Length, Width: t.Width, Turn: t.Lies}
	half := box.Out(survey.Point{X: t.Length.Half(), Y: t.Width.Half()})
	box.X, box.Y = t.Middle.X-half.X, t.Middle.Y-half.Y
	return box
}
