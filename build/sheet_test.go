package main

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

func TestParseSheetOptions(t *testing.T) {
	for _, row := range []struct {
		arguments string
		want      sheetOptions
	}{
		{"a.json", sheetOptions{plan: "a.json"}},
		{"a.json -json", sheetOptions{plan: "a.json", json: true}},
		{"-drawing a.json", sheetOptions{plan: "a.json", drawing: true}},
		{"a.json -csv", sheetOptions{plan: "a.json", csv: true}},
		{"-csv=comma a.json", sheetOptions{plan: "a.json", csv: true, comma: true}},
		{"a.json -ics", sheetOptions{plan: "a.json", ics: true}},
		{"- -drawing=L1.up -working", sheetOptions{plan: "-", drawing: true, which: "L1.up", working: true}},
	} {
		got, err := parseSheetOptions(strings.Fields(row.arguments))
		require.NoError(t, err, row.arguments)
		assert.Equal(t, row.want, got, row.arguments)
	}
	for arguments, want := range map[string]string{
		"":                      "use: sheet",
		"a.json b.json":         "one plan at a time",
		"a.json -pdf":           "no flag -pdf",
		"a.json -json=1":        "no flag -json=1",
		"a.json -json -drawing": "choose one",
		"a.json -csv -json":     "choose one",
		"a.json -csv -ics":      "choose one",
		"a.json -ics=1":         "no flag -ics=1",
		"a.json -csv=point":     "no flag -csv=point",
	} {
		_, err := parseSheetOptions(strings.Fields(arguments))
		assert.ErrorContains(t, err, want, arguments)
	}
}

func TestCalendarIsPrinted(t *testing.T) {
	plan, err := os.ReadFile("../testdata/plans/v1/days.json")
	require.NoError(t, err)
	var out strings.Builder
	require.NoError(t, printCalendar(&out, plan, time.Date(2027, 1, 2, 3, 4, 5, 0, time.UTC)))
	assert.Contains(t, out.String(), "DTSTAMP:20270102T030405Z\r\n")
	assert.ErrorContains(t, printCalendar(&out, []byte("{}"), time.Now()), "no days")
}

// small is a sheet with one of everything that the text shows.
func small() sheet.Sheet {
	return sheet.Sheet{
		Format:   sheet.Format,
		Plan:     sheet.Heading{ID: "p", Title: "Net loft"},
		Problems: []sheet.Problem{{At: "/room/width", Severity: problem.Caution, What: "Odd.", Do: "Measure again."}},
		Figures:  []sheet.Figure{{ID: "room.area", Block: "room", Label: "ceiling", Text: "237.2 ft²", Other: "22.04 m²", Working: sheet.Working{Rule: "length × width"}}},
		Steps: []sheet.Step{{Name: "Leaf", Sections: []sheet.Section{{N: 1, Panels: []string{"A1", "A2"}, Text: "Size it."}},
			Mix: []sheet.MixLine{{Name: "medium", Exact: "7.9 fl oz", Measured: "1 cup", Error: "1.3 % too much"}}}},
		Climate: sheet.Climate{Verdict: "go", Text: "Fit to paint.", Drying: "As the label says."},
		Days: sheet.Days{Text: "One day.", Saves: []string{"One hour more saves nothing."}, Tasks: []sheet.Task{
			{Name: "Leaf", Kind: "work", Day: "Mon 1 Mar", From: "08:00", To: "09:00", Labour: "2 h", Reason: "The first day of work."}}},
		Drawings: []sheet.Drawing{{ID: "L1.up", Title: "Looking up", SVG: "<svg>1</svg>"}, {ID: "L1.down", Title: "Looking down", SVG: "<svg>2</svg>"}},
	}
}

func printed(t *testing.T, s sheet.Sheet, o sheetOptions) (string, error) {
	text, err := json.Marshal(s)
	require.NoError(t, err)
	var out strings.Builder
	err = printSheet(&out, text, o)
	return out.String(), err
}

