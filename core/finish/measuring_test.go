package finish

import (
	"testing"

	"ceilingwright/core/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func spoon(size string, unit measure.VolumeUnit) Measure { return MeasureOf(num(size), unit) }

func scale(size string) Measure { return ScaleOf(num(size), "g", num("1")) }

func TestMeasureOutWithTheUsualKit(t *testing.T) {
	const worked = "worked: the largest first, on to 1/8 tsp or 0.5 mL"
	for _, c := range []struct {
		amount string
		unit   measure.VolumeUnit
		want   string
		source string
	}{
		{"3", tsp, "3 tsp", "2 fl oz to the gallon, a quart"},
		{"1.5", tsp, "1 1/2 tsp", "2 fl oz to the gallon, a pint"},
		{"0.75", tsp, "3/4 tsp", "2 fl oz to the gallon, a half-pint"},
		{"120", tsp, "1 pt + 4 fl oz", "1 1/2 tsp to the cup, five gallons"},
		{"330", tsp, "1 qt + 1 pt + 7 fl oz", "1 pt + 6 fl oz two and a half times"},
		{"115.2", tsp, "1 pt + 3 fl oz + 1 1/4 tsp", "glaze 4 : 1, three quarts: the paint, 1.2 tsp over"},
		{"460.8", tsp, "2 qt + 1 cup + 4 fl oz + 4 3/4 tsp", "glaze 4 : 1, three quarts: the glaze, 4.8 tsp over"},
		{"40", mL, "40 mL", "12 mL to 0.75 L, a batch of 2.5 L"},
		{"1234.3", mL, "1 L + 234.5 mL", worked},
		{"2", measure.UnitLitre, "2 L", worked},
		{"3", measure.UnitGallon, "3 gal", worked},
		{"5.97", tsp, "1 fl oz", "5.97 tsp come to 6, which fill a fluid ounce"},
		{"767.99", tsp, "1 gal", "all measures turn over"},
		{"999.9", mL, "1 L", "the same"},
		{"0.06", tsp, "none", "below half a step"},
		{"0.0625", tsp, "1/8 tsp", "half a step is rounded up"},
		{"33", measure.UnitImperialFluidOunce, "1 imp pt + 13 imp fl oz", "an imperial pint is 20 fl oz: NIST Handbook 44, appendix C"},
		{"0", tsp, "none", "nothing"},
	} {
		out, ok := MeasureOut(measure.VolumeOf(num(c.amount), c.unit).Litres, UsualMeasures(c.unit))
		require.True(t, ok)
		assert.Equal(t, c.want, out.Text, c.source)
	}
}

func TestMeasureOutWithTheKitAtHand(t *testing.T) {
	tablespoons := []Measure{spoon("1", tsp), spoon("1", tbsp)}
	for amount, want := range map[string]string{"1/3": "5 tbsp + 1 tsp", "2/3": "10 tbsp + 2 tsp"} {
		out, ok := MeasureOut(measure.VolumeOf(num(amount), cup).Litres, tablespoons)
		require.True(t, ok)
		assert.Equal(t, want, out.Text, "USDA kitchen table")
		assert.True(t, out.Off.IsZero())
	}
	// A jug and two spoons of one unit are written in that unit.
	out, ok := MeasureOut(measure.VolumeOf(num("2.3"), tsp).Litres, []Measure{spoon("0.25", tsp), spoon("1", tsp)})
	require.True(t, ok)
	assert.Equal(t, "2 1/4 tsp", out.Text)
	isRounded(t, "-0.0217", out.Off, "worked: 0.05 of 2.3")
	assert.EqualValues(t, 2, out.Most)
	// A scale of 5 g.
	out, ok = MeasureOut(num("42"), []Measure{scale("5")})
	require.True(t, ok)
	assert.Equal(t, "40 g", out.Text)
	isRounded(t, "-0.0476", out.Off, "worked: 2 of 42")
	out, _ = MeasureOut(num("42"), []Measure{scale("100")})
	assert.Equal(t, "none", out.Text)
	isRounded(t, "-1/1", out.Off, "all of it is lost")
	// A third of a cup has no fraction that a spoon is marked with.
	out, _ = MeasureOut(measure.VolumeOf(num("0.7"), cup).Litres, []Measure{spoon("0.35", cup)})
	assert.Equal(t, "0.7 cup", out.Text)
}

func TestMeasureOutRefuses(t *testing.T) {
	_, ok := MeasureOut(num("1"), nil)
	assert.False(t, ok)
	_, ok = MeasureOut(num("1000"), []Measure{spoon("0.000001", mL)})
	assert.False(t, ok, "a million million times")
	_, ok = MeasureOut(num("0").Sub(num("1")), []Measure{spoon("1", mL)})
	assert.False(t, ok, "below nothing")
}

func TestSuitedMeasures(t *testing.T) {
	kit := []Measure{spoon("1", tsp), spoon("10", mL), scale("1"), spoon("1", measure.UnitImperialPint)}
	names := func(list []Measure) (units []string) {
		for _, m := range list {
			units = append(units, m.unit)
		}
		return units
	}
	assert.Equal(t, []string{"tsp"}, names(Suited(kit, false, floz)))
	assert.Equal(t, []string{"mL"}, names(Suited(kit, false, mL)))
	assert.Equal(t, []string{"imp pt"}, names(Suited(kit, false, measure.UnitImperialGallon)))
	assert.Equal(t, []string{"g"}, names(Suited(kit, true, "")))
	assert.Equal(t, []string{"mL"}, names(Suited([]Measure{spoon("5", mL), scale("1")}, false, qt)), "better than none")
	assert.Empty(t, Suited([]Measure{scale("1")}, false, qt))
	assert.Empty(t, Suited([]Measure{spoon("0", tsp)}, false, tsp), "a spoon of nothing")
	assert.Equal(t, "g", UsualScale().unit)
}

// What is measured is off by half the last step at most, and where every measure
// is a whole number of the next smaller, no measure but the largest is filled
// as often as fills the next larger.
func FuzzMeasureOut(f *testing.F) {
	f.Add(int64(115_200), int64(1000))
	f.Add(int64(1), int64(7))
	f.Fuzz(func(t *testing.T, thousandths, of int64) {
		if thousandths < 0 || of < 1 || thousandths/of > 1_000_000 {
			return
		}
		amount := measure.VolumeOf(measure.NumberFromFraction(thousandths, of), tsp)
		kit := UsualMeasures(tsp)
		out, ok := MeasureOut(amount.Litres, kit)
		if !ok {
			t.Fatal("not measured")
		}
		step := measure.VolumeOf(num("0.0625"), tsp).Litres
		if out.Amount.Sub(amount.Litres).Abs().Cmp(step) > 0 {
			t.Fatal("off by more than half a step")
		}
		counts, _ := fill(out.Amount, kit)
		for i := 1; i < len(kit); i++ {
			if kit[i].step.Mul(measure.NumberFromInt(counts[i])).Cmp(kit[i-1].step) >= 0 {
				t.Fatal("a larger measure would have done")
			}
		}
		if filled(counts, kit).Cmp(out.Amount) != 0 {
			t.Fatal("the measures are not the amount")
		}
	})
}
