package setout

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Border is the least distance at one place between the box and a wall: square
// to a straight wall and to a curved one, slanting where a corner that points
// inwards is nearest. Below zero the box runs past the wall. Own is the box's own
// corner it is measured from, "" for the middle of a side. Corner is the corner
// of a four-cornered room at whose end of the wall it lies; in any other room it
// is Own. In a round room Wall is the side of the box.
type Border struct {
	Own    survey.Corner
	Corner survey.Corner
	Wall   survey.Wall
	Length measure.Length
}

// Layout is everything a box leaves of a ceiling: the borders place by place in
// the order of the walls, and Sides, the least of them on each side of the box,
// under the name of the wall that side faces in a room with four.
//
// Nearest names, in the same order AB BC CD DA, the wall at which each side has
// its least; it is empty in a round room.
type Layout struct {
	Places  []Border
	Sides   Borders
	Nearest [4]survey.Wall
}

// Least is the least border of all.
func (l Layout) Least() measure.Length { return l.Sides.Least() }

// Least is the least of the four.
func (b Borders) Least() measure.Length { return min(b.AB, b.BC, b.CD, b.DA) }

// Taper is how a border widens along a wall: from Narrow at one end to Wide at
// the other.
type Taper struct {
	Wall         survey.Wall
	Narrow, Wide Border
}

// By is how much it widens.
func (t Taper) By() measure.Length { return t.Wide.Length - t.Narrow.Length }

// Tapers are the walls with a border at both ends, in order.
func (l Layout) Tapers() []Taper {
	var found []Taper
	for i := 1; i < len(l.Places); i++ {
		a, b := l.Places[i-1], l.Places[i]
		if a.Wall != b.Wall || a.Own == "" || b.Own == "" {
			continue
		}
		if b.Length < a.Length {
			a, b = b, a
		}
		found = append(found, Taper{a.Wall, a, b})
	}
	return found
}

// Worst is the greatest taper, the first of equals; false where there is none.
func (l Layout) Worst() (worst Taper, ok bool) {
	for _, t := range l.Tapers() {
		if !ok || t.By() > worst.By() {
			worst, ok = t, true
		}
	}
	return worst, ok
}

// Catching is the taper the eye catches first: the one that is the greatest
// share of its own border, since along a wide border more is hidden. A choice:
// common practice, no source. False where no taper can be measured.
func (l Layout) Catching() (caught Taper, ok bool) {
	most := 0.0
	for _, t := range l.Tapers() {
		if t.By() < Visible {
			continue
		}
		// Of borders that close up to nothing the whole is lost.
		share := float64(t.By()) / float64(max(t.Wide.Length, t.By()))
		if share > most {
			caught, most, ok = t, share, true
		}
	}
	return caught, ok
}

// Visible is the least taper that is spoken of: half of the finest tape mark,
// 1/64 in, is 0.2 mm. A choice.
const Visible = 200_000 * measure.Nanometre

// HiddenTaper is how far a border may widen along its wall before it shows: a
// historic floor-stencil studio's page on stencilling a floor hides ½ to ¾ in
// out of square in the border, not in the pattern.
const HiddenTaper = 3 * measure.Inch / 4

// Borders is what a box leaves of the ceiling.
func (s Site) Borders(box Box) Layout {
	switch {
	case s.Shape.Form == survey.Round:
		return s.roundBorders(box)
	case s.isFour():
		return s.fourBorders(box)
	}
	return s.outlineBorders(box)
}

// fourBorders are the eight borders of a room with four walls: each corner of
// the box to its two walls.
func (s Site) fourBorders(box Box) Layout {
	places := make([]Border, 0, 8)
	var sides Borders
	for _, w := range s.Shape.Walls() {
		least := measure.Length(math.MaxInt64)
		for _, end := range [2]survey.Corner{w.From, w.To} {
			own := corners[(end.Number()-box.Turn.Quarters)&3]
			off := w.Off(box.Corner(own))
			places = append(places, Border{own, end, w.Name, off})
			least = min(least, off)
		}
		sides.set(w.Name, least)
	}
	return Layout{places, sides, walls}
}

