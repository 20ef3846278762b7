package hanging

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/job/meeting"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/words"
)

// order puts the steps of a layer on the sheet, the loose pieces last.
func (t *teller) order(i int, l *hung.Layer, out *sheet.Layer) {
	s := steps{teller: t, layer: l, met: &t.Meeting.Layers[i], sides: map[survey.Wall]string{}, signs: map[survey.Wall]string{}}
	s.lines = map[hanging.Target]string{hanging.ToCentreLine: t.Say("centre line"), hanging.ToTapeLine: t.Say("tape line")}
	if i > 0 {
		s.key = t.Hung(i - 1).Key.Name()
	}
	for _, side := range [4]survey.Wall{survey.AB, survey.BC, survey.CD, survey.DA} {
		s.sides[side] = t.Told(t.towards(side))
		s.signs[side] = t.Say("{wall}", words.Of("wall", t.Setting.Facing(side)))
	}
	out.Order = make([]sheet.Hang, 0, len(l.Order)+len(l.Panels.Loose))
	for k := range l.Order {
		step := s.step(&l.Order[k])
		if len(s.met.Cards) > 0 {
			step.Measures = s.measures(l.Order[k].Block, &s.met.Cards[k])
		}
		out.Order = append(out.Order, step)
	}
	for k, isUp := range l.LooseUp {
		step := t.loose(&l.Panels.Loose[k])
		step.N, step.Up = len(out.Order)+1, isUp
		out.Order = append(out.Order, step)
	}
}

// steps writes the steps of one layer. Panels of one column are as far from their
// line, so what is said of a column or a row is said once. key is the name of the key
// of the layer before; sides and signs name the walls, lines the lines of the mask.
type steps struct {
	*teller
	layer         *hung.Layer
	met           *meeting.Met
	key           string
	sides, signs  map[survey.Wall]string
	lines         map[hanging.Target]string
	columns, rows map[hanging.Offset]sheet.Measure
	size          measure.Length
	diagonal      sheet.Measure
}

func (s *steps) step(h *hanging.Hang) sheet.Hang {
	out := sheet.Hang{N: h.N, Panel: h.Panel.Label(), Set: make([]sheet.EdgeSet, len(h.Edges)), Station: h.Station, Up: h.Up}
	// Of ten thousand steps each is a row of what stands in it, with nothing but signs
	// between.
	text := append(make([]byte, 0, 96), blockName(h.Block)...)
	for i := range h.Edges {
		set := sheet.EdgeSet{Edge: s.sides[h.Edges[i].Side], To: s.Told(s.target(&h.Edges[i]))}
		out.Set[i] = set
		joint := "; "
		if i == 0 {
			joint = ": "
		}
		text = append(append(append(append(text, joint...), set.To...), ' '), set.Edge...)
	}
	out.Text, out.Brief = string(append(text, '.')), s.brief(h)
	if out.Mind = s.Told(mind(h)); out.Mind != "" {
		out.Text += " " + out.Mind
	}
	return out
}

// brief is what the edges are set to as signs, in one line.
func (s *steps) brief(h *hanging.Hang) string {
	line := make([]byte, 0, 64)
	for i := range h.Edges {
		e := &h.Edges[i]
		if i > 0 {
			line = append(line, " · "...)
		}
		line = append(append(line, s.signs[e.Side]...), ' ')
		switch e.To {
		case hanging.ToPanel:
			line = append(line, e.Panel.Label()...)
		case hanging.ToKey:
			line = append(line, s.key...)
		case hanging.ToSeamLine:
			line = append(line, e.Seam...)
		default:
			line = append(line, s.lines[e.To]...)
		}
	}
	return string(line)
}

// target is what an edge is set to.
func (s *steps) target(e *hanging.Edge) words.Text {
	switch e.To {
	case hanging.ToPanel:
		return words.Say("to {panel}", words.Name("panel", e.Panel.Label()))
	case hanging.ToKey:
		return words.Say("to the key {panel}", words.Name("panel", s.key))
	case hanging.ToCentreLine:
		return words.Say("on the centre line")
	case hanging.ToSeamLine:
		return words.Say("on seam line {seam}", words.Name("seam", e.Seam))
	}
	return words.Say("on the tape line")
}

// mind is what to know before the step: why it comes after the others, and that the
// platform does not reach all of it; nothing for most.
func mind(h *hanging.Hang) words.Text {
	late, part := words.Text{}, words.Text{}
	if h.Waits != "" {
		late = why(h.Waits)
	}
	if h.Part {
		part = words.Say("Not all of it is in reach from platform position {n}.", words.Count("n", h.Station))
	}
	return words.Sentences(late, part)
}

// why a step comes after the others.
func why(w hanging.Wait) words.Text {
	switch w {
	case hanging.WaitsForKey:
		return words.Say("It lies on the panel kept up: hang it when that is down.")
	case hanging.WaitsForDelivery:
		return words.Say("Hang it when it has come whole.")
	}
	return words.Say("It touches nothing that is up until those before it are.")
}

func (s *steps) measures(block hanging.Block, card *hanging.Card) []sheet.Measure {
	if s.columns == nil {
		s.columns, s.rows = map[hanging.Offset]sheet.Measure{}, map[hanging.Offset]sheet.Measure{}
	}
	if card.Diagonal != s.size {
		lies := s.layer.Rect(block)
		s.size, s.diagonal = card.Diagonal, sheet.Measure{What: s.Say("corner to corner, both ways"), Text: s.Notation.Length(card.Diagonal),
			Sum: "√((" + s.Put(lies.Length) + ")² + (" + s.Put(lies.Width) + ")²) = " + s.Exactly(card.Diagonal)}
	}
	return []sheet.Measure{
		s.offset(s.columns, card.Along, &s.met.Columns, block.Column-1, block.Columns),
		s.offset(s.rows, card.Across, &s.met.Rows, block.Row-1, block.Rows),
		s.diagonal,
	}
}

func (s *steps) offset(said map[hanging.Offset]sheet.Measure, o hanging.Offset, run *mask.Run, first, count int) sheet.Measure {
	if m, ok := said[o]; ok {
		return m
	}
	edge := words.Name("edge", s.sides[o.Edge])
	what := words.Say("from the centre line to the edge {edge}, both ends", edge)
	if o.Line == hanging.ToTapeLine {
		what = words.Say("from the tape line {line} to the edge {edge}, both ends", words.Name("line", s.sides[o.Side]), edge)
	}
	m := sheet.Measure{What: s.Told(what), Text: s.Notation.Length(o.Length)}
	if text := o.Sum(run, first, count).In(s.Style()); text != m.Text {
		m.Sum = text + " = " + s.Exactly(o.Length)
	}
	said[o] = m
	return m
}

// loose is the step of a loose piece: last, on its own marks.
func (t *teller) loose(p *mask.Loose) sheet.Hang {
	from := func(side survey.Wall, far measure.Length) sheet.Measure {
		return sheet.Measure{What: t.Say("from the tape line {side} to its middle", words.Of("side", t.towards(side))), Text: t.Notation.Length(far)}
	}
	return sheet.Hang{
		Panel: p.Name, Set: []sheet.EdgeSet{{To: t.Say("on its own marks")}},
		Text:     t.Say("{piece}: on its own marks, when all round it is up.", words.Name("piece", p.Name)),
		Brief:    t.Say("on its own marks, when all round it is up"),
		Measures: []sheet.Measure{from(survey.DA, p.X), from(survey.AB, p.Y)},
	}
}
