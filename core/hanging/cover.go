package hanging

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// Covering a rectangle with rectangles that may be turned by a quarter.
//
// A cover can always be tidied without a rectangle more. Moved to the right as
// far as nothing is uncovered, each rectangle begins at the edge of the box or
// where another ends, so at a sum of whole lengths and widths. And if the
// lowest bare place is covered next, leftmost first, the rectangle that covers
// it may be raised until it stands there, because all that is lower is covered.
// So it is enough to try, at the lowest bare place, every such beginning and
// both ways round, and what is covered is a height over each stretch of the
// box: a skyline. That is complete; it is left off after mostTries, and then an
// even grid, or one split in two, stands unproven.
//
// With an overlap, box and reach both lose it: rectangles that touch are then
// places that overlap.

const (
	mostTries = 2000
	mostSteps = 64 // stretches of the skyline
)

// mixed is a layout with decks both ways round where that needs fewer places
// than the even grid, else the even grid.
func (p Platform) mixed(o mask.Outline, even Layout) Layout {
	length, width := p.Reach()
	c := cover{
		length: max(o.Length-p.Overlap, 1), width: max(o.Width-p.Overlap, 1),
		sides: [2]measure.Length{length - p.Overlap, width - p.Overlap},
	}
	places, proven := c.fewer(len(even.Stations))
	even.Fewest = proven
	if places == nil {
		return even
	}
	mixed := Layout{Fewest: proven}
	for _, place := range places {
		reach := Rect{X: place.x, Y: place.y, Length: length, Width: width}
		if place.turned {
			reach.Length, reach.Width = width, length
		}
		reach.X = pulledIn(reach.X, reach.Length, o.Length)
		reach.Y = pulledIn(reach.Y, reach.Width, o.Width)
		mixed.Stations = append(mixed.Stations, stationAt(reach, p.Arm, place.turned))
	}
	byRows(mixed.Stations)
	return mixed
}

// pulledIn is where a reach begins that must not reach past the box for
// nothing: it ends where the box does, or has its middle on the box's.
func pulledIn(start, reach, box measure.Length) measure.Length {
	if reach >= box {
		return (box - reach) >> 1
	}
	return min(start, box-reach)
}

// placed is one rectangle of a cover, by its corner nearest the origin.
type placed struct {
	x, y   measure.Length
	turned bool
}

// cover is a search under way: the box, the two sides of the rectangle, and the
// skyline, stretch by stretch.
type cover struct {
	length, width measure.Length
	sides         [2]measure.Length
	begins        []measure.Length // where a rectangle may begin
	steps         []measure.Length // where each stretch begins; the last is the end
	heights       [mostSteps]measure.Length
	places        []placed
	tries         int
}

// fewer is a cover with fewer rectangles than that, and whether none has fewer
// than it, or where there is none, than that.
func (c *cover) fewer(than int) ([]placed, bool) {
	if than <= 1 {
		return nil, true
	}
	split := c.split()
	if len(split) >= than {
		split = nil
	} else {
		than = len(split)
	}
	if !c.prepare(than) {
		return split, false
	}
	for count := c.bound(); count < than; count++ {
		if c.search(count) {
			return slices.Clone(c.places), true
		}
		if c.tries >= mostTries {
			return split, false
		}
	}
	return split, true
}

// prepare lists where rectangles may begin and the stretches between; false
// where there are too many to look at.
func (c *cover) prepare(most int) bool {
	for i := range most {
		for j := range most - i {
			at := measure.Length(i)*c.sides[0] + measure.Length(j)*c.sides[1]
			if at >= c.length {
				break
			}
			c.begins = append(c.begins, at)
			if len(c.begins) > 4*mostSteps {
				return false
			}
		}
	}
	slices.Sort(c.begins)
	c.begins = slices.Compact(c.begins)
	for _, at := range c.begins {
		c.steps = append(c.steps, at, min(at+c.sides[0], c.length), min(at+c.sides[1], c.length))
	}
	slices.Sort(c.steps)
	c.steps = slices.Compact(c.steps)
	return len(c.steps) <= mostSteps
}

