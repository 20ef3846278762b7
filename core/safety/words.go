package safety

import "ceilingwright/core/words"

// Says is what the country calls a thing of the trade, named by its word in the
// UK: see words.Country.
func (c Country) Says(word string) string { return words.Country(c).Says(word) }
