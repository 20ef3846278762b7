package setout

import (
	"fmt"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// On says what the box is centred on.
type On string

// The middle of the room, or the light fixture.
const (
	OnRoom    On = "room"
	OnFixture On = "fixture"
	OnPoint   On = "point"
)

// Choice is one way to place the box, with what speaks against it.
type Choice struct {
	On       On
	Box      Box
	Borders  Borders
	Problems []problem.Problem // as CheckBorders gives them for this way
}

// Refused tells whether the mask cannot go there as asked.
func (c Choice) Refused() bool {
	for _, p := range c.Problems {
		if p.Severity == problem.Stop {
			return true
		}
	}
	return false
}

// Choices are the ways to place the box, side by side: on the room, and on the
// fixture where there is one in the room. There are none until room and mask
// both have length and width.
func Choices(room survey.Room, fixture survey.Fixture, o mask.Outline, least measure.Length, n measure.Notation) []Choice {
	if !room.HasPlan() || !o.IsComplete() {
		return nil
	}
	choices := []Choice{choiceOf(OnRoom, BoxOnRoom(room, o), room, least, n)}
	if box, ok := BoxOnFixture(room, fixture, o); ok {
		choices = append(choices, choiceOf(OnFixture, box, room, least, n))
	}
	return choices
}

func choiceOf(on On, box Box, room survey.Room, least measure.Length, n measure.Notation) Choice {
	return Choice{on, box, box.Borders(room), CheckBorders(on, box, room, least, n)}
}

// SetOut is the choice that was asked for. Where the fixture is asked for and
// there is none in the room it is the room's, with a problem at "/on" that
// says so. False where there are no choices at all.
func SetOut(on On, choices []Choice) (Choice, []problem.Problem, bool) {
	if len(choices) == 0 {
		return Choice{}, nil, false
	}
	for _, c := range choices {
		if c.On == on {
			return c, c.Problems, true
		}
	}
	c := choices[0]
	if on == OnFixture {
		return c, append([]problem.Problem{{At: "/on", Severity: problem.Stop,
			What: "The mask is to be centred on the fixture, but no place is known for one. The middle of the room is shown.",
			Do:   "Say where the fixture is, or centre on the room."}}, c.Problems...), true
	}
	return c, append([]problem.Problem{{At: "/on", Severity: problem.Stop,
		What: fmt.Sprintf("%q is nothing to centre on. The middle of the room is shown.", string(on)),
		Do:   "Choose the room or the fixture."}}, c.Problems...), true
}
