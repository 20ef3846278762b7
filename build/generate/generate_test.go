package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const root = "../.."

// What is checked in is what the types and the schema give.
func TestGeneratedFilesAreUpToDate(t *testing.T) {
	made, err := files(root)
	require.NoError(t, err)
	for _, f := range made {
		kept, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(f.Path)))
		require.NoError(t, err, "run go run ./build/generate")
		if string(kept) != string(f.Content) {
			assert.Fail(t, f.Path+" is not what it is made from gives: run go run ./build/generate")
		}
	}
}
