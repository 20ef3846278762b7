package delivery_test

import (
	"math/rand"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/delivery"
	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// note is a note on a panel, found and measured in inches.
func note(panel string, length, width float64) delivery.Note {
	return delivery.Note{At: "/panels/" + panel, Panel: panel, State: delivery.Found,
		Length: measure.Length(length * float64(inch)), Width: measure.Length(width * float64(inch))}
}

func state(panel string, s delivery.State) delivery.Note {
	return delivery.Note{At: "/panels/" + panel, Panel: panel, State: s}
}

func check(t *testing.T, layer mask.Layer, notes ...delivery.Note) *delivery.Checked {
	t.Helper()
	c, problems := delivery.Check(delivery.Given{Layer: layer, Notes: notes, Mark: inches.Mark()})
	require.Empty(t, problems)
	return c
}

func TestCheck_Counts(t *testing.T) {
	c := check(t, grid(3, 2), note("A1", 48, 36), state("a2", delivery.Missing), state("3a", delivery.Damaged), state("B1", delivery.Recut), state("B2", ""))
	assert.Equal(t, delivery.Count{Total: 6, Found: 1, Missing: 1, Damaged: 1, Recut: 1, Unchecked: 2, Measured: 1}, c.Count)
	assert.Equal(t, delivery.Panel{Panel: mask.Panel{Column: 1, Row: 1}, State: delivery.Found,
		Ordered: delivery.Size{Length: 4 * foot, Width: 3 * foot}, Measured: delivery.Size{Length: 4 * foot, Width: 3 * foot}, Used: delivery.Size{Length: 4 * foot, Width: 3 * foot}}, c.Panels[0])
	assert.Equal(t, delivery.Missing, c.Panels[1].State)

	assert.Equal(t, delivery.Size{Length: 4 * foot, Width: 3 * foot}, c.Panels[4].Own())
	assert.Empty(t, c.Panels[4].Believed().In(words.Style{Notation: inches}))

	none := check(t, grid(3, 2))
	assert.Nil(t, none.Panels)
	assert.Equal(t, delivery.Count{Total: 6, Unchecked: 6}, none.Count)
	assert.Empty(t, check(t, mask.Layer{}).Count)
}

// A span is noted whole, by any of its panels; a joined piece panel by panel.
func TestCheck_Pieces(t *testing.T) {
	layer := withPieces(t, grid(3, 2), mask.GivenPiece{Name: "Rose", Kind: mask.Span, Cells: "A2 B3"})
	c, problems := delivery.Check(delivery.Given{Layer: layer, Notes: []delivery.Note{note("B3", 96, 72), state("A2", delivery.Missing), state("A1", delivery.Missing)}, Mark: inches.Mark()})
	assert.Equal(t, []problem.Problem{{At: "/panels/A2/panel", Severity: problem.Caution, What: words.Say("“Rose” is noted twice."), Do: words.Say("Take one of the notes out. The first is taken.")}}, told(problems))
	assert.Equal(t, delivery.Count{Total: 6, Found: 4, Missing: 1, Unchecked: 1, Measured: 4}, c.Count)
	assert.Equal(t, delivery.Size{Length: 8 * foot, Width: 6 * foot}, c.Panels[1].Measured)
	assert.Equal(t, layer.Columns, c.Layer.Columns)
	assert.Equal(t, []delivery.Asked{{Fault: delivery.IsMissing, Ordered: delivery.Size{Length: 4 * foot, Width: 3 * foot}, Own: []string{"A1"}}}, c.Ask())

	missing := check(t, layer, state("A3", delivery.Missing))
	assert.Equal(t, []delivery.Asked{{Fault: delivery.IsMissing, Ordered: delivery.Size{Length: 8 * foot, Width: 6 * foot}, Pieces: true, Own: []string{"Rose (A2–B3)"}}}, missing.Ask())
}

func TestCheck_Questions(t *testing.T) {
	again := "Measure it again. If it was cut to that size on purpose, mark it re-cut."
	turned := "Measure first along WX, then along XY. The size is not used until then."
	recut := func(length, width float64) delivery.Note {
		n := note("A1", length, width)
		n.State = delivery.Recut
		return n
	}
	for _, c := range []struct {
		name     string
		note     delivery.Note
		used     delivery.Size
		at, what string
		do       string
	}{
		{"as ordered", note("A1", 48, 36), delivery.Size{Length: 48 * inch, Width: 36 * inch}, "", "", ""},
		{"half a mark off is as ordered", note("A1", 48.03125, 35.96875), delivery.Size{Length: 48 * inch, Width: 36 * inch}, "", "", ""},
		{"a mark off", note("A1", 48.0625, 0), delivery.Size{Length: 48*inch + inch/16}, "", "", ""},
		{"a tenth off is believed", note("A1", 43.2, 39.6), delivery.Size{Length: 43*inch + inch/5, Width: 39*inch + inch*3/5}, "", "", ""},
		{"more is not", note("A1", 43, 36), delivery.Size{Width: 36 * inch}, "/length", `A1 is noted as 3' 7" long; 4' 0" was ordered. That is more than a tenth off, and is not used.`, again},
		{"half", note("A1", 0, 18), delivery.Size{}, "/width", `A1 is noted as 1' 6" wide; 3' 0" was ordered. That is more than a tenth off, and is not used.`, again},
		{"turned", note("A1", 36, 48), delivery.Size{}, "", `A1 looks turned: 4' 0" × 3' 0" was ordered, and it is noted as 3' 0" × 4' 0".`, turned},
		{"turned and a little off", note("A1", 36.125, 48.25), delivery.Size{}, "", `A1 looks turned: 4' 0" × 3' 0" was ordered, and it is noted as 3' 0 1/8" × 4' 0 1/4".`, turned},
		{"turned, one side only", note("A1", 36, 0), delivery.Size{}, "", `A1 looks turned: 4' 0" × 3' 0" was ordered, and it is noted as 3' 0" long.`, turned},
		{"missing with a size", delivery.Note{At: "/panels/A1", Panel: "A1", State: delivery.Missing, Length: 48 * inch}, delivery.Size{}, "", "A1 is missing and yet has a size.", "Check which of the two is right. The size is not used."},
		{"damaged: another is to come", delivery.Note{At: "/panels/A1", Panel: "A1", State: delivery.Damaged, Length: 40 * inch}, delivery.Size{}, "", "", ""},
		{"re-cut to half", recut(24, 36), delivery.Size{Length: 24 * inch, Width: 36 * inch}, "", "", ""},
		{"re-cut to less", recut(23, 36), delivery.Size{Width: 36 * inch}, "/length", `A1 is noted as 1' 11" long; 4' 0" was ordered.`, "Check the number and its unit. Less than half and more than double is not used."},
		{"re-cut turned is re-cut", recut(36, 48), delivery.Size{Length: 36 * inch, Width: 48 * inch}, "", "", ""},
		{"no such panel", state("C1", delivery.Found), delivery.Size{}, "/panel", "There is no panel “C1” in this layer.", "Its panels run from A1 to B3."},
		{"no panel", state("", delivery.Found), delivery.Size{}, "/panel", "This note does not say which panel it is about.", "Write the panel's own label, from A1 to B3."},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, problems := delivery.Check(delivery.Given{Layer: grid(3, 2), Notes: []delivery.Note{c.note}, Mark: inches.Mark()})
			assert.Equal(t, c.used, got.Panels[0].Used)
			if c.what == "" {
				assert.Empty(t, problems)
				return
			}
			require.Len(t, problems, 1)
			assert.Equal(t, c.note.At+c.at, problems[0].At)
			assert.Equal(t, c.what, problems[0].What.In(words.Style{Notation: inches}))
			assert.Equal(t, c.do, problems[0].Do.In(words.Style{Notation: inches}))
		})
	}
	// Panels nearly square: one turned exactly is told from one a little off.
	square := mask.Layer{Columns: repeat(48*inch, 2), Rows: repeat(47*inch, 2)}
	_, problems := delivery.Check(delivery.Given{Layer: square, Notes: []delivery.Note{note("A1", 47, 48)}, Mark: inches.Mark()})
	assert.Len(t, problems, 1)
	_, problems = delivery.Check(delivery.Given{Layer: square, Notes: []delivery.Note{note("A1", 48.25, 47.25)}, Mark: inches.Mark()})
	assert.Empty(t, problems)
}

