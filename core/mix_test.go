package core_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// mixed is the sheet of the plan of mixes with places changed, and one step of
// it.
func mixed(t *testing.T, step int, places map[string]any) (sheet.Sheet, sheet.Step) {
	t.Helper()
	plan := planNamed(t, "mixes")
	for at, value := range places {
		plan = changed(t, plan, at, value)
	}
	s := sheetOf(t, plan)
	require.Len(t, s.Steps, 4)
	return s, s.Steps[step]
}

func lines(list []sheet.MixLine) (texts []string) {
	for _, l := range list {
		texts = append(texts, l.Name+": "+l.Exact+" = "+l.Measured)
	}
	return texts
}

func boughtOf(s sheet.Sheet, what string) string {
	for _, p := range s.Shopping {
		if p.What == what {
			return p.Amount
		}
	}
	return ""
}

// A page on glazing textured walls, and a decorator's notes: 450 ft² twice at
// 600 ft²/gal and a tenth more are 1.65 gal at 1 : 4, 0.33 of paint and 1.32 of
// glaze. A quarter of paint would be 0.4125, a darker mix.
func TestGlazeOfFourToOne(t *testing.T) {
	s, walls := mixed(t, 1, nil)
	assert.InDelta(t, 1.65*usGal, value(t, s, "step.walls.made"), 1e-11)
	assert.InDelta(t, 1.5*usGal, value(t, s, "step.walls.product"), 1e-11)
	assert.Equal(t, "1.65 gal", text(t, s, "step.walls.made"))
	// 0.33 gal are 42.24 fl oz = 1 qt + 1 cup + 2 fl oz + 1.44 tsp.
	assert.Equal(t, []string{"paint, dark red: 42.24 fl oz = 1 qt + 1 cup + 2 fl oz + 1 1/2 tsp", "glaze medium: 1.32 gal = 5 qt + 1 cup + 5 3/4 tsp"}, lines(walls.Mix))
	assert.Equal(t, []string{"paint, dark red: 4.8 tsp = 4 3/4 tsp", "glaze medium: 3.2 fl oz = 3 fl oz + 1 1/4 tsp"}, lines(walls.Sample), "a sample board of 4 fl oz")
	// The cans hold the glaze medium, the paint has to be at hand.
	assert.Equal(t, "1 × 1 gal + 2 × 1 qt", boughtOf(s, "glaze medium, for “Wall glaze, four to one”"))
	assert.Equal(t, "43.1 fl oz", boughtOf(s, "paint, dark red"), "42.24 and that of the sample board, 0.8 fl oz, up to a tenth")
	assert.Contains(t, strings.Join(walls.Notes, " "), "80 % of the mix")
	assert.NotContains(t, strings.Join(walls.Notes, " "), "as is usual")
}

func TestMixWithoutAKitIsMeasuredAsUsual(t *testing.T) {
	_, walls := mixed(t, 1, map[string]any{"/finish/kit": []any{}})
	assert.Equal(t, "paint, dark red: 42.24 fl oz = 1 qt + 1 cup + 2 fl oz + 1 1/2 tsp", lines(walls.Mix)[0])
	assert.Contains(t, strings.Join(walls.Notes, " "), "Measured down to 1/8 tsp, as is usual.")
	_, pearl := mixed(t, 2, map[string]any{"/finish/kit": []any{}})
	assert.Contains(t, strings.Join(pearl.Notes, " "), "Measured down to 1/8 tsp, 1 g, as is usual.")
	assert.Equal(t, "79 g", pearl.Mix[1].Measured)
}

// 60 g of 2.8 g/mL are 21.43 mL, 5 % of 946.35 + 21.43 + 44.36 mL are 50.61 mL:
// worked. All of it is scaled to what 130 ft² at 400 ft²/gal and 12 % loss take,
// 0.3693 gal = 1397.9 mL, 1.3153 times the recipe of 1062.75 mL.
func TestMixOfWeightAndPerCent(t *testing.T) {
	s, pearl := mixed(t, 2, nil)
	assert.InDelta(t, 1.06275, value(t, s, "step.pearl.mix"), 5e-6)
	assert.Equal(t, []string{"clear medium", "mica powder", "water", "raw umber"}, []string{pearl.Mix[0].Name, pearl.Mix[1].Name, pearl.Mix[2].Name, pearl.Mix[3].Name})
	assert.Equal(t, "78.9 g", pearl.Mix[1].Exact)
	assert.Equal(t, "80 g", pearl.Mix[1].Measured, "a scale of 5 g")
	assert.Equal(t, "1.4 % too much", pearl.Mix[1].Error)
	assert.Equal(t, "2.25 fl oz", pearl.Mix[2].Exact)
	// One name, two steps: 1.97 fl oz and 0.73 tsp.
	assert.Equal(t, "2.1 fl oz", boughtOf(s, "raw umber"))
	assert.Empty(t, boughtOf(s, "water"), "water is not bought")
}

