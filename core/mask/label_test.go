package mask_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/mask"
)

func TestRowLetters(t *testing.T) {
	for row, want := range map[int]string{
		1: "A", 2: "B", 26: "Z", 27: "AA", 28: "AB", 52: "AZ", 53: "BA", 702: "ZZ", 703: "AAA", 10_000: "NTP", 0: "", -3: "",
	} {
		assert.Equal(t, want, mask.RowLetters(row), "row %d", row)
	}
}

func TestRowLetters_NoTwoRowsShareAName(t *testing.T) {
	seen := map[string]int{}
	for row := 1; row <= mask.MostPanels; row++ {
		name := mask.RowLetters(row)
		if first, taken := seen[name]; taken {
			t.Fatalf("rows %d and %d are both %s", first, row, name)
		}
		seen[name] = row
	}
}

func TestPanel_Label(t *testing.T) {
	assert.Equal(t, "A1", mask.Panel{Column: 1, Row: 1}.Label())
	assert.Equal(t, "C12", mask.Panel{Column: 12, Row: 3}.Label())
	assert.Equal(t, "AA7", mask.Panel{Column: 7, Row: 27}.Label())
}

func TestParsePanel(t *testing.T) {
	for text, want := range map[string]mask.Panel{
		"A1": {Column: 1, Row: 1}, "b2": {Column: 2, Row: 2}, " b 2 ": {Column: 2, Row: 2}, "2B": {Column: 2, Row: 2}, "B-02": {Column: 2, Row: 2},
		"AA7": {Column: 7, Row: 27}, "aB10": {Column: 10, Row: 28}, "12 c": {Column: 12, Row: 3}, "NTP10000": {Column: 10_000, Row: 10_000},
		"B\u00a02": {Column: 2, Row: 2},
	} {
		panel, ok := mask.ParsePanel(text)
		assert.True(t, ok, text)
		assert.Equal(t, want, panel, text)
	}
	for _, text := range []string{"", "B", "2", "B0", "B2 C3", "B2C", "BB", "B 2 3", "2 3", "B C 2", "NTQ1", "A10001", "ABCDE1", "Ä1", "B½", "B٣", "A99999999999999999999", "#1", "\xff1"} {
		_, ok := mask.ParsePanel(text)
		assert.False(t, ok, text)
	}
}

func TestParsePanel_ReadsEveryLabelBack(t *testing.T) {
	for row := 1; row <= mask.MostPanels; row += 37 {
		for _, column := range []int{1, 9, 10, 26, 10_000} {
			want := mask.Panel{Column: column, Row: row}
			got, ok := mask.ParsePanel(want.Label())
			assert.True(t, ok)
			assert.Equal(t, want, got)
		}
	}
}

func TestLayer_PanelByLabel(t *testing.T) {
	layer := mask.Layer{Columns: repeat(foot, 3), Rows: repeat(foot, 28)}
	panel, ok := layer.PanelByLabel("ab3")
	assert.True(t, ok)
	assert.Equal(t, mask.Panel{Column: 3, Row: 28}, panel)
	assert.Equal(t, panel, layer.PanelAt(layer.Index(panel)))
	assert.Equal(t, panel, layer.LastPanel())
	for _, text := range []string{"A4", "AC1", "what"} {
		_, ok := layer.PanelByLabel(text)
		assert.False(t, ok, text)
	}
}

func FuzzParsePanels(f *testing.F) {
	for _, seed := range []string{"A1", "B2 C3", "2b-3c", "AA12…BB14", "A1;B2,C3", "x", "9999A", "A"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		panels, ok := mask.ParsePanels(text)
		if !ok {
			return
		}
		written := ""
		for _, p := range panels {
			if p.Column < 1 || p.Row < 1 || p.Column > mask.MostPanels || p.Row > mask.MostPanels {
				t.Fatalf("%q gives %v", text, p)
			}
			written += p.Label() + " "
		}
		again, ok := mask.ParsePanels(written)
		assert.True(t, ok)
		assert.Equal(t, panels, again)
	})
}
