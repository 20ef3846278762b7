package serve

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/chromium"
	"ceilingwright/build/machine"
)

// probe is a page that loads as ours does, and says what it could do: a style,
// a script, its engine streamed, and neither eval nor an inline script.
func probe() fstest.MapFS {
	return fstest.MapFS{
		"index.html": {Data: []byte(`<!doctype html><meta charset="utf-8">
<link rel="stylesheet" href="assets/page-1.css"><script>globalThis.inline = "ran"</script>
<script defer src="assets/page-1.js"></script><body data-engine="assets/engine-1.wasm"></body>`)},
		"assets/page-1.css": {Data: []byte(`body { color: rgb(1, 2, 3) }`)},
		// The smallest engine there is: the head of a module and nothing else.
		"assets/engine-1.wasm": {Data: []byte("\x00asm\x01\x00\x00\x00")},
		"assets/page-1.js": {Data: []byte(`(async () => {
  const tried = async (f) => { try { return await f() } catch (e) { return e.name } };
  const said = [
    "origin " + self.origin.replace(/:\/\/.*/, ""),
    "style " + getComputedStyle(document.body).color,
    "inline " + (globalThis.inline ?? "blocked"),
    "eval " + await tried(() => eval("'ran'")),
    "engine " + await tried(async () => (await WebAssembly.instantiateStreaming(fetch(document.body.dataset.engine))).instance instanceof WebAssembly.Instance),
  ].join("; ");
  globalThis.said = said;
  parent.postMessage(said, "*");
})()`)},
	}
}

// host is a page of somebody else that holds ours in a frame.
func host(address, sandbox string) string {
	return `<!doctype html><meta charset="utf-8"><script>addEventListener("message", e => { globalThis.said = e.data })</script>
<iframe ` + sandbox + ` src="` + address + `"></iframe>`
}

// The headers must let the page work where it is meant to be put: alone, in a
// frame of another site, in a sandboxed frame, which has no origin of its own
// (a course system's usual way), and in a page opened from disk.
func TestPageWorksInFramesUnderItsPolicy(t *testing.T) {
	if _, err := machine.Chromium().Find(); err != nil {
		t.Skip(err)
	}
	page := httptest.NewServer(Handler(probe()))
	defer page.Close()
	hosting := func(sandbox string) string {
		server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			io.WriteString(w, host(page.URL, sandbox))
		}))
		t.Cleanup(server.Close)
		return server.URL
	}
	disk := filepath.Join(t.TempDir(), "host.html")
	require.NoError(t, os.WriteFile(disk, []byte(host(page.URL, `sandbox="allow-scripts"`)), 0o644))

	browser, stop, err := chromium.Start(context.Background())
	require.NoError(t, err)
	defer stop()
	for _, row := range []struct{ name, address, origin string }{
		{"alone", page.URL, "http"},
		{"in a frame of another site", hosting(""), "http"},
		{"in a sandboxed frame", hosting(`sandbox="allow-scripts"`), "null"},
		{"in a sandboxed frame of a page from disk", "file://" + disk, "null"},
	} {
		t.Run(row.name, func(t *testing.T) {
			tab, closeTab := chromedp.NewContext(browser)
			defer closeTab()
			require.NoError(t, chromedp.Do(tab, chromedp.Navigate(row.address)))
			limited, cancel := context.WithTimeout(tab, 10*time.Second)
			defer cancel()
			said, err := chromedp.Run(limited, chromedp.Poll[string](`globalThis.said`))
			require.NoError(t, err)
			assert.Equal(t, "origin "+row.origin+"; style rgb(1, 2, 3); inline blocked; eval EvalError; engine true", said)
		})
	}
}
