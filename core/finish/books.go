package finish

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
)

// Cost is what one of something costs, where that is Known.
type Cost struct {
	Amount decimal.Decimal
	Known  bool
}

func (c Cost) times(n int64) decimal.Decimal { return c.Amount.Mul(decimal.NewFromInt(n)) }

// Sold is how leaf is sold: books of PerBook leaves and packs of BooksPerPack
// books, 0 where there are no packs to be had. A book is 25 leaves and a pack 20
// books in most trades (Encyclopædia Britannica 1911, Goldbeating; a leaf
// specification sheet), but books of 24 and 48 are known, so both are asked for.
type Sold struct {
	PerBook, BooksPerPack int64
	Book, Pack            Cost
}

// Books is how a number of leaves is bought. Books is all of them in books,
// rounded up. Packs and Loose split them: whole packs, and what is left in
// single books; OneMore tells that a pack was taken in the place of single books
// that it holds more than. Spare is the leaves left over with all that is bought.
// Price is what it costs, exact, where Priced; Compared tells that books and
// packs both have a price and the cheapest was found.
type Books struct {
	Sold
	Leaves, Books, Packs, Loose int64
	OneMore                     bool
	Spare                       int64
	Price                       decimal.Decimal
	Priced, Compared            bool
}

// BooksFor counts books and packs. Where both have a price it is the cheapest of
// all ways to buy, then the one with fewest leaves, then the most packs. Where
// only one has a price it is bought in that one. Where neither has, it is whole
// packs and the rest in single books; single books that come to at least 0.8 of a
// pack are bought as one more pack (common practice, no source).
//
// Refused: leaves below 0 or above MostLeaves, a book outside 1 to 10 000
// leaves, a pack outside 0 to 10 000 books.
func BooksFor(leaves int64, sold Sold) (books Books, problems []problem.Problem, ok bool) {
	books = Books{Sold: sold, Leaves: leaves}
	problems = append(problems, countRefusals("/leaves", words.Say("number of leaves"), leaves, 0, MostLeaves)...)
	problems = append(problems, countRefusals("/perBook", words.Say("number of leaves in a book"), sold.PerBook, 1, 10_000)...)
	problems = append(problems, countRefusals("/booksPerPack", words.Say("number of books in a pack"), sold.BooksPerPack, 0, 10_000)...)
	if len(problems) > 0 {
		return books, problems, false
	}
	books.Books = (leaves + sold.PerBook - 1) / sold.PerBook
	books.Loose = books.Books
	if sold.BooksPerPack > 0 {
		books.split()
	}
	books.Spare = (books.Packs*sold.BooksPerPack+books.Loose)*sold.PerBook - leaves
	books.Priced = (books.Packs == 0 || sold.Pack.Known) && (books.Loose == 0 || sold.Book.Known)
	books.Price = sold.Pack.times(books.Packs).Add(sold.Book.times(books.Loose))
	return books, nil, true
}

// split divides the books into packs and single books.
func (b *Books) split() {
	per := b.BooksPerPack
	whole, rest := b.Books/per, b.Books%per
	switch {
	case b.Book.Known && b.Pack.Known:
		b.cheapest(whole, rest)
	case b.Book.Known:
	case b.Pack.Known:
		b.takePacks((b.Books + per - 1) / per)
	case 5*rest >= 4*per:
		b.takePacks(whole + 1)
	default:
		b.takePacks(whole)
	}
}

// cheapest compares no pack, all whole packs and one pack more: the price moves
// in a straight line between none and all whole ones, so no other number of packs
// is cheaper than all three.
func (b *Books) cheapest(whole, rest int64) {
	best, least := int64(0), b.Book.times(b.Books)
	for _, packs := range []int64{whole, whole + 1} {
		cost := b.Pack.times(packs).Add(b.Book.times(max(0, b.Books-packs*b.BooksPerPack)))
		if c := cost.Cmp(least); c < 0 || c == 0 && packs == whole {
			best, least = packs, cost
		}
	}
	b.takePacks(best)
	b.Compared = true
}

