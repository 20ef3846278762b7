package tell

import (
	"strconv"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/tell/setting"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// hanging is the block Hanging: panels, order, seams and tape.
func (b *builder) hanging() {
	crossings := 0
	outline := b.Plan.Mask.Outline
	known := outline.IsComplete()
	for i := range b.Layers {
		l := b.Hung(i)
		b.order(l)
		b.Sheet.Layers = append(b.Sheet.Layers, b.layerOf(l))
		if l.Panels.IsEmpty() || !known {
			continue
		}
		b.seamFigures(l.Layer)
		b.runOut(l.Layer)
		crossings += l.Panels.Crossings()
		tellmask.Bridges(&b.Page, b.Job, l.Layer, &b.Sheet.Layers[i])
	}
	if !known || len(b.Layers) == 0 {
		return
	}
	b.BuyTape()
	b.Length(page.Hanging, "seams.length", "seams, all layers", b.Tape.Seams, "Every inner seam of every layer.", b.sumOfLayers(".seams.length", func(l *job.Layer) string { return b.Put(l.Panels.SeamLength(outline)) }), page.OfArithmetic)
	b.Count(page.Hanging, "seams.crossings", page.Noun(int64(crossings), "crossing of seams", "crossings of seams"), int64(crossings), "",
		"Where four panels meet: (columns − 1) times (rows − 1) in each layer"+b.lessSpans()+".", b.sumOfLayers(".seams.crossings", func(l *job.Layer) string { return strconv.Itoa(l.Panels.Crossings()) }), page.OfArithmetic)
	tellmask.Tape(&b.Page, b.Job)
}

// sumOfLayers adds up what the layers that are hung have of something. Of one
// layer alone it is that layer's own sum.
func (b *builder) sumOfLayers(ending string, of func(*job.Layer) string) string {
	var parts []string
	only := ""
	for i := range b.Layers {
		if l := &b.Layers[i]; !l.Panels.IsEmpty() {
			parts = append(parts, of(l))
			only = l.Panels.ID + ending
		}
	}
	switch len(parts) {
	case 0:
		return "none"
	case 1:
		return b.sumOf(only)
	}
	return strings.Join(parts, " + ")
}

// sumOf is what is put into the sum of a figure on the sheet.
func (b *builder) sumOf(id string) string {
	for i := range b.Sheet.Figures {
		if f := &b.Sheet.Figures[i]; f.ID == id {
			sum, _, _ := strings.Cut(f.Working.Sum, " = ")
			return sum
		}
	}
	return ""
}

func (b *builder) seamFigures(l *job.Layer) {
	outline, p := b.Plan.Mask.Outline, l.Panels
	columns, rows := len(p.Columns)-1, len(p.Rows)-1
	rule := "Seams between columns run the width of the mask, seams between rows its length."
	sum := strconv.Itoa(columns) + " × " + b.Put(outline.Width) + " + " + strconv.Itoa(rows) + " × " + b.Put(outline.Length)
	length := p.SeamLength(outline)
	if inside := measure.Length(columns)*outline.Width + measure.Length(rows)*outline.Length - length; inside > 0 {
		rule += " What lies inside pieces is taken off: of a span there is no seam, and a joined piece is closed on the floor."
		sum += " − " + b.Put(inside)
	}
	b.Length(page.Hanging, p.ID+".seams.length", "seams of this layer", length, rule, sum, page.OfArithmetic)
	b.crossingFigures(l, columns, rows)
	if floor := p.FloorLength(outline); floor > 0 {
		b.Length(page.Hanging, p.ID+".seams.floor", "seams closed on the floor", floor,
			"The seams inside joined pieces.", b.floorSum(l), page.OfArithmetic)
	}
	if len(p.Loose) > 0 {
		b.Length(page.Hanging, p.ID+".seams.loose", "lines round loose pieces", p.LooseLength(),
			"The way round each piece: twice length and width, or π times across.", b.looseSum(l), page.OfArithmetic)
	}
}

// lessSpans is what the rule of the crossings adds where there are spans.
func (b *builder) lessSpans() string {
	for i := range b.Layers {
		for _, p := range b.Layers[i].Panels.Pieces {
			if p.Kind == mask.Span {
				return ", less what spans take away"
			}
		}
	}
	return ""
}

// crossingFigures are where seams meet.
func (b *builder) crossingFigures(l *job.Layer, columns, rows int) {
	p := l.Panels
	rule, sum := "(columns − 1) times (rows − 1).", strconv.Itoa(columns)+" × "+strconv.Itoa(rows)
	crossings := p.Crossings()
	if inside := columns*rows - crossings; inside > 0 {
		rule += " Those inside a span or on its side are taken off."
		sum += " − " + strconv.Itoa(inside)
	}
	b.Count(page.Hanging, p.ID+".seams.crossings", page.Noun(int64(crossings), "crossing of this layer", "crossings of this layer"), int64(crossings), "", rule, sum, page.OfArithmetic)
	if joints := p.TJoints(); joints > 0 {
		b.Count(page.Hanging, p.ID+".seams.tjoints", page.Noun(int64(joints), "seam that ends on a span", "seams that end on a span"), int64(joints), "",
			"Where three panels meet, since a span lies along one side.", "counted", page.OfArithmetic)
	}
}

// floorSum is the floor's part of each seam, written as a sum.
func (b *builder) floorSum(l *job.Layer) string {
	var parts []string
	for _, s := range l.Panels.Seams(b.Plan.Mask.Outline) {
		if s.Floor > 0 {
			parts = append(parts, s.Name+": "+b.Put(s.Floor))
		}
	}
	return strings.Join(parts, " + ")
}

func (b *builder) looseSum(l *job.Layer) string {
	parts := make([]string, len(l.Panels.Loose))
	for i, p := range l.Panels.Loose {
		parts[i] = "2 × (" + b.Put(p.Length) + " + " + b.Put(p.Width) + ")"
		if p.Round {
			parts[i] = "π × " + b.Put(p.Length)
		}
	}
	return strings.Join(parts, " + ")
}

// seam is a seam of the sheet, with what of it is closed on the floor.
func (b *builder) seam(s mask.Seam) sheet.Seam {
	text := b.Notation.Length(s.Length)
	switch {
	case s.Floor > 0 && s.Length > 0:
		text += " and " + b.Notation.Length(s.Floor) + " on the floor"
	case s.Floor > 0:
		text = b.Notation.Length(s.Floor) + " on the floor"
	}
	return sheet.Seam{Seam: s.Name, Length: text}
}

// layerOf is a layer of the sheet: sizes, panels, order and seams.
func (b *builder) layerOf(l job.HungLayer) sheet.Layer {
	p := l.Panels
	out := sheet.Layer{ID: p.ID, Name: p.Name, Count: p.Count(), Columns: b.sizes(p.Columns), Rows: b.sizes(p.Rows)}
	if p.IsEmpty() {
		return out
	}
	turn := turns(l)
	b.hangs(l, &out)
	out.Panels = make([]sheet.Panel, 0, p.Count())
	for row := range p.Rows {
		for column := range p.Columns {
			out.Panels = append(out.Panels, sheet.Panel{
				Label: mask.Panel{Column: column + 1, Row: row + 1}.Label(), Column: column + 1, Row: row + 1,
				Size: out.Columns[column].Text + " × " + out.Rows[row].Text, Order: turn[row*len(p.Columns)+column],
			})
		}
	}
	setting.CutOuts(&b.Page, b.Job, l.Layer, out.Panels)
	tellmask.Delivered(&b.Page, b.Job, l.Layer, &out)
	out.Flags = setting.SeamFlags(&b.Page, b.Job, l.Layer)
	if !b.Plan.Mask.Outline.IsComplete() {
		return out // no box to hold the panels against
	}
	for _, s := range p.Seams(b.Plan.Mask.Outline) {
		out.Seams = append(out.Seams, b.seam(s))
	}
	out.Advice = b.advice(l.Layer) + b.readBothEnds(l)
	return out
}

func (b *builder) sizes(lengths []measure.Length) []sheet.Size {
	sizes := make([]sheet.Size, len(lengths))
	for i, l := range lengths {
		sizes[i] = sheet.Size{Text: b.Notation.Length(l), Other: b.Other.Length(l)}
	}
	return sizes
}

func towards(w survey.Wall) string { return "towards " + w.Text() }

func target(e hanging.Edge) string {
	switch e.To {
	case hanging.ToPanel:
		return "to " + e.Panel.Label()
	case hanging.ToCentreLine:
		return "on the centre line"
	case hanging.ToSeamLine:
		return "on seam line " + e.Seam
	}
	return "on the tape line"
}

// advice says in words what the panels come to against the box, and how to set
// the seams.
func (b *builder) advice(l *job.Layer) string {
	text := b.adviceAlong("Along the length", l.Columns) + " " + b.adviceAlong("Along the width", l.Rows)
	if cut := l.Plan.Cut; cut.Split == mask.ByGreatest {
		text += b.wholeInstead("columns", "long", l.Columns, cut.GreatestLength) + b.wholeInstead("rows", "wide", l.Rows, cut.GreatestWidth)
	}
	return text
}

// wholeInstead says what whole panels of the greatest size would leave at the
// ends, where equal ones are all cut.
func (b *builder) wholeInstead(lines, how string, run mask.Run, greatest measure.Length) string {
	c, ok := mask.Centred(run.Box, greatest, run.Gap)
	if !ok || len(run.Sizes) < 2 || run.Sizes[0] == greatest {
		return ""
	}
	text := " Whole " + lines + ", " + b.Notation.Length(greatest) + " " + how + ", would be " + strconv.Itoa(c.Whole) + " about the middle"
	if c.Edge == 0 {
		return text + "."
	}
	return text + " and one of " + b.Notation.Length(c.Edge) + " at each end."
}

func (b *builder) adviceAlong(where string, run mask.Run) string {
	narrowest, seams := run.Narrowest()
	switch {
	case !seams && run.Over == 0:
		return where + " " + onePiece(run) + " fills the mask outline."
	case !seams:
		return where + " " + onePiece(run) + " is " + b.offBy(run.Over) + "; there is no seam to take it up."
	case run.Over == 0 && run.Gap == 0:
		return where + " the panels fill the mask outline edge to edge: leave no gap."
	case run.Over == 0:
		return where + " the panels and gaps fill the mask outline: leave " + b.Exactly(run.Gap) + " at each seam."
	case narrowest < 0:
		return where + " the panels are " + b.offBy(run.Over) + ": they would overlap " + b.fine(-narrowest) + " at each seam. Trim them or change the size of the mask."
	}
	verb := "close"
	if run.Over < 0 {
		verb = "open"
	}
	change, _ := run.Change()
	return where + " the panels and gaps are " + b.offBy(run.Over) + ": " + verb + " each of " + page.Plural(int64(run.Free()), "seam", "seams") +
		" by " + b.fine(measure.Length(change.Abs().RoundHalfEven(0).IntPart())) + ", to " + b.fine(narrowest) + "."
}

// onePiece is what a run without a seam that can give is made of.
func onePiece(run mask.Run) string {
	if len(run.Sizes) > 1 {
		return "one piece"
	}
	return "one panel"
}

func (b *builder) offBy(over measure.Length) string {
	if over < 0 {
		return b.fine(-over) + " short of the mask outline"
	}
	return b.fine(over) + " over the mask outline"
}

// fine is a small length that the tape mark must not hide.
func (b *builder) fine(l measure.Length) string { return b.Notation.Fine(l) }

// tolerance is a tolerance put into a sum that multiplies it: one typed in
// millimetres stays so among feet and inches, of which it is no mark.
func (b *builder) tolerance(t measure.Length) string {
	if b.Notation.System == measure.FeetInches || b.Notation.IsFine(t) {
		return b.Notation.Exact(t)
	}
	return "≈" + b.Notation.Fine(t)
}

const toleranceSource = "Worst: every panel off the same way. Likely: root of the sum of squares, for independent centred errors (Scholz 1995, Tolerance Stack Analysis Methods; propagation law in JCGM 100, 5.1.2)."

// runOut is how far the panels may come out wrong.
func (b *builder) runOut(l *job.Layer) {
	id := l.Panels.ID
	for _, axis := range []struct {
		name, label string
		run         mask.Run
	}{{"length", "along the length", l.Columns}, {"width", "along the width", l.Rows}} {
		sum := b.Put(axis.run.Box+axis.run.Over) + " − " + b.Put(axis.run.Box)
		b.Length(page.Hanging, id+".runout."+axis.name, "panels and gaps over the mask outline, "+axis.label, axis.run.Over,
			"All panels and planned gaps, less the mask outline; below nothing they are short.", sum, page.OfArithmetic)
		// No seam can be set to less than nothing; the advice says what overlaps.
		narrowest, _ := axis.run.Narrowest()
		if change, ok := axis.run.Change(); ok && narrowest >= 0 {
			b.Length(page.Hanging, id+".seam."+axis.name, "set each seam to, "+axis.label, narrowest,
				"The planned gap, opened or closed so that the run lands on both tape lines.",
				b.fine(axis.run.Gap)+" + ("+b.fine(measure.Length(change.RoundHalfEven(0).IntPart()))+")", page.OfArithmetic)
		}
		b.buildUp(l, id, axis.name, axis.label, len(axis.run.Sizes))
	}
}

func (b *builder) buildUp(l *job.Layer, id, name, label string, panels int) {
	t := l.Plan.Tolerance
	if t <= 0 || panels < 2 {
		return
	}
	end, centre := mask.BuildUpFromEnd(panels, t), mask.BuildUpFromCentre(panels, t)
	n := strconv.Itoa(panels)
	// A seam is set to within half a mark of the tape.
	set := mask.BuildUpWithSeams(panels, t, b.Notation.Mark().Half())
	b.Length(page.Hanging, id+".worst."+name, "worst error building up "+label+", hung from one end", end.Worst,
		"Each panel off by its tolerance, all the same way. From the centre out it is "+b.fine(centre.Worst)+" at either end. With every seam set half a tape mark off as well it is "+b.fine(set.Worst)+" from one end.", n+" × "+b.tolerance(t), toleranceSource)
	b.Length(page.Hanging, id+".likely."+name, "likely error building up "+label+", hung from one end", end.Likely,
		"The root of the number of panels times the tolerance. From the centre out it is "+b.fine(centre.Likely)+" at either end. From one end it is "+b.fine(set.Likely)+" with the seams half a tape mark off as well, and "+
			b.fine(mask.LikelyIfFlat(panels, t))+" where any error within the tolerance is as likely as another.", "√"+n+" × "+b.tolerance(t), toleranceSource)
}
