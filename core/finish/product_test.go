package finish

import (
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func takeOff(t *testing.T, p Paint) Product {
	t.Helper()
	product, problems, ok := TakeOff(p)
	require.True(t, ok)
	require.Empty(t, problems)
	return product
}

func TestTakeOffGallons(t *testing.T) {
	quart := func(text string) Spread { return SpreadFromSquareFeet(num(text), measure.UnitQuart) }
	for _, c := range []struct {
		area   measure.Area
		coats  int64
		spread Spread
		loss   string
		want   string
		source string
	}{
		{sqft("328"), 1, perGallon("400"), "0", "0.82", "an almanac's paint page, room of 10 × 15 ft"},
		{sqft("150"), 1, quart("100"), "0", "0.375", "the same, ceiling: 1.5 qt, buys 2 qt"},
		{sqft("423"), 2, perGallon("350"), "0", "2.4171", "a home-repair worksheet, room of 12 × 14 ft"},
		{sqft("600"), 2, perGallon("400"), "0", "3.0", "Radford's Cyclopedia of Construction vol. 10: area ÷ 200 for two coats"},
		{sqft("359"), 2, perGallon("350"), "0", "2.051", "a paint coverage page"},
		{sqft("450"), 2, perGallon("600"), "1/11", "1.65", "a page on glazing textured walls, 10 % more"},
		{sqft("168"), 4, perGallon("400"), "0", "1.68", "a sign maker's page on paint masks: the roller covers the whole field"},
		{sqft("168"), 2, perGallon("400"), "0", "0.84", "the same, two seal coats alone"},
		{sqft("58.8"), 4, perGallon("400"), "0", "0.588", "the same, what stays in openings of 35 %"},
		{sqft("168"), 1, perGallon("500"), "0", "0.336", "a gilder's notes, October 2011: sealer over composition leaf"},
		{sqft("500"), 1, perGallon("400"), "0.10", "1.3888889", "worked; loss is divided by"},
		{sqft("260"), 2, SpreadFromFilm(wetMils("1.5", "0.42")), "0.15", "12480/9163", "worked"},
	} {
		product := takeOff(t, Paint{Area: c.area, Coats: c.coats, Spread: c.spread, Loss: num(c.loss)})
		isRounded(t, c.want, product.Need.Gallons(), c.source)
	}
}

func TestTakeOffLitres(t *testing.T) {
	// Quoted on the web: 9.310489 L on the surface with 30 % lost take 13.3 L.
	product := takeOff(t, Paint{Area: sqm("9.310489"), Coats: 1, Spread: perLitre("1"), Loss: num("0.30")})
	isWithin(t, "13.3", "0.05", product.Need.Litres, "quoted")
	isRounded(t, "13.30069857", product.Need.Litres, "worked")
	isRounded(t, "9.310489", onSurface(product), "on the surface")

	spread := SpreadFromFilm(FilmFromMicrometres(num("40").Quo(num("0.38"))))
	product = takeOff(t, Paint{Area: sqm("24"), Coats: 2, Spread: spread, Loss: num("0.12")})
	isRounded(t, "1200/209", product.Need.Litres, "worked: 24 m², 2 coats, 40 µm dry of 38 % solids")
}

func TestRaisedPlasterIsComputedFromItsThickness(t *testing.T) {
	// A plasterer's notes on plaster stencilling, spring 2009: 60 ft²
	// open by 35 %, 1/16 in high, are 0.818 US gal = 104.7 fl oz.
	product := takeOff(t, Paint{Area: sqft("60").Times(num("0.35")), Coats: 1, Spread: SpreadFromFilm(FilmFromMils(num("62.5")))})
	isRounded(t, "0.818", product.Need.Gallons(), "plaster")
	isRounded(t, "104.7", product.Need.In(measure.UnitFluidOunce), "plaster")
}

func TestShortCanCoversLess(t *testing.T) {
	// A consumer column, April 2021: 116 fl oz at 400 ft²/gal cover
	// 362.5 ft², 12 fl oz short of 400.
	can := CanOf(num("116"), measure.UnitFluidOunce)
	isRounded(t, "362.5", can.Volume.Gallons().Mul(num("400")), "jug")
	need := takeOff(t, Paint{Area: sqft("400"), Coats: 1, Spread: perGallon("400")}).Need
	isRounded(t, "12/1", need.In(measure.UnitFluidOunce).Sub(can.Size), "short")
}

func TestTakeOffRefuses(t *testing.T) {
	good := Paint{Area: sqft("100"), Coats: 2, Spread: perGallon("375"), Loss: num("0.12")}
	for _, c := range []struct {
		name  string
		spoil func(p *Paint)
		at    string
	}{
		{"area below nothing", func(p *Paint) { p.Area = sqft("-1") }, "/area"},
		{"no coats", func(p *Paint) { p.Coats = 0 }, "/coats"},
		{"too many coats", func(p *Paint) { p.Coats = MostCoats + 1 }, "/coats"},
		{"no spread", func(p *Paint) { p.Spread = Spread{} }, "/spread"},
		{"spread below nothing", func(p *Paint) { p.Spread = perLitre("-9") }, "/spread"},
		{"loss below nothing", func(p *Paint) { p.Loss = num("-0.01") }, "/loss"},
		{"everything lost", func(p *Paint) { p.Loss = num("1") }, "/loss"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := good
			c.spoil(&p)
			_, problems, ok := TakeOff(p)
			assert.False(t, ok)
			isOnly(t, problems, c.at, problem.Stop)
		})
	}
	_, problems, _ := TakeOff(Paint{Area: sqft("-1"), Loss: num("2")})
	assert.Equal(t, []string{"/area", "/coats", "/spread", "/loss"}, places(problems), "all at once")
}

