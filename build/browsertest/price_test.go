package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// The price follows its blanks; the client's copy shows no rates and comes to
// the same; what is printed for the client is that copy alone.
func TestPriceHasTwoCopies(t *testing.T) {
	v := open(t, desk, "")
	const total = `document.querySelector("[data-figure='price.total'] .cw-value").textContent`
	const shown = `document.querySelector("[data-fill=price]").textContent`
	before := v.text(total)
	assert.Regexp(t, `USD$`, before)
	assert.Contains(t, v.text(shown), "58.00", "what an hour costs stands in the own copy")
	assert.True(t, v.holds(`document.querySelectorAll(".cw-what-ifs details").length >= 3`))

	// Each line has its sum, where it is asked for; the list of what to buy its total.
	assert.NotContains(t, v.text(shown), "÷ 60 ×")
	v.press(`[data-do=price-sums]`)
	v.wait(shown + `.includes("÷ 60 × 58.00 = ")`)
	v.picture("price-sums")
	v.press(`[data-do=price-sums]`)
	v.wait(`!` + shown + `.includes("÷ 60 ×")`)
	assert.Contains(t, v.text(`document.querySelector(".cw-shopping tfoot").textContent`), "Together")

	v.press(copyButton)
	v.wait(`document.querySelector("` + copyButton + `").getAttribute("aria-pressed") === "true"`)
	client := v.text(shown)
	assert.NotContains(t, client, "58.00")
	assert.NotContains(t, client, "Overhead")
	assert.NotContains(t, client, "Margin")
	assert.Contains(t, client, v.text(`document.querySelector("[data-fill=price] tfoot .cw-cost").textContent`))
	assert.Contains(t, before, v.text(`document.querySelector("[data-fill=price] tfoot .cw-cost").textContent.split(" ")[0]`))

	v.run(`window.print = () => { globalThis.printed = document.querySelector("[data-fill=cards]").textContent; }`)
	v.press(`[data-do=print-price]`)
	v.wait(`globalThis.printed?.includes("To be paid")`)
	assert.NotContains(t, v.text(`globalThis.printed`), "58.00")
	assert.Contains(t, v.text(`globalThis.printed`), "For the client")
	v.run(`dispatchEvent(new Event("afterprint"))`)
	v.press(`[data-do=look][data-to=own]`)
	v.wait(shown + `.includes("58.00")`)

	v.write("/price/rate", "60")
	v.wait(total+` !== $1`, before)
	v.write("/price/profitPercent", "100")
	v.wait(said+`.includes("leaves nothing")`, "/price/profitPercent")
	v.write("/price/profitPercent", "15")
	v.wait(total + `.endsWith("USD")`)
	v.picture("price")

	// What the panels of a layer cost is asked by its name.
	assert.Contains(t, v.text(`document.querySelector("[data-item-of=mask-price]").textContent`), "First layer")
	v.write("/mask/layers/0/price", "1000")
	v.waitText("1000", `JSON.parse(`+plan+`).mask.layers[0].price`)
	v.choose("/mask/layers/0/priceFor", "ft2")
	v.wait(shown + `.includes("ft²")`)
	v.run(`document.querySelector("[data-list='/price/rough/bands']").closest("details").open = true`)
	v.press(`[data-do=add][data-to="/price/rough/bands"]`)
	v.write("/price/rough/bands/0/above", "100")
	v.write("/price/rough/bands/0/perArea", "30")
	v.waitText("30", `JSON.parse(`+plan+`).price.rough.bands[0].perArea`)
}

// The record stands on one page, with lines for what is to be written in.
func TestRecordIsPrintedOnOnePage(t *testing.T) {
	v := open(t, phone, "")
	assert.True(t, v.holds(`document.querySelectorAll(".cw-record tbody tr").length > 5`))
	assert.Empty(t, v.text(overflow))
	v.run(`window.print = () => {}`)
	v.press(`[data-do=print-record]`)
	v.wait(`document.documentElement.dataset.printing === "record"`)
	assert.Len(t, pages.FindAll(v.printed(chromedp.PaperA4), -1), 1)
	v.picture("record")
}
