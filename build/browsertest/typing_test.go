package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// selected is the part of the blank in hand that is selected, and where the
// caret is.
const selected = `(() => { const b = document.activeElement; return b.dataset.at + ": " + b.value.slice(b.selectionStart, b.selectionEnd) + (b.selectionStart === b.selectionEnd ? "|" + b.selectionStart : ""); })()`

// click presses the mouse over an element, so many pixels from its left edge.
func (v *view) click(element string, right float64) {
	v.t.Helper()
	at := value[[]float64](v, `(() => { const r = `+element+`.getBoundingClientRect(); return [r.x, r.y + r.height / 2]; })()`)
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.MouseClickXY(at[0]+right, at[1])))
}

func blankFor(at string) string { return with(blank, []any{at}) }

// A blank that is entered has all that is in it selected, so that typing
// replaces it; the second press puts the caret where it is.
func TestEnteringABlankSelectsWhatIsInIt(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := open(t, in, "")
			v.run(blankFor("/room/length") + `.scrollIntoView({ block: "center" })`)
			v.click(blankFor("/room/length"), 12)
			v.waitText(`/room/length: 19' 6 1/2"`, selected)
			v.click(blankFor("/room/length"), 12)
			v.wait(`document.activeElement.selectionStart === document.activeElement.selectionEnd && document.activeElement.selectionStart < 9`)
			v.keys(kb.Tab)
			v.waitText(`/room/width: 14' 9"`, selected)
			v.keys("20'")
			v.waitText("20'", blankFor("/room/width")+`.value`)

			// A number that was taken with its unit, too.
			v.click(blankFor("/room/length"), 12)
			v.keys("22'")
			v.waitText("22'", blankFor("/room/length")+`.value`)
			v.keys(kb.Tab)
			v.waitText("22′ 0″", blankFor("/room/length")+`.value`)
		})
	}
}

// What is drawn over with the mouse while entering stays selected as drawn.
func TestEnteringABlankByDrawingOverAPart(t *testing.T) {
	v := open(t, desk, "")
	v.run(blankFor("/title") + `.scrollIntoView({ block: "center" })`)
	at := value[[]float64](v, `(() => { const r = `+blankFor("/title")+`.getBoundingClientRect(); return [r.x, r.y + r.height / 2]; })()`)
	for _, step := range []struct {
		what  input.DispatchMouseEventType
		right float64
	}{{chromedp.MousePressed, 8}, {chromedp.MouseMoved, 40}, {chromedp.MouseReleased, 60}} {
		require.NoError(t, chromedp.Do(v.tab, chromedp.MouseEvent(step.what, at[0]+step.right, at[1], chromedp.ButtonLeft, chromedp.ClickCount(1))))
	}
	got := v.text(selected)
	assert.Regexp(t, `^/title: \w+`, got)
	assert.NotContains(t, got, "House")
}

