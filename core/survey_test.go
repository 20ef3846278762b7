package core_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// measured is the plan of an even grid in a room measured in another way.
func measured(t *testing.T, room map[string]any) sheet.Sheet {
	t.Helper()
	return sheetOf(t, changed(t, planNamed(t, "even-grid"), "/room", room))
}

func reading(line, length, start string) map[string]any {
	return map[string]any{"line": line, "length": length, "start": start}
}

func problemsAt(s sheet.Sheet, at string) []sheet.Problem {
	var found []sheet.Problem
	for _, p := range s.Problems {
		if p.At == at {
			found = append(found, p)
		}
	}
	return found
}

func TestRoomOfSixReadings(t *testing.T) {
	// L1 of the adjustment: closing −5.073750461 mm, area 12 543 144.076 mm².
	fine := map[string]any{"deviation": "1 mm", "readTo": "1 mm"}
	lines := []any{reading("AB", "4115 mm", ""), reading("BC", "3048 mm", ""), reading("CD", "4102 mm", ""), reading("DA", "3061 mm", ""), reading("AC", "5120 mm", ""), reading("BD", "5114 mm", "")}
	s := measured(t, map[string]any{"form": "lines", "height": "9 ft", "tape": fine, "readings": lines})
	assert.InDelta(t, -5.073750461e6, value(t, s, "room.closing"), 1.01)
	assert.InDelta(t, 12.543144076230989, value(t, s, "room.area"), 1e-8)
	assert.Equal(t, "lines", s.Survey.Form)
	assert.Equal(t, "yes", s.Survey.Proved)
	assert.Equal(t, "1⁄16″ shorter than read", s.Survey.Lines[0].Off, "−1.016 mm")
	assert.NotContains(t, s.Survey.Text, "does not say", "the tape is said")
	require.Len(t, s.Survey.Corners, 4)
	assert.Equal(t, "A", s.Survey.Corners[0].Corner)

	// Four walls alone.
	s = measured(t, map[string]any{"form": "lines", "height": "9 ft", "readings": lines[:4]})
	require.Len(t, problemsAt(s, "/room/readings"), 1)
	assert.Equal(t, problem.Stop, problemsAt(s, "/room/readings")[0].Severity)
	_, ok := figures(s)["room.area"]
	assert.False(t, ok)
	_, ok = figures(s)["mask.area"]
	assert.True(t, ok, "the rest of the sheet is there")

	// 35 mm wrong in BD: the problem stands at that reading's length.
	lines[5] = reading("BD", "5154 mm", "")
	s = measured(t, map[string]any{"form": "lines", "height": "9 ft", "readings": lines})
	assert.Equal(t, "no", s.Survey.Proved)
	require.Len(t, problemsAt(s, "/room/readings/5/length"), 1)
	assert.Len(t, s.Survey.Again, 6)
	assert.Equal(t, "check", s.Survey.Lines[0].Flag)
	assert.Contains(t, s.Survey.Text, "The tape is taken as good to 1⁄16″ and read to 1⁄16″, since the plan does not say both.")
	assert.InDelta(t, 34.926249539e6, value(t, s, "room.closing"), 1.01)
}

func TestBurntInchOnTheSheet(t *testing.T) {
	// 97 3/8 in from the 1-inch mark is 96 3/8 in: both are kept.
	s := measured(t, map[string]any{"form": "lines", "height": "9 ft", "readings": []any{
		reading("AB", "97 3/8", "1 in"), reading("BC", "8 ft", ""), reading("CD", "96 3/8", ""), reading("DA", "8 ft", ""), reading("AC", "11 ft 4", "")}})
	assert.Equal(t, "8′ 0⅜″ (8′ 1⅜″ less 1″)", s.Survey.Lines[0].Read)
	assert.Equal(t, "assumed", s.Survey.Proved)
	assert.Empty(t, s.Survey.Closing, "nothing to spare")
}

