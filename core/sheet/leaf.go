package sheet

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
)

const (
	leafSource = "Field rule: each leaf adds its size less the lap both ways. Waste of a tenth lying flat, a fifth overhead: common practice, no source."
	gridSource = "A gilder's notes of November 2012 count a ceiling so, by rows. Waste of a tenth lying flat, a fifth overhead: common practice, no source."
	bandSource = "Leaf cut in strips, each lapping the one before (Workshop Receipts, first series, oil gilding). Waste: common practice, no source."
)

// leaf is the leaf of a step in leaves, books and packs, what it weighs and
// costs. Leaf in a band needs no area.
func (w *step) leaf(area measure.Area, areaKnown bool) {
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
	w.weight(leaves.Count)
	books, problems, ok := finish.BooksFor(leaves.Count, finish.Sold{PerBook: int64(l.PerBook), BooksPerPack: int64(l.BooksPerPack),
		Book: finish.Cost(l.PerBookPrice), Pack: finish.Cost(l.PerPackPrice)})
	w.report(w.At+"/leaf", problems)
	if !ok {
		return
	}
	w.books(&leaves, &books)
	w.leafCost(&leaves, &books)
	w.report(w.At+"/leaf", books.SpareRemarks())
	w.sameLeaf(&books)
}

// leafNeed is the leaf of a step, kept to see which steps take the same.
type leafNeed struct {
	step  *step
	books finish.Books
}

// sameLeaf says where the leaf of a step, bought together with the same leaf of
// steps before it, comes to fewer books or less money.
func (w *step) sameLeaf(books *finish.Books) {
	leaves, apart, cost, priced, names := books.Leaves, books.Books, books.Price, books.Priced, ""
	for i := range w.builder.leafNeeds {
		if n := &w.builder.leafNeeds[i]; isSameLeaf(n.step.Leaf, w.Leaf) {
			leaves, apart = leaves+n.books.Leaves, apart+n.books.Books
			cost, priced = cost.Add(n.books.Price), priced && n.books.Priced
			names += "“" + n.step.Name + "”, "
		}
	}
	w.builder.leafNeeds = append(w.builder.leafNeeds, leafNeed{w, *books})
	together, _, ok := finish.BooksFor(leaves, books.Sold)
	if !ok {
		return
	}
	saves := ""
	switch {
	case priced && together.Priced && together.Price.LessThan(cost):
		saves = w.builder.money(cost.Sub(together.Price)) + " less than apart"
	case together.Books < apart:
		saves = "where " + w.whole(apart) + " are counted"
	default:
		return
	}
	w.report(w.At+"/leaf/perBook", []problem.Problem{{Severity: problem.Note,
		What: "The same leaf is bought for " + names[:len(names)-len(", ")] + ": together " + w.whole(leaves) + " " + w.piece(leaves) + " in " + w.sold(together.Books) + ", " + saves + ".",
		Do:   "Buy it together, from one batch."}})
}

// isSameLeaf tells whether two leaves are sold as one thing.
func isSameLeaf(a, b *plan.Leaf) bool {
	return a.Metal == b.Metal && a.Leaf.Length == b.Leaf.Length && a.Leaf.Width == b.Leaf.Width && a.PerBook == b.PerBook && a.BooksPerPack == b.BooksPerPack &&
		a.PerBookPrice.Amount.Equal(b.PerBookPrice.Amount) && a.PerPackPrice.Amount.Equal(b.PerPackPrice.Amount)
}

// laid are the leaves, counted as they are laid.
func (w *step) laid(area measure.Area, areaKnown bool) (leaves finish.Leaves, ok bool) {
	g := finish.Gilding{Area: area, Leaf: w.Leaf.Leaf, Cover: w.Leaf.Cover, Waste: w.Leaf.Waste}
	switch {
	case w.Leaf.Lay == plan.Band:
		return w.inBand(g, areaKnown)
	case !areaKnown:
		return leaves, false
	case w.Leaf.Lay == plan.Grid:
		if along, across, ok := w.rectangle(); ok {
			return w.inGrid(g, along, across)
		}
		w.report(w.At+"/leaf/lay", []problem.Problem{{Severity: problem.Caution,
			What: "What this step goes over is no rectangle, so rows and columns cannot be counted. The leaves are counted by the area.",
			Do:   "Let the step go over the whole mask or a ceiling with four square corners, or lay it leaf by leaf over the field."}})
	}
	return w.inField(g)
}

