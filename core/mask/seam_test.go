package mask_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// A guide to wall stencils: a grid of 4 × 3 panels of 48 × 36 in,
// every seam once and the outside, is 324 + 384 + 600 = 1308 in = 109 ft.
func TestTapeLength_WholeEdge(t *testing.T) {
	outline := mask.Outline{Length: 192 * inch, Width: 108 * inch}
	layer := mask.Layer{Columns: repeat(48*inch, 4), Rows: repeat(36*inch, 3)}
	across, along := measure.Length(0), measure.Length(0)
	for _, seam := range layer.Seams(outline) {
		if seam.Runs == mask.Across {
			across += seam.Length
		} else {
			along += seam.Length
		}
	}
	assert.Equal(t, 324*inch, across)
	assert.Equal(t, 384*inch, along)
	assert.Equal(t, 600*inch, outline.Perimeter())
	assert.Equal(t, 708*inch, layer.SeamLength(outline))
	assert.Equal(t, 708*inch, layer.TapeLength(outline, mask.CoverSeams))
	assert.Equal(t, 109*foot, layer.TapeLength(outline, mask.CoverOutside))
	assert.Equal(t, 6, layer.Crossings())
}

func TestSeams_Names(t *testing.T) {
	outline := mask.Outline{Length: 3 * foot, Width: 2 * foot}
	layer := mask.Layer{Columns: repeat(foot, 3), Rows: repeat(foot, 2)}
	assert.Equal(t, []mask.Seam{
		{Name: "1│2", Runs: mask.Across, After: 1, Length: 2 * foot},
		{Name: "2│3", Runs: mask.Across, After: 2, Length: 2 * foot},
		{Name: "A│B", Runs: mask.Along, After: 1, Length: 3 * foot},
	}, layer.Seams(outline))
	assert.Equal(t, "Z│AA", mask.RowSeam(26))
}

func TestSeams_SumAndCrossingsHoldForEveryGrid(t *testing.T) {
	outline := mask.Outline{Length: 5 * foot, Width: 4*foot + 1}
	for columns := 1; columns <= 6; columns++ {
		for rows := 1; rows <= 6; rows++ {
			layer := mask.Layer{Columns: mask.Equal(outline.Length, columns), Rows: mask.Equal(outline.Width, rows)}
			sum, across, along := measure.Length(0), 0, 0
			for _, seam := range layer.Seams(outline) {
				sum += seam.Length
				if seam.Runs == mask.Across {
					across++
				} else {
					along++
				}
			}
			assert.Equal(t, sum, layer.SeamLength(outline))
			assert.Equal(t, across*along, layer.Crossings())
			assert.Equal(t, columns*rows-1, across+along+layer.Crossings(), "a grid of c × r has cr − 1 = (c−1) + (r−1) + (c−1)(r−1)")
		}
	}
	empty := mask.Layer{Columns: repeat(foot, 3)}
	assert.True(t, empty.IsEmpty())
	assert.Empty(t, empty.Seams(outline))
	assert.Zero(t, empty.SeamLength(outline))
	assert.Zero(t, empty.Crossings())
	assert.Zero(t, empty.TapeLength(outline, mask.CoverOutside))
}
