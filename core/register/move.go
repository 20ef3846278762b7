package register

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
)

// Move is what to do to a layer, or to a part of one, to put it right: shift its
// middle by so much and turn it about its middle. RunOff is what the turn makes
// over a length of Over, above zero clockwise looking up.
type Move struct {
	Shift  Offset
	RunOff measure.Length
	Over   measure.Length
}

// part is a layer or a piece of one: its middle, and the side its turn is
// measured along.
type part struct {
	middle survey.Point
	over   measure.Length
}

// whole is all of a layer; its turn is measured along the length.
func (g Grid) whole() part {
	return part{survey.Point{X: g.Columns.Box.Half(), Y: g.Rows.Box.Half()}, g.Columns.Box}
}

// half is what lies on one side of a seam between columns, or between rows,
// that far from the tape line; its turn is measured along the longer side.
func (g Grid) half(columns, high bool, seam measure.Length) part {
	length, width := g.Columns.Box, g.Rows.Box
	side, along := &width, measure.Length(0)
	if columns {
		side = &length
	}
	if high {
		*side, along = *side-seam, seam
	} else {
		*side = seam
	}
	p := part{survey.Point{X: length.Half(), Y: width.Half()}, max(length, width)}
	if columns {
		p.middle.X += along
	} else {
		p.middle.Y += along
	}
	return p
}

// moveOf undoes the fit at the middle of a part.
func (f Fit) moveOf(p part) Move {
	off := f.At(p.middle)
	turned, _ := f.RunOff(p.over)
	return Move{Shift: Offset{-off.X, -off.Y}, RunOff: -turned, Over: p.over}
}

// Seams is how to set the seams of a layer anew, so that its marks come within
// the tolerance, and how to move it then; Left is the most that is left at a
// mark.
type Seams struct {
	Along, Across Set
	Move          Move
	Left          measure.Length
}

// Set is how to open the seams of one direction (above zero) or close them
// (below zero), each by so much. Along the length there are the seams between
// columns. Each is 0 where they stay as they are.
type Set struct {
	Count int
	Each  measure.Length
}

// setSeams tries the seams of one direction, then of the other, then of both.
// What a seam took too much of shows in every mark beyond it, so a mark is off
// by as many times that as there are seams before it; that much is taken from
// the marks by least squares, and what is left is fitted again. Seams are not
// closed beyond nothing.
func (f Fit) setSeams(g Grid, tolerance measure.Length) *Seams {
	for _, try := range [3][2]bool{{true, false}, {false, true}, {true, true}} {
		var s Seams
		along, across := make([]float64, len(f.Marks)), make([]float64, len(f.Marks))
		if try[0] {
			s.Along = f.perSeam(g.Columns, along, func(i int) (want, off float64) { return f.straight(i).alongX() })
		}
		if try[1] {
			s.Across = f.perSeam(g.Rows, across, func(i int) (want, off float64) { return f.straight(i).alongY() })
		}
		if try[0] && s.Along.Each == 0 || try[1] && s.Across.Each == 0 {
			continue
		}
		set := make([]Mark, len(f.Marks))
		for i, m := range f.Marks {
			m.Got.X -= measure.LengthFromMillimetres(float64(f.cos*along[i]) - float64(f.sin*across[i]))
			m.Got.Y -= measure.LengthFromMillimetres(float64(f.sin*along[i]) + float64(f.cos*across[i]))
			set[i] = m
		}
		if fit := FitMarks(set); fit.fits(tolerance) {
			_, s.Left = fit.Worst()
			s.Move = fit.moveOf(g.whole())
			return &s
		}
	}
	return nil
}

// straightened is a mark with the turn taken off: where it should be and how
// far it is off there, in millimetres.
type straightened struct{ x, y, dx, dy float64 }

func (s straightened) alongX() (want, off float64) { return s.x, s.dx }
func (s straightened) alongY() (want, off float64) { return s.y, s.dy }

func (f Fit) straight(i int) straightened {
	m := f.Marks[i]
	vx, vy := m.Got.X.Millimetres()-f.gotX, m.Got.Y.Millimetres()-f.gotY
	x, y := m.Want.X.Millimetres(), m.Want.Y.Millimetres()
	return straightened{x, y,
		float64(f.cos*vx) + float64(f.sin*vy) - (x - f.wantX),
		float64(f.cos*vy) - float64(f.sin*vx) - (y - f.wantY)}
}

