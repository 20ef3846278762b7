package browsertest

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	browserdomain "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// desk and phone are the two windows most things are tried in.
var (
	desk  = window{1280, 900}
	phone = window{390, 844}
)

type window struct{ wide, high int64 }

func (w window) String() string { return fmt.Sprintf("%d × %d", w.wide, w.high) }

// patience is how long anything on the page may take before a test gives up.
// Tests wait for what they want to see, so a good page never takes this long.
const patience = 15 * time.Second

// view is one tab. The tests of a lane take turns in one profile, emptied before
// each, since a new one costs the browser more time than most tests take, and most
// of them on one page that stays open (runningPage); another device is a profile of
// its own.
type view struct {
	t   *testing.T
	tab context.Context

	lock     sync.Mutex
	requests []string // every address asked for, data: and blob: left out
	faults   []string // exceptions nobody caught, and policy violations
	excused  bool
	taken    int  // tests that have had the page that runs
	changed  bool // scripts were put before the page's own, or it went elsewhere
	close    func()
	noWorker page.ScriptIdentifier // the script that refuses workers
}

// listening runs in every page before its own scripts: it reports what the
// content policy stopped, which no test wants to see by accident.
const listening = `document.addEventListener("securitypolicyviolation", (e) => {
  console.error("policy: " + e.effectiveDirective + " stopped " + e.blockedURI + " " + e.sample);
});`

// newView opens an empty tab in a profile that keeps nothing of the page.
func newView(t *testing.T, in window) *view {
	t.Helper()
	v := viewIn(t, laneOf(t).browser, in)
	call(v, storage.ClearDataForOrigin, storage.ClearDataForOriginParams{Origin: strings.TrimSuffix(hosted, "/"), StorageTypes: "local_storage"})
	return v
}

// anotherDevice opens an empty tab in a profile of its own.
func anotherDevice(t *testing.T, in window) *view {
	t.Helper()
	return viewIn(t, laneOf(t).browser, in, chromedp.WithNewBrowserContext())
}

func viewIn(t *testing.T, browser context.Context, in window, options ...chromedp.ContextOption) *view {
	t.Helper()
	tab, closeTab := chromedp.NewContext(browser, options...)
	v := &view{t: t, tab: tab, close: closeTab}
	t.Cleanup(func() {
		if !v.excused {
			v.lock.Lock()
			defer v.lock.Unlock()
			assert.Empty(t, v.faults, "the page's faults")
		}
		closeTab()
	})
	v.begin(in)
	return v
}

// allOnOne has all pages of the job on one, so that what is tried need not be turned to.
// oneAtATime has them one at a time, as people meet them.
const (
	allOnOne   = `try { localStorage.setItem("ceilingwright:pages", "all"); } catch {}`
	oneAtATime = `try { localStorage.removeItem("ceilingwright:pages"); } catch {}`
)

// noWorker refuses workers for starts without a signal, as browsers in private windows
// do: what most tests look at comes from the server they have started.
const noWorker = `Object.defineProperty(Navigator.prototype, "serviceWorker", { get() { throw new DOMException("refused", "SecurityError"); } })`

// allPages puts all pages on one where nothing could be kept of that.
func (v *view) allPages() {
	v.t.Helper()
	v.run(`document.documentElement.hasAttribute("data-all") || document.querySelector("[data-do=all-pages]").click()`)
}

// openTurned starts the page as people first meet it, one page of the job at a time.
func openTurned(t *testing.T, in window, addition string) *view {
	t.Helper()
	v := newView(t, in)
	v.before(oneAtATime)
	v.visit(hosted + addition)
	v.ready()
	return v
}

// begin readies a new tab: what the page asks for and what goes wrong on it is
// noted from now on.
func (v *view) begin(in window) {
	v.t.Helper()
	require.NoError(v.t, chromedp.Do(v.tab))
	require.NoError(v.t, chromedp.Listen(v.tab, v.note))
	call(v, network.Enable, network.EnableParams{})
	v.before(listening)
	v.before(allOnOne)
	v.noWorker = call(v, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: noWorker}).Identifier
	v.resize(in)
}

