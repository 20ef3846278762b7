package core_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"ceilingwright/core/problem"
	"ceilingwright/core/safety"
	"ceilingwright/core/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

type blanks map[string]any

// stopCase is a stop with what is typed to have it told, and what the painter
// types, once it is so, to have it go. A deck of 2.60 m in a room of 4.47 m.
type stopCase struct {
	id            string
	typed, clears blanks
}

var (
	highRoom  = "14' 8\""
	oldRoom   = blanks{"/place/surface": "textured", "/place/built": "1960", "/place/pullTest": "none"}
	solvented = blanks{"/finish/steps/7/binder": "solvent", "/finish/steps/7/voc": "700", "/finish/steps/7/vocUnit": "g/L", "/finish/steps/7/spread": "100"}
)

func with(some blanks, more blanks) blanks {
	all := blanks{}
	for _, b := range []blanks{some, more} {
		for at, v := range b {
			all[at] = v
		}
	}
	return all
}

func stopCases() []stopCase {
	return []stopCase{
		{"lead-found", blanks{"/place/leadTest": "found"}, blanks{"/place/leadPlan": "yes"}},
		{"lead-certified-firm", blanks{}, blanks{"/place/leadTest": "found-free"}},
		{"lead-certified-firm", blanks{}, blanks{"/place/leadFirm": "yes"}},
		{"lead-certified-firm", blanks{}, blanks{"/place/use": "public"}},
		{"lead-certified-firm", blanks{"/place/leadTest": "found", "/place/leadPlan": "yes"}, blanks{"/place/leadFirm": "yes"}},
		{"patch-test-old-paint", blanks{"/place/pullTest": "none"}, blanks{"/place/pullTest": "held"}},
		{"pull-test-first", blanks{"/place/pullTest": "none", "/place/built": "2012"}, blanks{"/place/pullTest": "held"}},
		{"pull-test-after-laboratory", with(oldRoom, blanks{"/place/built": "1983"}), blanks{"/place/asbestosTest": "found-free"}},
		{"paint-lifted", blanks{"/place/pullTest": "lifted"}, blanks{"/place/pullTest": "held"}},
		{"asbestos-found", blanks{"/place/asbestosTest": "found"}, blanks{"/place/asbestosTest": "gone"}},
		{"asbestos-to-1980", oldRoom, blanks{"/place/asbestosTest": "found-free"}},
		{"asbestos-to-1980", with(oldRoom, blanks{"/place/surface": "smoothed"}), blanks{"/place/surface": "smooth"}},
		{"asbestos-before-2000", with(oldRoom, blanks{"/place/rules": "UK"}), blanks{"/place/asbestosTest": "found-free"}},
		{"asbestos-before-2005", with(oldRoom, blanks{"/place/rules": "EU", "/place/built": "2004"}), blanks{"/place/asbestosTest": "found-free"}},
		{"isolate-the-light", blanks{}, blanks{"/place/isolated": "yes"}},
		{"sprinklers-stay-bare", blanks{"/place/sprinklers": "yes"}, blanks{"/place/sprinklers": "agreed"}},
		{"sprinklers-stay-bare", blanks{"/room/obstructions": []any{map[string]any{"kind": "sprinkler", "at": "middle"}}}, blanks{"/place/sprinklers": "agreed"}},

		{"ladder-both-hands", blanks{"/access/by": "ladder"}, blanks{"/access/by": "platform"}},
		{"ladder-three-steps-down", blanks{"/place/rules": "EU", "/access/by": "ladder", "/access/ladderHeight": "3'"}, blanks{"/access/ladderHeight": "10'"}},
		{"ladder-two-steps-down", blanks{"/access/by": "ladder", "/access/ladderHeight": "3'"}, blanks{"/access/ladderHeight": "10'"}},
		{"ladder-overloaded", blanks{"/access/by": "ladder", "/access/rated": "100"}, blanks{"/access/rated": "150"}},
		{"ladder-near-live-parts", blanks{"/access/by": "ladder"}, blanks{"/place/isolated": "yes"}},
		{"deck-overloaded", blanks{"/access/rated": "100"}, blanks{"/access/rated": "300"}},
		{"floor-overloaded", blanks{"/place/floorLoad": "50", "/access/mass": "200", "/access/footLength": "6'", "/access/footWidth": "4'"}, blanks{"/place/floorLoad": "400"}},
		{"rails-beside-a-drop", blanks{"/place/drop": "yes", "/access/rails": "no"}, blanks{"/access/rails": "yes"}},
		{"rails-above-10-ft", blanks{"/room/height": "17'", "/access/rails": ""}, blanks{"/access/rails": "yes"}},
		{"rails-from-2-m", blanks{"/place/rules": "UK", "/room/height": highRoom, "/access/rails": ""}, blanks{"/access/rails": "yes"}},
		{"base-too-narrow", blanks{"/room/height": highRoom, "/access/base": "20 in"}, blanks{"/access/base": "6'"}},
		{"base-too-narrow", blanks{"/room/height": highRoom, "/access/base": "20 in"}, blanks{"/access/tied": "yes"}},
		{"base-check-table", blanks{"/place/rules": "UK", "/room/height": highRoom, "/access/base": "0.8 m"}, blanks{"/access/baseChecked": "yes"}},
		{"wheels-not-locked", blanks{"/access/wheels": "no"}, blanks{"/access/wheels": "yes"}},
		{"get-down-before-it-moves", blanks{"/place/rules": "UK", "/access/rides": "yes"}, blanks{"/access/rides": "no"}},
		{"riding-too-tall", blanks{"/room/height": highRoom, "/access/rides": "yes"}, blanks{"/access/rides": "no"}},
		{"too-high-for-a-tower", blanks{"/place/rules": "EU", "/room/height": "15 m"}, blanks{"/access/kind": "scaffold"}},
		{"no-way-up", blanks{"/access/wayUp": "no"}, blanks{"/access/wayUp": "yes"}},

		{"no-way-out-for-vapour", with(solvented, blanks{"/air/opened": ""}), blanks{"/air/opened": "8"}},
		{"air-over-limit", with(solvented, blanks{"/air/opened": "1"}), blanks{"/air/opened": "200"}},
		{"air-over-short-limit", with(solvented, blanks{"/air/opened": "1", "/air/shortTerm": "500"}), blanks{"/air/opened": "300"}},
		{"vapour-may-burn", with(solvented, blanks{"/finish/steps/7/spread": "20", "/air/opened": "0.5"}), blanks{"/finish/steps/7/flash": "70", "/finish/steps/7/flashUnit": "C"}},
		{"flames-burning", with(solvented, blanks{"/place/flames": "yes"}), blanks{"/place/flames": "no"}},
		{"two-pack-sprayed", blanks{"/finish/steps/4/category": "two-pack", "/finish/steps/4/method": "spray"}, blanks{"/finish/steps/4/method": "brush"}},
	}
}

