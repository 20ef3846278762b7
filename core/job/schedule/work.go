package schedule

import (
	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/job/hours"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// tally is the job as the days know it, with what is counted as usual because the plan
// does not say, and the steps of which the labour is not known.
type tally struct {
	days.Job
	usual   []words.Text
	unsized []int
}

// counted is a time of the plan, or the usual one, which is then named: minutes, of
// which the plan's are so many each.
func (w *tally) counted(f measure.Fact, each, usual int64, named words.Text) int64 {
	if f.Known {
		return days.WholeMinutes(f.Value, each)
	}
	w.usual = append(w.usual, named)
	return usual
}

// workOf is the job in the words of the days, with the leaf in the sections of these
// gildings.
func (b *booking) workOf(gilding []steps.Gilt) tally {
	w, r, hasProtect := tally{}, &b.Plan.Days.Rates, false
	for i := range b.Plan.Steps {
		hasProtect = hasProtect || b.Plan.Steps[i].Kind == finish.Protect
	}
	protect := w.counted(r.Protect, 60, days.UsualProtect, words.Say("protecting {time}", words.Of("time", days.Lasting(days.UsualProtect))))
	if !hasProtect {
		w.Protect = protect
	}
	w.Survey = w.counted(r.Survey, 60, days.UsualSurvey, words.Say("measuring {time}", words.Of("time", days.Lasting(days.UsualSurvey))))
	b.workOnLayers(&w)
	for i := range b.Plan.Steps {
		w.Steps = append(w.Steps, b.workOnStep(&w, i, protect, gilding))
	}
	w.TouchUp = w.counted(r.TouchUp, 60, days.UsualTouchUp, words.Say("touching up {time}", words.Of("time", days.Lasting(days.UsualTouchUp))))
	w.Clear = w.counted(r.Clear, 60, days.UsualClear, words.Say("clearing away {time}", words.Of("time", days.Lasting(days.UsualClear))))
	// Nobody advises tape on paint less than a day old.
	w.FilmAge = days.LeastFilmAge
	if age := b.Plan.Days.FilmAge; age.Known {
		w.FilmAge, _ = age.Value.Ceil()
		w.FilmAge = min(w.FilmAge, days.MostDays)
	}
	return w
}

func (b *booking) workOnLayers(w *tally) {
	if len(b.Layers) == 0 {
		return
	}
	r := &b.Plan.Days.Rates
	mark := w.counted(r.Mark, 60, days.UsualMark, words.Say("marking out {time} a layer", words.Of("time", days.Lasting(days.UsualMark))))
	hang := w.counted(r.Hang, 1, days.UsualHang, words.Say("hanging {time} a panel", words.Of("time", days.Lasting(days.UsualHang))))
	peel := w.counted(r.Peel, 1, days.UsualPeel, words.Say("peeling {time} a panel", words.Of("time", days.Lasting(days.UsualPeel))))
	move, line := int64(0), r.Bridge
	if b.hasMoves() {
		move = w.counted(r.Move, 1, days.UsualMove, words.Say("moving the platform {time}", words.Of("time", days.Lasting(days.UsualMove))))
	}
	if line == 0 {
		line = days.UsualLine
		w.usual = append(w.usual, words.Say("bridging {length} an hour", words.Length("length", line)))
	}
	for i := range b.Layers {
		l := b.Hung(i)
		out := days.Layer{ID: l.Panels.ID, Name: l.Panels.Name}
		if !l.Panels.IsEmpty() {
			pieces := int64(len(l.Order))
			if pieces == 0 {
				pieces = int64(l.Panels.Count())
			}
			out.Mark, out.Move = mark, int64(l.Sequence.Moves)*move
			out.Hang = pieces*hang + out.Move
			tape := l.Tape
			if tape == 0 {
				tape = l.Panels.TapeLength(b.Plan.Mask.Outline, b.Plan.Seams.Cover)
			}
			out.Bridge = days.WholeMinutes(tape.In(line), 60)
			out.Peel = pieces * peel
			if l.Key.IsKept() && pieces > 1 {
				out.Peel, out.Key = out.Peel-peel, peel
			}
		}
		w.Layers = append(w.Layers, out)
	}
}

func (b *booking) hasMoves() bool {
	for i := range b.Layers {
		if b.Hung(i).Sequence.Moves > 0 {
			return true
		}
	}
	return false
}

// workOnStep is one step of the finish with its labour.
func (b *booking) workOnStep(w *tally, i int, protect int64, gilding []steps.Gilt) days.Step {
	s := &b.Plan.Steps[i]
	slowing := steps.Slowing(&b.Plan.Finish.Climate, s)
	out := days.Step{ID: s.ID, Name: s.Name, Kind: s.Kind, Layer: LayerThrough(b.Plan, b.Layers, i), Coats: int64(s.Coats),
		Dry: days.WholeMinutes(s.DryHours.Value.Mul(slowing), 60), Recoat: days.WholeMinutes(s.RecoatHours.Value.Mul(slowing), 60)}
	if s.Basis == finish.SurfaceOf {
		out.Surface = s.Surface
	}
	out.Apart = s.Basis == finish.Border
	if s.Basis == finish.Openings && s.ShareKnown && out.Layer >= 0 {
		out.Of = days.WholeMinutes(s.Share, 1_000_000) // millionths
	}
	if !s.RecoatHours.Known {
		out.Recoat = out.Dry
	}
	switch {
	case s.Kind == finish.Protect:
		out.Labour = protect
		return out
	case s.Kind == finish.Peel && !s.RateKnown:
		return out // by the panels
	}
	out.Labour = b.labourOf(w, i)
	for k := range gilding {
		if gilding[k].Divided {
			b.fill(&gilding[k], i, &out)
		}
	}
	return out
}

// labourOf is minutes of one person for one coat of a step. What cannot be worked out
// is named.
func (b *booking) labourOf(w *tally, i int) int64 {
	s := &b.Plan.Steps[i]
	step := words.Name("step", s.Name)
	if !s.RateKnown && s.Basis == finish.Edges {
		if s.EdgeLength > 0 {
			w.usual = append(w.usual, words.Say("“{step}” at {length} an hour", step, words.Length("length", days.UsualLine)))
		}
		return days.WholeMinutes(s.EdgeLength.In(days.UsualLine), 60)
	}
	area, ok := b.Covers[i].Over()
	if !ok {
		w.unsized = append(w.unsized, i)
		return 0
	}
	rate := steps.RateOf(s)
	if !s.RateKnown {
		w.usual = append(w.usual, words.Say("“{step}” at {rate}", step, words.Of("rate", days.PerHour(rate))))
	}
	return days.WholeMinutes(area.SquareMetres.Quo(rate.SquareMetres), 60)
}

// LayerThrough is the layer a step goes through: the one it names, where its
// area lies in a mask; else, for what covers the whole mask, the only one. It is −1
// for none.
func LayerThrough(p *plan.Plan, list []layers.Layer, i int) int {
	s := &p.Steps[i]
	if !s.Basis.IsOnMask() && s.Kind != finish.Peel {
		return -1
	}
	for k := range list {
		if list[k].Plan.Cut.ID == s.LayerID && s.LayerID != "" {
			return k
		}
	}
	if s.LayerID == "" && len(list) == 1 && s.Basis != finish.Typed && s.Kind != finish.Base && s.Kind != finish.Protect {
		return 0
	}
	return -1
}

// fill puts the sizing and the sections of a gilding into the two steps.
func (b *booking) fill(g *steps.Gilt, i int, out *days.Step) {
	switch i {
	case g.Size:
		out.Tack = days.WholeMinutes(g.Tack, 60)
		out.Window = days.WholeMinutes(g.Window, 60)
		out.Tested = b.tested(g.Size)
		open, _ := g.Usable().Mul(measure.NumberFromInt(60)).Ceil()
		out.Open = min(open, out.Window)
	case g.Leaf:
		out.Gilders = int(g.Gilders)
		sizing := steps.RateOf(&b.Plan.Steps[g.Size])
		for k := range g.Sections {
			one := &g.Sections[k]
			out.Sections = append(out.Sections, days.Section{
				Size: days.WholeMinutes(one.Sized.SquareMetres.Quo(sizing.SquareMetres), 60),
				Lay:  days.WholeMinutes(one.Area.SquareMetres.Quo(g.Rate.SquareMetres), 60),
			})
		}
	}
}

// tested is when size was tried on the job and found ready, 0 where it was not
// or the time cannot be read.
func (b *booking) tested(size int) days.Moment {
	m, _ := days.ParseMoment(b.Plan.Steps[size].ReadyAt)
	return m
}

// sayUsual says what of the work is counted as usual because the plan does not say,
// and what is not counted.
func (b *booking) sayUsual(w *tally) {
	if len(w.usual) > 0 {
		b.Remark("/days/rates", problem.Note, words.Say("Counted as usual, because no time is given: {list}.", words.Of("list", fewOf(w.usual))),
			words.Say("Put in your own times: they decide the days and the labour."))
	}
	if len(w.unsized) > 0 {
		steps := make([]words.Text, len(w.unsized))
		for k, i := range w.unsized {
			steps[k] = words.Say("“{step}”", words.Name("step", b.Plan.Steps[i].Name))
		}
		b.Remark("/days", problem.Caution, words.Say("Not counted, because how large the area is cannot be worked out: {list}.", words.Of("list", fewOf(steps))),
			words.Say("Fill in what is missing at the step."))
	}
}

// mostListed is how many things a sentence holds. A choice: it stays readable.
const mostListed = 6

// fewOf are texts in a row: of many the first few, and how many more.
func fewOf(list []words.Text) words.Text {
	if len(list) <= mostListed {
		return words.Say("{list}", words.Texts("list", list))
	}
	return words.Say("{list} and {more} others", words.Texts("list", list[:mostListed-1]), words.Count("more", len(list)-mostListed+1))
}

// sayUncounted says what else the days leave out because the plan does not say.
func (b *booking) sayUncounted() {
	through := make([]bool, len(b.Layers))
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		if s.ReadyAt != "" && b.tested(i) == 0 {
			b.Remark(s.At+"/readyAt", problem.Stop, words.Say("There is no such date and time."), words.Say("Write the day and the time, such as 2027-03-09T07:30."))
		}
		if s.Kind.IsLiquid() && !s.DryHours.Known && !s.TackHours.Known {
			b.Remark(s.At+"/dryHours", problem.Caution, words.Say("No hours of drying are given, so the days count none for “{step}”.", words.Name("step", s.Name)),
				words.Say("Write what the label says."))
		}
		if k := b.Days.Job.Steps[i].Layer; k >= 0 {
			through[k] = true
		}
	}
	if b.Days.Job.Painted > 0 && !b.Plan.Days.FilmAge.Known {
		b.Remark("/days/freshPaint/filmAge", problem.Caution,
			words.Say("How many days the fresh paint must age is not given, so the days count one, the least that anyone advises."),
			words.Say("Ask the maker of the paint and of the mask, and pull tape on it first."))
	}
	for i := range through {
		if !through[i] {
			b.Remark(b.Layers[i].Plan.At, problem.Note,
				words.Say("No step of the finish goes through “{layer}”, so hanging it is not in the days.", words.Name("layer", b.Layers[i].Panels.Name)),
				words.Say("Name the layer in a step."))
		}
	}
}

// painted is when the paint was done that the mask goes on, 0 where it is old.
// A day without a time counts from the end of its work.
func (b *booking) painted() days.Moment {
	text := b.Plan.Days.PaintedOn
	if m, ok := days.ParseMoment(text); ok {
		return m
	}
	if day, ok := hours.Date(&b.List, "/days/freshPaint/doneOn", text); ok {
		return day.At(b.Hours.To)
	}
	return 0
}

// zone is the changes of the clocks.
func (b *booking) zone() days.Zone {
	var changes []days.Change
	for _, c := range b.Plan.Days.ClockChanges {
		if day, ok := hours.Date(&b.List, c.At+"/at", c.Date); ok && c.Minutes != 0 {
			changes = append(changes, days.Change{At: day.At(days.UsualChange), Minutes: int64(c.Minutes)})
		}
	}
	return days.ZoneFrom(changes)
}
