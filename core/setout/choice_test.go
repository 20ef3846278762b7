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

func onRoom(square setout.Square) setout.Way { return setout.Way{On: setout.OnRoom, Square: square} }
func onFixture(square setout.Square) setout.Way {
	return setout.Way{On: setout.OnFixture, Square: square}
}

func TestChoices_InARectangle(t *testing.T) {
	site := siteOf(room, light)
	choices, taken := site.Choices(onRoom("room"), supper, 2*inch, sixteenth)
	require.Len(t, choices, 2, "square to any wall is the same")
	assert.Equal(t, 0, taken)
	assert.Equal(t, setout.OnRoom, choices[0].On)
	assert.Equal(t, borders(12*inch+inch/4, 12*inch+inch/4, 12*inch+inch/4, 12*inch+inch/4), choices[0].Borders)
	assert.Zero(t, choices[0].Borders.EndsDiffer())
	// The light is 1 3/4 in nearer DA than the middle, 106 3/4 in.
	assert.Equal(t, borders(12*inch+inch/4, 14*inch, 12*inch+inch/4, 10*inch+inch/2), choices[1].Borders)
	assert.Equal(t, 3*inch+inch/2, choices[1].Borders.EndsDiffer())
	assert.False(t, choices[0].Refused() || choices[1].Refused())

	strict, _ := site.Choices(onRoom("room"), supper, 12*inch, sixteenth)
	assert.False(t, strict[0].Refused())
	assert.True(t, strict[1].Refused())

	_, taken = site.Choices(onFixture("CD"), supper, 0, sixteenth)
	assert.Equal(t, 1, taken, "square to wall YZ is square to the room")
	alone, _ := siteOf(room, survey.Fixture{}).Choices(onRoom("room"), supper, 0, sixteenth)
	assert.Len(t, alone, 1, "no fixture, one choice")
	none, taken := siteOf(survey.Room{Length: foot}, light).Choices(onRoom("room"), supper, 0, sixteenth)
	assert.Empty(t, none)
	assert.Equal(t, -1, taken)
	none, _ = site.Choices(onRoom("room"), mask.Outline{}, 0, sixteenth)
	assert.Empty(t, none)
}

func TestChoices_TurnedWhereOnlyThatFits(t *testing.T) {
	site := siteOf(survey.Room{Length: 17 * foot, Width: 13 * foot}, survey.Fixture{})
	choices, taken := site.Choices(onRoom("room"), mask.Outline{Length: 12 * foot, Width: 16 * foot}, 2*inch, sixteenth)
	require.Len(t, choices, 2)
	assert.Equal(t, 0, taken, "but what was asked for stays")
	assert.True(t, choices[1].Turned)
	assert.Equal(t, borders(6*inch, 6*inch, 6*inch, 6*inch), choices[1].Borders)
	r, ok := setout.Recommend(choices, setout.OnRoom)
	assert.True(t, ok)
	assert.Equal(t, setout.Recommendation{Choice: 1, Only: true}, r)
}

func TestSettle(t *testing.T) {
	site := siteOf(room, light)
	way, found := site.Settle(onFixture("DA"))
	assert.Equal(t, onFixture("DA"), way)
	assert.Empty(t, found)

	dark := siteOf(room, survey.Fixture{})
	for _, c := range []struct {
		wish     setout.Way
		want     setout.Way
		at, what string
	}{
		{onFixture("room"), onRoom("room"), "/on", "The mask is to be centred on the light, but no place is known for one. The middle of the room is shown."},
		{setout.Way{On: "moon", Square: "room", Turned: true}, setout.Way{On: "room", Square: "room", Turned: true}, "/on", `"moon" is nothing to centre on. The middle of the room is shown.`},
		{setout.Way{On: "point", Square: "AB"}, onRoom("AB"), "/on", "The mask is to be centred on a point, but its place is not known. The middle of the room is shown."},
		{onRoom("EF"), onRoom("room"), "/square", `There is no wall "EF" to be square to. The mask is shown square to the room.`},
		{onRoom("fixture"), onRoom("room"), "/square", "The mask is to be square to the light, but its axis is not known. It is shown square to the room."},
	} {
		way, found := dark.Settle(c.wish)
		assert.Equal(t, c.want, way)
		require.Len(t, found, 1)
		assert.Equal(t, c.at, found[0].At)
		assert.Equal(t, problem.Stop, found[0].Severity)
		assert.Equal(t, c.what, found[0].What.String())
	}
}

