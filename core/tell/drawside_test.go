package tell_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell"
)

// The platform of the full plan, worked by hand: a ceiling of 10′ 2″ (3098.8 mm), a
// fitter of 5′ 7″ (1701.8 mm), the deck at 4′ 0″ (1219.2 mm; 3098.8 − 1.10 × 1701.8 =
// 1226.8, to the nearest two inches), rails taken at 1.10 m.
func TestPlatformFromTheSideIsToScale(t *testing.T) {
	list, _, title, caption := shapes(t, drawn(t, sheetOf(t, "full"), "platform.side").SVG)
	assert.Equal(t, "Platform, seen from the side", title)
	assert.Contains(t, caption, "deck at 4′ 0″ under the ceiling at 10′ 2″")
	walls := ofClass(list, "cw-wall")
	require.Len(t, walls, 2)
	floor, ceiling := walls[0].at["y1"], walls[1].at["y1"]
	assert.InDelta(t, 3098.8, floor-ceiling, near)
	deck := ofClass(list, "cw-deck")[0].at["y"]
	assert.InDelta(t, 1219.2, floor-deck, near)
	rails := ofClass(list, "cw-frame")
	require.Len(t, rails, 4, "two posts and two rails")
	assert.InDelta(t, 1100, deck-rails[2].at["y1"], near)
	assert.InDelta(t, 550, deck-rails[3].at["y1"], near)
	head := only(list, func(s shape) bool { return s.element == "circle" })
	require.Len(t, head, 1)
	assert.InDelta(t, 1701.8, deck-(head[0].at["cy"]-head[0].at["r"]), near)
	for _, said := range []string{"10′ 2″", "5′ 7″", "4′ 0″"} {
		assert.Len(t, only(list, func(s shape) bool { return s.words == said }), 1, said)
	}
}

func TestFromTheSideOnlyWhereTheHeightIsKnown(t *testing.T) {
	for given, want := range map[string]string{`"10' 2\""`: "Platform, seen from the side", `"6' 4\""`: "Work from the floor, seen from the side", `""`: ""} {
		text := `{"ceilingwright": 1, "room": {"length": "5 m", "width": "4 m", "height": ` + given + `}}`
		title := ""
		for _, d := range tell.Build(plan.Read([]byte(text)), "test", nil).Drawings {
			if d.Shows == "side" {
				title = d.Title
			}
		}
		assert.Equal(t, want, title, given)
	}
}

// What was found of a panel is drawn by a sign as well as by a shade.
func TestPanelsBearWhatWasFoundOfThem(t *testing.T) {
	s := sheetOf(t, "delivered-short")
	list, _, _, _ := shapes(t, drawn(t, s, "L1.panels").SVG)
	count := map[string]int{}
	for _, p := range s.Layers[0].Panels {
		of := only(list, func(s shape) bool { return s.panel == "L1:"+p.Label })
		count[p.State]++
		shade := map[string]string{"found": "cw-first", "recut": "cw-first", "missing": "cw-missing", "damaged": "cw-damaged", "unchecked": "cw-panel"}[p.State]
		signs := map[string]int{"found": 1, "recut": 2, "missing": 2, "damaged": 2, "unchecked": 0}[p.State]
		assert.Len(t, ofClass(of, shade), 1, "%s is %s", p.Label, p.State)
		assert.Len(t, ofClass(of, "cw-sign"), signs, "%s is %s", p.Label, p.State)
		assert.Len(t, only(of, func(s shape) bool { return s.words == p.Label }), 1, p.Label)
	}
	assert.Len(t, count, 5, "every state is tried: %v", count)
	for _, key := range []string{"7 found", "1 missing", "1 damaged", "1 recut"} {
		assert.Len(t, only(list, func(s shape) bool { return s.words == key }), 1, key)
	}
	unchecked, _, _, _ := shapes(t, drawn(t, sheetOf(t, "full"), "L1.panels").SVG)
	assert.Empty(t, ofClass(unchecked, "cw-sign"))
}

// On a phone a drawing has about 370 px: its letters are 9 px high there at the least.
// A fine grid and a wall full of marks have smaller ones, which the page leaves out until
// they are drawn large enough.
func TestLettersCanBeReadOnAPhone(t *testing.T) {
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "plans", "v1", "*.json"))
	require.NoError(t, err)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		s := tell.Build(plan.Read(text), "test", nil)
		if slices.ContainsFunc(s.Layers, func(l sheet.Layer) bool { return l.Count > 60 }) {
			continue
		}
		for _, d := range s.Drawings {
			list, wide, _, _ := shapes(t, d.SVG)
			for _, shape := range list {
				if shape.element == "text" {
					assert.GreaterOrEqual(t, shape.at["font-size"]*370/wide, 9.0, "%s %s: %s", filepath.Base(file), d.ID, shape.words)
				}
			}
		}
	}
}
