package problem

import (
	"strconv"
	"strings"
)

// mostListed is how many names a sentence holds. A choice: it stays readable.
const mostListed = 6

// Listed is names in a sentence; of many the first few and how many more.
func Listed(names []string) string {
	if len(names) <= mostListed {
		return strings.Join(names, ", ")
	}
	more := len(names) - mostListed + 1
	return strings.Join(names[:mostListed-1], ", ") + " and " + strconv.Itoa(more) + " others"
}
