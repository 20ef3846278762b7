package survey

import "math"

// observation is one reading as the adjustment sees it: the line and its length
// in millimetres.
type observation struct {
	weights weights
	length  float64
}

// unknowns are x of B, then x and y of C and of D.
const unknowns = 5

// row is the change of one length with each of the unknowns.
type row [unknowns]float64

// fit is what the adjustment came to. inverse is the inverse of the normal
// matrix: times the variance of one reading it is the covariance of the
// unknowns. steps is how many rounds it took.
type fit struct {
	corners quad
	inverse [unknowns]row
	steps   int
}

// Rounds of the adjustment. A good start takes four or five.
const mostRounds = 60

// adjust moves the corners to where the sum of the squares of all residuals,
// adjusted − measured, is least: Gauss–Newton on the lengths (any text on
// adjustment; method from memory).
// Every reading has the same weight, since one tape took them all. False where
// the lines do not fix the corners or no end was found.
func adjust(start quad, taken []observation) (fit, bool) {
	f := fit{corners: start}
	sum := squares(start, taken)
	for f.steps = 1; f.steps <= mostRounds; f.steps++ {
		step, ok := f.solve(taken)
		if !ok {
			return f, false
		}
		moved, after := move(f.corners, step, 1), 0.0
		share := 1.0
		for after = squares(moved, taken); after > sum && share > 1e-6; after = squares(moved, taken) {
			share /= 2
			moved = move(f.corners, step, share)
		}
		largest := 0.0
		for _, s := range step {
			largest = max(largest, math.Abs(s))
		}
		// Nearer than a nanometre no sum of squares can tell what is better, so
		// the step is then taken as it is.
		if largest < 1e-6 {
			moved, after = move(f.corners, step, 1), sum
		}
		f.corners, sum = moved, after
		if largest < 1e-9 || largest < 1e-7 && f.steps > 10 {
			_, ok = f.solve(taken)
			return f, ok
		}
		if math.IsNaN(sum) {
			return f, false
		}
	}
	return f, false
}

func move(q quad, step row, share float64) quad {
	q[1].x += float64(share * step[0])
	q[2].x += float64(share * step[1])
	q[2].y += float64(share * step[2])
	q[3].x += float64(share * step[3])
	q[3].y += float64(share * step[4])
	return q
}

func squares(q quad, taken []observation) float64 {
	sum := 0.0
	for _, o := range taken {
		v := q.step(o.weights).long() - o.length
		sum += float64(v * v)
	}
	return sum
}

// rowOf is the change of a line's length with the unknowns: the unit vector
// along it, times the share each corner has in it.
func (q quad) rowOf(w weights) row {
	e := q.step(w).unit()
	return row{float64(w[1] * e.x), float64(w[2] * e.x), float64(w[2] * e.y), float64(w[3] * e.x), float64(w[3] * e.y)}
}

// solve is the next step of the unknowns; it leaves the inverse of the normal
// matrix in f. False where the matrix has none.
func (f *fit) solve(taken []observation) (row, bool) {
	var normal [unknowns]row
	var right row
	for _, o := range taken {
		j, v := f.corners.rowOf(o.weights), o.length-f.corners.step(o.weights).long()
		for i := range unknowns {
			right[i] += float64(j[i] * v)
			for k := range unknowns {
				normal[i][k] += float64(j[i] * j[k])
			}
		}
	}
	inverse, ok := inverted(normal)
	if !ok {
		return row{}, false
	}
	f.inverse = inverse
	var step row
	for i := range unknowns {
		step[i] = inverse[i].dot(right)
	}
	return step, true
}

func (r row) dot(s row) float64 {
	sum := 0.0
	for i := range r {
		sum += float64(r[i] * s[i])
	}
	return sum
}

// inverted is the inverse of a symmetric positive matrix, by Cholesky's
// factors. False where a pivot is a millionth of a millionth of its entry: the
// lines then leave a corner free.
func inverted(m [unknowns]row) (inverse [unknowns]row, ok bool) {
	var l [unknowns]row
	for i := range unknowns {
		for k := 0; k <= i; k++ {
			sum := m[i][k]
			for n := range k {
				sum -= float64(l[i][n] * l[k][n])
			}
			switch {
			case i > k:
				l[i][k] = sum / l[k][k]
			case !(sum > 1e-12*m[i][i]):
				return inverse, false
			default:
				l[i][i] = math.Sqrt(sum)
			}
		}
	}
	for column := range unknowns {
		var x row
		x[column] = 1
		solveLower(l, &x)
		for i := range unknowns {
			inverse[i][column] = x[i]
		}
	}
	return inverse, true
}

// solveLower solves L Lᵀ x = b in place.
func solveLower(l [unknowns]row, x *row) {
	for i := range unknowns {
		for k := range i {
			x[i] -= float64(l[i][k] * x[k])
		}
		x[i] /= l[i][i]
	}
	for i := unknowns - 1; i >= 0; i-- {
		for k := i + 1; k < unknowns; k++ {
			x[i] -= float64(l[k][i] * x[k])
		}
		x[i] /= l[i][i]
	}
}

// variance is the variance of a quantity with this gradient, in units of the
// variance of one reading.
func (f *fit) variance(gradient row) float64 {
	sum := 0.0
	for i := range unknowns {
		sum += float64(gradient[i] * f.inverse[i].dot(gradient))
	}
	return sum
}

// spare is which share of a reading is checked by the others: 1 where they
// give its length exactly, 0 where nothing else does. All shares add up to the
// count of spare readings.
func (f *fit) spare(o observation) float64 {
	return 1 - f.variance(f.corners.rowOf(o.weights))
}

// loosest is by how much more than a slip of the tape the corner that is held
// worst moves.
func (f *fit) loosest() float64 {
	most := 0.0
	for i := range unknowns {
		most = max(most, f.inverse[i][i])
	}
	return math.Sqrt(most)
}
