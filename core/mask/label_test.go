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
