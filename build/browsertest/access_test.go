package browsertest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// overflow names what stands out of the page sideways, "" for nothing. What
// scrolls inside a place of its own does not count, nor what only a screen
// reader finds.
const overflow = `(() => {
  const page = document.documentElement;
  if (page.scrollWidth <= page.clientWidth) return "";
  const out = Array.from(document.querySelectorAll("body *")).filter((e) => e.getBoundingClientRect().right > page.clientWidth + 0.5);
  return page.scrollWidth + " > " + page.clientWidth + ": " + out.map((e) => e.tagName + "." + e.getAttribute("class")).slice(0, 8).join(" ");
})()`

// findings runs axe-core, as it comes from npm, on the page as it stands: all
// its rules, or those named.
func (v *view) findings(rules ...string) string {
	v.t.Helper()
	return v.findingsIn("html", rules...)
}

// findingsIn is findings in a part of the page: what lies behind a dialog is the
// same for each of its screens, and takes many times as long.
func (v *view) findingsIn(part string, rules ...string) string {
	v.t.Helper()
	options := map[string]any{"resultTypes": []string{"violations"}}
	if len(rules) > 0 {
		options["runOnly"] = rules
	}
	// Between two themes colours pass through each other for a moment.
	v.run(`for (const a of document.getAnimations()) a.finish()`)
	return valueWithin[string](v, 4*patience, `axe.run($2 === "html" ? document : $2, $1).then((r) =>
  r.violations.map((f) => f.id + ": " + f.help + "\n" + f.nodes.slice(0, 4).map((n) => "  " + n.html.slice(0, 160) + "\n    " + n.any.concat(n.all, n.none).map((c) => c.message).join("; ")).join("\n")).join("\n"))`, options, part)
}

func (v *view) bringAxe() {
	v.t.Helper()
	source, err := os.ReadFile(filepath.Join(root, "site", "node_modules", "axe-core", "axe.min.js"))
	require.NoError(v.t, err, "go run ./build test fetches it")
	value[bool](v, string(source)+";true")
}

func TestAxeFindsNothing(t *testing.T) {
	v := open(t, desk, "")
	v.bringAxe()
	// Light and dark differ in colours alone, so the second look is at those.
	look := func(name string) {
		v.prefer("", "prefers-color-scheme", "light")
		assert.Empty(t, v.findings(), name)
		v.picture(name + "-light")
		v.prefer("", "prefers-color-scheme", "dark")
		assert.Empty(t, v.findings("color-contrast"), "%s, dark", name)
		v.picture(name + "-dark")
	}
	look("example-1280")
	v.run(`for (const d of document.querySelectorAll("details")) d.open = true; document.querySelectorAll(".cw-how").forEach((b) => b.hidden || b.getAttribute("aria-expanded") === "true" || b.click())`)
	v.wait(`document.querySelectorAll(".cw-slip").length > 20`)
	v.resize(phone)
	look("opened-390")
	v.prefer("", "forced-colors", "active")
	v.picture("forced-colors-390")
	assert.Equal(t, "1′ 5½″", v.text(figure, "border.AB"))

	v.run(`document.querySelector("[data-do=empty]").click()`)
	v.waitText("—", figure, "border.AB")
	assert.Empty(t, v.findings(), "empty")
	v.picture("empty-390")
	v.painter()
	v.write("/room/width", "12 fathoms or so")
	v.write("/mask/length", "190")
	v.wait(said+`.includes("fathoms")`, "/room/width")
	v.leave()
	v.resize(desk)
	look("problems-1280")
}

// WCAG 2.2, success criterion 1.4.10: no sideways scrolling at 320 px, which
// is also what 400 % zoom makes of 1280; 200 % zoom of 1280 is 640.
func TestNarrowPageNeedsNoSidewaysScrolling(t *testing.T) {
	v := open(t, desk, "?working=open")
	v.run(`for (const d of document.querySelectorAll("details")) d.open = true`)
	for _, wide := range []int64{320, 390, 640, 800, 1280} {
		v.resize(window{wide, 800})
		assert.Empty(t, v.text(overflow), "at %d px", wide)
	}
	v.resize(window{320, 640})
	v.picture("narrow-320")
	// Text alone at 200 % (success criterion 1.4.4).
	v.resize(desk)
	v.run(`document.documentElement.style.setProperty("font-size", "200%")`)
	assert.Empty(t, v.text(overflow), "text at 200 %%")
}

// WCAG 2.2, success criterion 2.5.8: targets of 24 px, or inside a sentence.
func TestButtonsAreLargeEnoughForAFinger(t *testing.T) {
	v := open(t, phone, "")
	small := v.text(`Array.from(document.querySelectorAll("button, select, input:not([hidden]), summary, a[href]"))
  .filter((e) => e.checkVisibility() && !e.closest("p, .cw-says li, .cw-note") && !e.classList.contains("cw-skip"))
  .map((e) => [e, e.getBoundingClientRect()]).filter(([, r]) => r.height < 24 || r.width < 24)
  .map(([e, r]) => e.outerHTML.slice(0, 90) + " " + Math.round(r.width) + "×" + Math.round(r.height)).slice(0, 6).join("\n")`)
	assert.Empty(t, small)
}

