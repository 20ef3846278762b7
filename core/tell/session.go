package tell

import (
	"slices"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell/overview"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/words"
)

// Pages are pages of the sheet.
type Pages uint16

// AllPages is the whole sheet.
const AllPages = Pages(1<<16 - 1)

// InPages are pages by their names; a name that no page has is none.
func InPages(names ...string) (pages Pages) {
	for _, name := range names {
		if i := slices.Index(page.Names[:], name); i >= 0 {
			pages |= 1 << i
		}
	}
	return pages
}

// Asked is what of a sheet is wanted: the pages that are told, and which drawings are
// drawn and not only listed. What is wrong and the overview always stand on it.
type Asked struct {
	Pages Pages
	Draw  func(id string) bool
}

// Session tells one plan after another, as whoever types does, and keeps what the next
// leaves as it is. The zero Session has kept nothing yet. Language is none for the one
// that the sentences are written in.
type Session struct {
	Language *words.Language

	work job.Session
	doc  *plan.Document
	job  *job.Job
	hand page.Page
	told [chapterCount]*told
	// tellings are those of package tell; tests have one fail.
	tellings []telling
}

// told is a chapter as it was told: what it puts on the sheet, its figures telling by
// telling, and what of it a panic cut short.
type told struct {
	sheet   sheet.Sheet
	figures map[int][]sheet.Figure
	faults  []job.Fault
}

// Build works out the whole sheet of a plan as read, with all its drawings. version is
// the version of the engine and goes onto the sheet. A document that is no plan gives a
// sheet with its problems and nothing else. Language is none for ours.
func Build(doc plan.Document, version string, language *words.Language) *sheet.Sheet {
	s := Session{Language: language}
	return s.Sheet(&doc, version, Asked{AllPages, func(string) bool { return true }})
}

// Sheet is the sheet of a plan as read, as far as it is asked for. The document is kept
// and not to be changed.
func (s *Session) Sheet(doc *plan.Document, version string, asked Asked) *sheet.Sheet {
	s.take(doc)
	out := &sheet.Sheet{Format: sheet.Format, Version: version, Plan: sheet.Heading{ID: doc.Plan.ID, Title: doc.Plan.Title}}
	faults := slices.Clone(s.job.Faults)
	if doc.Usable {
		out.Readings = s.readings()
		faults = append(faults, s.tell(asked.Pages, out)...)
		faults = append(faults, s.draw(asked.Draw, out)...)
	}
	out.Problems = s.problems(faults)
	if fault := guarded("the overview", func() { out.Overview = overview.Tell(&s.hand, s.job, out.Problems) }); fault != nil {
		out.Problems = s.problems(append(faults, fault...))
	}
	return out
}

// take works a plan out, and leaves out of what is told all that is otherwise now.
func (s *Session) take(doc *plan.Document) {
	if s.doc == doc {
		return
	}
	s.doc, s.job = doc, s.work.Work(doc)
	parts, findings := s.work.Changed()
	units := doc.Plan.Units
	hand := page.Page{Notation: units.Notation(), Other: units.OtherNotation(), Country: doc.Plan.Place.Rules, Language: s.Language}
	hand.Notation.Under = words.Say("under {least}", words.Name("least", "{least}")).In(hand.Style())
	hand.Other.Under = hand.Notation.Under
	if hand != s.hand {
		s.told, s.hand = [chapterCount]*told{}, hand
	}
	for i, c := range chapters() {
		if c.reads&parts != 0 || c.after&findings != 0 {
			s.told[i] = nil
		}
	}
}

// tell tells the chapters of the pages that are asked for and puts them on the sheet.
func (s *Session) tell(pages Pages, out *sheet.Sheet) (faults []job.Fault) {
	chapters, count := chapters(), 0
	if s.tellings == nil {
		s.tellings = tellings()
	}
	for i := range chapters {
		if chapters[i].pages&pages == 0 {
			continue
		}
		if s.told[i] == nil {
			s.told[i] = s.chapter(i, &chapters[i])
		}
		chapters[i].hand(out, &s.told[i].sheet)
		faults = append(faults, s.told[i].faults...)
		for _, figures := range s.told[i].figures {
			count += len(figures)
		}
	}
	out.Figures = make([]sheet.Figure, 0, count)
	for k, t := range s.tellings {
		if chapters[t.chapter].pages&pages != 0 {
			out.Figures = append(out.Figures, s.told[t.chapter].figures[k]...)
		}
	}
	return faults
}

// chapter tells one chapter.
func (s *Session) chapter(which int, c *chapter) *told {
	told, j := &told{figures: map[int][]sheet.Figure{}}, s.job.Only(c.reads|plan.PartUnits, c.after)
	p := s.hand
	p.Sheet = &told.sheet
	for k, t := range s.tellings {
		if t.chapter != which {
			continue
		}
		told.faults = append(told.faults, guarded(t.name, func() { t.do(&p, j) })...)
		told.figures[k], told.sheet.Figures = told.sheet.Figures, nil
	}
	return told
}

// guarded does one part of the work so that a fault in it takes nothing of the others:
// what was told stays, and what comes after goes on.
func guarded(name string, do func()) (faults []job.Fault) {
	defer func() {
		if panicked := recover(); panicked != nil {
			faults = []job.Fault{{Stage: name, Panic: panicked}}
		}
	}()
	do()
	return nil
}

// problems puts what is wrong into words. What could not be worked out is told once,
// however much that is: one fault brings others after it, in the drawings too.
func (s *Session) problems(faults []job.Fault) []sheet.Problem {
	list := slices.Clone(s.job.Problems)
	if s.doc.Plan.Quote.Known {
		// What the firm's own blanks, which a client's plan does not have, would be asked for.
		list = slices.DeleteFunc(list, func(p problem.Problem) bool { return p.At != "" && !strings.HasPrefix(p.At, "/quote") })
	}
	if len(faults) > 0 {
		names := make([]string, len(faults))
		for i := range faults {
			names[i] = faults[i].Stage
		}
		list = append(list, problem.Fault(strings.Join(names, ", "), faults[0].Panic))
	}
	list = problem.Fewer(list)
	told := make([]sheet.Problem, len(list))
	for i := range list {
		told[i] = sheet.ProblemFrom(list[i], s.hand.Style())
		told[i].Page, told[i].ToCome = page.Of(list[i].At), list[i].Severity == problem.Stop && list[i].At != "" && s.doc.IsBlank(list[i].At)
	}
	return told
}

func (s *Session) readings() []sheet.Reading {
	list := make([]sheet.Reading, len(s.doc.Readings))
	for i, r := range s.doc.Readings {
		list[i] = sheet.Reading{
			At: r.At, Nanometres: page.Nanometres(r.Length),
			Text: page.Said(s.hand.Notation, r.Length), Other: page.Said(s.hand.Other, r.Length), Written: r.Written,
		}
	}
	return list
}
