package setout

import "math"

// The search for the roomiest place stops when no place can leave roomiest
// more than the best one found, or after mostCells parts of the room have been
// looked at; as long as the mask fits nowhere, roughly is near enough. Even is
// how much of the least border is given up where that lets opposite borders be
// alike. Choices: common practice, no source.
const (
	roomiest  = 2e6  // 2 mm, in nanometres
	roughly   = 50e6 // 50 mm
	even      = 5e6  // 5 mm
	mostCells = 1000
)

// block is a wall as the middle of a box sees it, in the frame of the box.
type block struct {
	x, y, dx, dy float64 // middle of the wall, and from there to its end
	long, wide   float64 // half the box
	wall         halfPlane
	reach        float64 // of half the box towards the wall
}

// blockOf is a wall from one place to another, for a box of half sides long and
// wide.
func blockOf(fromX, fromY, toX, toY, long, wide float64) block {
	dx, dy := (toX-fromX)/2, (toY-fromY)/2
	size := math.Sqrt(float64(dx*dx) + float64(dy*dy))
	nx, ny := -dy/size, dx/size
	return block{
		x: fromX + dx, y: fromY + dy, dx: dx, dy: dy, long: long, wide: wide,
		wall:  halfPlane{nx, ny, -float64(nx*fromX) - float64(ny*fromY)},
		reach: float64(math.Abs(nx)*long) + float64(math.Abs(ny)*wide),
	}
}

// beside is how far a box with its middle at a place lies beyond the wall along
// its own two sides; below zero where it stands across from the wall.
func (b block) beside(x, y float64) (alongX, alongY float64) {
	return math.Abs(x-b.x) - math.Abs(b.dx) - b.long, math.Abs(y-b.y) - math.Abs(b.dy) - b.wide
}

// clear is the distance between the wall and a box with its middle at a place;
// where they cross it is below zero, by as much as the box would have to be
// moved to be free. It bends one way only, as the distance from a convex figure
// does: on a stretch it is greatest at an end.
func (b block) clear(x, y float64) float64 {
	alongX, alongY := b.beside(x, y)
	square := max(math.Abs(b.wall.at(x, y))-b.reach, alongX, alongY)
	if square <= 0 {
		return square
	}
	wayX, wayY := b.way(x, y)
	return math.Sqrt(float64(wayX*wayX) + float64(wayY*wayY))
}

// way is the shortest way from the wall to a box that does not cross it: it
// starts at an end of the wall or ends at a corner of the box.
func (b block) way(x, y float64) (wayX, wayY float64) {
	shortest := math.Inf(1)
	try := func(dx, dy float64) {
		if square := float64(dx*dx) + float64(dy*dy); square < shortest {
			shortest, wayX, wayY = square, dx, dy
		}
	}
	for _, end := range [2]float64{-1, 1} {
		fromX, fromY := b.x+float64(end*b.dx), b.y+float64(end*b.dy)
		try(within(fromX, x, b.long)-fromX, within(fromY, y, b.wide)-fromY)
	}
	square := float64(b.dx*b.dx) + float64(b.dy*b.dy)
	for _, corner := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		px, py := x+float64(corner[0]*b.long)-b.x, y+float64(corner[1]*b.wide)-b.y
		share := within((float64(px*b.dx)+float64(py*b.dy))/square, 0, 1)
		try(px-float64(share*b.dx), py-float64(share*b.dy))
	}
	return wayX, wayY
}

// within is the place nearest to at that is no farther than half from middle.
func within(at, middle, half float64) float64 {
	return min(max(at, middle-half), middle+half)
}

// most is the most that a box with its middle in a cell stays clear of the wall:
// that at one of the corners of the cell.
func (b block) most(c cell) float64 {
	most := math.Inf(-1)
	for _, corner := range c.corners() {
		most = max(most, b.clear(corner[0], corner[1]))
	}
	return most
}

