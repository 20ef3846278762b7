package problem

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestNameAndQuote(t *testing.T) {
	for _, c := range []struct{ typed, name, quote string }{
		{"", "", "“”"},
		{"base coat", "base coat", "“base coat”"},
		{"Küche, Überzug", "Küche, Überzug", "“Küche, Überzug”"},
		{"two\nlines\tand\x00more", "two lines andmore", "“two lines andmore”"},
		{"\u202eevil\u202c", "evil", "“evil”"},
		{"\u2067a\u2069", "a", "“a”"},
		{"תקרה", "\u2068תקרה\u2069", "“\u2068תקרה\u2069”"},
		{"سقف 2", "\u2068سقف 2\u2069", "“\u2068سقف 2\u2069”"},
		{strings.Repeat("ä", 40), strings.Repeat("ä", 40), "“" + strings.Repeat("ä", 40) + "”"},
		{strings.Repeat("ä", 41), strings.Repeat("ä", 41), "“" + strings.Repeat("ä", 40) + "…”"},
		{strings.Repeat("x", 100), strings.Repeat("x", 100), "“" + strings.Repeat("x", 40) + "…”"},
		{strings.Repeat("x", 101), strings.Repeat("x", 100) + "…", "“" + strings.Repeat("x", 40) + "…”"},
	} {
		assert.Equal(t, c.name, Name(c.typed), "%q", c.typed)
		assert.Equal(t, c.quote, Quote(c.typed), "%q", c.typed)
	}
}

// Whatever is typed, what stands beside it keeps its direction and its line.
func TestNoNameTurnsTheSentenceRoundIt(t *testing.T) {
	for _, typed := range []string{"\u202e", "a\u2066b", "א\u202d", strings.Repeat("א\u2068", 5000), "\u2029", "\xff\xfe", "\u061cع"} {
		for _, told := range []string{Name(typed), Quote(typed)} {
			assert.Less(t, utf8.RuneCountInString(told), LongestName+6)
			inner := strings.TrimSuffix(strings.TrimPrefix(strings.Trim(told, "“”"), "\u2068"), "\u2069")
			assert.NotContains(t, inner, "\n")
			assert.Equal(t, -1, strings.IndexFunc(inner, isUnruly), "%q", told)
			assert.Equal(t, strings.Count(told, "\u2068"), strings.Count(told, "\u2069"))
		}
	}
}
