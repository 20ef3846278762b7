// Package mask tells the page Mask: how many panels there are and what came of them,
// the pieces they hang in, the gaps at their seams and the tape over those, and how a
// layer lies on the one before.
package mask

import (
	"strconv"
	"strings"

	"ceilingwright/core/job/layers"

	"ceilingwright/core/job"
	"ceilingwright/core/measure"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Area is the figure of the area of the mask, which there is where IsSized.
const Area = "mask.area"

// IsSized tells whether there is a mask of which the size is known.
func IsSized(j *job.Job) bool { return j.Plan.Mask.Outline.IsComplete() && !j.Maskless }

// Figures are the size of the mask and how many panels each layer has.
func Figures(p *page.Page, j *job.Job) {
	if m := &j.Plan.Mask; IsSized(j) {
		p.Area(page.Mask, Area, p.Say("mask"), m.Area(), p.Say("Length times width of the whole mask."),
			p.Put(m.Length)+" × "+p.Put(m.Width), p.Arithmetic())
	}
	for i := range j.Layers {
		if l := &j.Layers[i]; !l.Panels.IsEmpty() {
			n := l.Panels.Count()
			p.Count(page.Mask, l.Panels.ID+".panels", p.Say("{n?panel|panels}", words.Count("n", n)), int64(n), "",
				p.Say("Columns times rows."), strconv.Itoa(len(l.Panels.Columns))+" × "+strconv.Itoa(len(l.Panels.Rows)), p.Arithmetic())
			foundFigure(p, l)
		}
	}
}

// foundFigure is how many panels came as they should, where anything was noted.
func foundFigure(p *page.Page, l *layers.Layer) {
	c := l.Delivery.Count
	if l.Delivery.Panels == nil {
		return
	}
	less := c
	less.Found = 0
	sum := append([]string{strconv.Itoa(c.Total)}, told(p, states(less))...)
	p.Count(page.Mask, l.Panels.ID+".found", p.Say("{n?panel found|panels found}", words.Count("n", c.Found)), int64(c.Found), "",
		p.Say("All panels of the layer, less those that are missing, damaged, re-cut or not checked yet."), strings.Join(sum, " − "), p.Arithmetic())
}

// facing is the wall that a side of the mask, or the edge of a panel, faces.
func facing(name string, j *job.Job, side survey.Wall) words.Hole {
	return words.Name(name, j.Setting.Facing(side).Text())
}

// nearly is a length on the tape mark, said to be about that where the mark hides
// something.
type nearly measure.Length

// In is the length as it is said.
func (l nearly) In(style words.Style) string {
	length := measure.Length(l)
	if style.Notation.Hides(length) == 0 {
		return style.Notation.Length(length)
	}
	return style.Say("about {length}", words.Length("length", length))
}

// told are texts as the page puts them.
func told(p *page.Page, texts []words.Text) []string {
	if texts == nil {
		return nil
	}
	list := make([]string, len(texts))
	for i := range texts {
		list[i] = p.Told(texts[i])
	}
	return list
}
