package browsertest

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/assert"
)

// lying is the phone turned on its side.
var lying = window{844, 390}

// step is the large heading of the step in sight, "" when the view is shut.
const step = `(document.querySelector(".cw-ladder[open] h2")?.textContent ?? "").replace(/\s+/g, " ").trim()`

// ladderKeys are the buttons under the thumb, the one to go on with first.
const ladderKeys = `Array.from(document.querySelectorAll(".cw-ladder-keys button"), (b) => b.textContent).join(" | ")`

// layerUp is what the plan holds of panels that are up in the first layer.
const layerUp = `(JSON.parse(` + plan + `).mask.layers[0].up ?? []).join(" ")`

// climb opens the view from the first button for that work.
func (v *view) climb(to string) {
	v.t.Helper()
	v.press(`[data-do=ladder][data-to=` + to + `]`)
	v.wait(`document.querySelector(".cw-ladder[open]")`)
	v.readStops()
}

// readStops ticks what stands before the first panel, and goes on.
func (v *view) readStops() {
	v.t.Helper()
	if v.holds(`document.querySelector(".cw-ladder [data-stop]") !== null`) {
		v.run(`while (true) { const b = document.querySelector(".cw-ladder [data-stop][aria-pressed=false]"); if (!b) break; ` + unhurried + ` b.click(); }`)
		v.goOn()
	}
}

// unhurried is a script that has the taps that follow come a second later than they do.
const unhurried = `globalThis.later ?? Object.defineProperty(Event.prototype, "timeStamp", { configurable: true, get() { return performance.now() + globalThis.later * 1000; } });
globalThis.later = (globalThis.later ?? 0) + 1;
`

// thumb presses the button of that name in the view, with time since the one before.
func (v *view) thumb(words string) {
	v.t.Helper()
	v.run(unhurried)
	v.run(`document.querySelector(".cw-ladder [data-pressed]")?.removeAttribute("data-pressed");
const b = Array.from(document.querySelectorAll(".cw-ladder button")).find((b) => b.textContent === $1);
if (!b) throw new Error("no button " + $1 + " among " + Array.from(document.querySelectorAll(".cw-ladder button"), (b) => b.textContent));
b.setAttribute("data-pressed", "")`, words)
	v.press(".cw-ladder [data-pressed]")
	v.run(unhurried)
}

// goOn presses the key to go on with.
func (v *view) goOn() {
	v.t.Helper()
	v.run(unhurried)
	v.press(".cw-ladder [data-key=go]")
	v.run(unhurried)
}

// glance leaves a picture of what the window shows.
func (v *view) glance(name string) {
	v.t.Helper()
	if folder := os.Getenv("CEILINGWRIGHT_PICTURES"); folder != "" {
		keepPicture(v.t, folder, name+".png", call(v, page.CaptureScreenshot, page.CaptureScreenshotParams{}).Data)
	}
}

// The painter's layer is two by two panels: each is ticked, and the plan has
// them in the order they went up.
func TestLayerIsTickedPanelByPanel(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	order := strings.Fields(v.text(`Array.from(document.querySelectorAll(".cw-order .cw-panel-name"), (b) => b.textContent).join(" ")`))
	assert.Len(t, order, 4)
	for i, panel := range order {
		v.waitText("Hang "+panel, step)
		assert.Contains(t, v.text(`document.querySelector(".cw-ladder-where").textContent`), fmt.Sprintf("%d of 4", i+1))
		assert.Equal(t, "H2", v.text(`document.activeElement.tagName`), "the heading has the focus")
		v.thumb(panel + " is up")
		v.waitText(strings.Join(order[:i+1], " "), layerUp)
		assert.Equal(t, panel+" is up.", v.text(`document.querySelector(".cw-ladder-said").textContent`))
		if strings.HasPrefix(v.text(step), "How wide") || strings.HasPrefix(v.text(step), "Measure") {
			v.thumb("Skip")
		}
	}
	v.waitText("First layer: All up", step)
	v.thumb("To the sheet")
	v.waitText("", step)
	assert.True(t, v.holds(`document.activeElement.matches("[data-do=ladder][data-to=hanging]")`), "the focus is where it came from")
}

