package tell

import (
	"strconv"

	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

const (
	leafSource = "Field rule: each leaf adds its size less the lap both ways. Waste of a tenth lying flat, a fifth overhead: common practice, no source."
	gridSource = "A gilder's notes of November 2012 count a ceiling so, by rows. Waste of a tenth lying flat, a fifth overhead: common practice, no source."
	bandSource = "Leaf cut in strips, each lapping the one before (Workshop Receipts, first series, oil gilding). Waste: common practice, no source."
)

// leafStep is a step that lays leaf, on its way onto the sheet; at is its place in the
// plan.
type leafStep struct {
	*builder
	plan.Step
	at  int
	out *sheet.Step
}

// leafOf is the leaf of a step.
func (b *builder) leafOf(at int, out *sheet.Step) {
	w := &leafStep{builder: b, Step: b.Plan.Steps[at], at: at, out: out}
	w.leaf(b.Covers[at].Area, b.Covers[at].Known)
}

// id is a figure id of the step, which is noted as one of its figures.
func (w *leafStep) id(name string) string {
	id := "step." + w.ID + "." + name
	w.out.Figures = append(w.out.Figures, id)
	return id
}

// leaf is the leaf of a step in leaves, books and packs, what it weighs and
// costs. Leaf in a band needs no area.
func (w *leafStep) leaf(area measure.Area, areaKnown bool) {
	l := w.Leaf
	if l == nil {
		return
	}
	w.seal(l.Metal)
	if !l.Known {
		return
	}
	leaves, ok := w.laid(area, areaKnown)
	if !ok {
		return
	}
	w.yield(&leaves)
	w.weight(&leaves)
	books, problems, ok := finish.BooksFor(leaves.Count, finish.Sold{PerBook: int64(l.PerBook), BooksPerPack: int64(l.BooksPerPack),
		Book: finish.Cost(l.PerBookPrice), Pack: finish.Cost(l.PerPackPrice)})
	w.Report(w.At+"/leaf", problems)
	if !ok {
		return
	}
	w.books(&leaves, &books)
	w.leafCost(&leaves, &books)
	w.Report(w.At+"/leaf", books.SpareRemarks())
	w.sameLeaf(&books)
}

// laid are the leaves, counted as they are laid.
func (w *leafStep) laid(area measure.Area, areaKnown bool) (leaves finish.Leaves, ok bool) {
	g := finish.Gilding{Area: area, Leaf: w.Leaf.Leaf, Cover: w.Leaf.Cover, Waste: w.Leaf.Waste}
	switch {
	case w.Leaf.Lay == plan.Band:
		return w.inBand(g, areaKnown)
	case !areaKnown:
		return leaves, false
	case w.Leaf.Lay == plan.Grid:
		if along, across, ok := w.Rectangle(w.at); ok {
			return w.inGrid(g, along, across)
		}
		w.Report(w.At+"/leaf/lay", []problem.Problem{{Severity: problem.Caution,
			What: words.Say("What this step goes over is no rectangle, so rows and columns cannot be counted. The leaves are counted by the area."),
			Do:   words.Say("Let the step go over the whole mask or a ceiling with four square corners, or lay it leaf by leaf over the field.")}})
	}
	return w.inField(g)
}

// answered puts the problems of a count on the sheet. What is wrong with the area
// or with nothing in particular belongs to the step.
func (w *leafStep) answered(leaves finish.Leaves, problems []problem.Problem, ok bool) (finish.Leaves, bool) {
	for i := range problems {
		if problems[i].At != "/area" {
			problems[i].At = "/leaf" + problems[i].At
		} else {
			problems[i].At = ""
		}
	}
	w.Report(w.At, problems)
	return leaves, ok
}

// inField counts by the area, with the leaf that runs past the edges of openings.
func (w *leafStep) inField(g finish.Gilding) (finish.Leaves, bool) {
	l, put := w.Leaf, w.Notation.Area(g.Area)
	switch {
	case l.Spill > 0 && l.OpeningsEdge > 0:
		g.Spill = finish.SpillOf(l.OpeningsEdge, l.Spill)
		put = "(" + put + " + " + w.Put(l.OpeningsEdge) + " × " + w.Put(l.Spill) + ")"
	case l.Spill > 0:
		w.Report(w.At+"/leaf/openingsEdge", []problem.Problem{{Severity: problem.Note,
			What: words.Say("How long the edges are is not given, so the leaf that goes past them is not counted."), Do: words.Say("Measure the edges of the openings, or ask the supplier.")}})
	}
	leaves, ok := w.answered(finish.Field(g))
	if ok {
		w.leaves(&leaves, "Area times the share that gets leaf, divided by what one lapped leaf adds, and the waste; rounded up.",
			put+" × "+w.builder.Share(l.Cover)+" ÷ ("+w.less(l.Leaf.Length, l.Leaf.Lap)+" × "+w.less(l.Leaf.Width, l.Leaf.Lap)+") × "+w.wasted(), leafSource)
	}
	return leaves, ok
}

// inGrid counts rows and columns, of a mask with the leaf past its edges.
func (w *leafStep) inGrid(g finish.Gilding, along, across measure.Length) (finish.Leaves, bool) {
	margin := measure.Length(0)
	if w.Basis == finish.Mask {
		margin = w.Leaf.Spill
	}
	leaves, ok := w.answered(finish.InGrid(g, along, across, margin))
	if ok {
		along, across = along+2*margin, across+2*margin
		rule := "Whole columns and rows over " + w.Put(along) + " × " + w.Put(across) + ", times the share that gets leaf, and the waste; rounded up. The first leaf of a row covers its size, each other its size less the lap."
		if leaves.Turned {
			rule += " The leaves lie crosswise, which takes fewer."
		}
		w.leaves(&leaves, rule, strconv.FormatInt(leaves.Columns, 10)+" × "+strconv.FormatInt(leaves.Rows, 10)+" × "+w.builder.Share(g.Cover)+" × "+w.wasted(), gridSource)
	}
	return leaves, ok
}

// band is the band of the step: round the whole mask where no run is given.
func (w *leafStep) band() (b finish.Band, ok bool) {
	l, outline := w.Leaf, &w.builder.Plan.Mask.Outline
	b = finish.Band{Run: l.BandRun, Width: l.BandWidth, Margin: l.Spill, Corners: int64(l.BandCorners), Closed: l.BandMeets}
	if b.Run == 0 && !l.BandRunWrong {
		if !outline.IsComplete() {
			return b, false
		}
		b.Run, b.Closed = 2*(outline.Length+outline.Width), true
		if b.Corners == 0 {
			b.Corners = 4
		}
	}
	return b, b.Run > 0 && b.Width > 0
}

func (w *leafStep) inBand(g finish.Gilding, areaKnown bool) (finish.Leaves, bool) {
	area := g.Area
	b, ok := w.band()
	if !ok {
		return finish.Leaves{}, false
	}
	leaves, ok := w.answered(finish.InBand(g, b))
	if !ok {
		return leaves, false
	}
	leaf := w.Leaf.Leaf
	if leaves.Turned {
		leaf = leaf.Turned()
	}
	w.strips(&leaves, &b, leaf)
	s := &leaves.Strips
	rule, sum := "Strips by how many are cut from a leaf, rounded up.", w.whole(s.InRow)+" ÷ "+w.whole(s.FromLeaf)
	if s.Rows > 1 || s.FromLeaf == 1 {
		rule, sum = "The leaves of one row times the rows.", w.whole(s.InRow)+" × "+w.whole(s.Rows)
	}
	w.leaves(&leaves, rule, sum, bandSource)
	off := area.Sub(leaves.Area).SquareMetres.Abs()
	if areaKnown && off.Mul(measure.NumberFromInt(10)).Cmp(leaves.Area.SquareMetres) > 0 {
		w.Report(w.At+"/area", []problem.Problem{{Severity: problem.Caution,
			What: words.Raw("The band comes to " + w.Notation.Area(leaves.Area) + ", what this step goes over to " + w.Notation.Area(area) + ". The leaf goes by the band, the hours and sections by the other."),
			Do:   words.Say("Type the area of the band as what the step goes over, and the same for its size.")}})
	}
	return leaves, true
}

// strips is how many strips a band takes, and how they are cut.
func (w *leafStep) strips(leaves *finish.Leaves, b *finish.Band, leaf finish.Leaf) {
	l, s := w.Leaf, &leaves.Strips
	sum, end := w.Put(b.Run), ""
	if b.Corners > 0 {
		sum = "(" + sum + " + " + page.Plural(b.Corners, "corner", "corners") + " × " + w.Put(b.Wide()) + ")"
	}
	if !b.Closed {
		end = " − " + w.Put(leaf.Lap)
	}
	sum += " × " + w.builder.Share(l.Cover) + " × (1 + " + w.builder.Share(l.Waste) + ")"
	if end != "" {
		sum = "(" + sum + end + ")"
	}
	sum += " ÷ " + w.less(leaf.Length, leaf.Lap) + ", rounded up"
	rule := "The run, with the width of a strip more for each mitred corner, the share that gets leaf and the waste, by what a lapped strip adds."
	if s.Rows > 1 {
		rule += " The band is wider than a leaf: " + w.whole(s.Rows) + " rows of whole leaves."
	} else {
		rule += " A leaf of " + w.Put(leaf.Width) + " gives " + page.Plural(s.FromLeaf, "strip", "strips") + " of " + w.Put(b.Wide()) + "."
	}
	if leaves.Turned {
		rule += " It is cut the other way round, which takes fewer."
	}
	label := "strips of leaf"
	if s.Rows > 1 {
		label = "leaves in a row"
	}
	w.Count(page.Finish, w.id("strips"), label, s.InRow, "", rule, sum, bandSource)
}

func (w *leafStep) whole(n int64) string { return w.Notation.Number(measure.NumberFromInt(n), 0) }

// wasted is the waste in a sum.
func (w *leafStep) wasted() string { return "(1 + " + w.builder.Share(w.Leaf.Waste) + "), rounded up" }

func (w *leafStep) less(side, lap measure.Length) string {
	return "(" + w.Put(side) + " − " + w.Put(lap) + ")"
}

// leaves is the figure of the leaves.
func (w *leafStep) leaves(leaves *finish.Leaves, rule, sum, source string) {
	w.Count(page.Finish, w.id("leaves"), page.Noun(leaves.Count, w.piece(1), w.piece(2)), leaves.Count, "", rule, sum, source)
}

// piece is what leaf is counted in: leaves, or rolls of them.
func (w *leafStep) piece(n int64) string {
	if w.Leaf.Leaf.IsRoll() {
		return page.Noun(n, "roll of leaf", "rolls of leaf")
	}
	return page.Noun(n, "leaf", "leaves")
}

// yield tells from either end how much of the leaf shows on the work.
func (w *leafStep) yield(leaves *finish.Leaves) {
	yield, more, ok := leaves.Yield()
	if !ok {
		return
	}
	hundred := measure.NumberFromInt(100)
	of := func(n measure.Number) string { return w.Notation.Number(n.Mul(hundred), 1) + " %" }
	w.Figure(sheet.Figure{
		ID: w.id("yield"), Block: page.Finish, Label: "leaf that stays visible", Value: page.Plain(yield), Text: of(yield),
		Working: sheet.Working{
			Rule:   "The area where leaf shows, in bare leaves, by the leaves it takes with what falls on the mask, laps, cut edges and waste. The second line is the same fact from the other end, how much more than shows is bought: say which you mean when you ask for leaf.",
			Sum:    w.Notation.Number(leaves.Bare, 2) + " ÷ " + w.Notation.Number(leaves.Exact, 2) + " = " + of(yield) + "\n" + w.Notation.Number(leaves.Exact, 2) + " ÷ " + w.Notation.Number(leaves.Bare, 2) + " − 1 = " + of(more),
			Source: page.OfArithmetic,
		},
	})
}

// weight is what the leaves weigh.
func (w *leafStep) weight(laid *finish.Leaves) {
	each := w.Leaf.GramsPer1000
	if !each.Known || w.Leaf.Leaf.IsRoll() {
		return
	}
	w.Report(w.At+"/leaf", w.Leaf.Leaf.WeightRemarks(w.Leaf.Metal, each.Value))
	grams := finish.Weight(laid.Count, each.Value)
	text := w.grams(grams)
	w.Figure(sheet.Figure{
		ID: w.id("weight"), Block: page.Finish, Label: "weight of the leaf", Value: page.Plain(grams), Unit: "g", Text: text, Other: w.Notation.Number(grams.Quo(ounce), 2) + " oz",
		Working: sheet.Working{Rule: "Leaves by what a thousand weigh." + w.twoAreas(laid), Sum: w.whole(laid.Count) + " × " + w.Notation.NumberTrimmed(each.Value, 2) + " g ÷ 1000 = " + text +
			w.byAreas(laid, text, func(area measure.Area) string { return w.gramsFor(grams, area) }),
			Source: "Arithmetic. 1 oz = 28.349 523 125 g (NIST Handbook 44, appendix C)."},
	})
}

// grams is a weight of leaf, to the tenth of a gram or, of a few leaves, finer: what
// it comes to for an area is worked out again from it.
func (w *leafStep) grams(n measure.Number) string {
	return w.Notation.NumberTrimmed(n, page.Finer(n, 1)) + " g"
}

// twoAreas says which areas a cost or a weight goes by, where they differ.
func (w *leafStep) twoAreas(laid *finish.Leaves) string {
	if laid.Spill.SquareMetres.IsZero() {
		return ""
	}
	return " By area it is told for what shows when the mask is off, and for all that is gilded, what falls on the mask with it."
}

// byAreas are the lines of a sum that go on from a total to what it comes to for
// the area that shows, and for the area gilded where that is more.
func (w *leafStep) byAreas(laid *finish.Leaves, total string, each func(measure.Area) string) string {
	line := func(area measure.Area, what string) string {
		if area.SquareMetres.Sign() <= 0 {
			return ""
		}
		return "\n" + total + " ÷ " + w.builder.ExactArea(area) + " = " + each(area) + what
	}
	text := line(laid.Shows(), " that shows")
	if laid.Spill.SquareMetres.Sign() > 0 {
		text += line(laid.Gilded(), " gilded")
	}
	return text
}

// gramsFor is what leaf weighs by the unit of area of the plan.
func (w *leafStep) gramsFor(grams measure.Number, area measure.Area) string {
	if w.Notation.System == measure.FeetInches {
		return w.Notation.Number(grams.Quo(area.SquareFeet()), 2) + " g for 1 ft²"
	}
	return w.Notation.Number(grams.Quo(area.SquareMetres), 1) + " g for 1 m²"
}

// An ounce is 28.349 523 125 g (NIST Handbook 44, appendix C).
var ounce = measure.MustNumber("28.349523125")
