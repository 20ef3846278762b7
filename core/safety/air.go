package safety

import "ceilingwright/core/problem"

// Air is what the solvents of a job do to the air of the room, all of it
// screening figures. A field is not known where something it needs is missing.
// Complete is false where a step had to be left out, and every figure is then
// too low.
type Air struct {
	Mass     Fact // grams of solvent in all steps together
	Peak     Fact // mg/m³ with the room shut and all of Mass in its air
	Rate     Fact // grams an hour while a coat of the worst step dries
	Level    Fact // mg/m³ that Rate settles at with the windows open
	Average  Fact // mg/m³ over eight hours of the worst step, windows open
	Changes  Fact // air changes an hour that keep Level at the limit
	Shut     Fact // mg/m³ when a coat of the worst step has dried, windows shut
	Purge    Fact // hours with the windows open for Peak to fall to the limit
	Complete bool
}

// AirOf works out the air of a job.
func AirOf(job Job) (Air, []problem.Problem) {
	return Air{}, nil
}
