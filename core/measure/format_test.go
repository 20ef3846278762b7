package measure

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

var (
	sixteenths = Notation{System: FeetInches, InchMark: Inch / 16, MetricMark: Millimetre}
	plain16ths = Notation{System: FeetInches, InchMark: Inch / 16, MetricMark: Millimetre, Plain: true}
	wholeMM    = Notation{System: Metric, InchMark: Inch / 16, MetricMark: Millimetre}
	halfMM     = Notation{System: Metric, MetricMark: Millimetre / 2}
)

func inches(text string) Length {
	l, err := ParseOffset(text, UnitInch)
	if err != nil {
		panic(err)
	}
	return l
}

func TestNotationLength(t *testing.T) {
	for _, c := range []struct {
		n    Notation
		l    Length
		want string
	}{
		{sixteenths, inches("17' 9 1/2"), "17′ 9½″"},
		{plain16ths, inches("17' 9 1/2"), `17' 9 1/2"`},
		{sixteenths, inches("9 3/16"), "9 3⁄16″"},
		{plain16ths, inches("9 3/16"), `9 3/16"`},
		{sixteenths, inches("5' 9 3/16"), "5′ 9 3⁄16″"},
		{sixteenths, inches("3/16"), "3⁄16″"},
		{sixteenths, inches("7/8"), "⅞″"},
		{plain16ths, inches("7/8"), `7/8"`},
		{sixteenths, inches("5' 0 3/4"), "5′ 0¾″"},
		{plain16ths, inches("5' 0 3/4"), `5' 0 3/4"`},
		{sixteenths, inches("12'"), "12′ 0″"},
		{sixteenths, 0, "0″"},
		{sixteenths, inches("-11' 2"), "−11′ 2″"},
		{plain16ths, inches("-11' 2"), `-11' 2"`},
		{sixteenths, inches("1/4"), "¼″"}, {sixteenths, inches("1/8"), "⅛″"}, {sixteenths, inches("3/8"), "⅜″"},
		{sixteenths, inches("5/8"), "⅝″"}, {sixteenths, inches("1/2"), "½″"}, {sixteenths, inches("3/4"), "¾″"},
		{Notation{System: FeetInches, InchMark: Inch / 64}, inches("63/64"), "63⁄64″"},
		{Notation{System: FeetInches, InchMark: Millimetre}, 10 * Millimetre, "10 mm"}, // no mark of an inch tape
		{Notation{System: FeetInches}, 10 * Millimetre, "10 mm"},
		{Notation{System: FeetInches}, inches("9 3/16"), "9 3⁄16″"},
		{wholeMM, 4780 * Millimetre, "4.780 m"},
		{wholeMM, 311_150_000, "311 mm"},
		{wholeMM, 999_500_000, "1.000 m"},
		{wholeMM, 999_499_800, "999 mm"},
		{wholeMM, 999_499_999, "1.000 m"}, // a half that lost a nanometre
		{wholeMM, 0, "0 mm"},
		{wholeMM, -6 * Millimetre, "−6 mm"},
		{wholeMM, -400_000, "0 mm"},
		{wholeMM, -1_500_000, "−2 mm"},
		{Notation{System: Metric, MetricMark: 5 * Millimetre}, 312 * Millimetre, "310 mm"},
		{halfMM, 310_700_000, "310.5 mm"},
		{halfMM, 1_310_700_000, "1.3105 m"},
		{halfMM, 310_100_000, "310.0 mm"},
		{Notation{System: Metric}, 310_700_001, "310.700001 mm"},
	} {
		assert.Equal(t, c.want, c.n.Length(c.l), "%+v of %d nm", c.n, c.l)
	}
}

// OpenCADStudio issues 381, 827 and 981: feet were split off before rounding.
func TestLengthRoundsBeforeFeetAreSplit(t *testing.T) {
	for text, want := range map[string]string{
		"35.9999": `3' 0"`, "11.999": `1' 0"`, "35.9375": `2' 11 15/16"`, "23.999": `2' 0"`, "-0.001": `0"`,
	} {
		assert.Equal(t, want, plain16ths.Length(inches(text)), text)
	}
}

// UnitsNet issue 158: 4 ft was reported as 3 ft 12 in. In plain float64 it is
// 7, 14, 28, 56 and 61 ft that fail.
func TestWholeFeetStayWhole(t *testing.T) {
	for k := Length(1); k <= 100; k++ {
		feet := NumberFromInt(int64(k))
		want := Notation{Plain: true}.Number(feet, 0) + `' 0"`
		assert.Equal(t, want, plain16ths.Length(k*304_800_000))
		assert.Equal(t, want, plain16ths.Exact(k*Foot))
	}
}

