package core

import (
	"strconv"

	"ceilingwright/core/export"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/problem"
	"ceilingwright/core/sheet"
	"ceilingwright/core/tell"
	"ceilingwright/core/words"
)

// Version is the version of the engine. It stands on every sheet.
const Version = "0.1.0"

// Compute works out the sheet of a plan. Whatever the text is, a sheet comes
// back: one that cannot be read as a plan gives a sheet with the reason among
// its problems.
func Compute(planJSON []byte) []byte { return In{}.Compute(planJSON) }

// Compute is the function Compute, in the language.
func (in In) Compute(planJSON []byte) []byte {
	return tell.Build(in.read(planJSON), Version, in.Language).JSON()
}

// SheetOf is Compute before the sheet is written as JSON.
func SheetOf(planJSON []byte) *sheet.Sheet { return tell.Build(plan.Read(planJSON), Version, nil) }

// Shopping is the shopping list of a plan as comma-separated values (RFC 4180),
// for a spreadsheet. With comma, numbers have a decimal comma and semicolons
// stand between the cells. Whatever the text is, a table comes back: of one
// that cannot be read as a plan, the headings alone.
func Shopping(planJSON []byte, comma bool) []byte { return In{}.Shopping(planJSON, comma) }

// Shopping is the function Shopping, in the language.
func (in In) Shopping(planJSON []byte, comma bool) []byte {
	style := export.Point
	if comma {
		style = export.Comma
	}
	return export.CSV(tell.Shopping(in.read(planJSON), in.Language), style)
}

// Calendar is the days of a plan as an iCalendar text (RFC 5545). stamp is the
// moment of writing in UTC, 20270301T080000Z; the engine has no clock. It is
// empty where the plan has no days that can be worked out, or stamp is no such
// moment.
func Calendar(planJSON []byte, stamp string) []byte { return In{}.Calendar(planJSON, stamp) }

// Calendar is the function Calendar, in the language.
func (in In) Calendar(planJSON []byte, stamp string) []byte {
	return []byte(tell.Calendar(in.read(planJSON), stamp, in.Language))
}

// OtherRoom is what to change in a plan whose room was changed, so that the rest,
// made for the room before it, makes sense in this one: as JSON {"said", "writes":
// [{"at", "text"}], "out"}, one sentence, blanks to fill in anew by their pointers,
// and entries of lists to leave out. made is the plan as it was made for its room.
// Where nothing follows all three are empty.
func OtherRoom(made, planJSON []byte) []byte { return In{}.OtherRoom(made, planJSON) }

// OtherRoom is the function OtherRoom, in the language.
func (in In) OtherRoom(made, planJSON []byte) []byte {
	return plan.OtherRoom(in.read(made), in.read(planJSON), in.Language).JSON()
}

// Starting is the steps a finish begins or goes on with, as the JSON text of a
// list of steps: what is one-layer, leaf-and-glaze or wall-band, or a kind of
// step such as base. They are written for the plan, with ids it does not have
// yet. Of any other word the list is empty.
func Starting(what string, planJSON []byte) []byte { return In{}.Starting(what, planJSON) }

// Starting is the function Starting, in the language.
func (in In) Starting(what string, planJSON []byte) []byte {
	return in.read(planJSON).Starting(what, in.Language)
}

// Quoted is the plan as a client may have it, as JSON: it holds no rates and
// nothing of what is behind the price, and the amounts as they stand on date,
// 2027-03-01; the engine has no clock. A plan that is a client's already comes
// back as such, with the amounts and the date it has. A text that is no plan, or
// a date that is none, gives nothing.
func Quoted(planJSON []byte, date string) []byte { return In{}.Quoted(planJSON, date) }

// Quoted is the function Quoted, in the language.
func (in In) Quoted(planJSON []byte, date string) []byte {
	quote, ok := tell.QuoteOf(in.read(planJSON), date, in.Language)
	if !ok {
		return nil
	}
	return plan.ForClient(planJSON, &quote)
}

// LengthAnswer is how a length was read: Nanometres, a whole count in decimal
// digits, or the Problem with it. At is empty: the caller knows the blank.
type LengthAnswer struct {
	Nanometres string
	Problem    *sheet.Problem
}

// ParseLength reads a length as the blanks of the page do. unit is what a bare
// number takes: in, ft, yd, mm, cm or m; any other unit is refused.
func ParseLength(text, unit string) LengthAnswer { return In{}.ParseLength(text, unit) }

// ParseLength is the function ParseLength, in the language.
func (in In) ParseLength(text, unit string) LengthAnswer {
	bare, err := measure.ParseUnit(unit)
	if err == nil {
		var l measure.Length
		if l, err = measure.Parse(text, bare); err == nil {
			return LengthAnswer{Nanometres: strconv.FormatInt(int64(l), 10)}
		}
	}
	told := sheet.ProblemFrom(problem.Unread("", err), words.Style{Language: in.Language})
	return LengthAnswer{Problem: &told}
}
