package mask

import (
	"strconv"

	"ceilingwright/core/job/layers"

	"ceilingwright/core/delivery"
	"ceilingwright/core/job"
	"ceilingwright/core/mask"
	"ceilingwright/core/sheet"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Delivered puts the delivery and the pieces on the layer of the sheet.
func Delivered(p *page.Page, j *job.Job, l *layers.Layer, out *sheet.Layer) {
	c := l.Delivery.Count
	out.Delivery = sheet.Delivery{
		Text: p.Told(counted(c)), Total: c.Total, Found: c.Found, Missing: c.Missing, Damaged: c.Damaged, Recut: c.Recut,
		Measured: c.Measured, Unchecked: c.Unchecked, Ask: told(p, asked(l.Asked)), Changed: told(p, changed(l)),
	}
	for i := range out.Panels {
		out.Panels[i].State = string(delivery.Unchecked)
	}
	for i := range l.Delivery.Panels {
		panel, shown := &l.Delivery.Panels[i], &out.Panels[i]
		shown.Supplier, shown.State, shown.Measured = panel.Label, string(panel.State), panel.Believed().In(p.Style())
		if c.Measured > 0 && !l.Delivery.InSpan(i) {
			shown.Size = panel.Own().In(p.Style())
		}
	}
	pieces(p, j, l, out)
}

// counted is how many panels are in which state.
func counted(c delivery.Count) words.Text {
	all, parts, measured := words.Count("all", c.Total), words.Texts("parts", states(c)), words.Count("measured", c.Measured)
	isAll := c.Found == c.Total && c.Total > 1
	switch {
	case c.Total == 0:
		return words.Text{}
	case c.Unchecked == c.Total && c.Measured == 0:
		return words.Say("Not checked yet: {all|panel|panels}.", all)
	case isAll && c.Measured == 0:
		return words.Say("All {all|panel|panels} found.", all)
	case isAll:
		return words.Say("All {all|panel|panels} found; {measured} measured.", all, measured)
	case c.Measured == 0:
		return words.Say("{all|panel|panels}: {parts}.", all, parts)
	}
	return words.Say("{all|panel|panels}: {parts}; {measured} measured.", all, parts, measured)
}

// states are the states that any panel is in.
func states(c delivery.Count) []words.Text {
	var parts []words.Text
	add := func(n int, part words.Text) {
		if n > 0 {
			parts = append(parts, part)
		}
	}
	add(c.Found, words.Say("{n} found", words.Count("n", c.Found)))
	add(c.Missing, words.Say("{n} missing", words.Count("n", c.Missing)))
	add(c.Damaged, words.Say("{n} damaged", words.Count("n", c.Damaged)))
	add(c.Recut, words.Say("{n} re-cut", words.Count("n", c.Recut)))
	add(c.Unchecked, words.Say("{n} not checked yet", words.Count("n", c.Unchecked)))
	return parts
}

// asked is what to ask the supplier for, in lines: "2 panels 4′ 0″ × 3′ 11⅜″,
// missing: B2, C4 (their labels 14, 19)".
func asked(list []delivery.Asked) []words.Text {
	lines := make([]words.Text, len(list))
	for i := range list {
		a := &list[i]
		n, size, own := words.Count("n", len(a.Own)), words.Of("size", a.Ordered), words.Row("own", a.Own)
		switch {
		case a.Fault == delivery.IsMissing && a.Pieces:
			lines[i] = words.Say("{n|piece|pieces} {size}, missing: {own}", n, size, own)
		case a.Fault == delivery.IsMissing:
			lines[i] = words.Say("{n|panel|panels} {size}, missing: {own}", n, size, own)
		case a.Fault == delivery.IsDamaged && a.Pieces:
			lines[i] = words.Say("{n|piece|pieces} {size}, damaged: {own}", n, size, own)
		case a.Fault == delivery.IsDamaged:
			lines[i] = words.Say("{n|panel|panels} {size}, damaged: {own}", n, size, own)
		case a.Pieces:
			lines[i] = words.Say("{n|piece|pieces} {size}, came {came}: {own}", n, size, words.Of("came", a.Came), own)
		default:
			lines[i] = words.Say("{n|panel|panels} {size}, came {came}: {own}", n, size, words.Of("came", a.Came), own)
		}
		if len(a.Theirs) > 0 {
			lines[i] = words.Say("{asked} (their {n?label|labels} {labels})", words.Of("asked", lines[i]), words.Count("n", len(a.Theirs)), words.Row("labels", a.Theirs))
		}
	}
	return lines
}

// linesAtMost is how many lines of one kind are written out: the panels and
// marks have all of it.
const linesAtMost = 12

// changed is what the measured sizes change against the order, in lines: film that
// grew or shrank evenly, which columns and rows, how far the seams move, and which
// panels leave more open than their column or row says.
func changed(l *layers.Layer) []words.Text {
	var lines []words.Text
	for i := range l.Delivery.Grown {
		if g := &l.Delivery.Grown[i]; g.Panels > 0 && l.Delivery.Count.Measured > 0 {
			lines = append(lines, grown(g, i == 0))
		}
	}
	c := &l.Changes
	for i := range c.Columns {
		if i == linesAtMost {
			lines = append(lines, words.Say("So it is with {n} more sizes of columns.", words.Count("n", len(c.Columns)-i)))
			break
		}
		lines = append(lines, columnChanged(&c.Columns[i]))
	}
	for i := range c.Rows {
		if i == linesAtMost {
			lines = append(lines, words.Say("So it is with {n} more sizes of rows.", words.Count("n", len(c.Rows)-i)))
			break
		}
		lines = append(lines, rowChanged(&c.Rows[i]))
	}
	lines = appendMoved(lines, c.ColumnSeams, survey.DA, survey.BC)
	lines = appendMoved(lines, c.RowSeams, survey.AB, survey.CD)
	for i := range c.Shorts {
		if i == linesAtMost {
			return append(lines, words.Say("Other panels leave more open too; their sizes are in the list."))
		}
		lines = append(lines, short(&c.Shorts[i]))
	}
	return lines
}

// grown says how film grew or shrank along the length, or across it.
func grown(g *delivery.Growth, along bool) words.Text {
	n, share, whole, half := words.Count("n", g.Panels), words.Share("share", g.Share.Abs()), words.Fine("whole", g.Whole.Abs()), words.Fine("half", g.Half.Abs())
	over := words.Say("Over the whole width that makes {whole}; hung from the centre out, {half} at either end.", whole, half)
	if along {
		over = words.Say("Over the whole length that makes {whole}; hung from the centre out, {half} at either end.", whole, half)
	}
	what := words.Say("All {n|measured panel is|measured panels are} about {share} wider than ordered: the film itself has changed.", n, share)
	switch {
	case along && g.Whole < 0:
		what = words.Say("All {n|measured panel is|measured panels are} about {share} shorter than ordered: the film itself has changed.", n, share)
	case along:
		what = words.Say("All {n|measured panel is|measured panels are} about {share} longer than ordered: the film itself has changed.", n, share)
	case g.Whole < 0:
		what = words.Say("All {n|measured panel is|measured panels are} about {share} narrower than ordered: the film itself has changed.", n, share)
	}
	return words.Sentences(what, over)
}

func columnChanged(c *delivery.Alike) words.Text {
	n, names := words.Count("n", len(c.Indexes)), words.Row("names", namesOf(c, strconv.Itoa))
	now, by := words.Of("now", nearly(c.Now)), words.Fine("by", (c.Now-c.Ordered).Abs())
	if c.Now < c.Ordered {
		return words.Say("{n?Column|Columns} {names} {n?is|are} {now} long, {by} less than ordered.", n, names, now, by)
	}
	return words.Say("{n?Column|Columns} {names} {n?is|are} {now} long, {by} more than ordered.", n, names, now, by)
}

func rowChanged(c *delivery.Alike) words.Text {
	n, names := words.Count("n", len(c.Indexes)), words.Row("names", namesOf(c, mask.RowLetters))
	now, by := words.Of("now", nearly(c.Now)), words.Fine("by", (c.Now-c.Ordered).Abs())
	if c.Now < c.Ordered {
		return words.Say("{n?Row|Rows} {names} {n?is|are} {now} wide, {by} less than ordered.", n, names, now, by)
	}
	return words.Say("{n?Row|Rows} {names} {n?is|are} {now} wide, {by} more than ordered.", n, names, now, by)
}

func namesOf(c *delivery.Alike, name func(int) string) []string {
	list := make([]string, len(c.Indexes))
	for i, index := range c.Indexes {
		list[i] = name(index)
	}
	return list
}

// appendMoved says how far the seams of one direction move in the box.
func appendMoved(lines []words.Text, list []delivery.Moved, low, high survey.Wall) []words.Text {
	if len(list) == 0 {
		return lines
	}
	moves := make([]words.Text, min(len(list), linesAtMost))
	for i := range moves {
		wall := high
		if list[i].By < 0 {
			wall = low
		}
		moves[i] = words.Say("{seam} by {by} towards {wall}", words.Name("seam", list[i].Seam), words.Fine("by", list[i].By.Abs()), words.Name("wall", wall.Text()))
	}
	if more := len(list) - len(moves); more > 0 {
		return append(lines, words.Say("Seams move: {moves} and {more} more. The marks are for the panels as measured.", words.Texts("moves", moves), words.Count("more", more)))
	}
	return append(lines, words.Say("Seams move: {moves}. The marks are for the panels as measured.", words.Texts("moves", moves)))
}

// short says what panels leave open.
func short(s *delivery.ShortAlike) words.Text {
	names, length, width := words.Row("names", s.Names), words.Fine("length", s.By.Length), words.Fine("width", s.By.Width)
	switch {
	case s.By.Width == 0:
		return words.Say("{names}: {length} in length more stays open at the outer edge.", names, length)
	case s.By.Length == 0:
		return words.Say("{names}: {width} in width more stays open at the outer edge.", names, width)
	}
	return words.Say("{names}: {length} in length and {width} in width more stays open at the outer edge.", names, length, width)
}
