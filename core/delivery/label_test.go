package delivery_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/delivery"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

const (
	inch = measure.Inch
	foot = measure.Foot
	mm   = measure.Millimetre
)

var (
	inches = measure.Notation{System: measure.FeetInches, InchMark: inch / 16, MetricMark: mm, Plain: true}
	metric = measure.Notation{System: measure.Metric, InchMark: inch / 16, MetricMark: mm, Plain: true}
)

func repeat(size measure.Length, n int) []measure.Length {
	sizes := make([]measure.Length, n)
	for i := range sizes {
		sizes[i] = size
	}
	return sizes
}

// grid is a layer of panels 4 ft × 3 ft.
func grid(columns, rows int) mask.Layer {
	return mask.Layer{ID: "L1", Columns: repeat(4*foot, columns), Rows: repeat(3*foot, rows)}
}

func withPieces(t testing.TB, layer mask.Layer, given ...mask.GivenPiece) mask.Layer {
	t.Helper()
	layer, problems := layer.WithPieces(outlineOf(layer), given)
	require.Empty(t, problems)
	return layer
}

// outlineOf is the mask that the panels and gaps of a layer fill.
func outlineOf(layer mask.Layer) mask.Outline {
	o := mask.Outline{Length: layer.Gap * measure.Length(len(layer.Columns)-1), Width: layer.Gap * measure.Length(len(layer.Rows)-1)}
	for _, size := range layer.Columns {
		o.Length += size
	}
	for _, size := range layer.Rows {
		o.Width += size
	}
	return o
}

func TestParseLabels_Forms(t *testing.T) {
	six := []string{"1", "2", "3", "4", "5", "6"}
	for _, c := range []struct {
		name, text    string
		columns, rows int
		want          []string
	}{
		{"a line for each row", "1 , 2,3\n4,5,6\n", 3, 2, six},
		{"all in one line", "1, 2, 3, 4, 5, 6", 3, 2, six},
		{"one on a line", "1\r\n2\r\n3\r\n4\r\n5\r\n6\r\n", 3, 2, six},
		{"blank lines between", "\n1;2;3\n\n\n4;5;6", 3, 2, six},
		{"pasted from a table", "1\t2\t3\n4\t5\t6", 3, 2, six},
		{"several spaces", "  1  2   3  \n4  5  6", 3, 2, six},
		{"single spaces, since the count is right so", "1 2 3\n4 5 6", 3, 2, six},
		{"a space inside a label", "Panel 1, Panel 2\nPanel 3, Panel 4", 2, 2, []string{"Panel 1", "Panel 2", "Panel 3", "Panel 4"}},
		{"a space inside a label, one on a line", "top left\ntop right", 2, 1, []string{"top left", "top right"}},
		{"a comma at the end", "1,2,3,\n4,5,6,", 3, 2, six},
		{"columns numbered above", "1\t2\t3\nk\tl\tm\nn\to\tp", 3, 2, []string{"k", "l", "m", "n", "o", "p"}},
		{"rows lettered at the side", "A\tk\tl\tm\nB\tn\to\tp", 3, 2, []string{"k", "l", "m", "n", "o", "p"}},
		{"both, with an empty corner", "\t1\t2\t3\nA\tk\tl\tm\nB\tn\to\tp", 3, 2, []string{"k", "l", "m", "n", "o", "p"}},
		{"both, with a word in the corner", "row;1;2;3\nA;k;l;m\nB;n;o;p", 3, 2, []string{"k", "l", "m", "n", "o", "p"}},
		{"both, the corner lost among spaces", "     1  2  3\nA  k  l  m\nB  n  o  p", 3, 2, []string{"k", "l", "m", "n", "o", "p"}},
		{"headings in words", "Col 1,Col 2\nk,l\nm,n", 2, 2, []string{"k", "l", "m", "n"}},
		{"rows numbered in words", "row 1,k,l\nROW 2,m,n", 2, 2, []string{"k", "l", "m", "n"}},
		{"labels that count themselves are no headings", "1\t2\n3\t4", 2, 2, []string{"1", "2", "3", "4"}},
		{"one panel", "left", 1, 1, []string{"left"}},
		{"any characters", "№ 7/β, <b>, 漢字, \"q\"", 4, 1, []string{"№ 7/β", "<b>", "漢字", `"q"`}},
		{"24 characters", strings.Repeat("ä", 24) + ",x", 2, 1, []string{strings.Repeat("ä", 24), "x"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			labels, problems := delivery.ParseLabels(c.text, grid(c.columns, c.rows))
			assert.Empty(t, problems)
			assert.Equal(t, c.want, labels)
		})
	}
}

