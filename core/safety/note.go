package safety

import (
	"slices"
	"strings"

	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
)

// Note is one piece of advice that a rule gave. ID is public and stable. Words
// say what to do first and then why, in the notation of the style; Decides is the
// sentence that says who has the last word. At is a pointer into the plan. Figures are ids of figures the words rest on, or that
// show how they were come by. Working is the numbers of this job that the rule
// went by, "" where it goes by none. Bites are the parts of the work in which it
// has to be seen too.
type Note struct {
	ID           string
	Severity     problem.Severity
	Words        string
	Decides      string
	Working      string
	Source       string
	Jurisdiction string // "US", "UK and EU", "all"
	At           string
	Figures      []string
	Bites        []Block
}

// Block is a part of the work.
type Block string

// The parts of the work in which a note can bite.
const (
	Room    Block = "room"
	Hanging Block = "hanging"
	Finish  Block = "finish"
	Days    Block = "days"
)

// Style writes the amounts in the words of notes; Mass is given kilograms. A nil
// function writes metric.
// Heights and bases of platforms are first rounded to a whole Step, which should
// be 50 mm or 2 in: nobody sets a platform to a sixteenth. A Step of 0 rounds
// nothing.
type Style struct {
	Length func(measure.Length) string
	Area   func(measure.Area) string
	Number func(n measure.Number, places int32) string
	Mass   func(kilograms measure.Number) string
	Flow   func(cubicMetresAnHour measure.Number) string
	Step   measure.Length
}

func (s Style) length(l measure.Length) string {
	if s.Length == nil {
		return metres(l)
	}
	return s.Length(l)
}

func (s Style) area(a measure.Area) string {
	if s.Area == nil {
		return a.SquareMetres.RoundHalfEven(2).StringFixed(2) + " m²"
	}
	return s.Area(a)
}

func (s Style) number(n measure.Number, places int32) string {
	if s.Number == nil {
		return n.RoundHalfEven(places).StringFixed(places)
	}
	return s.Number(n, places)
}

func (s Style) mass(kilograms measure.Number) string {
	if s.Mass == nil {
		return kilograms.Trimmed(2) + " kg"
	}
	return s.Mass(kilograms)
}

func (s Style) flow(n measure.Number) string {
	if s.Flow == nil {
		return n.RoundHalfEven(0).String() + " m³/h"
	}
	return s.Flow(n)
}

// nearStep writes l to the nearest step, half a step going up.
func (s Style) nearStep(l measure.Length) string {
	if s.Step > 0 {
		l = (l + s.Step/2) / s.Step * s.Step
	}
	return s.length(l)
}

// upToStep writes l rounded up to a whole step, for the least that will do.
func (s Style) upToStep(l measure.Length) string {
	if s.Step > 0 {
		l = (l + s.Step - 1) / s.Step * s.Step
	}
	return s.length(l)
}

// downToStep writes l rounded down to a whole step, for the most that will do.
func (s Style) downToStep(l measure.Length) string {
	if s.Step > 0 {
		l = l / s.Step * s.Step
	}
	return s.length(l)
}

// Notes reads every rule against the job and answers with those that apply:
// stops first, then cautions, then notes, each in the order of the table. Where
// the country is none of those in the table all countries' rules are read, and
// of those about one subject the most severe is kept.
func Notes(job Job, style Style) []Note {
	f := factsOf(job)
	var fired []rule
	for _, r := range rules() {
		if r.appliesIn(job.Country) && r.fires(f) {
			fired = append(fired, r)
		}
	}
	var notes []Note
	for _, severity := range [...]problem.Severity{problem.Stop, problem.Caution, problem.Note} {
		for i := range fired {
			if fired[i].severity == severity && !outdone(i, fired) {
				notes = append(notes, fired[i].note(f, style))
			}
		}
	}
	return notes
}

// outdone tells whether another of the fired rules about the same subject says
// more than rule i: it is more severe, or as severe and higher in the table.
func outdone(i int, fired []rule) bool {
	for j, other := range fired {
		if j == i || other.subject == "" || other.subject != fired[i].subject {
			continue
		}
		if d := rank(other.severity) - rank(fired[i].severity); d < 0 || d == 0 && j < i {
			return true
		}
	}
	return false
}

func rank(severity problem.Severity) int {
	switch severity {
	case problem.Stop:
		return 0
	case problem.Caution:
		return 1
	}
	return 2
}

func (r rule) appliesIn(country Country) bool {
	return len(r.where) == 0 || isElsewhere(country) || slices.Contains(r.where, country)
}

func isElsewhere(country Country) bool {
	return country != US && country != UK && country != EU
}

func (r rule) note(f facts, style Style) Note {
	at := r.at
	if r.atStep != nil {
		at = r.atStep(f)
	}
	return Note{
		ID: r.id, Severity: r.severity, Words: fill(r.words, f, style), Decides: r.decides, Working: fill(r.working, f, style),
		Source: r.source, Bites: slices.Clone(r.bites), Jurisdiction: r.jurisdiction(), At: at, Figures: slices.Clone(r.figures),
	}
}

func (r rule) jurisdiction() string {
	if len(r.where) == 0 {
		return "all"
	}
	names := make([]string, len(r.where))
	for i, country := range r.where {
		names[i] = string(country)
	}
	return strings.Join(names, " and ")
}

// fill puts the amounts in the place of the words in braces. What is put in is
// never searched again, so a step may be named anything.
func fill(words string, f facts, style Style) string {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(words, "{")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		name, after, _ := strings.Cut(rest, "}")
		out.WriteString(f.amount(name, style))
		words = after
	}
}
