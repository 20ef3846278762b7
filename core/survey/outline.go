package survey

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// findPoints works out an outline whose corners were given by their offsets.
// They stay where they were given.
func (r Room) findPoints(n measure.Notation) Found {
	f := Found{Proof: Assumed}
	if !f.isCount(len(r.Points), "/points") {
		return f
	}
	corners := make([]Point, len(r.Points))
	for i, p := range r.Points {
		corners[i] = p.Point
		if !p.Known {
			f.report("/points"+problem.Index(i), problem.Stop, "The place of corner "+CornerNumbered(i).Text()+" is not given.", "Measure it: how far along, and how far across.")
		}
	}
	if len(f.Problems) > 0 || !f.isOutline(corners, "/points", n) {
		return f
	}
	f.Shape = ShapeFromCorners(Points, corners)
	f.Corners = cornersFound(f.Shape, n)
	f.Text = "The corners are taken as given; nothing checks them. Measure a few lines from corner to corner and hold them against the drawing."
	return f
}

func (f *Found) report(at string, severity problem.Severity, what, do string) {
	f.Problems = append(f.Problems, problem.Problem{At: at, Severity: severity, What: words.Raw(what), Do: words.Raw(do)})
}

// isCount tells whether there are enough corners and not too many.
func (f *Found) isCount(count int, at string) bool {
	switch {
	case count < 3:
		f.report(at, problem.Stop, "The ceiling has "+strconv.Itoa(count)+" of the three corners that it takes at least.", "Go round the ceiling clockwise, looking up, and enter every corner.")
	case count > MostCorners:
		f.report(at, problem.Stop, "The ceiling has "+strconv.Itoa(count)+" corners; "+strconv.Itoa(MostCorners)+" are taken.", "Leave out corners that the mask does not come near.")
	default:
		return true
	}
	return false
}

// isOutline tells whether the corners make a ceiling: no wall of no length, no
// two walls that cross or lie on each other, and clockwise looking up. at is
// the list of the corners, or of the walls that start at them.
//
// Corners that run the other way are refused rather than turned over: either
// the list was made backwards or the room was drawn looking down, and the two
// are mirror images of each other. Only who measured knows.
func (f *Found) isOutline(corners []Point, at string, n measure.Notation) bool {
	s := ShapeFromCorners(Points, corners)
	for i := range corners {
		if w := s.wall(i); w.Start == w.End {
			f.report(at+problem.Index(i), problem.Stop, "Corners "+w.From.Text()+" and "+w.To.Text()+" are at the same place.", "Leave one out, or correct it.")
			return false
		}
	}
	for i := range corners {
		for k := range i {
			if one, other := s.wall(k), s.wall(i); one.meets(other) {
				f.report(at+problem.Index(i), problem.Stop, "Walls "+one.Name.Text()+" and "+other.Name.Text()+" cross or touch.",
					"Check corners "+other.From.Text()+" and "+other.To.Text()+", and that the corners go round in order.")
				return false
			}
		}
	}
	if s.Length > measure.Longest || s.Width > measure.Longest {
		f.report(at, problem.Stop, "The ceiling is "+n.Length(max(s.Length, s.Width))+" long, more than the "+n.Length(measure.Longest)+" that is taken.", "Check the numbers and their units.")
		return false
	}
	if s.Area().SquareMetres.Sign() < 0 {
		f.report(at, problem.Stop, "The corners go round anticlockwise, looking up: they were listed backwards, or the room was drawn looking down, and those two are mirror images.",
			"Stand under corner W and look up. List the corners clockwise; if the drawing looks down, turn the signs of all second offsets round.")
		return false
	}
	if max(s.Length, s.Width) < LeastSide {
		f.report(at, problem.Caution, "The ceiling reads "+n.Length(max(s.Length, s.Width))+" across, less than any room.", "Check the numbers and write their units.")
	}
	return true
}

// meets tells whether two walls of an outline touch where they should not:
// anywhere, or for neighbours anywhere but at the corner between them. Exact.
func (w WallLine) meets(o WallLine) bool {
	switch {
	case w.End == o.Start && o.End == w.Start:
		return true
	case w.End == o.Start:
		return o.touches(w.Start) || w.touches(o.End)
	case o.End == w.Start:
		return w.touches(o.Start) || o.touches(w.End)
	}
	if w.touches(o.Start) || w.touches(o.End) || o.touches(w.Start) || o.touches(w.End) {
		return true
	}
	return side(w.Start, w.End, o.Start)*side(w.Start, w.End, o.End) < 0 &&
		side(o.Start, o.End, w.Start)*side(o.Start, o.End, w.End) < 0
}
