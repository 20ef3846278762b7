package survey

import (
	"math"
	"slices"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// flatCrossing is the sine of 20°: where two tapes, or two walls, cross flatter
// than that, a slip of one moves the place three times as far. A choice: common
// practice, no source.
const flatCrossing = 0.342

// TwiceMiddle is the middle of the fixture in a room of any shape, with x and y
// doubled, as TwiceCentre is. False where there is none, where it is not known
// well enough, or where it is not inside the room; CheckIn says why. A place
// measured off two walls along the axes is exact, any other is to the nearest
// nanometre.
func (f Fixture) TwiceMiddle(s Shape) (Point, bool) {
	if !s.Usable() {
		return Point{}, false
	}
	twice, ok := Point{}, false
	switch f.At {
	case InMiddle:
		twice, ok = s.TwiceCentre(), true
	case Measured:
		if f.FromDA > 0 && f.FromAB > 0 {
			p, found := s.offWalls(f.FromDA, f.FromAB)
			twice, ok = Point{2 * p.X, 2 * p.Y}, found
		}
	case FromCorners:
		p, clash := f.offCorners(s, words.Text{})
		twice, ok = Point{2 * p.X, 2 * p.Y}, clash == nil
	}
	if !ok || s.Clearance(Point{twice.X / 2, twice.Y / 2}) <= 0 {
		return Point{}, false
	}
	return twice, true
}

// Middle is the middle of the fixture; an odd nanometre is rounded towards the
// origin.
func (f Fixture) Middle(s Shape) (Point, bool) {
	twice, ok := f.TwiceMiddle(s)
	return Point{twice.X / 2, twice.Y / 2}, ok
}

// Axis is the unit vector along which the fixture lies: towards the second
// point on its axis where one is given, and along wall AB where not. given is
// whether there was one. A round room has no wall AB: there it is x.
func (f Fixture) Axis(s Shape) (x, y float64, given bool) {
	x, y, ok := s.DirectionOf(AB)
	if !ok {
		x, y = 1, 0
	}
	if f.AxisDA <= 0 || f.AxisAB <= 0 {
		return x, y, false
	}
	from, known := f.Middle(s)
	to, found := s.offWalls(f.AxisDA, f.AxisAB)
	if along := spotOf(to).minus(spotOf(from)).unit(); known && found && along != (spot{}) {
		return along.x, along.y, true
	}
	return x, y, false
}

// offWalls is the place that is fromLast off the last wall and fromFirst off the
// first one, the two that meet at A, each square to its wall. In a round room
// the axes of the frame stand for them. False where the two lie so nearly on one
// line that they tell no place.
func (s Shape) offWalls(fromLast, fromFirst measure.Length) (Point, bool) {
	count := len(s.Corners)
	if count == 0 {
		return Point{fromLast, fromFirst}, s.Form == Round
	}
	first, last := s.wall(0), s.wall(count-1)
	if first.Start.Y == first.End.Y && first.End.X > first.Start.X && last.Start.X == last.End.X && last.End.Y < last.Start.Y {
		return Point{first.Start.X + fromLast, first.Start.Y + fromFirst}, true
	}
	one, other := first.direction().quarter(), last.direction().quarter()
	sine := one.cross(other)
	if math.Abs(sine) < flatCrossing {
		return Point{}, false
	}
	a, b := fromFirst.Millimetres(), fromLast.Millimetres()
	from := spot{(float64(a*other.y) - float64(b*one.y)) / sine, (float64(b*one.x) - float64(a*other.x)) / sine}
	return spotOf(first.Start).plus(from).point(), true
}

// offCorners is the place at FromOne from CornerOne and FromTwo from CornerTwo,
// or the problem that keeps it from being known. Of the two places where the
// tapes can meet it is the one on the side that is named; else the one inside
// the room, where the other is not.
func (f Fixture) offCorners(s Shape, called words.Text) (Point, *problem.Problem) {
	measureIt := words.Say("Measure it, or say where it is in another way.")
	one, oneOK := s.Corner(f.CornerOne)
	two, twoOK := s.Corner(f.CornerTwo)
	switch {
	case !oneOK:
		return Point{}, stop("/cornerOne", words.Say("The room has no such corner to measure from."), words.Say("Choose a corner of the room."))
	case !twoOK || f.CornerOne == f.CornerTwo:
		return Point{}, stop("/cornerTwo", words.Say("A place takes two different corners to measure from."), words.Say("Choose another corner of the room."))
	case f.FromOne <= 0:
		return Point{}, stop("/fromOne", noDistance(f.CornerOne, called), measureIt)
	case f.FromTwo <= 0:
		return Point{}, stop("/fromTwo", noDistance(f.CornerTwo, called), measureIt)
	}
	places, clash := f.crossings(one, two)
	if clash != nil {
		return Point{}, clash
	}
	return f.oneOf(places, one, two, s, called)
}

func noDistance(from Corner, called words.Text) words.Text {
	return words.Say("The distance from corner {corner} to the middle of {thing} is not given.", words.Of("corner", from), words.Of("thing", called))
}

func stop(at string, what, do words.Text) *problem.Problem {
	return &problem.Problem{At: at, Severity: problem.Stop, What: what, Do: do}
}

func caution(at string, what, do words.Text) []problem.Problem {
	return []problem.Problem{{At: at, Severity: problem.Caution, What: what, Do: do}}
}

// crossings are the two places where the tapes can meet: the first clockwise
// of the line from corner one to corner two, looking up.
func (f Fixture) crossings(one, two Point) (places [2]Point, clash *problem.Problem) {
	base := spotOf(two).minus(spotOf(one))
	from, to, far := words.Of("one", f.CornerOne), words.Of("two", f.CornerTwo), words.Length("apart", between(one, two))
	apart, a, b := base.long(), f.FromOne.Millimetres(), f.FromTwo.Millimetres()
	switch {
	case a+b < apart:
		return places, stop("/fromTwo",
			words.Say("From corner {one} and from corner {two} the tapes reach {reach} together, but the corners are {apart} apart: they cannot meet.",
				from, to, far, words.Length("reach", f.FromOne+f.FromTwo)),
			words.Say("Measure both again."))
	case math.Abs(a-b) > apart:
		return places, stop("/fromTwo",
			words.Say("The two distances differ by {off}, but corners {one} and {two} are only {apart} apart: the tapes cannot meet.",
				from, to, far, words.Length("off", (f.FromOne-f.FromTwo).Abs())),
			words.Say("Measure both again, and see that each starts at its own corner."))
	}
	foot := apex(apart, a, b)
	along := base.unit()
	on, off := spotOf(one).plus(along.times(foot.x)), along.quarter().times(foot.y)
	return [2]Point{on.plus(off).point(), on.minus(off).point()}, nil
}

// oneOf is which of the two places is meant.
func (f Fixture) oneOf(places [2]Point, one, two Point, s Shape, called words.Text) (Point, *problem.Problem) {
	if corner, ok := s.Corner(f.Side); ok {
		switch side(one, two, corner) {
		case 1:
			return places[0], nil
		case -1:
			return places[1], nil
		}
		return Point{}, stop("/side", words.Say("Corner {corner} lies on the line between the two corners and tells no side.", words.Of("corner", f.Side)),
			words.Say("Choose a corner that lies on the same side as {thing}.", words.Of("thing", called)))
	}
	first, second := s.Contains(places[0]), s.Contains(places[1])
	switch {
	case first && second && places[0] != places[1]:
		return Point{}, stop("/side", words.Say("Two places in the room are as far from corners {one} and {two}.", words.Of("one", f.CornerOne), words.Of("two", f.CornerTwo)),
			words.Say("Say on which side of the line between them: choose a corner that lies there."))
	case second && !first:
		return places[1], nil
	}
	return places[0], nil
}

// CheckIn says what keeps the fixture from being used in a room of any shape,
// or makes it hard to believe, at the blank that is to blame. In a room without
// a shape it only looks at what is missing.
func (f Fixture) CheckIn(s Shape) []problem.Problem { return f.checkIn(s, TheLight) }

// TheLight is the fixture in a sentence.
var TheLight = words.Say("the light")

// CheckIn is as for a fixture, with the obstruction's own name. A beam runs into
// walls and may be as long as the room.
func (o Obstruction) CheckIn(s Shape) []problem.Problem {
	found := o.checkIn(s, o.Called())
	if o.Kind == Beam {
		found = slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Severity == problem.Caution })
	}
	return found
}

