package browsertest

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kept is the plan as this browser keeps it.
const kept = `(localStorage.getItem("ceilingwright:plan:" + localStorage.getItem("ceilingwright:last")) ?? "")`

func TestSheetIsKeptAndThereAfterReload(t *testing.T) {
	v := openAnew(t, desk, "")
	v.press(`.cw-example [data-do=empty]`)
	v.write("/title", "Long room")
	v.painter()
	v.wait(kept + `.includes("Long room") && JSON.parse(` + kept + `).mask.width.startsWith("115")`)
	assert.Equal(t, "kept on this device", v.text(`document.querySelector("[data-fill=state]").textContent`))
	before := v.text(plan)
	v.reload()
	v.waitText("4″", figure, "border.DA")
	assert.Equal(t, "Long room", v.text(blank+`.value`, "/title"))
	assert.Equal(t, before, v.text(plan))
	assert.Equal(t, 1, value[int](v, `document.querySelectorAll(".cw-layer").length`))

	// What is typed and not yet written when the page goes is written then.
	v.write("/title", "Longer room")
	v.reload()
	assert.Equal(t, "Longer room", v.text(blank+`.value`, "/title"))
}

// Storage that throws at the first touch, as in a strict mode or a frame.
func TestRefusedStorageIsSaidAndEverythingElseWorks(t *testing.T) {
	v := newView(t, desk)
	v.before(`Object.defineProperty(globalThis, "localStorage", { get() { throw new DOMException("refused", "SecurityError"); } })`)
	v.visit(hosted)
	v.ready()
	v.allPages()
	v.press(`.cw-example [data-do=empty]`)
	v.painter()
	v.waitText("4″", figure, "border.DA")
	v.wait(messages + `.includes("keeps nothing")`)
	folder := v.downloads()
	v.press(`[data-message=keeping] [data-do=save-file]`)
	_, path := v.arrived(folder)
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(content), `"180 in"`)
}

func TestFullStorageIsSaidAndTheLastStateStays(t *testing.T) {
	v := openEmpty(t, desk)
	v.write("/title", "Long room")
	v.wait(kept + `.includes("Long room")`)
	good := v.text(kept)
	v.run(`Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }`)
	v.write("/title", "Longer room")
	v.wait(messages + `.includes("no room left")`)
	assert.Equal(t, good, v.text(kept), "nothing is cut or half written")
	v.run(`document.querySelector("#price").scrollIntoView()`)
	assert.True(t, v.holds(`(() => {
  const r = document.querySelector("[data-message=keeping]").getBoundingClientRect();
  return scrollY > innerHeight && r.top >= 0 && r.bottom <= innerHeight && Boolean(document.elementFromPoint(r.left + 8, r.top + 8).closest("[data-message=keeping]"));
})()`), "where one is")
	assert.Equal(t, "Longer room", v.text(blank+`.value`, "/title"))
}

// The plan goes in and the few words beside it do not: what is kept is this tab's
// own, and it is written on once there is room.
func TestRoomForThePlanAlone(t *testing.T) {
	v := openEmpty(t, desk)
	v.write("/title", "Long room")
	v.wait(kept + `.includes("Long room")`)
	v.run(`Storage.prototype.setItem = function (name, text) {
  if (name.includes("about:")) throw new DOMException("full", "QuotaExceededError");
  cwReal.setItem.call(this, name, text);
}`)
	v.write("/title", "Longer room")
	v.wait(messages + `.includes("no room left")`)
	v.run(`Storage.prototype.setItem = cwReal.setItem`)
	v.write("/title", "Longest room")
	v.wait(kept + `.includes("Longest room")`)
	assert.Empty(t, v.text(messages))
}

func TestHalfWrittenPlanStartsEmptyAndIsOfferedOnce(t *testing.T) {
	v := newView(t, desk)
	v.visit(hosted + "icon.svg") // a page of the same origin, to lay the trap
	v.run(`localStorage.setItem("ceilingwright:last", "a1"); localStorage.setItem("ceilingwright:plan:a1", '{"ceilingwright":1,"room":')`)
	v.visit(hosted)
	v.ready()
	v.wait(messages + `.includes("cannot be opened") && ` + messages + `.includes("cut off or damaged")`)
	assert.Empty(t, v.text(blank+`.value`, "/room/length"))
	folder := v.downloads()
	v.press(`[data-do=save-damaged]`)
	_, path := v.arrived(folder)
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, `{"ceilingwright":1,"room":`, string(content))
	v.reload()
	assert.NotContains(t, v.text(messages), "cannot be opened", "it is said once")
	assert.Equal(t, `{"ceilingwright":1,"room":`, v.text(`localStorage.getItem("ceilingwright:plan:a1")`), "and the text stays")

	// For as long as it is there, it is in the list and can be had.
	v.press(`[data-do=jobs]`)
	assert.Contains(t, v.text(`document.querySelector(".cw-jobs li").textContent`), "cut off or damaged")
	folder = v.downloads()
	v.press(`.cw-jobs [data-do=save-damaged]`)
	_, path = v.arrived(folder)
	content, err = os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, `{"ceilingwright":1,"room":`, string(content))
	v.press(`.cw-jobs [data-do=job-delete]`)
	assert.True(t, v.holds(`localStorage.getItem("ceilingwright:plan:a1") === null`))
	v.press(`.cw-jobs [data-do=undo]`)
	assert.Equal(t, `{"ceilingwright":1,"room":`, v.text(`localStorage.getItem("ceilingwright:plan:a1")`))
}

