package finish

import (
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func at(price string) Cost { return Cost{Amount: decimal.RequireFromString(price), Known: true} }

func TestBooksAndPacks(t *testing.T) {
	for _, c := range []struct {
		leaves int64
		sold   Sold
		want   Books
		source string
	}{
		{1000, in25, Books{Books: 40, Packs: 2}, "Armstrong, Cyclopedia of Painting (1908), p. 159"},
		{500, in25, Books{Books: 20, Packs: 1}, "a leaf specification sheet"},
		{100, Sold{PerBook: 25, BooksPerPack: 4}, Books{Books: 4, Packs: 1}, "Workshop Receipts, first series: the old hundred is 4 books"},
		{260, in25, Books{Books: 11, Loose: 11, Spare: 15}, "a frame maker's notes, January 2011"},
		{188, in25, Books{Books: 8, Loose: 8, Spare: 12}, "worked"},
		{400, in25, Books{Books: 16, Packs: 1, OneMore: true, Spare: 100}, "0.8 of a pack"},
		{375, in25, Books{Books: 15, Loose: 15}, "below 0.8 of a pack"},
		{50, Sold{PerBook: 24}, Books{Books: 3, Loose: 3, Spare: 22}, "a mechanics' manual: books of 24 leaves, no packs"},
		{97, Sold{PerBook: 48}, Books{Books: 3, Loose: 3, Spare: 47}, "the same: silver in books of 48"},
		{0, in25, Books{}, "nothing"},
	} {
		c.want.Leaves, c.want.Sold = c.leaves, c.sold
		c.want.Priced = c.leaves == 0
		books, problems, ok := BooksFor(c.leaves, c.sold)
		assert.True(t, ok)
		assert.Empty(t, problems)
		assert.True(t, books.Price.IsZero())
		books.Price = decimal.Decimal{}
		assert.Equal(t, c.want, books, c.source)
	}
	_, problems, ok := BooksFor(-1, Sold{BooksPerPack: -1})
	assert.False(t, ok)
	assert.Equal(t, []string{"/leaves", "/perBook", "/booksPerPack"}, places(problems))
}

func TestBooksByPrice(t *testing.T) {
	// Worked by hand: invented prices.
	for _, c := range []struct {
		name        string
		leaves      int64
		book, pack  Cost
		packs       int64
		loose       int64
		price       string
		isOneMore   bool
		isCompared  bool
		priceStands bool
	}{
		{"15 books at 22 are 330, a pack is 400", 375, at("22"), at("400"), 0, 15, "330", false, true, true},
		{"19 books at 22 are 418, a pack is 400", 475, at("22"), at("400"), 1, 0, "400", true, true, true},
		{"a pack and a book", 520, at("22"), at("400"), 1, 1, "422", false, true, true},
		{"a pack dearer than its books one by one", 1000, at("22"), at("450"), 0, 40, "880", false, true, true},
		{"as dear: packs", 1000, at("22"), at("440"), 2, 0, "880", false, true, true},
		{"only books have a price", 1000, at("22"), Cost{}, 0, 40, "880", false, false, true},
		{"only packs have a price", 520, Cost{}, at("400"), 2, 0, "800", true, false, true},
	} {
		books, _, ok := BooksFor(c.leaves, Sold{PerBook: 25, BooksPerPack: 20, Book: c.book, Pack: c.pack})
		require.True(t, ok)
		assert.Equal(t, [2]int64{c.packs, c.loose}, [2]int64{books.Packs, books.Loose}, c.name)
		assert.Equal(t, c.price, books.Price.String(), c.name)
		assert.Equal(t, [3]bool{c.isOneMore, c.isCompared, c.priceStands}, [3]bool{books.OneMore, books.Compared, books.Priced}, c.name)
		assert.Equal(t, (c.packs*20+c.loose)*25-c.leaves, books.Spare, c.name)
	}
	books, _, _ := BooksFor(520, Sold{PerBook: 25, BooksPerPack: 20})
	assert.False(t, books.Priced)
}

func TestBooksAgainstEveryWay(t *testing.T) {
	for leaves := int64(0); leaves <= 260; leaves += 13 {
		for _, per := range []int64{1, 3, 4, 7} {
			for book := int64(0); book <= 9; book += 3 {
				for pack := int64(0); pack <= 40; pack += 5 {
					sold := Sold{PerBook: 10, BooksPerPack: per, Book: Cost{decimal.NewFromInt(book), true}, Pack: Cost{decimal.NewFromInt(pack), true}}
					got, _, ok := BooksFor(leaves, sold)
					require.True(t, ok)
					bought := (got.Packs*per + got.Loose) * 10
					require.GreaterOrEqual(t, bought, leaves)
					least, fewest := int64(1<<60), int64(1<<60)
					for packs := int64(0); packs <= 30; packs++ {
						for loose := int64(0); loose <= 30; loose++ {
							held := (packs*per + loose) * 10
							if cost := packs*pack + loose*book; held >= leaves && (cost < least || cost == least && held < fewest) {
								least, fewest = cost, held
							}
						}
					}
					require.Equal(t, least, got.Price.IntPart(), "%d leaves, %+v", leaves, sold)
					require.Equal(t, fewest, bought, "%d leaves, %+v", leaves, sold)
				}
			}
		}
	}
}

func TestSpareLeaves(t *testing.T) {
	remarks := func(leaves int64, sold Sold) []problem.Problem {
		books, _, ok := BooksFor(leaves, sold)
		require.True(t, ok)
		return books.SpareRemarks()
	}
	isOnly(t, remarks(198, in25), "/perBook", problem.Note)
	assert.Equal(t, "Of what is bought 2 leaves are left over, less than a twentieth of the 198 needed.", remarks(198, in25)[0].What.String())
	assert.Equal(t, "Of what is bought no leaf is left over, less than a twentieth of the 200 needed.", remarks(200, in25)[0].What.String())
	assert.Equal(t, "Of what is bought 1 leaf is left over, less than a twentieth of the 99 needed.", remarks(99, in25)[0].What.String())
	assert.Empty(t, remarks(188, in25))
	assert.Empty(t, remarks(0, in25))
	assert.Empty(t, remarks(1, Sold{PerBook: 1}), "a roll has its length left over, not leaves")
}

func TestWeightOfGold(t *testing.T) {
	// Encyclopædia Britannica 1911, Goldbeating: 25 leaves of 3¼ in weigh 4 to 5
	// grains of 64.798 91 mg, 0.079 to 0.098 µm.
	leaf := leafOf("3.25", "0")
	for grains, want := range map[string]string{"4": "0.079", "5": "0.098"} {
		um, ok := leaf.Thickness(num(grains).Mul(num("0.06479891")).Mul(num("40")))
		require.True(t, ok)
		isRounded(t, want, um, grains+" grains")
	}
	// A maker's note: 21 g for a thousand leaves of 10 × 10 cm, 0.021 g a leaf.
	um, _ := metricLeaf(100, 0).Thickness(num("21"))
	isRounded(t, "0.1087", um, "a maker's note")
	isRounded(t, "0.021", Weight(1, num("21")), "a leaf")
	isRounded(t, "5.4600", Weight(260, num("21")), "derived: 260 leaves")

	// Armstrong, Cyclopedia of Painting (1908), p. 159: 2500 leaves of 3 × 3¼ in
	// from an ounce, 169.27 ft²; if troy, of 31.103 476 8 g, 0.102 µm.
	old := Leaf{Length: inches("3"), Width: inches("3.25")}
	isRounded(t, "169.27", old.reach(2500).SquareFeet(), "an ounce")
	um, _ = old.Thickness(num("31.1034768").Quo(num("2.5")))
	isRounded(t, "0.102", um, "troy")

	// Colorado capitol dome notice, 2013: 140 000 leaves of 3⅛ in; at 0.125 µm they
	// weigh 68.5 oz troy, where 65 were supplied, 6 % less.
	dome := leafOf("3.125", "0")
	perThousand := num("0.125").Mul(goldDensity).Mul(dome.Area().SquareMetres).Mul(num("1000"))
	isRounded(t, "68.5", Weight(140_000, perThousand).Quo(num("31.1034768")), "the dome")
	um, _ = dome.Thickness(num("65").Mul(num("31.1034768")).Quo(num("140")))
	isWithin(t, "0.125", "0.0075", um, "as supplied")
}

func TestWeightThatCannotBe(t *testing.T) {
	leaf := metricLeaf(80, 0)
	assert.Empty(t, leaf.WeightRemarks(Gold, num("13.5")))
	isOnly(t, leaf.WeightRemarks(Gold, num("135")), "/gramsPer1000", problem.Caution)
	isOnly(t, leaf.WeightRemarks(Gold, num("1.35")), "/gramsPer1000", problem.Caution)
	assert.Empty(t, leaf.WeightRemarks(Imitation, num("135")))
	assert.Empty(t, Leaf{}.WeightRemarks(Gold, num("1")))
	assert.Equal(t, measure.Area{}, Leaf{}.Area())
}
