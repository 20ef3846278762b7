package core_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core"
	"ceilingwright/core/finish"
	"ceilingwright/core/problem"
)

func startingSteps(t *testing.T, what string, plan []byte) []map[string]any {
	t.Helper()
	var steps []map[string]any
	require.NoError(t, json.Unmarshal(core.Starting(what, plan), &steps))
	return steps
}

// stepBlanks are the names of all blanks of a step and of its leaf, as the
// schema of the plan has them.
func stepBlanks(t *testing.T) (step, leaf []string) {
	t.Helper()
	text, err := os.ReadFile("plan/plan.schema.json")
	require.NoError(t, err)
	type fields map[string]json.RawMessage
	var schema struct {
		Defs struct {
			Step struct{ Properties fields } `json:"step"`
		} `json:"$defs"`
	}
	require.NoError(t, json.Unmarshal(text, &schema))
	var inLeaf struct{ Properties fields }
	require.NoError(t, json.Unmarshal(schema.Defs.Step.Properties["leaf"], &inLeaf))
	for name := range schema.Defs.Step.Properties {
		step = append(step, name)
	}
	for name := range inLeaf.Properties {
		leaf = append(leaf, name)
	}
	require.Greater(t, len(step), 40)
	require.Greater(t, len(leaf), 10)
	return step, leaf
}

func everyStart() []string {
	var all []string
	for _, s := range finish.Sets() {
		all = append(all, string(s))
	}
	for _, k := range finish.Kinds() {
		all = append(all, string(k))
	}
	return all
}

func TestStartingStepsHaveEveryBlankOfAStep(t *testing.T) {
	want, leafWant := stepBlanks(t)
	for _, what := range everyStart() {
		steps := startingSteps(t, what, planNamed(t, "full"))
		require.NotEmpty(t, steps, what)
		for _, step := range steps {
			assert.ElementsMatch(t, want, keysOf(step), what)
			if leaf, ok := step["leaf"].(map[string]any); ok {
				assert.Equal(t, "leaf", step["kind"])
				assert.ElementsMatch(t, leafWant, keysOf(leaf), what)
			}
		}
	}
}

func keysOf(m map[string]any) []string {
	var keys []string
	for key := range m {
		keys = append(keys, key)
	}
	return keys
}

// A step is put into a plan as it is and must be read without a refusal but of
// the blanks that nobody can know: how long the edges are, how wide the wall.
func TestStartingStepsAreReadWhole(t *testing.T) {
	t.Parallel()
	unknown := []string{"edgeLength", "typedArea"}
	for _, name := range []string{"full", "metric", "imperial-gallon"} {
		for _, what := range everyStart() {
			plan := planNamed(t, name)
			var tree map[string]any
			require.NoError(t, json.Unmarshal(plan, &tree))
			into := tree["finish"].(map[string]any)
			there := into["steps"].([]any)
			added := startingSteps(t, what, plan)
			for _, step := range added {
				into["steps"] = append(into["steps"].([]any), step)
			}
			text, err := json.Marshal(tree)
			require.NoError(t, err)
			got := sheetOf(t, text)
			require.Len(t, got.Steps, len(there)+len(added))
			for i, step := range added {
				assert.Equal(t, step["id"], got.Steps[len(there)+i].ID, "an id is taken")
			}
			for _, p := range got.Problems {
				at := strings.Split(p.At, "/")
				ours := strings.HasPrefix(p.At, "/finish/steps/") && len(at) > 4 && !slices.Contains([]string{"layer", "cans"}, at[4])
				if p.Severity == problem.Stop && ours && atLeast(at[3], len(there)) {
					assert.Contains(t, unknown, at[4], "%s in %s: %s", what, name, p.What)
				}
			}
		}
	}
}

func atLeast(digits string, n int) bool {
	var i int
	return json.Unmarshal([]byte(digits), &i) == nil && i >= n
}

func kindsOf(steps []map[string]any) (kinds []string) {
	for _, step := range steps {
		kinds = append(kinds, step["kind"].(string))
	}
	return kinds
}