func TestMixPointsToWhatIsWrong(t *testing.T) {
	for _, c := range []struct {
		at       string
		value    any
		told     string
		severity problem.Severity
		says     string
	}{
		{"/finish/steps/2/mix/1/density", "", "/finish/steps/2/mix/1/density", problem.Stop, "its density is not given"},
		{"/finish/steps/2/mix/1/density", "0", "/finish/steps/2/mix/1/density", problem.Stop, ""},
		{"/finish/steps/2/mix/3/amount", "6", "/finish/steps/2/mix", problem.Caution, "may never dry"},
		{"/finish/steps/2/mix/3/amount", "2", "/finish/steps/2/mix", problem.Caution, "dries slowly"},
		{"/finish/steps/1/mix/0/amount", "0.5", "/finish/steps/1/mix", problem.Note, "8 parts of glaze to one of paint"},
		{"/finish/steps/3/mix/2/amount", "0.02", "/finish/steps/3/mix/2/amount", problem.Caution, "less than can be measured"},
		{"/finish/steps/1/mix/0/amount", "a splash", "/finish/steps/1/mix/0/amount", problem.Stop, ""},
	} {
		s, _ := mixed(t, 0, map[string]any{c.at: c.value})
		assert.True(t, slices.ContainsFunc(s.Problems, func(p sheet.Problem) bool {
			return p.At == c.told && p.Severity == c.severity && strings.Contains(p.What, c.says)
		}), "%s %v: nothing at %s", c.at, c.value, c.told)
	}
	// One part that cannot be read would change the shares of all others.
	s, walls := mixed(t, 1, map[string]any{"/finish/steps/1/mix/0/amount": "a splash"})
	assert.Empty(t, walls.Mix)
	assert.NotContains(t, figures(s), "step.walls.mix")
	assert.NotEmpty(t, walls.Label)
	assert.Contains(t, walls.Notes, "The mix cannot be worked out yet, so the cans are counted as if nothing were mixed in.")
	// A part that is not marked is no tint.
	s, _ = mixed(t, 2, map[string]any{"/finish/steps/2/mix/3/amount": "6", "/finish/steps/2/mix/3/tint": "no"})
	assert.Empty(t, stopsAt(s, "/finish/steps/2/mix"))
}

func TestMixWithTooSmallAJug(t *testing.T) {
	_, walls := mixed(t, 1, map[string]any{"/finish/kit": []any{map[string]any{"size": "1", "unit": "floz"}}})
	assert.Equal(t, "42 fl oz", walls.Mix[0].Measured)
	assert.Contains(t, strings.Join(walls.Notes, " "), "For “glaze medium” one measure is filled 169 times")
	// A spoon of nothing measurable is left for what is usual.
	_, walls = mixed(t, 1, map[string]any{"/finish/kit": []any{map[string]any{"size": "0.000000001", "unit": "tsp"}}})
	assert.Equal(t, "1 qt + 1 cup + 2 fl oz + 1 1/2 tsp", walls.Mix[0].Measured)
}

func TestMixInMillilitresAndImperialOunces(t *testing.T) {
	_, walls := mixed(t, 1, map[string]any{"/units/show": "metric", "/finish/kit": []any{},
		"/finish/steps/1/mix": []any{map[string]any{"name": "paint", "amount": "1", "unit": "L"}, map[string]any{"name": "medium", "amount": "4000", "unit": "mL"}}})
	// 1.65 US gal are 6.245929 L: 1.249186 and 4.996744 L.
	assert.Equal(t, []string{"paint: 1.249 L = 1 L + 249 mL", "medium: 4.997 L = 4 L + 996.5 mL"}, lines(walls.Mix))
	_, walls = mixed(t, 1, map[string]any{"/units/gallon": "imperial", "/finish/kit": []any{}})
	// Of the imperial gallon, 160 fl oz (NIST Handbook 44, appendix C): 0.33 are
	// 52.8 fl oz = 1 qt of 40, 12 fl oz and 0.8 fl oz = 22.73 mL.
	assert.Equal(t, "paint, dark red: 52.8 imp fl oz = 1 imp qt + 12 imp fl oz + 22.5 mL", lines(walls.Mix)[0])
}

