package finish

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func priced(size string, unit measure.VolumeUnit, price string) Can {
	return CanOf(num(size), unit).At(decimal.RequireFromString(price))
}

func usCans() []Can {
	return []Can{
		priced("0.5", measure.UnitPint, "8.00"), priced("1", measure.UnitPint, "13.00"),
		priced("1", measure.UnitQuart, "22.00"), priced("1", measure.UnitGallon, "62.00"),
		priced("5", measure.UnitGallon, "270.00"),
	}
}

func metricCans() []Can {
	return []Can{
		priced("0.25", measure.UnitLitre, "9"), priced("500", measure.UnitMillilitre, "15"),
		priced("0.75", measure.UnitLitre, "20"), priced("1", measure.UnitLitre, "24"),
		priced("2.5", measure.UnitLitre, "48"), priced("5", measure.UnitLitre, "82"),
		priced("10", measure.UnitLitre, "150"),
	}
}

func buy(t *testing.T, need measure.Volume, cans []Can) Purchase {
	t.Helper()
	purchase, problems, ok := CheapestCans(need, cans)
	require.True(t, ok, "%v", problems)
	for _, p := range problems {
		isSentence(t, p)
	}
	assert.GreaterOrEqual(t, purchase.Left.Litres.Sign(), 0, "the cans hold the need")
	return purchase
}

// The prices are invented; the answers were found for the trade reference by
// dynamic programming and again by exhaustive search, not by this package.
func TestCheapestCans(t *testing.T) {
	for _, c := range []struct {
		need   string
		counts []int64
		price  string
	}{
		{"0.05", []int64{1, 0, 0, 0, 0}, "8"},
		{"0.70", []int64{0, 0, 0, 1, 0}, "62"}, // three quarts cost 66
		{"1.30", []int64{1, 0, 1, 1, 0}, "92"},
		{"2.60", []int64{0, 1, 2, 2, 0}, "181"},
		{"4.20", []int64{0, 0, 1, 4, 0}, "270"}, // the pail costs the same and leaves more
		{"4.60", []int64{0, 0, 0, 0, 1}, "270"},
		{"6.80", []int64{0, 0, 0, 2, 1}, "394"},
	} {
		purchase := buy(t, gal(c.need), usCans())
		assert.Equal(t, c.counts, purchase.Counts, c.need)
		assert.Equal(t, c.price, purchase.Price.String(), c.need)
		assert.True(t, purchase.Proved)
	}
	for _, c := range []struct {
		need   string
		counts []int64
		price  string
	}{
		{"1.9", []int64{0, 0, 0, 2, 0, 0, 0}, "48"}, // 2.5 L costs the same and leaves more
		{"3.3", []int64{0, 0, 0, 1, 1, 0, 0}, "72"},
		{"4.4", []int64{0, 0, 0, 0, 0, 1, 0}, "82"},
		{"6.1", []int64{1, 0, 0, 1, 0, 1, 0}, "115"},
		{"11.2", []int64{1, 0, 0, 1, 0, 0, 1}, "183"},
	} {
		purchase := buy(t, litres(c.need), metricCans())
		assert.Equal(t, c.counts, purchase.Counts, c.need)
		assert.Equal(t, c.price, purchase.Price.String(), c.need)
	}
}

func TestRoundingUpOneSizeIsNotTheCheapest(t *testing.T) {
	// Packaging and paint-can-size pages: 7.3 L from tins of 2.5, 5 and 10 L at
	// 28, 48 and 85 are 5 + 2.5 L for 76.00, and leave 0.2 L = 2.7 %.
	tins := []Can{priced("2.5", measure.UnitLitre, "28"), priced("5", measure.UnitLitre, "48"), priced("10", measure.UnitLitre, "85")}
	purchase, problems, ok := CheapestCans(litres("7.3"), tins)
	require.True(t, ok)
	assert.Equal(t, []int64{1, 1, 0}, purchase.Counts)
	assert.Equal(t, "76", purchase.Price.String())
	isRounded(t, "7.5", purchase.Bought.Litres, "bought")
	isRounded(t, "0.2", purchase.Left.Litres, "left")
	isRounded(t, "0.027", purchase.LeftShare, "left")
	isOnly(t, problems, "", problem.Note)
	assert.Contains(t, problems[0].What.String(), "2.7 %")
}

