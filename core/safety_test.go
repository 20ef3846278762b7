package core_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ceilingwright/core/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// noteIn is the note that a rule is told in, by itself or with others.
func noteIn(s sheet.Sheet, id string) (sheet.Advice, bool) {
	for _, note := range s.Safety {
		if note.ID == id || slices.Contains(note.Also, id) {
			return note, true
		}
	}
	return sheet.Advice{}, false
}

// An ordinary job gets no more than fifteen notes at once, besides what the sheet
// is, in words one can read before the work, and what is only asked for is none of
// them.
func TestOrdinaryJobIsNotDrownedInNotes(t *testing.T) {
	example, err := os.ReadFile(filepath.Join("..", "site", "example.plan.json"))
	require.NoError(t, err)
	plans := map[string][]byte{"example": example}
	for _, name := range golden {
		plans[name] = planNamed(t, name)
	}
	for name, plan := range plans {
		s := sheetOf(t, plan)
		shown, words := -1, 0
		asked := map[string]bool{}
		for _, q := range s.FindOut {
			asked[q.At] = true
		}
		for _, a := range s.Safety {
			if !a.OnDemand {
				shown, words = shown+1, words+len(strings.Fields(a.Words))
			}
			assert.False(t, a.OnDemand && a.Severity != "note", "%s of %s is on demand", a.ID, name)
			assert.LessOrEqual(t, len(strings.Fields(a.Words)), 100, "%s of %s", a.ID, name)
		}
		assert.LessOrEqual(t, shown, 15, name)
		assert.LessOrEqual(t, words, 800, name)
		assert.LessOrEqual(t, len(s.FindOut), 15, name)
		assert.Len(t, asked, len(s.FindOut), "%s asks for one blank twice", name)
	}
}

// Hanging waits for a strip of tape; what it did is kept with the house, when
// somebody wrote down when or where (a decorative painter's post on a sun room,
// where even the mildest tape lifted old paint).
func TestTapePulledIsRecorded(t *testing.T) {
	for _, row := range []struct {
		pull, on, at string
		want         string
		stops        string
	}{
		{"none", "2027-03-01", "by the window", "", "pull-test-first"},
		{"held", "2027-03-01", "by the window", "Tape was pulled off the old paint on 2027-03-01, here: “by the window”. The paint held.", ""},
		{"held", "", "", "", ""},
		{"lifted", "", "by the window", "Tape was pulled off the old paint, here: “by the window”. It lifted the paint.", "paint-lifted"},
	} {
		s := dated(t, map[string]any{"/place": map[string]any{"rules": "US", "built": "2005", "surface": "smooth",
			"leadTest": "none", "pullTest": row.pull, "pullOn": row.on, "pullAt": row.at}})
		if row.want == "" {
			assert.NotContains(t, s.Record.Text, "Tape was pulled")
		}
		assert.True(t, strings.Contains(s.Record.Text, row.want), "%q in %q", row.want, s.Record.Text)
		for _, id := range []string{"pull-test-first", "paint-lifted"} {
			note, told := noteIn(s, id)
			require.Equal(t, id == row.stops, told, "%s: %s", row.pull, id)
			if told {
				assert.Equal(t, "stop", note.Severity)
				assert.Contains(t, note.Bites, "hanging")
			}
		}
	}
}

// A ceiling at 14 ft and a painter who reaches 6 ft 10 in in comfort: a deck at
// 7 ft 2 in, which is no work for a stepladder (a painter's post on a sloped
// ceiling).
func TestDeckForAReachThatWasTriedOut(t *testing.T) {
	s := dated(t, map[string]any{"/room/height": "14'", "/access": map[string]any{"by": "ladder", "reach": "6' 10\"", "rails": "yes"}})
	for _, f := range s.Figures {
		if f.ID == "platform.height" {
			assert.Equal(t, "2184400000", f.Value)
			assert.Equal(t, "7′ 2″", f.Text)
		}
	}
	note, told := noteIn(s, "ladder-both-hands")
	require.True(t, told)
	assert.Equal(t, "stop", note.Severity)
	assert.NotEmpty(t, s.Platform.Refused)
	assert.Contains(t, s.Platform.Refused[0], "Not a ladder")
}

// Rags that light themselves are spoken of only where a drying oil is used, so
// that the warning keeps its weight (a maker space's page on oil finishes).
func TestRagsOnlyWithADryingOil(t *testing.T) {
	note, told := noteIn(dated(t, nil), "oily-rags")
	require.True(t, told, "the size of this plan is an oil")
	assert.Equal(t, "/finish/steps/7", note.At)
	_, told = noteIn(dated(t, map[string]any{"/finish/steps/7/binder": "water"}), "oily-rags")
	assert.False(t, told)
}

// What stays on the floor is drawn where the platform is planned, and a place
// where it cannot stand is marked in the drawing and told in words.
func TestFurnitureInTheWayOfThePlatform(t *testing.T) {
	plan := planNamed(t, "platform")
	stations := func(s sheet.Sheet) string {
		for _, d := range s.Drawings {
			if d.Shows == "stations" {
				return d.SVG
			}
		}
		return ""
	}
	free := sheetOf(t, plan)
	require.NotEmpty(t, stations(free))
	assert.NotContains(t, stations(free), "cw-standing")
	var parsed map[string]any
	require.NoError(t, json.Unmarshal(plan, &parsed))
	parsed["room"].(map[string]any)["furniture"] = []any{
		map[string]any{"name": "Piano", "fromDA": "1'", "fromAB": "1'", "length": "7'", "width": "5'"},
	}
	full, err := json.Marshal(parsed)
	require.NoError(t, err)
	s := sheetOf(t, full)
	assert.Contains(t, stations(s), "cw-standing")
	assert.Contains(t, stations(s), ">Piano</text>")
	clashes := 0
	for _, station := range s.Platform.Stations {
		if station.Clash {
			clashes++
			assert.Contains(t, station.Text, "the Piano")
		}
	}
	assert.Positive(t, clashes)
	assert.Contains(t, stations(s), " !</text>")
}

