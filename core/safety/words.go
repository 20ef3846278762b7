package safety

// usWords are the things of the trade that the US calls otherwise, by their
// name in the UK. A sentence that speaks of one takes its name from here, an
// article with it where the two would want different ones.
var usWords = map[string]string{
	"an RCD":        "a GFCI",
	"consumer unit": "breaker panel",
	"cornice":       "crown",
	"filler":        "patching compound",
	"hire":          "rental",
	"hop-up":        "step-up bench",
}

// Says is what the country calls a thing of the trade, named by its word in the
// UK. Outside the US the UK's word is kept, and so is one that is the same
// everywhere.
func (c Country) Says(word string) string {
	if other, ok := usWords[word]; ok && c == US {
		return other
	}
	return word
}

// word is a thing of the trade in a rule's words, "" where name is none.
func (f facts) word(name string) string {
	if _, ok := usWords[name]; !ok {
		return ""
	}
	return f.Country.Says(name)
}