// Called is the obstruction in a sentence: "the hatch “attic”".
func (o Obstruction) Called() words.Text {
	if o.Name == "" {
		return o.Kind.Named()
	}
	return words.Say("{thing} “{name}”", words.Of("thing", o.Kind.Named()), words.Name("name", o.Name))
}

// Named is an obstruction of the kind in a sentence: "the hatch".
func (k Kind) Named() words.Text {
	switch k {
	case Vent:
		return words.Say("the vent")
	case Hatch:
		return words.Say("the hatch")
	case Detector:
		return words.Say("the detector")
	case Sprinkler:
		return words.Say("the sprinkler")
	case Beam:
		return words.Say("the beam")
	}
	return words.Say("the obstruction")
}

func (f Fixture) checkIn(s Shape, called words.Text) []problem.Problem {
	var found []problem.Problem
	switch f.At {
	case Measured:
		if found = f.checkMeasured(s, called); len(found) == 0 && s.IsRectangle() {
			found = append(f.checkAxis("/fromDA", DA, BC, f.FromDA, s.Length, called), f.checkAxis("/fromAB", AB, CD, f.FromAB, s.Width, called)...)
		}
	case FromCorners:
		if s.Usable() {
			if _, clash := f.offCorners(s, called); clash != nil {
				found = append(found, *clash)
			} else if f.isFlat(s) {
				found = caution("/fromTwo",
					words.Say("The tapes from corners {one} and {two} cross so flat that a slip of one moves the place three times as far.",
						words.Of("one", f.CornerOne), words.Of("two", f.CornerTwo)),
					words.Say("Measure from two other corners, so that the tapes cross more nearly square."))
			}
		}
	case InMiddle:
	default:
		return nil
	}
	size := f.checkSize(s, called)
	if s.Usable() && len(found)+len(size) == 0 {
		found = append(found, f.checkInside(s, called)...)
	}
	return append(found, size...)
}