// A finger enters a blank as a mouse does, and finds the signs its keys lack.
func TestEnteringABlankByFinger(t *testing.T) {
	v := open(t, phone, "")
	v.fingers()
	v.run(blankFor("/room/length") + `.scrollIntoView({ block: "center" })`)
	v.tap(blankFor("/room/length"))
	v.waitText(`/room/length: 19' 6 1/2"`, selected)
	v.wait(`document.querySelector(".cw-echo-keys").offsetHeight > 30`)
	v.keys("20") // as inches no room: nothing is read before more is typed
	v.waitText("", `document.querySelector(".cw-echo-words").textContent`)
	v.tap(`document.querySelector("[data-sign=\"'\"]")`)
	v.keys("7")
	v.waitText("20′ 7″ ≈6.274 m", `document.querySelector(".cw-echo-words").textContent`)
	v.tap(`document.querySelector("[data-sign='1/2']")`)
	v.waitText(`20'7 1/2`, blankFor("/room/length")+`.value`)
	v.waitText(`20′ 7½″ ≈6.287 m`, `document.querySelector(".cw-echo-words").textContent`)
	v.keys(`"`)
	v.waitText(`20'7 1/2"`, blankFor("/room/length")+`.value`)
	v.glance("echo-finger")
	// After a sign or a space there is nothing to part.
	for _, c := range [][2]string{{`7'`, `7'1/2`}, {`7' 3 `, `7' 3 1/2`}, {``, `1/2`}} {
		v.run(`const b = document.activeElement; b.value = $1; b.dispatchEvent(new InputEvent("input", { bubbles: true }))`, c[0])
		v.waitText(c[0], `JSON.parse(`+plan+`).room.length`) // what follows from it has moved what it moves
		v.tap(`document.querySelector("[data-sign='1/2']")`)
		v.waitText(c[1], blankFor("/room/length")+`.value`)
	}
	// Every sign is as large as a finger, and they and the number pad write the notation in use.
	offered := `Array.from(document.querySelectorAll(".cw-echo-keys button"), (b) => b.offsetHeight > 0 ? b.textContent : "").join("")`
	assert.Equal(t, "′″␣⁄½¼⅛", v.text(offered))
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-echo-keys button")).every((b) => b.offsetHeight === 0 || b.offsetHeight >= 44 && b.offsetWidth >= 44)`))
	assert.Equal(t, "decimal", v.text(blankFor("/room/length")+`.inputMode`))
	assert.Equal(t, "hidden", v.text(`getComputedStyle(document.querySelector(".cw-bar")).visibility`), "the bar at the foot gives way to the keys")
	v.run(`document.querySelector("[data-do=notation][data-to=metric]").click(); ` + blankFor("/room/length") + `.focus()`)
	v.waitText("mmcmm", offered)
	v.run(`document.querySelector("[data-do=notation][data-to=feet-inches]").click(); ` + blankFor("/room/length") + `.focus()`)
	v.waitText("′″␣⁄½¼⅛", offered)
	// A room has no length below nothing, so there is no minus; a corner has.
	assert.True(t, v.holds(`document.querySelector("[data-sign='-']").offsetHeight === 0`))
	v.choose("/room/form", "points")
	v.press(`[data-do=add][data-to="/room/points"]`)
	v.wait(`document.activeElement.dataset.at === "/room/points/4/x" && document.querySelector("[data-sign='-']").offsetHeight > 30`)
}

// fingers has the tab say that it is pointed at with fingers.
func (v *view) fingers() {
	v.t.Helper()
	call(v, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: true, MaxTouchPoints: 1})
	v.wait(`matchMedia("(pointer: coarse)").matches`)
}