// A kept plan of a newer version is called that, at the start and in the list.
func TestKeptPlanOfANewerVersionIsCalledThat(t *testing.T) {
	v := newView(t, desk)
	v.visit(hosted + "icon.svg")
	v.run(`localStorage.setItem("ceilingwright:last", "a1"); localStorage.setItem("ceilingwright:plan:a1", '{"ceilingwright":2,"id":"a1"}')`)
	v.visit(hosted)
	v.ready()
	v.wait(messages + `.includes("newer version")`)
	assert.NotContains(t, v.text(messages), "damaged")
	v.press(`[data-do=jobs]`)
	assert.Contains(t, v.text(`document.querySelector(".cw-jobs li").textContent`), "newer version")
}

// Two tabs on one job: neither writes over the other without a word.
func TestTwoTabsOnOneJobDoNotOverwriteEachOther(t *testing.T) {
	one := openAnew(t, desk, "")
	one.press(`.cw-example [data-do=empty]`)
	one.write("/title", "Long room")
	one.wait(kept + `.includes("Long room")`)
	two := viewIn(t, laneOf(t).browser, desk)
	two.visit(hosted)
	two.ready()
	two.waitText("Long room", blank+`.value`, "/title")
	two.write("/title", "Tall room")
	two.wait(kept + `.includes("Tall room")`)
	one.wait(messages + `.includes("another tab")`)
	one.write("/title", "Wide room")
	one.run(`await new Promise((r) => setTimeout(r, 600))`)
	assert.Contains(t, one.text(kept), "Tall room")
	assert.Equal(t, "Wide room", one.text(blank+`.value`, "/title"))
	one.press(`[data-do=keep-copy]`)
	one.wait(kept + `.includes("Wide room")`)
	assert.Equal(t, 2, value[int](one, `Object.keys(localStorage).filter((k) => k.startsWith("ceilingwright:plan:")).length`), "both are kept")
}

// What is said of a job changed in another tab is said of that job alone: not of
// one nobody has worked on here, and not of the next on the sheet.
func TestAnotherTabIsSaidOfItsJobOnly(t *testing.T) {
	one := openAnew(t, desk, "")
	one.run(`addEventListener("storage", () => setTimeout(() => globalThis.heard = true))`)
	two := viewIn(t, laneOf(t).browser, desk)
	two.visit(hosted + "icon.svg") // a page of the same origin
	writeElsewhere := func(title string) {
		one.run(`globalThis.heard = false`)
		two.run(`const plan = JSON.parse($1);
localStorage.setItem("ceilingwright:plan:" + plan.id, JSON.stringify({ ...plan, title: $2 }))`, one.text(plan), title)
		one.wait(`globalThis.heard`)
	}
	writeElsewhere("Not the example")
	assert.Empty(t, one.text(messages), "nobody has worked on the example here")

	one.press(`.cw-example [data-do=empty]`)
	one.write("/title", "Long room")
	one.wait(kept + `.includes("Long room")`)
	writeElsewhere("Tall room")
	one.wait(messages + `.includes("another tab")`)
	one.run(`document.querySelector("[data-do=example]").click()`)
	assert.NotContains(t, one.text(messages), "another tab", "another job is on the sheet")
}

// The way out of two tabs' changes is open while the client's copy is in view.
func TestAnotherTabWhileTheClientsCopyIsInView(t *testing.T) {
	one := openAnew(t, desk, fragment(firmsPlan(t)))
	one.write("/title", "Long room")
	one.leave()
	one.wait(kept + `.includes("Long room")`)
	one.press(copyButton)
	one.wait(`document.querySelector(".cw-page").hasAttribute("data-client")`)
	two := viewIn(t, laneOf(t).browser, desk)
	two.visit(hosted)
	two.ready()
	two.write("/title", "Tall room")
	two.wait(kept + `.includes("Tall room")`)
	one.wait(messages + `.includes("another tab")`)
	one.press(`[data-do=take-theirs]`)
	one.waitText("Tall room", blank+`.value`, "/title")
	assert.True(t, one.holds(`!document.querySelector(".cw-page").hasAttribute("data-client")`))
	assert.Empty(t, one.text(messages))
}
