package setout_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// Whatever the outline, the mask and the wish, there is an answer, its borders
// are lengths, and what is placed inside has its marks on the walls.
func TestSite_TakesAnything(t *testing.T) {
	random := rand.New(rand.NewSource(13))
	long := func() measure.Length {
		switch random.Intn(6) {
		case 0:
			return measure.Length(random.Intn(5))
		case 1:
			return measure.Longest
		}
		return measure.Length(random.Int63n(int64(8 * measure.Metre)))
	}
	for range 30 {
		site := setout.Site{Shape: survey.ShapeFromSides(survey.Round, long(), long())}
		if random.Intn(4) > 0 {
			corners := make([]survey.Point, 3+random.Intn(6))
			for i := range corners {
				corners[i] = survey.Point{X: long(), Y: long()}
			}
			site.Shape = survey.ShapeFromCorners(survey.Points, corners)
		}
		if random.Intn(2) == 0 {
			site.Fixture, site.Point = setout.SpotAt(survey.Point{X: long(), Y: long()}), setout.SpotAt(survey.Point{X: long(), Y: long()})
			site.AxisX, site.AxisY = random.NormFloat64(), random.NormFloat64()
		}
		o := mask.Outline{Length: long(), Width: long()}
		wish := setout.Way{On: []setout.On{"room", "fixture", "point", "", "moon"}[random.Intn(5)], Square: []setout.Square{"room", "AB", "CD", "fixture", "", "ZZ"}[random.Intn(6)], Turned: random.Intn(2) == 0}
		least := long()
		way, _ := site.Settle(wish)
		choices, taken := site.Choices(way, o, least, sixteenth)
		require.Equal(t, site.Shape.Usable() && o.IsComplete(), taken >= 0, "%+v %+v", site, o)
		setout.Recommend(choices, way.On)
		site.Largest(way, all(least))
		site.LargestSide(way, setout.LongSide, o.Width, all(least))
		for _, c := range choices {
			site.CheckFit(o, c.Box.Turn, least)
			for _, p := range c.Layout.Places {
				require.Less(t, p.Length.Abs(), 1000*measure.Longest, "%+v", p)
			}
			site.Corners(c.Box, c.Layout)
			for _, w := range site.Marks(c.Box, []mask.Layer{layerOf(o, 3, 2)}) {
				for _, m := range w.Marks {
					require.Less(t, m.At.Abs(), 1000*measure.Longest)
				}
			}
			hole := setout.HoleOf(c.Box, random.Intn(2) == 0, survey.Point{X: long(), Y: long()}, long(), long(), setout.Turn{})
			columns, rows := layerOf(o, 3, 2).Runs(o)
			hole.Cuts(columns, rows)
			hole.Seams(columns, rows, o)
		}
	}
}

// Ten thousand panels take a step for each seam and wall, not for each two.
func TestMarks_OfTenThousandPanels(t *testing.T) {
	site := setout.Site{Shape: skew}
	o := mask.Outline{Length: 3600 * mm, Width: 2600 * mm}
	box := placed(t, site, setout.OnRoom, o)
	count := 0
	for _, w := range site.Marks(box, []mask.Layer{layerOf(o, 10_000, 1)}) {
		count += len(w.Marks)
	}
	require.Equal(t, 2*(6+9_999), count)
}
