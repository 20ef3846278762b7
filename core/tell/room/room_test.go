package room

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ceilingwright/core/job"
	"ceilingwright/core/survey"
	"ceilingwright/core/tell/page"
)

// Whatever the measuring came to is said in sentences of its own.
func TestVerdict(t *testing.T) {
	said := map[string]survey.Verdict{}
	for v := survey.NoDiagonal; v <= survey.ReadingsClash; v++ {
		j := &job.Job{}
		j.Room.Found = survey.Found{Verdict: v, Unread: survey.LineBD, Again: []survey.Line{survey.LineAB, survey.LineAC},
			Closing: survey.Closing{Spare: 2, Line: survey.LineAC, Amount: 3_000_000, Limit: 5_000_000}}
		text := (&teller{&page.Page{}, j}).verdict().String()
		assert.Regexp(t, `^[A-Z][^{}]*\.$`, text)
		assert.NotContains(t, said, text, "%d says what %d says", v, said[text])
		said[text] = v
	}
	assert.Contains(t, said, "The readings contradict each other. Wall WX and diagonal WY were read more than once, and not alike. "+
		"The room on this sheet is the one that fits all of them best; mark nothing by it before they agree.")
	assert.True(t, (&teller{&page.Page{}, &job.Job{}}).verdict().IsEmpty(), "no room, no verdict")
}
