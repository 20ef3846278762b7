package finish

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Cornice is a moulding: how far it runs, its girth measured round the profile
// with a strip of paper, and how many mitres it has.
type Cornice struct {
	Run, Girth measure.Length
	Corners    int
}

// Area is the run times the girth, with one girth more of run for every mitre,
// where each of the two ends is worked past the corner. The area of a moulding
// is its run times its girth; the extra is common practice, no source. ok is
// false where run or girth is missing.
func (c Cornice) Area() (area measure.Area, ok bool) {
	if c.Run <= 0 || c.Girth <= 0 || c.Corners < 0 {
		return area, false
	}
	area = measure.AreaOf(c.Run, c.Girth)
	return area.Add(measure.AreaOf(c.Girth, c.Girth).Times(measure.NumberFromInt(int64(c.Corners)))), true
}

// Wall is walls of one height, and what is not painted of them.
type Wall struct {
	Run, Height measure.Length
	Openings    []Opening
}

// Opening is Count doors or windows of one size.
type Opening struct {
	Length, Width measure.Length
	Count         int
}

// OpeningsArea is all of them together.
func (w Wall) OpeningsArea() (sum measure.Area) {
	for _, o := range w.Openings {
		sum = sum.Add(measure.AreaOf(o.Length, o.Width).Times(measure.NumberFromInt(int64(max(0, o.Count)))))
	}
	return sum
}

// Area is the run times the height, less the openings. ok is false where run or
// height is missing, and where the openings are larger than the walls, which is
// refused.
func (w Wall) Area() (area measure.Area, problems []problem.Problem, ok bool) {
	if w.Run <= 0 || w.Height <= 0 {
		return area, nil, false
	}
	whole, out := measure.AreaOf(w.Run, w.Height), w.OpeningsArea()
	area = whole.Sub(out)
	if area.SquareMetres.Sign() <= 0 {
		return area, []problem.Problem{{At: "/openings", Severity: problem.Stop,
			What: words.Say("The openings come to {openings} m², all of the {wall} m² of wall or more.", words.Trimmed("openings", out.SquareMetres, 3), words.Trimmed("wall", whole.SquareMetres, 3)),
			Do:   words.Say("Check the sizes and the number of doors and windows.")}}, false
	}
	return area, nil, true
}