func TestTakeOffPointsOut(t *testing.T) {
	for _, c := range []struct {
		p  Paint
		at string
	}{
		{Paint{Area: sqm("1"), Coats: 1, Spread: perLitre("375")}, "/spread"}, // ft²/gal typed as m²/L
		{Paint{Area: sqm("1"), Coats: 1, Spread: perGallon("2")}, "/spread"},
		{Paint{Area: sqm("1"), Coats: 1, Spread: perLitre("9"), Loss: num("0.8")}, "/loss"},
	} {
		product, problems, ok := TakeOff(c.p)
		assert.True(t, ok)
		isOnly(t, problems, c.at, problem.Caution)
		assert.Positive(t, product.Need.Litres.Sign(), "computed all the same")
	}
}

func TestNoAreaTakesNothing(t *testing.T) {
	assert.True(t, takeOff(t, Paint{Coats: 2, Spread: perGallon("375")}).Need.Litres.IsZero())
}

func FuzzTakeOffGrowsWithTheWork(f *testing.F) {
	f.Add(int64(24_000_000), int64(1), int64(9_200_000), int64(120_000))
	f.Add(int64(0), int64(1), int64(1), int64(999_999))
	f.Fuzz(func(t *testing.T, area, more, spread, loss int64) {
		const million = 1_000_000
		of := func(area int64, coats int64) (Product, bool) {
			product, _, ok := TakeOff(Paint{
				Area:   measure.Area{SquareMetres: measure.NumberFromFraction(area, million)},
				Coats:  coats,
				Spread: SpreadFromSquareMetres(measure.NumberFromFraction(spread, million)),
				Loss:   measure.NumberFromFraction(loss, million),
			})
			return product, ok
		}
		once, ok := of(area, 1)
		if !ok || more < 0 || area > 1<<62-more {
			t.Skip()
		}
		twice, _ := of(area, 2)
		if twice.Need.Litres.Cmp(once.Need.Litres.Mul(measure.NumberFromInt(2))) != 0 {
			t.Fatal("two coats are not twice one")
		}
		larger, _ := of(area+more, 1)
		if larger.Need.Litres.Cmp(once.Need.Litres) < 0 {
			t.Fatal("more area needs less")
		}
		kept := measure.NumberFromInt(1).Sub(once.Loss)
		if once.Need.Litres.Mul(kept).Cmp(onSurface(once)) != 0 {
			t.Fatal("what is not lost is not what is on the surface")
		}
	})
}

// onSurface is what stays on the surface, thinner and all, in litres.
func onSurface(p Product) measure.Number {
	return p.Painted.SquareMetres.Quo(p.Spread.SquareMetresPerLitre)
}
