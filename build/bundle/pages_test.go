package bundle

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const smallSchema = `{"properties": {
	"title": {"$ref": "#/$defs/text"},
	"room": {"properties": {
		"height": {"$ref": "#/$defs/length"},
		"form": {"enum": ["", "round", "square"]},
		"walls": {"items": {"$ref": "#/$defs/wall"}}}}},
 "$defs": {
	"text": {"type": "string"}, "length": {"type": "string"}, "number": {"type": "string"},
	"wall": {"properties": {"angle": {"$ref": "#/$defs/number"}, "sizes": {"items": {"$ref": "#/$defs/length"}}}}}}`

// page is what a frame and a page of the job come to.
func page(frame, room string) (string, error) {
	return putTogether(fstest.MapFS{"index.html": {Data: []byte(frame)}, "pages/room.html": {Data: []byte(room)}}, []byte(smallSchema))
}

// Each short form, and what stands in the page for it.
func TestShortForms(t *testing.T) {
	const end = ` autocomplete="off" aria-label="Name">`
	const decimal = ` inputmode="decimal" spellcheck="false"` + end
	const text = ` inputmode="text" spellcheck="false"` + end
	for short, want := range map[string]string{
		`{{blank "/room/height" "Name"}}`:                                      `<input data-kind="length" data-at="/room/height"` + text,
		"{{blank \"/title\" \"Name\" `class=\"wide\"`}}":                       `<input data-kind="words" data-at="/title" class="wide"` + text,
		"{{blank \"/room/height\" \"Name\" `data-signed`}}":                    `<input data-kind="length" data-at="/room/height" data-signed` + text,
		`{{date "/title" "Name"}}`:                                             `<input type="date" data-kind="date" data-at="/title"` + end,
		`{{lines "/title" "Name"}}`:                                            `<textarea data-kind="words" rows="3" data-at="/title"` + text + `</textarea>`,
		`{{choice "/room/form" "Name" "round" "oval or round" "square" "so"}}`: `<select data-at="/room/form" aria-label="Name"><option value="round">oval or round</option><option value="square">so</option></select>`,
		"{{choice \"/room/form\" \"Name\" `data-options=\"x\"`}}":              `<select data-at="/room/form" data-options="x" aria-label="Name"></select>`,
		`{{question "/room/form" "Is it so"}}`:                                 `Is it so: <select data-at="/room/form" data-options="answers" aria-label="Is it so"></select>`,
		`{{figure "room.area" "area"}}`:                                        `<div class="cw-figure" data-figure="room.area" data-label="area"></div>`,
		`{{figure "room.area" "area" "small" "optional"}}`:                     `<div class="cw-figure cw-figure--small" data-figure="room.area" data-label="area" data-optional></div>`,
		`{{term "lap"}}`:            `<button type="button" class="cw-term" data-do="word" data-to="lap">lap</button>`,
		`{{term "lap" "lapped"}}`:   `<button type="button" class="cw-term" data-do="word" data-to="lap">lapped</button>`,
		`{{add "/room/walls" "x"}}`: `<button type="button" data-do="add" data-to="/room/walls">x</button>`,
		`{{leaveOut}}`:              `<button type="button" class="cw-off" data-do="remove">leave out</button>`,
		`{{asset "page.css"}}`:      `{{page.css}}`,
	} {
		got, err := page(`{{page "room"}}`, short)
		require.NoError(t, err, short)
		assert.Equal(t, want, got, short)
	}
}

// Within the pattern of an entry a pointer begins at the entry.
func TestEntryOfAList(t *testing.T) {
	got, err := page(`{{page "room"}}{{entry "t-wall" "/room/walls"}}{{entry "t-size" "/room/walls/-/sizes"}}`, `<p>room</p>
{{define "t-wall"}}
<li data-when="/room/form=round">
  {{blank "angle" "Angle"}}
  {{figure "turn" "turn"}}
  {{add "sizes" "more"}}
</li>
{{end}}
{{define "t-size"}}<b>{{blank "" "Size"}}</b>{{end}}`)
	require.NoError(t, err)
	assert.Equal(t, `<p>room</p>
<script type="text/html" id="t-wall">
<li data-when="/room/form=round"><input data-kind="number" data-rel="angle" inputmode="decimal" spellcheck="false" autocomplete="off" aria-label="Angle">`+
		`<div class="cw-figure" data-figure-rel="turn" data-label="turn"></div><button type="button" data-do="add" data-to="sizes">more</button></li>
</script><script type="text/html" id="t-size"><b><input data-kind="length" data-rel="" inputmode="text" spellcheck="false" autocomplete="off" aria-label="Size"></b></script>`, got)
}

