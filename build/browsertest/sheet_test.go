package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFirstVisitShowsWorkedExample(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := openTurned(t, in, "")
			assert.True(t, v.holds(`document.querySelector(".cw-example").offsetHeight > 0`))
			assert.Contains(t, v.text(`document.querySelector(".cw-example").textContent`), "worked example")
			assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[aria-invalid]").length`), "an example has no problem")
			if in == phone {
				v.press(`.cw-bar [data-do=show-drawing]`)
			}
			assert.True(t, v.holds(`document.querySelector("[data-fill=drawing] svg").getBoundingClientRect().height > 100`))
			v.allPages()
			for _, id := range []string{"room.area", "border.AB", "border.DA", "box.diagonal", "tape.rolls", "platform.height"} {
				assert.Regexp(t, `\d`, v.text(figure, id), id)
			}
			v.run(`localStorage.removeItem("ceilingwright:pages")`)
			assert.Empty(t, v.text(`localStorage.length ? JSON.stringify(localStorage) : ""`), "looking keeps nothing")
		})
	}
}

func TestEmptySheetIsOnePressAway(t *testing.T) {
	v := openEmpty(t, phone)
	v.wait(`document.querySelector(".cw-example").offsetHeight === 0`)
	for _, at := range []string{"/title", "/room/length", "/room/width", "/mask/length", "/mask/layers/0/columns"} {
		assert.Empty(t, v.text(blank+`.value`, at), at)
	}
	v.waitText("—", figure, "border.AB")
}

// Border = (room − mask) / 2: (188 − 180) / 2 = 4 in, (122 − 115) / 2 = 3½ in.
func TestBordersAppearWhileTyping(t *testing.T) {
	beside(t)
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

// Each way of writing is read, and shown as read once the blank is left. What
// cannot be read is said beside its blank, stays there, and holds up nothing
// else.
func TestLengthsAreReadAsPeopleWriteThem(t *testing.T) {
	v := openPainter(t, desk)
	for _, row := range []struct{ typed, border, shown string }{
		{`15' 8"`, "4″", "15′ 8″"},
		{`15'8½"`, "4¼″", "15′ 8½″"},
		{`15 8 1/2`, "4¼″", "15′ 8½″"},
		{`15 ft 8.5`, "4¼″", "15′ 8½″"},
		{`4,78 m`, "4⅛″", "≈15′ 8 3⁄16″"}, // 4780 mm = 188.189 in, less 180 is 8.189, half of it 4.094
		{`188`, "4″", "15′ 8″"},
	} {
		v.write("/room/length", row.typed)
		assert.Equal(t, row.typed, v.text(blank+`.value`, "/room/length"), "while it is typed")
		v.waitText(row.border, figure, "border.DA")
		v.wait(`document.querySelector(".cw-echo-words")?.textContent.match(/[=≈]/)`)
		v.leave()
		v.waitText(row.shown, blank+`.value`, "/room/length")
		assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[aria-invalid]").length`), row.typed)
	}
}

func TestUnreadableBlankIsSaidBesideItAndTheRestStays(t *testing.T) {
	beside(t)
	for _, in := range []window{desk, phone} {
		t.Run(in.String(), func(t *testing.T) {
			v := openPainter(t, in)
			area := v.text(figure, "mask.area")
			v.write("/room/width", "12 fathoms or so")
			v.wait(said+`.includes("fathoms")`, "/room/width")
			assert.Equal(t, "true", v.text(blank+`.getAttribute("aria-invalid")`, "/room/width"))
			v.leave()
			assert.Equal(t, "12 fathoms or so", v.text(blank+`.value`, "/room/width"), "what was typed is kept")
			assert.True(t, v.holds(`(() => {
  const b = `+blank+`;
  return b.getAttribute("aria-describedby").split(" ").some((id) => document.getElementById(id).textContent.includes("fathoms"));
})()`, "/room/width"), "the words are tied to the blank")
			assert.Equal(t, "—", v.text(figure, "border.AB"))
			assert.Equal(t, area, v.text(figure, "mask.area"), "the mask does not need the room")
			assert.Equal(t, 4, value[int](v, `document.querySelectorAll(".cw-order li").length`), "nor do the panels")
			assert.True(t, v.holds(`document.querySelector("[data-fill=first]").textContent.includes("fathoms")`), "the first page says it too")
			assert.Equal(t, "1 stop", v.text(`document.querySelector('.cw-pages [data-page="room"] .cw-page-state').textContent`))
			v.write("/room/width", "122")
			v.waitText("3½″", figure, "border.AB")
			assert.Equal(t, 0, value[int](v, `document.querySelectorAll("[aria-invalid], .cw-say[data-severity=stop]").length`))
		})
	}
}

// The mask that is too big is refused with the amount, and the room stays.
func TestMaskLargerThanRoomIsRefusedWithAmount(t *testing.T) {
	v := openPainter(t, desk)
	v.write("/mask/length", "190")
	v.wait(said+`.includes(" 2″")`, "/mask/length") // 190 − 188
	assert.Equal(t, "—", v.text(figure, "border.DA"), "never a border below nothing")
	assert.Regexp(t, `^159\.`, v.text(figure, "room.area")) // 188 × 122 ÷ 144 = 159.28 ft²
}

func TestLayersAndStepsComeAndGo(t *testing.T) {
	v := openPainter(t, desk)
	v.press(`[data-do=add][data-to="/mask/layers"]`)
	v.wait(`document.querySelectorAll(".cw-layer").length === 2`)
	v.wait(`document.activeElement.closest(".cw-layer")?.dataset.base === "/mask/layers/1"`)
	v.write("/mask/layers/1/columns", "3")
	v.write("/mask/layers/1/rows", "1")
	v.waitText("3", `document.querySelectorAll("details.cw-hang")[1]?.querySelectorAll(".cw-order li").length`)
	v.press(`[data-base="/mask/layers/0"] [data-do=remove]`)
	v.wait(`document.querySelectorAll(".cw-layer").length === 1`)
	v.waitText("3", blank+`.value`, "/mask/layers/0/columns")

	for _, kind := range []string{"base", "leaf", "peel"} {
		v.run(`document.querySelector("[data-new-step]").value = $1`, kind)
		v.press(`[data-do=add][data-to="/finish/steps"]`)
	}
	v.wait(`document.querySelectorAll(".cw-step").length === 3`)
	v.press(`[data-base="/finish/steps/1"] [data-do=earlier]`)
	v.wait(`document.querySelector(".cw-step").dataset.kind === "leaf"`)
	v.press(`[data-base="/finish/steps/0"] [data-do=remove]`)
	v.wait(`document.querySelectorAll(".cw-step").length === 2`)
	assert.Equal(t, "base peel", v.text(`JSON.parse(`+plan+`).finish.steps.map((s) => s.kind).join(" ")`))
}
