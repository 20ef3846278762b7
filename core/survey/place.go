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
		p, clash := f.offCorners(s, "", measure.Notation{})
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
func (f Fixture) offCorners(s Shape, called string, n measure.Notation) (Point, *problem.Problem) {
	one, oneOK := s.Corner(f.CornerOne)
	two, twoOK := s.Corner(f.CornerTwo)
	switch {
	case !oneOK:
		return Point{}, stop("/cornerOne", "The room has no such corner to measure from.", "Choose a corner of the room.")
	case !twoOK || f.CornerOne == f.CornerTwo:
		return Point{}, stop("/cornerTwo", "A place takes two different corners to measure from.", "Choose another corner of the room.")
	case f.FromOne <= 0:
		return Point{}, stop("/fromOne", "The distance from corner "+f.CornerOne.Text()+" to the middle of "+called+" is not given.", "Measure it, or say where it is in another way.")
	case f.FromTwo <= 0:
		return Point{}, stop("/fromTwo", "The distance from corner "+f.CornerTwo.Text()+" to the middle of "+called+" is not given.", "Measure it, or say where it is in another way.")
	}
	places, clash := f.crossings(one, two, n)
	if clash != nil {
		return Point{}, clash
	}
	return f.oneOf(places, one, two, s, called)
}

func stop(at, what, do string) *problem.Problem {
	return &problem.Problem{At: at, Severity: problem.Stop, What: words.Raw(what), Do: words.Raw(do)}
}

// crossings are the two places where the tapes can meet: the first clockwise
// of the line from corner one to corner two, looking up.
func (f Fixture) crossings(one, two Point, n measure.Notation) (places [2]Point, clash *problem.Problem) {
	base := spotOf(two).minus(spotOf(one))
	apart, a, b := base.long(), f.FromOne.Millimetres(), f.FromTwo.Millimetres()
	switch {
	case a+b < apart:
		return places, stop("/fromTwo", "From corner "+f.CornerOne.Text()+" and from corner "+f.CornerTwo.Text()+" the tapes reach "+n.Length(f.FromOne+f.FromTwo)+
			" together, but the corners are "+n.Length(between(one, two))+" apart: they cannot meet.", "Measure both again.")
	case math.Abs(a-b) > apart:
		return places, stop("/fromTwo", "The two distances differ by "+n.Length((f.FromOne-f.FromTwo).Abs())+", but corners "+f.CornerOne.Text()+" and "+f.CornerTwo.Text()+
			" are only "+n.Length(between(one, two))+" apart: the tapes cannot meet.", "Measure both again, and see that each starts at its own corner.")
	}
	foot := apex(apart, a, b)
	along := base.unit()
	on, off := spotOf(one).plus(along.times(foot.x)), along.quarter().times(foot.y)
	return [2]Point{on.plus(off).point(), on.minus(off).point()}, nil
}

// oneOf is which of the two places is meant.
func (f Fixture) oneOf(places [2]Point, one, two Point, s Shape, called string) (Point, *problem.Problem) {
	if corner, ok := s.Corner(f.Side); ok {
		switch side(one, two, corner) {
		case 1:
			return places[0], nil
		case -1:
			return places[1], nil
		}
		return Point{}, stop("/side", "Corner "+f.Side.Text()+" lies on the line between the two corners and tells no side.", "Choose a corner that lies on the same side as "+called+".")
	}
	first, second := s.Contains(places[0]), s.Contains(places[1])
	switch {
	case first && second && places[0] != places[1]:
		return Point{}, stop("/side", "Two places in the room are as far from corners "+f.CornerOne.Text()+" and "+f.CornerTwo.Text()+".", "Say on which side of the line between them: choose a corner that lies there.")
	case second && !first:
		return places[1], nil
	}
	return places[0], nil
}

// CheckIn says what keeps the fixture from being used in a room of any shape,
// or makes it hard to believe, at the blank that is to blame. In a room without
// a shape it only looks at what is missing.
func (f Fixture) CheckIn(s Shape, n measure.Notation) []problem.Problem {
	return f.checkIn(s, n, "the light")
}

// CheckIn is as for a fixture, with the obstruction's own name. A beam runs into
// walls and may be as long as the room.
func (o Obstruction) CheckIn(s Shape, n measure.Notation) []problem.Problem {
	found := o.checkIn(s, n, o.Called())
	if o.Kind == Beam {
		found = slices.DeleteFunc(found, func(p problem.Problem) bool { return p.Severity == problem.Caution })
	}
	return found
}

// Called is the obstruction in a sentence: "the hatch “attic”".
func (o Obstruction) Called() string {
	kind := "the " + string(o.Kind)
	if o.Kind == OtherKind || o.Kind == "" {
		kind = "the obstruction"
	}
	if o.Name == "" {
		return kind
	}
	return kind + " “" + o.Name + "”"
}

