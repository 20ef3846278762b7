package tell

import (
	"strconv"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/drawing"
	"ceilingwright/core/finish"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
)

// Build works out the whole sheet of a plan as read. version is the version of
// the engine and goes onto the sheet. A document that is no plan gives a sheet
// with its problems and nothing else.
func Build(doc plan.Document, version string) *sheet.Sheet {
	b := builderFrom(doc, version)
	if doc.Usable {
		b.workOut()
		b.draw()
	}
	b.tellProblems()
	return b.Sheet
}

// builderFrom is the builder of a document's sheet, with nothing worked out yet.
func builderFrom(doc plan.Document, version string) *builder {
	units := doc.Plan.Units
	b := &builder{
		Page: page.Page{
			Notation: units.Notation(), Other: units.OtherNotation(), Country: words.Country(doc.Plan.Place.Rules),
			Sheet: &sheet.Sheet{Format: sheet.Format, Version: version, Plan: sheet.Heading{ID: doc.Plan.ID, Title: doc.Plan.Title}},
		},
		Job: job.From(doc),
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
	// onlyPriced tells that nothing of the sheet is shown but what it costs.
	onlyPriced bool
	// carded is how many panels have cards so far.
	carded int

	products     []product
	jugs, scales *finish.Measuring // once asked for
	packs        []pack
	// ingredients are the parts of mixes that have to be at hand.
	ingredients []ingredient
	gildings    []gilding
	leafNeeds   []leafNeed
	hoursRead   *workHours // once asked for
	// calendarMade is the work and its days, once they are asked for.
	calendarMade *calendar
	// priced is the price as worked out, nil where there is none, and roughly that
	// of a first visit.
	priced  *price.Quote
	roughly price.RoughPrice
	// groups and ink are what drawings are laid out and written in, one after
	// another.
	groups []drawing.Group
	ink    []byte
	// widest is the widest gap of all seams, widestAt the seam it is at.
	widest   measure.Length
	widestAt string
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

func (b *builder) mask() {
	m := b.Plan.Mask
	if b.isMaskless() {
		b.Report("/mask/length", []problem.Problem{{Severity: problem.Note, What: words.Say("No mask is given, and no step needs one."), Do: words.Say("Write its length and width if there is one.")}})
		return
	}
	b.Report("/mask", m.Outline.Check(b.Notation))
	if len(m.Layers) == 0 {
		b.Report("/mask/layers", []problem.Problem{{Severity: problem.Stop, What: words.Say("The mask has no layer."), Do: words.Say("Add a layer.")}})
	}
	if m.Outline.IsComplete() {
		b.Area(page.Mask, "mask.area", "mask", m.Area(), "Length times width of the whole mask.",
			b.Put(m.Length)+" × "+b.Put(m.Width), page.OfArithmetic)
	}
	used := map[string]bool{}
	for i, l := range m.Layers {
		given := l.Cut.ID
		for used[l.Cut.ID] {
			l.Cut.ID += "-" + strconv.Itoa(i+1)
		}
		if l.Cut.ID != given {
			b.Report(l.At+"/id", []problem.Problem{{Severity: problem.Caution,
				What: words.Raw("Another layer is called “" + given + "” too; this one is “" + l.Cut.ID + "” on the sheet, and steps that name “" + given + "” mean the first."),
				Do:   words.Say("Give each layer a word of its own.")}})
		}
		used[l.Cut.ID] = true
		b.addLayer(l)
	}
}

// isMaskless tells whether this is a job without a mask, as graining is, or leaf
// alone: no size of one is typed, and no step lies in it, beside it or peels it.
func (b *builder) isMaskless() bool {
	outline := &b.Plan.Mask.Outline
	if outline.Length != 0 || outline.Width != 0 || b.IsRefused("/mask/length") || b.IsRefused("/mask/width") || len(b.Plan.Steps) == 0 {
		return false
	}
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		onMask := isOnMask(s.Basis) && s.Basis != finish.Typed || s.Basis == finish.Border || s.Kind == finish.Peel
		if onMask || s.Basis == finish.Typed && s.LayerID != "" {
			return false
		}
	}
	for i := range b.Plan.Mask.Layers {
		l := &b.Plan.Mask.Layers[i].Cut
		if l.Columns != 0 || l.Rows != 0 || len(l.ColumnSizes)+len(l.RowSizes) > 0 || l.GreatestLength != 0 || l.GreatestWidth != 0 {
			return false
		}
	}
	return true
}

// mostLines is how many columns and rows all layers may have: each has its marks
// on the walls, its seam and its gap to set. On the largest mask 1000 panels side
// by side are as narrow as anyone cuts one.
const mostLines = 2000

// fewEnough is a layer, or one without panels where all layers together would
// have more than are taken of one: a sheet of many such layers is more than a
// page can hold.
func (b *builder) fewEnough(at string, panels mask.Layer) mask.Layer {
	total, lines := panels.Count(), len(panels.Columns)+len(panels.Rows)
	for i := range b.Layers {
		total += b.Layers[i].Panels.Count()
		lines += len(b.Layers[i].Panels.Columns) + len(b.Layers[i].Panels.Rows)
	}
	tooMany := ""
	switch {
	case total > mask.MostPanels:
		tooMany = strconv.Itoa(total) + " panels, more than the " + strconv.Itoa(mask.MostPanels)
	case lines > mostLines:
		tooMany = strconv.Itoa(lines) + " columns and rows, more than the " + strconv.Itoa(mostLines)
	default:
		return panels
	}
	b.Report(at, []problem.Problem{{Severity: problem.Stop,
		What: words.Raw("All layers so far have " + tooMany + " that are taken. This layer is left out."),
		Do:   words.Say("Cut the layers into fewer panels, or plan this one in a job of its own.")}})
	panels.Columns, panels.Rows = nil, nil
	return panels
}

func (b *builder) addLayer(l plan.Layer) {
	panels, problems := mask.LayerFromCut(b.Plan.Mask.Outline, l.Cut, b.Notation)
	b.Report(l.At, problems)
	if l.Tolerance >= mask.LeastPanel {
		b.Report(l.At+"/panelTolerance", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("A panel that may be off by " + page.Said(b.Notation, l.Tolerance) + " may be off by a whole panel."), Do: words.Say("Check the number and write its unit.")}})
	}
	panels = b.fewEnough(l.At, panels)
	built := job.Layer{Plan: l}
	built.Delivery = b.takeIn(&l, panels)
	panels = built.Delivery.Layer
	built.Panels = panels
	if !panels.IsEmpty() {
		built.Columns, built.Rows = panels.Runs(b.Plan.Mask.Outline)
		columns, rows := len(panels.Columns), len(panels.Rows)
		b.Count(page.Mask, panels.ID+".panels", page.Noun(int64(panels.Count()), "panel", "panels"), int64(panels.Count()), "",
			"Columns times rows.", strconv.Itoa(columns)+" × "+strconv.Itoa(rows), page.OfArithmetic)
		b.countFigures(&built)
	}
	b.Layers = append(b.Layers, built)
	b.buyPanels(&b.Layers[len(b.Layers)-1])
}