func (b *Books) takePacks(packs int64) {
	b.Packs, b.Loose = packs, max(0, b.Books-packs*b.BooksPerPack)
	b.OneMore = packs*b.BooksPerPack > b.Books
}

func countRefusals(at string, what words.Text, n, least, most int64) []problem.Problem {
	if n >= least && n <= most {
		return nil
	}
	return []problem.Problem{{At: at, Severity: problem.Stop,
		What: words.Say("{^what} is {n}.", words.Of("what", what), words.Count("n", n)),
		Do:   words.Say("Give a whole number from {least} to {most}.", words.Count("least", least), words.Count("most", most))}}
}

// scantSpare is the part of the leaves, a twentieth, below which those left over
// are few: a choice.
const scantSpare = 20

// SpareRemarks is whether one book more is worth buying: leaves left over that
// are fewer than a twentieth of those needed are soon torn, and leaf bought later
// may differ in tone (common practice, no source).
func (b Books) SpareRemarks() []problem.Problem {
	if b.Leaves == 0 || b.PerBook == 1 || scantSpare*b.Spare >= b.Leaves {
		return nil
	}
	needed := words.Count("needed", b.Leaves)
	what := words.Say("Of what is bought no leaf is left over, less than a twentieth of the {needed} needed.", needed)
	if b.Spare > 0 {
		what = words.Say("Of what is bought {n|leaf is|leaves are} left over, less than a twentieth of the {needed} needed.", words.Count("n", b.Spare), needed)
	}
	return []problem.Problem{{At: "/perBook", Severity: problem.Note,
		What: what,
		Do:   words.Say("Buy one book more with the rest: leaf of another batch can differ in tone.")}}
}

// Weight is what leaves weigh, in grams, by what a thousand of them weigh.
func Weight(leaves int64, gramsPer1000 measure.Number) measure.Number {
	return measure.NumberFromInt(leaves).Mul(gramsPer1000).Quo(measure.NumberFromInt(1000))
}

// Gold is 19.32 g/cm³, from memory of handbooks.
var goldDensity = measure.MustNumber("19.32")

// Thickness is how thick a gold leaf is by what a thousand weigh, in
// micrometres, exact: weight ÷ area ÷ 19.32 g/cm³. ok is false for a leaf without
// size.
func (l Leaf) Thickness(gramsPer1000 measure.Number) (um measure.Number, ok bool) {
	area := l.Area().SquareMetres
	if area.Sign() <= 0 {
		return um, false
	}
	// 1 g/m² of a metal of 1 g/cm³ is 1 µm thick.
	return gramsPer1000.Quo(measure.NumberFromInt(1000)).Quo(area).Quo(goldDensity), true
}

// Gold leaf between these, in micrometres, is believed. By weight it is 0.08 to
// 0.10 (Encyclopædia Britannica 1911, Goldbeating), 0.10 (Armstrong, Cyclopedia
// of Painting, 1908, p. 159) and 0.11 (a maker's note); the limits are a choice
// well outside.
var thinnestGold, thickestGold = measure.MustNumber("0.05"), measure.MustNumber("0.3")

// WeightRemarks is whether a weight of gold leaf can be right. Other metals are
// beaten too differently to tell.
func (l Leaf) WeightRemarks(m Metal, gramsPer1000 measure.Number) []problem.Problem {
	um, ok := l.Thickness(gramsPer1000)
	if m != Gold || !ok || um.Cmp(thinnestGold) >= 0 && um.Cmp(thickestGold) <= 0 {
		return nil
	}
	return []problem.Problem{{At: "/gramsPer1000", Severity: problem.Caution,
		What: words.Say("At {grams} g a thousand a gold leaf of this size would be {thick} µm thick; beaten gold is about 0.1 µm.",
			words.Trimmed("grams", gramsPer1000, 3), words.Trimmed("thick", um, 3)),
		Do: words.Say("Check the weight and the size of a leaf.")}}
}
