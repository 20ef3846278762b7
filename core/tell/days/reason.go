package days

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/words"
)

// reason is why a task begins when it does, and what else is to be known of it.
func (t *teller) reason(task int) words.Text {
	text := words.Sentences(t.whyThen(task), t.pause(task), t.overrun(task))
	if t.Days.Tasks[task].Aside {
		text = words.Sentences(text, words.Say("One of those who lay leaf does it; the time is counted with the leaf."))
	}
	return words.Sentences(text, t.crew(task), t.key(t.Days.Origins[task]))
}

// whyThen is why a task begins when it does.
func (t *teller) whyThen(task int) words.Text {
	d, s := &t.Days, &t.Days.Schedule
	one := &s.Placed[task]
	ready, start := s.Zone.Moment(one.Ready), s.Zone.Moment(one.Start)
	at, before := words.Of("ready", ready.When(start.Date())), words.Name("task", "")
	if one.After >= 0 {
		before = words.Of("task", d.Tasks[one.After].Name)
	}
	text := words.Say("Follows “{task}”.", before)
	switch one.Because {
	case days.Matched:
		return t.matched(task)
	case days.Staffed:
		busy := s.Zone.Moment(s.Placed[one.After].End)
		return words.Say("Whoever does it is busy with “{task}” until {busy}.", before, words.Of("busy", busy.When(start.Date())))
	case days.Dries:
		text = words.Say("“{task}” is dry at {ready}.", before, at)
	case days.Recoats:
		text = words.Say("The next coat can go on from {ready}.", at)
	case days.Tacks:
		text = t.takesLeaf(task, ready, start.Date())
	case days.Ages:
		text = words.Say("The paint is old enough for the mask at {ready}.", at)
	default:
		if one.After < 0 {
			text = words.Say("The first day of work.")
		}
	}
	if start.Date() == ready.Date() {
		return text
	}
	return words.Sentences(text, words.Say("Work goes on at {time} on {day}.", words.Of("time", start.Clock()), words.Of("day", start.Date())))
}

// takesLeaf is when the size under a leaf task takes leaf, from ready on, told on a
// day. What has no closing time stays open until dust settles on it.
func (t *teller) takesLeaf(task int, ready days.Moment, day days.Date) words.Text {
	if t.Days.Tasks[task].Window == nil {
		return words.Text{}
	}
	_, closes, tested := t.Days.TakesLeaf(task)
	from := words.Of("from", words.Say("The size takes leaf from {ready}", words.Of("ready", ready.When(day))))
	if tested {
		from = words.Of("from", words.Say("Tested on the job, the size takes leaf from {ready}", words.Of("ready", ready.When(day))))
	}
	to := words.Of("to", closes.When(day))
	if t.Days.UntilDust(task, t.Gilding) {
		return words.Say("{from} and stays open; dust is the limit, counted at {to}.", from, to)
	}
	if begin, later := t.Days.BeginBy(task); later {
		return words.Say("{from} until {to}, so begin by {begin}.", from, to, words.Of("begin", begin.Clock()))
	}
	return words.Say("{from} until {to}.", from, to)
}

// matched is why a sizing comes when it does.
func (t *teller) matched(task int) words.Text {
	leaf := t.Days.LeafOn(task)
	if leaf < 0 {
		return words.Text{}
	}
	s := &t.Days.Schedule
	opens := s.Zone.Moment(s.Placed[task].End + days.Instant(t.Days.Tasks[leaf].Window.Tack))
	return words.Say("Sized then, it takes leaf from {opens}, and “{leaf}” falls in working hours.", words.Of("opens", opens), words.Of("leaf", t.Days.Tasks[leaf].Name))
}

// pause says how the pause moves a task that is not broken off.
func (t *teller) pause(task int) words.Text {
	switch t.Days.PauseAt(task) {
	case schedule.PauseAfter:
		return words.Say("It is not split by the break, which comes after it.")
	case schedule.AfterPause:
		return words.Say("It is not split by the break, so it begins after it.")
	}
	return words.Text{}
}