func TestParseLabels_Refused(t *testing.T) {
	const do = "Write one label for each panel, row by row from A1, and each row on a line of its own."
	for _, c := range []struct {
		name, text    string
		columns, rows int
		what          string
	}{
		{"one too few", "1,2,3,4,5", 3, 2, "There are 5 labels for 6 panels: 1 too few."},
		{"two too many", "1\n2\n3\n4\n5\n6\n7\n8", 3, 2, "There are 8 labels for 6 panels: 2 too many."},
		{"one row short", "1,2,3\n4,5", 3, 2, "Row B has 2 labels for 3 panels: 1 too few."},
		{"rows that make up for each other", "1,2\n3,4,5,6", 3, 2, "Row A has 2 labels for 3 panels: 1 too few. Row B has 4 labels for 3 panels: 1 too many."},
		{"rows and columns swapped", "1,4\n2,5\n3,6", 3, 2, "The labels are in 3 lines of 2, but the layer has 2 rows of 3: rows and columns look swapped."},
		{"lines that are no rows", "1,2,3,4\n5,6,7,8\n9,10,11,12\n13,14,15,16", 8, 2, "The 16 labels are in 4 lines, but the layer has 2 rows of 8."},
		{"a line more that numbers nothing", "x\ty\tz\n1\t2\t3\n4\t5\t6", 3, 2, "There are 9 labels for 6 panels: 3 too many."},
		{"nothing but commas", ",,,\n;", 3, 2, "There are 0 labels for 6 panels: 6 too few."},
		{"single spaces, one too few", "1 2 3\n4 5", 3, 2, "Row B has 2 labels for 3 panels: 1 too few."},
		{"one word", "labels", 3, 2, "There is 1 label for 6 panels: 5 too few."},
		{"many rows wrong", strings.Repeat("1,2\n", 28), 3, 28, "Row A has 2 labels for 3 panels: 1 too few. Row B has 2 labels for 3 panels: 1 too few. Row C has 2 labels for 3 panels: 1 too few. Row D has 2 labels for 3 panels: 1 too few. Row E has 2 labels for 3 panels: 1 too few. So it is with 23 more."},
		{"row AA", strings.Repeat("1,2\n", 26) + "1\n", 2, 27, "Row AA has 1 label for 2 panels: 1 too few."},
	} {
		t.Run(c.name, func(t *testing.T) {
			labels, problems := delivery.ParseLabels(c.text, grid(c.columns, c.rows))
			assert.Nil(t, labels)
			assert.Equal(t, []problem.Problem{{At: "/labels", Severity: problem.Stop, What: words.Say(c.what), Do: words.Say(do)}}, told(problems))
		})
	}
	_, problems := delivery.ParseLabels(strings.Repeat("x,", 2<<20), grid(3, 2))
	assert.Equal(t, "The labels are longer than any layer takes.", problems[0].What.String())
	labels, problems := delivery.ParseLabels("a,b", mask.Layer{})
	assert.Nil(t, labels)
	assert.Empty(t, problems, "a layer without panels has its own stop")
}

