package days

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/words"
)

func TestSaid(t *testing.T) {
	day := date(t, "2027-03-01")
	for text, value := range map[string]words.Value{
		"Mon 1 Mar": day, "Mon 1 Mar 2027": WithYear(day), "Mon 1 Mar at 08:05": day.At(8*60 + 5),
		"0 min": Lasting(0), "59 min": Lasting(59), "1 h": Lasting(60), "2 h 15 min": Lasting(135), "48 h": Lasting(48 * 60),
	} {
		assert.Equal(t, text, value.In(words.Style{}))
	}
}
