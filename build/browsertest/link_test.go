package browsertest

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// copiedLink presses "Copy a link" and gives what was copied.
func (v *view) copiedLink() string {
	v.t.Helper()
	v.run(`globalThis.copied = ""; navigator.clipboard.writeText = async (text) => { globalThis.copied = text; }`)
	v.press(`[data-do=copy-link]`)
	v.wait(`globalThis.copied !== ""`)
	return v.text(`globalThis.copied`)
}

func TestPlanTravelsInsideLink(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/title", "Größe – ½ & more")
	before := v.text(plan)
	v.asked()
	link := v.copiedLink()
	address, fragment, _ := strings.Cut(link, "#")
	assert.Equal(t, hosted, address)
	assert.Regexp(t, regexp.MustCompile(`^[A-Za-z0-9_-]+$`), fragment, "mail and chat rewrite everything else")
	assert.Empty(t, v.asked())

	other := anotherDevice(t, phone)
	other.visit(link)
	other.ready()
	other.waitText("4″", figure, "border.DA")
	assert.Equal(t, before, other.text(plan))
	for _, url := range other.asked() {
		assert.NotContains(t, strings.SplitN(url, "#", 2)[0], "cw1", "no server sees the plan")
	}
	// Once it is changed it leaves the address, so that a reload keeps what is typed.
	other.write("/title", "Changed here")
	other.wait(`!location.href.includes("cw1")`)
	other.reload()
	assert.Equal(t, "Changed here", other.text(blank+`.value`, "/title"))
}

func TestDamagedLinkIsSaidAndGivesAnEmptySheet(t *testing.T) {
	v := open(t, desk, "")
	_, carried, _ := strings.Cut(v.copiedLink(), "#")
	swapped := []byte(carried)
	middle := len(swapped) / 2
	if swapped[middle] == 'A' {
		swapped[middle] = 'B'
	} else {
		swapped[middle] = 'A'
	}
	// The first is opened anew, the others in a tab that has a plan.
	fresh := newView(t, desk)
	fresh.visit(hosted + "#" + carried[:len(carried)-40])
	fresh.ready()
	fresh.wait(messages + `.includes("damaged or cut off")`)
	assert.Empty(t, fresh.text(blank+`.value`, "/room/length"), "never half a job")

	// Compressed or not, a link is read.
	v.run(`location.hash = $1`, fragment(painterPlan))
	v.waitText("4″", figure, "border.DA")
	before := v.text(plan)
	for name, bad := range map[string]string{
		"cut": carried[:len(carried)-40], "swapped": string(swapped), "head alone": "cw1_", "no packing": "cw1_x_1_00000000_A",
		"longer": carried + "AAAA", "escaped": strings.Replace(carried, "_", "%5F", 4),
	} {
		v.run(`document.querySelector("[data-fill=messages]").replaceChildren(); location.hash = $1`, bad)
		if strings.HasPrefix(bad, "cw1_") {
			v.wait(messages + `.includes("damaged or cut off")`)
		}
		assert.Equal(t, before, v.text(plan), name)
	}
}

func TestNothingIsAskedOfAnyoneAfterLoading(t *testing.T) {
	v := openAnew(t, desk, fragment(painterPlan))
	v.waitText("4″", figure, "border.DA")
	for _, url := range v.asked() {
		assert.True(t, strings.HasPrefix(url, hosted), "only files of its own: %s", url)
	}
	v.write("/mask/length", "180")
	v.press(`[data-do=notation][data-to=metric]`)
	v.waitText("102 mm", figure, "border.DA")
	v.copiedLink()
	v.press(`[data-do=turn-over]`)
	v.run(`await new Promise((r) => setTimeout(r, 700))`)
	// The browser may still be fetching the icon of the page's own manifest.
	assert.Empty(t, slices.DeleteFunc(v.asked(), func(url string) bool { return strings.HasPrefix(url, hosted+"icon-") }))
}
