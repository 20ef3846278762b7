package browsertest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const (
	// everythingKept is all that is stored, but which job was the last.
	everythingKept = `JSON.stringify(Object.entries(localStorage).filter(([k]) => k !== "ceilingwright:last").sort())`
	jobNames       = `Array.from(document.querySelectorAll(".cw-jobs [data-do=open-job]"), (b) => b.textContent).join(", ")`
	jobsSaid       = `document.querySelector(".cw-jobs-said").textContent`
)

// job is a selector of a button of a job in the list, by the name of the job.
func (v *view) job(name, button string) string {
	v.t.Helper()
	id := v.text(`Array.from(document.querySelectorAll(".cw-jobs [data-do=open-job]")).find((b) => b.textContent === $1).dataset.to`, name)
	return `.cw-jobs [data-do=` + button + `][data-to="` + id + `"]`
}

// twoJobs has the painter's room and an empty sheet with a name kept.
func twoJobs(t *testing.T, in window) *view {
	v := openAnew(t, in, fragment(painterPlan))
	v.write("/mask/width", "114")
	v.leave()
	v.wait(kept + `.includes("114 in")`)
	v.press(`.cw-keep [data-do=empty]`)
	v.write("/title", "My hall")
	v.leave()
	v.wait(kept + `.includes("My hall")`)
	return v
}

// The list names the jobs with their date and headline, fits the narrowest
// screen, and opens a job by keys alone.
func TestJobsAreListedAndOpened(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, {320, 700}} {
		t.Run(in.String(), func(t *testing.T) {
			v := twoJobs(t, in)
			hall := v.text(plan)
			v.press(`.cw-keep [data-do=jobs]`)
			assert.Equal(t, "My hall, Long room", v.text(jobNames), "the last changed first")
			row := v.text(`document.querySelectorAll(".cw-jobs li")[1].textContent`)
			assert.Contains(t, row, "border 4″", "its headline")
			assert.Regexp(t, `20\d\d`, row, "its date")
			assert.Contains(t, v.text(`document.querySelector(".cw-jobs li").textContent`), "on the sheet")
			assert.True(t, v.holds(`(() => { const d = document.querySelector(".cw-jobs"); return d.scrollWidth <= d.clientWidth && d.getBoundingClientRect().right <= innerWidth && document.documentElement.scrollWidth <= innerWidth; })()`))
			v.bringAxe()
			assert.Empty(t, v.findings())
			v.picture("jobs-" + in.String())

			// From the first button to the second row, and in.
			v.wait(`document.activeElement.closest(".cw-jobs") !== null`)
			for range 4 {
				v.keys(kb.Tab)
			}
			assert.Equal(t, "Long room", v.text(`document.activeElement.textContent`))
			v.keys(kb.Enter)
			v.waitText("Long room", blank+`.value`, "/title")
			assert.True(t, v.holds(`document.querySelector(".cw-jobs") === null`))
			v.control("z", false)
			assert.Equal(t, hall, v.text(plan), "opening is undone too")
		})
	}
}

