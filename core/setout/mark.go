package setout

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Kind says what a mark on a wall stands for.
type Kind string

// A side of the box, its centre line, a seam, or the centre of the fixture.
const (
	BoxMark     Kind = "box"
	CentreMark  Kind = "centre"
	SeamMark    Kind = "seam"
	FixtureMark Kind = "fixture"
)

// Mark is one tick along a wall. At is its running distance from the corner
// the wall is read from, exact, so that no mark inherits another's rounding
// (running dimensions, ISO 129-1). Label is the name of the seam, or of the
// wall that a box line runs beside; Layer is the layer of a seam.
type Mark struct {
	Kind  Kind
	Label string
	Layer string
	At    measure.Length
}

// Rounded is the mark at the nearest tape mark, an exact half away from zero.
// It is off by half a tape mark at most, wherever it lies on the wall.
func (m Mark) Rounded(tape measure.Length) measure.Length { return m.At.ToMark(tape) }

// Hides is what the rounding hides: rounded less exact.
func (m Mark) Hides(tape measure.Length) measure.Length { return m.Rounded(tape) - m.At }

// WallMarks are all marks along one wall, read from corner From to corner To,
// nearest first. Opposite walls are read from the same end, so a line snapped
// between two equal readings runs square across: AB from A and CD from D, BC
// from B and DA from A.
type WallMarks struct {
	Wall     survey.Wall
	From, To survey.Corner
	Length   measure.Length
	Marks    []Mark
}

// Marks are the marks for all four walls: box lines, centre lines, the fixture
// where there is one in the room, and every seam of every layer, each under
// its own layer even where two fall together. Seams are marked where they lie
// once each has taken its part of what the panels are over or short.
func Marks(room survey.Room, fixture survey.Fixture, box Box, layers []mask.Layer) []WallMarks {
	along := baseMarks(survey.DA, box.X, survey.BC, box.X+box.Length, box.Centre().X)
	across := baseMarks(survey.AB, box.Y, survey.CD, box.Y+box.Width, box.Centre().Y)
	if centre, ok := fixture.Centre(room); ok {
		along = withFixture(along, centre.X)
		across = withFixture(across, centre.Y)
	}
	for _, layer := range layers {
		columns, rows := layer.Runs(mask.Outline{Length: box.Length, Width: box.Width})
		along = withSeams(along, layer.ID, columns, box.X, mask.ColumnSeam)
		across = withSeams(across, layer.ID, rows, box.Y, mask.RowSeam)
	}
	return []WallMarks{
		{survey.AB, survey.A, survey.B, room.Wall(survey.AB), along},
		{survey.BC, survey.B, survey.C, room.Wall(survey.BC), across},
		{survey.CD, survey.D, survey.C, room.Wall(survey.CD), slices.Clone(along)},
		{survey.DA, survey.A, survey.D, room.Wall(survey.DA), slices.Clone(across)},
	}
}

// baseMarks are the two sides of the box and its middle, in order.
func baseMarks(low survey.Wall, from measure.Length, high survey.Wall, to, middle measure.Length) []Mark {
	return []Mark{{BoxMark, string(low), "", from}, {CentreMark, "", "", middle}, {BoxMark, string(high), "", to}}
}

// withFixture puts the middle of the fixture among marks that are in order.
func withFixture(marks []Mark, at measure.Length) []Mark {
	place := len(marks)
	for place > 0 && marks[place-1].At > at {
		place--
	}
	return slices.Insert(marks, place, Mark{FixtureMark, "", "", at})
}

// withSeams puts the seams of one layer among marks that are in order, each
// where it lies; of marks that fall together those already there come first.
func withSeams(marks []Mark, layer string, run mask.Run, start measure.Length, name func(int) string) []Mark {
	merged, next := make([]Mark, 0, len(marks)+len(run.Gaps)), 0
	for i := range run.Gaps {
		at := start + run.Seam(i)
		for next < len(marks) && marks[next].At <= at {
			merged, next = append(merged, marks[next]), next+1
		}
		merged = append(merged, Mark{SeamMark, name(i + 1), layer, at})
	}
	return append(merged, marks[next:]...)
}
