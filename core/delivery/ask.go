package delivery

import (
	"slices"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// Asked is panels of one size with one fault, to be asked for together. Came is the
// size they came in, where that is the fault. Pieces tells that they are spans. Own
// are their own labels, Theirs those of the supplier, as far as there are any.
type Asked struct {
	Fault         Fault
	Ordered, Came Size
	Pieces        bool
	Own, Theirs   []string
}

// Fault is why a panel is asked for, in the order of asking.
type Fault int

// The faults of a panel that is asked for.
const (
	noFault Fault = iota
	IsMissing
	IsDamaged
	IsOtherSize
)

// likeness is what panels that are asked for together have in common, sizes as the
// tape shows them.
type likeness struct {
	fault         Fault
	ordered, came Size
	pieces        bool
}

// Ask is what to ask the supplier for, by size and fault: missing panels first, then
// damaged ones, then those that came in another size. A size
// counts as another where it is off by more than the tolerance, and by more
// than half a tape mark, which the tape hides. Panels cut on purpose, and sizes
// in doubt, are not asked for.
func (c *Checked) Ask() []Asked {
	if c.Count.Missing+c.Count.Damaged+c.Count.Measured == 0 {
		return nil
	}
	var asked []Asked
	place := map[likeness]int{}
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
		key := likeness{fault: why, ordered: p.Ordered.toMark(c.mark), pieces: isPiece}
		if why == IsOtherSize {
			key.came = p.Believed().toMark(c.mark)
		}
		at, known := place[key]
		if !known {
			at, place[key] = len(asked), len(asked)
			asked = append(asked, Asked{Fault: why, Ordered: p.Ordered, Came: p.Believed(), Pieces: isPiece})
		}
		asked[at].Own = append(asked[at].Own, own)
		if p.Label != "" {
			asked[at].Theirs = append(asked[at].Theirs, p.Label)
		}
	}
	slices.SortStableFunc(asked, func(a, b Asked) int { return int(a.Fault - b.Fault) })
	return asked
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

func (c *Checked) faultOf(p *Panel) Fault {
	switch {
	case p.State == Missing:
		return IsMissing
	case p.State == Damaged:
		return IsDamaged
	case p.State != Recut && c.isWrong(p):
		return IsOtherSize
	}
	return noFault
}

// isWrong tells whether a panel came in another size than ordered.
func (c *Checked) isWrong(p *Panel) bool {
	return p.Used.Length > 0 && (p.Used.Length-p.Ordered.Length).Abs() > c.limit ||
		p.Used.Width > 0 && (p.Used.Width-p.Ordered.Width).Abs() > c.limit
}