func TestPanelIsTakenDownAgain(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	first := strings.TrimPrefix(v.text(step), "Hang ")
	v.thumb(first + " is up")
	v.thumb("Back")
	v.waitText(first+" is up", step)
	v.thumb("Take it down")
	v.waitText("Hang "+first, step)
	assert.Equal(t, "", v.text(layerUp))
}

// A block of panels delivered as one goes up as one: its words are there, and
// all of it is lit in the sketch.
func TestPieceOfSeveralPanelsIsHungAsOne(t *testing.T) {
	v := openPlan(t, phone, strings.Replace(platformPlan, `"open":""`, `"open":"","pieces":[{"name":"Rose","kind":"span","cells":"A1 A2","shape":"","length":"","width":"","fromDA":"","fromAB":""}]`, 1))
	v.climb("hanging")
	for !strings.Contains(v.text(step), "A1") {
		v.goOn()
		if strings.HasPrefix(v.text(step), "How wide") {
			v.thumb("Skip")
		}
	}
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-rest").textContent`), "Rose")
	assert.True(t, v.holds(`document.querySelector(".cw-ladder-sketch .cw-here") !== null`))
	v.thumb("A1 is up")
	v.wait(`(` + layerUp + `).split(" ").includes("A1")`)
}

// Where several layers have marks, those of one can be made alone.
func TestMarksOfOneLayerAreMadeAlone(t *testing.T) {
	v := open(t, phone, "")
	count := `document.querySelector(".cw-ladder-where").textContent`
	v.climb("marks")
	all := v.text(count)
	v.thumb("Second layer")
	assert.NotEqual(t, all, v.text(count))
	assert.True(t, v.holds(`document.querySelector(".cw-ladder-more [aria-pressed=true]").textContent === "Second layer"`))
	v.thumb("Later")
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-what").textContent`), "second layer")
	v.thumb("Leave")
	v.climb("marks")
	v.thumb("Back")
	v.thumb("All layers")
	v.waitText(all, count)
}

func TestMarksAreTickedWallByWall(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("marks")
	v.waitText("Along wall WX, from W 4″", step)
	v.thumb("Marked")
	v.waitText("Along wall WX, from W 7′ 10″", step)
	v.thumb("Back")
	v.waitText("Along wall WX, from W 4″ is marked", step)
	v.thumb("It is not marked after all")
	v.waitText("Along wall WX, from W 4″", step)
	v.thumb("Later")
	for v.text(step) != "Marks left out: 1" {
		v.thumb("Marked")
	}
	v.thumb("To the first")
	v.waitText("Along wall WX, from W 4″", step)
	v.thumb("Marked")
	v.waitText("On every wall All marked", step)
}

// platformPlan is the painter's job from a platform that reaches half of it: a
// deck of 84 by 96 in with arms of 18 in reaches 120 by 132, so that the mask
// of 180 by 115 takes two stations.
var platformPlan = strings.Replace(painterPlan, `"deckGap":""`, `"deckGap":"","deckLength":"84","deckWidth":"96","armReach":"18","overlap":"0","turn":"no"`, 1)

// rowPlan is a mask of one row of five panels with gaps of 1/16 in: two seams
// lie on each side of the middle one.
var rowPlan = strings.NewReplacer(`"columns":"2","rows":"2"`, `"columns":"5","rows":"1"`, `"gap":"0"`, `"gap":"1/16"`).Replace(painterPlan)

// openPlan opens the page with a job of the painter's room on it.
func openPlan(t *testing.T, in window, plan string) *view {
	t.Helper()
	v := open(t, in, fragment(plan))
	v.waitText("4″", figure, "border.DA")
	return v
}

// hang ticks a panel and measures no gap.
func (v *view) hang(panel string) {
	v.t.Helper()
	v.waitText("Hang "+panel, step)
	v.thumb(panel + " is up")
	if strings.HasPrefix(v.text(step), "How wide") || strings.HasPrefix(v.text(step), "Measure") {
		v.thumb("Skip")
	}
}

// order is the order the painter's four panels are hung in.
func (v *view) order() []string {
	v.t.Helper()
	return strings.Fields(v.text(`Array.from(document.querySelectorAll(".cw-order .cw-panel-name"), (b) => b.textContent).join(" ")`))
}