// answered puts the problems of a count on the sheet. What is wrong with the area
// or with nothing in particular belongs to the step.
func (w *step) answered(leaves finish.Leaves, problems []problem.Problem, ok bool) (finish.Leaves, bool) {
	for i := range problems {
		if problems[i].At != "/area" {
			problems[i].At = "/leaf" + problems[i].At
		} else {
			problems[i].At = ""
		}
	}
	w.report(w.At, problems)
	return leaves, ok
}

// inField counts by the area, with the leaf that runs past the edges of openings.
func (w *step) inField(g finish.Gilding) (finish.Leaves, bool) {
	l, put := w.Leaf, w.n.Area(g.Area)
	switch {
	case l.Spill > 0 && l.OpeningsEdge > 0:
		g.Area = finish.WithMargin(g.Area, l.OpeningsEdge, l.Spill)
		put = "(" + put + " + " + w.put(l.OpeningsEdge) + " × " + w.put(l.Spill) + ")"
	case l.Spill > 0:
		w.report(w.At+"/leaf/openingsEdge", []problem.Problem{{Severity: problem.Note,
			What: "How long the edges are is not given, so the leaf that goes past them is not counted.", Do: "Measure the edges of the openings, or ask the supplier."}})
	}
	leaves, ok := w.answered(finish.Field(g))
	if ok {
		w.leaves(&leaves, "Area times the share that gets leaf, divided by what one lapped leaf adds, and the waste; rounded up.",
			put+" × "+w.builder.share(l.Cover)+" ÷ ("+w.less(l.Leaf.Length, l.Leaf.Lap)+" × "+w.less(l.Leaf.Width, l.Leaf.Lap)+") × "+w.wasted(), leafSource)
	}
	return leaves, ok
}

// rectangle is what the step goes over, where that is one.
func (w *step) rectangle() (along, across measure.Length, ok bool) {
	switch shape, outline := &w.builder.shape, &w.builder.plan.Mask.Outline; {
	case w.Basis == finish.Surface && shape.Usable() && shape.IsRectangle():
		return shape.Length, shape.Width, true
	case w.Basis == finish.Mask && outline.IsComplete():
		return outline.Length, outline.Width, true
	}
	return 0, 0, false
}

// inGrid counts rows and columns, of a mask with the leaf past its edges.
func (w *step) inGrid(g finish.Gilding, along, across measure.Length) (finish.Leaves, bool) {
	if w.Basis == finish.Mask {
		along, across = along+2*w.Leaf.Spill, across+2*w.Leaf.Spill
	}
	leaves, ok := w.answered(finish.InGrid(g, along, across))
	if ok {
		rule := "Whole columns and rows over " + w.put(along) + " × " + w.put(across) + ", times the share that gets leaf, and the waste; rounded up. The first leaf of a row covers its size, each other its size less the lap."
		if leaves.Turned {
			rule += " The leaves lie crosswise, which takes fewer."
		}
		w.leaves(&leaves, rule, strconv.FormatInt(leaves.Columns, 10)+" × "+strconv.FormatInt(leaves.Rows, 10)+" × "+w.builder.share(g.Cover)+" × "+w.wasted(), gridSource)
	}
	return leaves, ok
}

