package delivery

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"ceilingwright/core/words"

	"ceilingwright/core/mask"
	"ceilingwright/core/problem"
)

// LongestLabel is how many characters a supplier's label may have: more would
// not fit on a drawing. A choice.
const LongestLabel = 24

// longestText is the longest text of labels that is read, in bytes: labels of
// full length for the most panels there may be.
const longestText = mask.MostPanels * (4*LongestLabel + 4)

// namedAtMost is how many labels of one fault are named one by one.
const namedAtMost = 5

// ParseLabels reads the supplier's labels of a layer, typed or pasted: one for
// each panel in reading order, A1 first. Between labels stand line ends, tabs,
// commas, semicolons or two spaces and more; a single space does so only where
// that alone makes the count right. The labels come in one line for each row,
// all in one line, or one on a line. Lines and columns that number the rows and
// columns are left out where they are plainly that: "1 2 3", "A B C", "Row 1
// Row 2". Where the layer has spans, there may be one label for each span
// instead of one for each of its panels.
//
// The answer has a label for every panel in reading order, "" where there is
// none, or is nil. Refused whole, at "/labels", is a text whose count does not
// match, since every label after the slip would name the wrong panel. A label of
// more than LongestLabel characters is left out, one that stands twice is
// reported, and characters nobody sees are dropped with a note. A text of
// nothing, or a layer without panels, gives nil and no problem.
func ParseLabels(text string, layer mask.Layer) ([]string, []problem.Problem) {
	if layer.IsEmpty() || strings.TrimSpace(text) == "" {
		return nil, nil
	}
	if len(text) > longestText {
		return nil, []problem.Problem{labelProblem(problem.Stop, words.Say("The labels are longer than any layer takes."), words.Say("Give one short label for each panel."))}
	}
	text, dropped := visible(text)
	var problems []problem.Problem
	if dropped > 0 {
		problems = append(problems, labelProblem(problem.Note, words.Say("The labels held {n|character|characters} that cannot be seen.", words.Count("n", dropped)),
			words.Say("They were left out; check the labels.")))
	}
	shapes := shapesOf(layer)
	table := tableOf(text, false)
	labels, ok := shapes.read(table)
	if !ok {
		singly := tableOf(text, true)
		if labels, ok = shapes.read(singly); !ok && nearer(singly.count(), table.count(), layer.Count()) {
			table = singly
		}
	}
	if !ok {
		return nil, append(problems, shapes[0].mismatch(table, layer))
	}
	return labels, append(problems, checkLabels(labels, layer)...)
}

func labelProblem(severity problem.Severity, what, do words.Text) problem.Problem {
	return problem.Problem{At: "/labels", Severity: severity, What: what, Do: do}
}

// visible is a text without the characters nobody sees, and how many there
// were. Line ends and tabs stay, and so do the joiners that some scripts need.
func visible(text string) (string, int) {
	dropped := 0
	text = strings.Map(func(c rune) rune {
		switch {
		case c == '\n' || c == '\r' || c == '\t' || c == '\u200c' || c == '\u200d':
			return c
		case c == '\v' || c == '\f' || c == '\u0085' || c == '\u2028' || c == '\u2029':
			return '\n'
		case unicode.IsControl(c) || unicode.Is(unicode.Cf, c):
			dropped++
			return -1
		}
		return c
	}, text)
	return text, dropped
}

// table is a text as lines of cells. Lines without any label are left out, and
// so are empty cells at the end of a line.
type table [][]string

// tableOf cuts a text up. singly tells to cut at single spaces too.
func tableOf(text string, singly bool) table {
	var t table
	for line := range strings.FieldsFuncSeq(text, func(c rune) bool { return c == '\n' || c == '\r' }) {
		if cells := cellsOf(line, singly); len(cells) > 0 {
			t = append(t, cells)
		}
	}
	return t
}

// count is how many labels a table has.
func (t table) count() int {
	n := 0
	for _, line := range t {
		n += len(line)
	}
	return n
}

// nearer tells whether a is nearer to what is wanted than b is.
func nearer(a, b, wanted int) bool { return max(a-wanted, wanted-a) < max(b-wanted, wanted-b) }

// cellsOf are the cells of one line.
func cellsOf(line string, singly bool) []string {
	var cells []string
	full := 0
	for {
		at := strings.IndexAny(line, "\t,;")
		cell := line
		if at >= 0 {
			cell, line = line[:at], line[at+1:]
		}
		cells = appendParts(cells, cell, singly)
		if cells[len(cells)-1] != "" {
			full = len(cells)
		}
		if at < 0 {
			return cells[:full]
		}
	}
}