// tap touches the middle of an element.
func (v *view) tap(element string) {
	v.t.Helper()
	at := value[[]float64](v, `(() => { const r = `+element+`.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	call(v, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: []*input.TouchPoint{{X: at[0], Y: at[1]}}})
	call(v, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}})
}

// covered names every control in the window that cannot be pressed in its
// middle because something lies over it. A part that is rolled out of sight in
// the drawing's column is not in the window.
const covered = `(() => {
  const out = [];
  for (const e of document.querySelectorAll(".cw-page :is(input, select, textarea, button, summary, a[href])")) {
    if (!e.checkVisibility({ visibilityProperty: true }) || e.closest("svg")) continue;
    const r = e.getBoundingClientRect();
    const x = r.x + r.width / 2, y = r.y + r.height / 2;
    if (r.width < 2 || x < 0 || y < 0 || x > document.documentElement.clientWidth - 1 || y > document.documentElement.clientHeight - 1) continue;
    const side = e.closest(".cw-side")?.getBoundingClientRect();
    if (side && getComputedStyle(e.closest(".cw-side")).overflowY === "auto" && (y < side.top || y > side.bottom)) continue;
    const top = document.elementFromPoint(x, y);
    if (top !== e && !e.contains(top) && !top?.contains(e)) out.push((e.dataset.at ?? e.dataset.do ?? e.textContent) + " under " + (top ? top.className || top.localName : "nothing"));
    if (top !== e && top?.contains(e) && top.matches(".cw-echo, .cw-echo *")) out.push("echo");
  }
  return out.join("; ");
})()`

// While an echo is shown nothing lies over anything that can be pressed.
func TestNothingCoversWhatCanBePressed(t *testing.T) {
	beside(t)
	for _, in := range []window{{1280, 900}, {760, 1000}, {390, 844}, {320, 640}} {
		for _, hand := range []string{"mouse", "fingers"} {
			if in.wide == 760 && hand == "mouse" || in.wide == 1280 && hand == "fingers" {
				continue
			}
			t.Run(in.String()+" "+hand, func(t *testing.T) {
				v := open(t, in, "")
				if hand == "fingers" {
					v.fingers()
				}
				for _, at := range []string{"/room/length", "/mask/layers/1/greatestLength", "/access/deckLength"} {
					v.write(at, "7'8")
					v.wait(`/[=≈]/.test(document.querySelector(".cw-echo-words").textContent) && document.querySelector(".cw-echo").offsetHeight > 10`)
					for _, place := range []string{"center", "end"} {
						v.run(`document.activeElement.scrollIntoView({ block: $1, behavior: "instant" })`, place)
						assert.Empty(t, v.text(covered), "%s at the %s of the window", at, place)
					}
				}
				v.glance("echo-" + hand + "-" + strings.ReplaceAll(in.String(), " × ", "-"))
			})
		}
	}
}

// A press is not lost when the echo goes: what is pressed stays under the
// pointer, once and again.
func TestLeavingABlankDoesNotMoveWhatIsPressed(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/room/length", "190")
	v.wait(`document.querySelector(".cw-echo:not([data-idle])")`)
	v.write("/mask/length", "180")
	v.run(blankFor("/setting/leastBorder") + `.scrollIntoView({ block: "center", behavior: "instant" })`)
	before := v.text(`String(Math.round(` + blankFor("/setting/leastBorder") + `.getBoundingClientRect().top))`)
	v.click(blankFor("/setting/leastBorder"), 10)
	v.waitText("/setting/leastBorder: |0", selected)
	assert.Equal(t, before, v.text(`String(Math.round(`+blankFor("/setting/leastBorder")+`.getBoundingClientRect().top))`))
	assert.True(t, v.holds(`document.querySelector(".cw-echo[data-idle]") !== null`), "its line stays empty until something is typed")
	v.keys("3")
	v.wait(`document.querySelector(".cw-echo:not([data-idle])")?.previousElementSibling.contains(document.activeElement)`)
}

// A bare number that makes no sense is asked about once its blank is left, and
// answered with one press.
func TestABareNumberIsAskedAboutAndAnswered(t *testing.T) {
	v := openEmpty(t, desk)
	v.write("/room/length", "12")
	assert.Empty(t, v.text(said, "/room/length"), "not while it is typed")
	v.keys(kb.Tab)
	v.wait(said+`.includes("Which is meant: 12 inches is very little for a side of a room: 12 feet or 12 inches?")`, "/room/length")
	assert.Equal(t, "12", v.text(blankFor("/room/length")+`.value`), "nothing is decided")
	assert.Equal(t, "—", v.text(`document.querySelector('[data-figure="room.area"] .cw-value').textContent`))
	v.glance("asked")
	v.press(`[data-do=answer][data-answer="12 ft"]`)
	v.waitText("12 ft", `JSON.parse(`+plan+`).room.length`)
	v.waitText("", said, "/room/length")
	v.wait(`document.activeElement === ` + blankFor("/room/length"))
	v.leave()
	v.waitText("12′ 0″", blankFor("/room/length")+`.value`)
	v.press(`.cw-head [data-do=undo]`)
	v.waitText("12", `JSON.parse(`+plan+`).room.length`)

	// So are two readings of one number, in metres too.
	v.press(`[data-do=notation][data-to=metric]`)
	v.write("/room/width", "5")
	v.leave()
	v.press(`[data-do=answer][data-answer="5 m"]`)
	v.waitText("5 m", `JSON.parse(`+plan+`).room.width`)
	v.write("/room/height", "2,750")
	v.leave()
	v.press(`[data-do=answer][data-answer="2750 mm"]`)
	v.waitText("2750 mm", `JSON.parse(`+plan+`).room.height`)
	v.write("/access/reachBy", "180")
	v.leave()
	v.press(`[data-do=answer][data-answer="180 cm"]`)
	v.waitText("180 cm", `JSON.parse(`+plan+`).access.reachBy`)
}

// A click on a button comes through although the question opens a line above it.
func TestAQuestionDoesNotTakeAClick(t *testing.T) {
	v := openEmpty(t, desk)
	v.run(`document.querySelector("#room").scrollIntoView({ block: "start", behavior: "instant" })`)
	v.write("/room/length", "12")
	v.run(`document.querySelectorAll("#room details.cw-rest")[0].open = false`)
	fold := `Array.from(document.querySelectorAll("#room details > summary")).find((s) => s.checkVisibility())`
	v.run(fold + `.scrollIntoView({ block: "center", behavior: "instant" })`)
	v.click(fold, 10)
	v.wait(fold + `.parentElement.open`)
	v.wait(said+`.includes("Which is meant")`, "/room/length")
}

// A step moved by its button takes the pointer with it: pressed again, it goes on
// and does not come back.
func TestAMovedStepStaysUnderThePointer(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := open(t, in, "")
			moved := v.text(`JSON.parse(` + plan + `).finish.steps[4].id`)
			place := `JSON.parse(` + plan + `).finish.steps.findIndex((s) => s.id === "` + moved + `")`
			button := `document.querySelectorAll(".cw-step")[4].querySelector("[data-do=earlier]")`
			v.openStep("/finish/steps/4")
			v.run(button + `.scrollIntoView({ block: "center", behavior: "instant" })`)
			at := value[[]float64](v, `(() => { const r = `+button+`.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
			for want := 3; want >= 1; want-- {
				require.NoError(t, chromedp.Do(v.tab, chromedp.MouseClickXY(at[0], at[1])))
				v.waitText(strings.Repeat("i", want), `"i".repeat(`+place+`)`)
				v.wait(`document.activeElement === document.querySelectorAll(".cw-step")[` + place + `].querySelector("[data-do=earlier]")`)
			}
		})
	}
}

