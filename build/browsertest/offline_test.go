package browsertest

import (
	"crypto/sha256"
	"encoding/base64"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"
	"testing/fstest"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/build/serve"
)

const (
	registered = `navigator.serviceWorker.getRegistrations().then((all) => all.length)`
	// keptFiles are the files that are kept here, each as its version and path.
	keptFiles = `(async () => {
  const names = [];
  for (const name of await caches.keys()) for (const r of await (await caches.open(name)).keys()) names.push(name.split(" ").at(-1) + " " + new URL(r.url).pathname);
  return names;
})()`
	ownVersion = `document.documentElement.dataset.version`
)

// withWorker opens the page on a device of its own that allows workers, and waits
// until it has one.
func withWorker(t *testing.T, address string) *view {
	t.Helper()
	v := anotherDevice(t, desk)
	v.allowWorker()
	v.visit(address)
	v.ready()
	// It hashes and keeps ten megabytes, beside all that a busy machine does.
	valueWithin[bool](v, 4*patience, `(async () => {
  const { active } = await navigator.serviceWorker.ready;
  while (active.state !== "activated") await new Promise((r) => setTimeout(r, 20));
  return true;
})()`)
	return v
}

func (v *view) allowWorker() {
	v.t.Helper()
	call(v, page.RemoveScriptToEvaluateOnNewDocument, page.RemoveScriptToEvaluateOnNewDocumentParams{Identifier: v.noWorker})
}

// offline takes the signal away: from the page and, with the server, from its worker.
func (v *view) offline(server *httptest.Server) {
	v.t.Helper()
	server.Close()
	yes := true
	call(v, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
		EmulateOfflineServiceWorker: &yes,
		MatchedNetworkConditions:    []*network.Conditions{{DownloadThroughput: -1, UploadThroughput: -1, Offline: true}},
	})
}

// A page that was open once with a signal opens without one, works out what is typed
// and can be taken along. Nothing is kept but its own files, of one version, and
// nobody else is asked.
func TestReloadWithoutSignal(t *testing.T) {
	server := httptest.NewServer(serve.Handler(os.DirFS(dist)))
	t.Cleanup(server.Close)
	v := withWorker(t, server.URL)
	version := v.text(ownVersion)
	files := value[[]string](v, keptFiles)
	assert.Len(t, files, 5, "the page, its style, script, engine and carrier")
	for _, f := range files {
		assert.Regexp(t, "^"+version+" /(assets/.*)?$", f)
	}
	for _, url := range v.asked() {
		assert.True(t, strings.HasPrefix(url, server.URL), url)
	}

	v.offline(server)
	v.reload()
	v.painterOnExample()
	folder := v.downloads()
	v.press(`[data-do=take-along]`)
	v.arrived(folder)
	assert.NotContains(t, v.text(messages), "new version")
	for _, address := range []string{"/?working=open", "/index.html" + fragment(painterPlan)} {
		v.visit(server.URL + address)
		v.ready()
	}
	v.waitText("4″", figure, "border.DA")
	assert.Len(t, value[[]string](v, keptFiles), 5)
}

// versions serves one version of the page until it is told to go on to the next.
type versions struct {
	handlers []http.Handler
	at       atomic.Int32
}

func (s *versions) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	s.handlers[s.at.Load()].ServeHTTP(w, r)
}

// twoVersions are the page as built, and one whose HTML is another.
func twoVersions(t *testing.T) *versions {
	t.Helper()
	first := fstest.MapFS{}
	for _, pattern := range []string{"*", "assets/*"} {
		paths, err := filepath.Glob(filepath.Join(dist, pattern))
		require.NoError(t, err)
		for _, path := range paths {
			if content, err := os.ReadFile(path); err == nil {
				name, err := filepath.Rel(dist, path)
				require.NoError(t, err)
				first[filepath.ToSlash(name)] = &fstest.MapFile{Data: content}
			}
		}
	}
	second := fstest.MapFS{}
	for name, file := range first {
		second[name] = file
	}
	before := string(first["index.html"].Data)
	version := regexp.MustCompile(`data-version="([0-9a-f]+)"`).FindStringSubmatch(before)
	require.NotNil(t, version)
	after := strings.ReplaceAll(before, version[1], "second")
	hash := func(text string) string {
		sum := sha256.Sum256([]byte(text))
		return base64.StdEncoding.EncodeToString(sum[:])
	}
	worker := strings.NewReplacer(version[1], "second", hash(before), hash(after)).Replace(string(first["offline.js"].Data))
	require.Contains(t, worker, hash(after))
	second["index.html"] = &fstest.MapFile{Data: []byte(after)}
	second["offline.js"] = &fstest.MapFile{Data: []byte(worker)}
	return &versions{handlers: []http.Handler{serve.Handler(first), serve.Handler(second)}}
}

const versionOffer = `document.querySelector("[data-message=version]")?.textContent`