// A plasterer's notes, spring 2009: 60 ft² of raised stencil, 35 % open and
// 1/16 in high, are 189 in³ = 104.7 fl oz. A decorator's notes, 2010: in batches of
// 16 fl oz, of which one is put on in 25 minutes, that are seven; of 20-minute
// compound it sets in the bucket, of 45-minute there are 20 minutes to spare.
// 16 fl oz cover 3.208 ft², so 25 minutes are 7.7 ft² an hour.
func TestRaisedStencilInBatchesThatSet(t *testing.T) {
	stencil := func(life string) (sheet.Sheet, sheet.Step) {
		step := paint(map[string]any{"typedArea": "21", "by": "wet", "film": "62.5", "rate": "7.7", "rateUnit": "ft2/h", "potLife": life,
			"mix": []any{map[string]any{"name": "setting compound", "amount": "16", "unit": "floz"}}})
		s := job(t, map[string]any{"/finish/steps": step})
		return s, s.Steps[0]
	}
	s, slow := stencil("45")
	assert.InDelta(t, 189.0/231*usGal, value(t, s, "step.p.product"), 1e-11)
	assert.Equal(t, "7", text(t, s, "step.p.batches"))
	assert.Equal(t, "25 min", text(t, s, "step.p.placing"))
	assert.Contains(t, strings.Join(slow.Notes, " "), "with 20 min to spare")
	assert.Contains(t, figures(s)["step.p.batches"].Working.Rule, "make each when the one before is used up")
	s, quick := stencil("20")
	assert.Contains(t, stopsAt(s, "/finish/steps/0/potLife"), "takes 25 minutes to put on and stays workable for 20")
	assert.Contains(t, strings.Join(quick.Notes, " "), "Mix at most 12.8 fl oz at a time, in 9 batches.")
	s, _ = stencil("")
	assert.NotContains(t, figures(s), "step.p.placing")
}

// Two steps of one mix are mixed in one pail and bought together, with what is to
// be kept: 1.5 gal and the need of the ground, a tenth to spare, and a quart.
func TestOneMixForTwoSteps(t *testing.T) {
	s, walls := mixed(t, 1, map[string]any{"/finish/steps/1/keep": "1", "/finish/steps/1/keepUnit": "qt",
		"/finish/steps/3/mix": []any{}, "/finish/steps/3/kind": "glaze", "/finish/steps/3/sameAs": "walls"})
	both := (value(t, s, "step.walls.product")+value(t, s, "step.varnish.product"))*1.1 + usGal/4
	assert.InDelta(t, both, value(t, s, "step.walls.made"), 1e-9)
	assert.Equal(t, "1.50 gal × (1 + 10 %) + 0.45 gal × (1 + 10 %) + 0.25 gal to keep = "+text(t, s, "step.walls.made"), figures(s)["step.walls.made"].Working.Sum)
	assert.Len(t, walls.Mix, 2)
	other := s.Steps[3]
	assert.Empty(t, other.Mix)
	assert.Contains(t, other.Notes, "Mixed together with “Wall glaze, four to one”.")
	// The cans hold the medium of all of it and of the sample board: four fifths of
	// 2.4 gal and 4 fl oz are 1.945 gal, to the even digit 1.94.
	assert.InDelta(t, 2.4*usGal, both, 1e-9)
	for _, p := range s.Shopping {
		if p.What == "glaze medium, for “Wall glaze, four to one”" {
			assert.True(t, strings.HasPrefix(p.Detail, "1.94 gal needed"), p.Detail)
		}
		assert.NotContains(t, p.What, "Oil varnish")
	}
	// A step with a recipe of its own, made of what another is bought for, mixes
	// that and buys its main part with it.
	s, _ = mixed(t, 1, map[string]any{"/finish/steps/3/sameAs": "walls"})
	assert.Len(t, s.Steps[3].Mix, 3)
	assert.Empty(t, boughtOf(s, "varnish"))
}

