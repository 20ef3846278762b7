package safety

import (
	"regexp"
	"strings"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
)

// theOther names a word in the text that the country does not use.
func theOther(c Country, text string) string {
	small := strings.ToLower(text)
	for _, pair := range words.InUS() {
		word := pair[0]
		if c != US {
			word = pair[1]
		}
		// The plain search first: of hundreds of thousands few go on to the other.
		if strings.Contains(small, strings.ToLower(word)) && regexp.MustCompile(`(?i)\b`+regexp.QuoteMeta(word)+`s?\b`).MatchString(text) {
			return word
		}
	}
	return ""
}

func TestSays(t *testing.T) {
	assert.Equal(t, "breaker panel", US.Says("consumer unit"))
	for _, country := range []Country{UK, EU, Other, ""} {
		assert.Equal(t, "consumer unit", country.Says("consumer unit"), "%q", country)
	}
	assert.Equal(t, "platform", US.Says("platform"), "the same everywhere")
}

// Every rule speaks the words of the country it is told in, and of the words of
// the rules both names are heard.
func TestRulesSpeakTheCountrysWords(t *testing.T) {
	heard := map[string]bool{}
	for country, there := range map[Country]Country{US: UK, UK: US} {
		for _, c := range ruleCases() {
			for _, note := range notesAfter(all(c.fires, in(country))) {
				text := note.Words + " " + note.Working
				assert.Empty(t, theOther(country, text), "%s, %s: %s", country, note.ID, text)
				if own := theOther(there, text); own != "" {
					heard[own] = true
				}
			}
		}
	}
	for _, word := range []string{"an RCD", "a GFCI", "consumer unit", "breaker panel", "filler", "patching compound", "hop-up", "step-up bench"} {
		assert.True(t, heard[word], word)
	}
}
