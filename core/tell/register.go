package tell

import (
	"math"
	"strconv"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/register"
	"ceilingwright/core/survey"
)

// registering is what comes of hanging in layers: the key of each layer, the
// gaps as they are measured, and how a layer lies on the one before.
func (b *builder) registering() {
	b.setKeys()
	for i := range b.Layers {
		l, out := b.Hung(i), &b.Sheet.Layers[i]
		if len(l.Order) > 0 {
			b.gaps(l, out)
		}
		b.register(l.Layer, out, i > 0)
	}
	b.checkBridging()
}

// register says how a layer lies by its check marks; of one that has another
// beneath it and no marks yet, where to put them.
func (b *builder) register(l *job.Layer, out *sheet.Layer, beneath bool) {
	marks, places := b.readMarks(l, out)
	if len(marks) == 0 {
		if beneath && len(out.Register.Marks) == 0 {
			out.Register.Text = "Nothing is measured yet. Put marks near the corners and on the centre cross, and measure each from the mask's edges " +
				b.towardsSide(survey.DA) + " and " + b.towardsSide(survey.AB) + "."
		}
		return
	}
	r := registration{builder: b, Layer: l, tolerance: l.Plan.Register.Tolerance,
		Judgement: register.Judge(marks, gridOf(l), l.Plan.Register.Tolerance)}
	r.write(&out.Register, places)
	r.figures()
	if r.Kind == register.Shift {
		b.Report(l.Plan.Register.At+"/marks", []problem.Problem{{Severity: problem.Note,
			What: words.Say("The marks show how far the layer is shifted, but no turn."), Do: words.Say("Measure a second mark, as far from the first as the layer allows.")}})
	}
}

// readMarks puts every mark of the plan on the sheet, in its order, and answers
// with those that are measured and their places in that list.
func (b *builder) readMarks(l *job.Layer, out *sheet.Layer) (marks []register.Mark, places []int) {
	for i, note := range l.Plan.Register.Marks {
		m := note.Mark
		if m.Name == "" {
			m.Name = "mark " + strconv.Itoa(i+1)
		}
		text := ""
		switch {
		case !note.WantKnown && note.GotKnown:
			b.Report(note.At+"/x", []problem.Problem{{Severity: problem.Stop,
				What: words.Raw("Where " + m.Name + " should be is not given."),
				Do:   words.Raw("Write its distances by the design, from the mask's edges " + b.towardsSide(survey.DA) + " and " + b.towardsSide(survey.AB) + ".")}})
		case note.WantKnown && !note.GotKnown:
			text = "Not measured yet."
		case note.WantKnown:
			b.checkMark(note.At, m)
			marks, places = append(marks, m), append(places, i)
		}
		out.Register.Marks = append(out.Register.Marks, sheet.MarkAt{Name: m.Name, Text: text})
	}
	return marks, places
}

// checkMark asks about a mark that lies outside the mask.
func (b *builder) checkMark(at string, m register.Mark) {
	o := b.Plan.Mask.Outline
	if !o.IsComplete() {
		return
	}
	for _, side := range [2]struct {
		at   string
		want measure.Length
		long measure.Length
		name string
	}{{"/x", m.Want.X, o.Length, "length"}, {"/y", m.Want.Y, o.Width, "width"}} {
		if past := max(-side.want, side.want-side.long); past > 0 {
			b.Report(at+side.at, []problem.Problem{{Severity: problem.Caution,
				What: words.Raw("The place of " + m.Name + " lies " + b.Notation.Amount(past) + " outside the " + side.name + " of the mask."), Do: words.Say("Check the number and its unit.")}})
		}
	}
}

// registration is the marks of a layer judged, to be put into words.
type registration struct {
	*builder
	*job.Layer
	register.Judgement
	tolerance measure.Length
}

