package safety

import (
	"ceilingwright/core/air"
	"ceilingwright/core/problem"
)

// rule is one row of the table below. It is laid out to be read without Go:
// "when" says in words what "fires" tests.
type rule struct {
	id       string // public and stable
	severity problem.Severity
	where    []Country // whose rule it is; none: everybody's
	subject  string    // of the rules about one subject only the most severe is told
	at       string    // the place in the plan it hangs on
	atStep   func(*facts) string
	when     string
	fires    func(*facts) bool
	words    string // amounts stand in braces
	working  string // the numbers of this job that the rule went by, amounts in braces
	decides  string // who has the last word, a sentence of its own
	source   string
	figures  []string
	bites    []Block // where in the work a stop or a caution has to be seen too

	with     string            // the rules of this name that fire are told as one note, the most severe first
	adds     string            // what it says there behind the first, a sentence; "" where that says it already
	asks     string            // the question for the blank it hangs on: it fires since nobody has said, and is no note of its own
	unknown  func(*facts) bool // it asks only where this holds; none: always
	onDemand bool              // a mere note that need not be seen before it is asked for
}

// Who has the last word.
const (
	code        = "Local code and the site's competent person decide."
	maker       = "The maker's manual and local code decide."
	label       = "The label and the product's safety data sheet decide."
	licensed    = "Licensed people do this work; local code decides."
	electrician = "A licensed electrician does this work; local code decides."
	fireFirm    = "The firm that looks after the fire equipment and local code decide."
)

var inUS, inEurope = []Country{US}, []Country{UK, EU}

// section is a part of the table. They stand in the order of the work: what has to
// be known of the building, how to get up, what is used there.
type section struct {
	name  string
	rules []rule
}

// sections is the table. Sources marked "from memory" or "seen in a secondary copy"
// are to be checked before anybody relies on them. "Derived" marks what was
// worked out from the sources named with it.
func sections() []section {
	return []section{
		{"The sheet itself", sheetRules()},
		{"The building", houseRules()},
		{"Old paint and old coats", oldPaintRules()},
		{"The light and its wires", wireRules()},
		{"Detectors and sprinklers", detectorRules()},
		{"Ladders", ladderRules()},
		{"The height of the deck", deckRules()},
		{"Rails", railRules()},
		{"Base, wheels and build", baseRules()},
		{"Overhead work", overheadRules()},
		{"The air and what burns in it", airRules()},
		{"Rags, dust, eyes and skin", dustRules()},
	}
}

// rules is every rule of the table, section after section.
func rules() (all []*rule) {
	for _, s := range sections() {
		for i := range s.rules {
			all = append(all, &s.rules[i])
		}
	}
	return all
}

// sheetRules are about this sheet and who is there.
func sheetRules() []rule {
	return []rule{
		{
			id: standing, severity: problem.Note, at: "",
			when:    "always.",
			fires:   func(f *facts) bool { return true },
			words:   "This sheet helps to plan. It does not show that the work is safe or allowed, and what it says about air is a screening figure. Makers' manuals and labels come first.",
			decides: code,
			source:  "Common practice, no source.",
		},
		{
			id: "country-not-known", severity: problem.Note, at: "/place/rules",
			when:    "the country is other than US, UK, EU, or not given.",
			fires:   func(f *facts) bool { return isElsewhere(f.Country) },
			words:   "Ask which rules hold where you work. No country is chosen whose rules are known here, and the strictest known here is used instead.",
			decides: code,
			source:  "Derived: the less safe case is taken where a fact is missing.",
			asks:    "Whose rules hold where you work?",
			unknown: func(f *facts) bool { return f.Country == "" },
		},
		{
			id: "not-alone", severity: problem.Caution, at: "/days/people",
			when: "a tower, a scaffold or what may be one, or a solvent product is used, and nobody has said that more than one person works there.",
			fires: func(f *facts) bool {
				return f.mayBeAlone() && (f.builtUp() && f.Gear.Kind != Podium || f.uses(air.IsSolvent))
			},
			words:   "Do not work alone. Agree how to call for help and how to get someone down.",
			decides: code,
			source:  "Common practice, no source.",
			asks:    "How many people work on this job?",
			unknown: func(f *facts) bool { return f.Hands == 0 && f.Gear.OnDeck == 0 },
		},
	}
}
