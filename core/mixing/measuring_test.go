package mixing

import (
	"slices"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func spoon(size string, unit measure.VolumeUnit) Measure { return MeasureOf(num(size), unit) }

// measureOut measures with a kit that is all scales or none.
func measureOut(amount measure.Number, kit []Measure, unit measure.VolumeUnit) (Measured, bool) {
	return MeasuringWith(kit, len(kit) > 0 && kit[0].weighs).Out(amount, unit)
}

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
		out, ok := measureOut(measure.VolumeOf(num(c.amount), c.unit).Litres, UsualMeasures(c.unit), c.unit)
		require.True(t, ok)
		assert.Equal(t, c.want, out.In(words.Style{}), c.source)
	}
}

func TestMeasureOutWithTheKitAtHand(t *testing.T) {
	tablespoons := []Measure{spoon("1", tsp), spoon("1", tbsp)}
	for amount, want := range map[string]string{"1/3": "5 tbsp + 1 tsp", "2/3": "10 tbsp + 2 tsp"} {
		out, ok := measureOut(measure.VolumeOf(num(amount), cup).Litres, tablespoons, cup)
		require.True(t, ok)
		assert.Equal(t, want, out.In(words.Style{}), "USDA kitchen table")
		assert.True(t, out.Off.IsZero())
	}
	// A jug and two spoons of one unit are written in that unit.
	out, ok := measureOut(measure.VolumeOf(num("2.3"), tsp).Litres, []Measure{spoon("0.25", tsp), spoon("1", tsp)}, tsp)
	require.True(t, ok)
	assert.Equal(t, "2 1/4 tsp", out.In(words.Style{}))
	isRounded(t, "-0.0217", out.Off, "worked: 0.05 of 2.3")
	assert.EqualValues(t, 2, out.Most)
	// A scale of 5 g.
	out, ok = measureOut(num("42"), []Measure{scale("5")}, "")
	require.True(t, ok)
	assert.Equal(t, "40 g", out.In(words.Style{}))
	isRounded(t, "-0.0476", out.Off, "worked: 2 of 42")
	out, _ = measureOut(num("42"), []Measure{scale("100")}, "")
	assert.Equal(t, "none", out.In(words.Style{}))
	isRounded(t, "-1/1", out.Off, "all of it is lost")
	// A third of a cup has no fraction that a spoon is marked with.
	out, _ = measureOut(measure.VolumeOf(num("0.7"), cup).Litres, []Measure{spoon("0.35", cup)}, cup)
	assert.Equal(t, "0.7 cup", out.In(words.Style{}))
}

func TestMeasureOutRefuses(t *testing.T) {
	_, ok := measureOut(num("1"), nil, "")
	assert.False(t, ok)
	_, ok = measureOut(num("1000"), []Measure{spoon("0.000001", mL)}, "")
	assert.False(t, ok, "a million million times")
	_, ok = measureOut(num("0").Sub(num("1")), []Measure{spoon("1", mL)}, mL)
	assert.False(t, ok, "below nothing")
}

func TestMeasuresOfSeveralSystems(t *testing.T) {
	usual := []Measure{spoon("1", tsp), spoon("10", mL), scale("1"), spoon("1", measure.UnitImperialPint)}
	for _, c := range []struct {
		kit    []Measure
		amount measure.Number
		unit   measure.VolumeUnit
		want   string
		why    string
	}{
		{usual, measure.VolumeOf(num("3"), tsp).Litres, floz, "3 tsp", "its own system"},
		{usual, measure.VolumeOf(num("40"), mL).Litres, mL, "40 mL", "its own system"},
		{usual, measure.VolumeOf(num("1"), measure.UnitImperialPint).Litres, measure.UnitImperialGallon, "1 imp pt", "its own system"},
		{[]Measure{spoon("5", mL), scale("1")}, measure.VolumeOf(num("1"), qt).Litres, qt, "945 mL", "better than none"},
		// A quart jug beside a measure of 10 mL: it must not make 42 mL immeasurable.
		{[]Measure{spoon("10", mL)}, measure.VolumeOf(num("42"), mL).Litres, floz, "40 mL", "4.8 % too little"},
		{[]Measure{spoon("10", mL), spoon("1", qt)}, measure.VolumeOf(num("42"), mL).Litres, floz, "40 mL", "no worse for the jug"},
		{[]Measure{spoon("10", mL), spoon("1", qt)}, measure.VolumeOf(num("1.05"), qt).Litres, qt, "1 qt + 50 mL", "a quart and 47.3 mL"},
		{[]Measure{spoon("1", mL), spoon("1", tsp)}, measure.VolumeOf(num("8"), tsp).Litres, tsp, "8 tsp", "exactly, before 39 mL"},
	} {
		out, ok := MeasuringWith(c.kit, false).Out(c.amount, c.unit)
		require.True(t, ok)
		assert.Equal(t, c.want, out.In(words.Style{}), c.why)
	}
	out, ok := MeasuringWith(usual, true).Out(num("3.2"), "")
	require.True(t, ok)
	assert.Equal(t, "3 g", out.In(words.Style{}))
	for _, kit := range [][]Measure{nil, {scale("1")}, {spoon("0", tsp)}} {
		_, ok = MeasuringWith(kit, false).Out(num("1"), tsp)
		assert.False(t, ok)
	}
}