// write puts the judgement on the sheet; places are the measured marks in its
// list.
func (r *registration) write(out *sheet.Registered, places []int) {
	out.Verdict, out.Text = string(r.Verdict), r.verdictWords()
	if r.CanMove {
		out.Shift = r.offWords(register.Offset{X: -r.Move.Shift.X, Y: -r.Move.Shift.Y})
		if r.Kind == register.Rigid {
			out.Turn = r.turnWords(-r.Move.RunOff, r.Move.Over)
		}
	}
	for i, m := range r.Fit.Marks {
		text := "Off " + r.offWords(register.Offset{X: m.Got.X - m.Want.X, Y: m.Got.Y - m.Want.Y})
		if r.CanMove && r.Kind == register.Rigid {
			text += "; " + r.about(r.Left[i].Size()) + " is left after the best shift and turn"
		}
		out.Marks[places[i]].Text = text + "."
	}
	out.Remedy = r.remedies()
}

// verdictWords says how well the layer lies, in one or two sentences.
func (r *registration) verdictWords() string {
	worst, left := r.Worst()
	_, off := r.AsItLies()
	switch {
	case r.Kind == register.Mirrored:
		return "The marks fit only with left and right exchanged."
	case !r.CanMove:
		return "The marks come out turned by " + r.degrees(0) + "°, more than any layer is hung off."
	case r.Kind == register.Shift:
		return "The layer lies " + r.offWords(register.Offset{X: -r.Move.Shift.X, Y: -r.Move.Shift.Y}) + " from its place at " + r.Fit.Marks[0].Name + ". A turn cannot be seen."
	case r.Leave:
		return "As the layer lies every mark is within " + r.heldTo(off, r.tolerance) + ", and " + r.Notation.Length(r.tolerance) + " is allowed."
	case r.Verdict == register.Pass:
		return "After the best shift and turn every mark is within " + r.heldTo(left, r.tolerance) + ", and " + r.Notation.Length(r.tolerance) + " is allowed." + r.twoMarks()
	case r.Verdict == register.Fail:
		return "Even after the best shift and turn " + r.Fit.Marks[worst].Name + " is off by " + r.heldTo(left, r.tolerance) + ", and " + r.Notation.Length(r.tolerance) + " is allowed."
	}
	return "After the best shift and turn every mark is within " + r.upTo(left) + ". Give a tolerance to have it judged." + r.twoMarks()
}

func (r *registration) twoMarks() string {
	if len(r.Fit.Marks) != 2 {
		return ""
	}
	return " Two marks show a bad reading only by the distance between them; a third makes it sure."
}

// remedies are what to do, the likeliest first.
func (r *registration) remedies() []string {
	switch {
	case r.Leave && r.Kind == register.Rigid:
		return []string{"Leave it as it lies."}
	case r.Kind == register.Mirrored:
		return []string{"Measure again looking up at the ceiling, from the mask's edges " + r.towardsSide(survey.DA) + " and " + r.towardsSide(survey.AB) + "."}
	case !r.CanMove:
		return []string{"Two marks seem to be exchanged: check which is which."}
	}
	var list []string
	if r.Verdict == register.Fail || r.Verdict == register.NoVerdict {
		list = append(list, r.suspects()...)
	}
	if r.Verdict == register.Fail {
		list = or(list, r.seamWords())
		list = or(list, r.cutWords())
	}
	if r.Verdict != register.Fail {
		if move := r.moveWords("the layer", r.Move); move != "" {
			list = append(list, page.Capital(move)+".")
		}
	} else if len(list) == 0 {
		list = append(list, "No shift, turn, seam or cut brings every mark within the tolerance: take the layer down as far as the marks that are off, and hang it again.")
	}
	if len(r.Without) == 0 {
		list = append(list, r.stretchWords()...)
	}
	return list
}

// suspects says which mark, left out, makes the others agree.
func (r *registration) suspects() []string {
	switch n := len(r.Without); {
	case n == 0:
		return nil
	case n > 1:
		names := ""
		for i, w := range r.Without {
			if i > 0 {
				names += " or "
			}
			names += r.Fit.Marks[w].Name
		}
		return []string{"Without " + names + " the other marks agree; they cannot say which of these is wrong. Measure them again first."}
	case len(r.Fit.Marks) == 3:
		return []string{"Without " + r.Fit.Marks[r.Without[0]].Name + " the other two agree, but two marks show no more than the distance between them. Measure all three again, that one first."}
	}
	return []string{"Without " + r.Fit.Marks[r.Without[0]].Name + " the others agree: measure it again first, before anything is moved."}
}