// checkMeasured looks at the distances off two walls.
func (f Fixture) checkMeasured(s Shape, called words.Text) []problem.Problem {
	last, first := wallNames(s)
	var found []problem.Problem
	thing := words.Of("thing", called)
	for _, d := range []struct {
		at   string
		wall words.Text
		from measure.Length
	}{{"/fromDA", last, f.FromDA}, {"/fromAB", first, f.FromAB}} {
		if d.from <= 0 {
			found = append(found, *stop(d.at, words.Say("The distance from {wall} to the centre of {thing} is not given.", words.Of("wall", d.wall), thing),
				words.Say("Measure it, or say that {thing} is in the middle.", thing)))
		}
	}
	if _, ok := s.offWalls(f.FromDA, f.FromAB); s.Usable() && !ok && len(found) == 0 {
		found = append(found, *stop("/at",
			words.Say("{^last} and {first} lie so nearly on one line that distances off them tell no place.", words.Of("last", last), words.Of("first", first)),
			words.Say("Measure from two corners instead.")))
	}
	return found
}

// checkAxis looks at one distance in a rectangle, where both walls it lies
// between can be named.
func (f Fixture) checkAxis(at string, from, to Wall, place, side measure.Length, called words.Text) []problem.Problem {
	thing := words.Of("thing", called)
	near, clear := from, place
	if side-place < place {
		near, clear = to, side-place
	}
	switch {
	case place >= side:
		return []problem.Problem{*stop(at,
			words.Say("{^thing} is {place} from wall {from}, but wall {to} is only {side} away, so it lies {outside} outside the room.", thing,
				words.Length("place", place), words.Of("from", from), words.Of("to", to), words.Length("side", side), words.Length("outside", place-side)),
			words.Say("Measure again from wall {from} to the centre of {thing}.", words.Of("from", from), thing))}
	case !f.Rectangular && clear < f.Across.Half():
		return caution(at,
			words.Say("{^thing} is {across} across and its centre {clear} from wall {wall}, so it would reach into the wall.", thing,
				words.Length("across", f.Across), words.Length("clear", clear), words.Of("wall", near)),
			checkBoth(called))
	}
	return nil
}

