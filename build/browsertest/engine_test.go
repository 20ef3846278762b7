package browsertest

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// deadly has the engine stop for good at a plan with that name, as a fault in it
// would: from then on every call fails.
const deadly = `const real = ceilingwright.sheet;
globalThis.given = 0;
let dead = false;
ceilingwright.sheet = (text) => {
  if (JSON.parse(text).title === "Deadly") { dead = true; given++; }
  if (dead) throw new Error("Go program has already exited");
  return real(text);
}`

// An engine that stops is started anew by the page, without asking anyone; the
// plan it stopped at is not given to it again, and the last good one is one press
// away.
func TestStoppedEngineIsStartedAnew(t *testing.T) {
	v := openAnew(t, desk, fragment(painterPlan))
	v.waitText("4″", figure, "border.DA")
	v.asked()
	v.run(deadly)
	v.write("/title", "Deadl")
	v.leave()
	v.write("/title", "Deadly")
	v.wait(messages + `.includes("stopped the part that works out the figures")`)
	v.leave()
	assert.Equal(t, 1, value[int](v, `given`))
	assert.Equal(t, "4″", v.text(figure, "border.DA"), "the figures of the plan before stay")

	// Another change is worked out by the new engine, and the message goes.
	v.write("/title", "Alive")
	v.write("/mask/length", "170")
	v.waitText("9″", figure, "border.DA")
	assert.NotContains(t, v.text(messages), "stopped")
	assert.Empty(t, slices.DeleteFunc(v.asked(), func(url string) bool { return strings.HasPrefix(url, hosted+"icon-") }), "it is started from what is there")

	// A second time, and back by the button; the plan it stopped at stays away from it.
	v.run(deadly)
	v.leave()
	good := v.text(plan)
	v.write("/title", "Deadly")
	v.wait(messages + `.includes("stopped the part that works out the figures")`)
	v.press(`[data-do=last-good]`)
	v.waitText("9″", figure, "border.DA")
	v.wait(`!` + messages + `.includes("stopped")`)
	assert.NotEqual(t, "Deadly", v.text(blank+`.value`, "/title"))
	v.press(`[data-do=undo]`)
	v.waitText("Deadly", blank+`.value`, "/title")
	v.wait(messages + `.includes("stopped the part that works out the figures")`)
	assert.Equal(t, 1, value[int](v, `given`))
	v.press(`[data-do=undo]`)
	v.wait(`!` + messages + `.includes("stopped")`)
	assert.Equal(t, good, v.text(plan))
	v.write("/mask/length", "180")
	v.waitText("4″", figure, "border.DA")
}
