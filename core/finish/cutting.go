package finish

import (
	"math/bits"
	"slices"

	"ceilingwright/core/measure"
)

// cutting divides the panels of a grid into sections. Weights are the panels'
// shares of the whole, in square micrometres.
type cutting struct {
	across, down   int
	columns, rows  []int64 // micrometres
	weights        []int64 // in reading order
	total          int64
	heaviest, most int64 // the heaviest panel, and the most a section may weigh
	path           []int32
	need           []int32
	best           division
}

// division is one way to divide the panels: the section of each, the weight of
// each section and the length of the lines between them.
type division struct {
	of     []int32
	sums   []int64
	stops  measure.Length
	fewest bool
}

func cuttingOf(g Grid) *cutting {
	c := &cutting{across: len(g.Columns), down: len(g.Rows), columns: micrometres(g.Columns), rows: micrometres(g.Rows)}
	c.weights = make([]int64, 0, c.across*c.down)
	for _, row := range c.rows {
		for _, column := range c.columns {
			weight := row * column
			c.weights = append(c.weights, weight)
			c.total += weight
			c.heaviest = max(c.heaviest, weight)
		}
	}
	return c
}

func micrometres(sizes []measure.Length) []int64 {
	list := make([]int64, len(sizes))
	for i, size := range sizes {
		list[i] = int64((size + 500) / 1000)
	}
	return list
}

// whole is the area of the grid.
func (c *cutting) whole() measure.Area {
	return measure.Area{SquareMetres: measure.NumberFromFraction(c.total, 1_000_000_000_000)}
}

// weightOf is what an area weighs, rounded down, where all of it is whole.
func (c *cutting) weightOf(area, whole measure.Area) int64 {
	weight, fits := area.SquareMetres.Quo(whole.SquareMetres).Mul(measure.NumberFromInt(c.total)).Floor()
	if !fits || weight > c.total {
		return c.total
	}
	return weight
}

func (c *cutting) areaOf(weight int64, whole measure.Area) measure.Area {
	return whole.Times(measure.NumberFromFraction(weight, c.total))
}

// divide finds the best division.
func (c *cutting) divide() {
	for turn := range 4 {
		c.walk(turn&1 == 1, turn&2 == 2)
		if d := c.cut(); turn == 0 || c.isBetter(d) {
			c.best = d
		}
	}
	least := c.least()
	if len(c.best.sums) > least || 100*(c.total/int64(len(c.best.sums))) < 99*slices.Max(c.best.sums) {
		c.search(least)
	}
	c.best.fewest = c.best.fewest || len(c.best.sums) == least
}

// isBetter tells whether a division has fewer sections, or as many and the
// largest of them smaller, or as large and shorter lines.
func (c *cutting) isBetter(d division) bool {
	if len(d.sums) != len(c.best.sums) {
		return len(d.sums) < len(c.best.sums)
	}
	if a, b := slices.Max(d.sums), slices.Max(c.best.sums); a != b {
		return a < b
	}
	return d.stops < c.best.stops
}

// least is what no division goes below: the whole weight over the most of a
// section, and the panels over as many of the lightest as fit one.
func (c *cutting) least() int {
	sorted := slices.Clone(c.weights)
	slices.Sort(sorted)
	fit, sum := 0, int64(0)
	for fit < len(sorted) && sum+sorted[fit] <= c.most {
		sum += sorted[fit]
		fit++
	}
	byCount := (len(sorted) + fit - 1) / fit
	return max(byCount, int((c.total+c.most-1)/c.most))
}

// walk takes the panels in a row that turns at each end: along the rows, or
// across them, from the first column or row or from the last.
func (c *cutting) walk(crosswise, fromEnd bool) {
	c.path = c.path[:0]
	outer, inner := c.down, c.across
	if crosswise {
		outer, inner = inner, outer
	}
	for o := range outer {
		for i := range inner {
			if (o&1 == 1) != fromEnd {
				i = inner - 1 - i
			}
			if crosswise {
				c.path = append(c.path, int32(i*c.across+o))
			} else {
				c.path = append(c.path, int32(o*c.across+i))
			}
		}
	}
}

// cut cuts the path into as few sections as it can be, the largest as small as
// that allows and the others as near to equal.
func (c *cutting) cut() division {
	count := c.needs(c.most)
	low, high := max(c.heaviest, c.total/count), c.most
	for low < high {
		if middle := low + (high-low)/2; c.needs(middle) <= count {
			high = middle
		} else {
			low = middle + 1
		}
	}
	return c.spread(high, int(count))
}

// needs is how many sections of at most so much the path takes, the first as
// long as it can be, and so on.
func (c *cutting) needs(most int64) int64 {
	count, sum := int64(1), int64(0)
	for _, panel := range c.path {
		if weight := c.weights[panel]; sum+weight > most {
			count, sum = count+1, weight
		} else {
			sum += weight
		}
	}
	return count
}

// needsFrom notes for each place on the path how many sections the rest takes.
func (c *cutting) needsFrom(most int64) {
	n := len(c.path)
	c.need = slices.Grow(c.need[:0], n+1)[:n+1]
	c.need[n] = 0
	end, sum := n, int64(0)
	for start := n - 1; start >= 0; start-- {
		for sum += c.weights[c.path[start]]; sum > most; {
			end--
			sum -= c.weights[c.path[end]]
		}
		c.need[start] = c.need[end] + 1
	}
}

