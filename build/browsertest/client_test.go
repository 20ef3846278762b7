package browsertest

import (
	"bytes"
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// secret are the numbers by which what is the firm's own is known again, wherever
// it would be written.
var secret = map[string]string{
	"/price/rate": "73.1957", "/price/overhead": "12.8317", "/price/profitPercent": "17.5939", "/price/hirePerDay": "65.7137",
	"/price/travelPerDay": "24.6791", "/price/tapePerRoll": "14.5313", "/price/minimum": "913.47",
	"/mask/layers/0/price": "1243.61", "/finish/steps/1/cans/0/price": "62.4359", "/finish/steps/8/leaf/pricePerBook": "9.4127",
	"/finish/steps/1/rate": "151.7333", "/days/rates/hang": "11.7373",
}

// firmsPlan is the kept plan with a price, with those numbers in it.
func firmsPlan(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile(root + "/testdata/plans/v1/priced.json")
	require.NoError(t, err)
	var document any
	require.NoError(t, json.Unmarshal(text, &document))
	for at, number := range secret {
		steps := strings.Split(strings.TrimPrefix(at, "/"), "/")
		here := document
		for _, step := range steps[:len(steps)-1] {
			switch node := here.(type) {
			case map[string]any:
				here = node[step]
			case []any:
				here = node[step[0]-'0']
			}
		}
		here.(map[string]any)[steps[len(steps)-1]] = number
	}
	text, err = json.Marshal(document)
	require.NoError(t, err)
	return string(text)
}

// free fails where a text holds a number of the firm's own, whole or cut to two
// places, or what the job costs before anything is added.
func free(t *testing.T, where, text string) {
	t.Helper()
	text = regexp.MustCompile(`[\x{202f}\x{a0},]`).ReplaceAllString(text, "")
	for at, number := range secret {
		for len(number) > len("12.3") {
			assert.False(t, regexp.MustCompile(`(^|[^0-9.])`+regexp.QuoteMeta(number)+`($|[^0-9])`).MatchString(text), "%s: %s as %s", where, at, number)
			number = number[:len(number)-1]
			if strings.HasSuffix(number, ".") || len(number)-strings.Index(number, ".") < 3 {
				break
			}
		}
	}
	for _, word := range []string{"Direct cost", "a markup of", "a margin of"} {
		assert.False(t, strings.Contains(text, word), "%s: %s", where, word)
	}
}

const (
	copyButton = `[data-do=look][data-to=client]`
	// everything is all there is in the page: its own text, and what stands in its
	// blanks. Its scripts are the program's.
	everything = `(() => {
  const copy = document.documentElement.cloneNode(true);
  for (const s of copy.querySelectorAll("script:not(#plan), style")) s.remove();
  return copy.outerHTML + Array.from(document.querySelectorAll("input, select, textarea"), (b) => b.value).join(" ");
})()`
)

// With the client's copy in view everything that leaves the page is that copy: the
// link, the file, the page with the plan inside, what is printed, and the page as a
// browser would save it.
func TestClientsCopyIsAllThatLeavesThePage(t *testing.T) {
	v := open(t, desk, fragment(firmsPlan(t)))
	v.wait(`document.querySelector("[data-fill=price]").textContent.includes("73.1957")`)
	v.write("/title", v.text(blank+`.value`, "/title")+"!") // worked on, it is a job that is kept
	v.leave()
	before := v.text(plan)
	total := v.text(`document.querySelector("[data-figure='price.total'] .cw-value").textContent`)
	assert.Contains(t, v.text(`document.querySelector(".cw-copies").textContent`), "rates too", "what is given is said")
	v.press(copyButton)
	v.wait(`document.querySelector("` + copyButton + `")?.getAttribute("aria-pressed") === "true"`)
	assert.Contains(t, v.text(`document.querySelector(".cw-copies").textContent`), "no rates")
	assert.Equal(t, total, v.text(`document.querySelector("[data-figure='price.total'] .cw-value").textContent`))
	free(t, "the page", v.text(everything))
	v.picture("client")

	// The link, opened by the client on a device of his own.
	link := v.copiedLink()
	v.wait(messages + `.includes("client’s copy, without rates")`)
	other := anotherDevice(t, phone)
	other.visit(link)
	other.ready()
	other.waitText(total, figure, "price.total")
	free(t, "the link", other.text(plan)+other.text(everything))
	assert.True(t, other.holds(`document.querySelector("[data-do=look]") === null`), "there is nothing behind it")
	assert.True(t, other.holds(`document.querySelector("#safety").hidden && document.querySelector("#price .cw-says").hidden`))
	other.picture("client-phone")

	// The file.
	folder := v.downloads()
	v.press(`[data-do=save-file]`)
	name, path := v.arrived(folder)
	assert.Equal(t, "priced-the-river-house-client.plan.json", name)
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	free(t, "the file", string(content))

	// The page with the plan inside. Its engine and its program are no secret.
	folder = v.downloads()
	v.press(`[data-do=take-along]`)
	_, path = v.arrived(folder)
	content, err = os.ReadFile(path)
	require.NoError(t, err)
	inside := regexp.MustCompile(`(?s)<script[^>]*id="plan"[^>]*>(.*?)</script>`).FindSubmatch(content)
	require.NotNil(t, inside)
	assert.Contains(t, string(inside[1]), `"quote"`)
	free(t, "the plan in the page", string(inside[1]))
	for at, number := range secret {
		assert.False(t, bytes.Contains(content, []byte(number)), "the page: %s", at)
	}
	copied := anotherDevice(t, desk)
	copied.visit("file://" + path)
	copied.ready()
	copied.waitText(total, figure, "price.total")
	free(t, "the copied page", copied.text(everything))

	// What is printed: the price alone, and the whole sheet.
	v.run(`window.print = () => { globalThis.printed = document.querySelector("[data-fill=cards]").textContent; }`)
	v.press(`[data-do=print-price]`)
	v.wait(`globalThis.printed?.includes("To be paid")`)
	free(t, "the printed price", v.text(`globalThis.printed`))
	assert.Contains(t, v.text(`globalThis.printed`), "Quoted on")
	v.run(`dispatchEvent(new Event("afterprint"))`)
	v.prefer("print")
	paper := v.text(`document.body.innerText`)
	assert.Contains(t, paper, "Quoted on")
	free(t, "the printed sheet", paper)
	v.prefer("")

	// Nothing of it is kept in place of the job, and the way back is one press.
	v.run(`await new Promise((r) => setTimeout(r, 600))`)
	assert.True(t, v.holds(`Object.values(localStorage).some((text) => text.includes("73.1957")) && !Object.values(localStorage).some((text) => text.includes("quoted") || text.includes('"quote"'))`))
	v.press(`[data-do=look][data-to=own]`)
	v.wait(`document.querySelector("[data-fill=price]").textContent.includes("73.1957")`)
	assert.Equal(t, before, v.text(plan))
}

// In a frame of another site the way to a tab of its own leads to the copy in view.
func TestClientsCopyIsWhatAFrameGives(t *testing.T) {
	address := strings.Replace(hosted, "127.0.0.1", "localhost", 1)
	v := newView(t, window{800, 900})
	v.visit(framing(t, "", address+fragment(firmsPlan(t))))
	v.wait(`heights.length > 0 && heights.at(-1) > 1000`)
	inside := v.inFrame(address)
	inside.ready()
	inside.allPages()
	inside.wait(`document.querySelector("[data-fill=price]").textContent.includes("73.1957")`)
	before := inside.text(`document.querySelector("[data-fill=own-tab]").hash`)
	inside.press(copyButton)
	inside.wait(`document.querySelector("[data-fill=own-tab]").hash !== $1`, before)
	link := inside.text(`document.querySelector("[data-fill=own-tab]").hash`)
	other := anotherDevice(t, desk)
	other.visit(hosted + link)
	other.ready()
	other.wait(`document.querySelector("[data-fill=price]").textContent.includes("Quoted on")`)
	free(t, "the frame's plan", other.text(plan)+other.text(everything))
}

// A client's copy is read: its blanks take no key, and what would change it says so.
func TestClientsCopyIsNotChanged(t *testing.T) {
	v := open(t, desk, fragment(firmsPlan(t)))
	v.press(copyButton)
	v.wait(`document.querySelector(".cw-page").hasAttribute("data-client")`)
	before := v.text(plan)
	assert.True(t, v.holds(`Array.from(document.querySelectorAll("[data-at]")).every((b) => b.readOnly || b.disabled)`))
	v.run(`const b = document.querySelector("[data-at='/room/length']"); b.value = "9 ft"; b.dispatchEvent(new InputEvent("input", { bubbles: true }))`)
	v.wait(messages + `.includes("not changed")`)
	assert.Equal(t, before, v.text(plan))
	// Its figures can be read in the other notation.
	v.press(`[data-do=notation][data-to=metric]`)
	v.wait(`document.querySelector("[data-figure='room.area'] .cw-value").textContent.includes("m²")`)
	v.press(`[data-message=client] [data-do=look]`)
	v.wait(`!document.querySelector(".cw-page").hasAttribute("data-client")`)
	assert.True(t, v.holds(`document.querySelector("[data-figure='room.area'] .cw-value").textContent.includes("ft²")`))
	assert.True(t, v.holds(`Array.from(document.querySelectorAll("input[data-at]")).every((b) => !b.readOnly)`))
	assert.Empty(t, v.text(messages), "what was said of the client's copy is not for the own one")
}

// The head says that a client's copy is in view, and the choice between the copies
// stays under the pointer, though whole parts of the sheet come and go above it.
func TestTheChoiceOfACopyStaysInPlace(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := open(t, in, fragment(firmsPlan(t)))
			state := `document.querySelector(".cw-state").innerText`
			top := func(to string) float64 {
				return value[float64](v, `document.querySelector("[data-do=look][data-to=`+to+`]").getBoundingClientRect().top`)
			}
			v.run(`document.querySelector("[data-do=look][data-to=client]").scrollIntoView({ block: "center" })`)
			before := top("client")
			v.press(copyButton)
			v.wait(state + `.startsWith("client’s copy, ")`)
			assert.InDelta(t, before, top("client"), 3)
			before = top("own")
			v.press(`[data-do=look][data-to=own]`)
			v.wait(`!` + state + `.includes("client")`)
			assert.InDelta(t, before, top("own"), 3)
		})
	}
}
