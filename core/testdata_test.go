package core_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
)

// kept are the files of a folder of testdata by name, without their ending.
func kept(t testing.TB, folder string) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("..", "testdata", folder, "*.json"))
	require.NoError(t, err)
	require.Greater(t, len(names), 10, "testdata/%s is gone", folder)
	files := make(map[string][]byte, len(names))
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		files[strings.TrimSuffix(filepath.Base(name), ".json")] = text
	}
	return files
}

func planNamed(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "testdata", "plans", "v1", name+".json"))
	require.NoError(t, err)
	return text
}

func sheetNamed(t testing.TB, name string) sheet.Sheet {
	t.Helper()
	return sheetOf(t, planNamed(t, name))
}

// sheetOf is the sheet of a plan. What a reader of its JSON sees is the same:
// TestWriterFollowsTheStruct holds it.
func sheetOf(t testing.TB, text []byte) sheet.Sheet {
	t.Helper()
	return *core.SheetOf(text)
}

// changed is a plan with the value at an RFC 6901 pointer replaced.
func changed(t testing.TB, plan []byte, pointer string, value any) []byte {
	t.Helper()
	var tree any
	require.NoError(t, json.Unmarshal(plan, &tree))
	steps := strings.Split(strings.TrimPrefix(pointer, "/"), "/")
	node := tree
	for _, step := range steps[:len(steps)-1] {
		node = child(t, node, step)
	}
	last := steps[len(steps)-1]
	object, ok := node.(map[string]any)
	require.True(t, ok, pointer)
	require.Contains(t, object, last, pointer)
	object[last] = value
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return text
}

func child(t testing.TB, node any, step string) any {
	t.Helper()
	switch node := node.(type) {
	case map[string]any:
		require.Contains(t, node, step)
		return node[step]
	case []any:
		var i int
		require.NoError(t, json.Unmarshal([]byte(step), &i))
		require.Less(t, i, len(node))
		return node[i]
	}
	require.Fail(t, "no way to "+step)
	return nil
}

// figures are the figures of a sheet by id.
func figures(s sheet.Sheet) map[string]sheet.Figure {
	found := make(map[string]sheet.Figure, len(s.Figures))
	for _, f := range s.Figures {
		found[f.ID] = f
	}
	return found
}
