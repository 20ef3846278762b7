package survey_test

import (
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/survey"
)

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

var inches = measure.Notation{System: measure.FeetInches, InchMark: inch / 16, MetricMark: mm, Plain: true}

// supper is 17' 9 1/2" by 13' 4", 10' 2" high.
var supper = survey.Room{Length: 17*foot + 9*inch + inch/2, Width: 13*foot + 4*inch, Height: 10*foot + 2*inch}

func TestShape_AreaPerimeterVolumeAreExact(t *testing.T) {
	// 213.5 in × 160 in = 34 160 in² = 237.22… ft²; × 122 in = 4 167 520 in³,
	// 231 to the US gallon (NIST Handbook 44, appendix C).
	square := measure.NumberFromInt(34160).Quo(measure.NumberFromInt(144))
	assert.Zero(t, rectangle.Area().SquareFeet().Cmp(square))
	assert.Equal(t, 747*inch, rectangle.Perimeter())
	gallons := measure.NumberFromInt(4167520).Quo(measure.NumberFromInt(231))
	assert.Zero(t, measure.VolumeOver(rectangle.Area(), supper.Height).Gallons().Cmp(gallons))

	// 3 m × 4 m is 12 m², which 64 bits of square nanometres do not hold
	// (setting out in nanometres: 2^63 nm² is 9.2 m²).
	small := survey.ShapeFromSides(survey.Rectangle, 4*measure.Metre, 3*measure.Metre)
	assert.Equal(t, "12", small.Area().SquareMetres.RoundHalfEven(0).String())
	assert.Zero(t, small.Area().SquareMetres.Cmp(measure.NumberFromInt(12)))
	assert.Zero(t, measure.VolumeOver(small.Area(), 2500*mm).Litres.Cmp(measure.NumberFromInt(30000)))
}

func TestShape_WallsAndCorners(t *testing.T) {
	for wall, want := range map[survey.Wall]measure.Length{
		survey.AB: supper.Length, survey.CD: supper.Length, survey.BC: supper.Width, survey.DA: supper.Width,
	} {
		got, ok := rectangle.Wall(wall)
		assert.True(t, ok)
		assert.Equal(t, want, got.Length(), wall)
	}
	// Clockwise looking up: A top left, B along the length, D along the width.
	for corner, want := range map[survey.Corner]survey.Point{
		survey.A: {}, survey.B: {X: supper.Length}, survey.C: {X: supper.Length, Y: supper.Width}, survey.D: {Y: supper.Width},
	} {
		got, ok := rectangle.Corner(corner)
		assert.True(t, ok)
		assert.Equal(t, want, got, corner)
	}
}

func TestFind_SidesOfARectangle(t *testing.T) {
	for _, c := range []struct {
		name string
		room survey.Room
		want []problem.Problem
	}{
		{"whole", supper, nil},
		{"width and height left open", survey.Room{Length: supper.Length}, []problem.Problem{
			{At: "/width", Severity: problem.Stop, What: words.Say("The width of the room is not given."), Do: words.Say("Measure wall ZW and write it in.")},
			{At: "/height", Severity: problem.Stop, What: words.Say("The height of the room is not given."), Do: words.Say("Measure from floor to ceiling and write it in.")},
		}},
		{"12 typed in a blank of inches for feet", survey.Room{Length: 11 * inch, Width: supper.Width, Height: 10 * inch}, []problem.Problem{
			{At: "/length", Severity: problem.Caution, What: words.Say("The length of the room reads 11\", less than any room."), Do: words.Say("Check the number and write its unit.")},
			{At: "/height", Severity: problem.Caution, What: words.Say("The height of the room reads 10\", less than any room."), Do: words.Say("Check the number and write its unit.")},
		}},
		{"beyond what is read", survey.Room{Length: measure.Longest + 1, Width: supper.Width, Height: supper.Height}, []problem.Problem{
			{At: "/length", Severity: problem.Stop, What: words.Say("The length of the room reads 328' 1\", more than the 328' 1\" that is taken."), Do: words.Say("Check the number and its unit.")},
		}},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, said(inches, c.room.Find(measure.FeetInches).Problems)) })
	}
	assert.False(t, survey.Room{}.Find(measure.FeetInches).Shape.Usable(), "the zero value is no room")
	assert.True(t, supper.Find(measure.FeetInches).Shape.IsRectangle())
	assert.False(t, survey.Room{Length: measure.Longest + 1, Width: foot}.Find(measure.FeetInches).Shape.Usable())
}
