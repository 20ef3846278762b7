package browsertest

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/assert"
)

// lying is the phone turned on its side.
var lying = window{844, 390}

// step is the large heading of the step in sight, "" when the view is shut.
const step = `(document.querySelector(".cw-ladder[open] h2")?.textContent ?? "").replace(/\s+/g, " ").trim()`

// ladderKeys are the buttons under the thumb, the one to go on with first.
const ladderKeys = `Array.from(document.querySelectorAll(".cw-ladder-keys button"), (b) => b.textContent).join(" | ")`

// layerUp is what the plan holds of panels that are up in the first layer.
const layerUp = `(JSON.parse(` + plan + `).mask.layers[0].up ?? []).join(" ")`

// climb opens the view from the first button for that work.
func (v *view) climb(to string) {
	v.t.Helper()
	v.press(`[data-do=ladder][data-to=` + to + `]`)
	v.wait(`document.querySelector(".cw-ladder[open]")`)
}

// thumb presses the button of that name in the view.
func (v *view) thumb(words string) {
	v.t.Helper()
	v.run(`document.querySelector(".cw-ladder [data-pressed]")?.removeAttribute("data-pressed");
const b = Array.from(document.querySelectorAll(".cw-ladder button")).find((b) => b.textContent === $1);
if (!b) throw new Error("no button " + $1 + " among " + Array.from(document.querySelectorAll(".cw-ladder button"), (b) => b.textContent));
b.setAttribute("data-pressed", "")`, words)
	v.press(".cw-ladder [data-pressed]")
}

// glance leaves a picture of what the window shows.
func (v *view) glance(name string) {
	v.t.Helper()
	if folder := os.Getenv("CEILINGWRIGHT_PICTURES"); folder != "" {
		keepPicture(v.t, folder, name+".png", call(v, page.CaptureScreenshot, page.CaptureScreenshotParams{}).Data)
	}
}

// The painter's layer is two by two panels: each is ticked, and the plan has
// them in the order they went up.
func TestLayerIsTickedPanelByPanel(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	order := strings.Fields(v.text(`Array.from(document.querySelectorAll(".cw-order .cw-panel-name"), (b) => b.textContent).join(" ")`))
	assert.Len(t, order, 4)
	for i, panel := range order {
		v.waitText("Hang "+panel, step)
		assert.Contains(t, v.text(`document.querySelector(".cw-ladder-where").textContent`), fmt.Sprintf("%d of 4", i+1))
		assert.Equal(t, "H2", v.text(`document.activeElement.tagName`), "the heading has the focus")
		v.thumb(panel + " is up")
		v.waitText(strings.Join(order[:i+1], " "), layerUp)
		assert.Equal(t, panel+" is up.", v.text(`document.querySelector(".cw-ladder [role=status]").textContent`))
	}
	v.waitText("First layer: All up", step)
	v.thumb("To the sheet")
	v.waitText("", step)
	assert.True(t, v.holds(`document.activeElement.matches("[data-do=ladder][data-to=hanging]")`), "the focus is where it came from")
}

func TestPanelIsTakenDownAgain(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("hanging")
	first := strings.TrimPrefix(v.text(step), "Hang ")
	v.thumb(first + " is up")
	v.thumb("Back")
	v.waitText(first+" is up", step)
	v.thumb("Take it down again")
	v.waitText("Hang "+first, step)
	assert.Equal(t, "", v.text(layerUp))
}

func TestMarksAreTickedWallByWall(t *testing.T) {
	v := openPainter(t, phone)
	v.climb("marks")
	v.waitText("Along wall AB, from A 4″", step)
	v.thumb("Marked")
	v.waitText("Along wall AB, from A 7′ 10″", step)
	v.thumb("Back")
	v.waitText("Along wall AB, from A 4″ is marked", step)
	v.thumb("It is not marked after all")
	v.waitText("Along wall AB, from A 4″", step)
	v.thumb("Later")
	for v.text(step) != "Marks left out: 1" {
		v.thumb("Marked")
	}
	v.thumb("To the first")
	v.waitText("Along wall AB, from A 4″", step)
	v.thumb("Marked")
	for range 3 {
		v.thumb("Go on")
	}
}

func TestLadderPictures(t *testing.T) {
	for _, in := range []window{phone, lying, {320, 568}} {
		v := open(t, in, "")
		v.climb("hanging")
		v.glance(fmt.Sprintf("ladder-hang-%d", in.wide))
		v.press(".cw-ladder [data-key=go]")
		v.press(".cw-ladder [data-key=more]:last-child")
		v.glance(fmt.Sprintf("ladder-up-%d", in.wide))
		v.press(".cw-ladder-leave")
		v.climb("marks")
		v.glance(fmt.Sprintf("ladder-mark-%d", in.wide))
	}
}
