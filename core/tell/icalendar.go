package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/plan"
	telldays "ceilingwright/core/tell/days"
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
	text, _ := days.ICalendar(id, doc.Plan.Title, stamp, telldays.Entries(&b.Page, b.Job))
	return text
}
