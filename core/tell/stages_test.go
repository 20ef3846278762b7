package tell

import (
	"os"
	"strings"
	"testing"

	"ceilingwright/core/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
)

func documentOf(t *testing.T, name string) plan.Document {
	t.Helper()
	text, err := os.ReadFile("../../testdata/plans/v1/" + name + ".json")
	require.NoError(t, err)
	doc := plan.Read(text)
	require.True(t, doc.Usable)
	return doc
}

// faultsOf are the problems of a sheet that tell of a panic.
func faultsOf(b *builder) (told []sheet.Problem) {
	b.tellProblems()
	for _, p := range b.Sheet.Problems {
		if strings.Contains(p.What, "a fault of its own") {
			told = append(told, p)
		}
	}
	return told
}

// Whichever stage fails, what the others do not need of it they still work out,
// what it had worked out itself stays, and one problem tells of it.
func TestAFaultInOneStageTakesNoOtherAway(t *testing.T) {
	whole := builderFrom(documentOf(t, "full"), "")
	whole.workOut()
	require.Empty(t, faultsOf(whole))
	for i, failing := range whole.stages() {
		b := builderFrom(documentOf(t, "full"), "")
		stages, before := b.stages(), 0
		stages[i].do = func() {
			before = len(b.Sheet.Figures)
			b.Figure(sheet.Figure{ID: "half.done"})
			panic("no such panel")
		}
		b.workThrough(stages)
		b.draw()
		require.Greater(t, len(b.Sheet.Figures), before, failing.name)
		assert.Equal(t, "half.done", b.Sheet.Figures[before].ID, failing.name)
		assert.Equal(t, whole.Sheet.Figures[:before], b.Sheet.Figures[:before], failing.name)
		assert.Equal(t, failing.name == "the safety notes", len(b.Sheet.Safety) == 0, failing.name)
		told := faultsOf(b)
		if assert.Len(t, told, 1, failing.name) {
			assert.Contains(t, told[0].What, failing.name)
			assert.Contains(t, told[0].What, "no such panel")
			assert.Equal(t, problem.Stop, told[0].Severity)
		}
	}
}

func TestAFaultInADrawingLeavesTheOthers(t *testing.T) {
	b := builderFrom(documentOf(t, "full"), "")
	b.drawn = true
	b.workOut()
	b.Layers[len(b.Layers)-1].Columns.Starts = nil
	b.draw()
	assert.Len(t, faultsOf(b), 1)
	assert.NotEmpty(t, b.Sheet.Drawings)
}
