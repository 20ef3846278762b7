package finish

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

func TestWordsAreReadExactly(t *testing.T) {
	for _, kind := range Kinds() {
		got, ok := ParseKind(string(kind))
		assert.True(t, ok)
		assert.Equal(t, kind, got)
	}
	for _, text := range []string{"", "Base", "base ", "varnish", "gold"} {
		_, ok := ParseKind(text)
		assert.False(t, ok, text)
	}
}

func TestStartingValuesCanBeComputed(t *testing.T) {
	for _, kind := range Kinds() {
		start, ok := Starting(kind)
		require.True(t, ok)
		assert.Equal(t, kind, start.Kind)
		assert.Contains(t, Bases(), start.Basis)
		assert.Contains(t, start.From, "label decides")
		if !kind.IsLiquid() {
			assert.Empty(t, start.SpreadUS+start.Coats+start.Loss)
			continue
		}
		us, metric := perGallon(start.SpreadUS).SquareMetresPerLitre, num(start.SpreadMetric)
		isWithin(t, "1", "0.01", us.Quo(metric), "the two rates of "+string(kind)+" agree")
		coats, _ := measure.ParseCount(start.Coats)
		takeOff(t, Paint{Area: sqft("100"), Coats: int64(coats), Spread: perLitre(start.SpreadMetric), Loss: num(start.Loss).Quo(num("100"))})
	}
	_, ok := Starting("varnish")
	assert.False(t, ok)
}

func TestStartingLeafCanBeLaid(t *testing.T) {
	for _, metal := range Metals() {
		start, ok := StartingLeaf(metal)
		require.True(t, ok)
		for _, pair := range [][2]string{{start.Side, start.Lap}, {start.SideMetric, start.LapMetric}} {
			side, err := measure.Parse(pair[0], "")
			require.NoError(t, err)
			lap, err := measure.Parse(pair[1], "")
			require.NoError(t, err)
			assert.Empty(t, Leaf{Length: side, Width: side, Lap: lap}.Refusals())
		}
		assert.Contains(t, start.From, "pack decides")
	}
	_, ok := StartingLeaf("pewter")
	assert.False(t, ok)
}
