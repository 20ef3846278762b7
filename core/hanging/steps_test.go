package hanging

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// The work grows with the panels and no faster, counted in offers made, not
// timed: each panel is offered once for every neighbour that goes up before it
// and every station it is hung from.
func TestOrder_WorkIsLinear(t *testing.T) {
	for _, side := range []int{10, 30, 100} {
		total := measure.Length(side) * measure.Foot
		run := mask.RunFromSizes(mask.Equal(total, side), 0, total)
		job := Job{Columns: run, Rows: run}
		w := newWork(newGround(job), job)
		w.all()
		panels := side * side
		assert.Equal(t, 2*side*(side-1), w.pushes, "one for each seam between two panels, without stations")

		for i := range measure.Length(16) {
			r := Rect{X: i % 4 * total / 4, Y: i / 4 * total / 4, Length: total/4 + measure.Foot, Width: total/4 + measure.Foot}
			job.Stations = append(job.Stations, Station{Deck: r, Reach: r})
		}
		w = newWork(newGround(job), job)
		w.all()
		assert.Less(t, w.pushes, 9*panels)
		assert.Less(t, len(w.reach.list), 4*panels+1)
	}
}

func TestWide(t *testing.T) {
	longest := squareOf(measure.Longest)
	assert.Equal(t, wide{542, 1864712049423024128}, longest, "1e22 = 542 × 2⁶⁴ + the rest")
	assert.True(t, squareOf(1).less(longest) && !longest.less(longest))
	assert.Equal(t, wide{1, 1}, wide{0, math.MaxUint64}.plus(wide{0, 2}), "carried")
}
