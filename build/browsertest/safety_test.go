package browsertest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"ceilingwright/core/air"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// properties are the names of the blanks of a part of the plan, as its schema
// has them.
func properties(t *testing.T, path ...string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "core", "plan", "plan.schema.json"))
	require.NoError(t, err)
	var here any
	require.NoError(t, json.Unmarshal(text, &here))
	for _, step := range append(path, "properties") {
		inside, ok := here.(map[string]any)
		require.True(t, ok, "%s of %v", step, path)
		here = inside[step]
	}
	var names []string
	for name := range here.(map[string]any) {
		names = append(names, name)
	}
	slices.Sort(names)
	require.NotEmpty(t, names)
	return names
}

// What the plan can say of the house, the platform, the air and what stands on
// the floor can be said on the sheet.
func TestSafetyAsksForAllThatThePlanCanSay(t *testing.T) {
	v := openPainter(t, desk)
	for _, part := range []string{"place", "access", "air"} {
		for _, name := range properties(t, "properties", part) {
			if name == "limitUnit" {
				continue // there is but one
			}
			at := "/" + part + "/" + name
			assert.True(t, v.holds(`document.querySelector('[data-at="' + $1 + '"]:is(input, select)[aria-label]') !== null`, at), at)
		}
	}
	for _, name := range properties(t, "properties", "room", "properties", "furniture", "items") {
		assert.True(t, v.holds(`document.getElementById("t-furniture").textContent.includes('data-rel="' + $1 + '"')`, name), "furniture: %s", name)
	}
	for _, name := range []string{"voc", "vocUnit", "vocAs", "waterPart", "exemptPart", "category", "binder", "flash", "flashUnit", "limit"} {
		assert.True(t, v.holds(`document.getElementById("t-step-whole").textContent.includes('data-rel="' + $1 + '"')`, name), "step: %s", name)
	}
}

// shown tells whether a blank is in a sentence that the choices made bring up.
const shown = `Array.from(document.querySelectorAll('[data-at="' + $1 + '"]')).some((b) => !b.closest("[hidden]"))`

func TestSafetyAsksOnlyForWhatMatters(t *testing.T) {
	v := openPainter(t, desk)
	for _, step := range []struct {
		at, word     string
		asked, spare []string
	}{
		{"/access/by", "ladder", []string{"/access/ladderHeight", "/access/rated", "/access/panel"}, []string{"/access/kind", "/access/base", "/access/toeBoards", "/access/onDeck", "/access/mass", "/place/below", "/place/floorLoad"}},
		{"/access/by", "floor", []string{"/access/panel", "/access/minutes", "/access/alsoBy"}, []string{"/access/ladderHeight", "/access/rated", "/access/kind"}},
		{"/access/by", "platform", []string{"/access/kind", "/access/base", "/access/footLength", "/access/wheels", "/access/tied", "/access/mass", "/place/below", "/place/floorLoad"}, []string{"/access/ladderHeight"}},
		{"/access/kind", "hop-up", []string{"/access/wayUp"}, []string{"/access/wheels", "/access/rides", "/access/tied"}},
		{"/access/kind", "tower", []string{"/access/wheels", "/access/rides", "/access/tied"}, nil},
		{"/access/rails", "no", nil, []string{"/access/railHeight", "/access/railGap"}},
		{"/access/rails", "yes", []string{"/access/railHeight", "/access/railGap"}, nil},
		{"/room/fixture/at", "middle", []string{"/place/isolated"}, nil},
		{"/room/fixture/at", "none", nil, []string{"/place/isolated"}},
		{"/place/surface", "textured", []string{"/place/asbestosTest"}, nil},
		{"/place/surface", "smoothed", []string{"/place/asbestosTest"}, nil},
		{"/place/asbestosTest", "found", []string{"/place/asbestosTest"}, nil},
		{"/place/surface", "smooth", []string{"/place/asbestosTest"}, nil},
		{"/place/surface", "textured", []string{"/place/asbestosTest"}, nil},
		{"/place/asbestosTest", "none", []string{"/place/asbestosTest"}, nil},
		{"/place/leadTest", "found", []string{"/place/leadPlan"}, nil},
		{"/place/leadTest", "none", nil, []string{"/place/leadPlan"}},
		{"/place/drop", "yes", []string{"/place/dropDepth"}, nil},
		{"/place/drop", "no", []string{"/place/drop"}, []string{"/place/dropDepth"}},
		{"/place/rules", "UK", []string{"/access/baseChecked"}, []string{"/place/leadFirm"}},
		{"/place/rules", "US", []string{"/place/leadFirm"}, []string{"/access/baseChecked"}},
		{"/place/surface", "smooth", nil, []string{"/place/asbestosTest"}},
		{"/place/pullTest", "held", []string{"/place/pullOn", "/place/pullAt"}, nil},
		{"/place/pullTest", "none", nil, []string{"/place/pullOn", "/place/pullAt"}},
	} {
		v.choose(step.at, step.word)
		for _, at := range step.asked {
			assert.True(t, v.holds(shown, at), "%s=%s asks for %s", step.at, step.word, at)
		}
		for _, at := range step.spare {
			assert.False(t, v.holds(shown, at), "%s=%s has no need of %s", step.at, step.word, at)
		}
	}
}

