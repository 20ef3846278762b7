package delivery

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
)

// resize gives the layer its columns and rows as measured: each as large as the
// largest of its panels, those not measured as ordered. A span gives every one
// of its columns and rows the same part of what it is off, so that its place is
// never smaller than the span.
func (k *checking) resize() {
	if k.Count.Measured == 0 {
		return
	}
	columns, rows := make([]measure.Length, len(k.Ordered.Columns)), make([]measure.Length, len(k.Ordered.Rows))
	for i := range k.Panels {
		p := &k.Panels[i]
		if k.InSpan(i) {
			continue
		}
		column, row := &columns[p.Panel.Column-1], &rows[p.Panel.Row-1]
		*column = max(*column, used(p.Used.Length, p.Ordered.Length))
		*row = max(*row, used(p.Used.Width, p.Ordered.Width))
	}
	for _, piece := range k.Ordered.Pieces {
		if piece.Kind != mask.Span {
			continue
		}
		p := &k.Panels[k.Ordered.Index(piece.First())]
		widen(columns, k.Ordered.Columns, piece.Column, piece.Columns, used(p.Used.Length, p.Ordered.Length)-p.Ordered.Length)
		widen(rows, k.Ordered.Rows, piece.Row, piece.Rows, used(p.Used.Width, p.Ordered.Width)-p.Ordered.Width)
	}
	k.Layer.Columns, k.Layer.Rows = columns, rows
}

// isSpan tells whether a panel is the first of a span: the one after it or the
// one below it belongs to it.
func (c *Checked) isSpan(i int) bool {
	after, below := i+1, i+len(c.Ordered.Columns)
	return after < len(c.lead) && int(c.lead[after]) == i || below < len(c.lead) && int(c.lead[below]) == i
}

// InSpan tells whether a panel, counted in reading order from 0, comes in a
// span.
func (c *Checked) InSpan(i int) bool { return c.lead != nil && (int(c.lead[i]) != i || c.isSpan(i)) }

func used(measured, ordered measure.Length) measure.Length {
	if measured > 0 {
		return measured
	}
	return ordered
}

// widen makes the sizes of a block as large as their parts of a span that is
// off by so much.
func widen(sizes, ordered []measure.Length, first, count int, off measure.Length) {
	n, taken := measure.Length(count), measure.Length(0)
	for i := range count {
		next := off * measure.Length(i+1) / n
		at := first - 1 + i
		sizes[at] = max(sizes[at], ordered[at]+next-taken)
		taken = next
	}
}

// Short is a panel that is smaller than the column or row it lies in: so much
// more stays open at one of its edges.
type Short struct {
	Panel mask.Panel
	By    Size
}

// Shorts are the panels that leave more open than their column or row says,
// from mask.Noticeable on, in reading order. A span is named by its first
// panel.
func (c *Checked) Shorts() []Short {
	var shorts []Short
	if c.Count.Measured == 0 {
		return nil
	}
	places := c.places()
	for i := range c.Panels {
		p := &c.Panels[i]
		if c.lead != nil && int(c.lead[i]) != i {
			continue
		}
		place, ok := places[i]
		if !ok {
			place = Size{c.Layer.Columns[p.Panel.Column-1], c.Layer.Rows[p.Panel.Row-1]}
		}
		by := Size{place.Length - used(p.Used.Length, p.Ordered.Length), place.Width - used(p.Used.Width, p.Ordered.Width)}
		if by.Length < mask.Noticeable {
			by.Length = 0
		}
		if by.Width < mask.Noticeable {
			by.Width = 0
		}
		if by != (Size{}) {
			shorts = append(shorts, Short{p.Panel, by})
		}
	}
	return shorts
}

// places is the room each span has in the layer as measured, by its first
// panel.
func (c *Checked) places() map[int]Size {
	if c.lead == nil {
		return nil
	}
	places := map[int]Size{}
	for _, piece := range c.Ordered.Pieces {
		if piece.Kind == mask.Span {
			length, width := piece.Size(c.Layer)
			places[c.Layer.Index(piece.First())] = Size{length, width}
		}
	}
	return places
}
