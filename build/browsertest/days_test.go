package browsertest

import (
	"os"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The days follow what is typed: the week, the days off, the clocks of this
// place. They are printed alone and saved for a calendar.
func TestDaysFollowTheirBlanks(t *testing.T) {
	v := newView(t, desk)
	call(v, emulation.SetTimezoneOverride, emulation.SetTimezoneOverrideParams{TimezoneID: "Europe/London"})
	v.visit(hosted)
	v.ready()
	const done = `document.querySelector("[data-figure='days.finish'] .cw-value").textContent`
	before := v.text(done)
	assert.Regexp(t, `^\w{3} \d+ \w{3} 2027$`, before)
	assert.True(t, v.holds(`document.querySelectorAll(".cw-days > ol > li").length > 4`))
	assert.True(t, v.holds(`document.querySelectorAll(".cw-task[data-critical]").length > 4`))
	v.run(`document.querySelector("#h-days").click()`)
	v.waitText("The days", `document.querySelector("[data-drawing-title]").textContent`)
	assert.True(t, v.holds(`document.querySelector("[data-fill=drawing] svg").getBoundingClientRect().height > 100`))

	// Every time has its sum, folded away.
	assert.True(t, v.holds(`!document.querySelector(".cw-days > .cw-sums").open`))
	const reason = `document.querySelector(".cw-task small").checkVisibility()`
	assert.False(t, v.holds(reason), "why a task is done when it is, is told when it is asked for")
	v.press(`[data-do=day-reasons]`)
	v.wait(reason)
	assert.Equal(t, v.text(`String(document.querySelectorAll(".cw-task").length)`), v.text(`String(document.querySelectorAll(".cw-days > .cw-sums > .cw-sum").length)`))
	assert.Contains(t, v.text(`document.querySelector(".cw-days > .cw-sums > .cw-sum").textContent`), "08:00 + ")

	// Nobody works on Tuesdays: the toggle says so, and it is done later.
	v.press(`[data-do=weekday][data-to=tue]`)
	v.wait(`document.querySelector("[data-do=weekday][data-to=tue]").getAttribute("aria-pressed") === "false"`)
	v.wait(done+` !== $1`, before)
	assert.Equal(t, "mon wed thu fri", v.text(`JSON.parse(`+plan+`).days.weekdays.join(" ")`))

	// A first day brings the changes of the clock in this place: those of the UK
	// are on the last Sundays of October and March.
	v.run(`const d = document.querySelector("[data-at='/days/start']"); d.focus(); d.value = "2027-03-22"; d.dispatchEvent(new Event("input", { bubbles: true }))`)
	v.waitText("2027-03-28 60, 2027-10-31 -60, 2028-03-26 60", `JSON.parse(`+plan+`).days.clockChanges.map((c) => c.at + " " + c.minutes).join(", ")`)
	assert.Contains(t, v.text(`document.querySelector("[data-fill=clocks]").textContent`), "forward 60 minutes on 2027-03-28")

	// A time that is none stays, is said beside its blank, and the rest stands.
	v.run(`const b = document.querySelector("[data-at='/days/pause']"); b.focus(); b.value = "half an hour"; b.dispatchEvent(new Event("input", { bubbles: true }))`)
	v.wait(said+`.length > 0`, "/days/pause")
	v.run(`const b = document.querySelector("[data-at='/days/pause']"); b.value = "30"; b.dispatchEvent(new Event("input", { bubbles: true }))`)
	v.wait(said+`.length === 0`, "/days/pause")

	v.run(`window.print = () => { globalThis.printed = document.querySelector("[data-fill=cards]").textContent; }`)
	v.press(`[data-do=print-days]`)
	v.wait(`globalThis.printed?.includes("Hang First layer")`)
	assert.Equal(t, "days", v.text(`document.documentElement.dataset.printing`))
	v.run(`dispatchEvent(new Event("afterprint"))`)

	folder := v.downloads()
	v.press(`[data-do=save-calendar]`)
	name, path := v.arrived(folder)
	assert.Regexp(t, `\.ics$`, name)
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Contains(t, string(content), "BEGIN:VCALENDAR\r\n")
	assert.Contains(t, string(content), "DTSTART:202703")
	v.picture("days")
}

// A date in a plan that is none is shown as it was typed.
func TestDayThatIsNoneIsShown(t *testing.T) {
	v := open(t, phone, "")
	v.run(`const p = JSON.parse(` + plan + `); p.days.start = "the first of May"; p.id = "none"; const f = new File([JSON.stringify(p)], "a.plan.json"); const t = new DataTransfer(); t.items.add(f);
const open = document.querySelector("[data-open]"); open.files = t.files; open.dispatchEvent(new Event("change", { bubbles: true }))`)
	v.waitText("the first of May", blank+`.value`, "/days/start")
	v.wait(said+`.includes("no such date")`, "/days/start")
	assert.Empty(t, v.text(overflow))
	v.run(`document.querySelector("[data-do=example]").click()`)
	assert.Equal(t, "date", v.text(blank+`.type`, "/days/start"), "a day stands there again")
}
