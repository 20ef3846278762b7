package tell

import (
	"cmp"
	"slices"
	"strconv"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/days"
	"ceilingwright/core/problem"
)

// days is the block Days: every task with its time and the reason for it, what
// is waited for, and what more hands or hours would save.
func (b *builder) days() {
	d := &b.Plan.Days
	if !d.IsAsked() {
		return
	}
	c := b.calendar()
	b.countedAsUsual(c)
	out := &b.Sheet.Days
	if !c.isDated {
		if d.Start == "" {
			out.Text = "Give the first day of work, and the days are worked out."
		}
		return
	}
	s := &c.schedule
	b.taskRows(c)
	b.missed(c)
	b.testedSizes(c)
	b.filmAges(c)
	b.maskAges(c)
	b.saves(c)
	b.dayFigures(c)
	first, last := s.Span()
	out.Start, out.Finish = s.Zone.Moment(s.Begins()).String(), s.Zone.Moment(s.Finish).String()
	working, waiting, off := s.Count()
	out.Text = "From " + dateText(first) + " to " + longDate(last) + ": " + page.Plural(int64(working), "day", "days") + " of work"
	if waiting > 0 {
		out.Text += ", " + page.Plural(int64(waiting), "day", "days") + " of waiting"
	}
	if off > 0 {
		out.Text += ", " + page.Plural(int64(off), "day", "days") + " off"
	}
	out.Text += ". " + b.earliest(s)
}

func (b *builder) earliest(s *days.Schedule) string {
	if slices.ContainsFunc(s.Placed, func(p days.Placed) bool { return p.Missed }) {
		return "Leaf cannot be laid while its size takes it, so these days do not work yet."
	}
	with := "With " + page.Plural(int64(s.People), "person", "people")
	if s.Earliest {
		return with + " it cannot be done sooner."
	}
	return with + " no sooner way was found; it is not shown that there is none."
}

// countedAsUsual says what is counted as usual because the plan does not say,
// and what is not counted.
func (b *builder) countedAsUsual(c *calendar) {
	b.usuals(c)
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		if s.ReadyAt != "" && b.tested(i) == 0 {
			b.Report(s.At+"/readyAt", []problem.Problem{{Severity: problem.Stop, What: words.Say("There is no such date and time."), Do: words.Say("Write the day and the time, such as 2027-03-09T07:30.")}})
		}
		if s.Kind.IsLiquid() && !s.DryHours.Known && !s.TackHours.Known {
			b.Report(s.At+"/dryHours", []problem.Problem{{Severity: problem.Caution,
				What: words.Raw("No hours of drying are given, so the days count none for “" + s.Name + "”."), Do: words.Say("Write what the label says.")}})
		}
	}
	if c.job.Painted > 0 && !b.Plan.Days.FilmAge.Known {
		b.Report("/days/freshPaint/filmAge", []problem.Problem{{Severity: problem.Caution,
			What: words.Say("How many days the fresh paint must age is not given, so the days count one, the least that anyone advises."), Do: words.Say("Ask the maker of the paint and of the mask, and pull tape on it first.")}})
	}
	for i := range c.job.Layers {
		if !slices.ContainsFunc(c.job.Steps, func(s days.Step) bool { return s.Layer == i }) {
			b.Report(b.Layers[i].Plan.At, []problem.Problem{{Severity: problem.Note,
				What: words.Raw("No step of the finish goes through “" + b.Layers[i].Panels.Name + "”, so hanging it is not in the days."), Do: words.Say("Name the layer in a step.")}})
		}
	}
}

// usuals says what of the work is counted as usual, and what is not counted.
func (b *builder) usuals(c *calendar) {
	if len(c.usual) > 0 {
		b.Report("/days/rates", []problem.Problem{{Severity: problem.Note,
			What: words.Raw("Counted as usual, because no time is given: " + problem.Listed(c.usual) + "."),
			Do:   words.Say("Put in your own times: they decide the days and the labour.")}})
	}
	if len(c.unsized) > 0 {
		b.Report("/days", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("Not counted, because how large the area is cannot be worked out: " + problem.Listed(c.unsized) + "."), Do: words.Say("Fill in what is missing at the step.")}})
	}
}

