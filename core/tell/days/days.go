// Package days tells the page Days: every task with its time and the reason for it,
// what is waited for, and what more hands or hours would save.
package days

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/job/schedule"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// teller tells the days of one job.
type teller struct {
	*page.Page
	*job.Job
}

// Tell puts the page on the sheet.
func Tell(p *page.Page, j *job.Job) {
	if !j.Plan.Days.IsAsked() {
		return
	}
	t, d, out := teller{p, j}, &j.Days, &p.Sheet.Days
	if !d.Dated {
		if j.Plan.Days.Start == "" {
			out.Text = p.Say("Give the first day of work, and the days are worked out.")
		}
		return
	}
	for i := range d.Rows {
		out.Tasks = append(out.Tasks, t.row(&d.Rows[i]))
	}
	for _, i := range d.InOrder() {
		t.waiting(i)
	}
	for _, s := range j.Saves {
		out.Saves = append(out.Saves, p.Told(saved(s)))
	}
	t.figures()
	s := &d.Schedule
	out.Start, out.Finish = s.Zone.Moment(s.Begins()).String(), s.Zone.Moment(s.Finish).String()
	out.Text = p.Told(words.Sentences(span(s), t.earliest()))
}

// span is from when to when the days are, and what they are made of.
func span(s *days.Schedule) words.Text {
	first, last := s.Span()
	working, waiting, off := s.Count()
	from, to, work := words.Of("from", first), words.Of("to", days.WithYear(last)), words.Count("work", working)
	wait, free := words.Count("wait", waiting), words.Count("off", off)
	switch {
	case waiting > 0 && off > 0:
		return words.Say("From {from} to {to}: {work|day|days} of work, {wait|day|days} of waiting, {off|day|days} off.", from, to, work, wait, free)
	case waiting > 0:
		return words.Say("From {from} to {to}: {work|day|days} of work, {wait|day|days} of waiting.", from, to, work, wait)
	case off > 0:
		return words.Say("From {from} to {to}: {work|day|days} of work, {off|day|days} off.", from, to, work, free)
	}
	return words.Say("From {from} to {to}: {work|day|days} of work.", from, to, work)
}

func (t *teller) earliest() words.Text {
	s := &t.Days.Schedule
	people := words.Count("n", s.People)
	switch {
	case t.Days.Missed():
		return words.Say("Leaf cannot be laid while its size takes it, so these days do not work yet.")
	case s.Earliest:
		return words.Say("With {n|person|people} it cannot be done sooner.", people)
	}
	return words.Say("With {n|person|people} no sooner way was found; it is not shown that there is none.", people)
}

// row is a row of the days.
func (t *teller) row(r *schedule.DayRow) sheet.Task {
	d, day := &t.Days, r.From.Date()
	out := sheet.Task{Critical: r.Critical, Day: day.In(t.Style()), From: r.From.Clock().String(), To: r.To.Ends(day).In(t.Style()), Start: r.From.String(), End: r.To.String()}
	task := &d.Tasks[r.Task]
	if r.Nth == 0 {
		after := d.Schedule.Placed[r.Task].After
		out.ID, out.Kind, out.At = task.ID+".wait", "dry", t.at(after)
		if d.Schedule.Placed[r.Task].Because == days.Ages {
			out.Kind = "wait"
		}
		out.Name = t.Told(t.awaited(r.Task))
		out.Reason = t.Told(words.Sentences(words.Say("“{task}” waits for it.", words.Of("task", task.Name)), t.slowed(r.Task)))
		out.Sum = t.Told(t.waitSum(r.Task))
		return out
	}
	out.ID, out.Name, out.At, out.Kind = task.ID, t.Told(task.Name), t.at(r.Task), "work"
	out.Labour, out.Sum = t.Told(labour(r)), t.workSum(r)
	out.Reason = t.Told(t.reason(r.Task))
	if r.Nth > 1 {
		out.ID += ".day" + words.Digits(int64(r.Nth))
		out.Reason = t.Say("Goes on from the day before.")
	}
	return out
}

// at is the pointer of what a task comes from.
func (t *teller) at(task int) string {
	switch o := t.Days.Origins[task]; {
	case o.Step >= 0:
		return t.Plan.Steps[o.Step].At
	case o.Layer >= 0:
		return t.Layers[o.Layer].Plan.At
	}
	return "/days"
}

// labour is how much work a crew does: 4 h, or 2 people, 2 h each; nothing where the
// work is counted elsewhere.
func labour(r *schedule.DayRow) words.Text {
	time := words.Of("time", days.Lasting(r.Minutes))
	switch r.Crew {
	case 0:
		return words.Text{}
	case 1:
		return words.Say("{time}", time)
	}
	return words.Say("{n|person|people}, {time} each", words.Count("n", r.Crew), time)
}

// awaited is what a task waits for.
func (t *teller) awaited(task int) words.Text {
	one := &t.Days.Schedule.Placed[task]
	before := words.Of("task", t.Days.Tasks[one.After].Name)
	switch one.Because {
	case days.Tacks:
		return words.Say("{task} comes to tack", before)
	case days.Ages:
		return words.Say("{task} cures before masking", before)
	}
	return words.Say("{task} dries", before)
}

