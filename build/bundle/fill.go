package bundle

import (
	"fmt"
	"strings"
)

// blank is one place in a text and what goes there.
type blank struct {
	token string
	value string
}

// fill puts every value at its token, in one pass: what was put in is never
// searched again, so a value may hold any token. A token that is not there is
// refused: its value would be lost without a word.
func fill(text string, blanks []blank) (string, error) {
	for _, b := range blanks {
		if !strings.Contains(text, b.token) {
			return "", fmt.Errorf("%s is missing from the page", b.token)
		}
	}
	pairs := make([]string, 0, 2*len(blanks))
	for _, b := range blanks {
		pairs = append(pairs, b.token, b.value)
	}
	return strings.NewReplacer(pairs...).Replace(text), nil
}
