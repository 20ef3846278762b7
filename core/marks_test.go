package core_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/sheet"
)

// Seams of two layers that are less than a tape mark apart stay two marks, each
// with what its rounding hides; cut alike they are one.
func TestMarks_SeamsOfTwoLayersWithinAMark(t *testing.T) {
	layer := func(id, first, second string) map[string]any {
		return map[string]any{"id": id, "name": "Layer " + id, "split": "sizes", "columnSizes": []any{first, second}, "rowSizes": []any{"1 m"}}
	}
	mask := func(layers ...any) sheet.Sheet {
		plan := changed(t, planNamed(t, "oval"), "/room", map[string]any{"form": "rectangle", "length": "4 m", "width": "3 m", "height": "2.6 m"})
		return sheetOf(t, changed(t, plan, "/mask", map[string]any{"length": "2 m", "width": "1 m", "layers": layers}))
	}
	seams := func(s sheet.Sheet) (found []sheet.Mark) {
		require.NotEmpty(t, s.Walls)
		for _, m := range s.Walls[0].Marks {
			if m.Kind == "seam" {
				found = append(found, m)
			}
		}
		return found
	}
	apart := seams(mask(layer("L1", "800.2 mm", "1199.8 mm"), layer("L2", "799.7 mm", "1200.3 mm")))
	require.Len(t, apart, 2)
	assert.Equal(t, "Layer L2", apart[0].Layer)
	assert.Equal(t, "0.3 mm less", apart[0].Hides)
	assert.Equal(t, "Layer L1", apart[1].Layer)
	assert.Equal(t, "0.2 mm more", apart[1].Hides)
	assert.Equal(t, apart[0].Text, apart[1].Text, "on the tape they are one mark")
	alike := seams(mask(layer("L1", "800.2 mm", "1199.8 mm"), layer("L2", "800.2 mm", "1199.8 mm")))
	require.Len(t, alike, 1)
	assert.Empty(t, alike[0].Layer)
}

// A room of which the two usual middles differ says where both are, and which is
// taken; one where they are within a mark of each other says nothing.
func TestTwoMiddlesOfARoom(t *testing.T) {
	lines := func(cd string) sheet.Sheet {
		return measured(t, map[string]any{"form": "lines", "readings": []any{
			reading("AB", "4115 mm", ""), reading("BC", "3048 mm", ""), reading("CD", cd, ""), reading("DA", "3061 mm", ""), reading("AC", "5120 mm", "")}})
	}
	s := lines("4102 mm")
	assert.InDelta(t, 4.994255e6, value(t, s, "room.middles"), 3)
	assert.Contains(t, s.Survey.Text, "The diagonals cross")
	assert.Contains(t, s.Survey.Text, "the plan takes the second")
	s = sheetNamed(t, "even-grid")
	assert.NotContains(t, s.Survey.Text, "The diagonals cross")
	for _, f := range s.Figures {
		assert.NotEqual(t, "room.middles", f.ID)
	}
}
