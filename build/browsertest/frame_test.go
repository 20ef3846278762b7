package browsertest

import (
	"fmt"
	"html"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// framing serves a page of another site that holds ours in a frame and fits
// the frame to the heights ours tells.
func framing(t *testing.T, sandbox, address string) string {
	t.Helper()
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprintf(w, `<!doctype html><meta charset="utf-8"><title>Another site</title>
<body style="margin:0"><iframe id="frame" %s style="width:700px;height:600px;border:0" src="%s"></iframe>
<script>
globalThis.heights = [];
addEventListener("message", (e) => {
  if (e.data?.type !== "ceilingwright:height") return;
  heights.push(e.data.height);
  document.getElementById("frame").style.height = e.data.height + "px";
});
</script>`, sandbox, html.EscapeString(address))
	}))
	t.Cleanup(server.Close)
	return server.URL + "/"
}

// Another site puts the page in a frame, freely or in a sandbox, where it has
// no origin, no storage and may not save: it works, takes its plan from the
// address, and its height comes to rest.
func TestPageWorksInFrameOfAnotherSite(t *testing.T) {
	// 127.0.0.1 and localhost are two sites to a browser.
	address := strings.Replace(hosted, "127.0.0.1", "localhost", 1) + fragment(painterPlan)
	for _, row := range []struct{ name, sandbox, state string }{
		{"free", "", ""},
		{"sandboxed", `sandbox="allow-scripts"`, "keeps nothing"},
	} {
		t.Run(row.name, func(t *testing.T) {
			v := newView(t, window{800, 900})
			v.visit(framing(t, row.sandbox, address))
			v.wait(`heights.length > 0 && heights.at(-1) > 1000`)
			inside := v.inFrame(strings.Replace(hosted, "127.0.0.1", "localhost", 1))
			inside.ready()
			inside.waitText("4″", figure, "border.DA")
			inside.waitText("Long room", blank+`.value`, "/title")
			assert.True(t, inside.holds(`document.documentElement.hasAttribute("data-framed") && !document.querySelector("[data-fill=own-tab]").hidden`))

			v.run(`await new Promise((r) => setTimeout(r, 500))`)
			resting := value[[]float64](v, `[heights.at(-1), heights.length]`)
			v.run(`for (let i = 0; i < 20; i++) { document.getElementById("frame").style.height = (heights.at(-1) + i % 2) + "px"; await new Promise((r) => setTimeout(r, 20)); }`)
			after := value[[]float64](v, `[heights.at(-1), heights.length]`)
			assert.Equal(t, resting, after, "twenty messages do not make it grow")
			assert.True(t, inside.holds(`document.scrollingElement.scrollHeight <= innerHeight + 1`), "the frame fits")

			inside.run(`const b = `+blank+`; b.focus(); b.value = "170"; b.dispatchEvent(new InputEvent("input", { bubbles: true }))`, "/mask/length")
			inside.waitText("9″", figure, "border.DA")
			if row.state != "" {
				inside.wait(messages+`.includes($1)`, row.state)
			}
		})
	}
}
