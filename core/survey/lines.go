package survey

import (
	"math"
	"slices"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Where a room with four corners is no longer believed, in degrees: a corner
// sharper or flatter than this is far more often a wrong entry than a room.
// And from which reach on a slip of the tape is told to move a corner too far:
// lines that barely fix a shape. Choices: common practice, no source.
const (
	sharpest    = 30
	flattest    = 150
	loosestHeld = 50
	weakDegrees = 0.25
)

// leastLine is shorter than any line in a room; below it, corners to the nearest
// nanometre could lose their order.
const leastLine = 10 * measure.Millimetre

// lines is a room with four corners being worked out from readings.
type lines struct {
	system   measure.System
	tape     Tape
	sigma    float64 // of one reading, in millimetres
	readings []Reading
	taken    []observation
	fit      fit
	found    Found
}

// findLines works a room with four corners out of any set of readings that
// fixes it. Where it can, the corners are those that fit all readings best.
func (r Room) findLines(system measure.System) Found {
	l := lines{system: system}
	l.found.Proof = Assumed
	l.tape, l.found.TapeSaid = r.Tape.OrUsual(system)
	l.found.Tape = l.tape
	l.found.checkTape(r.Tape)
	l.sigma = l.tape.deviation()
	l.take(r.Readings)
	if l.isEnough() && l.closes() && l.fits() && l.isRoom() {
		l.keep()
		l.judge()
	}
	return l.found
}

// take picks out the readings that count.
func (l *lines) take(all []Reading) {
	if len(all) > MostReadings {
		l.found.report("/readings", problem.Stop,
			words.Say("There are {count} readings; the first {most} are used.", words.Count("count", len(all)), words.Count("most", MostReadings)),
			words.Say("Take out those that are not needed."))
		all = all[:MostReadings]
	}
	for _, r := range all {
		w, known := weightsOf(r.Line)
		line, reads := words.Of("line", r.Line.Named()), words.Length("l", r.Taken())
		switch {
		case r.Length <= 0:
			continue
		case !known:
			l.found.report(r.At+"/line", problem.Stop,
				words.Say("There is no line “{line}” in a room with four corners.", words.Name("line", string(r.Line))),
				words.Say("Choose a wall, a diagonal, or a line across the middle."))
			continue
		case r.Start < 0 || r.Taken() <= 0:
			l.found.report(r.At+"/start", problem.Stop,
				words.Say("The tape began at {start}, but {line} reads only {l}.", words.Length("start", r.Start), words.Of("line", r.Line), words.Length("l", r.Length)),
				words.Say("Check both: the reading is what stands at the far end of the tape."))
			continue
		case r.Taken() > measure.Longest:
			l.found.report(r.At+"/length", problem.Stop,
				words.Say("{^line} reads {l}, more than the {most} that is taken.", line, reads, words.Length("most", measure.Longest)), checkItsUnit)
			continue
		case r.Taken() < leastLine:
			l.found.report(r.At+"/length", problem.Stop, words.Say("{^line} reads {l}, which is no length of a room.", line, words.Amount("l", r.Taken())), checkUnit)
			continue
		case r.Taken() < LeastSide:
			l.found.report(r.At+"/length", problem.Caution, words.Say("{^line} reads {l}, less than any room.", line, reads), checkUnit)
		}
		l.readings = append(l.readings, r)
		l.taken = append(l.taken, observation{w, r.Taken().Millimetres()})
	}
}

// times is how often a line was read.
func (l *lines) times(line Line) int {
	count := 0
	for _, r := range l.readings {
		if r.Line == line {
			count++
		}
	}
	return count
}

// isEnough tells whether enough different lines were read to fix a shape, and
// asks for the others.
func (l *lines) isEnough() bool {
	different, missing := 0, []words.Text(nil)
	for i, p := range pairs {
		if l.times(p.line) > 0 {
			different++
		} else if i < 4 {
			missing = append(missing, words.Verbatim(p.line.Text()))
		}
	}
	hasDiagonal := l.times(LineAC)+l.times(LineBD) > 0
	across := min(l.times(LineABCD), 1) + min(l.times(LineDABC), 1)
	if different+across >= unknowns {
		return true
	}
	if len(missing) == 0 {
		l.found.report("/readings", problem.Stop,
			words.Say("Four walls alone do not fix the room: like a gate without a brace it can lean to either side and keep every wall."),
			words.Say("Measure diagonal WY from corner to corner, and XZ to check it."))
		return false
	}
	if !hasDiagonal {
		missing = append(missing, LineAC.Named())
	}
	l.found.report("/readings", problem.Stop,
		words.Say("The room is not fixed yet: it takes five different lines, and {count} {count?is|are} read.", words.Count("count", different+across)),
		words.Say("Measure {lines}.", words.All("lines", missing)))
	return false
}

// means are the lengths of the six lines between corners, each the mean of its
// readings, 0 where there is none.
func (l *lines) means() (lengths [6]float64) {
	for i, p := range pairs {
		for k, r := range l.readings {
			if r.Line == p.line {
				lengths[i] += l.taken[k].length
			}
		}
		if lengths[i] > 0 {
			lengths[i] /= float64(l.times(p.line))
		}
	}
	return lengths
}

// closes tells whether every three lines between three corners can meet, and
// names those that cannot.
func (l *lines) closes() bool {
	lengths, ok := l.means(), true
	for _, corners := range [][3]int{{0, 1, 2}, {2, 3, 0}, {3, 0, 1}, {1, 2, 3}} {
		sides := []int{pairOf(corners[0], corners[1]), pairOf(corners[1], corners[2]), pairOf(corners[2], corners[0])}
		slices.SortStableFunc(sides, func(a, b int) int {
			switch {
			case lengths[a] < lengths[b]:
				return -1
			case lengths[a] > lengths[b]:
				return 1
			}
			return 0
		})
		if lengths[sides[0]] > 0 && lengths[sides[0]]+lengths[sides[1]] <= lengths[sides[2]] {
			l.clash(lengths, sides)
			ok = false
		}
	}
	return ok
}

func (l *lines) clash(lengths [6]float64, sides []int) {
	short, middle, long := pairs[sides[0]].line, pairs[sides[1]].line, pairs[sides[2]].line
	reach := measure.LengthFromMillimetres(lengths[sides[0]] + lengths[sides[1]])
	of := measure.LengthFromMillimetres(lengths[sides[2]])
	l.found.report(l.pointer(long), problem.Stop,
		words.Say("{short} and {middle} together are {reach}, but {long} between their ends is {of}, {more} more than they reach: these three lines cannot meet.",
			words.Of("short", short), words.Of("middle", middle), words.Length("reach", reach), words.Of("long", long), words.Length("of", of), words.Amount("more", of-reach)),
		words.Say("Measure {long} again, then {short} and {middle}.", words.Of("long", long), words.Of("short", short), words.Of("middle", middle)))
}

// pointer is the length blank of the first reading of a line.
func (l *lines) pointer(line Line) string {
	for _, r := range l.readings {
		if r.Line == line {
			return r.At + "/length"
		}
	}
	return "/readings"
}

var measureDiagonals = words.Say("Measure diagonal WY, and XZ to check it.")

// fits finds the corners that fit the readings best.
func (l *lines) fits() bool {
	best, ok := fit{}, false
	for _, start := range l.starts() {
		f, found := adjust(start, l.taken)
		if !found || f.corners.twiceArea() <= 0 {
			continue
		}
		if f.loosest() > loosestHeld {
			l.fit = f
			continue
		}
		if ok && isOther(best.corners, f.corners) && len(l.taken) == unknowns {
			l.found.report("/readings", problem.Stop, words.Say("Two different rooms fit these lines."), measureDiagonals)
			return false
		}
		if !ok || squares(f.corners, l.taken) < squares(best.corners, l.taken) {
			best, ok = f, true
		}
	}
	if ok {
		l.fit = best
		return true
	}
	// A room that is nearly flat is loose too, and what is wrong with it is that
	// it is flat.
	if l.fit.steps == 0 || l.isRoom() {
		l.found.report("/readings", problem.Stop,
			words.Say("These lines do not fix the room: a slip of the tape would move a corner more than {times} times as far, or they cannot meet at all.", words.Count("times", loosestHeld)),
			measureDiagonals)
	}
	return false
}

func isOther(p, q quad) bool {
	for i := range p {
		if p[i].minus(q[i]).long() > 1e-3 {
			return true
		}
	}
	return false
}

// starts are where the adjustment may begin: with five of the six lines between
// corners their own shape, and else several guesses, since more than one room
// may fit.
func (l *lines) starts() []quad {
	lengths := l.means()
	without, missing := 5, 0
	for i, length := range lengths {
		if length <= 0 {
			without, missing = i, missing+1
		}
	}
	if missing < 2 {
		return []quad{quadFrom(lengths, without)}
	}
	var starts []quad
	for _, lean := range []float64{1, 0.98, 1.02, 0.9, 1.1} {
		starts = append(starts, quadFrom(guessed(lengths, lean), without))
	}
	return starts
}

// guessed fills in the lines that were not read: a wall as long as the one
// opposite or the others, a diagonal as in a square room, times lean.
func guessed(lengths [6]float64, lean float64) [6]float64 {
	longest := 0.0
	for _, length := range lengths {
		longest = max(longest, length)
	}
	for i := range 4 {
		if lengths[i] <= 0 {
			lengths[i] = lengths[(i+2)%4]
		}
		if lengths[i] <= 0 {
			lengths[i] = longest
		}
	}
	for i := 4; i < 6; i++ {
		if lengths[i] <= 0 {
			lengths[i] = lean * spot{(lengths[0] + lengths[2]) / 2, (lengths[1] + lengths[3]) / 2}.long()
		}
	}
	return lengths
}

// isRoom tells whether the corners make a room with four corners, and what to
// look at where they do not.
func (l *lines) isRoom() bool {
	q := l.fit.corners
	for i := range 4 {
		c := cornerFound(CornerNumbered(i), q[(i+1)%4].minus(q[i]), q[(i+3)%4].minus(q[i]), overOf(l.system))
		if c.Degrees >= sharpest && c.Degrees <= flattest {
			continue
		}
		one, other := wallFrom((i+3)%4, 4), wallFrom(i, 4)
		l.found.report("/readings", problem.Stop,
			words.Say("These lines close, but corner {corner} would be {angle}: that is no room with four corners.", words.Of("corner", c.Corner), words.Of("angle", c.Angle())),
			words.Say("Check {one}, {other} and the diagonals, and which corner each was taken from. If the corner really is like that, give the corners by their offsets or the walls with their angles.",
				words.Of("one", one), words.Of("other", other)))
		return false
	}
	return true
}

// keep puts the corners and what was read into what was found.
func (l *lines) keep() {
	f := &l.found
	f.Shape = ShapeFromCorners(Lines, l.fit.corners.corners())
	f.Corners = cornersFound(f.Shape, l.system)
	weak := 0
	for i := range f.Corners {
		f.Corners[i].Deviation = l.sigma * math.Sqrt(l.fit.variance(l.fit.corners.angleGradient(i))) * 180 / math.Pi
		if f.Corners[i].Deviation > f.Corners[weak].Deviation {
			weak = i
		}
	}
	if c := f.Corners[weak]; c.Deviation > weakDegrees {
		l.found.report("/readings", problem.Caution,
			words.Say("These lines hold corner {corner} only loosely: a usual slip of the tape turns it by {angle}.", words.Of("corner", c.Corner), words.Of("angle", Angle(c.Deviation))),
			words.Say("Measure the other diagonal too, or each line twice."))
	}
	for i, r := range l.readings {
		f.Lines = append(f.Lines, LineFound{Reading: r, Adjusted: measure.LengthFromMillimetres(l.fit.corners.step(l.taken[i].weights).long())})
	}
}