// note keeps what the page asks for and what goes wrong on it.
func (v *view) note(event any) {
	v.lock.Lock()
	defer v.lock.Unlock()
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		if url := e.Request.URL; !strings.HasPrefix(url, "data:") && !strings.HasPrefix(url, "blob:") {
			v.requests = append(v.requests, url)
		}
	case *runtime.EventExceptionThrown:
		text := e.ExceptionDetails.Text
		if thrown := e.ExceptionDetails.Exception; thrown != nil {
			text += " " + thrown.Description
		}
		v.faults = append(v.faults, text)
	case *runtime.EventConsoleAPICalled:
		for _, a := range e.Args {
			if text := string(a.Value); strings.HasPrefix(text, `"policy:`) {
				v.faults = append(v.faults, text)
			}
		}
	}
}

// inFrame is the view into a frame of the tab's page, by the start of its
// address. Browsers give a frame of another site a process of its own, so it is
// a target of its own too.
func (v *view) inFrame(address string) *view {
	v.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		targets, err := chromedp.Targets(v.tab)
		require.NoError(v.t, err)
		for _, info := range targets {
			if info.Type == "iframe" && strings.HasPrefix(info.URL, address) {
				inside, leave := chromedp.NewContext(v.tab, chromedp.WithTargetID(info.TargetID), chromedp.WithDetachOnCancel())
				v.t.Cleanup(leave)
				require.NoError(v.t, chromedp.Do(inside))
				return &view{t: v.t, tab: inside}
			}
		}
	}
	v.t.Fatalf("no frame shows %s", address)
	return nil
}

// forgive takes the one fault away that holds the words: a test has made it
// on purpose, and wants to see that it was one.
func (v *view) forgive(words string) {
	v.t.Helper()
	for end := time.Now().Add(patience / 3); ; time.Sleep(15 * time.Millisecond) {
		v.lock.Lock()
		at := slices.IndexFunc(v.faults, func(f string) bool { return strings.Contains(f, words) })
		if at >= 0 {
			v.faults = slices.Delete(v.faults, at, at+1)
		}
		faults := fmt.Sprint(v.faults)
		v.lock.Unlock()
		if at >= 0 {
			return
		}
		if time.Now().After(end) {
			v.t.Fatalf("no fault with %q among %s", words, faults)
		}
	}
}

// excuse is for tests that break the page on purpose.
func (v *view) excuse() { v.excused = true }

// asked gives the addresses asked for since the last call.
func (v *view) asked() []string {
	v.lock.Lock()
	defer v.lock.Unlock()
	asked := v.requests
	v.requests = nil
	return asked
}

// call sends one command of the browser's own protocol.
func call[P, R any](v *view, command cdp.Command[P, R], params P) R {
	v.t.Helper()
	result, err := chromedp.Call(v.tab, command, params)
	require.NoError(v.t, err)
	return result
}

// before has a script run in every page of the tab, before the page's own.
func (v *view) before(script string) {
	v.t.Helper()
	v.changed = true
	call(v, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
}

func (v *view) resize(to window) {
	v.t.Helper()
	call(v, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
		Width: to.wide, Height: to.high, DeviceScaleFactor: 1, Mobile: to.wide < 500,
	})
}

// prefer sets what the page is told of the person's wishes, such as
// prefers-color-scheme: dark. media is "", "screen" or "print".
func (v *view) prefer(media string, features ...string) {
	v.t.Helper()
	params := emulation.SetEmulatedMediaParams{Media: media}
	for i := 0; i+1 < len(features); i += 2 {
		params.Features = append(params.Features, &emulation.MediaFeature{Name: features[i], Value: features[i+1]})
	}
	call(v, emulation.SetEmulatedMedia, params)
}

// openEmpty opens the page and takes an empty sheet.
func openEmpty(t *testing.T, in window) *view {
	t.Helper()
	v := open(t, in, "")
	v.press(`.cw-example [data-do=empty]`)
	return v
}

