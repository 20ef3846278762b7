package tell

import (
	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	tellhanging "ceilingwright/core/tell/hanging"
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

// Build works out the whole sheet of a plan as read. version is the version of
// the engine and goes onto the sheet. A document that is no plan gives a sheet
// with its problems and nothing else.
func Build(doc plan.Document, version string) *sheet.Sheet {
	return Tell(&doc, job.Work(&doc), version, true).Sheet
}

// Telling is a job as it is told: its sheet, and what else can be asked of it.
type Telling struct {
	Sheet *sheet.Sheet
	b     *builder
}

// Tell tells a job that is worked out. Without drawn the drawings are listed and not
// drawn: Drawing draws one.
func Tell(doc *plan.Document, j *job.Job, version string, drawn bool) *Telling {
	b := builderOn(doc, j, version)
	b.drawn = drawn
	if doc.Usable {
		b.workOut()
		b.draw()
	}
	b.tellProblems()
	return &Telling{b.Sheet, b}
}

// builderFrom is the builder of a document's sheet, with nothing worked out yet.
func builderFrom(doc plan.Document, version string) *builder {
	return builderOn(&doc, job.Work(&doc), version)
}

func builderOn(doc *plan.Document, j *job.Job, version string) *builder {
	units := doc.Plan.Units
	b := &builder{
		Page: page.Page{
			Notation: units.Notation(), Other: units.OtherNotation(), Country: doc.Plan.Place.Rules,
			Sheet: &sheet.Sheet{Format: sheet.Format, Version: version, Plan: sheet.Heading{ID: doc.Plan.ID, Title: doc.Plan.Title}},
		},
		Job: j,
	}
	for _, f := range j.Faults {
		b.cutShort(f.Stage, f.Panic)
	}
	if doc.Usable {
		b.readings(doc.Readings)
	}
	return b
}

// builder lays out one sheet. What one block works out and later ones need is
// kept here.
type builder struct {
	page.Page
	*job.Job
	// drawn tells that the drawings are drawn and not only listed.
	drawn bool

	// faults name the parts of the work that a panic cut short, fault is the first
	// of the panics.
	faults     []string
	fault      any
	faultsTold bool
}

// tellProblems puts what is wrong into words.
func (b *builder) tellProblems() {
	list := problem.Fewer(b.Problems)
	b.Sheet.Problems = make([]sheet.Problem, len(list))
	for i := range list {
		b.Sheet.Problems[i] = sheet.ProblemFrom(list[i], b.Style())
	}
}

func (b *builder) readings(list []plan.Reading) {
	b.Sheet.Readings = make([]sheet.Reading, len(list))
	for i, r := range list {
		b.Sheet.Readings[i] = sheet.Reading{
			At: r.At, Nanometres: page.Nanometres(r.Length),
			Text: page.Said(b.Notation, r.Length), Other: page.Said(b.Other, r.Length), Written: r.Written,
		}
	}
}

// mask is the page Mask.
func (b *builder) mask() {
	tellmask.Figures(&b.Page, b.Job)
}

// hanging is the page Hanging.
func (b *builder) hanging() {
	tellhanging.Tell(&b.Page, b.Job)
	b.lookAtSteps()
}

// registering is what comes of hanging in layers: the gaps as they are measured, and
// how a layer lies on the one before.
func (b *builder) registering() {
	tellmask.Meeting(&b.Page, b.Job)
}
