package browsertest

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// noteWords is what a note of the block Safety says, with its word in front.
const noteWords = `document.getElementById("note-" + $1)?.querySelector("p").textContent`

// Stops come first, then cautions, then notes, each group with its count; what
// is to be done is in sight, why it is there in a fold.
func TestNotesStandMostSevereFirst(t *testing.T) {
	v := open(t, desk, fragment(grimPlan))
	groups := value[[]string](v, `Array.from(document.querySelectorAll(".cw-notes"), (g) => g.dataset.severity + " " + g.querySelectorAll(".cw-note").length + " " + /\((\d+)\)/.exec(g.querySelector("h3").textContent)[1])`)
	require.Len(t, groups, 4)
	for i, severity := range []string{"stop", "caution", "note", "note"} {
		words := strings.Fields(groups[i])
		require.Len(t, words, 3)
		assert.Equal(t, severity, words[0])
		assert.Equal(t, words[1], words[2], "the count in the heading of %s", severity)
	}
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-notes")).every((g) => Array.from(g.querySelectorAll(".cw-note")).every((n) => n.dataset.severity === g.dataset.severity))`))
	// Told by a word and a shape, each severity by its own.
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-note[data-severity=stop]")).every((n) => n.textContent.startsWith("Stop. "))`))
	assert.Equal(t, "Take care, Know", v.text(`Array.from(new Set(Array.from(document.querySelectorAll(".cw-note > [role=img]"), (s) => s.getAttribute("aria-label")))).join(", ")`))
	assert.Equal(t, 3, value[int](v, `new Set(Array.from(document.querySelectorAll(".cw-note > .cw-shape path:first-child"), (p) => p.getAttribute("d"))).size`))
	// A stop is larger than the rest.
	assert.True(t, v.holds(`parseFloat(getComputedStyle(document.querySelector(".cw-note[data-severity=stop] strong")).fontSize) > parseFloat(getComputedStyle(document.querySelector(".cw-note[data-severity=caution] strong")).fontSize)`))
	// What need not be seen at once is folded away, and that is mere notes; what the
	// sheet is stands outside the fold.
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-know .cw-note")).every((n) => n.dataset.severity === "note")`))
	assert.False(t, v.holds(`document.querySelector(".cw-know").open`))
	assert.True(t, v.holds(`document.querySelector(".cw-standing").checkVisibility()`))
	// Who has the last word, and the source, in the fold of every note.
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-note .cw-why")).every((w) => w.querySelector(".cw-note-decides").textContent !== "" && w.querySelector(".cw-source").textContent !== "")`))
	v.picture("safety-grim-1280")
	v.resize(phone)
	v.picture("safety-grim-390")
}

// What nobody has said stands in one list over the notes, each question the way to
// its blank, and goes once it is answered.
func TestFindOutLeadsToTheBlanks(t *testing.T) {
	v := openPainter(t, desk)
	const question = `document.querySelector('.cw-find-out [data-to="' + $1 + '"]')`
	assert.True(t, v.holds(`document.querySelector(".cw-find-out").compareDocumentPosition(document.querySelector(".cw-notes")) === Node.DOCUMENT_POSITION_FOLLOWING`))
	require.Equal(t, "How tall is the fitter?", v.text(question+`.textContent`, "/access/reachBy"))
	v.run(question+`.click()`, "/access/reachBy")
	v.wait(`document.activeElement.dataset.at === "/access/reachBy"`)
	v.keys("5'8")
	v.wait(`!`+question, "/access/reachBy")
	// Every question leads to a blank, and none stands beside a note as well.
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-find-out [data-to]")).every((q) => document.querySelector('[data-at="' + q.dataset.to + '"]'))`))
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-find-out [data-to]")).every((q) => !document.querySelector('.cw-note > div > [data-to="' + q.dataset.to + '"]'))`))
	assert.True(t, v.holds(`document.querySelector(".cw-find-out h3").textContent.includes("(" + document.querySelectorAll(".cw-find-out li").length + ")")`))
}

// Before anything is typed nothing is red, and nobody is asked.
func TestEmptySheetNagsNobody(t *testing.T) {
	v := openEmpty(t, desk)
	v.wait(`document.querySelector(".cw-standing")`)
	assert.True(t, v.holds(`!document.querySelector(".cw-notes, .cw-find-out, .cw-bite, [data-do=print-safety]")`))
}

// grimPlan is a job in which nearly everything that can be wrong is, and
// nothing that can be answered is answered.
var grimPlan = strings.NewReplacer(
	`"rules":"US"`, `"rules":"other"`, `"surface":"smooth"`, `"surface":"textured"`, `"leadTest":"none","pullTest":"none"`, `"leadTest":"found","pullTest":"lifted","flames":"yes","airHandling":"yes","below":"yes","sprinklers":"yes","detectors":"yes","fixings":"yes","isolated":"no"`,
	`"height":"9'"`, `"height":"24'"`, `"fixture":{"at":"none"`, `"fixture":{"at":"middle"`,
	`"finish":{"steps":[]}`, `"finish":{"steps":[`+
		`{"id":"one","name":"Oil base coat","kind":"coat","area":"ceiling","coats":"2","spread":"300","spreadUnit":"ft2/gal","loss":"10","voc":"450","vocUnit":"g/L","binder":"oil","dryHours":"16","flash":"20","flashUnit":"C","method":"spray","thinPart":"15"},`+
		`{"id":"two","name":"Oil size","kind":"size","area":"ceiling","coats":"1","spread":"400","spreadUnit":"ft2/gal","loss":"10","voc":"600","vocUnit":"g/L","binder":"oil","dryHours":"12"},`+
		`{"id":"three","name":"Leaf","kind":"leaf","area":"ceiling","leaf":{"metal":"imitation","length":"5.5 in","width":"5.5 in","lap":"0.25 in","waste":"10","perBook":"25"}}]}`,
	`"by":"platform","reachBy":"","base":"","rails":"yes","deckGap":""`,
	`"by":"platform","kind":"tower","reachBy":"5'2","alsoBy":"6'6","base":"2'","rails":"no","deckGap":"3'","wheels":"no","rides":"yes","toeBoards":"no","wayUp":"no","tied":"no","massUnit":"kg","rated":"150","load":"80","mass":"120","panel":"22","onDeck":"3","minutes":"90"`,
).Replace(painterPlan)

