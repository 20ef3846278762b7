package tell

import (
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	tellrecord "ceilingwright/core/tell/record"

	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
)

// books is how the leaf is bought.
func (w *leafStep) books(leaves *finish.Leaves, books *finish.Books) {
	sold := w.sold(books.Books)
	if books.PerBook > 1 || !w.Leaf.Leaf.IsRoll() {
		w.Count(page.Finish, w.id("books"), "books of leaf", books.Books, sold,
			"Leaves by the leaves in a book, rounded up.", w.whole(books.Leaves)+" ÷ "+w.whole(books.PerBook)+", rounded up",
			"A book of 25 leaves: Encyclopædia Britannica, 1911, Goldbeating.")
	}
	w.out.Buy = sold
	if books.Packs > 0 {
		w.packs(books)
		w.out.Buy = page.Plural(books.Packs, "pack", "packs")
		if books.Loose > 0 {
			w.out.Buy += " + " + w.sold(books.Loose)
		}
	}
	w.out.LeftOver = w.spare(leaves, books)
	if books.Books > 0 {
		w.builder.leafDetails[w.at] = w.Told(tellrecord.Leaf(w.Leaf)) + "; " + w.whole(books.Leaves) + " " + w.piece(books.Leaves) + " needed, " + w.out.LeftOver + "; all from one batch"
		w.builder.Finish.Steps[w.at].Packs = w.packed(books)
	}
}

// packed are the packs and the books of a leaf, for the price and the shopping
// table.
func (w *leafStep) packed(books *finish.Books) (packs []job.Pack) {
	add := func(as job.PackKind, count, pieces int64, each plan.Money) {
		if count > 0 {
			packs = append(packs, job.Pack{Group: price.Leaf, As: as, Count: count, Size: measure.NumberFromInt(pieces), Length: w.Leaf.Leaf.Length, Each: each.Amount, Priced: each.Known})
		}
	}
	pack, book := job.LeafPack, job.LeafBook
	all, isRoll := books.BooksPerPack*books.PerBook, w.Leaf.Leaf.IsRoll()
	if isRoll {
		pack, book = job.RollPack, job.RollBook
	}
	if isRoll && all == 1 {
		pack = job.LeafRoll
	}
	if isRoll && books.PerBook == 1 {
		book = job.LeafRoll
	}
	add(pack, books.Packs, all, w.Leaf.PerPackPrice)
	add(book, books.Loose, books.PerBook, w.Leaf.PerBookPrice)
	return packs
}

// sold is so many books, or rolls that are sold singly.
func (w *leafStep) sold(n int64) string {
	if w.Leaf.Leaf.IsRoll() && w.Leaf.PerBook == 1 {
		return w.whole(n) + " " + page.Noun(n, "roll", "rolls")
	}
	return w.whole(n) + " " + page.Noun(n, "book", "books")
}

func (w *leafStep) packs(books *finish.Books) {
	rule, source := "Whole packs; where the single books left come to eight tenths of a pack, one more pack.", "Common practice, no source."
	switch {
	case books.Compared:
		rule, source = "The cheapest of all ways to buy books and packs.", "Arithmetic. Every number of packs is compared."
	case books.Pack.Known:
		rule, source = "Whole packs, since a single book has no price here.", page.OfArithmetic
	}
	sum := w.whole(books.Packs * books.BooksPerPack)
	if books.Loose > 0 {
		sum = "(" + w.whole(books.Packs*books.BooksPerPack+books.Loose) + " books − " + w.whole(books.Loose) + " single)"
	}
	sum += " ÷ " + w.whole(books.BooksPerPack)
	w.Count(page.Finish, w.id("packs"), "packs of leaf", books.Packs, page.Plural(books.Packs, "pack", "packs"), rule, sum, source)
}

// mostRolls bounds what is said of the length left on rolls.
const mostRolls = 1000

