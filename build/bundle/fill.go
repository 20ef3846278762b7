package bundle

import (
	"fmt"
	"strings"
)

// hole is one place in a text and what goes there.
type hole struct {
	token string
	value string
}

// fill puts every value at its token, in one pass: what was put in is never
// searched again, so a value may hold any token. A token that is not there is
// refused: its value would be lost without a word.
func fill(text string, holes []hole) (string, error) {
	for _, h := range holes {
		if !strings.Contains(text, h.token) {
			return "", fmt.Errorf("%s is missing from the page", h.token)
		}
	}
	pairs := make([]string, 0, 2*len(holes))
	for _, h := range holes {
		pairs = append(pairs, h.token, h.value)
	}
	return strings.NewReplacer(pairs...).Replace(text), nil
}
