package mixing

import (
	"strings"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func part(amount string, unit measure.VolumeUnit) Part {
	return Part{Name: amount + " " + string(unit), Amount: num(amount), Unit: unit}
}

func mixOf(t *testing.T, parts ...Part) Mix {
	t.Helper()
	mix, problems, ok := MixOf(parts)
	require.True(t, ok)
	require.Empty(t, problems)
	return mix
}

const (
	tsp  = measure.UnitTeaspoon
	tbsp = measure.UnitTablespoon
	cup  = measure.UnitCup
	floz = measure.UnitFluidOunce
	pt   = measure.UnitPint
	qt   = measure.UnitQuart
	mL   = measure.UnitMillilitre
)

func TestMixTotals(t *testing.T) {
	const handbook = "NIST Handbook 44, appendix C"
	for _, c := range []struct {
		parts  []Part
		unit   measure.VolumeUnit
		want   string
		source string
	}{
		{[]Part{part("12", floz), part("6", tsp), part("8", tsp)}, tsp, "86/1", handbook},
		{[]Part{part("1", cup)}, floz, "8/1", handbook},
		{[]Part{part("2", cup)}, pt, "1/1", handbook},
		{[]Part{part("1", measure.UnitGallon)}, tsp, "768/1", handbook},
		{[]Part{part("1", measure.UnitGallon)}, mL, "3785.411784", "the same, gallon of 231 in³"},
		{[]Part{part("1/3", cup)}, tsp, "16/1", "USDA kitchen table"},
		{[]Part{part("2/3", cup)}, tbsp, "32/3", "USDA kitchen table: 10 tbsp + 2 tsp"},
		{[]Part{part("1", pt), part("6", floz)}, tsp, "132/1", "worked"},
	} {
		isRounded(t, c.want, mixOf(t, c.parts...).Total.In(c.unit), c.source)
	}
}

func TestMixScales(t *testing.T) {
	// Two fluid ounces of tint to the gallon: batches of a quart, pint, half-pint.
	tint := mixOf(t, part("2", floz), part("126", floz))
	for unit, want := range map[measure.VolumeUnit]string{qt: "3/1", pt: "3/2", cup: "3/4"} {
		scaled := tint.ScaledTo(measure.VolumeOf(num("1"), unit))
		isRounded(t, want, scaled.Portions[0].Volume.In(tsp), "worked")
	}
	// A teaspoon and a half to the cup, five gallons: 120 tsp.
	perCup := mixOf(t, part("1.5", tsp), part("46.5", tsp)).ScaledTo(gal("5"))
	isRounded(t, "120/1", perCup.Portions[0].Volume.In(tsp), "worked")
	// (1 pt + 6 fl oz) × 2.5 = 330 tsp.
	isRounded(t, "330/1", mixOf(t, part("1", pt), part("6", floz)).Times(num("2.5")).Total.In(tsp), "worked")
	// Glaze to paint 4 : 1, three quarts.
	glaze := mixOf(t, part("4", cup), part("1", cup)).ScaledTo(measure.VolumeOf(num("3"), qt))
	isRounded(t, "460.8", glaze.Portions[0].Volume.In(tsp), "worked")
	isRounded(t, "115.2", glaze.Portions[1].Volume.In(tsp), "worked")
	// 12 mL to 0.75 L, batch of 2.5 L: 40 mL.
	metric := mixOf(t, part("12", mL), part("738", mL)).ScaledTo(litres("2.5"))
	isRounded(t, "40/1", metric.Portions[0].Volume.In(mL), "worked")
	// a page on glazing textured walls: 1.65 gal at 1 : 4 are 0.33 paint and
	// 1.32 glaze; a quarter of paint, 0.4125, is a darker mix.
	walls := mixOf(t, part("1", qt), part("4", qt)).ScaledTo(gal("1.65"))
	isRounded(t, "0.33", walls.Portions[0].Volume.Gallons(), "walls")
	isRounded(t, "1.32", walls.Portions[1].Volume.Gallons(), "walls")
}

func TestMixShares(t *testing.T) {
	// How-to pages on glaze: paint is a quarter of 3 : 1, and 20, 16.67 and
	// 14.29 % of 4, 5 and 6 : 1.
	for glaze, want := range map[string]string{"3": "0.2500", "4": "0.2000", "5": "0.1667", "6": "0.1429"} {
		isRounded(t, want, mixOf(t, part(glaze, cup), part("1", cup)).Portions[1].Share, glaze+" : 1")
	}
	isRounded(t, "0.03125", measure.VolumeOf(num("1"), floz).Litres.Quo(measure.VolumeOf(num("1"), qt).Litres), "worked")
	imperial := mixOf(t, part("1", measure.UnitImperialFluidOunce), part("39", measure.UnitImperialFluidOunce))
	isRounded(t, "0.025", imperial.Portions[0].Share, "worked: 1 fl oz in an imperial quart")
}

func TestBatches(t *testing.T) {
	batch := mixOf(t, part("12", floz), part("6", tsp), part("8", tsp))
	for need, want := range map[string]int64{"0": 0, "86": 1, "86.001": 2, "172": 2, "1000": 12} {
		got, ok := batch.Batches(measure.VolumeOf(num(need), tsp))
		assert.True(t, ok)
		assert.Equal(t, want, got, need)
	}
}

func TestMixRefuses(t *testing.T) {
	_, problems, ok := MixOf(nil)
	assert.False(t, ok)
	isOnly(t, problems, "", problem.Stop)
	mix, problems, ok := MixOf([]Part{part("1", cup), part("-2", floz)})
	assert.False(t, ok)
	isOnly(t, problems, "/1/amount", problem.Stop)
	assert.Contains(t, problems[0].What.String(), "-2 fl oz")
	assert.Len(t, mix.Portions, 1)
}

func weighed(grams, density string) Part {
	p := Part{Name: grams + " g", Amount: num(grams), Weighed: true}
	if density != "" {
		p.Density = num(density)
	}
	return p
}

func shared(share string) Part {
	return Part{Name: share + " %", Amount: num(share).Quo(num("100")), Shared: true}
}

func TestMixOfWeightsAndVolumes(t *testing.T) {
	// Worked: 150 g of 1.5 g/mL are 100 mL, beside 400 mL a fifth.
	mix := mixOf(t, part("400", mL), weighed("150", "1.5"))
	isRounded(t, "500/1", mix.Total.In(mL), "worked")
	isRounded(t, "1/5", mix.Portions[1].Share, "worked")
	isRounded(t, "150/1", mix.Portions[1].Grams, "worked")
	scaled := mix.ScaledTo(litres("1.25"))
	isRounded(t, "375/1", scaled.Portions[1].Grams, "worked: two and a half times")
	isRounded(t, "250/1", scaled.Portions[1].Volume.In(mL), "worked")
	// A recipe by weight alone: 10 g of 2 g/mL and 90 g of 0.9 g/mL are 105 mL.
	byWeight := mixOf(t, weighed("10", "2"), weighed("90", "0.9"))
	isRounded(t, "105/1", byWeight.Total.In(mL), "worked")
	// An ounce of water, 28.349523125 g (NIST Handbook 44, appendix C), is less
	// than the fluid ounce of 29.5735295625 mL.
	isRounded(t, "28.3495", mixOf(t, weighed("28.349523125", "1")).Total.In(mL), "NIST Handbook 44, appendix C")
}

func TestMixOfPerCents(t *testing.T) {
	for _, c := range []struct {
		parts []Part
		want  string // the last part in mL
		why   string
	}{
		{[]Part{part("100", mL), shared("5")}, "5/1", "5 % of all the others"},
		{[]Part{part("80", mL), part("20", mL), shared("10")}, "10/1", "of all the others together"},
		// Of 100 : a : b with a = 0.1 (100 + b) and b = 0.2 (100 + a): a = 12/0.98.
		{[]Part{part("100", mL), shared("20"), shared("10")}, "12.2449", "two shares, each counts in the other"},
		{[]Part{weighed("100", "1"), shared("50")}, "50/1", "of a weight, by its volume"},
		{[]Part{part("1", qt), shared("3.125")}, "29.5735", "one fluid ounce in a quart is 3.125 %"},
		{[]Part{part("1", measure.UnitImperialQuart), shared("2.5")}, "28.4131", "one imperial fluid ounce in an imperial quart is 2.5 %"},
		{[]Part{part("100", mL), shared("0")}, "0/1", "none"},
	} {
		mix := mixOf(t, c.parts...)
		isRounded(t, c.want, mix.Portions[len(c.parts)-1].Volume.In(mL), c.why)
		sum := measure.Volume{}
		for _, p := range mix.Portions {
			sum = sum.Add(p.Volume)
		}
		assert.Zero(t, sum.Litres.Cmp(mix.Total.Litres), c.why)
	}
}

func TestMixRefusesWhatCannotBeMixed(t *testing.T) {
	for _, c := range []struct {
		parts []Part
		at    string
	}{
		{[]Part{part("1", cup), weighed("20", "")}, "/1/density"},
		{[]Part{weighed("20", "0")}, "/0/density"},
		{[]Part{shared("20")}, ""},
		{[]Part{part("0", cup), shared("20")}, ""},
		{[]Part{part("1", cup), shared("100"), shared("100")}, ""},
		{[]Part{part("1", cup), shared("300"), shared("40")}, ""},
	} {
		_, problems, ok := MixOf(c.parts)
		assert.False(t, ok)
		isOnly(t, problems, c.at, problem.Stop)
	}
	_, problems, _ := MixOf([]Part{part("-1", cup), weighed("20", "")})
	assert.Equal(t, []string{"/0/amount", "/1/density"}, places(problems))
}

func tinted(p Part) Part {
	p.Tint = true
	return p
}

func named(name string, p Part) Part {
	p.Name, p.Paint, p.Water = name, strings.Contains(strings.ToLower(name), "paint"), name == "water"
	return p
}

func TestTintLoad(t *testing.T) {
	const limits = "common practice and from memory: aim at 5 % or less, above 8 to 10 % it may not dry"
	for _, c := range []struct {
		tint, base Part
		load       string
		severity   problem.Severity
		source     string
	}{
		{part("6", floz), part("1", measure.UnitGallon), "0.0469", "", "worked: 4.69 %"},
		{part("8", floz), part("1", measure.UnitGallon), "0.0625", problem.Caution, "worked: 6.25 %"},
		{part("2", floz), part("1", qt), "0.0625", problem.Caution, "worked: 6.25 %"},
		{part("1", floz), part("1", qt), "1/32", "", "worked: 3.125 %"},
		{part("5", mL), part("100", mL), "1/20", "", limits},
		{part("5.1", mL), part("100", mL), "0.051", problem.Caution, limits},
		{part("10", mL), part("100", mL), "1/10", problem.Caution, limits},
		{part("10.1", mL), part("100", mL), "0.101", problem.Caution, limits},
	} {
		mix := mixOf(t, c.base, tinted(c.tint))
		load, ok := mix.TintLoad()
		assert.True(t, ok)
		isRounded(t, c.load, load, c.source)
		found := mix.Remarks(false, true)
		if c.severity == "" {
			assert.Empty(t, found, c.source)
			continue
		}
		isOnly(t, found, "", c.severity)
	}
	// Two tints count together.
	both := mixOf(t, part("100", mL), tinted(part("6", mL)), tinted(part("6", mL)))
	isOnly(t, both.Remarks(false, true), "", problem.Caution)
	_, ok := mixOf(t, part("1", cup)).TintLoad()
	assert.False(t, ok)
	_, ok = mixOf(t, tinted(part("1", cup))).TintLoad()
	assert.False(t, ok)
}

func TestGlazeTooThin(t *testing.T) {
	const pages = "three how-to pages: 3:1 to 6:1, above that too weak for walls"
	for _, c := range []struct {
		parts []Part
		ratio string
		thin  bool
	}{
		{[]Part{named("glaze medium", part("4", cup)), named("paint", part("1", cup))}, "4/1", false},
		{[]Part{named("glaze medium", part("6", cup)), named("wall paint", part("1", cup))}, "6/1", false},
		{[]Part{named("glaze medium", part("7", cup)), named("Paint, blue", part("1", cup))}, "7/1", true},
		{[]Part{named("medium", part("9", cup)), named("paint", part("1", cup)), named("water", part("1/2", cup))}, "9/1", true},
		{[]Part{named("medium", part("9", cup)), named("paint", part("2", cup)), tinted(named("umber", part("1", tsp)))}, "9/2", false},
	} {
		mix := mixOf(t, c.parts...)
		ratio, ok := mix.MediumToPaint()
		assert.True(t, ok)
		isRounded(t, c.ratio, ratio, pages)
		found := mix.Remarks(true, true)
		assert.Equal(t, c.thin, len(found) == 1, pages)
		assert.Empty(t, mix.Remarks(false, true), "only a glaze")
	}
	_, ok := mixOf(t, named("medium", part("9", cup)), named("a", part("1", cup))).MediumToPaint()
	assert.False(t, ok, "nobody can tell which is the paint")
}

func TestWaterInAGlaze(t *testing.T) {
	for water, remarked := range map[string]bool{"10": false, "11": true} {
		mix := mixOf(t, named("medium", part("80", mL)), named("paint", part("20", mL)), named("water", part(water, mL)))
		assert.Equal(t, remarked, len(mix.Remarks(true, true)) == 1, "common practice: at most 10 %")
		assert.Empty(t, mix.Remarks(true, false), "thinned with something else")
	}
}

func TestMainPart(t *testing.T) {
	wash := mixOf(t, named("water", part("9", cup)), named("umber", part("1", tsp)), named("medium", part("1", cup)))
	assert.Equal(t, 2, wash.Main())
	assert.Equal(t, -1, mixOf(t, named("water", part("9", cup))).Main())
	assert.Equal(t, 0, mixOf(t, named("a", part("1", cup)), named("b", part("8", floz))).Main(), "the first of equals")
}

func TestPartText(t *testing.T) {
	assert.Equal(t, "12 fl oz", part("12", floz).In(words.Style{}))
	assert.Equal(t, "40.5 g", weighed("40.5", "").In(words.Style{}))
	assert.Equal(t, "2.5 %", shared("2.5").In(words.Style{}))
}

func FuzzScaledMixHoldsTheNeed(f *testing.F) {
	f.Add(int64(12), int64(6), int64(4_000))
	f.Add(int64(0), int64(1), int64(0))
	f.Fuzz(func(t *testing.T, medium, paint, need int64) {
		mix, problems, ok := MixOf([]Part{{Name: "medium", Amount: measure.NumberFromInt(medium), Unit: floz}, {Name: "paint", Amount: measure.NumberFromInt(paint), Unit: tsp}})
		if !ok {
			if len(problems) == 0 {
				t.Fatal("no answer and no reason")
			}
			return
		}
		wanted := measure.VolumeOf(measure.NumberFromInt(need), mL)
		scaled, sum, shares := mix.ScaledTo(wanted), measure.Volume{}, measure.Number{}
		for _, portion := range scaled.Portions {
			sum, shares = sum.Add(portion.Volume), shares.Add(portion.Share)
		}
		if sum.Litres.Cmp(wanted.Litres) != 0 || scaled.Total.Litres.Cmp(wanted.Litres) != 0 {
			t.Fatal("the scaled parts are not the need")
		}
		if shares.Cmp(measure.NumberFromInt(1)) != 0 {
			t.Fatal("the shares are not the whole")
		}
	})
}
