package safety

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/air"
	"ceilingwright/core/measure"
)

func laboratory(result AsbestosTest) change { return func(j *Job) { j.Asbestos = result } }
func fixings(answer Answer) change          { return func(j *Job) { j.Building.Fixings = answer } }
func isolated(answer Answer) change         { return func(j *Job) { j.Building.Isolated = answer } }
func sprinklers(answer Answer) change       { return func(j *Job) { j.Building.Sprinklers = answer } }
func detectors(answer Answer) change        { return func(j *Job) { j.Building.Detectors = answer } }
func warmth(celsius measure.Fact) change    { return func(j *Job) { j.Warmth = celsius } }
func used(use Use) change                   { return func(j *Job) { j.Building.Use = use } }
func leadFirm(answer Answer) change         { return func(j *Job) { j.Building.LeadFirm = answer } }
func leadPlan(answer Answer) change         { return func(j *Job) { j.Building.LeadPlan = answer } }
func agreed(j *Job)                         { j.Building.Sprinklers, j.Building.SprinklersAgreed = Yes, true }

var (
	square160Feet = measure.SquareFoot.Mul(number("160"))
	hair          = number("0.000001") // m²
)

// The building, wires, fire, dust and rags. Years and areas are tried on both
// sides; areas in square feet and in square metres as they are typed.
var buildingCases = []ruleCase{
	{"public-building", used(Public), used(Home)},
	{"public-building", used(Children), used("")},
	{"public-building", used(Works), used("")},
	{"construction-phase-plan", in(UK), in(EU)},
	{"construction-phase-plan", in(UK), in(Other)},

	{"lead-found", lead(LeadFound), lead(LeadFoundFree)},
	{"lead-found", all(lead(LeadFound), leadPlan(No)), all(lead(LeadFound), leadPlan(Yes))},
	// A firm's certificate speaks for homes, not for the people at work.
	{"lead-found", all(lead(LeadFound), built(1931), leadFirm(Yes)), all(lead(LeadFound), built(1931), leadFirm(Yes), leadPlan(Yes))},
	{"lead-to-the-plan", all(lead(LeadFound), leadPlan(Yes)), all(lead(LeadFound), leadPlan(No))},
	{"lead-to-the-plan", all(in(UK), built(1931), lead(LeadFound), leadPlan(Yes)), all(in(UK), built(1931), lead(LeadFoundFree), leadPlan(Yes))},
	// 40 CFR 745.80 to 745.90: target housing is built before 1978.
	{"lead-certified-firm", built(1977), built(1978)},
	{"lead-certified-firm", built(0), all(built(0), lead(LeadFoundFree))},
	// 40 CFR 745.83, minor repair: 6 ft² or less in a room; 0.5574 m² is a little
	// under, 0.5575 m² over.
	{"lead-certified-firm", all(built(1931), masked(sixSquareFeet.Add(hair))), all(built(1931), masked(sixSquareFeet))},
	{"lead-certified-firm", all(built(1931), masked(number("0.5575"))), all(built(1931), masked(number("0.5574")))},
	{"lead-certified-firm", all(built(1931), masked(number("0"))), all(built(1931), in(UK))},
	// 40 CFR 745.80 to 745.83: homes and places young children come to, and no other.
	{"lead-certified-firm", all(built(1977), used(Home)), all(built(1977), used(Public))},
	{"lead-certified-firm", all(built(1977), used(Children)), all(built(1977), used(Works))},
	{"lead-certified-firm", all(built(1977), leadFirm(No)), all(built(1977), leadFirm(Yes))},
	{"lead-certified-firm", all(built(1977), lead(LeadFound), leadPlan(Yes)), all(built(1978), lead(LeadFound), leadPlan(Yes))},
	{"lead-certified-work", all(built(1977), leadFirm(Yes)), all(built(1978), leadFirm(Yes))},
	{"lead-certified-work", all(built(1931), leadFirm(Yes), masked(sixSquareFeet.Add(hair))), all(built(1931), leadFirm(Yes), masked(sixSquareFeet))},
	{"lead-certified-work", all(built(1931), leadFirm(Yes)), all(built(1931), leadFirm(Yes), in(UK))},
	// 29 CFR 1926.62(a): whoever works on it, whatever the building.
	{"lead-at-work", all(built(1977), used(Public)), all(built(1978), used(Public))},
	{"lead-at-work", all(built(0), used(Works), masked(sixSquareFeet)), all(built(0), used(Home), masked(sixSquareFeet))},
	{"lead-at-work", all(built(1977), used(Public)), all(built(1977), used(Public), lead(LeadFoundFree))},
	{"lead-small-job", all(built(1977), used(Home), masked(sixSquareFeet)), all(built(1977), used(Public), masked(sixSquareFeet))},
	{"lead-small-job", all(built(1977), masked(sixSquareFeet)), all(built(1978), masked(sixSquareFeet))},
	{"lead-small-job", all(built(0), masked(sixSquareFeet)), all(built(0), masked(sixSquareFeet.Add(hair)))},
	{"lead-small-job", all(built(0), masked(number("0.5574"))), all(built(0), masked(number("0.5575")))},
	{"lead-test-first", all(in(UK), built(1991)), all(in(UK), built(1992))},
	{"lead-test-first", all(in(EU), built(0)), all(in(EU), built(0), lead(LeadFoundFree))},
	{"lead-test-first", all(in(Other), built(1985)), all(in(Other), built(1977))},
	{"lead-work-damp", built(1977), built(1978)},
	{"lead-work-damp", all(in(UK), built(1991)), all(in(UK), built(1992))},
	{"lead-work-damp", lead(LeadFound), all(built(1931), lead(LeadFoundFree))},
	{"lead-work-damp", all(in(Other), built(1991)), all(in(Other), built(1992))},
	{"lead-work-damp", lead(LeadFound), lead(LeadFoundFree)},
	{"lead-keep-result", all(built(1977), lead(LeadFoundFree)), all(built(1978), lead(LeadFoundFree))},
	{"patch-test-old-paint", all(built(1977), pull("")), all(built(1978), pull(""))},
	{"patch-test-old-paint", all(in(UK), built(1991), pull(NoPullTest)), all(in(UK), built(1991), pull(PaintHeld))},
	{"patch-test-old-paint", all(built(1977), pull("")), all(built(1977), pull(""), textured(Yes))},
	{"patch-test-old-paint", all(built(1977), pull("")), all(built(1977), pull(""), lead(LeadFound))},
	{"pull-test-first", pull(""), pull(PaintHeld)},
	{"pull-test-first", pull(""), all(pull(""), built(1977))},
	{"pull-test-first", all(pull(NoPullTest), textured(Yes), built(1987)), all(pull(NoPullTest), textured(Yes), built(1986))},
	{"pull-test-first", all(pull(""), textured(Yes), built(1980), laboratory(AsbestosFree)), all(pull(""), textured(Yes), built(1980), laboratory(NoAsbestosTest))},
	{"pull-test-first", pull(NoPullTest), pull(Lifted)},
	{"pull-test-first", pull(""), all(pull(""), lead(LeadFound))},
	{"pull-test-first", pull(""), all(pull(""), laboratory(AsbestosFound))},
	// Up to 1980 the coat's own stop says that nothing is pulled.
	{"pull-test-after-laboratory", all(pull(""), textured(Yes), built(1981)), all(pull(""), textured(Yes), built(1980))},
	{"pull-test-after-laboratory", all(pull(""), textured(Yes), built(1986)), all(pull(""), textured(Yes), built(1987))},
	// A house of 1982 with a textured ceiling nobody had looked at: no tape is to be
	// pulled either (a householder's question to a newspaper, 2009).
	{"pull-test-after-laboratory", all(pull(""), textured(Yes), built(1982)), all(pull(""), textured(Yes), built(1982), laboratory(AsbestosFree))},
	{"pull-test-after-laboratory", all(pull(""), textured(Yes), built(1982)), all(pull(""), textured(Yes), built(1982), laboratory(AsbestosFound))},
	{"paint-lifted", pull(Lifted), pull(PaintHeld)},
	{"asbestos-found", laboratory(AsbestosFound), laboratory(AsbestosFree)},
	{"asbestos-found", laboratory(AsbestosFound), laboratory(AsbestosGone)},
	{"asbestos-found", all(laboratory(AsbestosFound), textured(No), built(2010), in(EU)), laboratory(NoAsbestosTest)},
	// 29 CFR 1926.1101(b): installed no later than 1980.
	{"asbestos-to-1980", all(textured(Yes), built(1980)), all(textured(Yes), built(1981))},
	{"asbestos-to-1980", all(textured(""), built(0)), all(textured(No), built(0))},
	{"asbestos-to-1980", all(textured(Yes), built(0)), all(textured(Yes), built(0), laboratory(AsbestosFree))},
	{"asbestos-before-2000", all(textured(Yes), built(1999), in(UK)), all(textured(Yes), built(2000), in(UK))},
	{"asbestos-before-2000", all(textured(Yes), built(0), in(UK)), all(textured(Yes), built(0), in(UK), laboratory(AsbestosFree))},
	{"asbestos-before-2000", all(textured(Yes), built(1981), in(UK)), all(textured(Yes), built(1981), in(US))},
	// Directive 1999/77/EC: from 1 January 2005.
	{"asbestos-before-2005", all(textured(Yes), built(2004), in(EU)), all(textured(Yes), built(2005), in(EU))},
	{"asbestos-before-2005", all(textured(Yes), built(2004), in(Other)), all(textured(Yes), built(2004), in(UK))},
	{"asbestos-before-2005", all(textured(Yes), built(2004), in(EU)), all(textured(Yes), built(2004), in(EU), laboratory(AsbestosGone))},
	{"asbestos-in-late-coats", all(textured(Yes), built(1981)), all(textured(Yes), built(1980))},
	{"asbestos-in-late-coats", all(textured(Yes), built(1986)), all(textured(Yes), built(1987))},
	{"asbestos-in-late-coats", all(textured(""), built(1982)), all(textured(Yes), built(1982), laboratory(AsbestosFree))},
	{"asbestos-in-boards", all(fixings(Yes), built(1980)), all(fixings(Yes), built(1981))},
	{"asbestos-in-boards", all(fixings(Yes), built(1999), in(UK)), all(fixings(Yes), built(2000), in(UK))},
	{"asbestos-in-boards", all(fixings(Yes), built(2004), in(EU)), all(fixings(Yes), built(2005), in(EU))},
	{"asbestos-in-boards", all(fixings(Yes), built(0)), all(fixings(Yes), built(0), textured(Yes))},
	{"asbestos-in-boards", all(fixings(Yes), built(0), textured(Yes), laboratory(AsbestosFree)), all(fixings(No), built(0))},
	{"asbestos-if-drilled", all(fixings(""), built(1980)), all(fixings(""), built(1981))},
	{"asbestos-if-drilled", all(fixings(""), built(0)), all(fixings(Yes), built(0))},
	{"asbestos-if-drilled", all(fixings(""), built(0), in(EU)), all(fixings(No), built(0), in(EU))},
	// 40 CFR 61.145: 160 ft² or more; 14.86 m² is a little under, 15 m² over.
	{"asbestos-notice", all(textured(Yes), built(1960), masked(square160Feet)), all(textured(Yes), built(1960), masked(square160Feet.Sub(hair)))},
	{"asbestos-notice", all(textured(Yes), built(1960), masked(number("15"))), all(textured(Yes), built(1960), masked(number("14.86")))},
	{"asbestos-notice", all(laboratory(AsbestosFound), masked(number("0"))), all(laboratory(AsbestosFree), masked(number("0")))},
	{"asbestos-notice", all(textured(Yes), built(1960)), all(textured(Yes), built(1982))},
	// HSE Asbestos Essentials sheet a28: about 1 m², 10.7639 ft².
	{"asbestos-more-than-a-patch", all(in(UK), textured(Yes), built(1960), masked(number("1.001"))), all(in(UK), textured(Yes), built(1960), masked(number("1")))},
	{"asbestos-more-than-a-patch", all(in(UK), laboratory(AsbestosFound), masked(measure.SquareFoot.Mul(number("10.764")))),
		all(in(UK), laboratory(AsbestosFound), masked(measure.SquareFoot.Mul(number("10.763"))))},
	{"asbestos-more-than-a-patch", all(in(UK), laboratory(AsbestosFound)), all(in(EU), laboratory(AsbestosFound))},
	{"asbestos-keep-result", laboratory(AsbestosFree), laboratory(NoAsbestosTest)},
	{"asbestos-keep-result", laboratory(AsbestosGone), laboratory(AsbestosFound)},

	{"isolate-the-light", light(Yes), light(No)},
	{"isolate-the-light", light(""), light(No)},
	{"isolate-the-light", all(light(Yes), isolated(No)), all(light(Yes), isolated(Yes))},
	{"light-stays-dead", all(light(Yes), isolated(Yes)), light(Yes)},
	{"light-stays-dead", all(light(""), isolated(Yes)), all(light(No), isolated(Yes))},
	{"lower-the-light", light(Yes), light(No)},
	{"leaf-near-wires", all(light(Yes), leaf(Gold)), leaf(Gold)},
	{"leaf-near-wires", all(light(""), leaf(Gold)), light("")},
	{"uncover-the-light", light(""), light(No)},
	{"look-before-drilling", fixings(Yes), fixings("")},

	{"sprinklers-stay-bare", sprinklers(Yes), sprinklers("")},
	{"sprinklers-stay-bare", sprinklers(Yes), agreed},
	{"sprinklers-as-agreed", agreed, sprinklers(Yes)},
	{"look-for-sprinklers", sprinklers(""), sprinklers(No)},
	{"look-for-sprinklers", sprinklers(""), sprinklers(Yes)},
	{"detectors-covered", detectors(Yes), detectors("")},
	{"look-for-detectors", detectors(""), detectors(No)},
	{"look-for-detectors", detectors(""), detectors(Yes)},

	// A warning about rags keeps its weight by not being printed for water-borne
	// work (two pages on oil finishes).
	{"oily-rags", paints(air.DryingOil, "1", "10"), all(paints(air.Water, "1", "10"), paints(air.Solvent, "1", "10"))},
	{"leaf-dust", leaf(Gold, Imitation), leaf(Gold, Aluminium)},
	{"leaf-dust", leaf(Copper), all()},
	{"leaf-dust", leaf(Gold, Silver), leaf(Gold)},
	{"metal-dust-burns", leaf(Aluminium), leaf(Gold, Silver)},
	{"metal-dust-burns", product(air.Product{Category: air.MetallicPaint}), product(air.Product{Category: air.DecorativeEffect})},
	{"sanding-overhead", pull(Lifted), pull(PaintHeld)},
	{"rubbing-down", product(air.Product{Coats: 2}), product(air.Product{Coats: 1})},
	{"rubbing-down", product(air.Product{Coats: 2}), all(product(air.Product{Coats: 2}), pull(Lifted))},
	{"dust-mask-fits", leaf(Imitation), leaf(Gold, Aluminium)},
	{"dust-mask-fits", leaf(Silver), leaf(Gold)},
	{"dust-mask-fits", pull(Lifted), pull(PaintHeld)},
	{"dust-mask-fits", built(1977), built(1978)},
	{"eyes-overhead", all(), nil},
	{"gloves", paints(air.Solvent, "1", "10"), paints(air.Water, "1", "150")},
	{"gloves", paints(air.Water, "1", "150.1"), paints(air.Water, "1", "150")},
	{"gloves", paints(air.DryingOil, "1", "0"), paints(air.Water, "1", "0")},
	{"gloves", paints("", "1", "0"), paints(air.Water, "1", "0")},
	{"gloves", product(air.Product{Binder: air.Water, VOC: fact("0"), Size: true}), product(air.Product{Binder: air.Water, VOC: fact("0")})},
	{"first-aid", paints(air.Water, "1", "0"), all()},
	{"hazard-communication", paints(air.Water, "1", "0"), all(in(UK), paints(air.Water, "1", "0"))},
	{"hazard-communication", paints(air.Water, "1", "0"), all()},
	{"coshh-assessment", all(in(UK), paints(air.Water, "1", "0")), paints(air.Water, "1", "0")},
	{"coshh-assessment", all(in(EU), paints(air.Water, "1", "0")), in(EU)},
	// 86 °F are 30 °C.
	{"hot-under-the-ceiling", warmth(fact("30.1")), warmth(fact("30"))},
	{"hot-under-the-ceiling", warmth(fact("38")), warmth(measure.Fact{Value: number("38")})},
}