// spare is what is left over: leaves, or the length of ribbon on the last roll.
func (w *leafStep) spare(leaves *finish.Leaves, books *finish.Books) string {
	s, l := &leaves.Strips, w.Leaf.Leaf
	if s.Rows == 1 && s.FromLeaf <= mostRolls && l.IsRoll() && leaves.Count <= mostRolls {
		used := s.Length + measure.Length(max(0, s.InRow-1))*l.Lap
		if left := measure.Length(s.FromLeaf*(books.Leaves+books.Spare))*l.Length - used; left >= 0 {
			return w.Notation.Length(left) + " of ribbon left"
		}
	}
	return w.whole(books.Spare) + " " + w.piece(books.Spare) + " spare"
}

// leafCost is what the leaf costs, and what that is for an area.
func (w *leafStep) leafCost(leaves *finish.Leaves, books *finish.Books) {
	digits := int32(w.builder.Plan.Price.Digits)
	sum, ok := price.Round(measure.NumberFromDecimal(books.Price), digits)
	if !books.Priced || !ok || books.Books == 0 || leaves.Shows().SquareMetres.Sign() <= 0 {
		return
	}
	each := func(area measure.Area, n measure.Notation) string {
		return w.perUnit(measure.NumberFromDecimal(books.Price).Quo(area.SquareMetres), n)
	}
	area, other := each(leaves.Shows(), w.Notation), each(leaves.Shows(), w.Other)
	if area == "" {
		return
	}
	w.Figure(sheet.Figure{
		ID: w.id("leafCost"), Block: page.Finish, Label: "cost of the leaf", Value: sum.StringFixed(digits), Unit: w.builder.Plan.Price.Currency,
		Text: w.builder.money(sum) + ", " + area + " that shows", Other: other,
		Working: sheet.Working{Rule: "The price of all that is bought." + w.twoAreas(leaves),
			Sum:    w.costSum(books) + " = " + w.builder.money(sum) + w.byAreas(leaves, w.builder.money(sum), func(a measure.Area) string { return each(a, w.Notation) }),
			Source: "Arithmetic, rounded once to the smallest coin."},
	})
}

// costSum is the price of packs and books as a sum.
func (w *leafStep) costSum(books *finish.Books) string {
	var parts []string
	if books.Packs > 0 {
		parts = append(parts, w.whole(books.Packs)+" × "+w.each(books.Pack.Amount))
	}
	if books.Loose > 0 {
		parts = append(parts, w.whole(books.Loose)+" × "+w.each(books.Book.Amount))
	}
	return strings.Join(parts, " + ")
}

// leafNeed is the leaf of a step, kept to see which steps take the same.
type leafNeed struct {
	step  *leafStep
	books finish.Books
}

// sameLeaf says where the leaf of a step, bought together with the same leaf of
// steps before it, comes to fewer books or less money.
func (w *leafStep) sameLeaf(books *finish.Books) {
	leaves, apart, cost, priced := books.Leaves, books.Books, books.Price, books.Priced
	var names []string
	for i := range w.builder.leafNeeds {
		if n := &w.builder.leafNeeds[i]; isSameLeaf(n.step.Leaf, w.Leaf) {
			leaves, apart = leaves+n.books.Leaves, apart+n.books.Books
			cost, priced = cost.Add(n.books.Price), priced && n.books.Priced
			names = append(names, "“"+n.step.Name+"”")
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
	w.Report(w.At+"/leaf/perBook", []problem.Problem{{Severity: problem.Note,
		What: words.Raw("The same leaf is bought for " + problem.Listed(names) + ": together " + w.whole(leaves) + " " + w.piece(leaves) + " in " + w.sold(together.Books) + ", " + saves + "."),
		Do:   words.Say("Buy it together, from one batch.")}})
}

// isSameLeaf tells whether two leaves are sold as one thing.
func isSameLeaf(a, b *plan.Leaf) bool {
	return a.Metal == b.Metal && a.Leaf.Length == b.Leaf.Length && a.Leaf.Width == b.Leaf.Width && a.PerBook == b.PerBook && a.BooksPerPack == b.BooksPerPack &&
		a.PerBookPrice.Amount.Equal(b.PerBookPrice.Amount) && a.PerPackPrice.Amount.Equal(b.PerPackPrice.Amount)
}
