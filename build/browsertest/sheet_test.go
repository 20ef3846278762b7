package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFirstVisitShowsWorkedExample(t *testing.T) {
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := open(t, in, "")
			assert.True(t, v.holds(`document.querySelector(".cw-example").offsetHeight > 0`))
			assert.Contains(t, v.text(`document.querySelector(".cw-example").textContent`), "worked example")
			assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[aria-invalid]").length`), "an example has no problem")
			for _, id := range []string{"room.area", "border.AB", "border.DA", "box.diagonal", "tape.rolls", "platform.height"} {
				assert.Regexp(t, `\d`, v.text(figure, id), id)
			}
			assert.True(t, v.holds(`document.querySelector("[data-fill=drawing] svg").getBoundingClientRect().height > 100`))
			assert.Empty(t, v.text(`localStorage.length ? JSON.stringify(localStorage) : ""`), "looking keeps nothing")
		})
	}
}

func TestEmptySheetIsOnePressAway(t *testing.T) {
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := openEmpty(t, in)
			v.wait(`document.querySelector(".cw-example").offsetHeight === 0`)
			for _, at := range []string{"/title", "/room/length", "/room/width", "/mask/length", "/mask/layers/0/columns"} {
				assert.Empty(t, v.text(blank+`.value`, at), at)
			}
			v.waitText("—", figure, "border.AB")
		})
	}
}

// Border = (room − mask) / 2: (188 − 180) / 2 = 4 in, (122 − 115) / 2 = 3½ in.
func TestBordersAppearWhileTyping(t *testing.T) {
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := openEmpty(t, in)
			v.painter()
			v.waitText(`4″`, figure, "border.DA")
			v.waitText(`4″`, figure, "border.BC")
			v.waitText(`3½″`, figure, "border.AB")
			v.waitText(`3½″`, figure, "border.CD")
			v.write("/mask/length", "179") // no key that ends an entry is pressed
			v.waitText(`4½″`, figure, "border.DA")
		})
	}
}
