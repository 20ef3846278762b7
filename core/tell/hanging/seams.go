package hanging

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/job/layers"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// seam is a seam of the sheet, with what of it is closed on the floor.
func (t *teller) seam(s *mask.Seam) sheet.Seam {
	length, floor := words.Length("length", s.Length), words.Length("floor", s.Floor)
	text := words.Say("{length}", length)
	switch {
	case s.Floor > 0 && s.Length > 0:
		text = words.Say("{length} and {floor} on the floor", length, floor)
	case s.Floor > 0:
		text = words.Say("{floor} on the floor", floor)
	}
	return sheet.Seam{Seam: s.Name, Length: t.Told(text)}
}

// seamFigures are the seams of one layer and where they cross.
func (t *teller) seamFigures(l *layers.Layer) {
	outline, p := t.Plan.Mask.Outline, &l.Panels
	sum, inside := t.lengthSum(l)
	rule := words.Say("Seams between columns run the width of the mask, seams between rows its length.")
	if inside > 0 {
		rule = words.Sentences(rule, words.Say("What lies inside pieces is taken off: of a span there is no seam, and a joined piece is closed on the floor."))
	}
	t.Length(page.Hanging, p.ID+".seams.length", t.Say("seams of this layer"), p.SeamLength(outline), t.Told(rule), sum, t.Arithmetic())
	t.crossings(l)
	if floor := p.FloorLength(outline); floor > 0 {
		t.Length(page.Hanging, p.ID+".seams.floor", t.Say("seams closed on the floor"), floor, t.Say("The seams inside joined pieces."), t.floorSum(p), t.Arithmetic())
	}
	if len(p.Loose) > 0 {
		t.Length(page.Hanging, p.ID+".seams.loose", t.Say("lines round loose pieces"), p.LooseLength(),
			t.Say("The way round each piece: twice length and width, or π times across."), t.looseSum(p.Loose), t.Arithmetic())
	}
}

// lengthSum is the length of the seams of a layer as a sum, and what is taken off in
// it.
func (t *teller) lengthSum(l *layers.Layer) (sum string, inside measure.Length) {
	outline, columns, rows := t.Plan.Mask.Outline, len(l.Panels.Columns)-1, len(l.Panels.Rows)-1
	sum = strconv.Itoa(columns) + " × " + t.Put(outline.Width) + " + " + strconv.Itoa(rows) + " × " + t.Put(outline.Length)
	inside = measure.Length(columns)*outline.Width + measure.Length(rows)*outline.Length - l.Panels.SeamLength(outline)
	if inside > 0 {
		sum += " − " + t.Put(inside)
	}
	return sum, inside
}

// crossings are where the seams of a layer meet.
func (t *teller) crossings(l *layers.Layer) {
	p := &l.Panels
	crossings, joints := p.Crossings(), p.TJoints()
	sum, inside := crossingSum(l)
	rule := words.Say("(columns − 1) times (rows − 1).")
	if inside > 0 {
		rule = words.Sentences(rule, words.Say("Those inside a span or on its side are taken off."))
	}
	t.Count(page.Hanging, p.ID+".seams.crossings", t.Say("{n?crossing of this layer|crossings of this layer}", words.Count("n", crossings)), int64(crossings), "", t.Told(rule), sum, t.Arithmetic())
	if joints > 0 {
		t.Count(page.Hanging, p.ID+".seams.tjoints", t.Say("{n?seam that ends on a span|seams that end on a span}", words.Count("n", joints)), int64(joints), "",
			t.Say("Where three panels meet, since a span lies along one side."), t.Say("counted"), t.Arithmetic())
	}
}

// crossingSum is the crossings of a layer as a sum, and what is taken off in it.
func crossingSum(l *layers.Layer) (sum string, inside int) {
	columns, rows := len(l.Panels.Columns)-1, len(l.Panels.Rows)-1
	sum = strconv.Itoa(columns) + " × " + strconv.Itoa(rows)
	if inside = columns*rows - l.Panels.Crossings(); inside > 0 {
		sum += " − " + strconv.Itoa(inside)
	}
	return sum, inside
}

// allSeams are the seams of all layers together.
func (t *teller) allSeams() {
	t.Length(page.Hanging, "seams.length", t.Say("seams, all layers"), t.Tape.Seams, t.Say("Every inner seam of every layer."),
		t.sumOfLayers(func(l *layers.Layer, alone bool) string {
			if !alone {
				return t.Put(l.Panels.SeamLength(t.Plan.Mask.Outline))
			}
			sum, _ := t.lengthSum(l)
			return sum
		}), t.Arithmetic())
	crossings, spans := 0, false
	for i := range t.Layers {
		p := &t.Layers[i].Panels
		crossings += p.Crossings()
		spans = spans || slices.ContainsFunc(p.Pieces, func(piece mask.Piece) bool { return piece.Kind == mask.Span })
	}
	rule := words.Say("Where four panels meet: (columns − 1) times (rows − 1) in each layer.")
	if spans {
		rule = words.Say("Where four panels meet: (columns − 1) times (rows − 1) in each layer, less what spans take away.")
	}
	t.Count(page.Hanging, "seams.crossings", t.Say("{n?crossing of seams|crossings of seams}", words.Count("n", crossings)), int64(crossings), "", t.Told(rule),
		t.sumOfLayers(func(l *layers.Layer, alone bool) string {
			if !alone {
				return strconv.Itoa(l.Panels.Crossings())
			}
			sum, _ := crossingSum(l)
			return sum
		}), t.Arithmetic())
}

// sumOfLayers adds up what the layers that are hung have of something. Of one layer
// alone it is that layer's own sum.
func (t *teller) sumOfLayers(of func(l *layers.Layer, alone bool) string) string {
	var parts []string
	for i := range t.Layers {
		if l := &t.Layers[i]; !l.Panels.IsEmpty() {
			parts = append(parts, of(l, t.Tape.Hung == 1))
		}
	}
	if parts == nil {
		return t.Say("none")
	}
	return strings.Join(parts, " + ")
}

// floorSum is the floor's part of each seam, written as a sum.
func (t *teller) floorSum(p *mask.Layer) string {
	var parts []string
	for _, s := range p.Seams(t.Plan.Mask.Outline) {
		if s.Floor > 0 {
			parts = append(parts, s.Name+": "+t.Put(s.Floor))
		}
	}
	return strings.Join(parts, " + ")
}

func (t *teller) looseSum(loose []mask.Loose) string {
	parts := make([]string, len(loose))
	for i, p := range loose {
		parts[i] = "2 × (" + t.Put(p.Length) + " + " + t.Put(p.Width) + ")"
		if p.Round {
			parts[i] = "π × " + t.Put(p.Length)
		}
	}
	return strings.Join(parts, " + ")
}
