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
var notRead = map[string]bool{"id": true, "kind": true, "at": true, "source": true, "svg": true, "curve": true, "chart": true, "figures": true, "also": true, "rules": true}

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

func inText(word string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(word) + `s?\b`)
}

// A plan of the US has no word that is the UK's only, nor the reverse, but those
// that were typed.
func TestASheetSpeaksItsCountry(t *testing.T) {
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
				own, other := inText(us), inText(uk)
				if country == "UK" {
					own, other = other, own
				}
				if other.MatchString(typed) {
					continue
				}
				assert.NotRegexp(t, other, said, "%s in the %s", name, country)
				heard += len(own.FindAllString(said, -1))
			}
		}
	}
	assert.Greater(t, heard, 20)
}

// Rows of panels have the letters from A. No text that people read calls a
// corner or a wall by them.
func TestCornersAreNotCalledAsRows(t *testing.T) {
	asRow := regexp.MustCompile(`\b(?:[Ww]alls?|[Ss]ides?|towards|along|off|on|[Dd]iagonals?) (?:AB|BC|CD|DA|AC|BD)\b|\b[Cc]orners? [A-D]\b`)
	for _, name := range golden {
		var answer any
		require.NoError(t, json.Unmarshal(core.Compute(planNamed(t, name)), &answer))
		for _, text := range wordsOf(answer) {
			assert.NotRegexp(t, asRow, text, name)
		}
		for _, d := range sheetNamed(t, name).Drawings {
			assert.NotRegexp(t, `<text[^>]*>(?:[^<]* )?(?:AB|BC|CD|DA)\b`, d.SVG, "%s %s", name, d.ID)
		}
	}
	var l any
	require.NoError(t, json.Unmarshal(core.Compute(planNamed(t, "l-shape")), &l))
	assert.Contains(t, strings.Join(wordsOf(l), "\n"), "wall UW")
}
