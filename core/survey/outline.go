package survey

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// findPoints works out an outline whose corners were given by their offsets.
// They stay where they were given.
func (r Room) findPoints(system measure.System) Found {
	f := Found{Proof: Assumed}
	if !f.isCount(len(r.Points), "/points") {
		return f
	}
	corners := make([]Point, len(r.Points))
	for i, p := range r.Points {
		corners[i] = p.Point
		if !p.Known {
			f.report("/points"+problem.Index(i), problem.Stop,
				words.Say("The place of corner {corner} is not given.", words.Of("corner", CornerNumbered(i))),
				words.Say("Measure it: how far along, and how far across."))
		}
	}
	if len(f.Problems) > 0 || !f.isOutline(corners, "/points") {
		return f
	}
	f.Shape = ShapeFromCorners(Points, corners)
	f.Corners = cornersFound(f.Shape, system)
	f.Verdict = AsGiven
	return f
}

func (f *Found) report(at string, severity problem.Severity, what, do words.Text) {
	f.Problems = append(f.Problems, problem.Problem{At: at, Severity: severity, What: what, Do: do})
}

// isCount tells whether there are enough corners and not too many.
func (f *Found) isCount(count int, at string) bool {
	switch {
	case count < 3:
		f.report(at, problem.Stop, words.Say("The ceiling has {count} of the three corners that it takes at least.", words.Count("count", count)),
			words.Say("Go round the ceiling clockwise, looking up, and enter every corner."))
	case count > MostCorners:
		f.report(at, problem.Stop, words.Say("The ceiling has {count} corners; {most} are taken.", words.Count("count", count), words.Count("most", MostCorners)),
			words.Say("Leave out corners that the mask does not come near."))
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
func (f *Found) isOutline(corners []Point, at string) bool {
	s := ShapeFromCorners(Points, corners)
	for i := range corners {
		if w := s.wall(i); w.Start == w.End {
			f.report(at+problem.Index(i), problem.Stop, words.Say("Corners {one} and {other} are at the same place.", words.Of("one", w.From), words.Of("other", w.To)), words.Say("Leave one out, or correct it."))
			return false
		}
	}
	for i := range corners {
		for k := range i {
			if one, other := s.wall(k), s.wall(i); one.meets(other) {
				f.report(at+problem.Index(i), problem.Stop, words.Say("Walls {one} and {other} cross or touch.", words.Of("one", one.Name), words.Of("other", other.Name)),
					words.Say("Check corners {one} and {other}, and that the corners go round in order.", words.Of("one", other.From), words.Of("other", other.To)))
				return false
			}
		}
	}
	if s.Length > measure.Longest || s.Width > measure.Longest {
		f.report(at, problem.Stop,
			words.Say("The ceiling is {l} long, more than the {most} that is taken.", words.Length("l", max(s.Length, s.Width)), words.Length("most", measure.Longest)),
			words.Say("Check the numbers and their units."))
		return false
	}
	if s.Area().SquareMetres.Sign() < 0 {
		f.report(at, problem.Stop,
			words.Say("The corners go round anticlockwise, looking up: they were listed backwards, or the room was drawn looking down, and those two are mirror images."),
			words.Say("Stand under corner W and look up. List the corners clockwise; if the drawing looks down, turn the signs of all second offsets round."))
		return false
	}
	if max(s.Length, s.Width) < LeastSide {
		f.report(at, problem.Caution, words.Say("The ceiling reads {l} across, less than any room.", words.Length("l", max(s.Length, s.Width))), words.Say("Check the numbers and write their units."))
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