// What a step without a recipe of its own keeps, spares and tries out of another's
// mix is mixed and bought with it: 1.5 gal and a tenth, 0.45 and a fifth, a quart.
func TestKeptSparedAndTriedOfAnothersMix(t *testing.T) {
	s := job(t, map[string]any{"/finish/steps": steps(
		map[string]any{"id": "walls", "kind": "glaze", "typedArea": "600", "spread": "400", "spare": "10", "sample": "4", "sampleUnit": "floz", "cans": []any{can("1", "gal", "60")},
			"mix": []any{map[string]any{"name": "medium", "amount": "4", "unit": "cup"}, map[string]any{"name": "paint", "amount": "1", "unit": "cup"}}},
		map[string]any{"id": "niche", "kind": "glaze", "typedArea": "180", "spread": "400", "sameAs": "walls",
			"spare": "20", "keep": "1", "keepUnit": "qt", "sample": "4", "sampleUnit": "floz"})})
	made := value(t, s, "step.walls.product")*1.1 + value(t, s, "step.niche.product")*1.2 + usGal/4
	assert.InDelta(t, made, value(t, s, "step.walls.made"), 1e-9)
	assert.NotEmpty(t, s.Steps[0].Sample)
	assert.Equal(t, lines(s.Steps[0].Sample), lines(s.Steps[1].Sample))
	// Four fifths of it, and of two boards of 4 fl oz, come out of the cans.
	sum := workingOf(t, s, "step.walls.cans").Sum
	assert.Contains(t, sum, "1.50 gal × (1 + 10 %) × 80 % + 0.0312 gal × 80 % for the sample board + 0.45 gal × (1 + 20 %) × 80 %")
	assert.Contains(t, sum, " + 0.25 gal × 80 % to keep = 2.00 gal")
}

// 10 L of a mix whose recipe makes 4 L is two and a half times the recipe, not
// three whole batches: the cans hold what is mixed.
func TestCansFollowWhatIsMixed(t *testing.T) {
	mixing := func(life string) (sheet.Sheet, sheet.Step) {
		step := paint(map[string]any{"typedArea": "100", "typedUnit": "m2", "spread": "10", "spreadUnit": "m2/L", "loss": "0", "potLife": life, "cans": []any{can("1", "L", "12")},
			"mix": []any{map[string]any{"name": "medium", "amount": "3", "unit": "L"}, map[string]any{"name": "paint", "amount": "1", "unit": "L"}}})
		s := job(t, map[string]any{"/units/show": "metric", "/finish/steps": step})
		return s, s.Steps[0]
	}
	s, step := mixing("")
	assert.Equal(t, "2.5", text(t, s, "step.p.batches"))
	assert.Equal(t, "10.00 L ÷ 4.00 L = 2.5", workingOf(t, s, "step.p.batches").Sum)
	assert.Equal(t, []string{"medium: 7.5 L = 7 L + 500 mL", "paint: 2.5 L = 2 L + 500 mL"}, lines(step.Mix))
	assert.Equal(t, "8 × 1 L", step.Buy)
	assert.Equal(t, "10.00 L × 75 % = 7.50 L\n8 × 1 L = 8.00 L\n8 × 12.00 = 96.00", workingOf(t, s, "step.p.cans").Sum)
	// What sets in the pail is made in three, the last of 2 L: as much in all.
	s, step = mixing("45")
	assert.Equal(t, "3", text(t, s, "step.p.batches"))
	assert.Contains(t, workingOf(t, s, "step.p.batches").Rule, "the last batch is as small as what is left")
	assert.Equal(t, "8 × 1 L", step.Buy)
}

