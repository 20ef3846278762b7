package delivery

import (
	"strconv"
	"strings"

	"ceilingwright/core/words"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Words is the count in a sentence.
func (c Count) Words() string {
	all := count(c.Total, "panel", "panels")
	switch {
	case c.Total == 0:
		return ""
	case c.Unchecked == c.Total && c.Measured == 0:
		return "Not checked yet: " + all + "."
	case c.Found == c.Total && c.Total > 1:
		all = "All " + all + " found"
	default:
		all += ": " + c.parts()
	}
	if c.Measured > 0 {
		all += "; " + strconv.Itoa(c.Measured) + " measured"
	}
	return all + "."
}

// parts are the states that any panel is in.
func (c Count) parts() string {
	var parts []string
	for _, part := range []struct {
		n    int
		word string
	}{{c.Found, "found"}, {c.Missing, "missing"}, {c.Damaged, "damaged"}, {c.Recut, "re-cut"}, {c.Unchecked, "not checked yet"}} {
		if part.n > 0 {
			parts = append(parts, strconv.Itoa(part.n)+" "+part.word)
		}
	}
	return strings.Join(parts, ", ")
}

// linesAtMost is how many lines of one kind are written out: the panels and
// marks have all of it.
const linesAtMost = 12

// Changes is what the measured sizes change against the order, in lines: which
// columns and rows, how far the seams move, which panels leave more open than
// their column or row says, and film that grew or shrank evenly.
func (c *Checked) Changes(o mask.Outline, n measure.Notation) []string {
	if c.Count.Measured == 0 {
		return nil
	}
	var lines []string
	lines = appendGrowth(lines, "longer", "shorter", "length", c.Grown[0], n)
	lines = appendGrowth(lines, "wider", "narrower", "width", c.Grown[1], n)
	lines = appendChanges(lines, "Column", "Columns", "long", c.ColumnChanges(), strconv.Itoa, n)
	lines = appendChanges(lines, "Row", "Rows", "wide", c.RowChanges(), mask.RowLetters, n)
	lines = c.appendMoved(lines, o, n)
	lines = c.appendShorts(lines, n)
	return lines
}

func appendGrowth(lines []string, more, less, side string, g Growth, n measure.Notation) []string {
	if g.Panels == 0 {
		return lines
	}
	verb := more
	if g.Whole < 0 {
		verb = less
	}
	share := n.NumberTrimmed(g.Share.Abs().Mul(measure.NumberFromInt(100)), 2)
	return append(lines, "All "+count(g.Panels, "measured panel is ", "measured panels are ")+"about "+share+" % "+verb+
		" than ordered: the film itself has changed. Over the whole "+side+" that makes "+n.Fine(g.Whole.Abs())+
		"; hung from the centre out, "+n.Fine(g.Half.Abs())+" at either end.")
}

// hair is what sizes may differ by and still be spoken of as one: equal panels
// of a length that does not divide differ by a nanometre.
const hair = measure.Millimetre / 100

// appendChanges writes columns or rows that changed alike in one line.
func appendChanges(lines []string, one, many, how string, list []Change, name func(int) string, n measure.Notation) []string {
	var order []Change
	names := map[Change][]string{}
	for _, change := range list {
		key := Change{Ordered: change.Ordered.ToMark(hair), Now: change.Now.ToMark(hair)}
		if names[key] == nil {
			order = append(order, change)
		}
		names[key] = append(names[key], name(change.Index))
	}
	for i, change := range order {
		key := Change{Ordered: change.Ordered.ToMark(hair), Now: change.Now.ToMark(hair)}
		if i == linesAtMost {
			return append(lines, "So it is with "+strconv.Itoa(len(order)-i)+" more sizes of "+strings.ToLower(many)+".")
		}
		word, is := many, " are "
		if len(names[key]) == 1 {
			word, is = one, " is "
		}
		by, than := change.Now-change.Ordered, "more"
		if by < 0 {
			by, than = -by, "less"
		}
		lines = append(lines, word+" "+strings.Join(names[key], ", ")+is+said(n, change.Now)+" "+how+", "+n.Fine(by)+" "+than+" than ordered.")
	}
	return lines
}

// appendMoved says how far seams move in the box.
func (c *Checked) appendMoved(lines []string, o mask.Outline, n measure.Notation) []string {
	columnsWere, rowsWere := c.Ordered.Runs(o)
	columns, rows := c.Layer.Runs(o)
	lines = appendMoves(lines, columnsWere, columns, mask.ColumnSeam, "XY", "ZW", n)
	return appendMoves(lines, rowsWere, rows, mask.RowSeam, "YZ", "WX", n)
}

func appendMoves(lines []string, were, are mask.Run, name func(int) string, up, down string, n measure.Notation) []string {
	var moves []string
	for i := range are.Gaps {
		by, towards := are.Seam(i)-were.Seam(i), up
		if by < 0 {
			by, towards = -by, down
		}
		if by >= mask.Noticeable {
			moves = append(moves, name(i+1)+" by "+n.Fine(by)+" towards "+towards)
		}
	}
	if len(moves) == 0 {
		return lines
	}
	more := ""
	if len(moves) > linesAtMost {
		more = " and " + strconv.Itoa(len(moves)-linesAtMost) + " more"
		moves = moves[:linesAtMost]
	}
	return append(lines, "Seams move: "+strings.Join(moves, ", ")+more+". The marks are for the panels as measured.")
}

// appendShorts writes panels that leave the same more open in one line.
func (c *Checked) appendShorts(lines []string, n measure.Notation) []string {
	var order []Size
	names := map[Size][]string{}
	spans := c.spans()
	for _, short := range c.Shorts() {
		key := short.By.toMark(hair)
		if names[key] == nil {
			order = append(order, short.By)
		}
		name := short.Panel.Label()
		if piece, ok := spans[c.Ordered.Index(short.Panel)]; ok {
			name = piece.Name
		}
		names[key] = append(names[key], name)
	}
	for i, by := range order {
		if i == linesAtMost {
			return append(lines, "Other panels leave more open too; their sizes are in the list.")
		}
		text := ""
		if by.Length > 0 {
			text = n.Fine(by.Length) + " in length"
		}
		if by.Width > 0 {
			if text != "" {
				text += " and "
			}
			text += n.Fine(by.Width) + " in width"
		}
		lines = append(lines, strings.Join(names[by.toMark(hair)], ", ")+": "+text+" more stays open at the outer edge.")
	}
	return lines
}

// said is a length, with "about" where the tape mark hides something.
func said(n measure.Notation, l measure.Length) string {
	if n.Hides(l) == 0 {
		return n.Length(l)
	}
	return "about " + n.Length(l)
}

// CheckRuns says what is wrong with the layer as measured once it lies in its
// box, at "/panels": panels that would overlap, and gaps too wide for a tape of
// that width (0: not known). It is silent where nothing was measured, since the
// order has been checked already.
func (c *Checked) CheckRuns(o mask.Outline, tape measure.Length, n measure.Notation) []problem.Problem {
	if c.Count.Measured == 0 || !o.IsComplete() {
		return nil
	}
	columns, rows := c.Layer.Runs(o)
	shortest := c.Shorts()
	problems := c.checkRun(columns, "columns", "length", tape, n, mask.ColumnSeam, func(s Short) (int, measure.Length) { return s.Panel.Column, s.By.Length }, shortest)
	return append(problems, c.checkRun(rows, "rows", "width", tape, n, mask.RowSeam, func(s Short) (int, measure.Length) { return s.Panel.Row, s.By.Width }, shortest)...)
}

func (c *Checked) checkRun(run mask.Run, lines, side string, tape measure.Length, n measure.Notation, name func(int) string, of func(Short) (int, measure.Length), shorts []Short) []problem.Problem {
	narrowest, ok := run.Narrowest()
	if !ok {
		return nil
	}
	if narrowest < 0 {
		over := run.Over - run.Gap*measure.Length(run.Free())
		return []problem.Problem{{At: "/panels", Severity: problem.Stop,
			What: words.Raw("As measured, the " + lines + " are " + n.Amount(over) + " more than the " + side + " of the mask, and panels would overlap by " + n.Amount(-narrowest) + " at a seam."),
			Do:   words.Raw("Trim at least " + n.AtLeast(over) + " off the " + lines + " in all, or make the mask outline that much larger.")}}
	}
	if tape <= 0 {
		return nil
	}
	widest := mask.Bridging{Width: tape}.WidestGap()
	// A panel smaller than its place leaves the rest at one of its edges.
	open := make([]measure.Length, len(run.Sizes)+1)
	for _, s := range shorts {
		i, by := of(s)
		open[i] = max(open[i], by)
	}
	for i, gap := range run.Gaps {
		if gap += max(open[i+1], open[i+2]); gap > widest {
			return []problem.Problem{{At: "/panels", Severity: problem.Caution,
				What: words.Raw("As measured, the gap at " + name(i+1) + " is up to " + n.Amount(gap) + ", and tape " + n.Length(tape) + " wide does not hold well on both sides."),
				Do:   words.Say("Take wider tape, lay two strips side by side, or ask for larger panels.")}}
		}
	}
	return nil
}
