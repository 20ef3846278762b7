package setout

import (
	"cmp"
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
	along := []Mark{
		{BoxMark, string(survey.DA), "", box.X},
		{BoxMark, string(survey.BC), "", box.X + box.Length},
		{CentreMark, "", "", box.Centre().X},
	}
	across := []Mark{
		{BoxMark, string(survey.AB), "", box.Y},
		{BoxMark, string(survey.CD), "", box.Y + box.Width},
		{CentreMark, "", "", box.Centre().Y},
	}
	if centre, ok := fixture.Centre(room); ok {
		along = append(along, Mark{FixtureMark, "", "", centre.X})
		across = append(across, Mark{FixtureMark, "", "", centre.Y})
	}
	for _, layer := range layers {
		columns, rows := layer.Runs(mask.Outline{Length: box.Length, Width: box.Width})
		along = appendSeams(along, layer.ID, columns, box.X, mask.ColumnSeam)
		across = appendSeams(across, layer.ID, rows, box.Y, mask.RowSeam)
	}
	sortMarks(along)
	sortMarks(across)
	return []WallMarks{
		{survey.AB, survey.A, survey.B, room.Wall(survey.AB), along},
		{survey.BC, survey.B, survey.C, room.Wall(survey.BC), across},
		{survey.CD, survey.D, survey.C, room.Wall(survey.CD), slices.Clone(along)},
		{survey.DA, survey.A, survey.D, room.Wall(survey.DA), slices.Clone(across)},
	}
}

func appendSeams(marks []Mark, layer string, run mask.Run, start measure.Length, name func(int) string) []Mark {
	for i := range run.Gaps {
		marks = append(marks, Mark{SeamMark, name(i + 1), layer, start + run.Seam(i)})
	}
	return marks
}

// sortMarks puts the nearest first; marks that fall together keep the order in
// which they were named.
func sortMarks(marks []Mark) {
	slices.SortStableFunc(marks, func(a, b Mark) int { return cmp.Compare(a.At, b.At) })
}
