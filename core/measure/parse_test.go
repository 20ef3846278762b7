package measure

import (
	"math"
	"strings"
	"testing"
	"testing/quick"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// typed is one line of what people type. The values were worked out from the
// rules in two ways, by a reader and by a formula on paper: row 1 is
// 75.5 × 25.4 mm, row 25 is 63 × 396 875 nm, row 27 is 120.0625 × 25.4 mm. The inch is
// that of the NBS notice of 1959; decimal comma and groups of three are those
// of the SI Brochure, 9th edition, 5.4.4.
var typed = []struct {
	row  int
	text string
	bare Unit
	want Length
	says string // what the refusal says; empty: it is read
}{
	{1, "6'-3 1/2\"", UnitInch, 1_917_700_000, ""},
	{2, "6' 3 1/2\"", UnitInch, 1_917_700_000, ""},
	{3, "6'3-1/2\"", UnitInch, 1_917_700_000, ""},
	{4, "6 ft 3½ in", UnitInch, 1_917_700_000, ""},
	{5, "6ft3.5in", UnitInch, 1_917_700_000, ""},
	{6, "6 feet 3.5 inches", UnitInch, 1_917_700_000, ""},
	{7, "6′ 3½″", UnitInch, 1_917_700_000, ""},
	{8, "6’ 3 1/2”", UnitInch, 1_917_700_000, ""},
	{9, "6' 3 1/2''", UnitInch, 1_917_700_000, ""},
	{10, "6′3′′", UnitInch, 1_905_000_000, ""},
	{11, "6' 3", UnitInch, 1_905_000_000, ""},
	{12, "6'-0\"", UnitInch, 1_828_800_000, ""},
	{13, "0'-7/8\"", UnitInch, 22_225_000, ""},
	{14, "12'", UnitInch, 3_657_600_000, ""},
	{15, "12", UnitInch, 304_800_000, ""},
	{16, "5'11.5\"", UnitInch, 1_816_100_000, ""},
	{17, "5' 11,5\"", UnitInch, 1_816_100_000, ""},
	{18, "3-1/2", UnitInch, 88_900_000, ""},
	{19, "3 1/2", UnitInch, 88_900_000, ""},
	{20, "3½", UnitInch, 88_900_000, ""},
	{21, "3 ½", UnitInch, 88_900_000, ""},
	{22, "3¹⁄₂", UnitInch, 88_900_000, ""},
	{23, "3 1⁄2", UnitInch, 88_900_000, ""},
	{24, "7/8", UnitInch, 22_225_000, ""},
	{25, "63/64\"", UnitInch, 25_003_125, ""},
	{26, "1/64\"", UnitInch, 396_875, ""},
	{27, "10' 0 1/16\"", UnitInch, 3_049_587_500, ""},
	{28, "2 1/2 ft", UnitInch, 762_000_000, ""},
	{29, ".5\"", UnitInch, 12_700_000, ""},
	{30, "6' 3\"\ufeff", UnitInch, 1_905_000_000, ""},
	{31, "6' - 3 1/2\"", UnitInch, 1_917_700_000, ""},
	{32, "5‘ 11“", UnitInch, 1_803_400_000, ""},
	{33, "1,5", UnitInch, 38_100_000, ""},
	{34, "6 ' 3 \"", UnitInch, 1_905_000_000, ""},
	{35, "６’３”", UnitInch, 1_905_000_000, ""},
	{36, "1 / 2\"", UnitInch, 12_700_000, ""},
	{37, "1200", UnitMillimetre, 1_200_000_000, ""},
	{38, "1 200 mm", UnitMillimetre, 1_200_000_000, ""},
	{39, "1\u00a0200\u202fmm", UnitMillimetre, 1_200_000_000, ""},
	{40, "1\u2009200 mm", UnitMillimetre, 1_200_000_000, ""},
	{41, "１２００ｍｍ", UnitMillimetre, 1_200_000_000, ""},
	{42, "2.5m", UnitMillimetre, 2_500_000_000, ""},
	{43, "2,5 m", UnitMillimetre, 2_500_000_000, ""},
	{44, "2.500 m", UnitMillimetre, 2_500_000_000, ""},
	{45, "1m 20cm", UnitMillimetre, 1_200_000_000, ""},
	{46, "1,234.5 mm", UnitMillimetre, 1_234_500_000, ""},
	{47, "1.234,5 mm", UnitMillimetre, 1_234_500_000, ""},
	{48, "0.000001 mm", UnitMillimetre, 1, ""},
	{49, "0,125 m", UnitMillimetre, 125_000_000, ""},
	{50, "0", UnitMillimetre, 0, ""},
	{51, "1,5", UnitMillimetre, 1_500_000, ""},
	{52, "9,99 m", UnitMillimetre, 9_990_000_000, ""},
	{53, "2 m 5 cm", UnitMillimetre, 2_050_000_000, ""},
	{54, "3 m 50 mm", UnitMillimetre, 3_050_000_000, ""},
	{55, "⅓\"", UnitInch, 0, "No tape has a mark for ⅓"},
	{56, "17/16", UnitInch, 0, "17/16 is one or more"},
	{57, "3 17/16\"", UnitInch, 0, "17/16 is one or more"},
	{58, "1/0", UnitInch, 0, "divided by zero"},
	{59, "1//2", UnitInch, 0, "Nothing stands below the line"},
	{60, "3.5 1/2\"", UnitInch, 0, "a decimal and a fraction"},
	{61, "3 -1/2", UnitInch, 0, "could be a minus"},
	{62, "3 - 1/2", UnitInch, 0, "could be a minus"},
	{63, "6-3 1/2", UnitInch, 0, "could be a minus"},
	{64, "5 6", UnitInch, 0, "no unit between"},
	{65, "5' 13\"", UnitInch, 0, "must be below 12"},
	{66, "5.5' 3\"", UnitInch, 0, "Only the last part may have decimals"},
	{67, "5'11'", UnitInch, 0, "Both parts are in feet"},
	{68, "11\" 5'", UnitInch, 0, "smaller unit stands first"},
	{69, "'6\"", UnitInch, 0, "before any number"},
	{70, "-3 1/2\"", UnitInch, 0, "cannot be negative"},
	{71, "−3 1/2\"", UnitInch, 0, "cannot be negative"},
	{72, "3' 20cm", UnitInch, 0, "beside a metric unit"},
	{73, "", UnitInch, 0, "Nothing is typed"},
	{74, "   ", UnitInch, 0, "Nothing is typed"},
	{75, "\"", UnitInch, 0, "without a number"},
	{76, "~6'", UnitInch, 0, "“about”"},
	{77, "1e3", UnitInch, 0, "exponent"},
	{78, "٣", UnitInch, 0, "another script"},
	{79, "6'\u200b3\"", UnitInch, 0, "cannot be seen"},
	{80, "6'3\"1/2", UnitInch, 0, "after the inch mark"},
	{81, "3.1/2\"", UnitInch, 0, "a decimal and a fraction"},
	{82, "1/128\"", UnitInch, 0, "No tape has a mark for 1/128"},
	{83, "6-0", UnitInch, 0, "could be a minus"},
	{84, "1,200 mm", UnitMillimetre, 0, "1,200 could mean 1200 or 1.2"},
	{85, "1 20 mm", UnitMillimetre, 0, "no unit between"},
	{86, "1'200 mm", UnitMillimetre, 0, "beside a metric unit"},
	{87, "1m 20", UnitMillimetre, 0, "The number 20 has no unit"},
	{88, "2m50", UnitMillimetre, 0, "The number 50 has no unit"},
	{89, "1m 120cm", UnitMillimetre, 0, "reaches one m"},
	{90, "1.5m 20cm", UnitMillimetre, 0, "Only the last part may have decimals"},
	{91, "1/2 m", UnitMillimetre, 0, "A fraction does not go with a metric unit"},
	{92, "½", UnitMillimetre, 0, "A fraction does not go with a metric unit"},
	{93, "0.0000001 mm", UnitMillimetre, 0, "finer than a nanometre"},
	{94, "1e3 mm", UnitMillimetre, 0, "exponent"},
	{95, "12 km", UnitMillimetre, 0, "The word km"},
	{96, "999999999999999999999 mm", UnitMillimetre, 0, "more than 100 m"},
	{97, strings.Repeat("1", 70), UnitMillimetre, 0, "longer than 64"},
	{98, "100.001 m", UnitMillimetre, 0, "more than 100 m"},
	{99, "1.2.3 m", UnitMillimetre, 0, "two decimal marks"},
	{100, "12. mm", UnitMillimetre, 0, "Nothing stands after the decimal mark"},
	{101, "1_200 mm", UnitMillimetre, 0, "underscore"},
	{102, "1200 ㎜", UnitMillimetre, 0, "one character"},
	{103, "1,234,567 mm", UnitMillimetre, 0, "1,234,567 mm is more than 100 m"},
	{104, "0x10", UnitMillimetre, 0, "not a decimal number"},
	{105, "NaN", UnitMillimetre, 0, "not a number"},
	{106, "∞", UnitMillimetre, 0, "not a number"},
	{107, "1 m 20 mm 3", UnitMillimetre, 0, "The number 3 has no unit"},
	{108, "3,805 m", UnitMillimetre, 3_805_000_000, ""}, // 3805 m is more than is read
	{109, "3,805", UnitMetre, 3_805_000_000, ""},
}

func TestParseReadsWhatPeopleType(t *testing.T) {
	require.Len(t, typed, 109)
	for _, c := range typed {
		got, err := Parse(c.text, c.bare)
		if c.says == "" {
			if assert.NoErrorf(t, err, "row %d: Parse(%q)", c.row, c.text) {
				assert.Equalf(t, c.want, got, "row %d: Parse(%q)", c.row, c.text)
			}
			continue
		}
		assert.Zerof(t, got, "row %d: Parse(%q)", c.row, c.text)
		requireRefusal(t, c.text, err, c.says)
	}
}

// requireRefusal checks that err is a refusal a person can act on.
func requireRefusal(t testing.TB, text string, err error, says string) *ParseError {
	t.Helper()
	var refusal *ParseError
	require.ErrorAsf(t, err, &refusal, "%q", text)
	require.Contains(t, refusal.Reason.String(), says, "%q", text)
	require.Equal(t, text, refusal.Text)
	require.True(t, strings.HasSuffix(text, refusal.Rest), "rest %q of %q", refusal.Rest, text)
	for _, sentence := range []string{refusal.Reason.String(), refusal.Do.String()} {
		require.Regexp(t, `^[^ ].*[.]$`, sentence, "%q", text)
		require.NotContains(t, sentence, "\u202e", "%q", text)
	}
	require.Contains(t, refusal.Error(), refusal.Reason.String())
	return refusal
}

// Troubles that were reported about other programs, with the place of the
// report. The values are exact.
func TestParseReportedTroubles(t *testing.T) {
	for _, c := range []struct {
		source, text string
		bare         Unit
		want         Length
	}{
		{"ruby-units issue 276", `5' 3/4"`, UnitInch, 1_543_050_000},
		{"UnitsNet issue 72", `60 ft 1 in`, UnitInch, 18_313_400_000},
		{"numi issue 179", `4 1/2`, UnitInch, 114_300_000},
		{"vanilla-cookbook issue 192", `9' 2½"`, UnitInch, 2_806_700_000},
		{"obsidian-unit-converter issue 47", `1-1/2`, UnitInch, 38_100_000},
		{"obsidian-unit-converter issue 47", `1-1-1/2`, UnitInch, 342_900_000},
		{"obsidian-unit-converter issue 47", `7-0-1/2`, UnitInch, 2_146_300_000},
		{"obsidian-unit-converter issue 47", `85-1/2`, UnitInch, 2_171_700_000},
		{"Everything-Metric-Firefox issue 35", `1 ft 2 inches`, UnitInch, 355_600_000},
		{"333.fm issue 15", `9′ 4″`, UnitInch, 2_844_800_000},
		{"333.fm issue 15", `9’ 4”`, UnitInch, 2_844_800_000},
		{"instant-smart-quotes issue 16", `9' 4''`, UnitInch, 2_844_800_000},
		{"instant-smart-quotes issue 16", `9´4˝`, UnitInch, 2_844_800_000},
		{"adevinta-spain-components issue 289", `3,85 m`, UnitMillimetre, 3_850_000_000},
		{"enketo-express issue 695", `1.234,5 mm`, UnitMillimetre, 1_234_500_000},
		{"enketo-express issue 695", `1,234.5 mm`, UnitMillimetre, 1_234_500_000},
		{"numbro issue 765", "3\u00a0850 mm", UnitMillimetre, 3_850_000_000},
		{"numbro issue 765", "3\u202f850 mm", UnitMillimetre, 3_850_000_000},
	} {
		got, err := Parse(c.text, c.bare)
		require.NoError(t, err, "%s: Parse(%q)", c.source, c.text)
		assert.Equal(t, c.want, got, "%s: Parse(%q)", c.source, c.text)
	}
}

func TestParseReportedTroublesRefused(t *testing.T) {
	for _, c := range []struct{ source, text, says, do string }{
		{"numi issue 179", "41/2", "41/2 is one or more", "Write 4 1/2 or 20 1/2."},
		{"UnitsNet issue 1724", `1'000' 6"`, "Both parts are in feet", "Write ' after feet and \" after inches."},
		{"w3c/html issue 343", "1,234", "1,234 could mean 1234 or 1.234", "Write 1234 in or 1.234 in."},
		{"golang/go issue 30990", "nan", "not a number", "Write the figure in digits."},
		{"golang/go issue 30990", "Inf", "not a number", "Write the figure in digits."},
		{"golang/go issue 30990", "0x10", "not a decimal number", "Write the figure with the digits 0 to 9 only."},
		{"golang/go issue 30990", "1_0", "underscore", "Write the digits without it."},
		{"golang/go issue 30990", "1e400", "exponent", "Write all its digits."},
	} {
		_, err := Parse(c.text, UnitInch)
		refusal := requireRefusal(t, c.text, err, c.says)
		assert.Equal(t, c.do, refusal.Do.String(), "%s: Parse(%q)", c.source, c.text)
	}
}

func TestParseUnitsInEveryWriting(t *testing.T) {
	for unit, names := range map[Unit]string{
		UnitInch:       "in in. IN In. inch Inches ins ins. \" '' ″ ′′ ” ＂",
		UnitFoot:       "ft ft. FT foot feet Feet. ' ′ ’ ‘ ʹ ´ ` ＇",
		UnitMillimetre: "mm MM mm. millimetre millimetres millimeter millimeters",
		UnitCentimetre: "cm CM cm. centimetre centimetres centimeter centimeters",
		UnitMetre:      "m M m. metre metres meter meters",
	} {
		for _, name := range strings.Fields(names) {
			for _, text := range []string{"2" + name, "2 " + name, "2\t" + name + " "} {
				got, err := Parse(text, "")
				require.NoError(t, err, "%q", text)
				assert.Equal(t, 2*unit.Length(), got, "%q", text)
			}
		}
	}
}

// Of many lengths together as much as 10 km is read, and then a comma before
// three digits could mean thousands of metres too.
func TestParseTotals(t *testing.T) {
	for _, c := range []struct {
		text      string
		one, many Length
	}{
		{"100 m", Longest, Longest},
		{"100.001 m", -1, 100_001 * Millimetre},
		{"150 m", -1, 150 * Metre},
		{"10000 m", -1, LongestRun},
		{"10000.001 m", -1, -1},
		{"32000'", -1, 32_000 * Foot},
		{"3,805 m", 3805 * Millimetre, -1},
		{"60 yd", 54_864 * Millimetre, 54_864 * Millimetre}, // 1 yd = 0.9144 m: NIST Handbook 44, appendix C
		{"109 yd", 109 * Yard, 109 * Yard},
		{"110 yards", -1, 110 * Yard},
		{"1 1/2 yd", 54 * Inch, 54 * Inch},
		{"2 yd 1 ft", 7 * Foot, 7 * Foot},
		{"2 yd 1", -1, -1},
		{"2 yd 3 ft", -1, -1},
		{"1 m 1 yd", -1, -1},
	} {
		for _, r := range []struct {
			reader Reader
			want   Length
		}{{Reader{Bare: UnitInch}, c.one}, {Reader{Bare: UnitInch, Total: true}, c.many}} {
			got, err := r.reader.Parse(c.text)
			if r.want < 0 {
				assert.Error(t, err, c.text)
				continue
			}
			require.NoError(t, err, c.text)
			assert.Equal(t, r.want, got, c.text)
		}
	}
	_, err := Reader{Total: true}.Parse("11 km")
	assert.Error(t, err)
	_, err = Reader{Bare: UnitMetre, Total: true}.Parse("11000")
	assert.ErrorContains(t, err, "10 km (6.2 miles)")
}

// What the table of typed lines leaves open.
func TestParseEdges(t *testing.T) {
	for _, c := range []struct {
		text string
		bare Unit
		want Length
	}{
		{"100 m", UnitInch, Longest},
		{"100000", UnitMillimetre, Longest},
		{"100 000 mm", UnitInch, Longest},
		{"1 200 3/4", UnitInch, 30_499_050_000}, // 1200.75 in
		{"1 100/128", UnitInch, -1},             // three digits above a fraction line are no thousands
		{"1  200 mm", UnitInch, -1},             // two spaces are no group
		{"0 200 mm", UnitInch, -1},
		{"1 234,567 mm", UnitInch, 1_234_567_000}, // spaces group, so the comma is decimal
		{"1 234 567,8", UnitMillimetre, -1},
		{"12,34.5 mm", UnitInch, -1},
		{"1,2.3,4 mm", UnitInch, -1},
		{"1.234.567,8 mm", UnitInch, -1}, // read, and over the limit
		{"1.234.567 mm", UnitInch, -1},
		{"1,234,56 mm", UnitInch, -1},
		{"0,500 m", UnitInch, 500_000_000},
		{",5 m", UnitInch, 500_000_000},
		{"0.015625 in", UnitMillimetre, 396_875},
		{"0.00390625 ft", UnitMillimetre, 1_190_625}, // 1/256 ft = 3/64 in
		{"3.33333 in", UnitInch, 84_666_582},
		{"3.333333 in", UnitInch, -1},
		{"0.00000000000000000000001 m", UnitInch, -1},
		{"1.50000000000000000000000 m", UnitInch, 1_500_000_000},
		{"7-0-½", UnitMillimetre, 2_146_300_000}, // the form says feet and inches
		{`7-0-1/2"`, UnitFoot, 2_146_300_000},
		{"15 8 1/2", UnitInch, 4_787_900_000}, // 188 1/2 in: three parts can only be feet, inches and a fraction
		{"15 8½", UnitFoot, 4_787_900_000},
		{"15 8 1/2", UnitMillimetre, -1},
		{"15 13 1/2", UnitInch, -1},
		{"15.5 8 1/2", UnitInch, -1},
		{"3 15 8 1/2", UnitInch, -1},
		{"7-0-1/2 ft", UnitFoot, -1},
		{"7-12-1/2", UnitInch, -1},
		{"7.5-0-1/2", UnitInch, -1},
		{"7-0-1", UnitInch, -1},
		{"5' 7-0-1/2", UnitInch, -1},
		{"6'-3-1/2", UnitInch, 1_917_700_000},
		{"6'-", UnitInch, -1},
		{"½4", UnitInch, -1},
		{"⅙4", UnitInch, -1},
		{"½½", UnitInch, -1},
		{"1/½", UnitInch, -1},
		{"1/2/4", UnitInch, -1},
		{"3¹", UnitInch, -1},
		{"³", UnitInch, -1},
		{"₁/2", UnitInch, -1},
		{"1/²", UnitInch, -1},
		{"¹/₂", UnitInch, 12_700_000},
		{"0/2", UnitInch, 0},
		{"6ft.3in", UnitInch, -1}, // six feet three, or a decimal?
		{"6 ft. 3 in.", UnitInch, 1_905_000_000},
		{"6 x 3", UnitInch, -1},
		{"6+3", UnitInch, -1},
		{"+6", UnitInch, -1},
		{"1 m 5 cm 3 mm", UnitInch, 1_053_000_000},
		{"1 m 5 cm 10 mm", UnitInch, -1},
		{"5 cm 1 m", UnitInch, -1},
		{"1 m - 5 cm", UnitInch, -1},
		{"5 1/2' 3\"", UnitInch, -1},
		{"5.0' 3\"", UnitInch, 1_600_200_000},
		{"5 1/2", UnitFoot, 1_676_400_000},
		{"12", "", -1},
		{"12", "rod", -1},
		{"12\xff", UnitInch, -1},
		{"-", UnitInch, -1},
		{"/", UnitInch, -1},
		{"/2", UnitInch, -1},
		{"1/", UnitInch, -1},
		{".", UnitInch, -1},
		{"9999999999999999/2", UnitInch, -1},
		{"9999999999999999 3/2", UnitInch, -1},
		{"12 €", UnitInch, -1},
		{"12 %", UnitInch, -1},
		{"12\n", UnitInch, 304_800_000},
	} {
		got, err := Parse(c.text, c.bare)
		if c.want < 0 {
			requireRefusal(t, c.text, err, "")
			assert.Zero(t, got, "Parse(%q)", c.text)
			continue
		}
		require.NoError(t, err, "Parse(%q)", c.text)
		assert.Equal(t, c.want, got, "Parse(%q)", c.text)
	}
}

// The fraction characters of Unicode: seven are on a tape, the others are not.
func TestParseFractionCharacters(t *testing.T) {
	for text, want := range map[string]Length{
		"½": Inch / 2, "¼": Inch / 4, "¾": 3 * Inch / 4, "⅛": Inch / 8, "⅜": 3 * Inch / 8, "⅝": 5 * Inch / 8, "⅞": 7 * Inch / 8,
	} {
		got, err := Parse("2"+text+"\"", "")
		require.NoError(t, err, text)
		assert.Equal(t, 2*Inch+want, got, text)
	}
	for _, c := range "⅓⅔⅕⅖⅗⅘⅙⅚⅐⅑⅒" {
		_, err := Parse(string(c), UnitInch)
		requireRefusal(t, string(c), err, "No tape has a mark for "+string(c))
	}
}

func TestParseSaysWhatStandsInTheWay(t *testing.T) {
	for text, says := range map[string]string{
		"1/2-1":        "could be a minus",
		"1/2/4":        "one line only",
		"1/2 3":        "follows the fraction",
		"1/2.5":        "a decimal and a fraction",
		"6+3":          "Sums",
		"6' +3":        "Sums",
		"6 by 3":       "more than one length",
		"e":            "exponent",
		"3 cm 4 cm":    "The same unit stands twice: cm",
		"5' 7-0-1/2":   "Feet are written twice",
		"5.5' 7-0-1/2": "Feet are written twice",
		"328' 12\"":    "must be below 12",
		"-":            "cannot be negative",
		",,1":          "do not part the digits in threes",
		"1,.5":         "do not part the digits in threes",
		"６⁰":           "Two numbers",
	} {
		_, err := Parse(text, UnitInch)
		requireRefusal(t, text, err, says)
	}
}

func TestParseOffers(t *testing.T) {
	for _, c := range []struct{ text, do string }{
		{"17/16", "Write 1 7/16 or 1 1/16."},
		{"115/16", "Write 1 15/16 or 7 3/16."},
		{"10/4", "Write 2 1/2."},
		{"4/4", "Write 1."},
		{`3 17/16"`, "Write 4 1/16."},
		{"1,200 mm", "Write 1200 mm or 1.2 mm."},
		{"1,000 cm", "Write 1000 cm or 1 cm."},
		{"１，２００", "Write 1200 in or 1.2 in."},
		{`5' 13"`, `If you mean their sum, write 6' 1".`},
		{"1 m 120 cm", "If you mean their sum, write 2200 mm."},
	} {
		_, err := Parse(c.text, UnitInch)
		assert.Equal(t, c.do, requireRefusal(t, c.text, err, "").Do.String(), "%q", c.text)
	}
}

func TestParseOffset(t *testing.T) {
	for _, c := range []struct {
		text string
		want Length
	}{
		{`-3 1/2"`, -88_900_000},
		{`-11'2"`, -3_403_600_000}, // UnitsNet issue 673: the sign covers the whole
		{"\u22126 mm", -6_000_000}, // budget-tracker issue 572, eufemia issue 9352
		{"–6 mm", -6_000_000},
		{"- 6 mm", -6_000_000},
		{"+6 mm", 6_000_000},
		{"6 mm", 6_000_000},
		{"-0", 0},
	} {
		got, err := ParseOffset(c.text, UnitInch)
		require.NoError(t, err, "%q", c.text)
		assert.Equal(t, c.want, got, "%q", c.text)
	}
	for _, text := range []string{"--6", "6-", "-", "-101 m", "5 -6"} {
		got, err := ParseOffset(text, UnitInch)
		requireRefusal(t, text, err, "")
		assert.Zero(t, got, text)
	}
}

// A person who writes decimals with a comma has no doubt about 1,200.
func TestReaderDecimalComma(t *testing.T) {
	r := Reader{Bare: UnitMillimetre, DecimalComma: true}
	for text, want := range map[string]Length{
		"1,200 mm": 1_200_000, "1,200 m": 1_200_000_000, "1,2": 1_200_000,
		"1.200 m": 1_200_000_000, "1.234,5": 1_234_500_000,
	} {
		got, err := r.Parse(text)
		require.NoError(t, err, "%q", text)
		assert.Equal(t, want, got, "%q", text)
	}
	_, err := r.Parse("1,234,567 mm")
	requireRefusal(t, "1,234,567 mm", err, "two decimal marks")
	got, err := r.ParseOffset("-1,200 m")
	require.NoError(t, err)
	assert.Equal(t, Length(-1_200_000_000), got)
}

func TestParseMark(t *testing.T) {
	for text, want := range map[string]Length{
		"1/16 in": 1_587_500, "1/64 in": 396_875, "1 mm": Millimetre, "0.5 mm": 500_000, "5 mm": 5 * Millimetre,
	} {
		got, err := ParseMark(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	for _, text := range []string{"", "1", "0 mm", "-1 mm", "1/3 in"} {
		_, err := ParseMark(text)
		requireRefusal(t, text, err, "")
	}
}

func TestIsBare(t *testing.T) {
	for _, text := range []string{"12", " 12 ", "3 1/2", "3-1/2", "½", "1.5", "1,5", "1 200", "-6", "99999999"} {
		assert.True(t, IsBare(text), text)
	}
	for _, text := range []string{"", "12 in", `6' 3`, `"`, "7-0-1/2", "5 6", "abc", "1e3", "1,200", "6-3", "-", "12 mm", "41/2"} {
		assert.False(t, IsBare(text), text)
	}
}

// A bare text with the unit written behind it means the same.
func TestBareWithItsUnit(t *testing.T) {
	for _, text := range []string{"12", "3 1/2", "½", "1.5", "1,5", "3-1/2"} {
		for _, unit := range []Unit{UnitInch, UnitFoot, UnitMillimetre, UnitCentimetre, UnitMetre} {
			want, err := Parse(text, unit)
			if err != nil {
				continue // a fraction of a millimetre
			}
			require.True(t, IsBare(text))
			got, err := Parse(text+" "+string(unit), UnitMetre)
			require.NoError(t, err)
			assert.Equal(t, want, got, "%q in %s", text, unit)
		}
	}
}

func TestParseDoesNotAllocate(t *testing.T) {
	for _, text := range []string{`15' 8 1/2"`, "4.78 m", "1 200 mm"} {
		assert.Zero(t, testing.AllocsPerRun(20, func() { _, _ = Parse(text, UnitInch) }), text)
	}
}

var notations = []Notation{
	{System: FeetInches}, {System: FeetInches, Plain: true}, {System: Metric}, {System: Metric, Plain: true},
}

// What is written exactly is read as the same length, in every notation.
func TestExactIsReadBack(t *testing.T) {
	check := func(l Length) bool {
		for _, n := range notations {
			got, err := ParseOffset(n.Exact(l), "")
			if err != nil || got != l {
				t.Errorf("ParseOffset(%q) = %d, %v; want %d", n.Exact(l), got, err, l)
				return false
			}
		}
		got, err := ParseOffset(l.String(), "")
		return err == nil && got == l
	}
	require.NoError(t, quick.Check(func(n int64) bool { return check(Length(n) % (Longest + 1)) }, nil))
	require.NoError(t, quick.Check(func(n int64) bool { l := Length(n) % (Longest + 1); return check(l - l%tick) }, nil))
	for _, l := range []Length{0, 1, -1, Longest, -Longest, Foot, -Foot, tick, Inch - tick} {
		assert.True(t, check(l), l)
	}
}

// What is written rounded is read as the rounded length: what is on the paper
// can be typed in again.
func TestRoundedIsReadBack(t *testing.T) {
	marks := []Length{Inch / 4, Inch / 8, Inch / 16, Inch / 32, Inch / 64}
	metricMarks := []Length{5 * Millimetre, Millimetre, Millimetre / 2}
	rapid.Check(t, func(t *rapid.T) {
		l := Length(rapid.Int64Range(-int64(Longest-Inch), int64(Longest-Inch)).Draw(t, "l"))
		n := Notation{
			System:     rapid.SampledFrom([]System{FeetInches, Metric}).Draw(t, "system"),
			InchMark:   rapid.SampledFrom(marks).Draw(t, "inch mark"),
			MetricMark: rapid.SampledFrom(metricMarks).Draw(t, "metric mark"),
			Plain:      rapid.Bool().Draw(t, "plain"),
		}
		got, err := ParseOffset(n.Length(l), "")
		if err != nil || got != l.ToMark(n.Mark()) || got-l != n.Hides(l) {
			t.Fatalf("%+v: %q is read as %d, %v; want %d", n, n.Length(l), got, err, l.ToMark(n.Mark()))
		}
		// A ten-thousandth of a mark short of a half counts as the half.
		if half := n.Mark()/2 + n.Mark()/10_000; n.Hides(l).Abs() > half {
			t.Fatalf("%d hides %d, more than half of %d", l, n.Hides(l), n.Mark())
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, c := range typed {
		f.Add(c.text, string(c.bare), false)
	}
	f.Add("-1 m - 5 cm", "", true) // a sign, and a dash that is none
	f.Add("⅙4", "in", false)       // a fraction character that digits could grow on
	f.Add("0\n0", "in", false)     // a line end, which must not reach the sentence
	f.Add("6\u202e3", "in", false) // a mark that turns writing round
	f.Add("7-0-1/2 200", "ft", true)
	f.Add("1 234,567\u202f890 mm", "mm", true)
	f.Add("99999999999999999999/99999999999999999999", "in", true)
	f.Fuzz(func(t *testing.T, text, bare string, comma bool) {
		r := Reader{Bare: Unit(bare), DecimalComma: comma}
		IsBare(text)
		offset, offsetErr := r.ParseOffset(text)
		got, err := r.Parse(text)
		if err != nil {
			requireRefusal(t, text, err, "")
		} else if got < 0 || offsetErr != nil || offset != got {
			t.Fatalf("Parse(%q) = %d, ParseOffset %d, %v", text, got, offset, offsetErr)
		}
		if offsetErr != nil {
			requireRefusal(t, text, offsetErr, "")
			return
		}
		if offset.Abs() > Longest {
			t.Fatalf("Parse(%q) = %d", text, got)
		}
		for _, n := range notations {
			again, err := ParseOffset(n.Exact(offset), "")
			if err != nil || again != offset {
				t.Fatalf("%q is %d, written %q, read %d, %v", text, offset, n.Exact(offset), again, err)
			}
		}
	})
}

// Half is towards zero and the rest is never lost.
func TestHalf(t *testing.T) {
	for _, l := range []Length{0, 1, -1, 3, -3, Foot, math.MaxInt64, math.MinInt64 + 1} {
		assert.LessOrEqual(t, l.Half().Abs(), (l - l.Half()).Abs())
		assert.Equal(t, l, l.Half()+(l-l.Half()))
	}
}
