package survey_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

func TestLargestTriangle(t *testing.T) {
	for _, c := range []struct {
		name          string
		along, across measure.Length
		system        measure.System
		want          survey.Triangle
		ok            bool
	}{
		// Worked by hand: k ≤ min(213.5/4, 160/3) = 53.3 in, so 48 in.
		{"supper room", supper.Length, supper.Width, measure.FeetInches, survey.Triangle{Along: 16 * foot, Across: 12 * foot, Diagonal: 20 * foot}, true},
		{"the same turned", supper.Width, supper.Length, measure.FeetInches, survey.Triangle{Along: 12 * foot, Across: 16 * foot, Diagonal: 20 * foot}, true},
		{"4 m by 3 m", 4000 * mm, 3000 * mm, measure.Metric, survey.Triangle{Along: 4000 * mm, Across: 3000 * mm, Diagonal: 5000 * mm}, true},
		{"a hair short of it", 4000*mm - 1, 3000 * mm, measure.Metric, survey.Triangle{Along: 3600 * mm, Across: 2700 * mm, Diagonal: 4500 * mm}, true},
		{"square: long leg along", 2000 * mm, 2000 * mm, measure.Metric, survey.Triangle{Along: 2000 * mm, Across: 1500 * mm, Diagonal: 2500 * mm}, true},
		{"a cupboard takes the small step", 20 * inch, 16 * inch, measure.FeetInches, survey.Triangle{Along: 20 * inch, Across: 15 * inch, Diagonal: 25 * inch}, true},
		{"small metric step", 90 * mm, 45 * mm, measure.Metric, survey.Triangle{Along: 40 * mm, Across: 30 * mm, Diagonal: 50 * mm}, true},
		{"too small for any", 3 * inch, 3 * inch, measure.FeetInches, survey.Triangle{}, false},
		{"no room", 0, 0, measure.Metric, survey.Triangle{}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := survey.LargestTriangle(c.along, c.across, c.system)
			assert.Equal(t, c.want, got)
			assert.Equal(t, c.ok, ok)
		})
	}
}

func TestLargestTriangle_FitsIsRightAndCannotGrow(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for range 2000 {
		along, across := 600*mm+measure.Length(random.Int63n(int64(20*measure.Metre))), 600*mm+measure.Length(random.Int63n(int64(20*measure.Metre)))
		got, ok := survey.LargestTriangle(along, across, measure.Metric)
		require.True(t, ok)
		require.LessOrEqual(t, got.Along, along)
		require.LessOrEqual(t, got.Across, across)
		one := got.Diagonal / 5
		require.Zero(t, one%survey.StepMetric)
		legs := [2]measure.Length{got.Along, got.Across}
		require.True(t, legs == [2]measure.Length{3 * one, 4 * one} || legs == [2]measure.Length{4 * one, 3 * one})
		next := one + survey.StepMetric
		require.False(t, 4*next <= along && 3*next <= across || 3*next <= along && 4*next <= across, "a larger one fits")
	}
}

func TestTriangle_Strays(t *testing.T) {
	for _, c := range []struct {
		source                 string
		triangle               survey.Triangle
		slip, over, want, near measure.Length
	}{
		// The source says 1.04 in and 0.35 in; the exact fractions are 1 1/24
		// and 25/72 in.
		{"a page on the 3-4-5 rule", survey.Triangle{Along: 3 * foot, Across: 4 * foot, Diagonal: 5 * foot}, inch / 8, 20 * foot, inch * 104 / 100, inch / 200},
		{"a page on the 3-4-5 rule", survey.Triangle{Along: 9 * foot, Across: 12 * foot, Diagonal: 15 * foot}, inch / 8, 20 * foot, inch * 35 / 100, inch / 200},
		// Rounded at the last digit in millimetres to nine decimals.
		{"slip × diagonal ÷ (leg × leg), two ways", survey.Triangle{Along: 600 * mm, Across: 800 * mm, Diagonal: 1000 * mm}, mm, measure.Metre, 2_083_333, 0},
		{"slip × diagonal ÷ (leg × leg), two ways", survey.Triangle{Along: 900 * mm, Across: 1200 * mm, Diagonal: 1500 * mm}, mm, measure.Metre, 1_388_889, 0},
		{"slip × diagonal ÷ (leg × leg), two ways", survey.Triangle{Along: 1500 * mm, Across: 2000 * mm, Diagonal: 2500 * mm}, mm, measure.Metre, 833_333, 0},
		{"slip × diagonal ÷ (leg × leg), two ways", survey.Triangle{Along: 3000 * mm, Across: 4000 * mm, Diagonal: 5000 * mm}, mm, measure.Metre, 416_667, 0},
		{"slip × diagonal ÷ (leg × leg), two ways", survey.Triangle{Along: 2438 * mm, Across: 9144 * mm, Diagonal: inMM(math.Hypot(2438, 9144))}, mm, measure.Metre, 424_501, 0},
		{"no triangle, no error to speak of", survey.Triangle{}, mm, measure.Metre, 0, 0},
	} {
		assert.InDelta(t, int64(c.want), int64(c.triangle.Strays(c.slip, c.over)), float64(c.near), "%s: %v", c.source, c.triangle)
	}
}
