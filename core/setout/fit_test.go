package setout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func stop(at, what, do string) problem.Problem {
	return problem.Problem{At: at, Severity: problem.Stop, What: what, Do: do}
}

func TestCheckFit(t *testing.T) {
	hall := survey.Room{Length: 15 * foot, Width: 12 * foot}
	for _, c := range []struct {
		name  string
		mask  mask.Outline
		least measure.Length
		want  []problem.Problem
	}{
		{"fits", mask.Outline{Length: 14 * foot, Width: 11 * foot}, 2 * inch, nil},
		{"fits to the nanometre", mask.Outline{Length: 15 * foot, Width: 12 * foot}, 0, nil},
		{"4 in too long", mask.Outline{Length: 15*foot + 4*inch, Width: 11 * foot}, 2 * inch, []problem.Problem{
			stop("/length", `The mask is 15' 4" long and the room 15' 0": 4" too much.`,
				`Order a mask at most 14' 8" long, which leaves the least border of 2", or trim 8".`)}},
		{"both ways, no least border", mask.Outline{Length: 15*foot + inch/2, Width: 13 * foot}, 0, []problem.Problem{
			stop("/length", `The mask is 15' 0 1/2" long and the room 15' 0": 1/2" too much.`, `Trim at least 1/2" off the length, or order a smaller mask.`),
			stop("/width", `The mask is 13' 0" wide and the room 12' 0": 1' 0" too much.`, `Trim at least 1' 0" off the width, or order a smaller mask.`)}},
		{"a least border no mask can leave", mask.Outline{Length: 16 * foot, Width: 11 * foot}, 8 * foot, []problem.Problem{
			stop("/length", `The mask is 16' 0" long and the room 15' 0": 1' 0" too much.`, `Trim at least 1' 0" off the length, or order a smaller mask.`)}},
		{"by less than a tape shows", mask.Outline{Length: 15*foot + 100, Width: 11 * foot}, 0, []problem.Problem{
			stop("/length", `The mask is 15' 0" long and the room 15' 0": 0.0001 mm too much.`, `Trim at least 1/16" off the length, or order a smaller mask.`)}},
		{"no mask yet", mask.Outline{Length: 16 * foot}, 0, nil},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, setout.CheckFit(hall, c.mask, c.least, inches)) })
	}
}

func TestCheckBorders(t *testing.T) {
	hall := survey.Room{Length: 188 * inch, Width: 122 * inch}
	onRoom := func(length, width measure.Length) setout.Box {
		return setout.BoxOnRoom(hall, mask.Outline{Length: length, Width: width})
	}
	onFixture := func(fromDA, fromAB, length, width measure.Length) setout.Box {
		box, ok := setout.BoxOnFixture(hall, survey.Fixture{At: survey.Measured, FromDA: fromDA, FromAB: fromAB}, mask.Outline{Length: length, Width: width})
		require.True(t, ok)
		return box
	}
	for _, c := range []struct {
		name  string
		on    setout.On
		box   setout.Box
		least measure.Length
		want  []problem.Problem
	}{
		{"enough", setout.OnRoom, onRoom(180*inch, 115*inch), 3*inch + inch/2, nil},
		{"sides 1/2 in short, both alike", setout.OnRoom, onRoom(180*inch, 115*inch), 4 * inch, []problem.Problem{
			stop("/leastBorder", `The borders at walls AB and CD are 3 1/2" each, 1/2" less than the least of 4".`,
				`Take 1" off the width of the mask, half at each edge, or accept a smaller least border.`)}},
		{"on the fixture one end is short", setout.OnFixture, onFixture(92*inch, 61*inch, 180*inch, 110*inch), 3 * inch, []problem.Problem{
			stop("/leastBorder", `The border at wall DA is 2", 1" less than the least of 3".`,
				`Take 2" off the length of the mask, half at each edge, or centre on the room, or accept a smaller least border.`)}},
		{"on the fixture both ends are short", setout.OnFixture, onFixture(95*inch, 61*inch, 180*inch, 110*inch), 6 * inch, []problem.Problem{
			stop("/leastBorder", `The border at wall BC is 3", 3" less than the least of 6"; at wall DA it is 5", 1" less.`,
				`Take 6" off the length of the mask, half at each edge, or centre on the room, or accept a smaller least border.`)}},
		{"past a wall", setout.OnFixture, onFixture(80*inch, 61*inch, 180*inch, 110*inch), 2 * inch, []problem.Problem{
			stop("/on", `Centred there, the mask runs 10" past wall DA.`,
				`Take 2' 0" off the length of the mask, half at each edge, or centre on the room.`)}},
		{"no mask fits round it", setout.OnFixture, onFixture(4*inch, 61*inch, 180*inch, 110*inch), 4 * inch, []problem.Problem{
			stop("/on", `Centred there, the mask runs 7' 2" past wall DA.`, `Centre on the room.`)}},
		{"too long is left to CheckFit", setout.OnRoom, onRoom(190*inch, 110*inch), 2 * inch, nil},
		{"a border nobody can have", setout.OnRoom, onRoom(180*inch, 60*inch), 200 * inch, []problem.Problem{
			stop("/leastBorder", `The borders at walls DA and BC are 4" each, 16' 4" less than the least of 16' 8".`, `Accept a smaller least border.`),
			stop("/leastBorder", `The borders at walls AB and CD are 2' 7" each, 14' 1" less than the least of 16' 8".`, `Accept a smaller least border.`)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, setout.CheckBorders(c.on, c.box, hall, c.least, inches))
		})
	}
}

