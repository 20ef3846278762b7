package setout

import (
	"math"
	"math/bits"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Hole is something the mask is cut for or along: a light or a vent that comes
// through it, or a loose piece cut out of it. It lies in the frame of the box.
// A round one is as wide as Length; one of no length counts as a point. Turn
// is how a rectangular one lies against the box.
type Hole struct {
	Round         bool
	Middle        survey.Point
	Length, Width measure.Length
	Turn          Turn
}

// HoleOf is a thing on the ceiling as the box sees it: its middle and how it
// lies are given in the room.
func HoleOf(box Box, round bool, middle survey.Point, length, width measure.Length, lies Turn) Hole {
	h := Hole{Round: round, Middle: box.In(middle), Length: length, Width: width}
	if round {
		h.Width = length
		return h
	}
	h.Turn = lies.against(box.Turn)
	if h.Turn.IsExact() && h.Turn.Quarters&1 == 1 {
		h.Length, h.Width = width, length
	}
	if h.Turn.IsExact() {
		h.Turn = Turn{}
	}
	return h
}

// against is this turn as another one sees it.
func (t Turn) against(other Turn) Turn {
	if t.IsExact() && other.IsExact() {
		return Turn{Quarters: (t.Quarters - other.Quarters) & 3}
	}
	x, y := t.Length()
	ox, oy := other.Length()
	along, across := float64(x*ox)+float64(y*oy), float64(y*ox)-float64(x*oy)
	switch {
	case math.Abs(across) < parallel && along > 0:
		return Turn{}
	case math.Abs(across) < parallel:
		return Turn{Quarters: 2}
	case math.Abs(along) < parallel && across > 0:
		return Turn{Quarters: 1}
	case math.Abs(along) < parallel:
		return Turn{Quarters: 3}
	}
	relative, _ := turnAlong(along, across)
	return relative
}

// Cut is what a hole takes of one panel. All places are measured from the
// panel's own edges: x from its edge towards the box's side DA, y from that
// towards AB, so a middle below zero or beyond the panel lies on a neighbour.
type Cut struct {
	Panel  mask.Panel
	Middle survey.Point
	// From and To are two opposite corners of the upright rectangle that the
	// hole takes of this panel.
	From, To survey.Point
	// Whole tells whether the whole hole lies on this panel.
	Whole bool
	// Corners are the corners of a rectangular hole that lie on this panel.
	Corners []survey.Point
	// Crossings are where the cut line runs over the panel's edges.
	Crossings []Crossing
}

// IsAskew tells whether a rectangle lies so that its corners are not those of
// what it takes of the panel.
func (c *Cut) IsAskew() bool {
	for _, p := range c.Corners {
		if (p.X-c.From.X).Abs() > measure.Millimetre && (p.X-c.To.X).Abs() > measure.Millimetre ||
			(p.Y-c.From.Y).Abs() > measure.Millimetre && (p.Y-c.To.Y).Abs() > measure.Millimetre {
			return true
		}
	}
	return false
}

// Crossing is a place where a cut line runs over an edge of a panel: Edge is
// the side of the box the edge faces, At the distance along it from the end
// nearer the box's own corner A.
type Crossing struct {
	Edge survey.Wall
	At   measure.Length
}

// Cuts are the panels a hole takes something of, by rows. A round one is
// round: a panel whose corner it just misses is not cut. Touching is no cut,
// but a point on a seam is on both panels. The work is linear in columns and
// rows, and in the panels that are cut.
func (h Hole) Cuts(columns, rows mask.Run) []Cut {
	low, high := h.bounds()
	var found []Cut
	across := reached(columns, low.X, high.X)
	for _, r := range reached(rows, low.Y, high.Y) {
		for _, c := range across {
			p := mask.Panel{Column: c + 1, Row: r + 1}
			if cut, ok := h.cut(p, PanelIn(columns, rows, p)); ok {
				found = append(found, cut)
			}
		}
	}
	return found
}

// Seams are the seams of a layer that run through a hole, between columns
// first, then between rows. A seam that only touches it does not.
func (h Hole) Seams(columns, rows mask.Run, o mask.Outline) []mask.Seam {
	low, high := h.bounds()
	var found []mask.Seam
	if overlaps(low.Y, high.Y, 0, o.Width) {
		for i, gap := range columns.Gaps {
			start := columns.Starts[i] + columns.Sizes[i]
			if overlaps(low.X, high.X, start, start+max(gap, 0)) {
				found = append(found, mask.Seam{Name: mask.ColumnSeam(i + 1), Runs: mask.Across, After: i + 1, Length: o.Width})
			}
		}
	}
	if overlaps(low.X, high.X, 0, o.Length) {
		for i, gap := range rows.Gaps {
			start := rows.Starts[i] + rows.Sizes[i]
			if overlaps(low.Y, high.Y, start, start+max(gap, 0)) {
				found = append(found, mask.Seam{Name: mask.RowSeam(i + 1), Runs: mask.Along, After: i + 1, Length: o.Length})
			}
		}
	}
	return found
}

// bounds are the corners of the upright rectangle a hole fits in.
func (h Hole) bounds() (low, high survey.Point) {
	long, wide := h.Length, h.Width
	if h.Round {
		wide = long
	}
	if !h.Round && !h.Turn.IsExact() {
		corners := h.corners()
		low, high = corners[0], corners[0]
		for _, c := range corners[1:] {
			low.X, low.Y = min(low.X, c.X), min(low.Y, c.Y)
			high.X, high.Y = max(high.X, c.X), max(high.Y, c.Y)
		}
		return low, high
	}
	// An odd nanometre goes to the far side, as with a box.
	low = survey.Point{X: (2*h.Middle.X - long) >> 1, Y: (2*h.Middle.Y - wide) >> 1}
	return low, survey.Point{X: low.X + long, Y: low.Y + wide}
}

// corners are the four of a rectangular hole.
func (h Hole) corners() [4]survey.Point {
	b := h.box()
	return [4]survey.Point{b.Corner(survey.A), b.Corner(survey.B), b.Corner(survey.C), b.Corner(survey.D)}
}

// box is a rectangular hole as a box in the frame of the mask's.
func (h Hole) box() Box { return boxRound(h.Middle, h.Length, h.Width, h.Turn) }

// boxRound is a box with its middle at a point and so turned.
func boxRound(middle survey.Point, length, width measure.Length, t Turn) Box {
	half := t.out(survey.Point{X: length.Half(), Y: width.Half()})
	return Box{X: middle.X - half.X, Y: middle.Y - half.Y, Length: length, Width: width, Turn: t}
}

// reached are the panels of a run that reach into a stretch, counted from 0.
func reached(run mask.Run, low, high measure.Length) []int {
	var found []int
	for i, start := range run.Starts {
		if overlaps(start, start+run.Sizes[i], low, high) {
			found = append(found, i)
		}
	}
	return found
}

// overlaps tells whether two stretches share more than a point. One that is a
// point itself may lie at the other's end.
func overlaps(low, high, from, to measure.Length) bool {
	if from == to || low == high {
		return high >= from && low <= to
	}
	return high > from && low < to
}

// cut is what a hole takes of one panel, or false where it only comes near.
func (h Hole) cut(p mask.Panel, panel Box) (Cut, bool) {
	if !h.takes(panel) {
		return Cut{}, false
	}
	low, high := h.bounds()
	c := Cut{Panel: p, Middle: survey.Point{X: h.Middle.X - panel.X, Y: h.Middle.Y - panel.Y}}
	c.From = survey.Point{X: max(low.X-panel.X, 0), Y: max(low.Y-panel.Y, 0)}
	c.To = survey.Point{X: min(high.X-panel.X, panel.Length), Y: min(high.Y-panel.Y, panel.Width)}
	c.Whole = c.To.X-c.From.X == high.X-low.X && c.To.Y-c.From.Y == high.Y-low.Y
	if h.Length <= 0 {
		return c, true
	}
	if h.Round {
		c.narrowRound(h.Length, panel)
		c.Crossings = h.roundCrossings(panel)
		return c, true
	}
	for _, corner := range h.corners() {
		corner.X, corner.Y = corner.X-panel.X, corner.Y-panel.Y
		if corner.X >= 0 && corner.Y >= 0 && corner.X <= panel.Length && corner.Y <= panel.Width {
			c.Corners = append(c.Corners, corner)
		}
	}
	c.Crossings = h.straightCrossings(panel)
	if !h.Turn.IsExact() {
		c.narrowTurned(h, panel)
	}
	return c, true
}

// takes tells whether a hole that reaches over the panel's rows and columns
// takes some of the panel itself.
func (h Hole) takes(panel Box) bool {
	low, high := h.bounds()
	if !overlaps(panel.X, panel.X+panel.Length, low.X, high.X) || !overlaps(panel.Y, panel.Y+panel.Width, low.Y, high.Y) {
		return false
	}
	if h.Round && h.Length > 0 {
		nearX := h.Middle.X - min(max(h.Middle.X, panel.X), panel.X+panel.Length)
		nearY := h.Middle.Y - min(max(h.Middle.Y, panel.Y), panel.Y+panel.Width)
		return isWithin(2*nearX, 2*nearY, h.Length)
	}
	if h.Round || h.Turn.IsExact() {
		return true
	}
	// As the hole sees it, the panel must reach over it too: two rectangles
	// lie apart only if a side of one of them parts them.
	hole := h.box()
	corner := hole.In(panel.Corner(survey.A))
	from, to := corner, corner
	for _, own := range corners[1:] {
		corner = hole.In(panel.Corner(own))
		from.X, from.Y = min(from.X, corner.X), min(from.Y, corner.Y)
		to.X, to.Y = max(to.X, corner.X), max(to.Y, corner.Y)
	}
	return overlaps(0, hole.Length, from.X, to.X) && overlaps(0, hole.Width, from.Y, to.Y)
}

// isWithin tells whether x² + y² is below reach², exactly: in 128 bits, since
// squares of nanometres pass 64.
func isWithin(x, y, reach measure.Length) bool {
	hi, lo := bits.Mul64(uint64(x.Abs()), uint64(x.Abs()))
	hiY, loY := bits.Mul64(uint64(y.Abs()), uint64(y.Abs()))
	lo, carry := bits.Add64(lo, loY, 0)
	hi += hiY + carry
	hiR, loR := bits.Mul64(uint64(reach), uint64(reach))
	return hi < hiR || hi == hiR && lo < loR
}

// narrowRound is the upright rectangle round what a circle takes of a panel.
// Where its middle lies beside the panel, the circle is narrower there than
// across its middle.
func (c *Cut) narrowRound(across measure.Length, panel Box) {
	radius := float64(across) / 2
	beside := survey.Point{X: outside(c.Middle.X, panel.Length), Y: outside(c.Middle.Y, panel.Width)}
	if beside.Y != 0 {
		half := halfChord(radius, beside.Y)
		c.From.X, c.To.X = max(c.Middle.X-half, 0), min(c.Middle.X+half, panel.Length)
	}
	if beside.X != 0 {
		half := halfChord(radius, beside.X)
		c.From.Y, c.To.Y = max(c.Middle.Y-half, 0), min(c.Middle.Y+half, panel.Width)
	}
}

// outside is how far a place lies beyond the ends of a stretch that starts at 0.
func outside(at, long measure.Length) measure.Length {
	return max(-at, at-long, 0)
}

// halfChord is half the width of a circle so far from its middle, 0 where the
// circle does not reach.
func halfChord(radius float64, off measure.Length) measure.Length {
	square := float64(radius*radius) - float64(float64(off)*float64(off))
	return measure.Nearest(math.Sqrt(max(square, 0)))
}

// narrowTurned is the upright rectangle round what a turned rectangle takes of
// a panel: the corners of what they share are corners of one inside the other,
// or where their sides cross.
func (c *Cut) narrowTurned(h Hole, panel Box) {
	points := append([]survey.Point(nil), c.Corners...)
	for _, x := range c.Crossings {
		points = append(points, x.in(panel))
	}
	hole := h.box()
	for _, own := range corners {
		p := panel.Corner(own)
		in := hole.In(p)
		if in.X >= 0 && in.Y >= 0 && in.X <= hole.Length && in.Y <= hole.Width {
			points = append(points, survey.Point{X: p.X - panel.X, Y: p.Y - panel.Y})
		}
	}
	if len(points) == 0 {
		return
	}
	c.From, c.To = points[0], points[0]
	for _, p := range points[1:] {
		c.From = survey.Point{X: min(c.From.X, p.X), Y: min(c.From.Y, p.Y)}
		c.To = survey.Point{X: max(c.To.X, p.X), Y: max(c.To.Y, p.Y)}
	}
}

// in is a crossing as a place on its panel.
func (x Crossing) in(panel Box) survey.Point {
	switch x.Edge {
	case survey.AB:
		return survey.Point{X: x.At}
	case survey.BC:
		return survey.Point{X: panel.Length, Y: x.At}
	case survey.CD:
		return survey.Point{X: x.At, Y: panel.Width}
	}
	return survey.Point{Y: x.At}
}

// edges are the four edges of a panel: how far a place lies beyond each, and
// how far along it, for a place measured from the panel's own corner A.
func edges(panel Box, each func(name survey.Wall, long measure.Length, beyond, along func(survey.Point) measure.Length)) {
	x := func(p survey.Point) measure.Length { return p.X }
	y := func(p survey.Point) measure.Length { return p.Y }
	each(survey.AB, panel.Length, func(p survey.Point) measure.Length { return -p.Y }, x)
	each(survey.BC, panel.Width, func(p survey.Point) measure.Length { return p.X - panel.Length }, y)
	each(survey.CD, panel.Length, func(p survey.Point) measure.Length { return p.Y - panel.Width }, x)
	each(survey.DA, panel.Width, func(p survey.Point) measure.Length { return -p.X }, y)
}

// roundCrossings are where a circle runs over the four edges of a panel.
func (h Hole) roundCrossings(panel Box) []Crossing {
	var found []Crossing
	middle := survey.Point{X: h.Middle.X - panel.X, Y: h.Middle.Y - panel.Y}
	edges(panel, func(name survey.Wall, long measure.Length, beyond, along func(survey.Point) measure.Length) {
		half := halfChord(float64(h.Length)/2, beyond(middle))
		if half <= 0 {
			return
		}
		for _, at := range [2]measure.Length{along(middle) - half, along(middle) + half} {
			if at >= 0 && at <= long {
				found = append(found, Crossing{name, at})
			}
		}
	})
	return found
}

// straightCrossings are where the sides of a rectangle run over the four edges
// of a panel. A side that lies along an edge, or ends on it, does not cross it.
func (h Hole) straightCrossings(panel Box) []Crossing {
	around := h.corners()
	for i := range around {
		around[i].X, around[i].Y = around[i].X-panel.X, around[i].Y-panel.Y
	}
	var found []Crossing
	edges(panel, func(name survey.Wall, long measure.Length, beyond, along func(survey.Point) measure.Length) {
		for i, from := range around {
			to := around[(i+1)&3]
			over, next := beyond(from), beyond(to)
			if (over > 0) == (next > 0) {
				continue
			}
			share := float64(over) / float64(over-next)
			at := along(from) + measure.Nearest(float64(share*float64(along(to)-along(from))))
			if at >= 0 && at <= long {
				found = append(found, Crossing{name, at})
			}
		}
	})
	return found
}