// specify issue 33: halves to 64ths only, reduced.
func TestOnlyMarksThatATapeHas(t *testing.T) {
	assert.Equal(t, `5 1/4"`, Notation{System: FeetInches, InchMark: Inch / 8, Plain: true}.Length(inches("5.19")))
	assert.Equal(t, `5 3/16"`, plain16ths.Length(inches("5.19")))
}

// thoth issue 259: inch to millimetre and back drifted. 4 in stays 4 in.
func TestSwitchingNotationChangesNothing(t *testing.T) {
	l := inches("4")
	for range 10 {
		metric, err := Parse(Notation{System: Metric}.Exact(l), UnitInch)
		require.NoError(t, err)
		l, err = Parse(Notation{System: FeetInches}.Exact(metric), UnitMillimetre)
		require.NoError(t, err)
	}
	assert.Equal(t, `4"`, plain16ths.Length(l))
	assert.Equal(t, "102 mm", wholeMM.Length(l))
}

func TestExact(t *testing.T) {
	assert.Equal(t, "2387.6 mm", Notation{System: Metric}.Exact(2_387_600_000))
	assert.Equal(t, "7′ 10″", sixteenths.Exact(2_387_600_000))
	assert.Equal(t, "1⁄64″", sixteenths.Exact(tick))
	assert.Equal(t, "0.198437 mm", sixteenths.Exact(tick/2))
	assert.Equal(t, "0.000001 mm", Length(1).String())
	assert.Equal(t, "-2387.6 mm", Length(-2_387_600_000).String())
	assert.Equal(t, "0 mm", Length(0).String())
	assert.Equal(t, "-9223372036854.775808 mm", Length(math.MinInt64).String())
}

func TestToMark(t *testing.T) {
	for _, c := range []struct{ l, mark, want Length }{
		{5, 10, 10}, {-5, 10, -10}, {4, 10, 0}, {-4, 10, 0}, {15, 10, 20}, {-16, 10, -20}, {7, 0, 7}, {7, -1, 7},
		{1, 3, 0}, {2, 3, 3}, {-2, 3, -3}, {30, 10, 30},
	} {
		assert.Equal(t, c.want, c.l.ToMark(c.mark), "%d to %d", c.l, c.mark)
	}
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-int64(Longest), int64(Longest)).Draw(t, "l"))
		mark := Length(rapid.Int64Range(1, int64(Foot)).Draw(t, "mark"))
		rounded := l.ToMark(mark)
		if rounded%mark != 0 || 2*(rounded-l).Abs() > mark || (-l).ToMark(mark) != -rounded {
			t.Fatalf("%d to %d is %d", l, mark, rounded)
		}
	})
}

// A chain of rounded widths adds up its errors; running values, each from the
// exact one, never pass half a mark (the two ways are those of ISO 129-1).
// Worked out on paper.
func TestRunningValuesDoNotAddUp(t *testing.T) {
	mm := func(values ...Length) (lengths []Length) {
		for _, v := range values {
			lengths = append(lengths, v*Millimetre)
		}
		return lengths
	}
	for _, c := range []struct {
		whole      Length
		parts      Length
		mark       Length
		width      Length
		chainError Length
		running    []Length
		worst      Number // of the running values
	}{
		{100 * Inch, 7, Inch / 16, inches("14 5/16"), inches("3/16"),
			[]Length{inches("14 5/16"), inches("28 9/16"), inches("42 7/8"), inches("57 1/8"), inches("71 7/16"), inches("85 11/16"), inches("100")},
			NumberFromFraction(3, 112).Mul(NumberFromInt(int64(Inch)))},
		{3650 * Millimetre, 7, Millimetre, 521 * Millimetre, -3 * Millimetre,
			mm(521, 1043, 1564, 2086, 2607, 3129, 3650),
			NumberFromFraction(3, 7).Mul(NumberFromInt(int64(Millimetre)))},
		{11 * 457_200_000, 11, Millimetre, 457 * Millimetre, -2_200_000,
			mm(457, 914, 1372, 1829, 2286), NumberFromInt(400_000)},
	} {
		width := (c.whole / c.parts).ToMark(c.mark)
		assert.Equal(t, c.width, width)
		assert.Equal(t, c.chainError, width*c.parts-c.whole)
		worst := Number{}
		for i := Length(1); i <= c.parts; i++ {
			exact := NumberFromFraction(int64(i*c.whole), int64(c.parts))
			mark := (i * c.whole / c.parts).ToMark(c.mark)
			if int(i) <= len(c.running) {
				assert.Equal(t, c.running[i-1], mark)
			}
			if off := NumberFromInt(int64(mark)).Sub(exact).Abs(); off.Cmp(worst) > 0 {
				worst = off
			}
		}
		assert.Zero(t, c.worst.Cmp(worst), "worst %v nm", worst.Float())
	}
	// 24 × 3 1/32 in: here a half goes away from zero, so the chain runs long;
	// to the even mark it would run 3/4 in short.
	assert.Equal(t, inches("3 1/16"), inches("3.03125").ToMark(Inch/16))
	assert.Equal(t, inches("6 1/16"), 2*inches("3.03125"))
}

