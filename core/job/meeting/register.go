package meeting

import (
	"ceilingwright/core/job/layers"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// Register is how a layer lies by its check marks. Names are what each mark of the
// plan is called, Waits tells of each that it is not measured yet. The Judgement is
// on those that are measured, whose places in the plan's list are in Places; it is of
// no fit where none is. Beneath tells that the layer lies on another.
type Register struct {
	register.Judgement
	Names     []words.Text
	Waits     []bool
	Places    []int
	Beneath   bool
	Tolerance measure.Length
	// Stretches is how far the layer is longer than by the design, for the length and
	// the width, where that is to be told.
	Stretches []Stretch
	// Corner is how well the marks tell where a corner of the mask is, where they
	// can.
	Corner      measure.Length
	CornerKnown bool
}

// Stretch is how far a layer has grown, below nothing shrunk, over its length or its
// width: by a share, by so much over all of it and at either end from its middle.
type Stretch struct {
	Along         bool
	Share         measure.Number
	Whole, Middle measure.Length
}

// Mark is what a measured mark is called, counted as in Marks.
func (r *Register) Mark(measured int) words.Text { return r.Names[r.Places[measured]] }

// registerOf judges how a layer lies by its check marks.
func (w *work) registerOf(l *layers.Layer, beneath bool) Register {
	given := &l.Plan.Register
	r := Register{Beneath: beneath, Tolerance: given.Tolerance}
	var marks []register.Mark
	for i := range given.Marks {
		note := &given.Marks[i]
		name := words.Say("mark {n}", words.Count("n", i+1))
		if note.Name != "" {
			name = words.Verbatim(note.Name)
		}
		switch {
		case !note.WantKnown && note.GotKnown:
			w.Remark(note.At+"/x", problem.Stop, words.Say("Where {mark} should be is not given.", words.Of("mark", name)),
				words.Say("Write its distances by the design, from the mask's edges towards {one} and towards {other}.",
					words.Name("one", w.Setting.Facing(survey.DA).Text()), words.Name("other", w.Setting.Facing(survey.AB).Text())))
		case note.WantKnown && note.GotKnown:
			w.checkMark(note, name)
			marks, r.Places = append(marks, note.Mark), append(r.Places, i)
		}
		r.Names, r.Waits = append(r.Names, name), append(r.Waits, note.WantKnown && !note.GotKnown)
	}
	r.Judgement = register.Judge(marks, l.Grid(), given.Tolerance)
	if r.Kind == register.Rigid && r.CanMove {
		r.stretch(l)
		r.Corner, r.CornerKnown = r.KnownTo(l.Grid())
	}
	if r.Kind == register.Shift {
		w.Remark(given.At+"/marks", problem.Note, words.Say("The marks show how far the layer is shifted, but no turn."),
			words.Say("Measure a second mark, as far from the first as the layer allows."))
	}
	return r
}

// checkMark asks about a mark that lies outside the mask.
func (w *work) checkMark(note *plan.MarkNote, name words.Text) {
	o := w.Plan.Mask.Outline
	if !o.IsComplete() {
		return
	}
	check := words.Say("Check the number and its unit.")
	if past := max(-note.Want.X, note.Want.X-o.Length); past > 0 {
		w.Remark(note.At+"/x", problem.Caution, words.Say("The place of {mark} lies {past} outside the length of the mask.", words.Of("mark", name), words.Amount("past", past)),
			check)
	}
	if past := max(-note.Want.Y, note.Want.Y-o.Width); past > 0 {
		w.Remark(note.At+"/y", problem.Caution, words.Say("The place of {mark} lies {past} outside the width of the mask.", words.Of("mark", name), words.Amount("past", past)),
			check)
	}
}

// stretch finds whether the layer has grown or shrunk by more than the tolerance.
func (r *Register) stretch(l *layers.Layer) {
	for _, d := range [2]struct {
		along bool
		share float64
		long  measure.Length
	}{{true, r.Along, l.Columns.Box}, {false, r.Across, l.Rows.Box}} {
		whole, middle := register.RunPast(d.long, d.share)
		if whole.Abs() >= max(r.Tolerance, measure.Millimetre) {
			r.Stretches = append(r.Stretches, Stretch{Along: d.along, Share: register.Share(d.share), Whole: whole, Middle: middle})
		}
	}
}
