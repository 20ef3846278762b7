// Package hanging tells the page Hanging: the panels of each layer, their order and
// what each is set to, the places of the platform, the panel kept up for the next
// layer, the seams, and how far the panels come out.
package hanging

import (
	"ceilingwright/core/hanging"
	"ceilingwright/core/job"
	"ceilingwright/core/job/hung"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	tellmask "ceilingwright/core/tell/mask"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/tell/setting"
	"ceilingwright/core/words"
)

// teller tells how the layers of one job are hung.
type teller struct {
	*page.Page
	*job.Job
}

// Tell puts the layers on the sheet, with the seams of all of them and the tape.
func Tell(p *page.Page, j *job.Job) {
	t := teller{p, j}
	for i := range j.Layers {
		l := j.Hung(i)
		p.Sheet.Layers = append(p.Sheet.Layers, t.layer(i, &l))
		if l.RunOuts[0].Run.Box > 0 {
			t.seamFigures(l.Layer)
			t.runOuts(&l)
			tellmask.Bridges(p, j, l.Layer, &p.Sheet.Layers[i])
		}
	}
	if j.Plan.Mask.Outline.IsComplete() && len(j.Layers) > 0 {
		t.allSeams()
		tellmask.Tape(p, j)
	}
}

// layer is a layer of the sheet: sizes, panels, order and seams.
func (t *teller) layer(i int, l *hung.Layer) sheet.Layer {
	p := l.Panels
	out := sheet.Layer{ID: p.ID, Name: p.Name, Count: p.Count(), Columns: t.sizes(p.Columns), Rows: t.sizes(p.Rows), Key: t.key(i)}
	if p.IsEmpty() {
		return out
	}
	t.order(i, l, &out)
	t.places(l, &out)
	t.moved(i, out.Stations)
	if len(l.Restart.Down) > 0 {
		out.Restart = t.restart(l.Restart.Down)
	}
	t.panels(l, &out)
	setting.CutOuts(t.Page, t.Job, l.Layer, out.Panels)
	tellmask.Delivered(t.Page, t.Job, l.Layer, &out)
	out.Flags = setting.SeamFlags(t.Page, t.Job, l.Layer)
	if l.RunOuts[0].Run.Box > 0 {
		for _, s := range p.Seams(t.Plan.Mask.Outline) {
			out.Seams = append(out.Seams, t.seam(&s))
		}
		out.Advice = t.Told(advice(l))
	}
	return out
}

func (t *teller) sizes(lengths []measure.Length) []sheet.Size {
	sizes := make([]sheet.Size, len(lengths))
	for i, l := range lengths {
		sizes[i] = sheet.Size{Text: t.Notation.Length(l), Other: t.Other.Length(l)}
	}
	return sizes
}

// panels are the panels of a layer with their sizes and their turns in hanging; all
// panels of a piece have the piece's.
func (t *teller) panels(l *hung.Layer, out *sheet.Layer) {
	out.Panels = make([]sheet.Panel, 0, l.Panels.Count())
	for row := range out.Rows {
		for column := range out.Columns {
			out.Panels = append(out.Panels, sheet.Panel{
				Label: mask.Panel{Column: column + 1, Row: row + 1}.Label(), Column: column + 1, Row: row + 1,
				Size: out.Columns[column].Text + " × " + out.Rows[row].Text,
			})
		}
	}
	for i := range l.Order {
		h := &l.Order[i]
		for row := h.Block.Row; row < h.Block.Row+h.Block.Rows; row++ {
			for column := h.Block.Column; column < h.Block.Column+h.Block.Columns; column++ {
				out.Panels[l.Panels.Index(mask.Panel{Column: column, Row: row})].Order = h.N
			}
		}
	}
}

// restart says what comes down for a panel that is up crooked.
func (t *teller) restart(blocks []hanging.Block) sheet.Restart {
	down, names := make([]string, len(blocks)), make([]string, len(blocks))
	for i, block := range blocks {
		down[i], names[i] = block.Panel().Label(), blockName(block)
	}
	last := len(names) - 1
	crooked := words.Name("panel", names[last])
	text := words.Say("{panel} is up crooked. Nothing is set to it: take it down and hang it again.", crooked)
	if last > 0 {
		text = words.Say("{panel} is up crooked, and {others} {n?hangs|hang} by it. Take them down in this order: {down}. The others stay.",
			crooked, words.Row("others", names[:last]), words.Count("n", last), words.Row("down", names))
	}
	return sheet.Restart{Text: t.Told(text), Down: down}
}

// blockName is the label of a panel, or of a piece the first and the last.
func blockName(block hanging.Block) string {
	if block.IsPanel() {
		return block.Panel().Label()
	}
	return mask.Piece{Column: block.Column, Row: block.Row, Columns: block.Columns, Rows: block.Rows}.Cells()
}

// towards names a side of the mask by the wall it faces as the mask lies.
func (t *teller) towards(side survey.Wall) words.Text {
	return words.Say("towards {wall}", words.Of("wall", t.Setting.Facing(side)))
}
