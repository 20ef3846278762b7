package overview_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell"
)

func overviewOf(rest string) sheet.Overview {
	return tell.Build(plan.Read([]byte(`{"ceilingwright":1,"units":{"show":"metric","bare":"mm"}`+rest+`}`)), "", nil).Overview
}

func state(o sheet.Overview, page string) sheet.PageState {
	for _, p := range o.Pages {
		if p.Page == page {
			return p
		}
	}
	return sheet.PageState{}
}

// An empty job has nothing wrong: what is not filled in yet is only to come.
func TestEmptyJobIsEmptyAndNothingIsWrong(t *testing.T) {
	o := overviewOf("")
	assert.Empty(t, o.Answers)
	assert.Empty(t, o.First)
	assert.Len(t, o.Pages, 9)
	for _, p := range o.Pages {
		assert.Equal(t, "empty", p.State, p.Page)
	}
}

// What cannot be read is wrong on its page and stands among what to see to first; a
// blank that is merely empty does not.
func TestWhatIsWrongIsCountedOnItsPage(t *testing.T) {
	o := overviewOf(`,"room":{"length":"long","width":"","height":"3000"}`)
	assert.Equal(t, sheet.PageState{Page: "room", State: "stop", Stops: 1}, state(o, "room"))
	if assert.NotEmpty(t, o.First) {
		assert.Equal(t, "/room/length", o.First[0].At)
		assert.Equal(t, "room", o.First[0].Page)
	}
	for _, f := range o.First {
		assert.NotEqual(t, "/room/width", f.At)
	}
}

// A room of 5 m by 4 m with a mask of 4 m by 3 m in the middle leaves 500 mm all round,
// 5000 − 4000 and 4000 − 3000, halved; of 4.2 m by 3 m 400 mm at the ends.
func TestAnswersOfARoomAndAMask(t *testing.T) {
	of := func(length string) sheet.Overview {
		return overviewOf(`,"room":{"length":"5000","width":"4000","height":"3000"},"mask":{"length":"` + length + `","width":"3000","layers":[{"id":"L1","split":"count","columns":"4","rows":"3"}]},"setting":{"on":"room"}`)
	}
	o := of("4000")
	texts := map[string]string{}
	for _, a := range o.Answers {
		texts[a.ID] = a.Text
	}
	assert.Equal(t, "500 mm", texts["borders"])
	assert.Equal(t, "12", texts["panels"])
	assert.Equal(t, "1 layer, 12 panels", state(o, "mask").Text)
	assert.Equal(t, "500 mm all round", state(o, "setting").Text)
	assert.Equal(t, "400 mm at the ends, 500 mm at the sides", state(of("4200"), "setting").Text)
	assert.True(t, strings.HasPrefix(state(o, "hanging").Text, "from "))
}

// The counts are those of the sheet: its problems that are more than work to come, and its
// safety notes.
func TestCountsAreThoseOfTheSheet(t *testing.T) {
	s := tell.Build(plan.Read([]byte(`{"ceilingwright":1,"room":{"length":"20 ft","width":"16 ft","height":"11 ft","fixture":{"at":"centre"}},"mask":{"length":"x","width":"12 ft"},"place":{"built":"1950"}}`)), "", nil)
	stops := 0
	for _, p := range s.Problems {
		if p.Severity == "stop" && !p.ToCome {
			stops++
		}
	}
	for _, n := range s.Safety {
		if n.Severity == "stop" {
			stops++
		}
	}
	assert.Positive(t, stops)
	assert.Len(t, s.Overview.First, stops)
	counted := 0
	for _, p := range s.Overview.Pages {
		counted += p.Stops
	}
	assert.Equal(t, stops, counted)
}
