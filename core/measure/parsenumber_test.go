package measure

import (
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseNumber(t *testing.T) {
	for text, want := range map[string]string{
		"0": "0", "12": "12", " 4.5 ": "4.5", "4,5": "4.5", ".5": "0.5", "0,125": "0.125", "62.00": "62",
		"1 200": "1200", "1\u202f234\u202f567.5": "1234567.5", "1,234.5": "1234.5", "1.234,5": "1234.5",
		"1,234,567": "1234567", "1.200": "1.2", "123456789012": "123456789012", "0.00000000001": "0.00000000001",
		"１２": "12", "007": "7",
	} {
		got, err := ParseNumber(text)
		require.NoError(t, err, text)
		assert.True(t, decimal.RequireFromString(want).Equal(got), "%q is read as %s", text, got)
	}
}

func TestParseNumberRefuses(t *testing.T) {
	for text, says := range map[string]string{
		"": "Nothing is typed", "  ": "Nothing is typed", "-1": "cannot be negative", "−1": "cannot be negative",
		"+1": "takes no sign", "1e3": "exponent", "1E400": "exponent", "0x10": "not a decimal number",
		"NaN": "not a number", "Inf": "not a number", "∞": "not a number", "1_000": "underscore",
		"1234567890123": "more than 12 digits", "0.123456789012": "more than 12 digits",
		"99999999999999999999999999": "more than 12 digits", "1,200": "1,200 could mean 1200 or 1.2",
		"1/0": "fraction", "1/2": "fraction", "½": "fraction", "10 %": "per cent", "$5": "currency", "€5": "currency",
		"ten": "The word ten", "12 in": "A unit", `12"`: "A unit", "1 20": "two numbers", "1.2.3": "two decimal marks",
		"12.": "after the decimal mark", ".": "after the decimal mark", "1-2": "Sums and ranges", "1+2": "Sums and ranges",
		"²": "Raised or lowered", "٣": "another script", "(5)": "The character (", strings.Repeat("1", 65): "longer than 64",
	} {
		got, err := ParseNumber(text)
		requireRefusal(t, text, err, says)
		assert.True(t, got.IsZero(), text)
		_, err = ParseCount(text)
		requireRefusal(t, text, err, says)
		_, err = ParseMoney(text)
		requireRefusal(t, text, err, says)
		_, err = ParseYear(text)
		requireRefusal(t, text, err, says)
	}
}

func TestParseCount(t *testing.T) {
	for text, want := range map[string]int{"5": 5, "0": 0, "10 000": 10000, "999999999": 999_999_999} {
		got, err := ParseCount(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
	}
	for text, says := range map[string]string{"5.5": "whole number", "5.0": "whole number", "1234567890": "more than 9 digits"} {
		_, err := ParseCount(text)
		requireRefusal(t, text, err, says)
	}
}

func TestParseAmount(t *testing.T) {
	for text, want := range map[string]Number{
		"1 1/2": NumberFromFraction(3, 2), "1/4": NumberFromFraction(1, 4), "2/3": NumberFromFraction(2, 3), "⅓": NumberFromFraction(1, 3),
		"1½": NumberFromFraction(3, 2), "1-1/2": NumberFromFraction(3, 2), "0": {}, "12": NumberFromInt(12), "0,25": NumberFromFraction(1, 4),
		"1.5": NumberFromFraction(3, 2), " 3 3/8 ": NumberFromFraction(27, 8), "1 000": NumberFromInt(1000), "5/16": NumberFromFraction(5, 16),
		"1 3/5": NumberFromFraction(8, 5),
	} {
		got, err := ParseAmount(text)
		require.NoError(t, err, text)
		assert.Zero(t, want.Cmp(got), "%q is read as %s", text, got.RoundHalfEven(6))
	}
	for text, says := range map[string]string{
		"": "Nothing is typed", "-1/2": "negative", "+1/2": "no sign", "3/2": "one or more", "1/0": "divided by zero", "1/100": "Nothing is measured",
		"1.5 1/2": "decimal and a fraction", "1/2/3": "one line", "1/2 cup": "", "15 8 1/2": "two numbers", "1 - 1/2": "", "1/": "below the line",
		"/2": "above the line", "1 1/2 + 2": "", "1/2 1/2": "", "a splash": "", "1,500": "",
	} {
		_, err := ParseAmount(text)
		requireRefusal(t, text, err, says)
	}
}

// What ParseNumber reads, ParseAmount reads the same, and nothing is read below
// nothing.
func FuzzParseAmount(f *testing.F) {
	for _, text := range []string{"1 1/2", "⅔", "1-1/2", "7-0-1/2", "1 000 1/2", "999999999999 63/64", "1/9999999999999999999"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseAmount(text)
		if err != nil {
			requireRefusal(t, text, err, "")
			return
		}
		if got.Sign() < 0 {
			t.Fatalf("%q is read below nothing", text)
		}
		if plain, err := ParseNumber(text); err == nil && got.Cmp(NumberFromDecimal(plain)) != 0 {
			t.Fatalf("%q is read as another number", text)
		}
	})
}

func TestParseMoney(t *testing.T) {
	for text, want := range map[string]string{"62.00": "62", "62,5": "62.5", "0.0125": "0.0125", "1,234.50": "1234.5"} {
		got, err := ParseMoney(text)
		require.NoError(t, err, text)
		assert.True(t, decimal.RequireFromString(want).Equal(got), "%q is read as %s", text, got)
	}
	// One mark before three digits: a thousand to some, a decimal to others. Point and
	// comma are asked about alike; what can only be one of the two is read.
	for _, text := range []string{"1.250", "1,250", "12.500", "999,999", " 1.250 "} {
		_, err := ParseMoney(text)
		requireRefusal(t, text, err, "could mean")
	}
	_, err := ParseMoney("1.250")
	assert.ErrorContains(t, err, "1.250 could mean 1250 or 1.25")
	for text, want := range map[string][]string{"1.250": {"1250", "1.25"}, "12.505": {"12505", "12.5050"}} {
		var asked *ParseError
		_, err := ParseMoney(text)
		require.ErrorAs(t, err, &asked)
		assert.Equal(t, want, asked.Answers, "one press each")
		for _, answer := range asked.Answers {
			_, err := ParseMoney(answer)
			assert.NoError(t, err, answer)
		}
	}
	for text, want := range map[string]string{"0.250": "0.25", "1250.125": "1250.125", "1.2505": "1.2505", "1.2500": "1.25", "1.25": "1.25", "1 250": "1250", "1,250.125": "1250.125"} {
		got, err := ParseMoney(text)
		require.NoError(t, err, text)
		assert.True(t, decimal.RequireFromString(want).Equal(got), "%q is read as %s", text, got)
	}
	_, err = ParseMoney("1.00001")
	requireRefusal(t, "1.00001", err, "more than 4 decimals")
}

func TestParseYear(t *testing.T) {
	got, err := ParseYear(" 1931 ")
	require.NoError(t, err)
	assert.Equal(t, 1931, got)
	for _, text := range []string{"31", "0931", "19310", "1931.5", "1978/"} {
		_, err := ParseYear(text)
		requireRefusal(t, text, err, "")
	}
}

// minuses are the ways of writing a minus that keyboards, word processors and
// other scripts' keyboards have: U+002D, U+2010, U+2011, U+2013, U+2212, U+FF0D.
var minuses = []string{"-", "\u2010", "\u2011", "–", "−", "\uff0d"}

// What may be below nothing and what may not agree on what a minus is.
func TestAMinusIsTheSameEverywhere(t *testing.T) {
	for _, minus := range minuses {
		for _, text := range []string{minus + "6.5", minus + " 6.5", "\u00a0" + minus + "6.5 "} {
			number, err := ParseSigned(text)
			require.NoError(t, err, "%q", text)
			assert.Equal(t, "-6.5", number.String(), "%q", text)
			offset, err := ParseOffset(text, UnitMillimetre)
			require.NoError(t, err, "%q", text)
			assert.Equal(t, Length(-6_500_000), offset, "%q", text)
			_, err = ParseNumber(text)
			requireRefusal(t, text, err, "cannot be negative")
			_, err = Parse(text, UnitMillimetre)
			requireRefusal(t, text, err, "cannot be negative")
			assert.True(t, IsBare(text), "%q", text)
		}
	}
	for _, text := range []string{"—6", "‒6", "~6", "6-", "-", "+", "--6", "-+6", "-½", "-6 mm"} {
		_, err := ParseSigned(text)
		requireRefusal(t, text, err, "")
	}
	plus, err := ParseSigned("+6.5")
	require.NoError(t, err)
	assert.Equal(t, "6.5", plus.String())
}

func FuzzParseSigned(f *testing.F) {
	for _, minus := range minuses {
		f.Add(minus + "12,5")
	}
	f.Add("+1 234.5")
	f.Add("-0")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseSigned(text)
		plain, plainErr := ParseNumber(text)
		if plainErr == nil && (err != nil || !plain.Equal(got)) {
			t.Fatalf("%q is %s alone and %s, %v with a sign allowed", text, plain, got, err)
		}
		if err != nil {
			requireRefusal(t, text, err, "")
			return
		}
		again, err := ParseSigned(got.String())
		if err != nil || !again.Equal(got) {
			t.Fatalf("%q is read as %s, and that as %s, %v", text, got, again, err)
		}
	})
}