func TestStartingSets(t *testing.T) {
	full := planNamed(t, "full")
	assert.Equal(t, []string{"protect", "base", "edge-seal", "coat", "peel"}, kindsOf(startingSteps(t, "one-layer", full)))
	assert.Equal(t, []string{"base", "edge-seal", "coat", "peel"}, kindsOf(startingSteps(t, "wall-band", full)))
	gilt := startingSteps(t, "leaf-and-glaze", full)
	assert.Equal(t, []string{"protect", "base", "edge-seal", "coat", "peel", "clear-seal", "underpaint", "size", "leaf", "peel", "glaze"}, kindsOf(gilt))
	assert.Equal(t, "L1", gilt[3]["layer"])
	assert.Equal(t, "Coat, First layer", gilt[3]["name"])
	assert.Equal(t, "L2", gilt[8]["layer"])
	assert.Equal(t, "", gilt[10]["layer"])
	// Imitation leaf is sealed below and above: nothing to remark.
	for _, p := range sheetOf(t, changed(t, full, "/finish/steps", asList(gilt))).Problems {
		assert.False(t, strings.HasSuffix(p.At, "/leaf/metal"), p.What)
	}
}

func asList(steps []map[string]any) (list []any) {
	for _, step := range steps {
		list = append(list, step)
	}
	return list
}

// The two unlike peels of one set have ids of their own.
func TestStartingIDsAreFree(t *testing.T) {
	plan := changed(t, planNamed(t, "full"), "/finish/steps", []any{map[string]any{"id": "base1", "kind": "base"}, map[string]any{"id": "peel2", "kind": "peel"}})
	assert.Equal(t, "base2", startingSteps(t, "base", plan)[0]["id"])
	gilt := startingSteps(t, "leaf-and-glaze", plan)
	assert.Equal(t, "peel1", gilt[4]["id"])
	assert.Equal(t, "peel3", gilt[9]["id"])
}

func TestStartingFollowsTheNotation(t *testing.T) {
	for name, want := range map[string][]any{
		"full":            {"375", "ft2/gal", "mil", `1"`, `5 1/2"`},
		"metric":          {"9.2", "m2/L", "um", "25 mm", "140 mm"},
		"imperial-gallon": {"9.2", "m2/L", "", "", ""},
	} {
		plan := planNamed(t, name)
		base, edge, leaf := startingSteps(t, "base", plan)[0], startingSteps(t, "edge-seal", plan)[0], startingSteps(t, "leaf", plan)[0]
		assert.Equal(t, want[0], base["spread"], name)
		assert.Equal(t, want[1], base["spreadUnit"], name)
		if want[2] != "" {
			assert.Equal(t, want[2], base["filmUnit"], name)
			assert.Equal(t, want[3], edge["brushWidth"], name)
			assert.Equal(t, want[4], leaf["leaf"].(map[string]any)["length"], name)
		}
	}
}

// A step by itself goes on where the work is: with the layer named last.
func TestStartingGoesOnWithTheLayer(t *testing.T) {
	full := planNamed(t, "full")
	none := changed(t, full, "/finish/steps", []any{})
	assert.Equal(t, "L1", startingSteps(t, "coat", none)[0]["layer"])
	second := changed(t, full, "/finish/steps", []any{map[string]any{"id": "a", "kind": "coat", "layer": "L2"}, map[string]any{"id": "b", "kind": "base"}})
	assert.Equal(t, "L2", startingSteps(t, "leaf", second)[0]["layer"])
	assert.Equal(t, "", startingSteps(t, "base", second)[0]["layer"])
	assert.Equal(t, "", startingSteps(t, "coat", []byte("{}"))[0]["layer"])
}

func TestStartingWallsTakeTheWallsOfThePlan(t *testing.T) {
	full := planNamed(t, "full")
	assert.Equal(t, "typed", startingSteps(t, "wall-band", full)[0]["area"])
	var tree map[string]any
	require.NoError(t, json.Unmarshal(full, &tree))
	tree["finish"].(map[string]any)["surfaces"] = []any{map[string]any{"id": "c", "kind": "cornice"}, map[string]any{"id": "w", "kind": "walls"}}
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	ground := startingSteps(t, "wall-band", text)[0]
	assert.Equal(t, "surface-of", ground["area"])
	assert.Equal(t, "w", ground["surface"])
}

func TestStartingOfNothing(t *testing.T) {
	for _, what := range []string{"", "two-layers", "Base", "[", "base "} {
		assert.Equal(t, "[]", string(core.Starting(what, planNamed(t, "full"))), what)
	}
	for _, text := range []string{"", "no plan", "{}", `{"ceilingwright":99}`} {
		assert.Len(t, startingSteps(t, "one-layer", []byte(text)), 5, text)
	}
	for name, text := range kept(t, "hostile") {
		assert.True(t, json.Valid(core.Starting("leaf-and-glaze", text)), name)
	}
}
