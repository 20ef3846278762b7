package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/plan"
)

// Calendar is the days of a plan as an iCalendar text: an event for each piece
// of work on a day, for all that is waited for while it dries, comes to tack or ages,
// and for each time in which a size takes leaf. stamp is the moment
// of writing in UTC, 20270301T080000Z. It is "" where there are no days to write
// or stamp is no such moment.
func Calendar(doc plan.Document, stamp string) string {
	if !doc.Usable {
		return ""
	}
	b := builderFrom(doc, "")
	b.workOut()
	id := doc.Plan.ID
	if id == "" {
		id = "plan"
	}
	text, _ := days.ICalendar(id, doc.Plan.Title, stamp, b.entries())
	return text
}

// entries are the rows of the days as events.
func (b *builder) entries() []days.Entry {
	var list []days.Entry
	for i := range b.Sheet.Days.Tasks {
		t := &b.Sheet.Days.Tasks[i]
		from, ok1 := days.ParseMoment(t.Start)
		to, ok2 := days.ParseMoment(t.End)
		if !ok1 || !ok2 {
			continue
		}
		e := days.Entry{ID: t.ID, Name: t.Name, Text: t.Reason, From: from, To: to}
		switch {
		case t.Kind == "work":
			if t.Labour != "" && t.Labour != "0 min" {
				e.Text += "\nWork: " + t.Labour + "."
			}
		default:
			e.AllDay, e.Note = to-from >= days.Day, true
		}
		list = append(list, e)
	}
	list = append(list, b.windows()...)
	for i := range list {
		if title := b.Plan.Title; title != "" {
			list[i].Name = title + ": " + list[i].Name
		}
	}
	return list
}

// windows are the times in which sizes take leaf, the reserve taken off.
func (b *builder) windows() []days.Entry {
	c := b.calendar()
	var list []days.Entry
	for i := range c.tasks {
		w := c.tasks[i].Window
		if !c.isDated || w == nil || c.schedule.Placed[i].Missed {
			continue
		}
		opens, _ := c.schedule.Opens(i)
		from, to := c.schedule.Zone.Moment(opens), c.schedule.Zone.Moment(opens+days.Instant(w.Open))
		list = append(list, days.Entry{ID: c.tasks[i].ID + ".window", Name: "The size takes leaf: " + c.tasks[i].Name, Text: b.takesLeaf(c, i, from, from), From: from, To: to, Note: true})
	}
	return list
}