func (b *Borders) set(w survey.Wall, l measure.Length) {
	switch w {
	case survey.AB:
		b.AB = l
	case survey.BC:
		b.BC = l
	case survey.CD:
		b.CD = l
	case survey.DA:
		b.DA = l
	}
}

// facingSine is how squarely a wall must stand to a side of the box to count as
// faced by it: at more than 20 degrees from end on. So a splayed corner counts
// for both sides it lies between. A choice.
const facingSine = 0.342

// outlineBorders are the borders of any other room. At each wall they are
// measured from the corners of the box that stand across from it, or where none
// does, from where the wall comes nearest. A wall counts for a
// side it faces where it stands across from the side or lies wholly beyond it;
// one that only ends beside the box counts with the next wall.
func (s Site) outlineBorders(box Box) Layout {
	var places []Border
	sides := sideBorders{}
	inside := s.Shape.Contains(box.Centre())
	for _, w := range s.Shape.Walls() {
		from := box.asSeenBy(w)
		block, x, y := from.wall, from.x, from.y
		clear := measure.Nearest(block.clear(x, y))
		if !inside {
			clear = min(clear, -clear)
		}
		if best, counts := sides.add(w.Name, block, x, y, clear); counts {
			places = append(places, across(box, w, best, clear)...)
		}
	}
	layout := Layout{Places: places}
	for side := range walls {
		facing := box.Turn.Facing(walls[side])
		wall, l := sides.at(side)
		layout.Sides.set(facing, l)
		layout.Nearest[wallNumber(facing)] = wall
	}
	return layout
}

// Apart is how far a box and the nearest place of a wall it does not cross are
// apart: along the box's length and across it, to the nearest nanometre. Nothing
// where there is no such wall.
func (s Site) Apart(box Box, name survey.Wall) (along, across measure.Length) {
	w, ok := s.Shape.Wall(name)
	if !ok {
		return 0, 0
	}
	from := box.asSeenBy(w)
	x, y := from.wall.way(from.x, from.y)
	return measure.Nearest(math.Abs(x)), measure.Nearest(math.Abs(y))
}

// sideBorders gathers the least border on each side of a box, and the least of
// all, with the walls they are at.
type sideBorders struct {
	least [5]measure.Length
	wall  [5]survey.Wall
}

// anywhere is where the least border of all is kept.
const anywhere = 4

// add takes in a wall, and says which side it faces most squarely and whether
// it counts for any.
func (b *sideBorders) add(name survey.Wall, wall block, x, y float64, clear measure.Length) (best int, counts bool) {
	// How squarely the wall faces each side, AB BC CD DA: the side looks
	// against the wall's own normal.
	faced := [4]float64{wall.wall.ny, -wall.wall.nx, -wall.wall.ny, wall.wall.nx}
	beyondX, beyondY := wall.beside(x, y)
	for side, squarely := range faced {
		beside, beyond := beyondX, beyondY
		if side&1 == 1 {
			beside, beyond = beyondY, beyondX
		}
		if squarely > facingSine && (beside < 0 || beyond >= 0) {
			b.take(side, name, clear)
			counts = true
		}
		if squarely > faced[best] {
			best = side
		}
	}
	b.take(anywhere, name, clear)
	return best, counts
}

func (b *sideBorders) take(side int, name survey.Wall, clear measure.Length) {
	if b.wall[side] == "" || clear < b.least[side] {
		b.wall[side], b.least[side] = name, clear
	}
}

// at is the least border on a side. One that no wall faces, as in a triangle, is
// as near as the nearest wall of all; so is every side when that is nearer than
// all of them, so that it is never lost.
func (b *sideBorders) at(side int) (survey.Wall, measure.Length) {
	kept := false
	for i := range walls {
		kept = kept || b.wall[i] != "" && b.least[i] == b.least[anywhere]
	}
	if b.wall[side] == "" || !kept {
		return b.wall[anywhere], b.least[anywhere]
	}
	return b.wall[side], b.least[side]
}

