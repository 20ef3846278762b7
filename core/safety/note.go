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
// has to be seen too. Also are the ids of the rules told together with it.
// OnDemand tells that it need not be seen before it is asked for; a stop or a
// caution always is.
type Note struct {
	ID           string
	Also         []string
	Severity     problem.Severity
	Words        string
	Decides      string
	Working      string
	Source       string
	Jurisdiction string // "US", "UK and EU", "all"
	At           string
	Figures      []string
	Bites        []Block
	OnDemand     bool
	with         string
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
// be 50 mm or 2 in: nobody sets a platform to a sixteenth. Limits that come from
// the other system are said in whole LimitSteps, which should be 10 mm or 1 in. A
// step of 0 rounds nothing.
type Style struct {
	Length func(measure.Length) string
	Area   func(measure.Area) string
	Number func(n measure.Number, places int32) string
	Mass   func(kilograms measure.Number) string
	Flow   func(cubicMetresAnHour measure.Number) string
	Step   measure.Length

	LimitStep measure.Length
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
	return Note{
		ID: r.id, Severity: r.severity, Words: fill(r.words, f, style), Decides: r.decides, Working: fill(r.working, f, style),
		Source: r.source, Bites: slices.Clone(r.bites), Jurisdiction: r.jurisdiction(), At: r.place(f), Figures: slices.Clone(r.figures),
		OnDemand: r.onDemand, with: r.with,
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
