package browsertest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
)

// wheel turns the wheel down by five notches over an element.
func (v *view) wheel(element string, arguments ...any) {
	v.t.Helper()
	at := value[[]float64](v, `(() => { const r = (`+element+`).getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`, arguments...)
	// The browser wants both ways given, and our side leaves out a nought.
	call(v, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: input.DispatchMouseEventTypeMouseWheel, X: at[0], Y: at[1], DeltaX: 1, DeltaY: 500})
}

// The engine in the page and the engine of this process are one: the same plan
// gives the same bytes, readable or not.
func TestPageComputesTheSameBytesAsGo(t *testing.T) {
	names, err := filepath.Glob(filepath.Join(root, "testdata", "plans", "*.json"))
	require.NoError(t, err)
	names = append(names, filepath.Join(root, "site", "example.plan.json"))
	plans := []string{``, `null`, `{`, `{"ceilingwright":1}`, `{"ceilingwright":9}`, "{\"ceilingwright\":1,\"title\":\"\\ud800 ½ \u2028\"}"}
	for _, name := range names {
		content, err := os.ReadFile(name)
		require.NoError(t, err)
		plans = append(plans, string(content))
	}
	v := open(t, desk, "")
	assert.Equal(t, core.Version, v.text(`ceilingwright.version`))
	for _, p := range plans {
		assert.Equal(t, string(core.Compute([]byte(p))), v.text(`ceilingwright.compute($1)`, p), "%.60s", p)
	}
	assert.Equal(t, "4780000000", v.text(`ceilingwright.parseLength("4,78 m", "in").nanometres`))
}

// Quick typing is answered for its last state, nothing is lost on the way, and
// the address is left alone: browsers refuse a page that rewrites it over and
// over (100 times in 30 s, WebKit).
func TestQuickTypingLosesNothingAndLeavesTheAddressAlone(t *testing.T) {
	v := openPainter(t, desk)
	v.run(`globalThis.written = 0;
for (const name of ["replaceState", "pushState"]) { const real = history[name]; history[name] = function (...a) { written++; return real.apply(this, a); }; }
globalThis.stored = 0;
const set = Storage.prototype.setItem;
Storage.prototype.setItem = function (k, w) { if (k.startsWith("ceilingwright:plan:")) stored++; return set.call(this, k, w); };`)
	v.write("/title", strings.Repeat("Long room ", 25))
	v.write("/mask/length", "176")
	v.waitText("6″", figure, "border.DA")
	assert.Equal(t, strings.Repeat("Long room ", 25), v.text(blank+`.value`, "/title"))
	v.wait(kept + `.includes("176")`)
	assert.LessOrEqual(t, value[int](v, `written`), 75)
	assert.LessOrEqual(t, value[int](v, `stored`), 75)
}

func TestTenThousandPanelsCanBeWorkedOn(t *testing.T) {
	v := openPainter(t, desk)
	var document map[string]any
	require.NoError(t, json.Unmarshal([]byte(v.text(plan)), &document))
	layer := document["mask"].(map[string]any)["layers"].([]any)[0].(map[string]any)
	layer["columns"], layer["rows"] = "100", "100"
	text, err := json.Marshal(document)
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "many.plan.json")
	require.NoError(t, os.WriteFile(path, text, 0o644))
	v.upload(path)
	v.wait(`document.querySelector("details.cw-hang summary").textContent.includes("10000 panels")`)
	assert.True(t, v.holds(`document.querySelector("[data-fill=drawing] svg").getBoundingClientRect().height > 100`))
	v.write("/mask/length", "178")
	v.waitText("5″", figure, "border.DA")
	assert.Equal(t, "178", v.text(blank+`.value`, "/mask/length"))
	v.run(`document.querySelector("[data-do=whole-list]").focus()`)
	v.keys("\r")
	v.waitText("10000", `document.querySelectorAll(".cw-order li").length`)
}
