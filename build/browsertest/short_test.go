package browsertest

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A page of the worked example is read without losing one's place: no more than five
// screens of a phone, three of a desk, and nothing beside the screen.
func TestAPageIsShort(t *testing.T) {
	beside(t)
	for _, row := range []struct {
		in      window
		screens float64
	}{{window{1280, 800}, 3}, {phone, 5}} {
		t.Run(row.in.String(), func(t *testing.T) {
			v := openTurned(t, row.in, "")
			for _, page := range []string{"room", "mask", "setting-out", "hanging"} {
				v.run(`location.hash = $1`, page)
				v.wait(`document.documentElement.dataset.page === $1`, page)
				screens := value[float64](v, `document.documentElement.scrollHeight / innerHeight`)
				assert.LessOrEqual(t, screens, row.screens, page)
				assert.Empty(t, v.text(overflow), page)
				assert.LessOrEqual(t, value[int](v, `document.querySelectorAll("#`+page+` details.cw-rest:not(.cw-item details)").length`), 1, "one More a page")
				assert.Equal(t, 0, value[int](v, `document.querySelectorAll("#`+page+` details.cw-fold details.cw-fold").length`), "no fold in a fold")
			}
		})
	}
}

// More opens over what is filled in and what is wrong, says how much it holds, and stays
// as it is left after.
func TestMoreOpensOverWhatItHolds(t *testing.T) {
	v := openEmpty(t, desk)
	rest := `document.querySelector("#room details.cw-rest")`
	assert.False(t, v.holds(rest+`.open`), "an empty sheet has nothing to show")
	assert.NotContains(t, v.text(rest+`.querySelector("summary").textContent`), "filled in")

	v.write("/room/diagonalAC", "10'")
	v.leave()
	v.waitText("(1 filled in)", rest+`.querySelector("[data-fill=rest-filled]").textContent`)
	v.run(rest + `.open = false`)
	v.write("/room/height", "9'")
	v.leave()
	assert.False(t, v.holds(rest+`.open`), "shut by hand it stays shut")
}
