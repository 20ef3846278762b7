package browsertest

import (
	"bytes"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPanelsThatAreUpAreTickedOff(t *testing.T) {
	v := openPainter(t, phone)
	first := v.text(`document.querySelector(".cw-order .cw-panel-name").textContent`)
	v.run(`document.querySelector(".cw-order .cw-tick").focus()`)
	v.keys(" ")
	v.waitText(first, layerUp)
	v.wait(`document.activeElement?.matches('.cw-tick[data-to="` + first + `"]')`)
	v.keys(" ")
	v.waitText("", layerUp)
}

func TestPanelToBeginWithIsChosen(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/mask/layers/0/start", "b2")
	v.waitText("B2", `document.querySelector(".cw-order .cw-panel-name").textContent`)
	v.leave()
	assert.Contains(t, v.text(`document.querySelector("details.cw-hang summary").textContent`), "B2 first")
}

// One press takes a choice whole: where it goes, what it is square to, which way
// it lies.
func TestChoiceIsTakenWithOnePress(t *testing.T) {
	v := open(t, desk, "")
	v.press(`.cw-choice[data-on=fixture] [data-do=take-choice]`)
	v.waitText("fixture room no", `["on", "square", "turned"].map((name) => JSON.parse(`+plan+`).setting[name]).join(" ")`)
	v.wait(`document.querySelector(".cw-choice[data-taken]").dataset.on === "fixture"`)
	assert.Equal(t, 1, value[int](v, `document.querySelectorAll(".cw-choice[data-taken]").length`))
}

// The cards of a layer are printed alone: one for each panel, with a sketch
// that lights that panel.
func TestHangingCardsPrintAlone(t *testing.T) {
	v := open(t, desk, "")
	v.run(`globalThis.print = () => { globalThis.printed = (globalThis.printed ?? 0) + 1; }`)
	v.press(`.cw-hang [data-do=print-cards]`)
	v.wait(`globalThis.printed === 1`)
	assert.Equal(t, 15, value[int](v, `document.querySelectorAll(".cw-card").length`))
	assert.True(t, v.holds(`document.querySelector(".cw-cards").getClientRects().length === 0`), "on the screen there are none")
	v.resize(window{695, 1000}) // an A4 page within its margins
	v.prefer("print")
	assert.Equal(t, 0, value[int](v, `Array.from(document.querySelectorAll(".cw-head, .cw-job")).filter((e) => e.getClientRects().length > 0).length`))
	assert.Contains(t, v.text(`document.querySelector(".cw-card").textContent`), v.text(`document.querySelector(".cw-order .cw-panel-name").textContent`))
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-card")).every((c) => c.querySelector(".cw-card-lit") && c.getBoundingClientRect().width < 348)`), "several to a page, each with its panel lit")
	v.prefer("")
	content := v.printed(chromedp.PaperA4)
	require.True(t, bytes.HasPrefix(content, []byte("%PDF-")))
	count := len(pages.FindAll(content, -1))
	assert.True(t, count >= 2 && count <= 5, "%d pages for 15 cards", count)
	v.run(`dispatchEvent(new Event("afterprint"))`)
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll(".cw-card").length`))
	assert.False(t, v.holds(`document.documentElement.hasAttribute("data-printing")`))
}

func TestMarksOfALayerComeAndGo(t *testing.T) {
	v := open(t, phone, "")
	v.press(`[data-base="/mask/layers/1"] [data-fold=register] [data-do=add]`)
	v.wait(`document.activeElement.dataset.at === "/mask/layers/1/register/marks/2/name"`)
	v.write("/mask/layers/1/register/marks/2/gotX", "-1/4\"")
	assert.Equal(t, "-1/4\"", v.text(planned, "/mask/layers/1/register/marks/2/gotX"))
	assert.True(t, v.holds(`document.querySelector('[data-base="/mask/layers/0"] [data-fold=register]').hidden`), "the first layer lies on none")
	assert.True(t, v.holds(`document.querySelector('details[data-base="/mask/layers/1"] [data-fold=key]').hidden`), "the last one needs no key")
}

// A gap of ⅛ in measured at the first seam is noted with one press, and what
// the seams to come are set to follows.
func TestMeasuredGapIsNotedWithOnePress(t *testing.T) {
	v := openPainter(t, phone)
	v.run(`document.querySelector(".cw-gaps").closest("details").open = true`)
	assert.Equal(t, "1│2 A│B", v.text(`Array.from(document.querySelectorAll(".cw-gaps [data-seam]"), (s) => s.dataset.seam).join(" ")`))
	before := v.text(`document.querySelector(".cw-gaps [data-seam='1│2']").textContent`)
	v.press(`[data-do=offer-gap][data-key="1│2"][data-to="⅛″"]`)
	v.waitText(`[{"seam":"1│2","gap":"⅛″"}]`, `JSON.stringify(JSON.parse(`+plan+`).mask.layers[0].gaps)`)
	assert.NotEqual(t, before, v.text(`document.querySelector(".cw-gaps [data-seam='1│2']").textContent`))
	// Typed in, the other seam gets an entry of its own.
	v.run(`document.querySelector(".cw-gaps [data-seam='A│B'] input").focus()`)
	v.keys("1/16")
	v.waitText(`A│B 1/16`, `JSON.parse(`+plan+`).mask.layers[0].gaps.slice(1).map((g) => g.seam + " " + g.gap).join()`)
	assert.Equal(t, "/mask/layers/0/gaps/1/gap", v.text(`document.activeElement.dataset.at`), "the focus stays in its blank")
	assert.Empty(t, v.text(overflow))
}

// A panel that hangs crooked: what touches it and went up after it comes down
// first, and all of that is one press away from being down.
func TestCrookedPanelBringsDownWhatWentUpAfterIt(t *testing.T) {
	v := openPainter(t, desk)
	order := v.text(`Array.from(document.querySelectorAll(".cw-order .cw-panel-name"), (b) => b.textContent).join(" ")`)
	for range 3 {
		v.press(`.cw-order .cw-tick[aria-pressed=false]`)
	}
	v.waitText(order[:8], layerUp)
	v.write("/mask/layers/0/crooked", order[:2])
	v.leave()
	v.wait(`document.querySelector(".cw-crooked [data-do=take-down]")`)
	v.press(`.cw-crooked [data-do=take-down]`)
	v.waitText("", blank+`.value`, "/mask/layers/0/crooked")
	assert.NotContains(t, v.text(layerUp), order[:2])
}

func TestMarksOfALayerAreJudged(t *testing.T) {
	v := open(t, desk, "")
	v.run(`document.querySelectorAll("[data-fold=register]")[1].open = true`)
	v.wait(`document.querySelector('details[data-base="/mask/layers/1"] [data-verdict=pass]')`)
	v.write("/mask/layers/1/register/marks/1/gotX", "14' 9\"")
	v.wait(`document.querySelector('details[data-base="/mask/layers/1"] [data-verdict=fail]')`)
	assert.True(t, v.holds(`document.querySelector('details[data-base="/mask/layers/1"] .cw-remedy li') !== null`), "what to do is said")
	v.picture("register-1280")
}
