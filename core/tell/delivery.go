package tell

import (
	"strconv"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"

	"ceilingwright/core/delivery"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/setout"
	"ceilingwright/core/survey"
)

// takeIn is the layer as it is hung: with its pieces, and laid out by the panels
// as they were measured.
func (b *builder) takeIn(l *plan.Layer, ordered mask.Layer) *delivery.Checked {
	outline := b.Plan.Mask.Outline
	ordered, problems := ordered.WithPieces(outline, l.Pieces, b.Notation)
	b.Report("", problems)
	checked, problems := delivery.Check(delivery.Given{Layer: ordered, Labels: l.Labels, Notes: notes(l), Tolerance: l.Tolerance}, b.Notation)
	b.Report(l.At, problems)
	b.Report(l.At, checked.CheckRuns(outline, b.Plan.Seams.Width, b.Notation))
	return checked
}

// notes are the notes of the plan on its panels, each blamed by its place in the
// layer.
func notes(l *plan.Layer) []delivery.Note {
	list := make([]delivery.Note, len(l.Panels))
	for i, n := range l.Panels {
		list[i] = delivery.Note{At: strings.TrimPrefix(n.At, l.At), Panel: n.Panel, State: delivery.State(n.State), Length: n.Length, Width: n.Width}
	}
	return list
}

// countFigures are the figures of what came, where anything was noted.
func (b *builder) countFigures(l *job.Layer) {
	c := l.Delivery.Count
	if l.Delivery.Panels == nil {
		return
	}
	sum := strconv.Itoa(c.Total)
	for _, part := range []struct {
		n    int
		word string
	}{{c.Missing, "missing"}, {c.Damaged, "damaged"}, {c.Recut, "re-cut"}, {c.Unchecked, "not checked yet"}} {
		if part.n > 0 {
			sum += " − " + strconv.Itoa(part.n) + " " + part.word
		}
	}
	b.Count(page.Mask, l.Panels.ID+".found", page.Noun(int64(c.Found), "panel found", "panels found"), int64(c.Found), "",
		"All panels of the layer, less those that are missing, damaged, re-cut or not checked yet.", sum, page.OfArithmetic)
}

// delivered puts the delivery and the pieces on the layer of the sheet.
func (b *builder) delivered(l *job.Layer, out *sheet.Layer) {
	checked := l.Delivery
	c := checked.Count
	out.Delivery = sheet.Delivery{
		Text: c.Words(), Total: c.Total, Found: c.Found, Missing: c.Missing, Damaged: c.Damaged, Recut: c.Recut,
		Measured: c.Measured, Unchecked: c.Unchecked, Ask: checked.Ask(b.Notation), Changed: checked.Changes(b.Plan.Mask.Outline, b.Notation),
	}
	for i := range out.Panels {
		out.Panels[i].State = string(delivery.Unchecked)
	}
	for i := range checked.Panels {
		p, shown := &checked.Panels[i], &out.Panels[i]
		shown.Supplier, shown.State, shown.Measured = p.Label, string(p.State), p.Believed().Words(b.Notation)
		if c.Measured > 0 && !checked.InSpan(i) {
			shown.Size = p.Own().Words(b.Notation)
		}
	}
	b.pieces(l, out)
}

// pieces are the pieces of a layer in the order of the plan.
func (b *builder) pieces(l *job.Layer, out *sheet.Layer) {
	blocks, loose := l.Panels.Pieces, l.Panels.Loose
	for _, given := range l.Plan.Pieces {
		switch {
		case len(blocks) > 0 && blocks[0].At == given.At:
			b.block(l, blocks[0], out)
			blocks = blocks[1:]
		case len(loose) > 0 && loose[0].At == given.At:
			b.loose(l, loose[0], out)
			loose = loose[1:]
		}
	}
}

