package setout_test

import (
	"ceilingwright/core/measure"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// sixteenth is the tape mark of these tests.
const sixteenth = measure.Inch / 16

// said are problems as a notation puts them.
func said(n measure.Notation, list []problem.Problem) []problem.Problem {
	var told []problem.Problem
	for _, p := range list {
		p.What, p.Do = words.Say(p.What.In(words.Style{Notation: n})), words.Say(p.Do.In(words.Style{Notation: n}))
		told = append(told, p)
	}
	return told
}