// Every control comes in turn by the Tab key, in the order of the page, and
// shows that it has the focus.
func TestEveryControlIsReachedByKeyboardInOrder(t *testing.T) {
	v := open(t, desk, "")
	want := value[int](v, `(globalThis.wanted = Array.from(document.querySelectorAll("a[href], button, input, select, summary"))
  .filter((e) => e.checkVisibility() && e.tabIndex >= 0 && !e.disabled)).length`)
	require.Greater(t, want, 100)
	v.run(`globalThis.met = []; globalThis.dim = [];
document.addEventListener("focusin", (e) => {
  met.push(e.target);
  if (e.target.closest("svg")) { // a panel of the drawing shows it by its own outline
    const panel = e.target.querySelector("rect, polygon, path");
    if (parseFloat(getComputedStyle(panel).strokeWidth) < 3) dim.push(e.target.outerHTML.slice(0, 100));
    return;
  }
  const s = getComputedStyle(e.target);
  if (s.outlineStyle === "none" || parseFloat(s.outlineWidth) < 2) dim.push(e.target.outerHTML.slice(0, 100));
});`)
	// A blank for a date or a time has a stop for each of its parts, and what can be
	// scrolled has one too.
	more := value[int](v, `4 * document.querySelectorAll("input:is([type=date], [type=time])").length + document.querySelectorAll("[tabindex='0']").length`)
	v.keys(strings.Repeat("\t", want+more+5))
	assert.Empty(t, v.text(`wanted.filter((e) => e.isConnected && !met.includes(e)).map((e) => e.outerHTML.slice(0, 100)).join("\n")`), "never reached")
	assert.Empty(t, v.text(`met.filter((e, i) => i > 0 && met.indexOf(e) === i && !(met[i - 1].compareDocumentPosition(e) & Node.DOCUMENT_POSITION_FOLLOWING)).map((e) => e.outerHTML.slice(0, 100)).slice(1).join("\n")`), "out of order, besides the start again")
	assert.Empty(t, v.text(`[...new Set(dim)].join("\n")`), "no visible focus")
}

func TestMenuOpensAndShutsByKeyboard(t *testing.T) {
	v := open(t, desk, "")
	v.run(`document.querySelector(".cw-keep summary").focus()`)
	v.keys("\r")
	v.wait(`document.querySelector(".cw-keep").open`)
	v.keys("\t")
	v.wait(`document.activeElement.dataset.do === "save-file"`)
	v.keys("\x1b")
	v.wait(`!document.querySelector(".cw-keep").open && document.activeElement.matches(".cw-keep summary")`)
}

// One polite sentence a little after the last key, with what changed.
func TestResultsAreAnnouncedOnceAfterTheLastKey(t *testing.T) {
	alone(t)
	v := openPainter(t, desk)
	v.run(`await new Promise((r) => setTimeout(r, 1200))`)
	v.run(`globalThis.heard = [];
const region = document.querySelector("[data-fill=hear]");
new MutationObserver(() => heard.push(region.textContent)).observe(region, { childList: true, characterData: true, subtree: true });`)
	assert.Equal(t, "polite", v.text(`document.querySelector("[data-fill=hear]").getAttribute("aria-live")`))
	v.write("/mask/length", "1761\b")
	v.wait(`heard.length > 0`)
	v.run(`await new Promise((r) => setTimeout(r, 900))`)
	assert.Equal(t, 1, value[int](v, `heard.length`))
	assert.Contains(t, v.text(`heard[0]`), "6″", "(188 − 176) / 2")
	assert.NotContains(t, v.text(`heard[0]`), "3½″", "the sides have not changed")
}

// cases A11-01: the wheel over a blank that has the focus scrolls the page.
func TestWheelScrollsThePageAndChangesNoBlank(t *testing.T) {
	v := openPainter(t, desk)
	v.run(`const b = `+blank+`; b.focus(); b.scrollIntoView({ block: "center" })`, "/mask/length")
	before := v.text(blank+`.value`, "/mask/length")
	v.wheel(blank, "/mask/length")
	v.wait(`scrollY > 0`)
	assert.Equal(t, before, v.text(blank+`.value`, "/mask/length"))
}

// A length is read in one go: in a sum it does not break at the end of a line.
func TestLengthsInSumsStayOnALine(t *testing.T) {
	v := open(t, window{320, 640}, "?working=open")
	v.wait(`document.querySelectorAll(".cw-sum").length > 50`)
	v.run(`for (const d of document.querySelectorAll("details")) d.open = true`)
	assert.Empty(t, v.text(`(() => {
  const out = [];
  for (const p of document.querySelectorAll(".cw-sum")) for (const n of p.childNodes) if (n.nodeType === 3)
    for (const m of n.data.matchAll(/\d+′\s[\d¼½¾⅛⅜⅝⅞]+(\s\d+⁄\d+)?/g)) {
      const r = document.createRange();
      r.setStart(n, m.index);
      r.setEnd(n, m.index + m[0].length);
      if (new Set(Array.from(r.getClientRects(), (b) => Math.round(b.top))).size > 1) out.push(m[0]);
    }
  return out.slice(0, 5).join("; ");
})()`))
}
