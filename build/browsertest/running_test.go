package browsertest

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// runningPage is the page that stays open between tests. A start takes the
// browser a new process and the engine anew, more than most tests take; a plan put
// on a page that runs takes a twentieth of that.
type runningPage struct {
	v  *view
	as string // how it looked when it was new
}

// open opens the published page and waits for its answers. With nothing more,
// or a plan in a link, it may be a page that runs already, put back to how it
// looked when it was new; any other address is a start of its own.
func open(t *testing.T, in window, addition string) *view {
	t.Helper()
	if addition != "" && !strings.HasPrefix(addition, "#") {
		return openAnew(t, in, addition)
	}
	v := onRunning(t, in)
	v.put(addition)
	return v
}

// openAnew starts the page in a new tab of a profile that keeps nothing: for
// tests of the start itself, of what is asked for at it, of the history, and of
// a page that is broken on purpose.
func openAnew(t *testing.T, in window, addition string) *view {
	t.Helper()
	v := newView(t, in)
	v.visit(hosted + addition)
	v.ready()
	return v
}

// onRunning is the page that runs in the test's lane, its view handed to the test
// and given back at its end.
func onRunning(t *testing.T, in window) *view {
	t.Helper()
	l := laneOf(t)
	if l.running == nil {
		l.running = startRunning(t, l.browser)
	}
	v := l.running.v
	v.t = t
	v.taken++
	v.resize(in)
	v.asked()
	t.Cleanup(func() {
		v.lock.Lock()
		faults := v.faults
		v.faults = nil
		v.lock.Unlock()
		if !v.excused {
			assert.Empty(t, faults, "the page's faults")
		}
		if t.Failed() || v.excused || v.changed || len(faults) > 0 || !v.cleared(l.running.as) {
			l.closeRunning()
		}
	})
	return v
}

func startRunning(t *testing.T, browser context.Context) *runningPage {
	t.Helper()
	tab, closeTab := chromedp.NewContext(browser)
	v := &view{t: t, tab: tab, close: closeTab}
	v.begin(desk)
	v.visit(hosted)
	v.ready()
	v.run(`globalThis.cwReal = { print, setItem: Storage.prototype.setItem };
globalThis.cwOwn = new Set([...Object.getOwnPropertyNames(globalThis), "cwOwn", "cwFolds"])`)
	page := &runningPage{v: v}
	page.as = v.look()
	v.changed = false
	return page
}

// closeRunning closes the page that runs: the next test gets a new one.
func (l *lane) closeRunning() {
	if l.running != nil {
		l.running.v.close()
		l.running = nil
	}
}

// put puts a plan on the page as a link does, or the worked example as its
// button does.
func (v *view) put(link string) {
	v.t.Helper()
	if link == "" {
		v.run(`localStorage.clear(); document.querySelector("[data-do=example]").click()`)
		return
	}
	id := ""
	// The page remembers some things by the plan's id, for as long as it runs.
	// A tab of a test before may still be leaving, and keeps its plan as it goes.
	if text, err := base64.RawURLEncoding.DecodeString(link[strings.LastIndex(link, "_")+1:]); err == nil && strings.HasPrefix(link, "#cw1_j_") {
		var has struct{ ID string }
		if json.Unmarshal(text, &has) == nil && has.ID != "" {
			id = fmt.Sprintf("n%d-%s", v.taken, has.ID)
			link = fragment(strings.Replace(string(text), `"id":"`+has.ID+`"`, `"id":"`+id+`"`, 1))
		}
	}
	v.run(`localStorage.clear(); location.replace($1)`, link)
	v.wait(`document.querySelector("[data-fill=state]").textContent === "from a link, not kept" && (!$1 || JSON.parse(`+plan+`).id === $1)`, id)
}

// cleared puts a page back to how it looked when it was new, and says whether
// it came back to that.
func (v *view) cleared(as string) bool {
	limited, cancel := context.WithTimeout(v.tab, patience)
	defer cancel()
	// What goes wrong here is no fault of the test that ran: the page is closed.
	if _, err := chromedp.Call(v.tab, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{}); err != nil {
		return false
	}
	if _, err := chromedp.Call(v.tab, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{}); err != nil {
		return false
	}
	if err := chromedp.Do(limited, chromedp.MouseEvent(chromedp.MouseMoved, 0, 0)); err != nil {
		return false
	}
	got, err := chromedp.Run(limited, chromedp.Evaluate[string](lookNew, chromedp.EvalAwaitPromise))
	return err == nil && got == as
}

// look is how a page looks once its folds are shut and the example is on it.
func (v *view) look() string {
	v.t.Helper()
	return v.text(lookNew)
}

// lookNew puts the page back, with the functions of the browser that tests replace,
// and gives what tells one that was used from a new one: that a test has left
// something of its own, or else all of the document.
const lookNew = `(async () => {
  globalThis.print = cwReal.print;
  Storage.prototype.setItem = cwReal.setItem;
  for (const object of [history, navigator.clipboard]) for (const name of Object.getOwnPropertyNames(object)) delete object[name];
  for (const name of Object.getOwnPropertyNames(globalThis)) {
    if (cwOwn.has(name)) continue;
    // A list is written to by something that still listens.
    if (typeof globalThis[name] === "object" || !delete globalThis[name]) return "names of a test";
  }
  if (matchMedia("(pointer: coarse)").matches) return "fingers";
  const soon = async (is) => { for (let i = 0; i < 100 && !is(); i++) await new Promise((r) => setTimeout(r, 20)); };
  ` + unhurried + `
  document.querySelector(".cw-ladder-leave")?.click();
  await soon(() => !document.querySelector(".cw-ladder"));
  document.activeElement?.blur();
  document.querySelector("[data-do=example]").click();
  for (const b of document.querySelectorAll("[data-do=put-away], [data-do=stamp][data-to=found]")) b.click();
  // A second touch on the drawing puts out what an earlier one has lit.
  document.querySelector("svg [data-lit] *")?.dispatchEvent(new MouseEvent("click", { bubbles: true }));
  // The drawing follows what was pressed last.
  document.getElementById("h-job").click();
  const drawn = document.querySelector("[data-drawing-layer]");
  if (drawn.selectedIndex > 0) {
    drawn.selectedIndex = 0;
    drawn.dispatchEvent(new Event("change", { bubbles: true }));
  }
  document.querySelector(".cw-drawing[data-looking=down] [data-do=turn-over]")?.click();
  const folds = Array.from(document.querySelectorAll("details"));
  globalThis.cwFolds ??= folds.map((d) => d.open);
  folds.forEach((d, i) => d.open = cwFolds[i]);
  await new Promise((r) => setTimeout(r, 20));
  localStorage.clear();
  const copy = document.documentElement.cloneNode(true);
  for (const e of copy.querySelectorAll("[data-fill=hear], [data-fill=state], [data-fill=echo], [data-fill=undone]")) e.textContent = "";
  for (const e of copy.querySelectorAll(".cw-undo button")) e.removeAttribute("aria-disabled");
  copy.querySelector(".cw-echo")?.remove();
  // A choice that once had no word chosen keeps one for it.
  for (const e of copy.querySelectorAll("option[value='']")) if (e.textContent === "—") e.remove();
  for (const e of copy.querySelectorAll("*")) {
    const all = Array.from(e.attributes, (a) => [a.name, a.value]).sort();
    for (const [name] of all) e.removeAttribute(name);
    for (const [name, is] of all) e.setAttribute(name, is);
  }
  return copy.outerHTML;
})()`
