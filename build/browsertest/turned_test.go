package browsertest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pageIDs are the pages of the job as the page has them.
const pageIDs = `Array.from(document.querySelectorAll(".cw-pages a"), (a) => a.hash.slice(1))`

// toPage turns to a page by the list of them.
func (v *view) toPage(id string) {
	v.t.Helper()
	v.run(`document.querySelector('.cw-pages a[href="#' + $1 + '"]').click()`, id)
	v.wait(`document.documentElement.dataset.page === $1`, id)
}

// pageText is what stands on a page, its blanks too.
const pageText = `((page) => Array.from(page.children, (part) => part.matches(".cw-turn") ? "" : part.innerText).join("\n") + Array.from(page.querySelectorAll("[data-at]"), (b) => b.dataset.at + "=" + b.value + " " + (b.getAttribute("aria-describedby") ? "told" : "")).join("\n"))(document.getElementById($1))`

// A page that is built alone holds what it holds where all are on one, and so does one
// that is come back to.
func TestPageAloneHoldsWhatItHoldsAmongAll(t *testing.T) {
	for _, name := range []string{"plans/job.json", "plans/v1/full.json", "plans/v1/priced.json", "hostile/price-past-reason.json"} {
		t.Run(filepath.Base(name), func(t *testing.T) {
			content, err := os.ReadFile(filepath.Join("..", "..", "testdata", name))
			require.NoError(t, err)
			v := openTurned(t, desk, fragment(string(content)))
			pages := value[[]string](v, pageIDs)
			alone := map[string]string{}
			for range 2 {
				for _, id := range pages {
					v.toPage(id)
					alone[id] = v.text(pageText, id)
				}
			}
			v.allPages()
			for _, id := range pages {
				assert.Equal(t, v.text(pageText, id), alone[id], id)
			}
		})
	}
}

// What other pages have built is not in the document, so that a key need not lay out
// or search more than is in view.
func TestOnePageIsInTheDocument(t *testing.T) {
	v := openTurned(t, desk, "")
	for _, id := range value[[]string](v, pageIDs) {
		v.toPage(id)
		count := value[int](v, `document.querySelectorAll("*").length`)

		t.Logf("%s: %d elements", id, count)
		assert.LessOrEqual(t, count, 2000, id)
	}
}

// A fold that was opened is open when its page is come back to.
func TestFoldsStayOpenOnAPageThatWasLeft(t *testing.T) {
	v := openTurned(t, desk, "#finish")
	const fold = `document.querySelectorAll(".cw-step")[1].querySelector("details")`
	v.run(`document.querySelectorAll(".cw-step [data-do=open-step]")[1].click(); (` + fold + `).open = true`)
	v.toPage("price")
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll(".cw-step").length`), "left")
	v.toPage("finish")
	assert.True(t, v.holds(fold+`.open`))
}

// The address of a figure turns to the page it stands on, and shows its working.
func TestFigureAddressOpensItsPageAndWorking(t *testing.T) {
	for id, page := range map[string]string{"border.AB": "setting-out", "step.base.cans": "finish", "price.total": "price", "nothing.here": "job"} {
		t.Run(id, func(t *testing.T) {
			v := openTurned(t, desk, "#"+id)
			v.wait(`document.documentElement.dataset.page === $1`, page)
			if page == "job" {
				return
			}
			assert.True(t, v.holds(`(() => { const r = document.querySelector('#' + $2 + ' .cw-figure[data-figure="' + $1 + '"]').getBoundingClientRect(); return r.height > 0 && r.top >= 0 && r.bottom <= innerHeight; })()`, id, page), "in sight")
			assert.True(t, v.holds(`document.querySelector('.cw-slip[data-figure="' + $1 + '"]')?.checkVisibility()`, id), "its working")
		})
	}
}

// A slip of a note leads to the note, which stands on another page.
func TestSlipLeadsToItsNoteOnAnotherPage(t *testing.T) {
	v := openTurned(t, desk, "#hanging")
	v.run(`document.querySelector("#hanging .cw-bites-more")?.setAttribute("open", "")`)
	id := v.text(`document.querySelector("#hanging [data-do=see-note]").dataset.to`)
	v.press(`#hanging [data-do=see-note]`)
	v.wait(`document.documentElement.dataset.page === "safety"`)
	assert.True(t, v.holds(`document.getElementById("note-" + $1).checkVisibility()`, id))
}

// Undoing what was typed on a page that was left turns to it, whatever it is called by.
func TestUndoTurnsToTheBlankItChanges(t *testing.T) {
	v := openTurned(t, desk, "#finish")
	const at = "/finish/steps/1/name"
	v.run(`document.querySelectorAll(".cw-step [data-do=open-step]")[1].click()`)
	before := v.text(blank+`.value`, at)
	v.write(at, "Other")
	v.leave()
	v.toPage("room")
	v.press(`.cw-head [data-do=undo]`)
	v.wait(`document.documentElement.dataset.page === "finish"`)
	v.waitText(before, blank+`.value`, at)
}

// Paper has the whole job, whatever page is in view.
func TestPaperHasEveryPage(t *testing.T) {
	v := openTurned(t, desk, "")
	v.run(`window.dispatchEvent(new Event("beforeprint"))`)
	assert.Greater(t, value[int](v, `document.querySelectorAll("#hanging .cw-tick").length`), 10)
	assert.Contains(t, v.text(`document.getElementById("price").textContent`), "What it costs")
	v.run(`window.dispatchEvent(new Event("afterprint"))`)
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll("#hanging li .cw-tick").length`))
}
