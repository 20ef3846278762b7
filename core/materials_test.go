package core_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
)

// steps are several steps of paint, each with a typed area of its own.
func steps(fields ...map[string]any) []any {
	var list []any
	for _, f := range fields {
		list = append(list, paint(f)...)
	}
	return list
}

func stepNamed(t *testing.T, s sheet.Sheet, id string) sheet.Step {
	t.Helper()
	for _, step := range s.Steps {
		if step.ID == id {
			return step
		}
	}
	require.Fail(t, "no step", id)
	return sheet.Step{}
}

// The same colour as base and as edge seal is bought once: 300 ft² at 400 and 80
// ft² at 320 are 0.75 and 0.25 gal, together one gallon and not a gallon and a
// quart more.
func TestOneMaterialIsBoughtOnce(t *testing.T) {
	cans := []any{can("1", "gal", "60"), can("1", "qt", "20")}
	s := job(t, map[string]any{"/finish/steps": steps(
		map[string]any{"id": "base", "name": "Base", "typedArea": "300", "spread": "400", "cans": cans},
		map[string]any{"id": "seal", "kind": "edge-seal", "name": "Edge seal", "typedArea": "80", "spread": "320", "sameAs": "base", "cans": cans},
		map[string]any{"id": "touch", "name": "Touching up", "typedArea": "0.0001", "spread": "400", "sameAs": "seal", "cans": cans})})
	base, seal := stepNamed(t, s, "base"), stepNamed(t, s, "seal")
	assert.Equal(t, "base", base.Material)
	assert.Equal(t, "base", seal.Material)
	assert.Equal(t, "base", stepNamed(t, s, "touch").Material, "bought with a step that is itself bought with another")
	assert.Equal(t, "bought with “Base”", seal.Buy)
	assert.Equal(t, "1 × 1 gal + 1 × 1 qt", base.Buy)
	paints := 0
	for _, line := range s.Shopping {
		if line.What == "Base" || line.What == "Edge seal" {
			paints++
			assert.Equal(t, "80.00", line.Cost)
		}
	}
	assert.Equal(t, 1, paints, "one line on the list")
	assert.InDelta(t, 0.25*3.785411784, value(t, s, "step.seal.product"), 1e-9, "each step keeps what it takes")
	assert.Contains(t, workingOf(t, s, "step.base.cans").Sum, "0.75 gal + 0.25 gal")
	assert.NotContains(t, figures(s), "step.seal.cans")
}

// Where one of the steps bought together is not known no cans are chosen: too few
// would be bought, and the price would be too low without a word.
func TestNoCansWhileOneOfTheStepsIsNotKnown(t *testing.T) {
	cans := []any{can("1", "gal", "60"), can("1", "qt", "20")}
	s := job(t, map[string]any{"/finish/steps": steps(
		map[string]any{"id": "base", "name": "Base", "typedArea": "300", "spread": "what?", "cans": cans},
		map[string]any{"id": "seal", "kind": "edge-seal", "name": "Edge seal", "typedArea": "80", "spread": "320", "sameAs": "base", "cans": cans})})
	assert.Empty(t, stepNamed(t, s, "base").Buy)
	assert.Contains(t, stepNamed(t, s, "base").Notes, "No cans are chosen yet: what “Base” takes is not known.")
	assert.InDelta(t, 0.25*3.785411784, value(t, s, "step.seal.product"), 1e-9, "what can be worked out still is")
	for _, line := range s.Shopping {
		assert.NotEqual(t, "Base", line.What)
	}
	require.NotEmpty(t, problemsAt(s, "/finish/steps/0/spread"))
	assert.Equal(t, "The word what is no part of a number.", problemsAt(s, "/finish/steps/0/spread")[0].What)
}

func workingOf(t *testing.T, s sheet.Sheet, id string) sheet.Working {
	t.Helper()
	f, ok := figures(s)[id]
	require.True(t, ok, id)
	return f.Working
}

func TestAMaterialOfNoEarlierStepIsBoughtForItself(t *testing.T) {
	cans := []any{can("1", "qt", "20")}
	for _, sameAs := range []string{"later", "first", "nothing"} {
		s := job(t, map[string]any{"/finish/steps": steps(
			map[string]any{"id": "first", "name": "First", "typedArea": "100", "spread": "400", "sameAs": sameAs, "cans": cans},
			map[string]any{"id": "later", "name": "Later", "typedArea": "100", "spread": "400", "cans": cans})})
		found := problemsAt(s, "/finish/steps/0/sameAs")
		require.Len(t, found, 1, sameAs)
		assert.Equal(t, problem.Stop, found[0].Severity)
		assert.Equal(t, "1 × 1 qt", stepNamed(t, s, "first").Buy, "what can be worked out still is")
	}
}

// Need and choice: at worst 1 ÷ (1 − 20 %) of it, and a quart to keep.
func TestBuyingForTheWorst(t *testing.T) {
	fields := map[string]any{"typedArea": "400", "spread": "400", "vary": "20", "buyFor": "rich", "cans": []any{can("1", "gal", "60"), can("1", "qt", "20")}}
	s := job(t, map[string]any{"/finish/steps": steps(fields)})
	p := stepNamed(t, s, "p")
	assert.Equal(t, "1 × 1 gal + 1 × 1 qt", p.Buy, "1.25 gal")
	assert.InDelta(t, 3.785411784/1.2, value(t, s, "step.p.lean"), 1e-9)
	assert.InDelta(t, 3.785411784/0.8, value(t, s, "step.p.rich"), 1e-9)
	assert.Equal(t, []string{"0.83 gal", "1.00 gal", "1.25 gal"}, []string{p.Lean, p.Likely, p.Rich})
	fields["buyFor"], fields["keep"], fields["keepUnit"] = "likely", "1", "qt"
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.Equal(t, "1 × 1 gal + 1 × 1 qt", stepNamed(t, s, "p").Buy, "1 gal and a quart to keep")
	assert.Contains(t, workingOf(t, s, "step.p.cans").Sum, "to keep")
	fields["buyFor"], fields["keep"] = "lean", ""
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.Equal(t, "1 × 1 gal", stepNamed(t, s, "p").Buy, "0.83 gal: four quarts cost more")
}

