package browsertest

import (
	"os"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kinds are the steps of the plan in their order; named their names.
const (
	kinds = `JSON.parse(` + plan + `).finish.steps.map((s) => s.kind).join(" ")`
	named = `JSON.parse(` + plan + `).finish.steps.map((s) => s.name).join(", ")`
)

// pointer has the left button do something beside an element, so many pixels
// below its middle.
func (v *view) pointer(what input.DispatchMouseEventType, element string, below float64) {
	v.t.Helper()
	at := value[[]float64](v, `(() => { const r = `+element+`.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.MouseEvent(what, at[0], at[1]+below, chromedp.ButtonLeft, chromedp.ClickCount(1))))
}

// The sets of steps are offered large while there are none, and add to the end.
func TestFinishBeginsWithASet(t *testing.T) {
	v := openPainter(t, desk)
	v.wait(`!document.querySelector("[data-begin]").hidden`)
	v.press(`[data-do=begin][data-to=one-layer]`)
	v.waitText("protect base edge-seal coat peel", kinds)
	assert.True(t, v.holds(`document.querySelector("[data-begin]").hidden`))
	v.wait(`document.activeElement.dataset.at === "/finish/steps/0/name"`)

	// A set, chosen like a step, loses nothing that is there.
	v.run(`document.querySelector("[data-new-step]").value = "wall-band"`)
	v.press(`[data-do=add][data-to="/finish/steps"]`)
	v.waitText("protect base edge-seal coat peel base edge-seal coat peel", kinds)
	v.wait(`/4 steps are added after/.test(document.querySelector("[data-fill=hear]").textContent)`)
	assert.Equal(t, "9", v.text(`String(new Set(JSON.parse(`+plan+`).finish.steps.map((s) => s.id)).size)`), "an id of its own for every step")
	assert.Equal(t, "wall-band", v.text(`document.querySelector("[data-new-step]").value`), "the choice stays")
}

// A step turned into leaf begins with what the engine begins a leaf step with.
func TestStepTurnedIntoLeafBeginsLikeANewOne(t *testing.T) {
	v := open(t, desk, "")
	for _, show := range []string{"metric", "feet-inches"} {
		v.press("[data-do=notation][data-to=" + show + "]")
		v.wait(`JSON.parse(`+plan+`).units.show === $1`, show)
		v.run(`document.querySelector("[data-new-step]").value = "coat"`)
		v.press(`[data-do=add][data-to="/finish/steps"]`)
		last := v.text(`String(JSON.parse(` + plan + `).finish.steps.length - 1)`)
		v.choose("/finish/steps/"+last+"/kind", "leaf")
		want := v.text(`JSON.stringify(JSON.parse(ceilingwright.starting("leaf", ` + plan + `))[0].leaf)`)
		require.Contains(t, want, `"waste":"20"`)
		v.waitText(want, `JSON.stringify(JSON.parse(`+plan+`).finish.steps.at(-1).leaf)`)
	}
}

// A step goes earlier and later by button, by key and by the handle; its folds,
// the focus and what was typed go with it, and back.
func TestFinishStepsChangePlaces(t *testing.T) {
	v := open(t, desk, "")
	before := v.text(named)
	v.openStep("/finish/steps/3")
	v.run(`document.querySelectorAll(".cw-step")[3].querySelector("details").open = true`)
	v.run(`document.querySelectorAll(".cw-step")[3].querySelector("[data-do=later]").click()`)
	v.wait(`document.querySelectorAll(".cw-step")[3].dataset.kind === "peel"`)
	v.wait(`document.activeElement === document.querySelectorAll(".cw-step")[4].querySelector("[data-do=later]")`)
	assert.True(t, v.holds(`document.querySelectorAll(".cw-step")[4].querySelector("details").open`))
	v.wait(`document.querySelector("[data-fill=hear]").textContent.startsWith("“Crown, light grey” is step 5 of 10.")`)

	v.run(`document.querySelectorAll(".cw-step")[4].querySelector(".cw-handle").focus()`)
	require.NoError(t, chromedp.Do(v.tab, chromedp.KeyEvent(kb.ArrowUp, chromedp.KeyModifiers(chromedp.ModifierAlt))))
	v.waitText(before, named)
	v.wait(`document.activeElement === document.querySelectorAll(".cw-step")[3].querySelector(".cw-handle")`)

	// At the end it stays, and says so.
	v.openStep("/finish/steps/9")
	v.run(`document.querySelectorAll(".cw-step")[9].querySelector("[data-do=later]").click()`)
	v.wait(`document.querySelector("[data-fill=hear]").textContent.startsWith("“Dark glaze over the whole” is the last step.")`)

	// Drawn by the handle from the third place to the first.
	v.run(`document.querySelectorAll(".cw-step")[2].scrollIntoView({block: "center", behavior: "instant"})`)
	v.pointer(chromedp.MousePressed, `document.querySelectorAll(".cw-handle")[2]`, 0)
	v.pointer(chromedp.MouseMoved, `document.querySelectorAll(".cw-handle")[2]`, -10)
	v.wait(`document.querySelector("[data-drawn] .cw-step[data-in-hand]")`)
	v.picture("finish-drawn")
	v.pointer(chromedp.MouseMoved, `document.querySelectorAll(".cw-handle")[0]`, -25)
	v.wait(`document.querySelectorAll(".cw-step")[0].dataset.drop === "before"`)
	v.pointer(chromedp.MouseReleased, `document.querySelectorAll(".cw-handle")[0]`, -25)
	v.wait(`document.querySelector(".cw-step").dataset.kind === "coat"`)
	assert.False(t, v.holds(`Boolean(document.querySelector("[data-drawn], [data-in-hand], [data-drop]"))`))
	assert.True(t, v.holds(`document.activeElement === document.querySelector(".cw-handle")`))

	// Escape lets go and changes nothing.
	order := v.text(named)
	v.run(`document.querySelectorAll(".cw-step")[1].scrollIntoView({block: "center", behavior: "instant"})`)
	v.pointer(chromedp.MousePressed, `document.querySelectorAll(".cw-handle")[1]`, 0)
	v.pointer(chromedp.MouseMoved, `document.querySelectorAll(".cw-handle")[1]`, 60)
	v.wait(`document.querySelector("[data-drawn]")`)
	v.keys(kb.Escape)
	v.wait(`!document.querySelector("[data-drawn]")`)
	v.pointer(chromedp.MouseReleased, `document.querySelectorAll(".cw-handle")[1]`, 60)
	assert.Equal(t, order, v.text(named))
}

// A step is a line until it is opened, one at a time. Its line says what is bought and
// that there is something to look at in it; what leads into it opens it, paper all.
func TestFinishStepsAreLinesUntilOpened(t *testing.T) {
	v := open(t, desk, "")
	const filled = `Array.from(document.querySelectorAll(".cw-step"), (s, i) => s.querySelector("[data-at]") ? i : "").join("")`
	v.waitText("", filled)
	assert.Equal(t, "Blue ground|2 × 1 gal|1.75 gal", v.text(`["name", "bought", "need"].map((n) => document.querySelector("[data-fill=step-" + n + "]").textContent).join("|")`))
	assert.Equal(t, "7 Look at this", v.text(`Array.from(document.querySelectorAll(".cw-step")).flatMap((s, i) => s.querySelector(".cw-say") ? [i + " " + s.querySelector(".cw-say").textContent] : []).join()`))

	v.press(`[data-base="/finish/steps/7"] [data-do=open-step]`)
	v.waitText("7", filled)
	v.wait(`document.querySelector('[data-base="/finish/steps/7"] .cw-says > .cw-say')`)
	v.press(`[data-base="/finish/steps/2"] [data-do=open-step]`)
	v.waitText("2", filled)
	v.press(`[data-base="/finish/steps/2"] [data-do=open-step]`)
	v.waitText("", filled)

	// Undone, a change in a step that is shut is gone to.
	v.write("/finish/steps/5/coats", "3")
	v.leave()
	v.press(`[data-base="/finish/steps/0"] [data-do=open-step]`)
	v.waitText("0", filled)
	v.press(`.cw-head [data-do=undo]`)
	v.wait(`document.activeElement.dataset.at === "/finish/steps/5/coats"`)
	assert.Contains(t, v.text(`document.querySelector("[data-fill=undone]").textContent`), "number of coats")
	v.waitText("5", filled)

	v.run(`dispatchEvent(new Event("beforeprint"))`)
	v.waitText("0123456789", filled)
	v.run(`dispatchEvent(new Event("afterprint"))`)
	v.waitText("5", filled)
}

// A finger draws a step as well as a mouse does.
func TestFinishStepIsDrawnByAFinger(t *testing.T) {
	v := open(t, phone, "")
	v.run(`document.querySelectorAll(".cw-step")[1].scrollIntoView({block: "center", behavior: "instant"})`)
	touch := func(what input.DispatchTouchEventType, at ...float64) {
		params := input.DispatchTouchEventParams{Type: what, TouchPoints: []*input.TouchPoint{}}
		for i := 0; i+1 < len(at); i += 2 {
			params.TouchPoints = append(params.TouchPoints, &input.TouchPoint{X: at[i], Y: at[i+1]})
		}
		call(v, input.DispatchTouchEvent, params)
	}
	at := value[[]float64](v, `(() => { const r = document.querySelectorAll(".cw-handle")[1].getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	touch(input.DispatchTouchEventTypeTouchStart, at[0], at[1])
	touch(input.DispatchTouchEventTypeTouchMove, at[0], at[1]-8)
	v.wait(`document.querySelector("[data-drawn]")`)
	touch(input.DispatchTouchEventTypeTouchMove, at[0], at[1]-80)
	v.wait(`document.querySelector(".cw-step").dataset.drop === "before"`)
	touch(input.DispatchTouchEventTypeTouchEnd)
	v.wait(`document.querySelector(".cw-step").dataset.kind === "edge-seal" && !document.querySelector("[data-drawn]")`)
}

// The step left out last is put back where it was, as it was.
func TestFinishStepLeftOutIsPutBack(t *testing.T) {
	v := open(t, desk, "")
	before := v.text(`JSON.stringify(JSON.parse(` + plan + `).finish)`)
	v.openStep("/finish/steps/2")
	v.run(`document.querySelectorAll(".cw-step")[2].querySelector("details").open = true`)
	v.run(`document.querySelectorAll(".cw-step")[2].querySelector(".cw-step-tools [data-do=remove]").click()`)
	v.wait(`document.querySelectorAll(".cw-step").length === 9`)
	assert.Contains(t, v.text(`document.querySelector("[data-fill=left-out]").textContent`), "Light grey through the first layer")
	v.press(`[data-do=put-back]`)
	v.wait(`document.activeElement.dataset.at === "/finish/steps/2/name"`)
	assert.Equal(t, before, v.text(`JSON.stringify(JSON.parse(`+plan+`).finish)`))
	assert.Equal(t, "true, ", v.text(`[2, 3].map((i) => document.querySelectorAll(".cw-step")[i].querySelector("details")?.open).join(", ")`), "it is open as it was")
	assert.Equal(t, "", v.text(`document.querySelector("[data-fill=left-out]").textContent`))
}

// The list to buy is printed alone, and saved as a table for a spreadsheet.
func TestFinishListToBuyIsPrintedAndSaved(t *testing.T) {
	v := open(t, desk, "")
	v.run(`window.print = () => { globalThis.printed = document.querySelector("[data-fill=cards]").textContent; }`)
	v.press(`[data-do=print-shopping]`)
	v.wait(`globalThis.printed?.includes("Blue ground")`)
	assert.Equal(t, "list", v.text(`document.documentElement.dataset.printing`))
	v.run(`dispatchEvent(new Event("afterprint"))`)
	assert.Equal(t, "", v.text(`document.querySelector("[data-fill=cards]").textContent`))

	// Labels for the pots: a label for every step that is put on wet.
	v.press(`[data-do=print-labels]`)
	v.wait(`document.documentElement.dataset.printing === "labels"`)
	assert.Equal(t, "8", v.text(`String(document.querySelectorAll("[data-fill=cards] .cw-pot").length)`))
	assert.Contains(t, v.text(`document.querySelector("[data-fill=cards] .cw-pot:last-child").textContent`), "raw umber")
	v.run(`dispatchEvent(new Event("afterprint"))`)

	folder := v.downloads()
	v.press(`[data-do=save-shopping]`)
	name, path := v.arrived(folder)
	assert.Equal(t, "winter-parlour-the-garden-house.to-buy.csv", name)
	table, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(table), "Blue ground")
}

// What is mixed and the sections of the leaf stand under their steps, and the
// drawing shows the sections.
func TestFinishMixIsMeasuredOutAndSectionsAreDrawn(t *testing.T) {
	v := open(t, desk, "")
	v.openStep("/finish/steps/9")
	v.waitText("glaze medium, raw umber, water", `Array.from(document.querySelector(".cw-step[data-kind=glaze] .cw-mix").querySelectorAll("tbody th"), (e) => e.textContent).join(", ")`)
	assert.Equal(t, "For the sample board", v.text(`document.querySelectorAll(".cw-step[data-kind=glaze] .cw-mix caption")[1].textContent`))
	v.openStep("/finish/steps/1")
	assert.Equal(t, "Bought with “Blue ground”.", v.text(`document.querySelector(".cw-step[data-kind=edge-seal] .cw-step-note").textContent`))
	v.openStep("/finish/steps/8")
	v.wait(`document.querySelector(".cw-step[data-kind=leaf] .cw-sections li")`)
	v.press(`.cw-step[data-kind=leaf] [data-do=draw]`)
	v.wait(`/^Sections of Broken leaf/.test(document.querySelector("[data-drawing-title]").textContent)`)
	assert.Equal(t, "step.leaf.sections", v.text(`document.querySelector("[data-drawing-layer]").value`))
	v.picture("finish-sections")
}
