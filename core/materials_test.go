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
// worked twice. Thinned by a tenth it takes as much paint, and a tenth of that in
// thinner.
func TestDryFilmOnTheSheet(t *testing.T) {
	fields := map[string]any{"typedArea": "260", "coats": "2", "by": "dry", "dryFilm": "1.5", "dryFilmUnit": "mil", "solids": "42", "loss": "15"}
	s := job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.InDelta(t, 12480.0/9163*3.785411784, value(t, s, "step.p.product"), 1e-9)
	assert.InDelta(t, 1.5/0.42*25.4, value(t, s, "step.p.wet"), 1e-9)
	fields["thinned"] = "10"
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.InDelta(t, 12480.0/9163*3.785411784, value(t, s, "step.p.product"), 1e-9)
	assert.InDelta(t, 0.1*12480.0/9163*3.785411784, value(t, s, "step.p.thinner"), 1e-9)
	assert.InDelta(t, 1.1*1.5/0.42*25.4, value(t, s, "step.p.wet"), 1e-9)
	fields["solids"] = "0"
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.NotContains(t, figures(s), "step.p.product")
	assert.NotEmpty(t, problemsAt(s, "/finish/steps/0/solids"))
}

// thinned is 100 m² at 60 µm dry, 50 % solids, a quarter of thinner and 30 % lost:
// 17.14 L of paint and 4.29 L of thinner.
func thinned(more map[string]any) map[string]any {
	fields := map[string]any{"name": "Ground", "typedArea": "100", "typedUnit": "m2", "by": "dry", "dryFilm": "60", "dryFilmUnit": "um", "solids": "50",
		"thinned": "25", "loss": "30", "binder": "solvent", "voc": "400", "vocUnit": "g/L", "cans": []any{can("1", "L", "12")}}
	for name, value := range more {
		fields[name] = value
	}
	return fields
}

func TestThinnerIsOnTheListAndInTheAir(t *testing.T) {
	s := job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(thinned(nil))})
	assert.Equal(t, "17.14 L", text(t, s, "step.p.product"))
	assert.Equal(t, "4.29 L", text(t, s, "step.p.thinner"))
	assert.Equal(t, "100.00 m² × 1 × 60 µm ÷ 1000 m²·µm/L ÷ 50 % ÷ (1 − 30 %) = 17.14 L", workingOf(t, s, "step.p.product").Sum)
	assert.Equal(t, "17.14 L × 25 % = 4.29 L", workingOf(t, s, "step.p.thinner").Sum)
	p := stepNamed(t, s, "p")
	assert.Equal(t, "18 × 1 L", p.Buy)
	assert.Equal(t, "4.286 L", boughtOf(s, "thinner, for “Ground”"), "up to a millilitre")
	assert.Contains(t, p.Label, "Thin by 25 %: 4.29 L of thinner to 17.14 L")
	// 17.142857 L of 400 g/L and 4.285714 L of thinner of 870: worked.
	assert.InDelta(t, 17.142857*400+4.285714*870, value(t, s, "air.mass"), 0.01)
	for _, c := range []struct{ buyFor, thinner string }{{"rich", "5.043 L"}, {"lean", "3.727 L"}} {
		s = job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(thinned(map[string]any{"buyFor": c.buyFor}))})
		assert.Equal(t, c.thinner, boughtOf(s, "thinner, for “Ground”"), c.buyFor)
	}
	// Water comes from the tap; nothing is thinned by nothing.
	s = job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(thinned(map[string]any{"binder": "water"}))})
	assert.Empty(t, boughtOf(s, "thinner, for “Ground”"))
	assert.Contains(t, stepNamed(t, s, "p").Label, "Thin by 25 %: 4.29 L of water to 17.14 L")
	s = job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(thinned(map[string]any{"thinned": ""}))})
	assert.NotContains(t, figures(s), "step.p.thinner")
	assert.Equal(t, "17.14 L", text(t, s, "step.p.product"))
	// Of a mix, what is made to spare is thinned too.
	s = job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(thinned(map[string]any{"spare": "10",
		"mix": []any{map[string]any{"name": "varnish", "amount": "3", "unit": "L"}, map[string]any{"name": "oil", "amount": "1", "unit": "L"}}}))})
	assert.Equal(t, "17.14 L × (1 + 10 %) × 25 % = 4.71 L", workingOf(t, s, "step.p.thinner").Sum)
}

