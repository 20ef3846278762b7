package safety

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func kilograms(text string) measure.Fact { return measure.FactOf(measure.MustNumber(text)) }

// 250 lb a person, which is 113.4 kg (the old 29 CFR 1910.29(a)(2)(ii)).
func TestPersonMass(t *testing.T) {
	pounds := PersonMass().Quo(measure.MustNumber("0.45359237"))
	assert.Equal(t, "250", pounds.Trimmed(3))
	assert.Equal(t, "113.4", PersonMass().Trimmed(1))
}

// Worked by hand: 2 × 113.398 + 40 = 266.796 kg on the deck; with a platform of
// 134 kg 400.796 kg, over 2.0 × 1.25 m = 2.5 m² 160.318 kg/m², 100.199 kg a leg.
func TestFloorLoad(t *testing.T) {
	job := Job{Gear: Gear{OnDeck: 2, Load: kilograms("40"), Mass: kilograms("134"), FootLength: 200 * cm, FootWidth: 125 * cm}}
	deck, whole := job.DeckLoad()
	assert.Equal(t, "266.796", deck.Trimmed(3))
	assert.True(t, whole)
	load, ok := job.FloorLoad()
	require.True(t, ok)
	assert.False(t, load.AtLeast)
	assert.Equal(t, [3]string{"400.796", "160.318", "100.199"}, [3]string{load.Whole.Trimmed(3), load.Spread.Trimmed(3), load.Leg.Trimmed(3)})

	// The same typed in pounds and feet: 88.1849 lb of load, 6 ft 6.74 in of foot.
	job.Gear.Load = measure.FactOf(measure.MustNumber("88.184904873951").Mul(measure.MustNumber("0.45359237")))
	again, _ := job.FloorLoad()
	assert.Equal(t, "160.318", again.Spread.Trimmed(3))

	job.Gear.Load = measure.Fact{}
	load, ok = job.FloorLoad()
	assert.True(t, ok && load.AtLeast, "tools and materials are missing, so it is the least")
	assert.Equal(t, "144.318", load.Spread.Trimmed(3), "(226.796 + 134) ÷ 2.5")

	for _, lacking := range []func(*Gear){
		func(g *Gear) { g.Mass = measure.Fact{} }, func(g *Gear) { g.FootLength = 0 }, func(g *Gear) { g.FootWidth = 0 },
	} {
		gear := job
		lacking(&gear.Gear)
		_, ok = gear.FloorLoad()
		assert.False(t, ok, "nothing is made up")
	}
}

func TestPeople(t *testing.T) {
	job := Job{}
	count, said := job.People()
	assert.Equal(t, 1, count)
	assert.False(t, said)
	job.Crew = []measure.Length{170 * cm, 0, 180 * cm}
	count, said = job.People()
	assert.Equal(t, 2, count)
	assert.False(t, said)
	job.Gear.OnDeck = 3
	count, said = job.People()
	assert.Equal(t, 3, count)
	assert.True(t, said)
}

func TestLeastBase(t *testing.T) {
	for _, row := range []struct{ base, length, width, least measure.Length }{
		{0, 0, 0, 0}, {90 * cm, 0, 0, 90 * cm}, {0, 200 * cm, 120 * cm, 120 * cm}, {0, 200 * cm, 0, 0},
		{90 * cm, 200 * cm, 120 * cm, 90 * cm}, {150 * cm, 200 * cm, 120 * cm, 120 * cm},
	} {
		job := Job{Base: row.base, Gear: Gear{FootLength: row.length, FootWidth: row.width}}
		assert.Equal(t, row.least, job.LeastBase())
	}
}

// The table of check values: a rail of 1.10 m is within every rule.
func TestRailsWanted(t *testing.T) {
	for _, country := range []Country{US, UK, EU, Other, ""} {
		least, most, _ := RailsWanted(country)
		assert.LessOrEqual(t, least, RailHeight)
		assert.True(t, most == 0 || RailHeight <= most)
	}
	least, most, gap := RailsWanted(Other)
	assert.Equal(t, [3]measure.Length{38 * measure.Inch, 45 * measure.Inch, 47 * cm}, [3]measure.Length{least, most, gap}, "the strictest of all")
	assert.Equal(t, 18*measure.Inch, DeckWidthWanted(US))
	assert.Equal(t, 60*cm, DeckWidthWanted(UK))
	assert.Equal(t, 60*cm, DeckWidthWanted(Other))
}
