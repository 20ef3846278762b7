package tell

import (
	"os"
	"slices"
	"strings"
	"testing"

	"ceilingwright/core/job"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func documentOf(t *testing.T, name string) plan.Document {
	t.Helper()
	text, err := os.ReadFile("../../testdata/plans/v1/" + name + ".json")
	require.NoError(t, err)
	doc := plan.Read(text)
	require.True(t, doc.Usable)
	return doc
}

// all asks for the whole sheet with its drawings.
var all = Asked{AllPages, func(string) bool { return true }}

// faultsOn are the problems of a sheet that tell of a panic.
func faultsOn(s *sheet.Sheet) (told []sheet.Problem) {
	for _, p := range s.Problems {
		if strings.Contains(p.What, "a fault of its own") {
			told = append(told, p)
		}
	}
	return told
}

// Whichever telling fails, the others are told, what it had told itself stays, and one
// problem tells of it.
func TestAFaultInOneTellingTakesNoOtherAway(t *testing.T) {
	doc := documentOf(t, "full")
	whole := Build(doc, "", nil)
	require.Empty(t, faultsOn(whole))
	for i, failing := range tellings() {
		s := Session{tellings: tellings()}
		s.tellings[i].do = func(p *page.Page, _ *job.Job) {
			p.Figure(sheet.Figure{ID: "half.done"})
			panic("no such panel")
		}
		got := s.Sheet(&doc, "", all)
		at := slices.IndexFunc(got.Figures, func(f sheet.Figure) bool { return f.ID == "half.done" })
		require.GreaterOrEqual(t, at, 0, failing.name)
		for k, f := range slices.Concat(got.Figures[:at], got.Figures[at+1:]) {
			assert.Contains(t, whole.Figures, f, "%s, figure %d", failing.name, k)
		}
		assert.Equal(t, failing.name == "the safety notes", len(got.Safety) == 0, failing.name)
		if told := faultsOn(got); assert.Len(t, told, 1, failing.name) {
			assert.Contains(t, told[0].What, failing.name)
			assert.Contains(t, told[0].What, "no such panel")
			assert.Equal(t, problem.Stop, told[0].Severity)
		}
	}
}

// A fault in a drawing leaves those before it, and all that is told in words.
func TestAFaultInADrawingLeavesTheOthers(t *testing.T) {
	doc := documentOf(t, "full")
	var s Session
	s.take(&doc)
	s.job.Layers = slices.Clone(s.job.Layers)
	s.job.Layers[len(s.job.Layers)-1].Columns.Starts = nil
	got := s.Sheet(&doc, "", Asked{0, all.Draw})
	assert.Len(t, faultsOn(got), 1)
	assert.NotEmpty(t, got.Drawings)
}
