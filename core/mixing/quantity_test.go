package mixing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// A quantity is told in the largest unit of its system of which there is one.
func TestInUnits(t *testing.T) {
	for _, c := range []struct {
		litres string
		unit   measure.VolumeUnit
		want   string
	}{
		{"1", measure.UnitMillilitre, "1 L"},
		{"0.9999", measure.UnitLitre, "999.9 mL"},
		{"0.0004", measure.UnitMillilitre, "0.4 mL"},
		{"3.785411784", measure.UnitTeaspoon, "1 gal"}, // NIST Handbook 44, appendix C
		{"3.785", measure.UnitGallon, "127.99 fl oz"},
		{"0.0295735295625", measure.UnitCup, "1 fl oz"},
		{"0.0295", measure.UnitFluidOunce, "5.99 tsp"},
		{"4.54609", measure.UnitImperialPint, "1 imp gal"},
		{"4.5", measure.UnitImperialGallon, "158.38 imp fl oz"},
		{"0.028", measure.UnitImperialFluidOunce, "28 mL"},
	} {
		got := InUnits(measure.Volume{Litres: num(c.litres)}, c.unit).In(words.Style{})
		assert.Equal(t, c.want, got, "%s L in %s", c.litres, c.unit)
	}
	assert.Equal(t, "40.1 g", Grams(num("40.06")).In(words.Style{}))
}

func TestLeastUsual(t *testing.T) {
	for want, unit := range map[string]measure.VolumeUnit{"1/8 tsp": measure.UnitGallon, "0.5 mL": measure.UnitLitre} {
		assert.Equal(t, want, LeastUsual(unit, false).In(words.Style{}))
	}
	assert.Equal(t, "0.5 mL", LeastUsual(measure.UnitImperialPint, false).In(words.Style{}))
	assert.Equal(t, "1 g", LeastUsual(measure.UnitGallon, true).In(words.Style{}))
}