// taskRows are the tasks, day by day, with what dries in between.
func (b *builder) taskRows(c *calendar) {
	s := &c.schedule
	critical := s.Critical()
	order := make([]int, len(s.Placed))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(s.Placed[i].Start, s.Placed[j].Start) })
	for _, i := range order {
		b.waitRow(c, i, critical[i])
		b.workRows(c, i, critical[i])
	}
	slices.SortStableFunc(b.Sheet.Days.Tasks, func(x, y sheet.Task) int { return cmp.Compare(x.Start, y.Start) })
}

// workRows are a task, one row for each day it is worked at.
func (b *builder) workRows(c *calendar, i int, critical bool) {
	s := &c.schedule
	crew := max(1, s.Placed[i].Crew)
	aside := ""
	if c.tasks[i].Aside {
		crew, aside = 0, " One of those who lay leaf does it; the time is counted with the leaf."
	}
	row := sheet.Task{ID: c.tasks[i].ID, Name: c.tasks[i].Name, At: b.originAt(c.origins[i]), Kind: "work", Reason: b.whyThen(c, i) + b.pauseWords(c, i) + b.overWords(c, i) + aside + b.crewWords(c, i) + b.keyWords(c.origins[i]), Critical: critical}
	// The days go by steps of some minutes; the labour is what it is.
	_, left := (&days.Work{Tasks: c.tasks, People: s.People}).Takes(i)
	parts := s.Parts(i)
	for n, k := 1, 0; k < len(parts); n++ {
		day, from, to, minutes := parts[k].From.Date(), parts[k].From, parts[k].To, int64(0)
		for ; k < len(parts) && parts[k].From.Date() == day; k++ {
			to = parts[k].To
			minutes += int64(parts[k].To - parts[k].From)
		}
		row.Day, row.From, row.To = dateText(day), from.Clock().String(), clockText(day, to)
		row.Start, row.End = from.String(), to.String()
		row.Labour = crewText(crew, min(minutes, left))
		row.Sum = b.workSum(from, to, minutes, minutes-min(minutes, left))
		left -= min(minutes, left)
		b.Sheet.Days.Tasks = append(b.Sheet.Days.Tasks, row)
		row.ID = c.tasks[i].ID + ".day" + strconv.Itoa(n+1)
		row.Reason = "Goes on from the day before."
	}
}

// crewText is how much work a crew does in so many minutes: 4 h, or 2 people, 2 h each;
// nothing where the work is counted elsewhere.
func crewText(crew int, minutes int64) string {
	switch crew {
	case 0:
		return ""
	case 1:
		return minutesText(minutes)
	}
	return page.Plural(int64(crew), "person", "people") + ", " + minutesText(minutes) + " each"
}

// crewWords says why not all who are there do a task, where more than two are.
func (b *builder) crewWords(c *calendar, i int) string {
	s, o := &c.schedule, c.origins[i]
	if s.Placed[i].Crew >= s.People || s.People <= 2 || c.tasks[i].Aside {
		return ""
	}
	switch {
	case o.Work == days.Hanging:
		return " Two hold a panel; nobody else has a hand in it."
	case o.Work == days.Marking:
		return " Two hold a line."
	case o.Coat > 0 && b.Plan.Steps[o.Step].Kind.IsLiquid(), o.Work == days.Bridging, o.Work == days.TouchingUp:
		return " Shared by more, each would have less than half an hour."
	}
	return ""
}

// keyWords says when the panel kept up comes down: with the next layer.
func (b *builder) keyWords(o days.Origin) string {
	if o.Layer < 0 || o.Coat > 0 || o.Section > 0 {
		return ""
	}
	l := b.Hung(o.Layer)
	switch kept := l.Key.IsKept(); {
	case kept && o.Work == days.Peeling:
		return " The key " + l.Key.Name() + " stays up."
	case o.Work == days.Hanging && o.Layer > 0 && b.Hung(o.Layer-1).Key.IsKept():
		return " The key " + b.Hung(o.Layer-1).Key.Name() + " of the layer before comes down: " + small(b.Sheet.Layers[o.Layer-1].Key.Down)
	}
	return ""
}

// small is a sentence that goes on after a colon; it begins with a letter of
// ASCII.
func small(text string) string {
	if text == "" {
		return ""
	}
	return string(text[0]|0x20) + text[1:]
}

