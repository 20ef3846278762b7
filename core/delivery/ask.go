package delivery

import (
	"slices"
	"strings"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// group is panels of one size with one fault.
type group struct {
	fault         fault
	ordered, came Size
	pieces        bool
	own, theirs   []string
}

// fault is why a panel is asked for, in the order of asking.
type fault int

const (
	noFault fault = iota
	isMissing
	isDamaged
	isOtherSize
)

// likeness is what the panels of a group have in common, sizes as the tape
// shows them.
type likeness struct {
	fault         fault
	ordered, came Size
	pieces        bool
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
	var groups []*group
	alike := map[likeness]*group{}
	spans := c.spans()
	for i := range c.Panels {
		p := &c.Panels[i]
		why := c.faultOf(p)
		if why == noFault || c.lead != nil && int(c.lead[i]) != i {
			continue
		}
		own := p.Panel.Label()
		piece, isPiece := spans[i]
		if isPiece {
			own = namedWithCells(piece)
		}
		key := likeness{fault: why, ordered: p.Ordered.toMark(n.Mark()), pieces: isPiece}
		if why == isOtherSize {
			key.came = p.Believed().toMark(n.Mark())
		}
		g := alike[key]
		if g == nil {
			g = &group{fault: why, ordered: p.Ordered, came: p.Believed(), pieces: isPiece}
			alike[key] = g
			groups = append(groups, g)
		}
		g.own = append(g.own, own)
		if p.Label != "" {
			g.theirs = append(g.theirs, p.Label)
		}
	}
	slices.SortStableFunc(groups, func(a, b *group) int { return int(a.fault - b.fault) })
	lines := make([]string, len(groups))
	for i, g := range groups {
		lines[i] = g.line(n)
	}
	return lines
}

func namedWithCells(piece mask.Piece) string {
	if cells := piece.Cells(); piece.Name != cells {
		return piece.Name + " (" + cells + ")"
	}
	return piece.Name
}

func (s Size) toMark(mark measure.Length) Size {
	return Size{s.Length.ToMark(mark), s.Width.ToMark(mark)}
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

func (c *Checked) faultOf(p *Panel) fault {
	switch {
	case p.State == Missing:
		return isMissing
	case p.State == Damaged:
		return isDamaged
	case p.State != Recut && c.isWrong(p):
		return isOtherSize
	}
	return noFault
}

// isWrong tells whether a panel came in another size than ordered.
func (c *Checked) isWrong(p *Panel) bool {
	return p.Used.Length > 0 && (p.Used.Length-p.Ordered.Length).Abs() > c.limit ||
		p.Used.Width > 0 && (p.Used.Width-p.Ordered.Width).Abs() > c.limit
}

// line is the group in words: "2 panels 4′ 0″ × 3′ 11⅜″, missing: B2, C4
// (their labels 14, 19)".
func (g *group) line(n measure.Notation) string {
	text := count(len(g.own), "panel ", "panels ")
	if g.pieces {
		text = count(len(g.own), "piece ", "pieces ")
	}
	text += g.ordered.Words(n) + ", "
	switch g.fault {
	case isMissing:
		text += "missing"
	case isDamaged:
		text += "damaged"
	default:
		text += "came " + g.came.Words(n)
	}
	text += ": " + strings.Join(g.own, ", ")
	switch len(g.theirs) {
	case 0:
		return text
	case 1:
		return text + " (their label " + g.theirs[0] + ")"
	}
	return text + " (their labels " + strings.Join(g.theirs, ", ") + ")"
}