// Who knows that there is lead is not sent to have it tested.
func TestNoTestWhereLeadIsFound(t *testing.T) {
	house := all(built(1931), leadPlan(Yes))
	assert.Contains(t, find(t, notesAfter(house), "lead-certified-firm").Words, "Have the old paint tested")
	found := find(t, notesAfter(all(house, lead(LeadFound))), "lead-certified-firm")
	assert.NotContains(t, found.Words, "tested")
	assert.Equal(t, "/place/leadFirm", found.At)
	for _, country := range []Country{US, UK, EU, Other} {
		for _, use := range []Use{"", Home, Children, Public, Works} {
			for _, note := range notesAfter(all(house, in(country), used(use), lead(LeadFound))) {
				assert.NotContains(t, note.Words, "Have the old paint tested", "%s in %s", note.ID, country)
			}
		}
	}
}

// The switch that cuts the power is called what the country calls it.
func TestTemporaryLightByCountry(t *testing.T) {
	for country, name := range map[Country]string{US: "through a GFCI.", UK: "through an RCD.", EU: "through an RCD.", Other: "through an RCD or GFCI."} {
		dead := notesAfter(all(in(country), light(Yes), isolated(Yes)))
		words := ""
		for _, note := range dead {
			words += note.Words + " "
		}
		assert.Contains(t, words, "Light the room from another circuit, "+name, country)
	}
}

// Silver has a limit of its own, a hundredth of that of copper.
func TestLeafDustLimits(t *testing.T) {
	for _, row := range []struct {
		leaf           change
		words, working string
	}{
		{leaf(Copper), "its crumbs hold copper.", ": copper 1 mg/m³."},
		{leaf(Silver), "its crumbs hold silver.", ": silver 0.01 mg/m³ in the US, 0.1 mg/m³ in the UK and the EU."},
		{leaf(Silver, Imitation), "its crumbs hold copper and silver.", ": copper 1 mg/m³; silver 0.01 mg/m³ in the US, 0.1 mg/m³ in the UK and the EU."},
	} {
		n := find(t, notesAfter(row.leaf), "leaf-dust")
		assert.Contains(t, n.Words, row.words)
		assert.Equal(t, "Dust in the air, at most over eight hours"+row.working, n.Working)
	}
}
