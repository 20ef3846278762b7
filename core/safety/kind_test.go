package safety

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/measure"
)

// Each limit from both sides, with a fitter of 1.70 m, whose deck is 1.87 m under
// the ceiling.
func TestKindFor(t *testing.T) {
	for _, row := range []struct {
		deck measure.Length
		kind Kind
	}{
		{0, OnFloor}, {15 * cm, OnFloor}, {15*cm + 1, HopUp}, {50 * cm, HopUp}, {50*cm + 1, Podium},
		{250 * cm, Podium}, {250*cm + 1, Tower}, {12 * measure.Metre, Tower}, {12*measure.Metre + 1, Scaffold},
		{8 * measure.Foot, Podium}, {98 * measure.Inch, Podium}, {99 * measure.Inch, Tower},
	} {
		deck, _ := DeckFor(187*cm+row.deck, 170*cm)
		assert.Equal(t, row.kind, KindFor(deck), "a deck at %d nm", row.deck)
	}
	assert.Equal(t, Kind(""), KindFor(Deck{}))
}

func TestKindCarries(t *testing.T) {
	kinds := []Kind{OnFloor, HopUp, Podium, Tower, Scaffold}
	for i, have := range kinds {
		for j, asked := range kinds {
			assert.Equal(t, i >= j, have.Carries(asked), "%s for %s", have, asked)
		}
		assert.False(t, Kind("").Carries(have))
	}
}
