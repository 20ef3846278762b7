package browsertest

import (
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/emulation"
	"github.com/stretchr/testify/assert"

	"ceilingwright/build/serve"
)

// hostedBy serves the published page through a host that spoils something.
func hostedBy(t *testing.T, spoil func(http.Handler) http.Handler) string {
	t.Helper()
	server := httptest.NewServer(spoil(serve.Handler(os.DirFS(dist))))
	t.Cleanup(server.Close)
	return server.URL + "/"
}

// typed is a writer that insists on one type.
type typed struct {
	http.ResponseWriter
	as string
}

func (w typed) WriteHeader(status int) {
	if w.as == "" {
		w.Header()["Content-Type"] = nil
	} else {
		w.Header().Set("Content-Type", w.as)
	}
	w.ResponseWriter.WriteHeader(status)
}

// Under the published policy the page does all it does, and nothing is
// reported stopped; every test of a hosted page looks for that at its end.
func TestPageWorksUnderItsStrictPolicy(t *testing.T) {
	v := open(t, desk, "?working=open")
	assert.Equal(t, serve.Policy, v.text(`fetch(location.pathname).then((r) => r.headers.get("Content-Security-Policy"))`))
	v.painterOnExample()
	// As text for later: what the test itself evaluates is exempt.
	v.run(`setTimeout("globalThis.tried = 1", 0)`)
	v.forgive("script-src stopped eval")
	v.run(`const s = document.createElement("script"); s.textContent = "globalThis.inline = 1"; document.head.append(s)`)
	v.forgive("stopped inline")
	assert.True(t, v.holds(`globalThis.tried === undefined && globalThis.inline === undefined`))
}

// painterOnExample changes a blank of the example and sees it answered.
func (v *view) painterOnExample() {
	v.t.Helper()
	v.write("/mask/length", "16'")
	v.leave()
	v.waitText("1′ 9¼″", figure, "border.DA") // (19′ 6½″ − 16′) / 2
}

// Cheap hosting sends the engine as something else, or as nothing at all.
func TestEngineStartsWhateverTypeTheHostSends(t *testing.T) {
	beside(t)
	for _, as := range []string{"text/plain", ""} {
		t.Run("as "+as, func(t *testing.T) {
			address := hostedBy(t, func(next http.Handler) http.Handler {
				return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
					if strings.HasSuffix(r.URL.Path, ".wasm") {
						w = typed{w, as}
					}
					next.ServeHTTP(w, r)
				})
			})
			v := newView(t, desk)
			v.visit(address)
			v.ready()
			v.painterOnExample()
		})
	}
}

// without is a host that has lost files.
func without(endings ...string) func(http.Handler) http.Handler {
	return func(next http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			for _, e := range endings {
				if strings.Contains(r.URL.Path, e) {
					http.NotFound(w, r)
					return
				}
			}
			next.ServeHTTP(w, r)
		})
	}
}

func TestEngineComesFromCarrierWhereItsFileIsMissing(t *testing.T) {
	v := newView(t, desk)
	v.visit(hostedBy(t, without(".wasm")))
	v.ready()
	v.painterOnExample()
}

// stillAPage says that the sheet can be read, filled in and kept without its
// engine.
func (v *view) stillAPage(words string) {
	v.t.Helper()
	v.wait(messages+`.includes($1)`, words)
	assert.Contains(v.t, v.text(messages), "fill it in")
	v.press(`.cw-example [data-do=empty]`)
	v.write("/room/length", "188")
	v.leave()
	assert.Equal(v.t, "188", v.text(blank+`.value`, "/room/length"))
	v.wait(kept + `.includes('"188"')`)
	assert.Equal(v.t, "—", v.text(figure, "room.area"))
	assert.True(v.t, v.holds(`document.querySelector("#room").getBoundingClientRect().height > 50`))
}

func TestMissingEngineIsSaidAndTheSheetCanStillBeFilledIn(t *testing.T) {
	v := newView(t, desk)
	v.visit(hostedBy(t, without(".wasm", "carrier")))
	v.stillAPage("did not arrive")
	assert.True(t, v.holds(`document.querySelector("[data-do=start-again]").offsetHeight > 0`))
}

func TestTryingAgainStartsTheEngineOnceItArrives(t *testing.T) {
	lost := true
	v := newView(t, desk)
	v.visit(hostedBy(t, func(next http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if lost && (strings.HasSuffix(r.URL.Path, ".wasm") || strings.Contains(r.URL.Path, "carrier")) {
				http.NotFound(w, r)
				return
			}
			next.ServeHTTP(w, r)
		})
	}))
	v.wait(messages + `.includes("did not arrive")`)
	lost = false
	v.press(`[data-do=start-again]`)
	v.ready()
	v.painterOnExample()
}

func TestBrowserWithoutWebAssemblyIsTold(t *testing.T) {
	v := newView(t, desk)
	v.before(`delete globalThis.WebAssembly`)
	v.visit(hosted)
	v.stillAPage("cannot run")
}

// A site of its own, stricter than ours, that forbids the engine.
func TestForbiddenEngineIsSaidByItsName(t *testing.T) {
	v := newView(t, desk)
	v.excuse() // the policy is meant to stop it
	v.visit(hostedBy(t, func(next http.Handler) http.Handler {
		return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			next.ServeHTTP(strict{w}, r)
		})
	}))
	v.stillAPage("forbids")
}

// strict is a writer that takes the engine out of the policy.
type strict struct{ http.ResponseWriter }

func (w strict) WriteHeader(status int) {
	policy := w.Header().Get("Content-Security-Policy")
	if policy != "" {
		w.Header().Set("Content-Security-Policy", strings.Replace(policy, " 'wasm-unsafe-eval'", "", 1))
	}
	w.ResponseWriter.WriteHeader(status)
}

func TestPageWithoutScriptsCanBeRead(t *testing.T) {
	v := newView(t, desk)
	call(v, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	v.visit(hosted)
	tree := call(v, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{})
	var words strings.Builder
	for _, node := range tree.Nodes {
		if node.Name != nil && !node.Ignored {
			words.Write(node.Name.Value)
			words.WriteString(" ")
		}
	}
	for _, part := range []string{"Scripts are switched off", "The ceiling is", "Length of the ceiling", "Setting out", "Local code and each product"} {
		assert.Contains(t, words.String(), part)
	}
}
