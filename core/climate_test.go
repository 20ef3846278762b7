package core_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// inClimate is the sheet of a plan with what was measured before painting.
func inClimate(t *testing.T, name, air, surface, humidity, unit string) sheet.Sheet {
	t.Helper()
	var tree map[string]any
	require.NoError(t, json.Unmarshal(planNamed(t, name), &tree))
	tree["finish"].(map[string]any)["climate"] = map[string]any{"air": air, "surface": surface, "humidity": humidity, "unit": unit}
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return sheetOf(t, text)
}

func stopsAt(s sheet.Sheet, at string) (what string) {
	for _, p := range s.Problems {
		if p.At == at && p.Severity == problem.Stop {
			what += p.What
		}
	}
	return what
}

// A painter's notes, 2011: air 70 °F, 70 %, ceiling 63 °F: by Magnus the dew
// point is 59.8 °F, so 63 is 1.8 °F too cold for the rule of 5 °F.
func TestColdCeilingStopsThePainting(t *testing.T) {
	s := inClimate(t, "full", "70", "63", "70", "F")
	assert.Equal(t, "stop", s.Climate.Verdict)
	assert.Equal(t, "59.8 °F (15.4 °C)", s.Climate.Dew)
	assert.Equal(t, "3.2 °F (1.8 °C)", s.Climate.Margin)
	assert.Contains(t, s.Climate.Text, "Do not paint yet.")
	assert.Contains(t, s.Climate.Text, "5.4 °F (3.0 °C) are asked for")
	assert.Contains(t, stopsAt(s, "/finish/climate/surface"), "By the other rule, 5 °F, it is 1.8 °F (1.0 °C) too cold.")
	dew := figures(s)["dew.point"]
	assert.Equal(t, "59.8 °F", dew.Text)
	assert.Equal(t, "15.4 °C", dew.Other)
	assert.Contains(t, dew.Working.Source, "WMO-No. 8")
}

func TestWarmCeilingIsFit(t *testing.T) {
	s := inClimate(t, "full", "20", "16.5", "60", "C")
	assert.Equal(t, "go", s.Climate.Verdict)
	assert.Equal(t, "4.5 °C (8.1 °F)", s.Climate.Margin)
	assert.Contains(t, s.Climate.Text, "At least 3.0 °C (5.4 °F), or by the other rule 2.8 °C (5.0 °F).")
	assert.Empty(t, stopsAt(s, "/finish/climate/surface"))
}

func TestClimateNotWhollyMeasured(t *testing.T) {
	none := inClimate(t, "full", "", "", "", "")
	assert.Equal(t, sheet.Climate{}, none.Climate)
	some := inClimate(t, "full", "20", "", "60", "C")
	assert.Equal(t, "unknown", some.Climate.Verdict)
	assert.Contains(t, some.Climate.Text, "measure the ceiling itself")
	assert.Equal(t, "12.0 °C", figures(some)["dew.point"].Text)
	assert.NotContains(t, figures(some), "dew.margin")
	below := inClimate(t, "full", "-3", "-2", "60", "C")
	assert.Equal(t, "stop", below.Climate.Verdict)
	assert.Contains(t, stopsAt(below, "/finish/climate/air"), "−3.0 °C (26.6 °F)")
	for _, minus := range []string{"\u2010", "\u2011", "–", "−", "\uff0d"} {
		assert.Equal(t, below.Climate, inClimate(t, "full", minus+"3", " "+minus+" 2", "60", "C").Climate, "%q", minus)
	}
	wrong := inClimate(t, "full", "20", "20", "0", "C")
	assert.Equal(t, "unknown", wrong.Climate.Verdict)
	assert.Contains(t, wrong.Climate.Text, "cannot be right")
	hot := inClimate(t, "full", "700", "20", "50", "F")
	assert.NotEmpty(t, stopsAt(hot, "/finish/climate/air"))
}

// Damp air lengthens the drying in the days, and they say so; dry air does not
// shorten it.
func TestDaysCountSlowDrying(t *testing.T) {
	asLabelled := sheetNamed(t, "days")
	slow := inClimate(t, "days", "15", "15", "80", "C")
	quick := inClimate(t, "days", "30", "30", "40", "C")
	assert.Greater(t, slow.Days.Finish, asLabelled.Days.Finish)
	assert.Equal(t, asLabelled.Days.Finish, quick.Days.Finish)
	assert.Contains(t, slow.Climate.Drying, "The days count the longer hours, but not for size: a test patch decides there.")
	assert.Contains(t, quick.Climate.Drying, "label’s own hours all the same")
	said := 0
	for _, task := range slow.Days.Tasks {
		if strings.Contains(task.Reason, "times the hours of its label") {
			assert.Equal(t, "dry", task.Kind)
			said++
		}
	}
	assert.Positive(t, said)
}

// The tack of a size is not counted longer: a test patch decides, and the sheet
// asks for one.
func TestSizeInAClimateAsksForATestPatch(t *testing.T) {
	slow := inClimate(t, "full", "15", "15", "60", "C")
	found := false
	for _, p := range slow.Problems {
		if strings.HasSuffix(p.At, "/tackHours") {
			assert.Equal(t, problem.Caution, p.Severity)
			assert.Contains(t, p.Do, "test patch")
			found = true
		}
	}
	assert.True(t, found)
}