func TestCheck_Ask(t *testing.T) {
	layer := mask.Layer{Columns: []measure.Length{4 * foot, 4 * foot, 3 * foot}, Rows: repeat(3*foot+11*inch+3*inch/8, 2)}
	g := delivery.Given{Layer: layer, Labels: "11 12 13\n14 15 16", Tolerance: inch / 8, Mark: inches.Mark(), Notes: []delivery.Note{
		state("B2", delivery.Missing), state("A1", delivery.Damaged), state("A2", delivery.Missing), state("A3", delivery.Missing),
		note("B1", 48.25, 47.375), note("B3", 36.125, 47.375),
	}}
	c, problems := delivery.Check(g)
	assert.Empty(t, problems)
	whole, cut := delivery.Size{Length: 4 * foot, Width: 3*foot + 11*inch + 3*inch/8}, delivery.Size{Length: 3 * foot, Width: 3*foot + 11*inch + 3*inch/8}
	assert.Equal(t, []delivery.Asked{
		{Fault: delivery.IsMissing, Ordered: whole, Own: []string{"A2", "B2"}, Theirs: []string{"12", "15"}},
		{Fault: delivery.IsMissing, Ordered: cut, Own: []string{"A3"}, Theirs: []string{"13"}},
		{Fault: delivery.IsDamaged, Ordered: whole, Own: []string{"A1"}, Theirs: []string{"11"}},
		{Fault: delivery.IsOtherSize, Ordered: whole, Came: delivery.Size{Length: 4*foot + inch/4, Width: whole.Width}, Own: []string{"B1"}, Theirs: []string{"14"}},
	}, c.Ask(), "B3 is off by the tolerance and no more")
	g.Tolerance = 0
	c, _ = delivery.Check(g)
	assert.Len(t, c.Ask(), 5, "with nothing agreed, what the tape shows counts")
	assert.Equal(t, "13", c.Panels[2].Label)
	assert.Empty(t, check(t, grid(3, 2), note("A1", 48, 36)).Ask())
}

