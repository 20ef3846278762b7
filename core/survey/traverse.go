package survey

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// From where on walls that do not close are looked at, and from where on
// refused, as a share of the way round; and by how much all angles together may
// be out, in degrees for each corner. Choices: common practice, no source.
const (
	closesWell   = 1.0 / 200
	closesAtAll  = 1.0 / 50
	outPerCorner = 1
)

// findWalls works out an outline from its walls and the inside angles between
// them. It starts at A along x. By how much the walls miss closing is spread over
// the corners in proportion to the way walked (the compass rule, Bowditch; any
// text on traverses, from memory), after the angles, where all are given, have
// been made to add up by an equal share each.
func (r Room) findWalls(system measure.System) Found {
	f := Found{Proof: Assumed}
	if !f.isCount(len(r.Walls), "/walls") || !f.isMeasured(r.Walls) {
		return f
	}
	headings, ok := f.headings(r.Walls)
	if !ok {
		return f
	}
	corners, ok := f.walk(r.Walls, headings)
	if !ok || !f.isOutline(corners, "/walls") {
		return f
	}
	f.Shape = ShapeFromCorners(Walls, corners)
	f.Corners = cornersFound(f.Shape, system)
	return f
}

// isMeasured tells whether every wall has its length and every corner its
// angle; the last wall may lack either or both.
func (f *Found) isMeasured(walls []WallReading) bool {
	full := measure.NumberFromInt(360)
	for i, w := range walls {
		at, name, last := "/walls"+problem.Index(i), wallFrom(i, len(walls)), i == len(walls)-1
		wall, corner := words.Of("wall", name), words.Of("corner", name[1:])
		switch {
		case w.Length <= 0 && !last:
			f.report(at+"/length", problem.Stop, words.Say("The length of wall {wall} is not given.", wall), words.Say("Measure it. Only the last wall can be worked out."))
		case w.Length > measure.Longest:
			f.report(at+"/length", problem.Stop, words.Say("Wall {wall} reads {l}, more than the {most} that is taken.", wall, words.Length("l", w.Length), words.Length("most", measure.Longest)), checkItsUnit)
		}
		switch {
		case !w.AngleKnown && !last:
			f.report(at+"/angle", problem.Stop,
				words.Say("The angle at corner {corner} is not given.", corner),
				words.Say("Measure it inside the room: 90 where the walls are square, 270 where the corner points into the room."))
		case w.AngleKnown && (w.Angle.Sign() <= 0 || w.Angle.Cmp(full) >= 0):
			f.report(at+"/angle", problem.Stop,
				words.Say("No corner has an angle of {angle}° inside the room.", words.Name("angle", w.Angle.RoundHalfEven(2).String())),
				words.Say("Give the angle inside the room, between 0 and 360 degrees."))
		}
	}
	return len(f.Problems) == 0
}

// headings are the directions of the walls in degrees clockwise from x, looking
// up: exact. Where all angles are given, what they lack is shared out equally.
func (f *Found) headings(walls []WallReading) ([]measure.Number, bool) {
	count := len(walls)
	var sum, share measure.Number
	for _, w := range walls {
		sum = sum.Add(w.Angle)
	}
	if walls[count-1].AngleKnown {
		full, is := words.Name("full", words.Digits(int64(180*(count-2)))), words.Name("sum", sum.RoundHalfEven(2).String())
		lack := measure.NumberFromInt(int64(180 * (count - 2))).Sub(sum)
		if lack.Abs().Cmp(measure.NumberFromInt(int64(outPerCorner*count))) > 0 {
			f.report("/walls", problem.Stop, words.Say("The angles inside {count} corners add up to {full}°, but these to {sum}°.", words.Count("count", count), full, is),
				words.Say("Check the angles: 90 for a square corner, 270 for one that points into the room."))
			return nil, false
		}
		if !lack.IsZero() {
			f.report("/walls", problem.Note, words.Say("The angles add up to {sum}° where it should be {full}°; the difference is shared out equally.", is, full),
				words.Say("Measure the angles again if you can."))
		}
		share = lack.Quo(measure.NumberFromInt(int64(count)))
	}
	headings := make([]measure.Number, count)
	for i := 1; i < count; i++ {
		turned := measure.NumberFromInt(180).Sub(walls[i-1].Angle).Sub(share)
		headings[i] = headings[i-1].Add(turned)
	}
	return headings, true
}

