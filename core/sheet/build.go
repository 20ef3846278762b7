package sheet

import (
	"strconv"
	"strings"

	"ceilingwright/core/words"

	"ceilingwright/core/delivery"
	"ceilingwright/core/drawing"
	"ceilingwright/core/finish"
	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// The blocks of the sheet, in the order of the work.
const (
	blockRoom    = "room"
	blockMask    = "mask"
	blockSetting = "setting"
	blockHanging = "hanging"
	blockFinish  = "finish"
	blockDays    = "days"
	blockPrice   = "price"
	blockSafety  = "safety"
)

// ofArithmetic is the source of a rule that is nothing but arithmetic.
const ofArithmetic = "Arithmetic."

// Build works out the whole sheet of a plan as read. version is the version of
// the engine and goes onto the sheet. A document that is no plan gives a sheet
// with its problems and nothing else.
func Build(doc plan.Document, version string) *Sheet {
	b := builderFrom(doc, version)
	if doc.Usable {
		b.workOut()
		b.draw()
	}
	b.tellProblems()
	return &b.sheet
}

// builderFrom is the builder of a document's sheet, with nothing worked out yet.
func builderFrom(doc plan.Document, version string) *builder {
	b := &builder{
		plan: doc.Plan, n: doc.Plan.Units.Notation(), other: doc.Plan.Units.OtherNotation(),
		blamed: make(map[string]bool, len(doc.Problems)),
		sheet:  Sheet{Format: Format, Version: version, Plan: Heading{ID: doc.Plan.ID, Title: doc.Plan.Title}},
	}
	b.report("", doc.Problems)
	if doc.Usable {
		b.readings(doc.Readings)
	}
	return b
}

// builder lays out one sheet. What one block works out and later ones need is
// kept here.
type builder struct {
	plan     plan.Plan
	n, other measure.Notation
	blamed   map[string]bool
	sheet    Sheet
	// problems are what is wrong so far, not told yet.
	problems []problem.Problem
	// onlyPriced tells that nothing of the sheet is shown but what it costs.
	onlyPriced bool
	// carded is how many panels have cards so far.
	carded int

	// found is the room as worked out, and shape the ceiling of it; it may not be
	// usable.
	found survey.Found
	shape survey.Shape
	// things are the light, where there is one, and the obstructions, as far as
	// their places are known.
	things []thing
	layers []layer
	// site is the ceiling with what a mask can be centred on and square to.
	site   setout.Site
	choice setout.Choice
	// placed tells whether there is a box to set out.
	placed       bool
	standing     hanging.Layout // of the platform; none where it is not known
	footing      hanging.Platform
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

// layer is one layer of the plan with its panels as they came, how they lie in
// the box and in which order they are hung.
type layer struct {
	plan          plan.Layer
	delivery      *delivery.Checked
	panels        mask.Layer
	columns, rows mask.Run
	// tape is the tape over its seams, laps and all.
	tape measure.Length
	// key is the panel kept up for the next layer; begin and last are the panel
	// to begin with and those to hang last for the sake of the key before.
	key   key
	begin mask.Panel
	last  []mask.Panel
	// sequence is the order and what is known of it, order its steps, restart
	// what comes down first.
	sequence hanging.Sequence
	order    []hanging.Hang
	restart  hanging.Restart
	// stations are the places of the platform that cover the box, none where
	// its size is not known; stands is how the platform stands at each, where it was
	// tried.
	stations []hanging.Station
	stands   []hanging.Standing
}

// report puts problems on the sheet, with the pointer prefix in front. What
// comes after a stop at the same blank is left out: a length that cannot be
// read is not also missing.
func (b *builder) report(prefix string, list []problem.Problem) {
	for _, p := range problem.Under(prefix, list) {
		if b.blamed[p.At] {
			continue
		}
		b.blamed[p.At] = p.Severity == problem.Stop
		b.problems = append(b.problems, p)
	}
}

// style is how the sheet puts things.
func (b *builder) style() words.Style {
	return words.Style{Notation: b.n, Country: words.Country(b.plan.Place.Rules)}
}

// told is a text as the sheet puts it.
func (b *builder) told(t words.Text) string { return t.In(b.style()) }

// tellProblems puts what is wrong into words.
func (b *builder) tellProblems() {
	list := problem.Fewer(b.problems)
	b.sheet.Problems = make([]Problem, len(list))
	for i := range list {
		b.sheet.Problems[i] = ProblemFrom(list[i], b.style())
	}
}

func (b *builder) readings(list []plan.Reading) {
	b.sheet.Readings = make([]Reading, len(list))
	for i, r := range list {
		b.sheet.Readings[i] = Reading{
			At: r.At, Nanometres: nanometres(r.Length),
			Text: said(b.n, r.Length), Other: said(b.other, r.Length), Written: r.Written,
		}
	}
}

// said is a length in a notation: exact where the notation can say it in the
// marks of a tape, else rounded to the mark with "≈" in front.
func said(n measure.Notation, l measure.Length) string {
	if n.System == measure.FeetInches && l%(measure.Inch/64) == 0 {
		return n.Exact(l)
	}
	if n.Hides(l) == 0 {
		return n.Length(l)
	}
	return "≈" + n.Length(l)
}

// put is a length put into a sum: what the tape mark hides must not make the sum
// look wrong.
func (b *builder) put(l measure.Length) string { return said(b.n, l) }

func nanometres(l measure.Length) string { return strconv.FormatInt(int64(l), 10) }

// figure puts a figure on the sheet.
func (b *builder) figure(f Figure) { b.sheet.Figures = append(b.sheet.Figures, f) }

// length is a figure that is a length. sum is the numbers put in; the result
// is added to it, and what the tape mark hides.
func (b *builder) length(block, id, label string, l measure.Length, rule, sum, source string) {
	b.figure(Figure{
		ID: id, Block: block, Label: label, Value: nanometres(l), Unit: "nm",
		Text: b.n.Length(l), Other: b.other.Length(l),
		Working: Working{Rule: rule, Sum: equals(sum, b.exactly(l)), Source: source},
	})
}

// exactly is a length with what its rounding hides, as far as anyone can measure
// it: "1′ 0¼″", "1′ 0¼″ (exactly 1′ 0 17⁄64″)" or "311 mm (nearer 311.2 mm)".
func (b *builder) exactly(l measure.Length) string {
	text, fine := b.n.Length(l), b.n.Fine(l)
	switch {
	case fine == text || strings.HasPrefix(fine, "under "):
		return text
	case b.n.IsFine(l):
		return text + " (exactly " + fine + ")"
	}
	return text + " (nearer " + fine + ")"
}

// area is a figure that is an area.
func (b *builder) area(block, id, label string, a measure.Area, rule, sum, source string) {
	b.figure(Figure{
		ID: id, Block: block, Label: label, Value: plain(a.SquareMetres), Unit: "m2",
		Text: b.n.Area(a), Other: b.other.Area(a),
		Working: Working{Rule: rule, Sum: equals(sum, b.n.Area(a)), Source: source},
	})
}

// count is a figure that is a whole number.
func (b *builder) count(block, id, label string, n int64, text, rule, sum, source string) {
	if text == "" {
		text = b.n.Number(measure.NumberFromInt(n), 0)
	}
	b.figure(Figure{
		ID: id, Block: block, Label: label, Value: strconv.FormatInt(n, 10), Text: text,
		Working: Working{Rule: rule, Sum: equals(sum, text), Source: source},
	})
}

// equals is a sum and what it comes to, once where nothing is added up.
func equals(sum, result string) string {
	if sum == result {
		return result
	}
	return sum + " = " + result
}

// noun is what is counted, in the singular for one.
func noun(n int64, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// plain is a number for programs: exact where it has at most twelve decimals,
// else to twelve, half to even.
func plain(n measure.Number) string { return n.Trimmed(12) }

// share is a fraction in per cent.
func (b *builder) share(n measure.Number) string {
	return b.n.NumberTrimmed(n.Mul(measure.NumberFromInt(100)), 2) + " %"
}

func (b *builder) mask() {
	m := b.plan.Mask
	if b.isMaskless() {
		b.report("/mask/length", []problem.Problem{{Severity: problem.Note, What: words.Say("No mask is given, and no step needs one."), Do: words.Say("Write its length and width if there is one.")}})
		return
	}
	b.report("/mask", m.Outline.Check(b.n))
	if len(m.Layers) == 0 {
		b.report("/mask/layers", []problem.Problem{{Severity: problem.Stop, What: words.Say("The mask has no layer."), Do: words.Say("Add a layer.")}})
	}
	if m.Outline.IsComplete() {
		b.area(blockMask, "mask.area", "mask", m.Area(), "Length times width of the whole mask.",
			b.put(m.Length)+" × "+b.put(m.Width), ofArithmetic)
	}
	used := map[string]bool{}
	for i, l := range m.Layers {
		given := l.Cut.ID
		for used[l.Cut.ID] {
			l.Cut.ID += "-" + strconv.Itoa(i+1)
		}
		if l.Cut.ID != given {
			b.report(l.At+"/id", []problem.Problem{{Severity: problem.Caution,
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
	outline := &b.plan.Mask.Outline
	if outline.Length != 0 || outline.Width != 0 || b.blamed["/mask/length"] || b.blamed["/mask/width"] || len(b.plan.Steps) == 0 {
		return false
	}
	for i := range b.plan.Steps {
		s := &b.plan.Steps[i]
		onMask := isOnMask(s.Basis) && s.Basis != finish.Typed || s.Basis == finish.Border || s.Kind == finish.Peel
		if onMask || s.Basis == finish.Typed && s.LayerID != "" {
			return false
		}
	}
	for i := range b.plan.Mask.Layers {
		l := &b.plan.Mask.Layers[i].Cut
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
	for i := range b.layers {
		total += b.layers[i].panels.Count()
		lines += len(b.layers[i].panels.Columns) + len(b.layers[i].panels.Rows)
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
	b.report(at, []problem.Problem{{Severity: problem.Stop,
		What: words.Raw("All layers so far have " + tooMany + " that are taken. This layer is left out."),
		Do:   words.Say("Cut the layers into fewer panels, or plan this one in a job of its own.")}})
	panels.Columns, panels.Rows = nil, nil
	return panels
}

func (b *builder) addLayer(l plan.Layer) {
	panels, problems := mask.LayerFromCut(b.plan.Mask.Outline, l.Cut, b.n)
	b.report(l.At, problems)
	if l.Tolerance >= mask.LeastPanel {
		b.report(l.At+"/panelTolerance", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("A panel that may be off by " + said(b.n, l.Tolerance) + " may be off by a whole panel."), Do: words.Say("Check the number and write its unit.")}})
	}
	panels = b.fewEnough(l.At, panels)
	built := layer{plan: l}
	built.delivery = b.takeIn(&l, panels)
	panels = built.delivery.Layer
	built.panels = panels
	if !panels.IsEmpty() {
		built.columns, built.rows = panels.Runs(b.plan.Mask.Outline)
		columns, rows := len(panels.Columns), len(panels.Rows)
		b.count(blockMask, panels.ID+".panels", noun(int64(panels.Count()), "panel", "panels"), int64(panels.Count()), "",
			"Columns times rows.", strconv.Itoa(columns)+" × "+strconv.Itoa(rows), ofArithmetic)
		b.countFigures(&built)
	}
	b.layers = append(b.layers, built)
	b.buyPanels(&b.layers[len(b.layers)-1])
}
