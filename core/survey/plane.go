package survey

import (
	"cmp"
	"math"
	"math/bits"

	"ceilingwright/core/measure"
)

// spot is a place or a step in millimetres, for what has no exact answer in
// whole nanometres. Every product is converted by itself, so that no processor
// fuses it with the sum it goes into and the last bit is the same everywhere.
type spot struct{ x, y float64 }

func spotOf(p Point) spot { return spot{p.X.Millimetres(), p.Y.Millimetres()} }

// point is the nearest point of whole nanometres.
func (s spot) point() Point {
	return Point{measure.LengthFromMillimetres(s.x), measure.LengthFromMillimetres(s.y)}
}

func (s spot) plus(t spot) spot  { return spot{s.x + t.x, s.y + t.y} }
func (s spot) minus(t spot) spot { return spot{s.x - t.x, s.y - t.y} }

func (s spot) times(n float64) spot { return spot{float64(s.x * n), float64(s.y * n)} }

func (s spot) dot(t spot) float64 { return float64(s.x*t.x) + float64(s.y*t.y) }

// cross is above 0 where t is clockwise of s, looking up.
func (s spot) cross(t spot) float64 { return float64(s.x*t.y) - float64(s.y*t.x) }

func (s spot) long() float64 { return math.Sqrt(s.dot(s)) }

// quarter is s a quarter turn clockwise, looking up: from a wall into the room.
func (s spot) quarter() spot { return spot{-s.y, s.x} }

// unit is s made 1 long; nothing where s is.
func (s spot) unit() spot {
	long := s.long()
	if !(long > 0) {
		return spot{}
	}
	return spot{s.x / long, s.y / long}
}

// between is the distance of two points, to the nearest nanometre: exact along
// an axis.
func between(p, q Point) measure.Length {
	dx, dy := (q.X - p.X).Abs(), (q.Y - p.Y).Abs()
	if dx == 0 || dy == 0 {
		return dx + dy
	}
	return measure.LengthFromMillimetres(spotOf(Point{dx, dy}).long())
}

// side is +1 where the way from p by way of q to r turns clockwise looking up, −1
// where it turns the other way, 0 where the three lie on a line: exact.
func side(p, q, r Point) int {
	return compareProducts(q.X-p.X, r.Y-p.Y, q.Y-p.Y, r.X-p.X)
}

// compareProducts is the sign of a×b − c×d, exact: products of lengths do not
// fit 64 bits.
func compareProducts(a, b, c, d measure.Length) int {
	left, right := wide(a, b), wide(c, d)
	switch {
	case left.sign != right.sign:
		return cmp.Compare(left.sign, right.sign)
	case left.high != right.high:
		return left.sign * cmp.Compare(left.high, right.high)
	}
	return left.sign * cmp.Compare(left.low, right.low)
}

// product is a product of two lengths: its sign and its size in 128 bits.
type product struct {
	sign      int
	high, low uint64
}

func wide(a, b measure.Length) product {
	p := product{sign: cmp.Compare(a, 0) * cmp.Compare(b, 0)}
	p.high, p.low = bits.Mul64(uint64(a.Abs()), uint64(b.Abs()))
	return p
}
