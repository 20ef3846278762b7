package bundle

import (
	"encoding/json"
	"html"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
)

// What stands on the page before the engine is there is what the engine answers.
func TestExampleStandsWorkedOut(t *testing.T) {
	root := filepath.Join("..", "..")
	schema, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	require.NoError(t, err)
	page, err := putTogether(os.DirFS(filepath.Join(root, "site")), schema)
	require.NoError(t, err)
	plan, err := os.ReadFile(filepath.Join(root, "site", "example.plan.json"))
	require.NoError(t, err)
	made, err := withExample(page, plan)
	require.NoError(t, err)

	var told sheet.Sheet
	require.NoError(t, json.Unmarshal(core.Compute(plan), &told))
	require.NotEmpty(t, told.Overview.Answers)
	for _, a := range told.Overview.Answers {
		assert.Contains(t, made, ">"+html.EscapeString(a.Text)+"</a></dd>", a.ID)
	}
	for _, p := range told.Overview.Pages {
		assert.Contains(t, made, `<span class="cw-page-line" data-made>`+html.EscapeString(p.Text)+"</span>", p.Page)
	}
	for _, r := range told.Readings {
		if r.At == "/room/length" || r.At == "/mask/width" {
			assert.Contains(t, made, `value="`+html.EscapeString(r.Text)+`"`, r.At)
		}
	}
	assert.Contains(t, made, `<option selected value="measured">`)
	assert.Contains(t, made, "<svg")
	assert.Equal(t, 1, strings.Count(page, `<p data-when="/price/rate=">`))
	assert.Contains(t, made, `<p data-when="/price/rate=" hidden>`, "the example has a rate, so it asks for no first price")

	_, err = withExample(page, []byte("no plan"))
	assert.Error(t, err)
	same, err := withExample("<p>no first page</p>", plan)
	require.NoError(t, err)
	assert.Equal(t, "<p>no first page</p>", same)
}
