package safety

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Note is one piece of advice that a rule gave. ID is public and stable. Words
// say what to do, in the notation of the style, and end in who decides. At is a
// pointer into the plan, Figures the ids of the figures the words rest on.
type Note struct {
	ID           string
	Severity     problem.Severity
	Words        string
	Source       string
	Jurisdiction string // "US", "UK and EU", "all"
	At           string
	Figures      []string
}

// Style writes the amounts in the words of notes. A nil function writes metric.
// Heights of decks are first rounded to a whole Step, which should be 50 mm or
// 2 in: nobody sets a platform to a sixteenth. A Step of 0 rounds nothing.
type Style struct {
	Length func(measure.Length) string
	Area   func(measure.Area) string
	Number func(n measure.Number, places int32) string
	Step   measure.Length
}

// Notes reads every rule against the job and answers with those that apply:
// stops first, then cautions, then notes, each in the order of the table.
func Notes(job Job, style Style) []Note { return nil }
