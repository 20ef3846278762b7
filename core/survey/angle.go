package survey

import (
	"math"
	"strconv"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// CornerFound is one corner of a ceiling with the angle between its walls, in
// degrees. Deviation is the standard deviation of the angle, 0 where nothing
// tells. Right is the right angle that it is compared with, 90 or 270 where it
// points into the room, and 0 for a corner that is far from either. Out is how
// far the wall runs off that right angle at Over from the corner: above 0 where
// the corner is wider.
type CornerFound struct {
	Corner    Corner
	Degrees   float64
	Deviation float64
	Right     int
	Out, Over measure.Length
}

// farFromRight is from where on a corner is no longer meant to be square, in
// degrees. A choice: common practice, no source.
const farFromRight = 20

// Over which lengths out of square is said: 3 ft and 1 m.
const (
	OverFeetInches = 3 * measure.Foot
	OverMetric     = measure.Metre
)

func overOf(system measure.System) measure.Length {
	if system == measure.FeetInches {
		return OverFeetInches
	}
	return OverMetric
}

// cornersFound are the corners of a shape with their angles.
func cornersFound(s Shape, system measure.System) []CornerFound {
	found := make([]CornerFound, len(s.Corners))
	count := len(s.Corners)
	for i, p := range s.Corners {
		next := spotOf(s.Corners[(i+1)%count]).minus(spotOf(p))
		last := spotOf(s.Corners[(i+count-1)%count]).minus(spotOf(p))
		found[i] = cornerFound(CornerNumbered(i), next, last, overOf(system))
	}
	return found
}

// cornerFound is a corner between a step to the next corner and one to the last.
func cornerFound(c Corner, next, last spot, over measure.Length) CornerFound {
	cross, dot := next.cross(last), next.dot(last)
	f := CornerFound{Corner: c, Degrees: degrees(cross, dot), Over: over}
	for _, right := range []int{90, 270} {
		if math.Abs(f.Degrees-float64(right)) <= farFromRight {
			f.Right = right
			f.Out = measure.LengthFromMillimetres(-dot / math.Abs(cross) * over.Millimetres())
			if right == 270 {
				f.Out = -f.Out
			}
		}
	}
	return f
}

// degrees is an angle from its sine and cosine, from 0 to below 360. It is for
// texts only: the last bit of an arc tangent is not the same everywhere.
func degrees(sine, cosine float64) float64 {
	d := math.Atan2(sine, cosine) * 180 / math.Pi
	if d < 0 {
		d += 360
	}
	return d
}

// angleGradient is the change of the angle at corner i of a room with four
// corners, in radians, with the unknowns.
func (q quad) angleGradient(i int) row {
	next, last := (i+1)%4, (i+3)%4
	var change [4]spot
	change[next] = turnOf(q[next].minus(q[i])).times(-1)
	change[last] = turnOf(q[last].minus(q[i]))
	change[i] = change[next].plus(change[last]).times(-1)
	return row{change[1].x, change[2].x, change[2].y, change[3].x, change[3].y}
}

// turnOf is by how much a step turns when its end moves along x and along y:
// clockwise looking up is above 0.
func turnOf(s spot) spot { return s.quarter().times(1 / s.dot(s)) }

// Angle is an angle in degrees, said with two decimals: "89.78°".
type Angle float64

// In is the angle in words (words.Value).
func (a Angle) In(words.Style) string { return strconv.FormatFloat(float64(a), 'f', 2, 64) + "°" }

// Angle is the angle between the walls of the corner.
func (c CornerFound) Angle() Angle { return Angle(c.Degrees) }

// Slopes are the direction from one place to another as its shares of the way:
// along x and along y, each from −1 to 1. Both are 0 where the places are one.
func Slopes(from, to Point) (x, y float64) {
	way := spotOf(to).minus(spotOf(from)).unit()
	return way.x, way.y
}

// SlopeText is a share of Slopes, or another plain factor, with six decimals.
func SlopeText(slope float64) string { return strconv.FormatFloat(slope, 'f', 6, 64) }