func TestNotationAreaAndVolume(t *testing.T) {
	room := AreaOf(inches("17' 9 1/2"), inches("13' 4"))
	litre := Volume{NumberFromInt(1)}
	for _, c := range []struct{ got, want string }{
		{sixteenths.Area(room), "237.2 ft²"}, // 17 19/24 × 13 1/3 = 237 2/9 ft²
		{wholeMM.Area(room), "22.04 m²"},
		{plain16ths.Area(room), "237.2 ft2"},
		{sixteenths.Area(Area{}), "0.0 ft²"},
		{sixteenths.Area(Area{SquareFoot.Mul(MustNumber("0.01234"))}), "0.0123 ft²"},
		{sixteenths.Area(Area{SquareFoot.Mul(MustNumber("0.4"))}), "0.4 ft²"},
		{wholeMM.Area(Area{MustNumber("12345.675")}), "12\u202f345.68 m²"},
		{wholeMM.Area(Area{MustNumber("1234.565")}), "1234.56 m²"}, // half to even
		{sixteenths.Volume(litre.Times(NumberFromInt(5))), "1.32 gal"},
		{wholeMM.Volume(litre.Times(NumberFromInt(5))), "5.00 L"},
		{Notation{System: FeetInches, Imperial: true}.Volume(litre.Times(NumberFromInt(5))), "1.10 imp gal"},
		{wholeMM.Volume(litre.Times(MustNumber("0.012345"))), "12.3 mL"},
		{wholeMM.Volume(litre.Times(MustNumber("0.05"))), "50.0 mL"},
		{wholeMM.Volume(litre.Times(MustNumber("0.000004567"))), "under 0.1 mL"},
		{wholeMM.Volume(Volume{}), "0.00 L"},
		{wholeMM.Volume(litre.Times(MustNumber("0.1"))), "0.10 L"},
		{sixteenths.Volume(Volume{USGallon.Mul(MustNumber("0.25"))}), "0.25 gal"},
		{sixteenths.Volume(Volume{USGallon.Mul(MustNumber("0.125"))}), "16.0 fl oz"},
		{sixteenths.Volume(Volume{}), "0.00 gal"},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

func TestNotationNumber(t *testing.T) {
	n, plain := Notation{}, Notation{Plain: true}
	for _, c := range []struct{ got, want string }{
		{n.Number(MustNumber("0.125"), 2), "0.12"},
		{n.Number(MustNumber("0.375"), 2), "0.38"},
		{n.Number(MustNumber("-0.375"), 2), "−0.38"},
		{plain.Number(MustNumber("-0.375"), 2), "-0.38"},
		{n.Number(MustNumber("-0.001"), 2), "0.00"},
		{n.NumberTrimmed(MustNumber("-0.001"), 2), "0"},
		{n.NumberTrimmed(MustNumber("12.50"), 2), "12.5"},
		{n.NumberTrimmed(MustNumber("100"), 0), "100"},
		{n.Number(NumberFromInt(1234), 0), "1234"},
		{n.Number(NumberFromInt(1234567), 1), "1\u202f234\u202f567.0"},
		{plain.Number(NumberFromInt(1234567), 1), "1234567.0"},
		{n.Number(NumberFromInt(1250), -2), "1200"},
		{n.Number(NumberFromInt(1350), -2), "1400"},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

// Numbers written here can be typed in again.
func TestNumberIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.Int64Range(0, 99_999_999).Draw(t, "n")
		den := rapid.Int64Range(1, 1000).Draw(t, "den")
		q := NumberFromFraction(whole, den)
		for _, n := range []Notation{{}, {Plain: true}} {
			text := n.Number(q, 4)
			got, err := ParseNumber(text)
			if err != nil || !got.Equal(q.RoundHalfEven(4)) {
				t.Fatalf("%q is read as %v, %v", text, got, err)
			}
		}
	})
}

func TestLengthsOfAnySizeAreWritten(t *testing.T) {
	for _, l := range []Length{math.MinInt64, math.MaxInt64, math.MinInt64 + 1} {
		for _, n := range []Notation{sixteenths, plain16ths, wholeMM, halfMM, {}} {
			assert.NotEmpty(t, n.Exact(l))
			assert.NotContains(t, n.Exact(l), "--")
		}
	}
	assert.False(t, strings.Contains(wholeMM.Length(300*Metre), "\u202f"))
}

// A limit written on a tape mark lies on its safe side, a difference that is
// there is never written as none, and a notation without a mark rounds nothing.
func TestNotationLimits(t *testing.T) {
	n := Notation{System: FeetInches, InchMark: Inch / 16, Plain: true}
	assert.Equal(t, `1/16"`, n.AtLeast(Inch/64))
	assert.Equal(t, `0"`, n.AtMost(Inch/64))
	assert.Equal(t, `1/64"`, n.Amount(Inch/64))
	assert.Equal(t, `1/8"`, n.AtLeast(Inch/8))
	assert.Equal(t, `1/8"`, n.AtMost(Inch/8))
	unmarked := Notation{System: Metric, Plain: true}
	assert.Equal(t, "1.5 mm", unmarked.AtLeast(3*Millimetre/2))
	assert.Equal(t, "1.5 mm", unmarked.AtMost(3*Millimetre/2))
}

// Nothing is told finer than a 64th of an inch or a tenth of a millimetre, but
// never as nothing.
func TestFine(t *testing.T) {
	for _, c := range []struct {
		l                   Length
		metric, feet, plain string
	}{
		{0, "0 mm", "0″", "0 mm"},
		{27_085, "under 0.1 mm", "under 1⁄64″", "under 0.1 mm"},
		{49_900, "under 0.1 mm", "under 1⁄64″", "under 0.1 mm"},
		{50_000, "0.1 mm", "under 1⁄64″", "0.1 mm"},
		{198_300, "0.2 mm", "under 1⁄64″", "0.2 mm"},
		{198_438, "0.2 mm", "1⁄64″", "0.2 mm"},
		{1_774_879, "1.8 mm", "1⁄16″", "1.8 mm"},
		{Inch / 2, "12.7 mm", "½″", "12.7 mm"},
		{999_960_000, "1.000 m", "3′ 3⅜″", "1.000 m"},
		{4_201_190_308, "4.2012 m", "13′ 9 13⁄32″", "4.2012 m"},
		{-27_085, "under 0.1 mm", "under 1⁄64″", "under 0.1 mm"},
		{-1_774_879, "−1.8 mm", "−1⁄16″", "−1.8 mm"},
	} {
		assert.Equal(t, c.metric, Notation{System: Metric, MetricMark: Millimetre}.Fine(c.l))
		assert.Equal(t, c.feet, Notation{System: FeetInches, InchMark: Inch / 16}.Fine(c.l))
		assert.Equal(t, c.plain, Notation{System: Metric}.Fine(c.l), "without a mark")
	}
	// A finer mark is told as it is marked.
	assert.Equal(t, "0.02 mm", Notation{System: Metric, MetricMark: Millimetre / 50}.Fine(27_085))
	assert.Equal(t, "under 0.1 mm", Notation{System: Metric, MetricMark: Millimetre}.Amount(27_085))
	assert.True(t, Notation{System: FeetInches, InchMark: Inch / 16}.IsFine(Inch/64))
	for l, too := range map[Length]bool{0: false, 49_900: true, 50_000: false, -49_900: true} {
		assert.Equal(t, too, Notation{System: Metric, MetricMark: Millimetre}.IsTooFine(l), l)
	}
	assert.False(t, Notation{System: FeetInches, InchMark: Inch / 16}.IsFine(Inch/128))
}

// A volume is told as finely as it can be measured out.
func TestSmallVolumes(t *testing.T) {
	for _, c := range []struct{ floz, feet, metric string }{
		{"0.396", "0.40 fl oz", "11.7 mL"},
		{"0.5", "0.5 fl oz", "14.8 mL"},
		{"0.01", "0.01 fl oz", "0.3 mL"},
		{"0.009", "under 0.01 fl oz", "0.3 mL"},
		{"0.003", "under 0.01 fl oz", "under 0.1 mL"},
		{"0", "0.00 gal", "0.00 L"},
	} {
		v := VolumeOf(MustNumber(c.floz), UnitFluidOunce)
		assert.Equal(t, c.feet, Notation{System: FeetInches, InchMark: Inch / 16}.Volume(v))
		assert.Equal(t, c.metric, Notation{System: Metric, MetricMark: Millimetre}.Volume(v))
	}
	assert.Equal(t, "0.0031 gal", Notation{System: FeetInches, InchMark: Inch / 16}.VolumeInSum(VolumeOf(MustNumber("0.396"), UnitFluidOunce)))
	assert.Equal(t, "1.09 gal", Notation{System: FeetInches, InchMark: Inch / 16}.VolumeInSum(VolumeOf(MustNumber("1.09"), UnitGallon)))
}
