package setout_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

func TestOpenings(t *testing.T) {
	hall, o := survey.Room{Length: 16 * foot, Width: 12 * foot}, mask.Outline{Length: 12 * foot, Width: 8 * foot}
	box := setout.BoxOnRoom(hall, o) // 2 ft of border all round
	at := func(fromDA, fromAB, across int) survey.Fixture {
		return survey.Fixture{At: survey.Measured, FromDA: measure.Length(fromDA) * inch, FromAB: measure.Length(fromAB) * inch, Across: measure.Length(across) * inch}
	}
	for _, c := range []struct {
		name          string
		fixture       survey.Fixture
		columns, rows int
		want          []setout.Opening
	}{
		{"inside the middle panel", survey.Fixture{At: survey.InMiddle, Across: 9 * inch}, 3, 1,
			[]setout.Opening{{Panel: mask.Panel{Column: 2, Row: 1}, FromDA: 2 * foot, FromAB: 4 * foot}}},
		{"on the crossing of four", survey.Fixture{At: survey.InMiddle, Across: 9 * inch}, 2, 2, []setout.Opening{
			{Panel: mask.Panel{Column: 1, Row: 1}, FromDA: 6 * foot, FromAB: 4 * foot},
			{Panel: mask.Panel{Column: 2, Row: 1}, FromDA: 0, FromAB: 4 * foot},
			{Panel: mask.Panel{Column: 1, Row: 2}, FromDA: 6 * foot, FromAB: 0},
			{Panel: mask.Panel{Column: 2, Row: 2}, FromDA: 0, FromAB: 0}}},
		{"reaches over a seam by an inch", at(24+48-3, 48, 8), 3, 1, []setout.Opening{
			{Panel: mask.Panel{Column: 1, Row: 1}, FromDA: 45 * inch, FromAB: 24 * inch},
			{Panel: mask.Panel{Column: 2, Row: 1}, FromDA: -3 * inch, FromAB: 24 * inch}}},
		{"just up to the seam", at(24+48-4, 48, 8), 3, 1, []setout.Opening{
			{Panel: mask.Panel{Column: 1, Row: 1}, FromDA: 44 * inch, FromAB: 24 * inch}}},
		{"a point on a seam touches both", at(24+48, 48, 0), 3, 1, []setout.Opening{
			{Panel: mask.Panel{Column: 1, Row: 1}, FromDA: 48 * inch, FromAB: 24 * inch},
			{Panel: mask.Panel{Column: 2, Row: 1}, FromDA: 0, FromAB: 24 * inch}}},
		{"in the border", at(10, 48, 9), 3, 1, nil},
		{"none", survey.Fixture{}, 3, 1, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			columns, rows := layerOf(o, c.columns, c.rows).Runs(o)
			assert.Equal(t, c.want, setout.Openings(hall, c.fixture, box, columns, rows))
		})
	}
}