func TestSheetAsText(t *testing.T) {
	got, err := printed(t, small(), sheetOptions{})
	require.NoError(t, err)
	for _, want := range []string{
		"Net loft\n",
		"caution at /room/width: Odd. Measure again.\n",
		"\nROOM\n  ceiling: 237.2 ft² (22.04 m²)  [room.area]\n",
		"    section 1 (A1 A2): Size it.\n",
		"    mix, medium: 1 cup (7.9 fl oz), 1.3 % too much\n",
		"\nAIR ON THE DAY\n  Fit to paint.\n  As the label says.\n",
		"\nDAYS\n  One day.\n  Mon 1 Mar 08:00–09:00  Leaf (2 h)  The first day of work.\n  One hour more saves nothing.\n",
		"L1.down: Looking down",
	} {
		assert.Contains(t, got, want)
	}
	assert.NotContains(t, got, "length × width")
	assert.NotContains(t, got, "SHOPPING", "an empty part has no heading")
	withWorking, err := printed(t, small(), sheetOptions{working: true})
	require.NoError(t, err)
	assert.Contains(t, withWorking, "    length × width\n")
}

func TestSheetAsDrawing(t *testing.T) {
	first, err := printed(t, small(), sheetOptions{drawing: true})
	require.NoError(t, err)
	assert.Equal(t, "<svg>1</svg>\n", first)
	second, err := printed(t, small(), sheetOptions{drawing: true, which: "L1.down"})
	require.NoError(t, err)
	assert.Equal(t, "<svg>2</svg>\n", second)
	_, err = printed(t, small(), sheetOptions{drawing: true, which: "L9"})
	assert.EqualError(t, err, `no drawing "L9"; there are L1.up, L1.down`)
	_, err = printed(t, sheet.Sheet{}, sheetOptions{drawing: true})
	assert.EqualError(t, err, "this plan gives no drawing")
}

func TestRefusedPlanFails(t *testing.T) {
	s := sheet.Sheet{Problems: []sheet.Problem{{Severity: problem.Stop, What: "This file is no plan."}}}
	text, err := printed(t, s, sheetOptions{})
	assert.EqualError(t, err, "the plan was refused: This file is no plan.")
	assert.Contains(t, text, "stop at the plan: This file is no plan.")
}

func TestShoppingTable(t *testing.T) {
	var out strings.Builder
	require.NoError(t, printTable(&out, []byte(`{"ceilingwright":1}`), true))
	assert.Equal(t, "\uFEFFWhat;Pieces;Sold as;Contents of one;Unit;Price of one;Price;Currency;Note\r\n", out.String())
	assert.ErrorContains(t, printTable(&out, []byte("no plan"), false), "the plan was refused")
}

// The client's copy is a plan; what is printed of it holds no rate, and no word of
// what is behind the price.
func TestClientsPlanIsPrinted(t *testing.T) {
	plan, err := os.ReadFile("../testdata/plans/v1/priced.json")
	require.NoError(t, err)
	plan = bytes.Replace(plan, []byte(`"rate": "38"`), []byte(`"rate": "38.1357"`), 1)
	own, err := printed(t, *core.SheetOf(plan), sheetOptions{working: true})
	require.NoError(t, err)
	require.Contains(t, own, "38.1357")
	var out strings.Builder
	require.NoError(t, printClient(&out, plan, time.Date(2027, 2, 10, 9, 0, 0, 0, time.UTC)))
	text, err := printed(t, *core.SheetOf([]byte(out.String())), sheetOptions{working: true})
	require.NoError(t, err)
	for _, word := range []string{"38.13", "Overhead", "profit", "markup", "unforeseen"} {
		assert.False(t, strings.Contains(out.String(), word), word)
		assert.False(t, strings.Contains(text, word), word)
	}
	assert.Contains(t, text, "Quoted on Wed 10 Feb 2027.")
	assert.ErrorContains(t, printClient(&out, []byte("{}"), time.Now()), "refused")
}
