package hanging

import (
	"strconv"

	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/layers"

	"ceilingwright/core/measure"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// advice says what the panels come to against the mask outline, and how to set the
// seams.
func advice(l *hung.Layer) words.Text {
	along, across := &l.RunOuts[0], &l.RunOuts[1]
	return words.Sentences(adviceAlong(words.Say("Along the length"), along), adviceAlong(words.Say("Along the width"), across),
		wholeColumns(along, l.Plan.Cut.GreatestLength), wholeRows(across, l.Plan.Cut.GreatestWidth), readBothEnds(l))
}

// wholeColumns is what whole columns of the greatest length would leave at the ends,
// where equal ones are all cut.
func wholeColumns(r *hung.RunOut, greatest measure.Length) words.Text {
	size, n := words.Length("size", greatest), words.Count("n", r.Whole.Whole)
	switch {
	case !r.Instead:
		return words.Text{}
	case r.Whole.Edge == 0:
		return words.Say("Whole columns, {size} long, would be {n} about the middle.", size, n)
	}
	return words.Say("Whole columns, {size} long, would be {n} about the middle and one of {edge} at each end.", size, n, words.Length("edge", r.Whole.Edge))
}

// wholeRows is the same of rows of the greatest width.
func wholeRows(r *hung.RunOut, greatest measure.Length) words.Text {
	size, n := words.Length("size", greatest), words.Count("n", r.Whole.Whole)
	switch {
	case !r.Instead:
		return words.Text{}
	case r.Whole.Edge == 0:
		return words.Say("Whole rows, {size} wide, would be {n} about the middle.", size, n)
	}
	return words.Say("Whole rows, {size} wide, would be {n} about the middle and one of {edge} at each end.", size, n, words.Length("edge", r.Whole.Edge))
}

func adviceAlong(direction words.Text, r *hung.RunOut) words.Text {
	where, off := words.Of("where", direction), words.Of("off", offBy(r.Run.Over))
	n, by, gap := words.Count("n", r.Free), words.Fine("by", r.Change.Abs()), words.Fine("gap", r.Narrowest)
	onePanel := len(r.Run.Sizes) == 1
	switch {
	case r.Free == 0 && r.Run.Over == 0 && onePanel:
		return words.Say("{where} one panel fills the mask outline.", where)
	case r.Free == 0 && r.Run.Over == 0:
		return words.Say("{where} one piece fills the mask outline.", where)
	case r.Free == 0 && onePanel:
		return words.Say("{where} one panel is {off}; there is no seam to take it up.", where, off)
	case r.Free == 0:
		return words.Say("{where} one piece is {off}; there is no seam to take it up.", where, off)
	case r.Run.Over == 0 && r.Run.Gap == 0:
		return words.Say("{where} the panels fill the mask outline edge to edge: leave no gap.", where)
	case r.Run.Over == 0:
		return words.Say("{where} the panels and gaps fill the mask outline: leave {gap} at each seam.", where, words.Of("gap", exactly(r.Run.Gap)))
	case r.Narrowest < 0:
		return words.Say("{where} the panels are {off}: they would overlap {by} at each seam. Trim them or change the size of the mask.", where, off, words.Fine("by", -r.Narrowest))
	case r.Run.Over < 0:
		return words.Say("{where} the panels and gaps are {off}: open each of {n|seam|seams} by {by}, to {gap}.", where, off, n, by, gap)
	}
	return words.Say("{where} the panels and gaps are {off}: close each of {n|seam|seams} by {by}, to {gap}.", where, off, n, by, gap)
}

func offBy(over measure.Length) words.Text {
	by := words.Fine("by", over.Abs())
	if over < 0 {
		return words.Say("{by} short of the mask outline", by)
	}
	return words.Say("{by} over the mask outline", by)
}

// exactly is a length with what its rounding hides (page.Exactly).
type exactly measure.Length

// In is the length as it is said.
func (l exactly) In(style words.Style) string {
	p := page.Page{Notation: style.Notation}
	return p.Exactly(measure.Length(l))
}

// readBothEnds says what an edge comes to whose ends read differently.
func readBothEnds(l *hung.Layer) words.Text {
	if !l.Ends.Known {
		return words.Text{}
	}
	return words.Say("Read both ends of an edge: {mark} between those of {panel} turns it by {degrees}° and is {grown} where the mask ends.",
		words.Put("mark", l.Ends.Mark), words.Name("panel", blockName(l.Order[0].Block)),
		words.Name("degrees", strconv.FormatFloat(l.Ends.Degrees, 'f', 2, 64)), words.Fine("grown", l.Ends.Grown))
}

// runOuts are how far the panels may come out wrong.
func (t *teller) runOuts(l *hung.Layer) {
	id := l.Panels.ID
	for i := range l.RunOuts {
		r, of := &l.RunOuts[i], &directions[i]
		t.Length(page.Hanging, id+".runout."+of.name, t.Told(of.over), r.Run.Over,
			t.Say("All panels and planned gaps, less the mask outline; below nothing they are short."), t.Put(r.Run.Box+r.Run.Over)+" − "+t.Put(r.Run.Box), t.Arithmetic())
		// No seam can be set to less than nothing; the advice says what overlaps.
		if r.Free > 0 && r.Narrowest >= 0 {
			t.Length(page.Hanging, id+".seam."+of.name, t.Told(of.set), r.Narrowest,
				t.Say("The planned gap, opened or closed so that the run lands on both tape lines."),
				t.Notation.Fine(r.Run.Gap)+" + ("+t.Notation.Fine(r.Change)+")", t.Arithmetic())
		}
		if r.BuildUp.Known {
			t.buildUp(l.Layer, r, of)
		}
	}
}

// direction is the length or the width of the mask: its name in the figures, and what
// those are called.
type direction struct {
	name                     string
	over, set, worst, likely words.Text
}

var directions = [2]direction{
	{"length", words.Say("panels and gaps over the mask outline, along the length"), words.Say("set each seam to, along the length"),
		words.Say("worst error building up along the length, hung from one end"), words.Say("likely error building up along the length, hung from one end")},
	{"width", words.Say("panels and gaps over the mask outline, along the width"), words.Say("set each seam to, along the width"),
		words.Say("worst error building up along the width, hung from one end"), words.Say("likely error building up along the width, hung from one end")},
}

// buildUp is how far the panels may be off at the end of a run.
func (t *teller) buildUp(l *layers.Layer, r *hung.RunOut, of *direction) {
	source := t.Say("Worst: every panel off the same way. Likely: root of the sum of squares, for independent centred errors (Scholz 1995, Tolerance Stack Analysis Methods; propagation law in JCGM 100, 5.1.2).")
	b, sum := &r.BuildUp, strconv.Itoa(len(r.Run.Sizes))+" × "+t.tolerance(l.Plan.Tolerance)
	t.Length(page.Hanging, l.Panels.ID+".worst."+of.name, t.Told(of.worst), b.End.Worst,
		t.Say("Each panel off by its tolerance, all the same way. From the centre out it is {centre} at either end. With every seam set half a tape mark off as well it is {seams} from one end.",
			words.Fine("centre", b.Centre.Worst), words.Fine("seams", b.HalfAMark.Worst)), sum, source)
	t.Length(page.Hanging, l.Panels.ID+".likely."+of.name, t.Told(of.likely), b.End.Likely,
		t.Say("The root of the number of panels times the tolerance. From the centre out it is {centre} at either end. From one end it is {seams} with the seams half a tape mark off as well, and {flat} where any error within the tolerance is as likely as another.",
			words.Fine("centre", b.Centre.Likely), words.Fine("seams", b.HalfAMark.Likely), words.Fine("flat", b.Flat)), "√"+sum, source)
}

// tolerance is a tolerance put into a sum that multiplies it: one typed in
// millimetres stays so among feet and inches, of which it is no mark.
func (t *teller) tolerance(l measure.Length) string {
	if t.Notation.System == measure.FeetInches || t.Notation.IsFine(l) {
		return t.Notation.Exact(l)
	}
	return "≈" + t.Notation.Fine(l)
}
