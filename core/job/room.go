package job

import "ceilingwright/core/survey"

// Room is the room as worked out, Shape the ceiling of it; it may not be usable.
// Things are the light, where there is one, and the obstructions, as far as their
// places are known.
type Room struct {
	Found  survey.Found
	Shape  survey.Shape
	Things []Thing
}