// spread cuts the path into count sections of at most most, each as near as can
// be to an equal part of what is left.
func (c *cutting) spread(most int64, count int) division {
	c.needsFrom(most)
	d := division{of: make([]int32, len(c.path)), sums: make([]int64, 0, count)}
	left, at := c.total, 0
	for section := range count {
		rest := count - 1 - section
		ideal := left / int64(rest+1)
		sum, end := int64(0), at
		for end < len(c.path)-rest && sum+c.weights[c.path[end]] <= most {
			weight := c.weights[c.path[end]]
			if end > at && int(c.need[end]) <= rest && sum+weight-ideal > ideal-sum {
				break
			}
			sum += weight
			d.of[c.path[end]] = int32(section)
			end++
		}
		d.sums = append(d.sums, sum)
		left, at = left-sum, end
	}
	d.stops = c.stops(d.of)
	return d
}

// eachLine goes through the lines between panels of different sections.
func (c *cutting) eachLine(of []int32, line func(a, b int32, length int64)) {
	for row := range c.down {
		for column := range c.across {
			i := row*c.across + column
			if column+1 < c.across && of[i] != of[i+1] {
				line(of[i], of[i+1], c.rows[row])
			}
			if row+1 < c.down && of[i] != of[i+c.across] {
				line(of[i], of[i+c.across], c.columns[column])
			}
		}
	}
}

func (c *cutting) stops(of []int32) (sum measure.Length) {
	c.eachLine(of, func(_, _ int32, length int64) { sum += 1000 * measure.Length(length) })
	return sum
}

// ahead is for each section the length of its lines with later ones.
func (c *cutting) ahead(of []int32, count int) []measure.Length {
	list := make([]measure.Length, count)
	c.eachLine(of, func(a, b int32, length int64) { list[min(a, b)] += 1000 * measure.Length(length) })
	return list
}

// Above searchedPanels panels, and after searchedSteps steps, the search gives
// up: the division found along the path then stands.
const (
	searchedPanels = 24
	searchedSteps  = 4000
)

// search looks for fewer sections than the path gave, down to least, and then
// for a smaller largest one, through all divisions of a small grid.
func (c *cutting) search(least int) {
	if len(c.weights) > searchedPanels {
		return
	}
	s := newSearch(c)
	for len(c.best.sums) > least {
		found, settled := s.try(len(c.best.sums)-1, c.most)
		if !found {
			c.best.fewest = settled
			break
		}
		c.best = s.division()
	}
	for {
		largest := slices.Max(c.best.sums)
		if found, _ := s.try(len(c.best.sums), largest-1); !found {
			return
		}
		fewest := c.best.fewest
		c.best = s.division()
		c.best.fewest = fewest
	}
}

// searching is a search through the divisions of few panels; a set of panels is
// a set of bits.
type searching struct {
	*cutting
	beside []uint32 // the panels that share an edge with each
	made   []uint32
	most   int64
	steps  int
}

func newSearch(c *cutting) *searching {
	s := &searching{cutting: c, beside: make([]uint32, len(c.weights))}
	for i := range c.weights {
		if column := i % c.across; column > 0 {
			s.beside[i] |= 1 << (i - 1)
			s.beside[i-1] |= 1 << i
		}
		if i >= c.across {
			s.beside[i] |= 1 << (i - c.across)
			s.beside[i-c.across] |= 1 << i
		}
	}
	return s
}

// try looks for a division into at most count sections of at most most. settled
// tells that there is none, where none was found.
func (s *searching) try(count int, most int64) (found, settled bool) {
	s.made, s.most, s.steps = s.made[:0], most, searchedSteps
	found = most > 0 && s.rest(1<<len(s.weights)-1, s.total, count)
	return found, s.steps > 0
}

// rest divides the panels that are left, the section of the first of them
// before the others.
func (s *searching) rest(left uint32, weight int64, count int) bool {
	if left == 0 {
		return true
	}
	if count == 0 || (weight-1)/int64(count) >= s.most {
		return false
	}
	first := bits.TrailingZeros32(left)
	return s.grow(left, 1<<first, s.beside[first]&left, 1<<first, s.weights[first], weight, count)
}

// grow takes the section made so far with one more of the panels open to it, or
// as it is. A panel that was passed over is not taken later, so that each set of
// panels is come to once.
func (s *searching) grow(left, section, open, passed uint32, sum, weight int64, count int) bool {
	if s.steps--; s.steps < 0 || sum > s.most {
		return false
	}
	for ; open != 0; open &= open - 1 {
		next := bits.TrailingZeros32(open)
		passed |= 1 << next
		more := open&(open-1) | s.beside[next]&left&^section&^passed
		if s.grow(left, section|1<<next, more, passed, sum+s.weights[next], weight, count) {
			return true
		}
	}
	s.made = append(s.made, section)
	if s.rest(left&^section, weight-sum, count-1) {
		return true
	}
	s.made = s.made[:len(s.made)-1]
	return false
}

// division is what was found.
func (s *searching) division() division {
	d := division{of: make([]int32, len(s.weights)), sums: make([]int64, len(s.made))}
	for i, section := range s.made {
		for set := section; set != 0; set &= set - 1 {
			panel := bits.TrailingZeros32(set)
			d.of[panel] = int32(i)
			d.sums[i] += s.weights[panel]
		}
	}
	d.stops = s.stops(d.of)
	return d
}