// A question not answered is no answer, and reads so.
func TestSafetyQuestionsBeginUnanswered(t *testing.T) {
	v := openEmpty(t, desk)
	for _, at := range []string{"/place/detectors", "/place/sprinklers", "/place/flames", "/place/airHandling", "/place/below", "/place/drop", "/place/leadFirm", "/place/fixings", "/access/wayUp", "/access/toeBoards", "/access/wheels", "/access/rides", "/access/tied"} {
		assert.Equal(t, "not said", v.text(blank+`.selectedOptions[0].text`, at), at)
		assert.Equal(t, "", v.text(`$1.slice(1).split("/").reduce((here, step) => here[step], JSON.parse(`+plan+`))`, at), at)
	}
	v.choose("/place/below", "yes")
	v.choose("/place/below", "")
	assert.Equal(t, "", v.text(`JSON.parse(`+plan+`).place.below`))
}

func TestSafetyTellsWhatStaysOnTheFloor(t *testing.T) {
	v := openPainter(t, desk)
	v.press(`[data-do=add][data-to="/room/furniture"]`)
	v.wait(`document.activeElement.dataset.at === "/room/furniture/0/name"`)
	v.write("/room/furniture/0/name", "Wardrobe")
	v.write("/room/furniture/0/length", "6'")
	v.write("/room/furniture/0/width", "2'")
	v.write("/room/furniture/0/fromDA", "0")
	v.write("/room/furniture/0/fromAB", "2'")
	v.press(`[data-do=add][data-to="/room/furniture"]`)
	v.waitText("2", `JSON.parse(`+plan+`).room.furniture.length`)
	v.write("/room/furniture/1/name", "Stove")
	v.press(`[data-base="/room/furniture/0"] [data-do=remove]`)
	v.waitText("Stove", `JSON.parse(`+plan+`).room.furniture.map((f) => f.name).join()`)
	v.waitText("Stove", blank+`.value`, "/room/furniture/0/name")
}

// Each step says beside its label what its category may hold; its line shows
// that it is above, and the list under Safety has it in a word.
func TestSafetyHoldsLabelsToTheirLimits(t *testing.T) {
	v := open(t, desk, "")
	v.openStep("/finish/steps/0")
	var want []string
	for _, c := range append([]air.Category{""}, air.Categories()...) {
		want = append(want, string(c))
	}
	assert.Equal(t, want, value[[]string](v, `Array.from(`+blank+`.options, (o) => o.value)`, "/finish/steps/0/category"))

	const (
		line = `document.querySelector('[data-base="/finish/steps/0"] .cw-limit').textContent`
		head = `document.querySelector('[data-base="/finish/steps/0"] [data-fill=step-look]').textContent`
		row  = `document.querySelector(".cw-limits tbody tr").textContent`
	)
	v.wait(line + `.includes("250 g/L")`)
	assert.Contains(t, v.text(row), "✓ within")
	assert.Equal(t, "", v.text(head))
	v.write("/finish/steps/0/voc", "251")
	v.wait(row + `.includes("✗ above")`)
	assert.Contains(t, v.text(line), "251 g/L")
	assert.Equal(t, "above the limit", v.text(head))
	v.write("/finish/steps/0/voc", "250")
	v.wait(row + `.includes("✓ within")`)
	v.choose("/place/rules", "EU")
	v.wait(row + `.includes("30 g/L")`)
	v.choose("/finish/steps/0/category", "")
	v.wait(row + `.includes("? not known")`)

	// Every step but leaf and peeling has its line, at the step it is about.
	v.run(`dispatchEvent(new Event("beforeprint"))`)
	assert.Equal(t, "0 1 2 3 5 6 7 9", v.text(`Array.from(document.querySelectorAll(".cw-step")).flatMap((s, i) => s.querySelector(".cw-limit")?.textContent ? [i] : []).join(" ")`))
}

// What the air comes to is said, and goes with the last product.
func TestSafetySaysTheAir(t *testing.T) {
	v := open(t, desk, "")
	v.wait(`document.querySelector(".cw-air p").textContent.includes("screening figure")`)
	v.press(`.cw-example [data-do=empty]`)
	v.wait(`document.querySelector(".cw-air").childElementCount === 0 && document.querySelector("[data-fill=limits]").childElementCount === 0`)
}
