package finish

import (
	"strconv"
	"strings"

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

// SizeAt is when to size each section, in hours after the first leaf is laid,
// so that each is ready as the one before is done. The first is before 0.
func (p *PanelSections) SizeAt(tack measure.Number) []measure.Number {
	hours := make([]measure.Number, len(p.Sections))
	at := measure.NumberFromInt(0).Sub(tack)
	for i := range hours {
		hours[i] = at
		at = at.Add(p.Sections[i].Hours)
	}
	return hours
}

func (g Grid) refusals() []problem.Problem {
	if len(g.Columns) == 0 || len(g.Rows) == 0 {
		return []problem.Problem{{At: "/panels", Severity: problem.Stop, What: words.Say("There are no panels to divide into sections."), Do: words.Say("Divide the layer into panels first.")}}
	}
	for _, sizes := range [2][]measure.Length{g.Columns, g.Rows} {
		for _, size := range sizes {
			if size < measure.Millimetre || size > measure.Longest {
				return []problem.Problem{{At: "/panels", Severity: problem.Stop,
					What: words.Raw("A panel of the layer is " + millimetres(size) + " wide."), Do: words.Say("Check the sizes of its columns and rows.")}}
			}
		}
	}
	return nil
}

// tooLarge refuses a panel that cannot be laid in the window, with what would
// make it fit.
func (s Sizing) tooLarge(panel measure.Area) []problem.Problem {
	one := measure.NumberFromInt(1)
	hours := panel.SquareMetres.Quo(s.crew().SquareMetres)
	window := hours.Quo(one.Sub(s.Reserve))
	do, leaves := "Use a size that stays open for "+figure(window)+" hours, or ", "the size leaves "+figure(s.usable())
	if s.Worked.Sign() > 0 {
		do, leaves = "Work other hours, or ", figure(s.usable())+" of those in which the size takes leaf are worked"
	}
	each := s.Rate.SquareMetres.Mul(s.usable())
	if gilders, fits := panel.SquareMetres.Quo(each).Ceil(); fits && gilders <= mostGilders {
		more := "one gilder more"
		if gilders-s.Gilders > 1 {
			more = strconv.FormatInt(gilders-s.Gilders, 10) + " gilders more"
		}
		do += more
	} else {
		do = strings.TrimSuffix(do, ", or ")
	}
	return []problem.Problem{{At: "/window", Severity: problem.Stop,
		What: words.Raw("The largest panel takes " + figure(hours) + " hours to lay, and " + leaves + "."),
		Do:   words.Raw(do + ".")}}
}
