package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// planned is a place in the present plan.
const planned = `$1.slice(1).split("/").reduce((here, step) => here?.[step], JSON.parse(` + plan + `))`

// A room of 12 by 9 feet, read by the tape: its sides, and the diagonals that
// are 15 feet where it is square, since 9² + 12² = 15².
func TestRoomIsTakenByItsSidesAndDiagonals(t *testing.T) {
	v := openPainter(t, phone)
	v.choose("/room/form", "lines")
	v.waitText("AB BC CD DA AC BD", `Array.from(document.querySelectorAll(".cw-readings select"), (s) => s.value).join(" ")`)
	assert.Equal(t, "188", v.text(planned, "/room/length"), "what the rectangle had stays in the plan")
	for i, reading := range []string{"12'", "9'", "12' 1\"", "9'", "15'", "15'"} {
		v.write("/room/readings/"+string(rune('0'+i))+"/length", reading)
	}
	v.write("/room/readings/2/start", "1\"")
	v.leave()
	v.waitText("108.0 ft²", figure, "room.area")
	v.wait(`document.querySelector(".cw-verdict[data-proved=yes]")`)
	assert.Equal(t, 4, value[int](v, `document.querySelectorAll(".cw-room-corners li").length`))
	assert.Equal(t, 6, value[int](v, `Array.from(document.querySelectorAll(".cw-readings [data-fill=residual]")).filter((r) => r.textContent !== "").length`), "each reading says how it fits")

	// A diagonal that no room with these sides can have is said to be off.
	v.write("/room/readings/4/length", "15' 3\"")
	v.leave()
	v.wait(`document.querySelector(".cw-verdict[data-proved=no]")`)
	assert.Contains(t, v.text(`document.querySelector("[data-fill=survey]").textContent`), "Measure again")
	assert.Empty(t, v.text(overflow))
	v.picture("survey-lines-390")

	// The form turned over and back: the six lines are not put in a second time.
	v.choose("/room/form", "rectangle")
	v.waitText("15′ 8″", blank+`.value`, "/room/length")
	v.choose("/room/form", "lines")
	assert.Equal(t, 6, value[int](v, `document.querySelectorAll(".cw-readings li").length`))
}

// Corners and walls are named as the room has them: with six corners the wall
// the light is measured from is UW.
func TestCornersAndWallsAreNamedByTheirPlace(t *testing.T) {
	v := openPainter(t, phone)
	v.choose("/room/fixture/at", "measured")
	assert.Contains(t, v.text(blank+`.getAttribute("aria-label")`, "/room/fixture/fromDA"), "wall ZW")
	v.choose("/room/form", "points")
	v.waitText("4", `document.querySelectorAll("[data-item-of=points]").length`)
	v.press(`[data-do=add][data-to="/room/points"]`)
	v.press(`[data-do=add][data-to="/room/points"]`)
	v.waitText("W X Y Z V U", `Array.from(document.querySelectorAll("[data-item-of=points] b"), (b) => b.textContent).join(" ")`)
	assert.Contains(t, v.text(blank+`.getAttribute("aria-label")`, "/room/points/5/x"), "Corner U")
	v.waitText("Middle of the light, from wall UW", blank+`.getAttribute("aria-label")`, "/room/fixture/fromDA")
	assert.Contains(t, v.text(`Array.from(document.querySelectorAll('[data-at="/setting/square"] option'), (o) => o.value).join(" ")`), "EF FA")
	// An L of 188 by 122 with 60 by 40 taken out of the corner towards C:
	// 188 × 122 − 60 × 40 = 20536 square inches = 142.6 ft².
	for i, p := range [][2]string{{"0", "0"}, {"188", "0"}, {"188", "82"}, {"128", "82"}, {"128", "122"}, {"0", "122"}} {
		at := "/room/points/" + string(rune('0'+i))
		v.write(at+"/x", p[0])
		v.write(at+"/y", p[1])
	}
	v.leave()
	v.waitText("142.6 ft²", figure, "room.area")

	v.choose("/room/form", "walls")
	v.waitText("WX XY YZ ZW", `Array.from(document.querySelectorAll("[data-item-of=walls] b[data-nth=wall]"), (b) => b.textContent).join(" ")`)
	assert.Equal(t, "Angle at corner W, degrees", v.text(blank+`.getAttribute("aria-label")`, "/room/walls/3/angle"))
	v.choose("/room/form", "round")
	// An oval of 188 by 122: π × 94 × 61 ÷ 144 = 125.1 ft².
	v.waitText("125.1 ft²", figure, "room.area")
}

func TestLightAndOtherThingsAreFoundFromWallsAndCorners(t *testing.T) {
	v := openPainter(t, phone)
	v.choose("/room/fixture/at", "corners")
	v.choose("/room/fixture/cornerOne", "A")
	v.choose("/room/fixture/cornerTwo", "B")
	v.choose("/room/fixture/shape", "rectangular")
	v.write("/room/fixture/deep", "8\"")
	assert.True(t, v.holds(`document.querySelector('[data-asked="/room/fixture/side"]').hidden`), "the side is asked for only where it is needed")
	v.press(`[data-do=add][data-to="/room/obstructions"]`)
	v.wait(`document.activeElement.dataset.at === "/room/obstructions/0/name"`)
	v.write("/room/obstructions/0/name", "Vent")
	v.choose("/room/obstructions/0/kind", "vent")
	v.write("/room/obstructions/0/fromDA", "3'")
	v.write("/room/obstructions/0/fromAB", "2' 6\"")
	v.write("/room/obstructions/0/across", "8\"")
	v.leave()
	v.wait(`document.querySelector('[data-object="/room/obstructions/0"]')?.textContent.includes("3′ 0″")`)
	assert.Empty(t, v.text(overflow))
}