func TestPlatformMovesAreScreensOfTheirOwn(t *testing.T) {
	v := openPlan(t, phone, platformPlan)
	order := v.order()
	v.climb("hanging")
	v.waitText("Put the platform at position 1", step)
	v.thumb("Platform in place")
	v.waitText("Hang "+order[0], step)
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-small").textContent`), "from position 1")
	// √(90² + 57½²) = 106.80 in
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-measures").textContent`), "8′ 10 13⁄16″")
	v.thumb("Back")
	v.waitText("Put the platform at position 1", step)
	v.thumb("Platform in place")
	v.thumb("Later")
	v.waitText("Hang "+order[1], step)
	v.thumb("Later")
	v.waitText("Move the platform to position 2", step)
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-rest").textContent`), order[2]+", "+order[3])
	v.thumb("Platform in place")
	v.thumb("Later")
	v.thumb("Later")
	v.waitText("Still to hang: 4", step)
	v.thumb("To " + order[0])
	v.waitText("Hang "+order[0], step)
}

// A gap goes into the plan with two presses, the panel and the value, and what
// the sheet makes of it is said: 1/8 in where 1/16 was planned leaves none at
// the next seam, and 3/16 leaves too much.
func TestMeasuredGapIsTwoPressesAndChangesTheAdvice(t *testing.T) {
	v := openPlan(t, phone, rowPlan)
	gaps := `JSON.stringify(JSON.parse(` + plan + `).mask.layers[0].gaps ?? [])`
	said := `document.querySelector(".cw-ladder-said").textContent`
	v.climb("hanging")
	v.thumb("A3 is up")
	v.waitText("Hang A2", step) // the first closes no seam
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-measures").textContent`), "gap at 2│3")
	v.thumb("A2 is up")
	v.waitText("How wide is the gap at 2│3", step)
	v.thumb("⅛″")
	v.waitText(`[{"seam":"2│3","gap":"⅛″"}]`, gaps)
	assert.Equal(t, "Gap at 2│3: ⅛″. 1⁄16″ wider than planned. Set 1│2 to 0″.", v.text(said))
	for v.text(step) != "Hang A1" {
		v.thumb("Later")
	}
	assert.Equal(t, "", v.text(said), "it is said once")
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-measures").textContent`), "gap at 1│20″")
	v.thumb("Back")
	v.thumb("Back")
	for !strings.HasSuffix(v.text(step), "A2 is up") {
		v.thumb("Back")
	}
	v.thumb("Measure its gap")
	v.waitText("How wide is the gap at 2│3", step)
	assert.True(t, v.holds(`document.querySelector(".cw-ladder-offers [aria-pressed=true]").textContent === "⅛″"`))
	v.thumb("3⁄16″")
	v.waitText(`[{"seam":"2│3","gap":"3⁄16″"}]`, gaps)
	assert.Contains(t, v.text(said), "past the tape line towards ZW")
	v.hang("A4")
	v.hang("A1")
	v.thumb("Back")
	v.thumb("Measure its gap")
	v.thumb("Back")
	v.waitText("A1 is up", step)
	assert.Equal(t, `[{"seam":"2│3","gap":"3⁄16″"}]`, v.text(gaps), "skipping writes nothing")
}

