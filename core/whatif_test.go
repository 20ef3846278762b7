package core_test

import (
	"encoding/json"
	"slices"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/sheet"
)

// tree is a plan as a tree, to be changed and written again.
func tree(t *testing.T, plan []byte) map[string]any {
	t.Helper()
	var tree map[string]any
	require.NoError(t, json.Unmarshal(plan, &tree))
	return tree
}

func sheetOfTree(t *testing.T, tree map[string]any) sheet.Sheet {
	t.Helper()
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return sheetOf(t, text)
}

// whatIf is the price with one thing changed, by its name.
func whatIf(t *testing.T, s sheet.Sheet, what string) sheet.WhatIf {
	t.Helper()
	for _, w := range s.Price.WhatIf {
		if w.What == what {
			return w
		}
	}
	require.Fail(t, "no "+what, "%v", s.Price.WhatIf)
	return sheet.WhatIf{}
}

// without leaves out the steps for which gone is true.
func without(plan map[string]any, gone func(step map[string]any) bool) {
	finish := plan["finish"].(map[string]any)
	finish["steps"] = slices.DeleteFunc(finish["steps"].([]any), func(step any) bool { return gone(step.(map[string]any)) })
}

// What a change is said to cost is what the plan costs once it is made.
func TestWhatIfIsThePriceOfTheChangedPlan(t *testing.T) {
	s := priced(t, nil)
	agrees := func(what string, changed map[string]any) {
		w, now := whatIf(t, s, what), sheetOfTree(t, changed)
		assert.Equal(t, text(t, now, "price.total"), w.Sum, what)
		difference := decimal.RequireFromString(figures(now)["price.total"].Value).Sub(decimal.RequireFromString(figures(s)["price.total"].Value))
		assert.Equal(t, difference.Abs().StringFixed(2)+" GBP", w.Change[len(w.Change)-len(difference.Abs().StringFixed(2)+" GBP"):], what)
		assert.Equal(t, difference.Sign() > 0, w.Change[0] == '+', what)
		assert.NotEmpty(t, w.Text, what)
	}

	plan := tree(t, planNamed(t, "priced"))
	mask := plan["mask"].(map[string]any)
	mask["layers"] = mask["layers"].([]any)[:1]
	without(plan, func(step map[string]any) bool { return step["layer"] == "L2" })
	agrees("One layer less", plan)
	assert.Contains(t, whatIf(t, s, "One layer less").Text, "Done on "+text(t, sheetOfTree(t, plan), "days.finish")+", ")

	plan = tree(t, planNamed(t, "priced"))
	without(plan, func(step map[string]any) bool { return step["kind"] == "leaf" || step["kind"] == "size" })
	agrees("Without “Imitation leaf”", plan)

	plan = tree(t, planNamed(t, "priced"))
	plan["days"].(map[string]any)["people"] = "1"
	s = sheetOfTree(t, plan)
	agrees("One person more", tree(t, planNamed(t, "priced")))
	s = priced(t, nil)

	// The borders wanted make the mask to order; prices of panels go by its area,
	// against 189 × 135½ in as it is.
	plan = tree(t, planNamed(t, "priced"))
	mask = plan["mask"].(map[string]any)
	mask["length"], mask["width"] = text(t, s, "order.length"), text(t, s, "order.width")
	ratio := decimal.NewFromFloat(value(t, s, "order.length") * value(t, s, "order.width")).Div(decimal.NewFromFloat(189 * inch * 135.5 * inch))
	for _, layer := range mask["layers"].([]any) {
		layer := layer.(map[string]any)
		layer["price"] = decimal.RequireFromString(layer["price"].(string)).Mul(ratio).StringFixed(2)
	}
	agrees("The borders you want", plan)
}

func TestWiderBorderWhereNoneIsWanted(t *testing.T) {
	s := priced(t, map[string]any{"/setting/wantEnds": "", "/setting/wantSides": ""})
	w := whatIf(t, s, "A border 4″ wider all round")
	assert.Contains(t, w.Text, "A mask of 15′ 1″ × 10′ 7½″", "15′ 9″ × 11′ 3½″ less 8″")
	assert.Contains(t, w.Change, "−", "a smaller mask costs less")
}

func TestLeafOfAnotherMetal(t *testing.T) {
	plan := tree(t, planNamed(t, "priced"))
	finish := plan["finish"].(map[string]any)
	steps := finish["steps"].([]any)
	var gold map[string]any
	for _, step := range steps {
		if step := step.(map[string]any); step["kind"] == "leaf" {
			text, err := json.Marshal(step)
			require.NoError(t, err)
			require.NoError(t, json.Unmarshal(text, &gold))
		}
	}
	leaf := gold["leaf"].(map[string]any)
	gold["id"], gold["name"], gold["area"], gold["typedArea"], gold["typedUnit"] = "gold", "Gold band", "typed", "4", "ft2"
	leaf["metal"], leaf["length"], leaf["width"], leaf["lap"], leaf["pricePerBook"], leaf["pricePerPack"] = "gold", "3 3/8\"", "3 3/8\"", "1/8\"", "41", ""
	finish["steps"] = append(steps, gold)
	w := whatIf(t, sheetOfTree(t, plan), "“Imitation leaf” in gold")
	for _, step := range steps {
		if step := step.(map[string]any); step["id"] == "leaf" {
			laid := step["leaf"].(map[string]any)
			for _, blank := range []string{"metal", "length", "width", "lap", "perBook", "booksPerPack", "pricePerBook", "pricePerPack"} {
				laid[blank] = leaf[blank]
			}
		}
	}
	assert.Equal(t, text(t, sheetOfTree(t, plan), "price.total"), w.Sum)
}

// A layer that only its leaf goes through is of no use without it.
func TestWithoutTheOnlyLeafOfALayer(t *testing.T) {
	onlyLeaf := func() map[string]any {
		plan := tree(t, planNamed(t, "priced"))
		without(plan, func(step map[string]any) bool { return step["id"] == "under" })
		return plan
	}
	for _, w := range sheetOfTree(t, onlyLeaf()).Price.WhatIf {
		assert.NotEqual(t, "Without “Imitation leaf”", w.What, "one layer less says the same")
	}
	plan := onlyLeaf()
	mask := plan["mask"].(map[string]any)
	mask["layers"] = mask["layers"].([]any)[1:]
	without(plan, func(step map[string]any) bool { return step["layer"] == "L1" })
	w := whatIf(t, sheetOfTree(t, plan), "Without “Imitation leaf”")
	assert.Contains(t, w.Text, "nor “Second layer”, which nothing else goes through.")
	mask["layers"] = []any{}
	without(plan, func(step map[string]any) bool { return step["kind"] == "leaf" || step["kind"] == "size" })
	assert.Equal(t, text(t, sheetOfTree(t, plan), "price.total"), w.Sum)
}