func (r *registration) seamWords() string {
	s := r.Seams
	if s == nil {
		return ""
	}
	text := r.setWords(s.Along, "along the length")
	if across := r.setWords(s.Across, "along the width"); across != "" {
		if text != "" {
			text += " and "
		}
		text += across
	}
	if move := r.moveWords("the layer", s.Move); move != "" {
		text += ", then " + move
	}
	return text + ". Every mark is then within " + r.upTo(s.Left) + "."
}

func (r *registration) setWords(s register.Set, where string) string {
	if s.Each == 0 {
		return ""
	}
	verb := "open"
	if s.Each < 0 {
		verb = "close"
	}
	each := "the seam"
	if s.Count > 1 {
		each = "each of the " + strconv.Itoa(s.Count) + " seams"
	}
	return verb + " " + each + " " + where + " by " + r.fine(s.Each.Abs())
}

func (r *registration) cutWords() string {
	c := r.Cut
	if c == nil {
		return ""
	}
	low, high := "the part "+r.towardsSide(survey.DA), "the part "+r.towardsSide(survey.BC)
	if !c.Columns {
		low, high = "the part "+r.towardsSide(survey.AB), "the part "+r.towardsSide(survey.CD)
	}
	text := "cut the layer apart along seam " + c.Seam + " and set each part by itself: "
	moves := r.moveWords(low, c.Low)
	if other := r.moveWords(high, c.High); other != "" {
		if moves != "" {
			moves += ", and "
		}
		moves += other
	}
	text += moves + ". Every mark is then within " + r.upTo(c.Left) + "."
	if c.Thin {
		text += " This rests on parts with two marks, which show only the distance between them."
	}
	return text
}

// or adds one more way out to a list.
func or(list []string, way string) []string {
	switch {
	case way == "":
		return list
	case len(list) > 0:
		return append(list, "Or "+way)
	}
	return append(list, page.Capital(way))
}

// moveWords says how to move a part, "" where there is nothing a tape shows.
func (r *registration) moveWords(what string, m register.Move) string {
	text := ""
	if way := r.wayWords(m.Shift); way != "" {
		text = "shift " + what + " " + way
	}
	if r.Kind == register.Rigid && m.RunOff.ToMark(r.Notation.Mark()) != 0 {
		if text == "" {
			text = "turn " + what
		} else {
			text += " and turn it"
		}
		text += " " + r.turnWords(m.RunOff, m.Over) + ", about its middle"
	}
	return text
}

// stretchWords says that the layer has grown or shrunk, and how to lay it then.
func (r *registration) stretchWords() []string {
	var list []string
	for _, d := range [2]struct {
		share float64
		long  measure.Length
		where string
	}{{r.Along, r.Columns.Box, "length"}, {r.Across, r.Rows.Box, "width"}} {
		corner, centre := register.RunPast(d.long, d.share)
		if r.Kind != register.Rigid || !r.CanMove || corner.Abs() < max(r.tolerance, measure.Millimetre) {
			continue
		}
		longer := " longer "
		if d.share < 0 {
			longer = " shorter "
		}
		list = append(list, "By its marks the layer is "+r.about(corner.Abs())+longer+"over its "+d.where+" than by the design ("+r.percent(d.share)+
			"). Line it up on the centre cross: it then misses by "+r.about(centre.Abs())+" at either edge, lined up on a corner by all of it at the far edge.")
	}
	return list
}

func (r *registration) figures() {
	if !r.CanMove {
		return
	}
	const source = "Plane case of the fits by Kabsch 1976, Arun and others 1987, Horn 1987 and Umeyama 1991 (papers from memory)."
	id, s := r.Panels.ID, r.Move.Shift
	r.Length(page.Hanging, id+".shift", "the layer lies shifted, at its middle, by", s.Size(),
		"The shift and turn that leave the least sum of squared distances at the marks."+r.expectedWords(),
		"√(("+r.Put(s.X.Abs())+")² + ("+r.Put(s.Y.Abs())+")²)", source)
	if r.Kind != register.Rigid {
		return
	}
	r.Length(page.Hanging, id+".turn", "the layer lies turned, over its length, by", -r.Move.RunOff,
		"The same fit's turn as the run-off at the far end, above nothing clockwise looking up.",
		r.Put(r.Move.Over)+" × tan "+r.degrees(6)+"°", source)
}

