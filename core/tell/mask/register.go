package mask

import (
	"ceilingwright/core/job"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/meeting"
	"ceilingwright/core/measure"
	"ceilingwright/core/register"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// registered says how a layer lies by its check marks; of one that has another
// beneath it and no marks yet, where to put them.
func registered(p *page.Page, j *job.Job, l *layers.Layer, r *meeting.Register, out *sheet.Registered) {
	for i, name := range r.Names {
		mark := sheet.MarkAt{Name: p.Told(name)}
		if r.Waits[i] {
			mark.Text = p.Say("Not measured yet.")
		}
		out.Marks = append(out.Marks, mark)
	}
	if r.Kind == register.NoFit {
		if r.Beneath && len(r.Names) == 0 {
			out.Text = p.Say("Nothing is measured yet. Put marks near the corners and on the centre cross, and measure each from the mask's edges towards {one} and towards {other}.",
				facing("one", j, survey.DA), facing("other", j, survey.AB))
		}
		return
	}
	t := registration{j, r, p.Notation.Mark()}
	out.Verdict, out.Text = string(r.Verdict), p.Told(t.verdict())
	if r.CanMove {
		out.Shift = p.Told(t.off(r.Lies()))
		if r.Kind == register.Rigid {
			out.Turn = p.Told(t.turn(-r.Move.RunOff, r.Move.Over))
		}
	}
	for i := range r.Fit.Marks {
		out.Marks[r.Places[i]].Text = p.Told(t.mark(i))
	}
	out.Remedy = told(p, t.remedies())
	if r.CanMove {
		t.figures(p, l)
	}
}

// registration is how a layer lies by its marks, to be put into words. What is less
// than half of mark no tape shows.
type registration struct {
	job *job.Job
	*meeting.Register
	tape measure.Length
}

// mark says how far a measured mark is off.
func (t *registration) mark(i int) words.Text {
	off := words.Of("off", t.off(t.Fit.Marks[i].Off()))
	if t.CanMove && t.Kind == register.Rigid {
		return words.Say("Off {off}; {left} is left after the best shift and turn.", off, words.About("left", t.Left[i].Size()))
	}
	return words.Say("Off {off}.", off)
}

// verdict says how well the layer lies, in one or two sentences.
func (t *registration) verdict() words.Text {
	worst, left := t.Worst()
	_, off := t.AsItLies()
	allowed := words.Length("allowed", t.Tolerance)
	switch {
	case t.Kind == register.Mirrored:
		return words.Say("The marks fit only with left and right exchanged.")
	case !t.CanMove:
		return words.Say("The marks come out turned by {turn}°, more than any layer is hung off.", words.Trimmed("turn", t.Fit.Turn(), 0))
	case t.Kind == register.Shift:
		return words.Say("The layer lies {off} from its place at {mark}. A turn cannot be seen.", words.Of("off", t.off(t.Lies())), words.Of("mark", t.Mark(0)))
	case t.Leave:
		return words.Say("As the layer lies every mark is within {off}, and {allowed} is allowed.", words.Held("off", off, t.Tolerance), allowed)
	case t.Verdict == register.Pass:
		return words.Sentences(words.Say("After the best shift and turn every mark is within {left}, and {allowed} is allowed.", words.Held("left", left, t.Tolerance), allowed), t.twoMarks())
	case t.Verdict == register.Fail:
		return words.Say("Even after the best shift and turn {mark} is off by {left}, and {allowed} is allowed.", words.Of("mark", t.Mark(worst)), words.Held("left", left, t.Tolerance), allowed)
	}
	return words.Sentences(words.Say("After the best shift and turn every mark is within {left}. Give a tolerance to have it judged.", words.UpTo("left", left)), t.twoMarks())
}

func (t *registration) twoMarks() words.Text {
	if len(t.Fit.Marks) != 2 {
		return words.Text{}
	}
	return words.Say("Two marks show a bad reading only by the distance between them; a third makes it sure.")
}

// remedies are what to do, the likeliest first.
func (t *registration) remedies() []words.Text {
	switch {
	case t.Leave && t.Kind == register.Rigid:
		return []words.Text{words.Say("Leave it as it lies.")}
	case t.Kind == register.Mirrored:
		return []words.Text{words.Say("Measure again looking up at the ceiling, from the mask's edges towards {one} and towards {other}.",
			facing("one", t.job, survey.DA), facing("other", t.job, survey.AB))}
	case !t.CanMove:
		return []words.Text{words.Say("Two marks seem to be exchanged: check which is which.")}
	}
	var list []words.Text
	if len(t.Without) > 0 {
		list = append(list, t.suspects())
	}
	move := t.move(words.Say("the layer"), t.Move)
	switch {
	case t.Verdict == register.Fail:
		if t.Seams != nil {
			list = or(list, t.seams())
		}
		if t.Cut != nil {
			list = or(list, t.cut())
		}
		if len(list) == 0 {
			list = append(list, words.Say("No shift, turn, seam or cut brings every mark within the tolerance: take the layer down as far as the marks that are off, and hang it again."))
		}
	case !move.IsEmpty():
		list = append(list, words.Say("{^move}.", words.Of("move", move)))
	}
	if len(t.Without) == 0 {
		for i := range t.Stretches {
			list = append(list, stretched(&t.Stretches[i]))
		}
	}
	return list
}

// or adds one more way out to a list.
func or(list []words.Text, way words.Text) []words.Text {
	if len(list) > 0 {
		return append(list, words.Say("Or {way}", words.Of("way", way)))
	}
	return append(list, words.Say("{^way}", words.Of("way", way)))
}

// suspects says which mark, left out, makes the others agree.
func (t *registration) suspects() words.Text {
	name := t.Mark(t.Without[0])
	for _, other := range t.Without[1:] {
		name = words.Say("{one} or {other}", words.Of("one", name), words.Of("other", t.Mark(other)))
	}
	mark := words.Of("mark", name)
	switch {
	case len(t.Without) > 1:
		return words.Say("Without {mark} the other marks agree; they cannot say which of these is wrong. Measure them again first.", mark)
	case len(t.Fit.Marks) == 3:
		return words.Say("Without {mark} the other two agree, but two marks show no more than the distance between them. Measure all three again, that one first.", mark)
	}
	return words.Say("Without {mark} the others agree: measure it again first, before anything is moved.", mark)
}

// seams says how to set the seams anew.
func (t *registration) seams() words.Text {
	along, across := set(t.Seams.Along, words.Say("along the length")), set(t.Seams.Across, words.Say("along the width"))
	way, left := along, words.UpTo("left", t.Seams.Left)
	switch {
	case along.IsEmpty():
		way = across
	case !across.IsEmpty():
		way = words.Say("{one} and {other}", words.Of("one", along), words.Of("other", across))
	}
	if move := t.move(words.Say("the layer"), t.Seams.Move); !move.IsEmpty() {
		return words.Say("{set}, then {move}. Every mark is then within {left}.", words.Of("set", way), words.Of("move", move), left)
	}
	return words.Say("{set}. Every mark is then within {left}.", words.Of("set", way), left)
}

// set says how to set the seams of one direction.
func set(s register.Set, where words.Text) words.Text {
	n, by, along := words.Count("n", s.Count), words.Fine("by", s.Each.Abs()), words.Of("where", where)
	switch {
	case s.Each == 0:
		return words.Text{}
	case s.Each < 0 && s.Count > 1:
		return words.Say("close each of the {n} seams {where} by {by}", n, along, by)
	case s.Each < 0:
		return words.Say("close the seam {where} by {by}", along, by)
	case s.Count > 1:
		return words.Say("open each of the {n} seams {where} by {by}", n, along, by)
	}
	return words.Say("open the seam {where} by {by}", along, by)
}

// cut says where to cut the layer apart, and how to set its parts.
func (t *registration) cut() words.Text {
	low, high := survey.DA, survey.BC
	if !t.Cut.Columns {
		low, high = survey.AB, survey.CD
	}
	moves := t.move(words.Say("the part towards {wall}", facing("wall", t.job, low)), t.Cut.Low)
	other := t.move(words.Say("the part towards {wall}", facing("wall", t.job, high)), t.Cut.High)
	switch {
	case moves.IsEmpty():
		moves = other
	case !other.IsEmpty():
		moves = words.Say("{one}, and {other}", words.Of("one", moves), words.Of("other", other))
	}
	text := words.Say("cut the layer apart along seam {seam} and set each part by itself: {moves}. Every mark is then within {left}.",
		words.Name("seam", t.Cut.Seam), words.Of("moves", moves), words.UpTo("left", t.Cut.Left))
	if t.Cut.Thin {
		text = words.Sentences(text, words.Say("This rests on parts with two marks, which show only the distance between them."))
	}
	return text
}

// move says how to move a part, nothing where there is nothing a tape shows.
func (t *registration) move(part words.Text, m register.Move) words.Text {
	what, way, turn := words.Of("part", part), t.way(m.Shift), words.Of("turn", t.turn(m.RunOff, m.Over))
	turns := t.Kind == register.Rigid && m.RunOff.ToMark(t.tape) != 0
	switch {
	case turns && way.IsEmpty():
		return words.Say("turn {part} {turn}, about its middle", what, turn)
	case turns:
		return words.Say("shift {part} {way} and turn it {turn}, about its middle", what, words.Of("way", way), turn)
	case way.IsEmpty():
		return words.Text{}
	}
	return words.Say("shift {part} {way}", what, words.Of("way", way))
}

// way is a small way on the ceiling, "3 mm towards XY and 2 mm towards WX"; nothing
// where a tape shows none.
func (t *registration) way(o register.Offset) words.Text {
	x, y := t.wayTo(o.X, survey.DA, survey.BC), t.wayTo(o.Y, survey.AB, survey.CD)
	switch {
	case x.IsEmpty():
		return y
	case y.IsEmpty():
		return x
	}
	return words.Say("{one} and {other}", words.Of("one", x), words.Of("other", y))
}

func (t *registration) wayTo(l measure.Length, low, high survey.Wall) words.Text {
	if l.ToMark(t.tape) == 0 {
		return words.Text{}
	}
	if l < 0 {
		high = low
	}
	return words.Say("{way} towards {wall}", words.Length("way", l.Abs()), facing("wall", t.job, high))
}

// off is way for something that is off, be it ever so little.
func (t *registration) off(o register.Offset) words.Text {
	if way := t.way(o); !way.IsEmpty() {
		return way
	}
	if o == (register.Offset{}) {
		return words.Say("by nothing")
	}
	return words.Say("by {off}", words.About("off", o.Size()))
}

// turn is a turn as a run-off over a length.
func (t *registration) turn(runOff, over measure.Length) words.Text {
	off, long := words.About("off", runOff.Abs()), words.Length("over", over)
	switch {
	case runOff < 0:
		return words.Say("{off} anticlockwise looking up over {over}", off, long)
	case runOff > 0:
		return words.Say("{off} clockwise looking up over {over}", off, long)
	}
	return words.Say("{off} over {over}", off, long)
}

// stretched says that the layer has grown or shrunk, and how to lay it then.
func stretched(s *meeting.Stretch) words.Text {
	whole, share := words.About("whole", s.Whole.Abs()), words.Trimmed("share", s.Share.Abs().Mul(measure.NumberFromInt(100)), 3)
	what := words.Say("By its marks the layer is {whole} longer over its width than by the design ({share} %).", whole, share)
	switch {
	case s.Along && s.Whole < 0:
		what = words.Say("By its marks the layer is {whole} shorter over its length than by the design ({share} %).", whole, share)
	case s.Along:
		what = words.Say("By its marks the layer is {whole} longer over its length than by the design ({share} %).", whole, share)
	case s.Whole < 0:
		what = words.Say("By its marks the layer is {whole} shorter over its width than by the design ({share} %).", whole, share)
	}
	return words.Sentences(what, words.Say("Line it up on the centre cross: it then misses by {middle} at either edge, lined up on a corner by all of it at the far edge.", words.About("middle", s.Middle.Abs())))
}

// figures are the shift and the turn of a layer.
func (t *registration) figures(p *page.Page, l *layers.Layer) {
	source := p.Say("Plane case of the fits by Kabsch 1976, Arun and others 1987, Horn 1987 and Umeyama 1991 (papers from memory).")
	rule := words.Say("The shift and turn that leave the least sum of squared distances at the marks.")
	if t.CornerKnown {
		rule = words.Sentences(rule, words.Say("By what is left at them a corner of the mask is known to about {corner} (√(2σ²/N + d²σ²/Σu²), after Fitzpatrick and others 1998, from memory): the wider apart the marks, the better.",
			words.UpTo("corner", t.Corner)))
	}
	s := t.Move.Shift
	p.Length(page.Hanging, l.Panels.ID+".shift", p.Say("the layer lies shifted, at its middle, by"), s.Size(), p.Told(rule),
		"√(("+p.Put(s.X.Abs())+")² + ("+p.Put(s.Y.Abs())+")²)", source)
	if t.Kind == register.Rigid {
		p.Length(page.Hanging, l.Panels.ID+".turn", p.Say("the layer lies turned, over its length, by"), -t.Move.RunOff,
			p.Say("The same fit's turn as the run-off at the far end, above nothing clockwise looking up."),
			p.Say("{over} × tan {turn}°", words.Put("over", t.Move.Over), words.Trimmed("turn", t.Fit.Turn(), 6)), source)
	}
}