// block is a span or a joined piece, and its name on each of its panels.
func (b *builder) block(l *job.Layer, p mask.Piece, out *sheet.Layer) {
	for row := p.Row; row <= p.Last().Row; row++ {
		for column := p.Column; column <= p.Last().Column; column++ {
			out.Panels[l.Panels.Index(mask.Panel{Column: column, Row: row})].Piece = p.Name
		}
	}
	piece := sheet.Piece{Name: p.Name, Kind: string(p.Kind)}
	length, width := p.Size(l.Panels)
	if p.Kind == mask.Span {
		size := l.Delivery.Panels
		if i := l.Panels.Index(p.First()); size != nil {
			own := size[i].Own()
			length, width = own.Length, own.Width
		}
		piece.Text = p.Cells() + ", " + b.Notation.Length(length) + " × " + b.Notation.Length(width) + ", delivered as one."
		if placeLength, placeWidth, ok := p.Place(l.Columns, l.Rows); ok {
			piece.Text += b.giveInPlace("length", placeLength-length) + b.giveInPlace("width", placeWidth-width)
		}
	} else {
		gaps := ""
		if placeLength, placeWidth, ok := p.Place(l.Columns, l.Rows); ok {
			length, width, gaps = placeLength, placeWidth, b.floorGaps(l, p)
		}
		piece.Text = p.Cells() + ", taped together on the floor to " + b.Notation.Length(length) + " × " + b.Notation.Length(width) + " and hung as one." + gaps
	}
	out.Pieces = append(out.Pieces, piece)
}

// giveInPlace says what a piece that cannot give leaves of its place, or takes of
// its neighbours'.
func (b *builder) giveInPlace(side string, rest measure.Length) string {
	switch {
	case rest >= mask.Noticeable:
		return " Its place is " + b.fine(rest) + " more in " + side + ": leave half of that open at either edge."
	case rest <= -mask.Noticeable:
		return " Its place is " + b.fine(-rest) + " less in " + side + ": trim it, or it lies over its neighbours."
	}
	return ""
}

// floorGaps says how far to leave the seams of a joined piece open.
func (b *builder) floorGaps(l *job.Layer, p mask.Piece) string {
	text := ""
	add := func(name string, gap measure.Length) {
		if text != "" {
			text += ", "
		}
		text += name + " " + b.fine(gap)
	}
	for c := p.Column; c < p.Last().Column; c++ {
		add(mask.ColumnSeam(c), l.Columns.Gaps[c-1])
	}
	for r := p.Row; r < p.Last().Row; r++ {
		add(mask.RowSeam(r), l.Rows.Gaps[r-1])
	}
	return " Leave open: " + text + "."
}

// loose is a piece that is cut out of its neighbours.
func (b *builder) loose(l *job.Layer, p mask.Loose, out *sheet.Layer) {
	size := b.Notation.Length(p.Length) + " × " + b.Notation.Length(p.Width)
	if p.Round {
		size = "Round, " + b.Notation.Length(p.Length) + " across"
	}
	piece := sheet.Piece{Name: p.Name, Kind: string(mask.CutLoose),
		Text: size + ", its middle " + b.Notation.Length(p.X) + " from the mask's edge " + b.towards(survey.DA) + " and " +
			b.Notation.Length(p.Y) + " from its edge " + b.towards(survey.AB) + ". Hung last, on its own marks. The line it is cut along is " +
			b.Notation.Length(p.CutLength()) + " long."}
	hole := setout.Hole{Round: p.Round, Middle: survey.Point{X: p.X, Y: p.Y}, Length: p.Length, Width: p.Width}
	for _, c := range hole.Cuts(l.Columns, l.Rows) {
		piece.Cuts = append(piece.Cuts, sheet.PieceCut{Panel: c.Panel.Label(), Text: b.cutWords(&c, p.Round)})
	}
	out.Pieces = append(out.Pieces, piece)
}

// cutWords says how a loose piece is cut from one panel: where its middle lies,
// its edges, and where a round line runs over the panel's edges.
func (b *builder) cutWords(c *setout.Cut, round bool) string {
	text := "Its middle is " + b.fromEdges(c.Middle) + "." + b.cutEdges(round, c)
	if !round {
		return text
	}
	for _, x := range c.Crossings {
		along := survey.DA
		if x.Edge == survey.BC || x.Edge == survey.DA {
			along = survey.AB
		}
		text += " The line runs over the edge " + b.towards(x.Edge) + " " + b.Notation.Length(x.At) + " from its end " + b.towards(along) + "."
	}
	return text
}