func (v *view) visit(address string) {
	v.t.Helper()
	v.changed = true
	limited, cancel := context.WithTimeout(v.tab, patience)
	defer cancel()
	require.NoError(v.t, chromedp.Do(limited, chromedp.Navigate(address)))
}

func (v *view) reload() {
	v.t.Helper()
	v.changed = true
	v.run(`globalThis.stale = true`)
	call(v, page.Reload, page.ReloadParams{})
	v.wait(`!globalThis.stale && document.readyState === "complete"`)
	v.ready()
}

// ready waits until the engine answers and its first sheet is shown.
func (v *view) ready() {
	v.t.Helper()
	v.wait(`document.documentElement?.hasAttribute("data-ready") && document.querySelector("[data-fill=version]").textContent !== ""`)
}

// value is what an expression gives on the page; a promise is waited for.
func value[T any](v *view, expression string, arguments ...any) T {
	v.t.Helper()
	return valueWithin[T](v, patience, expression, arguments...)
}

// valueWithin is value for what takes long by its nature.
func valueWithin[T any](v *view, limit time.Duration, expression string, arguments ...any) T {
	v.t.Helper()
	limited, cancel := context.WithTimeout(v.tab, limit)
	defer cancel()
	got, err := chromedp.Run(limited, chromedp.Evaluate[T](with(expression, arguments), chromedp.EvalAwaitPromise))
	require.NoError(v.t, err, expression)
	return got
}

func (v *view) text(expression string, arguments ...any) string {
	v.t.Helper()
	return value[string](v, expression, arguments...)
}

func (v *view) holds(expression string, arguments ...any) bool {
	v.t.Helper()
	return value[bool](v, expression, arguments...)
}

// run runs statements for what they do.
func (v *view) run(statements string, arguments ...any) {
	v.t.Helper()
	value[bool](v, "(async () => {"+with(statements, arguments)+"\n})().then(() => true)")
}

// with puts arguments, written as JSON, at the $1, $2 … of an expression.
func with(expression string, arguments []any) string {
	pairs := make([]string, 0, 2*len(arguments))
	for i := len(arguments) - 1; i >= 0; i-- {
		text, err := json.Marshal(arguments[i])
		if err != nil {
			panic(err) // tests pass plain values only
		}
		pairs = append(pairs, fmt.Sprintf("$%d", i+1), string(text))
	}
	return strings.NewReplacer(pairs...).Replace(expression)
}

// wait waits until an expression is true.
func (v *view) wait(expression string, arguments ...any) {
	v.t.Helper()
	expression = with(expression, arguments)
	for end := time.Now().Add(patience); ; time.Sleep(15 * time.Millisecond) {
		limited, cancel := context.WithDeadline(v.tab, end)
		done, err := chromedp.Run(limited, chromedp.Evaluate[bool]("Boolean("+expression+")"))
		cancel()
		if err == nil && done {
			return
		}
		// While a page is being left, its evaluation fails; that passes.
		if time.Now().After(end) {
			v.failed(expression)
		}
	}
}

// failed ends the test with a look at the page.
func (v *view) failed(expression string) {
	v.t.Helper()
	if folder := os.Getenv("CEILINGWRIGHT_PICTURES"); folder != "" {
		v.picture("failed-" + strings.ReplaceAll(v.t.Name(), "/", "-"))
	}
	v.lock.Lock()
	faults := strings.Join(v.faults, "; ")
	v.lock.Unlock()
	v.t.Fatalf("never true on the page: %s (faults: %s)", expression, faults)
}

// waitText waits until an expression gives a text.
func (v *view) waitText(want, expression string, arguments ...any) {
	v.t.Helper()
	expression = with(expression, arguments)
	for end := time.Now().Add(patience); ; time.Sleep(15 * time.Millisecond) {
		got := v.text("String(" + expression + ")")
		if got == want {
			return
		}
		if time.Now().After(end) {
			require.Equal(v.t, want, got, expression)
		}
	}
}