// The sheet for the wall is one page on either paper, however much there is to
// say, in type of 8 points or more, with every stop on it.
func TestSafetySheetIsOnePage(t *testing.T) {
	beside(t)
	for _, job := range []struct{ name, plan string }{{"example", ""}, {"grim", fragment(grimPlan)}, {"painter", fragment(painterPlan)}} {
		t.Run(job.name, func(t *testing.T) {
			v := open(t, desk, job.plan)
			v.run(`globalThis.print = window.print = () => { globalThis.asked = true; }`)
			for _, paper := range []struct {
				name, choice string
				printer      chromedp.PaperSize
				high         float64
			}{
				{"a4", "", chromedp.PaperA4, 842}, {"letter", "", chromedp.PaperLetter, 792},
				{"chosen-a4", "a4", chromedp.PaperA4, 842}, {"chosen-letter", "letter", chromedp.PaperLetter, 792},
			} {
				v.run(`const s = document.querySelector("[data-paper]:is(select)"); s.value = $1; s.dispatchEvent(new Event("change", { bubbles: true })); globalThis.asked = false; document.querySelector("[data-do=print-safety]").click()`, paper.choice)
				require.True(t, v.holds(`globalThis.asked`))
				stops := value[[]string](v, `Array.from(document.querySelectorAll(".cw-note[data-severity=stop]"), (n) => n.dataset.note)`)
				for _, stop := range stops {
					assert.True(t, v.holds(`document.querySelector('.cw-safety-sheet [data-note="' + $1 + '"]') !== null`, stop), stop)
				}
				assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-safety-sheet *")).every((e) => parseFloat(getComputedStyle(e).fontSize) >= 10.6)`), "8 pt is 10⅔ px")
				content := v.printed(paper.printer)
				assert.Len(t, pages.FindAll(content, -1), 1, "%s on %s", job.name, paper.name)
				high, _ := strconv.ParseFloat(string(boxes.FindSubmatch(content)[2]), 64)
				assert.InDelta(t, paper.high, high, 1.5)
				if folder := os.Getenv("CEILINGWRIGHT_PICTURES"); folder != "" {
					keepPicture(t, folder, "safety-sheet-"+job.name+"-"+paper.name+".pdf", content)
				}
				v.run(`dispatchEvent(new Event("afterprint"))`)
			}
			v.run(`document.querySelector("[data-paper]:is(select)").value = ""; document.querySelector(".cw-page").removeAttribute("data-paper")`)
		})
	}
}

// Who hangs sees what stops the hanging at the head of that part of the sheet,
// with the way to the whole note, and once more before the first panel.
func TestStopsAreSeenWhereTheyBite(t *testing.T) {
	v := openPainter(t, phone)
	const slips = `Array.from(document.querySelectorAll("#hanging .cw-bite[data-severity=stop]"), (s) => s.dataset.bite).join(" ")`
	stops := strings.Fields(v.text(slips))
	require.NotEmpty(t, stops, "the old paint of this room has not been tried")
	assert.True(t, v.holds(`document.querySelector("#hanging .cw-bite").textContent.trim().startsWith("Stop:")`))
	v.run(`document.querySelector("#hanging .cw-bite [data-do=see-note]").click()`)
	v.wait(`document.activeElement.id === "note-" + $1`, stops[0])

	v.press(`[data-do=ladder][data-to=hanging]`)
	v.wait(`document.querySelector(".cw-ladder[open]")`)
	assert.Contains(t, v.text(step), "Before you go up:")
	assert.Equal(t, strings.Join(stops, " "), v.text(`Array.from(document.querySelectorAll(".cw-ladder [data-stop]"), (b) => b.dataset.stop).join(" ")`))
	assert.Equal(t, "To the sheet | Go on all the same", v.text(ladderKeys))
	v.glance("ladder-before-390")
	v.readStops()
	v.wait(`(` + step + `).startsWith("Hang ")`)
	v.thumb("Back")
	v.wait(`(` + step + `).startsWith("Before you go up:")`)
	assert.Equal(t, "Go on | To the sheet", v.text(ladderKeys))
	assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-ladder [data-stop]")).every((b) => b.getAttribute("aria-pressed") === "true")`))
	// What is ticked stays so, for this layer of this job.
	v.thumb("To the sheet")
	v.wait(`!document.querySelector(".cw-ladder")`)
	v.press(`[data-do=ladder][data-to=hanging]`)
	v.wait(`(` + step + `).startsWith("Hang ")`)
}
