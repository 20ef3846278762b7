package finish

import (
	"ceilingwright/core/words"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Grid is the panels of a layer: Columns along the length, Rows along the
// width. A panel's place in reading order is row × columns + column, from 0.
type Grid struct{ Columns, Rows []measure.Length }

// PanelSections is an area sized and gilded in sections of whole panels. Most
// is the area that fits the window less the reserve, Of the section of each
// panel in reading order, from 0. Fewest tells that no division of the panels
// into sections that each hang together takes fewer. Stops is the length of the
// lines between sections, and Beyond the area that is sized twice along them.
// Largest is the area of the largest panel.
type PanelSections struct {
	Sizing
	Most     measure.Area
	Of       []int32
	Sections []PanelSection
	Fewest   bool
	Stops    measure.Length
	Beyond   measure.Area
	Largest  measure.Area
}

// PanelSection is one section: how many Panels, the Area to gild, the Hours
// that takes, and the area to size, which goes past its lines with later
// sections.
type PanelSection struct {
	Panels int
	Area   measure.Area
	Hours  measure.Number
	Sized  measure.Area
}

// SectionsOfPanels divides the area of s, which is spread evenly over the
// panels of the grid, into sections of whole panels: each hangs together, each
// is laid within window × (1 − reserve), they are as few as was found and as
// nearly equal, then with the shortest lines between them. beyond is how far
// size is laid past a line, so that the next section's blends into it.
//
// The panels are taken in a row that turns at each end of the grid and cut
// where it balances best, along and across, from either corner; a grid of few
// panels that this does not settle is searched through. Panels are weighed to
// the whole micrometre of their sizes. The time is n log n in the panels.
//
// Refused: what Sections refuses, a grid without panels or with one of no size,
// more than MostSections sections, and a panel that is too large for the window
// by itself.
func SectionsOfPanels(g Grid, s Sizing, beyond measure.Length) (found PanelSections, problems []problem.Problem, ok bool) {
	found = PanelSections{Sizing: s}
	if problems = append(s.refusals(), g.refusals()...); len(problems) > 0 {
		return found, problems, false
	}
	found.Most = s.most()
	if s.Area.SquareMetres.IsZero() {
		return found, nil, true
	}
	c := cuttingOf(g)
	c.most = c.weightOf(found.Most, s.Area)
	found.Largest = c.areaOf(c.heaviest, s.Area)
	if c.heaviest > c.most {
		return found, s.tooLarge(found.Largest), false
	}
	c.divide()
	if len(c.best.sums) > MostSections {
		return found, tooManySections(), false
	}
	found.Of, found.Fewest, found.Stops = c.best.of, c.best.fewest, c.best.stops
	found.lay(c, beyond)
	return found, nil, true
}

// lay works out the sections, once the panels are divided.
func (p *PanelSections) lay(c *cutting, beyond measure.Length) {
	crew := p.crew().SquareMetres
	count := len(c.best.sums)
	p.Sections = make([]PanelSection, count)
	for _, section := range p.Of {
		p.Sections[section].Panels++
	}
	dense := p.Area.SquareMetres.Quo(c.whole().SquareMetres)
	for i, ahead := range c.ahead(p.Of, count) {
		one := &p.Sections[i]
		one.Area = c.areaOf(c.best.sums[i], p.Area)
		one.Hours = one.Area.SquareMetres.Quo(crew)
		over := measure.AreaOf(ahead, beyond).Times(dense)
		one.Sized = one.Area.Add(over)
		p.Beyond = p.Beyond.Add(over)
	}
}

func (g Grid) refusals() []problem.Problem {
	if len(g.Columns) == 0 || len(g.Rows) == 0 {
		return []problem.Problem{{At: "/panels", Severity: problem.Stop, What: words.Say("There are no panels to divide into sections."), Do: words.Say("Divide the layer into panels first.")}}
	}
	for _, sizes := range [2][]measure.Length{g.Columns, g.Rows} {
		for _, size := range sizes {
			if size < measure.Millimetre || size > measure.Longest {
				return []problem.Problem{{At: "/panels", Severity: problem.Stop,
					What: words.Say("A panel of the layer is {size} wide.", words.Fine("size", size)), Do: words.Say("Check the sizes of its columns and rows.")}}
			}
		}
	}
	return nil
}

// tooLarge refuses a panel that cannot be laid in the window, with what would
// make it fit.
func (s Sizing) tooLarge(panel measure.Area) []problem.Problem {
	takes := panel.SquareMetres.Quo(s.crew().SquareMetres)
	hours, usable := words.Trimmed("hours", takes, 3), words.Trimmed("usable", s.usable(), 3)
	what := words.Say("The largest panel takes {hours} hours to lay, and the size leaves {usable}.", hours, usable)
	do := words.Say("Use a size that stays open for {open} hours", words.Trimmed("open", takes.Quo(measure.NumberFromInt(1).Sub(s.Reserve)), 3))
	if s.Worked.Sign() > 0 {
		what = words.Say("The largest panel takes {hours} hours to lay, and {usable} of those in which the size takes leaf are worked.", hours, usable)
		do = words.Say("Work other hours")
	}
	gilders, fits := panel.SquareMetres.Quo(s.Rate.SquareMetres.Mul(s.usable())).Ceil()
	switch more := gilders - s.Gilders; {
	case !fits || gilders > mostGilders:
		do = words.Say("{do}.", words.Of("do", do))
	case more > 1:
		do = words.Say("{do}, or {n} gilders more.", words.Of("do", do), words.Count("n", more))
	default:
		do = words.Say("{do}, or one gilder more.", words.Of("do", do))
	}
	return []problem.Problem{{At: "/window", Severity: problem.Stop, What: what, Do: do}}
}
