package bridge

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

func TestFaultBecomesASheetWithOneProblem(t *testing.T) {
	answer := sheetOr(func() string { panic("no such \"panel\"") })
	var got struct {
		Version  string
		Problems []sheet.Problem
	}
	require.NoError(t, json.Unmarshal([]byte(answer), &got))
	require.Len(t, got.Problems, 1)
	assert.Equal(t, Version, got.Version)
	assert.Equal(t, problem.Stop, got.Problems[0].Severity)
	assert.Contains(t, got.Problems[0].What, `no such "panel"`)
	assert.Contains(t, got.Problems[0].Do, "send it")
}

// A page that reads a whole sheet must be able to read the sheet of a fault.
func TestFaultSheetHasTheFieldsOfAnySheet(t *testing.T) {
	fields := func(text string) map[string]json.RawMessage {
		var all map[string]json.RawMessage
		require.NoError(t, json.Unmarshal([]byte(text), &all))
		return all
	}
	whole := fields(Compute("{}"))
	fault := fields(sheetOr(func() string { panic("fault") }))
	require.NotEmpty(t, whole)
	for name := range whole {
		assert.Contains(t, fault, name)
		assert.NotEqual(t, "null", string(fault[name]), name)
	}
}

func TestShoppingIsATableAndAFaultIsNone(t *testing.T) {
	assert.Contains(t, Shopping("{}", ""), "What,Pieces,Sold as,")
	assert.Contains(t, Shopping("no plan", ","), "What;Pieces;Sold as;")
	assert.Empty(t, textOr(func() string { panic("fault") }))
}

func TestCalendarOfNoDaysIsNone(t *testing.T) {
	assert.Empty(t, Calendar("{}", "20270301T080000Z"))
	assert.Empty(t, Calendar("no plan", "today"))
}

func TestStartingOfNoWordIsAnEmptyList(t *testing.T) {
	assert.Equal(t, "[]", Starting("nothing", "{}"))
	assert.Equal(t, "[]", RefuseStarting)
	assert.True(t, json.Valid([]byte(Starting("one-layer", "no plan"))))
}

func TestFaultOfALengthIsAProblem(t *testing.T) {
	answer := lengthOr(func() LengthAnswer {
		var none *LengthAnswer
		return *none
	})
	require.NotNil(t, answer.Problem)
	assert.Empty(t, answer.Nanometres)
	assert.Contains(t, answer.Problem.What, "nil pointer")
}

func TestNextCallWorksAfterAFault(t *testing.T) {
	before := Compute("{}")
	sheetOr(func() string { panic("fault") })
	assert.Equal(t, before, Compute("{}"))
}

func TestRefusalsNameWhatCame(t *testing.T) {
	assert.Contains(t, RefuseCompute("number"), "compute was called with number.")
	refusal := RefuseParseLength("object")
	require.NotNil(t, refusal.Problem)
	assert.Equal(t, "parseLength was called with object.", refusal.Problem.What)
	assert.Contains(t, refusal.Problem.Do, "the length and its unit")
}

// 1 in is 25.4 mm exactly (international yard and pound agreement of 1959).
func TestParseLengthGivesNanometres(t *testing.T) {
	for _, row := range []struct{ text, unit, want string }{
		{"1", "in", "25400000"},
		{"1", "mm", "1000000"},
		{`15' 8"`, "in", "4775200000"},
	} {
		answer := ParseLength(row.text, row.unit)
		require.Nil(t, answer.Problem, row.text)
		assert.Equal(t, row.want, answer.Nanometres, row.text)
	}
	refused := ParseLength("a hand", "in")
	require.NotNil(t, refused.Problem)
	assert.Empty(t, refused.Nanometres)
}

// FuzzCompute holds the bridge to its promise: any text gives JSON.
func FuzzCompute(f *testing.F) {
	for _, seed := range []string{"", "{}", "[]", `{"ceilingwright":1}`, `{"ceilingwright":2}`, `{"room":{"length":1e999}}`, "\x00\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, plan string) {
		if answer := Compute(plan); !json.Valid([]byte(answer)) {
			t.Fatalf("Compute(%q) is no JSON: %s", plan, answer)
		}
	})
}

func TestOtherRoomOfNoPlanChangesNothing(t *testing.T) {
	assert.Equal(t, `{"said":"","writes":[],"out":[]}`, OtherRoom("no plan", "{}"))
}

// Once a language is spoken every answer is in it, until another is.
func TestSpeak(t *testing.T) {
	Speak(`{"A length cannot be negative.": "Kein Maß ist kleiner als null."}`)
	assert.Equal(t, "Kein Maß ist kleiner als null.", ParseLength("-3", "in").Problem.What)
	Speak("")
	assert.Equal(t, "A length cannot be negative.", ParseLength("-3", "in").Problem.What)
}
