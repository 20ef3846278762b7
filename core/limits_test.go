package core_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/sheet"
)

// coated is the full plan with some blanks of its base coat, a water-borne paint
// of 50 g/L that counts as matt, and the country changed.
func coated(t *testing.T, rules string, blanks map[string]any) []byte {
	t.Helper()
	var tree map[string]any
	require.NoError(t, json.Unmarshal(planNamed(t, "full"), &tree))
	tree["place"].(map[string]any)["rules"] = rules
	step := tree["finish"].(map[string]any)["steps"].([]any)[1].(map[string]any)
	step["category"] = "matt-ceiling"
	for name, v := range blanks {
		step[name] = v
	}
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return text
}

func limitOf(t *testing.T, rules string, blanks map[string]any) sheet.VOCLine {
	t.Helper()
	s := sheetOf(t, coated(t, rules, blanks))
	require.NotEmpty(t, s.Limits)
	require.Equal(t, "Base coat", s.Limits[0].Step)
	return s.Limits[0]
}

func TestVOCLimitsOnTheSheet(t *testing.T) {
	for name, row := range map[string]struct {
		country                                string
		blanks                                 map[string]any
		holds, limit, verdict, at, says, rules string
	}{
		"EU, as it is": {"EU", map[string]any{},
			"50 g/L", "30 g/L", "above", "category", "Above the limit", "EU limit: grams a litre, ready to use"},
		"UK, just so": {"UK", map[string]any{"voc": "30"},
			"30 g/L", "30 g/L", "within", "category", "Not above the limit.", "UK limit"},
		"EU, a hair above": {"EU", map[string]any{"voc": "30.001"},
			"30.1 g/L", "30 g/L", "above", "category", "Above", ""},
		"EU, a label less water": {"EU", map[string]any{"vocAs": "less-water"},
			"at most 50 g/L", "30 g/L", "unknown", "waterPart", "how much of the product is water", ""},
		"EU, a label less water with its water": {"EU", map[string]any{"vocAs": "less-water", "waterPart": "50"},
			"25 g/L", "30 g/L", "within", "category", "", ""},
		"US, water not said": {"US", map[string]any{},
			"50 g/L or more", "250 g/L", "unknown", "waterPart", "fill in how much of the product is water", "US federal limit: grams a litre, its water and exempt solvents left out"},
		"US, half of it water": {"US", map[string]any{"waterPart": "50"},
			"100 g/L", "250 g/L", "within", "category", "above what the South Coast of California allows, 50 g/L", ""},
		"US, less water": {"US", map[string]any{"vocAs": "less-water", "voc": "250.1"},
			"250.1 g/L", "250 g/L", "above", "category", "", ""},
		// 2.1 lb/gal are 251.6 g/L, but the table prints 250 g/L as 2.1 lb/gal.
		"US, in pounds": {"US", map[string]any{"vocAs": "less-water", "voc": "2.1", "vocUnit": "lb/gal"},
			"251.7 g/L, 2.1 lb/gal", "250 g/L, 2.1 lb/gal", "within", "category", "", ""},
		"US, above in pounds": {"US", map[string]any{"vocAs": "less-water", "voc": "2.11", "vocUnit": "lb/gal"},
			"252.9 g/L, 2.11 lb/gal", "250 g/L, 2.1 lb/gal", "above", "category", "", ""},
		// 400 g/L are 3.338 lb/gal, printed as 3.3: the law is in grams.
		"US, rounded down": {"US", map[string]any{"vocAs": "less-water", "voc": "3.33", "vocUnit": "lb/gal", "category": "sealing-primer"},
			"399.1 g/L, 3.33 lb/gal", "400 g/L, 3.3 lb/gal", "within", "category", "", ""},
		"no country": {"", map[string]any{},
			"50 g/L", "30 g/L", "above", "category", "", "as no country is chosen"},
		"no category": {"US", map[string]any{"category": ""},
			"50 g/L", "", "unknown", "category", "Choose what the product counts as.", ""},
		"an adhesive": {"US", map[string]any{"category": "adhesive"},
			"50 g/L", "", "unknown", "category", "leave adhesives out", ""},
		"not in the table": {"EU", map[string]any{"category": "lacquer"},
			"50 g/L", "", "unknown", "category", "no category of this name", ""},
		"no figure": {"EU", map[string]any{"voc": ""},
			"", "30 g/L", "unknown", "voc", "Copy the VOC figure", ""},
	} {
		line := limitOf(t, row.country, row.blanks)
		assert.Equal(t, [4]string{row.holds, row.limit, row.verdict, "/finish/steps/1/" + row.at}, [4]string{line.Holds, line.Limit, line.Verdict, line.At}, name)
		assert.Contains(t, line.Text, row.says, name)
		assert.Contains(t, line.Rule, row.rules, name)
		if row.limit != "" {
			assert.NotEmpty(t, line.AsOf, name)
			assert.NotEmpty(t, line.Source, name)
		}
	}
}

// A coat of which nobody has said anything, or that gives off nothing, has no
// line.
func TestNoLimitWithoutSolvent(t *testing.T) {
	plan := planNamed(t, "full")
	for _, voc := range []string{"0", ""} {
		for _, line := range sheetOf(t, changed(t, plan, "/finish/steps/1/voc", voc)).Limits {
			assert.NotEqual(t, "Base coat", line.Step)
		}
	}
}

// Thinner counts: in the limit, and in the air.
func TestThinnerCounts(t *testing.T) {
	blanks := map[string]any{"by": "dry", "dryFilm": "30", "dryFilmUnit": "um", "solids": "40",
		"thinned": "10", "binder": "solvent", "voc": "400", "category": "binding-primer"}
	line := limitOf(t, "EU", blanks)
	// (400 + 0.1 × 870) ÷ 1.1 = 442.72…, up to a tenth.
	assert.Equal(t, "442.8 g/L", line.Holds)
	assert.Contains(t, line.Text, "with 10 % of thinner added, taken as 870 g/L")
	assert.Contains(t, figures(sheetOf(t, coated(t, "EU", blanks)))["air.mass"].Working.Sum, "× (400 g/L + 10 % × 870 g/L) ÷ 110 %")
}