func checkBoth(called words.Text) words.Text {
	return words.Say("Check both numbers: the distance goes to the centre of {thing}.", words.Of("thing", called))
}

// wallNames are the two walls that meet at A, the last and the first, as they
// stand in a sentence.
func wallNames(s Shape) (last, first words.Text) {
	count := len(s.Corners)
	if s.Form == Round {
		return words.Say("the end of the length"), words.Say("the end of the width")
	}
	if count < 3 {
		count = 4
	}
	return Line(wallFrom(count-1, count)).Named(), LineAB.Named()
}

// checkInside looks at whether the fixture lies in the room and reaches into
// no wall.
func (f Fixture) checkInside(s Shape, called words.Text) []problem.Problem {
	at, do, thing := "/fromDA", checkBoth(called), words.Of("thing", called)
	switch f.At {
	case InMiddle:
		at, do = "/at", words.Say("Measure where it is.")
	case FromCorners:
		at = "/fromOne"
	}
	middle := f.place(s)
	if s.Clearance(middle) <= 0 {
		return []problem.Problem{*stop(at, words.Say("{^thing} lies {off} outside the room.", thing, words.Amount("off", s.Clearance(middle).Abs())), do)}
	}
	for _, p := range f.corners(s, middle) {
		if !s.Contains(p) {
			return caution(at, words.Say("With its size {thing} would reach {off} into the wall.", thing, words.Amount("off", s.Clearance(p).Abs())), do)
		}
	}
	if clear := s.Clearance(middle); !f.Rectangular && clear < f.Across.Half() {
		return caution(at, words.Say("{^thing} is {across} across and its centre {clear} from the wall, so it would reach into it.", thing,
			words.Length("across", f.Across), words.Length("clear", clear)), do)
	}
	return nil
}

// place is the middle, in the room or not.
func (f Fixture) place(s Shape) Point {
	switch f.At {
	case Measured:
		p, _ := s.offWalls(f.FromDA, f.FromAB)
		return p
	case FromCorners:
		p, _ := f.offCorners(s, words.Text{})
		return p
	}
	twice := s.TwiceCentre()
	return Point{twice.X / 2, twice.Y / 2}
}

// corners are those of a rectangular fixture round its middle, to the nearest
// nanometre; none of a round one.
func (f Fixture) corners(s Shape, middle Point) []Point {
	if !f.Rectangular || f.Across <= 0 || f.Deep <= 0 {
		return nil
	}
	x, y, _ := f.Axis(s)
	along := spot{x, y}
	right, down := along.times(f.Across.Millimetres()/2), along.quarter().times(f.Deep.Millimetres()/2)
	from := spotOf(middle)
	return []Point{
		from.minus(right).minus(down).point(), from.plus(right).minus(down).point(),
		from.plus(right).plus(down).point(), from.minus(right).plus(down).point(),
	}
}

// checkSize looks at how large the fixture is.
func (f Fixture) checkSize(s Shape, called words.Text) []problem.Problem {
	var found []problem.Problem
	least, thing := min(s.Length, s.Width), words.Of("thing", called)
	if s.Usable() && f.Across > least {
		found = caution("/across", words.Say("{^thing} reads {l} across, wider than the room.", thing, words.Length("l", f.Across)), checkItsUnit)
	}
	if s.Usable() && f.Rectangular && f.Deep > least {
		found = append(found, caution("/deep", words.Say("{^thing} reads {l} deep, wider than the room.", thing, words.Length("l", f.Deep)), checkItsUnit)...)
	}
	if f.Rectangular && f.Across > 0 && f.Deep <= 0 {
		found = append(found, *stop("/deep", words.Say("How deep {thing} is, square to its length, is not given.", thing), words.Say("Measure it, or say that it is round.")))
	}
	return found
}

// isFlat tells whether the tapes from two corners cross flatter than a place
// can be trusted.
func (f Fixture) isFlat(s Shape) bool {
	one, _ := s.Corner(f.CornerOne)
	two, _ := s.Corner(f.CornerTwo)
	p := spotOf(f.place(s))
	return math.Abs(p.minus(spotOf(one)).unit().cross(p.minus(spotOf(two)).unit())) < flatCrossing
}