func (f Fixture) checkIn(s Shape, n measure.Notation, called string) []problem.Problem {
	var found []problem.Problem
	switch f.At {
	case Measured:
		if found = f.checkMeasured(s, called); len(found) == 0 && s.IsRectangle() {
			found = append(f.checkAxis("/fromDA", DA, BC, f.FromDA, s.Length, n, called), f.checkAxis("/fromAB", AB, CD, f.FromAB, s.Width, n, called)...)
		}
	case FromCorners:
		if s.Usable() {
			if _, clash := f.offCorners(s, called, n); clash != nil {
				found = append(found, *clash)
			} else if f.isFlat(s) {
				found = append(found, problem.Problem{At: "/fromTwo", Severity: problem.Caution,
					What: words.Raw("The tapes from corners " + f.CornerOne.Text() + " and " + f.CornerTwo.Text() + " cross so flat that a slip of one moves the place three times as far."),
					Do:   words.Say("Measure from two other corners, so that the tapes cross more nearly square.")})
			}
		}
	case InMiddle:
	default:
		return nil
	}
	size := f.checkSize(s, n, called)
	if s.Usable() && len(found)+len(size) == 0 {
		found = append(found, f.checkInside(s, n, called)...)
	}
	return append(found, size...)
}

// checkMeasured looks at the distances off two walls.
func (f Fixture) checkMeasured(s Shape, called string) []problem.Problem {
	last, first := wallNames(s)
	var found []problem.Problem
	for _, d := range []struct {
		at, wall string
		from     measure.Length
	}{{"/fromDA", last, f.FromDA}, {"/fromAB", first, f.FromAB}} {
		if d.from <= 0 {
			found = append(found, *stop(d.at, "The distance from "+d.wall+" to the centre of "+called+" is not given.", "Measure it, or say that "+called+" is in the middle."))
		}
	}
	if _, ok := s.offWalls(f.FromDA, f.FromAB); s.Usable() && !ok && len(found) == 0 {
		found = append(found, *stop("/at", capital(last)+" and "+first+" lie so nearly on one line that distances off them tell no place.", "Measure from two corners instead."))
	}
	return found
}

// checkAxis looks at one distance in a rectangle, where both walls it lies
// between can be named.
func (f Fixture) checkAxis(at string, from, to Wall, place, side measure.Length, n measure.Notation, called string) []problem.Problem {
	do := "Check both numbers: the distance goes to the centre of " + called + "."
	near, clear := from, place
	if side-place < place {
		near, clear = to, side-place
	}
	switch {
	case place >= side:
		return []problem.Problem{*stop(at, capital(called)+" is "+n.Length(place)+" from wall "+from.Text()+", but wall "+to.Text()+" is only "+n.Length(side)+
			" away, so it lies "+n.Length(place-side)+" outside the room.", "Measure again from wall "+from.Text()+" to the centre of "+called+".")}
	case !f.Rectangular && clear < f.Across.Half():
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: words.Raw(capital(called) + " is " + n.Length(f.Across) + " across and its centre " + n.Length(clear) + " from wall " + near.Text() + ", so it would reach into the wall."), Do: words.Raw(do)}}
	}
	return nil
}

// wallNames are the two walls that meet at A, the last and the first, as they
// stand in a sentence.
func wallNames(s Shape) (last, first string) {
	switch count := len(s.Corners); {
	case s.Form == Round:
		return "the end of the length", "the end of the width"
	case count >= 3:
		return "wall " + wallFrom(count-1, count).Text(), "wall WX"
	}
	return "wall ZW", "wall WX"
}

// checkInside looks at whether the fixture lies in the room and reaches into
// no wall.
func (f Fixture) checkInside(s Shape, n measure.Notation, called string) []problem.Problem {
	at, do := "/fromDA", "Check both numbers: the distance goes to the centre of "+called+"."
	switch f.At {
	case InMiddle:
		at, do = "/at", "Measure where it is."
	case FromCorners:
		at = "/fromOne"
	}
	middle := f.place(s)
	if s.Clearance(middle) <= 0 {
		return []problem.Problem{*stop(at, capital(called)+" lies "+n.Amount(s.Clearance(middle).Abs())+" outside the room.", do)}
	}
	for _, p := range f.corners(s, middle) {
		if !s.Contains(p) {
			return []problem.Problem{{At: at, Severity: problem.Caution, What: words.Raw("With its size " + called + " would reach " + n.Amount(s.Clearance(p).Abs()) + " into the wall."), Do: words.Raw(do)}}
		}
	}
	if clear := s.Clearance(middle); !f.Rectangular && clear < f.Across.Half() {
		return []problem.Problem{{At: at, Severity: problem.Caution,
			What: words.Raw(capital(called) + " is " + n.Length(f.Across) + " across and its centre " + n.Length(clear) + " from the wall, so it would reach into it."), Do: words.Raw(do)}}
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
		p, _ := f.offCorners(s, "", measure.Notation{})
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
func (f Fixture) checkSize(s Shape, n measure.Notation, called string) []problem.Problem {
	var found []problem.Problem
	least := min(s.Length, s.Width)
	if s.Usable() && f.Across > least {
		found = append(found, problem.Problem{At: "/across", Severity: problem.Caution, What: words.Raw(capital(called) + " reads " + n.Length(f.Across) + " across, wider than the room."), Do: words.Say("Check the number and its unit.")})
	}
	if s.Usable() && f.Rectangular && f.Deep > least {
		found = append(found, problem.Problem{At: "/deep", Severity: problem.Caution, What: words.Raw(capital(called) + " reads " + n.Length(f.Deep) + " deep, wider than the room."), Do: words.Say("Check the number and its unit.")})
	}
	if f.Rectangular && f.Across > 0 && f.Deep <= 0 {
		found = append(found, *stop("/deep", "How deep "+called+" is, square to its length, is not given.", "Measure it, or say that it is round."))
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

// capital is a text with its first letter, an English one, made a capital.
func capital(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}
