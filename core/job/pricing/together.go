package pricing

import (
	"ceilingwright/core/finish"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// buyLeafTogether says where leaf is better bought together.
func (w *pricing) buyLeafTogether() {
	for i := range w.Finish.Steps {
		if w.Finish.Steps[i].Leaf.Bought {
			w.sameLeaf(i)
		}
	}
}

// sameLeaf says where the leaf of a step, bought together with the same leaf of steps
// before it, comes to fewer books or less money.
func (w *pricing) sameLeaf(step int) {
	s, own := &w.Plan.Steps[step], &w.Finish.Steps[step].Leaf.Books
	leaves, apart, cost, priced := own.Leaves, own.Books, own.Price, own.Priced
	var names []string
	for i := range step {
		other := &w.Finish.Steps[i].Leaf
		if !other.Bought || !isSameLeaf(w.Plan.Steps[i].Leaf, s.Leaf) {
			continue
		}
		leaves, apart = leaves+other.Books.Leaves, apart+other.Books.Books
		cost, priced = cost.Add(other.Books.Price), priced && other.Books.Priced
		names = append(names, "“"+w.Plan.Steps[i].Name+"”")
	}
	together, _, ok := finish.BooksFor(leaves, own.Sold)
	if !ok {
		return
	}
	steps, pieces, bought := words.Names("steps", names), words.Of("leaves", steps.Pieces(s.Leaf, leaves)), words.Of("books", steps.BooksOf(s.Leaf, together.Books))
	var what words.Text
	switch {
	case priced && together.Priced && together.Price.LessThan(cost):
		what = words.Say("The same leaf is bought for {steps}: together {leaves} in {books}, {less} less than apart.", steps, pieces, bought,
			words.Of("less", Currency(w.Plan).Money(cost.Sub(together.Price))))
	case together.Books < apart:
		what = words.Say("The same leaf is bought for {steps}: together {leaves} in {books}, where {apart} are counted.", steps, pieces, bought, words.Count("apart", apart))
	default:
		return
	}
	w.Remark(s.At+"/leaf/perBook", problem.Note, what, words.Say("Buy it together, from one batch."))
}

// isSameLeaf tells whether two leaves are sold as one thing.
func isSameLeaf(a, b *plan.Leaf) bool {
	return a.Metal == b.Metal && a.Leaf.Length == b.Leaf.Length && a.Leaf.Width == b.Leaf.Width && a.PerBook == b.PerBook && a.BooksPerPack == b.BooksPerPack &&
		a.PerBookPrice.Amount.Equal(b.PerBookPrice.Amount) && a.PerPackPrice.Amount.Equal(b.PerPackPrice.Amount)
}