// A flash point below 60 °C, which is 140 °F, makes a product one that may burn
// (Class II liquids of the model fire codes end there, from memory), whichever
// unit the label is copied in.
func TestFlashPointInEitherUnit(t *testing.T) {
	for _, row := range []struct {
		flash, unit string
		burns       bool
	}{
		{"59.9", "C", true}, {"60", "C", false}, {"139.9", "F", true}, {"140", "F", false}, {"140", "C", false},
	} {
		var parsed map[string]any
		require.NoError(t, json.Unmarshal(planNamed(t, "days"), &parsed))
		size := parsed["finish"].(map[string]any)["steps"].([]any)[7].(map[string]any)
		size["flash"], size["flashUnit"] = row.flash, row.unit
		parsed["place"].(map[string]any)["flames"] = "yes"
		plan, err := json.Marshal(parsed)
		require.NoError(t, err)
		_, told := noteIn(sheetOf(t, plan), "flames-burning")
		assert.Equal(t, row.burns, told, "%s °%s", row.flash, row.unit)
	}
}

func figureIn(t *testing.T, s sheet.Sheet, id string) sheet.Figure {
	t.Helper()
	i := slices.IndexFunc(s.Figures, func(f sheet.Figure) bool { return f.ID == id })
	require.GreaterOrEqual(t, i, 0, "no figure %s", id)
	return s.Figures[i]
}

// A height of deck is said in whole steps, which its sum names, and beside it
// stands the same height in the other system: 4 ft is 1.219 m, by hand. 9 ft 8 in
// of ceiling and a fitter of 5 ft 6 in: 116 − 1.10 × 66 in is 43.4 in.
func TestHeightsOfTheDeckAreSaidAsTheyAreWorkedOut(t *testing.T) {
	s := dated(t, map[string]any{"/room/height": "9' 8\"", "/access": map[string]any{"by": "platform", "reachBy": "5' 6\"", "rails": "yes"}})
	for id, want := range map[string][3]string{
		"platform.height": {"3′ 8″", "1.118 m", "9′ 8″ − 1.10 × 5′ 6″ = 3′ 7⅜″; to the nearest step of 2″: 3′ 8″"},
		"platform.least":  {"3′ 2″", "965 mm", "9′ 8″ − 1.185 × 5′ 6″ = 3′ 1 13⁄16″; up to a whole step of 2″: 3′ 2″"},
		"platform.most":   {"3′ 10″", "1.168 m", "9′ 8″ − 5′ 6″ − ≈3 15⁄16″ = 3′ 10 1⁄16″; down to a whole step of 2″: 3′ 10″"},
		"platform.base":   {"1′ 10″", "559 mm", "(≈3′ 7⅜″ + ≈3′ 7 5⁄16″) ÷ 4 = 1′ 9 11⁄16″; up to a whole step of 2″: 1′ 10″"},
	} {
		f := figureIn(t, s, id)
		assert.Equal(t, want, [3]string{f.Text, f.Other, f.Working.Sum}, id)
	}
	// A crew of 5 ft 8 in and 6 ft 4 in: half way would be too high for the tall one's head.
	s = dated(t, map[string]any{"/room/height": "9' 8\"", "/access": map[string]any{"by": "platform", "reachBy": "5' 8\"", "alsoBy": "6' 4\"", "rails": "yes"}})
	assert.Contains(t, figureIn(t, s, "platform.height").Working.Sum, "; kept at ")
}

// Whatever is held against a limit of the other system, the limit is said in whole
// steps, and what is said agrees with the verdict: 38 in is 965.2 mm, 45 in 1143 mm,
// 18 in 457.2 mm; 950 mm is 37.4 in, 470 mm 18.5 in.
func TestLimitsOfThePlatformInWholeSteps(t *testing.T) {
	for _, row := range []struct {
		rules, show, at, have, what, need, verdict string
	}{
		{"US", "metric", "railHeight", "1 m", "Top rail", "970 mm to 1.140 m", "ok"},
		{"US", "metric", "railHeight", "96 cm", "Top rail", "970 mm to 1.140 m", "short"},
		{"US", "metric", "railHeight", "968 mm", "Top rail", "965 mm to 1.140 m", "ok"},
		{"US", "metric", "railHeight", "1142 mm", "Top rail", "970 mm to 1.143 m", "ok"},
		{"US", "feet-inches", "railHeight", "3'", "Top rail", "3′ 2″ to 3′ 9″", "short"},
		{"UK", "feet-inches", "railHeight", "38 in", "Top rail", "at least 3′ 1⅜″", "ok"},
		{"UK", "feet-inches", "railHeight", "39 in", "Top rail", "at least 3′ 2″", "ok"},
		{"UK", "feet-inches", "railGap", "20 in", "Gap between rails", "at most 1′ 6″", "short"},
		{"UK", "metric", "railGap", "40 cm", "Gap between rails", "at most 470 mm", "ok"},
	} {
		s := dated(t, map[string]any{"/units/show": row.show, "/place/rules": row.rules, "/access": map[string]any{"by": "platform", "rails": "yes", row.at: row.have}})
		i := slices.IndexFunc(s.Platform.Checks, func(c sheet.PlatformCheck) bool { return c.What == row.what })
		require.GreaterOrEqual(t, i, 0, row)
		assert.Equal(t, [2]string{row.need, row.verdict}, [2]string{s.Platform.Checks[i].Need, s.Platform.Checks[i].Verdict}, row)
	}
}
