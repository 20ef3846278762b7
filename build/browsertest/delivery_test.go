package browsertest

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// noted is what the plan holds of the panels of the first layer, in the order
// they were noted.
const noted = `(JSON.parse(` + plan + `).mask.layers[0].panels ?? []).map((p) => p.panel + " " + p.state).join(", ")`

// tilePressed is the panel to press of that label in the first layer.
func tilePressed(label string) string {
	return `.cw-layer [data-do=stamp-panel][data-to="` + label + `"]`
}

func TestPanelsOfADeliveryAreCheckedByPressingThem(t *testing.T) {
	v := openPainter(t, phone)
	v.press(tilePressed("A2"))
	v.waitText("A2 found", noted)
	assert.True(t, v.holds(`document.activeElement?.dataset.to === "A2"`), "the focus stays on the panel")
	v.press(tilePressed("A2"))
	v.waitText("A2 unchecked", noted)
	v.press(`.cw-layer [data-do=stamp][data-to=missing]`)
	v.press(tilePressed("B1"))
	v.waitText("A2 unchecked, B1 missing", noted)
	assert.Equal(t, "B1", v.text(`Array.from(document.querySelectorAll("[data-noted]"), (r) => r.dataset.noted).join(" ")`), "what differs is listed")
	v.press(`.cw-layer [data-do=all-found]`)
	v.waitText("A2 found, B1 missing, A1 found, B2 found", noted)
	v.choose("/mask/layers/0/panels/1/state", "damaged")
	v.waitText("A2 found, B1 damaged, A1 found, B2 found", noted)

	v.press(`.cw-layer [data-do=stamp][data-to=measure]`)
	v.press(tilePressed("B2"))
	v.wait(`document.activeElement.dataset.at === "/mask/layers/0/panels/3/length"`)
	v.write("/mask/layers/0/panels/3/length", "89 7/8")
	assert.Equal(t, "89 7/8", v.text(planned, "/mask/layers/0/panels/3/length"))
	v.leave()
	v.press(`[data-noted=B1] [data-do=unnote]`)
	v.waitText("A2 found, A1 found, B2 found", noted)
	assert.Empty(t, v.text(overflow))
}

func TestLabelsOfTheSupplierArePasted(t *testing.T) {
	v := openPainter(t, desk)
	v.run(`const b = `+blank+`; b.closest("details").open = true; b.focus(); document.execCommand("insertText", false, $2)`, "/mask/layers/0/labels", "11 12\n21 22")
	v.waitText("11 12\n21 22", planned, "/mask/layers/0/labels")
	v.leave()
	v.reload()
	v.waitText("11 12\n21 22", blank+`.value`, "/mask/layers/0/labels")
}

// Sixty panels fit a phone to press, each large enough for a finger; of many
// more only those that differ are listed, by name.
func TestManyPanelsCanBeCheckedOnAPhone(t *testing.T) {
	many := strings.NewReplacer(`"columns":"2","rows":"2"`, `"columns":"10","rows":"6"`, `"id":"painter"`, `"id":"many"`).Replace(painterPlan)
	v := open(t, window{320, 640}, fragment(many))
	v.run(`document.querySelector(".cw-layer .cw-rest").open = true`)
	assert.Equal(t, 60, value[int](v, `document.querySelectorAll(".cw-tile").length`))
	assert.Equal(t, 0, value[int](v, `Array.from(document.querySelectorAll(".cw-tile"), (e) => e.getBoundingClientRect()).filter((r) => r.width < 44 || r.height < 44).length`))
	assert.Empty(t, v.text(overflow))
	v.press(`.cw-layer [data-do=all-found]`)
	v.waitText("60", `JSON.parse(`+plan+`).mask.layers[0].panels.length`)
	v.picture("delivery-320")

	v.write("/mask/layers/0/columns", "100")
	v.waitText(strconv.Itoa(0), `document.querySelectorAll(".cw-tile").length`)
	v.run(`document.querySelector("[data-note-panel]").focus()`)
	v.keys("c77")
	v.press(`.cw-layer [data-do=note-panel]`)
	v.wait(`document.querySelector("[data-noted=C77]")`)
	assert.Equal(t, "missing", v.text(planned, "/mask/layers/0/panels/60/state"))
}

func TestPiecesComeAndGo(t *testing.T) {
	v := openPainter(t, phone)
	v.press(`.cw-layer [data-do=add][data-to=pieces]`)
	v.write("/mask/layers/0/pieces/0/cells", "A1 A2")
	v.choose("/mask/layers/0/pieces/0/kind", "loose")
	v.wait(`!` + strings.Replace(blank, "$1", `"/mask/layers/0/pieces/0/length"`, 1) + `.closest("[hidden]")`)
	assert.Equal(t, "A1 A2", v.text(planned, "/mask/layers/0/pieces/0/cells"), "what was typed stays")
	v.press(`[data-base="/mask/layers/0/pieces/0"] [data-do=remove]`)
	v.waitText("0", `JSON.parse(`+plan+`).mask.layers[0].pieces.length`)
}
