package tell

import (
	"math"
	"strconv"
	"strings"

	"ceilingwright/core/hanging"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// markSum is how a mark along a wall comes about, as a sum without its result; ""
// where the mark is a measured one. walls is the wall with all its marks.
func (b *builder) markSum(w *setout.WallMarks, t *tick) string {
	if slope := survey.SlopeText(math.Abs(t.Cast.Slope)); slope != survey.SlopeText(0) {
		sign := " + "
		if t.Cast.Slope < 0 {
			sign = " − "
		}
		return b.Put(t.Cast.Along) + sign + b.Put(t.Cast.Off) + " × " + slope
	}
	near, side, ok := boxOn(w)
	if !ok {
		return ""
	}
	// The mask may lie with its own edge at the far end.
	forward := (near + t.In - t.At).Abs() <= onePlace
	switch t.Kind {
	case setout.BoxMark:
		if t.At-near <= onePlace {
			return b.nearSum(w)
		}
		return b.Put(near) + " + " + b.Put(side)
	case setout.CentreMark:
		return b.Put(near) + " + " + b.Put(side) + " ÷ 2"
	case setout.SeamMark:
		return b.seamSum(t, near, forward)
	}
	if b.Plan.Fixture.At == survey.InMiddle {
		return b.Put(w.Length) + " ÷ 2"
	}
	return ""
}

// boxOn is the nearer of the two marks of the mask's outline on a wall, and the
// mask's side between them.
func boxOn(w *setout.WallMarks) (near, side measure.Length, ok bool) {
	var at []measure.Length
	for _, m := range w.Marks {
		if m.Kind == setout.BoxMark {
			at = append(at, m.At)
		}
	}
	if len(at) != 2 {
		return 0, 0, false
	}
	return at[0], at[1] - at[0], true
}

// nearSum is the sum of the border before the mask, as the figure of that border
// has it.
func (b *builder) nearSum(w *setout.WallMarks) string {
	wall := survey.DA
	if w.Wall == survey.BC || w.Wall == survey.DA {
		wall = survey.AB
	}
	if !b.Room.Shape.IsRectangle() {
		return ""
	}
	return b.sumOf("border." + string(wall))
}

// seamSum is the border, the panels before the seam and their gaps.
func (b *builder) seamSum(t *tick, near measure.Length, forward bool) string {
	for i := range b.Layers {
		l := &b.Layers[i]
		if l.Panels.ID != t.layers[0] {
			continue
		}
		columns, after, ok := mask.ParseSeam(t.Label)
		run := &l.Rows
		if columns {
			run = &l.Columns
		}
		if ok && after <= len(run.Gaps) {
			return b.Put(near) + " + " + b.beforeSeam(run, after-1, forward)
		}
	}
	return ""
}

// beforeSeam is the way in a run from its start, or from its far end, to the
// middle of a seam.
func (b *builder) beforeSeam(run *mask.Run, seam int, forward bool) string {
	if forward {
		return b.panelsAndGaps(run.Sizes[:seam+1], run.Seam(seam))
	}
	return b.sumOfPanels(run.Sizes[seam+1:], true, run.Box-run.Seam(seam))
}

// panelsAndGaps writes a length as the panels in it and what their gaps add: equal
// panels in a row are counted.
func (b *builder) panelsAndGaps(sizes []measure.Length, total measure.Length) string {
	return b.sumOfPanels(sizes, false, total)
}

// mostSummed is how many different panels a sum writes out: what comes after
// them it takes together.
const mostSummed = 12

// sumOfPanels is panelsAndGaps, from the last panel on where backward is true.
func (b *builder) sumOfPanels(sizes []measure.Length, backward bool, total measure.Length) string {
	var parts []string
	rest := total
	size := func(i int) measure.Length {
		if backward {
			i = len(sizes) - 1 - i
		}
		return sizes[i]
	}
	for i := 0; i < len(sizes); {
		count := i
		if len(parts) == mostSummed {
			others := measure.Length(0)
			for ; count < len(sizes); count++ {
				others += size(count)
			}
			rest -= others
			parts = append(parts, b.Put(others)+" of other panels")
			break
		}
		for count < len(sizes) && (size(count)-size(i)).Abs() <= measure.Nanometre {
			rest -= size(count)
			count++
		}
		part := b.Put(size(i))
		if count-i > 1 {
			part = strconv.Itoa(count-i) + " × " + part
		}
		parts = append(parts, part)
		i = count
	}
	sum := strings.Join(parts, " + ")
	switch {
	case rest > onePlace*measure.Length(len(sizes)+1):
		sum += " + " + b.Put(rest) + " of gaps"
	case -rest > onePlace*measure.Length(len(sizes)+1):
		sum += " − " + b.Put(-rest) + " closed up"
	}
	if sum == "" {
		return b.Put(0)
	}
	return sum
}

// stretch is a block's part of a run: its first panel, counted from 0, and how
// many.
type stretch struct {
	run          *mask.Run
	first, count int
}

// starts and ends are where it begins and ends, from the tape line the run is
// counted from.
func (s stretch) starts() measure.Length { return s.run.Starts[s.first] }

func (s stretch) ends() measure.Length {
	last := s.first + s.count - 1
	return s.run.Starts[last] + s.run.Sizes[last]
}

// offsetSum is the distance of an edge of a block from a line, as a sum without
// its result: the panels between the edge and a tape line, or those and half of
// the mask.
func (b *builder) offsetSum(s stretch, o hanging.Offset) string {
	low := o.Edge == survey.DA || o.Edge == survey.AB
	at, edge := s.ends(), s.first+s.count
	if low {
		at, edge = s.starts(), s.first
	}
	before := func() string { return b.panelsAndGaps(s.run.Sizes[:edge], at) }
	half := b.Put(s.run.Box) + " ÷ 2"
	switch {
	case o.Line == hanging.ToCentreLine && 2*at > s.run.Box:
		return before() + " − " + half
	case o.Line == hanging.ToCentreLine && edge == 0:
		return half + " − " + b.Put(at)
	case o.Line == hanging.ToCentreLine:
		return half + " − " + bracketed(before())
	case o.Side == survey.DA || o.Side == survey.AB:
		return before()
	}
	return b.sumOfPanels(s.run.Sizes[edge:], true, s.run.Box-at)
}

// bracketed is a sum that something is taken from, in brackets where it has more
// than one term.
func bracketed(sum string) string {
	if strings.Contains(sum, " + ") || strings.Contains(sum, " − ") {
		return "(" + sum + ")"
	}
	return sum
}

// diagonalSum is the diagonal of a block as a sum.
func (c *cards) diagonalSum(block hanging.Block, diagonal measure.Length) string {
	along := stretch{&c.layer.Columns, block.Column - 1, block.Columns}
	across := stretch{&c.layer.Rows, block.Row - 1, block.Rows}
	return "√((" + c.Put(along.ends()-along.starts()) + ")² + (" + c.Put(across.ends()-across.starts()) + ")²) = " + c.Exactly(diagonal)
}
