package delivery

import (
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Changes is what the measured sizes change against the order: the columns and rows
// that are not as ordered, how far the seams between columns and between rows move in
// the box, and the panels that leave more open than their column or row says.
type Changes struct {
	Columns, Rows         []Alike
	ColumnSeams, RowSeams []Moved
	Shorts                []ShortAlike
}

// Alike are columns or rows that are not as ordered and changed alike, as the first of
// them did. Indexes are all of them, from 1.
type Alike struct {
	Ordered, Now measure.Length
	Indexes      []int
}

// Moved is a seam that lies elsewhere than ordered, by so much farther from the start
// of its run; below zero nearer to it.
type Moved struct {
	Seam string
	By   measure.Length
}

// ShortAlike are panels that leave the same more open, as the first of them does.
// Names are their labels, of a span its name.
type ShortAlike struct {
	By    Size
	Names []string
}

// hair is what sizes may differ by and still be spoken of as one: equal panels
// of a length that does not divide differ by a nanometre.
const hair = measure.Millimetre / 100

// Changes is what changes in the box that the mask fills; nothing where nothing was
// measured.
func (c *Checked) Changes(o mask.Outline) Changes {
	if c.Count.Measured == 0 {
		return Changes{}
	}
	columnsWere, rowsWere := c.Ordered.Runs(o)
	columns, rows := c.Layer.Runs(o)
	return Changes{
		Columns: alike(c.Ordered.Columns, c.Layer.Columns), Rows: alike(c.Ordered.Rows, c.Layer.Rows),
		ColumnSeams: moved(columnsWere, columns, mask.ColumnSeam), RowSeams: moved(rowsWere, rows, mask.RowSeam),
		Shorts: c.shortsAlike(),
	}
}

// alike puts columns or rows that changed alike together.
func alike(ordered, now []measure.Length) []Alike {
	var groups []Alike
	place := map[[2]measure.Length]int{}
	for index := range ordered {
		if ordered[index] == now[index] {
			continue
		}
		key := [2]measure.Length{ordered[index].ToMark(hair), now[index].ToMark(hair)}
		i, known := place[key]
		if !known {
			i, place[key] = len(groups), len(groups)
			groups = append(groups, Alike{Ordered: ordered[index], Now: now[index]})
		}
		groups[i].Indexes = append(groups[i].Indexes, index+1)
	}
	return groups
}

// moved are the seams that lie elsewhere, by what can be noticed.
func moved(were, are mask.Run, name func(int) string) []Moved {
	var list []Moved
	for i := range are.Gaps {
		if by := are.Seam(i) - were.Seam(i); by.Abs() >= mask.Noticeable {
			list = append(list, Moved{name(i + 1), by})
		}
	}
	return list
}

// shortsAlike puts panels that leave the same more open together.
func (c *Checked) shortsAlike() []ShortAlike {
	var groups []ShortAlike
	place, spans := map[Size]int{}, c.spans()
	for _, short := range c.Shorts() {
		name, key := short.Panel.Label(), short.By.toMark(hair)
		if piece, ok := spans[c.Ordered.Index(short.Panel)]; ok {
			name = piece.Name
		}
		i, known := place[key]
		if !known {
			i, place[key] = len(groups), len(groups)
			groups = append(groups, ShortAlike{By: short.By})
		}
		groups[i].Names = append(groups[i].Names, name)
	}
	return groups
}

// CheckRuns says what is wrong with the layer as measured once it lies in its
// box, at "/panels": panels that would overlap, and gaps too wide for a tape of
// that width (0: not known). It is silent where nothing was measured, since the
// order has been checked already.
func (c *Checked) CheckRuns(o mask.Outline, tape measure.Length) []problem.Problem {
	if c.Count.Measured == 0 || !o.IsComplete() {
		return nil
	}
	columns, rows := c.Layer.Runs(o)
	openColumns, openRows := make([]measure.Length, len(columns.Sizes)+1), make([]measure.Length, len(rows.Sizes)+1)
	for _, s := range c.Shorts() {
		openColumns[s.Panel.Column] = max(openColumns[s.Panel.Column], s.By.Length)
		openRows[s.Panel.Row] = max(openRows[s.Panel.Row], s.By.Width)
	}
	problems := checkRun(columns, tape, openColumns, mask.ColumnSeam, words.Say("columns"), words.Say("length"))
	return append(problems, checkRun(rows, tape, openRows, mask.RowSeam, words.Say("rows"), words.Say("width"))...)
}

// checkRun is CheckRuns in one direction. open is what panels leave open at one of
// their edges, by their column or row from 1.
func checkRun(run mask.Run, tape measure.Length, open []measure.Length, name func(int) string, lines, side words.Text) []problem.Problem {
	narrowest, ok := run.Narrowest()
	if !ok {
		return nil
	}
	if narrowest < 0 {
		over := run.Over - run.Gap*measure.Length(run.Free())
		return []problem.Problem{{At: "/panels", Severity: problem.Stop,
			What: words.Say("As measured, the {lines} are {over} more than the {side} of the mask, and panels would overlap by {lap} at a seam.",
				words.Of("lines", lines), words.Amount("over", over), words.Of("side", side), words.Amount("lap", -narrowest)),
			Do: words.Say("Trim at least {over} off the {lines} in all, or make the mask outline that much larger.",
				words.AtLeast("over", over), words.Of("lines", lines))}}
	}
	widest := mask.Bridging{Width: tape}.WidestGap()
	for i, gap := range run.Gaps {
		if gap += max(open[i+1], open[i+2]); tape > 0 && gap > widest {
			return []problem.Problem{{At: "/panels", Severity: problem.Caution,
				What: words.Say("As measured, the gap at {seam} is up to {gap}, and tape {tape} wide does not hold well on both sides.",
					words.Name("seam", name(i+1)), words.Amount("gap", gap), words.Length("tape", tape)),
				Do: words.Say("Take wider tape, lay two strips side by side, or ask for larger panels.")}}
		}
	}
	return nil
}