// figure is the text of a figure as it stands on the sheet.
const figure = `document.querySelector('.cw-figure[data-figure="' + $1 + '"] .cw-value')?.textContent`

// blank is the blank for a place in the plan that is in sight.
// The first page has some blanks of others; where all pages are on one those of their
// own pages are meant.
const blank = `(((all) => all.find((b) => !b.closest("#job")) ?? all[0])(Array.from(document.querySelectorAll('[data-at="' + $1 + '"]')).filter((b) => !b.closest("[hidden]"))))`

// said is what stands beside a blank about a problem with it.
const said = `Array.from(document.querySelectorAll('[data-problem-at="' + $1 + '"]'), (p) => p.textContent).join(" ")`

// messages are the messages at the head of the sheet.
const messages = `document.querySelector("[data-fill=messages]").textContent`

// plan is the present plan, as the page keeps it inside itself.
const plan = `document.getElementById("plan").textContent`

// openStep opens the step of the finish that a place of the plan lies in.
func (v *view) openStep(at string) {
	v.t.Helper()
	v.run(`const step = /^\/finish\/steps\/\d+/.exec($1)?.[0];
  document.querySelector('.cw-step[data-base="' + step + '"] [data-do=open-step][aria-expanded=false]')?.click()`, at)
}

// write replaces what is in a blank by typing, key by key, and waits until the
// sheet has taken it in: a slow one is worked out when the keys rest.
func (v *view) write(at, text string) {
	v.t.Helper()
	v.openStep(at)
	v.run(`const b = `+blank+`; for (let f = b.closest("details"); f; f = f.parentElement.closest("details")) f.open = true; b.focus(); b.select()`, at)
	v.keys(text)
	if !strings.Contains(text, "\b") {
		v.waitText(text, `$1.slice(1).split("/").reduce((here, step) => here?.[step], JSON.parse(`+plan+`))`, at)
	}
}

// keys presses keys where the focus is; no text is one stroke back.
func (v *view) keys(text string) {
	v.t.Helper()
	if text == "" {
		text = "\b"
	}
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.KeyEvent(text)))
}

// choose takes a word of a choice in the sentences.
func (v *view) choose(at, word string) {
	v.t.Helper()
	v.openStep(at)
	v.run(`const b = `+blank+`; b.value = $2; for (const n of ["input", "change"]) b.dispatchEvent(new Event(n, { bubbles: true }))`, at, word)
	require.Equal(v.t, word, v.text(blank+`.value`, at), "the words of %s", at)
}

// leave takes the focus off the sheet.
func (v *view) leave() {
	v.t.Helper()
	v.run(`document.activeElement?.blur()`)
}

// press clicks an element with the mouse, where it stands; the step it names is opened.
func (v *view) press(selector string) {
	v.t.Helper()
	if step := regexp.MustCompile(`/finish/steps/\d+`).FindString(selector); !strings.Contains(selector, "open-step") {
		v.openStep(step)
	}
	at := value[[]float64](v, `(() => {
  const e = document.querySelector($1);
  for (let f = e.closest("details"); f; f = f.parentElement.closest("details")) if (!e.closest("summary") || e.closest("summary").parentElement !== f) f.open = true;
  e.scrollIntoView({ block: "center", inline: "center" });
  const r = e.getBoundingClientRect();
  return [r.x + r.width / 2, r.y + r.height / 2];
})()`, selector)
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.MouseClickXY(at[0], at[1])))
}

