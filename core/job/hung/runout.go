package hung

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// RunOut is how the panels of one direction come out against the mask outline. Free
// are the seams that can give: each is opened by Change, below nothing closed, and
// Narrowest is then the narrowest of them; where it is below nothing, panels overlap by
// that. Whole are whole panels of the greatest size about the middle, where equal ones
// are all cut and Instead is true.
type RunOut struct {
	Run               mask.Run
	Free              int
	Change, Narrowest measure.Length
	Instead           bool
	Whole             mask.Centring
	BuildUp           BuildUp
}

// BuildUp is how far the panels may be off at the end of a run, where a tolerance is
// Known: hung from one end, from the middle out, and from one end with every seam half
// a mark of the tape off as well. Flat is what is likely where any error within the
// tolerance is as likely as another.
type BuildUp struct {
	Known                  bool
	End, Centre, HalfAMark mask.BuildUp
	Flat                   measure.Length
}

// Ends is what a Mark of the tape between the two ends of the first panel's edge comes
// to, since what is set to a turned edge goes on in its direction: the edge is turned by
// so many degrees and is off by Grown where the mask ends. Known is false where nothing
// is set to it.
type Ends struct {
	Known       bool
	Mark, Grown measure.Length
	Degrees     float64
}

// comesOut finds how the panels of a layer come out against the mask outline.
func (w *work) comesOut(l *layers.Layer, h *Hung) {
	cut, mark := &l.Plan.Cut, w.Plan.Units.Notation().Mark()
	h.RunOuts = [2]RunOut{runOutOf(l.Columns, cut.GreatestLength, l.Plan.Tolerance, mark), runOutOf(l.Rows, cut.GreatestWidth, l.Plan.Tolerance, mark)}
	if cut.Split != mask.ByGreatest {
		h.RunOuts[0].Instead, h.RunOuts[1].Instead = false, false
	}
	h.Ends = endsOf(l, h.Order, mark)
}

func runOutOf(run mask.Run, greatest, tolerance, mark measure.Length) RunOut {
	out := RunOut{Run: run, Free: run.Free()}
	out.Narrowest, _ = run.Narrowest()
	if change, ok := run.Change(); ok {
		out.Change = measure.Length(change.RoundHalfEven(0).IntPart())
	}
	panels := len(run.Sizes)
	if panels < 2 {
		return out
	}
	out.Whole, out.Instead = mask.Centred(run.Box, greatest, run.Gap)
	out.Instead = out.Instead && run.Sizes[0] != greatest
	if tolerance > 0 {
		out.BuildUp = BuildUp{Known: true, End: mask.BuildUpFromEnd(panels, tolerance), Centre: mask.BuildUpFromCentre(panels, tolerance),
			HalfAMark: mask.BuildUpWithSeams(panels, tolerance, mark.Half()), Flat: mask.LikelyIfFlat(panels, tolerance)}
	}
	return out
}

// endsOf looks along the length, or across where the first panel is as long as the mask.
func endsOf(l *layers.Layer, order []hanging.Hang, mark measure.Length) Ends {
	if len(order) < 2 {
		return Ends{}
	}
	first := order[0].Block
	x, end, run := first.Column-1, first.Column+first.Columns-2, &l.Columns
	if len(run.Sizes) == first.Columns {
		x, end, run = first.Row-1, first.Row+first.Rows-2, &l.Rows
	}
	low, high := run.Starts[x], run.Starts[end]+run.Sizes[end]
	return Ends{Known: true, Mark: mark, Degrees: hanging.Turn(mark, high-low), Grown: hanging.Grown(mark, high-low, max(high, run.Box-low))}
}
