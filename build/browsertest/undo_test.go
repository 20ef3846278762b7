package browsertest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// undone is what the page says, for a moment, of what was undone.
const undone = `document.querySelector("[data-fill=undone]").textContent`

// focused is the place in the plan of the blank that has the focus.
const focused = `(document.activeElement?.dataset.at ?? "")`

// control presses a letter with the control key held, and shift where asked.
func (v *view) control(letter string, shift bool) {
	v.t.Helper()
	held := chromedp.ModifierCtrl
	if shift {
		held |= chromedp.ModifierShift
		letter = strings.ToUpper(letter)
	}
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.KeyEvent(letter, chromedp.KeyModifiers(held))))
}

// Whatever is done to the plan can be undone and done again, to the letter.
func TestEverythingCanBeUndoneAndDoneAgain(t *testing.T) {
	file := filepath.Join(t.TempDir(), "other.plan.json")
	require.NoError(t, os.WriteFile(file, []byte(strings.Replace(painterPlan, "painter", "other", 1)), 0o644))
	v := open(t, desk, "")
	v.choose("/room/form", "lines")
	for _, row := range []struct {
		name string
		do   func()
		says string
	}{
		{"a blank", func() { v.write("/mask/length", "17'") }, "ength"},
		{"a choice", func() { v.choose("/mask/layers/0/split", "sizes") }, "how the layer is cut into panels"},
		{"notation", func() { v.press(`[data-do=notation][data-to=metric]`) }, "answers in metric"},
		{"another layer", func() { v.press(`[data-do=add][data-to="/mask/layers"]`) }, "layer” put in"},
		{"a reading taken off", func() { v.press(`[data-base="/room/readings/2"] [data-do=remove]`) }, "a reading taken out"},
		{"a reading", func() { v.press(`[data-do=add][data-to="/room/readings"]`) }, "a reading put in"},
		{"a step left out", func() { v.press(`.cw-step[data-base="/finish/steps/1"] .cw-step-tools [data-do=remove]`) }, "” taken out"},
		{"a step moved", func() { v.press(`.cw-step[data-base="/finish/steps/1"] [data-do=later]`) }, "the order of the steps"},
		{"a set of steps", func() { v.press(`[data-do=add][data-to="/finish/steps"]`) }, ""},
		{"empty sheet", func() { v.press(`.cw-keep [data-do=empty]`) }, "empty sheet"},
		{"a file", func() { v.upload(file); v.wait(plan + `.includes('"id":"other"')`) }, "opening “other.plan.json”"},
		{"worked example", func() { v.press(`.cw-keep [data-do=example]`) }, "worked example"},
	} {
		t.Run(row.name, func(t *testing.T) {
			before := v.text(plan)
			row.do()
			v.leave()
			after := v.text(plan)
			require.NotEqual(t, before, after)
			v.press(`[data-do=undo]`)
			assert.Equal(t, before, v.text(plan))
			assert.Contains(t, v.text(undone), "Undone: ")
			assert.Contains(t, v.text(undone), row.says)
			v.press(`[data-do=redo]`)
			assert.Equal(t, after, v.text(plan))
			assert.Contains(t, v.text(undone), "Done again: ")
			assert.Contains(t, v.text(undone), row.says)
			v.press(`[data-do=undo]`)
			assert.Equal(t, before, v.text(plan))
		})
	}
}

// Typing in a blank is one step until it is left or the keys rest; the keys go
// through blanks in the order they were typed in, whichever has the focus.
func TestTypingInOneBlankIsOneStep(t *testing.T) {
	v := openPainter(t, desk)
	states := []string{v.text(plan)}
	v.write("/mask/length", "15' 2\"")
	states = append(states, v.text(plan))
	v.write("/mask/width", "9'")
	states = append(states, v.text(plan))
	v.leave()
	v.control("z", false)
	assert.Equal(t, states[1], v.text(plan))
	assert.Equal(t, "/mask/width", v.text(focused))
	v.control("z", false)
	assert.Equal(t, states[0], v.text(plan))
	assert.Equal(t, "/mask/length", v.text(focused))
	assert.Equal(t, "180", v.text(blank+`.value`, "/mask/length"))
	v.control("y", false)
	assert.Equal(t, states[1], v.text(plan))
	v.control("z", true)
	assert.Equal(t, states[2], v.text(plan))

	// A rest makes two of it; a text typed back to what it was is none.
	v.write("/title", "Long")
	v.run(`await new Promise((r) => setTimeout(r, 2200))`)
	v.keys(" room 2")
	v.waitText("Long room 2", blank+`.value`, "/title")
	v.control("z", false)
	v.waitText("Long", blank+`.value`, "/title")
	v.control("z", false)
	v.waitText("Long room", blank+`.value`, "/title")

	// A new change forgets what was undone before it.
	v.write("/title", "Tall room")
	v.control("y", false)
	assert.Equal(t, "There is nothing to do again.", v.text(undone))
	assert.Equal(t, "true", v.text(`String(document.querySelector("[data-do=redo]").getAttribute("aria-disabled"))`))
	assert.Equal(t, "Tall room", v.text(blank+`.value`, "/title"))
}

