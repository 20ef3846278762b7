package core_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// Tapes come off clean for 1, 3, 7, 14, 30 or 60 days (a general article on
// tapes): a mask the calendar leaves up for longer is pointed out, and one that
// is not, is not.
func TestMaskUpTooLongIsPointedOut(t *testing.T) {
	left := func(days string) (found []sheet.Problem) {
		s := dated(t, map[string]any{"/days/maskDays": days})
		for _, p := range s.Problems {
			if strings.Contains(p.What, " may stay up for ") {
				found = append(found, p)
			}
		}
		return found
	}
	for _, days := range []string{"", "30", "60"} {
		assert.Empty(t, left(days), days)
	}
	found := left("1")
	require.NotEmpty(t, found)
	for _, p := range found {
		assert.True(t, strings.HasPrefix(p.At, "/mask/layers/"), p.At)
		assert.Equal(t, problem.Caution, p.Severity)
	}
	assert.Contains(t, found[0].What, "The key ", "the panel kept up counts until the next layer is hung")
	hangs := hangsOf(dated(t, nil))
	assert.Contains(t, found[0].What, " to "+hangs[1].Day+" at "+hangs[1].From)
}

func hangsOf(s sheet.Sheet) (hangs []sheet.Task) {
	for _, task := range s.Days.Tasks {
		if task.Kind == "work" && strings.HasSuffix(task.ID, ".hang") {
			hangs = append(hangs, task)
		}
	}
	return hangs
}
