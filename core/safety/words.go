package safety

import "ceilingwright/core/words"

// Says is what the country calls a thing of the trade, named by its word in the
// UK: see words.Country.
func (c Country) Says(word string) string { return words.Country(c).Says(word) }

// word is a thing of the trade in a rule's words, "" where name is none.
func (f facts) word(name string) string {
	if !words.Differs(name) {
		return ""
	}
	return f.Country.Says(name)
}