// expectedWords says how well the marks tell where the corners of the mask are.
func (r *registration) expectedWords() string {
	deviation, ok := r.Deviation()
	if !ok || len(r.Fit.Marks) < 3 {
		return ""
	}
	worst := measure.Length(0)
	for _, x := range [2]measure.Length{0, r.Columns.Box} {
		for _, y := range [2]measure.Length{0, r.Rows.Box} {
			off, _ := r.Expected(survey.Point{X: x, Y: y}, deviation)
			worst = max(worst, off)
		}
	}
	return " By what is left at them a corner of the mask is known to about " + r.upTo(worst) +
		" (√(2σ²/N + d²σ²/Σu²), after Fitzpatrick and others 1998, from memory): the wider apart the marks, the better."
}

// degrees is the turn with at most six decimals, which no processor changes.
func (r *registration) degrees(places int32) string {
	return r.Notation.NumberTrimmed(measure.NumberFromFraction(int64(math.Round(r.Degrees()*1e6)), 1_000_000), places)
}

// percent is a share in per cent with three decimals.
func (r *registration) percent(share float64) string {
	return r.Notation.NumberTrimmed(measure.NumberFromFraction(int64(math.Round(math.Abs(share)*1e7)), 100_000), 3) + " %"
}

// about is a length on the tape mark, and where the mark would show none of it,
// that it is under half a mark.
func (b *builder) about(l measure.Length) string {
	mark := b.Notation.Mark()
	switch {
	case l == 0:
		return b.Notation.Length(0)
	case mark > 0 && l.ToMark(mark) == 0:
		return "under " + b.Notation.Exact(mark/2)
	}
	return b.Notation.Length(l)
}

// heldTo is a length that is held against a limit: as finely written as it
// takes to see on which side it is.
func (b *builder) heldTo(l, limit measure.Length) string {
	mark := b.Notation.Mark()
	shown, limited := l.ToMark(mark), limit.ToMark(mark)
	switch {
	case l == limit || shown != 0 && shown != limited:
		return b.Notation.Length(l)
	case l > 0 && shown == 0 && limited != 0 && mark > 0:
		return b.Notation.Exact(mark / 2)
	}
	if fine := b.Notation.Fine(l); fine != b.Notation.Fine(limit) {
		return fine
	}
	if l < limit {
		return "just under " + b.Notation.Fine(limit)
	}
	return "just over " + b.Notation.Fine(limit)
}

// upTo is a length that others are within: on the tape mark, or half a mark.
func (b *builder) upTo(l measure.Length) string {
	if mark := b.Notation.Mark(); l > 0 && l.ToMark(mark) == 0 {
		return b.Notation.Exact(mark / 2)
	}
	return b.Notation.Length(l)
}

// wayWords is a small way on the ceiling, "3 mm towards BC and 2 mm towards
// AB"; "" where a tape shows none.
func (b *builder) wayWords(o register.Offset) string {
	text := ""
	for _, d := range [2]struct {
		l         measure.Length
		low, high survey.Wall
	}{{o.X, survey.DA, survey.BC}, {o.Y, survey.AB, survey.CD}} {
		if d.l.ToMark(b.Notation.Mark()) == 0 {
			continue
		}
		to := d.high
		if d.l < 0 {
			to = d.low
		}
		if text != "" {
			text += " and "
		}
		text += b.Notation.Length(d.l.Abs()) + " " + b.towardsSide(to)
	}
	return text
}

// offWords is wayWords for something that is off, be it ever so little.
func (b *builder) offWords(o register.Offset) string {
	if way := b.wayWords(o); way != "" {
		return way
	}
	if o == (register.Offset{}) {
		return "by nothing"
	}
	return "by " + b.about(o.Size())
}

// turnWords is a turn as a run-off over a length.
func (b *builder) turnWords(runOff, over measure.Length) string {
	way := " clockwise looking up"
	if runOff < 0 {
		way = " anticlockwise looking up"
	}
	if runOff == 0 {
		way = ""
	}
	return b.about(runOff.Abs()) + way + " over " + b.Notation.Length(over)
}
