package problem

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestListed(t *testing.T) {
	assert.Equal(t, "", Listed(nil))
	assert.Equal(t, "a, b, c, d, e, f", Listed(strings.Split("abcdef", "")))
	assert.Equal(t, "a, b, c, d, e and 2 others", Listed(strings.Split("abcdefg", "")))
}
