package days

import (
	"ceilingwright/core/days"
	"ceilingwright/core/job"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Entries are the days as entries of a calendar: one for each piece of work on a day,
// for all that is waited for, and for each time in which a size takes leaf. There are
// none of a sheet that tells no days.
func Entries(p *page.Page, j *job.Job) []days.Entry {
	d := &j.Days
	if !d.Dated {
		return nil
	}
	t := teller{p, j}
	var list []days.Entry
	add := func(e days.Entry) {
		if title := j.Plan.Title; title != "" {
			e.Name = title + ": " + e.Name
		}
		list = append(list, e)
	}
	for i := range d.Rows {
		r, row := &d.Rows[i], t.row(&d.Rows[i])
		e := days.Entry{ID: row.ID, Name: row.Name, Text: row.Reason, From: r.From, To: r.To}
		switch {
		case r.Nth == 0:
			e.AllDay, e.Note = r.To-r.From >= days.Day, true
		case row.Labour != "" && r.Minutes > 0:
			e.Text += "\n" + t.Say("Work: {labour}.", words.Name("labour", row.Labour))
		}
		add(e)
	}
	for i := range d.Tasks {
		if d.Tasks[i].Window != nil && !d.Schedule.Placed[i].Missed {
			from, to, _ := d.TakesLeaf(i)
			add(days.Entry{ID: d.Tasks[i].ID + ".window", Name: t.Say("The size takes leaf: {leaf}", words.Of("leaf", d.Tasks[i].Name)),
				Text: t.Told(t.takesLeaf(i, from, from.Date())), From: from, To: to, Note: true})
		}
	}
	return list
}