// The sizes below are laid out by hand.
func TestCheck_Layout(t *testing.T) {
	ordered := repeat(48*inch, 3)
	for _, c := range []struct {
		name    string
		pieces  []mask.GivenPiece
		notes   []delivery.Note
		columns []measure.Length
		rows    []measure.Length
	}{
		{"the longest of a column decides", nil, []delivery.Note{note("A1", 48.5, 0), note("B1", 48.25, 0)},
			[]measure.Length{48*inch + inch/2, 48 * inch, 48 * inch}, repeat(36*inch, 2)},
		{"one not measured counts as ordered", nil, []delivery.Note{note("A1", 47.5, 0)}, ordered, repeat(36*inch, 2)},
		{"all shorter: the column is shorter", nil, []delivery.Note{note("A2", 47.5, 0), note("B2", 47.75, 0)},
			[]measure.Length{48 * inch, 47*inch + 3*inch/4, 48 * inch}, repeat(36*inch, 2)},
		{"the widest of a row decides", nil, []delivery.Note{note("B3", 0, 36.125)}, ordered, []measure.Length{36 * inch, 36*inch + inch/8}},
		{"a span shares what it is off", []mask.GivenPiece{{Kind: mask.Span, Cells: "A1 B2"}}, []delivery.Note{note("A1", 96.5, 72)},
			[]measure.Length{48*inch + inch/4, 48*inch + inch/4, 48 * inch}, repeat(36*inch, 2)},
		{"a span alone in its columns makes them shorter", []mask.GivenPiece{{Kind: mask.Span, Cells: "A1 B2"}}, []delivery.Note{note("A1", 95.5, 72)},
			[]measure.Length{48*inch - inch/4, 48*inch - inch/4, 48 * inch}, repeat(36*inch, 2)},
		{"beside others it does not", []mask.GivenPiece{{Kind: mask.Span, Cells: "A1 A2"}}, []delivery.Note{note("A1", 95.5, 36)}, ordered, repeat(36*inch, 2)},
		{"panels of a joined piece are measured one by one", []mask.GivenPiece{{Kind: mask.Joined, Cells: "A1 B2"}}, []delivery.Note{note("A1", 48.25, 36)},
			[]measure.Length{48*inch + inch/4, 48 * inch, 48 * inch}, repeat(36*inch, 2)},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := check(t, withPieces(t, grid(3, 2), c.pieces...), c.notes...)
			assert.Equal(t, c.columns, got.Layer.Columns)
			assert.Equal(t, c.rows, got.Layer.Rows)
		})
	}
}