func TestJustOverACanIsPointedOut(t *testing.T) {
	// a paint coverage page: 718 ft² at 350 are 2.051 gal; two
	// gallons are 0.051 short: buy 2 gal + 1 qt of one batch.
	need := takeOff(t, Paint{Area: sqft("359"), Coats: 2, Spread: perGallon("350")}).Need
	purchase, problems, ok := CheapestCans(need, []Can{priced("1", measure.UnitGallon, "62"), priced("1", measure.UnitQuart, "22")})
	require.True(t, ok)
	assert.Equal(t, []int64{2, 1}, purchase.Counts)
	isOnly(t, problems, "", problem.Note)
	assert.Contains(t, problems[0].What.String(), "0.051 gal above 2 × 1 gal")
	assert.Contains(t, problems[0].Do.String(), "one batch")
}

func TestJustOverHasEdges(t *testing.T) {
	gallon := []Can{priced("1", measure.UnitGallon, "62"), priced("1", measure.UnitPint, "13")}
	for need, want := range map[string]bool{
		"1": false, "1.05": true, "1.0501": false, "0.99": false,
		"10.25": true, "10.26": false, "0.126": true, // 0.126 gal: just over a pint
	} {
		_, problems, _ := CheapestCans(gal(need), gallon)
		found := false
		for _, p := range problems {
			found = found || strings.Contains(p.What.String(), "above")
		}
		assert.Equal(t, want, found, need)
	}
}

func TestMissingPricesLeaveTheLeastOver(t *testing.T) {
	cans := []Can{CanOf(num("1"), measure.UnitQuart), priced("1", measure.UnitGallon, "62")}
	purchase, problems, ok := CheapestCans(gal("1.9"), cans)
	require.True(t, ok)
	assert.Equal(t, []int64{0, 2}, purchase.Counts, "as much over as eight quarts, in fewer cans")
	assert.False(t, purchase.Priced)
	assert.True(t, purchase.Price.IsZero())
	assert.Contains(t, places(problems), "/0/price")
	assert.Contains(t, problems[0].What.String(), "1 qt can has no price")

	purchase, _, _ = CheapestCans(gal("1.6"), cans)
	assert.Equal(t, []int64{3, 1}, purchase.Counts, "1.75 gal leave less than 2")
}

func TestCheapestCansRefuses(t *testing.T) {
	gallon := priced("1", measure.UnitGallon, "62")
	_, problems, ok := CheapestCans(litres("100000.1"), []Can{gallon})
	assert.False(t, ok)
	isOnly(t, problems, "", problem.Stop)
	_, problems, ok = CheapestCans(litres("-1"), []Can{gallon})
	assert.False(t, ok)
	isOnly(t, problems, "", problem.Stop)
	_, problems, ok = CheapestCans(litres("1"), nil)
	assert.False(t, ok)
	isOnly(t, problems, "", problem.Note)
	_, problems, ok = CheapestCans(litres("1"), make([]Can, MostSizes+1))
	assert.False(t, ok)
	isOnly(t, problems, "", problem.Stop)
	_, problems, ok = CheapestCans(litres("1"), []Can{CanOf(num("0.00000000000000001"), measure.UnitLitre)})
	assert.False(t, ok)
	isOnly(t, problems, "/0/size", problem.Stop)
	fine := []Can{CanOf(num("1"), measure.UnitLitre), CanOf(num("1.00000000000000001"), measure.UnitLitre)}
	_, problems, ok = CheapestCans(litres("1"), fine)
	assert.False(t, ok)
	assert.Equal(t, problem.Stop, problems[len(problems)-1].Severity)
}

func TestOneBadCanLeavesTheOthers(t *testing.T) {
	purchase, problems, ok := CheapestCans(gal("1.3"), append([]Can{{}}, usCans()...))
	require.True(t, ok)
	assert.Equal(t, []int64{0, 1, 0, 1, 1, 0}, purchase.Counts)
	assert.Equal(t, "/0/size", problems[0].At)

	for _, price := range []string{"-1", "100000001", "1.0001"} {
		cans := usCans()
		cans[2] = cans[2].At(decimal.RequireFromString(price))
		purchase, problems, ok = CheapestCans(gal("1.3"), cans)
		require.True(t, ok)
		assert.False(t, purchase.Priced)
		assert.Equal(t, "/2/price", problems[0].At)
		assert.Equal(t, problem.Stop, problems[0].Severity)
	}
}

func TestNoNeedBuysNothing(t *testing.T) {
	purchase, problems, ok := CheapestCans(measure.Volume{}, usCans())
	require.True(t, ok)
	assert.Zero(t, purchase.Cans)
	assert.Empty(t, problems)
}

