package delivery

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// State is what checking the delivery found of a panel. The empty state counts
// as Unchecked.
type State string

// The states of a panel. Recut is one that was cut to another size on purpose.
const (
	Unchecked State = "unchecked"
	Found     State = "found"
	Missing   State = "missing"
	Damaged   State = "damaged"
	Recut     State = "recut"
)

// Note is what was noted of one panel, named by its own label. At is where to
// blame. Length and Width are its size as measured, 0 where it was not; of a
// span, the size of the whole piece, and any of its panels may be named.
type Note struct {
	At, Panel     string
	State         State
	Length, Width measure.Length
}

// Given is what a delivery is checked by: the layer as ordered, with its
// pieces, the supplier's labels as typed or pasted, and the notes. Tolerance is
// how far a panel may be off, 0 where nothing was agreed; Mark is the mark of the
// tape that sizes are measured with.
type Given struct {
	Layer           mask.Layer
	Labels          string
	Notes           []Note
	Tolerance, Mark measure.Length
}

// Size is a length along the mask and a width across it. 0 is not known.
type Size struct{ Length, Width measure.Length }

// Panel is one panel as it came. Label is the supplier's, "" for none. Ordered
// is its size in the order; Measured the size it was noted with and Used that
// size as far as it is believed, 0 where it counts as ordered. The panels of a
// span have the size of the whole piece, and only its first has a measured one.
type Panel struct {
	Panel                   mask.Panel
	Label                   string
	State                   State
	Ordered, Measured, Used Size
}

// Believed is the size as it was measured, as far as it is used.
func (p *Panel) Believed() Size {
	m := p.Measured
	if p.Used.Length == 0 {
		m.Length = 0
	}
	if p.Used.Width == 0 {
		m.Width = 0
	}
	return m
}

// Own is the size the panel is hung with: as measured, else as ordered.
func (p *Panel) Own() Size {
	return Size{used(p.Used.Length, p.Ordered.Length), used(p.Used.Width, p.Ordered.Width)}
}

// Count is how many panels of a layer are in which state. Found, Missing,
// Damaged, Recut and Unchecked add up to Total; Measured counts those with a
// size that is used. Each panel of a span counts, since a span is noted whole.
type Count struct {
	Total, Found, Missing, Damaged, Recut, Unchecked, Measured int
}

// Checked is a delivery after the check. Panels are in reading order, nil where
// there are neither labels nor notes. Ordered is the layer as ordered, Layer
// the same with columns and rows as measured.
type Checked struct {
	Panels         []Panel
	Count          Count
	Ordered, Layer mask.Layer
	// Grown is how the film changed along the length and along the width.
	Grown [2]Growth

	// limit is how far a size may be off and still be as ordered, mark the tape mark.
	limit, mark measure.Length
	lead        []int32
}

// Check counts the panels of a layer and lays it out as measured, with what is
// wrong at "/labels" and behind each note's At.
//
// A measured size is used of panels that are found, re-cut or not checked yet;
// a missing panel has none, and for a damaged one another is to come, as
// ordered. A size within half a tape mark of the ordered one is the ordered
// one: that is all the tape can tell. Sizes that look turned or like a slip of
// the pen are asked about and not used (see doubts).
func Check(g Given) (*Checked, []problem.Problem) {
	c := &Checked{Ordered: g.Layer, Layer: g.Layer, Count: Count{Total: g.Layer.Count(), Unchecked: g.Layer.Count()}}
	if g.Layer.IsEmpty() {
		return c, nil
	}
	labels, problems := ParseLabels(g.Labels, g.Layer)
	if labels == nil && len(g.Notes) == 0 {
		return c, problems
	}
	k := checking{Checked: *c, problems: problems, noted: make([]bool, g.Layer.Count())}
	k.lead = leads(g.Layer)
	k.limit, k.mark = max(g.Tolerance, g.Mark/2), g.Mark
	k.layOut(labels)
	for _, note := range g.Notes {
		k.note(note)
	}
	k.spread()
	k.count()
	k.resize()
	k.Grown = [2]Growth{k.growth(true), k.growth(false)}
	return &k.Checked, k.problems
}

