package mask_test

import (
	"math/rand"
	"testing"

	"ceilingwright/core/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/mask"
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

var supper = mask.Outline{Length: 15*foot + 9*inch, Width: 11*foot + 3*inch + inch/2}

func repeat(size measure.Length, n int) []measure.Length {
	sizes := make([]measure.Length, n)
	for i := range sizes {
		sizes[i] = size
	}
	return sizes
}

func TestLayerFromCut_Count(t *testing.T) {
	layer, found := mask.LayerFromCut(supper, mask.Cut{ID: "L1", Name: "First layer", Split: mask.ByCount, Columns: 5, Rows: 3})
	assert.Empty(t, found)
	// 189 in ÷ 5 = 37.8 in; 135.5 in ÷ 3 is no whole nanometre.
	assert.Equal(t, mask.Layer{ID: "L1", Name: "First layer",
		Columns: repeat(960_120_000, 5), Rows: []measure.Length{1_147_233_333, 1_147_233_334, 1_147_233_333}}, layer)
	assert.Equal(t, 15, layer.Count())

	withGap, found := mask.LayerFromCut(supper, mask.Cut{Split: mask.ByCount, Columns: 5, Rows: 3, Gap: inch / 4})
	assert.Empty(t, found)
	assert.Equal(t, repeat(188*inch/5, 5), withGap.Columns, "four gaps leave 188 in")
	columns, _ := withGap.Runs(supper)
	assert.Zero(t, columns.Over, "panels cut to a count fill the mask with their gaps")
}

func TestLayerFromCut_Greatest(t *testing.T) {
	layer, found := mask.LayerFromCut(supper, mask.Cut{Split: mask.ByGreatest, GreatestLength: 4 * foot, GreatestWidth: 4 * foot})
	assert.Empty(t, found)
	assert.Equal(t, repeat(189*inch/4, 4), layer.Columns)
	assert.Len(t, layer.Rows, 3)
}

func TestLayerFromCut_Problems(t *testing.T) {
	stop, caution := problem.Stop, problem.Caution
	square := mask.Outline{Length: 12 * foot, Width: 12 * foot}
	thirds := repeat(4*foot, 3)
	for _, c := range []struct {
		name          string
		outline       mask.Outline
		cut           mask.Cut
		columns, rows int
		want          []problem.Problem
	}{
		{"no way chosen", square, mask.Cut{Columns: 3, Rows: 3}, 0, 0, []problem.Problem{
			{At: "/split", Severity: stop, What: words.Say("“” is no way of giving panels."), Do: words.Say("Choose how many, every size, or the greatest panel.")}}},
		{"no columns: rows still stand", square, mask.Cut{Split: mask.ByCount, Rows: 3}, 0, 3, []problem.Problem{
			{At: "/columns", Severity: stop, What: words.Say("The number of columns is not given."), Do: words.Say("Write how many columns of panels there are.")}}},
		{"mask width not given is not the cut's fault", mask.Outline{Length: 12 * foot}, mask.Cut{Split: mask.ByCount, Columns: 3, Rows: 3}, 3, 0, nil},
		{"a million rows", square, mask.Cut{Split: mask.ByCount, Columns: 3, Rows: 1_000_000}, 3, 0, []problem.Problem{
			{At: "/rows", Severity: stop, What: words.Say("1000000 rows are more than the 10000 panels that are taken."), Do: words.Say("Give fewer or larger panels.")}}},
		{"too many in all", mask.Outline{Length: 90 * measure.Metre, Width: 90 * measure.Metre}, mask.Cut{Split: mask.ByCount, Columns: 101, Rows: 100}, 0, 0, []problem.Problem{
			{At: "/columns", Severity: stop, What: words.Say("The layer would have 10100 panels, more than the 10000 that are taken."), Do: words.Say("Give fewer or larger panels.")}}},
		{"more than a crew hangs", mask.Outline{Length: 90 * measure.Metre, Width: 90 * measure.Metre}, mask.Cut{Split: mask.ByCount, Columns: 21, Rows: 20}, 21, 20, []problem.Problem{
			{At: "/columns", Severity: caution, What: words.Say("The layer has 420 panels, more than a crew hangs."), Do: words.Say("Check columns and rows, or give larger panels.")}}},
		{"slivers", square, mask.Cut{Split: mask.ByCount, Columns: 48, Rows: 3}, 48, 3, []problem.Problem{
			{At: "/columns", Severity: caution, What: words.Say(`A column of 3" is narrower than anyone cuts a panel.`), Do: words.Say("Check the number and its unit.")}}},
		{"gaps eat the mask", square, mask.Cut{Split: mask.ByCount, Columns: 13, Rows: 1, Gap: foot}, 0, 1, []problem.Problem{
			{At: "/gap", Severity: stop, What: words.Say(`12 gaps of 1' 0" take 12' 0", which leaves no panel in a mask length of 12' 0".`), Do: words.Say("Leave a smaller gap, or cut fewer columns.")}}},
		{"gap below zero", square, mask.Cut{Split: mask.ByCount, Columns: 3, Rows: 3, Gap: -1}, 0, 0, []problem.Problem{
			{At: "/gap", Severity: stop, What: words.Say("A gap below zero would be an overlap."), Do: words.Say("Write 0 for panels that touch.")}}},
		{"greatest not given", square, mask.Cut{Split: mask.ByGreatest, GreatestLength: 4 * foot}, 3, 0, []problem.Problem{
			{At: "/greatestWidth", Severity: stop, What: words.Say("The greatest width of a panel is not given."), Do: words.Say("Write the most that the roll or the arms allow.")}}},
		{"greatest typed without its unit", square, mask.Cut{Split: mask.ByGreatest, GreatestLength: 4 * mm, GreatestWidth: 4 * foot}, 915, 3, []problem.Problem{
			{At: "/greatestLength", Severity: caution, What: words.Say(`A column of 3/16" is narrower than anyone cuts a panel.`), Do: words.Say("Check the number and its unit.")},
			{At: "/greatestLength", Severity: caution, What: words.Say("The layer has 2745 panels, more than a crew hangs."), Do: words.Say("Check columns and rows, or give larger panels.")}}},
		{"no sizes", square, mask.Cut{Split: mask.BySizes, RowSizes: thirds}, 0, 3, []problem.Problem{
			{At: "/columnSizes", Severity: stop, What: words.Say("The sizes of the columns are not given."), Do: words.Say("Write the size of every column.")}}},
		{"one size missing", square, mask.Cut{Split: mask.BySizes, ColumnSizes: []measure.Length{4 * foot, 0, 4 * foot}, RowSizes: thirds}, 0, 3, []problem.Problem{
			{At: "/columnSizes/1", Severity: stop, What: words.Say("The size of column 2 is not given."), Do: words.Say("Write it in.")}}},
		{"sizes that fit", square, mask.Cut{Split: mask.BySizes, ColumnSizes: thirds, RowSizes: thirds}, 3, 3, nil},
		{"gaps close, or cannot close enough", square, mask.Cut{Split: mask.BySizes, ColumnSizes: repeat(4*foot+inch/8, 3), RowSizes: thirds, Gap: inch / 4}, 3, 3, []problem.Problem{
			{At: "/columnSizes", Severity: stop, What: words.Say(`The columns and their gaps add up to 12' 0 7/8", 7/8" more than the length of the mask. To fit, panels would overlap by 3/16" at a seam.`), Do: words.Say(`Trim at least 3/8" off the columns in all, or order a mask that much larger.`)},
			{At: "/rowSizes", Severity: caution, What: words.Say(`The rows and their gaps add up to 12' 0 1/2", 1/2" more than the width of the mask.`), Do: words.Say(`Close each of the 2 seams by 1/4", or check the sizes.`)}}},
		{"sizes 1/2 in short", square, mask.Cut{Split: mask.BySizes, ColumnSizes: []measure.Length{4 * foot, 4 * foot, 4*foot - inch/2}, RowSizes: thirds}, 3, 3, []problem.Problem{
			{At: "/columnSizes", Severity: caution, What: words.Say(`The columns add up to 11' 11 1/2", 1/2" less than the length of the mask.`), Do: words.Say(`Open each of the 2 seams by 1/4", or check the sizes.`)}}},
		{"sizes over with no gap to close", square, mask.Cut{Split: mask.BySizes, ColumnSizes: repeat(4*foot+inch/8, 3), RowSizes: thirds}, 3, 3, []problem.Problem{
			{At: "/columnSizes", Severity: stop, What: words.Say(`The columns add up to 12' 0 3/8", 3/8" more than the length of the mask. To fit, panels would overlap by 3/16" at a seam.`), Do: words.Say(`Trim at least 3/8" off the columns in all, or order a mask that much larger.`)}}},
		{"one column has no seam", square, mask.Cut{Split: mask.BySizes, ColumnSizes: repeat(12*foot+inch/2, 1), RowSizes: thirds}, 1, 3, []problem.Problem{
			{At: "/columnSizes", Severity: caution, What: words.Say(`The one column is 12' 0 1/2", 1/2" more than the length of the mask, and there is no seam to take it up.`), Do: words.Say(`Check the size, or centre it and let it pass each tape line by 1/4".`)}}},
		{"one row ends short", square, mask.Cut{Split: mask.BySizes, ColumnSizes: thirds, RowSizes: repeat(12*foot-inch, 1)}, 3, 1, []problem.Problem{
			{At: "/rowSizes", Severity: caution, What: words.Say(`The one row is 11' 11", 1" less than the width of the mask, and there is no seam to take it up.`), Do: words.Say(`Check the size, or centre it and let it stop short of each tape line by 1/2".`)}}},
		{"ten thousand and one sizes", square, mask.Cut{Split: mask.BySizes, ColumnSizes: repeat(foot, 10_001), RowSizes: thirds}, 0, 3, []problem.Problem{
			{At: "/columnSizes", Severity: stop, What: words.Say("10001 columns are more than the 10000 panels that are taken."), Do: words.Say("Give fewer or larger panels.")}}},
		{"a size of 1 in", square, mask.Cut{Split: mask.BySizes, ColumnSizes: []measure.Length{143 * inch, inch}, RowSizes: thirds}, 2, 3, []problem.Problem{
			{At: "/columnSizes/1", Severity: caution, What: words.Say(`A column of 1" is narrower than anyone cuts a panel.`), Do: words.Say("Check the number and its unit.")}}},
		{"a difference the tape cannot show", square, mask.Cut{Split: mask.BySizes, ColumnSizes: repeat(4*foot+33_000, 3), RowSizes: thirds}, 3, 3, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			layer, found := mask.LayerFromCut(c.outline, c.cut)
			assert.Equal(t, c.want, told(found))
			assert.Len(t, layer.Columns, c.columns)
			assert.Len(t, layer.Rows, c.rows)
		})
	}
}