// What is not among the offers is typed and shown as it was measured; what cannot be read
// is asked for again and not written down.
func TestGapIsTypedFreely(t *testing.T) {
	v := openPlan(t, phone, rowPlan)
	gaps := `JSON.stringify(JSON.parse(` + plan + `).mask.layers[0].gaps ?? [])`
	typed := func(text string) {
		t.Helper()
		v.run(unhurried + `const b = document.querySelector(".cw-ladder-typed input"); b.focus(); b.select()`)
		v.keys(text + "\r")
	}
	v.climb("hanging")
	v.thumb("A3 is up")
	v.thumb("A2 is up")
	v.waitText("How wide is the gap at 2│3", step)
	typed("wide")
	v.wait(`document.querySelector(".cw-ladder-said").textContent.length > 20`)
	assert.Equal(t, "[]", v.text(gaps))
	assert.Equal(t, "How wide is the gap at 2│3", v.text(step))
	assert.Equal(t, "wide", v.text(`document.querySelector(".cw-ladder-typed input").value`))
	typed("3/32")
	v.waitText(`[{"seam":"2│3","gap":"3/32"}]`, gaps)
	v.wait(`!(` + step + `).startsWith("How wide")`)
	assert.Contains(t, v.text(`document.querySelector(".cw-ladder-said").textContent`), "Gap at 2│3: 3⁄32″.")
	for !strings.HasSuffix(v.text(step), "A2 is up") {
		v.thumb("Back")
	}
	v.thumb("Measure its gap")
	assert.Equal(t, "3⁄32″", v.text(`document.querySelector(".cw-ladder-typed input").value`))
	v.glance("ladder-gap-typed-390")
}

// A second tap within half a second counts as none, wherever it lands.
func TestTwoTapsInARowCountOnce(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	v.run(unhurried + `const tap = () => document.querySelector(".cw-ladder [data-key=go]").click(); tap(); tap(); tap()`)
	assert.Len(t, strings.Fields(v.text(layerUp)), 1)
	v.run(unhurried + `tap = () => document.querySelector(".cw-ladder [data-key=go]").click(); tap()`)
	assert.Len(t, strings.Fields(v.text(layerUp)), 2)
	// The way back to the sheet does not press what lies there.
	v.run(unhurried + `globalThis.met = []; document.addEventListener("click", (e) => met.push(e.target.className));
document.querySelector(".cw-ladder-leave").click(); document.querySelector("[data-do=ladder]").click()`)
	v.waitText("", step)
	assert.Equal(t, "cw-ladder-leave", v.text(`met.join(" ")`))
	// Nor does the tap that opened it.
	v.run(unhurried + `document.querySelector("[data-do=ladder][data-to=marks]").click()`)
	v.wait(`document.querySelector(".cw-ladder[open]")`)
	assert.Equal(t, "[]", v.text(`JSON.stringify(JSON.parse(`+plan+`).marked ?? [])`))
}

// What is marked stands in the plan and goes where it goes; another device shows it.
func TestMarksGoWithThePlan(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("marks")
	first := v.text(step)
	v.thumb("Marked")
	second := v.text(step)
	v.thumb("Leave")
	v.waitText("", step)
	text := v.text(plan)
	assert.Contains(t, text, `"marked":["`)
	other := anotherDevice(t, phone)
	other.visit(hosted + fragment(text))
	other.ready()
	other.climb("marks")
	other.waitText(second, step)
	other.thumb("Back")
	other.waitText(first+" is marked", step)
}

// A platform that is put in when panels are up stands nowhere yet: where it is to stand
// comes before the next panel.
func TestPlatformPutInMidWayIsPlacedFirst(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	v.hang(v.order()[0])
	v.thumb("Leave")
	v.waitText("", step)
	v.write("/access/deckLength", "84")
	v.write("/access/deckWidth", "96")
	v.write("/access/armReach", "18")
	v.climb("hanging")
	v.wait(`(` + step + `).startsWith("Put the platform at position")`)
	v.thumb("Platform in place")
	v.wait(`(` + step + `).startsWith("Hang ")`)
	v.thumb("Leave")
	v.waitText("", step)
	v.climb("hanging")
	v.wait(`(` + step + `).startsWith("Hang ")`)
}

// cutPlan has a panel of the painter's mask cut for a grille.
var cutPlan = strings.Replace(painterPlan, `"height":"9'",`, `"height":"9'","obstructions":[{"kind":"other","name":"Grille","shape":"rectangle","length":"6","width":"6","fromDA":"40","fromAB":"30"}],`, 1)

