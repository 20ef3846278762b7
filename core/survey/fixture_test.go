package survey_test

import (
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

// rectangle is the shape of supper.
var rectangle = survey.ShapeFromSides(survey.Rectangle, supper.Length, supper.Width)

func TestFixture_Middle(t *testing.T) {
	for _, c := range []struct {
		name    string
		fixture survey.Fixture
		want    survey.Point
		ok      bool
	}{
		{"none", survey.Fixture{At: survey.NoFixture, FromDA: foot, FromAB: foot}, survey.Point{}, false},
		{"zero value", survey.Fixture{}, survey.Point{}, false},
		{"in the middle", survey.Fixture{At: survey.InMiddle, FromDA: foot}, survey.Point{X: supper.Length / 2, Y: supper.Width / 2}, true},
		{"measured", survey.Fixture{At: survey.Measured, FromDA: 105 * inch, FromAB: 80 * inch}, survey.Point{X: 105 * inch, Y: 80 * inch}, true},
		{"outside", survey.Fixture{At: survey.Measured, FromDA: 18 * foot, FromAB: 80 * inch}, survey.Point{}, false},
		{"on the far wall", survey.Fixture{At: survey.Measured, FromDA: 105 * inch, FromAB: supper.Width}, survey.Point{}, false},
		{"half measured", survey.Fixture{At: survey.Measured, FromDA: 105 * inch}, survey.Point{}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := c.fixture.Middle(rectangle)
			assert.Equal(t, c.want, got)
			assert.Equal(t, c.ok, ok)
		})
	}
	twice, ok := survey.Fixture{At: survey.InMiddle}.TwiceMiddle(survey.ShapeFromSides(survey.Rectangle, 4*measure.Metre+1, 3*measure.Metre))
	assert.True(t, ok)
	assert.Equal(t, survey.Point{X: 4*measure.Metre + 1, Y: 3 * measure.Metre}, twice, "doubled, an odd middle is exact")
	_, ok = survey.Fixture{At: survey.InMiddle}.Middle(survey.ShapeFromSides(survey.Rectangle, foot, 0))
	assert.False(t, ok, "no middle of half a room")
}

func TestFixture_Check(t *testing.T) {
	measured := func(fromDA, fromAB, across measure.Length) survey.Fixture {
		return survey.Fixture{At: survey.Measured, FromDA: fromDA, FromAB: fromAB, Across: across}
	}
	for _, c := range []struct {
		name    string
		fixture survey.Fixture
		want    []problem.Problem
	}{
		{"fits", measured(105*inch, 80*inch, 9*inch), nil},
		{"none needs nothing", survey.Fixture{At: survey.NoFixture, FromDA: 40 * foot}, nil},
		{"outside by 2 1/2 in", measured(216*inch, 80*inch, 0), []problem.Problem{{At: "/fromDA", Severity: problem.Stop,
			What: words.Say("The light is 18' 0\" from wall ZW, but wall XY is only 17' 9 1/2\" away, so it lies 2 1/2\" outside the room."),
			Do:   words.Say("Measure again from wall ZW to the centre of the light.")}}},
		{"not measured from WX", measured(105*inch, 0, 0), []problem.Problem{{At: "/fromAB", Severity: problem.Stop,
			What: words.Say("The distance from wall WX to the centre of the light is not given."),
			Do:   words.Say("Measure it, or say that the light is in the middle.")}}},
		{"reaches into wall YZ", measured(105*inch, 157*inch, 9*inch), []problem.Problem{{At: "/fromAB", Severity: problem.Caution,
			What: words.Say("The light is 9\" across and its centre 3\" from wall YZ, so it would reach into the wall."),
			Do:   words.Say("Check both numbers: the distance goes to the centre of the light.")}}},
		{"wider than the room", survey.Fixture{At: survey.InMiddle, Across: 14 * foot}, []problem.Problem{{At: "/across", Severity: problem.Caution,
			What: words.Say("The light reads 14' 0\" across, wider than the room."),
			Do:   words.Say("Check the number and its unit.")}}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, said(inches, c.fixture.CheckIn(rectangle))) })
	}
	assert.Empty(t, measured(40*foot, 40*foot, 0).CheckIn(survey.Shape{}), "a missing room is not the fixture's fault")
}
