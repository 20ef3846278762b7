package safety

import (
	"slices"
	"strings"

	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Note is one piece of advice that a rule gave. ID is public and stable. Words
// say what to do first and then why; Decides is the sentence that says who has the
// last word. At is a pointer into the plan. Figures are ids of figures the words rest
// on, or that show how they were come by. Working is the numbers of this job that the
// rule went by, nothing where it goes by none. Bites are the parts of the work in which it
// has to be seen too. Also are the ids of the rules told together with it.
// OnDemand tells that it need not be seen before it is asked for; a stop or a
// caution always is.
type Note struct {
	ID           string
	Also         []string
	Severity     problem.Severity
	First        words.Text // the first sentence of Words: what to do
	Words        words.Text
	Decides      words.Text
	Working      words.Text
	Source       words.Text
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

// outdone tells whether another of the fired rules about the same subject says
// more than rule i: it is more severe, or as severe and higher in the table.
func outdone(i int, fired []*rule) bool {
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

func (r *rule) appliesIn(country Country) bool {
	return len(r.where) == 0 || isElsewhere(country) || slices.Contains(r.where, country)
}

func isElsewhere(country Country) bool {
	return country != US && country != UK && country != EU
}

func (r *rule) note(f *facts) Note {
	return Note{
		ID: r.id, Severity: r.severity, First: f.filled(r.first()), Words: f.filled(r.words), Decides: f.filled(r.decides), Working: f.filled(r.working),
		Source: f.filled(r.source), Bites: slices.Clone(r.bites), Jurisdiction: r.jurisdiction(), At: r.place(f), Figures: slices.Clone(r.figures),
		OnDemand: r.onDemand, with: r.with,
	}
}

// first is the first sentence of what a rule says, which says what to do.
func (r *rule) first() string {
	if end := strings.Index(r.words, ". "); end >= 0 {
		return r.words[:end+1]
	}
	return r.words
}

func (r *rule) jurisdiction() string {
	if len(r.where) == 0 {
		return "all"
	}
	names := make([]string, len(r.where))
	for i, country := range r.where {
		names[i] = string(country)
	}
	return strings.Join(names, " and ")
}

// filled is a sentence of the table with the amounts of this job in its holes. What
// is put in is never searched again, so a step may be named anything.
func (f *facts) filled(sentence string) words.Text { return words.Filled(sentence, f.amount) }
