package safety

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

const cm = measure.Centimetre

// centimetres is l to the nearest centimetre, halves up: the check table is
// printed so.
func centimetres(l measure.Length) int64 { return int64((l + cm/2) / cm) }

// Worked by script from the ratios in an ergonomics handbook of 1996,
// with a stature of 1.70 m and rails of 1.10 m; in centimetres.
func TestDeckForTable(t *testing.T) {
	for _, row := range []struct{ ceiling, best, least, most, total, base4, base2 int64 }{
		{270, 83, 69, 90, 193, 48, 97},
		{300, 113, 99, 120, 223, 56, 112},
		{360, 173, 159, 180, 283, 71, 142},
		{450, 263, 249, 270, 373, 93, 187},
		{600, 413, 399, 420, 523, 131, 262},
	} {
		deck, problems := DeckFor(measure.Length(row.ceiling)*cm, 170*cm)
		require.Empty(t, problems)
		assert.Equal(t, row.best, centimetres(deck.Best), "best under %d", row.ceiling)
		assert.InDelta(t, row.least, centimetres(deck.Least), 1, "least under %d", row.ceiling)
		assert.Equal(t, row.most, centimetres(deck.Most), "most under %d", row.ceiling)
		assert.Equal(t, row.total, centimetres(deck.Total()), "total under %d", row.ceiling)
		assert.Equal(t, row.base4, centimetres(deck.Base(4)), "base at 4 to 1 under %d", row.ceiling)
		assert.InDelta(t, row.base2, centimetres(deck.Base(2)), 1, "base at 2 to 1 under %d", row.ceiling)
		assert.True(t, deck.Shared)
		assert.False(t, deck.Assumed)
		assert.Equal(t, GuardedDeck, deck.Means)
	}
}

func TestDeckForIsExact(t *testing.T) {
	deck, _ := DeckFor(300*cm, 170*cm)
	assert.Equal(t, 1130*measure.Millimetre, deck.Best)
	assert.Equal(t, measure.Length(985_500_000), deck.Least, "3.00 − 1.185 × 1.70 m")
	assert.Equal(t, 1200*measure.Millimetre, deck.Most)
	// 1 nm of stature more: 1.10 and 1.185 times it are not whole, and the deck is
	// rounded up.
	deck, _ = DeckFor(300*cm, 170*cm+1)
	assert.Equal(t, measure.Length(1_129_999_999), deck.Best)
	assert.Equal(t, measure.Length(985_499_999), deck.Least)
	assert.Equal(t, measure.Length(1_199_999_999), deck.Most)
}

// Worked by hand from the same ratios: Least of the shortest, Most of the
// tallest.
func TestDeckForCrew(t *testing.T) {
	deck, _ := DeckFor(300*cm, 160*cm, 175*cm)
	assert.Equal(t, 1104*measure.Millimetre, deck.Least)
	assert.Equal(t, 1150*measure.Millimetre, deck.Most)
	assert.True(t, deck.Shared)
	assert.Equal(t, 1150*measure.Millimetre, deck.Best, "half way is 1.1575 m, too high for the tallest")

	deck, problems := DeckFor(300*cm, 185*cm, 0, 160*cm)
	assert.Empty(t, problems)
	assert.Equal(t, 1104*measure.Millimetre, deck.Least)
	assert.Equal(t, 1050*measure.Millimetre, deck.Most)
	assert.False(t, deck.Shared)
}

func TestDeckForMeans(t *testing.T) {
	for _, row := range []struct {
		ceiling measure.Length
		means   Means
		base    bool
	}{
		{187*cm + 15*cm, FromFloor, false},
		{187*cm + 15*cm + 1, LowDeck, true},
		{187*cm + 50*cm, LowDeck, true},
		{187*cm + 50*cm + 1, GuardedDeck, true},
	} {
		deck, _ := DeckFor(row.ceiling)
		assert.Equal(t, row.means, deck.Means, "ceiling %d", row.ceiling)
		assert.True(t, deck.Assumed)
		assert.Equal(t, row.base, deck.Base(4) > 0, "ceiling %d", row.ceiling)
	}
	low, problems := DeckFor(100*cm, 200*cm)
	assert.Empty(t, problems)
	assert.Equal(t, Deck{Shared: true, Means: FromFloor}, low, "no height is below the floor")
}

