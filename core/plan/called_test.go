package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A part of a mix is water or paint by a word of its name, not by a piece of one.
func TestPartsAreWaterOrPaintByAWordOfTheirName(t *testing.T) {
	for name, want := range map[string][2]bool{
		"water": {true, false}, "Water": {true, false}, "tap water, warm": {true, false}, "water (cold)": {true, false},
		"watercolour": {}, "glaze medium": {}, "": {},
		"wall paint": {false, true}, "Paint, blue": {false, true}, "paintbrush cleaner": {},
	} {
		assert.Equal(t, want, [2]bool{isCalled(name, "water"), isCalled(name, "paint")}, name)
	}
}
