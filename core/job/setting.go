package job

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/setout"
)

// Setting is where the mask goes. Site is the ceiling with what a mask can be centred
// on and square to, Choice the place taken; Placed tells whether there is a mask
// outline to set out.
type Setting struct {
	Site   setout.Site
	Choice setout.Choice
	Placed bool
}

// Platform is where the platform stands, none where its size is not known.
type Platform struct {
	Layout  hanging.Layout
	Footing hanging.Platform
}
