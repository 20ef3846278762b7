package sentences

import (
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
