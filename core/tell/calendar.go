package tell

import (
	"strconv"

	"ceilingwright/core/words"

	"ceilingwright/core/days"
	"ceilingwright/core/finish"
	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
)

// calendar is the work of the job as tasks, and when they are done. isListed
// tells that there are tasks, isDated that they have their days.
type calendar struct {
	gilt     []gilt
	job      days.Job
	tasks    []days.Task
	origins  []days.Origin
	schedule days.Schedule
	isListed bool
	isDated  bool
	// usual names what is counted as usual, unsized the steps of which the labour
	// is not known.
	usual   []string
	unsized []string
}

// calendar is worked out once, when it is first asked for.
func (b *builder) calendar() *calendar {
	if b.calendarMade == nil {
		b.calendarMade = &calendar{}
		b.makeCalendar(b.calendarMade)
	}
	return b.calendarMade
}

func (b *builder) makeCalendar(c *calendar) {
	people := b.people()
	b.gildAll(c, people, true)
	asked := b.Plan.Days.IsAsked()
	if !asked && !b.Plan.Price.Rate.Known {
		return // nobody asks for the work
	}
	b.fillJob(c)
	hours := &workHours{}
	if asked {
		hours = b.workingHours()
		c.job.Painted = b.painted(&hours.Hours)
	}
	c.tasks, c.origins = c.job.Tasks(people)
	if c.isListed = len(c.tasks) > 0 && len(c.tasks) <= days.MostTasks; len(c.tasks) > days.MostTasks {
		b.Report("/days", []problem.Problem{{Severity: problem.Stop,
			What: words.Raw("The work comes in more than the " + strconv.Itoa(days.MostTasks) + " pieces that are planned."),
			Do:   words.Say("Use a size that takes leaf for longer, or fewer coats.")}})
	}
	start, dated := b.date("/days/start", b.Plan.Days.Start)
	if !c.isListed || !hours.isUsable || !dated {
		return
	}
	c.schedule, c.isDated = days.ScheduleOf(&days.Work{Tasks: c.tasks, People: people, Start: start, Hours: hours.Hours, Zone: b.zone(), Round: roundedTo})
	if !c.isDated {
		b.Report("/days", []problem.Problem{{At: "/start", Severity: problem.Stop,
			What: words.Say("The work takes more than ten years."), Do: words.Say("Check how long each piece of work takes, and the days that are worked.")}})
	}
}

// runsOver is how many minutes longer a day is worked where that ends a piece of
// work: nobody comes back the next day for so little. A choice.
const runsOver = 20

// roundedTo is the step of minutes to which work is rounded up: nobody goes by
// the minute. A choice.
const roundedTo = 5

// people is how many work: one where the plan does not say.
func (b *builder) people() int { return max(1, min(b.Plan.Days.People, mostPeople)) }

// mostPeople is more than any crew on one ceiling.
const mostPeople = 100

// rateOf is the area one person does in an hour in a step, the usual one where
// the plan does not say.
func (b *builder) rateOf(i int) measure.Area {
	s := &b.Plan.Steps[i]
	if s.RateKnown {
		return s.Rate
	}
	metal := finish.Metal("")
	if s.Leaf != nil {
		metal = s.Leaf.Metal
	}
	return days.UsualRate(s.Kind, metal)
}

// gildAll divides every leaf step on a size.
func (b *builder) gildAll(c *calendar, people int, say bool) {
	c.gilt = c.gilt[:0]
	for i := range b.Plan.Steps {
		if b.Plan.Steps[i].Kind != finish.LeafLaying {
			continue
		}
		g, problems, ok := b.gild(i, people)
		if say && g.sizing >= 0 {
			b.Report(b.Plan.Steps[g.sizing].At, problems)
		}
		if ok && len(g.sections) > 0 {
			c.gilt = append(c.gilt, g)
		}
	}
}

// minutes is a time in minutes as whole ones, rounded up.
func minutes(n measure.Number, each int64) int64 { return job.WholeMinutes(n, each) }

const longestMinutes = job.LongestMinutes

// counted is a time of the plan, or the usual one, which is then named.
func (c *calendar) counted(f safety.Fact, each, usual int64, name string) int64 {
	if f.Known {
		return minutes(f.Value, each)
	}
	c.usual = append(c.usual, name)
	return usual
}

// fillJob is the job in the words of the days.
func (b *builder) fillJob(c *calendar) {
	d := &b.Plan.Days
	c.job = days.Job{}
	hasProtect := false
	for i := range b.Plan.Steps {
		hasProtect = hasProtect || b.Plan.Steps[i].Kind == finish.Protect
	}
	protect := c.counted(d.Rates.Protect, 60, days.UsualProtect, "protecting "+minutesText(days.UsualProtect))
	if !hasProtect {
		c.job.Protect = protect
	}
	c.job.Survey = c.counted(d.Rates.Survey, 60, days.UsualSurvey, "measuring "+minutesText(days.UsualSurvey))
	b.fillLayers(c)
	for i := range b.Plan.Steps {
		c.job.Steps = append(c.job.Steps, b.jobStep(c, i, protect))
	}
	c.job.TouchUp = c.counted(d.Rates.TouchUp, 60, days.UsualTouchUp, "touching up "+minutesText(days.UsualTouchUp))
	c.job.Clear = c.counted(d.Rates.Clear, 60, days.UsualClear, "clearing away "+minutesText(days.UsualClear))
	// Nobody advises tape on paint less than a day old.
	c.job.FilmAge = days.LeastFilmAge
	if d.FilmAge.Known {
		c.job.FilmAge, _ = d.FilmAge.Value.Ceil()
		c.job.FilmAge = min(c.job.FilmAge, days.MostDays)
	}
}

