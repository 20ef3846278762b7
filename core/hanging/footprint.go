package hanging

import (
	"cmp"
	"slices"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Floor is the floor a platform stands on, in the frame of the box: the corners
// of the room in order, none where they are not known, and what stays standing in
// it, each by its corners in order, which must bulge outwards. Walls are taken as
// plumb.
type Floor struct {
	Room   []survey.Point
	Things [][]survey.Point
}

// Foot is what a platform stands on, outriggers included, its length along the
// deck's, the deck over the middle of it.
type Foot struct{ Length, Width measure.Length }

// Standing is whether and how a platform stands at a station. Deck and Foot are
// where they are then; where it does not Fit, as near as it comes. Moved is how
// far the middle of the deck is from where the station has it, Turned that it is
// turned a quarter from there. Lacks is by how much further one would have to reach, or
// what is in the way be moved, 0 where it stands nowhere in the room; Things are those that stand in the way at the
// station as it is laid out, Wall that a wall does.
type Standing struct {
	Fits   bool
	Deck   Rect
	Foot   Rect
	MovedX measure.Length
	MovedY measure.Length
	Turned bool
	Lacks  measure.Length
	Things []int
	Wall   bool
}

// IsMoved tells whether the platform stands otherwise than the station is laid out.
func (s Standing) IsMoved() bool { return s.MovedX != 0 || s.MovedY != 0 || s.Turned }

// Stand finds where a platform can stand so that it reaches the panels that are
// hung from a station, the rectangle around them, as far as it reaches them from
// the station as laid out: with its foot clear of the walls and of what stands
// there, and its deck clear of the walls. The place nearest to the station is
// taken, along and across together, first with the deck as the station has it,
// then, where the platform may be turned, turned a quarter.
//
// Where all edges run along the box the answer is exact. Where some do not, places
// between those that the corners give are tried at a sixteenth of the room there
// is to move, so one that fits by less than that may be missed: then it says that
// the platform does not fit. Work grows with the edges times their corners near
// the station.
func (f *Floor) Stand(s Station, panels Rect, p Platform, foot Foot) Standing {
	best := f.try(s, panels, p, foot, false)
	if best.Fits || !p.Turn {
		return best
	}
	turned := f.try(s, panels, p, foot, true)
	if turned.Fits || turned.Lacks < best.Lacks {
		turned.Things, turned.Wall = best.Things, best.Wall
		return turned
	}
	return best
}

// stretch is from where to where something may lie.
type stretch struct{ from, to measure.Length }

func (s stretch) holds(at measure.Length) bool { return s.from <= at && at <= s.to }

// off is how far a place lies outside.
func (s stretch) off(at measure.Length) measure.Length { return max(s.from-at, at-s.to, 0) }

// nearest is the place in s nearest to at.
func (s stretch) nearest(at measure.Length) measure.Length { return min(max(at, s.from), s.to) }

// try is Stand with the deck one way. Places are those of the deck's own corner
// nearest A.
func (f *Floor) try(s Station, panels Rect, p Platform, foot Foot, turned bool) Standing {
	length, width := p.Length, p.Width
	if s.Turned != turned {
		length, width = width, length
		foot.Length, foot.Width = foot.Width, foot.Length
	}
	t := trial{deck: Rect{Length: length, Width: width}}
	t.x0 = s.Deck.X + (s.Deck.Length - length).Half()
	t.y0 = s.Deck.Y + (s.Deck.Width - width).Half()
	t.alongX = reaching(panels.X, panels.Length, s.Reach.X, s.Reach.Length, length, p.Arm, t.x0)
	t.alongY = reaching(panels.Y, panels.Width, s.Reach.Y, s.Reach.Width, width, p.Arm, t.y0)
	t.foot = Rect{X: (length - foot.Length).Half(), Length: foot.Length, Y: (width - foot.Width).Half(), Width: foot.Width}
	t.body = Rect{X: min(0, t.foot.X), Y: min(0, t.foot.Y)}
	t.body.Length = max(length, t.foot.X+foot.Length) - t.body.X
	t.body.Width = max(width, t.foot.Y+foot.Width) - t.body.Y
	t.gather(f)
	x, y := t.alongX.nearest(t.x0), t.alongY.nearest(t.y0)
	if x == t.x0 && y == t.y0 && t.isFree(x, y) {
		return t.standing(x, y, 0, turned)
	}
	if x, y, ok := t.nearestFree(true); ok {
		return t.standing(x, y, 0, turned)
	}
	found := t.standing(x, y, 0, turned)
	found.Things, found.Wall = t.inTheWay(x, y)
	x, y, ok := t.nearestFree(false)
	found.Fits = false
	if ok {
		found = Standing{Things: found.Things, Wall: found.Wall, Lacks: max(t.alongX.off(x), t.alongY.off(y)), Turned: turned,
			Deck: Rect{x, y, length, width}, Foot: Rect{x + t.foot.X, y + t.foot.Y, t.foot.Length, t.foot.Width}, MovedX: x - t.x0, MovedY: y - t.y0}
	}
	return found
}

// reaching is from where to where a deck may be moved in one direction so that an
// arm beyond it reaches the panels, as far as they are reached from the station as
// laid out. A deck turned may reach less.
func reaching(panels, size, reach, reached, deck, arm, at measure.Length) stretch {
	from, to := max(panels, reach), min(panels+size, reach+reached)
	if from > to {
		return stretch{at, at} // not one of them is in reach: it stands as laid out or not at all
	}
	return stretch{to - deck - arm, from + arm}
}

// trial is one platform at one station, one way round. A stretch that ends before
// it begins is one in which nothing fits.
type trial struct {
	deck, foot, body Rect // at the deck's own corner
	x0, y0           measure.Length
	alongX, alongY   stretch
	floor            *Floor
	blocks           []block
	slanting         bool
}

// block is what must not be run into: the corners of something that stands there
// or the two ends of a wall, and the part that must not, foot or body.
type block struct {
	corners  []survey.Point
	part     *Rect
	low, top survey.Point // the corner's bounds
	thing    int          // −1 for a wall
}

func (t *trial) gather(f *Floor) {
	t.floor = f
	t.blocks = make([]block, 0, len(f.Things)+len(f.Room))
	for i, thing := range f.Things {
		t.add(thing, &t.foot, i)
	}
	for i := range f.Room {
		if i+1 < len(f.Room) {
			t.add(f.Room[i:i+2], &t.body, -1)
			continue
		}
		t.add([]survey.Point{f.Room[i], f.Room[0]}, &t.body, -1)
	}
}

func (t *trial) add(corners []survey.Point, part *Rect, thing int) {
	b := block{corners: corners, part: part, low: corners[0], top: corners[0], thing: thing}
	for i, p := range corners {
		b.low = survey.Point{X: min(b.low.X, p.X), Y: min(b.low.Y, p.Y)}
		b.top = survey.Point{X: max(b.top.X, p.X), Y: max(b.top.Y, p.Y)}
		next := corners[(i+1)%len(corners)]
		t.slanting = t.slanting || p.X != next.X && p.Y != next.Y
	}
	t.blocks = append(t.blocks, b)
}

// barred is from where to where, ends not counted, a deck at x would run into
// the block; false where it would nowhere.
func (b *block) barred(x measure.Length) (stretch, bool) {
	left, right := x+b.part.X, x+b.part.X+b.part.Length
	if b.top.X <= left || b.low.X >= right {
		return stretch{}, false
	}
	low, top := b.top.Y, b.low.Y
	for i, p := range b.corners {
		next := b.corners[(i+1)%len(b.corners)]
		for _, y := range [3]measure.Length{cornerIn(p, left, right), crossing(p, next, left), crossing(p, next, right)} {
			if y != noCrossing {
				low, top = min(low, y), max(top, y)
			}
		}
	}
	return stretch{low - b.part.Y - b.part.Width, top - b.part.Y}, true
}

// noCrossing is no place in any room.
const noCrossing = measure.Length(-1 << 62)

// cornerIn is the y of a corner that lies between two lines.
func cornerIn(p survey.Point, left, right measure.Length) measure.Length {
	if p.X < left || p.X > right {
		return noCrossing
	}
	return p.Y
}

// crossing is where an edge crosses the line at x, rounded to the nanometre.
func crossing(p, q survey.Point, x measure.Length) measure.Length {
	if p.X == q.X || x < min(p.X, q.X) || x > max(p.X, q.X) {
		return noCrossing
	}
	part := float64(x-p.X) / float64(q.X-p.X)
	rise := float64(part * float64(q.Y-p.Y))
	if rise < 0 {
		return p.Y - measure.Length(0.5-rise)
	}
	return p.Y + measure.Length(rise+0.5)
}

// isFree tells whether the platform can stand there.
func (t *trial) isFree(x, y measure.Length) bool {
	for i := range t.blocks {
		if s, ok := t.blocks[i].barred(x); ok && s.from < y && y < s.to {
			return false
		}
	}
	return t.inRoom(x, y)
}

// inTheWay is what the platform would run into there.
func (t *trial) inTheWay(x, y measure.Length) (things []int, wall bool) {
	for i := range t.blocks {
		b := &t.blocks[i]
		if s, ok := b.barred(x); !ok || s.from >= y || y >= s.to {
			continue
		}
		if b.thing < 0 {
			wall = true
			continue
		}
		things = append(things, b.thing)
	}
	return things, wall || !t.inRoom(x, y)
}

// inRoom tells whether the middle of the platform is in the room: where it runs
// into no wall, all of it then is.
func (t *trial) inRoom(x, y measure.Length) bool {
	room := t.floor.Room
	if len(room) == 0 {
		return true
	}
	twice := survey.Point{X: 2*(x+t.body.X) + t.body.Length, Y: 2*(y+t.body.Y) + t.body.Width}
	inside := false
	for i, p := range room {
		q := room[(i+1)%len(room)]
		if (2*p.Y > twice.Y) == (2*q.Y > twice.Y) {
			continue
		}
		part := float64(twice.Y-2*p.Y) / float64(2*q.Y-2*p.Y)
		if float64(twice.X) < float64(2*p.X)+float64(part*float64(2*q.X-2*p.X)) {
			inside = !inside
		}
	}
	return inside
}

// triedBetween is in how many steps places between corners are tried where edges
// slant.
const triedBetween = 16

// nearestFree is the place nearest to the station where the platform can stand:
// reaching its panels, or, where it cannot, the place from which the reach lacks
// least.
func (t *trial) nearestFree(reaching bool) (x, y measure.Length, ok bool) {
	if reaching && (t.alongX.from > t.alongX.to || t.alongY.from > t.alongY.to) {
		return 0, 0, false
	}
	best, bestWay := measure.Length(0), measure.Length(0)
	for _, at := range t.places(reaching) {
		if ok && cmp.Or(cmp.Compare(t.alongX.off(at), best), cmp.Compare((at-t.x0).Abs(), bestWay)) > 0 {
			break // the others are further off still
		}
		for _, free := range t.freeAt(at) {
			aim := t.alongY.nearest(t.y0)
			up := free.nearest(aim)
			if reaching && !t.alongY.holds(up) {
				continue
			}
			off := max(t.alongX.off(at), t.alongY.off(up))
			way := (at - t.x0).Abs() + (up - t.y0).Abs()
			if !t.inRoom(at, up) {
				continue
			}
			if !ok || cmp.Or(cmp.Compare(off, best), cmp.Compare(way, bestWay)) < 0 {
				x, y, best, bestWay, ok = at, up, off, way, true
			}
		}
	}
	return x, y, ok
}

// places are where the platform is tried, along: as laid out, at the ends of what
// may be, and touching every corner; those first that are least off.
func (t *trial) places(reaching bool) []measure.Length {
	list := []measure.Length{t.alongX.nearest(t.x0), t.alongX.from, t.alongX.to}
	add := func(x measure.Length) {
		if !reaching || t.alongX.holds(x) {
			list = append(list, x)
		}
	}
	for i := range t.blocks {
		b := &t.blocks[i]
		for _, p := range b.corners {
			add(p.X - b.part.X)
			add(p.X - b.part.X - b.part.Length)
		}
	}
	if t.slanting {
		room := t.alongX.to - t.alongX.from
		for i := range measure.Length(triedBetween) {
			add(t.alongX.from + room*i/triedBetween)
		}
	}
	slices.SortFunc(list, func(a, b measure.Length) int {
		return cmp.Or(cmp.Compare(t.alongX.off(a), t.alongX.off(b)), cmp.Compare((a-t.x0).Abs(), (b-t.x0).Abs()), cmp.Compare(a, b))
	})
	return slices.Compact(list)
}

// freeAt is from where to where the platform may be, across, with its place along
// given: what the blocks leave. What lies outside the room is not taken out.
func (t *trial) freeAt(x measure.Length) []stretch {
	const far = measure.Length(1 << 60)
	barred := make([]stretch, 0, len(t.blocks))
	for i := range t.blocks {
		if s, ok := t.blocks[i].barred(x); ok && s.from < s.to {
			barred = append(barred, s)
		}
	}
	slices.SortFunc(barred, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	var free []stretch
	from := -far
	for _, s := range barred {
		if s.from >= from {
			free = append(free, stretch{from, s.from})
		}
		from = max(from, s.to)
	}
	return append(free, stretch{from, far})
}

func (t *trial) standing(x, y, lacks measure.Length, turned bool) Standing {
	return Standing{Fits: true, Lacks: lacks, Turned: turned, MovedX: x - t.x0, MovedY: y - t.y0,
		Deck: Rect{x, y, t.deck.Length, t.deck.Width}, Foot: Rect{x + t.foot.X, y + t.foot.Y, t.foot.Length, t.foot.Width}}
}