// typedIn is the sheet of a job with these blanks typed, whether the plan has them
// yet or not.
func typedIn(t *testing.T, typed blanks) sheet.Sheet {
	t.Helper()
	var tree any
	require.NoError(t, json.Unmarshal(planNamed(t, "days"), &tree))
	for at, value := range typed {
		steps := strings.Split(strings.TrimPrefix(at, "/"), "/")
		node := tree
		for _, step := range steps[:len(steps)-1] {
			node = child(t, node, step)
		}
		node.(map[string]any)[steps[len(steps)-1]] = value
	}
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return sheetOf(t, text)
}

var step = regexp.MustCompile(`^/finish/steps/\d+/(\w+)$`)

// pages are the files of the page, one after the other.
func pages(t *testing.T) string {
	t.Helper()
	names, err := filepath.Glob("../site/pages/*.html")
	require.NoError(t, err)
	all := ""
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		all += string(text)
	}
	return all
}

// asksFor tells whether the page has a blank for a place in the plan.
func asksFor(page, at string) bool {
	if part := step.FindStringSubmatch(at); part != nil {
		at = part[1]
	}
	return regexp.MustCompile(`\{\{[a-z]+ "` + at + `"`).MatchString(page)
}

// Nothing red stays that a painter cannot clear: every stop leads to a blank of
// the page, and there is something to type that has it go.
func TestEveryStopCanBeCleared(t *testing.T) {
	t.Parallel()
	page, tried := pages(t), map[string]bool{}
	for _, row := range stopCases() {
		tried[row.id] = true
		note, told := noteIn(typedIn(t, row.typed), row.id)
		if !assert.True(t, told, "%s is not told with %v", row.id, row.typed) {
			continue
		}
		assert.Equal(t, "stop", note.Severity, row.id)
		assert.True(t, asksFor(page, note.At), "%s leads to %s, which the page does not ask for", row.id, note.At)
		for at := range row.clears {
			assert.True(t, asksFor(page, at), "the page does not ask for %s, which clears %s", at, row.id)
		}
		_, told = noteIn(typedIn(t, with(row.typed, row.clears)), row.id)
		assert.False(t, told, "%s stays with %v", row.id, row.clears)
	}
	for _, r := range safety.Table() {
		assert.True(t, r.Severity != problem.Stop || tried[r.ID], "what does a painter type to clear %s? Add it here.", r.ID)
	}
}