func TestAnExactCanIsOneCan(t *testing.T) {
	// 0.1 gal three hundred times is no more than 30 gallons.
	need := gal("0.1").Times(num("300"))
	assert.Equal(t, []int64{30}, buy(t, need, []Can{priced("1", measure.UnitGallon, "62")}).Counts)
}

// exhaustive tries every choice of at most the cans that one size alone would
// take: the slow road to the same answer.
func exhaustive(need int64, sizes []container) score {
	best := worst
	var try func(at int, so score)
	try = func(at int, so score) {
		if so.volume >= need {
			if so.isBetterThan(best) {
				best = so
			}
			return
		}
		if at == len(sizes) {
			return
		}
		for n := int64(0); ; n++ {
			try(at+1, so.with(sizes[at], n))
			if so.volume+n*sizes[at].volume >= need {
				return
			}
		}
	}
	try(0, score{})
	return best
}

func scoreOf(counts []int64, sizes []container) score {
	total := score{}
	for i, n := range counts {
		total = total.with(sizes[i], n)
	}
	return total
}

// randomSizes are a few sizes with volumes and prices likely to tie.
func randomSizes(random *rand.Rand, greatest int64) []container {
	sizes := make([]container, 1+random.IntN(4))
	for i := range sizes {
		volume := 1 + random.Int64N(greatest)
		sizes[i] = container{volume, random.Int64N(3*volume + 2)}
		if random.IntN(2) == 0 {
			sizes[i].price = 2 * volume
		}
	}
	return sizes
}

func TestEverySearchAgreesWithTryingEverything(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 4000 {
		sizes, need := randomSizes(random, 40), 1+random.Int64N(150)
		want := exhaustive(need, sizes)
		counts, proved := cheapestCover(need, sizes)
		require.True(t, proved)
		require.Equal(t, want, scoreOf(counts, sizes), "cover of %d with %v took %v", need, sizes, counts)

		ranked := make([]container, len(sizes))
		for i, at := range byWorth(sizes) {
			ranked[i] = sizes[at]
		}
		counts, proved = branchAndBound(need, ranked)
		require.True(t, proved)
		require.Equal(t, want, scoreOf(counts, ranked), "branches of %d with %v took %v", need, ranked, counts)

		if len(ranked) > 1 {
			one, other := familyFrom(ranked, 0, 2), familyFrom(ranked, 1, 2)
			counts = joinTables(need, ranked, one, other)
			require.Equal(t, want, scoreOf(counts, ranked), "families of %d with %v took %v", need, ranked, counts)
		}
	}
}

func familyFrom(ranked []container, first, step int) family {
	f := family{}
	for at := first; at < len(ranked); at += step {
		f.unit = divisor(f.unit, ranked[at].volume)
		f.members = append(f.members, at)
	}
	return f
}

// The ring of remainders against the tables, which know nothing of it: needs of
// every size, sizes that share a measure and sizes that do not, equal worth,
// equal volumes and sizes larger than the first.
func TestRemaindersAgreeWithTables(t *testing.T) {
	seed, served := uint64(7), 0
	next := func(n int64) int64 {
		seed = seed*6364136223846793005 + 1442695040888963407
		return int64(seed>>33) % n
	}
	for range 4000 {
		ranked := make([]container, 1+next(6))
		for i := range ranked {
			ranked[i] = container{1 + next(30), next(60)}
			if next(4) == 0 {
				ranked[i].price = ranked[i].volume * 2
			}
		}
		order := byWorth(ranked)
		sorted := make([]container, len(order))
		for i, at := range order {
			sorted[i] = ranked[at]
		}
		need := 1 + next(400)
		counts, ok := coverByRemainder(need, sorted)
		if !ok {
			continue
		}
		served++
		all := family{1, make([]int, len(sorted))}
		for i := range all.members {
			all.members[i] = i
		}
		want, got := all.coverTable(need, sorted).best[need], score{}
		for i, n := range counts {
			got = got.with(sorted[i], n)
		}
		require.Equal(t, want, got, "%d of %v", need, sorted)
	}
	require.Greater(t, served, 3000)
}

func TestLargeNeedsAreCoveredTheSameAsWithoutTheShortCut(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		sizes, need := randomSizes(random, 12), 500+random.Int64N(3000)
		whole := familyFrom(sizes, 0, 1)
		counts := make([]int64, len(sizes))
		whole.coverTable(need, sizes).take(whole.rounds(need), sizes, counts)
		short, _ := cheapestCover(need, sizes)
		require.Equal(t, scoreOf(counts, sizes), scoreOf(short, sizes), "%d with %v", need, sizes)
	}
}