// The unit a bare number takes when its blank is left belongs to the step, and
// leaving a blank after an undo does not take the way forward away.
func TestUnitWrittenOnLeavingIsNoStepOfItsOwn(t *testing.T) {
	v := openEmpty(t, desk)
	before := v.text(plan)
	v.write("/room/length", "188")
	v.leave()
	v.wait(plan + `.includes('"188 in"')`)
	after := v.text(plan)
	v.control("z", false)
	assert.Equal(t, before, v.text(plan))
	v.leave()
	v.control("y", false)
	assert.Equal(t, after, v.text(plan))
}

// What changes out of sight is gone to, opened, given the focus and said.
func TestUndoneBlankIsGoneToAndSaid(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := openPainter(t, in)
			v.write("/seams/waste", "12")
			v.leave()
			v.run(`for (const d of document.querySelectorAll("details")) d.open = false; scrollTo(0, 0); document.querySelector('[data-at="/title"]').focus()`)
			v.control("z", false)
			assert.Equal(t, "/seams/waste", v.text(focused))
			assert.Equal(t, "10", v.text(blank+`.value`, "/seams/waste"))
			assert.True(t, v.holds(`(() => { const r = document.activeElement.getBoundingClientRect(); return r.height > 0 && r.top >= 0 && r.bottom <= innerHeight; })()`), "it is in sight")
			name := v.text(`(() => { const n = document.activeElement.getAttribute("aria-label"); return n[0].toLowerCase() + n.slice(1); })()`)
			assert.Equal(t, "Undone: "+name+".", v.text(undone))
			v.wait(`document.querySelector("[data-fill=hear]").textContent.startsWith($1)`, "Undone: "+name+".")
			// The words lie over the sheet, yet nothing under them is kept from a press.
			assert.True(t, v.holds(`(() => { const e = document.querySelector("[data-fill=undone]"); const r = e.getBoundingClientRect(); return !e.contains(document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2)); })()`))
		})
	}
}

// A layer that comes back stands where it was, and those after it keep their folds; a
// step that comes back is not to be put back any more.
func TestEntryThatComesBackLeavesFoldsAlone(t *testing.T) {
	v := open(t, desk, "")
	fold := func(layer string) string { return `.cw-layer[data-base="/mask/layers/` + layer + `"] details` }
	v.run(`document.querySelector($1).open = true`, fold("1"))
	v.press(`.cw-layer[data-base="/mask/layers/0"] [data-do=remove]:not(li *)`)
	require.True(t, v.holds(`document.querySelector($1).open`, fold("0")))
	v.press(`[data-do=undo]`)
	assert.True(t, v.holds(`document.querySelector($1).open`, fold("1")))
	v.press(`.cw-step[data-base="/finish/steps/1"] .cw-step-tools [data-do=remove]`)
	v.press(`[data-do=undo]`)
	assert.NotContains(t, v.text(`document.querySelector("[data-fill=left-out]").textContent`), "left out", "it cannot be put back twice")
}

// The oldest steps go when there are very many.
func TestHistoryIsBounded(t *testing.T) {
	v := openEmpty(t, desk)
	v.run(`const b = document.querySelector('[data-at="/title"]');
for (let i = 1; i <= 230; i++) { b.focus(); b.value = "Job " + i; b.dispatchEvent(new InputEvent("input", { bubbles: true })); b.blur(); }`)
	steps := value[int](v, `(() => { let n = 0; const u = document.querySelector("[data-do=undo]"); while (!u.hasAttribute("aria-disabled")) { u.click(); n++; } return n; })()`)
	assert.Equal(t, 200, steps)
	assert.Equal(t, "Job 30", v.text(blank+`.value`, "/title"))
}

// A text field that is no blank of the plan keeps the browser's own undoing.
func TestUndoLeavesOtherFieldsAlone(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/mask/length", "170")
	v.leave()
	before := v.text(plan)
	v.run(`const own = document.createElement("input"); own.id = "own"; document.body.append(own); own.focus()`)
	v.control("z", false)
	assert.Equal(t, before, v.text(plan))
	v.run(`document.getElementById("own").remove()`)
}