func TestChanges(t *testing.T) {
	layer := grid(3, 2)
	layer.Gap = inch / 4
	c := check(t, layer, note("A1", 48.5, 36), note("B1", 48.25, 36), note("A2", 47.75, 36), note("B2", 47.75, 36))
	// 144 1/4 in of panels and 1/2 in of gaps in 144 1/2 in: each of the two
	// seams closes by 1/8 in, to 1/8 in. 1│2 moves from 48 1/8 to 48 9/16, 2│3
	// from 96 3/8 to 96 7/16.
	assert.Equal(t, delivery.Changes{
		Columns: []delivery.Alike{
			{Ordered: 48 * inch, Now: 48*inch + inch/2, Indexes: []int{1}},
			{Ordered: 48 * inch, Now: 47*inch + 3*inch/4, Indexes: []int{2}}},
		ColumnSeams: []delivery.Moved{{Seam: "1│2", By: 7 * inch / 16}, {Seam: "2│3", By: inch / 16}},
		Shorts:      []delivery.ShortAlike{{By: delivery.Size{Length: inch / 4}, Names: []string{"B1"}}},
	}, c.Changes(outlineOf(layer)))
	assert.Empty(t, check(t, layer, state("A1", delivery.Missing)).Changes(outlineOf(layer)))

	both := check(t, layer, note("A1", 48.5, 36.5))
	assert.Contains(t, both.Changes(outlineOf(layer)).Shorts, delivery.ShortAlike{By: delivery.Size{Width: inch / 2}, Names: []string{"A2", "A3"}})
}

// A large-format printer's article on sticker shrinkage: six panels of 48 in,
// all grown 0.2 %, are 0.576 in out from one side and 0.288 in at either end
// from the centre. A sign maker's notes on layered graphics: 96 in that
// shrank 0.15 % misses by 0.144 in from a corner, by 0.072 in from the centre
// cross.
func TestGrowth(t *testing.T) {
	grown := []delivery.Note{}
	for _, label := range []string{"A1", "A2", "A3", "A4", "A5", "A6"} {
		grown = append(grown, note(label, 48.096, 0))
	}
	c := check(t, mask.Layer{Columns: repeat(48*inch, 6), Rows: repeat(36*inch, 1)}, grown...)
	assert.Equal(t, 6, c.Grown[0].Panels)
	assert.Zero(t, c.Grown[0].Share.Cmp(measure.NumberFromFraction(2, 1000)))
	assert.Equal(t, inch*576/1000, c.Grown[0].Whole)
	assert.Equal(t, inch*288/1000, c.Grown[0].Half)
	assert.Zero(t, c.Grown[1].Panels)

	shrunk := check(t, mask.Layer{Columns: repeat(32*inch, 3), Rows: repeat(36*inch, 1)}, note("A1", 31.952, 0), note("A2", 31.952, 0), note("A3", 31.952, 0))
	assert.Equal(t, -inch*144/1000, shrunk.Grown[0].Whole)
	assert.Equal(t, -inch*72/1000, shrunk.Grown[0].Half)

	for name, notes := range map[string][]delivery.Note{
		"two are too few":             {note("A1", 48.125, 0), note("A2", 48.125, 0)},
		"less than the tape shows":    {note("A1", 48.03, 0), note("A2", 48.03, 0), note("A3", 48.03, 0)},
		"one is as ordered":           {note("A1", 48.25, 0), note("A2", 48, 0), note("A3", 48.25, 0)},
		"they differ by too much":     {note("A1", 48.125, 0), note("A2", 48.5, 0), note("A3", 48.25, 0)},
		"some longer, some shorter":   {note("A1", 48.125, 0), note("A2", 47.875, 0), note("A3", 48.125, 0)},
		"a slip is no film that grew": {note("A1", 60, 0), note("A2", 48.25, 0), note("A3", 48, 0)},
	} {
		c, _ := delivery.Check(delivery.Given{Layer: grid(3, 1), Notes: notes, Mark: inches.Mark()})
		assert.Zero(t, c.Grown[0].Panels, name)
	}
	// Panels of different sizes grow by different amounts: 0.25 % of 40, 60 and
	// 100 cm is 1, 1.5 and 2.5 mm.
	mixed := mask.Layer{Columns: []measure.Length{400 * mm, 600 * mm, 1000 * mm}, Rows: repeat(500*mm, 1)}
	got, _ := delivery.Check(delivery.Given{Layer: mixed, Notes: []delivery.Note{
		{Panel: "A1", Length: 401 * mm}, {Panel: "A2", Length: 601_500_000}, {Panel: "A3", Length: 1_002_500_000}}, Mark: metric.Mark()})
	assert.Equal(t, 5*mm, got.Grown[0].Whole)
}

