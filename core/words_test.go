package core_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/safety"
)

// notRead are the fields of a sheet that hold no words of ours: ids, kinds and
// drawings; and sources, which name a rule or a practice as it is called.
var notRead = map[string]bool{"id": true, "kind": true, "at": true, "source": true, "svg": true, "figures": true, "also": true, "rules": true}

// wordsOf are the texts of a sheet that people read.
func wordsOf(value any) []string {
	var list []string
	switch v := value.(type) {
	case string:
		list = append(list, v)
	case []any:
		for _, entry := range v {
			list = append(list, wordsOf(entry)...)
		}
	case map[string]any:
		for key, entry := range v {
			if !notRead[key] {
				list = append(list, wordsOf(entry)...)
			}
		}
	}
	return list
}

// pairs are the words of the UK that the US has another for, and that one.
func pairs() map[string]string {
	of := map[string]string{"RCD": strings.TrimPrefix(safety.US.Says("an RCD"), "a ")}
	for _, uk := range []string{"consumer unit", "cornice", "filler", "hire", "hop-up"} {
		of[uk] = safety.US.Says(uk)
	}
	return of
}

// timesIn is how often a word, or more of what it names, stands in a text.
func timesIn(text, word string) int {
	if !strings.Contains(strings.ToLower(text), strings.ToLower(word)) {
		return 0
	}
	return len(regexp.MustCompile(`(?i)\b`+regexp.QuoteMeta(word)+`s?\b`).FindAllString(text, -1))
}

// A plan of the US has no word that is the UK's only, nor the reverse, but those
// that were typed.
func TestASheetSpeaksItsCountry(t *testing.T) {
	t.Parallel()
	heard := 0
	for _, name := range golden {
		plan := tree(t, planNamed(t, name))
		typed := strings.Join(wordsOf(plan), " ")
		for _, country := range []string{"US", "UK"} {
			place, ok := plan["place"].(map[string]any)
			if !ok {
				place = map[string]any{}
				plan["place"] = place
			}
			place["rules"] = country
			text, err := json.Marshal(plan)
			require.NoError(t, err)
			var answer any
			require.NoError(t, json.Unmarshal(core.Compute(text), &answer))
			said := strings.Join(wordsOf(answer), "\n")
			for uk, us := range pairs() {
				require.NotEqual(t, uk, us)
				own, other := us, uk
				if country == "UK" {
					own, other = other, own
				}
				if timesIn(typed, other) > 0 {
					continue
				}
				assert.Zero(t, timesIn(said, other), "%s says %q in the %s", name, other, country)
				heard += timesIn(said, own)
			}
		}
	}
	assert.Greater(t, heard, 20)
}

// Rows of panels have the letters from A. No text that people read calls a
// corner or a wall by them.
func TestCornersAreNotCalledAsRows(t *testing.T) {
	t.Parallel()
	asRow := regexp.MustCompile(`\b(?:[Ww]alls?|[Ss]ides?|towards|along|off|on|[Dd]iagonals?) (?:AB|BC|CD|DA|AC|BD)\b|\b[Cc]orners? [A-D]\b`)
	onDrawing := regexp.MustCompile(`<text[^>]*>(?:[^<]* )?(?:AB|BC|CD|DA)\b`)
	for _, name := range golden {
		s := sheetNamed(t, name)
		var answer any
		require.NoError(t, json.Unmarshal(s.JSON(), &answer))
		for _, text := range wordsOf(answer) {
			assert.False(t, asRow.MatchString(text), "%s: %s", name, text)
		}
		for _, d := range s.Drawings {
			assert.Empty(t, onDrawing.FindString(d.SVG), "%s %s", name, d.ID)
		}
	}
	var l any
	require.NoError(t, json.Unmarshal(core.Compute(planNamed(t, "l-shape")), &l))
	assert.Contains(t, strings.Join(wordsOf(l), "\n"), "wall UW")
}
