package survey

import (
	"ceilingwright/core/measure"
)

// Shape is a ceiling as it was worked out, looking up. The zero Shape is none
// and is not Usable.
//
// Corners go clockwise, A first, one for each letter. A is at the origin and B
// on +x, unless the corners were given as points: those stay as given. Round
// has no corners: it is the circle or ellipse with the axes Length (along x) and
// Width (along y) that touches both axes of the frame, its centre at half of
// each. For the other forms Length and Width are the sides of Bounds.
//
// A rectangle is exact. Corners that were worked out are rounded to the nearest
// nanometre, and everything else follows from the corners as they stand.
type Shape struct {
	Form          Form
	Corners       []Point
	Length, Width measure.Length
}

// ShapeFromSides is the rectangle, or with Round the ellipse, of a length and a
// width. It is not usable where one of them is no length.
func ShapeFromSides(form Form, length, width measure.Length) Shape {
	if length <= 0 || width <= 0 || length > measure.Longest || width > measure.Longest {
		return Shape{}
	}
	if form == Round {
		return Shape{Form: Round, Length: length, Width: width}
	}
	return Shape{Form: Rectangle, Length: length, Width: width,
		Corners: []Point{{}, {length, 0}, {length, width}, {0, width}}}
}

// ShapeFromCorners is the outline with these corners, clockwise looking up. It
// is not usable with fewer than three corners or more than MostCorners. That
// the walls do not cross is the caller's to see to.
func ShapeFromCorners(form Form, corners []Point) Shape {
	if len(corners) < 3 || len(corners) > MostCorners {
		return Shape{}
	}
	s := Shape{Form: form, Corners: corners}
	low, high := s.Bounds()
	s.Length, s.Width = high.X-low.X, high.Y-low.Y
	return s
}

// Usable tells whether there is a ceiling to work on.
func (s Shape) Usable() bool {
	return s.Form == Round && s.Length > 0 && s.Width > 0 || len(s.Corners) >= 3
}

// IsRectangle tells whether the ceiling is exactly a rectangle with A at the
// origin and AB along x, however it was measured.
func (s Shape) IsRectangle() bool {
	return len(s.Corners) == 4 && s.Corners[0] == Point{} && s.Corners[1] == Point{s.Length, 0} &&
		s.Corners[2] == Point{s.Length, s.Width} && s.Corners[3] == Point{0, s.Width}
}

// IsConvex tells whether no corner points into the room: exact. A round ceiling
// is convex.
func (s Shape) IsConvex() bool {
	count := len(s.Corners)
	for i := range s.Corners {
		if side(s.Corners[i], s.Corners[(i+1)%count], s.Corners[(i+2)%count]) < 0 {
			return false
		}
	}
	return s.Usable()
}

// Walls are the walls in order, AB first; none where the ceiling is round.
func (s Shape) Walls() []WallLine {
	walls := make([]WallLine, len(s.Corners))
	for i := range s.Corners {
		walls[i] = s.wall(i)
	}
	return walls
}

func (s Shape) wall(i int) WallLine {
	count := len(s.Corners)
	next := (i + 1) % count
	return WallLine{wallFrom(i, count), CornerNumbered(i), CornerNumbered(next), s.Corners[i], s.Corners[next]}
}

// Wall is the wall of a name, "EF". False where there is none.
func (s Shape) Wall(name Wall) (WallLine, bool) {
	if len(name) == 2 {
		if i := Corner(name[:1]).Number(); i >= 0 && i < len(s.Corners) {
			found := s.wall(i)
			return found, found.Name == name
		}
	}
	return WallLine{}, false
}

// Corner is where a corner is. False where there is none of that name.
func (s Shape) Corner(c Corner) (Point, bool) {
	if i := c.Number(); i >= 0 && i < len(s.Corners) {
		return s.Corners[i], true
	}
	return Point{}, false
}

