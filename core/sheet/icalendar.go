package sheet

import (
	"ceilingwright/core/days"
	"ceilingwright/core/plan"
)

// Calendar is the days of a plan as an iCalendar text: an event for each piece
// of work on a day, and one for each wait of a day and more. stamp is the moment
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
	for i := range b.sheet.Days.Tasks {
		t := &b.sheet.Days.Tasks[i]
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
		case to-from < days.Day:
			continue
		default:
			e.AllDay, e.Note = true, true
		}
		if title := b.plan.Title; title != "" {
			e.Name = title + ": " + e.Name
		}
		list = append(list, e)
	}
	return list
}
