package sum_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"ceilingwright/core/measure"
	"ceilingwright/core/sum"
	"ceilingwright/core/words"
)

const mm = measure.Millimetre

var metric = words.Style{Notation: measure.Notation{System: measure.Metric, MetricMark: mm, Plain: true}}

func row(millimetres ...measure.Length) (panels []measure.Length) {
	for _, l := range millimetres {
		panels = append(panels, l*mm)
	}
	return panels
}

func TestSum(t *testing.T) {
	for _, c := range []struct {
		name  string
		sum   sum.Sum
		value measure.Length
		text  string
	}{
		{"halved", sum.Of(400 * mm).Minus(300 * mm).Halved(), 50 * mm, "(400 mm − 300 mm) ÷ 2"},
		{"an odd nanometre halved goes down", sum.Of(5).Halved(), 2, "(≈0 mm) ÷ 2"},
		{"and up for what that leaves", sum.Of(5).OtherHalf(), 3, "(≈0 mm) ÷ 2"},
		{"below nothing too", sum.Of(0).Minus(5).Halved(), -3, "(0 mm − ≈0 mm) ÷ 2"},
		{"from a middle given doubled", sum.OfTwice(401 * mm).MinusHalf(301 * mm), 50 * mm, "≈201 mm − 301 mm ÷ 2"},
		{"twice a border", sum.Of(400 * mm).MinusTwice(60 * mm), 280 * mm, "400 mm − 2 × 60 mm"},
		{"and a half", sum.Of(40 * mm).PlusHalf(300 * mm), 190 * mm, "40 mm + 300 mm ÷ 2"},
		{"less a sum", sum.Of(400 * mm).MinusAll(sum.Of(100 * mm).Plus(20 * mm)), 280 * mm, "400 mm − (100 mm + 20 mm)"},
		{"less a sum of one", sum.Of(400 * mm).MinusAll(sum.Of(100 * mm)), 300 * mm, "400 mm − 100 mm"},
		{"a row", sum.Of(50*mm).PlusRow(row(120, 120, 80), 324*mm), 374 * mm, "50 mm + 2 × 120 mm + 80 mm + 4 mm of gaps"},
		{"a row closed up", sum.Sum{}.PlusRow(row(120, 80), 198*mm), 198 * mm, "120 mm + 80 mm − 2 mm closed up"},
		{"what is too little for a gap is not written, and not lost", sum.Sum{}.PlusRow(row(120, 80), 200*mm+30), 200*mm + 30, "120 mm + 80 mm"},
		{"an empty row", sum.Sum{}.PlusRow(nil, 0), 0, "0 mm"},
		{"a long row", sum.Sum{}.PlusRow(row(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14), 105*mm), 105 * mm,
			"1 mm + 2 mm + 3 mm + 4 mm + 5 mm + 6 mm + 7 mm + 8 mm + 9 mm + 10 mm + 11 mm + 12 mm + 27 mm of other panels"},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.Equal(t, c.value, c.sum.Value())
			assert.Equal(t, c.text, c.sum.In(metric))
			assert.False(t, c.sum.IsNone())
		})
	}
	assert.True(t, sum.Sum{}.IsNone())
}

// A row comes to what it takes up, to the nanometre, however its panels are counted.
func TestPlusRow_ComesToWhatItTakesUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		panels := rapid.SliceOfN(rapid.SampledFrom([]measure.Length{300 * mm, 300*mm + 1, 300*mm - 1, 450 * mm}), 0, 30).Draw(t, "panels")
		taken := measure.Length(0)
		for _, p := range panels {
			taken += p
		}
		taken += measure.Length(rapid.Int64Range(-5_000_000, 5_000_000).Draw(t, "gaps"))
		assert.Equal(t, taken, sum.Sum{}.PlusRow(panels, taken).Value())
	})
}
