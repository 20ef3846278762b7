package core_test

import (
	"encoding/json"
	"maps"
	"math/rand"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/sheet"
)

// What a session answers, one plan after another, is what each would get by itself,
// and its drawings are those of the sheet.
func TestSession_AnswersAsCompute(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../testdata/plans/*/*.json")
	require.NoError(t, err)
	var session core.Session
	for _, name := range append(files, files[0], "../testdata/plans/job.json") {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		whole := core.SheetOf(text)
		for i, drawing := range whole.Drawings {
			assert.Equal(t, drawing.SVG, session.Drawing(text, drawing.ID), "%s: %s", name, drawing.ID)
			whole.Drawings[i].SVG = ""
		}
		require.Equal(t, string(whole.JSON()), string(session.Sheet(text, "", "")), name)
		assert.Empty(t, session.Drawing(text, "no such drawing"))
	}
}

// However a plan is changed part by part, and whichever page is asked for, what is told is
// what a session that has kept nothing tells.
func TestSession_KeepsOnlyWhatIsToldTheSame(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../testdata/plans/*/*.json")
	require.NoError(t, err)
	var plans []map[string]json.RawMessage
	for _, name := range append(files, "../testdata/plans/job.json") {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		var one map[string]json.RawMessage
		require.NoError(t, json.Unmarshal(text, &one))
		plans = append(plans, one)
	}
	parts := []string{"title", "units", "place", "room", "mask", "setting", "seams", "finish", "days", "price", "quote", "air", "access"}
	pages := []string{"", "", "room", "mask", "setting", "hanging", "finish", "days", "price", "record", "safety", "days price"}
	for seed := range int64(6) {
		random := rand.New(rand.NewSource(seed))
		var kept core.Session
		now := maps.Clone(plans[random.Intn(len(plans))])
		for range 20 {
			part := parts[random.Intn(len(parts))]
			if other, ok := plans[random.Intn(len(plans))][part]; ok {
				now[part] = other
			} else {
				delete(now, part)
			}
			text, err := json.Marshal(now)
			require.NoError(t, err)
			page := pages[random.Intn(len(pages))]
			var fresh core.Session
			if !assert.Equal(t, string(fresh.Sheet(text, page, "")), string(kept.Sheet(text, page, "")), "seed %d, pages %q, changed %s: %s", seed, page, part, text) {
				return
			}
		}
	}
}

// A page that is asked for alone is told as it stands on the whole sheet.
func TestSession_TellsAPageAsOnTheWhole(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../testdata/plans/*/*.json")
	require.NoError(t, err)
	read := func(text []byte) (s sheet.Sheet) {
		require.NoError(t, json.Unmarshal(text, &s))
		return s
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		var session core.Session
		whole := read(session.Sheet(text, "", ""))
		told := 0
		for _, page := range []string{"room", "mask", "setting", "hanging", "finish", "days", "price", "record", "safety"} {
			part := read(session.Sheet(text, page, ""))
			assert.Equal(t, whole.Problems, part.Problems, name)
			assert.Equal(t, whole.Drawings, part.Drawings, name)
			of := func(figures []sheet.Figure) (ids []string) {
				for _, f := range figures {
					if f.Block == page {
						ids = append(ids, f.ID+" "+f.Text)
					}
				}
				return ids
			}
			assert.Equal(t, of(whole.Figures), of(part.Figures), "%s, %s", name, page)
			told += len(of(part.Figures))
		}
		assert.Len(t, whole.Figures, told, name)
	}
	var session core.Session
	assert.Empty(t, read(session.Sheet([]byte("{}"), "cellar", "")).Figures)
}
