// Package safety tells the page Safety: the platform to ask for and whether the one
// that is there will do, what the work does to the air of the room, and what the rules
// have to say.
package safety

import (
	"slices"

	"ceilingwright/core/job"
	"ceilingwright/core/job/hazards"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/tell/page"
)

// teller tells what bears on the safety of one job.
type teller struct {
	*page.Page
	*job.Job
	facts *safety.Job
	deck  *hazards.Deck
}

func tellerOf(p *page.Page, j *job.Job) *teller {
	return &teller{p, j, &j.Safety.Facts, &j.Safety.Deck}
}

// Checks puts on the sheet how high the platform has to be, and how the one that is
// there stands against that.
func Checks(p *page.Page, j *job.Job) {
	t := tellerOf(p, j)
	if t.deck.Kind == "" {
		return
	}
	t.heights()
	for i := range j.Safety.Checks {
		t.check(&j.Safety.Checks[i])
	}
	if j.Safety.Deck.IsAsked() && j.Safety.Checked {
		t.floorFigures()
	}
}

// Tell puts the rest of the page on the sheet.
func Tell(p *page.Page, j *job.Job) {
	t := tellerOf(p, j)
	t.ask()
	t.overhead()
	t.air()
	for i := range j.Rules.Limits {
		p.Sheet.Limits = append(p.Sheet.Limits, t.limit(&j.Rules.Limits[i]))
	}
	t.notes()
}

// notes are what the rules say of the job.
func (t *teller) notes() {
	told := &t.Rules.Told
	for _, q := range told.FindOut {
		t.Sheet.FindOut = append(t.Sheet.FindOut, sheet.Question{At: q.At, Words: t.Told(q.Words), Rules: q.Rules})
	}
	for _, note := range told.Notes {
		advice := sheet.Advice{
			ID: note.ID, Also: note.Also, Severity: string(note.Severity), Words: t.Told(note.Words), Decides: t.Told(note.Decides), Source: t.Told(note.Source),
			Jurisdiction: note.Jurisdiction, At: note.At, Figures: t.onSheet(note.Figures), Working: t.Told(note.Working), OnDemand: note.OnDemand,
		}
		for _, block := range note.Bites {
			advice.Bites = append(advice.Bites, string(block))
		}
		t.Sheet.Safety = append(t.Sheet.Safety, advice)
	}
}

// onSheet are those of the figures that are told: what a rule speaks of may not be known
// yet. They are of this page, but for the area of the mask.
func (t *teller) onSheet(ids []string) []string {
	var found []string
	for _, id := range ids {
		if id == tellmask.Area && tellmask.IsSized(t.Job) || slices.ContainsFunc(t.Sheet.Figures, func(f sheet.Figure) bool { return f.ID == id }) {
			found = append(found, id)
		}
	}
	return found
}
