package mask

import (
	"fmt"
	"math/big"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Run is one direction of a layer laid into its box: the panels in order, and
// where each comes to lie when every seam is opened or closed by the same
// amount so that the first and the last panel both land on their tape lines.
type Run struct {
	Box   measure.Length   // the box, from tape line to tape line
	Gap   measure.Length   // gap at each seam as planned
	Sizes []measure.Length // panels as they are

	// Held tells of each seam whether it lies inside pieces over its whole
	// length and so keeps its planned gap; nil where none does.
	Held []bool

	// Over is panels and planned gaps together, less the box: above zero they
	// run past the tape line, below zero they end short of it.
	Over measure.Length
	// Gaps is each seam after it took its part of Over. They add up exactly:
	// the first i seams that can give have taken i × Over ÷ their number,
	// rounded to the nanometre as in Equal. One below zero means that panels
	// would overlap there.
	Gaps []measure.Length
	// Starts is where each panel begins, from the tape line the run is
	// counted from. Where no seam can take up Over, as with a single panel,
	// the run lies with its middle on the middle of the box, half of Over past
	// either line.
	Starts []measure.Length
}

// RunFromSizes lays sizes with a planned gap into a box. Without sizes or
// without a box there is no run, the zero value.
func RunFromSizes(sizes []measure.Length, gap, box measure.Length) Run {
	return runHolding(sizes, nil, gap, box)
}

// runHolding is RunFromSizes with the seams that cannot give.
func runHolding(sizes []measure.Length, held []bool, gap, box measure.Length) Run {
	r := Run{Box: box, Gap: gap, Sizes: sizes, Held: held}
	if len(sizes) == 0 || box <= 0 {
		return Run{}
	}
	seams := len(sizes) - 1
	r.Over = gap*measure.Length(seams) - box
	for _, size := range sizes {
		r.Over += size
	}
	r.Gaps = make([]measure.Length, seams)
	r.Starts = make([]measure.Length, len(sizes))
	free := r.Free()
	if free == 0 {
		r.Starts[0] = -r.Over.Half()
	}
	given, taken := 0, measure.Length(0)
	for i := range r.Gaps {
		r.Gaps[i] = gap
		if !r.isHeld(i) {
			given++
			next := share(r.Over, given, free)
			r.Gaps[i] -= next - taken
			taken = next
		}
		r.Starts[i+1] = r.Starts[i] + sizes[i] + r.Gaps[i]
	}
	return r
}

func (r Run) isHeld(i int) bool { return r.Held != nil && r.Held[i] }

// Free is how many seams can be opened or closed.
func (r Run) Free() int {
	free := len(r.Gaps)
	for _, held := range r.Held {
		if held {
			free--
		}
	}
	return free
}

// Runs lays a layer into the box that the mask fills: its columns along the
// length and its rows along the width. A seam that lies inside spans over its
// whole length is held.
func (l Layer) Runs(o Outline) (columns, rows Run) {
	heldColumns, heldRows := l.held()
	return runHolding(l.Columns, heldColumns, l.Gap, o.Length), runHolding(l.Rows, heldRows, l.Gap, o.Width)
}

// Seam is where seam i lies, counted from 0: the middle of its gap, rounded
// towards the start, so that what the panels are over or short is shared.
func (r Run) Seam(i int) measure.Length {
	end := r.Starts[i] + r.Sizes[i]
	return end + r.Gaps[i].Half()
}

// Change is how much each seam is opened (above zero) or closed (below zero),
// in nanometres, exact: −Over ÷ the seams that can give. False where there is
// none.
func (r Run) Change() (measure.Number, bool) {
	free := r.Free()
	if free == 0 {
		return measure.Number{}, false
	}
	return measure.NumberFromFraction(-int64(r.Over), int64(free)), true
}

// Narrowest is the narrowest of the seams that can give, after the change, and
// false where there is none.
func (r Run) Narrowest() (measure.Length, bool) {
	narrowest, ok := measure.Length(0), false
	for i, gap := range r.Gaps {
		if !r.isHeld(i) && (!ok || gap < narrowest) {
			narrowest, ok = gap, true
		}
	}
	return narrowest, ok
}

// Noticeable is the least difference between panels and box that is spoken
// of: half of the finest tape mark, 1/64 in, is 0.2 mm. Smaller ones are still
// reckoned with. A choice.
const Noticeable = 100_000 * measure.Nanometre

// compare says how the given sizes stand to the mask.
func (a axis) compare() []problem.Problem {
	run := RunFromSizes(a.sizes, a.gap, a.total)
	if a.total <= 0 || run.Over.Abs() < Noticeable {
		return nil
	}
	narrowest, seams := run.Narrowest()
	switch {
	case !seams:
		return a.alone(run)
	case narrowest < 0:
		return []problem.Problem{{At: a.sizesAt, Severity: problem.Stop,
			What: words.Raw(fmt.Sprintf("%s To fit, panels would overlap by %s at a seam.", a.differ(run), a.notation.Amount(-narrowest))),
			Do: words.Raw(fmt.Sprintf("Trim at least %s off the %s in all, or order a mask that much larger.",
				a.notation.AtLeast(run.Over-a.gap*measure.Length(len(run.Gaps))), a.lines))}}
	}
	if narrowest >= LeastPanel {
		return []problem.Problem{{At: a.sizesAt, Severity: problem.Stop, What: words.Raw(a.differ(run)),
			Do: words.Raw("Check the sizes: a whole " + a.line + " seems to be missing.")}}
	}
	change, verb := run.Over.Abs()/measure.Length(len(run.Gaps)), "Close"
	if run.Over < 0 {
		verb = "Open"
	}
	which := "the seam"
	if len(run.Gaps) > 1 {
		which = fmt.Sprintf("each of the %d seams", len(run.Gaps))
	}
	return []problem.Problem{{At: a.sizesAt, Severity: problem.Caution, What: words.Raw(a.differ(run)),
		Do: words.Raw(fmt.Sprintf("%s %s by %s, or check the sizes.", verb, which, a.notation.Fine(change)))}}
}

// differ says what the sizes add up to, against the mask.
func (a axis) differ(run Run) string {
	return fmt.Sprintf("The %s add up to %s, %s %s than the %s of the mask.",
		a.together(), a.notation.Length(a.total+run.Over), a.notation.Amount(run.Over.Abs()), moreOrLess(run.Over), a.side)
}

// alone is for one panel, which has no seam to open or close.
func (a axis) alone(run Run) []problem.Problem {
	lands := "pass"
	if run.Over < 0 {
		lands = "stop short of"
	}
	return []problem.Problem{{At: a.sizesAt, Severity: problem.Caution,
		What: words.Raw(fmt.Sprintf("The one %s is %s, %s %s than the %s of the mask, and there is no seam to take it up.",
			a.line, a.notation.Length(a.total+run.Over), a.notation.Amount(run.Over.Abs()), moreOrLess(run.Over), a.side)),
		Do: words.Raw(fmt.Sprintf("Check the size, or centre it and let it %s each tape line by %s.", lands, a.notation.Amount(run.Over.Abs().Half())))}}
}

// together names what is added up.
func (a axis) together() string {
	if a.gap > 0 && len(a.sizes) > 1 {
		return a.lines + " and their gaps"
	}
	return a.lines
}

func moreOrLess(l measure.Length) string {
	if l < 0 {
		return "less"
	}
	return "more"
}

// BuildUp is how far a run of panels may be off at its end when each panel is
// off by up to a tolerance.
type BuildUp struct {
	// Worst is every panel off the same way. Likely is the root of the sum of
	// squares: it takes the errors to be independent, centred and normal with
	// the tolerance three standard deviations, and where they are flat instead
	// it is passed about one time in twelve (Scholz 1995, Tolerance Stack
	// Analysis Methods; the propagation law also in JCGM 100, 5.1.2). Likely
	// is rounded to the nanometre.
	Worst, Likely measure.Length
}

// BuildUpFromEnd is for n panels hung on from one tape line: n × tolerance at
// worst, √n × tolerance likely.
func BuildUpFromEnd(n int, tolerance measure.Length) BuildUp {
	n = max(n, 0)
	return BuildUp{measure.Length(n) * tolerance, halfRootTimes(4*n, tolerance)}
}

// BuildUpFromCentre is the same at either end when the panels are hung from
// the middle out. Half of them lie on each side; of an odd number the middle
// panel straddles the centre line and gives half of its error to each side.
func BuildUpFromCentre(n int, tolerance measure.Length) BuildUp {
	n = max(n, 0)
	worst := (measure.Length(n) * tolerance).Half()
	if n%2 == 0 {
		return BuildUp{worst, halfRootTimes(2*n, tolerance)}
	}
	return BuildUp{worst, halfRootTimes(2*n-1, tolerance)}
}

// halfRootTimes is ½√n × l to the nearest nanometre, half away from zero: the
// whole root of n × l² is twice the answer, cut off.
func halfRootTimes(n int, l measure.Length) measure.Length {
	square := big.NewInt(int64(l))
	square.Mul(square, square).Mul(square, big.NewInt(int64(n)))
	return measure.Length((square.Sqrt(square).Int64() + 1) / 2)
}
