package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestItemsGoToTheGroupBegunLast(t *testing.T) {
	var d Drawing
	d.Put(&Item{Words: "loose"})
	d.Begin("border.DA", "")
	d.Put(&Item{Words: "a"})
	d.Put(&Item{Words: "b"})
	d.Begin("", "L1:A1")
	assert.Equal(t, []Group{
		{Items: []Item{{Words: "loose"}}},
		{Figure: "border.DA", Items: []Item{{Words: "a"}, {Words: "b"}}},
		{Panel: "L1:A1"},
	}, d.Groups)
}

func TestEveryPartHasAWordOfItsOwn(t *testing.T) {
	seen := map[string]bool{}
	for part := range Part(len(partNames)) {
		assert.NotEmpty(t, part.String())
		assert.False(t, seen[part.String()], part.String())
		seen[part.String()] = true
	}
	assert.Equal(t, Frame, Part(len(partNames)-1), "the last part has the last word")
}