// What is misspelt stops the build, with the file, the line and what to do.
func TestMisspeltStopsTheBuild(t *testing.T) {
	for written, want := range map[string]string{
		"<p>\n{{blank \"/room/hieght\" \"Height\"}}":         `pages/room.html:2:2: executing "pages/room.html" at <blank "/room/hieght" "Height">: error calling blank: the plan has no /room/hieght; /room has form, height, walls (core/plan/plan.schema.json)`,
		`{{blank "height" "Height"}}`:                        `begins with no /`,
		`{{blank "/room/form" "Form"}}`:                      `nothing can be typed at /room/form by the schema; is it a choice?`,
		`{{blank "/title" "Title" "wide"}}`:                  `"wide" is no attribute`,
		`{{date "/room/height" "Day"}}`:                      `/room/height holds no text`,
		`{{choice "/room/form" "F" "round" "r"}}`:            `/room/form can be "square" by the schema: offer it`,
		`{{choice "/room/form" "F" "oval" "r"}}`:             `/room/form cannot be "oval" by the schema: it is one of , round, square`,
		`{{choice "/room/form" "F" "round"}}`:                `a choice of /room/form has a value and no words`,
		`{{figure "room.area" "area" "tiny"}}`:               `a figure is small, optional or both, not "tiny"`,
		`{{add "/room/height" "more"}}`:                      `the plan has no /room/height/-; /room/height has no parts`,
		`{{blnk "/title" "Title"}}`:                          `pages/room.html:1: function "blnk" not defined`,
		"<p>\n<b data-when=\"/room/from=round\">":            `pages/room.html:2: data-when="/room/from=round": the plan has no /room/from`,
		`<b data-when="/room/form!=oval|round">`:             `/room/form is never "oval"; it is one of`,
		`<b data-when="/room/form">`:                         `say what is chosen there: /room/form=…`,
		`<ul data-list="/room/wals">`:                        `the plan has no /room/wals`,
		`{{define "t-wall"}}{{end}}{{define "t-x"}}x{{end}}`: `index.html does not name t-x`,
	} {
		_, err := page(`{{page "room"}}`, written)
		assert.ErrorContains(t, err, want, written)
	}
	_, err := page(`{{entry "t-wall" "/room/walls"}}`, `{{define "t-wall"}}<b data-when="angel=1">{{end}}`)
	assert.ErrorContains(t, err, `t-wall:1: data-when="angel=1": the plan has no /room/walls/-/angel; /room/walls/- has angle, sizes`)
	_, err = page(`{{entry "t-wall" "/room/wall"}}`, `{{define "t-wall"}}{{end}}`)
	assert.ErrorContains(t, err, `the plan has no /room/wall/-`)
	_, err = page(`<p>`, `<p>`)
	assert.EqualError(t, err, `index.html does not name pages/room.html: add it as {{page …}}, or as {{entry …}} if it is a pattern`)
	_, err = putTogether(os.DirFS(t.TempDir()), []byte(smallSchema))
	assert.ErrorIs(t, err, os.ErrNotExist)
	_, err = putTogether(os.DirFS(t.TempDir()), []byte(`{`))
	assert.ErrorContains(t, err, "the plan's schema")
}

// The page's own files go together with the plan's schema, and nothing is left
// of their short forms but the names of the assets.
func TestThePageGoesTogether(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	schema, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	require.NoError(t, err)
	page, err := putTogether(os.DirFS(filepath.Join(root, "site")), schema)
	require.NoError(t, err)
	assert.Equal(t, 6, strings.Count(page, "{{"))
	assert.Greater(t, strings.Count(page, `data-at="`), 150)
	assert.Greater(t, strings.Count(page, `data-rel="`), 120)
}