func TestGallonsAndLitresTogether(t *testing.T) {
	// 1 gal = 3.785411784 L: 4.7 L are a gallon and a litre (4.785 L) for 86, not
	// two 2.5 L for 96 nor 5 L for 90.
	cans := []Can{priced("1", measure.UnitGallon, "62"), priced("1", measure.UnitLitre, "24"),
		priced("2.5", measure.UnitLitre, "48"), priced("5", measure.UnitLitre, "90")}
	purchase := buy(t, litres("4.7"), cans)
	assert.Equal(t, []int64{1, 1, 0, 0}, purchase.Counts)
	assert.True(t, purchase.Proved)
	isRounded(t, "0.085411784", purchase.Left.Litres, "left over")

	// 500 L from all sizes at once, without prices: two families of tables.
	all := append(usCans(), metricCans()...)
	for i := range all {
		all[i].Priced = false
	}
	purchase = buy(t, litres("500"), all)
	assert.True(t, purchase.Proved)
	assert.Negative(t, purchase.Left.Litres.Cmp(num("0.01")))
}

func TestSizesWithoutCommonMeasureStillAnswer(t *testing.T) {
	var cans []Can
	for i := range 10 {
		cans = append(cans, CanOf(num("0."+strconv.Itoa(100003+i*70001)), measure.UnitLitre), CanOf(num("1."+strconv.Itoa(100003+i*70001)), measure.UnitGallon))
	}
	purchase, problems, ok := CheapestCans(litres("500"), cans)
	require.True(t, ok)
	assert.GreaterOrEqual(t, purchase.Left.Litres.Sign(), 0)
	assert.Negative(t, purchase.LeftShare.Cmp(num("0.01")))
	assert.False(t, purchase.Proved)
	assert.Contains(t, problems[len(problems)-1].What.String(), "not every choice")
}

func TestRoundedLabelsOfGallonsAreProved(t *testing.T) {
	// Labels that print quarts and gallons in litres have next to no common
	// measure with one another or with a litre.
	labels := []Can{priced("0.473176", measure.UnitLitre, "13"), priced("0.946353", measure.UnitLitre, "22"),
		priced("3.785411", measure.UnitLitre, "62"), priced("18.927059", measure.UnitLitre, "270"),
		priced("1", measure.UnitLitre, "24"), priced("1", measure.UnitGallon, "63")}
	for _, need := range []string{"0.3", "4.7", "17.2", "123.4", "500"} {
		assert.True(t, buy(t, litres(need), labels).Proved, need)
	}
}

func FuzzCansHoldTheNeed(f *testing.F) {
	f.Add(int64(7_300_000), int64(2_500_000), "28", int64(5_000_000), "48")
	f.Add(int64(100_000_000_000), int64(10_000), "0", int64(999_983), "0.001") // the bounds
	f.Add(int64(1), int64(10_000), "1e8", int64(100_000_000_000), "-3")
	f.Fuzz(func(t *testing.T, need, size int64, price string, other int64, otherPrice string) {
		const million = 1_000_000
		cans := []Can{CanOf(measure.NumberFromFraction(size, million), measure.UnitLitre),
			CanOf(measure.NumberFromFraction(other, million), measure.UnitGallon)}
		for i, text := range []string{price, otherPrice} {
			if p, err := decimal.NewFromString(text); err == nil && len(text) < 20 && p.Exponent() > -20 && p.Exponent() < 20 {
				cans[i] = cans[i].At(p)
			}
		}
		purchase, problems, ok := CheapestCans(measure.Volume{Litres: measure.NumberFromFraction(need, million)}, cans)
		if !ok && len(problems) == 0 {
			t.Fatal("no answer and no reason")
		}
		if ok && purchase.Left.Litres.Sign() < 0 {
			t.Fatalf("%v cans do not hold the need", purchase.Counts)
		}
	})
}

func BenchmarkCheapestCans(b *testing.B) {
	all := append(usCans(), metricCans()[2:]...)
	unpriced := append([]Can{}, all...)
	for i := range unpriced {
		unpriced[i].Priced = false
	}
	labels := []Can{}
	for _, size := range []string{"0.237", "0.473", "0.946", "3.785", "18.927", "0.25", "0.5", "1", "2.5", "5"} {
		labels = append(labels, CanOf(num(size), measure.UnitLitre))
	}
	for _, c := range []struct {
		name string
		cans []Can
	}{{"US", usCans()}, {"metric", metricCans()}, {"ten mixed", all}, {"ten mixed without prices", unpriced}, {"ten to the millilitre without prices", labels}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				CheapestCans(litres("500"), c.cans)
			}
		})
	}
}
