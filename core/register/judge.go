package register

import (
	"math"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Verdict says whether a layer lies well enough.
type Verdict string

// Pass: every mark is within the tolerance, as the layer lies or after the best
// shift and turn. Fail: one is not. Unsure: the marks cannot tell. Without a
// tolerance there is no verdict.
const (
	NoVerdict Verdict = ""
	Pass      Verdict = "pass"
	Fail      Verdict = "fail"
	Unsure    Verdict = "unsure"
)

// Judgement is what the marks of a layer say against a tolerance, and what can
// be done. The ways out (Without, Seams, Cut) are looked for only where shift
// and turn alone do not bring every mark within the tolerance.
type Judgement struct {
	Fit
	Verdict Verdict
	// Leave tells that every mark is within the tolerance as the layer lies.
	Leave bool
	// Move puts the layer where the fit is best. It is not worked out, and
	// CanMove false, for marks that fit only mirrored or turned beyond belief.
	Move    Move
	CanMove bool
	// Without are the marks of which any one, left out, makes the others agree.
	// Where there are several no single one can be blamed. Without a tolerance
	// the others are said to agree when the deviation falls below a third.
	Without []int
	// Seams is how to set the seams anew, Cut where to cut the layer apart.
	Seams *Seams
	Cut   *Cut
}

// mostTurn is the sine of 5°: nobody hangs a layer so far off, so a greater turn
// comes from marks that were exchanged. A choice.
const mostTurn = 0.0872

// Judge fits the marks of a layer that lies in the box as g says, and judges
// them. A tolerance of 0 counts as not given; g may be empty, and then there
// are no seams to set and shift and turn are about the middle of the marks.
func Judge(marks []Mark, g Grid, tolerance measure.Length) Judgement {
	j := Judgement{Fit: FitMarks(marks)}
	if j.Kind == NoFit {
		return j
	}
	if j.isBelievable() {
		whole := g.whole()
		if g.Columns.Box <= 0 {
			whole.middle = survey.Point{X: measure.LengthFromMillimetres(j.wantX), Y: measure.LengthFromMillimetres(j.wantY)}
		}
		j.Move, j.CanMove = j.moveOf(whole), true
	}
	_, off := j.AsItLies()
	j.Leave = tolerance > 0 && off <= tolerance
	j.Verdict = j.verdict(tolerance)
	if j.Kind != Rigid || j.Verdict == Pass {
		return j
	}
	j.Without = j.without(tolerance)
	if j.Verdict == Fail {
		j.Seams = j.setSeams(g, tolerance)
		j.Cut = j.cut(g, tolerance)
	}
	return j
}

// Lies is how far the layer lies from its place, at its middle.
func (j Judgement) Lies() Offset { return Offset{-j.Move.Shift.X, -j.Move.Shift.Y} }

// isBelievable tells whether the fit is one that a layer can have.
func (f Fit) isBelievable() bool {
	return f.Kind == Shift || f.Kind == Rigid && f.cos > 0 && math.Abs(f.sin) <= mostTurn
}

func (j Judgement) verdict(tolerance measure.Length) Verdict {
	_, left := j.Worst()
	switch {
	case tolerance <= 0:
		return NoVerdict
	case j.Kind != Rigid || !j.isBelievable():
		return Unsure
	case j.Leave || left <= tolerance:
		return Pass
	}
	return Fail
}

// fits tells whether every mark is within the tolerance of the fit.
func (f Fit) fits(tolerance measure.Length) bool {
	_, left := f.Worst()
	return f.Kind == Rigid && f.isBelievable() && left <= tolerance
}

// without tries the fit with each mark left out in turn.
func (f Fit) without(tolerance measure.Length) []int {
	if len(f.Marks) < 3 {
		return nil
	}
	var found []int
	rest := make([]Mark, 0, len(f.Marks)-1)
	for i := range f.Marks {
		rest = append(append(rest[:0], f.Marks[:i]...), f.Marks[i+1:]...)
		if fit := FitMarks(rest); fit.agrees(f, tolerance) {
			found = append(found, i)
		}
	}
	return found
}

// agrees tells whether a fit with one mark less than whole agrees.
func (f Fit) agrees(whole Fit, tolerance measure.Length) bool {
	if tolerance > 0 {
		return f.fits(tolerance)
	}
	before, _ := whole.Deviation()
	after, spare := f.Deviation()
	return spare && f.Kind == Rigid && f.isBelievable() && 3*after < before
}