// What is to be cut out stands above the fold, or the first key shows it before the
// panel can be said to be up.
func TestNotesAreSeenBeforeAPanelIsUp(t *testing.T) {
	unseen := `(() => { const fold = document.querySelector(".cw-ladder-content").getBoundingClientRect().bottom; return Array.from(document.querySelectorAll(".cw-ladder-cut")).filter((n) => n.getBoundingClientRect().bottom > fold + 1).length; })()`
	v := openPlan(t, phone, cutPlan)
	v.climb("hanging")
	for !v.holds(`document.querySelector(".cw-ladder-cut") !== null`) {
		v.thumb("Later")
	}
	panel := strings.TrimPrefix(v.text(step), "Hang ")
	for _, in := range []window{phone, {320, 568}, lying} {
		v.resize(in)
		v.waitText("0", unseen)
		v.waitText(panel+" is up", `document.querySelector(".cw-ladder [data-key=go]").textContent`)
		v.glance(fmt.Sprintf("ladder-cut-%d", in.wide))
	}
}

// A note that is longer than the screen is read to its end first.
func TestLongNoteIsReadToItsEnd(t *testing.T) {
	const grille = `{"kind":"other","name":"Grille","shape":"rectangle","length":"6","width":"6","fromDA":"40","fromAB":"30"}`
	v := openPlan(t, window{320, 568}, strings.Replace(cutPlan, grille, strings.TrimSuffix(strings.Repeat(grille+",", 6), ","), 1))
	v.climb("hanging")
	for !v.holds(`document.querySelector(".cw-ladder-cut") !== null`) {
		v.thumb("Later")
	}
	panel := strings.TrimPrefix(v.text(step), "Hang ")
	v.glance("ladder-cut-long-320")
	v.thumb("Read the note first")
	v.waitText(panel+" is up", `document.querySelector(".cw-ladder [data-key=go]").textContent`)
	assert.Equal(t, "", v.text(layerUp))
	v.glance("ladder-cut-read-320")
	v.thumb(panel + " is up")
	v.waitText(panel, layerUp)
}

// Layer two, in which the panel kept up of the first is in the way, is hung to its end.
func TestLayerTwoWalksThroughToTheEnd(t *testing.T) {
	v := open(t, phone, "")
	v.run(`document.querySelectorAll("[data-do=ladder][data-to=hanging]")[1].setAttribute("data-second", "")`)
	v.press("[data-second]")
	v.wait(`document.querySelector(".cw-ladder[open]")`)
	v.readStops()
	v.walk()
	v.wait(`(` + step + `).endsWith("All up")`)
	assert.Equal(t, "To the sheet", v.text(`document.querySelector(".cw-ladder [data-key=go]").textContent`))
}

// walk hangs what is left, whatever stands between.
func (v *view) walk() {
	v.t.Helper()
	for range 120 {
		if strings.HasSuffix(v.text(step), "All up") {
			return
		}
		v.goOn()
	}
	v.t.Errorf("the way ends nowhere: %s", v.text(step))
}

// A panel that is up crooked, with others set to it, comes down with them and all go up.
func TestCrookedPanelIsHungAgainToTheEnd(t *testing.T) {
	v := openPlan(t, phone, rowPlan)
	v.climb("hanging")
	for _, panel := range []string{"A3", "A2", "A4"} {
		v.hang(panel)
	}
	v.thumb("Leave")
	v.waitText("", step)
	v.climb("hanging")
	for !strings.HasPrefix(v.text(step), "A3 is up") && !strings.HasPrefix(v.text(step), "Before") {
		v.thumb("Back")
	}
	v.thumb("It is up crooked")
	v.waitText("Up crooked: A3", step)
	v.thumb("They are down")
	v.waitText("", layerUp)
	assert.Equal(t, "", v.text(`JSON.parse(`+plan+`).mask.layers[0].crooked`))
	v.walk()
	assert.Len(t, strings.Fields(v.text(layerUp)), 5)
}

func TestCrookedPanelShowsWhatComesDown(t *testing.T) {
	v := openPlan(t, phone, platformPlan)
	order := v.order()
	v.climb("hanging")
	v.thumb("Platform in place")
	v.hang(order[0])
	v.hang(order[1])
	v.thumb("Back")
	v.waitText(order[1]+" is up", step)
	v.thumb("Back")
	v.thumb("It is up crooked")
	v.waitText("Up crooked: "+order[0], step)
	assert.Equal(t, order[0], v.text(`JSON.parse(`+plan+`).mask.layers[0].crooked`))
	assert.Equal(t, order[1]+" "+order[0], v.text(`Array.from(document.querySelectorAll(".cw-ladder-down li"), (l) => l.textContent).join(" ")`))
	v.thumb("It hangs true")
	v.waitText(order[0]+" is up", step)
	assert.Equal(t, "", v.text(`JSON.parse(`+plan+`).mask.layers[0].crooked`))
	v.thumb("It is up crooked")
	v.thumb("They are down")
	v.waitText("", layerUp)
	v.waitText("Put the platform at position 1", step)
}