func TestCheckRuns(t *testing.T) {
	layer := grid(3, 2)
	layer.Gap = inch / 4
	o := outlineOf(layer)
	long := check(t, layer, note("A1", 48.5, 36), note("B1", 48.5, 36), note("A2", 48.5, 36), note("B2", 48.5, 36))
	// An inch more with 1/2 in of gaps to take it up: 1/4 in over a seam.
	assert.Equal(t, []problem.Problem{{At: "/panels", Severity: problem.Stop,
		What: words.Say(`As measured, the columns are 1/2" more than the length of the mask, and panels would overlap by 1/4" at a seam.`),
		Do:   words.Say(`Trim at least 1/2" off the columns in all, or make the mask outline that much larger.`)}}, told(long.CheckRuns(o, 0)))

	short := check(t, layer, note("A1", 47.5, 36), note("B1", 47, 36))
	// Column 1 is 1/2 in shorter; each seam opens by 1/4 in, to 1/2 in; B1
	// leaves another half inch at seam 1│2. With 10 mm to hold on each side the
	// inch takes tape of 45.4 mm, which 1 13/16 in is and 1 3/4 in is not.
	assert.Empty(t, short.CheckRuns(o, inch+13*inch/16))
	assert.Equal(t, []problem.Problem{{At: "/panels", Severity: problem.Caution,
		What: words.Say(`As measured, the gap at 1│2 is up to 1", and tape 1 3/4" wide does not hold well on both sides.`),
		Do:   words.Say("Take wider tape, lay two strips side by side, or ask for larger panels.")}}, told(short.CheckRuns(o, inch+3*inch/4)))
	assert.Empty(t, short.CheckRuns(o, 0), "no width of tape is known")
	assert.Empty(t, short.CheckRuns(mask.Outline{}, inch))
	assert.Empty(t, check(t, layer).CheckRuns(o, inch), "the order has been checked already")

	// A tiler's question, joints in the count: seven of 36 in and six
	// of 1/16 in are 252 3/8 in. Each panel 1/16 in longer takes 7/16 in, and
	// the six joints have 3/8 in to give.
	joints := mask.Layer{Columns: repeat(36*inch, 7), Rows: repeat(36*inch, 1), Gap: inch / 16}
	require.Equal(t, 252*inch+3*inch/8, outlineOf(joints).Length)
	var notes []delivery.Note
	for i := range 7 {
		notes = append(notes, note(mask.Panel{Column: i + 1, Row: 1}.Label(), 36.0625, 36))
	}
	problems := check(t, joints, notes...).CheckRuns(outlineOf(joints), 0)
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].What.In(words.Style{Notation: inches}), `the columns are 1/16" more than`)
}