// New steps go where they are wanted: after any step, before all, or at the end.
// What is added is open, and what is added next goes after it.
func TestNewStepsGoAnywhere(t *testing.T) {
	v := open(t, desk, "")
	ids := `JSON.parse(` + plan + `).finish.steps.slice(0, 5).map((s) => s.id).join(" ")`
	before := strings.Fields(v.text(ids))
	v.run(`document.querySelector("[data-new-step]").value = "glaze"; document.querySelector("[data-new-place]").value = $1`, before[0])
	v.press(`[data-do=add][data-to="/finish/steps"]`)
	v.waitText(before[0]+" glaze1 "+strings.Join(before[1:4], " "), ids)
	v.wait(`document.activeElement.dataset.at === "/finish/steps/1/name"`)
	assert.Equal(t, "1", v.text(`Array.from(document.querySelectorAll(".cw-step")).flatMap((s, i) => s.querySelector("[data-at]") ? [i] : []).join()`), "what is added is open")
	v.press(`[data-do=add][data-to="/finish/steps"]`)
	v.waitText(before[0]+" glaze1 glaze2 "+strings.Join(before[1:3], " "), ids)

	v.run(`document.querySelector("[data-new-step]").value = "one-layer"; document.querySelector("[data-new-place]").value = "/"`)
	v.press(`[data-do=add][data-to="/finish/steps"]`)
	v.waitText("protect base edge-seal coat peel base", `JSON.parse(`+plan+`).finish.steps.slice(0, 6).map((s) => s.kind).join(" ")`)
	v.wait(`/5 steps are added before all others/.test(document.querySelector("[data-fill=hear]").textContent)`)
	v.run(`document.querySelector("[data-new-place]").value = ""; document.querySelector("[data-new-step]").value = "peel"`)
	v.press(`[data-do=add][data-to="/finish/steps"]`)
	v.wait(`JSON.parse(` + plan + `).finish.steps.at(-1).name.startsWith("Peel") && JSON.parse(` + plan + `).finish.steps.length === 18`)
	assert.Equal(t, "", v.text(`document.querySelector("[data-new-place]").value`), "at the end it stays")
	v.run(`document.querySelector("[data-fill=left-out]").scrollIntoView({ block: "center" })`)
	v.glance("places")
}