func TestDeckForRefusals(t *testing.T) {
	for _, row := range []struct {
		ceiling, stature measure.Length
		at               string
	}{
		{0, 170 * cm, "/room/height"},
		{-1, 170 * cm, "/room/height"},
		{300 * cm, 100*cm - 1, "/access/reachBy"},
		{300 * cm, 250*cm + 1, "/access/reachBy"},
		{300 * cm, -170 * cm, "/access/reachBy"},
		{300 * cm, 1 << 62, "/access/reachBy"},
	} {
		deck, problems := DeckFor(row.ceiling, row.stature)
		require.Len(t, problems, 1)
		assert.Equal(t, row.at, problems[0].At)
		assert.Equal(t, Deck{}, deck)
		assert.Equal(t, measure.Length(0), deck.Base(4))
	}
	_, problems := DeckFor(300*cm, 100*cm, 250*cm)
	assert.Empty(t, problems)
}

// A higher ceiling never asks for a lower deck or a narrower base, and a taller
// fitter never for a higher one.
func TestDeckForIsMonotone(t *testing.T) {
	for ceiling := 150 * cm; ceiling < 1500*cm; ceiling += 7 * cm {
		for stature := 120 * cm; stature < 210*cm; stature += 9 * cm {
			deck, _ := DeckFor(ceiling, stature)
			higher, _ := DeckFor(ceiling+3*measure.Millimetre, stature)
			taller, _ := DeckFor(ceiling, stature+3*measure.Millimetre)
			require.LessOrEqual(t, deck.Best, higher.Best)
			require.LessOrEqual(t, deck.Base(3), higher.Base(3))
			require.GreaterOrEqual(t, deck.Best, taller.Best)
			require.True(t, deck.Least <= deck.Best && deck.Best <= deck.Most)
			if base := deck.Base(3); base > 0 {
				require.True(t, base*3 >= deck.Total() && (base-1)*3 < deck.Total(), "the least base that carries the height")
			}
		}
	}
}

func TestBaseRatio(t *testing.T) {
	assert.Equal(t, int64(4), BaseRatio(US))
	for _, country := range []Country{UK, EU, Other, "", "XX"} {
		assert.Equal(t, int64(3), BaseRatio(country))
	}
	deck, _ := DeckFor(300*cm, 170*cm)
	assert.Equal(t, deck.Total(), deck.Base(0), "a ratio below 1 is 1")
	assert.Equal(t, deck.Total(), deck.Base(-4))
}

// A painter's post on a sloped ceiling: ceiling 14 ft 0 in, comfortable reach 6 ft
// 10 in, platform 7 ft 2 in. The rest is worked out from the same ratios.
func TestDeckOfReach(t *testing.T) {
	deck, problems := DeckOf(Job{CeilingHeight: 14 * measure.Foot, Reach: 82 * measure.Inch})
	require.Empty(t, problems)
	assert.Equal(t, 86*measure.Inch, deck.Best)
	assert.True(t, deck.Tried)
	assert.False(t, deck.Assumed)
	assert.Less(t, deck.Least, deck.Best)
	assert.Less(t, deck.Best, deck.Most)

	deck, _ = DeckOf(Job{CeilingHeight: 300 * cm, Reach: 190 * cm, Crew: []measure.Length{170 * cm}})
	assert.Equal(t, 110*cm, deck.Best)
	assert.Equal(t, measure.Length(985_500_000), deck.Least, "as without it")
	assert.Equal(t, 120*cm, deck.Most)

	deck, _ = DeckOf(Job{CeilingHeight: 300 * cm, Reach: 175 * cm, Crew: []measure.Length{170 * cm}})
	assert.Equal(t, 120*cm, deck.Best, "10 cm over the head, not 5")
	deck, _ = DeckOf(Job{CeilingHeight: 300 * cm, Reach: 210 * cm, Crew: []measure.Length{170 * cm}})
	assert.Equal(t, 90*cm, deck.Best)
	assert.Equal(t, 90*cm, deck.Least, "who reaches further than most may stand lower")
	assert.Equal(t, deck.Means, GuardedDeck)

	none, _ := DeckFor(300*cm, 170*cm)
	deck, problems = DeckOf(Job{CeilingHeight: 300 * cm, Crew: []measure.Length{170 * cm}})
	assert.Empty(t, problems)
	assert.Equal(t, none, deck, "without a reach by the heights")
	for _, reach := range []measure.Length{100*cm - 1, 300*cm + 1} {
		deck, problems = DeckOf(Job{CeilingHeight: 300 * cm, Reach: reach, Crew: []measure.Length{170 * cm}})
		require.Len(t, problems, 1)
		assert.Equal(t, "/access/reach", problems[0].At)
		assert.Equal(t, none, deck, "the rest goes on")
	}
	for _, reach := range []measure.Length{100 * cm, 300 * cm} {
		_, problems = DeckOf(Job{CeilingHeight: 400 * cm, Reach: reach})
		assert.Empty(t, problems)
	}
	_, problems = DeckOf(Job{Reach: 200 * cm})
	assert.Len(t, problems, 1, "the ceiling is missing")
}