// across are the borders from the corners of one side of the box that stand
// across from a wall.
func across(box Box, w survey.WallLine, side int, clear measure.Length) []Border {
	var found []Border
	dx, dy := float64(w.End.X-w.Start.X), float64(w.End.Y-w.Start.Y)
	closest, distance := survey.Corner(""), measure.Length(math.MaxInt64)
	for _, own := range [2]survey.Corner{corners[side], corners[(side+1)&3]} {
		p := box.Corner(own)
		share := (float64(float64(p.X-w.Start.X)*dx) + float64(float64(p.Y-w.Start.Y)*dy)) / (float64(dx*dx) + float64(dy*dy))
		if share >= 0 && share <= 1 {
			found = append(found, Border{own, own, w.Name, w.Off(p)})
		}
		if off := w.Distance(p); off < distance {
			closest, distance = own, off
		}
	}
	if len(found) == 0 {
		found = []Border{{closest, closest, w.Name, clear}}
	}
	return found
}

// roundBorders are the borders in a round room: from both corners and the middle
// of each side of the box to where the curve is nearest. On each side the least
// is at a corner: of two places and one between them that one is never nearest to
// a curve that bends round all three.
func (s Site) roundBorders(box Box) Layout {
	places := make([]Border, 0, 12)
	var sides Borders
	for side, name := range walls {
		facing := box.Turn.Facing(name)
		from, to := corners[side], corners[(side+1)&3]
		a, b := box.Corner(from), box.Corner(to)
		one, other := s.Shape.Clearance(a), s.Shape.Clearance(b)
		middle := s.Shape.Clearance(survey.Point{X: a.X + (b.X-a.X)/2, Y: a.Y + (b.Y-a.Y)/2})
		places = append(places, Border{from, from, facing, one}, Border{"", "", facing, middle}, Border{to, to, facing, other})
		sides.set(facing, min(one, other))
	}
	return Layout{Places: places, Sides: sides}
}

// outward is the unit vector that a side of the box looks along.
func outward(t Turn, side int) (x, y float64) {
	x, y = t.Width()
	x, y = -x, -y
	for range side {
		x, y = -y, x
	}
	return x, y
}

// toCurve is how far it is from a place to an ellipse along a unit vector, below
// zero where the curve lies behind. Where the line misses the ellipse it is the
// way back to where it comes nearest to it, so that what is wholly outside is
// never taken for inside.
func toCurve(shape survey.Shape, p survey.Point, dx, dy float64) measure.Length {
	a, b := float64(shape.Length)/2, float64(shape.Width)/2
	x, y := (float64(p.X)-a)/a, (float64(p.Y)-b)/b
	dx, dy = dx/a, dy/b
	// |(x, y) + t(dx, dy)|² = 1
	square, half, rest := float64(dx*dx)+float64(dy*dy), float64(x*dx)+float64(y*dy), float64(x*x)+float64(y*y)-1
	under := float64(half*half) - float64(square*rest)
	if under < 0 {
		return min(measure.Nearest(-half/square), -1)
	}
	return measure.Nearest((math.Sqrt(under) - half) / square)
}

// IsEven tells whether every border is the same at both ends, as in a
// rectangle: there is then nothing to say place by place.
func (l Layout) IsEven() bool {
	if len(l.Places) != 8 {
		return false
	}
	worst, ok := l.Worst()
	return ok && worst.By() < Visible
}

// At are the borders measured from corners of the box at one wall; where wall is "",
// as in a round room, those on a side of the box.
func (l Layout) At(side, wall survey.Wall) (ends []Border) {
	for _, p := range l.Places {
		if p.Own != "" && (p.Wall == wall || wall == "" && p.Wall == side) {
			ends = append(ends, p)
		}
	}
	return ends
}