// band is the band of the step: round the whole mask where no run is given.
func (w *step) band() (b finish.Band, ok bool) {
	l, outline := w.Leaf, &w.builder.plan.Mask.Outline
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

func (w *step) inBand(g finish.Gilding, areaKnown bool) (finish.Leaves, bool) {
	area := g.Area
	b, ok := w.band()
	if !ok {
		return finish.Leaves{}, false
	}
	leaves, ok := w.answered(finish.InBand(g, b))
	if !ok {
		return leaves, false
	}
	w.strips(&leaves, &b)
	s := &leaves.Strips
	rule, sum := "Strips by how many are cut from a leaf, rounded up.", w.whole(s.InRow)+" ÷ "+w.whole(s.FromLeaf)
	if s.Rows > 1 || s.FromLeaf == 1 {
		rule, sum = "The leaves of one row times the rows.", w.whole(s.InRow)+" × "+w.whole(s.Rows)
	}
	w.leaves(&leaves, rule, sum, bandSource)
	off := area.Sub(leaves.Area).SquareMetres.Abs()
	if areaKnown && off.Mul(measure.NumberFromInt(10)).Cmp(leaves.Area.SquareMetres) > 0 {
		w.report(w.At+"/area", []problem.Problem{{Severity: problem.Caution,
			What: "The band comes to " + w.n.Area(leaves.Area) + ", what this step goes over to " + w.n.Area(area) + ". The leaf goes by the band, the hours and sections by the other.",
			Do:   "Type the area of the band as what the step goes over, and the same for its size."}})
	}
	return leaves, true
}

// strips is how many strips a band takes, and how they are cut.
func (w *step) strips(leaves *finish.Leaves, b *finish.Band) {
	l, s := w.Leaf, &leaves.Strips
	sum, end := w.put(b.Run), ""
	if b.Corners > 0 {
		sum = "(" + sum + " + " + plural(b.Corners, "corner", "corners") + " × " + w.put(b.Wide()) + ")"
	}
	if !b.Closed {
		end = " − lap"
	}
	sum += " × " + w.builder.share(l.Cover) + " × (1 + " + w.builder.share(l.Waste) + ")" + end + " ÷ " + w.less(l.Leaf.Length, l.Leaf.Lap) + ", rounded up"
	rule := "The run, with the width of a strip more for each mitred corner, the share that gets leaf and the waste, by what a lapped strip adds."
	if s.Rows > 1 {
		rule += " The band is wider than a leaf: " + w.whole(s.Rows) + " rows of whole leaves."
	} else {
		rule += " A leaf of " + w.put(l.Leaf.Width) + " gives " + plural(s.FromLeaf, "strip", "strips") + " of " + w.put(b.Wide()) + "."
	}
	label := "strips of leaf"
	if s.Rows > 1 {
		label = "leaves in a row"
	}
	w.count(blockFinish, w.id("strips"), label, s.InRow, "", rule, sum, bandSource)
}

func (w *step) whole(n int64) string { return w.n.Number(measure.NumberFromInt(n), 0) }

// wasted is the waste in a sum.
func (w *step) wasted() string { return "(1 + " + w.builder.share(w.Leaf.Waste) + "), rounded up" }

func (w *step) less(side, lap measure.Length) string {
	return "(" + w.put(side) + " − " + w.put(lap) + ")"
}

// leaves is the figure of the leaves.
func (w *step) leaves(leaves *finish.Leaves, rule, sum, source string) {
	w.count(blockFinish, w.id("leaves"), noun(leaves.Count, w.piece(1), w.piece(2)), leaves.Count, "", rule, sum, source)
}

// piece is what leaf is counted in: leaves, or rolls of them.
func (w *step) piece(n int64) string {
	if w.Leaf.Leaf.IsRoll() {
		return noun(n, "roll of leaf", "rolls of leaf")
	}
	return noun(n, "leaf", "leaves")
}

// yield tells from either end how much of the leaf shows on the work.
func (w *step) yield(leaves *finish.Leaves) {
	yield, more, ok := leaves.Yield()
	if !ok {
		return
	}
	hundred := measure.NumberFromInt(100)
	of := func(n measure.Number) string { return w.n.Number(n.Mul(hundred), 1) + " %" }
	text := of(yield) + " shows; " + of(more) + " more than the bare area to buy"
	w.figure(Figure{
		ID: w.id("yield"), Block: blockFinish, Label: "yield of the leaf", Value: plain(yield), Text: text,
		Working: Working{
			Rule:   "What the area would take in bare leaf, by what it takes with laps, cut edges and waste. The two per cents are one fact told from either end: say which you mean when you ask for leaf.",
			Sum:    w.n.Number(leaves.Bare, 2) + " ÷ " + w.n.Number(leaves.Exact, 2) + " = " + of(yield) + "; " + w.n.Number(leaves.Exact, 2) + " ÷ " + w.n.Number(leaves.Bare, 2) + " − 1 = " + of(more),
			Source: ofArithmetic,
		},
	})
}

// weight is what the leaves weigh.
func (w *step) weight(leaves int64) {
	each := w.Leaf.GramsPer1000
	if !each.Known || w.Leaf.Leaf.IsRoll() {
		return
	}
	w.report(w.At+"/leaf", w.Leaf.Leaf.WeightRemarks(w.Leaf.Metal, each.Value))
	grams := finish.Weight(leaves, each.Value)
	text := w.n.Number(grams, 1) + " g"
	w.figure(Figure{
		ID: w.id("weight"), Block: blockFinish, Label: "weight of the leaf", Value: plain(grams), Unit: "g", Text: text, Other: w.n.Number(grams.Quo(ounce), 2) + " oz",
		Working: Working{Rule: "Leaves by what a thousand weigh.", Sum: w.whole(leaves) + " × " + w.n.NumberTrimmed(each.Value, 2) + " g ÷ 1000 = " + text,
			Source: "Arithmetic. 1 oz = 28.349 523 125 g (NIST Handbook 44, appendix C)."},
	})
}

// An ounce is 28.349 523 125 g (NIST Handbook 44, appendix C).
var ounce = measure.MustNumber("28.349523125")

// books is how the leaf is bought.
func (w *step) books(leaves *finish.Leaves, books *finish.Books) {
	sold := w.sold(books.Books)
	if books.PerBook > 1 || !w.Leaf.Leaf.IsRoll() {
		w.count(blockFinish, w.id("books"), "books of leaf", books.Books, sold,
			"Leaves by the leaves in a book, rounded up.", w.whole(books.Leaves)+" ÷ "+w.whole(books.PerBook)+", rounded up",
			"A book of 25 leaves: Encyclopædia Britannica, 1911, Goldbeating.")
	}
	w.out.Buy = sold
	if books.Packs > 0 {
		w.packs(books)
		w.out.Buy = plural(books.Packs, "pack", "packs")
		if books.Loose > 0 {
			w.out.Buy += " + " + w.sold(books.Loose)
		}
	}
	w.out.LeftOver = w.spare(leaves, books)
	if books.Books > 0 {
		w.buy(w.Name, w.out.Buy, w.whole(books.Leaves)+" "+w.piece(books.Leaves)+" needed, "+w.out.LeftOver+"; all from one batch")
		w.bought(leafBought(w.Name, *books, w.Leaf)...)
	}
}

// sold is so many books, or rolls that are sold singly.
func (w *step) sold(n int64) string {
	if w.Leaf.Leaf.IsRoll() && w.Leaf.PerBook == 1 {
		return w.whole(n) + " " + noun(n, "roll", "rolls")
	}
	return w.whole(n) + " " + noun(n, "book", "books")
}

func (w *step) packs(books *finish.Books) {
	rule, source := "Whole packs; where the single books left come to eight tenths of a pack, one more pack.", "Common practice, no source."
	sum := w.whole(books.Books) + " ÷ " + w.whole(books.BooksPerPack)
	switch {
	case books.Compared:
		rule, source = "The cheapest of all ways to buy books and packs.", "Arithmetic. Every number of packs is compared."
		sum = w.whole(books.Packs) + " × " + w.builder.rate(books.Pack.Amount) + " + " + w.whole(books.Loose) + " × " + w.builder.rate(books.Book.Amount) + " = " + w.builder.money(books.Price) + ": " + w.whole(books.Packs) + " packs"
	case books.Pack.Known:
		rule, source = "Whole packs, since a single book has no price here.", ofArithmetic
		sum += ", rounded up"
	}
	w.count(blockFinish, w.id("packs"), "packs of leaf", books.Packs, plural(books.Packs, "pack", "packs"), rule, sum, source)
}

// mostRolls bounds what is said of the length left on rolls.
const mostRolls = 1000

// spare is what is left over: leaves, or the length of ribbon on the last roll.
func (w *step) spare(leaves *finish.Leaves, books *finish.Books) string {
	s, l := &leaves.Strips, w.Leaf.Leaf
	if s.Rows == 1 && s.FromLeaf <= mostRolls && l.IsRoll() && leaves.Count <= mostRolls {
		used := s.Length + measure.Length(max(0, s.InRow-1))*l.Lap
		if left := measure.Length(s.FromLeaf*(books.Leaves+books.Spare))*l.Length - used; left >= 0 {
			return w.n.Length(left) + " of ribbon left"
		}
	}
	return w.whole(books.Spare) + " " + w.piece(books.Spare) + " spare"
}

// leafCost is what the leaf costs, and what that is for an area.
func (w *step) leafCost(leaves *finish.Leaves, books *finish.Books) {
	w.builder.currency()
	digits := int32(w.builder.plan.Price.Digits)
	sum, ok := price.Round(measure.NumberFromDecimal(books.Price), digits)
	if !books.Priced || !ok || books.Books == 0 || leaves.Area.SquareMetres.Sign() <= 0 {
		return
	}
	each := measure.NumberFromDecimal(books.Price).Quo(leaves.Area.SquareMetres)
	area, other := w.perUnit(each, w.n), w.perUnit(each, w.other)
	if area == "" {
		return
	}
	w.figure(Figure{
		ID: w.id("leafCost"), Block: blockFinish, Label: "cost of the leaf", Value: sum.StringFixed(digits), Unit: w.builder.plan.Price.Currency,
		Text: w.builder.money(sum) + ", " + area, Other: other,
		Working: Working{Rule: "The price of all that is bought, and that by the area that gets leaf.",
			Sum: w.out.Buy + " cost " + w.builder.money(sum) + "; by " + w.n.Area(leaves.Area) + " that is " + area, Source: "Arithmetic, rounded once to the smallest coin."},
	})
}

// seal compares the leaf with the steps before and after it that cover it.
func (w *step) seal(metal finish.Metal) {
	below, above, passed := false, false, false
	for i := range w.builder.plan.Steps {
		s := &w.builder.plan.Steps[i]
		switch {
		case s.ID == w.ID:
			passed = true
		case !covers(s, &w.Step):
		case !passed && (s.Kind == finish.ClearSeal || s.Kind == finish.ClearCoat):
			below = true
		case passed && (s.Kind == finish.ClearCoat || s.Kind == finish.ClearSeal || s.Kind == finish.Glaze):
			above = true
		}
	}
	w.report(w.At+"/leaf", finish.SealingRemarks(metal, below, above))
}

// covers tells whether a coat lies over all of what a leaf goes over, as far as
// the areas tell: one that was measured by hand is taken to.
func covers(coat, leaf *plan.Step) bool {
	if coat.Surface != leaf.Surface {
		return false
	}
	switch coat.Basis {
	case finish.Edges:
		return false
	case finish.Border:
		return leaf.Basis == finish.Border
	case finish.Openings:
		return leaf.Basis == finish.Openings && coat.LayerID == leaf.LayerID && coat.Share.Cmp(leaf.Share) >= 0
	}
	return leaf.Basis != finish.Border || coat.Basis != finish.Mask
}

// underLeaf says what is wrong with the size and the colour under the leaf.
func (b *builder) underLeaf() {
	steps := make([]finish.Ground, len(b.plan.Steps))
	for i := range b.plan.Steps {
		s := &b.plan.Steps[i]
		steps[i] = finish.Ground{Kind: s.Kind, Basis: s.Basis, Name: s.Name, Layer: s.LayerID, Surface: s.Surface, Share: s.Share, Known: s.ShareKnown}
	}
	b.report("/finish/steps", finish.UnderLeaf(steps))
}
