package finish

import (
	"testing"

	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSectionsWorked(t *testing.T) {
	// Worked: 120 ft² at 8 ft² an hour by two gilders in a window of 3 h, a fifth
	// kept back, are four sections of 30 ft², each laid in 1.875 h.
	sectioned, problems, ok := Sections(Sizing{Area: sqft("120"), Rate: sqft("8"), Gilders: 2, Window: num("3"), Reserve: num("0.2")})
	require.True(t, ok)
	assert.Empty(t, problems)
	isRounded(t, "38.4", sectioned.Most.SquareFeet(), "most")
	assert.Equal(t, int64(4), sectioned.Count)
	isRounded(t, "30/1", sectioned.Each.SquareFeet(), "each")
	isRounded(t, "15/8", sectioned.Hours, "hours")
}

func TestDomeTakesAWeekOfSections(t *testing.T) {
	// A state capitol dome notice, 2013, plans 50 to 100 ft² a day for the crew.
	// At the faster rate, a water size open for a day of 8 h and nothing kept
	// back, 700 ft² are seven days' sections.
	sectioned, _, ok := Sections(Sizing{Area: sqft("700"), Rate: sqft("12.5"), Gilders: 1, Window: num("8")})
	require.True(t, ok)
	assert.Equal(t, int64(7), sectioned.Count)
}

func TestSectionsFitTheWindow(t *testing.T) {
	for _, area := range []string{"0", "0.001", "38.4", "38.4001", "76.8", "1000"} {
		s := Sizing{Area: sqft(area), Rate: sqft("8"), Gilders: 2, Window: num("3"), Reserve: num("0.2")}
		sectioned, _, ok := Sections(s)
		require.True(t, ok, area)
		assert.LessOrEqual(t, sectioned.Hours.Cmp(num("2.4")), 0, area)
	}
	sectioned, _, _ := Sections(Sizing{Area: sqft("38.4"), Rate: sqft("8"), Gilders: 2, Window: num("3"), Reserve: num("0.2")})
	assert.Equal(t, int64(1), sectioned.Count, "exactly one window is one section")
}

func TestSectionsRefuses(t *testing.T) {
	_, problems, ok := Sections(Sizing{Area: sqft("-1"), Reserve: num("1")})
	assert.False(t, ok)
	assert.Equal(t, []string{"/area", "/rate", "/window", "/gilders", "/reserve"}, places(problems))
	for _, p := range problems {
		isSentence(t, p)
	}
	_, problems, ok = Sections(Sizing{Area: sqft("100000"), Rate: sqft("1"), Gilders: 1, Window: num("0.01")})
	assert.False(t, ok)
	isOnly(t, problems, "/window", problem.Stop)
}
