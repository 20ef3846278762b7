package safety

import "ceilingwright/core/problem"

// Row is a rule as a reviewer reads it: ID is public and stable, When says in
// words when it is told, Subject is what it shares with rules of which only the
// most severe is told ("" where it shares nothing). Amounts in Words stand in
// braces. Decides has the last word and ends every note.
type Row struct {
	ID                   string
	Severity             problem.Severity
	Jurisdiction         string // "US", "UK and EU", "all"
	Subject              string
	When, Words, Decides string
	Source               string
}

// Table is every rule, in the order in which notes of one severity are told.
func Table() []Row {
	table := rules()
	rows := make([]Row, len(table))
	for i, r := range table {
		rows[i] = Row{
			ID: r.id, Severity: r.severity, Jurisdiction: r.jurisdiction(), Subject: r.subject,
			When: r.when, Words: r.words, Decides: r.decides, Source: r.source,
		}
	}
	return rows
}