// 65 mL with measures of 30 and 7 mL are 30 and five times 7, not twice 30.
func TestMeasureOutIsTheNearestThereIs(t *testing.T) {
	for _, c := range []struct {
		sizes        []string
		amount, want string
	}{
		{[]string{"30", "7"}, "65", "65 mL"},
		{[]string{"50", "30"}, "90", "90 mL"},
		{[]string{"50", "30"}, "40", "50 mL"},
		{[]string{"50", "30"}, "12", "none"},
		{[]string{"100", "30", "7"}, "100000", "100000 mL"},
		{[]string{"1000", "999"}, "1500000500", ""},
	} {
		var kit []Measure
		for _, size := range c.sizes {
			kit = append(kit, spoon(size, mL))
		}
		out, ok := measureOut(measure.VolumeOf(num(c.amount), mL).Litres, kit, mL)
		assert.Equal(t, c.want != "", ok)
		assert.Equal(t, c.want, out.In(words.Style{}))
	}
}

// bruteForce is the least error, then the fewest fills, of all fills that hold at
// most one of the smallest more than the amount.
func bruteForce(amount int64, sizes []int64, fills int64) (least, fewest int64) {
	if len(sizes) == 0 {
		return max(amount, -amount), fills
	}
	least, fewest = bruteForce(amount, sizes[1:], fills)
	for n := int64(1); amount-(n-1)*sizes[0] > 0; n++ {
		off, count := bruteForce(amount-n*sizes[0], sizes[1:], fills+n)
		if off < least || off == least && count < fewest {
			least, fewest = off, count
		}
	}
	return least, fewest
}

// Against every way there is to fill up to three measures; and no measure more
// ever makes it worse.
func TestMeasureOutAgainstBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sizes := rapid.SliceOfN(rapid.Int64Range(1, 40), 1, 3).Draw(t, "sizes")
		amount := rapid.Int64Range(1, 150).Draw(t, "amount")
		var kit []Measure
		before := measure.NumberFromInt(1)
		for _, size := range sizes {
			kit = append(kit, MeasureOf(measure.NumberFromInt(size), mL))
			out, ok := measureOut(measure.VolumeOf(measure.NumberFromInt(amount), mL).Litres, kit, mL)
			if !ok || out.Off.Abs().Cmp(before) > 0 {
				t.Fatalf("worse with %d mL more: %s", size, out.In(words.Style{}))
			}
			before = out.Off.Abs()
		}
		slices.SortFunc(sizes, func(a, b int64) int { return int(b - a) })
		least, _ := bruteForce(amount, sizes, 0)
		if off := before.Mul(measure.NumberFromInt(amount)); off.Cmp(measure.NumberFromInt(least)) != 0 {
			t.Fatalf("off by %v mL, brute force by %d", off.Float(), least)
		}
		set := newMeasureSet(metric, kit)
		counts, _ := set.fills(measure.VolumeOf(measure.NumberFromInt(amount), mL).Litres)
		total, _ := filled(counts, set.kit).Mul(measure.NumberFromInt(1000)).Floor()
		sum := int64(0)
		for _, n := range counts {
			sum += n
		}
		if _, fewest := bruteForce(total, sizes, 0); sum != fewest {
			t.Fatalf("%d fills for %d mL, brute force %d", sum, total, fewest)
		}
	})
}

// Whatever measures of three systems are at hand, one more never makes a measure
// worse by as much as is told.
func TestOneMeasureMoreNeverMakesItWorse(t *testing.T) {
	units := []measure.VolumeUnit{tsp, floz, cup, qt, mL, measure.UnitLitre, measure.UnitImperialFluidOunce, measure.UnitImperialPint}
	sizes := []string{"1", "0.25", "0.5", "1/3", "5", "10", "40"}
	rapid.Check(t, func(t *rapid.T) {
		amount := measure.VolumeOf(measure.NumberFromFraction(rapid.Int64Range(1, 20_000).Draw(t, "amount"), 10), mL).Litres
		unit := rapid.SampledFrom(units).Draw(t, "unit")
		var kit []Measure
		before := measure.NumberFromInt(1)
		for range rapid.IntRange(1, 6).Draw(t, "measures") {
			kit = append(kit, spoon(rapid.SampledFrom(sizes).Draw(t, "size"), rapid.SampledFrom(units).Draw(t, "of")))
			out, ok := MeasuringWith(kit, false).Out(amount, unit)
			if !ok || errorClass(out.Off).Cmp(errorClass(before)) > 0 {
				t.Fatalf("worse: %s", out.In(words.Style{}))
			}
			before = out.Off.Abs()
		}
	})
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
		out, ok := measureOut(amount.Litres, kit, tsp)
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