// A new version is offered and waits: put off, it comes back at the next start, the
// page still whole in the version before, even without a signal; taken, the page
// starts in it with the job as it was, and nothing of the old one is left. A page in
// another tab is not started anew under somebody's hands: it is told.
func TestNewVersionWaitsUntilItIsTaken(t *testing.T) {
	source := twoVersions(t)
	server := httptest.NewServer(source)
	t.Cleanup(server.Close)
	v := withWorker(t, server.URL)
	first := v.text(ownVersion)
	v.reload()
	assert.Equal(t, first, v.text(`new Promise((told) => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = (e) => told(e.data.version);
  const worker = navigator.serviceWorker.controller;
  for (const other of [null, "x", {}, { type: "ceilingwright:no-such-thing" }, { type: "ceilingwright:version" }]) worker.postMessage(other);
  worker.postMessage({ type: "ceilingwright:version" }, [port2]);
})`), "what it does not know it leaves unanswered")
	assert.False(t, v.holds(`Boolean(`+versionOffer+`)`))

	source.at.Store(1)
	v.reload()
	v.wait(versionOffer + `?.includes("A new version is ready")`)
	assert.Equal(t, first, v.text(ownVersion))
	assert.Equal(t, []string{"Take it now", "Later"}, value[[]string](v, `Array.from(document.querySelectorAll("[data-message=version] button"), (b) => b.textContent)`))
	v.picture("new-version")
	v.press(`[data-message=version] [data-do=put-away]`)
	assert.False(t, v.holds(`Boolean(`+versionOffer+`)`))
	v.reload()
	v.wait(versionOffer)
	assert.Equal(t, first, v.text(ownVersion), "the old version stays")

	other := viewIn(t, v.tab, desk)
	other.allowWorker()
	other.visit(server.URL)
	other.ready()
	assert.Equal(t, first, other.text(ownVersion))
	other.wait(versionOffer)
	other.press(`[data-message=version] [data-do=put-away]`)

	v.press(`.cw-example [data-do=make-mine]`)
	v.write("/title", "Kept over")
	v.press(`[data-do=take-version]`)
	v.wait(ownVersion + ` === "second" && document.documentElement.hasAttribute("data-ready")`)
	v.ready()
	v.waitText("Kept over", blank+`.value`, "/title")
	assert.False(t, v.holds(`Boolean(`+versionOffer+`)`))
	for _, f := range value[[]string](v, keptFiles) {
		assert.Regexp(t, "^second ", f)
	}
	other.wait(versionOffer)
	assert.Equal(t, first, other.text(ownVersion), "nobody started it anew")
	other.press(`[data-do=take-version]`)
	other.wait(ownVersion + ` === "second"`)
}

// Where the job could not be kept, a new version is not taken over it.
func TestNewVersionIsNotTakenOverAJobThatIsNotKept(t *testing.T) {
	source := twoVersions(t)
	server := httptest.NewServer(source)
	t.Cleanup(server.Close)
	v := withWorker(t, server.URL)
	source.at.Store(1)
	v.reload()
	v.wait(versionOffer)
	v.press(`.cw-example [data-do=make-mine]`)
	v.run(`Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }`)
	v.write("/title", "Not kept")
	v.press(`[data-do=take-version]`)
	v.wait(messages + `.includes("no room left")`)
	v.run(`await new Promise((r) => setTimeout(r, 500))`)
	assert.NotEqual(t, "second", v.text(ownVersion))
	assert.Equal(t, "Not kept", v.text(blank+`.value`, "/title"))
}

// A file from disk and a page in a frame of the same site register nothing; nothing
// is said of it.
func TestNoWorkerFromDiskOrInAFrame(t *testing.T) {
	beside(t)
	v := anotherDevice(t, desk)
	v.allowWorker()
	v.before(`if (globalThis.ServiceWorkerContainer) ServiceWorkerContainer.prototype.register = () => { globalThis.tried = true; return Promise.reject(); }`)
	v.visit("file://" + filepath.Join(dist, "ceilingwright.html"))
	v.ready()
	assert.Empty(t, v.text(messages))
	assert.True(t, v.holds(`globalThis.tried === undefined`), "the single file")
	v.visit("file://" + filepath.Join(dist, "index.html"))
	v.ready()
	assert.True(t, v.holds(`globalThis.tried === undefined`), "the page saved to disk")
	v.visit(hosted + "ceilingwright.html")
	v.ready()
	assert.True(t, v.holds(`globalThis.tried === undefined`), "the single file on a host")

	address := hostedBy(t, func(own http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if r.URL.Path != "/around" {
				own.ServeHTTP(w, r)
				return
			}
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			w.Write([]byte(`<!doctype html><title>Own site</title>` + framed("", "/"+fragment(painterPlan))))
		})
	})
	framing := anotherDevice(t, desk)
	framing.allowWorker()
	framing.visit(address + "around")
	framing.wait(`document.querySelector("iframe").contentDocument?.documentElement?.hasAttribute("data-ready")`)
	framing.run(`await new Promise((r) => setTimeout(r, 300))`)
	assert.Equal(t, 0, value[int](framing, registered))
}
