package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

const drawnKey = `document.querySelector("[data-drawing-layer]").value`

// The page decides what is drawn; what is chosen by hand holds until it is turned.
func TestDrawingFollowsThePage(t *testing.T) {
	v := openTurned(t, desk, "")
	for _, row := range [][2]string{
		{"room", "/room"}, {"mask", "L1/panels"}, {"setting-out", "L1/marks"}, {"hanging", "L1/hanging"},
		{"finish", "step.leaf.sections"}, {"days", "/days"}, {"safety", "/side"}, {"price", "L1/hanging"},
	} {
		v.run(`location.hash = $1`, row[0])
		v.waitText(row[1], drawnKey)
	}
	v.run(`location.hash = "mask"`)
	v.waitText("L1/panels", drawnKey)
	// The layer in hand.
	v.run(`document.querySelectorAll(".cw-layer")[1].querySelector("[data-at], [data-rel]").focus()`)
	v.waitText("L2/panels", drawnKey)
	v.run(`const s = document.querySelector("[data-drawing-layer]"); s.value = "/room"; s.dispatchEvent(new Event("change", { bubbles: true }))`)
	v.waitText("Room, looking up", `document.querySelector("[data-drawing-title]").textContent`)
	v.run(`document.querySelectorAll(".cw-layer")[0].querySelector("[data-at], [data-rel]").focus()`)
	assert.Equal(t, "/room", v.text(drawnKey), "chosen by hand")
	v.run(`location.hash = "hanging"`)
	v.waitText("L1/hanging", drawnKey)
}

// A panel's line opens under the drawing and is put away again, by the pointer and by
// keys: the panels are one stop, with arrows among them.
func TestPanelOpensItsLine(t *testing.T) {
	v := openTurned(t, desk, "#hanging")
	const line = `document.querySelector("[data-fill=drawing-words]").textContent`
	assert.Equal(t, 1, value[int](v, `document.querySelectorAll("[data-fill=drawing] [tabindex='0']").length`))
	v.run(`document.querySelector("[data-fill=drawing] [tabindex='0']").focus()`)
	first := v.text(`document.activeElement.dataset.panel`)
	v.keys(kb.ArrowRight)
	assert.NotEqual(t, first, v.text(`document.activeElement.dataset.panel ?? ""`))
	assert.Equal(t, 1, value[int](v, `document.querySelectorAll("[data-fill=drawing] [tabindex='0']").length`))
	v.keys("\r")
	v.run(`document.activeElement.blur()`)
	v.wait(line + `.includes("Hung as number")`)
	v.run(`document.querySelector("[data-fill=drawing] [data-lit] *").dispatchEvent(new MouseEvent("click", { bubbles: true }))`)
	v.waitText("", line)
}

// On a phone the drawing comes up over half of the page: its letters can be read, a double
// tap makes it larger, and putting it away gives the focus back.
func TestDrawingComesUpOnAPhone(t *testing.T) {
	v := openTurned(t, phone, "#setting-out")
	v.press(`.cw-bar [data-do=show-drawing]`)
	v.wait(`document.querySelector(".cw-side").getBoundingClientRect().height > 200`)
	assert.True(t, v.holds(`document.querySelector(".cw-side").getBoundingClientRect().top > innerHeight * 0.35`), "half of the page stays in view")
	const least = `Math.min(...Array.from(document.querySelectorAll("[data-fill=drawing] svg text"), (e) => {
    const seen = e.ownerSVGElement.getBoundingClientRect(), box = e.ownerSVGElement.viewBox.baseVal;
    return Math.min(seen.width / box.width, seen.height / box.height) * Number(e.getAttribute("font-size"));
  }))`
	assert.GreaterOrEqual(t, value[float64](v, least), 9.0)
	before := value[float64](v, least)
	v.run(`const place = document.querySelector("[data-fill=drawing]"), at = place.getBoundingClientRect();
    for (const kind of ["pointerdown", "pointerup", "pointerdown", "pointerup"])
      place.dispatchEvent(new PointerEvent(kind, { bubbles: true, pointerId: 7, clientX: at.x + 50, clientY: at.y + 50 }));`)
	assert.InDelta(t, 2.5*before, value[float64](v, least), 0.2)
	v.press(`.cw-side-shut`)
	assert.True(t, v.holds(`document.activeElement.matches(".cw-bar [data-do=show-drawing]")`))
	assert.Equal(t, "false", v.text(`document.activeElement.getAttribute("aria-expanded")`))
	// Whoever types has the blank in sight.
	v.press(`.cw-bar [data-do=show-drawing]`)
	v.run(`document.querySelector("#setting-out [data-at]").focus()`)
	v.waitText("hidden", `getComputedStyle(document.querySelector(".cw-side")).visibility`)
}
