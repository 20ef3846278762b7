package setout

import (
	"ceilingwright/core/measure"
)

// Recommendation is which of the choices to take, and what decided: the worst
// taper and the differences are those of that choice.
type Recommendation struct {
	Choice int
	// Fixture tells that the fixture's being off the middle is hidden in the
	// borders, so that the mask is better centred on it.
	Fixture bool
	// Straightest tells that another way on the same thing has a worse taper.
	Straightest bool
	// Only tells that no other choice keeps the borders.
	Only bool
}

// Recommend chooses among the choices that are not refused; false where there
// is none. First what to centre on: the fixture where that makes opposite
// borders differ by no more than HiddenTaper, since the eye holds the pattern
// against the light and not one wall against the other; else the room. A point
// of one's own is kept where it was asked for. Then how to lie: with the least
// taper at the wall where it is worst, and of those alike the earlier choice. A
// choice: common practice, no source, but for the limit.
func Recommend(choices []Choice, asked On) (Recommendation, bool) {
	kept := 0
	for _, c := range choices {
		if c.keeps() {
			kept++
		}
	}
	if kept == 0 {
		return Recommendation{}, false
	}
	on := recommendedOn(choices, asked)
	best := Recommendation{Choice: -1, Only: kept == 1 && len(choices) > 1, Fixture: on == OnFixture}
	var least, most measure.Length
	for i, c := range choices {
		if !c.keeps() || c.On != on {
			continue
		}
		taper := c.taper()
		if best.Choice < 0 || taper < least-Visible/2 {
			best.Choice, least = i, taper
		}
		most = max(most, taper)
	}
	best.Straightest = most-least >= Visible
	// What lies on the same spot under the name asked for is that.
	for i, c := range choices {
		if c.On == asked && c.Box == choices[best.Choice].Box {
			best.Choice = i
			break
		}
	}
	return best, true
}

// recommendedOn is what to centre on.
func recommendedOn(choices []Choice, asked On) On {
	can := map[On]bool{}
	hidden := false
	for _, c := range choices {
		if c.keeps() {
			can[c.On] = true
			if c.On == OnFixture && c.Differ() <= HiddenTaper {
				hidden = true
			}
		}
	}
	switch {
	case asked == OnPoint && can[OnPoint]:
		return OnPoint
	case hidden:
		return OnFixture
	case can[OnRoom]:
		return OnRoom
	case can[OnFixture]:
		return OnFixture
	}
	return OnPoint
}

// keeps tells whether the mask can be laid so.
func (c Choice) keeps() bool { return !c.Refused() && c.Borders.Least() >= 0 }

// taper is the worst taper, 0 where there is none.
func (c Choice) taper() measure.Length {
	worst, _ := c.Layout.Worst()
	return worst.By()
}