func TestOutline_Check(t *testing.T) {
	assert.Empty(t, supper.Check())
	assert.Equal(t, []problem.Problem{
		{At: "/length", Severity: problem.Stop, What: words.Say("The length of the mask is not given."), Do: words.Say("Write the length of the whole mask, all panels hung.")},
		{At: "/width", Severity: problem.Caution, What: words.Say(`The width of the mask reads 1/16", less than one panel can be.`), Do: words.Say("Check the number and write its unit.")},
	}, told(mask.Outline{Width: 1_234_000}.Check()))
	assert.Equal(t, problem.Stop, mask.Outline{Length: measure.Longest + 1, Width: foot}.Check()[0].Severity)
	assert.Zero(t, mask.Outline{Length: 144 * inch, Width: 90 * inch}.Area().SquareFeet().Cmp(measure.NumberFromInt(90)))
	assert.False(t, mask.Outline{}.IsComplete(), "the zero value is no mask")
}

// Whatever is typed, a cut answers with panels that lie in the box or with a
// problem, and never with a panic.
func TestLayerFromCut_AnswersAnything(t *testing.T) {
	random := rand.New(rand.NewSource(4))
	lengths := []measure.Length{0, 1, -1, mm, inch, foot, 4*foot + 1, measure.Metre, 12 * foot, measure.Longest, measure.Longest + 1}
	length := func() measure.Length { return lengths[random.Intn(len(lengths))] }
	some := func() []measure.Length {
		sizes := make([]measure.Length, random.Intn(5))
		for i := range sizes {
			sizes[i] = length()
		}
		return sizes
	}
	splits := []mask.Split{mask.ByCount, mask.BySizes, mask.ByGreatest, "guess"}
	counts := []int{-1, 0, 1, 2, 5, 10_000, 10_001, 1 << 40}
	for range 5000 {
		outline := mask.Outline{Length: length(), Width: length()}
		cut := mask.Cut{Split: splits[random.Intn(4)], Columns: counts[random.Intn(8)], Rows: counts[random.Intn(8)],
			ColumnSizes: some(), RowSizes: some(), GreatestLength: length(), GreatestWidth: length(), Gap: length()}
		layer, found := mask.LayerFromCut(outline, cut)
		require.LessOrEqual(t, layer.Count(), mask.MostPanels)
		if layer.IsEmpty() && outline.IsComplete() {
			require.NotEmpty(t, found, "%+v", cut)
		}
		for _, p := range found {
			require.NotEmpty(t, p.What.String())
			require.NotEmpty(t, p.Do.String())
		}
	}
}
