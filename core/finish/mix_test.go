package finish

import (
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

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
	// 98905.com glazing on textured walls: 1.65 gal at 1 : 4 are 0.33 paint and
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
	assert.Contains(t, problems[0].What, "-2 fl oz")
	assert.Len(t, mix.Portions, 1)
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