// facing is the half-plane that touches what the box keeps from the wall, seen
// from a place: there it keeps as much, elsewhere never more.
func (b block) facing(x, y float64) halfPlane {
	clear := b.clear(x, y)
	if clear > 0 {
		wayX, wayY := b.way(x, y)
		return touching(wayX/clear, wayY/clear, x, y, clear)
	}
	alongX, alongY := b.beside(x, y)
	nx, ny, off := b.wall.nx, b.wall.ny, b.wall.at(x, y)
	switch clear {
	case alongX:
		nx, ny, off = 1, 0, x-b.x
	case alongY:
		nx, ny, off = 0, 1, y-b.y
	}
	if off < 0 {
		nx, ny = -nx, -ny
	}
	return touching(nx, ny, x, y, clear)
}

// touching is the half-plane with this normal that leaves so much at a place.
func touching(nx, ny, x, y, clear float64) halfPlane {
	return halfPlane{nx, ny, clear - float64(nx*x) - float64(ny*y)}
}

// cell is a part of the room with the most that a box in it can stay clear of
// all walls.
type cell struct{ x, y, halfX, halfY, most float64 }

func (c cell) corners() [4][2]float64 {
	return [4][2]float64{
		{c.x - c.halfX, c.y - c.halfY}, {c.x + c.halfX, c.y - c.halfY},
		{c.x + c.halfX, c.y + c.halfY}, {c.x - c.halfX, c.y + c.halfY},
	}
}

// search is a hunt for the place where a box stays clearest of the walls of any
// outline, by cutting the room into cells and leaving those that cannot beat
// the best place known (branch and bound; Land and Doig 1960, from memory). It
// works in the frame of the box.
type search struct {
	blocks []block
	// corners of the outline in order, x and y.
	corners [][2]float64
	cells   []cell // a heap, the most promising first
	planes  []halfPlane
	x, y    float64
	least   float64
}

// clear is how clear of all walls a box with its middle at a place stays. A
// place outside the room counts as not clear by its distance from the walls.
func (s *search) clear(x, y float64) float64 {
	least := s.inside(x, y)
	for _, b := range s.blocks {
		least = min(least, b.clear(x, y))
	}
	return least
}

// most is the most clear of all walls that a box in a cell can stay.
func (s *search) most(c cell) float64 {
	least := s.inside(c.x, c.y) + math.Sqrt(float64(c.halfX*c.halfX)+float64(c.halfY*c.halfY))
	for _, b := range s.blocks {
		least = min(least, b.most(c))
	}
	return least
}

// inside is the distance of a place from the nearest wall, below zero outside
// the room.
func (s *search) inside(x, y float64) float64 {
	square, inside := math.Inf(1), false
	from := s.corners[len(s.corners)-1]
	for _, to := range s.corners {
		dx, dy := to[0]-from[0], to[1]-from[1]
		px, py := x-from[0], y-from[1]
		share := (float64(px*dx) + float64(py*dy)) / (float64(dx*dx) + float64(dy*dy))
		share = min(max(share, 0), 1)
		offX, offY := px-float64(share*dx), py-float64(share*dy)
		square = min(square, float64(offX*offX)+float64(offY*offY))
		if (from[1] > y) != (to[1] > y) && x < from[0]+float64(dx*(py/dy)) {
			inside = !inside
		}
		from = to
	}
	if inside {
		return math.Sqrt(square)
	}
	return -math.Sqrt(square)
}

// run finds the place.
func (s *search) run() {
	low, high := s.corners[0], s.corners[0]
	for _, c := range s.corners {
		low[0], low[1] = min(low[0], c[0]), min(low[1], c[1])
		high[0], high[1] = max(high[0], c[0]), max(high[1], c[1])
	}
	s.x, s.y = (low[0]+high[0])/2, (low[1]+high[1])/2
	s.least = s.clear(s.x, s.y)
	s.push(cell{s.x, s.y, (high[0] - low[0]) / 2, (high[1] - low[1]) / 2, math.Inf(1)})
	for range mostCells {
		if len(s.cells) == 0 || s.cells[0].most <= s.least+s.near() {
			return
		}
		c := s.pop()
		one, other := s.split(c)
		s.try(one)
		s.try(other)
	}
}

