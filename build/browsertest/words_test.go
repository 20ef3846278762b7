package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A word of the trade leads to what it means here, and the way back leads to it;
// by keyboard alone. Closed, the list is one line of the page.
func TestWordsAreExplained(t *testing.T) {
	v := open(t, phone, "")
	assert.False(t, v.holds(`document.querySelector(".cw-words").open`))
	v.run(`const term = document.querySelector("#setting-out .cw-term"); term.focus()`)
	v.keys("\r")
	v.wait(`document.activeElement.id === "word-border"`)
	assert.True(t, v.holds(`document.querySelector(".cw-words").open`))
	assert.Contains(t, v.text(`document.activeElement.nextElementSibling.textContent`), "between the edge of the mask and the wall")
	v.keys("\t\r")
	v.wait(`document.activeElement.matches("#setting-out .cw-term")`)
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[data-do=word-back]").length`))
}

// Each marked word is on the list, at most once in a part, and none stands where
// a press would do something else.
func TestMarkedWordsAreOnTheList(t *testing.T) {
	v := open(t, desk, "")
	assert.Empty(t, v.text(`[...document.querySelectorAll(".cw-term")].filter((b) => !document.getElementById("word-" + b.dataset.to.replace(/ /g, "-")) || b.closest("summary, label, a")).map((b) => b.dataset.to).join()`))
	assert.Empty(t, v.text(`[...document.querySelectorAll(".cw-sheet > .cw-block")].flatMap((part) => [...part.querySelectorAll(":scope > .cw-says .cw-term")].map((b) => part.id + " " + b.dataset.to)).filter((at, i, all) => all.indexOf(at) !== i).join()`))
	assert.GreaterOrEqual(t, value[int](v, `document.querySelectorAll(".cw-words dt").length`), 25)
}