// The example in another room is fitted to it, once a side is filled in: the
// sheet says so in one sentence, and one press takes it back.
func TestTheExampleIsFittedToAnotherRoom(t *testing.T) {
	v := open(t, desk, "")
	mask := `(({ length, width }) => length + " by " + width)(JSON.parse(` + plan + `).mask)`
	v.write("/room/length", "12'")
	assert.Equal(t, `16' 2" by 11' 10"`, v.text(mask), "not while it is typed")
	v.keys(kb.Tab)
	v.waitText(`9' 11" by 11' 10"`, mask) // 194 × 144 ÷ 234½ = 119.1
	v.wait(messages + `.includes("The example is fitted to this room: its mask is sized to it")`)
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[aria-invalid]").length`))
	assert.Equal(t, "0", v.text(`String(JSON.parse(`+plan+`).mask.layers[1].pieces.length)`))
	v.glance("fitted")
	v.press(`.cw-head [data-do=undo]`)
	v.waitText(`16' 2" by 11' 10"`, mask)
	assert.Empty(t, v.text(messages), "what is undone is said no longer")
	assert.Equal(t, "12'", v.text(`JSON.parse(`+plan+`).room.length`))
	v.press(`.cw-head [data-do=redo]`)
	v.waitText(`9' 11" by 11' 10"`, mask)

	// Taken over as one's own job, too; and a question about the room comes first.
	v.press(`.cw-example [data-do=make-mine]`)
	v.write("/room/width", "20")
	v.keys(kb.Tab)
	v.press(`[data-do=answer][data-answer="20 ft"]`)
	v.waitText(`9' 11" by 16' 0"`, mask) // 142 × 240 ÷ 177 = 192.5
	assert.Empty(t, v.text(`Array.from(document.querySelectorAll("[aria-invalid]:not([data-at$='/openHours'])"), (e) => e.dataset.at + " " + document.getElementById(e.getAttribute("aria-describedby").split(" ")[0]).textContent).join("; ")`))

	// A job of one's own stays as it is.
	v.run(`document.querySelector("[data-do=empty]").click()`)
	assert.False(t, v.holds(messages+`.includes("The example is fitted")`))
	v.write("/mask/length", "10'")
	v.write("/room/length", "9'")
	v.keys(kb.Tab)
	v.waitText("9′ 0″", blankFor("/room/length")+`.value`)
	assert.Equal(t, "10'", v.text(`JSON.parse(`+plan+`).mask.length`))
}

// cut names what stands out of the window sideways and is cut off there, out of
// sight and out of reach. What rolls in a place of its own is in reach.
const cut = `(() => {
  const wide = document.documentElement.clientWidth + 0.5;
  return Array.from(document.querySelectorAll(".cw-page *")).filter((e) => {
    const r = e.getBoundingClientRect();
    if (r.right <= wide || r.width < 2 || !e.checkVisibility() || e.closest("svg, .cw-skip, .cw-hear")) return false;
    for (let p = e.parentElement; p; p = p.parentElement) if (["auto", "scroll", "hidden"].includes(getComputedStyle(p).overflowX)) return false;
    return true;
  }).filter((e, _, all) => !all.some((o) => o !== e && e.contains(o))).map((e) => e.tagName + "." + e.className + "/" + (e.dataset.at ?? "") + " in " + (e.parentElement.className || e.parentElement.localName) + " " + e.textContent.trim().slice(0, 40) + " " + Math.round(e.getBoundingClientRect().right)).slice(0, 12).join("; ");
})()`

// A name of 25 letters without a space, wherever a name can be, cuts nothing off
// on a narrow page; one that turns the direction of writing turns nothing but
// itself.
func TestLongAndTurningNamesStayInTheirPlace(t *testing.T) {
	v := open(t, window{360, 740}, "")
	named := func(name string) {
		v.put(fragment(v.text(`(() => {
  const plan = JSON.parse(`+plan+`);
  const all = (value) => { for (const k in value) if (k === "name" || k === "colour") value[k] = $1; else if (value[k] && typeof value[k] === "object") all(value[k]); };
  all(plan);
  plan.title = $1;
  plan.id = "names";
  return JSON.stringify(plan);
})()`, name)))
		v.run(`for (const d of document.querySelectorAll(".cw-sheet details")) d.open = true`)
		v.waitText(name, blankFor("/title")+`.value`)
	}
	named(strings.Repeat("W", 25))
	for _, in := range []window{{360, 740}, {320, 640}} {
		v.resize(in)
		assert.Empty(t, v.text(cut), in.String())
	}
	v.picture("names")

	override := "\u202e"
	named("abc" + override + "def")
	assert.Empty(t, v.text(`(() => {
  const out = [];
  const texts = document.createTreeWalker(document.querySelector(".cw-page"), NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) if (/[\u202a-\u202e]/.test(texts.currentNode.data) && texts.currentNode.parentElement.localName !== "script") out.push(texts.currentNode.data);
  for (const e of document.querySelectorAll(".cw-page [aria-label], .cw-page [title]")) if (/[\u202a-\u202e]/.test((e.getAttribute("aria-label") ?? "") + (e.title ?? ""))) out.push(e.outerHTML.slice(0, 150));
  return out.slice(0, 5).join("; ");
})()`))
	// Letters that run from the right are fenced off.
	named("אבג")
	assert.Equal(t, "after “\u2068אבג\u2069”", v.text(`document.querySelector("[data-new-place]").options[2].text`))
}