// A skew room has a choice for every wall on the room and on the fixture, and on
// a point no more than was asked for. What is recommended does not change with
// what is taken among them.
func TestChoices_InASkewRoom(t *testing.T) {
	site := setout.Site{Shape: skew, Fixture: setout.SpotAt(survey.Point{X: 2050 * mm, Y: 1500 * mm}), Point: setout.SpotAt(survey.Point{X: 2000 * mm, Y: 1500 * mm}),
		AxisX: 100, AxisY: 3}
	o := mask.Outline{Length: 3600 * mm, Width: 2600 * mm}
	choices, taken := site.Choices(onFixture("BC"), o, 0, sixteenth)
	require.GreaterOrEqual(t, taken, 0)
	assert.Len(t, choices, 13)
	assert.Equal(t, setout.Square("BC"), choices[taken].Square)
	count := map[setout.On]int{}
	for _, c := range choices {
		count[c.On]++
	}
	assert.Equal(t, map[setout.On]int{"room": 6, "fixture": 6, "point": 1}, count)
	for on := range count {
		_, taken := site.Choices(setout.Way{On: on, Square: "fixture"}, o, 0, sixteenth)
		assert.GreaterOrEqual(t, taken, 0, "what is asked for is among them")
	}
	best, ok := setout.Recommend(choices, setout.OnFixture)
	require.True(t, ok)
	for _, way := range []setout.Way{onRoom("room"), onRoom("DA"), onFixture("room"), onFixture("AB"), onFixture("DA")} {
		list, _ := site.Choices(way, o, 0, sixteenth)
		again, ok := setout.Recommend(list, way.On)
		require.True(t, ok)
		assert.InDelta(t, worst(choices[best.Choice]), worst(list[again.Choice]), float64(setout.Visible/2), "%+v", way)
		assert.Equal(t, choices[best.Choice].On, list[again.Choice].On, "%+v", way)
	}
}

func TestRecommend(t *testing.T) {
	o := mask.Outline{Length: 3600 * mm, Width: 2600 * mm}
	centre := survey.Point{X: 2060 * mm, Y: 1527 * mm}
	for _, c := range []struct {
		name    string
		site    setout.Site
		least   measure.Length
		asked   setout.On
		want    setout.Way
		refused bool
	}{
		{"the centre line halves the taper", setout.Site{Shape: skew}, 0, "room", onRoom("room"), false},
		{"a light 5 mm off is hidden", setout.Site{Shape: skew, Fixture: setout.SpotAt(survey.Point{X: centre.X + 5*mm, Y: centre.Y})}, 0, "room", onFixture("room"), false},
		{"one 40 mm off is not", setout.Site{Shape: skew, Fixture: setout.SpotAt(survey.Point{X: centre.X + 40*mm, Y: centre.Y})}, 0, "fixture", onRoom("room"), false},
		{"a hidden one that breaks the border", setout.Site{Shape: skew, Fixture: setout.SpotAt(survey.Point{X: centre.X, Y: centre.Y + 5*mm})}, 223 * mm, "room", onRoom("room"), false},
		{"a point asked for", setout.Site{Shape: skew, Point: setout.SpotAt(survey.Point{X: 2000 * mm, Y: 1500 * mm})}, 0, "point", setout.Way{On: "point", Square: "room"}, false},
		{"nothing keeps the border", setout.Site{Shape: skew}, 300 * mm, "room", setout.Way{}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			choices, _ := c.site.Choices(setout.Way{On: c.asked, Square: "room"}, o, c.least, sixteenth)
			r, ok := setout.Recommend(choices, c.asked)
			assert.Equal(t, c.refused, !ok)
			if ok {
				assert.Equal(t, c.want, choices[r.Choice].Way)
			}
		})
	}
}

func worst(c setout.Choice) float64 {
	taper, _ := c.Layout.Worst()
	return float64(taper.By())
}
