package mask

import (
	"testing"

	"ceilingwright/core/job/layers"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/delivery"
	"ceilingwright/core/measure"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

const (
	inch = measure.Inch
	foot = measure.Foot
)

func said(texts ...words.Text) []string {
	p := page.Page{Notation: measure.Notation{System: measure.FeetInches, InchMark: inch / 16, MetricMark: measure.Millimetre, Plain: true}}
	return told(&p, texts)
}

func TestCounted(t *testing.T) {
	for _, c := range []struct {
		want  string
		count delivery.Count
	}{
		{"", delivery.Count{}},
		{"Not checked yet: 6 panels.", delivery.Count{Total: 6, Unchecked: 6}},
		{"All 2 panels found.", delivery.Count{Total: 2, Found: 2}},
		{"All 2 panels found; 1 measured.", delivery.Count{Total: 2, Found: 2, Measured: 1}},
		{"1 panel: 1 found.", delivery.Count{Total: 1, Found: 1}},
		{"6 panels: 1 found, 1 missing, 1 damaged, 1 re-cut, 2 not checked yet; 1 measured.",
			delivery.Count{Total: 6, Found: 1, Missing: 1, Damaged: 1, Recut: 1, Unchecked: 2, Measured: 1}},
	} {
		assert.Equal(t, []string{c.want}, said(counted(c.count)))
	}
}

func TestAsked(t *testing.T) {
	size := delivery.Size{Length: 4 * foot, Width: 3*foot + 11*inch + 3*inch/8}
	assert.Equal(t, []string{
		`2 panels 4' 0" × 3' 11 3/8", missing: A2, B2 (their labels 12, 15)`,
		`1 panel 4' 0" × 3' 11 3/8", damaged: A1 (their label 11)`,
		`1 panel 4' 0" × 3' 11 3/8", came 4' 0 1/4" long: B1`,
		`1 piece 4' 0" × 3' 11 3/8", missing: Rose (A2–B3)`,
		`1 piece 4' 0" × 3' 11 3/8", damaged: Rose`,
		`2 pieces 4' 0" × 3' 11 3/8", came 3' 0" wide: Rose, Star`,
	}, said(asked([]delivery.Asked{
		{Fault: delivery.IsMissing, Ordered: size, Own: []string{"A2", "B2"}, Theirs: []string{"12", "15"}},
		{Fault: delivery.IsDamaged, Ordered: size, Own: []string{"A1"}, Theirs: []string{"11"}},
		{Fault: delivery.IsOtherSize, Ordered: size, Came: delivery.Size{Length: 4*foot + inch/4}, Own: []string{"B1"}},
		{Fault: delivery.IsMissing, Ordered: size, Own: []string{"Rose (A2–B3)"}, Pieces: true},
		{Fault: delivery.IsDamaged, Ordered: size, Own: []string{"Rose"}, Pieces: true},
		{Fault: delivery.IsOtherSize, Ordered: size, Came: delivery.Size{Width: 3 * foot}, Own: []string{"Rose", "Star"}, Pieces: true},
	})...))
}

func TestChanged(t *testing.T) {
	off := func(index int, by measure.Length) delivery.Alike {
		return delivery.Alike{Ordered: 4 * foot, Now: 4*foot + by, Indexes: []int{index}}
	}
	l := &layers.Layer{Delivery: &delivery.Checked{Count: delivery.Count{Measured: 6}}}
	l.Delivery.Grown = [2]delivery.Growth{
		{Panels: 6, Share: measure.NumberFromFraction(2, 1000), Whole: inch * 576 / 1000, Half: inch * 288 / 1000},
		{Panels: 6, Share: measure.NumberFromFraction(-2, 1000), Whole: -inch / 2, Half: -inch / 4}}
	both := off(1, inch/2)
	both.Indexes = []int{1, 3}
	l.Changes = delivery.Changes{
		Columns:     []delivery.Alike{both, off(2, -inch/4)},
		Rows:        []delivery.Alike{off(2, inch/128)},
		ColumnSeams: []delivery.Moved{{Seam: "1│2", By: 7 * inch / 16}, {Seam: "2│3", By: -inch / 16}},
		RowSeams:    []delivery.Moved{{Seam: "A│B", By: inch / 8}},
		Shorts: []delivery.ShortAlike{{By: delivery.Size{Length: inch / 4}, Names: []string{"B1"}}, {By: delivery.Size{Width: inch / 2}, Names: []string{"A2", "A3"}},
			{By: delivery.Size{Length: inch, Width: inch / 2}, Names: []string{"Rose"}}},
	}
	assert.Equal(t, []string{
		`All 6 measured panels are about 0.2 % longer than ordered: the film itself has changed. Over the whole length that makes 37/64"; hung from the centre out, 9/32" at either end.`,
		`All 6 measured panels are about 0.2 % narrower than ordered: the film itself has changed. Over the whole width that makes 1/2"; hung from the centre out, 1/4" at either end.`,
		`Columns 1, 3 are 4' 0 1/2" long, 1/2" more than ordered.`,
		`Column 2 is 3' 11 3/4" long, 1/4" less than ordered.`,
		`Row B is about 4' 0" wide, 1/64" more than ordered.`,
		`Seams move: 1│2 by 7/16" towards XY, 2│3 by 1/16" towards ZW. The marks are for the panels as measured.`,
		`Seams move: A│B by 1/8" towards YZ. The marks are for the panels as measured.`,
		`B1: 1/4" in length more stays open at the outer edge.`,
		`A2, A3: 1/2" in width more stays open at the outer edge.`,
		`Rose: 1" in length and 1/2" in width more stays open at the outer edge.`,
	}, said(changed(l)...))
}

// Of more than a dozen of one kind the rest are counted.
func TestChanged_Many(t *testing.T) {
	l := &layers.Layer{Delivery: &delivery.Checked{}}
	for i := range 14 {
		by := measure.Length(i+1) * inch
		change := delivery.Alike{Ordered: foot, Now: foot + by, Indexes: []int{i + 1}}
		l.Changes.Columns, l.Changes.Rows = append(l.Changes.Columns, change), append(l.Changes.Rows, change)
		l.Changes.ColumnSeams = append(l.Changes.ColumnSeams, delivery.Moved{Seam: "1│2", By: by})
		l.Changes.Shorts = append(l.Changes.Shorts, delivery.ShortAlike{By: delivery.Size{Length: by}, Names: []string{"A1"}})
	}
	lines := said(changed(l)...)
	assert.Len(t, lines, 12+1+12+1+1+12+1)
	assert.Equal(t, "So it is with 2 more sizes of columns.", lines[12])
	assert.Equal(t, "So it is with 2 more sizes of rows.", lines[25])
	assert.Contains(t, lines[26], `1│2 by 1' 0" towards XY and 2 more. The marks`)
	assert.Equal(t, "Other panels leave more open too; their sizes are in the list.", lines[39])
}
