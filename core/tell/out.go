package tell

import (
	"ceilingwright/core/days"
	"ceilingwright/core/export"
	"ceilingwright/core/plan"
	"ceilingwright/core/sheet"
	telldays "ceilingwright/core/tell/days"
	tellprice "ceilingwright/core/tell/price"
	"ceilingwright/core/tell/shopping"
	"ceilingwright/core/words"
)

// on is a session with a plan worked out and nothing told, and a sheet to write on.
func on(doc *plan.Document, language *words.Language) *Session {
	s := &Session{Language: language}
	s.take(doc)
	s.hand.Sheet = &sheet.Sheet{}
	return s
}

// Shopping is the list of what to buy of a plan as a table. A document that is no plan
// gives the headings alone. As in what follows, language is none for ours.
func Shopping(doc plan.Document, language *words.Language) [][]export.Cell {
	s := on(&doc, language)
	if !doc.Usable {
		return (&shopping.List{Page: &s.hand, Job: s.job}).Table()
	}
	return shoppingList(&s.hand, s.job).Table()
}

// Calendar is the days of a plan as an iCalendar text: an event for each piece
// of work on a day, for all that is waited for while it dries, comes to tack or ages,
// and for each time in which a size takes leaf. stamp is the moment
// of writing in UTC, 20270301T080000Z. It is "" where there are no days to write
// or stamp is no such moment.
func Calendar(doc plan.Document, stamp string, language *words.Language) string {
	if !doc.Usable {
		return ""
	}
	s := on(&doc, language)
	id := doc.Plan.ID
	if id == "" {
		id = "plan"
	}
	text, _ := days.ICalendar(id, doc.Plan.Title, stamp, telldays.Entries(&s.hand, s.job))
	return text
}

// QuoteOf is what the client of a plan is quoted on a day, 2027-03-01: the
// amounts and nothing of what is behind them. A plan that is a client's already
// keeps its quote. ok is false where the document is no plan or the day is none.
func QuoteOf(doc plan.Document, date string, language *words.Language) (q plan.Quote, ok bool) {
	day, ok := days.ParseDate(date)
	if !ok || !doc.Usable {
		return q, false
	}
	if doc.Plan.Quote.Known {
		return doc.Plan.Quote, true
	}
	s := on(&doc, language)
	return tellprice.QuoteOn(&s.hand, s.job, day), true
}