// checking is a delivery while it is checked.
type checking struct {
	Checked
	noted    []bool
	problems []problem.Problem
}

func (k *checking) say(at string, severity problem.Severity, what, do words.Text) {
	k.problems = append(k.problems, problem.Problem{At: at, Severity: severity, What: what, Do: do})
}

// layOut makes the list of panels as ordered.
func (k *checking) layOut(labels []string) {
	layer := k.Ordered
	k.Panels = make([]Panel, layer.Count())
	for i := range k.Panels {
		p := layer.PanelAt(i)
		k.Panels[i] = Panel{Panel: p, State: Unchecked, Ordered: Size{layer.Columns[p.Column-1], layer.Rows[p.Row-1]}}
		if labels != nil {
			k.Panels[i].Label = labels[i]
		}
	}
	for _, piece := range layer.Pieces {
		if piece.Kind == mask.Span {
			length, width := piece.Size(layer)
			each(piece, func(p mask.Panel) { k.Panels[layer.Index(p)].Ordered = Size{length, width} })
		}
	}
}

// each calls for every panel of a piece.
func each(piece mask.Piece, do func(mask.Panel)) {
	for row := piece.Row; row <= piece.Last().Row; row++ {
		for column := piece.Column; column <= piece.Last().Column; column++ {
			do(mask.Panel{Column: column, Row: row})
		}
	}
}

// note takes in one note. Of two notes on one panel, or on two panels of one
// span, the first counts.
func (k *checking) note(note Note) {
	panel, ok := k.Ordered.PanelByLabel(note.Panel)
	switch {
	case note.Panel == "":
		k.say(note.At+"/panel", problem.Stop, words.Say("This note does not say which panel it is about."),
			words.Say("Write the panel's own label, from A1 to {last}.", words.Name("last", k.Ordered.LastPanel().Label())))
		return
	case !ok:
		k.say(note.At+"/panel", problem.Stop, words.Say("There is no panel “{panel}” in this layer.", words.Name("panel", note.Panel)),
			words.Say("Its panels run from A1 to {last}.", words.Name("last", k.Ordered.LastPanel().Label())))
		return
	}
	i := k.Ordered.Index(panel)
	if k.lead != nil {
		i = int(k.lead[i])
	}
	p := &k.Panels[i]
	if k.noted[i] {
		k.say(note.At+"/panel", problem.Caution, words.Say("“{panel}” is noted twice.", words.Name("panel", k.called(i))),
			words.Say("Take one of the notes out. The first is taken."))
		return
	}
	k.noted[i] = true
	p.State, p.Measured = note.State, Size{note.Length, note.Width}
	if p.State == "" {
		p.State = Unchecked
	}
	k.believe(note, p)
}

// called is the label of a panel, or of the piece it comes in.
func (k *checking) called(i int) string {
	if k.lead != nil {
		for _, piece := range k.Ordered.Pieces {
			if piece.Kind == mask.Span && k.Ordered.Index(piece.First()) == i {
				return piece.Name
			}
		}
	}
	return k.Ordered.PanelAt(i).Label()
}

// spread gives every panel of a span what was noted of the span.
func (k *checking) spread() {
	for i, first := range k.lead {
		if int(first) != i {
			k.Panels[i].State = k.Panels[first].State
		}
	}
}

func (k *checking) count() {
	c := Count{Total: len(k.Panels)}
	for i := range k.Panels {
		p := &k.Panels[i]
		switch p.State {
		case Found:
			c.Found++
		case Missing:
			c.Missing++
		case Damaged:
			c.Damaged++
		case Recut:
			c.Recut++
		default:
			c.Unchecked++
		}
		first := i
		if k.lead != nil {
			first = int(k.lead[i])
		}
		if k.Panels[first].Used != (Size{}) {
			c.Measured++
		}
	}
	k.Count = c
}