func TestParseLabels_Faults(t *testing.T) {
	labels, problems := delivery.ParseLabels("14, 15, 14, , "+strings.Repeat("x", 25)+", 15", grid(3, 2))
	assert.Equal(t, []string{"14", "15", "14", "", "", "15"}, labels)
	assert.Equal(t, []problem.Problem{
		{At: "/labels", Severity: problem.Stop, What: words.Say("The label of panel B2 has more than the 24 characters that a label takes."), Do: words.Say("Shorten it. It is left out until then.")},
		{At: "/labels", Severity: problem.Caution, What: words.Say("Panel B1 has no label."), Do: words.Say("Write it in, or go by the panel's own label.")},
		{At: "/labels", Severity: problem.Caution, What: words.Say("“14” stands for both A1 and A3."), Do: words.Say("Check the labels: two panels with one label are easily hung in each other's place.")},
		{At: "/labels", Severity: problem.Caution, What: words.Say("“15” stands for both A2 and B3."), Do: words.Say("Check the labels: two panels with one label are easily hung in each other's place.")},
	}, told(problems))

	labels, problems = delivery.ParseLabels("a\u202eb\x00, c\u200bd\nk\u200dl,m", grid(2, 2))
	assert.Equal(t, []string{"ab", "cd", "k\u200dl", "m"}, labels)
	assert.Equal(t, []problem.Problem{{At: "/labels", Severity: problem.Note, What: words.Say("The labels held 3 characters that cannot be seen."), Do: words.Say("They were left out; check the labels.")}}, told(problems))

	_, problems = delivery.ParseLabels(strings.Repeat("7,", 12), grid(4, 3))
	assert.Len(t, problems, 5, "one fault is named five times at most")
	assert.Equal(t, "“7” stands for both A1 and B2. So it is with 6 more.", problems[4].What.String())
}

// A span may have one label for its whole, or one for each of its panels.
func TestParseLabels_Spans(t *testing.T) {
	layer := withPieces(t, grid(3, 3), mask.GivenPiece{Kind: mask.Span, Cells: "A2 B3"}, mask.GivenPiece{Kind: mask.Joined, Cells: "C1 C2"})
	labels, problems := delivery.ParseLabels("k, l\nm\nn, o, p", layer)
	assert.Empty(t, problems)
	assert.Equal(t, []string{"k", "l", "l", "m", "l", "l", "n", "o", "p"}, labels)
	labels, problems = delivery.ParseLabels("1 2 3 4 5 6 7 8 9", layer)
	assert.Empty(t, problems)
	assert.Equal(t, []string{"1", "2", "3", "4", "5", "6", "7", "8", "9"}, labels)

	// A row that lies wholly in spans from above takes no line.
	layer = withPieces(t, grid(2, 3), mask.GivenPiece{Kind: mask.Span, Cells: "A1 B2"})
	labels, problems = delivery.ParseLabels("k\nl, m", layer)
	assert.Empty(t, problems)
	assert.Equal(t, []string{"k", "k", "k", "k", "l", "m"}, labels)
}

func TestParseLabels_TenThousand(t *testing.T) {
	var text strings.Builder
	for i := range mask.MostPanels {
		text.WriteString(strconv.Itoa(i+1) + "\n")
	}
	labels, problems := delivery.ParseLabels(text.String(), grid(100, 100))
	assert.Empty(t, problems)
	assert.Equal(t, "10000", labels[9999])
}

func FuzzParseLabels(f *testing.F) {
	for _, seed := range []string{"1,2,3\n4,5,6", "\t1\t2\t3\nA\tk\tl\tm\nB\tn\to\tp", "1  2  3  4  5  6", ",,;;\t\t", "A B C", "a\u0085b", "\xff,\xfe", "row 1\nrow 2"} {
		f.Add(seed, uint8(2), uint8(1), false)
	}
	f.Fuzz(func(t *testing.T, text string, columns, rows uint8, span bool) {
		layer := grid(1+int(columns)%6, 1+int(rows)%6)
		if span && layer.Count() > 1 {
			layer = withPieces(t, layer, mask.GivenPiece{Kind: mask.Span, Cells: "A1 " + layer.LastPanel().Label()})
		}
		labels, problems := delivery.ParseLabels(text, layer)
		if labels == nil {
			if strings.TrimSpace(text) != "" && len(problems) == 0 {
				t.Fatalf("%q is refused without a reason", text)
			}
			return
		}
		if len(labels) != layer.Count() {
			t.Fatalf("%d labels for %d panels", len(labels), layer.Count())
		}
		for _, label := range labels {
			if utf8.RuneCountInString(label) > delivery.LongestLabel || strings.ContainsAny(label, "\n\r\t,;\x00") {
				t.Fatalf("label %q", label)
			}
		}
	})
}

// told are problems in words, as feet and inches put them.
func told(list []problem.Problem) []problem.Problem {
	said := slices.Clone(list)
	for i := range said {
		style := words.Style{Notation: inches}
		said[i].What, said[i].Do = words.Say(said[i].What.In(style)), words.Say(said[i].Do.In(style))
	}
	return said
}