func TestDiagonalsOfARectangle(t *testing.T) {
	room := map[string]any{"form": "rectangle", "length": "4 m", "width": "3 m", "height": "9 ft", "diagonalAC": "5 m"}
	s := measured(t, room)
	assert.Equal(t, "yes", s.Survey.Proved)
	assert.Equal(t, "Length times width.", figures(s)["room.area"].Working.Rule)
	assert.Zero(t, value(t, s, "room.closing"))
	room["diagonalBD"] = "5.012 m"
	s = measured(t, room)
	assert.Equal(t, "no", s.Survey.Proved)
	assert.Len(t, problemsAt(s, "/room/diagonalBD"), 1)
	assert.InDelta(t, 12e6, value(t, s, "room.closing"), 1)
	assert.InDelta(t, 12, value(t, s, "room.area"), 1e-12, "still worked out")
}

func TestRoomsOfOtherForms(t *testing.T) {
	s := sheetNamed(t, "oval")
	assert.InDelta(t, math.Pi*5.4*4.2/4, value(t, s, "room.area"), 1e-12)
	assert.InDelta(t, math.Pi*5.4*4.2/4*3.1, value(t, s, "room.volume"), 1e-11)
	// Ramanujan's second formula, from memory: good to a thousandth of a
	// millimetre for an oval as round as this.
	h := math.Pow((5.4-4.2)/(5.4+4.2), 2)
	assert.InDelta(t, math.Pi*(5.4+4.2)/2*(1+3*h/(10+math.Sqrt(4-3*h)))*metre, value(t, s, "room.perimeter"), 1000)

	s = sheetNamed(t, "l-shape")
	assert.InDelta(t, 10e6, value(t, s, "room.closing"), 0)
	// As if it closed it would be 5.2 × 2.48 + 3 × 1.32 = 16.856 m².
	assert.InDelta(t, 16.856, value(t, s, "room.area"), 0.03)

	point := func(x, y string) map[string]any { return map[string]any{"x": x, "y": y} }
	outline := []any{point("-1 m", "-1 m"), point("4 m", "-1 m"), point("4 m", "1.5 m"), point("2 m", "1.5 m"), point("2 m", "3 m"), point("-1 m", "3 m")}
	s = measured(t, map[string]any{"form": "points", "height": "9 ft", "points": outline})
	assert.Equal(t, 17.0, value(t, s, "room.area"), "5 × 4 less 2 × 1.5")
	assert.Equal(t, 18*metre, value(t, s, "room.perimeter"))
	outline[1], outline[5] = outline[5], outline[1]
	outline[2], outline[4] = outline[4], outline[2]
	s = measured(t, map[string]any{"form": "points", "height": "9 ft", "points": outline})
	require.Len(t, problemsAt(s, "/room/points"), 1)
	assert.Contains(t, problemsAt(s, "/room/points")[0].What, "anticlockwise")
	wall := func(length, angle string) map[string]any { return map[string]any{"length": length, "angle": angle} }
	s = measured(t, map[string]any{"form": "walls", "height": "9 ft", "walls": []any{wall("4 m", "90"), wall("3 m", ""), wall("4 m", "90"), wall("", "")}})
	assert.Len(t, problemsAt(s, "/room/walls/1/angle"), 1)
}

func TestThingsOnTheCeiling(t *testing.T) {
	s := measured(t, map[string]any{"length": "4 m", "width": "3 m", "height": "9 ft",
		"fixture": map[string]any{"at": "corners", "cornerOne": "a", "fromOne": "2 m", "cornerTwo": "B", "fromTwo": "2683.281573 mm", "across": "12 cm"},
		"obstructions": []any{
			map[string]any{"name": "", "kind": "vent", "at": "measured", "fromDA": "1 m", "fromAB": "5 m"},
			map[string]any{"name": "attic", "kind": "hatch", "at": "measured", "shape": "rectangular", "across": "60 cm", "deep": "", "fromDA": "1 m", "fromAB": "2 m"}}})
	require.Len(t, s.Objects, 3)
	assert.Equal(t, "/room/fixture", s.Objects[0].At)
	assert.Equal(t, "Its middle is 5′ 3″ off wall ZW and 3′ 11¼″ off wall WX; it is 4¾″ across.", s.Objects[0].Text)
	assert.Equal(t, "Its place is not known.", s.Objects[1].Text)
	assert.Equal(t, problem.Stop, problemsAt(s, "/room/obstructions/0/fromAB")[0].Severity)
	assert.Equal(t, "How deep the hatch “attic” is, square to its length, is not given.", problemsAt(s, "/room/obstructions/1/deep")[0].What)
}
