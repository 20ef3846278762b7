package survey

import "math"

// quad are the four corners A, B, C, D in millimetres, A at the origin and B on
// +x.
type quad [4]spot

// weights are how the corners make up the step along a line, A to D.
type weights [4]float64

// weightsOf is the step along a line in terms of the corners: B − A for AB, half
// of C + D − A − B for the line between the middles of AB and CD.
func weightsOf(line Line) (weights, bool) {
	switch line {
	case LineAB:
		return weights{-1, 1, 0, 0}, true
	case LineBC:
		return weights{0, -1, 1, 0}, true
	case LineCD:
		return weights{0, 0, -1, 1}, true
	case LineDA:
		return weights{1, 0, 0, -1}, true
	case LineAC:
		return weights{-1, 0, 1, 0}, true
	case LineBD:
		return weights{0, -1, 0, 1}, true
	case LineABCD:
		return weights{-0.5, -0.5, 0.5, 0.5}, true
	case LineDABC:
		return weights{-0.5, 0.5, 0.5, -0.5}, true
	}
	return weights{}, false
}

// step is the step along a line.
func (q quad) step(w weights) spot {
	var sum spot
	for i, share := range w {
		sum = sum.plus(q[i].times(share))
	}
	return sum
}

// pairs are the lines between two corners, and which corners; the walls come
// first, then the diagonals. The line between the other two corners is at
// apart.
var pairs = [6]struct {
	line     Line
	from, to int
	apart    int
}{
	{LineAB, 0, 1, 2}, {LineBC, 1, 2, 3}, {LineCD, 2, 3, 0}, {LineDA, 3, 0, 1}, {LineAC, 0, 2, 5}, {LineBD, 1, 3, 4},
}

// pairOf is the number in pairs of the line between two corners.
func pairOf(from, to int) int {
	for i, p := range pairs {
		if p.from == from && p.to == to || p.from == to && p.to == from {
			return i
		}
	}
	return -1
}

// quadFrom is the four corners from five of the six lines between them, in the
// order of pairs: two triangles on the line between the two corners that the
// line without stands for does not join. They lie on both sides of a diagonal,
// or on one side of a wall. Lengths that make no triangle are taken as flat.
func quadFrom(lengths [6]float64, without int) quad {
	base := pairs[pairs[without].apart]
	var q quad
	q[base.to] = spot{lengths[pairs[without].apart], 0}
	one, other := pairs[without].from, pairs[without].to
	q[one] = apex(q[base.to].x, lengths[pairOf(one, base.from)], lengths[pairOf(one, base.to)])
	q[other] = apex(q[base.to].x, lengths[pairOf(other, base.from)], lengths[pairOf(other, base.to)])
	if without >= 4 {
		q[other].y = -q[other].y
	}
	return q.framed()
}

// apex is where two circles meet above a base that runs along x: one round its
// start, one round its end.
func apex(base, fromStart, fromEnd float64) spot {
	x := (float64(fromStart*fromStart) - float64(fromEnd*fromEnd) + float64(base*base)) / (2 * base)
	return spot{x, math.Sqrt(max(0, float64(fromStart*fromStart)-float64(x*x)))}
}

// framed is q moved and turned so that A is at the origin and B on +x, and
// turned over where it would run anticlockwise looking up.
func (q quad) framed() quad {
	along := q[1].minus(q[0]).unit()
	var f quad
	for i, s := range q {
		from := s.minus(q[0])
		f[i] = spot{from.dot(along), along.cross(from)}
	}
	f[0], f[1].y = spot{}, 0
	if f.twiceArea() < 0 {
		for i := range f {
			f[i].y = -f[i].y
		}
	}
	return f
}

func (q quad) twiceArea() float64 { return q[2].minus(q[0]).cross(q[3].minus(q[1])) }

// corners are the four as points of whole nanometres.
func (q quad) corners() []Point {
	return []Point{{}, q[1].point(), q[2].point(), q[3].point()}
}
