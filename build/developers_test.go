package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pathsTold are paths of the project in the text for developers: from one of its folders,
// up to a file or a folder.
var pathsTold = regexp.MustCompile("`((?:core|wasm|site|build|testdata)/[A-Za-z0-9_./-]+)`")

// Whoever looks up where something is finds it there.
func TestWhatDevelopersAreToldIsThere(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	found := pathsTold.FindAllStringSubmatch(string(text), -1)
	require.Greater(t, len(found), 60)
	for _, one := range found {
		path := strings.TrimSuffix(one[1], ".")
		_, err := os.Stat(filepath.Join("..", filepath.FromSlash(path)))
		assert.NoError(t, err, one[1])
	}
}