// 7.33 and 4.44 L of one product, and 2 L to keep of the second step, are 13.78 L:
// 14 cans of a litre.
func TestWhatIsKeptOfAStepBoughtWithAnotherCounts(t *testing.T) {
	cans := []any{can("1", "L", "12")}
	base := map[string]any{"id": "base", "name": "Base", "typedArea": "66", "typedUnit": "m2", "spread": "9", "spreadUnit": "m2/L", "cans": cans}
	seal := map[string]any{"id": "seal", "name": "Second", "typedArea": "40", "typedUnit": "m2", "spread": "9", "spreadUnit": "m2/L", "sameAs": "base", "keep": "2", "keepUnit": "L"}
	s := job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(base, seal)})
	assert.Equal(t, "14 × 1 L", stepNamed(t, s, "base").Buy)
	assert.Contains(t, workingOf(t, s, "step.base.cans").Sum, "7.33 L + 4.44 L + 2.00 L to keep = 13.78 L\n")
	delete(seal, "keep")
	base["keep"], base["keepUnit"] = "2", "L"
	s = job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(base, seal)})
	assert.Equal(t, "14 × 1 L", stepNamed(t, s, "base").Buy, "as much whichever step it is kept of")
	seal["keep"] = "1"
	s = job(t, map[string]any{"/units/show": "metric", "/finish/steps": steps(base, seal)})
	assert.Equal(t, "15 × 1 L", stepNamed(t, s, "base").Buy, "both keep some: 14.78 L")
}

// 600 ft² at 300 ft²/gal take 2 gal: a fifth more paint is 2.4 gal, a fifth less
// cover 2.5.
func TestAFifthMorePaintOrAFifthLessCover(t *testing.T) {
	fields := map[string]any{"typedArea": "600", "spread": "300", "vary": "20", "buyFor": "rich", "cans": []any{can("1", "gal", "60"), can("0.1", "gal", "6")}}
	s := job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.Equal(t, "2.00 gal ÷ (1 − 20 %) = 2.50 gal", workingOf(t, s, "step.p.rich").Sum)
	assert.Equal(t, "2 × 1 gal + 5 × 0.1 gal", stepNamed(t, s, "p").Buy)
	fields["varyOf"] = "paint"
	s = job(t, map[string]any{"/finish/steps": steps(fields)})
	assert.Equal(t, "2.00 gal × (1 + 20 %) = 2.40 gal", workingOf(t, s, "step.p.rich").Sum)
	assert.Equal(t, "2.00 gal × (1 − 20 %) = 1.60 gal", workingOf(t, s, "step.p.lean").Sum)
	assert.Equal(t, "2 × 1 gal + 4 × 0.1 gal", stepNamed(t, s, "p").Buy)
}

// A blank for many lengths together takes more than one length can be: 150 m of
// edges 20 mm wide are 3 m². A ceiling of 90 × 60 m has diagonals of 108 m.
func TestTotalsMayBeLongerThanALength(t *testing.T) {
	s := job(t, map[string]any{"/finish/steps": steps(map[string]any{"area": "edges", "edgeLength": "150 m", "brushWidth": "20 mm", "spread": "400"})})
	assert.InDelta(t, 3, value(t, s, "step.p.area"), 1e-9)
	assert.Empty(t, problemsAt(s, "/finish/steps/0/edgeLength"))
	for _, at := range []string{"/finish/steps/0/edgeLength", "/finish/steps/0/brushWidth"} {
		fields := map[string]any{"area": "edges", "edgeLength": "150 m", "brushWidth": "20 mm", "spread": "400"}
		fields[at[len("/finish/steps/0/"):]] = "11000 m"
		s = job(t, map[string]any{"/finish/steps": steps(fields)})
		require.NotEmpty(t, problemsAt(s, at), at)
		assert.NotContains(t, figures(s), "step.p.product")
	}
	s = job(t, map[string]any{"/seams/rollLength": "60 yd"})
	assert.Contains(t, workingOf(t, s, "tape.rolls").Sum, "180′ 0″")
	s = measured(t, map[string]any{"length": "90 m", "width": "60 m", "diagonalAC": "108.167 m"})
	assert.Empty(t, problemsAt(s, "/room/diagonalAC"))
	assert.Equal(t, "yes", s.Survey.Proved)
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
