package main

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// testsIn are the names of the tests in a folder of the project.
func testsIn(t *testing.T, folder string) map[string]bool {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", folder, "*_test.go"))
	require.NoError(t, err)
	require.NotEmpty(t, files, folder)
	names := map[string]bool{}
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		for _, found := range regexp.MustCompile(`(?m)^func (Test\w+)\(t `).FindAllSubmatch(text, -1) {
			names[string(found[1])] = true
		}
	}
	return names
}

// Numbers, the plane and the bytes of the kept sheets are tried as WebAssembly too;
// what is left out of it is there to be left out, and leaves most of each package.
func TestWhatAnotherMachineCouldChangeRunsTwice(t *testing.T) {
	for _, must := range []string{"./core/measure", "./core/survey", "./core/setout", "./core/safety", "./wasm/bridge"} {
		assert.Contains(t, twice, must)
	}
	assert.Contains(t, golden, "TestGoldenSheets")
	inCore := testsIn(t, "core")
	for _, name := range golden {
		assert.True(t, inCore[name], "%s is gone", name)
	}
	found := map[string]bool{}
	for _, folder := range twice {
		names, left := testsIn(t, folder), 0
		for _, name := range once {
			if names[name] {
				found[name] = true
				left++
			}
		}
		assert.Less(t, 2*left, len(names), "%s: more than half is left out", folder)
	}
	for _, name := range once {
		assert.True(t, found[name], "%s is gone", name)
	}
}

func TestNamedTakesWholeNames(t *testing.T) {
	pattern := regexp.MustCompile(named([]string{"TestOne", "TestTwo"}))
	assert.True(t, pattern.MatchString("TestTwo"))
	assert.False(t, pattern.MatchString("TestTwoMore"))
	assert.False(t, pattern.MatchString("ATestOne"))
}
