package mask

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Equal is total cut into n equal sizes that add up to it exactly: cut i falls
// at i × total ÷ n rounded to the nanometre (half away from zero), and each
// size is the difference of two cuts, so no rounding ever builds up. It is
// empty unless n and total are above zero.
func Equal(total measure.Length, n int) []measure.Length {
	if n < 1 || total <= 0 {
		return nil
	}
	sizes := make([]measure.Length, n)
	last := measure.Length(0)
	for i := range sizes {
		next := share(total, i+1, n)
		sizes[i], last = next-last, next
	}
	return sizes
}

// share is i × total ÷ n to the nearest nanometre, half away from zero. Whole
// parts and remainder are taken apart so that no total overflows.
func share(total measure.Length, i, n int) measure.Length {
	part, parts := measure.Length(i), measure.Length(n)
	whole, twice := total/parts*part, 2*(total%parts)*part
	if twice < 0 {
		return whole - (parts-twice)/(2*parts)
	}
	return whole + (parts+twice)/(2*parts)
}

// Fewest is the least number of equal panels, none longer than greatest, that
// with a gap at each seam fill total: the least n with n × greatest + (n − 1)
// × gap ≥ total. It is 0 where greatest or total is not above zero.
func Fewest(total, greatest, gap measure.Length) int {
	if total <= 0 || greatest <= 0 || gap < 0 {
		return 0
	}
	pitch := greatest + gap
	return int((total + gap + pitch - 1) / pitch)
}

// equal is count equal panels with a gap at each seam.
func (a axis) equal(at string, count int) ([]measure.Length, []problem.Problem) {
	switch {
	case count < 1:
		return nil, stop(at, words.Say("The number of {lines} is not given.", words.Of("lines", a.lines)), words.Say("Write how many {lines} of panels there are.", words.Of("lines", a.lines)))
	case count > MostPanels:
		return nil, a.tooMany(at, count)
	case a.total <= 0:
		return nil, nil
	}
	gaps := a.gap * measure.Length(count-1)
	if gaps >= a.total {
		return nil, stop("/gap",
			words.Say("{count} gaps of {gap} take {all}, which leaves no panel in a mask {side} of {total}.",
				words.Count("count", count-1), words.Length("gap", a.gap), words.Length("all", gaps), words.Of("side", a.side), words.Length("total", a.total)),
			words.Say("Leave a smaller gap, or cut fewer {lines}.", words.Of("lines", a.lines)))
	}
	sizes := Equal(a.total-gaps, count)
	if size := sizes[0]; size < LeastPanel {
		return sizes, a.narrow(at, size)
	}
	return sizes, nil
}

func (a axis) tooMany(at string, count int) []problem.Problem {
	return stop(at, words.Say("{count} {lines} are more than the {most} panels that are taken.",
		words.Count("count", count), words.Of("lines", a.lines), words.Count("most", MostPanels)), words.Say("Give fewer or larger panels."))
}

// fewest is the fewest equal panels, none longer than the greatest.
func (a axis) fewest() ([]measure.Length, []problem.Problem) {
	if a.greatest <= 0 {
		return nil, stop(a.greatestAt, words.Say("The greatest {side} of a panel is not given.", words.Of("side", a.side)),
			words.Say("Write the most that the roll or the arms allow."))
	}
	if a.total <= 0 {
		return nil, nil
	}
	return a.equal(a.greatestAt, Fewest(a.total, a.greatest, a.gap))
}

// given is the sizes as typed, compared with the mask.
func (a axis) given() ([]measure.Length, []problem.Problem) {
	if len(a.sizes) == 0 {
		return nil, stop(a.sizesAt, words.Say("The sizes of the {lines} are not given.", words.Of("lines", a.lines)), words.Say("Write the size of every {line}.", words.Of("line", a.line)))
	}
	if len(a.sizes) > MostPanels {
		return nil, a.tooMany(a.sizesAt, len(a.sizes))
	}
	var found []problem.Problem
	missing := false
	for i, size := range a.sizes {
		at := a.sizesAt + problem.Index(i)
		switch {
		case size <= 0:
			missing = true
			found = append(found, stop(at, words.Say("The size of {line} {n} is not given.", words.Of("line", a.line), words.Count("n", i+1)), words.Say("Write it in."))...)
		case size < LeastPanel:
			found = append(found, a.narrow(at, size)...)
		}
	}
	if missing {
		return nil, found
	}
	return a.sizes, append(found, a.compare()...)
}

func (a axis) narrow(at string, size measure.Length) []problem.Problem {
	return []problem.Problem{{At: at, Severity: problem.Caution,
		What: words.Say("A {line} of {size} is narrower than anyone cuts a panel.", words.Of("line", a.line), words.Length("size", size)),
		Do:   words.Say("Check the number and its unit.")}}
}
