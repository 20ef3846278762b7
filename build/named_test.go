package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/survey"
)

// Sources are standards, laws, old public texts, or described: no page is named
// by its address and no paper for sale by its title, in the core or its checks.
func TestNoSourceIsAnAddress(t *testing.T) {
	address := regexp.MustCompile(`[a-z0-9-]+\.(?:com|co\.uk|blogspot|tripod)\b|(?i:\bmagazine|\bblog\b)`)
	library := regexp.MustCompile(`github\.com/|example\.com`)
	files := 0
	require.NoError(t, filepath.WalkDir("../core", func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(path) != ".go" {
			return err
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		files++
		for n, line := range strings.Split(string(text), "\n") {
			assert.NotRegexp(t, address, library.ReplaceAllString(line, ""), "%s:%d", path, n+1)
		}
		return nil
	}))
	require.Greater(t, files, 300)
}

// The page's own sentences call the corners as the engine does.
func TestThePageCallsCornersAsTheEngineDoes(t *testing.T) {
	letters := ""
	for i := range survey.MostCorners {
		letters += survey.CornerNumbered(i).Text()
	}
	text, err := os.ReadFile("../site/src/view/corners.ts")
	require.NoError(t, err)
	assert.Contains(t, string(text), `const READ = "`+letters+`";`)
	pages, err := filepath.Glob("../site/pages/*.html")
	require.NoError(t, err)
	require.Greater(t, len(pages), 10)
	for _, name := range pages {
		page, err := os.ReadFile(name)
		require.NoError(t, err)
		assert.Empty(t, regexp.MustCompile(`[ >](?:AB|BC|CD|DA|AC|BD)[ <,.]|[Cc]orners? [A-D]\b`).FindAllString(string(page), -1), name)
	}
}
