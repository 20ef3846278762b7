package job

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

// WorkedOn are the parts of the room that the steps go over, each once: a price by area
// is one for these. A step over the whole ceiling covers its border and its mask too.
// Areas that were typed count where no other is worked on, the greatest of them once:
// they may lie in one another. Without any step it is the mask, or the ceiling where
// there is no mask.
func (j *Job) WorkedOn() (parts []WorkedPart) {
	add := func(of Worked, step int, area measure.Area) {
		isThere := func(p WorkedPart) bool {
			return p.Of == of && (of != SurfaceWorked || j.Plan.Steps[p.Step].Surface == j.Plan.Steps[step].Surface)
		}
		if area.SquareMetres.Sign() > 0 && !slices.ContainsFunc(parts, isThere) {
			parts = append(parts, WorkedPart{of, step, area})
		}
	}
	var border, typed measure.Area
	isWhole, isOnMask := false, false
	for i := range j.Plan.Steps {
		if !j.putsOn(i) {
			continue
		}
		switch area, basis := j.Covers[i].Area, j.Plan.Steps[i].Basis; {
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
		add(CeilingWorked, -1, j.Room.Area)
	case isOnMask:
		add(MaskWorked, -1, j.Plan.Mask.Area())
		fallthrough
	default:
		add(BorderWorked, -1, border)
	}
	for i := range j.Plan.Steps {
		if j.putsOn(i) && j.Plan.Steps[i].Basis == finish.SurfaceOf {
			add(SurfaceWorked, i, j.Covers[i].Area)
		}
	}
	for _, p := range []WorkedPart{{TypedWorked, -1, typed}, {MaskWorked, -1, j.Plan.Mask.Area()}, {CeilingWorked, -1, j.Room.Area}} {
		if len(parts) == 0 {
			add(p.Of, p.Step, p.Area)
		}
	}
	return parts
}

// putsOn tells whether a step puts something on; covering up and peeling put nothing.
func (j *Job) putsOn(step int) bool {
	kind := j.Plan.Steps[step].Kind
	return kind != finish.Protect && kind != finish.Peel
}