// appendParts adds the parts of a cell between which there are two spaces and
// more, or any; one empty part where there is nothing.
func appendParts(cells []string, cell string, singly bool) []string {
	cell = strings.TrimSpace(cell)
	start, spaces := 0, 0
	for at, c := range cell {
		if unicode.IsSpace(c) {
			spaces++
			continue
		}
		if spaces > 1 || singly && spaces == 1 {
			cells = append(cells, strings.TrimSpace(cell[start:at]))
			start = at
		}
		spaces = 0
	}
	return append(cells, cell[start:])
}

// shape is one way in which labels may match a layer: targets are the panels
// that take one, in reading order, and perLine how many there are in each row
// that has any.
type shape struct {
	targets []int
	perLine []int
	lead    []int32
	panels  int
}

type shapes []shape

// shapesOf are the ways to label a layer: each panel, and where there are spans
// each piece as delivered.
func shapesOf(layer mask.Layer) shapes {
	lead := leads(layer)
	all := shapes{shapeOf(layer, nil)}
	if lead != nil {
		all = append(all, shapeOf(layer, lead))
	}
	return all
}

func shapeOf(layer mask.Layer, lead []int32) shape {
	s := shape{lead: lead, panels: layer.Count()}
	columns := len(layer.Columns)
	for row := range layer.Rows {
		before := len(s.targets)
		for i := row * columns; i < (row+1)*columns; i++ {
			if lead == nil || int(lead[i]) == i {
				s.targets = append(s.targets, i)
			}
		}
		if n := len(s.targets) - before; n > 0 {
			s.perLine = append(s.perLine, n)
		}
	}
	return s
}

// leads is for each panel in reading order the first panel of the span it
// belongs to, or itself; nil where the layer has no spans.
func leads(layer mask.Layer) []int32 {
	var lead []int32
	for _, p := range layer.Pieces {
		if p.Kind != mask.Span {
			continue
		}
		if lead == nil {
			lead = make([]int32, layer.Count())
			for i := range lead {
				lead[i] = int32(i)
			}
		}
		first := int32(layer.Index(p.First()))
		for row := p.Row; row <= p.Last().Row; row++ {
			for column := p.Column; column <= p.Last().Column; column++ {
				lead[layer.Index(mask.Panel{Column: column, Row: row})] = first
			}
		}
	}
	return lead
}

// read is the labels of a table for every panel, or false where it matches no
// shape, with headings or without.
func (all shapes) read(t table) ([]string, bool) {
	for _, s := range all {
		if labels, ok := s.match(t); ok {
			return labels, true
		}
	}
	for _, s := range all {
		if labels, ok := s.match(s.withoutHeadings(t)); ok {
			return labels, true
		}
	}
	return nil, false
}

// match is the labels of a table for every panel, or false where the count is
// not right.
func (s shape) match(t table) ([]string, bool) {
	if !s.isByRows(t) && !(len(t) == 1 && len(t[0]) == len(s.targets)) && !(len(t) == len(s.targets) && t.isOneEach()) {
		return nil, false
	}
	labels := make([]string, s.panels)
	k := 0
	for _, line := range t {
		for _, cell := range line {
			labels[s.targets[k]] = cell
			k++
		}
	}
	if s.lead != nil {
		for i, first := range s.lead {
			labels[i] = labels[first]
		}
	}
	return labels, true
}

func (s shape) isByRows(t table) bool {
	if len(t) != len(s.perLine) {
		return false
	}
	for i, line := range t {
		if len(line) != s.perLine[i] {
			return false
		}
	}
	return true
}

func (t table) isOneEach() bool {
	for _, line := range t {
		if len(line) != 1 {
			return false
		}
	}
	return true
}

// withoutHeadings is a table without a line above and a column at the side that
// number its columns and rows. nil where there are none.
func (s shape) withoutHeadings(t table) table {
	rows := len(s.perLine)
	widest := s.perLine[0]
	for _, n := range s.perLine {
		widest = max(widest, n)
	}
	above := len(t) == rows+1 && len(t[0]) >= widest && len(t[0]) <= widest+1 && isNumbering(t[0][len(t[0])-widest:])
	if above {
		t = t[1:]
	}
	side := make([]string, len(t))
	for i, line := range t {
		side[i] = line[0]
	}
	beside := len(t) == rows && len(t[0]) == s.perLine[0]+1 && isNumbering(side)
	if !above && !beside {
		return nil
	}
	if beside {
		inner := make(table, len(t))
		for i, line := range t {
			inner[i] = line[1:]
		}
		t = inner
	}
	return t
}

// isNumbering tells whether cells count up from the first: 1, 2, 3 or A, B, C,
// all with the same word before it or none.
func isNumbering(cells []string) bool {
	for _, name := range []func(int) string{strconv.Itoa, mask.RowLetters} {
		word, ok := cutEnd(cells[0], name(1))
		for i := 1; ok && i < len(cells); i++ {
			other, found := cutEnd(cells[i], name(i+1))
			ok = found && strings.EqualFold(word, other)
		}
		if ok {
			return true
		}
	}
	return false
}

