package mask

import (
	"math/big"
	"strconv"
	"strings"

	"ceilingwright/core/measure"
)

// MeasuredGap is a gap measured at a seam while hanging. Seam counts from 0, as
// in Run.Gaps. Below zero the panels overlap.
type MeasuredGap struct {
	Seam int
	Gap  measure.Length
}

// Hanging is a run while it is being hung: some gaps are measured, the others
// are to be set. Panel From is the first one up. It stays where the run put it,
// and each side works on from it to its own tape line, so that what one side
// lost the other does not carry.
type Hanging struct {
	From int
	// Gaps is each seam as measured or, where it is not, as it is to be set:
	// the seams not yet measured on one side share what is left there, whole
	// nanometres that add up exactly. Where nothing is left to share they are
	// 0: no panel is told to overlap another.
	Gaps []measure.Length
	// Fixed tells of each seam that it is not to be set any more: it is measured,
	// or held inside pieces.
	Fixed []bool
	// Starts is where each panel comes to lie, from the tape line the run is
	// counted from. Panels set to these running distances do not build up.
	Starts []measure.Length
	// Low and High are how far the panels run past the tape line at the start
	// and at the end of the run; below zero they end short of it. While a gap
	// of the side is not measured the side lands, unless what was measured is
	// more than the others can take up.
	Low, High measure.Length
}

// Hang lays a run out anew round the gaps measured so far. from is the panel
// first up, counted from 0. Gaps at seams the run does not have or that are held
// are left out; of several for one seam the last counts. False where there is
// no run or no such panel.
func (r Run) Hang(from int, measured []MeasuredGap) (Hanging, bool) {
	if from < 0 || from >= len(r.Starts) {
		return Hanging{}, false
	}
	h := Hanging{
		From: from, Gaps: make([]measure.Length, len(r.Gaps)), Fixed: make([]bool, len(r.Gaps)),
		Starts: make([]measure.Length, len(r.Starts)),
	}
	for i := range h.Gaps {
		if r.isHeld(i) {
			h.Gaps[i], h.Fixed[i] = r.Gaps[i], true
		}
	}
	for _, m := range measured {
		if m.Seam >= 0 && m.Seam < len(h.Gaps) && !r.isHeld(m.Seam) {
			h.Gaps[m.Seam], h.Fixed[m.Seam] = m.Gap, true
		}
	}
	h.Starts[from] = r.Starts[from]
	last := len(r.Starts) - 1
	h.share(0, from, r.Starts[from]-sum(r.Sizes[:from]))
	h.share(from, last, r.Box-r.Starts[from]-sum(r.Sizes[from:]))
	for i := from; i > 0; i-- {
		h.Starts[i-1] = h.Starts[i] - h.Gaps[i-1] - r.Sizes[i-1]
	}
	for i := from; i < last; i++ {
		h.Starts[i+1] = h.Starts[i] + r.Sizes[i] + h.Gaps[i]
	}
	h.Low = -h.Starts[0]
	h.High = h.Starts[last] + r.Sizes[last] - r.Box
	return h, true
}

// share sets the gaps of one side, seams low to high−1, that are not fixed;
// room is what all gaps of the side have together.
func (h *Hanging) share(low, high int, room measure.Length) {
	open := 0
	for i := low; i < high; i++ {
		if h.Fixed[i] {
			room -= h.Gaps[i]
		} else {
			open++
		}
	}
	if room <= 0 || open == 0 {
		return
	}
	taken, given := measure.Length(0), 0
	for i := low; i < high; i++ {
		if h.Fixed[i] {
			continue
		}
		given++
		next := share(room, given, open)
		h.Gaps[i], taken = next-taken, next
	}
}

// BuildUpWithSeams is for n panels and their n − 1 seams hung on from one tape
// line, each panel off by up to one tolerance and each seam set to within
// another: n × t + (n − 1) × s at worst, √(n × t² + (n − 1) × s²) likely (the
// same sources as BuildUp).
func BuildUpWithSeams(n int, panel, seam measure.Length) BuildUp {
	n = max(n, 0)
	seams := max(n-1, 0)
	square := func(count int, l measure.Length) *big.Int {
		value := big.NewInt(int64(l))
		return value.Mul(value, value).Mul(value, big.NewInt(4*int64(count)))
	}
	likely := square(n, panel)
	likely.Add(likely, square(seams, seam)).Sqrt(likely)
	return BuildUp{
		Worst:  measure.Length(n)*panel + measure.Length(seams)*seam,
		Likely: measure.Length((likely.Int64() + 1) / 2),
	}
}

// LikelyIfFlat is the same √n × tolerance for errors that are flat, any value
// within the tolerance as likely as any other: √3 times as much keeps as many
// runs inside, 99.7 of a hundred, as √n × tolerance does for normal ones
// (Scholz 1995, Tolerance Stack Analysis Methods). Rounded to the nanometre.
func LikelyIfFlat(n int, tolerance measure.Length) measure.Length {
	return halfRootTimes(12*max(n, 0), tolerance)
}

// Offers are five likely gaps round the one to set, on the marks of the tape; whole
// millimetres where it has none.
func Offers(gap, mark measure.Length) (offers [5]measure.Length) {
	if mark <= 0 {
		mark = measure.Millimetre
	}
	first := max(gap.ToMark(mark)-2*mark, 0)
	for i := range offers {
		offers[i] = first + measure.Length(i)*mark
	}
	return offers
}

func sum(lengths []measure.Length) (total measure.Length) {
	for _, l := range lengths {
		total += l
	}
	return total
}

// ParseSeam reads the name of a seam as ColumnSeam and RowSeam write it, with
// any of │ | - – / or spaces between: after is the column or the row before it,
// from 1, and columns tells which of the two. False for anything else.
func ParseSeam(text string) (columns bool, after int, ok bool) {
	parts := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("│|-–/ ", r) })
	if len(parts) != 2 {
		return false, 0, false
	}
	if one, err := strconv.Atoi(parts[0]); err == nil {
		two, err := strconv.Atoi(parts[1])
		return true, one, err == nil && one > 0 && one <= MostPanels && two == one+1
	}
	for _, part := range parts {
		for _, r := range part {
			if !isLetter(r) {
				return false, 0, false
			}
		}
	}
	one := rowOf(parts[0])
	return false, one, one > 0 && one <= MostPanels && rowOf(parts[1]) == one+1
}