// The place is kept with the plan: after a reload in the midst of it the view
// opens again, and after leaving it the button leads back to the same step.
func TestPlaceOnTheLadderIsRememberedAfterReload(t *testing.T) {
	v := openPlan(t, phone, platformPlan)
	order := v.order()
	v.climb("hanging")
	v.thumb("Platform in place")
	v.thumb(order[0] + " is up")
	v.waitText("Hang "+order[1], step)
	v.reload()
	v.waitText("Hang "+order[1], step)
	assert.Equal(t, order[0], v.text(layerUp))
	v.thumb("Leave")
	v.waitText("", step)
	v.reload()
	assert.Equal(t, "", v.text(step), "what was left stays shut")
	v.climb("marks")
	v.thumb("Marked")
	v.thumb("Marked")
	third := v.text(step)
	v.thumb("Leave")
	v.waitText("", step)
	v.reload()
	v.climb("marks")
	v.waitText(third, step)
	v.thumb("Back")
	assert.Contains(t, v.text(step), "is marked")
	v.thumb("Leave")
	v.climb("hanging")
	v.waitText("Hang "+order[1], step)
}

func TestLadderIsLeftByEscapeAndByTheWayBack(t *testing.T) {
	v := openAnew(t, phone, fragment(painterPlan))
	before := value[float64](v, `history.length`)
	v.climb("hanging")
	v.keys("\x1b")
	v.waitText("", step)
	v.waitText("null", `history.state`)
	v.climb("hanging")
	v.run(`history.back()`)
	v.waitText("", step)
	v.run(`history.forward()`)
	v.wait(`document.querySelector(".cw-ladder[open]")`)
	v.keys("\x1b")
	v.waitText("", step)
	assert.LessOrEqual(t, value[float64](v, `history.length`), before+1, "it leaves no trail")
	// Opened again before the browser has gone back: it stays open.
	v.climb("hanging")
	v.run(unhurried + `document.querySelector(".cw-ladder-leave").click(); ` + unhurried + `document.querySelector("[data-do=ladder][data-to=marks]").click(); await new Promise((r) => setTimeout(r, 300))`)
	v.wait(`(` + step + `).startsWith("Along wall WX")`)
	v.keys("\x1b")
	v.waitText("", step)
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll(".cw-ladder").length`))
}

func TestThumbIsChosenAndRemembered(t *testing.T) {
	v := openPainter(t, phone)
	side := `(() => { const r = document.querySelector(".cw-ladder-keys [data-key=go]").getBoundingClientRect(); return r.right > innerWidth - 20 && r.left > 20 ? "right" : r.left < 20 ? "left" : "middle"; })()`
	v.climb("hanging")
	assert.Equal(t, "right", v.text(side))
	v.thumb("right thumb")
	assert.Equal(t, "left", v.text(side))
	v.resize(lying)
	v.waitText("left", side)
	v.reload()
	v.waitText("left", side)
	v.thumb("left thumb")
	v.resize(phone)
	v.waitText("right", side)
}

// The screen is asked to stay on, let go on leaving, and asked again when the
// page comes back into sight; refused, the view says so and works.
func TestScreenIsAskedToStayOn(t *testing.T) {
	v := newView(t, phone)
	v.before(`globalThis.held = 0; globalThis.asked = 0; globalThis.last = null;
Object.defineProperty(navigator, "wakeLock", { value: { async request(kind) {
  if (kind !== "screen") throw new TypeError(kind);
  asked++;
  if (globalThis.refuse) throw new DOMException("no", "NotAllowedError");
  const lock = new EventTarget();
  lock.release = async () => { if (lock.gone) return; lock.gone = true; held--; lock.dispatchEvent(new Event("release")); };
  held++;
  return (last = lock);
} } });`)
	v.visit(hosted + fragment(painterPlan))
	v.ready()
	awake := `document.querySelector(".cw-ladder-awake").textContent`
	assert.Equal(t, 0, value[int](v, `asked`))
	v.climb("hanging")
	v.waitText("1", `held`)
	v.waitText("screen stays on", awake)
	v.run(`await last.release()`)
	v.waitText("screen may go dark", awake)
	v.run(`document.dispatchEvent(new Event("visibilitychange"))`)
	v.waitText("screen stays on", awake)
	v.thumb("Leave")
	v.waitText("0", `held`)
	v.run(`globalThis.refuse = true`)
	v.climb("marks")
	v.waitText("screen may go dark", awake)
	v.thumb("Marked")
	v.waitText("0", `held`)
}

// Everything of a usual step is in sight without scrolling, large enough for
// an arm's length, with nothing standing out sideways.
func TestStepsFitTheScreenInLargeType(t *testing.T) {
	fits := `(() => {
  const c = document.querySelector(".cw-ladder-content"), small = [];
  const least = Math.min(innerWidth, innerHeight) / 100, size = (e) => parseFloat(getComputedStyle(e).fontSize);
  for (const [what, of] of [[".cw-ladder-heading b", $1], [".cw-ladder-measures dd", 10]]) for (const e of document.querySelectorAll(what)) if (size(e) < of * least) small.push(e.textContent + " " + size(e));
  for (const b of document.querySelectorAll(".cw-ladder-keys button, .cw-ladder-more button, .cw-ladder-offers button")) if (b.getBoundingClientRect().height < 64) small.push("button " + b.textContent);
  for (const b of document.querySelectorAll(".cw-ladder button")) if (b.getBoundingClientRect().height < 44 || b.getBoundingClientRect().bottom > innerHeight) small.push("button out " + b.textContent);
  if (c.scrollHeight > c.clientHeight + 1) small.push("scrolls " + c.scrollHeight + " > " + c.clientHeight);
  for (const e of document.querySelectorAll(".cw-ladder *")) if (!e.closest("svg") && e.getBoundingClientRect().right > innerWidth + 0.5) small.push("out " + e.outerHTML.slice(0, 60));
  return small.join("\n");
})()`
	v := openPlan(t, phone, platformPlan)
	look := func(name string, label float64) {
		for _, in := range []window{lying, {320, 568}, {1280, 800}, phone} {
			v.resize(in)
			assert.Empty(t, v.text(fits, label), "%s, %s", name, in)
			v.glance(fmt.Sprintf("ladder-%s-%d", name, in.wide))
		}
	}
	order := v.order()
	v.climb("hanging")
	look("1-move", 20)
	v.thumb("Platform in place")
	look("2-hang", 20)
	v.thumb(order[0] + " is up")
	v.thumb("Back")
	look("3-up", 20)
	v.thumb("Go on")
	v.thumb(order[1] + " is up")
	look("4-gap", 10)
	v.thumb("⅛″")
	look("5-next", 20)
	v.thumb("Back")
	v.thumb("It is up crooked")
	look("6-crooked", 20)
	v.thumb("Leave")
	v.climb("marks")
	v.thumb("Later")
	look("7-mark", 10)
}

func TestAxeFindsNothingOnTheLadder(t *testing.T) {
	v := openPlan(t, phone, platformPlan)
	v.bringAxe()
	look := func(name string) {
		v.prefer("", "prefers-color-scheme", "light")
		assert.Empty(t, v.findingsIn(".cw-ladder"), name)
		v.prefer("", "prefers-color-scheme", "dark")
		assert.Empty(t, v.findingsIn(".cw-ladder", "color-contrast"), "%s, dark", name)
		v.glance("ladder-dark-" + name + "-390")
		v.prefer("", "forced-colors", "active")
		v.glance("ladder-forced-" + name + "-390")
	}
	order := v.order()
	v.climb("hanging")
	assert.Empty(t, v.findings(), "with the sheet behind it")
	look("move")
	v.thumb("Platform in place")
	look("hang")
	v.thumb(order[0] + " is up")
	v.thumb(order[1] + " is up")
	look("gap")
	v.thumb("⅛″")
	v.thumb("Back")
	look("up")
	v.thumb("It is up crooked")
	look("crooked")
	v.thumb("Leave")
	v.climb("marks")
	look("mark")
}

// The rest of the page cannot be reached while the view lies over it, and none
// of the view is on paper.
func TestLadderKeepsTheFocusAndOffThePaper(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	v.run(`globalThis.met = []; document.addEventListener("focusin", (e) => met.push(e.target))`)
	v.keys(strings.Repeat("\t", 12))
	assert.True(t, v.holds(`met.length > 3 && met.every((e) => e.closest(".cw-ladder"))`))
	v.prefer("print")
	assert.Equal(t, 0, value[int](v, `document.querySelector(".cw-ladder").getClientRects().length`))
	assert.True(t, v.holds(`document.querySelector(".cw-order li").getClientRects().length > 0`))
}

// From disk, and where nothing may be stored or the page has no origin.
func TestLadderWorksFromDiskAndWithoutStorage(t *testing.T) {
	through := func(v *view) {
		v.allPages()
		v.climb("hanging")
		first := strings.TrimPrefix(v.text(step), "Hang ")
		v.thumb(first + " is up")
		v.waitText(first, layerUp)
		v.thumb("right thumb")
		v.thumb("Leave")
		v.waitText("", step)
		v.climb("hanging")
		assert.NotContains(t, v.text(step), first)
		assert.True(t, v.holds(`document.querySelector(".cw-ladder[data-thumb=left]") !== null`))
		v.thumb("Leave")
		v.climb("marks")
		v.thumb("Marked")
		second := v.text(step)
		v.thumb("Leave")
		v.climb("marks")
		v.waitText(second, step)
	}
	path := filepath.Join(dist, "ceilingwright.html")
	disk := fromDisk(t, path+fragment(painterPlan))
	disk.resize(phone)
	through(disk)
	disk.onlyItself(path)

	v := newView(t, phone)
	v.before(`Object.defineProperty(globalThis, "localStorage", { get() { throw new DOMException("refused", "SecurityError"); } })`)
	v.visit(hosted + fragment(painterPlan))
	v.ready()
	through(v)
	v.wait(`document.querySelector(".cw-ladder-unkept").textContent.includes("not kept")`)
}

// In a frame that fits its height to the page, the view is one screen high.
func TestLadderWorksInAFrame(t *testing.T) {
	beside(t)
	address := strings.Replace(hosted, "127.0.0.1", "localhost", 1)
	for _, row := range []struct{ name, sandbox string }{{"free", ""}, {"sandboxed", `sandbox="allow-scripts"`}} {
		t.Run(row.name, func(t *testing.T) {
			v := newView(t, window{800, 900})
			v.visit(framing(t, row.sandbox, address+fragment(painterPlan)))
			v.wait(`heights.length > 0 && heights.at(-1) > 1000`)
			inside := v.inFrame(address)
			inside.ready()
			inside.allPages()
			inside.run(`document.querySelector("[data-do=ladder][data-to=hanging]").click()`)
			inside.wait(`document.querySelector(".cw-ladder[open]")`)
			v.wait(`heights.at(-1) < 900`)
			inside.wait(`document.querySelector(".cw-ladder").getBoundingClientRect().height > 300 && document.querySelector(".cw-ladder-keys").getBoundingClientRect().bottom <= innerHeight + 1`)
			inside.run(`for (let b; (b = document.querySelector(".cw-ladder [data-stop][aria-pressed=false]")); b.click()) {` + unhurried + `}
if (document.querySelector(".cw-ladder [data-stop]")) {` + unhurried + ` document.querySelector(".cw-ladder-keys [data-key=go]").click(); }
` + unhurried + `document.querySelector(".cw-ladder-keys [data-key=go]").click()`)
			inside.wait(layerUp + ` !== ""`)
			v.glance("ladder-frame-800")
			inside.run(unhurried + `document.querySelector(".cw-ladder-leave").click()`)
			inside.waitText("", step)
			v.wait(`heights.at(-1) > 1000`)
		})
	}
}
