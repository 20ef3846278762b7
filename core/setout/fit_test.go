package setout_test

import (
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func stop(at, what, do string) problem.Problem {
	return problem.Problem{At: at, Severity: problem.Stop, What: words.Say(what), Do: words.Say(do)}
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
			stop("/length", `The mask is 15' 0" long and the room 15' 0": under 1/64" too much.`, `Trim at least 1/16" off the length, or order a smaller mask.`)}},
		{"no mask yet", mask.Outline{Length: 16 * foot}, 0, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, said(inches, siteOf(hall, survey.Fixture{}).CheckFit(c.mask, setout.Turn{}, c.least)))
		})
	}
}

func TestCheckBorders(t *testing.T) {
	hall := survey.Room{Length: 188 * inch, Width: 122 * inch}
	onRoom := func(length, width measure.Length) checked {
		return checked{siteOf(hall, survey.Fixture{}), setout.OnRoom, mask.Outline{Length: length, Width: width}}
	}
	onFixture := func(fromDA, fromAB, length, width measure.Length) checked {
		lamp := survey.Fixture{At: survey.Measured, FromDA: fromDA, FromAB: fromAB}
		return checked{siteOf(hall, lamp), setout.OnFixture, mask.Outline{Length: length, Width: width}}
	}
	for _, c := range []struct {
		name  string
		way   checked
		least measure.Length
		want  []problem.Problem
	}{
		{"enough", onRoom(180*inch, 115*inch), 3*inch + inch/2, nil},
		{"sides 1/2 in short, both alike", onRoom(180*inch, 115*inch), 4 * inch, []problem.Problem{
			stop("/leastBorder", `The borders at walls WX and YZ are 3 1/2" each, 1/2" less than the least of 4".`,
				`Take 1" off the width of the mask, half at each edge, or accept a smaller least border.`)}},
		{"on the fixture one end is short", onFixture(92*inch, 61*inch, 180*inch, 110*inch), 3 * inch, []problem.Problem{
			stop("/leastBorder", `The border at wall ZW is 2", 1" less than the least of 3".`,
				`Take 2" off the length of the mask, half at each edge, or centre on the room, or accept a smaller least border.`)}},
		{"on the fixture both ends are short", onFixture(95*inch, 61*inch, 180*inch, 110*inch), 6 * inch, []problem.Problem{
			stop("/leastBorder", `The border at wall XY is 3", 3" less than the least of 6"; at wall ZW it is 5", 1" less.`,
				`Take 6" off the length of the mask, half at each edge, or centre on the room, or accept a smaller least border.`)}},
		{"past a wall", onFixture(80*inch, 61*inch, 180*inch, 110*inch), 2 * inch, []problem.Problem{
			stop("/on", `Centred there, the mask runs 10" past wall ZW.`,
				`Take 2' 0" off the length of the mask, half at each edge, or centre on the room.`)}},
		{"no mask fits round it", onFixture(4*inch, 61*inch, 180*inch, 110*inch), 4 * inch, []problem.Problem{
			stop("/on", `Centred there, the mask runs 7' 2" past wall ZW.`, `Centre on the room.`)}},
		{"too long is left to CheckFit", onRoom(190*inch, 110*inch), 2 * inch, nil},
		{"a border nobody can have", onRoom(180*inch, 60*inch), 200 * inch, []problem.Problem{
			stop("/leastBorder", `The borders at walls ZW and XY are 4" each, 16' 4" less than the least of 16' 8".`, `Accept a smaller least border.`),
			stop("/leastBorder", `The borders at walls WX and YZ are 2' 7" each, 14' 1" less than the least of 16' 8".`, `Accept a smaller least border.`)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.want, c.way.problems(t, c.least))
		})
	}
}

// Whoever trims as told is not refused again, whatever the tape rounds.
func TestCheckBorders_TrimmingAsToldPasses(t *testing.T) {
	hall := survey.Room{Length: 188*inch + 700_000, Width: 122 * inch}
	lamp := survey.Fixture{At: survey.Measured, FromDA: 92 * inch, FromAB: 61 * inch}
	o := mask.Outline{Length: 180*inch + 12_345, Width: 100 * inch}
	site := siteOf(hall, lamp)
	found := checked{site, setout.OnFixture, o}.problems(t, 3*inch)
	require.Len(t, found, 1)
	told := 2*inch + inch/8 // 2 × 1 1/16 in; the border is 6172.5 nm short of 2 in
	assert.Contains(t, found[0].Do.String(), `Take 2 1/8" off the length`)
	for trim, passes := range map[measure.Length]bool{told: true, 2 * inch: false} {
		trimmed := mask.Outline{Length: o.Length - trim, Width: o.Width}
		assert.Equal(t, passes, len(checked{site, setout.OnFixture, trimmed}.problems(t, 3*inch)) == 0)
	}
}

