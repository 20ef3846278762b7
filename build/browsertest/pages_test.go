package browsertest

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// inView are the pages of the job that can be seen.
const inView = `Array.from(document.querySelectorAll(".cw-block"), (b) => b.checkVisibility() ? b.id : "").filter(Boolean).join(" ")`

// turn goes to a page by the list of pages.
func (v *view) turn(to string) {
	v.t.Helper()
	v.press(`.cw-pages a[href="#` + to + `"]`)
	v.waitText(to, inView)
}

// One page is in view at a time; the list, the foot, Back and an address turn to others.
func TestPagesAreTurned(t *testing.T) {
	beside(t)
	v := openTurned(t, desk, "")
	assert.Equal(t, "job", v.text(inView))
	v.turn("room")
	assert.Equal(t, "page", v.text(`document.querySelector(".cw-pages a[href='#room']").getAttribute("aria-current")`))
	v.press(`#room .cw-turn a[rel="next"]`)
	v.waitText("mask", inView)
	v.run(`history.back()`)
	v.waitText("room", inView)
	v.run(`history.back()`)
	v.waitText("job", inView)

	v.reload()
	assert.Equal(t, "job", v.text(inView))
	v.press(`.cw-heads [data-answer="borders"] a`)
	v.waitText("setting-out", inView)
	v.reload()
	v.waitText("setting-out", inView)

	v.press(`[data-do="all-pages"]`)
	v.wait(`document.querySelector("#price").checkVisibility() && document.querySelector("#job").checkVisibility()`)
}

// The address of a figure opens the page it stands on.
func TestFigureHasAnAddress(t *testing.T) {
	v := openTurned(t, desk, "#border.AB")
	v.waitText("setting-out", inView)
	v.wait(`(({ top, bottom }) => top >= 0 && bottom <= innerHeight)(document.querySelector('#setting-out .cw-figure[data-figure="border.AB"]').getBoundingClientRect())`)
}

// A page is ticked at its foot; the list says so, and the plan keeps it.
func TestPageIsTicked(t *testing.T) {
	v := openTurned(t, desk, "#room")
	v.waitText("room", inView)
	v.press(`#room [data-do="tick"]`)
	v.waitText("done", `document.querySelector('.cw-pages [data-page="room"] .cw-page-state').textContent`)
	assert.Equal(t, `["room"]`, v.text(`JSON.stringify(JSON.parse(`+plan+`).ticked)`))
	v.press(`#room [data-do="tick"]`)
	v.waitText("", `document.querySelector('.cw-pages [data-page="room"] .cw-page-state').textContent`)
}

// Two numbers, a lamp and a wish: a visitor gets the size of a mask and, from a price for
// an area, a range, all on the first page and with nothing red on the way but what safety
// asks.
func TestVisitorGetsASizeAndARange(t *testing.T) {
	v := openTurned(t, window{1280, 800}, "")
	v.press(`.cw-example [data-do=empty]`)
	v.waitText("job", inView)
	assert.Equal(t, 0, value[int](v, `Array.from(document.querySelectorAll("[aria-invalid], .cw-first:not(:empty)")).filter((e) => e.checkVisibility()).length`), "an empty job has nothing wrong")
	fill := func(at, text string) {
		v.run(`const b = document.querySelector('#job [data-at="' + $1 + '"]'); b.focus(); b.value = $2; for (const name of ["input", "change"]) b.dispatchEvent(new Event(name, { bubbles: true })); b.blur()`, at, text)
	}
	fill("/room/length", "18'")
	fill("/room/width", "14'")
	fill("/room/fixture/at", "middle")
	v.run(`const w = document.querySelector("[data-begin-with]"); w.value = "leaf-and-glaze"; w.dispatchEvent(new Event("change", { bubbles: true }))`)
	v.wait(`JSON.parse(` + plan + `).finish.steps.length > 8 && JSON.parse(` + plan + `).mask.layers.length === 2`)
	// 18′ and 14′ less 6″ on either side, the narrowest border an empty sheet begins with.
	answer := `document.querySelector('.cw-heads [data-answer="' + $1 + '"] a')?.textContent ?? ""`
	v.waitText("17′ 0″ × 13′ 0″", answer, "mask")
	v.press(`[data-do="take-answer"]`)
	v.waitText("6″", answer, "borders")
	// 252 ft² at 38 is 9576, give or take 20 %: 7660.80 to 11 491.20.
	fill("/price/rough/perArea", "38")
	v.wait(`/7660\.80 to 11.491\.20/.test(`+answer+`)`, "price")
	assert.LessOrEqual(t, value[int](v, `document.documentElement.scrollHeight`), 1000, "about a screen")
}

// On a small screen pages are turned at the foot, and the drawing comes up over them.
func TestBarOfASmallScreen(t *testing.T) {
	v := openTurned(t, phone, "")
	v.press(`.cw-bar [data-bar="next"]`)
	v.waitText("room", inView)
	assert.True(t, strings.HasPrefix(v.text(`document.querySelector("[data-bar=list]").textContent`), "Room, 1 of 9"))
	assert.False(t, v.holds(`document.querySelector(".cw-side").checkVisibility()`))
	v.press(`.cw-bar [data-do="show-drawing"]`)
	v.wait(`document.querySelector(".cw-side svg").getBoundingClientRect().height > 100`)
	v.press(`.cw-bar [data-do="show-drawing"]`)
	v.wait(`!document.querySelector(".cw-side").checkVisibility()`)
	v.press(`.cw-bar [data-bar="list"]`)
	v.waitText("job", inView)
	v.wait(`document.querySelector(".cw-contents").getBoundingClientRect().top < innerHeight / 2`)
}

// The worked example can be read before the engine is there, and stands as it is then
// worked out; another job takes all of it off.
func TestExampleIsReadableBeforeTheEngine(t *testing.T) {
	beside(t)
	v := openTurned(t, desk, "")
	answers := `Array.from(page.querySelectorAll(".cw-heads div, .cw-page-line, [data-fill^=cover]"), (e) => e.textContent.replace("take it", "")).join("; ")`
	v.run(`const page = new DOMParser().parseFromString(await (await fetch(location.pathname)).text(), "text/html"); globalThis.sent = ` + answers)
	sent := v.text(`globalThis.sent`)
	assert.Contains(t, sent, "8 books")
	assert.Equal(t, sent, v.text(`((page) => `+answers+`)(document)`))
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[data-made]").length`))

	other := openTurned(t, desk, fragment(`{"ceilingwright":1,"id":"own","title":"Own","room":{"length":"5 m","width":"4 m"}}`))
	assert.NotContains(t, other.text(`document.querySelector(".cw-app").textContent`), "8 books")
}
