package steps

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Laid is the leaf of a step. Leaves are those it takes, where Counted, As how they were
// counted: a grid over Along by Across, a Band, or by the area. Grams is what they weigh,
// where Weighed. Books are how they are bought, where Bought.
type Laid struct {
	As            plan.Lay
	Leaves        finish.Leaves
	Counted       bool
	Along, Across measure.Length
	Band          finish.Band
	Grams         measure.Number
	Weighed       bool
	Books         finish.Books
	Bought        bool
}

// layLeaf works out the leaf of a step: how many leaves, what they weigh and how they are
// bought. Leaf in a band needs no area.
func (w *work) layLeaf(step int) {
	s, t := &w.Plan.Steps[step], &w.Finish.Steps[step]
	l := s.Leaf
	if l == nil {
		return
	}
	w.Report(s.At+"/leaf", w.sealing(step))
	if !l.Known {
		return
	}
	t.Leaf = w.laid(step)
	if !t.Leaf.Counted {
		return
	}
	if laid := &t.Leaf; l.GramsPer1000.Known && !l.Leaf.IsRoll() {
		w.Report(s.At+"/leaf", l.Leaf.WeightRemarks(l.Metal, l.GramsPer1000.Value))
		laid.Grams, laid.Weighed = finish.Weight(laid.Leaves.Count, l.GramsPer1000.Value), true
	}
	books, problems, ok := finish.BooksFor(t.Leaf.Leaves.Count, finish.Sold{PerBook: int64(l.PerBook), BooksPerPack: int64(l.BooksPerPack),
		Book: finish.Cost(l.PerBookPrice), Pack: finish.Cost(l.PerPackPrice)})
	w.Report(s.At+"/leaf", problems)
	if !ok {
		return
	}
	t.Leaf.Books, t.Leaf.Bought = books, true
	t.Packs = leafPacks(l, &books)
	w.Report(s.At+"/leaf", books.SpareRemarks())
}

// laid are the leaves, counted as they are laid.
func (w *work) laid(step int) Laid {
	s, c := &w.Plan.Steps[step], &w.Covers[step]
	g := finish.Gilding{Area: c.Area, Leaf: s.Leaf.Leaf, Cover: s.Leaf.Cover, Waste: s.Leaf.Waste}
	switch {
	case s.Leaf.Lay == plan.Band:
		return w.inBand(step, g)
	case !c.Known:
		return Laid{}
	case s.Leaf.Lay == plan.Grid:
		if along, across, ok := w.rectangle(step); ok {
			return w.inGrid(step, g, along, across)
		}
		w.Remark(s.At+"/leaf/lay", problem.Caution,
			words.Say("What this step goes over is no rectangle, so rows and columns cannot be counted. The leaves are counted by the area."),
			words.Say("Let the step go over the whole mask or a ceiling with four square corners, or lay it leaf by leaf over the field."))
	}
	return w.inField(step, g)
}

// answered are leaves as counted, with what is wrong. What is wrong with the area or
// with nothing in particular belongs to the step.
func (w *work) answered(step int, laid Laid, problems []problem.Problem) Laid {
	for i := range problems {
		if problems[i].At != "/area" {
			problems[i].At = "/leaf" + problems[i].At
		} else {
			problems[i].At = ""
		}
	}
	w.Report(w.Plan.Steps[step].At, problems)
	return laid
}

// inField counts by the area, with the leaf that runs past the edges of openings.
func (w *work) inField(step int, g finish.Gilding) Laid {
	s := &w.Plan.Steps[step]
	switch l := s.Leaf; {
	case l.Spill > 0 && l.OpeningsEdge > 0:
		g.Spill = finish.SpillOf(l.OpeningsEdge, l.Spill)
	case l.Spill > 0:
		w.Remark(s.At+"/leaf/openingsEdge", problem.Note, words.Say("How long the edges are is not given, so the leaf that goes past them is not counted."),
			words.Say("Measure the edges of the openings, or ask the supplier."))
	}
	leaves, problems, ok := finish.Field(g)
	return w.answered(step, Laid{Leaves: leaves, Counted: ok}, problems)
}

// inGrid counts rows and columns, of a mask with the leaf past its edges.
func (w *work) inGrid(step int, g finish.Gilding, along, across measure.Length) Laid {
	s, margin := &w.Plan.Steps[step], measure.Length(0)
	if s.Basis == finish.Mask {
		margin = s.Leaf.Spill
	}
	leaves, problems, ok := finish.InGrid(g, along, across, margin)
	return w.answered(step, Laid{As: plan.Grid, Leaves: leaves, Counted: ok, Along: along + 2*margin, Across: across + 2*margin}, problems)
}