// split halves a cell the way that leaves the halves less to hope for.
func (s *search) split(c cell) (one, other cell) {
	leftX, rightX, up, below := c, c, c, c
	half := c.halfX / 2
	leftX.x, leftX.halfX, rightX.x, rightX.halfX = c.x-half, half, c.x+half, half
	half = c.halfY / 2
	up.y, up.halfY, below.y, below.halfY = c.y-half, half, c.y+half, half
	for _, part := range []*cell{&leftX, &rightX, &up, &below} {
		part.most = s.most(*part)
	}
	byX, byY := max(leftX.most, rightX.most), max(up.most, below.most)
	if byX < byY || byX == byY && c.halfX >= c.halfY {
		return leftX, rightX
	}
	return up, below
}

// try looks at the middle of a cell and keeps the cell if it may hold a better
// place.
func (s *search) try(c cell) {
	s.look(c.x, c.y)
	if c.most > s.least+s.near() && len(s.blocks) <= mostLinear {
		c.most = min(c.most, s.linear(c))
	}
	if c.most > s.least+s.near() {
		s.push(c)
	}
}

// look takes a place that is better than the best one known.
func (s *search) look(x, y float64) {
	if least := s.clear(x, y); least > s.least {
		s.x, s.y, s.least = x, y, least
	}
}

// mostLinear is up to how many walls linear is worth its work.
const mostLinear = 14

// linear is a closer bound on a cell: what is kept from a wall that is straight
// over all of the cell bounds it as a half-plane does, in closed form. Other walls
// are left out, which only lifts the bound. Where that is best is looked at too.
func (s *search) linear(c cell) float64 {
	s.planes = s.planes[:0]
	for _, b := range s.blocks {
		side, straight := b.facing(c.x, c.y), true
		for _, corner := range c.corners() {
			// What is kept is never less than the half-plane. Where it is no more at
			// the four corners it is none between.
			straight = straight && b.clear(corner[0], corner[1]) <= side.at(corner[0], corner[1])+1
		}
		if straight {
			s.planes = append(s.planes, side)
		}
	}
	x, y, most, ok := deepest(s.planes)
	if !ok {
		return math.Inf(1)
	}
	s.look(x, y)
	return most + 1
}

// near is by how much a place may be beaten by one that was not looked at. A
// mask that fits only just is found: what may be better than the edge of fitting
// is looked at as closely as what fits.
func (s *search) near() float64 {
	if s.least < -roughly {
		return roughly
	}
	return roomiest
}

func (s *search) push(c cell) {
	s.cells = append(s.cells, c)
	for i := len(s.cells) - 1; i > 0; {
		up := (i - 1) / 2
		if s.cells[up].most >= s.cells[i].most {
			return
		}
		s.cells[up], s.cells[i] = s.cells[i], s.cells[up]
		i = up
	}
}

func (s *search) pop() cell {
	top, last := s.cells[0], len(s.cells)-1
	s.cells[0] = s.cells[last]
	s.cells = s.cells[:last]
	for i := 0; ; {
		best := i
		for _, child := range [2]int{2*i + 1, 2*i + 2} {
			if child < last && s.cells[child].most > s.cells[best].most {
				best = child
			}
		}
		if best == i {
			return top
		}
		s.cells[best], s.cells[i] = s.cells[i], s.cells[best]
		i = best
	}
}

// evened moves a place so that what lies ahead and behind, and at either side,
// is the same, as long as that takes no more than even from the least, and
// leaves it enough.
func evened(planes []halfPlane, x, y, least, enough float64) (float64, float64) {
	floor := max(least-even, min(enough, least))
	toX, toY := x, y
	for range 4 {
		if step, ok := middle(planes, toX, toY, 1, 0, 0.5); ok {
			toX += step
		}
		if step, ok := middle(planes, toX, toY, 0, 1, 0.5); ok {
			toY += step
		}
	}
	for _, p := range planes {
		if p.at(toX, toY) < floor {
			return x, y
		}
	}
	return toX, toY
}