// Whoever trims as told is not refused again, whatever the tape rounds.
func TestCheckBorders_TrimmingAsToldPasses(t *testing.T) {
	hall := survey.Room{Length: 188*inch + 700_000, Width: 122 * inch}
	lamp := survey.Fixture{At: survey.Measured, FromDA: 92 * inch, FromAB: 61 * inch}
	o := mask.Outline{Length: 180*inch + 12_345, Width: 100 * inch}
	box, _ := setout.BoxOnFixture(hall, lamp, o)
	found := setout.CheckBorders(setout.OnFixture, box, hall, 3*inch, inches)
	require.Len(t, found, 1)
	told := 2*inch + inch/8 // 2 × 1 1/16 in; the border is 6172.5 nm short of 2 in
	assert.Contains(t, found[0].Do, `Take 2 1/8" off the length`)
	for trim, passes := range map[measure.Length]bool{told: true, 2 * inch: false} {
		box, _ := setout.BoxOnFixture(hall, lamp, mask.Outline{Length: o.Length - trim, Width: o.Width})
		assert.Equal(t, passes, len(setout.CheckBorders(setout.OnFixture, box, hall, 3*inch, inches)) == 0)
	}
}

func TestOrderSide(t *testing.T) {
	// The trade's own figures turned round: 188 in with 4 in, 122 with 3 1/2
	// (common practice, no source).
	for _, c := range []struct{ side, border, want measure.Length }{
		{188 * inch, 4 * inch, 180 * inch}, {122 * inch, 7 * inch / 2, 115 * inch}, {4 * measure.Metre, 0, 4 * measure.Metre},
	} {
		got, found := setout.OrderSide("/wantEnds", c.side, c.border, inches)
		assert.Empty(t, found)
		assert.Equal(t, c.want, got)
		box := setout.BoxOnRoom(survey.Room{Length: c.side, Width: c.side}, mask.Outline{Length: got, Width: got})
		assert.Equal(t, c.border, box.X, "the mask ordered leaves the border wanted")
	}
	got, found := setout.OrderSide("/wantSides", 60*inch, 29*inch, inches)
	assert.Zero(t, got)
	assert.Equal(t, []problem.Problem{stop("/wantSides", `Borders of 2' 5" at both ends leave no mask in a room side of 5' 0".`, `Want a border of at most 2' 4".`)}, found)
	_, found = setout.OrderSide("/wantEnds", 3*inch, 0, inches)
	assert.Equal(t, []problem.Problem{stop("/wantEnds", `Borders of 0" at both ends leave no mask in a room side of 3".`, "Check the size of the room.")}, found)
}

func TestChoices(t *testing.T) {
	choices := setout.Choices(room, light, supper, 2*inch, inches)
	require.Len(t, choices, 2)
	assert.Equal(t, setout.OnRoom, choices[0].On)
	assert.Equal(t, borders(12*inch+inch/4, 12*inch+inch/4, 12*inch+inch/4, 12*inch+inch/4), choices[0].Borders)
	assert.Zero(t, choices[0].Borders.EndsDiffer())
	// The light is 1 3/4 in nearer DA than the middle, 106 3/4 in.
	assert.Equal(t, borders(12*inch+inch/4, 14*inch, 12*inch+inch/4, 10*inch+inch/2), choices[1].Borders)
	assert.Equal(t, 3*inch+inch/2, choices[1].Borders.EndsDiffer())
	assert.False(t, choices[0].Refused() || choices[1].Refused())

	strict := setout.Choices(room, light, supper, 12*inch, inches)
	assert.False(t, strict[0].Refused())
	assert.True(t, strict[1].Refused())

	assert.Len(t, setout.Choices(room, survey.Fixture{}, supper, 0, inches), 1, "no fixture, one choice")
	assert.Empty(t, setout.Choices(survey.Room{Length: foot}, light, supper, 0, inches))
	assert.Empty(t, setout.Choices(room, light, mask.Outline{}, 0, inches))
}

func TestSetOut(t *testing.T) {
	choices := setout.Choices(room, light, supper, 12*inch, inches)
	c, found, ok := setout.SetOut(setout.OnRoom, choices)
	assert.True(t, ok)
	assert.Empty(t, found)
	assert.Equal(t, choices[0], c)

	c, found, ok = setout.SetOut(setout.OnFixture, choices)
	assert.True(t, ok)
	assert.Equal(t, choices[1], c)
	assert.Equal(t, choices[1].Problems, found)

	c, found, ok = setout.SetOut(setout.OnFixture, choices[:1])
	assert.True(t, ok)
	assert.Equal(t, setout.OnRoom, c.On, "shown on the room, and said so")
	require.Len(t, found, 1)
	assert.Equal(t, "/on", found[0].At)

	_, found, ok = setout.SetOut("moon", choices)
	assert.True(t, ok)
	assert.Equal(t, `"moon" is nothing to centre on. The middle of the room is shown.`, found[0].What)

	_, _, ok = setout.SetOut(setout.OnRoom, nil)
	assert.False(t, ok)
}
