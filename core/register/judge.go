package register

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Verdict says whether a layer lies well enough.
type Verdict string

// Pass: every mark is within the tolerance after the best shift and turn. Fail:
// one is not. Unsure: the marks cannot tell. Without a tolerance there is no
// verdict.
const (
	NoVerdict Verdict = ""
	Pass      Verdict = "pass"
	Fail      Verdict = "fail"
	Unsure    Verdict = "unsure"
)

// Move is what to do to a layer to put it right: shift its middle by so much
// and turn it about the middle; RunOff is what the turn makes over the length of
// the mask, above zero clockwise looking up.
type Move struct {
	Shift  Offset
	RunOff measure.Length
}

// Set is how to open the seams of one direction (above zero) or close them
// (below zero), each by so much.
type Set struct {
	Seams int
	Each  measure.Length
}

// Split is a layer taken apart at one seam, so that each half fits by itself:
// Seam is its name, Columns tells that it lies between columns, Low and High
// are what to do to the half nearer A and to the other.
type Split struct {
	Seam      string
	Columns   bool
	Low, High Move
	Left      measure.Length // the most that is left at a mark
}

// Judgement is what the marks of a layer say against a tolerance.
type Judgement struct {
	Fit
	Verdict Verdict
	// Leave tells that every mark is within the tolerance as it lies.
	Leave bool
	// Move puts the layer where the fit is best.
	Move Move
	// Along and Across are how to set the seams, where that brings every mark
	// within the tolerance and shift and turn alone do not; SeamsLeft is the
	// most that is left at a mark then.
	Seams         bool
	Along, Across Set
	SeamsLeft     measure.Length
	// Split is where to cut the layer apart, where that does it.
	Split   Split
	IsSplit bool
	// Without are the marks of which any one, left out, makes the others agree.
	Without []int
}

// Middle is the middle of the box a grid lies in.
func (g Grid) Middle() survey.Point {
	return survey.Point{X: g.Columns.Box.Half(), Y: g.Rows.Box.Half()}
}

// Judge fits the marks of a layer and judges them. A tolerance of 0 counts as
// not given.
func Judge(marks []Mark, g Grid, tolerance measure.Length) Judgement {
	return Judgement{Fit: FitMarks(marks)}
}
