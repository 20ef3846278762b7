package delivery

import (
	"ceilingwright/core/measure"
)

// Growth is film that grew or shrank evenly in one direction: Share is by how
// much of the ordered size, exact, below zero where it shrank; Panels how many
// measured ones say so. Whole is what that makes over all panels in a row, and
// Half what it makes at either end hung from the centre out, both to the
// nanometre. The zero value is no even growth.
type Growth struct {
	Panels      int
	Share       measure.Number
	Whole, Half measure.Length
}

// fewestForGrowth is how many measured panels it takes to speak of the film and
// not of the panels. A choice.
const fewestForGrowth = 3

// growth looks for even growth along the length or across it: each measured
// panel is off by the same share, to within one tape mark, and that share is
// more than the tape hides. Sizes changed on purpose do not count.
func (k *checking) growth(along bool) Growth {
	var off, ordered measure.Length
	panels := 0
	k.eachMeasured(along, func(m, o measure.Length) {
		off, ordered, panels = off+m-o, ordered+o, panels+1
	})
	mark := k.mark
	if panels < fewestForGrowth || 2*off.Abs() <= mark*measure.Length(panels) {
		return Growth{}
	}
	share := float64(off) / float64(ordered)
	even := true
	k.eachMeasured(along, func(m, o measure.Length) {
		rest := float64(m-o) - float64(share*float64(o))
		even = even && rest <= float64(mark) && rest >= -float64(mark)
	})
	if !even {
		return Growth{}
	}
	sizes := k.Ordered.Columns
	if !along {
		sizes = k.Ordered.Rows
	}
	all := measure.Length(0)
	for _, size := range sizes {
		all += size
	}
	g := Growth{Panels: panels, Share: measure.NumberFromFraction(int64(off), int64(ordered))}
	g.Whole = measure.Length(g.Share.Mul(measure.NumberFromInt(int64(all))).RoundHalfEven(0).IntPart())
	g.Half = g.Whole.Half()
	return g
}

// eachMeasured calls for every size that was measured and believed, as it was
// measured.
func (k *checking) eachMeasured(along bool, do func(m, ordered measure.Length)) {
	for i := range k.Panels {
		p := &k.Panels[i]
		if p.State == Recut {
			continue
		}
		m, believed, ordered := p.Measured.Length, p.Used.Length, p.Ordered.Length
		if !along {
			m, believed, ordered = p.Measured.Width, p.Used.Width, p.Ordered.Width
		}
		if believed > 0 {
			do(m, ordered)
		}
	}
}
