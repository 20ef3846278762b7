package problem

import (
	"ceilingwright/core/words"
)

// Most is how many problems a sheet tells, and MostAlike how many of one kind
// are told each at its own blank. Choices: a page shows no more, and nobody
// reads the eleventh of a kind.
const (
	Most      = 300
	MostAlike = 10
)

// Fewer is a list of problems that can be read. Of more than MostAlike of one
// kind the first is told, with how many more there are; the kind is the place
// without its numbers, and the words without what they quote or count. Of what
// is left beyond Most the notes go first, then the cautions, from the end on,
// and the last one says how many. The order stays.
func Fewer(list []Problem) []Problem {
	if len(list) <= MostAlike {
		return list
	}
	kinds := make([]string, len(list))
	alike := make(map[string]int, len(list))
	for i := range list {
		kinds[i] = kindOf(&list[i])
		alike[kinds[i]]++
	}
	told := make([]Problem, 0, min(len(list), Most))
	for i, p := range list {
		n := alike[kinds[i]]
		switch {
		case n == 0:
			continue // told before
		case n > MostAlike:
			p.What = words.Sentences(p.What, words.Say("So it is in {more} more places.", words.Count("more", n-1)))
			alike[kinds[i]] = 0
		}
		told = append(told, p)
	}
	return atMost(told, Most)
}

// kindOf is what problems of one kind have in common.
func kindOf(p *Problem) string {
	return string(p.Severity) + " " + words.Blotted(p.At) + " " + p.What.Kind()
}

// atMost leaves out the least of what is too much.
func atMost(list []Problem, most int) []Problem {
	over := len(list) - most
	if over <= 0 {
		return list
	}
	over++ // room for the one that says so
	left := over
	out := make([]bool, len(list))
	for _, severity := range [3]Severity{Note, Caution, Stop} {
		for i := len(list) - 1; i >= 0 && left > 0; i-- {
			if list[i].Severity == severity {
				out[i] = true
				left--
			}
		}
	}
	kept := make([]Problem, 0, most)
	for i, p := range list {
		if !out[i] {
			kept = append(kept, p)
		}
	}
	return append(kept, Problem{Severity: Note,
		What: words.Say("There are {more} more remarks, which are left out.", words.Count("more", over)), Do: words.Say("See to those that are told first.")})
}
