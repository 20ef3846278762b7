package browsertest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPlanSavedAsFileOpensAgain(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/title", "Long room, the river house")
	before := v.text(plan)
	folder := v.downloads()
	v.press(`[data-do=save-file]`)
	name, path := v.arrived(folder)
	assert.Equal(t, "long-room-the-river-house.plan.json", name)
	assert.Contains(t, v.text(messages), name, "the page says where it went")
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.JSONEq(t, before, string(content))

	// On another device, which has never seen it.
	other := anotherDevice(t, phone)
	other.visit(hosted)
	other.ready()
	other.upload(path)
	other.waitText("4″", figure, "border.DA")
	assert.Equal(t, before, other.text(plan))
	assert.Equal(t, "Long room, the river house", other.text(blank+`.value`, "/title"))
	assert.Empty(t, other.text(messages))
}

func TestFileThatIsNoPlanIsRefusedAndTheSheetStays(t *testing.T) {
	v := openPainter(t, desk)
	before := v.text(plan)
	whole := before
	huge := `{"ceilingwright":1,"title":"` + strings.Repeat("x", 50<<20) + `"}`
	for _, row := range []struct{ name, content, words string }{
		{"other.json", `{"rooms":[{"length":5}]}`, "another program"},
		{"list.json", `[1,2,3]`, "another program"},
		{"cut.plan.json", whole[:len(whole)*2/3], "cut off"},
		{"words.json", "Dear Sir,", "not a plan"},
		{"empty.json", "", "not a plan"},
		{"picture.json", "\x89PNG\r\n\x1a\n\x00\x00", "not a plan"},
		{"newer.plan.json", strings.Replace(whole, `"ceilingwright":1`, `"ceilingwright":2`, 1), "newer"},
		{"odd.plan.json", strings.Replace(whole, `"ceilingwright":1`, `"ceilingwright":"one"`, 1), "which version"},
		{"huge.json", huge, "larger than 2 MB"},
	} {
		path := filepath.Join(t.TempDir(), row.name)
		require.NoError(t, os.WriteFile(path, []byte(row.content), 0o644))
		v.upload(path)
		v.wait(messages+`.includes($1)`, row.words)
		assert.Contains(t, v.text(messages), "as it was", row.name)
		assert.Equal(t, before, v.text(plan), row.name)
		v.run(`document.querySelector("[data-fill=messages]").replaceChildren()`)
	}
}

// Text of a plan is text wherever it is shown: on the sheet, in the drawing,
// in the page's own block, in a page taken along.
func TestMarkupInPlanIsShownAsTextAndNeverRuns(t *testing.T) {
	const mark = `</script><script>globalThis.ran = 1</script><img src=x onerror="globalThis.ran=2"><!--`
	v := openPainter(t, desk)
	var document map[string]any
	require.NoError(t, json.Unmarshal([]byte(v.text(plan)), &document))
	document["title"] = mark
	layer := document["mask"].(map[string]any)["layers"].([]any)[0].(map[string]any)
	layer["name"] = mark
	layer["id"] = mark
	document["finish"] = map[string]any{"steps": []any{map[string]any{"id": mark, "kind": "base", "name": mark, "area": "surface", "coats": "1", "by": "spread",
		"spread": mark, "spreadUnit": mark, "layer": mark, "cans": []any{map[string]any{"size": mark, "unit": mark}}}}}
	document["place"].(map[string]any)["surface"] = mark
	document[mark] = mark
	text, err := json.Marshal(document)
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "marked.plan.json")
	require.NoError(t, os.WriteFile(path, text, 0o644))
	v.upload(path)
	v.waitText(mark, blank+`.value`, "/title")
	v.wait(`document.querySelector("details.cw-hang summary").textContent.includes("<img")`)
	assert.True(t, v.holds(`globalThis.ran === undefined && document.querySelectorAll("img, .cw-page script, svg script").length === 0`))

	v.reload()
	v.waitText(mark, blank+`.value`, "/title")
	folder := v.downloads()
	v.press(`[data-do=take-along]`)
	_, along := v.arrived(folder)
	copied := anotherDevice(t, desk)
	copied.visit("file://" + along)
	copied.ready()
	copied.waitText(mark, blank+`.value`, "/title")
	assert.True(t, copied.holds(`globalThis.ran === undefined && document.querySelectorAll("img, .cw-page script, svg script").length === 0`))
}
