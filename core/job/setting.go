package job

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Setting is where the mask goes. Site is the ceiling with what a mask can be centred
// on and square to, Choice the place taken; Placed tells whether there is a mask
// outline to set out.
type Setting struct {
	Site   setout.Site
	Choice setout.Choice
	Placed bool
}

// Facing is the wall that a side of the mask faces; where it is not placed, the side's
// own.
func (s *Setting) Facing(side survey.Wall) survey.Wall {
	if s.Placed {
		return s.Choice.Box.Facing(side)
	}
	return side
}

// Platform is where the platform stands, none where its size is not known.
type Platform struct {
	Layout  hanging.Layout
	Footing hanging.Platform
}
