package core_test

import (
	"encoding/json"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/problem"
)

// workedExample is the example that the page begins with.
func workedExample(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../site/example.plan.json")
	require.NoError(t, err)
	return text
}

type fitting struct {
	Said   string
	Writes []struct{ At, Text string }
	Out    []string
}

func fittingOf(t testing.TB, made, now []byte) fitting {
	t.Helper()
	var f fitting
	require.NoError(t, json.Unmarshal(core.OtherRoom(made, now), &f))
	return f
}

// fitted is a plan with a fitting done, as the page does it.
func fitted(plan []byte, f fitting) []byte {
	for _, w := range f.Writes {
		plan = edited(plan, w.At, w.Text)
	}
	for _, at := range slices.Backward(f.Out) {
		plan = edited(plan, at, nil)
	}
	return plan
}

// edited is a plan with a text put at a pointer, or with nil the entry of a list
// taken out.
func edited(plan []byte, at string, value any) []byte {
	var tree any
	if err := json.Unmarshal(plan, &tree); err != nil {
		panic(err)
	}
	steps := strings.Split(at[1:], "/")
	tree = editedTree(tree, steps, value)
	text, err := json.Marshal(tree)
	if err != nil {
		panic(err)
	}
	return text
}

func editedTree(tree any, steps []string, value any) any {
	if len(steps) == 0 {
		return value
	}
	switch tree := tree.(type) {
	case []any:
		i, err := strconv.Atoi(steps[0])
		if err != nil {
			panic(err)
		}
		if len(steps) == 1 && value == nil {
			return slices.Delete(tree, i, i+1)
		}
		tree[i] = editedTree(tree[i], steps[1:], value)
	case map[string]any:
		tree[steps[0]] = editedTree(tree[steps[0]], steps[1:], value)
	}
	return tree
}

// stops are what must be put right on the sheet of a plan.
func stops(t testing.TB, plan []byte) (said []string) {
	t.Helper()
	for _, p := range sheetOf(t, plan).Problems {
		if p.Severity == problem.Stop && !strings.HasSuffix(p.At, "/openHours") {
			said = append(said, p.At+" "+p.What)
		}
	}
	return said
}

// The example's room is 19′ 6½″ by 14′ 9″, its mask 16′ 2″ by 11′ 10″. In a room
// of 22′ the mask is 16′ 2″ × 264 ÷ 234½ = 218.4, so 18′ 2″; the piano, 5′ long at
// 14′ of 14′ 6½″ free, stands at 168 × (264 − 60) ÷ (234½ − 60) = 196.4, so 16′ 4″.
func TestTheExampleInAnotherRoom(t *testing.T) {
	example := workedExample(t)
	longer := edited(example, "/room/length", "22'")
	assert.NotEmpty(t, stops(t, edited(example, "/room/length", "12'")), "left as it is, it contradicts itself")
	f := fittingOf(t, example, longer)
	assert.Equal(t, "The example is fitted to this room: its mask is sized to it, what is on the ceiling and the floor is moved, the piece “Window side” and the diagonals are left out.", f.Said)
	written := map[string]string{}
	for _, w := range f.Writes {
		written[w.At] = w.Text
	}
	assert.Equal(t, "18' 2\"", written["/mask/length"])
	assert.Equal(t, "16' 4\"", written["/room/furniture/0/fromDA"])
	assert.NotContains(t, written, "/mask/width", "the width is as it was")
	assert.NotContains(t, written, "/room/furniture/0/fromAB")
	assert.Equal(t, "", written["/room/diagonalAC"])
	assert.Equal(t, []string{"/mask/layers/1/pieces/0"}, f.Out)
	first := fitted(example, fitting{})
	assert.JSONEq(t, string(example), string(first))
	longer = fitted(longer, f)
	assert.Empty(t, stops(t, longer))

	// Then the width: what was fitted before is the example's still.
	wider := edited(longer, "/room/width", "12'")
	g := fittingOf(t, longer, wider)
	assert.Equal(t, "The example is fitted to this room: its mask is sized to it, what is on the ceiling and the floor is moved.", g.Said)
	assert.Empty(t, stops(t, fitted(wider, g)))

	// What was typed since is its owner's, and stays.
	own := edited(edited(example, "/room/length", "22'"), "/mask/length", "17'")
	own = edited(own, "/room/obstructions/1/fromDA", "20'")
	for _, w := range fittingOf(t, example, own).Writes {
		assert.NotEqual(t, "/mask/length", w.At)
		assert.NotEqual(t, "/room/obstructions/1/fromDA", w.At)
	}

	// Nothing follows from the same room, one that cannot be read, or of another form.
	for _, now := range [][]byte{example, edited(example, "/room/length", "19.5417 yards or so"), edited(example, "/room/length", "12"),
		edited(example, "/room/form", "walls"), []byte("no plan")} {
		assert.Equal(t, fitting{Writes: []struct{ At, Text string }{}, Out: []string{}}, fittingOf(t, example, now))
	}
}

// In any room from a closet to a hall the example, fitted to it, has nothing to
// put right: in feet and in metres, one side changed after the other.
func TestTheExampleFitsAnyRoom(t *testing.T) {
	t.Parallel()
	example := workedExample(t)
	metric := edited(edited(example, "/units/show", "metric"), "/units/bare", "mm")
	for _, room := range [][2]string{{"22'", "14' 9\""}, {"9'", "7'"}, {"40'", "12'"}, {"6'", "30'"}, {"5'", "5'"}, {"60'", "60'"}, {"8' 1/16\"", "11' 7 5/8\""}} {
		checkRoom(t, example, room[0], room[1])
	}
	for _, room := range [][2]string{{"5 m", "4 m"}, {"3250", "2810"}, {"1999", "7001"}, {"18 m", "9.5 m"}} {
		checkRoom(t, metric, room[0], room[1])
	}
}

func checkRoom(t *testing.T, example []byte, length, width string) {
	t.Helper()
	made := example
	for _, side := range [][2]string{{"/room/length", length}, {"/room/width", width}} {
		now := edited(made, side[0], side[1])
		now = fitted(now, fittingOf(t, made, now))
		for _, p := range core.SheetOf(now).Problems {
			// How long a size stays open is no matter of the room alone.
			ofRoom := p.Severity == problem.Stop && !strings.HasSuffix(p.At, "/openHours")
			require.False(t, ofRoom, "%s by %s: %s %s", length, width, p.At, p.What)
		}
		made = now
	}
}