// cutEnd takes a number off the end of a cell, in either case.
func cutEnd(cell, end string) (string, bool) {
	if len(cell) < len(end) || !strings.EqualFold(cell[len(cell)-len(end):], end) {
		return "", false
	}
	return cell[:len(cell)-len(end)], true
}

// mismatch says how a table differs from what the layer needs.
func (s shape) mismatch(t table, layer mask.Layer) problem.Problem {
	rows, columns := len(layer.Rows), len(layer.Columns)
	labels, transposed := t.count(), len(t) == columns
	for _, line := range t {
		transposed = transposed && len(line) == rows
	}
	have, panels := words.Count("have", labels), words.Count("panels", s.panels)
	down, across := words.Count("rows", rows), words.Count("columns", columns)
	what := words.Say("The {have} labels are in {lines|line|lines}, but the layer has {rows|row|rows} of {columns}.", have, words.Count("lines", len(t)), down, across)
	switch {
	case transposed && rows > 1 && columns > 1:
		what = words.Say("The labels are in {columns} lines of {rows}, but the layer has {rows} rows of {columns}: rows and columns look swapped.", across, down)
	case len(t) == rows && rows > 1:
		what = s.wrongRows(t, columns)
	case labels != s.panels || len(t) == 1 || t.isOneEach():
		what = words.Say("There {have?is|are} {have|label|labels} for {panels|panel|panels}: {off} too many.", have, panels, words.Count("off", labels-s.panels))
		if labels < s.panels {
			what = words.Say("There {have?is|are} {have|label|labels} for {panels|panel|panels}: {off} too few.", have, panels, words.Count("off", s.panels-labels))
		}
	}
	return labelProblem(problem.Stop, what, words.Say("Write one label for each panel, row by row from A1, and each row on a line of its own."))
}

// wrongRows names the rows that have too few or too many labels.
func (s shape) wrongRows(t table, columns int) words.Text {
	wrong := faults{}
	for i, line := range t {
		row, have, panels := words.Name("row", mask.RowLetters(i+1)), words.Count("have", len(line)), words.Count("panels", columns)
		switch off := len(line) - columns; {
		case off < 0:
			wrong.add(words.Say("Row {row} has {have|label|labels} for {panels|panel|panels}: {off} too few.", row, have, panels, words.Count("off", -off)))
		case off > 0:
			wrong.add(words.Say("Row {row} has {have|label|labels} for {panels|panel|panels}: {off} too many.", row, have, panels, words.Count("off", off)))
		}
	}
	return words.Sentences(wrong.told()...)
}

// checkLabels takes out labels that are too long, and says which are missing or
// stand twice.
func checkLabels(labels []string, layer mask.Layer) []problem.Problem {
	lead := leads(layer)
	first := make(map[string]int, len(labels))
	long, empty, twice := faults{}, faults{}, faults{}
	for i, label := range labels {
		panel := layer.PanelAt(i)
		if lead != nil && int(lead[i]) != i && labels[lead[i]] == label {
			continue
		}
		before, seen := first[label]
		switch {
		case utf8.RuneCountInString(label) > LongestLabel:
			long.add(words.Say("The label of panel {panel} has more than the {most} characters that a label takes.", words.Name("panel", panel.Label()), words.Count("most", LongestLabel)))
		case label == "":
			empty.add(words.Say("Panel {panel} has no label.", words.Name("panel", panel.Label())))
		case seen:
			twice.add(words.Say("“{label}” stands for both {first} and {panel}.", words.Name("label", label), words.Name("first", layer.PanelAt(before).Label()), words.Name("panel", panel.Label())))
		default:
			first[label] = i
		}
	}
	for i, label := range labels {
		if utf8.RuneCountInString(label) > LongestLabel {
			labels[i] = ""
		}
	}
	problems := long.problems(problem.Stop, words.Say("Shorten it. It is left out until then."))
	problems = append(problems, empty.problems(problem.Caution, words.Say("Write it in, or go by the panel's own label."))...)
	return append(problems, twice.problems(problem.Caution, words.Say("Check the labels: two panels with one label are easily hung in each other's place."))...)
}

// faults are faults of one kind, the first few in words.
type faults struct {
	named []words.Text
	more  int
}

func (f *faults) add(fault words.Text) {
	if len(f.named) < namedAtMost {
		f.named = append(f.named, fault)
	} else {
		f.more++
	}
}

// told are the faults that are named; the last says how many more there are.
func (f *faults) told() []words.Text {
	if last := len(f.named) - 1; f.more > 0 {
		f.named[last] = words.Sentences(f.named[last], words.Say("So it is with {n} more.", words.Count("n", f.more)))
		f.more = 0
	}
	return f.named
}

func (f *faults) problems(severity problem.Severity, do words.Text) []problem.Problem {
	var problems []problem.Problem
	for _, what := range f.told() {
		problems = append(problems, labelProblem(severity, what, do))
	}
	return problems
}