func (b *builder) fillLayers(c *calendar) {
	if len(b.Layers) == 0 {
		return
	}
	r := &b.Plan.Days.Rates
	mark := c.counted(r.Mark, 60, days.UsualMark, "marking out "+minutesText(days.UsualMark)+" a layer")
	hang := c.counted(r.Hang, 1, days.UsualHang, "hanging "+minutesText(days.UsualHang)+" a panel")
	peel := c.counted(r.Peel, 1, days.UsualPeel, "peeling "+minutesText(days.UsualPeel)+" a panel")
	move := int64(0)
	if b.hasMoves() {
		move = c.counted(r.Move, 1, days.UsualMove, "moving the platform "+minutesText(days.UsualMove))
	}
	line := r.Bridge
	if line == 0 {
		line = days.UsualLine
		c.usual = append(c.usual, "bridging "+b.Notation.Length(line)+" an hour")
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
			out.Bridge = minutes(tape.In(line), 60)
			out.Peel = pieces * peel
			if l.Key.IsKept() && pieces > 1 {
				out.Peel, out.Key = out.Peel-peel, peel
			}
		}
		c.job.Layers = append(c.job.Layers, out)
	}
}

func (b *builder) hasMoves() bool {
	for i := range b.Layers {
		if b.Hung(i).Sequence.Moves > 0 {
			return true
		}
	}
	return false
}

// jobStep is one step of the finish with its labour.
func (b *builder) jobStep(c *calendar, i int, protect int64) days.Step {
	s, slowing := &b.Plan.Steps[i], b.slowing(&b.Plan.Steps[i])
	out := days.Step{ID: s.ID, Name: s.Name, Kind: s.Kind, Layer: b.layerThrough(i), Coats: int64(s.Coats),
		Dry: minutes(s.DryHours.Value.Mul(slowing), 60), Recoat: minutes(s.RecoatHours.Value.Mul(slowing), 60)}
	if s.Basis == finish.SurfaceOf {
		out.Surface = s.Surface
	}
	out.Apart = s.Basis == finish.Border
	if s.Basis == finish.Openings && s.ShareKnown && out.Layer >= 0 {
		out.Of = minutes(s.Share, 1_000_000) // millionths
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
	out.Labour = b.stepLabour(c, i)
	for k := range c.gilt {
		c.gilt[k].fill(b, i, &out)
	}
	return out
}

// stepLabour is minutes of one person for one coat. What cannot be worked out is
// named.
func (b *builder) stepLabour(c *calendar, i int) int64 {
	s := &b.Plan.Steps[i]
	if !s.RateKnown && s.Basis == finish.Edges {
		if s.EdgeLength > 0 {
			c.usual = append(c.usual, "“"+s.Name+"” at "+b.Notation.Length(days.UsualLine)+" an hour")
		}
		return minutes(s.EdgeLength.In(days.UsualLine), 60)
	}
	area, ok := b.AreaOf(i)
	if !ok {
		c.unsized = append(c.unsized, "“"+s.Name+"”")
		return 0
	}
	rate := b.rateOf(i)
	if !s.RateKnown {
		c.usual = append(c.usual, "“"+s.Name+"” at "+b.perHour(rate))
	}
	return minutes(area.SquareMetres.Quo(rate.SquareMetres), 60)
}

// layerThrough is the layer a step goes through: the one it names, where its
// area lies in a mask; else, for what covers the whole mask, the only one.
func (b *builder) layerThrough(i int) int {
	s := &b.Plan.Steps[i]
	if !isOnMask(s.Basis) && s.Kind != finish.Peel {
		return -1
	}
	for k := range b.Layers {
		if b.Layers[k].Plan.Cut.ID == s.LayerID && s.LayerID != "" {
			return k
		}
	}
	if s.LayerID == "" && len(b.Layers) == 1 && s.Basis != finish.Typed && s.Kind != finish.Base && s.Kind != finish.Protect {
		return 0
	}
	return -1
}

// fill puts the sizing and the sections of a gilding into the two steps.
func (g *gilt) fill(b *builder, i int, out *days.Step) {
	switch i {
	case g.sizing:
		out.Tack = minutes(g.tack, 60)
		out.Window = minutes(g.window, 60)
		out.Tested = b.tested(g.sizing)
		open, _ := g.window.Mul(measure.NumberFromInt(1).Sub(g.reserve)).Mul(measure.NumberFromInt(60)).Ceil()
		out.Open = min(open, out.Window)
	case g.leaf:
		out.Gilders = int(g.gilders)
		sizing := b.rateOf(g.sizing)
		for k := range g.sections {
			one := &g.sections[k]
			out.Sections = append(out.Sections, days.Section{
				Size: minutes(one.Sized.SquareMetres.Quo(sizing.SquareMetres), 60),
				Lay:  minutes(one.Area.SquareMetres.Quo(g.rate.SquareMetres), 60),
			})
		}
	}
}

// tested is when size was tried on the job and found ready, 0 where it was not
// or the time cannot be read.
func (b *builder) tested(sizing int) days.Moment {
	m, _ := days.ParseMoment(b.Plan.Steps[sizing].ReadyAt)
	return m
}
