package core

import (
	"ceilingwright/core/job"
	"ceilingwright/core/plan"
	"ceilingwright/core/tell"
)

// Session works out one plan after another, as whoever types does, and keeps of each
// what the next leaves as it is. What it answers is what Compute answers, but that the
// drawings are only listed: most of them are not looked at. The zero Session is ready.
type Session struct {
	job  job.Session
	text string // of the plan that was told last
	told *tell.Telling
}

// Sheet is Compute without the pictures of the drawings.
func (s *Session) Sheet(planJSON []byte) []byte { return s.tell(planJSON).Sheet.JSON() }

// Drawing is one drawing of a plan's sheet as SVG, by its id; "" where the sheet has
// none of it.
func (s *Session) Drawing(planJSON []byte, id string) string { return s.tell(planJSON).Drawing(id) }

func (s *Session) tell(planJSON []byte) *tell.Telling {
	if s.told == nil || string(planJSON) != s.text {
		doc := plan.Read(planJSON)
		told := tell.Tell(&doc, s.job.Work(&doc), Version, false)
		s.text, s.told = string(planJSON), told
	}
	return s.told
}