func FuzzParseNumber(f *testing.F) {
	f.Add("1,234.5")
	f.Add("1 234,5")           // both signs of the continent
	f.Add("0.000000000001")    // the last decimal that is kept
	f.Add("1e400")             // golang/go issue 30990
	f.Add("\u202f1\u202f000 ") // spaces at the ends and inside
	f.Fuzz(func(t *testing.T, text string) {
		got, err := ParseNumber(text)
		if err != nil {
			requireRefusal(t, text, err, "")
			return
		}
		if got.IsNegative() {
			t.Fatalf("%q is read as %s", text, got)
		}
		again, err := ParseNumber(got.String())
		// 1.200 is read, but 1,200 never is: what is written has a point.
		if err != nil || !again.Equal(got) {
			t.Fatalf("%q is read as %s, and that as %s, %v", text, got, again, err)
		}
		if count, err := ParseCount(text); err == nil && !decimal.NewFromInt(int64(count)).Equal(got) {
			t.Fatalf("%q counts %d", text, count)
		}
	})
}

func TestParseSpan(t *testing.T) {
	for text, want := range map[string][2]string{
		"16": {"16", "16"}, "16 to 18": {"16", "18"}, "16–18": {"16", "18"}, "16-18": {"16", "18"}, " 8 — 10,5 ": {"8", "10.5"}, "0 to 0": {"0", "0"},
	} {
		from, to, err := ParseSpan(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, [2]string{from.String(), to.String()}, text)
	}
	for text, reason := range map[string]string{
		"18 to 16": "The range runs from the larger number to the smaller.",
		"16 to":    "", "to 16": "", "-16": "", "16 to 18 to 20": "", "1 to 2 h": "",
	} {
		_, _, err := ParseSpan(text)
		var refused *ParseError
		require.ErrorAs(t, err, &refused, text)
		assert.NotEmpty(t, refused.Do.String())
		if reason != "" {
			assert.Equal(t, reason, refused.Reason.String())
		}
	}
}

func FuzzParseSpan(f *testing.F) {
	for _, seed := range []string{"16", "16 to 18", "8-10", "–", "to", "1,5–2"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		from, to, err := ParseSpan(text)
		if err == nil && (to.LessThan(from) || from.IsNegative()) {
			t.Fatalf("%q reads %s to %s", text, from, to)
		}
	})
}
