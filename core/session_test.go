package core_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
)

// What a session answers, one plan after another, is what each would get by itself,
// and its drawings are those of the sheet.
func TestSession_AnswersAsCompute(t *testing.T) {
	files, err := filepath.Glob("../testdata/plans/*/*.json")
	require.NoError(t, err)
	var session core.Session
	for _, name := range append(files, files[0], "../testdata/plans/job.json") {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		var whole, kept map[string]any
		require.NoError(t, json.Unmarshal(core.Compute(text), &whole), name)
		require.NoError(t, json.Unmarshal(session.Sheet(text), &kept), name)
		for _, one := range whole["drawings"].([]any) {
			drawing := one.(map[string]any)
			assert.Equal(t, drawing["svg"], session.Drawing(text, drawing["id"].(string)), "%s: %s", name, drawing["id"])
			drawing["svg"] = ""
		}
		assert.Equal(t, whole, kept, name)
		assert.Empty(t, session.Drawing(text, "no such drawing"))
	}
}