// overrun says that a task is ended after the day's hours.
func (t *teller) overrun(task int) words.Text {
	day, runs := t.Days.RunsOver(task)
	if !runs {
		return words.Text{}
	}
	s := &t.Days.Schedule
	return words.Say("Done by {end}, so that nobody comes back for it.", words.Of("end", s.Zone.Moment(s.Placed[task].End).Ends(day)))
}

// crew says why not all who are there do a task.
func (t *teller) crew(task int) words.Text {
	switch t.Days.Fewer(task) {
	case schedule.AtPanel:
		return words.Say("Two hold a panel; nobody else has a hand in it.")
	case schedule.AtLine:
		return words.Say("Two hold a line.")
	case schedule.TooLittle:
		return words.Say("Shared by more, each would have less than half an hour.")
	}
	return words.Text{}
}

// key says when the panel kept up comes down: with the next layer.
func (t *teller) key(o days.Origin) words.Text {
	if o.Layer < 0 || o.Coat > 0 || o.Section > 0 {
		return words.Text{}
	}
	if l := t.Hung(o.Layer); l.Key.IsKept() && o.Work == days.Peeling {
		return words.Say("The key {key} stays up.", words.Name("key", l.Key.Name()))
	}
	if o.Work != days.Hanging || o.Layer == 0 || !t.Hung(o.Layer-1).Key.IsKept() {
		return words.Text{}
	}
	key, order, n := words.Name("key", t.Hung(o.Layer-1).Key.Name()), t.Hung(o.Layer).Order, t.Hung(o.Layer).KeyDown
	if n == len(order) {
		return words.Say("The key {key} of the layer before comes down: leave it up until the next layer is hung; nothing lies on it.", key)
	}
	panel := words.Name("panel", order[n].Panel.Label())
	if n == 0 {
		return words.Say("The key {key} of the layer before comes down: before {panel} of the next layer, the first to go up.", key, panel)
	}
	return words.Say("The key {key} of the layer before comes down: when {n} of {all|panel|panels} of the next layer are up, before {panel}.",
		key, words.Count("n", n), words.Count("all", len(order)), panel)
}

// workSum is how the end of a day's work at a task comes about: the minutes that each
// of those who share it is at it, what rounding adds, and the pause.
func (t *teller) workSum(r *schedule.DayRow) string {
	sum := t.Say("{from} + {work}", words.Of("from", r.From.Clock()), words.Of("work", days.Lasting(r.Minutes)))
	if r.Rounded > 0 {
		sum += t.Say(" + {more} to the full five", words.Of("more", days.Lasting(r.Rounded)))
	}
	if r.Pause > 0 {
		sum += t.Say(" + {pause} of pause", words.Of("pause", days.Lasting(r.Pause)))
	}
	return sum + " = " + r.To.Ends(r.From.Date()).In(t.Style())
}

// waitSum is how the end of a wait comes about: so long on a clock that is never
// changed, and what the change of the clocks does to it; or days of the calendar.
func (t *teller) waitSum(task int) words.Text {
	s := &t.Days.Schedule
	one := &s.Placed[task]
	begun := s.Placed[one.After].End
	from, to := s.Zone.Moment(begun), s.Zone.Moment(one.Ready)
	if one.Because == days.Ages {
		return words.Say("to the same time, {time}: {from} + {n|day|days} = {to}", words.Of("time", from.Clock()), words.Of("from", days.WithYear(from.Date())),
			words.Count("n", int(to.Date()-from.Date())), words.Of("to", days.WithYear(to.Date())))
	}
	first, last := words.Of("from", from.WithYear()), words.Of("to", to.WithYear())
	if from.Date() == to.Date() {
		first, last = words.Of("from", from.Clock()), words.Of("to", to.Clock())
	}
	takes := words.Of("takes", days.Lasting(one.Ready-begun))
	switch by := days.Lasting(to-from) - days.Lasting(one.Ready-begun); {
	case by > 0:
		return words.Say("{from} + {takes} + {by} the clocks go forward = {to}", first, takes, words.Of("by", by), last)
	case by < 0:
		return words.Say("{from} + {takes} − {by} the clocks go back = {to}", first, takes, words.Of("by", -by), last)
	}
	return words.Say("{from} + {takes} = {to}", first, takes, last)
}
