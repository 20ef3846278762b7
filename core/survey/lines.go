package survey

import (
	"math"
	"slices"
	"strconv"
	"strings"

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
	n        measure.Notation
	tape     Tape
	sigma    float64 // of one reading, in millimetres
	readings []Reading
	taken    []observation
	fit      fit
	found    Found
}

// findLines works a room with four corners out of any set of readings that
// fixes it. Where it can, the corners are those that fit all readings best.
func (r Room) findLines(n measure.Notation) Found {
	l := lines{n: n}
	l.found.Proof = Assumed
	l.tape, l.found.TapeSaid = r.Tape.OrUsual(n)
	l.found.Tape = l.tape
	l.found.checkTape(r.Tape, n)
	l.sigma = l.tape.deviation()
	l.take(r.Readings)
	if l.isEnough() && l.closes() && l.fits() && l.isRoom() {
		l.keep()
		l.judge()
	}
	return l.found
}

func (l *lines) report(at string, severity problem.Severity, what, do string) {
	l.found.Problems = append(l.found.Problems, problem.Problem{At: at, Severity: severity, What: words.Raw(what), Do: words.Raw(do)})
}

// take picks out the readings that count.
func (l *lines) take(all []Reading) {
	if len(all) > MostReadings {
		l.report("/readings", problem.Stop, "There are "+strconv.Itoa(len(all))+" readings; the first "+strconv.Itoa(MostReadings)+" are used.",
			"Take out those that are not needed.")
		all = all[:MostReadings]
	}
	for _, r := range all {
		w, known := weightsOf(r.Line)
		switch {
		case r.Length <= 0:
			continue
		case !known:
			l.report(r.At+"/line", problem.Stop, "There is no line “"+string(r.Line)+"” in a room with four corners.", "Choose a wall, a diagonal, or a line across the middle.")
			continue
		case r.Start < 0 || r.Taken() <= 0:
			l.report(r.At+"/start", problem.Stop, "The tape began at "+l.n.Length(r.Start)+", but "+r.Line.Text()+" reads only "+l.n.Length(r.Length)+".",
				"Check both: the reading is what stands at the far end of the tape.")
			continue
		case r.Taken() > measure.Longest:
			l.report(r.At+"/length", problem.Stop, nameOf(r.Line)+" reads "+l.n.Length(r.Taken())+", more than the "+l.n.Length(measure.Longest)+" that is taken.", "Check the number and its unit.")
			continue
		case r.Taken() < leastLine:
			l.report(r.At+"/length", problem.Stop, nameOf(r.Line)+" reads "+l.n.Amount(r.Taken())+", which is no length of a room.", "Check the number and write its unit.")
			continue
		case r.Taken() < LeastSide:
			l.report(r.At+"/length", problem.Caution, nameOf(r.Line)+" reads "+l.n.Length(r.Taken())+", less than any room.", "Check the number and write its unit.")
		}
		l.readings = append(l.readings, r)
		l.taken = append(l.taken, observation{w, r.Taken().Millimetres()})
	}
}

// nameOf is a line as a sentence begins with it.
func nameOf(line Line) string {
	switch line {
	case LineAC, LineBD:
		return "Diagonal " + line.Text()
	case LineABCD, LineDABC:
		return "The line from the middle of " + line[:2].Text() + " to the middle of " + line[3:].Text()
	}
	return "Wall " + line.Text()
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
	different, missing := 0, []string(nil)
	for i, p := range pairs {
		if l.times(p.line) > 0 {
			different++
		} else if i < 4 {
			missing = append(missing, p.line.Text())
		}
	}
	hasDiagonal := l.times(LineAC)+l.times(LineBD) > 0
	across := min(l.times(LineABCD), 1) + min(l.times(LineDABC), 1)
	if different+across >= unknowns {
		return true
	}
	if len(missing) == 0 {
		l.report("/readings", problem.Stop, "Four walls alone do not fix the room: like a gate without a brace it can lean to either side and keep every wall.",
			"Measure diagonal WY from corner to corner, and XZ to check it.")
		return false
	}
	if !hasDiagonal {
		missing = append(missing, "diagonal WY")
	}
	l.report("/readings", problem.Stop, "The room is not fixed yet: it takes five different lines, and "+strconv.Itoa(different+across)+" "+isAre(different+across)+" read.",
		"Measure "+listed(missing)+".")
	return false
}

func isAre(count int) string {
	if count == 1 {
		return "is"
	}
	return "are"
}

// listed is a list in words: "WX, XY and diagonal WY".
func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
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
	l.report(l.pointer(long), problem.Stop,
		short.Text()+" and "+middle.Text()+" together are "+l.n.Length(reach)+", but "+long.Text()+" between their ends is "+l.n.Length(of)+
			", "+l.n.Amount(of-reach)+" more than they reach: these three lines cannot meet.",
		"Measure "+long.Text()+" again, then "+short.Text()+" and "+middle.Text()+".")
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
			l.report("/readings", problem.Stop, "Two different rooms fit these lines.", "Measure diagonal WY, and XZ to check it.")
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
		l.report("/readings", problem.Stop, "These lines do not fix the room: a slip of the tape would move a corner more than "+strconv.Itoa(loosestHeld)+" times as far, or they cannot meet at all.",
			"Measure diagonal WY, and XZ to check it.")
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
		c := cornerFound(CornerNumbered(i), q[(i+1)%4].minus(q[i]), q[(i+3)%4].minus(q[i]), overOf(l.n))
		if c.Degrees >= sharpest && c.Degrees <= flattest {
			continue
		}
		one, other := wallFrom((i+3)%4, 4), wallFrom(i, 4)
		l.report("/readings", problem.Stop,
			"These lines close, but corner "+c.Corner.Text()+" would be "+AngleText(c.Degrees)+": that is no room with four corners.",
			"Check "+one.Text()+", "+other.Text()+" and the diagonals, and which corner each was taken from. If the corner really is like that, give the corners by their offsets or the walls with their angles.")
		return false
	}
	return true
}

// keep puts the corners and what was read into what was found.
func (l *lines) keep() {
	f := &l.found
	f.Shape = ShapeFromCorners(Lines, l.fit.corners.corners())
	f.Corners = cornersFound(f.Shape, l.n)
	weak := 0
	for i := range f.Corners {
		f.Corners[i].Deviation = l.sigma * math.Sqrt(l.fit.variance(l.fit.corners.angleGradient(i))) * 180 / math.Pi
		if f.Corners[i].Deviation > f.Corners[weak].Deviation {
			weak = i
		}
	}
	if c := f.Corners[weak]; c.Deviation > weakDegrees {
		l.report("/readings", problem.Caution,
			"These lines hold corner "+c.Corner.Text()+" only loosely: a usual slip of the tape turns it by "+AngleText(c.Deviation)+".",
			"Measure the other diagonal too, or each line twice.")
	}
	for i, r := range l.readings {
		f.Lines = append(f.Lines, LineFound{Reading: r, Adjusted: measure.LengthFromMillimetres(l.fit.corners.step(l.taken[i].weights).long())})
	}
}
