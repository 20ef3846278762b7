package mask

import (
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
	count := len(run.Gaps)
	if !seams {
		return a.alone(run)
	}
	found := problem.Problem{At: a.sizesAt, Severity: problem.Stop, What: a.differ(run)}
	switch {
	case narrowest < 0:
		found.What = words.Sentences(found.What, words.Say("To fit, panels would overlap by {over} at a seam.", words.Amount("over", -narrowest)))
		found.Do = words.Say("Trim at least {trim} off the {lines} in all, or order a mask that much larger.",
			words.AtLeast("trim", run.Over-a.gap*measure.Length(count)), words.Of("lines", a.lines))
	case narrowest >= LeastPanel:
		found.Do = words.Say("Check the sizes: a whole {line} seems to be missing.", words.Of("line", a.line))
	default:
		found.Severity, found.Do = problem.Caution, setSeams(run.Over < 0, count, run.Over.Abs()/measure.Length(count))
	}
	return []problem.Problem{found}
}

// setSeams is how to set the seams so that the sizes fit.
func setSeams(open bool, count int, each measure.Length) words.Text {
	n, by := words.Count("count", count), words.Fine("by", each)
	switch {
	case open && count == 1:
		return words.Say("Open the seam by {by}, or check the sizes.", by)
	case open:
		return words.Say("Open each of the {count} seams by {by}, or check the sizes.", n, by)
	case count == 1:
		return words.Say("Close the seam by {by}, or check the sizes.", by)
	}
	return words.Say("Close each of the {count} seams by {by}, or check the sizes.", n, by)
}

// differ says what the sizes add up to, against the mask.
func (a axis) differ(run Run) words.Text {
	lines, side := words.Of("lines", a.lines), words.Of("side", a.side)
	all, off := words.Length("all", a.total+run.Over), words.Amount("off", run.Over.Abs())
	gaps := a.gap > 0 && len(a.sizes) > 1
	switch {
	case gaps && run.Over < 0:
		return words.Say("The {lines} and their gaps add up to {all}, {off} less than the {side} of the mask.", lines, all, off, side)
	case gaps:
		return words.Say("The {lines} and their gaps add up to {all}, {off} more than the {side} of the mask.", lines, all, off, side)
	case run.Over < 0:
		return words.Say("The {lines} add up to {all}, {off} less than the {side} of the mask.", lines, all, off, side)
	}
	return words.Say("The {lines} add up to {all}, {off} more than the {side} of the mask.", lines, all, off, side)
}

// alone is for one panel, which has no seam to open or close.
func (a axis) alone(run Run) []problem.Problem {
	line, side := words.Of("line", a.line), words.Of("side", a.side)
	all, off, half := words.Length("all", a.total+run.Over), words.Amount("off", run.Over.Abs()), words.Amount("half", run.Over.Abs().Half())
	what := words.Say("The one {line} is {all}, {off} more than the {side} of the mask, and there is no seam to take it up.", line, all, off, side)
	do := words.Say("Check the size, or centre it and let it pass each tape line by {half}.", half)
	if run.Over < 0 {
		what = words.Say("The one {line} is {all}, {off} less than the {side} of the mask, and there is no seam to take it up.", line, all, off, side)
		do = words.Say("Check the size, or centre it and let it stop short of each tape line by {half}.", half)
	}
	return []problem.Problem{{At: a.sizesAt, Severity: problem.Caution, What: what, Do: do}}
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
