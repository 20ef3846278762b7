package browsertest

import (
	"bytes"
	"os"
	"regexp"
	"strconv"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pages counts the pages of a PDF by its own page objects.
var pages = regexp.MustCompile(`/Type\s*/Page\b[^s]`)

// boxes are the sheets of paper of a PDF, in points.
var boxes = regexp.MustCompile(`/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]`)

// printed prints as the printer of that paper would.
func (v *view) printed(paper chromedp.PaperSize) []byte {
	v.t.Helper()
	yes := true
	return call(v, page.PrintToPDF, page.PrintToPDFParams{
		PaperWidth: paper.Width, PaperHeight: paper.Height, PreferCSSPageSize: &yes,
	}).Data
}

func TestSheetPrintsOnBothPapers(t *testing.T) {
	v := open(t, desk, "")
	for _, row := range []struct {
		choice     string // the page's own choice of paper
		printer    chromedp.PaperSize
		wide, high float64 // of the sheet that comes out, in points of 1/72 in
	}{
		{"", chromedp.PaperA4, 595, 842},       // 210 mm × 297 mm, ISO 216
		{"letter", chromedp.PaperA4, 612, 792}, // 8½ in × 11 in
	} {
		v.run(`const s = document.querySelector("[data-paper]:is(select)"); s.value = $1; s.dispatchEvent(new Event("change", { bubbles: true }))`, row.choice)
		content := v.printed(row.printer)
		require.True(t, bytes.HasPrefix(content, []byte("%PDF-")))
		count := len(pages.FindAll(content, -1))
		assert.True(t, count >= 2 && count <= 29, "%d pages", count)
		found := boxes.FindAllSubmatch(content, -1)
		require.NotEmpty(t, found)
		for _, box := range found {
			wide, _ := strconv.ParseFloat(string(box[1]), 64)
			high, _ := strconv.ParseFloat(string(box[2]), 64)
			assert.InDelta(t, row.wide, wide, 1.5)
			assert.InDelta(t, row.high, high, 1.5)
		}
		if folder := os.Getenv("CEILINGWRIGHT_PICTURES"); folder != "" {
			keepPicture(t, folder, "print-"+strconv.Itoa(int(row.wide))+".pdf", content)
		}
	}
}

// As wide as the text of an A4 and of a Letter page at 96 to the inch, with
// the margins of the print style.
func TestPaperHoldsTheSheetAndNoControls(t *testing.T) {
	v := open(t, desk, "")
	for _, wide := range []int64{695, 717} {
		v.resize(window{wide, 1000})
		v.prefer("print", "prefers-color-scheme", "dark")
		v.run(`dispatchEvent(new Event("beforeprint"))`)
		assert.Empty(t, v.text(overflow), "wider than the paper")
		for _, gone := range []string{".cw-tools", ".cw-example", ".cw-how", ".cw-turns", "[data-do=add]", "[data-do=remove]", "[data-do=print]"} {
			assert.Equal(t, 0, value[int](v, `Array.from(document.querySelectorAll($1)).filter((e) => e.getClientRects().length > 0).length`, gone), gone)
		}
		assert.True(t, v.holds(`document.querySelector("[data-fill=drawing] svg").getBoundingClientRect().width > 400`))
		assert.True(t, v.holds(`Array.from(document.querySelectorAll(".cw-order li")).every((l) => l.getClientRects().length > 0)`), "every layer's list is on paper")
		assert.True(t, v.holds(`document.querySelector(".cw-foot").textContent.includes("Planning help only")`))
		// Read at arm's length: 14 pt is 18⅔ px.
		for _, large := range []string{".cw-order li", ".cw-wall-marks .cw-mark"} {
			assert.True(t, v.holds(`Array.from(document.querySelectorAll($1)).every((e) => parseFloat(getComputedStyle(e).fontSize) >= 18.6)`, large), large)
		}
		// Black on white also where the screen is dark.
		assert.Equal(t, "rgb(0, 0, 0)", v.text(`getComputedStyle(document.querySelector(".cw-order li")).color`))
		v.run(`dispatchEvent(new Event("afterprint"))`)
		v.picture("print-" + strconv.FormatInt(wide, 10))
	}
}