// waitRow is what a task waits for, where it does.
func (b *builder) waitRow(c *calendar, i int, critical bool) {
	s := &c.schedule
	one := &s.Placed[i]
	if at := s.Zone.Moment(one.Start); one.Because == days.Matched && c.origins[i].Section <= 1 && at.Date() != s.Zone.Moment(one.Ready).Date() {
		b.Sheet.Days.Waits = append(b.Sheet.Days.Waits, c.tasks[i].Name+" is put off to "+momentText(at)+", so that its leaf is laid in working hours.")
	}
	if one.After < 0 || one.Ready <= s.Placed[one.After].End {
		return
	}
	row := sheet.Task{ID: c.tasks[i].ID + ".wait", Kind: "dry", At: b.originAt(c.origins[one.After]), Critical: critical, Reason: "“" + c.tasks[i].Name + "” waits for it."}
	switch one.Because {
	case days.Dries, days.Recoats:
		row.Name = c.tasks[one.After].Name + " dries"
		row.Reason += b.slowWords(c.origins[one.After])
	case days.Tacks:
		row.Name = c.tasks[one.After].Name + " comes to tack"
	case days.Ages:
		row.Name, row.Kind = c.tasks[one.After].Name+" cures before masking", "wait"
	default:
		return
	}
	from, to := s.Zone.Moment(s.Placed[one.After].End), s.Zone.Moment(one.Ready)
	row.Day, row.From, row.To = dateText(from.Date()), from.Clock().String(), clockText(from.Date(), to)
	row.Start, row.End = from.String(), to.String()
	row.Sum = b.waitSum(s, i)
	b.Sheet.Days.Tasks = append(b.Sheet.Days.Tasks, row)
	until := " until "
	if one.Because == days.Tacks {
		until = " on "
	}
	b.Sheet.Days.Waits = append(b.Sheet.Days.Waits, row.Name+until+momentText(to)+"; “"+c.tasks[i].Name+"” then begins "+b.onAt(to, s.Zone.Moment(one.Start))+".")
}

// onAt is when something begins that could begin at ready.
func (b *builder) onAt(ready, start days.Moment) string {
	switch {
	case start == ready:
		return "at once"
	case start.Date() == ready.Date():
		return "at " + start.Clock().String()
	}
	return "on " + momentText(start)
}

// originAt is the pointer of what a task comes from.
func (b *builder) originAt(o days.Origin) string {
	switch {
	case o.Step >= 0:
		return b.Plan.Steps[o.Step].At
	case o.Layer >= 0:
		return b.Layers[o.Layer].Plan.At
	}
	return "/days"
}

// whyThen is why a task begins when it does.
func (b *builder) whyThen(c *calendar, i int) string {
	s := &c.schedule
	one := &s.Placed[i]
	ready, start := s.Zone.Moment(one.Ready), s.Zone.Moment(one.Start)
	before := ""
	if one.After >= 0 {
		before = "“" + c.tasks[one.After].Name + "”"
	}
	text := ""
	switch one.Because {
	case days.Matched:
		return b.matched(c, i)
	case days.Staffed:
		busy := s.Zone.Moment(s.Placed[one.After].End)
		return "Whoever does it is busy with " + before + " until " + whenText(busy, start) + "."
	case days.Dries:
		text = before + " is dry at " + whenText(ready, start) + "."
	case days.Recoats:
		text = "The next coat can go on from " + whenText(ready, start) + "."
	case days.Tacks:
		text = b.takesLeaf(c, i, ready, start)
	case days.Ages:
		text = "The paint is old enough for the mask at " + whenText(ready, start) + "."
	default:
		if one.After < 0 {
			text = "The first day of work."
		} else {
			text = "Follows " + before + "."
		}
	}
	if start.Date() != ready.Date() {
		text += " Work goes on at " + start.Clock().String() + " on " + dateText(start.Date()) + "."
	}
	return text
}

// pauseWords says how the pause moves a task that is not broken off: it waits
// until the pause is over, or is done through it.
func (b *builder) pauseWords(c *calendar, i int) string {
	s, hours := &c.schedule, &c.schedule.Hours
	if !c.tasks[i].Whole || hours.Pause == 0 {
		return ""
	}
	start, end, pause := s.Zone.Moment(s.Placed[i].Start), s.Zone.Moment(s.Placed[i].End), hours.PauseFrom()
	switch {
	case start.Date() != end.Date():
		return ""
	case start.Clock() < pause && end.Clock() > pause:
		return " It is not split by the break, which comes after it."
	case start.Clock() == pause+days.Clock(hours.Pause) && b.freeBefore(c, i) < start.Date().At(pause):
		return " It is not split by the break, so it begins after it."
	}
	return ""
}