// Bounds are the least and the greatest x and y of the ceiling: exact.
func (s Shape) Bounds() (low, high Point) {
	if len(s.Corners) == 0 {
		return Point{}, Point{s.Length, s.Width}
	}
	low, high = s.Corners[0], s.Corners[0]
	for _, p := range s.Corners[1:] {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return low, high
}

// TwiceCentre is the middle of the ceiling with x and y doubled. With four
// corners it is where the lines between the middles of opposite walls cross,
// the mean of the corners; with any other number, and where it is round, the
// middle of Bounds. The doubled mean of a rectangle is exact; that of four other
// corners is rounded towards the origin where their sum is odd.
func (s Shape) TwiceCentre() Point {
	if len(s.Corners) == 4 {
		var sum Point
		for _, p := range s.Corners {
			sum = Point{sum.X + p.X, sum.Y + p.Y}
		}
		return Point{sum.X / 2, sum.Y / 2}
	}
	low, high := s.Bounds()
	return Point{low.X + high.X, low.Y + high.Y}
}

// MidLine is the line from the middle of a wall to the middle of the opposite
// one, in a room with four corners; false in any other. A middle that is no
// whole nanometre is rounded towards the origin.
func (s Shape) MidLine(from Wall) (start, end Point, ok bool) {
	wall, ok := s.Wall(from)
	if !ok || len(s.Corners) != 4 {
		return Point{}, Point{}, false
	}
	return wall.Middle(), s.wall((wall.From.Number() + 2) % 4).Middle(), true
}

// Fan are the triangles at corner A that an outline is cut into, in the order of its
// walls; what lies outside the room is below zero. None of a rectangle or a round
// ceiling.
func (s Shape) Fan() []measure.Area {
	if s.Form == Round || s.IsRectangle() {
		return nil
	}
	var fan []measure.Area
	for i := 1; i+1 < len(s.Corners); i++ {
		fan = append(fan, ShapeFromCorners(Points, []Point{s.Corners[0], s.Corners[i], s.Corners[i+1]}).Area())
	}
	return fan
}

// Middles are the two places that pass for the middle of a room with four corners
// of which none points inwards: joined is the one TwiceCentre gives, crossed where
// the diagonals AC and BD cross, and apart the distance between them, all to the
// nearest nanometre. In a parallelogram they are one. False in any other room.
func (s Shape) Middles() (joined, crossed Point, apart measure.Length, ok bool) {
	if len(s.Corners) != 4 || !s.IsConvex() {
		return Point{}, Point{}, 0, false
	}
	twice := s.TwiceCentre()
	joined = Point{twice.X.Half(), twice.Y.Half()}
	a, b := spotOf(s.Corners[0]), spotOf(s.Corners[1])
	ac, bd := spotOf(s.Corners[2]).minus(a), spotOf(s.Corners[3]).minus(b)
	share := b.minus(a).cross(bd) / ac.cross(bd)
	crossed = a.plus(ac.times(share)).point()
	return joined, crossed, between(joined, crossed), true
}

// FromA is a place as it is taped from corner A: X along wall AB and Y square to
// it, to the nearest nanometre. In a round room it is the place itself.
func (s Shape) FromA(p Point) Point {
	x, y, ok := s.DirectionOf(AB)
	if !ok {
		return p
	}
	along, to := spot{x, y}, spotOf(p).minus(spotOf(s.Corners[0]))
	return spot{along.dot(to), along.cross(to)}.point()
}

// Area is the area of the ceiling. Between straight walls it is exact for the
// corners as they stand (the surveyor's rule: half the sum of each x times the
// difference of the neighbouring y). A round one is π × length × width ÷ 4,
// rounded to a millionth of a square millimetre.
func (s Shape) Area() measure.Area {
	if s.Form == Round {
		return ellipseArea(s.Length, s.Width)
	}
	var sum measure.Area
	count := len(s.Corners)
	for i, p := range s.Corners {
		next, last := s.Corners[(i+1)%count], s.Corners[(i+count-1)%count]
		sum = sum.Add(measure.AreaOf(p.X, next.Y-last.Y))
	}
	return sum.Times(half)
}

var half = measure.NumberFromFraction(1, 2)

// Perimeter is the way round the ceiling: the walls added up, each to the
// nearest nanometre, and exact where they run along the axes; for a round one
// see ellipsePerimeter.
func (s Shape) Perimeter() measure.Length {
	if s.Form == Round {
		return ellipsePerimeter(s.Length, s.Width)
	}
	var sum measure.Length
	for i := range s.Corners {
		sum += s.wall(i).Length()
	}
	return sum
}

// Series is what the perimeter of a round room is over π times the mean of its two
// axes: 1 in a circle.
func (s Shape) Series() float64 { return ellipseSeries(s.Length.Millimetres(), s.Width.Millimetres()) }

// Contains tells whether a point is in the room or on its wall: exact between
// straight walls.
func (s Shape) Contains(p Point) bool {
	if s.Form == Round {
		return s.Usable() && inEllipse(s.Length, s.Width, p)
	}
	inside := false
	for i := range s.Corners {
		w := s.wall(i)
		if w.touches(p) {
			return true
		}
		// A ray from p along +x crosses a wall whose ends lie above and below.
		if (w.Start.Y > p.Y) != (w.End.Y > p.Y) && (side(w.Start, w.End, p) > 0) == (w.End.Y > w.Start.Y) {
			inside = !inside
		}
	}
	return inside
}

// Clearance is how far a point is from the nearest wall, to the nearest
// nanometre: below 0 outside the room.
func (s Shape) Clearance(p Point) measure.Length {
	if !s.Usable() {
		return 0
	}
	clear := measure.Longest * 8
	if s.Form == Round {
		clear = toEllipse(s.Length, s.Width, p)
	}
	for i := range s.Corners {
		clear = min(clear, s.wall(i).Distance(p))
	}
	if !s.Contains(p) {
		return -clear
	}
	return clear
}

// DirectionOf is the unit vector along a wall, from its first corner to its
// second. False where there is no such wall. It is 1 or 0 to the last bit along
// the axes.
func (s Shape) DirectionOf(name Wall) (x, y float64, ok bool) {
	w, ok := s.Wall(name)
	along := w.direction()
	return along.x, along.y, ok
}