// Whatever is noted: totals add up, no panel is larger than its place, a layer
// measured as ordered is the layer as ordered, and no column is larger than it
// must be where no span lies in it.
func TestCheck_HoldsForEverything(t *testing.T) {
	random := rand.New(rand.NewSource(8))
	states := []delivery.State{"", delivery.Unchecked, delivery.Found, delivery.Missing, delivery.Damaged, delivery.Recut}
	for range 1500 {
		columns, rows := 1+random.Intn(5), 1+random.Intn(5)
		layer := mask.Layer{Gap: measure.Length(random.Int63n(int64(5 * mm)))}
		for range columns {
			layer.Columns = append(layer.Columns, 400*mm+measure.Length(random.Int63n(int64(measure.Metre))))
		}
		for range rows {
			layer.Rows = append(layer.Rows, 400*mm+measure.Length(random.Int63n(int64(measure.Metre))))
		}
		o := outlineOf(layer)
		var pieces []mask.GivenPiece
		for range random.Intn(3) {
			a := mask.Panel{Column: 1 + random.Intn(columns), Row: 1 + random.Intn(rows)}
			b := mask.Panel{Column: 1 + random.Intn(columns), Row: 1 + random.Intn(rows)}
			pieces = append(pieces, mask.GivenPiece{Kind: []mask.PieceKind{mask.Span, mask.Joined}[random.Intn(2)], Cells: a.Label() + " " + b.Label()})
		}
		layer, _ = layer.WithPieces(o, pieces)
		spanned := map[mask.Panel]mask.Piece{}
		for _, p := range layer.Pieces {
			if p.Kind == mask.Span {
				for i := range layer.Count() {
					if panel := layer.PanelAt(i); p.Contains(panel) {
						spanned[panel] = p
					}
				}
			}
		}
		size := func(panel mask.Panel) delivery.Size {
			if p, ok := spanned[panel]; ok {
				length, width := p.Size(layer)
				return delivery.Size{Length: length, Width: width}
			}
			return delivery.Size{Length: layer.Columns[panel.Column-1], Width: layer.Rows[panel.Row-1]}
		}
		var asOrdered, notes []delivery.Note
		for i := range layer.Count() {
			panel := layer.PanelAt(i)
			s := size(panel)
			asOrdered = append(asOrdered, delivery.Note{Panel: panel.Label(), State: delivery.Found, Length: s.Length, Width: s.Width})
			if random.Intn(3) > 0 {
				off := func() measure.Length { return measure.Length(random.Int63n(int64(60*mm))) - 30*mm }
				n := delivery.Note{Panel: panel.Label(), State: states[random.Intn(len(states))]}
				if random.Intn(4) > 0 {
					n.Length, n.Width = s.Length+off(), s.Width+off()
				}
				notes = append(notes, n)
			}
		}
		same, _ := delivery.Check(delivery.Given{Layer: layer, Notes: asOrdered, Mark: metric.Mark()})
		require.Equal(t, layer, same.Layer)
		require.Empty(t, same.Ask())
		require.Empty(t, same.Changes(o))
		require.Empty(t, same.CheckRuns(o, 30*mm))

		got, _ := delivery.Check(delivery.Given{Layer: layer, Notes: notes, Mark: metric.Mark()})
		n := got.Count
		require.Equal(t, n.Total, n.Found+n.Missing+n.Damaged+n.Recut+n.Unchecked)
		require.LessOrEqual(t, n.Measured, n.Total)
		largest := make([]measure.Length, columns)
		hasSpan := make([]bool, columns)
		for i, p := range got.Panels {
			used := p.Used.Length
			if used == 0 {
				used = p.Ordered.Length
			}
			place := got.Layer.Columns[p.Panel.Column-1]
			if piece, ok := spanned[p.Panel]; ok {
				hasSpan[p.Panel.Column-1] = true
				if piece.First() != p.Panel {
					continue
				}
				place, _ = piece.Size(got.Layer)
			} else {
				largest[p.Panel.Column-1] = max(largest[p.Panel.Column-1], used)
			}
			require.LessOrEqual(t, used, place, "panel %d", i)
		}
		for c, size := range got.Layer.Columns {
			if len(notes) > 0 && !hasSpan[c] {
				require.Equal(t, largest[c], size)
			}
		}
	}
}

// The most panels there may be, all noted, still make a handful of lines.
func TestCheck_TenThousand(t *testing.T) {
	layer := grid(100, 100)
	var notes []delivery.Note
	for i := range layer.Count() {
		n := note(layer.PanelAt(i).Label(), 48.125, 36)
		if i%2 == 0 {
			n.State = delivery.Missing
			n.Length, n.Width = 0, 0
		}
		notes = append(notes, n)
	}
	c := check(t, layer, notes...)
	assert.Equal(t, delivery.Count{Total: 10_000, Found: 5000, Missing: 5000, Measured: 5000}, c.Count)
	assert.Len(t, c.Ask(), 2)
	changes := c.Changes(outlineOf(layer))
	assert.LessOrEqual(t, len(changes.Columns)+len(changes.Rows)+len(changes.Shorts), 4)
}
