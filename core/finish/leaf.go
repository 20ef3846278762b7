package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Leaf is one leaf of metal and how far each lies over the next. Leaves are
// laid in a grid, so that a leaf past the first adds its length less the lap
// one way and its width less the lap the other. Sizes differ between makers
// and ages (a gold leaf was 3¼ in and is 3⅜ in today), so none is assumed.
type Leaf struct{ Length, Width, Lap measure.Length }

// Refusals is what is wrong with l: a length or width that is not above 0, a
// lap below 0, or a lap that leaves nothing of the leaf. The other methods
// answer only for a leaf without refusals; for one with them they answer 0.
func (l Leaf) Refusals() []problem.Problem {
	var found []problem.Problem
	for _, side := range []struct {
		at   string
		name words.Text
		size measure.Length
	}{{"/length", words.Say("length"), l.Length}, {"/width", words.Say("width"), l.Width}} {
		name, size := words.Of("side", side.name), words.Put("size", side.size)
		switch {
		case side.size <= 0:
			found = append(found, problem.Problem{At: side.at, Severity: problem.Stop,
				What: words.Say("The {side} of a leaf is {size}.", name, size),
				Do:   words.Say("Give the {side} of one leaf.", name)})
		case l.Lap >= side.size:
			found = append(found, problem.Problem{At: "/lap", Severity: problem.Stop,
				What: words.Say("The lap of {lap} is not less than the leaf's {side} of {size}.", words.Put("lap", l.Lap), name, size),
				Do:   words.Say("Give a lap smaller than the leaf.")})
		}
	}
	if l.Lap < 0 {
		found = append(found, problem.Problem{At: "/lap", Severity: problem.Stop,
			What: words.Say("The lap is below nothing, {lap}.", words.Put("lap", l.Lap)),
			Do:   words.Say("Give a lap of 0 or more.")})
	}
	return found
}

func (l Leaf) isLaid() bool { return len(l.Refusals()) == 0 }

// shortestLeafRoll is longer than any leaf is beaten and shorter than any roll.
const shortestLeafRoll = measure.Metre

// IsRoll tells that l is not a leaf but a roll of leaf, a metre long or more: it
// is then counted in rolls. Its Length is that of the roll and its Width that of
// the ribbon.
func (l Leaf) IsRoll() bool { return l.Length >= shortestLeafRoll }

// Turned is the leaf lying crosswise.
func (l Leaf) Turned() Leaf { return Leaf{Length: l.Width, Width: l.Length, Lap: l.Lap} }

// Area is the whole of one leaf.
func (l Leaf) Area() measure.Area { return measure.AreaOf(l.Length, l.Width) }

// Laid is the area one leaf adds to a field: (length − lap) × (width − lap).
func (l Leaf) Laid() measure.Area { return measure.AreaOf(l.Length-l.Lap, l.Width-l.Lap) }

// Line is the whole leaves in an open run, laid lengthwise: the first covers
// its length and every other its length less the lap. A run of any length
// takes at least one leaf, no run none.
func (l Leaf) Line(run measure.Length) int64 {
	if !l.isLaid() || run <= 0 {
		return 0
	}
	return inLine(run, l.Length, l.Lap)
}

// Ring is the whole leaves in a closed run, where the last leaf laps onto the
// first: every leaf covers its length less the lap.
func (l Leaf) Ring(run measure.Length) int64 {
	if !l.isLaid() || run <= 0 {
		return 0
	}
	return roundUp(run, l.Length-l.Lap)
}

// Grid is the whole leaves over a rectangle, in columns along the first side and
// rows along the other. A leaf that is not square is laid with its length along
// the first side or along the other, whichever takes fewer; turned tells that it
// is the other.
func (l Leaf) Grid(along, across measure.Length) (columns, rows int64, turned bool) {
	if !l.isLaid() || along <= 0 || across <= 0 {
		return 0, 0, false
	}
	columns, rows = inLine(along, l.Length, l.Lap), inLine(across, l.Width, l.Lap)
	most, least := inLine(along, l.Width, l.Lap), inLine(across, l.Length, l.Lap)
	if times(most, least).Cmp(times(columns, rows)) < 0 {
		return most, least, true
	}
	return columns, rows, false
}

// times is exact where a product of counts could be too large.
func times(a, b int64) measure.Number {
	return measure.NumberFromInt(a).Mul(measure.NumberFromInt(b))
}

func inLine(run, side, lap measure.Length) int64 {
	return max(1, roundUp(run-lap, side-lap))
}

func roundUp(l, unit measure.Length) int64 {
	if l <= 0 {
		return 0
	}
	return int64((l + unit - 1) / unit)
}

// SpillOf is what leaf run past the edges of openings covers of the mask:
// perimeter × margin. The corners are left out, as skewings mend them.
func SpillOf(perimeter, margin measure.Length) measure.Area { return measure.AreaOf(perimeter, margin) }