// slowed says of what dries that its time is counted longer than its label says,
// where it is.
func (t *teller) slowed(task int) words.Text {
	one := &t.Days.Schedule.Placed[task]
	o := t.Days.Origins[one.After]
	if one.Because != days.Dries && one.Because != days.Recoats || o.Step < 0 {
		return words.Text{}
	}
	if factor := steps.Slowing(&t.Plan.Finish.Climate, &t.Plan.Steps[o.Step]); factor.Cmp(measure.NumberFromInt(1)) > 0 {
		return words.Say("In the air measured about {factor} times the hours of its label.", words.Trimmed("factor", factor, 1))
	}
	return words.Text{}
}

// waiting says what a task waits for, and when it then begins.
func (t *teller) waiting(task int) {
	d, s := &t.Days, &t.Days.Schedule
	one, name := &s.Placed[task], words.Of("task", d.Tasks[task].Name)
	start, ready := s.Zone.Moment(one.Start), s.Zone.Moment(one.Ready)
	if d.IsPutOff(task) {
		t.wait(words.Say("{task} is put off to {start}, so that its leaf is laid in working hours.", name, words.Of("start", start)))
	}
	if !d.Waits(task) {
		return
	}
	awaited, at := words.Of("awaited", t.awaited(task)), words.Of("ready", ready)
	until := words.Say("{awaited} until {ready}", awaited, at)
	if one.Because == days.Tacks {
		until = words.Say("{awaited} on {ready}", awaited, at)
	}
	switch then := words.Of("until", until); {
	case start == ready:
		t.wait(words.Say("{until}; “{task}” then begins at once.", then, name))
	case start.Date() == ready.Date():
		t.wait(words.Say("{until}; “{task}” then begins at {start}.", then, name, words.Of("start", start.Clock())))
	default:
		t.wait(words.Say("{until}; “{task}” then begins on {start}.", then, name, words.Of("start", start)))
	}
}

func (t *teller) wait(text words.Text) {
	t.Sheet.Days.Waits = append(t.Sheet.Days.Waits, t.Told(text))
}

// saved says what a change saves, or why it saves nothing.
func saved(s schedule.Saved) words.Text {
	isSooner := s.Days > 0 || s.Minutes > 0
	what := words.Say("Saturdays too")
	switch s.By {
	case schedule.OneMore:
		if what = words.Say("One person more"); !isSooner {
			return words.Say("{what} saves nothing: waiting decides the finish, or work that no more can share.", words.Of("what", what))
		}
	case schedule.OneHourMore:
		what = words.Say("One hour more a day")
	}
	by, then := words.Of("what", what), words.Of("then", s.Then)
	switch {
	case !isSooner:
		return words.Say("{what} saves nothing: waiting decides the finish.", by)
	case s.Days == 0:
		return words.Say("{what}: done on {then}, {sooner} sooner on the same day.", by, then, words.Of("sooner", days.Lasting(s.Minutes)))
	}
	return words.Say("{what}: done on {then}, {n|day|days} sooner.", by, then, words.Count("n", s.Days))
}

// figures are the finish and the days it takes. Days from one to another have
// both of them in.
func (t *teller) figures() {
	s := &t.Days.Schedule
	first, last := s.Span()
	working, waiting, off := s.Count()
	from, to, all := words.Of("from", first), words.Of("to", last), words.Count("all", int(last-first)+1)
	work, wait, free := words.Count("work", working), words.Count("wait", waiting), words.Count("off", off)
	source := t.Say("Found by trying; small jobs were held against every calendar there can be. Times of drying are those of the labels.")
	t.Figure(sheet.Figure{ID: "days.finish", Block: page.Days, Label: t.Say("done on"), Value: last.Basic(), Unit: "date", Text: days.WithYear(last).In(t.Style()),
		Working: sheet.Working{Rule: t.Told(words.Sentences(words.Say("Every task at the earliest: work in working hours, drying day and night, paint under a mask by days of the calendar, leaf only while its size takes it. The first day counts too, so one goes off."), t.earliest())),
			Sum: t.Say("{from} + {all|day|days} − 1 day = {to}", words.Of("from", days.WithYear(first)), all, words.Of("to", days.WithYear(last))), Source: source}})
	t.Count(page.Days, "days.working", t.Say("days of work"), int64(working), t.Say("{work|day|days}", work), t.Say("Days on which someone works."),
		t.Say("from {from} to {to}, both counted: {all|day|days} − {wait|day|days} of waiting − {off|day|days} off", from, to, all, wait, free), source)
	t.Count(page.Days, "days.waiting", t.Say("days of waiting"), int64(waiting), t.Say("{wait|day|days}", wait),
		t.Say("Days that would be worked, on which all wait for something to dry or to age."),
		t.Say("from {from} to {to}, both counted: {all|day|days} − {work|day|days} of work − {off|day|days} off", from, to, all, work, free), source)
}
