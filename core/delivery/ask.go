package delivery

import (
	"slices"
	"strings"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// group is panels of one size with one fault, and what to ask for them.
type group struct {
	size, fault string
	pieces      bool
	own, theirs []string
}

// Ask is what to ask the supplier for, a line for each size and fault: missing
// panels first, then damaged ones, then those that came in another size. A size
// counts as another where it is off by more than the tolerance, and by more
// than half a tape mark, which the tape hides. Panels cut on purpose, and sizes
// in doubt, are not asked for.
func (c *Checked) Ask(n measure.Notation) []string {
	if c.Count.Missing+c.Count.Damaged+c.Count.Measured == 0 {
		return nil
	}
	var groups [3][]*group
	byText := map[string]*group{}
	spans := c.spans()
	for i := range c.Panels {
		p := &c.Panels[i]
		rank, fault := c.fault(p, n)
		if fault == "" || c.lead != nil && int(c.lead[i]) != i {
			continue
		}
		own := p.Panel.Label()
		piece, isPiece := spans[i]
		if isPiece {
			own = piece.Name
			if cells := piece.Cells(); own != cells {
				own += " (" + cells + ")"
			}
		}
		size := p.Ordered.Words(n)
		key := size + "|" + fault
		if isPiece {
			key += "|"
		}
		g := byText[key]
		if g == nil {
			g = &group{size: size, fault: fault, pieces: isPiece}
			byText[key] = g
			groups[rank] = append(groups[rank], g)
		}
		g.own = append(g.own, own)
		if p.Label != "" {
			g.theirs = append(g.theirs, p.Label)
		}
	}
	var lines []string
	for _, g := range slices.Concat(groups[0], groups[1], groups[2]) {
		lines = append(lines, g.line())
	}
	return lines
}

// spans are the spans of the layer by their first panels.
func (c *Checked) spans() map[int]mask.Piece {
	if c.lead == nil {
		return nil
	}
	spans := map[int]mask.Piece{}
	for _, piece := range c.Ordered.Pieces {
		if piece.Kind == mask.Span {
			spans[c.Ordered.Index(piece.First())] = piece
		}
	}
	return spans
}

// fault is why a panel is asked for, "" where it is not, and in which order.
func (c *Checked) fault(p *Panel, n measure.Notation) (int, string) {
	switch {
	case p.State == Missing:
		return 0, "missing"
	case p.State == Damaged:
		return 1, "damaged"
	case p.State != Recut && c.isWrong(p):
		return 2, "came " + p.Believed().Words(n)
	}
	return 0, ""
}

// isWrong tells whether a panel came in another size than ordered.
func (c *Checked) isWrong(p *Panel) bool {
	return p.Used.Length > 0 && (p.Used.Length-p.Ordered.Length).Abs() > c.limit ||
		p.Used.Width > 0 && (p.Used.Width-p.Ordered.Width).Abs() > c.limit
}

// line is the group in words: "2 panels 4′ 0″ × 3′ 11⅜″, missing: B2, C4
// (their labels 14, 19)".
func (g *group) line() string {
	text := count(len(g.own), "panel ", "panels ")
	if g.pieces {
		text = count(len(g.own), "piece ", "pieces ")
	}
	text += g.size + ", " + g.fault + ": " + strings.Join(g.own, ", ")
	switch len(g.theirs) {
	case 0:
		return text
	case 1:
		return text + " (their label " + g.theirs[0] + ")"
	}
	return text + " (their labels " + strings.Join(g.theirs, ", ") + ")"
}
