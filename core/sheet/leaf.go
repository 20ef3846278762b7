package sheet

import (
	"strconv"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
)

const leafSource = "Field rule: each leaf adds its size less the lap both ways. Waste of a tenth lying flat, a fifth overhead: common practice, no source."

// leaf is the leaf of a step in leaves, books and packs.
func (w *step) leaf(area measure.Area) {
	l := w.Leaf
	if l == nil || !l.Known {
		return
	}
	leaves, problems, ok := finish.Field(finish.Gilding{Area: area, Leaf: l.Leaf, Cover: l.Cover, Waste: l.Waste})
	w.report(w.At+"/leaf", problems)
	if !ok {
		return
	}
	w.count(blockFinish, w.id("leaves"), "leaves", leaves.Count, "",
		"Area times the share that gets leaf, divided by what one lapped leaf adds, and the waste; rounded up.",
		w.n.Area(area)+" × "+w.builder.share(l.Cover)+" ÷ ("+w.less(l.Leaf.Length, l.Leaf.Lap)+" × "+w.less(l.Leaf.Width, l.Leaf.Lap)+") × (1 + "+w.builder.share(l.Waste)+"), rounded up", leafSource)
	books, problems, ok := finish.BooksFor(leaves.Count, int64(l.PerBook), int64(l.BooksPerPack))
	w.report(w.At+"/leaf", problems)
	if ok {
		w.books(books)
	}
	w.seal(l.Metal)
}

func (w *step) less(side, lap measure.Length) string {
	return "(" + w.put(side) + " − " + w.put(lap) + ")"
}

func (w *step) books(books finish.Books) {
	per := strconv.Itoa(w.Leaf.PerBook)
	w.count(blockFinish, w.id("books"), "books of leaf", books.Books, plural(books.Books, "book", "books"),
		"Leaves by the leaves in a book, rounded up.", strconv.FormatInt(books.Leaves, 10)+" ÷ "+per+", rounded up",
		"A book of 25 leaves: Encyclopædia Britannica, 1911, Goldbeating.")
	w.out.Buy = plural(books.Books, "book", "books")
	if books.Packs > 0 {
		w.count(blockFinish, w.id("packs"), "packs of leaf", books.Packs, plural(books.Packs, "pack", "packs"),
			"Whole packs; where the single books left come to eight tenths of a pack, one more pack.",
			strconv.FormatInt(books.Books, 10)+" ÷ "+strconv.Itoa(w.Leaf.BooksPerPack), "Common practice, no source.")
		w.out.Buy = plural(books.Packs, "pack", "packs")
		if books.Loose > 0 {
			w.out.Buy += " + " + plural(books.Loose, "book", "books")
		}
	}
	w.out.LeftOver = plural(books.Spare, "leaf", "leaves") + " spare"
	if books.Books > 0 {
		w.buy(w.Name, w.out.Buy, plural(books.Leaves, "leaf", "leaves")+" needed, "+w.out.LeftOver)
		w.bought(leafBought(w.Name, books, w.Leaf)...)
	}
}

// seal compares the leaf with the steps before and after it.
func (w *step) seal(metal finish.Metal) {
	below, above, passed := false, false, false
	for _, s := range w.builder.plan.Steps {
		switch {
		case s.ID == w.ID:
			passed = true
		case !passed && s.Kind == finish.ClearSeal:
			below = true
		case passed && (s.Kind == finish.ClearCoat || s.Kind == finish.ClearSeal || s.Kind == finish.Glaze):
			above = true
		}
	}
	w.report(w.At+"/leaf", finish.SealingRemarks(metal, below, above))
}
