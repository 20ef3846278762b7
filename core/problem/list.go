package problem

import "ceilingwright/core/words"

// List is what is wrong, in the order in which it was found.
type List []Problem

// Report adds problems, with the pointer prefix in front.
func (l *List) Report(prefix string, more []Problem) {
	for _, p := range more {
		p.At = prefix + p.At
		*l = append(*l, p)
	}
}

// Remark adds one problem at a blank.
func (l *List) Remark(at string, severity Severity, what, do words.Text) {
	*l = append(*l, Problem{At: at, Severity: severity, What: what, Do: do})
}
