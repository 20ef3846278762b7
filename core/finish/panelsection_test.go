package finish

import (
	"slices"
	"testing"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func gridOf(columns, rows []string) (g Grid) {
	for _, c := range columns {
		g.Columns = append(g.Columns, inches(c))
	}
	for _, r := range rows {
		g.Rows = append(g.Rows, inches(r))
	}
	return g
}

func even(columns, rows int, size string) Grid {
	return gridOf(slices.Repeat([]string{size}, columns), slices.Repeat([]string{size}, rows))
}

func TestPanelSectionsWorked(t *testing.T) {
	// Worked: 120 ft² at 8 ft² an hour by two gilders in 3 h, a fifth kept back:
	// 38.4 ft² fit, and of 12 panels of 10 ft² three do, as in TestSectionsWorked.
	s := Sizing{Area: sqft("120"), Rate: sqft("8"), Gilders: 2, Window: num("3"), Reserve: num("0.2")}
	found, problems, ok := SectionsOfPanels(even(4, 3, "38"), s, 0)
	require.True(t, ok)
	assert.Empty(t, problems)
	isRounded(t, "38.4", found.Most.SquareFeet(), "most")
	require.Len(t, found.Sections, 4)
	assert.True(t, found.Fewest)
	for i := range found.Sections {
		assert.Equal(t, 3, found.Sections[i].Panels)
		isRounded(t, "30/1", found.Sections[i].Area.SquareFeet(), "area")
		isRounded(t, "15/8", found.Sections[i].Hours, "hours")
	}
}

func TestPanelSectionsOfMixedSize(t *testing.T) {
	// A leaf supplier's sheet on slow size mixed with quick size: tack in 3 h,
	// then 3 h for leaf; 168 ft² at 20 ft² an hour. 60 ft² fit, so three sections;
	// the sheet's 60, 60 and 48 become equal ones of whole panels, 56 each.
	s := Sizing{Area: sqft("168"), Rate: sqft("20"), Gilders: 1, Window: num("3")}
	found, _, ok := SectionsOfPanels(even(6, 4, "24"), s, 0)
	require.True(t, ok)
	require.Len(t, found.Sections, 3)
	for _, one := range found.Sections {
		isRounded(t, "56/1", one.Area.SquareFeet(), "area")
		isRounded(t, "14/5", one.Hours, "hours")
	}
}

func TestSizeGoesPastTheLine(t *testing.T) {
	// A gilder's notes of May 2011: a ceiling of 14 × 12 ft, 5 ft a day along the
	// 14, sized half a foot past the line: two lines of 12 ft, 12 ft² sized twice,
	// size for 180 ft² and not 168. Here the panels are 1 × 12 ft.
	g := gridOf(slices.Repeat([]string{"12"}, 14), []string{"144"})
	s := Sizing{Area: sqft("168"), Rate: sqft("10"), Gilders: 1, Window: num("6")}
	found, _, ok := SectionsOfPanels(g, s, inches("6"))
	require.True(t, ok)
	require.Len(t, found.Sections, 3)
	assert.Equal(t, 24*measure.Foot, found.Stops)
	isRounded(t, "12/1", found.Beyond.SquareFeet(), "beyond")
	sum := measure.Area{}
	for _, one := range found.Sections {
		sum = sum.Add(one.Sized)
		assert.LessOrEqual(t, one.Panels, 5)
	}
	isRounded(t, "180/1", sum.SquareFeet(), "sized")
	isRounded(t, "0/1", found.Sections[2].Sized.Sub(found.Sections[2].Area).SquareFeet(), "the last goes past no line")
}

func TestPanelTooLargeForTheWindow(t *testing.T) {
	s := Sizing{Area: sqft("40"), Rate: sqft("4"), Gilders: 1, Window: num("2")}
	_, problems, ok := SectionsOfPanels(even(2, 2, "24"), s, 0)
	assert.False(t, ok)
	isOnly(t, problems, "/window", problem.Stop)
	assert.Equal(t, "The largest panel takes 2.5 hours to lay, and the size leaves 2.", problems[0].What.String())
	assert.Equal(t, "Use a size that stays open for 2.5 hours, or one gilder more.", problems[0].Do.String())
	s.Gilders = 2
	found, _, ok := SectionsOfPanels(even(2, 2, "24"), s, 0)
	require.True(t, ok, "what was offered has to help")
	assert.Len(t, found.Sections, 4)
	s.Gilders, s.Window = 1, num("2.5")
	_, _, ok = SectionsOfPanels(even(2, 2, "24"), s, 0)
	assert.True(t, ok, "and so has the other")
}

func TestPanelSectionsRefuse(t *testing.T) {
	s := Sizing{Area: sqft("40"), Rate: sqft("4"), Gilders: 1, Window: num("2")}
	_, problems, ok := SectionsOfPanels(Grid{}, s, 0)
	assert.False(t, ok)
	isOnly(t, problems, "/panels", problem.Stop)
	_, problems, ok = SectionsOfPanels(gridOf([]string{"24", "0"}, []string{"24"}), s, 0)
	assert.False(t, ok)
	isOnly(t, problems, "/panels", problem.Stop)
	_, problems, ok = SectionsOfPanels(even(2, 2, "24"), Sizing{}, 0)
	assert.False(t, ok)
	assert.Equal(t, []string{"/rate", "/window", "/gilders"}, places(problems))
	s.Area = measure.Area{}
	found, _, ok := SectionsOfPanels(even(2, 2, "24"), s, 0)
	assert.True(t, ok)
	assert.Empty(t, found.Sections, "no area has no sections")
}

// brute is the fewest sections that each hang together and weigh at most most,
// and the least that the largest of so few weighs: every way to give panels to
// sections is tried.
func brute(c *cutting) (count int, largest int64) {
	n := len(c.weights)
	of, sums := make([]int, n), make([]int64, n)
	count = n + 1
	var give func(i, used int)
	give = func(i, used int) {
		if used > count {
			return
		}
		if i == n {
			top := slices.Max(sums[:used])
			if (used < count || top < largest) && hangTogether(c, of, used) {
				count, largest = used, top
			}
			return
		}
		for section := range min(used+1, n) {
			if sums[section]+c.weights[i] > c.most {
				continue
			}
			of[i] = section
			sums[section] += c.weights[i]
			give(i+1, max(used, section+1))
			sums[section] -= c.weights[i]
		}
	}
	give(0, 0)
	return count, largest
}

// hangTogether floods each section from its first panel.
func hangTogether(c *cutting, of []int, count int) bool {
	seen := make([]bool, len(of))
	regions := 0
	var flood func(i int)
	flood = func(i int) {
		seen[i] = true
		for j := range of {
			apart := max(j%c.across-i%c.across, i%c.across-j%c.across) + max(j/c.across-i/c.across, i/c.across-j/c.across)
			if apart == 1 && !seen[j] && of[j] == of[i] {
				flood(j)
			}
		}
	}
	for i := range of {
		if !seen[i] {
			regions++
			flood(i)
		}
	}
	return regions == count
}

func TestPanelSectionsAgainstEveryDivision(t *testing.T) {
	sizes := []string{"12", "18", "24", "31.5", "40", "7.25"}
	seed := uint32(7)
	next := func(n int) int { seed = seed*1664525 + 1013904223; return int(seed>>16) % n }
	tried := 0
	for _, shape := range [][2]int{{1, 1}, {5, 1}, {1, 4}, {2, 2}, {3, 2}, {3, 3}, {4, 2}, {2, 4}} {
		for range 30 {
			var columns, rows []string
			for range shape[0] {
				columns = append(columns, sizes[next(len(sizes))])
			}
			for range shape[1] {
				rows = append(rows, sizes[next(len(sizes))])
			}
			c := cuttingOf(gridOf(columns, rows))
			c.most = c.heaviest + (c.total-c.heaviest)*int64(next(100))/150
			c.divide()
			count, largest := brute(c)
			require.Len(t, c.best.sums, count, "%v %v", columns, rows)
			require.True(t, c.best.fewest, "%v %v", columns, rows)
			got := slices.Max(c.best.sums)
			require.GreaterOrEqual(t, got, largest)
			require.LessOrEqual(t, float64(got), 1.011*float64(largest), "%v %v", columns, rows)
			tried++
		}
	}
	require.Equal(t, 240, tried)
}

func TestPanelSectionsHold(t *testing.T) {
	for _, shape := range [][2]int{{6, 5}, {5, 3}, {13, 7}, {100, 100}, {1, 40}} {
		g := even(shape[0], shape[1], "30")
		g.Columns[0] += measure.Millimetre * 3
		for _, most := range []string{"2", "3.5", "9", "1000"} {
			s := Sizing{Area: measure.Area{SquareMetres: measure.NumberFromInt(int64(shape[0] * shape[1]))}, Rate: sqm("1.02"), Gilders: 1, Window: num(most)}
			found, _, ok := SectionsOfPanels(g, s, measure.Inch)
			require.True(t, ok)
			c := cuttingOf(g)
			of := make([]int, len(found.Of))
			sum := measure.Area{}
			for i, section := range found.Of {
				of[i] = int(section)
			}
			if len(of) <= 100 {
				assert.True(t, hangTogether(c, of, len(found.Sections)), "%v at %s", shape, most)
			}
			for _, one := range found.Sections {
				assert.Positive(t, one.Panels)
				assert.LessOrEqual(t, one.Hours.Cmp(s.Window), 0)
				sum = sum.Add(one.Area)
			}
			assert.Zero(t, sum.SquareMetres.Cmp(s.Area.SquareMetres), "the sections are the whole")
		}
	}
}

func BenchmarkSectionsOfPanels(b *testing.B) {
	s := Sizing{Area: sqft("168"), Rate: sqft("8"), Gilders: 2, Window: num("3"), Reserve: num("0.2")}
	g := even(6, 5, "30")
	for b.Loop() {
		SectionsOfPanels(g, s, measure.Inch)
	}
}