// overWords says that a task is ended after the day's hours.
func (b *builder) overWords(c *calendar, i int) string {
	s := &c.schedule
	end := s.Zone.Moment(s.Placed[i].End)
	if last := s.Zone.Moment(s.Placed[i].End - 1); last < last.Date().At(s.Hours.To) {
		return ""
	}
	return " Done by " + clockText(s.Zone.Moment(s.Placed[i].End-1).Date(), end) + ", so that nobody comes back for it."
}

// freeBefore is when a task could have begun, had it been short.
func (b *builder) freeBefore(c *calendar, i int) days.Moment {
	s := &c.schedule
	one := &s.Placed[i]
	free := one.Ready
	if one.Because == days.Staffed {
		free = max(free, s.Placed[one.After].End)
	}
	return s.Zone.Moment(free)
}

// takesLeaf is when the size under a leaf task takes leaf, the reserve taken off.
// What has no closing time stays open until dust settles on it.
func (b *builder) takesLeaf(c *calendar, i int, ready, start days.Moment) string {
	w := c.tasks[i].Window
	if w == nil {
		return ""
	}
	s := &c.schedule
	opens, tested := s.Opens(i)
	text, end := "The size takes leaf from "+whenText(ready, start), whenText(s.Zone.Moment(opens+days.Instant(w.Open)), start)
	if tested {
		text = "Tested on the job, the size takes leaf from " + whenText(ready, start)
	}
	if g := c.giltOf(c.origins[w.Sizing].Step); g != nil && g.limitedByDust {
		return text + " and stays open; dust is the limit, counted at " + end + "."
	}
	return text + " until " + end + b.beginBy(c, i) + "."
}

// giltOf is the gilding on a size, nil where there is none.
func (c *calendar) giltOf(sizing int) *gilt {
	for i := range c.gilt {
		if c.gilt[i].sizing == sizing {
			return &c.gilt[i]
		}
	}
	return nil
}

// testedSizes holds a size that was found ready on the job against the days and
// against its label: leaf on size that is not ready goes dull (an icon painter's
// notes of August 2012).
func (b *builder) testedSizes(c *calendar) {
	for i := range c.tasks {
		w := c.tasks[i].Window
		if w == nil || w.Tested == 0 {
			continue
		}
		s := &c.schedule
		sized := s.Placed[w.Sizing].End
		tested, label := s.Zone.Instant(w.Tested), sized+days.Instant(w.Tack)
		at := b.Plan.Steps[c.origins[w.Sizing].Step].At + "/readyAt"
		switch {
		case tested < sized:
			b.Report(at, []problem.Problem{{Severity: problem.Stop,
				What: words.Raw("The size cannot be ready at " + momentText(w.Tested) + ": by the days it is laid " + minutesText(int64(sized-tested)) + " after that, at " + momentText(s.Zone.Moment(sized)) + ". The hours of its label are counted."),
				Do:   words.Say("Put in when it was found ready, or begin the work sooner.")}})
		case tested < label:
			b.Report(at, []problem.Problem{{Severity: problem.Caution,
				What: words.Raw("By its label the size is ready at " + momentText(s.Zone.Moment(label)) + "; at " + momentText(w.Tested) + " it is too early by " + minutesText(int64(label-tested)) + ". Leaf laid too early drowns in the size and goes dull."),
				Do:   words.Say("Lay it then only if a knuckle feels it pull and no size comes off; else leave this blank and wait.")}})
		}
	}
}

// matched is why a sizing comes when it does.
func (b *builder) matched(c *calendar, i int) string {
	for k := range c.tasks {
		if w := c.tasks[k].Window; w != nil && w.Sizing == i {
			s := &c.schedule
			opens := s.Zone.Moment(s.Placed[i].End + days.Instant(w.Tack))
			return "Sized then, it takes leaf from " + momentText(opens) + ", and “" + c.tasks[k].Name + "” falls in working hours."
		}
	}
	return ""
}

