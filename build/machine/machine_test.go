package machine

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// folderWith makes the only folder programs are looked for in.
func folderWith(t *testing.T, names ...string) string {
	folder := t.TempDir()
	for _, name := range names {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte("#!/bin/sh\n"), 0o755))
	}
	t.Setenv("PATH", folder)
	return folder
}

func tool() Tool {
	return Tool{Name: "Plumb", Variable: "CW_TEST_PLUMB", Programs: []string{"plumb", "plumb-bob"}, Packages: []string{"plumb-line"}}
}

func TestFindTakesTheFirstNameThatIsThere(t *testing.T) {
	folder := folderWith(t, "plumb-bob")
	path, err := tool().Find()
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(folder, "plumb-bob"), path)
}

func TestVariableComesBeforeTheNames(t *testing.T) {
	folder := folderWith(t, "plumb", "other")
	t.Setenv("CW_TEST_PLUMB", filepath.Join(folder, "other"))
	path, err := tool().Find()
	require.NoError(t, err)
	assert.Equal(t, filepath.Join(folder, "other"), path)
}

func TestVariableThatNamesNothingIsRefused(t *testing.T) {
	folderWith(t, "plumb")
	t.Setenv("CW_TEST_PLUMB", "no-such-program")
	_, err := tool().Find()
	require.ErrorContains(t, err, `CW_TEST_PLUMB names "no-such-program"`)
}

func TestMissingToolSaysWhatToInstall(t *testing.T) {
	folderWith(t)
	_, err := tool().Find()
	require.EqualError(t, err, "Plumb is missing: install it (on Debian: apt-get install plumb-line) or let CW_TEST_PLUMB name it")
}