// Copying, renaming and deleting are steps that can be undone and done again, to
// the letter of what is stored.
func TestJobsAreCopiedRenamedAndDeleted(t *testing.T) {
	v := twoJobs(t, desk)
	v.press(`.cw-keep [data-do=jobs]`)
	for _, row := range []struct {
		name  string
		do    func()
		names string
		says  string
	}{
		{"copy", func() { v.press(v.job("Long room", "job-copy")) }, "Long room, copy, My hall, Long room", "“Long room” is copied."},
		{"rename", func() {
			v.press(v.job("Long room", "job-rename"))
			v.keys("Tall room")
			v.keys(kb.Enter)
		}, "My hall, Tall room", "Undo"},
		{"delete", func() { v.press(v.job("Long room", "job-delete")) }, "My hall", "“Long room” is deleted."},
	} {
		before := v.text(everythingKept)
		sheet := v.text(plan)
		row.do()
		v.waitText(row.names, jobNames)
		assert.Contains(t, v.text(jobsSaid), row.says)
		after := v.text(everythingKept)
		assert.NotEqual(t, before, after)
		v.press(`.cw-jobs [data-do=undo]`)
		assert.Equal(t, before, v.text(everythingKept), row.name)
		v.waitText("My hall, Long room", jobNames)
		v.control("y", false)
		assert.Equal(t, after, v.text(everythingKept), row.name)
		v.control("z", false)
		assert.Equal(t, before, v.text(everythingKept), row.name)
		assert.Equal(t, sheet, v.text(plan), "the sheet is as it was")
	}

	// The job on the sheet: renamed there, and deleted with an empty sheet in its place.
	before := v.text(everythingKept)
	v.press(v.job("My hall", "job-rename"))
	v.keys("My stairs")
	v.keys(kb.Enter)
	v.waitText("My stairs", blank+`.value`, "/title")
	v.waitText("My stairs, Long room", jobNames)
	v.control("z", false)
	v.waitText("My hall", blank+`.value`, "/title")
	v.wait(`Object.entries(localStorage).some(([k, t]) => k.startsWith("ceilingwright:plan:") && t.includes("My hall"))`)
	plans := strings.Count(before, "ceilingwright:plan:")
	v.press(`.cw-keep [data-do=jobs]`)
	sheet := v.text(plan)
	v.press(v.job("My hall", "job-delete"))
	v.waitText("", blank+`.value`, "/title")
	v.run(`await new Promise((r) => setTimeout(r, 700))`)
	assert.Equal(t, plans-1, value[int](v, storedPlans), "and it stays away")
	v.press(`.cw-jobs [data-do=undo]`)
	assert.Equal(t, sheet, v.text(plan))
	assert.Equal(t, plans, value[int](v, storedPlans))

	// Deleted for good, the next start begins with the other.
	v.press(`.cw-keep [data-do=jobs]`)
	v.press(v.job("My hall", "job-delete"))
	v.reload()
	assert.Equal(t, "Long room", v.text(blank+`.value`, "/title"))
}

// All jobs go into one file and come in again elsewhere, once.
func TestJobsTravelInOneFile(t *testing.T) {
	v := twoJobs(t, desk)
	all := v.text(everythingKept)
	folder := v.downloads()
	v.press(`.cw-keep [data-do=jobs]`)
	v.press(`[data-do=jobs-export]`)
	name, path := v.arrived(folder)
	assert.Regexp(t, `^ceilingwright-jobs-20\d\d-\d\d-\d\d\.json$`, name)

	other := anotherDevice(t, phone)
	other.visit(hosted)
	other.ready()
	other.upload(path)
	other.wait(jobsSaid + `.includes("2 jobs came in.")`)
	assert.Equal(t, all, other.text(everythingKept), "with their dates and headlines")
	other.upload(path)
	other.wait(jobsSaid + `.includes("2 were here already.")`)
	assert.Equal(t, all, other.text(everythingKept))
	other.control("z", false)
	other.waitText("", jobNames)
	assert.Equal(t, 0, value[int](other, storedPlans), "bringing in is undone")

	// What another hand put into such a file is checked, and shown as text.
	const mark = `<img src=x onerror="globalThis.ran=1">`
	hostile, err := json.Marshal(map[string]any{"ceilingwrightJobs": 1, "jobs": []any{
		map[string]any{"at": mark, "says": mark, "plan": map[string]any{"ceilingwright": 1, "id": "__proto__", "title": mark}},
		map[string]any{"plan": map[string]any{"ceilingwright": 7}}, "no job", nil,
	}})
	require.NoError(t, err)
	bad := filepath.Join(t.TempDir(), "bad.json")
	require.NoError(t, os.WriteFile(bad, hostile, 0o644))
	other.upload(bad)
	other.wait(jobsSaid + `.includes("One job came in. 3 could not be read.")`)
	assert.Equal(t, mark, other.text(jobNames))
	assert.True(t, other.holds(`globalThis.ran === undefined && document.querySelector(".cw-jobs img") === null`))
}

// The plan as text is chosen in a field, and opens where it is pasted.
func TestPlanAsTextIsCopiedAndPasted(t *testing.T) {
	v := openPainter(t, desk)
	before := v.text(plan)
	v.press(`.cw-keep [data-do=copy-text]`)
	v.wait(`document.activeElement.matches("textarea")`)
	text := v.text(`document.activeElement.value.slice(document.activeElement.selectionStart, document.activeElement.selectionEnd)`)
	assert.Equal(t, before, text)
	v.press(`[data-do=put-away]`)
	v.press(`.cw-keep [data-do=empty]`)
	v.leave()
	v.run(`const data = new DataTransfer(); data.setData("text/plain", $1); document.body.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true }))`, text)
	v.waitText("Long room", blank+`.value`, "/title")
	require.NoError(t, chromedp.Do(v.tab))
	assert.Equal(t, before, v.text(plan))
}
