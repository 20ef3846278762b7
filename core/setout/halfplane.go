package setout

import "math"

// halfPlane is what a wall, or a side of one, leaves free: a place (x, y) keeps
// nx·x + ny·y + off from it, (nx, ny) being the unit vector that points away
// from it. Everything is counted in nanometres as float64, which holds every
// length of a room exactly; sums of products are good to a thousandth of one.
type halfPlane struct{ nx, ny, off float64 }

func (h halfPlane) at(x, y float64) float64 {
	return float64(h.nx*x) + float64(h.ny*y) + h.off
}

// parallel is the sine below which two walls count as parallel: a nanometre
// over ten metres.
const parallel = 1e-10

// cross is the sine of the turn from one normal to another.
func (h halfPlane) cross(other halfPlane) float64 {
	return float64(h.nx*other.ny) - float64(h.ny*other.nx)
}

// balance is a set of two or three half-planes that face each other, with the
// weights at which their normals cancel, adding up to 1: whatever the place,
// the weighted sum of what it keeps from them is the same, so the least of them
// can never be more (the duality of linear programmes; Farkas, from memory).
type balance struct {
	members [3]int
	weights [3]float64
	count   int
}

// balances calls each for every such set.
func balances(planes []halfPlane, each func(balance)) {
	for i, a := range planes {
		for j := i + 1; j < len(planes); j++ {
			b := planes[j]
			ab := a.cross(b)
			if math.Abs(ab) < parallel {
				if float64(a.nx*b.nx)+float64(a.ny*b.ny) < 0 {
					each(balance{[3]int{i, j}, [3]float64{0.5, 0.5}, 2})
				}
				continue
			}
			for k := j + 1; k < len(planes); k++ {
				bc, ca := b.cross(planes[k]), planes[k].cross(a)
				if ab > 0 && bc > parallel && ca > parallel || ab < 0 && bc < -parallel && ca < -parallel {
					sum := ab + bc + ca
					each(balance{[3]int{i, j, k}, [3]float64{bc / sum, ca / sum, ab / sum}, 3})
				}
			}
		}
	}
}

// over is the weighted sum of one number of each member.
func (b balance) over(of func(i int) float64) float64 {
	sum := 0.0
	for m := range b.count {
		sum += float64(b.weights[m] * of(b.members[m]))
	}
	return sum
}

// deepest is the place where the least of what is kept from all half-planes is
// greatest, and that least. Where a whole line of places keeps as much, it is
// the one on it that keeps most from the others. False where nothing bounds it.
// The work grows with the cube of the count, which is at most a few dozen.
func deepest(planes []halfPlane) (x, y, least float64, ok bool) {
	least = math.Inf(1)
	var tight balance
	balances(planes, func(b balance) {
		if most := b.over(func(i int) float64 { return planes[i].off }); most < least {
			least, tight = most, b
		}
	})
	if tight.count == 0 {
		return 0, 0, 0, false
	}
	if tight.count == 3 {
		x, y = meet(planes[tight.members[0]], planes[tight.members[1]], planes[tight.members[2]], least)
		return x, y, least, true
	}
	a := planes[tight.members[0]]
	// The line half way between two parallels, and its best place.
	x, y = float64(a.nx*(least-a.off)), float64(a.ny*(least-a.off))
	along, _ := middle(planes, x, y, -a.ny, a.nx, parallel)
	return x - float64(along*a.ny), y + float64(along*a.nx), least, true
}

// meet is where two of three half-planes keep the same: the two that cross most
// squarely.
func meet(a, b, c halfPlane, kept float64) (x, y float64) {
	if math.Abs(b.cross(c)) > math.Abs(a.cross(b)) {
		a, c = c, a
	}
	if math.Abs(a.cross(c)) > math.Abs(a.cross(b)) {
		b, c = c, b
	}
	sine := a.cross(b)
	ka, kb := kept-a.off, kept-b.off
	return (float64(ka*b.ny) - float64(kb*a.ny)) / sine, (float64(a.nx*kb) - float64(b.nx*ka)) / sine
}

// middle is how far to go from a place along a unit vector so that the least of
// what is kept from the half-planes that lie ahead and behind is greatest. Those
// that run along the way, at less than the given sine, do not count. False
// where nothing lies ahead, or nothing behind.
func middle(planes []halfPlane, x, y, alongX, alongY, sine float64) (step float64, ok bool) {
	least := math.Inf(1)
	for _, a := range planes {
		rises := float64(a.nx*alongX) + float64(a.ny*alongY)
		if rises < sine {
			continue
		}
		for _, b := range planes {
			falls := float64(b.nx*alongX) + float64(b.ny*alongY)
			if falls > -sine {
				continue
			}
			at := (b.at(x, y) - a.at(x, y)) / (rises - falls)
			if kept := a.at(x, y) + float64(rises*at); kept < least {
				least, step, ok = kept, at, true
			}
		}
	}
	return step, ok
}