func (c *cover) skyline() []measure.Length { return c.heights[:len(c.steps)-1] }

// bound is the fewest rectangles by area.
func (c *cover) bound() int {
	count := 1
	for !c.isEnough(count) {
		count++
	}
	return count
}

// isEnough tells whether the bare area is no larger than so many rectangles, in
// square millimetres. The margin keeps an exact fit from being lost to rounding;
// too large a margin would only cost time.
func (c *cover) isEnough(count int) bool {
	bare := 0.0
	for i, height := range c.skyline() {
		if height < c.width {
			bare += float64((c.width - height).Millimetres() * (c.steps[i+1] - c.steps[i]).Millimetres())
		}
	}
	one := float64(c.sides[0].Millimetres() * c.sides[1].Millimetres())
	return bare <= float64(float64(count)*one)*(1+1e-9)
}

// search covers what is bare with so many rectangles more.
func (c *cover) search(count int) bool {
	low := 0
	for i, height := range c.skyline() {
		if height < c.heights[low] {
			low = i
		}
	}
	if c.heights[low] >= c.width {
		return true
	}
	if count == 0 || c.tries >= mostTries || !c.isEnough(count) {
		return false
	}
	c.tries++
	before := c.heights
	at, y := c.steps[low], c.heights[low]
	for turned := range 2 {
		length, width := c.sides[turned], c.sides[1-turned]
		for i := len(c.begins) - 1; i >= 0; i-- {
			x := c.begins[i]
			if x > at || x+length <= at {
				continue
			}
			c.raise(x, x+length, y+width)
			c.places = append(c.places, placed{x, y, turned == 1})
			if c.search(count - 1) {
				return true
			}
			c.places = c.places[:len(c.places)-1]
			c.heights = before
		}
		if length == width {
			break
		}
	}
	return false
}

func (c *cover) raise(from, to, height measure.Length) {
	for i := range c.skyline() {
		if c.steps[i] >= from && c.steps[i] < to {
			c.heights[i] = max(c.heights[i], height)
		}
	}
}

// split is the best cover of lines of rectangles one way round and, beside
// them, lines of the other: the box is cut in two, along or across.
func (c *cover) split() []placed {
	best, bestAt, bestAcross, bestTurned := 0, measure.Length(0), false, 0
	for turned := range 2 {
		length, width := c.sides[turned], c.sides[1-turned]
		for lines := int64(1); measure.Length(lines)*width < c.width && lines <= MostStations; lines++ {
			count := lines*evenly(c.length, length, 0) + evenly(c.length, width, 0)*evenly(c.width-measure.Length(lines)*width, length, 0)
			if best == 0 || int(count) < best {
				best, bestAt, bestAcross, bestTurned = int(count), measure.Length(lines)*width, false, turned
			}
		}
		for lines := int64(1); measure.Length(lines)*length < c.length && lines <= MostStations; lines++ {
			count := lines*evenly(c.width, width, 0) + evenly(c.width, length, 0)*evenly(c.length-measure.Length(lines)*length, width, 0)
			if int(count) < best || best == 0 {
				best, bestAt, bestAcross, bestTurned = int(count), measure.Length(lines)*length, true, turned
			}
		}
	}
	if best == 0 || best > MostStations {
		return nil
	}
	if bestAcross {
		return append(c.filled(0, 0, bestAt, c.width, bestTurned), c.filled(bestAt, 0, c.length-bestAt, c.width, 1-bestTurned)...)
	}
	return append(c.filled(0, 0, c.length, bestAt, bestTurned), c.filled(0, bestAt, c.length, c.width-bestAt, 1-bestTurned)...)
}

// filled is a part of the box covered with rectangles one way round.
func (c *cover) filled(x, y, length, width measure.Length, turned int) []placed {
	var list []placed
	along, across := c.sides[turned], c.sides[1-turned]
	for row := range measure.Length(evenly(width, across, 0)) {
		for column := range measure.Length(evenly(length, along, 0)) {
			list = append(list, placed{x + column*along, y + row*across, turned == 1})
		}
	}
	return list
}