func TestOneBatchOnTheSheet(t *testing.T) {
	fields := map[string]any{"typedArea": "450", "spread": "400", "oneBatch": "yes", "cans": []any{can("1", "gal", "60"), can("1", "qt", "20")}}
	s := job(t, map[string]any{"/finish/steps": steps(fields)})
	p := stepNamed(t, s, "p")
	assert.Equal(t, "5 × 1 qt", p.Buy, "1.125 gal in one size: 100 in quarts, 120 in gallons; mixed it would be 80")
	assert.Contains(t, p.Notes, "Ask for the same batch number on every can, and stir them together in one pail before you begin.")
	assert.Contains(t, workingOf(t, s, "step.p.cans").Rule, "one size")
}

// A trade table of loss and spread: 30 % is lost by airless spray.
func TestUsualLossIsSaid(t *testing.T) {
	s := job(t, map[string]any{"/finish/steps": steps(map[string]any{"typedArea": "400", "spread": "400", "loss": "", "method": "spray"})})
	assert.InDelta(t, 3.785411784/0.7, value(t, s, "step.p.product"), 1e-9)
	assert.Contains(t, workingOf(t, s, "step.p.product").Sum, "30 %, as usual by spray")
	s = job(t, map[string]any{"/finish/steps": steps(map[string]any{"typedArea": "400", "spread": "400", "loss": "5", "method": "spray"})})
	assert.InDelta(t, 3.785411784/0.95, value(t, s, "step.p.product"), 1e-9, "a loss that is given counts")
}

// 260 ft², two coats of 1.5 mil dry at 42 % solids, 15 % lost: 12480/9163 gal,
// worked twice. Thinned by a tenth it takes a tenth more.
func TestDryFilmOnTheSheet(t *testing.T) {
	fields := map[string]any{"typedArea": "260", "coats": "2", "by": "dry", "dryFilm": "1.5", "dryFilmUnit": "mil", "solids": "42", "loss": "15"}
	s := job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.InDelta(t, 12480.0/9163*3.785411784, value(t, s, "step.p.product"), 1e-9)
	assert.InDelta(t, 1.5/0.42*25.4, value(t, s, "step.p.wet"), 1e-9)
	fields["thinned"] = "10"
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.InDelta(t, 1.1*12480.0/9163*3.785411784, value(t, s, "step.p.product"), 1e-9)
	assert.Contains(t, workingOf(t, s, "step.p.product").Rule, "thinner")
	fields["solids"] = "0"
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.NotContains(t, figures(s), "step.p.product")
	assert.NotEmpty(t, problemsAt(s, "/finish/steps/0/solids"))
}

// An almanac's paint page: a room of 10 × 15 ft, 8 ft high, with two doors of 21
// and two windows of 15 ft², has 328 ft² of wall, 0.82 gal at 400 ft²/gal: one
// gallon.
func TestWallsAndCornice(t *testing.T) {
	opening := func(length, width string) map[string]any {
		return map[string]any{"length": length, "width": width, "count": "2"}
	}
	plan := changed(t, planNamed(t, "even-grid"), "/room", map[string]any{"length": "15 ft", "width": "10 ft", "height": "8 ft"})
	surfaces := []any{
		map[string]any{"id": "walls", "name": "Walls", "kind": "walls", "height": "8 ft", "openings": []any{opening("7 ft", "3 ft"), opening("5 ft", "3 ft")}},
		map[string]any{"id": "cornice", "name": "Cornice", "kind": "cornice", "girth": "6 in", "corners": "4"},
		map[string]any{"id": "shut", "name": "Shut", "kind": "walls", "run": "10 ft", "height": "8 ft", "openings": []any{opening("8 ft", "5 ft")}},
	}
	on := func(surface string) map[string]any {
		return map[string]any{"id": surface, "area": "surface-of", "surface": surface, "spread": "400", "cans": []any{can("1", "gal", "60")}}
	}
	plan = changed(t, plan, "/finish", map[string]any{"surfaces": surfaces, "steps": steps(on("walls"), on("cornice"), on("shut"), on("floor"))})
	s := sheetOf(t, plan)
	assert.InDelta(t, 328*0.09290304, value(t, s, "step.walls.area"), 1e-9)
	assert.InDelta(t, 0.82*3.785411784, value(t, s, "step.walls.product"), 1e-9)
	assert.Equal(t, "1 × 1 gal", stepNamed(t, s, "walls").Buy)
	assert.InDelta(t, (50*0.5+4*0.25)*0.09290304, value(t, s, "step.cornice.area"), 1e-9)
	assert.NotContains(t, figures(s), "step.shut.area")
	require.Len(t, problemsAt(s, "/finish/surfaces/2/openings"), 1)
	assert.NotEmpty(t, problemsAt(s, "/finish/steps/3/surface"))
}
