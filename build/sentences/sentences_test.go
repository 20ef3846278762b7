package sentences

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every sentence stands whole in the source, with a value for each of its holes.
func TestEverySentenceHasItsHoles(t *testing.T) {
	calls, err := InGo("../..", "core")
	require.NoError(t, err)
	require.Greater(t, len(calls), 100)
	for _, c := range calls {
		assert.Empty(t, c.Faults, "%s: %s", c.At, c.Sentence)
	}
}

// The rules are on the list too, each sentence of a rule with its amounts.
func TestRulesAreListed(t *testing.T) {
	calls := InRules()
	require.Greater(t, len(calls), 300)
	for _, c := range calls {
		assert.Empty(t, c.Faults, "%s: %s", c.At, c.Sentence)
	}
	i := slices.IndexFunc(calls, func(c Call) bool { return strings.HasSuffix(c.At, " base-too-narrow") })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, []string{"total height", "base ratio", "base", "base needed"}, calls[i].Given)
}

func TestHoles(t *testing.T) {
	for _, c := range []struct {
		sentence string
		names    []string
		faults   int
	}{
		{"No layer.", nil, 0},
		{"{a} and {^b} and {a}", []string{"a", "b"}, 0},
		{"{n|panel|panels} {n?is|are} up, near the {~cornice}", []string{"n"}, 0},
		{"{n|panel}", []string{"n"}, 1},
		{"{}", []string{""}, 1},
		{"open {a", nil, 1},
	} {
		names, faults := Holes(c.sentence)
		assert.Equal(t, c.names, names, c.sentence)
		assert.Len(t, faults, c.faults, c.sentence)
	}
}

func TestFaultsOf(t *testing.T) {
	assert.Empty(t, faultsOf("{a} of {b}", []string{"b", "a"}))
	assert.Len(t, faultsOf("{a} of {b}", []string{"a"}), 1)
	assert.Len(t, faultsOf("{a}", []string{"a", "b"}), 1)
	assert.Len(t, faultsOf("{a}", []string{"a", "a"}), 1)
}

// A hole that is said more than once stands in a variable of the function.
func TestInGo_HolesInVariables(t *testing.T) {
	source := `package p
func f(l, m Length, handed words.Hole) {
	by, n := words.Fine("by", l), words.Count("n", 2)
	words.Say("{n} by {by}", n, by)
	either := words.Fine("one", l)
	either = words.Fine("other", m)
	words.Say("{one}", either)
	words.Say("{by}", handed)
	words.Say("{by} of {n}", by)
}
func g() { words.Say("{by}", by) }
`
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "p.go"), []byte(source), 0o600))
	calls, err := InGo(dir, ".")
	require.NoError(t, err)
	var faults []int
	for _, c := range calls {
		faults = append(faults, len(c.Faults))
	}
	assert.Equal(t, []int{0, 1, 1, 1, 1}, faults, "a hole of two names, one handed in, one that lacks and one of another function")
}
