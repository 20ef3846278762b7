package finish

import (
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Sealing is whether leaf wants a clear coat over it.
type Sealing string

// Required: the metal tarnishes without it. Advised: it dulls. Bare: it does
// not change, and a coat only takes its brightness away.
const (
	Required Sealing = "required"
	Advised  Sealing = "advised"
	Bare     Sealing = "bare"
)

// Sealing is what the metal wants. Base metals tarnish unless shut in varnish
// above and below (Armstrong, Cyclopedia of Painting, 1908, p. 169); silver
// tarnishes slowly and aluminium only dulls; gold is best left bare unless it
// is rubbed or handled (a leaf specification sheet). A word that is no metal
// counts as one that tarnishes, the safe side.
func (m Metal) Sealing() Sealing {
	switch m {
	case Gold:
		return Bare
	case Silver, Aluminium:
		return Advised
	}
	return Required
}

// SealingRemarks compares a leaf step with the finish that holds it: whether a
// sealed ground lies under it and a clear coat over it. Pointers lead to the
// metal. Sealing delays tarnish; nothing here promises that it stops it.
func SealingRemarks(m Metal, sealedBelow, sealedAbove bool) []problem.Problem {
	const at = "/metal"
	var found []problem.Problem
	sealing := m.Sealing()
	switch {
	case sealing == Required && !sealedAbove:
		found = append(found, problem.Problem{At: at, Severity: problem.Caution,
			What: words.Say("Nothing seals the {metal} leaf, and it will tarnish.", words.Of("metal", m.Called())),
			Do:   words.Say("Add a clear coat over the leaf. It slows the tarnish down.")})
	case sealing == Advised && !sealedAbove:
		found = append(found, problem.Problem{At: at, Severity: problem.Note,
			What: words.Say("Nothing seals the {metal} leaf, and it will grow dull.", words.Of("metal", m.Called())),
			Do:   words.Say("Consider a clear coat over the leaf.")})
	case sealing == Bare && sealedAbove:
		found = append(found, problem.Problem{At: at, Severity: problem.Note,
			What: words.Say("A coat over gold leaf dulls it."),
			Do:   words.Say("Leave high-carat gold bare unless it will be touched or rubbed.")})
	}
	if sealing == Required && !sealedBelow {
		found = append(found, problem.Problem{At: at, Severity: problem.Note,
			What: words.Say("Nothing seals the ground under the {metal} leaf, and it can tarnish from behind.", words.Of("metal", m.Called())),
			Do:   words.Say("Let the base cure for up to 14 days, or put a clear seal under the size.")})
	}
	return found
}
