package browsertest

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lit is how many parts in the drawing and outside of it are lit, and of what.
const lit = `(() => {
  const all = Array.from(document.querySelectorAll("[data-lit]"));
  const names = new Set(all.map((e) => e.getAttribute("data-panel") ?? e.getAttribute("data-figure")));
  const drawn = all.filter((e) => e.closest("svg")).length;
  return [...names].join() + (drawn ? " drawn" : "") + (all.length > drawn ? " written" : "");
})()`

// over puts the pointer on the middle of an element.
func (v *view) over(element string) {
	v.t.Helper()
	at := value[[]float64](v, `(() => { const e = `+element+`; e.scrollIntoView({ block: "center" }); const r = e.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()`)
	require.NoError(v.t, chromedp.Do(v.tab, chromedp.MouseEvent(chromedp.MouseMoved, at[0], at[1])))
}

func TestFigureAndDimensionLightEachOther(t *testing.T) {
	v := open(t, desk, "")
	v.over(`document.querySelector('.cw-figure[data-figure="border.DA"]')`)
	v.waitText("border.DA drawn written", lit)
	assert.Contains(t, v.text(`document.querySelector("[data-fill=drawing-words]").textContent`), v.text(figure, "border.DA"))
	v.over(`document.querySelector('svg [data-figure="border.AB"] text')`)
	v.waitText("border.AB drawn written", lit)
	v.over(`document.querySelector("#h-room")`)
	v.waitText("", lit)
}

func TestPanelAndRowLightEachOther(t *testing.T) {
	v := open(t, desk, "")
	v.over(`document.querySelector('svg [data-panel="L1:A2"] text, svg [data-panel="L1:A2"] *')`)
	v.waitText("L1:A2 drawn written", lit)
	assert.Contains(t, v.text(`document.querySelector("[data-fill=drawing-words]").textContent`), "A2")
	v.over(`document.querySelector('.cw-order [data-panel="L1:C4"]')`)
	v.waitText("L1:C4 drawn written", lit)
	// A touch keeps it lit after the finger has gone.
	v.press(`.cw-order [data-panel="L1:B5"] .cw-panel-name`)
	v.over(`document.querySelector("#h-room")`)
	v.leave()
	v.waitText("L1:B5 drawn written", lit)
}

func TestDrawingTurnsOverAndIsNamedForWhereYouLook(t *testing.T) {
	v := open(t, desk, "")
	before := v.text(`document.querySelector("[data-drawing-title]").textContent`)
	assert.Contains(t, before, "looking up")
	leftmost := `(() => { const x = (c) => Array.from(document.querySelectorAll("svg .cw-text-corner")).find((e) => e.textContent === c).getBoundingClientRect().x; return x("W") < x("X") ? "W left" : "X left"; })()`
	assert.Equal(t, "W left", v.text(leftmost))
	v.press(`[data-do=turn-over]`)
	v.wait(`document.querySelector("[data-drawing-title]").textContent.includes("looking down")`)
	assert.Equal(t, "X left", v.text(leftmost), "looking down is the mirror")
}

func TestWorkingOpensUnderItsFigure(t *testing.T) {
	v := openPainter(t, desk)
	assert.Equal(t, 0, value[int](v, `document.querySelectorAll(".cw-slip").length`))
	v.run(`const b = document.querySelector('[data-do=working][data-to="border.DA"]'); b.scrollIntoView({ block: "center" }); b.focus()`)
	v.keys("\r")
	v.wait(`document.getElementById("slip-border.DA")`)
	slip := strings.ReplaceAll(v.text(`document.getElementById("slip-border.DA").textContent`), "\u00a0", " ")
	for _, part := range []string{"15′ 8″", "15′ 0″", "4″"} {
		assert.Contains(t, slip, part)
	}
	assert.True(t, v.holds(`document.querySelector('[data-to="border.DA"][aria-expanded=true][aria-controls="slip-border.DA"]') === document.activeElement`))
	v.keys(" ")
	v.wait(`!document.getElementById("slip-border.DA")`)
}

func TestAddressCanOpenAllWorkings(t *testing.T) {
	v := open(t, desk, "?working=open")
	assert.True(t, v.holds(`document.querySelectorAll(".cw-slip").length > 20`))
	assert.Equal(t, 0, value[int](v, `Array.from(document.querySelectorAll(".cw-how")).filter((b) => !b.hidden && b.getAttribute("aria-expanded") !== "true").length`))
	// A figure that several notes speak of is worked out once in each part.
	assert.Empty(t, v.text(`Array.from(document.querySelectorAll("[id]"), (e) => e.id).filter((id, i, all) => all.indexOf(id) !== i).join(" ")`), "ids that stand twice")
	assert.Empty(t, v.text(`Array.from(document.querySelectorAll("[aria-controls]"), (e) => e.getAttribute("aria-controls")).filter((id) => !document.getElementById(id)).join(" ")`), "controls of nothing")
}
