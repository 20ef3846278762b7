package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// typedIn is the plan without what the notation itself is.
const typedIn = `JSON.stringify({ ...JSON.parse(` + plan + `), units: 0 })`

// A bare 188 was read as inches. Shown in metric it stays 188 inches, and what
// was typed with a unit stays as it was typed.
func TestNotationChangesNothingThatWasTyped(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/room/length", `15' 8"`)
	v.leave()
	v.waitText("4″", figure, "border.DA")

	v.press(`[data-do=notation][data-to=metric]`)
	v.waitText("102 mm", figure, "border.DA") // 4 in = 101.6 mm
	v.wait(`document.querySelector("[data-do=notation][data-to=metric]").getAttribute("aria-pressed") === "true"`)
	assert.Equal(t, `15' 8"`, v.text(`JSON.parse(`+plan+`).room.length`))
	assert.Equal(t, "122 in", v.text(`JSON.parse(`+plan+`).room.width`), "the bare number keeps its meaning")
	assert.Equal(t, "2", v.text(`JSON.parse(`+plan+`).mask.layers[0].columns`), "a count has no unit")

	v.write("/mask/width", "2900") // a bare number is millimetres now
	v.leave()
	v.waitText("99 mm", figure, "border.AB") // (3098.8 − 2900) / 2 = 99.4

	first := v.text(typedIn)
	for range 2 {
		for _, to := range []string{"feet-inches", "metric"} {
			v.press(`[data-do=notation][data-to=` + to + `]`)
			v.wait(`document.querySelector("[data-do=notation][data-to=` + to + `]").getAttribute("aria-pressed") === "true"`)
		}
	}
	assert.Equal(t, first, v.text(typedIn), "after four switches")
	assert.Equal(t, "99 mm", v.text(figure, "border.AB"))
}

func TestUnitForBareNumbersHoldsFromThenOn(t *testing.T) {
	v := openPainter(t, desk)
	v.choose("/units/bare", "cm")
	v.write("/mask/length", "450")
	v.leave()
	assert.Equal(t, "188 in", v.text(`JSON.parse(`+plan+`).room.length`), "typed as inches before")
	v.waitText("5 7⁄16″", figure, "border.DA") // (477.52 − 450) / 2 = 13.76 cm = 5.417 in, nearest 1/16: 5 7/16
}
