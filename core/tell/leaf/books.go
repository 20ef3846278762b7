package leaf

import (
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/job/pricing"
	"ceilingwright/core/job/steps"
	"ceilingwright/core/measure"
	"ceilingwright/core/price"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/tell/record"
	"ceilingwright/core/words"
)

// books is how the leaf is bought.
func (w *leaves) books() {
	books := &w.laid.Books
	sold := w.Told(steps.BooksOf(w.leaf, books.Books))
	if books.PerBook > 1 || !w.leaf.Leaf.IsRoll() {
		w.Count(page.Finish, w.id("books"), w.Say("books of leaf"), books.Books, sold,
			w.Say("Leaves by the leaves in a book, rounded up."), w.Say("{sum}, rounded up", words.Name("sum", w.whole(books.Leaves)+" ÷ "+w.whole(books.PerBook))),
			w.Say("A book of 25 leaves: Encyclopædia Britannica, 1911, Goldbeating."))
	}
	if books.Packs > 0 {
		w.packs()
	}
	w.out.Buy, w.out.LeftOver = w.Told(w.buy()), w.Told(w.spare())
}

// packs is how many packs are bought, and why so.
func (w *leaves) packs() {
	books := &w.laid.Books
	rule, source := w.Say("Whole packs; where the single books left come to eight tenths of a pack, one more pack."), w.Say("Common practice, no source.")
	switch {
	case books.Compared:
		rule, source = w.Say("The cheapest of all ways to buy books and packs."), w.Say("Arithmetic. Every number of packs is compared.")
	case books.Pack.Known:
		rule, source = w.Say("Whole packs, since a single book has no price here."), w.Arithmetic()
	}
	sum := w.whole(books.Packs * books.BooksPerPack)
	if books.Loose > 0 {
		sum = w.Say("({all} books − {loose} single)", words.Count("all", books.Packs*books.BooksPerPack+books.Loose), words.Count("loose", books.Loose))
	}
	w.Count(page.Finish, w.id("packs"), w.Say("packs of leaf"), books.Packs, w.Say("{n|pack|packs}", words.Count("n", books.Packs)), rule, sum+" ÷ "+w.whole(books.BooksPerPack), source)
}

// cost is what the leaf costs, and what that is for an area.
func (w *leaves) cost() {
	books, currency := &w.laid.Books, pricing.Currency(&w.Plan)
	sum, ok := price.Round(measure.NumberFromDecimal(books.Price), currency.Digits)
	shows := w.laid.Leaves.Shows()
	if !books.Priced || !ok || books.Books == 0 || shows.SquareMetres.Sign() <= 0 {
		return
	}
	each := func(area measure.Area, n measure.Notation) words.Text {
		return currency.ForArea(measure.NumberFromDecimal(books.Price).Quo(area.SquareMetres), n.System == measure.FeetInches)
	}
	area := each(shows, w.Notation)
	if area.IsEmpty() {
		return
	}
	other, total := w.Style(), currency.Money(sum).In(w.Style())
	other.Notation = w.Other
	w.Figure(sheet.Figure{
		ID: w.id("leafCost"), Block: page.Finish, Label: w.Say("cost of the leaf"), Value: sum.StringFixed(currency.Digits), Unit: currency.Code,
		Text: w.Say("{sum}, {each} that shows", words.Name("sum", total), words.Of("each", area)), Other: each(shows, w.Other).In(other),
		Working: sheet.Working{Rule: w.byTwoAreas(w.Say("The price of all that is bought.")),
			Sum:    w.costSum() + " = " + total + w.byAreas(total, func(a measure.Area) string { return w.Told(each(a, w.Notation)) }),
			Source: w.Say("Arithmetic, rounded once to the smallest coin.")},
	})
}

// costSum is the price of packs and books as a sum.
func (w *leaves) costSum() string {
	var parts []string
	books, currency := &w.laid.Books, pricing.Currency(&w.Plan)
	if books.Packs > 0 {
		parts = append(parts, w.whole(books.Packs)+" × "+currency.Each(books.Pack.Amount).In(w.Style()))
	}
	if books.Loose > 0 {
		parts = append(parts, w.whole(books.Loose)+" × "+currency.Each(books.Book.Amount).In(w.Style()))
	}
	return strings.Join(parts, " + ")
}

// Line is the leaf of a step on the shopping list: how much, and what of it there is to
// know.
func Line(p *page.Page, j *job.Job, step int) (amount, detail string) {
	w := leaves{Page: p, Job: j, step: &j.Plan.Steps[step], leaf: j.Plan.Steps[step].Leaf, laid: &j.Finish.Steps[step].Leaf}
	if !w.laid.Bought || w.laid.Books.Books == 0 {
		return "", ""
	}
	return p.Told(w.buy()), p.Say("{leaf}; {needed} needed, {spare}; all from one batch",
		words.Of("leaf", record.Leaf(w.leaf)), words.Of("needed", steps.Pieces(w.leaf, w.laid.Books.Leaves)), words.Of("spare", w.spare()))
}

// buy is what to buy: books, or packs and single books.
func (w *leaves) buy() words.Text {
	books := &w.laid.Books
	packs, loose := words.Count("n", books.Packs), words.Of("books", steps.BooksOf(w.leaf, books.Loose))
	switch {
	case books.Packs == 0:
		return steps.BooksOf(w.leaf, books.Books)
	case books.Loose > 0:
		return words.Say("{n|pack|packs} + {books}", packs, loose)
	}
	return words.Say("{n|pack|packs}", packs)
}
