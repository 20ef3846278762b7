package core_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// stuck are the remarks on paint that is young when a mask is stuck to it.
func stuck(s sheet.Sheet) (found []sheet.Problem) {
	for _, p := range s.Problems {
		if strings.Contains(p.What, "is stuck to") {
			found = append(found, p)
		}
	}
	return found
}

// Advice on tape over new paint runs from 24 h (a decal seller's page, delicate
// tape) to 30 days; trade notes let water paint cure in 14 to 30 days and oil in
// 3 to 7. The gates of a day, a week and two weeks are common practice, no
// source.
func TestYoungPaintUnderAMaskIsPointedOut(t *testing.T) {
	age := func(days string) map[string]any {
		return map[string]any{"/days/freshPaint": map[string]any{"doneOn": "", "filmAge": days}}
	}
	s := dated(t, age("0"))
	found := stuck(s)
	require.Len(t, found, 2, "one for each layer: %v", found)
	assert.Equal(t, problem.Stop, found[0].Severity)
	assert.Contains(t, found[0].What, "“First layer” is stuck to “Base coat”")
	assert.Contains(t, found[0].What, " hours after its last coat")
	assert.Contains(t, found[0].Do, "a day at least")
	assert.Contains(t, found[1].What, "“Second layer” is stuck to “Grey through the first layer”")

	for _, days := range []string{"1", "3", "14"} {
		assert.Empty(t, stuck(dated(t, age(days))), "the calendar keeps %s days", days)
	}
	// A day off between the base and the mask: no tape is refused any more, and the
	// two weeks are told.
	places := age("")
	places["/days/off"] = []string{"2027-03-24"}
	places["/finish/steps/1/dryHours"] = "30"
	places["/finish/steps/2/dryHours"] = "30"
	found = stuck(dated(t, places))
	require.NotEmpty(t, found)
	assert.Equal(t, problem.Caution, found[0].Severity)
	assert.Contains(t, found[0].What, " days after its last coat. Water paint is counted on to hold a mask after two weeks")
	places["/finish/steps/1/binder"] = "drying-oil"
	places["/finish/steps/2/binder"] = "solvent"
	found = stuck(dated(t, places))
	require.NotEmpty(t, found)
	assert.Contains(t, found[0].What, "Oil paint is counted on to hold a mask after a week.")
}

// Paint in the border lies beside the masks, and none is stuck to it.
func TestPaintInTheBorderIsNotUnderTheMask(t *testing.T) {
	places := map[string]any{"/days/freshPaint": nil, "/finish/steps/1/area": "border"}
	for _, p := range stuck(dated(t, places)) {
		assert.NotEqual(t, "/finish/steps/1", p.At)
	}
}
