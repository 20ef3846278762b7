package setout

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Opening is a panel that the fixture comes through. FromDA and FromAB go from
// the panel's own edges towards those walls to the centre of the fixture; one
// below zero, or beyond the panel, means that the centre is on a neighbour.
type Opening struct {
	Panel          mask.Panel
	FromDA, FromAB measure.Length
}

// Openings are the panels that the fixture comes through, by rows. A round
// fixture is taken as the square it fits in, so that no panel that must be cut
// is left out. One whose width is not known counts as a point; on a seam it
// then touches both panels. The cut may be made to the nanometre: nothing is
// rounded but the middle of an odd room.
func Openings(room survey.Room, fixture survey.Fixture, box Box, columns, rows mask.Run) []Opening {
	centre, ok := fixture.Centre(room)
	if !ok {
		return nil
	}
	x, y := centre.X-box.X, centre.Y-box.Y
	var found []Opening
	for _, r := range under(rows, y, fixture.Across) {
		for _, c := range under(columns, x, fixture.Across) {
			found = append(found, Opening{mask.Panel{Column: c + 1, Row: r + 1}, x - columns.Starts[c], y - rows.Starts[r]})
		}
	}
	return found
}

// under are the panels of a run that a fixture reaches over, counted from 0.
func under(run mask.Run, centre, across measure.Length) []int {
	var found []int
	for i, start := range run.Starts {
		end := start + run.Sizes[i]
		inside := 2*centre+across > 2*start && 2*centre-across < 2*end
		if inside || across == 0 && (centre == start || centre == end) {
			found = append(found, i)
		}
	}
	return found
}