// band is the band of a step: round the whole mask where no run is given.
func (w *work) band(l *plan.Leaf) (b finish.Band, ok bool) {
	outline := &w.Plan.Mask.Outline
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

func (w *work) inBand(step int, g finish.Gilding) Laid {
	s, c := &w.Plan.Steps[step], &w.Covers[step]
	b, ok := w.band(s.Leaf)
	if !ok {
		return Laid{}
	}
	leaves, problems, ok := finish.InBand(g, b)
	laid := w.answered(step, Laid{As: plan.Band, Leaves: leaves, Counted: ok, Band: b}, problems)
	off := c.Area.Sub(leaves.Area).SquareMetres.Abs()
	if ok && c.Known && off.Mul(measure.NumberFromInt(10)).Cmp(leaves.Area.SquareMetres) > 0 {
		w.Remark(s.At+"/area", problem.Caution,
			words.Say("The band comes to {band}, what this step goes over to {area}. The leaf goes by the band, the hours and sections by the other.",
				words.Area("band", leaves.Area), words.Area("area", c.Area)), words.Say("Type the area of the band as what the step goes over, and the same for its size."))
	}
	return laid
}

// leafPacks are the packs and the books of a leaf, for the price and the shopping list.
func leafPacks(l *plan.Leaf, books *finish.Books) (packs []Pack) {
	if books.Books <= 0 {
		return nil
	}
	add := func(as PackKind, count, pieces int64, each plan.Money) {
		if count > 0 {
			packs = append(packs, Pack{Group: price.Leaf, As: as, Count: count, Size: measure.NumberFromInt(pieces), Length: l.Leaf.Length, Each: each.Amount, Priced: each.Known})
		}
	}
	pack, book := LeafPack, LeafBook
	all, isRoll := books.BooksPerPack*books.PerBook, l.Leaf.IsRoll()
	if isRoll {
		pack, book = RollPack, RollBook
	}
	if isRoll && all == 1 {
		pack = LeafRoll
	}
	if isRoll && books.PerBook == 1 {
		book = LeafRoll
	}
	add(pack, books.Packs, all, l.PerPackPrice)
	add(book, books.Loose, books.PerBook, l.PerBookPrice)
	return packs
}

// sealing compares the leaf of a step with the steps before and after it that cover it.
func (w *work) sealing(leaf int) []problem.Problem {
	below, above := false, false
	for i := range w.Plan.Steps {
		s := &w.Plan.Steps[i]
		switch {
		case i == leaf || !lieOver(s, &w.Plan.Steps[leaf]):
		case i < leaf && (s.Kind == finish.ClearSeal || s.Kind == finish.ClearCoat):
			below = true
		case i > leaf && (s.Kind == finish.ClearCoat || s.Kind == finish.ClearSeal || s.Kind == finish.Glaze):
			above = true
		}
	}
	return finish.SealingRemarks(w.Plan.Steps[leaf].Leaf.Metal, below, above)
}

// lieOver tells whether a coat lies over all of what a leaf goes over, as far as the
// areas tell: one that was measured by hand is taken to.
func lieOver(coat, leaf *plan.Step) bool {
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

// lookUnderLeaf says what is wrong with the size and the colour under the leaf.
func (w *work) lookUnderLeaf() {
	steps := make([]finish.Ground, len(w.Plan.Steps))
	for i := range w.Plan.Steps {
		s := &w.Plan.Steps[i]
		steps[i] = finish.Ground{Kind: s.Kind, Basis: s.Basis, Name: s.Name, Layer: s.LayerID, Surface: s.Surface, Share: s.Share, Known: s.ShareKnown}
	}
	w.Report("/finish/steps", finish.UnderLeaf(steps))
}

// Pieces are what leaf is counted in: leaves, or rolls of them.
func Pieces(l *plan.Leaf, n int64) words.Text {
	if l.Leaf.IsRoll() {
		return words.Say("{n|roll of leaf|rolls of leaf}", words.Count("n", n))
	}
	return words.Say("{n|leaf|leaves}", words.Count("n", n))
}

// BooksOf are so many books, or rolls that are sold singly.
func BooksOf(l *plan.Leaf, n int64) words.Text {
	if l.Leaf.IsRoll() && l.PerBook == 1 {
		return words.Say("{n|roll|rolls}", words.Count("n", n))
	}
	return words.Say("{n|book|books}", words.Count("n", n))
}