// perSeam is what each seam of a run took too much of, turned round: by how much
// to open it. moved is filled with what that makes at each mark, in millimetres.
func (f Fit) perSeam(run mask.Run, moved []float64, of func(i int) (want, off float64)) Set {
	if run.Free() == 0 {
		return Set{}
	}
	before := make([]float64, len(moved))
	mean := 0.0
	for i := range moved {
		want, _ := of(i)
		before[i] = float64(seamsBefore(run, measure.LengthFromMillimetres(want)))
		mean += before[i] / float64(len(moved))
	}
	top, below := 0.0, 0.0
	for i := range moved {
		_, off := of(i)
		before[i] -= mean
		top += float64(before[i] * off)
		below += float64(before[i] * before[i])
	}
	if below == 0 {
		return Set{}
	}
	each := measure.LengthFromMillimetres(top / below)
	if narrowest, _ := run.Narrowest(); each > max(narrowest, 0) {
		return Set{}
	}
	for i := range moved {
		moved[i] = float64(before[i] * each.Millimetres())
	}
	return Set{Count: run.Free(), Each: -each}
}

// seamsBefore is how many seams of a run that can give lie before a place.
func seamsBefore(run mask.Run, at measure.Length) int {
	seams := firstOf(len(run.Gaps), func(i int) bool { return run.Seam(i) > at })
	if run.Held == nil {
		return seams
	}
	free := 0
	for _, held := range run.Held[:seams] {
		if !held {
			free++
		}
	}
	return free
}

// Cut is a layer cut apart at one seam so that each half, moved by itself, comes
// within the tolerance: Seam is its name, Columns tells that it lies between
// columns, Low is what to do to the half nearer the box's corner A, High to the
// other; Left is the most that is left at a mark, and Thin tells that a half
// has only two marks, which show nothing but their spacing.
type Cut struct {
	Seam      string
	Columns   bool
	Low, High Move
	Left      measure.Length
	Thin      bool
}

// cut tries every seam line of the layer as the place to cut, and keeps the one
// that leaves least; of several between the same marks the one nearest the
// middle of the box, of equals the first.
func (f Fit) cut(g Grid, tolerance measure.Length) *Cut {
	var best *Cut
	for _, try := range [2]struct {
		columns bool
		run     mask.Run
		name    func(int) string
		want    func(Mark) measure.Length
	}{
		{true, g.Columns, mask.ColumnSeam, func(m Mark) measure.Length { return m.Want.X }},
		{false, g.Rows, mask.RowSeam, func(m Mark) measure.Length { return m.Want.Y }},
	} {
		for i := 0; i < len(try.run.Gaps); {
			low, high := partMarks(f.Marks, try.run.Seam(i), try.want)
			first := i
			for i++; i < len(try.run.Gaps) && countBelow(f.Marks, try.run.Seam(i), try.want) == len(low); i++ {
			}
			at := nearestMiddle(try.run, first, i)
			c := halves(low, high, g, try.columns, try.run.Seam(at), tolerance)
			if c != nil && (best == nil || c.Left < best.Left) {
				c.Seam = try.name(at + 1)
				best = c
			}
		}
	}
	return best
}

// halves is a layer cut between two groups of marks, nil where that does not
// bring both within the tolerance.
func halves(low, high []Mark, g Grid, columns bool, seam, tolerance measure.Length) *Cut {
	if len(low) < 2 || len(high) < 2 {
		return nil
	}
	below, above := FitMarks(low), FitMarks(high)
	if !below.fits(tolerance) || !above.fits(tolerance) {
		return nil
	}
	_, left := below.Worst()
	_, other := above.Worst()
	return &Cut{
		Columns: columns, Left: max(left, other), Thin: len(low) == 2 || len(high) == 2,
		Low: below.moveOf(g.half(columns, false, seam)), High: above.moveOf(g.half(columns, true, seam)),
	}
}

func partMarks(marks []Mark, at measure.Length, want func(Mark) measure.Length) (low, high []Mark) {
	for _, m := range marks {
		if want(m) < at {
			low = append(low, m)
		} else {
			high = append(high, m)
		}
	}
	return low, high
}

func countBelow(marks []Mark, at measure.Length, want func(Mark) measure.Length) int {
	n := 0
	for _, m := range marks {
		if want(m) < at {
			n++
		}
	}
	return n
}

// nearestMiddle is the seam from first up to end that lies nearest the middle of
// the box, the first of equals.
func nearestMiddle(run mask.Run, first, end int) int {
	best := first
	for i := first + 1; i < end; i++ {
		if (2*run.Seam(i) - run.Box).Abs() < (2*run.Seam(best) - run.Box).Abs() {
			best = i
		}
	}
	return best
}

// RunPast is what a layer that has stretched by a share (or shrunk, below zero)
// misses at the edges of a length: all of it at the far edge when it is lined
// up on one corner, half of it at either edge when it is lined up on the centre
// cross. So layers are lined up on the centre cross, and the edges checked.
func RunPast(length measure.Length, share float64) (fromCorner, fromCentre measure.Length) {
	past := length.Millimetres() * share
	return measure.LengthFromMillimetres(past), measure.LengthFromMillimetres(past / 2)
}
