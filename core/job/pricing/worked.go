package pricing

import (
	"slices"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
)

// WorkedPart is a part of the room that is worked on. Step is the one that goes over it
// where it is another surface.
type WorkedPart struct {
	Of   Worked
	Step int
	Area measure.Area
}

// Worked is which part of the room is worked on.
type Worked int

// The parts of the room.
const (
	CeilingWorked Worked = iota
	MaskWorked
	BorderWorked
	SurfaceWorked
	TypedWorked
)

// workedOn are the parts of the room that the steps go over, each once: a price by area
// is one for these. A step over the whole ceiling covers its border and its mask too.
// Areas that were typed count where no other is worked on, the greatest of them once:
// they may lie in one another. Without any step it is the mask, or the ceiling where
// there is no mask.
func (w *pricing) workedOn() (parts []WorkedPart) {
	add := func(of Worked, step int, area measure.Area) {
		isThere := func(p WorkedPart) bool {
			return p.Of == of && (of != SurfaceWorked || w.Plan.Steps[p.Step].Surface == w.Plan.Steps[step].Surface)
		}
		if area.SquareMetres.Sign() > 0 && !slices.ContainsFunc(parts, isThere) {
			parts = append(parts, WorkedPart{of, step, area})
		}
	}
	var border, typed measure.Area
	isWhole, isOnMask := false, false
	for i := range w.Plan.Steps {
		if !w.putsOn(i) {
			continue
		}
		switch area, basis := w.Covers[i].Area, w.Plan.Steps[i].Basis; {
		case basis == finish.Surface:
			isWhole = true
		case basis == finish.Border:
			border = area
		case basis == finish.Typed && area.SquareMetres.Cmp(typed.SquareMetres) > 0:
			typed = area
		case basis != finish.Typed && basis.IsOnMask():
			isOnMask = true
		}
	}
	switch {
	case isWhole:
		add(CeilingWorked, -1, w.Room.Area)
	case isOnMask:
		add(MaskWorked, -1, w.Plan.Mask.Area())
		fallthrough
	default:
		add(BorderWorked, -1, border)
	}
	for i := range w.Plan.Steps {
		if w.putsOn(i) && w.Plan.Steps[i].Basis == finish.SurfaceOf {
			add(SurfaceWorked, i, w.Covers[i].Area)
		}
	}
	for _, p := range []WorkedPart{{TypedWorked, -1, typed}, {MaskWorked, -1, w.Plan.Mask.Area()}, {CeilingWorked, -1, w.Room.Area}} {
		if len(parts) == 0 {
			add(p.Of, p.Step, p.Area)
		}
	}
	return parts
}

// putsOn tells whether a step puts something on; covering up and peeling put nothing.
func (w *pricing) putsOn(step int) bool {
	kind := w.Plan.Steps[step].Kind
	return kind != finish.Protect && kind != finish.Peel
}
