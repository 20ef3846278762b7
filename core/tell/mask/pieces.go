package mask

import (
	"ceilingwright/core/job"
	"ceilingwright/core/job/layers"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/setout"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// pieces are the pieces of a layer in the order of the plan.
func pieces(p *page.Page, j *job.Job, l *layers.Layer, out *sheet.Layer) {
	blocks, loose := l.Panels.Pieces, 0
	for _, given := range l.Plan.Pieces {
		switch {
		case len(blocks) > 0 && blocks[0].At == given.At:
			out.Pieces = append(out.Pieces, block(p, l, blocks[0], out))
			blocks = blocks[1:]
		case loose < len(l.Panels.Loose) && l.Panels.Loose[loose].At == given.At:
			out.Pieces = append(out.Pieces, loosePiece(p, j, &l.Panels.Loose[loose], l.LooseCuts[loose]))
			loose++
		}
	}
}

// block is a span or a joined piece, and its name on each of its panels.
func block(p *page.Page, l *layers.Layer, piece mask.Piece, out *sheet.Layer) sheet.Piece {
	for row := piece.Row; row <= piece.Last().Row; row++ {
		for column := piece.Column; column <= piece.Last().Column; column++ {
			out.Panels[l.Panels.Index(mask.Panel{Column: column, Row: row})].Piece = piece.Name
		}
	}
	lies := l.Lies(piece)
	cells, length, width := words.Name("cells", piece.Cells()), words.Length("length", lies.Length), words.Length("width", lies.Width)
	text := words.Say("{cells}, taped together on the floor to {length} × {width} and hung as one.", cells, length, width)
	switch {
	case piece.Kind == mask.Span:
		text = words.Sentences(words.Say("{cells}, {length} × {width}, delivered as one.", cells, length, width),
			spare(lies.SpareLength, words.Say("length")), spare(lies.SpareWidth, words.Say("width")))
	case len(lies.Floor) > 0:
		open := make([]words.Text, len(lies.Floor))
		for i, gap := range lies.Floor {
			open[i] = words.Say("{seam} {gap}", words.Name("seam", gap.Seam), words.Fine("gap", gap.Gap))
		}
		text = words.Sentences(text, words.Say("Leave open: {seams}.", words.Texts("seams", open)))
	}
	return sheet.Piece{Name: piece.Name, Kind: string(piece.Kind), Text: p.Told(text)}
}

// spare says what a piece that cannot give leaves of its place, or takes of its
// neighbours', in length or in width.
func spare(l measure.Length, side words.Text) words.Text {
	by, in := words.Fine("by", l.Abs()), words.Of("side", side)
	switch {
	case l > 0:
		return words.Say("Its place is {by} more in {side}: leave half of that open at either edge.", by, in)
	case l < 0:
		return words.Say("Its place is {by} less in {side}: trim it, or it lies over its neighbours.", by, in)
	}
	return words.Text{}
}

// loosePiece is a piece that is cut out of its neighbours.
func loosePiece(p *page.Page, j *job.Job, l *mask.Loose, cuts []setout.Cut) sheet.Piece {
	length, width, x, y := words.Length("length", l.Length), words.Length("width", l.Width), words.Length("x", l.X), words.Length("y", l.Y)
	across, along := facing("across", j, survey.DA), facing("along", j, survey.AB)
	text := words.Say("{length} × {width}, its middle {x} from the mask's edge towards {across} and {y} from its edge towards {along}.", length, width, x, across, y, along)
	if l.Round {
		text = words.Say("Round, {length} across, its middle {x} from the mask's edge towards {across} and {y} from its edge towards {along}.", length, x, across, y, along)
	}
	text = words.Sentences(text, words.Say("Hung last, on its own marks. The line it is cut along is {cut} long.", words.Length("cut", l.CutLength())))
	piece := sheet.Piece{Name: l.Name, Kind: string(mask.CutLoose), Text: p.Told(text)}
	for i := range cuts {
		piece.Cuts = append(piece.Cuts, sheet.PieceCut{Panel: cuts[i].Panel.Label(), Text: p.Told(cut(j, &cuts[i], l.Round))})
	}
	return piece
}

// cut says how a loose piece is cut from one panel: where its middle lies,
// its edges, and where a round line runs over the panel's edges.
func cut(j *job.Job, c *setout.Cut, round bool) words.Text {
	text := Middle(j, c, round)
	for _, x := range c.Crossings {
		end := survey.DA
		if x.Edge == survey.BC || x.Edge == survey.DA {
			end = survey.AB
		}
		if round {
			text = words.Sentences(text, words.Say("The line runs over the edge towards {edge} {at} from its end towards {end}.",
				facing("edge", j, x.Edge), words.Length("at", x.At), facing("end", j, end)))
		}
	}
	return text
}

// Middle says where what is cut out of a panel lies on it: its middle and its edges.
func Middle(j *job.Job, c *setout.Cut, round bool) words.Text {
	return words.Sentences(words.Say("Its middle is {place}.", words.Of("place", FromEdges(j, c.Middle))), Edges(j, c, round))
}

// Edges says where a cut lies on a panel besides its middle: for a rectangle its
// edges, or its corners where it lies askew.
func Edges(j *job.Job, c *setout.Cut, round bool) words.Text {
	if round || c.From.X >= c.To.X || c.From.Y >= c.To.Y {
		return words.Text{}
	}
	if c.IsAskew() {
		var corners []words.Text
		for _, corner := range c.Corners {
			corners = append(corners, words.Say("A corner is {place}.", words.Of("place", FromEdges(j, corner))))
		}
		return words.Sentences(corners...)
	}
	return words.Say("Cut from {left} to {right} off the edge towards {across}, and from {top} to {bottom} off the edge towards {along}.",
		words.Length("left", c.From.X), words.Length("right", c.To.X), facing("across", j, survey.DA),
		words.Length("top", c.From.Y), words.Length("bottom", c.To.Y), facing("along", j, survey.AB))
}

// FromEdges is how far a place is from the two edges of a panel that meet at
// its corner A.
func FromEdges(j *job.Job, at survey.Point) words.Text {
	return words.Say("{one} and {other}", words.Of("one", fromEdge(j, at.X, survey.DA)), words.Of("other", fromEdge(j, at.Y, survey.AB)))
}

// fromEdge is how far a place is from a panel's edge. On the neighbour it lies
// outside that edge.
func fromEdge(j *job.Job, l measure.Length, side survey.Wall) words.Text {
	off, wall := words.Length("off", l.Abs()), facing("wall", j, side)
	if l < 0 {
		return words.Say("{off} outside the edge towards {wall}", off, wall)
	}
	return words.Say("{off} from the edge towards {wall}", off, wall)
}