// walk goes along the walls and closes the outline.
func (f *Found) walk(walls []WallReading, headings []measure.Number) ([]Point, bool) {
	count := len(walls)
	steps := make([]spot, count)
	var end spot
	var way measure.Length
	for i, w := range walls {
		steps[i] = towards(headings[i]).times(w.Length.Millimetres())
		end, way = end.plus(steps[i]), way+w.Length
	}
	if last := walls[count-1]; last.Length <= 0 {
		along := towards(headings[count-1])
		back := -end.dot(along)
		if back <= 0 {
			f.report("/walls"+problem.Index(count-1)+"/length", problem.Stop,
				words.Say("The last wall would have to run backwards to end at corner W."), words.Say("Check the walls and the angles."))
			return nil, false
		}
		steps[count-1] = along.times(back)
		end, way = end.plus(steps[count-1]), way+measure.LengthFromMillimetres(back)
	}
	miss := end.long()
	if !f.close(measure.LengthFromMillimetres(miss), miss/way.Millimetres()) {
		return nil, false
	}
	corners, at, walked := make([]Point, count), spot{}, 0.0
	for i := range corners {
		corners[i] = at.minus(end.times(walked / way.Millimetres())).point()
		at, walked = at.plus(steps[i]), walked+steps[i].long()
	}
	return squared(corners), true
}

// squared turns the corners so that AB runs along x again, which the spread
// error may have turned a little.
func squared(corners []Point) []Point {
	if corners[1].Y == 0 {
		return corners
	}
	along := spotOf(corners[1]).unit()
	for i, p := range corners[1:] {
		s := spotOf(p)
		corners[i+1] = spot{s.dot(along), along.cross(s)}.point()
	}
	corners[1].Y = 0
	return corners
}

// close says by how much the walls miss closing, and refuses what cannot be.
func (f *Found) close(miss measure.Length, share float64) bool {
	f.Closing = Closing{Spare: 1, At: "/walls", Amount: miss}
	by := words.Amount("by", miss)
	switch {
	case share > closesAtAll:
		f.report("/walls", problem.Stop, words.Say("Walked round, the walls miss corner W by {by}: they do not close.", by),
			words.Say("Check every wall and every angle. A wall left out, or an angle of 90 that should be 270, does this."))
		return false
	case share > closesWell:
		f.Proof, f.Verdict = Contradicted, FarFromClosing
		f.report("/walls", problem.Caution,
			words.Say("Walked round, the walls miss corner W by {by}, more than one part in 200 of the way round. It is spread over them in proportion to their length.", by),
			words.Say("Measure the walls and the angles again."))
	case miss == 0:
		f.Proof, f.Verdict = Proved, ClosesExactly
	default:
		f.Proof, f.Verdict = Proved, ClosingSpread
	}
	return true
}

// towards is the unit vector of a heading in degrees. Whole quarter turns are
// exact; what is left, at most 45°, goes through the series of sine and cosine,
// with every product rounded by itself so that all processors agree.
func towards(heading measure.Number) spot {
	quarters, _ := heading.Quo(measure.NumberFromInt(90)).Add(half).Floor()
	rest := heading.Sub(measure.NumberFromInt(90 * quarters))
	s := turnedBy(rest.Float() / 180 * math.Pi)
	for range quarters & 3 {
		s = s.quarter()
	}
	return s
}

// turnedBy is cosine and sine of an angle of at most 45°, in radians: the power
// series, which then takes ten terms.
func turnedBy(angle float64) spot {
	var sum spot
	term := 1.0
	for i := 1; i <= 20; i++ {
		switch i & 3 {
		case 1:
			sum.x += term
		case 2:
			sum.y += term
		case 3:
			sum.x -= term
		default:
			sum.y -= term
		}
		term = float64(term*angle) / float64(i)
	}
	return sum
}