// One tint of the user's own, in his own ratio, is so much of what is in the can: 2
// per cent of 1 gal are 2.56 fl oz, of which 2.51 go into a gallon in all. Worked.
func TestOneTintOfTheCan(t *testing.T) {
	tinted := func(amount string) (sheet.Sheet, sheet.Step) {
		s := job(t, map[string]any{"/finish/steps": paint(map[string]any{"name": "Ground", "typedArea": "400", "spread": "400", "cans": []any{can("1", "gal", "60"), can("1", "qt", "20")},
			"mix": []any{map[string]any{"name": "burnt umber", "amount": amount, "unit": "%", "tint": "yes"}}})})
		return s, s.Steps[0]
	}
	s, step := tinted("2")
	assert.Empty(t, problemsAt(s, "/finish/steps/0/mix"))
	assert.Equal(t, []string{"burnt umber: 2.51 fl oz = 2 fl oz + 3 tsp", "paint from the can: 125.49 fl oz = 3 qt + 1 pt + 1 cup + 5 fl oz + 3 tsp"}, lines(step.Mix))
	assert.Equal(t, "1 × 1 gal", step.Buy)
	assert.Equal(t, "1.00 gal × 98.04 % = 0.98 gal\n1 × 1 gal = 1.00 gal\n1 × 60.00 = 60.00", workingOf(t, s, "step.p.cans").Sum)
	assert.Equal(t, "2.6 fl oz", boughtOf(s, "burnt umber"))
	assert.Equal(t, "1 × 1 gal", boughtOf(s, "Ground"))
	assert.NotContains(t, figures(s), "step.p.batches")
	// However much it is, there is nothing red that he could not clear.
	for _, amount := range []string{"0.001", "6", "15", "90"} {
		s, _ = tinted(amount)
		assert.Empty(t, stopsAt(s, "/finish/steps/0/mix"), amount)
		for _, p := range s.Problems {
			assert.False(t, p.Severity == problem.Stop && strings.HasPrefix(p.At, "/finish/steps/0/mix"), "%s: %s", amount, p.What)
		}
	}
}

// Recipes and spoons come in fractions.
func TestMixReadsFractions(t *testing.T) {
	decimals, _ := mixed(t, 2, nil)
	fractions, _ := mixed(t, 2, map[string]any{"/finish/steps/2/mix/3/amount": "1 1/2", "/finish/kit/4/size": "¼"})
	assert.Equal(t, decimals.Steps, fractions.Steps)
	// USDA kitchen table: a third of a cup is 5 tbsp and 1 tsp.
	_, third := mixed(t, 1, map[string]any{
		"/finish/kit":            []any{map[string]any{"size": "1", "unit": "tbsp"}, map[string]any{"size": "1", "unit": "tsp"}},
		"/finish/steps/1/sample": "1/3", "/finish/steps/1/sampleUnit": "cup",
		"/finish/steps/1/mix": []any{map[string]any{"name": "medium", "amount": "1", "unit": "cup"}}})
	assert.Equal(t, "5 tbsp + 1 tsp", third.Sample[0].Measured)
}

func TestLabelForThePot(t *testing.T) {
	s, walls := mixed(t, 1, map[string]any{"/finish/steps/1/binder": "solvent"})
	assert.Equal(t, []string{
		"Wall glaze, four to one",
		"Card room, the corner house",
		"paint, dark red: 1 qt + 1 cup + 2 fl oz + 1 1/2 tsp",
		"glaze medium: 5 qt + 1 cup + 5 3/4 tsp",
		"Together 1.65 gal",
		"Batch: __________  Made on: __________",
		"Thinned with solvent: keep from flames, and open a window. Keep with the product’s own sheet, and away from children.",
	}, walls.Label)
	assert.Equal(t, []string{
		"Yellow ground, Light yellow",
		"Card room, the corner house",
		"Batch: 0311  Made on: __________",
		"Thinned with water. VOC 45 g/L. Keep with the product’s own sheet, and away from children.",
	}, s.Steps[0].Label)
	assert.Contains(t, s.Steps[3].Label[len(s.Steps[3].Label)-1], "rags can catch fire")
	for _, step := range sheetNamed(t, "full").Steps {
		assert.Equal(t, step.Kind == "leaf" || step.Kind == "peel" || step.Kind == "protect", len(step.Label) == 0, step.ID)
	}
}

// The price has nothing for what is mixed in, and says so.
func TestWhatIsMixedInIsNotSilentlyFree(t *testing.T) {
	s := priced(t, nil)
	found := false
	for _, p := range s.Problems {
		found = found || p.At == "/price" && strings.Contains(p.What, "not in the price: raw umber.")
	}
	assert.True(t, found)
}
