// Package problem is how the engine refuses: every refusal is a value that
// says where, how bad, what is wrong and what to do. A problem in one blank
// never stops the rest. Go errors stay inside a package; what a person has to
// act on leaves it as a Problem.
package problem

import (
	"strconv"

	"ceilingwright/core/words"
)

// Severity says how bad a problem is.
type Severity string

// The three severities. Stop: this figure, or this work, cannot go on until
// it is resolved. Caution: computed, but look at it. Note: worth knowing.
const (
	Stop    Severity = "stop"
	Caution Severity = "caution"
	Note    Severity = "note"
)

// Problem is one refusal or remark. At is an RFC 6901 pointer; a trade package
// gives it relative to its own input ("/columns") and the reader of the plan
// puts the place of that input in front (Under). What says what is wrong and
// Do what to do about it: plain short sentences with a full stop, no blame, no
// program words, and the amount where there is one. Answers, where What asks
// which of a few things is meant, are what to write into the blank for each.
type Problem struct {
	At       string
	Severity Severity
	What     words.Text
	Do       words.Text
	Answers  []string
}

// Index is the pointer step to entry i of a list, "/3".
func Index(i int) string { return "/" + strconv.Itoa(i) }
