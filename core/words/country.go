package words

// Country is whose words of the trade are used and whose rules are read, by its code.
type Country string

// The countries that are told apart. The zero value means nobody has said.
const (
	US    Country = "US"
	UK    Country = "UK"
	EU    Country = "EU"
	Other Country = "other"
)

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

// Differs tells whether a thing of the trade has words of two countries.
func Differs(word string) bool { return usWords[word] != "" }

// InUS are the things of the trade that the US calls otherwise: pairs of its name in
// the UK and in the US.
func InUS() (pairs [][2]string) {
	for uk, us := range usWords {
		pairs = append(pairs, [2]string{uk, us})
	}
	return pairs
}