// painterPlan is the job of a painter, typed in bare inches: a room of 188 by
// 122, a mask of 180 by 115 in two by two panels. Its borders are 4 inches at
// the ends and 3½ at the sides.
const painterPlan = `{"ceilingwright":1,"id":"painter","title":"Long room",` +
	`"units":{"show":"feet-inches","bare":"in","inchMark":"1/16 in","metricMark":"1 mm","gallon":"US"},` +
	`"place":{"rules":"US","built":"","surface":"smooth","leadTest":"none","pullTest":"none"},` +
	`"room":{"length":"188","width":"122","height":"9'","fixture":{"at":"none","fromDA":"","fromAB":"","across":""}},` +
	`"mask":{"length":"180","width":"115","layers":[{"id":"L1","name":"First layer","split":"count","columns":"2","rows":"2","columnSizes":[],"rowSizes":[],` +
	`"greatestLength":"","greatestWidth":"","gap":"0","panelTolerance":"","open":""}]},` +
	`"setting":{"on":"room","leastBorder":"","wantEnds":"","wantSides":""},` +
	`"seams":{"cover":"seams","rollLength":"180 ft","waste":"10"},"finish":{"steps":[]},` +
	`"air":{"limit":"","limitUnit":"mg/m3","opened":"","shut":"","mixing":""},` +
	`"access":{"by":"platform","reachBy":"","base":"","rails":"yes","deckGap":""}}`

// fragment is a plan as a link carries it, in the form without compression.
func fragment(plan string) string {
	data := base64.RawURLEncoding.EncodeToString([]byte(plan))
	return fmt.Sprintf("#cw1_j_%d_%08x_%s", len(data), crc32.ChecksumIEEE([]byte(plan)), data)
}

// openPainter opens the page with the painter's job on it.
func openPainter(t *testing.T, in window) *view {
	t.Helper()
	v := open(t, in, fragment(painterPlan))
	v.waitText("4″", figure, "border.DA")
	return v
}

// painter types that job in.
func (v *view) painter() {
	v.t.Helper()
	for _, typed := range [][2]string{
		{"/room/length", "188"}, {"/room/width", "122"}, {"/room/height", "9'"},
		{"/mask/length", "180"}, {"/mask/width", "115"},
		{"/mask/layers/0/columns", "2"}, {"/mask/layers/0/rows", "2"},
		{"/seams/rollLength", "180 ft"},
	} {
		v.write(typed[0], typed[1])
	}
	v.leave()
}

// downloads has the tab's files land in a folder, and gives the folder.
func (v *view) downloads() string {
	v.t.Helper()
	folder := v.t.TempDir()
	info := chromedp.FromContext(v.tab)
	_, err := chromedp.CallBrowser(v.tab, browserdomain.SetDownloadBehavior, browserdomain.SetDownloadBehaviorParams{
		Behavior: browserdomain.SetDownloadBehaviorBehaviorAllow, BrowserContextID: info.BrowserContextID, DownloadPath: folder,
	})
	require.NoError(v.t, err)
	return folder
}

// arrived waits for the one file in a folder of downloads and takes it out.
func (v *view) arrived(folder string) (name, path string) {
	v.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		entries, err := os.ReadDir(folder)
		require.NoError(v.t, err)
		for _, e := range entries {
			if strings.HasSuffix(e.Name(), ".crdownload") || strings.HasPrefix(e.Name(), ".") {
				continue
			}
			name = e.Name()
			path = filepath.Join(v.t.TempDir(), name)
			require.NoError(v.t, os.Rename(filepath.Join(folder, name), path))
			return name, path
		}
	}
	v.t.Fatal("no file arrived")
	return "", ""
}

// upload gives files to the page's own chooser of files.
func (v *view) upload(path string) {
	v.t.Helper()
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.SetUploadFiles(chromedp.CSS("[data-open]"), []string{path})))
}

// picture leaves a picture of the whole page to look at.
func (v *view) picture(name string) {
	v.t.Helper()
	folder := os.Getenv("CEILINGWRIGHT_PICTURES")
	if folder == "" {
		return
	}
	yes := true
	shot := call(v, page.CaptureScreenshot, page.CaptureScreenshotParams{CaptureBeyondViewport: &yes})
	keepPicture(v.t, folder, name+".png", shot.Data)
}

func keepPicture(t *testing.T, folder, name string, content []byte) {
	t.Helper()
	require.NoError(t, os.MkdirAll(folder, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(folder, name), content, 0o644))
}
