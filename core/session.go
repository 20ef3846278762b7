package core

import (
	"slices"
	"strings"

	"ceilingwright/core/plan"
	"ceilingwright/core/tell"
)

// Session works out one plan after another, as whoever types does, and keeps of each
// what the next leaves as it is. The zero Session is ready, and answers in our own
// language.
type Session struct {
	In
	told tell.Session
	text string // of the plan that was told last
	doc  *plan.Document
}

// Sheet is of Compute what is asked for: the pages by their names, room, mask, setting,
// hanging, finish, days, price, record and safety, and the drawings by their ids, all
// with spaces between. pages "" are all, drawings "" none: they are only listed. What is
// wrong and the overview are always there; what is not asked for is empty.
func (s *Session) Sheet(planJSON []byte, pages, drawings string) []byte {
	s.told.Language = s.Language
	asked := tell.Asked{Pages: tell.AllPages}
	if pages != "" {
		asked.Pages = tell.InPages(strings.Fields(pages)...)
	}
	if drawings != "" {
		ids := strings.Fields(drawings)
		asked.Draw = func(id string) bool { return slices.Contains(ids, id) }
	}
	return s.told.Sheet(s.read(planJSON), Version, asked).JSON()
}

// Drawing is one drawing of a plan's sheet as SVG, by its id; "" where the sheet has
// none of it.
func (s *Session) Drawing(planJSON []byte, id string) string {
	s.told.Language = s.Language
	return s.told.Drawing(s.read(planJSON), id)
}

func (s *Session) read(planJSON []byte) *plan.Document {
	if s.doc == nil || string(planJSON) != s.text {
		doc := s.In.read(planJSON)
		s.text, s.doc = string(planJSON), &doc
	}
	return s.doc
}