// In a round room too: what is told keeps the border, and a tape mark less at each
// edge does not.
func TestCheckBorders_TrimmingAsToldPassesInARoundRoom(t *testing.T) {
	inMillimetres := measure.Notation{System: measure.Metric, MetricMark: measure.Millimetre}
	site := setout.Site{Shape: survey.ShapeFromSides(survey.Round, 4*measure.Metre, 4*measure.Metre)}
	square := mask.Outline{Length: 2400 * mm, Width: 2400 * mm}
	way := setout.Way{On: setout.OnRoom, Square: setout.SquareToRoom}
	check := func(o mask.Outline) []problem.Problem {
		box, ok := site.Place(way, o, 390*mm)
		require.True(t, ok)
		return said(inMillimetres, site.CheckBorders(way, box, site.Borders(box), 390*mm, mm))
	}
	found := check(square)
	// √(1610² − 1200²) = 1073.4: 126.6 mm have to come off each edge, 127 do.
	assert.Equal(t, []problem.Problem{stop("/leastBorder",
		"At its corners the mask comes as near as 303 mm to the wall, 87 mm less than the least of 390 mm.",
		"Take 254 mm off the length of the mask, half at each edge, or take 254 mm off the width of the mask, half at each edge, or order a mask of at most 2.276 m × 2.276 m, the largest that keeps it, or accept a smaller least border.")}, found)
	assert.Empty(t, check(mask.Outline{Length: 2146 * mm, Width: 2400 * mm}))
	assert.NotEmpty(t, check(mask.Outline{Length: 2148 * mm, Width: 2400 * mm}))
	assert.Empty(t, check(mask.Outline{Length: 2276 * mm, Width: 2276 * mm}))
	assert.NotEmpty(t, check(mask.Outline{Length: 2278 * mm, Width: 2278 * mm}))
	found = check(mask.Outline{Length: 3 * measure.Metre, Width: 3 * measure.Metre})
	require.Len(t, found, 1)
	assert.Equal(t, "/on", found[0].At)
	assert.Equal(t, "Centred there, the corners of the mask run up to 121 mm past the wall.", found[0].What.String(), "1500 × √2 − 2000")
}

func TestOrderSide(t *testing.T) {
	// The trade's own figures turned round: 188 in with 4 in, 122 with 3 1/2
	// (common practice, no source).
	for _, c := range []struct{ side, border, want measure.Length }{
		{188 * inch, 4 * inch, 180 * inch}, {122 * inch, 7 * inch / 2, 115 * inch}, {4 * measure.Metre, 0, 4 * measure.Metre},
	} {
		ordered, found := setout.OrderSide("/wantEnds", c.side, c.border)
		assert.Empty(t, found)
		got := ordered.Value()
		assert.Equal(t, c.want, got)
		square := siteOf(survey.Room{Length: c.side, Width: c.side}, survey.Fixture{})
		box := placed(t, square, setout.OnRoom, mask.Outline{Length: got, Width: got})
		assert.Equal(t, c.border, box.X, "the mask ordered leaves the border wanted")
	}
	got, found := setout.OrderSide("/wantSides", 60*inch, 29*inch)
	assert.True(t, got.IsNone())
	assert.Equal(t, []problem.Problem{stop("/wantSides", `Borders of 2' 5" at both ends leave no mask in a room side of 5' 0".`, `Want a border of at most 2' 4".`)}, said(inches, found))
	_, found = setout.OrderSide("/wantEnds", 3*inch, 0)
	assert.Equal(t, []problem.Problem{stop("/wantEnds", `Borders of 0" at both ends leave no mask in a room side of 3".`, "Check the size of the room.")}, said(inches, found))
}

// checked is a mask laid one way, square to the room.
type checked struct {
	site setout.Site
	on   setout.On
	mask mask.Outline
}

func (c checked) problems(t *testing.T, least measure.Length) []problem.Problem {
	t.Helper()
	way := setout.Way{On: c.on, Square: setout.SquareToRoom}
	box, ok := c.site.Place(way, c.mask, least)
	require.True(t, ok)
	return said(inches, c.site.CheckBorders(way, box, c.site.Borders(box), least, sixteenth))
}