// missed says which leaf cannot be laid while its size takes it.
func (b *builder) missed(c *calendar) {
	for i := range c.schedule.Placed {
		if !c.schedule.Placed[i].Missed {
			continue
		}
		w := c.tasks[i].Window
		hours, sizing := &c.schedule.Hours, c.origins[w.Sizing].Step
		do := words.Say("Use a size with other times, work at other hours, or let one more person lay leaf.")
		from := minutesText(w.Tack) + " after sizing"
		if _, tested := c.schedule.Opens(i); tested {
			from = "from " + momentText(w.Tested) + ", as tested"
		} else if g := c.giltOf(sizing); g != nil {
			_, laying := c.schedule.Minutes(i)
			if other := b.otherHours(g, laying/max(1, int64(c.schedule.Placed[i].Crew))); !other.IsEmpty() {
				do = words.Sentences(other, words.Say("Or use a size with other times, or let one more person lay leaf."))
			}
		}
		b.Report(b.Plan.Steps[sizing].At+"/openHours", []problem.Problem{{Severity: problem.Stop,
			What: words.Raw("“" + c.tasks[i].Name + "” cannot be laid while the size takes leaf: it does so " + from + ", for " + minutesText(c.job.Steps[sizing].Open) +
				" with the reserve kept back, and work goes on from " + hours.From.String() + " to " + hours.To.String() + "."),
			Do: do}})
		return
	}
}

// saves says what one more person, one more hour a day and Saturdays would save.
func (b *builder) saves(c *calendar) {
	s := &c.schedule
	if s.People < mostPeople {
		more := calendar{}
		people := s.People + 1
		b.gildAll(&more, people, false)
		b.fillJob(&more)
		more.job.Painted = c.job.Painted
		work := *s.Work
		work.People = people
		if work.Tasks, _ = more.job.Tasks(people); len(work.Tasks) <= days.MostTasks {
			b.saved(s, &work, "One person more", "waiting decides the finish, or work that no more can share")
		}
	}
	if s.Hours.To+60 <= days.Day {
		work := *s.Work
		work.Hours.To += 60
		b.saved(s, &work, "One hour more a day", "waiting decides the finish")
	}
	if !s.Hours.Weekdays[days.Saturday] {
		work := *s.Work
		work.Hours.Weekdays[days.Saturday] = true
		b.saved(s, &work, "Saturdays too", "waiting decides the finish")
	}
}

// saved says what a change saves, or why it saves nothing.
func (b *builder) saved(now *days.Schedule, work *days.Work, what, decides string) {
	then, ok := days.ScheduleOf(work)
	if !ok || slices.ContainsFunc(then.Placed, func(p days.Placed) bool { return p.Missed }) {
		return
	}
	end, before := then.Zone.Moment(then.Finish), now.Zone.Moment(now.Finish)
	text := what + ": done on " + momentText(end) + ", "
	switch sooner := int64(before.Date() - end.Date()); {
	case end >= before:
		text = what + " saves nothing: " + decides + "."
	case sooner == 0:
		text += minutesText(int64(before-end)) + " sooner on the same day."
	default:
		text += page.Plural(sooner, "day", "days") + " sooner."
	}
	b.Sheet.Days.Saves = append(b.Sheet.Days.Saves, text)
}

// dayFigures are the finish and the days it takes. Days from one to another have
// both of them in.
func (b *builder) dayFigures(c *calendar) {
	s := &c.schedule
	first, last := s.Span()
	working, waiting, off := s.Count()
	all := page.Plural(int64(last-first)+1, "day", "days")
	const source = "Found by trying; small jobs were held against every calendar there can be. Times of drying are those of the labels."
	b.Figure(sheet.Figure{ID: "days.finish", Block: page.Days, Label: "done on", Value: basicDate(last), Unit: "date", Text: longDate(last),
		Working: sheet.Working{Rule: "Every task at the earliest: work in working hours, drying day and night, paint under a mask by days of the calendar, leaf only while its size takes it. The first day counts too, so one goes off. " + b.earliest(s),
			Sum: longDate(first) + " + " + all + " − 1 day = " + longDate(last), Source: source}})
	span := "from " + dateText(first) + " to " + dateText(last) + ", both counted: " + all
	daysOff := " − " + page.Plural(int64(off), "day", "days") + " off"
	b.Count(page.Days, "days.working", "days of work", int64(working), page.Plural(int64(working), "day", "days"),
		"Days on which someone works.", span+" − "+page.Plural(int64(waiting), "day", "days")+" of waiting"+daysOff, source)
	b.Count(page.Days, "days.waiting", "days of waiting", int64(waiting), page.Plural(int64(waiting), "day", "days"),
		"Days that would be worked, on which all wait for something to dry or to age.", span+" − "+page.Plural(int64(working), "day", "days")+" of work"+daysOff, source)
}
