package bundle

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	tellpage "ceilingwright/core/tell/page"
)

// Where the engine says a blank stands, it stands: a problem is counted on the page on
// which it can be put right.
func TestBlanksStandWhereTheEngineSays(t *testing.T) {
	root := filepath.Join("..", "..")
	schema, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	require.NoError(t, err)
	text, err := putTogether(os.DirFS(filepath.Join(root, "site")), schema)
	require.NoError(t, err)
	on := map[string][]string{}
	blank := regexp.MustCompile(`data-(?:at|list)="(/[^"]*)"`)
	for _, of := range jobPages[1:] {
		start := strings.Index(text, `<section class="cw-block" id="`+of.at+`"`)
		require.GreaterOrEqual(t, start, 0, of.at)
		part := text[start : start+strings.Index(text[start:], "</section>")]
		for _, found := range blank.FindAllStringSubmatch(part, -1) {
			on[found[1]] = append(on[found[1]], of.name)
		}
	}
	require.Greater(t, len(on), 80)
	for at, pages := range on {
		assert.Contains(t, pages, tellpage.Of(at), at)
	}
}

// The engine and the page have the same pages in the same order.
func TestPagesAreThoseOfTheEngine(t *testing.T) {
	var names []string
	for _, p := range jobPages[1:] {
		names = append(names, p.name)
	}
	assert.Equal(t, tellpage.Names[:], names)
	_, err := turn("cellar")
	assert.Error(t, err)
}
