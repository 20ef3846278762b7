package safety

import "ceilingwright/core/problem"

// Row is a rule as a reviewer reads it: Section is the part of the table it
// stands in, ID is public and stable, When says in words when it is told,
// Subject is what it shares with rules of which only the most severe is told (""
// where it shares nothing). Amounts in Words and Working stand in braces. Decides
// says who has the last word. Bites are the parts of the work in which it is seen
// too. With is what it is told together with in one note, Adds what it says there
// where it is not the first; Asks the question that stands in its place while
// nobody has answered; OnDemand tells that it is folded away.
type Row struct {
	Section, ID          string
	Severity             problem.Severity
	Jurisdiction         string // "US", "UK and EU", "all"
	Subject              string
	When, Words, Decides string
	Working, Source      string
	Bites                []Block
	With, Adds, Asks     string
	First                string // the first sentence of Words
	OnDemand             bool
}

// Table is every rule, in the order in which notes of one severity are told.
func Table() []Row {
	var rows []Row
	for _, section := range sections() {
		for _, r := range section.rules {
			rows = append(rows, Row{
				Section: section.name, ID: r.id, Severity: r.severity, Jurisdiction: r.jurisdiction(), Subject: r.subject,
				When: r.when, First: r.first(), Words: r.words, Working: r.working, Decides: r.decides, Source: r.source, Bites: r.bites,
				With: r.with, Adds: r.adds, Asks: r.asks, OnDemand: r.onDemand,
			})
		}
	}
	return rows
}
